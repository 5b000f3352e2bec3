/*
 * What the answers that are worked out (hours_left.c, battery_life.c, charge_time.c, fly.c,
 * cylinder_left.c) share: from what is told to charges, and from what was worked out to words.
 * Private to them.
 */
#ifndef ESTIMATE_PARTS_H
#define ESTIMATE_PARTS_H

#include "battery_set.h"
#include "estimate.h"
#include "running.h"
#include "say.h"

/* One battery each, in percent. */
struct charges {
    struct percent list[BATTERY_SET_MAX];
    size_t count;
};

/* What a number is worked out from. */
struct ground {
    struct told told;
    int64_t as_of_utc_s;
    bool remembered;
    struct running running;
    int cold_percent; /* of the run time that counts */
    struct minutes time;
};

/* A sentence with at most one argument. */
char *estimate_say(const struct asked *asked, enum phrase phrase, const char *argument);
void estimate_append(char **text, const char *sentence);
/* A sentence that is left out where the reply would grow too long. */
void estimate_extra(struct answer *answer, const char *sentence);

/*
 * Little time is left: asks whether a plug is near, or calls staff where that cannot be asked or
 * waited for. For the answer that was added last.
 */
void estimate_see_to_plug(const struct asked *asked, struct verdict *verdict, struct minutes time);

/* A copy of what was told, in the arena. */
const struct told *estimate_keep(const struct asked *asked, const struct told *told);
struct answer *estimate_add(const struct asked *asked, struct verdict *verdict,
                            enum answer_kind kind, enum route route, const struct told *told,
                            const char *id, const char *topic);

/* Batteries whose charge is not told count as `untold`. False if the gauge has no such light. */
bool estimate_charges(const struct told *told, const struct equipment *equipment,
                      struct percent untold, struct charges *charges);

/* What a new battery lasts in the cold that is told; false if the unit's file does not say. */
bool estimate_take_cold(const struct asked *asked, struct ground *ground, struct minutes *lasts);

/* "Counted with continuous 2, ordered at rest."; before the stop `others`: "", or more orders. */
char *estimate_counted_with(const struct asked *asked, const struct running *running,
                            const char *others);
/* Says it with the answer, as an extra unless several rentals are on this phone. */
void estimate_say_counted(const struct asked *asked, const struct running *running,
                          const char *others, struct answer *answer);
/* "Our record says continuous 2 at rest; please don't change it ..." */
char *estimate_record_says(const struct asked *asked, const struct running *running);

/* Gives the answer its number, worked out for so many batteries. */
void estimate_attach(const struct asked *asked, struct answer *answer, const struct ground *ground,
                     enum estimate_kind kind, int batteries);

/* Gives the answer a number that hangs on no mode. */
void estimate_attach_plain(const struct asked *asked, struct answer *answer,
                           enum estimate_kind kind, struct minutes minutes, int batteries,
                           const char *assumed);

/* "I read: 100%, 40%." behind the text, so that a misreading shows; nothing if nothing was read. */
void estimate_append_read(const struct asked *asked, const struct told *told, char **text);

/*
 * What this question tells for a sum of this kind, or the whole text if that tells more of it ("Can
 * all be full by 7? They are at 20 and 30"). True if the question itself asks for that kind.
 */
bool estimate_read(const struct asked *asked, enum told_kind kind, struct told *told);
/* More batteries than the record has: asks back, once. */
bool estimate_too_many(const struct asked *asked, struct verdict *verdict, const struct told *told,
                       const char *topic);
/*
 * Keeps the charges that the renter told as what the rental's batteries hold ("how long now?"
 * counts from there). Not what is only supposed ("if both are full") or will be, nor more batteries
 * than the record has.
 */
void estimate_remember(const struct asked *asked, struct verdict *verdict, const struct told *told);
/* What the renter told before holds no more, and what they tell now is not known yet: nothing is
 * counted from it, and what watches it ends. Nothing if a case is only supposed. */
void estimate_forget(const struct asked *asked, struct verdict *verdict);
/* An answer of this id is there already: it was worked out for another question of the text. */
bool estimate_is_said(const struct verdict *verdict, const char *id);
/* Asks back what a sum lacks, and keeps the question open. */
void estimate_ask_back(const struct asked *asked, struct verdict *verdict, const struct told *told,
                       const char *topic, const char *text);
/* From a phone that we do not know: whom to call. The office hears of who is on a battery now. */
void estimate_no_record(const struct asked *asked, struct verdict *verdict, const struct told *told,
                        const char *topic, const char *brief);
/* No number is made up: a person answers. */
void estimate_to_person(const struct asked *asked, struct verdict *verdict, const struct told *told,
                        const char *topic, const char *text, enum alert_level level,
                        const char *reason, const char *brief);

/*
 * The moment of told->ready_by, on the day told or else the next time the clock shows it; false if
 * it lies before now.
 */
bool estimate_ready_by(const struct asked *asked, const struct told *told, int64_t *utc_s);

/* "continuous 3", if the unit's file says of what runs that it takes the wall; else NULL. */
char *estimate_wall_only_mode(const struct asked *asked, const struct running *running,
                              const struct told *told);
/*
 * "At continuous 3 the unit runs only from the wall"; NULL if the unit's file does not say so of
 * what runs.
 */
char *estimate_wall_only(const struct asked *asked, const struct running *running,
                         const struct told *told);

#endif
