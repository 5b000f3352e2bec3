#include "net.h"

#include <math.h>
#include <sodium.h>
#include <stdlib.h>
#include <string.h>

#include "image.h"
#include "memory.h"

/* Chosen by how many emergencies are found on texts that nothing was learnt from (sign_opinion.h);
 * steps of half that found as many. */
static const float first_step = 0.1f; /* falls evenly to nothing */
static const float doubt = 0.05f;     /* of a label's share, spread over all of them */

static const float nothing = 0.000001f;

/* Memory is fetched in so many bytes at once, best while so many features before are reckoned. */
enum { FETCHED_AT_ONCE = 64, AHEAD = 8 };

/* An example's place in a pass. */
struct turn {
    uint64_t place;
    uint32_t example;
};

/* What learning keeps beside the net itself. */
struct training {
    const struct examples *examples;
    float *inner, *outer, *inner_bias, *outer_bias; /* as of struct net, in floats */
    float *moved_inner; /* of each line: the sum of its steps' squares; below, of each number */
    float *moved_outer, *moved_inner_bias, *moved_outer_bias;
    int labels;
    const uint64_t *keys; /* of the examples */
    struct turn *turns;
    float hidden[NET_HIDDEN], slope[NET_HIDDEN]; /* of one example */
    float *says;
};

/* xorshift64* */
static uint64_t
random_bits(uint64_t *state)
{
    *state ^= *state >> 12;
    *state ^= *state << 25;
    *state ^= *state >> 27;
    return *state * 2685821657736338717u;
}

/* From 0 up to, not including, 1. */
static float
random_share(uint64_t *state)
{
    return (float)(random_bits(state) >> 40) / (float)(1 << 24);
}

static int
by_place(const void *left, const void *right)
{
    const struct turn *l = left, *r = right;

    if (l->place != r->place) {
        return l->place < r->place ? -1 : 1;
    }
    return l->example < r->example ? -1 : l->example > r->example;
}

/* Brings the examples into the order of this pass, which each takes its place in by its key alone:
 * one more or fewer moves no other. */
static void
shuffle(struct training *training, size_t count, int pass)
{
    size_t i;

    for (i = 0; i < count; i++) {
        struct turn *turn = &training->turns[i];
        uint64_t state = (training->keys[turn->example] ^ (uint64_t)pass) | 1;

        random_bits(&state);
        turn->place = random_bits(&state);
    }
    qsort(training->turns, count, sizeof(*training->turns), by_place);
}

/* Adds a line so many times. On its own and `restrict`, so that a compiler does it side by side. */
static void
add_line(float *restrict sums, const float *restrict line, int count, float times)
{
    int i;

    for (i = 0; i < count; i++) {
        sums[i] += times * line[i];
    }
}

/* What each of so many lines has in common with the numbers. A sum waits for itself at every step;
 * several, side by side, do not wait for each other. */
enum { LINES_AT_ONCE = 8 };
_Static_assert(NET_HIDDEN % LINES_AT_ONCE == 0 && NET_HIDDEN % 2 == 0, "no line is left over");

static void
dots(const float *restrict lines, const float *restrict numbers, int count,
     float dots[restrict LINES_AT_ONCE])
{
    int i, k;

    for (k = 0; k < LINES_AT_ONCE; k++) {
        dots[k] = 0;
    }
    for (i = 0; i < count; i++) {
        for (k = 0; k < LINES_AT_ONCE; k++) {
            dots[k] += lines[k * count + i] * numbers[i];
        }
    }
}

/* Raises e to each of the numbers, within some parts in a million: 2 to a whole number, which is
 * written as a float's exponent, times e to the rest, by its series. So a compiler does several
 * side by side, which it cannot with a library's expf(), and every machine comes to the same. */
