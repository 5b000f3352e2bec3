/*
 * One linear decision a label ("this label or any other"): support vector machines with squared
 * hinge loss, solved by coordinate descent in the dual (Hsieh, Chang, Lin, Keerthi and
 * Sundararajan, "A Dual Coordinate Descent Method for Large-scale Linear SVM", ICML 2008). All
 * labels are solved side by side, so that one walk over a text's features serves them all.
 */
#ifndef LINEAR_H
#define LINEAR_H

#include <stddef.h>
#include <stdint.h>

#include "feature.h"

/*
 * What was learnt, in a byte a weight: one line of `stride` a feature, one byte a label, and what
 * the line's bytes are to be taken times. Against floats no figure of tests/bench differs by more
 * than chance.
 */
struct linear {
    int8_t *weights;
    float *scales; /* of each feature */
    float *bias;   /* of each label */
    uint32_t features;
    int labels;
    int stride; /* labels, rounded up to a multiple of LINEAR_LANES; the rest are 0 */
};

enum { LINEAR_LANES = 4 };

/* What learning knows beyond that, for linear_without(): lines of `stride` floats. Freeing the
 * weights frees it all. */
struct linear_trace {
    float *weights; /* of each feature, and the bias */
    float *steps;   /* of each text: what was learnt from it */
    float *square;  /* of each text: the sum of its squares and of the bias */
};

/* Texts to learn from: rows[i] asks for labels[i], a negative label is none of them; costs[i] is
 * what getting it wrong costs against others, own_counts how many times that for its own label. */
struct examples {
    const struct row *rows;
    const int *labels;
    const float *costs;
    size_t count;
    float own_counts;
};

/* Learns from all the examples. Weights and trace live in `arena`. */
void linear_train(void *arena, const struct examples *examples, uint32_t features, int labels,
                  struct linear *linear, struct linear_trace *trace);

/*
 * What would have been learnt without the examples of part `without`: takes their share out of a
 * copy of the weights and learns a little more from the others. parts[i] belongs to example i.
 * Freeing the result's weights frees it all.
 */
void linear_without(void *arena, const struct examples *examples, const uint8_t *parts,
                    uint8_t without, const struct linear *linear, const struct linear_trace *trace,
                    struct linear *result);

/* Brings a line of numbers to bytes; returns what they are to be taken times. */
float linear_round(const float *line, size_t count, int8_t *rounded);

/* Copies what it points at (image.h). */
struct image;
void linear_image(struct image *image, struct linear *linear);

/* One weight. */
static inline float
linear_weight(const struct linear *linear, uint32_t feature, int label)
{
    return linear->weights[feature * (size_t)linear->stride + (size_t)label] *
           linear->scales[feature];
}

/* The decision value of every label: scores has room for `stride`. */
void linear_scores(const struct linear *linear, const struct row *row, float *scores);

#endif
