/*
 * libcmark gives a tree with line numbers. The text that is sent to renters is taken from it as
 * plain text and must not hold any mark: a text message shows stars and brackets as they are. The
 * handout is kept as its author wrote it, for it is rendered later.
 */
#include "markdown.h"

#include <ctype.h>
#include <string.h>
#include <strings.h>

#include <cmark.h>
#include <utf8proc.h>

#include "memory.h"

/* One file on its way from bytes to struct markdown. */
struct document {
    void *arena;
    const char *file;
    struct faults *faults;
    char *text;         /* the file with plain line ends, ended by NUL */
    const char **lines; /* where line 1, 2, … begin; one more than there are */
    int line_count;
    struct markdown_text *paragraphs;
    struct markdown_section *sections;
    struct markdown *markdown;
};

/* ---- Bytes to lines ----------------------------------------------------------------------- */

static bool
is_allowed_character(int32_t c)
{
    return c == '\n' || c == '\t' || (c >= 0x20 && c != 0x7f && !(c >= 0x80 && c < 0xa0));
}

/* Copies the bytes without byte order mark and with \n as the only line end. */
static char *
with_plain_line_ends(void *arena, const char *bytes, size_t length)
{
    char *text = memory_array(arena, char, length + 1);
    size_t i = 0, used = 0;

    if (length >= 3 && memcmp(bytes, "\xef\xbb\xbf", 3) == 0) {
        i = 3;
    }
    for (; i < length; i++) {
        if (bytes[i] == '\r') {
            if (i + 1 < length && bytes[i + 1] == '\n') {
                continue;
            }
            text[used++] = '\n';
        } else {
            text[used++] = bytes[i];
        }
    }
    text[used] = '\0';
    return text;
}

/* Adds a fault for the first thing in each line that may not be there. Returns 0 or -1. */
static int
check_characters(const struct content_file *file, struct faults *faults)
{
    size_t at = 0, line_start = 0, before = faults->count;
    int line = 1;

    while (at < file->length) {
        int32_t c;
        utf8proc_ssize_t used = utf8proc_iterate((const utf8proc_uint8_t *)file->bytes + at,
                                                 (utf8proc_ssize_t)(file->length - at), &c);

        if (used <= 0) {
            faults_add(faults, file->name, line, NULL,
                       "not UTF-8 at byte %zu; save the file as UTF-8", at);
            return -1;
        }
        if (c != '\r' && !is_allowed_character(c)) {
            faults_add(faults, file->name, line, NULL, "control character U+%04X; take it out",
                       (unsigned)c);
            return -1;
        }
        at += (size_t)used;
        if (c == '\n') {
            line++;
            line_start = at;
        } else if (at - line_start > CONTENT_LINE_MAX) {
            faults_add(faults, file->name, line, NULL, "the line is longer than %d bytes; break it",
                       CONTENT_LINE_MAX);
            return -1;
        }
    }
    return faults->count == before ? 0 : -1;
}

static void
find_lines(struct document *document)
{
    const char *at = document->text;
    size_t count = 0;

    for (;;) {
        document->lines = memory_grow(document->arena, const char *, document->lines, count);
        document->lines[count++] = at;
        if (at == NULL) {
            break;
        }
        at = strchr(at, '\n');
        at = at == NULL ? NULL : at + 1;
    }
    document->line_count = (int)count - 1;
}

/* Lines first..last as written, without blank space around them; *line is where it begins. */
static const char *
source_of_lines(const struct document *document, int first, int last, int *line)
{
    const char *start, *end;

    *line = first;
    if (first > last || first > document->line_count) {
        return "";
    }
    start = document->lines[first - 1];
    end = last >= document->line_count ? start + strlen(start) : document->lines[last];
    while (start < end && isspace((unsigned char)*start)) {
        *line += *start == '\n';
        start++;
    }
    while (end > start && isspace((unsigned char)end[-1])) {
        end--;
    }
    return memory_copy_n(document->arena, start, (size_t)(end - start));
}

/* ---- Tree to plain text ------------------------------------------------------------------- */

static void
trim(char *text)
{
    size_t length = strlen(text), skip = strspn(text, " \t\n");

    while (length > skip && isspace((unsigned char)text[length - 1])) {
        length--;
    }
    memmove(text, text + skip, length - skip);
    text[length - skip] = '\0';
}

/* What a node adds to plain text, or NULL if it is a mark that plain text cannot show. */
static const char *
plain_part(cmark_node *node)
{
    switch (cmark_node_get_type(node)) {
    case CMARK_NODE_TEXT:
        return cmark_node_get_literal(node);
    case CMARK_NODE_SOFTBREAK:
    case CMARK_NODE_LINEBREAK:
        return "\n";
    case CMARK_NODE_PARAGRAPH:
    case CMARK_NODE_HEADING:
        return "";
    default:
        return NULL;
    }
}