static void
raise_e(float *restrict numbers, int count)
{
    const float most = 87, to_whole = 12582912; /* a sum with that has no room for a fraction */
    int i;

    for (i = 0; i < count; i++) {
        numbers[i] = numbers[i] < -most ? -most : numbers[i];
        numbers[i] = numbers[i] > most ? most : numbers[i];
    }
    for (i = 0; i < count; i++) {
        float whole = numbers[i] * (float)M_LOG2E + to_whole - to_whole;
        float rest = numbers[i] - whole * (float)M_LN2;
        float series = 1 + rest * (1 / 6.0f);
        union {
            int32_t bits;
            float number;
        } power = {((int32_t)whole + 127) * (1 << 23)};

        series = 1 + rest * (1 / 5.0f) * series;
        series = 1 + rest * (1 / 4.0f) * series;
        series = 1 + rest * (1 / 3.0f) * series;
        series = 1 + rest * (1 / 2.0f) * series;
        numbers[i] = power.number * (1 + rest * series);
    }
}

/* tanh() of each of the hidden numbers. */
static void
squash(float *hidden)
{
    int h;

    for (h = 0; h < NET_HIDDEN; h++) {
        hidden[h] *= 2;
    }
    raise_e(hidden, NET_HIDDEN);
    for (h = 0; h < NET_HIDDEN; h++) {
        hidden[h] = 1 - 2 / (hidden[h] + 1);
    }
}

/* So many labels are let speak at once: their sums stay in registers. */
enum { LABELS_AT_ONCE = 16 };

static void
let_some_say(const float *restrict outer, const float *bias, int labels,
             const float *restrict hidden, float *restrict says)
{
    float sums[LABELS_AT_ONCE];
    int h, i;

    memcpy(sums, bias, sizeof(sums));
    for (h = 0; h < NET_HIDDEN; h++) {
        for (i = 0; i < LABELS_AT_ONCE; i++) {
            sums[i] += hidden[h] * outer[h * labels + i];
        }
    }
    memcpy(says, sums, sizeof(sums));
}

/* What each label's likelihood is short of, after what the hidden numbers say. The last labels at
 * once may have spoken before. */
static void
outer_say(const float *outer, const float *bias, int labels, const float *hidden, float *says)
{
    const int last = labels - LABELS_AT_ONCE;
    int from, h;

    for (from = 0; last >= 0 && from < labels; from += LABELS_AT_ONCE) {
        const int at = from < last ? from : last;

        let_some_say(outer + at, bias + at, labels, hidden, says + at);
    }
    if (last < 0) {
        memcpy(says, bias, (size_t)labels * sizeof(*says));
        for (h = 0; h < NET_HIDDEN; h++) {
            add_line(says, outer + h * labels, labels, hidden[h]);
        }
    }
}

/* The line of a feature. */
static float *
inner_line(const struct training *training, uint32_t feature)
{
    return training->inner + feature * (size_t)NET_HIDDEN;
}

/* Lets the line of a feature that comes soon be fetched: the lines are many times what a processor
 * keeps near, and waiting for them was half of learning. */
static void
fetch(const struct training *training, uint32_t feature)
{
    const float *line = inner_line(training, feature);
    int h;

    for (h = 0; h < NET_HIDDEN; h += FETCHED_AT_ONCE / (int)sizeof(*line)) {
        __builtin_prefetch(line + h, 1);
    }
    __builtin_prefetch(&training->moved_inner[feature], 1);
}

/* Adds up half of the hidden numbers, from this one on: so many stay in registers. */
static void
sum_up(const struct training *training, const struct row *row, int from, float *hidden)
{
    enum { HALF = NET_HIDDEN / 2 };
    float sums[HALF];
    size_t i;
    int h;

    memcpy(sums, training->inner_bias + from, sizeof(sums));
    for (i = 0; i < row->count; i++) {
        const float *line = inner_line(training, row->index[i]) + from, value = row->value[i];

        for (h = 0; h < HALF; h++) {
            sums[h] += value * line[h];
        }
        if (from == 0 && i + AHEAD < row->count) {
            fetch(training, row->index[i + AHEAD]);
        }
    }
    memcpy(hidden + from, sums, sizeof(sums));
}

