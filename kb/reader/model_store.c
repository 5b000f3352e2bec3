/* A model as bytes and back (kept.h). */
#include "model.h"

#include <string.h>

#include "kept.h"
#include "memory.h"
#include "model_inside.h"

/* Changes whenever what is stored, or how it is reckoned, changes. */
enum { VERSION = 5 };

struct head {
    struct kept_head kept;
    uint32_t language, phrase_count, label_count, stride;
    uint32_t text_size, word_count, by_text_mask, slip_mask, pair_mask;
    uint32_t feature_count, feature_mask, posting_count, line_mask, usage_count;
    uint32_t has_vectors;
    struct calibration calibration;
};

enum { PART_COUNT = 22 };

static void
list_parts(struct model *model, const struct head *head, struct kept_part *parts)
{
    const size_t phrases = head->phrase_count, features = head->feature_count;
    const struct kept_part list[PART_COUNT] = {
        {(void **)&model->labels, sizeof(int32_t), phrases},
        {(void **)&model->parts, sizeof(uint8_t), phrases},
        {(void **)&model->held_out, sizeof(struct model_held_out), phrases},
        {(void **)&model->first, sizeof(uint32_t), head->label_count},
        {(void **)&model->spelling.text, 1, head->text_size},
        {(void **)&model->spelling.words, sizeof(struct known_word), head->word_count},
        {(void **)&model->spelling.by_text, sizeof(uint32_t), head->by_text_mask + (size_t)1},
        {(void **)&model->spelling.slips, sizeof(struct slip), head->slip_mask + (size_t)1},
        {(void **)&model->spelling.pairs, sizeof(struct word_pair), head->pair_mask + (size_t)1},
        {(void **)&model->space.slots, sizeof(struct feature_slot), head->feature_mask + (size_t)1},
        {(void **)&model->space.weight, sizeof(float), features},
        {(void **)&model->space.block, sizeof(uint8_t), features},
        {(void **)&model->space.parts, sizeof(uint16_t), features},
        {(void **)&model->space.mean, sizeof(float), VECTORS_NUMBERS},
        {(void **)&model->linear.weights, sizeof(float),
         (features + (head->has_vectors != 0 ? VECTORS_NUMBERS : 0) + 1) * head->stride},
        {(void **)&model->usage.lines, sizeof(uint32_t), features},
        {(void **)&model->usage.often, sizeof(uint32_t), head->usage_count},
        {(void **)&model->usage.counts, sizeof(uint16_t),
         (size_t)head->usage_count * head->label_count},
        {(void **)&model->usage.said, sizeof(uint32_t), head->label_count + (size_t)1},
        {(void **)&model->lines.slots, sizeof(struct line_slot), head->line_mask + (size_t)1},
        {(void **)&model->index.begins, sizeof(uint32_t), features + 1},
        {(void **)&model->index.postings, sizeof(struct posting), head->posting_count},
    };

    memcpy(parts, list, sizeof(list));
}

/* A head as this version makes it. */
static struct kept_head
begin_head(void)
{
    return (struct kept_head){.magic = "hbmodel", .version = VERSION, .size = sizeof(struct head)};
}

/* ---- Saving -------------------------------------------------------------------------------- */

static void
fill_head(const struct model *model, struct head *head)
{
    memset(head, 0, sizeof(*head)); /* gaps too, for they are summed */
    head->kept = begin_head();
    head->language = (uint32_t)model->language;
    head->phrase_count = model->phrase_count;
    head->label_count = (uint32_t)model->linear.labels;
    head->stride = (uint32_t)model->linear.stride;
    head->text_size = model->spelling.text_size;
    head->word_count = model->spelling.word_count;
    head->by_text_mask = model->spelling.by_text_mask;
    head->slip_mask = model->spelling.slip_mask;
    head->pair_mask = model->spelling.pair_mask;
    head->feature_count = model->space.count;
    head->feature_mask = model->space.mask;
    head->posting_count = model->index.begins[model->space.count];
    head->line_mask = model->lines.mask;
    head->usage_count = model->usage.line_count;
    head->has_vectors = model->vectors != NULL;
    head->calibration = model->calibration;
}

char *
model_save(void *arena, const struct model *model, size_t *length)
{
    struct model copy = *model; /* list_parts() wants the places, which are only read here */
    struct kept_part parts[PART_COUNT];
    struct head head;

    fill_head(model, &head);
    list_parts(&copy, &head, parts);
    return kept_save(arena, &head.kept, parts, PART_COUNT, length);
}

/* ---- Loading ------------------------------------------------------------------------------- */

static bool
is_mask(uint32_t mask)
{
    return (mask & (mask + (uint64_t)1)) == 0;
}

/* A head that no array is out of bounds by. */
static bool
is_sane(const struct head *head)
{
    return head->label_count <= INT32_MAX - LINEAR_LANES &&
           head->stride == (head->label_count + LINEAR_LANES - 1) / LINEAR_LANES * LINEAR_LANES &&
           is_mask(head->by_text_mask) && is_mask(head->slip_mask) && is_mask(head->feature_mask) &&
           is_mask(head->pair_mask) && is_mask(head->line_mask) &&
           head->word_count <= head->by_text_mask && head->feature_count <= head->feature_mask;
}

static bool
is_of(const struct head *head, const struct model_content *content)
{
    return head->language == (uint32_t)content->language &&
           head->phrase_count == content->phrase_count &&
           head->label_count == (uint32_t)content->label_count + 1 &&
           head->has_vectors == (content->vectors != NULL);
}

int
model_load(void *arena, const char *bytes, size_t length, const struct model_content *content,
           struct model **model, struct fault *fault)
{
    struct kept_part parts[PART_COUNT];
    struct head head = {.kept = begin_head()};
    struct model *loaded;

    if (kept_open(bytes, length, &head.kept, fault) != 0) {
        return -1;
    }
    if (!is_sane(&head) || !is_of(&head, content)) {
        fault_set(fault, "a stored model is of other content");
        return -1;
    }
    loaded = memory_new(arena, struct model);
    list_parts(loaded, &head, parts);
    if (kept_take(bytes, &head.kept, parts, PART_COUNT, fault) != 0) {
        talloc_free(loaded);
        return -1;
    }
    loaded->language = (enum language)head.language;
    loaded->phrase_count = head.phrase_count;
    loaded->linear.labels = (int)head.label_count;
    loaded->linear.stride = (int)head.stride;
    loaded->space.count = head.feature_count;
    loaded->space.vectors = content->vectors;
    loaded->linear.features = feature_space_size(&loaded->space);
    loaded->space.mask = head.feature_mask;
    loaded->spelling.text_size = head.text_size;
    loaded->spelling.word_count = head.word_count;
    loaded->spelling.by_text_mask = head.by_text_mask;
    loaded->spelling.slip_mask = head.slip_mask;
    loaded->spelling.pair_mask = head.pair_mask;
    loaded->spelling.ordinary = content->ordinary;
    loaded->lines.mask = head.line_mask;
    loaded->usage.line_count = head.usage_count;
    loaded->usage.labels = (int)head.label_count;
    loaded->calibration = head.calibration;
    loaded->shorthand = content->shorthand;
    loaded->vectors = content->vectors;
    *model = loaded;
    return 0;
}
