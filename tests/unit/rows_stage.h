/* What tests of the store's rows begin with: a store in memory, and a text in it. */
#ifndef ROWS_STAGE_H
#define ROWS_STAGE_H

#include <check.h>

#include "memory.h"
#include "store.h"
#include "texts.h"

static void *arena;
static struct fault fault;

#define MUST(call)                                                                                 \
    do {                                                                                           \
        ck_assert_msg((call) == 0, "%s", fault.text);                                              \
    } while (0)

static const struct message three_am = {.gateway = "valley",
                                        .id = "m-1",
                                        .sender = "+12085550123",
                                        .text = "zebra battery one left",
                                        .sent_utc_s = 1770000000,
                                        .received_utc_s = 1770000001};

static void
set_up(void)
{
    arena = memory_must(talloc_new(NULL));
}

static void
tear_down(void)
{
    talloc_free(arena);
}

static struct store *
in_memory(void)
{
    struct store *store;

    MUST(store_open(NULL, STORE_IN_MEMORY, &store, &fault));
    return store;
}

static int64_t
text_stored(struct store *store, const struct message *message)
{
    int64_t id = 0;

    MUST(store_begin(store, &fault));
    MUST(texts_add(store, message, &id, &fault));
    MUST(store_commit(store, &fault));
    return id;
}

#endif
