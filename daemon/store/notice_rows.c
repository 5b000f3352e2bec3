#include "notice_rows.h"

#include "memory.h"
#include "store_sql.h"

int
notice_rows_add(struct store *store, const struct notice_row *row, int64_t *number_out,
                struct fault *fault)
{
    if (store_do(store,
                 "INSERT INTO notice (at_utc_s, who, english, spanish, picked, urgent)"
                 " VALUES (?, ?, ?, ?, ?, ?)",
                 VALUES(number(row->at_utc_s), words(row->who), words(row->english),
                        words(row->spanish), words(row->picked), number(row->is_urgent)),
                 fault) != 0) {
        return -1;
    }
    *number_out = store_last_id(store);
    return 0;
}

int
notice_rows_add_phone(struct store *store, int64_t notice, const struct notice_phone *phone,
                      struct fault *fault)
{
    return store_do(store,
                    "INSERT INTO notice_phone (notice_number, rental_id, phone, hindrance,"
                    " outbox_id) VALUES (?, ?, ?, ?, ?)",
                    VALUES(number(notice), words(phone->rental_id), words(phone->phone),
                           words(phone->hindrance), number_or_null(phone->outbox_id)),
                    fault);
}

#define COLUMNS "number, at_utc_s, who, english, spanish, picked, urgent"

static struct notice_row
read_row(void *arena, sqlite3_stmt *query)
{
    return (struct notice_row){.number = sqlite3_column_int64(query, 0),
                               .at_utc_s = sqlite3_column_int64(query, 1),
                               .who = column_text(arena, query, 2),
                               .english = column_text(arena, query, 3),
                               .spanish = column_text(arena, query, 4),
                               .picked = column_text(arena, query, 5),
                               .is_urgent = sqlite3_column_int(query, 6) != 0};
}

int
notice_rows_all(struct store *store, void *arena, struct notice_row **rows, size_t *count,
                struct fault *fault)
{
    sqlite3_stmt *query =
        store_query(store, "SELECT " COLUMNS " FROM notice ORDER BY number DESC", NULL, 0, fault);
    struct notice_row *list = NULL;
    size_t used = 0;
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    while (more) {
        list = memory_grow(arena, struct notice_row, list, used);
        list[used++] = read_row(arena, query);
        if (store_next(store, query, &more, fault) != 0) {
            return -1;
        }
    }
    *rows = list;
    *count = used;
    return 0;
}

int
notice_rows_find(struct store *store, void *arena, int64_t notice, struct notice_row *row,
                 bool *found, struct fault *fault)
{
    sqlite3_stmt *query = store_query(store, "SELECT " COLUMNS " FROM notice WHERE number = ?",
                                      VALUES(number(notice)), fault);

    if (query == NULL || store_next(store, query, found, fault) != 0) {
        return -1;
    }
    if (*found) {
        *row = read_row(arena, query);
        store_end(query);
    }
    return 0;
}

/* An automatic answer of a phone is no answer of a person. */
static const char phones_sql[] =
    "SELECT p.rental_id, p.phone, p.hindrance, p.outbox_id,"
    " (SELECT event FROM outbox_event e WHERE e.outbox_id = p.outbox_id ORDER BY id DESC LIMIT 1),"
    " coalesce((SELECT next_utc_s FROM outbox_due d WHERE d.outbox_id = p.outbox_id), 0),"
    " coalesce((SELECT min(t.received_utc_s) FROM text t WHERE t.sender = p.phone"
    " AND t.received_utc_s >= (SELECT min(at_utc_s) FROM outbox_event e"
    " WHERE e.outbox_id = p.outbox_id AND event IN ('accepted', 'delivered'))"
    " AND NOT EXISTS (SELECT 1 FROM verdict v WHERE v.text_id = t.id"
    " AND (v.json LIKE '%\"id\":\"automatic-reply\"%' OR v.json LIKE '%\"id\":\"echo\"%'))), 0)"
    " FROM notice_phone p WHERE p.notice_number = ? ORDER BY p.id";

int
notice_rows_phones(struct store *store, void *arena, int64_t notice, struct notice_phone **phones,
                   size_t *count, struct fault *fault)
{
    sqlite3_stmt *query = store_query(store, phones_sql, VALUES(number(notice)), fault);
    struct notice_phone *list = NULL;
    size_t used = 0;
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    while (more) {
        list = memory_grow(arena, struct notice_phone, list, used);
        list[used++] = (struct notice_phone){.rental_id = column_text(arena, query, 0),
                                             .phone = column_text(arena, query, 1),
                                             .hindrance = column_text(arena, query, 2),
                                             .outbox_id = sqlite3_column_int64(query, 3),
                                             .event = column_text(arena, query, 4),
                                             .next_utc_s = sqlite3_column_int64(query, 5),
                                             .answered_utc_s = sqlite3_column_int64(query, 6)};
        if (store_next(store, query, &more, fault) != 0) {
            return -1;
        }
    }
    *phones = list;
    *count = used;
    return 0;
}

int
notice_rows_of_outbox(struct store *store, int64_t outbox_id, int64_t *notice, struct fault *fault)
{
    return store_number(store,
                        store_query(store,
                                    "SELECT notice_number FROM notice_phone WHERE outbox_id = ?",
                                    VALUES(number(outbox_id)), fault),
                        0, notice, fault);
}

int
notice_rows_texted(struct store *store, const char *phone, int64_t since_utc_s, int *count,
                   struct fault *fault)
{
    int64_t read;
    int rc = store_number(store,
                          store_query(store,
                                      "SELECT count(*) FROM notice_phone p JOIN notice n"
                                      " ON n.number = p.notice_number WHERE p.phone = ?"
                                      " AND p.outbox_id IS NOT NULL AND n.at_utc_s >= ?",
                                      VALUES(words(phone), number(since_utc_s)), fault),
                          0, &read, fault);

    *count = (int)read;
    return rc;
}
