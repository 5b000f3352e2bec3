/* Numbers that count batteries: "I have 3", "the other one I havent checked". Pure. */
#ifndef COUNTED_H
#define COUNTED_H

#include "items.h"

struct counted {
    int total;      /* the last telling of how many there are; 0 if none */
    size_t at;      /* its item */
    size_t both_at; /* the item of "both", where they are counted by it; 0 if not */
    int on_top;     /* of which nothing is known, beside those told */
    bool parts;     /* it is the first of several parts: "1 in the machine, 1 spare" */
};

/* What is left to count once the charges have taken theirs; `first_charge` is the first item that
 * told one, items->count if none did. */
struct counted counted_read(struct items *items, size_t first_charge);

/* A free whole number that may count batteries. */
bool is_count(const struct items *items, size_t at);
/* "battery 1 is at 80": its name. */
bool is_label(const struct items *items, size_t at);
/* "on 2", "pulse 3": how the unit is set. */
bool is_setting_number(const struct items *items, size_t at);
/* "2 of the 3 are full": of the 3 batteries that there are. */
bool is_whole_of_part(const struct items *items, size_t at);

#endif
