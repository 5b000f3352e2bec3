#include "check_print.h"

#include <string.h>

#include <glib.h>

#include "check_content.h"
#include "memory.h"

enum { COLUMNS = 80, HANGING = 2 };

void
check_count(const struct remarks *remarks, size_t *errors, size_t *warnings)
{
    size_t i;

    *errors = 0;
    *warnings = 0;
    for (i = 0; i < remarks->count; i++) {
        if (remark_entry(remarks->list[i].kind)->is_error) {
            (*errors)++;
        } else {
            (*warnings)++;
        }
    }
}

/* ---- For people ---------------------------------------------------------------------------- */

/* Characters of so many bytes of UTF-8. */
static int
width(const char *text, size_t length)
{
    int characters = 0;
    size_t i;

    for (i = 0; i < length; i++) {
        characters += ((unsigned char)text[i] & 0xc0) != 0x80;
    }
    return characters;
}

void
check_print_text(FILE *out, int indent, const char *text)
{
    int column = indent;
    bool is_line_empty = true;

    fprintf(out, "%*s", indent, "");
    while (*(text += strspn(text, " \n")) != '\0') {
        size_t length = strcspn(text, " \n");
        int wide = width(text, length);

        if (!is_line_empty && column + 1 + wide > COLUMNS) {
            fprintf(out, "\n%*s", indent + HANGING, "");
            column = indent + HANGING;
            is_line_empty = true;
        }
        fprintf(out, "%s%.*s", is_line_empty ? "" : " ", (int)length, text);
        column += wide + (is_line_empty ? 0 : 1);
        is_line_empty = false;
        text += length;
    }
    fputc('\n', out);
}

static char *
place_of(void *arena, const struct remark *remark)
{
    if (remark->file == NULL) {
        return memory_copy(arena, "");
    }
    return remark->line == 0 ? memory_format(arena, "%s: ", remark->file)
                             : memory_format(arena, "%s:%d: ", remark->file, remark->line);
}

static bool
have_one_remedy(const struct remark *remarks, size_t count)
{
    size_t i;

    for (i = 1; i < count && strcmp(remarks[0].remedy, remarks[i].remedy) == 0; i++) {
    }
    return count > 1 && i == count;
}

static void
print_remedy(FILE *out, int indent, const char *remedy)
{
    if (remedy[0] != '\0') {
        char *text = memory_format(NULL, "-> %s", remedy);

        check_print_text(out, indent, text);
        talloc_free(text);
    }
}

/* What is not shown: how many, and in which files the most. */
static void
print_more(FILE *out, const struct remark *remarks, size_t count)
{
    GHashTable *files = g_hash_table_new(g_str_hash, g_str_equal);
    void *arena = memory_must(talloc_new(NULL));
    char *text = memory_format(arena, "and %zu more; --all shows them", count);
    size_t i, j;

    for (i = 0; i < count; i++) {
        const char *file = remarks[i].file != NULL ? remarks[i].file : "";

        g_hash_table_insert(
            files, (gpointer)file,
            GSIZE_TO_POINTER(GPOINTER_TO_SIZE(g_hash_table_lookup(files, file)) + 1));
    }
    g_hash_table_remove(files, "");
    for (j = 0; j < CHECK_FILES_SHOWN && g_hash_table_size(files) > 0; j++) {
        gpointer file, of_file, most = NULL;
        GHashTableIter iter;
        size_t highest = 0;

        g_hash_table_iter_init(&iter, files);
        while (g_hash_table_iter_next(&iter, &file, &of_file)) {
            size_t number = GPOINTER_TO_SIZE(of_file);

            if (most == NULL || number > highest || (number == highest && strcmp(file, most) < 0)) {
                highest = number;
                most = file;
            }
        }
        if (highest == 1) {
            break; /* one in each tells nothing */
        }
        memory_append(&text, "%s%s %zu", j == 0 ? ". Most in: " : ", ", (const char *)most,
                      highest);
        g_hash_table_remove(files, most);
    }
    check_print_text(out, 2, text);
    g_hash_table_destroy(files);
    talloc_free(arena);
}

/* "signs/en: chest-pain, dizzy" for each folder; the files come folder by folder. */
static void
print_files(FILE *out, const struct remark *remarks, size_t count)
{
    void *arena = memory_must(talloc_new(NULL));
    char *text = memory_copy(arena, "");
    size_t i;

    for (i = 0; i < count; i++) {
        const char *file = remarks[i].file, *slash = strrchr(file, '/');
        const char *name = slash == NULL ? file : slash + 1;
        size_t folder = (size_t)(name - file);
        bool begins = i == 0 || strncmp(file, remarks[i - 1].file, folder) != 0 ||
                      strchr(remarks[i - 1].file + folder, '/') != NULL;

        if (begins && i > 0) {
            check_print_text(out, 2, text);
        }
        if (begins) {
            text = memory_format(arena, "%.*s:", (int)(folder > 0 ? folder - 1 : 0), file);
        }
        memory_append(&text, "%s %.*s", begins ? "" : ",", (int)strcspn(name, "."), name);
    }
    check_print_text(out, 2, text);
    talloc_free(arena);
}

