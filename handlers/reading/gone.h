/*
 * Batteries that do not count: given back, broken, left behind, or named only to be left out ("not
 * counting the old one"), and those that were emptied since. Where it is not told of which charge
 * the ones that went were, the fullest of those told before them go. Part of charges.c. Pure.
 */
#ifndef GONE_H
#define GONE_H

#include "charges_again.h"
#include "counted.h"

/* Batteries of which a text says that they went. */
struct gone {
    int number; /* 0 if none */
    size_t at;  /* the item that counts them */
};

/* Marks the number that counts them as spent: it counts none that is there. */
struct gone gone_read(struct items *items);

/* Takes those that went away from the number told before, or else from the charges told before. */
void gone_take(const struct gone *gone, struct counted *counted, struct groups *groups);

/* True if the charge is of a battery that is left out ("scratch the second full one"); what was
 * told of it before goes, too. */
bool gone_is_left_out(const struct items *items, struct groups *groups, const struct group *group);

/* "gastamos una", "went through one": how many were emptied, by the number behind the verb at `at`;
 * 0 if none. *number: its item. */
int gone_emptied(const struct items *items, size_t at, size_t *number);

#endif