/* Sums up the example's features, and lets the labels speak. */
static void
forward(struct training *training, const struct row *row)
{
    sum_up(training, row, 0, training->hidden);
    sum_up(training, row, NET_HIDDEN / 2, training->hidden);
    squash(training->hidden);
    outer_say(training->outer, training->outer_bias, training->labels, training->hidden,
              training->says);
}

/* Turns what the labels say into how far each is from what it should: its likelihood less its
 * share, times the example's cost. */
static void
find_errors(struct training *training, int own, float cost)
{
    float *says = training->says, sum = net_shares(says, training->labels);
    const float share = doubt / (float)training->labels;
    int label;

    for (label = 0; label < training->labels; label++) {
        says[label] = cost * (says[label] / sum - share - (label == own ? 1 - doubt : 0));
    }
}

/* One number's step against its slope. */
static void
step_one(float *number, float *moved, float slope, float step)
{
    *moved += slope * slope;
    *number -= step * slope / sqrtf(*moved + nothing);
}

/* Moves the outer numbers; what the hidden ones are to do about the errors is left in `slope`. */
static void
move_outer(struct training *training, float step)
{
    const float *errors = training->says;
    const int labels = training->labels;
    float square = 0;
    int h, label;

    for (label = 0; label < labels; label++) {
        square += errors[label] * errors[label] / (float)labels;
        step_one(&training->outer_bias[label], &training->moved_outer_bias[label], errors[label],
                 step);
    }
    for (h = 0; h < NET_HIDDEN; h += LINES_AT_ONCE) {
        dots(training->outer + h * labels, errors, labels, training->slope + h);
    }
    for (h = 0; h < NET_HIDDEN; h++) {
        float *line = training->outer + h * labels;
        const float hidden = training->hidden[h];

        training->slope[h] *= 1 - hidden * hidden;
        training->moved_outer[h] += square * hidden * hidden;
        add_line(line, errors, labels, -step * hidden / sqrtf(training->moved_outer[h] + nothing));
    }
}

/* Moves the lines of the features. */
static void
move_inner(struct training *training, const struct row *row, float step)
{
    float square = 0;
    size_t i;
    int h;

    for (h = 0; h < NET_HIDDEN; h++) {
        square += training->slope[h] * training->slope[h];
        step_one(&training->inner_bias[h], &training->moved_inner_bias[h], training->slope[h],
                 step);
    }
    for (i = 0; i < row->count; i++) {
        float *moved = &training->moved_inner[row->index[i]];
        float value = row->value[i];

        *moved += square * value * value / NET_HIDDEN;
        add_line(inner_line(training, row->index[i]), training->slope, NET_HIDDEN,
                 -step * value / sqrtf(*moved + nothing));
    }
}

static void
train(struct training *training, size_t count, int passes)
{
    const struct examples *examples = training->examples;
    const float all = (float)((size_t)passes * count);
    size_t done = 0, i;
    int pass;

    for (pass = 0; pass < passes; pass++) {
        shuffle(training, count, pass);
        for (i = 0; i < count; i++, done++) {
            size_t example = training->turns[i].example;
            float step = first_step * (1 - (float)done / all);

            forward(training, &examples->rows[example]);
            find_errors(training, examples->labels[example], examples->costs[example]);
            move_outer(training, step);
            move_inner(training, &examples->rows[example], step);
        }
    }
}

/* A number of about normal spread: the sum of twelve even ones. */
static float
random_normal(uint64_t *state)
{
    float sum = -6;
    int i;

    for (i = 0; i < 12; i++) {
        sum += random_share(state);
    }
    return sum;
}

/* Where lines may begin that lie in as few fetches as can be. */
static float *
align(float *numbers)
{
    const size_t over = (uintptr_t)numbers % FETCHED_AT_ONCE;

    return numbers + (FETCHED_AT_ONCE - over) % FETCHED_AT_ONCE / sizeof(*numbers);
}

