#include "limit_rows.h"

#include "store_sql.h"

/* The one row of a query that always has one: its first numbers. */
static int
read_numbers(struct store *store, sqlite3_stmt *query, int *numbers, int count, struct fault *fault)
{
    bool more;
    int i;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        numbers[i] = more ? sqlite3_column_int(query, i) : 0;
    }
    if (more) {
        store_end(query);
    }
    return 0;
}

int
limit_rows_texts(struct store *store, const struct limit_texts *texts, int *count, int *same,
                 struct fault *fault)
{
    int numbers[2] = {0, 0};
    int rc = read_numbers(
        store,
        store_query(store,
                    "SELECT count(*), coalesce(sum(body IS ?2), 0) FROM"
                    " (SELECT body, received_utc_s FROM text WHERE sender = ?1 AND id < ?3"
                    " ORDER BY id DESC LIMIT ?5) WHERE received_utc_s >= ?4",
                    VALUES(words(texts->sender), words(texts->body), number(texts->text_id),
                           number(texts->since_utc_s), number(texts->most)),
                    fault),
        numbers, 2, fault);

    *count = numbers[0];
    *same = numbers[1];
    return rc;
}

int
limit_rows_replies(struct store *store, int64_t since_utc_s, int most, int *count,
                   struct fault *fault)
{
    return read_numbers(store,
                        store_query(store,
                                    "SELECT count(*) FROM (SELECT created_utc_s FROM outbox"
                                    " WHERE about = 'reply' AND text_id IS NOT NULL"
                                    " ORDER BY id DESC LIMIT ?2)"
                                    " WHERE created_utc_s >= ?1",
                                    VALUES(number(since_utc_s), number(most)), fault),
                        count, 1, fault);
}

int
limit_rows_is_ours(struct store *store, const char *phone, const char *body, int64_t since_utc_s,
                   bool *is_ours, struct fault *fault)
{
    int found = 0;
    int rc = read_numbers(
        store,
        store_query(store,
                    "SELECT EXISTS (SELECT 1 FROM (SELECT body, created_utc_s FROM outbox"
                    " WHERE recipient = ?1 ORDER BY id DESC LIMIT 50)"
                    " WHERE created_utc_s >= ?3 AND body = ?2)",
                    VALUES(words(phone), words(body), number(since_utc_s)), fault),
        &found, 1, fault);

    *is_ours = found != 0;
    return rc;
}

int
limit_rows_was_over(struct store *store, const char *phone, int64_t since_utc_s, bool *was_over,
                    struct fault *fault)
{
    int found = 0;
    int rc = read_numbers(
        store,
        store_query(store,
                    "SELECT EXISTS (SELECT 1 FROM limited WHERE phone = ? AND last_utc_s >= ?)",
                    VALUES(words(phone), number(since_utc_s)), fault),
        &found, 1, fault);

    *was_over = found != 0;
    return rc;
}

int
limit_rows_over(struct store *store, const char *phone, int64_t now_utc_s, bool is_new,
                struct fault *fault)
{
    return store_do(store,
                    "INSERT INTO limited (phone, since_utc_s, last_utc_s) VALUES (?1, ?2, ?2)"
                    " ON CONFLICT (phone) DO UPDATE SET last_utc_s = ?2,"
                    " since_utc_s = CASE WHEN ?3 THEN ?2 ELSE since_utc_s END",
                    VALUES(words(phone), number(now_utc_s), number(is_new)), fault);
}
