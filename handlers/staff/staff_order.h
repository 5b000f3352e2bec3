/*
 * What one of staff orders by text, read half asleep as it was typed: a word of ours, the alert's
 * number or none, and the rest of the text as it stands. Private to staff*.c.
 */
#ifndef STAFF_ORDER_H
#define STAFF_ORDER_H

#include "asked.h"

enum staff_word {
    STAFF_MINE,   /* takes an alert */
    STAFF_SORTED, /* closes it; the rest is what happened */
    STAFF_TALK,   /* the rest goes to the renter; without any, what the renter texts comes here */
    STAFF_HAND,   /* passes it on to the colleague whom the rest names */
    STAFF_OPEN    /* lists what is open; stands alone */
};

struct staff_order {
    enum staff_word word;
    bool has_number;
    int64_t number;
    const char *rest; /* behind word and number; never NULL */
    size_t next;      /* the token that it begins at */
};

/* Reads the order that begins at token `at`: "MINE 12", "mine #12.", "Mine12", "mine alert 12". */
bool staff_order_read(const struct asked *whole, size_t at, struct staff_order *order);

/* The text begins with a word that is one slip of the finger from ours, and with a number behind
 * it: "Mien 5", "sortd 5 plug was loose"; OPEN may stand alone. */
bool staff_order_slipped(const struct asked *whole, struct staff_order *order);

/* "MINE" */
const char *staff_order_word(enum staff_word word);

/* These bytes, in any case (of ASCII), are this word. */
bool staff_is_word(const char *text, size_t length, const char *word);

#endif
