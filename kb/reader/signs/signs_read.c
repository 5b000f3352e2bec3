/*
 * A sign file begins with two lines that are not sent, "Level: emergency" and "In brief: chest
 * pain"; what follows them is.
 */
#include "signs_read.h"

#include <ctype.h>
#include <string.h>
#include <strings.h>

#include "markdown.h"
#include "memory.h"
#include "placeholders.h"

const char *const signs_on_numbers[] = {"low-reading", "reading", NULL};

/* "In brief" goes to staff by text, beside a name, a place and a phone number. */
enum { IN_BRIEF_MAX = 40 };

static const char *const sections[] = {"Said as", "Not meant by", "Whole texts", "Harmless texts",
                                       "Sources", "Approved",     NULL};

static bool
is_on_numbers(const char *id)
{
    size_t i;

    for (i = 0; signs_on_numbers[i] != NULL; i++) {
        if (strcmp(signs_on_numbers[i], id) == 0) {
            return true;
        }
    }
    return false;
}

/* The value of a line "NAME: value" of the head, in `arena`; NULL if the head has no such line. */
static const char *
head_value(void *arena, const char *head, const char *name)
{
    size_t length = strlen(name);

    while (head != NULL) {
        size_t line = strcspn(head, "\n");

        if (strncasecmp(head, name, length) == 0 && head[length] == ':') {
            const char *value = head + length + 1;
            const char *end = head + line;

            while (value < end && isspace((unsigned char)*value)) {
                value++;
            }
            while (end > value && isspace((unsigned char)end[-1])) {
                end--;
            }
            return memory_copy_n(arena, value, (size_t)(end - value));
        }
        head = head[line] == '\0' ? NULL : head + line + 1;
    }
    return NULL;
}

static void
read_head(void *arena, const struct markdown *markdown, struct sign *sign, struct faults *faults)
{
    static const char *const levels[] = {[SIGN_CLINICAL] = "clinical",
                                         [SIGN_EQUIPMENT] = "equipment",
                                         [SIGN_EMERGENCY] = "emergency"};
    bool has_head = markdown->paragraph_count > 0;
    int line = has_head ? markdown->paragraphs[0].line : markdown->title_line;
    const char *head = has_head ? markdown->paragraphs[0].text : "";
    const char *level = head_value(arena, head, "Level");
    size_t i;

    sign->level = SIGN_EMERGENCY;
    for (i = 0; level != NULL && i < sizeof(levels) / sizeof(levels[0]); i++) {
        if (strcasecmp(level, levels[i]) == 0) {
            sign->level = (enum sign_level)i;
            break;
        }
    }
    if (level == NULL || i == sizeof(levels) / sizeof(levels[0])) {
        faults_add(faults, sign->file, line, "Level",
                   "%s%s; write \"Level: emergency\", \"Level: clinical\" or \"Level: equipment\" "
                   "below the title",
                   level == NULL ? "missing" : "no such level: ", level == NULL ? "" : level);
    }
    sign->in_brief = head_value(arena, head, "In brief");
    if (sign->in_brief == NULL || sign->in_brief[0] == '\0' ||
        strlen(sign->in_brief) > IN_BRIEF_MAX) {
        faults_add(faults, sign->file, line, "In brief",
                   "%s; write two or three words for staff, such as \"In brief: chest pain\" (at "
                   "most %d bytes)",
                   sign->in_brief == NULL || sign->in_brief[0] == '\0' ? "missing" : "too long",
                   IN_BRIEF_MAX);
    }
}

static void
read_reply(void *arena, const struct markdown *markdown, struct sign *sign, struct faults *faults)
{
    static const bool allowed[PLACEHOLDER_COUNT] = {
        [PLACEHOLDER_EMERGENCY] = true, [PLACEHOLDER_PHONE] = true, [PLACEHOLDER_COMPANY] = true};
    char *reply = memory_copy(arena, "");
    char *c;
    size_t i;

    for (i = 1; i < markdown->paragraph_count; i++) {
        const struct markdown_text *paragraph = &markdown->paragraphs[i];

        placeholders_check(paragraph->text, allowed, sign->file, paragraph->line, faults);
        memory_append(&reply, "%s%s", i == 1 ? "" : " ", paragraph->text);
    }
    for (c = reply; *c != '\0'; c++) {
        if (*c == '\n') {
            *c = ' ';
        }
    }
    sign->reply = reply;
    sign->reply_line = markdown->paragraph_count < 2 ? 0 : markdown->paragraphs[1].line;
    if (markdown->paragraph_count < 2) {
        faults_add(faults, sign->file, markdown->title_line, "reply",
                   "missing; write what is texted back below \"In brief\", after an empty line");
    }
}

int
sign_read(void *arena, const struct content_file *file, const char *id, enum language language,
          struct sign_file *sign_file, struct faults *faults)
{
    size_t before = faults->count;
    struct sign *sign = &sign_file->sign;
    const struct markdown_section *said_as, *not_meant_by;
    struct markdown markdown;

    memset(sign_file, 0, sizeof(*sign_file));
    sign->id = memory_copy(arena, id);
    sign->language = language;
    sign->file = memory_copy(arena, file->name);
    if (markdown_read(arena, file, &markdown, faults) != 0) {
        return -1;
    }
    markdown_check_sections(&markdown, sign->file, sections, faults);
    sign->title = markdown.title;
    read_head(arena, &markdown, sign, faults);
    read_reply(arena, &markdown, sign, faults);

    said_as = markdown_section(&markdown, "Said as");
    sign->said_as = markdown_list(arena, said_as, sign->file, &sign->said_as_count, faults);
    sign_file->said_as_lines = markdown_lines(arena, said_as);
    not_meant_by = markdown_section(&markdown, "Not meant by");
    sign_file->not_meant_by =
        markdown_list(arena, not_meant_by, sign->file, &sign_file->not_meant_by_count, faults);
    sign_file->not_meant_by_lines = markdown_lines(arena, not_meant_by);
    sign_file->whole_texts = markdown_list(arena, markdown_section(&markdown, "Whole texts"),
                                           sign->file, &sign_file->whole_text_count, faults);
    sign_file->whole_text_lines = markdown_lines(arena, markdown_section(&markdown, "Whole texts"));
    sign_file->harmless_texts = markdown_list(arena, markdown_section(&markdown, "Harmless texts"),
                                              sign->file, &sign_file->harmless_text_count, faults);
    sign->approved = markdown_approved(&markdown, sign->file, faults);

    if (is_on_numbers(id)) {
        if (sign->said_as_count > 0) {
            faults_add(faults, sign->file, said_as->line, "Said as",
                       "this sign fires on an oxygen reading; take the section out");
        }
    } else if (sign->said_as_count == 0) {
        faults_add(faults, sign->file, markdown.title_line, "Said as",
                   "missing; add \"## Said as\" with a list of the words that show this sign");
    }
    return faults->count == before ? 0 : -1;
}
