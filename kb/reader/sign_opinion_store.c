/* A second opinion as bytes and back (kept.h). */
#include <string.h>

#include "kept.h"
#include "memory.h"
#include "sign_opinion_inside.h"

/* Changes whenever what is stored, or how it is reckoned, changes. */
enum { VERSION = 2 };

struct head {
    struct kept_head kept;
    uint32_t example_count, row_size, feature_count, feature_mask, labels, stride;
    float unknown_weight;
    struct opinion_bounds any, of_body;
};

enum { PART_COUNT = 8 };

static void
list_parts(struct opinion *opinion, const struct head *head, struct kept_part *parts)
{
    const size_t features = head->feature_count;
    const struct kept_part list[PART_COUNT] = {
        {(void **)&opinion->rows.begins, sizeof(uint32_t), head->example_count + (size_t)1},
        {(void **)&opinion->rows.index, sizeof(uint32_t), head->row_size},
        {(void **)&opinion->rows.value, sizeof(float), head->row_size},
        {(void **)&opinion->space.slots, sizeof(struct feature_slot),
         head->feature_mask + (size_t)1},
        {(void **)&opinion->space.weight, sizeof(float), features},
        {(void **)&opinion->space.block, sizeof(uint8_t), features},
        {(void **)&opinion->space.parts, sizeof(uint16_t), features},
        {(void **)&opinion->linear.weights, sizeof(float), (features + 1) * head->stride},
    };

    memcpy(parts, list, sizeof(list));
}

static struct kept_head
begin_head(void)
{
    return (struct kept_head){.magic = "hbsigns", .version = VERSION, .size = sizeof(struct head)};
}

char *
opinion_save(void *arena, const struct opinion *opinion, size_t *length)
{
    struct opinion copy = *opinion; /* list_parts() wants the places, which are only read here */
    struct kept_part parts[PART_COUNT];
    struct head head;

    memset(&head, 0, sizeof(head)); /* gaps too, for they are summed */
    head.kept = begin_head();
    head.example_count = (uint32_t)opinion->count;
    head.row_size = opinion->rows.begins[opinion->count];
    head.feature_count = opinion->space.count;
    head.feature_mask = opinion->space.mask;
    head.labels = (uint32_t)opinion->linear.labels;
    head.stride = (uint32_t)opinion->linear.stride;
    head.unknown_weight = opinion->unknown_weight;
    head.any = opinion->any;
    head.of_body = opinion->of_body;
    list_parts(&copy, &head, parts);
    return kept_save(arena, &head.kept, parts, PART_COUNT, length);
}

static bool
is_sane(const struct head *head)
{
    return head->labels == OPINION_LEVELS && head->stride >= OPINION_LEVELS &&
           head->stride % LINEAR_LANES == 0 && head->stride <= 2 * OPINION_LEVELS + LINEAR_LANES &&
           (head->feature_mask & (head->feature_mask + (uint64_t)1)) == 0 &&
           head->feature_count <= head->feature_mask;
}

int
opinion_load(void *arena, const char *bytes, size_t length, const struct vocabulary *vocabulary,
             const struct opinion_example *examples, size_t count, struct opinion **opinion,
             struct fault *fault)
{
    struct kept_part parts[PART_COUNT];
    struct head head = {.kept = begin_head()};
    struct opinion *loaded;

    if (kept_open(bytes, length, &head.kept, fault) != 0) {
        return -1;
    }
    if (!is_sane(&head) || head.example_count != count) {
        fault_set(fault, "a stored opinion is of other content");
        return -1;
    }
    loaded = memory_new(arena, struct opinion);
    list_parts(loaded, &head, parts);
    if (kept_take(bytes, &head.kept, parts, PART_COUNT, fault) != 0) {
        talloc_free(loaded);
        return -1;
    }
    loaded->vocabulary = vocabulary;
    loaded->examples = examples;
    loaded->count = count;
    loaded->space.count = head.feature_count;
    loaded->space.mask = head.feature_mask;
    loaded->linear.features = feature_space_size(&loaded->space);
    loaded->linear.labels = (int)head.labels;
    loaded->linear.stride = (int)head.stride;
    loaded->unknown_weight = head.unknown_weight;
    loaded->bodily = vocabulary_id(vocabulary, sign_class_bodily);
    loaded->any = head.any;
    loaded->of_body = head.of_body;
    *opinion = loaded;
    return 0;
}
