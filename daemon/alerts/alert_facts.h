/*
 * All that one of staff needs to act on an alert without looking anything up: the renter's record
 * and the last words on both sides. Shown only where nobody else reads along: once a button was
 * pressed on the page behind the link of an e-mail, in the shell, and on the telephone once a key
 * has taken the alert; never in a text, an e-mail or what a voicemail might record.
 */
#ifndef ALERT_FACTS_H
#define ALERT_FACTS_H

#include "alert_rows.h"
#include "config.h"

struct alert_fact {
    const char *what;  /* "address", "7:02 pm, said" */
    const char *value; /* never empty */
    bool is_phone;     /* the value is a number to ring, in E.164 if the record has it so */
    bool is_spoken;    /* short and needed at once: read aloud too */
};

struct alert_facts {
    struct alert_fact *list;
    size_t count;
};

/* What the record tells; appended, in `arena`. What it does not tell is left out. */
void alert_facts_of_rental(void *arena, const struct zone *zone, const struct rental *rental,
                           struct alert_facts *facts);

/* The records of the alert's rental, or of all active ones of its phone, or of all its renters, and
 * what was said and told there since the conversation that began it, by each phone of the rental
 * and by staff, in `arena`. */
int alert_facts_read(struct store *store, void *arena, const struct config *config,
                     const struct alert_row *alert, int64_t now_utc_s, struct alert_facts *facts,
                     struct fault *fault);

/* Those that are spoken, as sentences; numbers digit by digit. "" if there are none. */
char *alert_facts_spoken(void *arena, const struct alert_facts *facts);
/* A line for each, for the shell. */
char *alert_facts_lines(void *arena, const struct alert_facts *facts);

#endif
