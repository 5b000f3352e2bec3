/*
 * Numbers made whole and given their unit: "two and a half", "2-3 hours", "2h30", "hora y media",
 * "1,200 psi", "minus 5 C". Works on the items in place. Pure.
 *
 * A duration is an amount in UNIT_MINUTE whose value is in minutes, rounded up; of a range both
 * ends are kept. Every other amount is in thousandths of its unit.
 */
#ifndef AMOUNTS_H
#define AMOUNTS_H

#include "items.h"

void amounts_make(struct items *items);

/* Minutes of the duration at `at`: of a range the longer end. */
int duration_minutes(const struct items *items, size_t at);
bool item_is_duration(const struct items *items, size_t at);

#endif
