#include "remark.h"

#include <assert.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

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

/* "charge-car" of "topics/en/charge-car.md". */
static const char *
id_in(void *arena, const char *file)
{
    const char *slash = file == NULL ? NULL : strrchr(file, '/');

    if (slash == NULL || (strncmp(file, "topics/", 7) != 0 && strncmp(file, "signs/", 6) != 0)) {
        return NULL;
    }
    return memory_copy_n(arena, slash + 1, strcspn(slash + 1, "."));
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
        .about = id_in(remarks->arena, file),
        .what = memory_must(talloc_vasprintf(remarks->arena, format, arguments)),
        .remedy = memory_copy(remarks->arena, remedy),
    };
    va_end(arguments);
    return remark;
}

bool
remark_is_about(const struct remark *remark, const char *id)
{
    return (remark->about != NULL && strcmp(remark->about, id) == 0) ||
           (remark->other != NULL && strcmp(remark->other, id) == 0);
}

void
remarks_keep_about(struct remarks *remarks, const char *id)
{
    size_t kept = 0, i;

    for (i = 0; i < remarks->count; i++) {
        if (remark_is_about(&remarks->list[i], id)) {
            remarks->list[kept++] = remarks->list[i];
        }
    }
    remarks->count = kept;
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
