/* Learning a second opinion; what it finds is in sign_opinion.c. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "sign_match.h"
#include "sign_opinion_inside.h"
#include "sign_phrases.h"

enum { PARTS = 5, PARTS_TRIED = 2 }; /* of the fifths, so many are held out in turn */

/*
 * This share of the texts held out may fire although they are harmless: of the topics' ways of
 * asking and other ordinary ones; of those listed as harmless, of which some sound like a sign; and
 * of those that stand in a sign's file because they do.
 */
static const float shares[OPINION_LEVELS][OPINION_HARMLESS + 1] = {
    [SIGN_CLINICAL] =
        {[OPINION_ASKED] = 0.020f, [OPINION_LISTED] = 0.04f, [OPINION_HARMLESS] = 0.06f},
    [SIGN_EQUIPMENT] =
        {[OPINION_ASKED] = 0.008f, [OPINION_LISTED] = 0.03f, [OPINION_HARMLESS] = 0.04f},
    [SIGN_EMERGENCY] = {
        [OPINION_ASKED] = 0.025f, [OPINION_LISTED] = 0.06f, [OPINION_HARMLESS] = 0.16f}};

/* What getting an example wrong costs. */
static const float costs[] = {[OPINION_PHRASE] = 0.005f,
                              [OPINION_WHOLE] = 1,
                              [OPINION_ASKED] = 1,
                              [OPINION_LISTED] = 1.5f,
                              [OPINION_HARMLESS] = 1.5f};

enum { PASSES = 4 };    /* of the net; 8 found as many */
enum { HARMLESS = -1 }; /* label of an example of no sign, while they are read */

/*
 * Danger is told beside an ordinary question, and mostly without a mark between: "how do i clean
 * the filter my chest hurts". So examples that are not long are learnt once more, each with a way
 * of asking for a topic before or behind it, at this cost; those that are no sign too, lest two
 * things in a text look like danger. Of 3,296 such texts made of other clauses and questions 463
 * were silent without, 156 with them; of 240 by somebody who had seen neither content nor program
 * 13 and 5. With ways of asking beside each other too there were as many, for more to learn.
 */
static const float beside_costs[] = {[OPINION_PHRASE] = 0.1f,
                                     [OPINION_WHOLE] = 0.5f,
                                     [OPINION_ASKED] = 0,
                                     [OPINION_LISTED] = 0.75f,
                                     [OPINION_HARMLESS] = 0.75f};
enum { BESIDE_LONGEST = 80 }; /* bytes */

/* A decision is never taken below this, however harmless the held-out texts were. */
static const float lowest_threshold = -0.6f;

/* Two examples that are learnt from as one text. */
struct joined {
    uint32_t first, second;
};

/* What learning needs besides the opinion; arrays have an entry for each example, and behind those
 * one for each joined one. */
struct learning {
    void *scratch;
    struct workspace *workspace;
    const struct sign_classes *classes;
    const struct opinion *opinion; /* with its vocabulary and examples */
    struct row *rows;
    int *labels;
    float *costs;
    uint64_t *keys; /* by the text alone */
    uint8_t *parts;
    struct held_out *held_out;
    size_t count;
    struct joined *joined;
    size_t joined_count;
};

/* What was made of an example by what was learnt without its part. */
struct held_out {
    float decisions[OPINION_LEVELS];
};

static const char *
text_of_one(const struct learning *learning, void *arena, size_t i)
{
    const struct opinion_example *example = &learning->opinion->examples[i];

    return example->weight == OPINION_PHRASE
               ? phrase_example(arena, learning->classes, example->line, example->choice)
               : example->line;
}

/* The text of an example or a joined one. */
static const char *
text_of(const struct learning *learning, void *arena, size_t i)
{
    const struct joined *joined;

    if (i < learning->count) {
        return text_of_one(learning, arena, i);
    }
    joined = &learning->joined[i - learning->count];
    return memory_must(talloc_asprintf(arena, "%s %s", text_of_one(learning, arena, joined->first),
                                       text_of_one(learning, arena, joined->second)));
}

/* An example as it is heard, in `arena`. Each is heard anew whenever it is looked at: of so many,
 * all at once are hundreds of megabytes. */