static bool
are_named_alone(const struct remark *remarks, size_t count)
{
    size_t i;

    for (i = 0; i < count && remarks[i].file != NULL && remarks[i].line != 0; i++) {
    }
    return count >= CHECK_NAMED_FROM && i == count;
}

/* One kind; a remedy that all share is said once. */
static void
print_kind(FILE *out, const struct remark *remarks, size_t count, bool is_all)
{
    const struct remark_entry *entry = remark_entry(remarks[0].kind);
    bool is_shared = have_one_remedy(remarks, count);
    void *arena = memory_must(talloc_new(NULL));
    size_t most = entry->is_content ? CHECK_ERRORS_SHOWN : count;
    size_t shown = is_all || count <= most ? count : most, i;

    check_print_text(out, 0,
                     memory_format(arena, "%s (%zu %s%s)", entry->heading, count,
                                   entry->is_error ? "error" : "warning", count == 1 ? "" : "s"));
    if (is_shared) {
        print_remedy(out, 2, remarks[0].remedy);
    }
    if (is_shared && !is_all && !entry->is_content && are_named_alone(remarks, count)) {
        print_files(out, remarks, count);
        shown = 0;
        count = 0;
    }
    for (i = 0; i < shown; i++) {
        check_print_text(
            out, 2, memory_format(arena, "%s%s", place_of(arena, &remarks[i]), remarks[i].what));
        if (!is_shared) {
            print_remedy(out, 4, remarks[i].remedy);
        }
    }
    if (shown < count) {
        print_more(out, remarks + shown, count - shown);
    }
    fputc('\n', out);
    talloc_free(arena);
}

static void
print_scope(FILE *out, const struct remarks *remarks, const struct check_scope *scope)
{
    void *arena = memory_must(talloc_new(NULL));
    size_t errors, warnings, of_content = 0, i;

    check_count(remarks, &errors, &warnings);
    for (i = 0; i < scope->note_count; i++) {
        check_print_text(out, 0, scope->notes[i]);
    }
    if (scope->digest != NULL) {
        check_print_text(out, 0,
                         memory_format(arena,
                                       "Checked %s (content %.12s): %zu topics, %zu signs, %zu "
                                       "units, %zu rentals.",
                                       scope->content, scope->digest, scope->topics, scope->signs,
                                       scope->units, scope->rentals));
    }
    for (i = 0; i < remarks->count; i++) {
        const struct remark_entry *entry = remark_entry(remarks->list[i].kind);

        of_content += entry->is_content && !entry->is_error;
    }
    fprintf(out, "%zu error%s, %zu warning%s for the office, %zu for the content\n", errors,
            errors == 1 ? "" : "s", warnings - of_content, warnings - of_content == 1 ? "" : "s",
            of_content);
    talloc_free(arena);
}

void
check_print(FILE *out, const struct remarks *remarks, const struct check_scope *scope, bool is_all)
{
    size_t from = 0, i;

    for (i = 1; i <= remarks->count; i++) {
        if (i == remarks->count || remarks->list[i].kind != remarks->list[from].kind) {
            const struct remark_entry *entry = remark_entry(remarks->list[from].kind);

            if (is_all || entry->is_error || !entry->is_content) {
                print_kind(out, &remarks->list[from], i - from, is_all);
            }
            from = i;
        }
    }
    if (!is_all) {
        check_print_content(out, remarks);
    }
    print_scope(out, remarks, scope);
}

/* ---- For programs -------------------------------------------------------------------------- */

json_t *
check_json(const struct remarks *remarks, const struct check_scope *scope)
{
    json_t *list = memory_must(json_array()), *counts = memory_must(json_object());
    json_t *notes = memory_must(json_array());
    size_t errors, warnings, i;

    check_count(remarks, &errors, &warnings);
    for (i = 0; i < remarks->count; i++) {
        const struct remark *remark = &remarks->list[i];
        const struct remark_entry *entry = remark_entry(remark->kind);
        json_int_t of_kind = (json_int_t)remarks_of_kind(remarks, remark->kind);

        json_object_set_new(counts, entry->name, json_integer(of_kind));
        json_array_append_new(
            list,
            memory_must(json_pack("{s:s, s:s, s:s, s:s?, s:s?, s:o, s:s, s:s}", "kind", entry->name,
                                  "for", entry->is_content ? "content" : "office", "level",
                                  entry->is_error ? "error" : "warning", "topic", remark->about,
                                  "file", remark->file, "line",
                                  remark->line == 0 ? json_null() : json_integer(remark->line),
                                  "what", remark->what, "remedy", remark->remedy)));
    }
    for (i = 0; i < scope->note_count; i++) {
        json_array_append_new(notes, json_string(scope->notes[i]));
    }
    return memory_must(json_pack("{s:I, s:I, s:o, s:o, s:s?, s:o}", "errors", (json_int_t)errors,
                                 "warnings", (json_int_t)warnings, "counts", counts, "notes", notes,
                                 "digest", scope->digest, "remarks", list));
}
