#include "linear.h"

#include <stdbool.h>
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

/* The decision values of four labels. */
static void
score_four(const float *weights, size_t stride, const struct row *row, four *sum)
{
    size_t i;

    for (i = 0; i < row->count; i++) {
        *sum += take(weights + row->index[i] * stride) * row->value[i];
    }
}

/* The same of sixteen: four sums at a time are more than four times as quick. */
static void
score_fours(const float *weights, size_t stride, const struct row *row, four sum[4])
{
    four sum0 = sum[0], sum1 = sum[1], sum2 = sum[2], sum3 = sum[3];
    size_t i;

    for (i = 0; i < row->count; i++) {
        const float *line = weights + row->index[i] * stride;
        float value = row->value[i];

        sum0 += take(line) * value;
        sum1 += take(line + LINEAR_LANES) * value;
        sum2 += take(line + 2 * LINEAR_LANES) * value;
        sum3 += take(line + 3 * LINEAR_LANES) * value;
    }
    sum[0] = sum0;
    sum[1] = sum1;
    sum[2] = sum2;
    sum[3] = sum3;
}

/* Lane by lane, so that the sums stay in registers while the features go by. */
void
linear_scores(const struct linear *linear, const struct row *row, float *scores)
{
    size_t stride = (size_t)linear->stride, lane, sums;
    const float *bias = linear->weights + linear->features * stride;

    for (lane = 0; lane < stride; lane += sums * LINEAR_LANES) {
        four sum[4] = {take(bias + lane)};
        size_t i;

        sums = stride - lane < 4 * LINEAR_LANES ? 1 : 4;
        for (i = 1; i < sums; i++) {
            sum[i] = take(bias + lane + i * LINEAR_LANES);
        }
        if (sums == 1) {
            score_four(linear->weights + lane, stride, row, &sum[0]);
        } else {
            score_fours(linear->weights + lane, stride, row, sum);
        }
        for (i = 0; i < sums; i++) {
            put(scores + lane + i * LINEAR_LANES, sum[i]);
        }
    }
}

/* ---- Learning ------------------------------------------------------------------------------ */

struct training {
    const struct examples *examples;
    const struct linear_trace *trace;
    struct linear *linear;
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
    struct linear *linear = training->linear;
    size_t stride = (size_t)linear->stride, i;
    float *bias = linear->weights + linear->features * stride;
    int m;