static struct heard
hear_example(const struct learning *learning, void *arena, size_t i)
{
    return vocabulary_hear_text(learning->opinion->vocabulary, arena, learning->workspace,
                                text_of(learning, arena, i));
}

/* Labels the examples: those of a sign stand together, and harmless ones get the last label.
 * Returns how many labels there are. */
static int
read_examples(struct learning *learning, struct opinion *opinion)
{
    const struct sign *last = NULL;
    int signs = 0;
    size_t i;

    opinion->firsts = memory_array(opinion, uint32_t, OPINION_LABELS_MAX);
    for (i = 0; i < learning->count; i++) {
        const struct opinion_example *example = &opinion->examples[i];

        if (example->sign != NULL && example->sign != last) {
            last = example->sign;
            opinion->firsts[signs++] = (uint32_t)i;
        }
        learning->labels[i] = example->sign != NULL ? signs - 1 : HARMLESS;
        learning->costs[i] = costs[example->weight];
        learning->keys[i] = net_key(example->line) + (uint64_t)example->choice;
        learning->parts[i] = (uint8_t)(learning->keys[i] % PARTS);
    }
    for (i = 0; i < learning->count; i++) {
        learning->labels[i] = learning->labels[i] == HARMLESS ? signs : learning->labels[i];
    }
    return signs + 1;
}

/* A way of asking for a topic, by its key. */
struct asked {
    uint64_t key;
    uint32_t example;
};

static int
by_asked_key(const void *left, const void *right)
{
    const struct asked *l = left, *r = right;

    if (l->key != r->key) {
        return l->key < r->key ? -1 : 1;
    }
    return l->example < r->example ? -1 : l->example > r->example;
}

/* The ways of asking, sorted by their keys; returns how many. */
static size_t
list_asked(const struct learning *learning, struct asked *asked)
{
    size_t count = 0, i;

    for (i = 0; i < learning->count; i++) {
        if (learning->opinion->examples[i].weight == OPINION_ASKED) {
            asked[count++] = (struct asked){learning->keys[i], (uint32_t)i};
        }
    }
    qsort(asked, count, sizeof(*asked), by_asked_key);
    return count;
}

/* The next way of asking behind the key, or from the first on, that is of the same part, so that
 * what is held out is not learnt from in company; NULL if none is. */
