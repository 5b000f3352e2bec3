#include <math.h>
#include <string.h>

#include "memory.h"
#include "sign_opinion_inside.h"

/* How much a text that is unknown altogether is held to be harmless. */
static const float unknown_weighs = 1;

static const float nothing = 0.0001f;

/* What the logarithm of the odds of a level is taken times, so that the doubts below, which were
 * chosen for decisions about as far apart, stay as they are. */
static const float odds_count = 0.5f;

enum {
    WORDS_MIN = 2,    /* one word ("no") tells nothing; the phrases are for it */
    SENTENCE_MIN = 3, /* words; fewer tell too little of what a whole text says */
    FEW_WORDS = 5,
    HARDLY_WORDS = 2,
    STRETCH_STEP = 2,
    RUN_SENTENCES = 3 /* judged together */
};

/*
 * A sign may stand in a part of a text, with or without a mark between ("thanks for the charger my
 * chest is killing me"). So stretches of so many words are judged too. The best of many says less
 * than the whole, the less the shorter they are. Chosen on texts that nothing was learnt from
 * (sign_match.h): with doubts of 0.1 to 0.3, which raise the bounds, two to five in a hundred
 * emergencies more were missed at the same share of false ones. Stretches of eight words found
 * hardly one more.
 */
struct width {
    int words;
    float doubt;
};
static const struct width widths[] = {{12, 1}, {16, 1}, {20, 0.7f}};
static const float sentences_doubt = 0.7f; /* the same of whole sentences */

/* What speaks against an emergency in words of which none is of a person's body or state: of what
 * was found without one, one in fifteen was an emergency, of ordinary texts taken for one three in
 * four had none. */
static const float bodiless_doubt = 0.2f;

/* What speaks against trouble in a few words, and against an emergency if none is of a body; and
 * against any sign in hardly any. */
static const float few_doubt = 0.5f;
static const float hardly_doubt = 0.8f;

/*
 * What speaks against a sign where a topic is surely asked for. On 1,469 ordinary texts of renters,
 * 730 that only sound like an emergency and 607 emergencies, none learnt from: ordinary ones taken
 * for an emergency 25 without it, 13 with it (0.8: 11); the others 49, 44 (44); emergencies missed
 * 23, 24 (26); the right topic first in 89.6 % of the questions, not 87.9 (90.3).
 */
static const float asked_doubts[OPINION_LEVELS] = {
    [SIGN_CLINICAL] = 0.5f, [SIGN_EQUIPMENT] = 0.8f, [SIGN_EMERGENCY] = 0.5f};

/* What a sign that was held back says against its level in the words it was held back in. */
static const float held_doubt = 2.5f;

/* ---- Deciding ------------------------------------------------------------------------------ */

/* The logarithm of the odds that the text shows some sign of the level, against all other signs
 * and none: by what speaks for each label, which is changed. */
static void
weigh_levels(const struct opinion *opinion, float *says, float odds[OPINION_LEVELS])
{
    const float least = 1e-12f;
    const int none = opinion->net.labels - 1;
    float all = net_shares(says, none + 1), shares[OPINION_LEVELS] = {0};
    int label, level;

    for (label = 0; label < none; label++) {
        shares[opinion->examples[opinion->firsts[label]].sign->level] += says[label];
    }
    for (level = 0; level < OPINION_LEVELS; level++) {
        odds[level] = logf(shares[level] + least) - logf(all - shares[level] + least);
    }
}

/*
 * What the net says of the traits: each block is brought to its share of length 1, as in
 * feature_row(), but unknown traits count too, so that one known word among strange ones does not
 * speak for all.
 */
