#include "linear.h"

#include <math.h>
#include <string.h>

#include "image.h"
#include "memory.h"

/* Chosen by cross-validation (see model.h). */
static const float cost = 0.8f;

/* Passes over the examples; both stop early once no step is larger than `settled`. */
enum { PASSES = 10, PASSES_WITHOUT = 2 };
static const float settled = 0.02f;

/* An example whose steps are smaller than `calm` is left alone for so many passes. */
enum { REST = 3 };
static const float calm = 0.04f;

/* ---- Lines of floats: the inner loops ------------------------------------------------------- */

/* Four floats that are reckoned with at once, as every processor that we run on can. */
typedef float four __attribute__((vector_size(16)));
_Static_assert(LINEAR_LANES * sizeof(float) == sizeof(four), "a line is so many fours");

enum { MOST_FOURS = 4 }; /* at a time: as many as there are registers for */

static four
take(const float *from)
{
    four it;

    memcpy(&it, from, sizeof(it));
    return it;
}

static void
put(float *to, four it)
{
    memcpy(to, &it, sizeof(it));
}

static void
add_line(float *to, const float *line, float factor, int stride)
{
    int lane;

    for (lane = 0; lane < stride; lane += LINEAR_LANES) {
        put(to + lane, take(to + lane) + take(line + lane) * factor);
    }
}

/* Adds up four labels times `fours`, a constant: the sums stay in registers while the features go
 * by. */
static inline void
score_fours(const float *weights, size_t stride, const struct row *row, const int fours,
            float *scores)
{
    four sums[MOST_FOURS];
    size_t i;
    int k;

    for (k = 0; k < fours; k++) {
        sums[k] = take(scores + k * LINEAR_LANES);
    }
    for (i = 0; i < row->count; i++) {
        const float *line = weights + row->index[i] * stride;

        for (k = 0; k < fours; k++) {
            sums[k] += take(line + k * LINEAR_LANES) * row->value[i];
        }
    }
    for (k = 0; k < fours; k++) {
        put(scores + k * LINEAR_LANES, sums[k]);
    }
}

/* The decision values of all labels. */
static void
score_lines(const float *weights, const float *bias, size_t stride, const struct row *row,
            float *scores)
{
    size_t lane;

    memcpy(scores, bias, stride * sizeof(*scores));
    for (lane = 0; lane < stride; lane += MOST_FOURS * LINEAR_LANES) {
        switch ((stride - lane) / LINEAR_LANES) {
        case 1:
            score_fours(weights + lane, stride, row, 1, scores + lane);
            break;
        case 2:
            score_fours(weights + lane, stride, row, 2, scores + lane);
            break;
        case 3:
            score_fours(weights + lane, stride, row, 3, scores + lane);
            break;
        default:
            score_fours(weights + lane, stride, row, MOST_FOURS, scores + lane);
        }
    }
}

/* ---- Lines of bytes ------------------------------------------------------------------------ */

enum { BYTE_LANES = 16, LARGEST = 127 };
typedef int8_t bytes __attribute__((vector_size(BYTE_LANES)));
typedef int16_t shorts __attribute__((vector_size(16)));
typedef int32_t ints __attribute__((vector_size(16)));

/* Each number twice: the upper half of a wider one, which a shift then brings down. */
#define LOWER_BYTES(b)                                                                             \
    ((shorts)__builtin_shufflevector(b, b, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7))
#define UPPER_BYTES(b)                                                                             \
    ((shorts)__builtin_shufflevector(b, b, 8, 8, 9, 9, 10, 10, 11, 11, 12, 12, 13, 13, 14, 14, 15, \
                                     15))
#define LOWER_SHORTS(s) ((ints)__builtin_shufflevector(s, s, 0, 0, 1, 1, 2, 2, 3, 3))
#define UPPER_SHORTS(s) ((ints)__builtin_shufflevector(s, s, 4, 4, 5, 5, 6, 6, 7, 7))

static four
floats_of(ints twice)
{
    return __builtin_convertvector(twice >> 24, four);
}

/* The decision values of sixteen labels. */
static void
score_sixteen(const struct linear *linear, size_t lane, const struct row *row, float *scores)
{
    const int8_t *weights = linear->weights + lane;
    four sum0 = take(scores), sum1 = take(scores + 4), sum2 = take(scores + 8),
         sum3 = take(scores + 12);
    size_t i;

    for (i = 0; i < row->count; i++) {
        float value = row->value[i] * linear->scales[row->index[i]];
        shorts lower, upper;
        bytes line;

        memcpy(&line, weights + row->index[i] * (size_t)linear->stride, sizeof(line));
        lower = LOWER_BYTES(line);
        upper = UPPER_BYTES(line);
        sum0 += floats_of(LOWER_SHORTS(lower)) * value;
        sum1 += floats_of(UPPER_SHORTS(lower)) * value;
        sum2 += floats_of(LOWER_SHORTS(upper)) * value;
        sum3 += floats_of(UPPER_SHORTS(upper)) * value;
    }
    put(scores, sum0);
    put(scores + 4, sum1);
    put(scores + 8, sum2);
    put(scores + 12, sum3);
}