static const struct asked *
asked_behind(const struct learning *learning, const struct asked *asked, size_t count, uint64_t key,
             uint8_t part)
{
    size_t low = 0, high = count, i;

    while (low < high) {
        size_t middle = low + (high - low) / 2;

        if (asked[middle].key < key) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    for (i = 0; i < count; i++) {
        const struct asked *next = &asked[(low + i) % count];

        if (learning->parts[next->example] == part) {
            return next;
        }
    }
    return NULL;
}

/* Which way of asking stands beside an example, and on which side, is told by the example's key: a
 * line more in the content changes few. */
static void
join_examples(struct learning *learning)
{
    struct asked *asked = memory_array(learning->scratch, struct asked, learning->count + 1);
    const size_t count = list_asked(learning, asked);
    size_t i;

    for (i = 0; i < learning->count; i++) {
        const struct opinion_example *example = &learning->opinion->examples[i];
        const size_t at = learning->count + learning->joined_count;
        uint64_t key =
            learning->keys[i] * 0x9E3779B97F4A7C15u; /* an odd number: none fall together */
        const struct asked *with;
        uint32_t own = (uint32_t)i;

        if (beside_costs[example->weight] <= 0 || example->choice != 0 ||
            strlen(example->line) > BESIDE_LONGEST) {
            continue;
        }
        with = asked_behind(learning, asked, count, key, learning->parts[i]);
        if (with != NULL) {
            learning->joined[learning->joined_count++] = key >> 40 & 1
                                                             ? (struct joined){with->example, own}
                                                             : (struct joined){own, with->example};
            learning->labels[at] = learning->labels[i];
            learning->costs[at] = beside_costs[example->weight];
            learning->keys[at] = key ^ with->key;
            learning->parts[at] = learning->parts[i];
        }
    }
}

static struct features
traits_of(void *data, void *arena, size_t example)
{
    const struct learning *learning = data;
    const struct heard heard = hear_example(learning, arena, example);

    return traits_read(arena, learning->opinion->vocabulary, &heard).features;
}

/* The row of each example, no longer than it is: there are many. */
static void
make_rows(struct learning *learning, const struct feature_space *space)
{
    size_t i;

    for (i = 0; i < learning->count + learning->joined_count; i++) {
        void *making = memory_must(talloc_new(learning->scratch));
        const struct features features = traits_of(learning, making, i);
        const struct row row = feature_row(making, space, NULL, &features, PARTS_MAX);
        struct row *kept = &learning->rows[i];

        kept->count = row.count;
        kept->index = memory_array(learning->scratch, uint32_t, row.count + 1);
        kept->value = memory_array(learning->scratch, float, row.count + 1);
        memcpy(kept->index, row.index, row.count * sizeof(*row.index));
        memcpy(kept->value, row.value, row.count * sizeof(*row.value));
        talloc_free(making);
    }
}

static int
by_falling(const void *left, const void *right)
{
    float l = *(const float *)left, r = *(const float *)right;

    return l > r ? -1 : l < r;
}

/* True for an example by whose kind a bound is set. */
static bool
sets_bound(const struct opinion_example *example)
{
    return example->weight >= OPINION_ASKED;
}

/* Judges examples that set a bound by what was learnt without their part. */
static void
try_held_out(struct learning *learning, const struct opinion *opinion,
             const struct examples *examples)
{
    uint8_t part;
    size_t i;

    for (part = 0; part < (uint8_t)PARTS_TRIED; part++) {
        struct net without;

        net_train(learning->scratch, examples, learning->keys, learning->parts, part, PASSES,
                  opinion->net.features, opinion->net.labels, &without);
        for (i = 0; i < learning->count; i++) {
            if (learning->parts[i] == part && sets_bound(&opinion->examples[i])) {
                void *looking = memory_must(talloc_new(learning->scratch));
                const struct heard heard = hear_example(learning, looking, i);

                opinion_decide(opinion, &without, part, looking, &heard,
                               learning->held_out[i].decisions);
                talloc_free(looking);
            }
        }
        talloc_free(without.inner);
    }
}

/*
 * What only this share of so many values exceeds. So few are so high that one text more or less
 * would move it: it is read off a tail that falls exponentially from the highest twentieth on (the
 * generalised Pareto tail of shape 0; Pickands, "Statistical Inference Using Extreme Order
 * Statistics", Annals of Statistics 3, 1975).
 */
static float
exceeded_by(float *values, size_t count, float share)
{
    enum { TAIL_PART = 20, TAIL_LEAST = 10 };
    size_t tail = count / TAIL_PART > TAIL_LEAST ? count / TAIL_PART : TAIL_LEAST, i;
    float above = 0;

    qsort(values, count, sizeof(*values), by_falling);
    if (count <= tail) {
        return count == 0 ? lowest_threshold : values[0];
    }
    if (share * (float)count >= (float)tail) { /* there are enough of them */
        return values[(size_t)(share * (float)count)];
    }
    for (i = 0; i < tail; i++) {
        above += (values[i] - values[tail]) / (float)tail;
    }
    return values[tail] + above * logf((float)tail / (float)count / share);
}

/* The same of the decisions on the harmless texts of one kind. */
static float
harmless_exceeded_by(struct learning *learning, const struct opinion *opinion, int level,
                     enum opinion_weight kind, float share)
{
    float *harmless = memory_array(learning->scratch, float, learning->count + 1), at;
    size_t count = 0, i;

    for (i = 0; i < learning->count; i++) {
        if (opinion->examples[i].weight == kind && learning->parts[i] < PARTS_TRIED) {
            harmless[count++] = learning->held_out[i].decisions[level];
        }
    }
    at = exceeded_by(harmless, count, share);
    talloc_free(harmless);
    return at;
}

/* How high decisions must be so that no more harmless texts pass than may. */
static void
find_bounds(struct learning *learning, struct opinion *opinion)
{
    int level, kind;

    for (level = 0; level < OPINION_LEVELS; level++) {
        opinion->bounds[level] = lowest_threshold;
        for (kind = OPINION_ASKED; kind <= OPINION_HARMLESS; kind++) {
            float bound = harmless_exceeded_by(learning, opinion, level, (enum opinion_weight)kind,
                                               shares[level][kind]);

            opinion->bounds[level] =
                bound > opinion->bounds[level] ? bound : opinion->bounds[level];
        }
    }
}

static bool
has_whole_texts(const struct opinion_example *examples, size_t count)
{
    while (count > 0 && (examples->sign == NULL || examples->weight != OPINION_WHOLE)) {
        examples++;
        count--;
    }
    return count > 0;
}

/* Keeps what the rows have of words and pairs: by that the nearest example is found. */
static void
keep_rows(const struct learning *learning, struct opinion *opinion)
{
    const uint32_t end = opinion->space.ends[BLOCK_PAIRS];
    struct opinion_rows *rows = &opinion->rows;
    uint32_t all = 0;
    size_t i, k;

    rows->begins = memory_array(opinion, uint32_t, learning->count + 1);
    for (i = 0; i < learning->count; i++) {
        const struct row *row = &learning->rows[i];

        for (k = 0; k < row->count && opinion->examples[i].sign != NULL; k++) {
            all += row->index[k] < end;
        }
        rows->begins[i + 1] = all;
    }
    rows->index = memory_array(opinion, uint32_t, all + (size_t)1);
    rows->value = memory_array(opinion, uint16_t, all + (size_t)1);
    for (i = 0, all = 0; i < learning->count; i++) {
        const struct row *row = &learning->rows[i];

        for (k = 0; k < row->count && all < rows->begins[i + 1]; k++) {
            if (row->index[k] < end) {
                rows->index[all] = row->index[k];
                rows->value[all++] = (uint16_t)lrintf(row->value[k] * UINT16_MAX);
            }
        }
    }
}

static void
learn(struct learning *learning, struct opinion *opinion, int labels)
{
    struct examples examples;
    size_t i;

    feature_space_build(
        opinion,
        &(struct feature_texts){NULL, traits_of, learning, learning->parts, learning->count},
        MIX_SIGNS, NULL, &opinion->space);
    join_examples(learning);
    make_rows(learning, &opinion->space);
    opinion->unknown_weight = 0;
    for (i = 0; i < opinion->space.count; i++) {
        if (opinion->space.weight[i] > opinion->unknown_weight) {
            opinion->unknown_weight = opinion->space.weight[i];
        }
    }
    examples = (struct examples){learning->rows, learning->labels, learning->costs,
                                 learning->count + learning->joined_count, 1};
    net_train(opinion, &examples, learning->keys, learning->parts, PARTS_MAX, PASSES,
              feature_space_size(&opinion->space), labels, &opinion->net);
    try_held_out(learning, opinion, &examples);
    find_bounds(learning, opinion);
    keep_rows(learning, opinion);
}

struct opinion *
opinion_build(void *arena, struct workspace *workspace, const struct vocabulary *vocabulary,
              const struct sign_classes *classes, const struct opinion_example *examples,
              size_t count)
{
    struct opinion *opinion;
    struct learning learning = {.workspace = workspace, .classes = classes, .count = count};

    if (!has_whole_texts(examples, count)) {
        return NULL;
    }
    opinion = memory_new(arena, struct opinion);
    opinion->vocabulary = vocabulary;
    opinion->examples = examples;
    opinion->count = count;
    learning.opinion = opinion;
    learning.scratch = memory_must(talloc_new(opinion));
    learning.rows = memory_array(learning.scratch, struct row, 2 * count);
    learning.labels = memory_array(learning.scratch, int, 2 * count);
    learning.costs = memory_array(learning.scratch, float, 2 * count);
    learning.keys = memory_array(learning.scratch, uint64_t, 2 * count);
    learning.parts = memory_array(learning.scratch, uint8_t, 2 * count);
    learning.held_out = memory_array(learning.scratch, struct held_out, count);
    learning.joined = memory_array(learning.scratch, struct joined, count);
    learn(&learning, opinion, read_examples(&learning, opinion));
    talloc_free(learning.scratch);
    return opinion;
}
