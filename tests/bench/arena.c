/*
 * What memory of a turn costs: 200 pieces of 16 to 79 bytes, allocated and dropped together, with
 * talloc, a talloc pool, glibc's obstack and GLib's string chunks. memory.h quotes the figures.
 */
#include <obstack.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include <glib.h>
#include <talloc.h>

enum { PIECES = 200, TURNS = 20000 };

#define obstack_chunk_alloc malloc
#define obstack_chunk_free free

static char source[80]; /* what the pieces are filled with */

static size_t
size_of(int piece)
{
    return 16 + (size_t)(piece * 7 % 64);
}

static void
turn_talloc(void)
{
    void *arena = talloc_new(NULL);
    int i;

    for (i = 0; i < PIECES; i++) {
        memcpy(talloc_size(arena, size_of(i)), source, size_of(i));
    }
    talloc_free(arena);
}

static void
turn_talloc_pool(void)
{
    void *arena = talloc_pool(NULL, 64 * 1024);
    int i;

    for (i = 0; i < PIECES; i++) {
        memcpy(talloc_size(arena, size_of(i)), source, size_of(i));
    }
    talloc_free(arena);
}

static void
turn_obstack(void)
{
    struct obstack arena;
    int i;

    obstack_init(&arena);
    for (i = 0; i < PIECES; i++) {
        memcpy(obstack_alloc(&arena, (int)size_of(i)), source, size_of(i));
    }
    obstack_free(&arena, NULL);
}

static void
turn_string_chunk(void)
{
    GStringChunk *arena = g_string_chunk_new(4096);
    int i;

    for (i = 0; i < PIECES; i++) {
        g_string_chunk_insert_len(arena, source, (gssize)size_of(i));
    }
    g_string_chunk_free(arena);
}

static void
measure(const char *name, void (*turn)(void))
{
    struct timespec start, end;
    int i;

    clock_gettime(CLOCK_MONOTONIC, &start);
    for (i = 0; i < TURNS; i++) {
        turn();
    }
    clock_gettime(CLOCK_MONOTONIC, &end);
    printf(
        "%-14s %.1f us\n", name,
        ((double)(end.tv_sec - start.tv_sec) * 1e6 + (double)(end.tv_nsec - start.tv_nsec) / 1e3) /
            TURNS);
}

int
main(void)
{
    memset(source, 'x', sizeof(source));
    measure("talloc", turn_talloc);
    measure("talloc pool", turn_talloc_pool);
    measure("obstack", turn_obstack);
    measure("string chunk", turn_string_chunk);
    return 0;
}
