#include "check_content.h"

#include <stdlib.h>
#include <string.h>

#include "check_print.h"
#include "memory.h"

/* One topic or sign, in all languages. */
struct counted {
    const char *id;
    size_t sum, of_kind[REMARK_KIND_COUNT];
};

static bool
is_counted(enum remark_kind kind)
{
    const struct remark_entry *entry = remark_entry(kind);

    return entry->is_content && !entry->is_error;
}

/* Returns how many there are of all kinds. */
static size_t
print_kinds(FILE *out, const struct remarks *remarks)
{
    size_t sum = 0;
    int kind;

    for (kind = 0; kind < REMARK_KIND_COUNT; kind++) {
        const struct remark_entry *entry = remark_entry((enum remark_kind)kind);
        size_t count = remarks_of_kind(remarks, (enum remark_kind)kind);

        if (!is_counted((enum remark_kind)kind) || count == 0) {
            continue;
        }
        if (sum == 0) {
            fputs("For who writes the content (--all lists them)\n", out);
        }
        fprintf(out, "  %6zu  %s: %s\n", count, entry->name, entry->heading);
        sum += count;
    }
    return sum;
}

static struct counted *
counted_of(void *arena, struct counted **list, size_t *count, const char *id)
{
    size_t i;

    for (i = 0; i < *count; i++) {
        if (strcmp((*list)[i].id, id) == 0) {
            return &(*list)[i];
        }
    }
    *list = memory_grow(arena, struct counted, *list, *count);
    (*list)[*count] = (struct counted){.id = id};
    return &(*list)[(*count)++];
}

static int
by_sum_falling(const void *left, const void *right)
{
    const struct counted *l = left, *r = right;

    return l->sum != r->sum ? (l->sum > r->sum ? -1 : 1) : strcmp(l->id, r->id);
}

static void
print_topic(FILE *out, void *arena, const struct counted *counted)
{
    char *text = memory_format(arena, "%s %zu:", counted->id, counted->sum);
    bool is_first = true;
    int kind;

    for (kind = 0; kind < REMARK_KIND_COUNT; kind++) {
        if (counted->of_kind[kind] > 0) {
            memory_append(&text, "%s %s %zu", is_first ? "" : ",",
                          remark_entry((enum remark_kind)kind)->name, counted->of_kind[kind]);
            is_first = false;
        }
    }
    check_print_text(out, 2, text);
}

static void
print_topics(FILE *out, const struct remarks *remarks)
{
    void *arena = memory_must(talloc_new(NULL));
    struct counted *list = NULL;
    size_t count = 0, i;

    for (i = 0; i < remarks->count; i++) {
        const struct remark *remark = &remarks->list[i];

        if (is_counted(remark->kind) && remark->about != NULL) {
            struct counted *counted = counted_of(arena, &list, &count, remark->about);

            counted->sum++;
            counted->of_kind[remark->kind]++;
        }
    }
    if (count > 0) {
        qsort(list, count, sizeof(*list), by_sum_falling);
        fputs("By topic, the most first (--topic ID lists all of one)\n", out);
    }
    for (i = 0; i < count && i < CHECK_TOPICS_SHOWN; i++) {
        print_topic(out, arena, &list[i]);
    }
    if (i < count) {
        check_print_text(out, 2, memory_format(arena, "and %zu more topics", count - i));
    }
    talloc_free(arena);
}

void
check_print_content(FILE *out, const struct remarks *remarks)
{
    if (print_kinds(out, remarks) > 0) {
        print_topics(out, remarks);
        fputc('\n', out);
    }
}
