#include "area.h"

double
area(const struct scores *inside, const struct scores *outside)
{
    double higher = 0;
    size_t i, k;

    for (i = 0; i < inside->count; i++) {
        for (k = 0; k < outside->count; k++) {
            higher += inside->list[i] > outside->list[k]
                          ? 1
                          : (inside->list[i] == outside->list[k] ? 0.5 : 0);
        }
    }
    return higher / (double)inside->count / (double)outside->count;
}
