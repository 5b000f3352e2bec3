/*
 * Word vectors: where an English word stands among others, so that "lighter plug" lies near
 * "cigarette socket" though they share no letter. Optional: without them everything works, only
 * with fewer examples less well. They are cut down from a public set by kb/reader/cut-vectors, to
 * the commonest words and one byte a number.
 */
#ifndef VECTORS_H
#define VECTORS_H

#include <stddef.h>
#include <stdint.h>

#include "fault.h"

struct vectors;

enum { VECTORS_NUMBERS = 100 };

/*
 * Reads vectors from bytes, which must stay where they are as long as the vectors are used (map
 * the file). Layout: "hbwords1"; how many words and how many bytes of text (4 bytes each, lowest
 * first); the words, commonest first, each ended by NUL; then for each word its numbers, a signed
 * byte each: only the direction counts. Returns 0, or -1 with a fault.
 */
int vectors_read(void *arena, const char *bytes, size_t length, struct vectors **vectors,
                 struct fault *fault);

/* Adds the vector of a word, brought to length 1 and times how much so common a word tells, to
 * sum; nothing if the word has none. */
void vectors_add(const struct vectors *vectors, const char *word, float sum[VECTORS_NUMBERS]);

/* Copies them with the bytes that they were read from (image.h), if there are any. */
struct image;
void vectors_image(struct image *image, struct vectors **of);

#endif
