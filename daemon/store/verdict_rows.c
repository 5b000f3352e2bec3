#include "verdict_rows.h"

#include <assert.h>

#include "alert_rows.h"
#include "store_sql.h"

int
verdict_rows_add(struct store *store, const struct verdict_row *row, int64_t *verdict_id,
                 struct fault *fault)
{
    if (store_do(store,
                 "INSERT INTO verdict (text_id, supersedes, at_utc_s, kb_digest, program,"
                 " rental_id, rental_digest, conversation_id, started_from, route, language,"
                 " alert_level, json) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                 VALUES(number(row->text_id), number_or_null(row->supersedes),
                        number(row->at_utc_s), words(row->kb_digest), words(HUTBELL_VERSION),
                        words(row->rental_id), words(row->rental_digest),
                        number_or_null(row->conversation_row), words(row->started_from),
                        words(route_name(row->route)), words(language_code(row->language)),
                        words(alert_level_name(row->alert_level)), words(row->json)),
                 fault) != 0) {
        return -1;
    }
    *verdict_id = store_last_id(store);
    return 0;
}

int
verdict_rows_start(struct store *store, int64_t verdict_id, int64_t *conversation_row,
                   enum alert_level *alert_level, struct fault *fault)
{
    sqlite3_stmt *query =
        store_query(store, "SELECT conversation_id, alert_level FROM verdict WHERE id = ?",
                    VALUES(number(verdict_id)), fault);
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    assert(more); /* a foreign key of the outbox row says so */
    *conversation_row = sqlite3_column_int64(query, 0);
    *alert_level = alert_level_named((const char *)sqlite3_column_text(query, 1));
    store_end(query);
    return 0;
}
