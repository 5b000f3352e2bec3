/* Searching a model. Building it is in model_build.c, copying it in model_image.c. */
#include "model.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "model_inside.h"
#include "stress.h"

struct words
model_read(const struct model *model, void *arena, struct workspace *workspace, const char *text)
{
    struct words words = words_read(arena, workspace, text, model->language);

    words = shorthand_expand(arena, model->shorthand, words);
    return spelling_repair(arena, &model->spelling, words);
}

/* ---- The nearest phrases -------------------------------------------------------------------- */

/*
 * How many postings are walked for one text: its rarest features come first, so what is left out
 * when there are very many phrases are the words that all of them share.
 */
enum { POSTINGS_WALKED = 256, SLOTS = 2 * POSTINGS_WALKED };

bool
model_indexes(const struct model *model, uint32_t feature)
{
    return feature < model->space.ends[BLOCK_PAIRS];
}

struct near_slot {
    uint32_t phrase; /* + 1; 0 is empty */
    float cosine;
};

/* Phrases that share something with the text: open addressing, and which slots are taken. */
struct nearness {
    struct near_slot slots[SLOTS];
    uint16_t taken[POSTINGS_WALKED];
    size_t count;
};

/* One feature of the text that has postings. */
struct probe {
    uint32_t feature, postings;
    float value;
};

/*
 * The text's stems and pairs that are walked if there is room, rarest first (a counting sort),
 * brought to length 1 with those that are not. `probes` has room for twice the row.
 */
static size_t
find_probes(const struct model *model, const struct row *row, struct probe *probes)
{
    size_t after[POSTINGS_WALKED + 2] = {0}, count = 0, i;
    struct probe *sorted = probes + row->count;
    float square = 0;

    for (i = 0; i < row->count; i++) {
        uint32_t feature = row->index[i];

        if (model_indexes(model, feature)) {
            const uint32_t *begins = model->index.begins + feature;
            uint32_t postings = begins[1] - begins[0];

            square += row->value[i] * row->value[i];
            if (postings > 0 && postings <= POSTINGS_WALKED) {
                probes[count++] = (struct probe){feature, postings, row->value[i]};
                after[postings + 1]++;
            }
        }
    }
    for (i = 1; i < POSTINGS_WALKED + 2; i++) {
        after[i] += after[i - 1];
    }
    for (i = 0; i < count; i++) {
        probes[i].value /= sqrtf(square);
        sorted[after[probes[i].postings]++] = probes[i];
    }
    memcpy(probes, sorted, count * sizeof(*probes));
    return count;
}

static void
walk(const struct model *model, const struct probe *probe, struct nearness *nearness)
{
    const struct posting *posting = model->index.postings + model->index.begins[probe->feature];
    const struct posting *end = posting + probe->postings;

    for (; posting < end; posting++) {
        uint32_t at = (posting->phrase * 2654435761u >> 8) % SLOTS;

        while (nearness->slots[at].phrase != 0 &&
               nearness->slots[at].phrase != posting->phrase + 1) {
            at = (at + 1) % SLOTS;
        }
        if (nearness->slots[at].phrase == 0) {
            nearness->slots[at].phrase = posting->phrase + 1;
            nearness->taken[nearness->count++] = (uint16_t)at;
        }
        nearness->slots[at].cosine += posting->value * probe->value;
    }
}

/* Fills the nearest phrase of each label found, and what nearness says. */
static void
find_nearest(const struct model *model, void *arena, const struct row *row, int without,
             struct finding *finding)
{
    struct nearness *nearness = memory_new(arena, struct nearness);
    struct probe *probes = memory_array(arena, struct probe, 2 * row->count + 1);
    size_t count = find_probes(model, row, probes), walked = 0, i, k;
    float best[PLACES] = {0}, any = 0;

