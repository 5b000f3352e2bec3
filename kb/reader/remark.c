#include "remark.h"

#include <assert.h>
#include <stdarg.h>
#include <stdlib.h>

#include "memory.h"

const struct remark_entry *
remark_entry(enum remark_kind kind)
{
    static const struct remark_entry entries[REMARK_KIND_COUNT] = {
#define X(identifier, name, is_error, is_content, heading) {name, is_error, is_content, heading},
        REMARKS(X)
#undef X
    };

    assert((int)kind >= 0 && kind < REMARK_KIND_COUNT);
    return &entries[kind];
}

struct remark *
remark_add(struct remarks *remarks, enum remark_kind kind, const char *file, int line,
           const char *remedy, const char *format, ...)
{
    struct remark *remark;
    va_list arguments;

    remarks->list = memory_grow(remarks->arena, struct remark, remarks->list, remarks->count);
    remark = &remarks->list[remarks->count++];
    va_start(arguments, format);
    *remark = (struct remark){
        .kind = kind,
        .file = file == NULL ? NULL : memory_copy(remarks->arena, file),
        .line = line,
        .what = memory_must(talloc_vasprintf(remarks->arena, format, arguments)),
        .remedy = memory_copy(remarks->arena, remedy),
    };
    va_end(arguments);
    return remark;
}

/* A remark with its place in the list, for a sort that keeps the order of equals. */
struct placed {
    struct remark remark;
    size_t place;
};

static int
by_gravity(const void *left, const void *right)
{
    const struct placed *l = left, *r = right;

    if (l->remark.kind != r->remark.kind) {
        return l->remark.kind < r->remark.kind ? -1 : 1;
    }
    if (l->remark.gravity != r->remark.gravity) {
        return l->remark.gravity > r->remark.gravity ? -1 : 1;
    }
    return l->place < r->place ? -1 : l->place > r->place;
}

void
remarks_sort(struct remarks *remarks)
{
    struct placed *placed = memory_array(remarks->arena, struct placed, remarks->count + 1);
    size_t i;

    for (i = 0; i < remarks->count; i++) {
        placed[i] = (struct placed){remarks->list[i], i};
    }
    qsort(placed, remarks->count, sizeof(*placed), by_gravity);
    for (i = 0; i < remarks->count; i++) {
        remarks->list[i] = placed[i].remark;
    }
    talloc_free(placed);
}

size_t
remarks_of_kind(const struct remarks *remarks, enum remark_kind kind)
{
    size_t count = 0, i;

    for (i = 0; i < remarks->count; i++) {
        count += remarks->list[i].kind == kind;
    }
    return count;
}
