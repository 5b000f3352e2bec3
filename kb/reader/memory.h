/*
 * Memory. Everything that lives for one turn, one text or one load hangs on a talloc context that
 * is dropped whole, so there are no frees on twenty paths. talloc was chosen over a talloc pool,
 * glibc's obstack and GLib's string chunks: 200 pieces a turn cost 19, 8, 3 and 2 microseconds
 * (tests/bench/arena, on a busy virtual machine), which nobody can see beside one fsync, and only
 * talloc gives formatted text, typed arrays, nesting, and a malloc a piece, so that ASan sees every
 * overrun.
 *
 * Out of memory is not handled anywhere: memory_must() ends the process, and a restart is the
 * crash path that tests/crash proves.
 */
#ifndef MEMORY_H
#define MEMORY_H

#include <talloc.h>

/* Returns `pointer`, or says so and aborts if it is NULL. Wrap every allocation in it. */
void *memory_must(void *pointer);

/* talloc_asprintf, talloc_strdup, talloc_strndup, talloc_zero_array that cannot fail. */
char *memory_format(void *arena, const char *format, ...) __attribute__((format(printf, 2, 3)));
char *memory_copy(void *arena, const char *text);
char *memory_copy_n(void *arena, const char *text, size_t length);
/* Appends to a talloc'd string that memory_format or memory_copy made; *text is replaced. */
void memory_append(char **text, const char *format, ...) __attribute__((format(printf, 2, 3)));
#define memory_array(arena, type, count)                                                           \
    ((type *)memory_must(talloc_zero_array((arena), type, (unsigned)(count))))
#define memory_new(arena, type) ((type *)memory_must(talloc_zero((arena), type)))
/* Room for one more: grows a talloc array by doubling. `count` is how many are used. What is added
 * is 0, gaps between fields too: an image (image.h) of two lists that say the same is the same. */
#define memory_grow(arena, type, list, count)                                                      \
    ((type *)memory_must(memory_grow_bytes((arena), (list), sizeof(type), (count))))
void *memory_grow_bytes(void *arena, void *list, size_t each, size_t count);

#endif