void
linear_scores(const struct linear *linear, const struct row *row, float *scores)
{
    size_t stride = (size_t)linear->stride, lane, i;

    memcpy(scores, linear->bias, stride * sizeof(*scores));
    for (lane = 0; lane + BYTE_LANES <= stride; lane += BYTE_LANES) {
        score_sixteen(linear, lane, row, scores + lane);
    }
    for (; lane < stride; lane++) {
        for (i = 0; i < row->count; i++) {
            scores[lane] += row->value[i] * linear_weight(linear, row->index[i], (int)lane);
        }
    }
}

float
linear_round(const float *line, size_t stride, int8_t *rounded)
{
    float largest = 0, scale;
    size_t i;

    for (i = 0; i < stride; i++) {
        largest = fabsf(line[i]) > largest ? fabsf(line[i]) : largest;
    }
    scale = largest / LARGEST;
    for (i = 0; i < stride && scale > 0; i++) {
        rounded[i] = (int8_t)lrintf(line[i] / scale);
    }
    return scale;
}

static void
round_weights(void *arena, const float *weights, struct linear *linear)
{
    size_t stride = (size_t)linear->stride, i;

    linear->weights = memory_array(arena, int8_t, linear->features * stride + 1);
    linear->scales = memory_array(linear->weights, float, linear->features + (size_t)1);
    linear->bias = memory_must(talloc_memdup(linear->weights, weights + linear->features * stride,
                                             stride * sizeof(float)));
    for (i = 0; i < linear->features; i++) {
        linear->scales[i] =
            linear_round(weights + i * stride, stride, linear->weights + i * stride);
    }
}

/* ---- Learning ------------------------------------------------------------------------------ */

struct training {
    const struct examples *examples;
    const float *square;         /* see struct linear_trace */
    const struct linear *linear; /* only its sizes */
    float *weights, *bias;
    float *steps;
    float *scores; /* scratch: one line */
    float *by;     /* scratch: one line, how far each label moves */
    int *moved;    /* scratch: the first labels of the lanes in which one moved */
    int moved_count;
    uint32_t *order;
    uint8_t *rest; /* of each example: passes that it is still left alone */
    uint64_t random;
};

/* xorshift64*: the same order on every machine. */
static uint32_t
random_below(uint64_t *state, uint32_t limit)
{
    *state ^= *state >> 12;
    *state ^= *state << 25;
    *state ^= *state >> 27;
    return (uint32_t)(((*state * 2685821657736338717u) >> 33) % limit);
}

static void
shuffle(struct training *training, size_t count)
{
    size_t i;

    for (i = count; i > 1; i--) {
        uint32_t other = random_below(&training->random, (uint32_t)i);
        uint32_t keep = training->order[i - 1];

        training->order[i - 1] = training->order[other];
        training->order[other] = keep;
    }
}

/*
 * Fills training->by with the step of every label for one example; returns the largest. Steps are
 * kept signed: label x alpha, so a label's own examples have steps >= 0 and all others <= 0.
 */
static float
find_steps(struct training *training, size_t example, float square)
{
    int own = training->examples->labels[example], label;
    float *steps = training->steps + example * (size_t)training->linear->stride;
    float largest = 0;
    float base = 0.5f / (cost * training->examples->costs[example]);

    memset(training->by, 0, (size_t)training->linear->stride * sizeof(*training->by));
    training->moved_count = 0;
    for (label = 0; label < training->linear->labels; label++) {
        float sign = label == own ? 1.0f : -1.0f;
        float ease = base / (label == own ? training->examples->own_counts : 1);
        float alpha = sign * steps[label];
        float slope = sign * training->scores[label] - 1 + ease * alpha;
        float next, step;

        if (alpha == 0 && slope >= 0) {
            continue;
        }
        next = alpha - slope / (square + ease);
        next = next > 0 ? next : 0;
        step = sign * (next - alpha);
        if (step == 0) {
            continue;
        }
        steps[label] = sign * next;
        training->by[label] = step;
        if (training->moved_count == 0 ||
            training->moved[training->moved_count - 1] + LINEAR_LANES <= label) {
            training->moved[training->moved_count++] = label - label % LINEAR_LANES;
        }
        if (step > largest || -step > largest) {
            largest = step > 0 ? step : -step;
        }
    }
    return largest;
}

