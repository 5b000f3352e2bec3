/* Settings that are told each with its activity: "3 when I walk, 2 sitting". Part of settings.c. */
#ifndef SETTINGS_EACH_H
#define SETTINGS_EACH_H

#include "items.h"
#include "told.h"

/*
 * Reads them if two or more are told: the setting is that of the activity asked about, which stands
 * elsewhere in the text; if it is asked about none of them or about several, the highest of those
 * that may be meant. Marks numbers and their activities as spent.
 */
void settings_of_each(struct items *items, struct told *told);

/* "I use 2 but 3 when I hike": one with its activity, beside a usual one that has been read; it
 * holds if the activity is asked about. */
void setting_of_one(struct items *items, struct told *told);

#endif
