/*
 * How often the phrases of each label say each stem: a second opinion beside the linear decisions.
 * It sees what they do not, namely how much of a text a label's phrases account for.
 */
#ifndef USAGE_H
#define USAGE_H

#include <stddef.h>
#include <stdint.h>

#include "feature.h"

struct usage {
    uint32_t *often;  /* of each stem: how many phrases say it */
    uint16_t *counts; /* of each stem and label: how many of the label's phrases say it */
    uint32_t *said;   /* of each label: the sum of its counts; one more at the end: of all */
    uint32_t stems;
    int labels;
};

/*
 * Counts rows[i] for labels[i], which is below label_count, but none that are of part `without` or
 * `about`.
 */
void usage_build(void *arena, const struct feature_space *space, const struct row *rows,
                 const int *labels, const uint8_t *parts, size_t count, int label_count,
                 int without, int about, struct usage *usage);

/* What usage says of a text and a label. */
struct usage_view {
    float covered; /* share of the text's stems, the rarer the more, that the label says */
    float likely;  /* how likely the label speaks so (naive Bayes), in logarithms; for comparing */
};

/* Fills views[k] for labels[k]. */
void usage_view(const struct usage *usage, const struct row *row, const int *labels, size_t count,
                struct usage_view *views);

#endif
