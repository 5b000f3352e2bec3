#include "turn_rows.h"

#include <string.h>

#include "memory.h"
#include "store_sql.h"

static const char *const event_names[] = {
    [TURN_ASKED] = "asked", [TURN_CONFIRMED] = "confirmed", [TURN_PASSED] = "passed"};

static enum turn_event
event_named(const char *name)
{
    return strcmp(name, event_names[TURN_ASKED]) == 0       ? TURN_ASKED
           : strcmp(name, event_names[TURN_CONFIRMED]) == 0 ? TURN_CONFIRMED
                                                            : TURN_PASSED;
}

int
turn_rows_of(struct store *store, void *arena, int64_t turn_utc_s, struct turn_row **rows,
             size_t *count, struct fault *fault)
{
    sqlite3_stmt *query = store_query(
        store, "SELECT event, who, at_utc_s FROM turn_event WHERE turn_utc_s = ? ORDER BY id",
        VALUES(number(turn_utc_s)), fault);
    struct turn_row *list = NULL;
    size_t used = 0;
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    while (more) {
        list = memory_grow(arena, struct turn_row, list, used);
        list[used++] =
            (struct turn_row){.event = event_named((const char *)sqlite3_column_text(query, 0)),
                              .who = column_text(arena, query, 1),
                              .at_utc_s = sqlite3_column_int64(query, 2)};
        if (store_next(store, query, &more, fault) != 0) {
            return -1;
        }
    }
    *rows = list;
    *count = used;
    return 0;
}

int
turn_rows_add(struct store *store, int64_t turn_utc_s, const struct turn_row *row,
              struct fault *fault)
{
    return store_do(store,
                    "INSERT INTO turn_event (turn_utc_s, event, who, at_utc_s) VALUES (?, ?, ?, ?)",
                    VALUES(number(turn_utc_s), words(event_names[row->event]), words(row->who),
                           number(row->at_utc_s)),
                    fault);
}
