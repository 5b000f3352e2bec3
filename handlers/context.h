/*
 * Everything that a verdict may depend on beside the text itself: complete, const, plain data.
 * daemon/context.c fills it from the store, the configuration and the clock. There is no function
 * to fetch more, so a verdict can be stored with its context and replayed.
 */
#ifndef CONTEXT_H
#define CONTEXT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "kb.h"
#include "rental.h"
#include "told.h"
#include "zone.h"

/* What the office set in the configuration and texts may say. Never NULL but where it says so. */
struct house {
    const char *company; /* "Larkspur Air Rentals" */
    const char *phone;   /* as renters should dial it */
    const char *address;
    /* In each language; NULL if the office wrote it in English only, which is said then. */
    const char *hours[LANGUAGE_COUNT];      /* "8 am to 6 pm, every day" */
    const char *return_how[LANGUAGE_COUNT]; /* how and where to give the unit back, one sentence */
    const char *emergency_number;           /* "911" */
    int emergency_reading;                  /* an oximeter value at or below this is an emergency */
    int late_s;         /* a text older than this is answered with the time it was sent */
    int conversation_s; /* silence after which a conversation begins anew */
};

enum sender_role { SENDER_STRANGER, SENDER_RENTER, SENDER_STAFF };

/* A question that we asked the renter and whose answer we wait for. */
enum open_question {
    QUESTION_NONE,
    QUESTION_WHICH_RENTAL,  /* two rentals on this phone; choices are rental ids. Of staff: which
                               open alert, without choices; or what happened to the one of which
                               the number is the first choice */
    QUESTION_WHICH_TOPIC,   /* choices are topic ids */
    QUESTION_WHICH_CHARGE,  /* what a sum lacks: "How much is in each battery?", or when it must be
                               charged, the airline's figure, the cylinder's size, or when to
                               remind; asked_about tells which */
    QUESTION_FLOWING,       /* "Is oxygen flowing again? YES or NO" */
    QUESTION_PLUG,          /* "Is there a plug where you are? YES or NO" */
    QUESTION_READING_OR_AGE /* "If 84 is an oxygen reading and no age, call 911 now." */
};

enum { CHOICES_MAX = 4 };

/* What the last text told as a number; a bare one that corrects it tells the same kind of thing. */
enum told_thing {
    THING_NONE,
    THING_CHARGE, /* percent */
    THING_COUNT,  /* batteries, all as full */
    THING_SETTING,
    THING_LENGTH,   /* of the one leg or flight */
    THING_TIME,     /* by when */
    THING_CYLINDER, /* gauge or flow: they cannot be taken for each other */
    THING_SEVERAL   /* which of them is meant cannot be known */
};

/*
 * What was answered last, for a text that goes on with it ("and if she walks?", "make that 10").
 * The words that it was worked out for are the conversation's asked_about.
 */
struct last_answer {
    int64_t at_utc_s; /* 0: nothing that could be gone on with */
    bool is_sum;      /* the rest is told */
    bool goes_on;     /* the text at hand went on with it; not kept */
    const char *rental_id;
    int64_t wrote_utc_s; /* when the renter told the charges */
    struct told told;
    enum told_thing newest;
};

/* Where the talk with one phone stands; append-only in the store, newest row = current. */
struct conversation {
    int64_t row;        /* id of the row this was read from; 0 if there is none */
    int64_t last_utc_s; /* when we last answered; 0 if never */
    enum open_question question;
    int64_t asked_utc_s;
    const char *asked_about; /* text of the message that made us ask; NULL if erased or none */
    const char *choices[CHOICES_MAX];
    size_t choice_count;
    struct last_answer last;
    const char *rental_id;  /* the rental that this phone chose to speak of, or NULL */
    const char *in_charge;  /* staff phone that leads this conversation, or NULL */
    bool opted_out;         /* consent withdrawn: nothing but what they ask for in an emergency */
    bool is_spoken;         /* the language is known */
    enum language language; /* that we answered in last */
};

/* What is known of the charge of one rental's batteries, from the newest report of any phone. */
struct battery_account {
    bool known;
    int64_t as_of_utc_s; /* when the renter read the gauges */
    struct told told;    /* charges, lights; mode and setting if told */
};