    for (i = 0; i < count && walked + probes[i].postings <= POSTINGS_WALKED; i++) {
        walk(model, &probes[i], nearness);
        walked += probes[i].postings;
    }
    for (i = 0; i < nearness->count; i++) {
        const struct near_slot *slot = &nearness->slots[nearness->taken[i]];
        uint32_t phrase = slot->phrase - 1;

        if (model->parts[phrase] == without) {
            continue;
        }
        any = slot->cosine > any ? slot->cosine : any;
        for (k = 0; k < finding->count; k++) {
            if (model->labels[phrase] == finding->labels[k] &&
                (slot->cosine > best[k] ||
                 (slot->cosine == best[k] && phrase < finding->nearest[k]))) {
                best[k] = slot->cosine;
                finding->nearest[k] = phrase;
            }
        }
    }
    finding->evidence.measure[MEASURE_NEAR] = best[0];
    finding->evidence.measure[MEASURE_NEAR_OTHER] = any - best[0];
    talloc_free(nearness);
    talloc_free(probes);
}

/* ---- Ranking -------------------------------------------------------------------------------- */

/* The best labels by decision value, best first; equal ones in the order of their numbers. */
static void
rank(const struct model *model, const float *scores, struct finding *finding)
{
    int label, place;

    finding->count = 0;
    for (label = 0; label < model->linear.labels; label++) {
        if (model->first[label] == UINT32_MAX) {
            continue; /* a label without phrases, or elsewhere */
        }
        for (place = (int)finding->count; place > 0; place--) {
            if (scores[finding->labels[place - 1]] >= scores[label]) {
                break;
            }
            if (place < PLACES) {
                finding->labels[place] = finding->labels[place - 1];
            }
        }
        if (place < PLACES) {
            finding->labels[place] = label;
            finding->count += finding->count < PLACES;
        }
    }
}

/* How much the second opinion counts beside a decision value; by cross-validation (see model.h). */
static const float second_counts = 0.15f;

/* A label among the first, with all that speaks for it. */
struct place {
    int label;
    float value; /* decision value, the second opinion added */
    struct usage_view view;
};

/* The first labels in the order of decision and second opinion together; one more place, which
 * stays the last, for elsewhere. Returns how many without that one. */
static size_t
find_places(const struct model *model, const struct learnt *learnt, const struct row *row,
            const float *scores, struct place places[PLACES + 1])
{
    struct usage_view views[PLACES + 1];
    struct finding first = {.count = 0};
    int labels[PLACES + 1];
    size_t i, at;

    rank(model, scores, &first);
    memcpy(labels, first.labels, first.count * sizeof(*labels));
    labels[first.count] = learnt->linear->labels - 1;
    usage_view(learnt->usage, row, labels, first.count + 1, views);
    for (i = 0; i <= first.count; i++) {
        float more = second_counts * (views[i].likely - views[0].likely);
        const struct place place = {labels[i], scores[labels[i]] + more, views[i]};

        for (at = i; at > 0 && i < first.count && places[at - 1].value < place.value; at--) {
            places[at] = places[at - 1];
        }
        places[at] = place;
    }
    return first.count;
}

/* What the places tell of the first of them. */
static void
measure_places(const struct place *places, size_t count, float elsewhere, float *measure)
{
    const struct usage_view none = {0, 0}, *first = count > 0 ? &places[0].view : &none;
    const struct usage_view *second = count > 1 ? &places[1].view : first;
    const struct usage_view *third = count > 2 ? &places[2].view : second;
    float value[PLACES] = {-1, -1, -1};
    size_t i;

    for (i = 0; i < count; i++) {
        value[i] = places[i].value;
    }
    measure[MEASURE_TOP] = value[0];
    measure[MEASURE_GAP] = value[0] - value[1];
    measure[MEASURE_THIRD] = value[1] - value[2];
    measure[MEASURE_COVERED] = first->covered;
    measure[MEASURE_COVERED_MORE] = first->covered - second->covered;
    measure[MEASURE_LIKELY] =
        first->likely - (second->likely > third->likely ? second->likely : third->likely);
    measure[MEASURE_LIKELY_HERE] = count > 0 ? first->likely - places[count].view.likely : 0;
    measure[MEASURE_ELSEWHERE] = count > 0 ? elsewhere : 1;
}

/* How much a linear decision and the logarithm of a likelihood by the net count together; less
 * likely than the least is as unlikely as that (see model.h). */
static const float linear_counts = 0.5f, net_counts = 0.2f, least_likely = -8;

