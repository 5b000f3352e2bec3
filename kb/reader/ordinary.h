/*
 * Ordinary words of a language: a list, one word a line, # begins a comment. A text's word that
 * the content lacks is no slip of one that it has if it stands here; it only speaks of something
 * else. Without a list (NULL) every unknown word may be a slip.
 */
#ifndef ORDINARY_H
#define ORDINARY_H

#include <stdbool.h>
#include <stddef.h>

struct ordinary;

/* Reads the lines; they are not needed afterwards. */
struct ordinary *ordinary_read(void *arena, const char *lines, size_t length);

/* True if the cleaned word (words.h) is in the list; false for all if that is NULL. */
bool ordinary_has(const struct ordinary *ordinary, const char *word);

/* Copies the list (image.h), if there is one. */
struct image;
void ordinary_image(struct image *image, struct ordinary **of);

#endif
