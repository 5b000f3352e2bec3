/*
 * Which open alert one of staff means: by its number, by the renter's name or place, or as the only
 * one. What cannot be told is asked, and what they ordered waits for the answer. Private to
 * staff*.c.
 */
#ifndef STAFF_MEANT_H
#define STAFF_MEANT_H

#include "staff_order.h"
#include "verdict.h"

struct staff_meant {
    const struct open_alert *alert; /* NULL: not told, or several may be meant */
    bool by_name;                   /* and not by its number or as the only one */
    const char *rest;               /* the words of the order without what only tells which */
};

/* The one that all open ones are called by; NULL if there are several to choose from. */
const struct open_alert *staff_only_alert(const struct context *context);

/* This number's; NULL if it is not open. */
const struct open_alert *staff_numbered(const struct context *context, int64_t number);

/*
 * The order is about this alert. A name or place ("gwen", "room 12", "cabin 4") counts in front of
 * the rest, of MINE anywhere, and there what it is about too ("chest"). Words for a renter go as
 * they were written, but for "to gwen:".
 */
struct staff_meant staff_meant(const struct asked *whole, const struct staff_order *order);

/* A name of one of the open alerts, or "the renter" and the like, begins at token `at`. */
bool staff_names_renter(const struct asked *whole, size_t at);

/* The text has the name or place of this one anywhere. */
bool staff_names_alert(const struct asked *whole, const struct open_alert *alert);

/* Something that they were asked not long ago waits for its answer. */
bool staff_meant_waits(const struct context *context);
/* Keeps the order until it is told which one is meant. */
void staff_meant_ask(const struct asked *whole, struct verdict *verdict);
/* It was told, or there is another order. */
void staff_meant_close(struct verdict *verdict);

/* The one that this text tells by number, name or place, and beside it only words of `around`, with
 * a blank before and after each; or NULL. */
const struct open_alert *staff_only_named(const struct asked *whole, const char *around,
                                          bool *by_name);

/*
 * This text is nothing but the number, name or place of an alert, or YES to a slip, and answers
 * what was asked not long ago: *earlier is the text that waited, *order what it orders, *meant of
 * which one.
 */
bool staff_meant_answered(const struct asked *whole, struct asked *earlier,
                          struct staff_order *order, struct staff_meant *meant);

#endif
