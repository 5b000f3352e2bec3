/*
 * The Markdown of content files: a title, paragraphs, then named sections. CommonMark is read with
 * libcmark; this gives what a topic or a sign needs of it, with line numbers for faults.
 */
#ifndef MARKDOWN_H
#define MARKDOWN_H

#include <stdbool.h>
#include <stddef.h>

#include "content.h"
#include "fault.h"

struct markdown_text {
    const char *text; /* plain, trimmed; a line end of the source is '\n' */
    int line;
};

struct markdown_section {
    const char *name;   /* "Asked as" */
    int line;           /* of its heading */
    const char *source; /* everything below the heading as written, trimmed */
    int source_line;
    const struct markdown_text *items; /* of its lists, in order */
    size_t item_count;
    bool list_only; /* it holds nothing but lists of plain text */
};

struct markdown {
    const char *title; /* "" if there is none */
    int title_line;
    const struct markdown_text *paragraphs; /* between the title and the first section */
    size_t paragraph_count;
    const struct markdown_section *sections;
    size_t section_count;
};

/*
 * Reads one file into `arena`. Faults: not UTF-8, control characters, lines too long, no title or
 * two, marks or lists where only plain paragraphs may stand. Returns 0 or -1.
 */
int markdown_read(void *arena, const struct content_file *file, struct markdown *markdown,
                  struct faults *faults);

/* The section of this name, in any case of letters, or NULL. */
const struct markdown_section *markdown_section(const struct markdown *markdown, const char *name);

/*
 * Adds a fault for each section whose name is not among `allowed` (ended by NULL) or comes twice.
 */
void markdown_check_sections(const struct markdown *markdown, const char *file,
                             const char *const *allowed, struct faults *faults);

/*
 * The list of a section as an array of strings, or nothing (count 0) if the section is missing.
 * Adds a fault if it holds anything but a list, or the same line twice.
 */
const char *const *markdown_list(void *arena, const struct markdown_section *section,
                                 const char *file, size_t *count, struct faults *faults);

/* The line of the file of each item of a section, in `arena`; NULL if the section is missing. */
const int *markdown_lines(void *arena, const struct markdown_section *section);

/*
 * The section "Approved": true if everyone in it signed ("Name, role, 2026-11-30"); false if it is
 * missing or says "not yet". Adds a fault for a line that is neither.
 */
bool markdown_approved(const struct markdown *markdown, const char *file, struct faults *faults);

#endif
