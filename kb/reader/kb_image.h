/*
 * A knowledge base as bytes and back (image.h), so that a start need not read, learn and file again
 * what an earlier one did. Private to the library.
 */
#ifndef KB_IMAGE_H
#define KB_IMAGE_H

#include "content.h"
#include "image.h"

/* All of the kb as bytes, which live as long as the image. NULL with a fault if it is too large. */
const char *kb_image(const struct kb *kb, struct image *image, size_t *length, struct fault *fault);

/* The kb that these bytes are of; it takes them over. Returns 0, or -1 with a fault for bytes that
 * are no image: *kb is then untouched, and the bytes are spoilt. */
int kb_of_image(const struct content_kept *kept, struct kb **kb, struct fault *fault);

#endif