static void
let_say(const struct net *net, const struct sums *sums, float *says)
{
    const float squares[BLOCKS] = {[BLOCK_STEMS] = sums->square[STRAND_STEMS],
                                   [BLOCK_PAIRS] =
                                       sums->square[STRAND_NEXT] + sums->square[STRAND_APART],
                                   [BLOCK_LETTERS] = sums->square[STRAND_LETTERS]};
    float whole = 0, factors[BLOCKS], hidden[NET_HIDDEN];
    int block, h;

    for (block = 0; block < BLOCKS; block++) {
        float share = feature_share(MIX_SIGNS, (enum feature_block)block);

        whole += squares[block] > nothing ? share * share : 0;
    }
    for (block = 0; block < BLOCKS; block++) {
        factors[block] = squares[block] > nothing
                             ? feature_share(MIX_SIGNS, (enum feature_block)block) /
                                   sqrtf(squares[block] * whole)
                             : 0;
    }
    for (h = 0; h < NET_HIDDEN; h++) {
        float pairs = sums->hidden[STRAND_NEXT][h] + sums->hidden[STRAND_APART][h];

        hidden[h] = factors[BLOCK_STEMS] * sums->hidden[STRAND_STEMS][h] +
                    factors[BLOCK_PAIRS] * pairs +
                    factors[BLOCK_LETTERS] * sums->hidden[STRAND_LETTERS][h];
    }
    net_decide(net, hidden, says);
}

/* The decisions; what is not known speaks for nothing. */
static void
decide(const struct opinion *opinion, const struct net *net, const struct sums *sums,
       float scores[OPINION_LEVELS])
{
    float says[OPINION_LABELS_MAX], odds[OPINION_LEVELS];
    int level;

    let_say(net, sums, says);
    weigh_levels(opinion, says, odds);
    for (level = 0; level < OPINION_LEVELS; level++) {
        scores[level] =
            odds_count * odds[level] - unknown_weighs * sums->unknown / (sums->all + nothing);
    }
}

/* ---- Finding ------------------------------------------------------------------------------- */

/* Some words, first..last, and what is said of them; last is -1 for none. */
struct stretch {
    float says;
    int first, last;
};

struct opinion_view {
    const struct opinion *opinion;
    const struct net *net;
    void *arena;
    const struct heard *heard;
    struct traits traits;
    struct sums *sums;                   /* of the words before each */
    int *bodily;                         /* how many of the words before each are [bodily] */
    bool is_asked;                       /* a topic is surely asked for */
    int *held[OPINION_LEVELS];           /* how many words up to each a sign was held back in */
    struct stretch best[OPINION_LEVELS]; /* the likeliest, once they were tried */
};

/* Adds one trait by its number, UINT32_MAX for an unknown one. */
static void
add(const struct opinion_view *view, uint32_t number, enum strand strand, struct sums *sums)
{
    const struct opinion *opinion = view->opinion;
    bool is_known = number != UINT32_MAX;
    float weight = is_known ? opinion->space.weight[number] : opinion->unknown_weight;

    sums->all += strand == STRAND_STEMS;
    sums->unknown += strand == STRAND_STEMS && !is_known;
    sums->square[strand] += weight * weight;
    if (is_known) {
        net_add(view->net, number, weight, sums->hidden[strand]);
    }
}

static enum strand
strand_of(enum feature_block block, int reach)
{
    if (block != BLOCK_PAIRS) {
        return block == BLOCK_STEMS ? STRAND_STEMS : STRAND_LETTERS;
    }
    return reach == 1 ? STRAND_NEXT : STRAND_APART;
}

/* Sums up the traits, which come in the order of the words that they end with. */
static void
sum_up(struct opinion_view *view, int without)
{
    size_t words = view->heard->count, at = 0, i;
    const struct features *features = &view->traits.features;
    uint32_t *numbers = memory_array(view->arena, uint32_t, features->count + 1);

    feature_numbers(&view->opinion->space, features, without, numbers);
    view->sums = memory_must(talloc_array(view->arena, struct sums, (unsigned)words + 1));
    memset(&view->sums[0], 0, sizeof(view->sums[0]));
    for (i = 0; i < features->count; i++) {
        const struct feature *feature = &features->list[i];

        for (; at <= feature->word; at++) {
            view->sums[at + 1] = view->sums[at];
        }
        add(view, numbers[i], strand_of((enum feature_block)feature->block, view->traits.reach[i]),
            &view->sums[at]);
    }
    for (; at < words; at++) {
        view->sums[at + 1] = view->sums[at];
    }
}

