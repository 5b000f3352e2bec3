/*
 * What staff answer to an alert over HTTP, as a job of the turn: by a key on the telephone, by the
 * link of an e-mail, or by a signed request in their name. Only what was committed is told.
 */
#ifndef HAND_JOB_H
#define HAND_JOB_H

#include "alert_facts.h"
#include "alert_hands.h"
#include "gateway.h"

struct turn;

enum hand_source {
    HAND_BY_RING, /* report, service: the call says which alert and who */
    HAND_BY_LINK, /* token: the link says which alert and who */
    HAND_BY_CALL  /* number, who */
};

/* What was asked. Borrowed until `done`. */
struct hand_request {
    enum hand_source source;
    struct ring_report report;
    const char *service;
    const char *token;
    int64_t number;
    const char *who;
    bool is_closing;     /* of a link or a signed request */
    const char *outcome; /* when closing; never empty */
    int64_t now_utc_s;
    const struct config *config;
};

enum hand_state {
    HAND_TOLD,       /* `result` says what came of it */
    HAND_UNKNOWN,    /* no such call or link */
    HAND_SPENT,      /* the link is used or has expired */
    HAND_NOTHING,    /* a call without a key, or with one that means nothing */
    HAND_NOT_WRITTEN /* the store took nothing; ask again */
};

struct hand_answer {
    enum hand_state state;
    enum hands_result result;
    int64_t number;
    bool is_closing;
    const char *who;
    const char *words; /* for a person: "Alert 12 is yours."; by ring also what is needed then */
    bool is_yours;     /* `alert` can be closed with `token` now */
    struct alert_row alert;
    struct alert_facts facts; /* of `alert` */
    const char *token;
};

/* `done` is called once, from the loop, never from inside this call. */
void hand_job_add(struct turn *turn, const struct hand_request *request,
                  void (*done)(void *data, const struct hand_answer *answer), void *data);

#endif
