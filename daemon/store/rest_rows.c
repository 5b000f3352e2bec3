#include "rest_rows.h"

#include "store_sql.h"

int
rest_rows_add(struct store *store, const char *rental_id, bool rests, const char *who,
              int64_t now_utc_s, struct fault *fault)
{
    return store_do(store,
                    "INSERT INTO rental_rest (rental_id, rests, at_utc_s, who) VALUES (?, ?, ?, ?)",
                    VALUES(words(rental_id), number(rests), number(now_utc_s), words(who)), fault);
}

int
rest_rows_is(struct store *store, const char *rental_id, bool *rests, struct fault *fault)
{
    sqlite3_stmt *query = store_query(
        store, "SELECT rests FROM rental_rest WHERE rental_id = ? ORDER BY id DESC LIMIT 1",
        VALUES(words(rental_id)), fault);
    bool more;

    *rests = false;
    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    if (more) {
        *rests = sqlite3_column_int(query, 0) != 0;
        store_end(query);
    }
    return 0;
}