/* The decision values of all labels, of about -1 to 1. */
static void
decide(const struct learnt *learnt, void *arena, const struct row *row, float *scores)
{
    float hidden[NET_HIDDEN] = {0}, *says, sum;
    size_t i;
    int label;

    linear_scores(learnt->linear, row, scores);
    if (learnt->net->labels == 0) {
        return;
    }
    says = memory_array(arena, float, (size_t)learnt->net->labels);
    for (i = 0; i < row->count; i++) {
        net_add(learnt->net, row->index[i], row->value[i], hidden);
    }
    net_decide(learnt->net, hidden, says);
    sum = net_shares(says, learnt->net->labels);
    for (label = 0; label < learnt->net->labels; label++) {
        float likely = fmaxf(logf(says[label] / sum), least_likely);

        scores[label] = linear_counts * scores[label] + net_counts * (likely - least_likely / 2);
    }
    talloc_free(says);
}

void
model_find(const struct model *model, void *arena, const struct learnt *learnt,
           const struct row *row, size_t word_count, struct finding *finding)
{
    const struct linear *linear = learnt->linear;
    float *scores = memory_array(arena, float, (size_t)linear->stride);
    float *measure = finding->evidence.measure;
    struct place places[PLACES + 1] = {{.label = 0}};
    size_t i;

    memset(finding, 0, sizeof(*finding));
    if (row->count > 0) {
        decide(learnt, arena, row, scores);
        finding->count = find_places(model, learnt, row, scores, places);
    }
    for (i = 0; i < finding->count; i++) {
        finding->labels[i] = places[i].label;
        finding->nearest[i] = model->first[places[i].label];
    }
    if (finding->count > 0) {
        find_nearest(model, arena, row, learnt->without, finding);
    }
    measure_places(places, finding->count, scores[linear->labels - 1], measure);
    measure[MEASURE_ONE] = 1;
    measure[MEASURE_UNKNOWN] = (float)row->unknown / 1000;
    measure[MEASURE_LENGTH] = logf(1 + (float)word_count) / 4;
    talloc_free(scores);
}

void
model_judge(const struct model *model, const struct finding *finding, struct model_result *result)
{
    const struct calibration *calibration = &model->calibration;
    size_t i;

    memset(result, 0, sizeof(*result));
    result->count = finding->count;
    result->elsewhere = finding->count == 0 || finding->evidence.measure[MEASURE_ELSEWHERE] >
                                                   finding->evidence.measure[MEASURE_TOP];
    for (i = 0; i < finding->count; i++) {
        result->best[i].label = finding->labels[i];
        result->best[i].phrase = finding->nearest[i];
        result->best[i].score = calibrated(calibration, &finding->evidence, (int)i);
        if (i > 0 && result->best[i].score > result->best[i - 1].score) {
            result->best[i].score = result->best[i - 1].score; /* the order is the ranking's */
        }
    }
    if (finding->count == 0 || finding->evidence.measure[MEASURE_COVERED] <= 0) {
        return; /* not one word of it is said by the first label's phrases */
    }
    if (result->best[0].score >= BAND_SURE) {
        result->sureness = SURE;
    } else if (finding->count > 1 &&
               result->best[0].score + result->best[1].score >= BAND_BETWEEN_TWO) {
        result->sureness = BETWEEN_TWO;
    }
}

/* ---- The office's own lines ----------------------------------------------------------------- */

/* What a text scores that is a way of asking, word for word but for endings and slips. */
enum { SCORE_OF_A_LINE = 990 };

bool
model_is_asked(const struct model *model, size_t phrase)
{
    return model->labels[phrase] >= 0 && model->parts[phrase] != PART_ABOUT;
}

uint32_t
model_line_key(const struct words *words)
{
    uint64_t key = 14695981039346656037u;
    size_t i;

    for (i = 0; i < words->count; i++) {
        const char *stem = words->list[i].stem;

        for (; *stem != '\0'; stem++) {
            key = (key ^ (unsigned char)*stem) * 1099511628211u;
        }
        key = (key ^ ' ') * 1099511628211u;
    }
    return (uint32_t)(key ^ key >> 32);
}

/* The phrase that the words are; false if none, or phrases of several labels, read so. */
static bool
find_line(const struct model *model, const struct words *words, uint32_t *phrase)
{
    uint32_t key = model_line_key(words), at = key & model->lines.mask;
    bool found = false;

    for (; model->lines.slots[at].phrase != 0; at = (at + 1) & model->lines.mask) {
        uint32_t other = model->lines.slots[at].phrase - 1;

        if (model->lines.slots[at].key != key) {
            continue;
        }
        if (found && model->labels[other] != model->labels[*phrase]) {
            return false;
        }
        *phrase = found ? *phrase : other;
        found = true;
    }
    return found && words->count > 0;
}