/* The text below a paragraph or heading; *is_plain is false if it holds any mark. */
static char *
text_of(const struct document *document, cmark_node *node, bool *is_plain)
{
    char *text = memory_copy(document->arena, "");
    cmark_iter *iterator = cmark_iter_new(node);
    cmark_event_type event;

    *is_plain = true;
    while ((event = cmark_iter_next(iterator)) != CMARK_EVENT_DONE) {
        const char *part = plain_part(cmark_iter_get_node(iterator));

        if (part == NULL) {
            *is_plain = false;
        } else if (event == CMARK_EVENT_ENTER) {
            text = memory_must(talloc_strdup_append_buffer(text, part));
        }
    }
    cmark_iter_free(iterator);
    trim(text);
    return text;
}

static void
read_paragraph(struct document *document, cmark_node *node)
{
    struct markdown *markdown = document->markdown;
    struct markdown_text *paragraph;
    bool is_plain = false;
    int line = cmark_node_get_start_line(node);
    char *text = NULL;

    if (cmark_node_get_type(node) == CMARK_NODE_PARAGRAPH) {
        text = text_of(document, node, &is_plain);
    }
    if (!is_plain) {
        faults_add(document->faults, document->file, line, NULL,
                   "a text message shows plain paragraphs only; take out lists, stars, links and "
                   "other marks");
        return;
    }
    document->paragraphs = memory_grow(document->arena, struct markdown_text, document->paragraphs,
                                       markdown->paragraph_count);
    paragraph = &document->paragraphs[markdown->paragraph_count++];
    paragraph->text = text;
    paragraph->line = line;
    markdown->paragraphs = document->paragraphs;
}

static void
add_item(struct document *document, struct markdown_section *section, cmark_node *item)
{
    struct markdown_text *items = (struct markdown_text *)section->items;
    cmark_node *child = cmark_node_first_child(item);
    bool is_plain = false;
    char *text = NULL;

    if (child != NULL && cmark_node_get_type(child) == CMARK_NODE_PARAGRAPH) {
        text = text_of(document, child, &is_plain);
    }
    if (!is_plain || cmark_node_next(child) != NULL) {
        section->list_only = false;
        return;
    }
    items = memory_grow(document->arena, struct markdown_text, items, section->item_count);
    items[section->item_count].text = text;
    items[section->item_count].line = cmark_node_get_start_line(item);
    section->item_count++;
    section->items = items;
}

/* Reads everything from a section's heading to the next one; returns the next heading or NULL. */
static cmark_node *
read_section(struct document *document, cmark_node *heading)
{
    struct markdown *markdown = document->markdown;
    struct markdown_section *section;
    bool is_plain;
    int last = document->line_count;
    cmark_node *node, *item;

    document->sections = memory_grow(document->arena, struct markdown_section, document->sections,
                                     markdown->section_count);
    section = &document->sections[markdown->section_count++];
    markdown->sections = document->sections;
    memset(section, 0, sizeof(*section));
    section->name = text_of(document, heading, &is_plain);
    section->line = cmark_node_get_start_line(heading);
    section->list_only = true;

    for (node = cmark_node_next(heading); node != NULL; node = cmark_node_next(node)) {
        if (cmark_node_get_type(node) == CMARK_NODE_HEADING &&
            cmark_node_get_heading_level(node) <= 2) {
            last = cmark_node_get_start_line(node) - 1;
            break;
        }
        if (cmark_node_get_type(node) != CMARK_NODE_LIST) {
            section->list_only = false;
            continue;
        }
        for (item = cmark_node_first_child(node); item != NULL; item = cmark_node_next(item)) {
            add_item(document, section, item);
        }
    }
    section->source = source_of_lines(document, cmark_node_get_end_line(heading) + 1, last,
                                      &section->source_line);
    return node;
}

/* Reads one block before the first section, or a whole section; returns the block after it. */
static cmark_node *
read_block(struct document *document, cmark_node *node)
{
    struct markdown *markdown = document->markdown;
    int level =
        cmark_node_get_type(node) == CMARK_NODE_HEADING ? cmark_node_get_heading_level(node) : 0;
    bool is_plain;

    if (level == 1) {
        if (markdown->title_line != 0) {
            faults_add(document->faults, document->file, cmark_node_get_start_line(node), NULL,
                       "a second title; a file has one line that begins with a single #");
        } else {
            markdown->title = text_of(document, node, &is_plain);
            markdown->title_line = cmark_node_get_start_line(node);
        }
        return cmark_node_next(node);
    }
    if (level == 2) {
        return read_section(document, node);
    }
    read_paragraph(document, node);
    return cmark_node_next(node);
}

int
markdown_read(void *arena, const struct content_file *file, struct markdown *markdown,
              struct faults *faults)
{
    struct document document = {
        .arena = arena, .file = file->name, .faults = faults, .markdown = markdown};
    size_t before = faults->count;
    cmark_node *root, *node;

