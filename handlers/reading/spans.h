/*
 * The spans of time that legs are made of: lengths, distances with a speed, ways between two clock
 * times, and bare numbers that go on with them ("bus 45 min, walk 15"). Part of legs.c. Pure.
 */
#ifndef SPANS_H
#define SPANS_H

#include "items.h"
#include "told.h"

struct span {
    size_t at; /* its item */
    int minutes;
    int pace; /* thousandths of a mile an hour, of a distance; else 0 */
    bool has_kind, homeward;
    bool settled; /* its kind is told and hangs on no word around it */
    enum leg_kind kind;
    bool has_seats; /* a bus, a train */
    bool has_power;
    enum power_source power;
};

struct spans {
    struct span list[TOLD_LEGS_MAX];
    size_t count;
};

/* What since_read() and goals_read() left, in the text's order; marks it as spent. Of a trip
 * between two clock times it also sets ready_by. */
void spans_find(struct items *items, struct told *told, struct spans *spans);

/* Sets has_kind, kind and has_seats; a kind that nothing tells is that of what is asked. */
void spans_kind(const struct items *items, const struct told *told, struct spans *spans);

/* Sets has_power and power, once the kinds are set. */
void spans_power(const struct items *items, struct spans *spans);

/* "Plugged in for the first hour of a three hour drive": the whole becomes two, with power on the
 * part of which it is told. After spans_power(). */
void spans_split(const struct items *items, struct spans *spans);

/* The first item of a span with what hedges it: "about a couple of hours". */
size_t span_first(const struct items *items, size_t at);
/* "3 hours there": in one place */
bool span_stays_there(const struct items *items, size_t at);
/* "45 there", "45 de ida" */
bool span_is_way_out(const struct items *items, size_t at);

#endif