/* Moves the weights of the labels in the lanes that moved along the example. */
static void
move(struct training *training, const struct row *row)
{
    size_t stride = (size_t)training->linear->stride, i;
    float *bias = training->bias;
    int m;

    for (i = 0; i < row->count; i++) {
        float *line = training->weights + row->index[i] * stride;
        float value = row->value[i];

        for (m = 0; m < training->moved_count; m++) {
            int lane = training->moved[m];

            put(line + lane, take(line + lane) + take(training->by + lane) * value);
        }
    }
    for (m = 0; m < training->moved_count; m++) {
        int lane = training->moved[m];

        put(bias + lane, take(bias + lane) + take(training->by + lane));
    }
}

static void
train(void *arena, struct training *training, size_t count, int passes)
{
    size_t stride = (size_t)training->linear->stride, i;
    int pass;

    training->scores = memory_array(arena, float, stride);
    training->by = memory_array(arena, float, stride);
    training->moved = memory_array(arena, int, stride / LINEAR_LANES);
    training->rest = memory_array(arena, uint8_t, training->examples->count + 1);
    training->random = 88172645463325252u;
    for (pass = 0; pass < passes; pass++) {
        float largest = 0;

        shuffle(training, count);
        for (i = 0; i < count; i++) {
            size_t example = training->order[i];
            const struct row *row = &training->examples->rows[example];
            float step;

            if (training->rest[example] > 0) {
                training->rest[example]--;
                continue;
            }
            score_lines(training->weights, training->bias, stride, row, training->scores);
            step = find_steps(training, example, training->square[example]);
            move(training, row);
            largest = step > largest ? step : largest;
            training->rest[example] = step < calm ? REST : 0;
        }
        if (largest < settled) {
            break;
        }
    }
    talloc_free(training->scores);
    talloc_free(training->by);
    talloc_free(training->moved);
    talloc_free(training->rest);
}

static float *
new_lines(void *arena, size_t lines, size_t stride)
{
    return memory_array(arena, float, lines *stride);
}

static float
square_of(const struct row *row)
{
    float square = 1; /* the bias */
    size_t i;

    for (i = 0; i < row->count; i++) {
        square += row->value[i] * row->value[i];
    }
    return square;
}

void
linear_train(void *arena, const struct examples *examples, uint32_t features, int labels,
             struct linear *linear, struct linear_trace *trace)
{
    struct training training = {.examples = examples, .linear = linear};
    size_t stride = (size_t)(labels + LINEAR_LANES - 1) / LINEAR_LANES * LINEAR_LANES, i;

    linear->features = features;
    linear->labels = labels;
    linear->stride = (int)stride;
    trace->weights = new_lines(arena, features + (size_t)1, stride);
    trace->steps = new_lines(trace->weights, examples->count + 1, stride);
    trace->square = memory_array(trace->weights, float, examples->count + 1);
    training.weights = trace->weights;
    training.bias = trace->weights + features * stride;
    training.steps = trace->steps;
    training.square = trace->square;
    training.order = memory_array(arena, uint32_t, examples->count + 1);
    for (i = 0; i < examples->count; i++) {
        training.order[i] = (uint32_t)i;
        trace->square[i] = square_of(&examples->rows[i]);
    }
    train(arena, &training, examples->count, PASSES);
    round_weights(arena, trace->weights, linear);
    talloc_free(training.order);
}

/* Takes out of the weights what one example put in. */
static void
take_out(struct training *training, const struct row *row, float *steps)
{
    size_t stride = (size_t)training->linear->stride, i;

    for (i = 0; i < row->count; i++) {
        add_line(training->weights + row->index[i] * stride, steps, -row->value[i], (int)stride);
    }
    add_line(training->bias, steps, -1, (int)stride);
    memset(steps, 0, stride * sizeof(*steps));
}

void
linear_without(void *arena, const struct examples *examples, const uint8_t *parts, uint8_t without,
               const struct linear *linear, const struct linear_trace *trace, struct linear *result)
{
    struct training training = {.examples = examples, .linear = linear, .square = trace->square};
    size_t stride = (size_t)linear->stride, count = 0, i;

    training.weights = memory_must(talloc_memdup(
        arena, trace->weights, (linear->features + (size_t)1) * stride * sizeof(float)));
    training.bias = training.weights + linear->features * stride;
    training.steps = memory_must(talloc_memdup(training.weights, trace->steps,
                                               (examples->count + 1) * stride * sizeof(float)));
    training.order = memory_array(training.weights, uint32_t, examples->count + 1);
    for (i = 0; i < examples->count; i++) {
        if (parts[i] == without) {
            take_out(&training, &examples->rows[i], training.steps + i * stride);
        } else {
            training.order[count++] = (uint32_t)i;
        }
    }
    train(arena, &training, count, PASSES_WITHOUT);
    *result = *linear;
    round_weights(arena, training.weights, result);
    talloc_free(training.weights);
}

void
linear_image(struct image *image, struct linear *linear)
{
    image_array(image, &linear->weights, linear->features * (size_t)linear->stride);
    image_array(image, &linear->scales, linear->features);
    image_array(image, &linear->bias, (size_t)linear->stride);
}