/* Whether more texts come than a person writes, or than the line can answer. */
enum limit {
    LIMIT_NONE,
    LIMIT_SENDER, /* too many of this sender, or the same words too often */
    LIMIT_ALL     /* too many replies to everybody together */
};

enum alert_level { ALERT_NONE, ALERT_OFFICE, ALERT_URGENT, ALERT_EMERGENCY };

/* An alert that is not closed. */
struct open_alert {
    int64_t number; /* what staff call it */
    int64_t head;   /* of a mains failure that several told: the alert that all are called by; else
                       its own number */
    enum alert_level level;
    const char *rental_id;          /* NULL for a stranger's */
    const char *first_name, *place; /* as the current record has them; or NULL */
    int64_t runs_out_utc_s;         /* of a mains failure: low end of the batteries; 0: not told */
    const char *phone;              /* whose text began it */
    const char *reason;             /* the gravest, "sign:chest-pain" */
    const char *reasons;            /* each so far, that told last at the end, a comma between */
    const char *brief;              /* what staff are told: "chest pain" */
    const char *taken_by;           /* staff phone, or NULL */
    const char *taken_name; /* whose phone that is; NULL if nobody has it or it is not known */
    const char *offered_to; /* staff phone that whoever has it passes it on to, or NULL */
    bool has_talk;          /* who has taken it has the conversation with one of its phones */
    bool is_new;            /* staff have not been told of it, or not since it joined others */
    bool no_texts; /* its phone gets none: opted out, a landline, one of staff's, or no phone */
    int64_t opened_utc_s;
    int64_t grave_utc_s;     /* when an emergency was told last; 0 if none was */
    const char *grave_texts; /* in which a sign made it an emergency, a line each; NULL if none did,
                                or they are erased */
};

enum reminder_kind {
    REMINDER_OFFERED,     /* not set: it was offered, which is done once */
    REMINDER_RUNNING_OUT, /* when so little is left, counted low */
    REMINDER_AT           /* at a time that the renter chose */
};

/* A text that this phone asked for, and that waits for its time. */
struct reminder {
    enum reminder_kind kind;
    const char *rental_id;
    int64_t due_utc_s;
    int64_t ends_utc_s;  /* of RUNNING_OUT: when the low end is used up */
    int64_t as_of_utc_s; /* of RUNNING_OUT: when the charge was so */
};

/* A text of the same sender not long ago, oldest first. */
struct recent_text {
    const char *text;
    int64_t sent_utc_s;
};

/* Someone of staff, the sender among them. */
struct colleague {
    const char *name, *phone;
};

/* A turn on call, for one of staff. */
enum turn_state {
    TURN_NOT_ASKED, /* there is none to confirm */
    TURN_ASKED_THEM,
    TURN_THEIRS, /* they have confirmed it */
    TURN_ANOTHERS
};

struct context {
    const struct kb *kb;
    const struct lexicon *lexicon; /* made with that kb */
    struct workspace *workspace;   /* stemmers; the only thing here that is mutable */
    const struct house *house;
    const struct zone *zone;
    int64_t now_utc_s;
    int64_t office_opens_utc_s; /* when it is closed now; else not after now */
    enum sender_role role;
    const char *staff_name;             /* when role is SENDER_STAFF */
    const struct colleague *colleagues; /* when role is SENDER_STAFF */
    size_t colleague_count;
    enum turn_state turn;                   /* when role is SENDER_STAFF */
    const char *turn_name;                  /* who has it, of TURN_ANOTHERS */
    const struct rental *rentals;           /* of this phone, active ones first */
    const struct battery_account *accounts; /* one for each rental */
    size_t rental_count;
    const struct rental *named_rental; /* for staff: the one whose id is the text's last word; or
                                          NULL. A closed one too */
    bool rests; /* whose rental it is has died, as staff say: they are left alone but for signs */
    struct conversation conversation;
    const struct recent_text *recent; /* of the last 3 minutes, this text not among them */
    size_t recent_count;
    enum limit limit;
    bool limit_told; /* since it began the sender was told, and so was the office */
    bool is_echo;    /* the text is one that we sent to this phone not long ago, word for word */
    const struct open_alert *alerts; /* of this sender's rentals; for staff, all open ones */
    size_t alert_count;
    const struct reminder *reminders; /* of this phone, set by earlier texts or offered */
    size_t reminder_count;
};

enum { JOIN_RECENT_S = 180 }; /* texts this close together are also read as one for signs */

#endif
