#include "calibrate.h"

#include <math.h>
#include <string.h>

#include "memory.h"

/* ---- Logistic regression by Newton's method ------------------------------------------------- */

/* Steps at most; they double the right digits each, so a small one is the last. */
enum { STEPS = 25 };
static const double small = 1e-10;

/* Keeps factors finite where the trials would allow any size. */
static const double ridge = 0.05;

static double
likelihood(const double *factors, const struct evidence *evidence)
{
    double sum = 0;
    int i;

    for (i = 0; i < MEASURE_COUNT; i++) {
        sum += factors[i] * (double)evidence->measure[i];
    }
    return 1 / (1 + exp(-sum));
}

/* Solves a symmetric positive definite system in place (Cholesky). */
static void
solve(double a[MEASURE_COUNT][MEASURE_COUNT], double b[MEASURE_COUNT])
{
    int i, j, k;

    for (i = 0; i < MEASURE_COUNT; i++) {
        for (j = 0; j <= i; j++) {
            double sum = a[i][j];

            for (k = 0; k < j; k++) {
                sum -= a[i][k] * a[j][k];
            }
            a[i][j] = i == j ? sqrt(sum) : sum / a[j][j];
        }
    }
    for (i = 0; i < MEASURE_COUNT; i++) {
        for (k = 0; k < i; k++) {
            b[i] -= a[i][k] * b[k];
        }
        b[i] /= a[i][i];
    }
    for (i = MEASURE_COUNT - 1; i >= 0; i--) {
        for (k = i + 1; k < MEASURE_COUNT; k++) {
            b[i] -= a[k][i] * b[k];
        }
        b[i] /= a[i][i];
    }
}

static void
fit(const struct trial *trials, size_t count, int place, float result[MEASURE_COUNT])
{
    double factors[MEASURE_COUNT] = {0};
    int step, i, j;
    size_t t;

    for (step = 0; step < STEPS; step++) {
        double curve[MEASURE_COUNT][MEASURE_COUNT] = {{0}}, slope[MEASURE_COUNT], largest = 0;

        for (i = 0; i < MEASURE_COUNT; i++) {
            slope[i] = -ridge * factors[i];
            curve[i][i] = ridge;
        }
        for (t = 0; t < count; t++) {
            const float *x = trials[t].evidence.measure;
            double p = likelihood(factors, &trials[t].evidence);
            double off = (double)trials[t].weight * ((trials[t].place == place ? 1 : 0) - p);
            double bend = (double)trials[t].weight * p * (1 - p);

            for (i = 0; i < MEASURE_COUNT; i++) {
                slope[i] += off * (double)x[i];
                for (j = 0; j <= i; j++) {
                    curve[i][j] += bend * (double)x[i] * (double)x[j];
                }
            }
        }
        solve(curve, slope);
        for (i = 0; i < MEASURE_COUNT; i++) {
            factors[i] += slope[i];
            largest = fabs(slope[i]) > largest ? fabs(slope[i]) : largest;
        }
        if (largest < small) {
            break;
        }
    }
    for (i = 0; i < MEASURE_COUNT; i++) {
        result[i] = (float)factors[i];
    }
}

/* How much the trials elsewhere must be weighed up to count as much as all others together. */
static float
balance(const struct trial *trials, size_t count)
{
    float inside = 0, outside = 0;
    size_t i;

    for (i = 0; i < count; i++) {
        *(trials[i].elsewhere ? &outside : &inside) += trials[i].weight;
    }
    return outside > 0 ? inside / outside : 1;
}

/*
 * Two fits. The first, with the texts elsewhere weighed up, finds what tells right from wrong and
 * from elsewhere; the second, as often as they are, what likelihood that stands for.
 */
static void
fit_place(void *arena, const struct trial *trials, size_t count, int place,
          float result[MEASURE_COUNT])
{
    struct trial *again = memory_must(talloc_memdup(arena, trials, count * sizeof(*trials)));
    float up = balance(trials, count), telling[MEASURE_COUNT], scale[MEASURE_COUNT];
    size_t i;
    int k;

    for (i = 0; i < count; i++) {
        again[i].weight *= again[i].elsewhere ? up : 1;
    }
    fit(again, count, place, telling);
    for (i = 0; i < count; i++) {
        float sum = 0;

        for (k = 0; k < MEASURE_COUNT; k++) {
            sum += telling[k] * trials[i].evidence.measure[k];
        }
        again[i] = trials[i];
        memset(&again[i].evidence, 0, sizeof(again[i].evidence));
        again[i].evidence.measure[MEASURE_ONE] = 1;
        again[i].evidence.measure[MEASURE_TOP] = sum;
    }
    fit(again, count, place, scale);
    for (k = 0; k < MEASURE_COUNT; k++) {
        result[k] = telling[k] * scale[MEASURE_TOP];
    }
    result[MEASURE_ONE] += scale[MEASURE_ONE];
    talloc_free(again);
}

int
calibrated(const struct calibration *calibration, const struct evidence *evidence, int place)
{
    double sum = 0;
    int i;

    for (i = 0; i < MEASURE_COUNT; i++) {
        sum += (double)calibration->factors[place][i] * (double)evidence->measure[i];
    }
    return (int)(1000 / (1 + exp(-sum)) + 0.5);
}

void
calibrate(void *arena, const struct trial *trials, size_t count, struct calibration *calibration)
{
    int place;

    memset(calibration, 0, sizeof(*calibration));
    for (place = 0; place < PLACES; place++) {
        fit_place(arena, trials, count, place, calibration->factors[place]);
    }
}
