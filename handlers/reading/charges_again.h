/*
 * When a telling of a charge is no other battery: the same one told again, later, twice in one
 * phrase, or guessed otherwise. Part of charges.c. Pure.
 */
#ifndef CHARGES_AGAIN_H
#define CHARGES_AGAIN_H

#include "items.h"
#include "subjects.h"

enum { GROUPS_MAX = 16 };

struct groups {
    struct group list[GROUPS_MAX];
    size_t count;
};

void groups_add(struct groups *groups, const struct group *group);
void groups_drop(struct groups *groups, size_t from, size_t count);

/* "has 5 lights and 4 are lit": the gauge, then its lights. */
bool charge_are_lit(const struct items *items, const struct groups *groups,
                    const struct group *group);
/* "it says 75 .. now its 60": the last telling holds. */
bool charge_is_same_again(const struct items *items, const struct groups *groups,
                          const struct group *group);
/* "from 70 to 100 .. both are at 70": told of all behind what was told of one. */
bool charge_is_of_all(const struct groups *groups, const struct group *group);
/* "It says 9. nine percent." */
bool charge_is_said_again(const struct items *items, const struct groups *groups,
                          const struct group *group);
/* "nineteen, 19" */
bool charge_is_spelt_again(const struct items *items, const struct groups *groups,
                           const struct group *group);
/* "got 2 full ones. both full", "full battery. how long does a full battery last": of those told.
 */
bool charge_is_of_those_told(const struct items *items, const struct groups *groups,
                             const struct group *group);
/* "a fresh full one" */
bool charge_is_doubled(const struct items *items, const struct groups *groups,
                       const struct group *group);
/* "its 60 maybe 50": the last group becomes the lower of both. */
bool charge_guess_again(const struct items *items, struct groups *groups,
                        const struct group *group);

/* "3 lights on one and 4 on the other", "the other two have 4": a number of lights, behind lights.
 */
bool charge_lights_again(const struct items *items, size_t at, const struct groups *groups,
                         struct state *state);

#endif