/* What the traits of the words first..last come to. */
static void
sum_within(const struct opinion_view *view, int first, int last, struct sums *within)
{
    static const int reaches[STRANDS] = {[STRAND_NEXT] = 1, [STRAND_APART] = 2};
    const struct sums *high = &view->sums[last + 1];
    int strand, h;

    for (strand = 0; strand < STRANDS; strand++) {
        const int from = first + reaches[strand];
        const struct sums *low = from <= last ? &view->sums[from] : high;

        within->square[strand] = high->square[strand] - low->square[strand];
        for (h = 0; h < NET_HIDDEN; h++) {
            within->hidden[strand][h] = high->hidden[strand][h] - low->hidden[strand][h];
        }
    }
    within->all = high->all - view->sums[first].all;
    within->unknown = high->unknown - view->sums[first].unknown;
}

static void
decide_on(const struct opinion_view *view, int first, int last, float scores[OPINION_LEVELS])
{
    struct sums within;

    sum_within(view, first, last, &within);
    decide(view->opinion, view->net, &within, scores);
}

/* How much an example's row has in common with one that is spread out by feature. */
static float
dot(const struct opinion_rows *rows, size_t example, const float *values)
{
    float sum = 0;
    uint32_t i;

    for (i = rows->begins[example]; i < rows->begins[example + 1]; i++) {
        sum += (float)rows->value[i] * values[rows->index[i]];
    }
    return sum;
}

/* The likeliest sign of the level; NULL if it has none. */
static const struct sign *
likeliest_sign(const struct opinion_view *view, enum sign_level level, int first, int last)
{
    const struct opinion *opinion = view->opinion;
    const struct sign *likeliest = NULL;
    float says[OPINION_LABELS_MAX], most = 0;
    struct sums within;
    int label;

    sum_within(view, first, last, &within);
    let_say(view->net, &within, says);
    for (label = 0; label + 1 < opinion->net.labels; label++) {
        const struct sign *sign = opinion->examples[opinion->firsts[label]].sign;

        if (sign->level == level && (likeliest == NULL || says[label] > most)) {
            likeliest = sign;
            most = says[label];
        }
    }
    return likeliest;
}

const struct opinion_example *
opinion_nearest(const struct opinion_view *view, enum sign_level level, int first, int last)
{
    const struct opinion *opinion = view->opinion;
    const struct sign *sign = likeliest_sign(view, level, first, last);
    struct features features = traits_within(view->arena, &view->traits, first, last);
    const struct row row = feature_row(view->arena, &opinion->space, NULL, &features, PARTS_MAX);
    const uint32_t end = opinion->space.ends[BLOCK_PAIRS];
    float *values = memory_array(view->arena, float, end + (size_t)1);
    const struct opinion_example *best = NULL;
    float best_dot = -1;
    size_t i;

    for (i = 0; i < row.count; i++) {
        if (row.index[i] < end) {
            values[row.index[i]] = row.value[i];
        }
    }
    for (i = 0; i < opinion->count; i++) {
        const struct opinion_example *example = &opinion->examples[i];

        if (sign != NULL && example->sign == sign) {
            float near = dot(&opinion->rows, i, values);

            if (near > best_dot) {
                best_dot = near;
                best = example;
            }
        }
    }
    return best;
}

/* Counts the words before each that the class has; without such a class (-1) all of them. */
static int *
count_class(void *arena, const struct heard *heard, int class)
{
    int *before = memory_array(arena, int, heard->count + 1), k;
    size_t i;

    for (i = 0; i < heard->count; i++) {
        const struct heard_word *word = &heard->list[i];

        before[i + 1] = before[i] + (class < 0);
        for (k = 0; k < word->meaning_count; k++) {
            before[i + 1] += word->meanings[k] == class;
        }
    }
    return before;
}

static struct opinion_view *
view_text(const struct opinion *opinion, const struct net *net, int without, void *arena,
          const struct heard *heard)
{
    struct opinion_view *view = memory_new(arena, struct opinion_view);
    int level;

    *view = (struct opinion_view){.opinion = opinion, .net = net, .arena = arena, .heard = heard};
    for (level = 0; level < OPINION_LEVELS; level++) {
        view->held[level] = memory_array(arena, int, heard->count + 1);
        view->best[level].last = -1;
    }
    view->traits = traits_read(arena, opinion->vocabulary, heard);
    view->bodily = count_class(arena, heard, vocabulary_id(opinion->vocabulary, sign_class_bodily));
    sum_up(view, without);
    return view;
}

