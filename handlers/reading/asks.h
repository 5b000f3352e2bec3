/*
 * What a text asks to be worked out, and what must be asked back for it. Pure.
 *
 * Some kinds are told by their own words and known before anything is read (a reminder, a cylinder,
 * charging, a flight); between a trip, the hours left and the life of a battery in general what was
 * read decides.
 */
#ifndef ASKS_H
#define ASKS_H

#include "charges.h"
#include "items.h"
#include "told.h"

/* By words alone: TOLD_NOTHING if it hangs on what is read. */
enum told_kind asks_by_words(const struct items *items);

/* By what was read so far, before legs are. */
enum told_kind asks_by_reading(const struct items *items, const struct charges_read *charges,
                               const struct told *told);

/* Adds to told->missing what its kind needs and the text does not tell. */
void asks_missing(const struct items *items, const struct charges_read *charges, struct told *told);

#endif
