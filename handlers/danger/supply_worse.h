/*
 * What they breathe from gets worse after trouble with it was told: "al 10", "one light left", "se
 * me acabo una", "it beeps", "power company says tomorrow noon", "stopped again". By themselves
 * these words tell little; while an alert about the supply is open they tell that the end is near.
 * And a last battery that is nearly empty where nothing can be plugged in, told in one text. Pure.
 *
 * A charge of 25 percent or one light is low; 10 percent or a quarter of an hour is too little to
 * get anywhere when they are stuck, and 5 percent when the power is out (common practice, no
 * source).
 */
#ifndef SUPPLY_WORSE_H
#define SUPPLY_WORSE_H

#include "asked.h"

enum supply_worse {
    SUPPLY_NOT_WORSE,
    SUPPLY_STOPPED_AGAIN,
    SUPPLY_CYLINDER_LOW,
    SUPPLY_CYLINDER_LAST, /* it is, and the unit gives nothing */
    SUPPLY_LAST,          /* it may be the last battery */
    SUPPLY_NONE_LEFT      /* and there is nothing else */
};

/* The gravest that the text tells. */
enum supply_worse supply_worse_told(const struct asked *whole);

/* The last charge told of as good as empty, and no way to a plug: "stuck with 5% left". */
bool supply_is_cut_off(const struct asked *whole);

#endif