    memset(markdown, 0, sizeof(*markdown));
    markdown->title = "";
    if (check_characters(file, faults) != 0) {
        return -1;
    }
    document.text = with_plain_line_ends(arena, file->bytes, file->length);
    find_lines(&document);
    root = cmark_parse_document(document.text, strlen(document.text), CMARK_OPT_DEFAULT);
    for (node = cmark_node_first_child(root); node != NULL;) {
        node = read_block(&document, node);
    }
    cmark_node_free(root);
    if (markdown->title[0] == '\0') {
        faults_add(faults, file->name, 1, "title",
                   "missing; begin the file with a line such as \"# Charging from the car\"");
    }
    return faults->count == before ? 0 : -1;
}

/* ---- What the readers of topics and signs ask of it --------------------------------------- */

const struct markdown_section *
markdown_section(const struct markdown *markdown, const char *name)
{
    size_t i;

    for (i = 0; i < markdown->section_count; i++) {
        if (strcasecmp(markdown->sections[i].name, name) == 0) {
            return &markdown->sections[i];
        }
    }
    return NULL;
}

static bool
is_among(const char *name, const char *const *allowed)
{
    for (; *allowed != NULL; allowed++) {
        if (strcasecmp(name, *allowed) == 0) {
            return true;
        }
    }
    return false;
}

void
markdown_check_sections(const struct markdown *markdown, const char *file,
                        const char *const *allowed, struct faults *faults)
{
    size_t i, j;

    for (i = 0; i < markdown->section_count; i++) {
        const struct markdown_section *section = &markdown->sections[i];

        if (!is_among(section->name, allowed)) {
            char *list = memory_copy(NULL, "");

            for (j = 0; allowed[j] != NULL; j++) {
                memory_append(&list, "%s%s", j == 0 ? "" : ", ", allowed[j]);
            }
            faults_add(faults, file, section->line, section->name,
                       "no such section; a file of this kind may have: %s", list);
            talloc_free(list);
        } else if (markdown_section(markdown, section->name) != section) {
            faults_add(faults, file, section->line, section->name,
                       "this section is there twice; put both together");
        }
    }
}

const char *const *
markdown_list(void *arena, const struct markdown_section *section, const char *file, size_t *count,
              struct faults *faults)
{
    const char **list = NULL;
    size_t i, j;

    *count = 0;
    if (section == NULL) {
        return NULL;
    }
    if (!section->list_only) {
        faults_add(faults, file, section->line, section->name,
                   "holds more than a list of plain lines; begin each with \"- \" and take out "
                   "other marks");
    }
    for (i = 0; i < section->item_count; i++) {
        char *text = memory_copy(arena, section->items[i].text);
        char *end;

        while ((end = strchr(text, '\n')) != NULL) {
            *end = ' ';
        }
        for (j = 0; j < *count; j++) {
            if (strcasecmp(list[j], text) == 0) {
                faults_add(faults, file, section->items[i].line, section->name,
                           "\"%s\" is there twice; take one out", text);
                break;
            }
        }
        list = memory_grow(arena, const char *, list, *count);
        list[(*count)++] = text;
    }
    return list;
}

const int *
markdown_lines(void *arena, const struct markdown_section *section)
{
    int *lines;
    size_t i;

    if (section == NULL) {
        return NULL;
    }
    lines = memory_array(arena, int, section->item_count);
    for (i = 0; i < section->item_count; i++) {
        lines[i] = section->items[i].line;
    }
    return lines;
}

/* True for "Name, role, 2026-11-30": two or more commas, then a day that exists on paper. */
static bool
is_signature(const char *text)
{
    const char *comma = strrchr(text, ',');
    const char *date = comma == NULL ? "" : comma + 1 + strspn(comma + 1, " ");
    int month, day;
    size_t i;

    if (comma == NULL || strchr(text, ',') == comma || strlen(date) != 10) {
        return false;
    }
    for (i = 0; i < 10; i++) {
        if (i == 4 || i == 7 ? date[i] != '-' : !isdigit((unsigned char)date[i])) {
            return false;
        }
    }
    month = (date[5] - '0') * 10 + date[6] - '0';
    day = (date[8] - '0') * 10 + date[9] - '0';
    return month >= 1 && month <= 12 && day >= 1 && day <= 31;
}

bool
markdown_approved(const struct markdown *markdown, const char *file, struct faults *faults)
{
    const struct markdown_section *section = markdown_section(markdown, "Approved");
    bool approved = section != NULL && section->item_count > 0;
    size_t i;

    for (i = 0; section != NULL && i < section->item_count; i++) {
        const struct markdown_text *item = &section->items[i];

        if (strcasecmp(item->text, "not yet") == 0) {
            approved = false;
        } else if (!is_signature(item->text)) {
            approved = false;
            faults_add(faults, file, item->line, section->name,
                       "\"%s\" is no approval; write \"Name, role, YYYY-MM-DD\" or \"not yet\"",
                       item->text);
        }
    }
    return approved;
}
