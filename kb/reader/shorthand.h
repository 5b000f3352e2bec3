/*
 * Texting shorthand: "u" is "you", "batt" is "battery". Read from kb/words/LANG.txt, one
 * `short = long words` a line; # begins a comment.
 */
#ifndef SHORTHAND_H
#define SHORTHAND_H

#include <stddef.h>

#include "fault.h"
#include "words.h"

struct shorthand;

/*
 * Reads a file of shorthand. On success *shorthand lives in `arena`; every line that cannot be
 * read is a fault with file and line, and the answer is -1. A short form is one word.
 */
int shorthand_read(void *arena, struct workspace *workspace, const char *file, const char *bytes,
                   size_t length, enum language language, struct shorthand **shorthand,
                   struct faults *faults);

/*
 * The words with each short form replaced by its long words, which stand for the same bytes of the
 * text. Lives in `arena`; the same words if `shorthand` is NULL.
 */
struct words shorthand_expand(void *arena, const struct shorthand *shorthand, struct words words);

/* Copies it (image.h), if there is one. */
struct image;
void shorthand_image(struct image *image, struct shorthand **of);

#endif
