#include "reminder_rows.h"

#include <string.h>

#include "memory.h"
#include "store_sql.h"

static const char *const kinds[] = {
    [REMINDER_OFFERED] = "offered", [REMINDER_RUNNING_OUT] = "running-out", [REMINDER_AT] = "at"};

static const char *const states[] = {[REMINDER_STATE_WAITS] = "waits",
                                     [REMINDER_STATE_OFF_CHARGE] = "off-charge",
                                     [REMINDER_STATE_OFF_RECORD] = "off-record",
                                     [REMINDER_STATE_SENT] = "sent",
                                     [REMINDER_STATE_LATE] = "late",
                                     [REMINDER_STATE_CANCELLED] = "cancelled"};

static enum reminder_kind
kind_named(const char *name)
{
    return strcmp(name, kinds[REMINDER_OFFERED]) == 0       ? REMINDER_OFFERED
           : strcmp(name, kinds[REMINDER_RUNNING_OUT]) == 0 ? REMINDER_RUNNING_OUT
                                                            : REMINDER_AT;
}

static enum reminder_state
state_named(const char *name)
{
    return strcmp(name, states[REMINDER_STATE_OFF_CHARGE]) == 0   ? REMINDER_STATE_OFF_CHARGE
           : strcmp(name, states[REMINDER_STATE_OFF_RECORD]) == 0 ? REMINDER_STATE_OFF_RECORD
                                                                  : REMINDER_STATE_WAITS;
}

/* ---- In -------------------------------------------------------------------------------------- */

static int
end_older_watch(struct store *store, const struct reminder_row *row, int64_t now_utc_s,
                struct fault *fault)
{
    return store_do(store,
                    "UPDATE reminder SET state = 'cancelled', reason = 'replaced',"
                    " next_utc_s = NULL, settled_utc_s = ?3 WHERE phone = ?1 AND rental_id = ?2"
                    " AND kind = 'running-out' AND next_utc_s IS NOT NULL",
                    VALUES(words(row->phone), words(row->reminder.rental_id), number(now_utc_s)),
                    fault);
}

int
reminder_rows_set(struct store *store, const struct reminder_row *row, int64_t now_utc_s,
                  struct fault *fault)
{
    const struct reminder *reminder = &row->reminder;
    bool is_offer = reminder->kind == REMINDER_OFFERED;

    if (reminder->kind == REMINDER_RUNNING_OUT &&
        end_older_watch(store, row, now_utc_s, fault) != 0) {
        return -1;
    }
    return store_do(
        store,
        "INSERT INTO reminder (phone, rental_id, kind, due_utc_s, ends_utc_s, as_of_utc_s, gateway,"
        " language, text_id, set_utc_s, state, next_utc_s)"
        " SELECT ?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12 WHERE NOT EXISTS"
        " (SELECT 1 FROM reminder WHERE phone = ?1 AND rental_id = ?2 AND kind = ?3"
        " AND due_utc_s = ?4 AND state = 'waits')",
        VALUES(words(row->phone), words(reminder->rental_id), words(kinds[reminder->kind]),
               number(reminder->due_utc_s), number(reminder->ends_utc_s),
               number(reminder->as_of_utc_s), words(row->gateway),
               words(language_code(row->language)), number(row->text_id), number(now_utc_s),
               words(is_offer ? "offered" : states[REMINDER_STATE_WAITS]),
               number_or_null(is_offer ? 0 : reminder->due_utc_s)),
        fault);
}

/* ---- Off ------------------------------------------------------------------------------------- */

int
reminder_rows_end_phone(struct store *store, const char *phone, const char *reason,
                        int64_t now_utc_s, struct fault *fault)
{
    return store_do(store,
                    "UPDATE reminder SET state = 'cancelled', reason = ?2, next_utc_s = NULL,"
                    " settled_utc_s = ?3 WHERE phone = ?1 AND next_utc_s IS NOT NULL",
                    VALUES(words(phone), words(reason), number(now_utc_s)), fault);
}

int
reminder_rows_end_rental(struct store *store, const char *rental_id, const char *reason,
                         int64_t now_utc_s, struct fault *fault)
{
    return store_do(store,
                    "UPDATE reminder SET state = 'cancelled', reason = ?2, next_utc_s = NULL,"
                    " settled_utc_s = ?3 WHERE rental_id = ?1 AND next_utc_s IS NOT NULL",
                    VALUES(words(rental_id), words(reason), number(now_utc_s)), fault);
}

