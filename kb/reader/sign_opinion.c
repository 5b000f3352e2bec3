#include <math.h>
#include <string.h>

#include "memory.h"
#include "sign_opinion_inside.h"

/* How much a text that is unknown altogether is held to be harmless. */
static const float unknown_weighs = 1;

enum {
    RUN_SENTENCES = 3,  /* sentences looked at together */
    STRETCH_WORDS = 12, /* of a long sentence */
    STRETCH_STEP = 6,
    WORDS_MIN = 3 /* fewer tell too little; the phrases are for them */
};

/* ---- Deciding ------------------------------------------------------------------------------ */

/*
 * The decisions: each block is brought to its share of length 1, as in feature_row(), but unknown
 * traits count too, so that one known word among strange ones does not speak for all; and what is
 * not known speaks for nothing.
 */
static void
decide(const struct sums *sums, const float *bias, float scores[OPINION_LEVELS])
{
    const float nothing = 0.0001f;
    float whole = 0, factor;
    int block, level;

    for (block = 0; block < BLOCKS; block++) {
        float share = feature_share(MIX_FEW, (enum feature_block)block);

        whole += sums->square[block] > nothing ? share * share : 0;
    }
    for (level = 0; level < OPINION_LEVELS; level++) {
        scores[level] = bias[level] - unknown_weighs * sums->unknown / (sums->all + nothing);
    }
    for (block = 0; block < BLOCKS; block++) {
        if (sums->square[block] <= nothing) {
            continue;
        }
        factor =
            feature_share(MIX_FEW, (enum feature_block)block) / sqrtf(sums->square[block] * whole);
        for (level = 0; level < OPINION_LEVELS; level++) {
            scores[level] += factor * sums->says[block][level];
        }
    }
}

static const float *
bias_of(const struct linear *linear)
{
    return linear->weights + linear->features * (size_t)linear->stride;
}

/* ---- Finding ------------------------------------------------------------------------------- */

struct opinion_view {
    const struct opinion *opinion;
    const struct linear *linear;
    void *arena;
    const struct heard *heard;
    struct traits traits;
    struct sums *sums[TRAIT_REACHES]; /* of the words before each, by what the traits take in */
};

/* Adds one trait by its number, UINT32_MAX for an unknown one. */
static void
add(const struct opinion_view *view, uint32_t number, enum feature_block block, struct sums *sums)
{
    const struct opinion *opinion = view->opinion;
    const struct linear *linear = view->linear;
    bool is_known = number != UINT32_MAX;
    float weight = is_known ? opinion->space.weight[number] : opinion->unknown_weight;
    int level;

    sums->all += block == BLOCK_STEMS;
    sums->unknown += block == BLOCK_STEMS && !is_known;
    sums->square[block] += weight * weight;
    for (level = 0; level < OPINION_LEVELS && is_known; level++) {
        sums->says[block][level] +=
            weight * linear->weights[number * (size_t)linear->stride + (size_t)level];
    }
}

/* Sums up the traits so that those of any stretch of words are a difference of two sums. */
static void
sum_up(struct opinion_view *view, int without)
{
    size_t words = view->heard->count, i;
    const struct features *features = &view->traits.features;
    uint32_t *numbers = memory_array(view->arena, uint32_t, features->count + 1);
    size_t at[TRAIT_REACHES] = {0};
    int reach;

    feature_numbers(&view->opinion->space, features, without, numbers);
    for (reach = 0; reach < TRAIT_REACHES; reach++) {
        view->sums[reach] = memory_array(view->arena, struct sums, words + 1);
    }
    for (i = 0; i < features->count; i++) {
        size_t word = features->list[i].word;

        reach = view->traits.reach[i];
        for (; at[reach] <= word; at[reach]++) {
            view->sums[reach][at[reach] + 1] = view->sums[reach][at[reach]];
        }
        add(view, numbers[i], (enum feature_block)features->list[i].block,
            &view->sums[reach][word + 1]);
    }
    for (reach = 0; reach < TRAIT_REACHES; reach++) {
        for (; at[reach] < words; at[reach]++) {
            view->sums[reach][at[reach] + 1] = view->sums[reach][at[reach]];
        }
    }
}

/* What the traits of the words first..last come to. */
static struct sums
sums_within(const struct opinion_view *view, int first, int last)
{
    struct sums within = {{0}, {{0}}, 0, 0};
    int reach, block, level;

    for (reach = 0; reach < TRAIT_REACHES && first + reach <= last; reach++) {
        const struct sums *low = &view->sums[reach][first + reach];
        const struct sums *high = &view->sums[reach][last + 1];

        for (block = 0; block < BLOCKS; block++) {
            within.square[block] += high->square[block] - low->square[block];
            for (level = 0; level < OPINION_LEVELS; level++) {
                within.says[block][level] += high->says[block][level] - low->says[block][level];
            }
        }
        within.all += high->all - low->all;
        within.unknown += high->unknown - low->unknown;
    }
    return within;
}

