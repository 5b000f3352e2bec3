/* How well a score tells two kinds of texts apart. */
#ifndef AREA_H
#define AREA_H

#include <stddef.h>

/* Of some texts: their scores, and how many came out right. */
struct scores {
    int *list;
    size_t count, right;
};

/* Chance that a text inside scores higher than one outside (AUROC); equal scores count half. */
double area(const struct scores *inside, const struct scores *outside);

#endif