int
reminder_rows_void(struct store *store, const char *rental_id, const char *told_by,
                   int64_t now_utc_s, struct fault *fault)
{
    enum reminder_state off =
        told_by == NULL ? REMINDER_STATE_OFF_RECORD : REMINDER_STATE_OFF_CHARGE;

    if (store_do(store,
                 "UPDATE reminder SET state = 'cancelled', reason = 'charge', next_utc_s = NULL,"
                 " settled_utc_s = ?3 WHERE rental_id = ?1 AND phone = ?2"
                 " AND kind = 'running-out' AND next_utc_s IS NOT NULL",
                 VALUES(words(rental_id), words(told_by), number(now_utc_s)), fault) != 0) {
        return -1;
    }
    return store_do(store,
                    "UPDATE reminder SET state = ?2, next_utc_s = ?3 WHERE rental_id = ?1"
                    " AND kind = 'running-out' AND next_utc_s IS NOT NULL",
                    VALUES(words(rental_id), words(states[off]), number(now_utc_s)), fault);
}

int
reminder_rows_put_off(struct store *store, int64_t id, int64_t next_utc_s, struct fault *fault)
{
    return store_do(store, "UPDATE reminder SET next_utc_s = ?2 WHERE id = ?1",
                    VALUES(number(id), number(next_utc_s)), fault);
}

int
reminder_rows_settle(struct store *store, int64_t id, enum reminder_state state, const char *reason,
                     int64_t now_utc_s, struct fault *fault)
{
    return store_do(store,
                    "UPDATE reminder SET state = ?2, reason = ?3, next_utc_s = NULL,"
                    " settled_utc_s = ?4 WHERE id = ?1",
                    VALUES(number(id), words(states[state]), words(reason), number(now_utc_s)),
                    fault);
}

/* ---- Out ------------------------------------------------------------------------------------- */

static struct reminder
read_reminder(void *arena, sqlite3_stmt *query)
{
    return (struct reminder){.kind = kind_named((const char *)sqlite3_column_text(query, 0)),
                             .rental_id = column_text(arena, query, 1),
                             .due_utc_s = sqlite3_column_int64(query, 2),
                             .ends_utc_s = sqlite3_column_int64(query, 3),
                             .as_of_utc_s = sqlite3_column_int64(query, 4)};
}

struct reminder_list {
    void *arena;
    struct reminder *list;
    size_t count;
};

static void
take_reminder(sqlite3_stmt *query, void *into)
{
    struct reminder_list *found = into;

    found->list = memory_grow(found->arena, struct reminder, found->list, found->count);
    found->list[found->count++] = read_reminder(found->arena, query);
}

int
reminder_rows_of_phone(struct store *store, void *arena, const char *phone, int64_t text_id,
                       struct reminder **list, size_t *count, struct fault *fault)
{
    struct reminder_list found = {.arena = arena};
    int rc = store_each(
        store,
        store_query(store,
                    "SELECT kind, rental_id, due_utc_s, ends_utc_s, as_of_utc_s FROM reminder"
                    " WHERE phone = ? AND text_id < ? AND state IN ('offered', 'waits')"
                    " ORDER BY id",
                    VALUES(words(phone), number(text_id)), fault),
        take_reminder, &found, fault);

    if (rc == 0) {
        *list = found.list;
        *count = found.count;
    }
    return rc;
}

struct row_list {
    void *arena;
    struct reminder_row *list;
    size_t count;
};

static void
take_row(sqlite3_stmt *query, void *into)
{
    struct row_list *found = into;
    void *arena = found->arena;

    found->list = memory_grow(arena, struct reminder_row, found->list, found->count);
    found->list[found->count++] = (struct reminder_row){
        .reminder = read_reminder(arena, query),
        .id = sqlite3_column_int64(query, 5),
        .phone = column_text(arena, query, 6),
        .gateway = column_text(arena, query, 7),
        .language = language_named((const char *)sqlite3_column_text(query, 8)),
        .text_id = sqlite3_column_int64(query, 9),
        .state = state_named((const char *)sqlite3_column_text(query, 10)),
        .words = column_text(arena, query, 11)};
}

int
reminder_rows_due(struct store *store, void *arena, int64_t now_utc_s, struct reminder_row **rows,
                  size_t *count, struct fault *fault)
{
    struct row_list found = {.arena = arena};
    int rc = store_each(
        store,
        store_query(store,
                    "SELECT r.kind, r.rental_id, r.due_utc_s, r.ends_utc_s, r.as_of_utc_s, r.id,"
                    " r.phone, r.gateway, r.language, r.text_id, r.state, t.body FROM reminder r"
                    " JOIN text t ON t.id = r.text_id WHERE r.next_utc_s <= ?"
                    " ORDER BY r.next_utc_s, r.id",
                    VALUES(number(now_utc_s)), fault),
        take_row, &found, fault);

    if (rc == 0) {
        *rows = found.list;
        *count = found.count;
    }
    return rc;
}

int
reminder_rows_next(struct store *store, int64_t *next_utc_s, struct fault *fault)
{
    return store_soonest(store,
                         "SELECT next_utc_s FROM reminder WHERE next_utc_s IS NOT NULL"
                         " ORDER BY next_utc_s LIMIT 1",
                         next_utc_s, fault);
}
