#include "line_test_rows.h"

#include "store_sql.h"

/* An old token in a text is nobody's test any more, and the look-up stays short. */
enum { REMEMBER_S = 7 * 86400 };

int
line_test_rows_add(struct store *store, const char *token, const char *recipient, int64_t now_utc_s,
                   struct fault *fault)
{
    return store_do(store, "INSERT INTO line_test (token, recipient, sent_utc_s) VALUES (?, ?, ?)",
                    VALUES(words(token), words(recipient), number(now_utc_s)), fault);
}

int
line_test_rows_newest(struct store *store, void *arena, struct line_test_row *row, bool *found,
                      struct fault *fault)
{
    sqlite3_stmt *query = store_query(store,
                                      "SELECT id, token, recipient, sent_utc_s,"
                                      " come_utc_s IS NULL AND missed_utc_s IS NULL FROM line_test"
                                      " ORDER BY id DESC LIMIT 1",
                                      NULL, 0, fault);

    if (query == NULL || store_next(store, query, found, fault) != 0) {
        return -1;
    }
    if (*found) {
        *row = (struct line_test_row){.id = sqlite3_column_int64(query, 0),
                                      .token = column_text(arena, query, 1),
                                      .recipient = column_text(arena, query, 2),
                                      .sent_utc_s = sqlite3_column_int64(query, 3),
                                      .is_open = sqlite3_column_int(query, 4) != 0};
        store_end(query);
    }
    return 0;
}

int
line_test_rows_come(struct store *store, const char *sender, const char *text, int64_t now_utc_s,
                    bool *is_test, struct fault *fault)
{
    if (store_do(
            store,
            "UPDATE line_test SET come_utc_s = coalesce(come_utc_s, ?3)"
            " WHERE recipient = ?1 AND instr(?2, token) > 0 AND sent_utc_s > ?4",
            VALUES(words(sender), words(text), number(now_utc_s), number(now_utc_s - REMEMBER_S)),
            fault) != 0) {
        return -1;
    }
    *is_test = store_changes(store) > 0;
    return 0;
}

int
line_test_rows_miss(struct store *store, int64_t id, int64_t now_utc_s, struct fault *fault)
{
    return store_do(store, "UPDATE line_test SET missed_utc_s = ?2 WHERE id = ?1",
                    VALUES(number(id), number(now_utc_s)), fault);
}