/* Puts the label of a line that was found to the top, whatever the decisions say. */
static void
put_first(const struct model *model, uint32_t phrase, struct model_result *result)
{
    int label = model->labels[phrase];
    size_t place = 0;

    while (place < result->count && result->best[place].label != label) {
        place++;
    }
    if (place == result->count && result->count < PLACES) {
        result->count++;
    }
    place = place < result->count ? place : result->count - 1;
    memmove(&result->best[1], &result->best[0], place * sizeof(result->best[0]));
    result->best[0] = (struct model_match){label, SCORE_OF_A_LINE, phrase};
    for (place = 1; place < result->count; place++) {
        if (result->best[place].score > 1000 - SCORE_OF_A_LINE) {
            result->best[place].score = 1000 - SCORE_OF_A_LINE;
        }
    }
    result->sureness = SURE;
}

/* Numbers alone ask nothing: "2" is an answer to something, or a slip of the thumb. */
static bool
is_asking(const struct words *words)
{
    size_t i;

    for (i = 0; i < words->count; i++) {
        if (spelling_is_letters(words->list[i].text)) {
            return true;
        }
    }
    return false;
}

struct model_result
model_search(const struct model *model, void *arena, struct workspace *workspace, const char *text)
{
    void *scratch = memory_must(talloc_new(arena));
    struct words words = model_read(model, scratch, workspace, text);
    struct features features = features_read(scratch, &words);
    struct model_result result;
    struct finding finding;
    uint32_t phrase = 0;
    struct row row = feature_row_stressed(scratch, &model->space, &words, &features,
                                          stress_of(scratch, &words), PARTS_MAX);

    if (!is_asking(&words)) {
        row.count = 0;
    }
    model_find(model, scratch,
               &(struct learnt){&model->linear, &model->net, &model->usage, PARTS_MAX}, &row,
               words.count, &finding);
    model_judge(model, &finding, &result);
    if (find_line(model, &words, &phrase)) {
        put_first(model, phrase, &result);
    }
    talloc_free(scratch);
    return result;
}

const struct model_held_out *
model_held_out(const struct model *model, size_t *count)
{
    *count = model->phrase_count;
    return model->held_out;
}

/* ---- Explaining ----------------------------------------------------------------------------- */

/* What one word added to a label's decision value, against the mean of all labels. */
struct share {
    float value;
    size_t word;
};

static int
by_share_falling(const void *a, const void *b)
{
    const struct share *one = a, *other = b;

    if (one->value != other->value) {
        return one->value > other->value ? -1 : 1;
    }
    return one->word < other->word ? -1 : one->word > other->word;
}

static float
weight_for(const struct linear *linear, uint32_t feature, int label)
{
    float sum = 0;
    int i;

    for (i = 0; i < linear->labels; i++) {
        sum += linear_weight(linear, feature, i);
    }
    return linear_weight(linear, feature, label) - sum / (float)linear->labels;
}

size_t
model_words(const struct model *model, void *arena, struct workspace *workspace, const char *text,
            int label, const char **words, size_t room)
{
    void *scratch = memory_must(talloc_new(arena));
    struct words read = model_read(model, scratch, workspace, text);
    struct features features = features_read(scratch, &read);
    uint32_t *numbers = memory_array(scratch, uint32_t, features.count + 1);
    struct share *shares = memory_array(scratch, struct share, read.count + 1);
    size_t count = 0, i;

    feature_numbers(&model->space, &features, PARTS_MAX, numbers);
    for (i = 0; i < read.count; i++) {
        shares[i].word = i;
    }
    for (i = 0; i < features.count; i++) {
        if (numbers[i] != UINT32_MAX) {
            shares[features.list[i].word].value +=
                weight_for(&model->linear, numbers[i], label) * model->space.weight[numbers[i]];
        }
    }
    qsort(shares, read.count, sizeof(*shares), by_share_falling);
    while (count < room && count < read.count && shares[count].value > 0) {
        words[count] = memory_copy(arena, read.list[shares[count].word].text);
        count++;
    }
    talloc_free(scratch);
    return count;
}