struct opinion_view *
opinion_of(const struct opinion *opinion, void *arena, const struct heard *heard)
{
    if (opinion == NULL || heard->count < WORDS_MIN) {
        return NULL;
    }
    return view_text(opinion, &opinion->net, PARTS_MAX, arena, heard);
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
opinion_asked_doubt(enum sign_level level)
{
    return asked_doubts[level];
}

void
opinion_ask(struct opinion_view *view)
{
    view->is_asked = true;
}

void
opinion_hold(struct opinion_view *view, enum sign_level level, int first, int last)
{
    int count = (int)view->heard->count, i;

    for (i = first; i < count; i++) {
        view->held[level][i + 1] += i > last ? last - first + 1 : i - first + 1;
    }
}

/* What speaks against a sign of the level in these words. */
static float
doubt_in(const struct opinion_view *view, enum sign_level level, int first, int last)
{
    const bool is_bodiless = view->bodily[last + 1] == view->bodily[first],
               is_held = view->held[level][last + 1] > view->held[level][first];
    float doubt = (view->is_asked ? asked_doubts[level] : 0) + (is_held ? held_doubt : 0);

    if (last - first < FEW_WORDS && (level != SIGN_EMERGENCY || is_bodiless)) {
        doubt += few_doubt;
    }
    doubt += level == SIGN_EMERGENCY && is_bodiless ? bodiless_doubt : 0;
    return doubt + (last - first < HARDLY_WORDS ? hardly_doubt : 0);
}

/* Judges the words first..last as if no phrase were in them, and keeps what is likelier. */
static void
try_stretch(struct opinion_view *view, int first, int last, float doubt)
{
    float scores[OPINION_LEVELS];
    int level;

    decide_on(view, first, last, scores);
    for (level = 0; level < OPINION_LEVELS; level++) {
        float says = scores[level] - view->opinion->bounds[level] - doubt -
                     doubt_in(view, (enum sign_level)level, first, last);

        if (view->best[level].last < 0 || says > view->best[level].says) {
            view->best[level] = (struct stretch){says, first, last};
        }
    }
}

/* Every run of one to three sentences. */
static void
try_sentences(struct opinion_view *view)
{
    const struct heard_word *list = view->heard->list;
    int count = (int)view->heard->count, first, last;

    for (first = 0; first < count; first++) {
        if (first > 0 && list[first - 1].sentence == list[first].sentence) {
            continue;
        }
        for (last = first; last < count; last++) {
            bool ends = last + 1 == count || list[last + 1].sentence != list[last].sentence;

            if (list[last].sentence >= list[first].sentence + RUN_SENTENCES) {
                break;
            }
            if (ends && last - first + 1 >= SENTENCE_MIN) {
                try_stretch(view, first, last, sentences_doubt);
            }
        }
    }
}

/* The whole text and its stretches, once, on all levels. */
static void
try_stretches(struct opinion_view *view)
{
    int count = (int)view->heard->count, at;
    size_t i;

    try_stretch(view, 0, count - 1, 0);
    try_sentences(view);
    for (i = 0; i < sizeof(widths) / sizeof(widths[0]); i++) {
        for (at = 0; at + widths[i].words <= count; at += STRETCH_STEP) {
            try_stretch(view, at, at + widths[i].words - 1, widths[i].doubt);
        }
    }
}

float
opinion_alone(struct opinion_view *view, enum sign_level level, int *first, int *last)
{
    const struct stretch *best = &view->best[level];

    if (best->last < 0) {
        try_stretches(view);
    }
    *first = best->first;
    *last = best->last;
    return best->says;
}

void
opinion_decide(const struct opinion *opinion, const struct net *net, int without, void *arena,
               const struct heard *heard, float scores[OPINION_LEVELS])
{
    struct opinion_view *view = view_text(opinion, net, without, arena, heard);
    int level, first, last;

    for (level = 0; level < OPINION_LEVELS; level++) {
        scores[level] = opinion_alone(view, (enum sign_level)level, &first, &last);
    }
}
