#include "answer_rows.h"

#include "conversation_rows.h"
#include "memory.h"
#include "store_sql.h"

int
answer_rows_wait(struct store *store, const struct answer_row *row, struct fault *fault)
{
    return store_do(store,
                    "INSERT INTO answer_due (phone, question, rental_id, text_id, due_utc_s)"
                    " VALUES (?, ?, ?, ?, ?) ON CONFLICT (phone) DO UPDATE SET"
                    " due_utc_s = CASE WHEN question = excluded.question"
                    " THEN min(due_utc_s, excluded.due_utc_s) ELSE excluded.due_utc_s END,"
                    " question = excluded.question, rental_id = excluded.rental_id,"
                    " text_id = excluded.text_id",
                    VALUES(words(row->phone), words(open_question_name(row->question)),
                           words(row->rental_id), number(row->text_id), number(row->due_utc_s)),
                    fault);
}

int
answer_rows_drop(struct store *store, const char *phone, struct fault *fault)
{
    return store_do(store, "DELETE FROM answer_due WHERE phone = ?", VALUES(words(phone)), fault);
}

int
answer_rows_rest(struct store *store, const char *phone, int64_t text_id, struct fault *fault)
{
    return store_do(store, "DELETE FROM answer_due WHERE phone = ? AND text_id <> ?",
                    VALUES(words(phone), number(text_id)), fault);
}

int
answer_rows_drop_rental(struct store *store, const char *rental_id, struct fault *fault)
{
    return store_do(store, "DELETE FROM answer_due WHERE rental_id = ?", VALUES(words(rental_id)),
                    fault);
}

int
answer_rows_due(struct store *store, void *arena, int64_t now_utc_s, struct answer_row **rows,
                size_t *count, struct fault *fault)
{
    sqlite3_stmt *query = store_query(store,
                                      "SELECT phone, question, rental_id, text_id, due_utc_s"
                                      " FROM answer_due WHERE due_utc_s <= ? ORDER BY due_utc_s",
                                      VALUES(number(now_utc_s)), fault);
    struct answer_row *list = NULL;
    size_t used = 0;
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    while (more) {
        list = memory_grow(arena, struct answer_row, list, used);
        list[used++] = (struct answer_row){
            .phone = column_text(arena, query, 0),
            .question = open_question_named((const char *)sqlite3_column_text(query, 1)),
            .rental_id = column_text(arena, query, 2),
            .text_id = sqlite3_column_int64(query, 3),
            .due_utc_s = sqlite3_column_int64(query, 4)};
        if (store_next(store, query, &more, fault) != 0) {
            return -1;
        }
    }
    *rows = list;
    *count = used;
    return 0;
}

int
answer_rows_next(struct store *store, int64_t *next_utc_s, struct fault *fault)
{
    return store_soonest(store, "SELECT due_utc_s FROM answer_due ORDER BY due_utc_s LIMIT 1",
                         next_utc_s, fault);
}
