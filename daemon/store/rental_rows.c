#include "rental_rows.h"

#include "memory.h"
#include "rental_sql.h"
#include "store_sql.h"

#define CURRENT_RENTALS                                                                            \
    "SELECT r.rental_id, r.digest, s.json FROM rental_row r"                                       \
    " JOIN rental_snapshot s ON s.digest = r.digest"                                               \
    " WHERE r.id IN (SELECT max(id) FROM rental_row GROUP BY rental_id) ORDER BY r.rental_id"

static int
is_current(struct store *store, const struct rental_row *row, bool *current, struct fault *fault)
{
    sqlite3_stmt *query = store_query(store,
                                      "SELECT 1 FROM rental_row WHERE digest = ?2 AND id ="
                                      " (SELECT max(id) FROM rental_row WHERE rental_id = ?1)",
                                      VALUES(words(row->rental_id), words(row->digest)), fault);

    if (query == NULL || store_next(store, query, current, fault) != 0) {
        return -1;
    }
    if (*current) {
        store_end(query);
    }
    return 0;
}

int
rental_rows_put(struct store *store, const struct rental_row *row, const char *const *phones,
                size_t phone_count, const char *source, int64_t now_utc_s, bool *changed,
                struct fault *fault)
{
    bool current;
    int64_t row_id;
    size_t i;

    *changed = false;
    if (is_current(store, row, &current, fault) != 0) {
        return -1;
    }
    if (current) {
        return 0;
    }
    if (store_do(store, "INSERT OR IGNORE INTO rental_snapshot (digest, json) VALUES (?, ?)",
                 VALUES(words(row->digest), words(row->json)), fault) != 0 ||
        store_do(
            store,
            "INSERT INTO rental_row (rental_id, digest, written_utc_s, source)"
            " VALUES (?, ?, ?, ?)",
            VALUES(words(row->rental_id), words(row->digest), number(now_utc_s), words(source)),
            fault) != 0) {
        return -1;
    }
    row_id = store_last_id(store);
    for (i = 0; i < phone_count; i++) {
        if (store_do(store, "INSERT INTO rental_phone (phone, rental_row_id) VALUES (?, ?)",
                     VALUES(words(phones[i]), number(row_id)), fault) != 0) {
            return -1;
        }
    }
    *changed = true;
    return 0;
}

/* Takes all rows of a query of rental_id, digest and json. */
static int
take_rows(struct store *store, void *arena, sqlite3_stmt *query, struct rental_row **rows,
          size_t *count, struct fault *fault)
{
    struct rental_row *list = NULL;
    size_t used = 0;
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    while (more) {
        list = memory_grow(arena, struct rental_row, list, used);
        list[used++] = (struct rental_row){.rental_id = column_text(arena, query, 0),
                                           .digest = column_text(arena, query, 1),
                                           .json = column_text(arena, query, 2)};
        if (store_next(store, query, &more, fault) != 0) {
            return -1;
        }
    }
    *rows = list;
    *count = used;
    return 0;
}

int
rental_rows_newest(struct store *store, void *arena, const char *rental_id, struct rental_row *row,
                   bool *found, struct fault *fault)
{
    sqlite3_stmt *query =
        store_query(store,
                    "SELECT r.rental_id, r.digest, s.json FROM rental_row r"
                    " JOIN rental_snapshot s ON s.digest = r.digest"
                    " WHERE r.id = (SELECT max(id) FROM rental_row WHERE rental_id = ?)",
                    VALUES(words(rental_id)), fault);
    struct rental_row *rows;
    size_t count;

    if (take_rows(store, arena, query, &rows, &count, fault) != 0) {
        return -1;
    }
    *found = count > 0;
    if (*found) {
        *row = rows[0];
    }
    return 0;
}

int
rental_rows_has_source(struct store *store, const char *rental_id, const char *source, bool *has,
                       struct fault *fault)
{
    sqlite3_stmt *query =
        store_query(store, "SELECT 1 FROM rental_row WHERE rental_id = ? AND source = ? LIMIT 1",
                    VALUES(words(rental_id), words(source)), fault);

    if (query == NULL || store_next(store, query, has, fault) != 0) {
        return -1;
    }
    if (*has) {
        store_end(query);
    }
    return 0;
}

int
rental_rows_link(struct store *store, const char *phone, const char *rental_id, bool linked,
                 const char *who, int64_t now_utc_s, struct fault *fault)
{
    return store_do(
        store,
        "INSERT INTO phone_link (phone, rental_id, linked, at_utc_s, who)"
        " VALUES (?, ?, ?, ?, ?)",
        VALUES(words(phone), words(rental_id), number(linked), number(now_utc_s), words(who)),
        fault);
}

int
rental_rows_linked(struct store *store, void *arena, const char *rental_id, const char ***phones,
                   size_t *count, struct fault *fault)
{
    sqlite3_stmt *query = store_query(
        store,
        "SELECT phone FROM phone_link pl WHERE rental_id = ? AND linked = 1 AND id ="
        " (SELECT max(id) FROM phone_link WHERE phone = pl.phone AND rental_id = pl.rental_id)"
        " ORDER BY id",
        VALUES(words(rental_id)), fault);
    bool more;

    *phones = NULL;
    *count = 0;
    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    while (more) {
        *phones = memory_grow(arena, const char *, *phones, *count);
        (*phones)[(*count)++] = column_text(arena, query, 0);
        if (store_next(store, query, &more, fault) != 0) {
            return -1;
        }
    }
    return 0;
}

int
rental_rows_of_phone(struct store *store, void *arena, const char *phone, struct rental_row **rows,
                     size_t *count, struct fault *fault)
{
    sqlite3_stmt *query = store_query(
        store,
        "SELECT r.rental_id, r.digest, s.json FROM rental_row r"
        " JOIN rental_snapshot s ON s.digest = r.digest"
        " WHERE r.rental_id IN (" RENTAL_IDS_OF_PHONE(
            "?1") ")"
                  " AND r.id = (SELECT max(id) FROM rental_row WHERE rental_id = r.rental_id)"
                  " ORDER BY r.rental_id",
        VALUES(words(phone)), fault);

    return take_rows(store, arena, query, rows, count, fault);
}

int
rental_rows_current(struct store *store, void *arena, struct rental_row **rows, size_t *count,
                    struct fault *fault)
{
    sqlite3_stmt *query = store_query(store, CURRENT_RENTALS, NULL, 0, fault);

    return take_rows(store, arena, query, rows, count, fault);
}

int
rental_rows_each(struct store *store,
                 int (*each)(void *data, const struct rental_row *row, struct fault *fault),
                 void *data, struct fault *fault)
{
    sqlite3_stmt *query = store_query(store, CURRENT_RENTALS, NULL, 0, fault);
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    while (more) {
        const struct rental_row row = {.rental_id = (const char *)sqlite3_column_text(query, 0),
                                       .digest = (const char *)sqlite3_column_text(query, 1),
                                       .json = (const char *)sqlite3_column_text(query, 2)};

        if (each(data, &row, fault) != 0) {
            store_end(query);
            return -1;
        }
        if (store_next(store, query, &more, fault) != 0) {
            return -1;
        }
    }
    return 0;
}

int
rental_rows_count(struct store *store, size_t *count, struct fault *fault)
{
    sqlite3_stmt *query =
        store_query(store, "SELECT count(DISTINCT rental_id) FROM rental_row", NULL, 0, fault);
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    *count = (size_t)sqlite3_column_int64(query, 0);
    store_end(query);
    return 0;
}
