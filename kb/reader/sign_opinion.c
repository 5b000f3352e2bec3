#include <math.h>
#include <string.h>

#include "memory.h"
#include "sign_opinion_inside.h"

/* How much a text that is unknown altogether is held to be harmless. */
static const float unknown_weighs = 1;

/* The decision on a text that is too short for any. */
enum { NOTHING = -1000 };

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
        float share = feature_share((enum feature_block)block);

        whole += sums->square[block] > nothing ? share * share : 0;
    }
    for (level = 0; level < OPINION_LEVELS; level++) {
        scores[level] = bias[level] - unknown_weighs * sums->unknown / (sums->all + nothing);
    }
    for (block = 0; block < BLOCKS; block++) {
        if (sums->square[block] <= nothing) {
            continue;
        }
        factor = feature_share((enum feature_block)block) / sqrtf(sums->square[block] * whole);
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

/* A text on its way through the opinion. */
struct looking {
    const struct opinion *opinion;
    const struct linear *linear;
    void *arena;
    const struct heard *heard;
    struct traits traits;
    struct sums *sums[TRAIT_REACHES]; /* of the words before each, by what the traits take in */
    struct opinion_finding *findings;
};

/* Adds one trait by its number, UINT32_MAX for an unknown one. */
static void
add(const struct looking *looking, uint32_t number, enum feature_block block, struct sums *sums)
{
    const struct opinion *opinion = looking->opinion;
    const struct linear *linear = looking->linear;
    bool is_known = number != UINT32_MAX;
    float weight = is_known ? opinion->space.weight[number] : opinion->unknown_weight;
    int level;

    sums->all += block != BLOCK_PAIRS;
    sums->unknown += block != BLOCK_PAIRS && !is_known;
    sums->square[block] += weight * weight;
    for (level = 0; level < OPINION_LEVELS && is_known; level++) {
        sums->says[block][level] +=
            weight * linear->weights[number * (size_t)linear->stride + (size_t)level];
    }
}

/* Sums up the traits so that those of any stretch of words are a difference of two sums. */
static void
sum_up(struct looking *looking, int without)
{
    size_t words = looking->heard->count, i;
    const struct features *features = &looking->traits.features;
    uint32_t *numbers = memory_array(looking->arena, uint32_t, features->count + 1);
    size_t at[TRAIT_REACHES] = {0};
    int reach;

    feature_numbers(&looking->opinion->space, features, without, numbers);
    for (reach = 0; reach < TRAIT_REACHES; reach++) {
        looking->sums[reach] = memory_array(looking->arena, struct sums, words + 1);
    }
    for (i = 0; i < features->count; i++) {
        size_t word = features->list[i].word;

        reach = looking->traits.reach[i];
        for (; at[reach] <= word; at[reach]++) {
            looking->sums[reach][at[reach] + 1] = looking->sums[reach][at[reach]];
        }
        add(looking, numbers[i], (enum feature_block)features->list[i].block,
            &looking->sums[reach][word + 1]);
    }
    for (reach = 0; reach < TRAIT_REACHES; reach++) {
        for (; at[reach] < words; at[reach]++) {
            looking->sums[reach][at[reach] + 1] = looking->sums[reach][at[reach]];
        }
    }
}

/* What the traits of the words first..last come to. */
static struct sums
sums_within(const struct looking *looking, int first, int last)
{
    struct sums within = {{0}, {{0}}, 0, 0};
    int reach, block, level;

    for (reach = 0; reach < TRAIT_REACHES && first + reach <= last; reach++) {
        const struct sums *low = &looking->sums[reach][first + reach];
        const struct sums *high = &looking->sums[reach][last + 1];

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
look_at(struct looking *looking, int first, int last)
{
    struct sums within = sums_within(looking, first, last);
    float scores[OPINION_LEVELS];
    int level;

    decide(&within, bias_of(looking->linear), scores);
    for (level = 0; level < OPINION_LEVELS; level++) {
        if (scores[level] > looking->findings[level].decision) {
            looking->findings[level] =
                (struct opinion_finding){scores[level], 0, 0, first, last, NULL};
        }
    }
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

/* The example of the level that is most like the words found: its sign is the one that fires. */
static const struct opinion_example *
nearest(const struct looking *looking, int level)
{
    const struct opinion *opinion = looking->opinion;
    const struct opinion_finding *finding = &looking->findings[level];
    struct features features =
        traits_within(looking->arena, &looking->traits, finding->first, finding->last);
    const struct row row = feature_row(looking->arena, &opinion->space, NULL, &features, PARTS_MAX);
    float *values =
        memory_array(looking->arena, float, feature_space_size(&opinion->space) + (size_t)1);
    const struct opinion_example *best = NULL;
    float best_dot = -1;
    size_t i;

    for (i = 0; i < row.count; i++) {
        values[row.index[i]] = row.value[i];
    }
    for (i = 0; i < opinion->count; i++) {
        const struct opinion_example *example = &opinion->examples[i];

        if (example->sign != NULL && (int)example->sign->level == level) {
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

/* Looks at every run of one to three sentences, and at a long sentence in stretches. */
static void
look_around(struct looking *looking)
{
    const struct heard *heard = looking->heard;
    int first = 0, count = (int)heard->count, at, sentences;

    while (first < count) {
        int end = sentence_end(heard, first), last = end;

        for (sentences = 1; sentences <= RUN_SENTENCES; sentences++) {
            if (last - first + 1 >= WORDS_MIN) {
                look_at(looking, first, last);
            }
            if (last + 1 == count) {
                break;
            }
            last = sentence_end(heard, last + 1);
        }
        for (at = first; at + STRETCH_WORDS <= end; at += STRETCH_STEP) {
            look_at(looking, at, at + STRETCH_WORDS - 1);
        }
        first = end + 1;
    }
}

static struct looking *
look(const struct opinion *opinion, const struct linear *linear, int without, void *arena,
     const struct heard *heard, struct opinion_finding findings[OPINION_LEVELS])
{
    struct looking *looking = memory_new(arena, struct looking);
    int level;

    *looking = (struct looking){
        .opinion = opinion, .linear = linear, .arena = arena, .heard = heard, .findings = findings};
    for (level = 0; level < OPINION_LEVELS; level++) {
        findings[level] = (struct opinion_finding){NOTHING, NOTHING, NOTHING, 0, 0, NULL};
    }
    looking->traits = traits_read(arena, opinion->vocabulary, heard);
    sum_up(looking, without);
    look_around(looking);
    return looking;
}

bool
opinion_is_bodily(const struct opinion *opinion, const struct heard *heard)
{
    size_t i;
    int k;

    for (i = 0; i < heard->count; i++) {
        for (k = 0; k < heard->list[i].meaning_count; k++) {
            if (heard->list[i].meanings[k] == opinion->bodily) {
                return true;
            }
        }
    }
    return false;
}

void
opinion_look(const struct opinion *opinion, const struct linear *linear, int without, void *arena,
             const struct heard *heard, struct opinion_finding findings[OPINION_LEVELS])
{
    look(opinion, linear, without, arena, heard, findings);
}

void
opinion_find(const struct opinion *opinion, void *arena, const struct heard *heard,
             struct opinion_finding findings[OPINION_LEVELS])
{
    const struct opinion_bounds *bounds;
    struct looking *looking;
    int level;

    if (opinion == NULL) {
        memset(findings, 0, OPINION_LEVELS * sizeof(*findings));
        return; /* the content has too few examples to learn from */
    }
    looking = look(opinion, &opinion->linear, PARTS_MAX, arena, heard, findings);
    bounds = opinion_is_bodily(opinion, heard) ? &opinion->of_body : &opinion->any;
    for (level = 0; level < OPINION_LEVELS; level++) {
        findings[level].score = findings[level].decision - bounds->level[level];
        findings[level].strict_score = findings[level].decision - opinion->any.level[level];
        if (findings[level].score > 0) {
            findings[level].nearest = nearest(looking, level);
        }
    }
}

/* How many words of a finding a held back sign has. */
static int
words_within(const struct opinion_finding *finding, const struct heard *heard,
             const struct sign_match *match)
{
    int within = 0, at;

    for (at = finding->first; at <= finding->last; at++) {
        within += heard->list[at].start >= match->start && heard->list[at].end <= match->end;
    }
    return within;
}

bool
opinion_was_held(const struct opinion_finding *finding, const struct heard *heard,
                 const struct held_back *held)
{
    size_t i;
    int at;

    for (at = finding->first; at <= finding->last; at++) {
        if (held->is_figure[at] && finding->strict_score <= 0) {
            return true;
        }
    }
    for (i = 0; i < held->count; i++) {
        const struct sign_match *match = &held->list[i];
        int within = words_within(finding, heard, match);

        if (within > 0 && finding->strict_score <= 0) {
            return true;
        }
        if (match->sign == finding->nearest->sign &&
            2 * within > finding->last - finding->first + 1) {
            return true;
        }
    }
    return false;
}
