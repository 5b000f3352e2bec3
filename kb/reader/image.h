/*
 * What took time to build as bytes, and back: structs, arrays and strings as they lie in memory,
 * one behind the other, with a list of the places where a pointer stands. A pointer is written down
 * as how far from the beginning it points; whoever takes the bytes in adds where they lie now. So
 * what was built is used as it is, by the same code, and nothing is parsed or converted.
 *
 * Each struct has a function that copies it here, written beside its fields: NAME_image(). Every
 * pointer of the copy must be dealt with there; one that is forgotten still points at what was
 * copied (tests/unit/image_test.c compares the bytes of two that were built alike).
 *
 * The bytes are a cache, never moved between machines or versions of the program (cache.c). They
 * may be damaged or cut all the same: a sum over everything shows it. The sum is no seal: whoever
 * may write the cache may write the content too. Private to the library.
 */
#ifndef IMAGE_H
#define IMAGE_H

#include <stddef.h>
#include <stdint.h>

#include "fault.h"

struct image;

/* An empty one; it lives in `arena`. NULL with a fault if there is no room to reserve. */
struct image *image_new(void *arena, struct fault *fault);

/*
 * Copies the `size` bytes that *field points at and lets it point at the copy, which stays where it
 * is; returns the copy. NULL stays NULL. `field` is a pointer in a copy, or that of the caller to
 * the first thing of all, which is what image_open() gives back.
 */
void *image_block(struct image *image, void **field, size_t size);
#define image_array(image, field, count)                                                           \
    image_block((image), (void **)(uintptr_t)(field), sizeof(**(field)) * (count))

/* The same for an array of pointers, each of which is then to be dealt with. */
#define image_pointers(image, field, count)                                                        \
    image_block((image), (void **)(uintptr_t)(field), sizeof(void *) * (count))

/* The same for a string, and for an array of strings. */
void image_text(struct image *image, const char **field);
void image_texts(struct image *image, const char *const **field, size_t count);

/* Lets *field point at something that was copied already, or be NULL. */
void image_point(struct image *image, void **field, const void *target);
#define image_same(image, field, target) image_point((image), (void **)(uintptr_t)(field), (target))

/* Ends it: all of it as bytes, which live as long as the image. NULL with a fault if it grew too
 * large. */
const char *image_bytes(struct image *image, size_t *length, struct fault *fault);

/*
 * Takes in what image_bytes() gave: returns the first thing that was copied, which lies, as all
 * that it points at, in the bytes; they must outlive it and begin where any type may stand. NULL
 * with a fault for other bytes, which may be spoilt by then.
 */
void *image_open(char *bytes, size_t length, struct fault *fault);

#endif