    for (i = 0; i < row->count; i++) {
        float *line = linear->weights + row->index[i] * stride;
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

/*
 * Half of what a text has no other text has. Such features move with that text's steps alone, so
 * their weights are its steps times their values, and what they add to its own decision values is
 * its steps times the sum of their squares: while learning they need not be looked at one by one.
 */
static void
score_example(const struct training *training, size_t example)
{
    const float *steps = training->steps + example * (size_t)training->linear->stride;

    linear_scores(training->linear, &training->trace->shared[example], training->scores);
    add_line(training->scores, steps, training->trace->own[example], training->linear->stride);
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
            float step;

            if (training->rest[example] > 0) {
                training->rest[example]--;
                continue;
            }
            score_example(training, example);
            step = find_steps(training, example, training->trace->square[example]);
            move(training, &training->trace->shared[example]);
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

/* Tells the features of one text alone from those that others share. */
static void
find_shared(const struct examples *examples, uint32_t features, struct linear_trace *trace)
{
    void *arena = trace->steps; /* it goes when they go */
    uint32_t *texts = memory_array(arena, uint32_t, features + (size_t)1);
    size_t i, k;

    trace->shared = memory_array(arena, struct row, examples->count + 1);
    trace->own = memory_array(arena, float, examples->count + 1);
    trace->square = memory_array(arena, float, examples->count + 1);
    for (i = 0; i < examples->count; i++) {
        for (k = 0; k < examples->rows[i].count; k++) {
            texts[examples->rows[i].index[k]]++;
        }
    }
    for (i = 0; i < examples->count; i++) {
        const struct row *row = &examples->rows[i];
        struct row *shared = &trace->shared[i];

        shared->index = memory_array(arena, uint32_t, row->count + 1);
        shared->value = memory_array(arena, float, row->count + 1);
        for (k = 0; k < row->count; k++) {
            float square = row->value[k] * row->value[k];

            trace->square[i] += square;
            if (texts[row->index[k]] == 1) {
                trace->own[i] += square;
            } else {
                shared->index[shared->count] = row->index[k];
                shared->value[shared->count++] = row->value[k];
            }
        }
        trace->square[i] += 1; /* the bias */
    }
    talloc_free(texts);
}

/* Gives the features of one text alone their weights: they have none yet. */
static void
weigh_own(const struct examples *examples, const struct linear_trace *trace, struct linear *linear)
{
    size_t stride = (size_t)linear->stride, i, k, shared;

    for (i = 0; i < examples->count; i++) {
        const struct row *row = &examples->rows[i];

        for (k = shared = 0; k < row->count; k++) {
            if (shared < trace->shared[i].count &&
                trace->shared[i].index[shared] == row->index[k]) {
                shared++;
            } else {
                add_line(linear->weights + row->index[k] * stride, trace->steps + i * stride,
                         row->value[k], linear->stride);
            }
        }
    }
}

void
linear_train(void *arena, const struct examples *examples, uint32_t features, int labels,
             struct linear *linear, struct linear_trace *trace)
{
    struct training training = {.examples = examples, .trace = trace, .linear = linear};
    size_t i;

    linear->features = features;
    linear->labels = labels;
    linear->stride = (labels + LINEAR_LANES - 1) / LINEAR_LANES * LINEAR_LANES;
    linear->weights = new_lines(arena, features + (size_t)1, (size_t)linear->stride);
    trace->steps = new_lines(arena, examples->count + 1, (size_t)linear->stride);
    training.steps = trace->steps;
    training.order = memory_array(arena, uint32_t, examples->count + 1);
    for (i = 0; i < examples->count; i++) {
        training.order[i] = (uint32_t)i;
    }
    find_shared(examples, features, trace);
    train(arena, &training, examples->count, PASSES);
    weigh_own(examples, trace, linear);
    talloc_free(training.order);
}

/* Takes out of the weights what one example put in. */
static void
take_out(struct linear *linear, const struct row *row, float *steps)
{
    size_t stride = (size_t)linear->stride, i;

    for (i = 0; i < row->count; i++) {
        add_line(linear->weights + row->index[i] * stride, steps, -row->value[i], linear->stride);
    }
    add_line(linear->weights + linear->features * stride, steps, -1, linear->stride);
    memset(steps, 0, stride * sizeof(*steps));
}

void
linear_without(void *arena, const struct examples *examples, const uint8_t *parts, uint8_t without,
               const struct linear *linear, const struct linear_trace *trace, struct linear *result)
{
    struct training training = {.examples = examples, .trace = trace, .linear = result};
    size_t stride = (size_t)linear->stride, count = 0, i;

    *result = *linear;
    result->weights = memory_must(
        talloc_memdup(arena, linear->weights,
                      (unsigned)((linear->features + (size_t)1) * stride * sizeof(float))));
    training.steps = memory_must(talloc_memdup(
        arena, trace->steps, (unsigned)((examples->count + 1) * stride * sizeof(float))));
    training.order = memory_array(arena, uint32_t, examples->count + 1);
    for (i = 0; i < examples->count; i++) {
        if (parts[i] == without) {
            take_out(result, &examples->rows[i], training.steps + i * stride);
        } else {
            training.order[count++] = (uint32_t)i;
        }
    }
    train(arena, &training, count, PASSES_WITHOUT);
    talloc_free(training.order);
    talloc_free(training.steps);
}

void
linear_image(struct image *image, struct linear *linear)
{
    image_array(image, &linear->weights, (linear->features + (size_t)1) * (size_t)linear->stride);
}
