/*
 * What was decided for one text: a list of answers and of things to do, never the doing. The
 * daemon stores it and obeys it, adding no decision of its own.
 */
#ifndef VERDICT_H
#define VERDICT_H

#include "context.h"
#include "message.h"

/* In order of gravity, gravest first: a verdict's route is the gravest of its answers'. */
enum route {
    ROUTE_EMERGENCY,
    ROUTE_CLINICAL,
    ROUTE_EQUIPMENT,
    ROUTE_STAFF,
    ROUTE_UNANSWERED,
    ROUTE_ANSWER,
    ROUTE_CONSENT,
    ROUTE_SMALLTALK
};

enum answer_kind {
    ANSWER_SIGN,
    ANSWER_TOPIC,
    ANSWER_ESTIMATE,
    ANSWER_ASK,
    ANSWER_OFFICE,
    ANSWER_GAP,
    ANSWER_CONSENT,
    ANSWER_COURTESY
};

enum estimate_kind {
    ESTIMATE_HOURS_LEFT,
    ESTIMATE_BATTERY_LIFE,
    ESTIMATE_CHARGING, /* minutes until all are full */
    ESTIMATE_TRIP,
    ESTIMATE_FLIGHT, /* minutes of battery that are needed, and how many batteries that is */
    ESTIMATE_CYLINDER
};

/* Of a trip, by the low end. */
struct trip_estimate {
    int total_minutes;
    bool lasts;
    int short_minutes;  /* without power and without battery */
    int margin_minutes; /* left at the end */
    const char *mend;   /* "car-cord", "wall-stops", "one-battery", "two-batteries", "none"; NULL if
                           it lasts with the reserve in hand */
};

/* A computed number with what it was computed from. */
struct estimate {
    enum estimate_kind kind;
    struct minutes minutes;
    enum mode mode; /* MODE_COUNT if it hangs on no mode; then setting and activity are not set */
    int setting_tenths;
    enum activity activity;
    int batteries;                    /* 0 if it hangs on none */
    int64_t from_utc_s;               /* minutes count from here */
    const char *assumed;              /* "health 80 %; resting" */
    const struct trip_estimate *trip; /* of ESTIMATE_TRIP; minutes are what the batteries last */
};

/* Why: for the night book and `check --why`. */
struct why {
    int score;             /* thousandths */
    const char *nearest;   /* nearest asked-as line or the sign's phrase; NULL if none */
    const char *runner_up; /* id of the second topic, or NULL */
};

enum { ANSWER_EXTRAS_MAX = 6 };

struct answer {
    enum answer_kind kind;
    enum route route;
    const char *id;    /* topic, sign or what is asked ("which-rental"); never NULL */
    const char *topic; /* topic it counts as, or NULL */
    const char *text;  /* what is said of it; "" if nothing */
    /* Sentences that are said too as far as the reply stays short, the first before the next. */
    const char *extras[ANSWER_EXTRAS_MAX];
    size_t extra_count;
    const struct told *read; /* what was read from the text for an estimate, or NULL */
    const struct estimate *estimate;
    struct why why;
};

/* The most urgent is sent first. */
enum urgency { URGENCY_EMERGENCY, URGENCY_URGENT, URGENCY_REPLY, URGENCY_OFFICE };

struct reply {
    const char *text;
    enum urgency urgency;
    bool holds_time; /* minutes or a clock time: works out anew when it goes stale */
};

/* Of a call: who is threatened asked not to be texted, and is not until it is closed. */
#define NO_REPLY_REASON "no-reply"

/* A call to staff about one rental; level ALERT_NONE if there is none. */
struct alert_call {
    enum alert_level level;
    const char *reason; /* "sign:chest-pain", "gap", "office:extend" */
    const char *brief;  /* two or three words for a text: "chest pain" */
    bool ring;          /* text and ring, where there is a road that rings */
    const char *area;   /* the mains failed there, and that is all it is about; or NULL */
    int64_t call_utc_s; /* from when on: now, or once the office is open */
};

