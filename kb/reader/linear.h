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

/* Weights: one line of `stride` floats a feature, one float a label; the last line is the bias. */
struct linear {
    float *weights;
    uint32_t features;
    int labels;
    int stride; /* labels, rounded up to a multiple of LINEAR_LANES; the rest are 0 */
};

enum { LINEAR_LANES = 4 };

/* What was learnt from each text: one line of `stride` floats a text. For linear_without(); freeing
 * the steps frees it all. */
struct linear_trace {
    float *steps;
    struct row *shared; /* of each text: what of it some other text has too */
    float *own;         /* of each text: the sum of squares of the rest */
    float *square;      /* of each text: the same of all of it and the bias */
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
 * copy of the weights and learns a little more from the others. parts[i] belongs to example i. The
 * weights of features that one text alone has stay as they were: a text left out has none of them
 * that counts.
 */
void linear_without(void *arena, const struct examples *examples, const uint8_t *parts,
                    uint8_t without, const struct linear *linear, const struct linear_trace *trace,
                    struct linear *result);

/* Copies what it points at (image.h). */
struct image;
void linear_image(struct image *image, struct linear *linear);

/* The decision value of every label: scores has room for `stride`. */
void linear_scores(const struct linear *linear, const struct row *row, float *scores);

#endif
