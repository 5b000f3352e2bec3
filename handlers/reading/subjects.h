/*
 * Of which batteries, and of how many, a charge is told: by the words before it ("2 full", "both at
 * 50", "the other two") or behind it ("20 each"). Part of charges.c. Pure.
 */
#ifndef SUBJECTS_H
#define SUBJECTS_H

#include "items.h"
#include "states.h"

enum { ALL_OF_THEM = -1, SEVERAL = -2 };

/* States that one subject tells. */
struct group {
    struct state state;
    int times;      /* 1 and more, ALL_OF_THEM, SEVERAL */
    bool named;     /* has a subject of its own */
    int ordinal;    /* "the second one": 2; 0 if none */
    size_t subject; /* the item of "the spare", "the second one"; 0 if none */
    bool of_them;   /* "one of those", "used up one": of those told before */
};

/* Sets times, named and ordinal of the group by the words before item `at`; marks the number that
 * counts as spent. */
void subject_before(struct items *items, size_t at, struct group *group);
/* The same by what is behind the state: "20 each", "full batteries x4", "full on both". */
void subject_behind(struct items *items, struct group *group);

/* "4 between them", "4 in total": what item `at` tells is of all of them together, and of none how
 * much it has. */
bool is_told_of_all_together(const struct items *items, size_t at);

/* The next item from `at` on that carries something. */
size_t over_links(const struct items *items, size_t at);

#endif