static void
begin(struct training *training, void *arena, uint32_t features)
{
    const size_t lines = features * (size_t)NET_HIDDEN,
                 outer = (size_t)training->labels * NET_HIDDEN;
    uint64_t state = 88172645463325252u;
    size_t i;

    training->inner = align(memory_array(arena, float, lines + FETCHED_AT_ONCE));
    training->inner_bias = memory_array(arena, float, NET_HIDDEN);
    training->outer = memory_array(arena, float, outer);
    training->outer_bias = memory_array(arena, float, (size_t)training->labels);
    training->moved_inner = memory_array(arena, float, features + (size_t)1);
    training->moved_inner_bias = memory_array(arena, float, NET_HIDDEN);
    training->moved_outer = memory_array(arena, float, NET_HIDDEN);
    training->moved_outer_bias = memory_array(arena, float, (size_t)training->labels);
    for (i = 0; i < outer; i++) { /* the inner ones begin at 0: only here it is dealt at random */
        training->outer[i] = random_normal(&state) / sqrtf(NET_HIDDEN);
    }
    training->says = memory_array(arena, float, (size_t)training->labels);
    training->turns = memory_array(arena, struct turn, training->examples->count + 1);
}

/* Brings the lines of the features to bytes, and keeps the rest as it is. */
static void
keep(void *arena, const struct training *training, uint32_t features, struct net *net)
{
    const size_t outer = (size_t)training->labels * NET_HIDDEN;
    uint32_t i;

    net->features = features;
    net->labels = training->labels;
    net->inner = memory_array(arena, int8_t, features * (size_t)NET_HIDDEN + 1);
    net->scales = memory_array(net->inner, float, features + (size_t)1);
    for (i = 0; i < features; i++) {
        net->scales[i] = linear_round(training->inner + i * (size_t)NET_HIDDEN, NET_HIDDEN,
                                      net->inner + i * (size_t)NET_HIDDEN);
    }
    net->inner_bias =
        memory_must(talloc_memdup(net->inner, training->inner_bias, NET_HIDDEN * sizeof(float)));
    net->outer = memory_must(talloc_memdup(net->inner, training->outer, outer * sizeof(float)));
    net->outer_bias = memory_must(
        talloc_memdup(net->inner, training->outer_bias, (size_t)training->labels * sizeof(float)));
}

void
net_train(void *arena, const struct examples *examples, const uint64_t *keys, const uint8_t *parts,
          int without, int passes, uint32_t features, int labels, struct net *net)
{
    void *scratch = memory_must(talloc_new(arena));
    struct training *training = memory_new(scratch, struct training);
    size_t count = 0, i;

    *training = (struct training){.examples = examples, .keys = keys, .labels = labels};
    begin(training, scratch, features);
    for (i = 0; i < examples->count; i++) {
        if (parts[i] != without) {
            training->turns[count++].example = (uint32_t)i;
        }
    }
    train(training, count, passes);
    keep(arena, training, features, net);
    talloc_free(scratch);
}

void
net_decide(const struct net *net, float *hidden, float *says)
{
    int h;

    for (h = 0; h < NET_HIDDEN; h++) {
        hidden[h] += net->inner_bias[h];
    }
    squash(hidden);
    outer_say(net->outer, net->outer_bias, net->labels, hidden, says);
}

float
net_shares(float *says, int labels)
{
    float most = says[0], sum = 0;
    int label;

    for (label = 1; label < labels; label++) {
        most = says[label] > most ? says[label] : most;
    }
    for (label = 0; label < labels; label++) {
        says[label] -= most;
    }
    raise_e(says, labels);
    for (label = 0; label < labels; label++) {
        sum += says[label];
    }
    return sum;
}

uint64_t
net_key(const char *text)
{
    static const unsigned char same_always[crypto_shorthash_KEYBYTES];
    uint64_t key;

    crypto_shorthash((unsigned char *)&key, (const unsigned char *)text, strlen(text), same_always);
    return key;
}

void
net_image(struct image *image, struct net *net)
{
    image_array(image, &net->inner, net->features * (size_t)NET_HIDDEN);
    image_array(image, &net->scales, net->features);
    image_array(image, &net->inner_bias, NET_HIDDEN);
    image_array(image, &net->outer, (size_t)net->labels * NET_HIDDEN);
    image_array(image, &net->outer_bias, (size_t)net->labels);
}
