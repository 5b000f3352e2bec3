/*
 * What one text shows of signs: in itself, read as one with the sender's texts of the last 3
 * minutes, and together with what alerts tell that nobody has closed. How grave that is, signs.c
 * decides. Private to it and death.c.
 */
#ifndef FOUND_H
#define FOUND_H

#include "asked.h"

enum { SIGNS_MAX = 12 };

struct found {
    struct sign_match list[SIGNS_MAX];
    size_t count;
    int reading;          /* percent; 0 if none is told in this text */
    bool symptom;         /* here, in a text just before, or in an alert that is open */
    bool new_symptom;     /* in this text, or made by it and those just before */
    bool earlier_reading; /* a value in a text just before or in an open alert */
    bool no_flow;         /* no oxygen or no power, by a sign or in other words, or not yet again */
    bool unit_trouble;    /* that, or a battery that is dangerous; here or just before */
    bool new_trouble;     /* of that, what this text tells */
    bool none_left;       /* the last charge runs out, and there is no plug and no backup */
    bool cylinder_hisses; /* this text tells of one that was opened */
    bool hot_battery; /* a battery is hot or swollen; here or just before, or in an open alert */
};

/* An injury that only the words of who hurts or threatens are like is none; the danger is then what
 * is told, unless the body is told of as well. */
void threat_find(const struct asked *whole, struct found *found);

/* The sign of who is gravely ill in a way that no other names. */
#define GRAVELY_ILL "sudden-illness"

/* So ends what staff are told of a value that is an emergency because of what they feel. */
#define WITH_SYMPTOM " + symptom"

void found_read(const struct asked *whole, struct found *found);

bool found_has(const struct found *found, const char *id);
bool found_has_level(const struct found *found, enum sign_level level);
/* This text shows the sign, whatever stood before it. */
bool found_alone(const struct asked *whole, const char *id);
/* These words alone show it. */
bool found_on(const struct asked *whole, const char *text, const char *id);
void found_leave_out(struct found *found, const char *id);
/* They tell something beside a value, or in place of it. */
bool found_beside_value(const struct asked *whole, const char *text);
/* As if the whole text told it. */
void found_add(struct found *found, const struct sign *sign);

/* A battery is told of that is not empty. */
bool found_tells_charge(const struct told *told);

/* Leaves out what the words of who takes something back, or tells that it passes, are only like. */
void found_leave_out_explained(const struct asked *whole, struct found *found);
/* "I mean the noise", "kidding": the text begins or ends so. */
bool explained_takes_back(const struct tokens *tokens);
/* "Kidding", first of all: with the text before it makes nothing new. */
bool explained_jests(const struct tokens *tokens);
/* "It goes away in a minute", and nothing else. */
bool explained_passes(const struct asked *asked);
/* What was only a cry, or vague, and is told now to have meant some thing, or a question. */
bool explained_told(const struct asked *asked);

/* Leaves out what a unit's display or an empty battery beside a full one accounts for. */
void found_leave_out_things(const struct asked *whole, struct found *found);
/* Adds what figures (a blood pressure) tell, what stands beside an empty supply, a death told in
 * the words of a battery, or a medicine that no list knows. */
void found_add_told(const struct asked *whole, struct found *found);

/* True if the tokens in which it was found tell otherwise; `reading` is a value in them, or 0. */
bool found_told_otherwise(const struct asked *whole, const struct tokens *found_in,
                          const struct sign_match *match, int reading);

/*
 * The sign that the first of an alert's reasons names, NULL if it names none. *reasons, not NULL,
 * goes on to what follows; NULL at the end.
 */
const struct sign *found_next_reason(const struct asked *whole, const char **reasons);

/* The alert was once, or is, for the sign of this id, or for what answers like one. */
bool found_alert_tells(const struct open_alert *alert, const char *id);
/* One that is open was, for one of these. */
bool found_alerted_of(const struct context *context, const char *const *ids, size_t count);

/* None that is open was for any other sign. */
bool found_alerted_only(const struct asked *whole, const char *const *ids, size_t count);

/* One that is open has this among its reasons, which may name no sign. */
bool found_alerted_because(const struct context *context, const char *reason);

/* Something that somebody feels, and no danger around them or a wish. */
bool found_is_symptom(const struct sign *sign);
/* A sign after which the renter is asked whether oxygen flows again. */
bool found_is_no_flow(const struct sign *sign);
bool found_no_flow_sign(const struct found *found);

/* Trouble with the unit and a symptom, one of them new. */
bool found_unit_and_symptom(const struct found *found);
/*
 * No power or no unit, every battery spoken of empty, and no backup spoken of: there is no source
 * left. A backup on record is no proof that it is at hand and full.
 */
bool found_no_source(const struct asked *whole, const struct found *found);

/*
 * How many texts of the last 3 minutes told all of this. A value may be another one, and a name may
 * tell whose of several rentals it is about: neither is a repeat.
 */
int found_repeats(const struct asked *whole, const struct found *found);

#endif
