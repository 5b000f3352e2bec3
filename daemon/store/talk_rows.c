#include "talk_rows.h"

#include <string.h>

#include "memory.h"
#include "store_sql.h"

/* A row as the newest one but for who has the conversation; the first one if there is none. */
static int
set_in_charge(struct store *store, const char *phone, const char *who, int64_t text_id,
              struct fault *fault)
{
    if (store_do(store,
                 "INSERT INTO conversation (phone, text_id, last_utc_s, question, asked_utc_s,"
                 " asked_text_id, asked_start, asked_length, choices, rental_id, in_charge)"
                 " SELECT phone, coalesce(?3, text_id), last_utc_s, question, asked_utc_s,"
                 " asked_text_id, asked_start, asked_length, choices, rental_id, ?2"
                 " FROM conversation WHERE id = (SELECT max(id) FROM conversation"
                 " WHERE phone = ?1) AND in_charge IS NOT ?2",
                 VALUES(words(phone), words(who), number_or_null(text_id)), fault) != 0) {
        return -1;
    }
    return store_do(store,
                    "INSERT INTO conversation (phone, text_id, last_utc_s, question, asked_utc_s,"
                    " choices, in_charge) SELECT ?1, ?3, 0, 'none', 0, '[]', ?2"
                    " WHERE ?3 IS NOT NULL AND NOT EXISTS (SELECT 1 FROM conversation"
                    " WHERE phone = ?1)",
                    VALUES(words(phone), words(who), number_or_null(text_id)), fault);
}

int
talk_rows_begin(struct store *store, const struct talk_row *row, int64_t text_id,
                struct fault *fault)
{
    if (store_do(store,
                 "INSERT INTO talk (phone, who, alert_number, due_utc_s) VALUES (?, ?, ?, ?)"
                 " ON CONFLICT (phone) DO UPDATE SET who = excluded.who,"
                 " alert_number = excluded.alert_number, due_utc_s = excluded.due_utc_s",
                 VALUES(words(row->phone), words(row->who), number(row->alert_number),
                        number(row->due_utc_s)),
                 fault) != 0) {
        return -1;
    }
    return set_in_charge(store, row->phone, row->who, text_id, fault);
}

int
talk_rows_wait(struct store *store, const char *phone, int64_t due_utc_s, struct fault *fault)
{
    return store_do(store, "UPDATE talk SET due_utc_s = min(due_utc_s, ?2) WHERE phone = ?1",
                    VALUES(words(phone), number(due_utc_s)), fault);
}

int
talk_rows_end(struct store *store, const char *phone, struct fault *fault)
{
    if (store_do(store, "DELETE FROM talk WHERE phone = ?", VALUES(words(phone)), fault) != 0) {
        return -1;
    }
    return set_in_charge(store, phone, NULL, 0, fault);
}

#define COLUMNS "SELECT phone, who, alert_number, due_utc_s FROM talk"

static struct talk_row
read_row(void *arena, sqlite3_stmt *query)
{
    return (struct talk_row){.phone = column_text(arena, query, 0),
                             .who = column_text(arena, query, 1),
                             .alert_number = sqlite3_column_int64(query, 2),
                             .due_utc_s = sqlite3_column_int64(query, 3)};
}

struct row_list {
    void *arena;
    struct talk_row *list;
    size_t count;
};

static void
take_row(sqlite3_stmt *query, void *into)
{
    struct row_list *found = into;

    found->list = memory_grow(found->arena, struct talk_row, found->list, found->count);
    found->list[found->count++] = read_row(found->arena, query);
}

static int
read_rows(struct store *store, void *arena, sqlite3_stmt *query, struct talk_row **rows,
          size_t *count, struct fault *fault)
{
    struct row_list found = {.arena = arena};
    int rc = store_each(store, query, take_row, &found, fault);

    if (rc == 0) {
        *rows = found.list;
        *count = found.count;
    }
    return rc;
}

int
talk_rows_find(struct store *store, void *arena, const char *phone, struct talk_row *row,
               bool *found, struct fault *fault)
{
    sqlite3_stmt *query =
        store_query(store, COLUMNS " WHERE phone = ?", VALUES(words(phone)), fault);

    if (query == NULL || store_next(store, query, found, fault) != 0) {
        return -1;
    }
    if (*found) {
        *row = read_row(arena, query);
        store_end(query);
    }
    return 0;
}

int
talk_rows_of_alert(struct store *store, void *arena, int64_t alert_number, struct talk_row **rows,
                   size_t *count, struct fault *fault)
{
    return read_rows(store, arena,
                     store_query(store, COLUMNS " WHERE alert_number = ? ORDER BY phone",
                                 VALUES(number(alert_number)), fault),
                     rows, count, fault);
}

int
talk_rows_due(struct store *store, void *arena, int64_t now_utc_s, struct talk_row **rows,
              size_t *count, struct fault *fault)
{
    return read_rows(store, arena,
                     store_query(store, COLUMNS " WHERE due_utc_s <= ? ORDER BY due_utc_s, phone",
                                 VALUES(number(now_utc_s)), fault),
                     rows, count, fault);
}

int
talk_rows_next(struct store *store, int64_t *next_utc_s, struct fault *fault)
{
    return store_soonest(store, "SELECT due_utc_s FROM talk ORDER BY due_utc_s LIMIT 1", next_utc_s,
                         fault);
}

int
talk_rows_renter(struct store *store, void *arena, const char *phone, struct talk_renter *renter,
                 struct fault *fault)
{
    sqlite3_stmt *query = store_query(
        store,
        "SELECT (SELECT gateway FROM text WHERE sender = ?1 ORDER BY id DESC LIMIT 1),"
        " (SELECT v.language FROM text t JOIN verdict v ON v.text_id = t.id WHERE t.sender = ?1"
        " ORDER BY t.id DESC, v.id DESC LIMIT 1), coalesce((SELECT given FROM consent"
        " WHERE phone = ?1 ORDER BY id DESC LIMIT 1), 1)",
        VALUES(words(phone)), fault);
    const char *language;
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    language = (const char *)sqlite3_column_text(query, 1);
    *renter = (struct talk_renter){
        .gateway = column_text(arena, query, 0),
        .language = language != NULL && strcmp(language, language_code(LANGUAGE_ES)) == 0
                        ? LANGUAGE_ES
                        : LANGUAGE_EN,
        .opted_out = sqlite3_column_int(query, 2) == 0};
    store_end(query);
    return 0;
}
