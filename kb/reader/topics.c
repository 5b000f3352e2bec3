#include "topics.h"

#include <string.h>

#include "markdown.h"
#include "memory.h"
#include "placeholders.h"

static const char *const sections[] = {"Asked as", "Handout",  "Only if",
                                       "Sources",  "Approved", NULL};

const char *
topic_condition_unit(const char *condition)
{
    return strncmp(condition, "unit ", 5) == 0 && condition[5] != '\0' ? condition + 5 : NULL;
}

static bool
is_condition(const char *text)
{
    if (strncmp(text, "mode ", 5) == 0) {
        return mode_named(text + 5) != MODE_COUNT;
    }
    return strcmp(text, "backup") == 0 || strcmp(text, "car-charger") == 0 ||
           topic_condition_unit(text) != NULL;
}

/* The paragraphs as one text: a line end of the file is a space, a new paragraph a line end. */
static const char *
answer_of(void *arena, const struct markdown *markdown)
{
    char *answer = memory_copy(arena, "");
    char *c;
    size_t i;

    for (i = 0; i < markdown->paragraph_count; i++) {
        char *paragraph = memory_copy(arena, markdown->paragraphs[i].text);

        for (c = paragraph; *c != '\0'; c++) {
            if (*c == '\n') {
                *c = ' ';
            }
        }
        memory_append(&answer, "%s%s", i == 0 ? "" : "\n", paragraph);
    }
    return answer;
}

static void
check_conditions(const struct topic *topic, const struct markdown *markdown, struct faults *faults)
{
    const struct markdown_section *section = markdown_section(markdown, "Only if");
    size_t i;

    for (i = 0; i < topic->only_if_count; i++) {
        if (!is_condition(topic->only_if[i])) {
            faults_add(faults, topic->file, section->items[i].line, section->name,
                       "\"%s\" is no condition; write one of: mode pulse, mode continuous, mode "
                       "night, backup, car-charger, unit ID",
                       topic->only_if[i]);
        }
    }
}

int
topic_read(void *arena, const struct content_file *file, const char *id, enum language language,
           struct topic *topic, struct faults *faults)
{
    size_t before = faults->count, i;
    const struct markdown_section *handout, *asked_as;
    struct markdown markdown;

    memset(topic, 0, sizeof(*topic));
    topic->id = memory_copy(arena, id);
    topic->language = language;
    topic->file = memory_copy(arena, file->name);
    if (markdown_read(arena, file, &markdown, faults) != 0) {
        return -1;
    }
    markdown_check_sections(&markdown, topic->file, sections, faults);
    topic->title = markdown.title;
    topic->answer = answer_of(arena, &markdown);
    topic->answer_line = markdown.paragraph_count == 0 ? 0 : markdown.paragraphs[0].line;
    asked_as = markdown_section(&markdown, "Asked as");
    topic->asked_as = markdown_list(arena, asked_as, topic->file, &topic->asked_as_count, faults);
    topic->asked_as_lines = markdown_lines(arena, asked_as);
    topic->only_if = markdown_list(arena, markdown_section(&markdown, "Only if"), topic->file,
                                   &topic->only_if_count, faults);
    topic->approved = markdown_approved(&markdown, topic->file, faults);
    handout = markdown_section(&markdown, "Handout");
    topic->handout = handout == NULL ? "" : handout->source;

    check_conditions(topic, &markdown, faults);
    if (markdown.paragraph_count == 0) {
        faults_add(faults, topic->file, markdown.title_line, "answer",
                   "missing; write what is texted below the title");
    }
    if (topic->asked_as_count == 0) {
        faults_add(faults, topic->file, markdown.title_line, "Asked as",
                   "missing; add \"## Asked as\" with a list of ways in which renters ask this");
    }
    for (i = 0; i < markdown.paragraph_count; i++) {
        placeholders_check(markdown.paragraphs[i].text, NULL, topic->file,
                           markdown.paragraphs[i].line, faults);
    }
    if (handout != NULL) {
        placeholders_check(handout->source, NULL, topic->file, handout->source_line, faults);
    }
    return faults->count == before ? 0 : -1;
}