enum alert_step {
    ALERT_STEP_NONE,
    ALERT_STEP_TAKE,
    ALERT_STEP_CLOSE,
    ALERT_STEP_TALK, /* takes it, and has the conversation with its renter */
    ALERT_STEP_HAND  /* takes it, and passes it on */
};

/* What staff did to an alert by texting. */
struct alert_change {
    enum alert_step step;
    int64_t number;
    const char *note; /* outcome, when closing */
    bool only_this;   /* when closing: not what is called with it */
    bool names_all;   /* when taking: the reply names all that are called with it */
    const char *to;   /* the colleague's phone, when passing it on */
};

/* Words passed through the line as they were written: of staff to a renter, or the reverse. */
struct relay {
    const char *to;   /* phone; NULL if nothing is passed on */
    const char *text; /* NULL: nothing was written yet */
    int64_t number;   /* of a second phone beside a conversation: the alert that this is about */
};

enum rest_step { REST_STEP_NONE, REST_STEP_BEGIN, REST_STEP_END };

/* Staff say that a renter has died, or take it back. */
struct rest_change {
    enum rest_step step;
    const char *rental_id;
};

enum phone_link_step { PHONE_LINK_NONE, PHONE_LINK_ADD, PHONE_LINK_END };

/* Staff say whose phone it is. */
struct phone_link {
    enum phone_link_step step;
    const char *phone, *rental_id;
};

enum reminder_step {
    REMINDER_KEEP,
    REMINDER_SET,
    REMINDER_OFFER, /* it was offered with this text */
    REMINDER_CANCEL /* all of this phone, for rental_id */
};

/* What becomes of the texts that the sender asked for. */
struct reminder_change {
    enum reminder_step step;
    struct reminder reminder; /* of REMINDER_SET; a new RUNNING_OUT replaces the one before */
};

enum consent_change { CONSENT_KEEP, CONSENT_OUT, CONSENT_IN };

enum { VERDICT_ANSWERS_MAX = 8, VERDICT_REPLIES_MAX = 4 };

struct verdict {
    void *arena; /* everything below lives here */
    enum route route;
    enum language language;
    struct answer answers[VERDICT_ANSWERS_MAX];
    size_t answer_count;
    struct reply replies[VERDICT_REPLIES_MAX];
    size_t reply_count;
    int repeats; /* texts just before that showed the same signs: no heap of copies is sent */
    bool rests;  /* someone has died: all that the program would start for the rental stops */
    struct alert_call alert;
    struct alert_change alert_change;
    struct phone_link phone_link;
    struct relay relay;
    struct rest_change rest_change;
    bool confirms_turn; /* one of staff says that they are there */
    enum consent_change consent;
    const char *rental_id;     /* the rental it is about, or NULL */
    const char *rental_digest; /* the snapshot of it that was used, or NULL */
    bool conversation_changed;
    struct conversation conversation; /* as it stands after this text */
    bool account_changed;             /* also ends what watches the charge told before */
    struct battery_account account;   /* of rental_id */
    int64_t runs_out_utc_s; /* of a mains failure or a changed account: when the batteries end by
                               the low end; 0 if not known */
    struct reminder_change reminder;
};

/* Names as the outside reads them: "emergency", "sign", "hours-left", "urgent". */
const char *route_name(enum route route);
const char *answer_kind_name(enum answer_kind kind);
const char *estimate_kind_name(enum estimate_kind kind);
const char *alert_level_name(enum alert_level level);

/*
 * Appends an answer. Past VERDICT_ANSWERS_MAX the last one gives way to a gap, which tells that not
 * everything was answered (verdict_overflowed()).
 */
struct answer *verdict_add(struct verdict *verdict, enum answer_kind kind, enum route route,
                           const char *id);
bool verdict_overflowed(const struct verdict *verdict);

/*
 * Calls staff. A text makes one alert: the gravest level keeps its reason and the briefs of all its
 * callers, and if any caller wants it to ring, it rings.
 */
void verdict_alert(struct verdict *verdict, enum alert_level level, bool ring, const char *reason,
                   const char *brief);

#endif
