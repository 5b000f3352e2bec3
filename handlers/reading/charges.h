/*
 * The batteries of a text: how many, and how full each is. Pure; marks what it took as spent.
 */
#ifndef CHARGES_H
#define CHARGES_H

#include "items.h"
#include "told.h"

/* What of it only matters for what is asked back. */
struct charges_read {
    bool several;    /* a charge of "the batteries", and nowhere how many they are */
    bool part;       /* such a charge is less than full: "one light on each" */
    bool a_battery;  /* "a battery", any one: nothing but an article counts it */
    size_t first_at; /* item of the first charge told; items->count if none */
};

/* Fills charges, lights, count, impossible of *told. */
struct charges_read charges_read(struct items *items, struct told *told);

/* The words of items [at, at + count), for asking back. */
char *items_words(const struct items *items, size_t at, size_t count);

#endif
