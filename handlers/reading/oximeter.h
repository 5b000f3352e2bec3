/*
 * Oximeter values in free text ("o2 is 84", "sat 86%", "reading eighty five"), told apart from
 * battery percentages, clock times, settings, temperatures, room numbers and heights; also without
 * a name ("she is at 84 and panting"). A copy of our own words in a reaction tells none. Pure.
 */
#ifndef OXIMETER_H
#define OXIMETER_H

#include <stdbool.h>
#include <stddef.h>

/*
 * The lowest oxygen reading that the text tells, in percent (30 to 100): true and *percent set,
 * with the bytes [*start, *end) that tell it. False, nothing set, if there is none.
 */
bool oximeter_read(const char *text, int *percent, size_t *start, size_t *end);
/* The same; *sure if oxygen is named or whose value it is, and not only "it says 92". */
bool oximeter_read_how(const char *text, int *percent, size_t *start, size_t *end, bool *sure);

/*
 * The same of a text that comes not long after one that told a value: also "84", "its 83 now", "ya
 * va en 82", but nothing that is told of a battery, a time or another thing. For those above this
 * is no substitute: they are read from longer texts too.
 */
bool oximeter_read_again(const char *text, int *percent);

#endif
