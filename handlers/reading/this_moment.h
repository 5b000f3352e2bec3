/* A charge that is told to be of now. Part of times.c. Pure. */
#ifndef THIS_MOMENT_H
#define THIS_MOMENT_H

#include "items.h"

/* "its at 40 now", "ahora marca 45": however long it has run; `charge`: its first item. */
bool is_of_this_moment(const struct items *items, size_t charge);

#endif