static void
decide_on(const struct opinion_view *view, int first, int last, float scores[OPINION_LEVELS])
{
    struct sums within = sums_within(view, first, last);

    decide(&within, bias_of(view->linear), scores);
}

/* How much an example's row has in common with one that is spread out by feature. */
static float
dot(const struct opinion_rows *rows, size_t example, const float *values)
{
    float sum = 0;
    uint32_t i;

    for (i = rows->begins[example]; i < rows->begins[example + 1]; i++) {
        sum += rows->value[i] * values[rows->index[i]];
    }
    return sum;
}

const struct opinion_example *
opinion_nearest(const struct opinion_view *view, enum sign_level level, int first, int last)
{
    const struct opinion *opinion = view->opinion;
    struct features features = traits_within(view->arena, &view->traits, first, last);
    const struct row row = feature_row(view->arena, &opinion->space, NULL, &features, PARTS_MAX);
    float *values =
        memory_array(view->arena, float, feature_space_size(&opinion->space) + (size_t)1);
    const struct opinion_example *best = NULL;
    float best_dot = -1;
    size_t i;

    for (i = 0; i < row.count; i++) {
        values[row.index[i]] = row.value[i];
    }
    for (i = 0; i < opinion->count; i++) {
        const struct opinion_example *example = &opinion->examples[i];

        if (example->sign != NULL && example->sign->level == level) {
            float near = dot(&opinion->rows, i, values);

            if (near > best_dot) {
                best_dot = near;
                best = example;
            }
        }
    }
    return best;
}

/* The last word of the sentence that begins at `first`. */
static int
sentence_end(const struct heard *heard, int first)
{
    int last = first;

    while (last + 1 < (int)heard->count &&
           heard->list[last + 1].sentence == heard->list[first].sentence) {
        last++;
    }
    return last;
}

/* The likeliest run so far. */
struct run {
    enum sign_level level;
    float decision;
    int first, last;
};

static void
try_run(const struct opinion_view *view, struct run *run, int first, int last)
{
    float scores[OPINION_LEVELS];

    decide_on(view, first, last, scores);
    if (scores[run->level] > run->decision) {
        *run = (struct run){run->level, scores[run->level], first, last};
    }
}

/* Every run of one to three sentences, and a long sentence in stretches. */
static void
try_runs(const struct opinion_view *view, struct run *run)
{
    const struct heard *heard = view->heard;
    int first = 0, count = (int)heard->count, at, sentences;

    while (first < count) {
        int end = sentence_end(heard, first), last = end;

        for (sentences = 1; sentences <= RUN_SENTENCES; sentences++) {
            if (last - first + 1 >= WORDS_MIN) {
                try_run(view, run, first, last);
            }
            if (last + 1 == count) {
                break;
            }
            last = sentence_end(heard, last + 1);
        }
        for (at = first; at + STRETCH_WORDS <= end; at += STRETCH_STEP) {
            try_run(view, run, at, at + STRETCH_WORDS - 1);
        }
        first = end + 1;
    }
}

static struct opinion_view *
view_text(const struct opinion *opinion, const struct linear *linear, int without, void *arena,
          const struct heard *heard)
{
    struct opinion_view *view = memory_new(arena, struct opinion_view);

    *view =
        (struct opinion_view){.opinion = opinion, .linear = linear, .arena = arena, .heard = heard};
    view->traits = traits_read(arena, opinion->vocabulary, heard);
    sum_up(view, without);
    return view;
}

void
opinion_decide(const struct opinion *opinion, const struct linear *linear, int without, void *arena,
               const struct heard *heard, float scores[OPINION_LEVELS])
{
    decide_on(view_text(opinion, linear, without, arena, heard), 0, (int)heard->count - 1, scores);
}

struct opinion_view *
opinion_of(const struct opinion *opinion, void *arena, const struct heard *heard)
{
    if (opinion == NULL || heard->count < WORDS_MIN) {
        return NULL;
    }
    return view_text(opinion, &opinion->linear, PARTS_MAX, arena, heard);
}

float
opinion_on_words(const struct opinion_view *view, enum sign_level level, int first, int last)
{
    float scores[OPINION_LEVELS];

    decide_on(view, first, last, scores);
    return scores[level] - view->opinion->bounds[level];
}

float
opinion_on_text(const struct opinion_view *view, enum sign_level level)
{
    return opinion_on_words(view, level, 0, (int)view->heard->count - 1);
}

float
opinion_on_best_run(const struct opinion_view *view, enum sign_level level, int *first, int *last)
{
    struct run run = {.level = level, .decision = -HUGE_VALF};

    try_runs(view, &run);
    *first = run.first;
    *last = run.last;
    return run.decision - view->opinion->bounds[level];
}
