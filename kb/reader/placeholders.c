#include "placeholders.h"

#include <assert.h>
#include <string.h>

#include "memory.h"

static const struct placeholder_entry entries[PLACEHOLDER_COUNT] = {
#define X(identifier, name, from_record, what) {name, from_record, what},
    PLACEHOLDERS(X)
#undef X
};

const struct placeholder_entry *
placeholder_entry(enum placeholder placeholder)
{
    assert((int)placeholder >= 0 && placeholder < PLACEHOLDER_COUNT);
    return &entries[placeholder];
}

enum placeholder
placeholder_named(const char *name, unsigned long length)
{
    int i;

    for (i = 0; i < PLACEHOLDER_COUNT; i++) {
        if (strlen(entries[i].name) == length && memcmp(entries[i].name, name, length) == 0) {
            break;
        }
    }
    return (enum placeholder)i;
}

bool
placeholder_next(const char *text, size_t from, struct placeholder_use *use)
{
    const char *open = strpbrk(text + from, "{}"), *at, *bar = NULL, *name_end;
    int depth = 0;

    if (open == NULL) {
        return false;
    }
    memset(use, 0, sizeof(*use));
    use->start = (size_t)(open - text);
    use->name = open + 1;
    for (at = open; *at != '\0'; at++) {
        if (*at == '{') {
            depth++;
        } else if (*at == '|' && depth == 1 && bar == NULL) {
            bar = at;
        } else if (*at == '}' && --depth <= 0) {
            break;
        }
    }
    use->closed = *at == '}' && depth == 0; /* a text that begins with } has depth -1 */
    use->end = (size_t)(at - text) + (*at == '}');
    name_end = bar != NULL ? bar : at;
    use->name_length = name_end > use->name ? (size_t)(name_end - use->name) : 0;
    if (bar != NULL) {
        use->words = bar + 1;
        use->words_length = (size_t)(at - use->words);
    }
    return true;
}

static int
line_of(const char *text, size_t at, int first_line)
{
    size_t i;

    for (i = 0; i < at; i++) {
        first_line += text[i] == '\n';
    }
    return first_line;
}

/* Where a text that is checked stands, and what it may hold. */
struct check {
    const bool *allowed; /* NULL: everything */
    bool for_strangers;  /* it is the words after a bar */
    const char *file;
    int line;
    struct faults *faults;
};

/* Adds a fault if the filler could not fill this use; true if it could. */
static bool
check_use(const struct check *check, const struct placeholder_use *use, int line)
{
    enum placeholder placeholder = placeholder_named(use->name, use->name_length);
    int length = (int)(use->name_length < 40 ? use->name_length : 40);

    if (!use->closed) {
        faults_add(check->faults, check->file, line, NULL,
                   "\"%.*s\": a brace without its partner; write {name} or {name|words}", length,
                   use->name);
    } else if (placeholder == PLACEHOLDER_COUNT) {
        faults_add(check->faults, check->file, line, NULL,
                   "{%.*s} is no placeholder; take one of the manual's list, or no braces", length,
                   use->name);
    } else if (check->allowed != NULL && !check->allowed[placeholder]) {
        faults_add(check->faults, check->file, line, NULL,
                   "{%.*s} may not be used here, for this text must be the same for everyone",
                   length, use->name);
    } else if (check->for_strangers && entries[placeholder].from_record) {
        faults_add(check->faults, check->file, line, NULL,
                   "{%.*s} stands in the words for a stranger, who has no record; use plain words",
                   length, use->name);
    } else if (entries[placeholder].from_record && use->words_length == 0) {
        faults_add(check->faults, check->file, line, NULL,
                   "{%.*s} is not known for a stranger; add words for that case: {%.*s|words}",
                   length, use->name, length, use->name);
    } else {
        return true;
    }
    return false;
}

static void
check_text(const struct check *check, const char *text)
{
    struct placeholder_use use;
    size_t at = 0;

    while (placeholder_next(text, at, &use)) {
        int line = line_of(text, use.start, check->line);

        if (check_use(check, &use, line) && use.words != NULL) {
            struct check inner = *check;
            char *words = memory_copy_n(NULL, use.words, use.words_length);

            inner.for_strangers = true;
            inner.line = line;
            check_text(&inner, words);
            talloc_free(words);
        }
        at = use.end;
    }
}

void
placeholders_check(const char *text, const bool allowed[PLACEHOLDER_COUNT], const char *file,
                   int line, struct faults *faults)
{
    struct check check = {allowed, false, file, line, faults};

    check_text(&check, text);
}
