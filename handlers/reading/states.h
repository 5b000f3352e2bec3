/*
 * One telling of how full a battery is: percent, words, gauge lights, or a bare number where only a
 * charge can stand. What is wished for ("be full by 7"), denied or long past tells none. Pure.
 */
#ifndef STATES_H
#define STATES_H

#include "interval.h"
#include "items.h"

struct state {
    bool is_lights;
    int lights; /* of 4, or of what the gauge has: whole ones */
    struct percent charge;
    bool cannot;        /* 130 %, 5 of 4 lights */
    bool adjacent;      /* a number right before it counts its batteries: "2 full" */
    bool plural;        /* "llenas": several, however many */
    size_t from, count; /* items */
};

/*
 * The state that begins at item `at`; `after_state` if the item before the last pause or "and" told
 * one, which lets a bare number go on with it ("20, 20 and half"). False if there is none. What is
 * no state but looks like one (a goal) is marked as spent.
 */
bool state_at(struct items *items, size_t at, bool after_state, struct state *state);

#endif
