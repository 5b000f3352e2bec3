#include "outbox_rows.h"

#include <string.h>

#include <sodium.h>

#include "memory.h"
#include "store_sql.h"

static const char *const about_names[] = {[OUTBOX_REPLY] = "reply", [OUTBOX_ALERT] = "alert"};

/* What an event does to the row's place in the two lists of what is still to come. */
struct event_rule {
    const char *name;
    bool settles;  /* nothing more is to be sent */
    bool confirms; /* nothing more is expected of the gateway */
};

static const struct event_rule event_rules[] = {
    [OUTBOX_TRIED_AGAIN_LATER] = {"tried", false, false},
    [OUTBOX_ACCEPTED] = {"accepted", true, false},
    [OUTBOX_DELIVERED] = {"delivered", true, true},
    [OUTBOX_UNDELIVERED] = {"undelivered", true, true},
    [OUTBOX_REFUSED] = {"refused", true, false},
    [OUTBOX_GIVEN_UP] = {"given-up", true, false},
    [OUTBOX_REPLACED] = {"replaced", true, false},
    [OUTBOX_NOT_CONFIRMED] = {"not-confirmed", false, true},
};

static void
make_key(char *key, size_t size)
{
    unsigned char random[16];

    randombytes_buf(random, sizeof(random));
    sodium_bin2hex(key, size, random, sizeof(random));
}

int
outbox_rows_add(struct store *store, const struct outbox_new *row, int64_t *id, struct fault *fault)
{
    char key[33];

    make_key(key, sizeof(key));
    if (store_do(store,
                 "INSERT INTO outbox (about, text_id, verdict_id, alert_number, gateway, recipient,"
                 " body, key, urgency, created_utc_s, expires_utc_s, give_up_utc_s, road,"
                 " call_event_id) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                 VALUES(words(about_names[row->about]), number_or_null(row->text_id),
                        number_or_null(row->verdict_id), number_or_null(row->alert_id),
                        words(row->gateway), words(row->to), words(row->body), words(key),
                        number(row->urgency), number(row->now_utc_s), number(row->expires_utc_s),
                        number(row->give_up_utc_s), words(road_name(row->road)),
                        number_or_null(row->call_id)),
                 fault) != 0) {
        return -1;
    }
    *id = store_last_id(store);
    return store_do(
        store,
        "INSERT INTO outbox_due (outbox_id, urgency, attempts, next_utc_s)"
        " VALUES (?, ?, 0, ?)",
        VALUES(number(*id), number(row->urgency),
               number(row->start_utc_s > row->now_utc_s ? row->start_utc_s : row->now_utc_s)),
        fault);
}

/* Clock times in a reply are wrong once the clock was stepped: it is worked out anew. */
#define EXPIRES                                                                                    \
    "CASE WHEN o.expires_utc_s > 0 AND coalesce(d.stepped_s, 0) <> 0 THEN 1"                       \
    " ELSE o.expires_utc_s END"

#define ROW_COLUMNS                                                                                \
    "o.id, o.about, o.text_id, o.verdict_id, o.alert_number, o.gateway, o.recipient,"              \
    " coalesce(o.body, ''), o.key, o.urgency, o.created_utc_s, " EXPIRES ","                       \
    " o.give_up_utc_s + coalesce(d.stepped_s, 0),"                                                 \
    " d.attempts, d.next_utc_s, o.road, o.call_event_id"

static void
read_row(void *arena, sqlite3_stmt *query, struct outbox_row *row)
{
    bool is_alert = strcmp((const char *)sqlite3_column_text(query, 1), "alert") == 0;

    *row = (struct outbox_row){.id = sqlite3_column_int64(query, 0),
                               .about = is_alert ? OUTBOX_ALERT : OUTBOX_REPLY,
                               .text_id = sqlite3_column_int64(query, 2),
                               .verdict_id = sqlite3_column_int64(query, 3),
                               .alert_id = sqlite3_column_int64(query, 4),
                               .gateway = column_text(arena, query, 5),
                               .to = column_text(arena, query, 6),
                               .body = column_text(arena, query, 7),
                               .key = column_text(arena, query, 8),
                               .urgency = (enum urgency)sqlite3_column_int(query, 9),
                               .created_utc_s = sqlite3_column_int64(query, 10),
                               .expires_utc_s = sqlite3_column_int64(query, 11),
                               .give_up_utc_s = sqlite3_column_int64(query, 12),
                               .attempts = sqlite3_column_int(query, 13),
                               .next_utc_s = sqlite3_column_int64(query, 14),
                               .road = road_named((const char *)sqlite3_column_text(query, 15)),
                               .call_id = sqlite3_column_int64(query, 16)};
}

static int
read_rows(struct store *store, void *arena, sqlite3_stmt *query, struct outbox_row **rows,
          size_t *count, struct fault *fault)
{
    struct outbox_row *list = NULL;
    size_t used = 0;
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    while (more) {
        list = memory_grow(arena, struct outbox_row, list, used);
        read_row(arena, query, &list[used++]);
        if (store_next(store, query, &more, fault) != 0) {
            return -1;
        }
    }
    *rows = list;
    *count = used;
    return 0;
}

/* The second text of a reply waits until the first is settled: what to do first is read first. */
#define IN_ITS_TURN                                                                                \
    " NOT EXISTS (SELECT 1 FROM outbox b JOIN outbox_due ON outbox_id = b.id"                      \
    " WHERE o.about = 'reply' AND b.about = 'reply' AND b.verdict_id = o.verdict_id"               \
    " AND b.recipient = o.recipient AND b.id < o.id)"

int
outbox_rows_due(struct store *store, void *arena, int64_t now_utc_s, size_t room,
                struct outbox_row **rows, size_t *count, struct fault *fault)
{
    return read_rows(
        store, arena,
        store_query(store,
                    "SELECT " ROW_COLUMNS " FROM outbox_due d"
                    " JOIN outbox o ON o.id = d.outbox_id WHERE d.next_utc_s <= ? AND" IN_ITS_TURN
                    " ORDER BY d.urgency, d.outbox_id LIMIT ?",
                    VALUES(number(now_utc_s), number((int64_t)room)), fault),
        rows, count, fault);
}

int
outbox_rows_next(struct store *store, int64_t *next_utc_s, struct fault *fault)
{
    return store_soonest(store,
                         "SELECT d.next_utc_s FROM outbox_due d JOIN outbox o ON o.id = d.outbox_id"
                         " WHERE" IN_ITS_TURN " ORDER BY d.next_utc_s LIMIT 1",
                         next_utc_s, fault);
}

int
outbox_rows_waiting(struct store *store, int64_t *count, int64_t *oldest_utc_s, struct fault *fault)
{
    sqlite3_stmt *query = store_query(store,
                                      "SELECT count(*), min(o.created_utc_s) FROM outbox_due d"
                                      " JOIN outbox o ON o.id = d.outbox_id",
                                      NULL, 0, fault);
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    *count = sqlite3_column_int64(query, 0);
    *oldest_utc_s = *count > 0 ? sqlite3_column_int64(query, 1) : INT64_MAX;
    store_end(query);
    return 0;
}

int
outbox_rows_result(struct store *store, const struct outbox_result *result, struct fault *fault)
{
    const struct event_rule *rule = &event_rules[result->event];
    struct value id = number(result->id);

    if (store_do(store,
                 "INSERT INTO outbox_event (outbox_id, event, at_utc_s, gateway_id, detail)"
                 " VALUES (?, ?, ?, ?, ?)",
                 VALUES(id, words(rule->name), number(result->now_utc_s), words(result->gateway_id),
                        words(result->detail)),
                 fault) != 0) {
        return -1;
    }
    if (rule->settles &&
        store_do(store, "DELETE FROM outbox_due WHERE outbox_id = ?", VALUES(id), fault) != 0) {
        return -1;
    }
    if (rule->confirms && store_do(store, "DELETE FROM outbox_unconfirmed WHERE outbox_id = ?",
                                   VALUES(id), fault) != 0) {
        return -1;
    }
    if (result->event == OUTBOX_TRIED_AGAIN_LATER) {
        return store_do(store,
                        "UPDATE outbox_due SET attempts = attempts + 1, next_utc_s = ?2"
                        " WHERE outbox_id = ?1",
                        VALUES(id, number(result->next_utc_s)), fault);
    }
    if (result->event == OUTBOX_ACCEPTED) {
        return store_do(store,
                        "INSERT OR IGNORE INTO outbox_unconfirmed (outbox_id, accepted_utc_s)"
                        " SELECT id, ?2 FROM outbox WHERE id = ?1 AND urgency = ?3"
                        " AND road = 'text'",
                        VALUES(id, number(result->now_utc_s), number(URGENCY_EMERGENCY)), fault);
    }
    return 0;
}

/* What a query of one number tells. */
static int
read_bool(struct store *store, sqlite3_stmt *query, bool *is_true, struct fault *fault)
{
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    *is_true = more && sqlite3_column_int(query, 0) != 0;
    if (more) {
        store_end(query);
    }
    return 0;
}

int
outbox_rows_is_news(struct store *store, int64_t id, enum outbox_event event, bool *is_news,
                    struct fault *fault)
{
    return read_bool(store,
                     store_query(store,
                                 "SELECT NOT EXISTS (SELECT 1 FROM outbox_event"
                                 " WHERE outbox_id = ? AND event IN (?, 'delivered'))",
                                 VALUES(number(id), words(event_rules[event].name)), fault),
                     is_news, fault);
}

int
outbox_rows_failed_once(struct store *store, const struct outbox_row *row, bool *once,
                        struct fault *fault)
{
    return read_bool(
        store,
        store_query(store,
                    "SELECT count(*) < 2 FROM outbox o JOIN outbox_event e ON e.outbox_id = o.id"
                    " WHERE (o.id = ?1 OR (o.verdict_id = ?2 AND o.about = 'reply'))"
                    " AND e.event IN ('undelivered', 'refused', 'given-up', 'not-confirmed')",
                    VALUES(number(row->id), number_or_null(row->verdict_id)), fault),
        once, fault);
}

int
outbox_rows_by_gateway_id(struct store *store, void *arena, enum road road, const char *gateway,
                          const char *gateway_id, struct outbox_row *row, bool *found,
                          struct fault *fault)
{
    sqlite3_stmt *query =
        store_query(store,
                    "SELECT " ROW_COLUMNS " FROM outbox o"
                    " LEFT JOIN outbox_due d ON d.outbox_id = o.id"
                    " WHERE o.id = coalesce((SELECT id FROM outbox WHERE key = ?1),"
                    " (SELECT max(e.outbox_id) FROM outbox_event e JOIN outbox s"
                    " ON s.id = e.outbox_id WHERE e.gateway_id = ?1 AND e.event = 'accepted'"
                    " AND s.gateway = ?2 AND s.road = ?3)) AND o.gateway = ?2 AND o.road = ?3",
                    VALUES(words(gateway_id), words(gateway), words(road_name(road))), fault);

    if (query == NULL || store_next(store, query, found, fault) != 0) {
        return -1;
    }
    if (*found) {
        read_row(arena, query, row);
        store_end(query);
    }
    return 0;
}

int
outbox_rows_call(struct store *store, int64_t call_id, const char *to, struct outbox_call *call,
                 struct fault *fault)
{
    sqlite3_stmt *query = store_query(
        store,
        "SELECT road, min(EXISTS (SELECT 1 FROM outbox_event e WHERE e.outbox_id = o.id AND"
        " e.event IN ('tried', 'undelivered', 'refused', 'given-up', 'not-confirmed')))"
        " FROM outbox o WHERE call_event_id = ? AND recipient = ? GROUP BY road",
        VALUES(number(call_id), words(to)), fault);
    bool more;

    *call = (struct outbox_call){0};
    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    while (more) {
        unsigned road = 1U << road_named((const char *)sqlite3_column_text(query, 0));

        call->used |= road;
        call->failed |= sqlite3_column_int(query, 1) != 0 ? road : 0;
        if (store_next(store, query, &more, fault) != 0) {
            return -1;
        }
    }
    return 0;
}

int
outbox_rows_quiet(struct store *store, int64_t alert_id, int64_t now_utc_s, struct fault *fault)
{
    struct value alert = number(alert_id);

    if (store_do(store,
                 "INSERT INTO outbox_event (outbox_id, event, at_utc_s) SELECT id, 'replaced', ?2"
                 " FROM outbox JOIN outbox_due d ON d.outbox_id = id"
                 " WHERE alert_number = ?1 AND call_event_id IS NOT NULL",
                 VALUES(alert, number(now_utc_s)), fault) != 0 ||
        store_do(store,
                 "DELETE FROM outbox_unconfirmed WHERE outbox_id IN (SELECT id FROM outbox"
                 " WHERE alert_number = ? AND call_event_id IS NOT NULL)",
                 VALUES(alert), fault) != 0) {
        return -1;
    }
    return store_do(store,
                    "DELETE FROM outbox_due WHERE outbox_id IN (SELECT id FROM outbox"
                    " WHERE alert_number = ? AND call_event_id IS NOT NULL)",
                    VALUES(alert), fault);
}

int
outbox_rows_drop_to(struct store *store, const char *to, enum urgency keep, int64_t now_utc_s,
                    struct fault *fault)
{
    if (store_do(store,
                 "INSERT INTO outbox_event (outbox_id, event, at_utc_s) SELECT o.id, 'replaced', ?3"
                 " FROM outbox o JOIN outbox_due d ON d.outbox_id = o.id"
                 " WHERE o.recipient = ?1 AND o.about <> 'alert' AND o.urgency > ?2",
                 VALUES(words(to), number(keep), number(now_utc_s)), fault) != 0) {
        return -1;
    }
    return store_do(store,
                    "DELETE FROM outbox_due WHERE outbox_id IN (SELECT id FROM outbox"
                    " WHERE recipient = ?1 AND about <> 'alert' AND urgency > ?2)",
                    VALUES(words(to), number(keep)), fault);
}

int
outbox_rows_is_dropped(struct store *store, int64_t id, bool *is_dropped, struct fault *fault)
{
    return read_bool(store,
                     store_query(store,
                                 "SELECT EXISTS (SELECT 1 FROM outbox_event WHERE outbox_id = ?"
                                 " AND event = 'replaced')",
                                 VALUES(number(id)), fault),
                     is_dropped, fault);
}

int
outbox_rows_unconfirmed(struct store *store, void *arena, int64_t before_utc_s,
                        struct outbox_row **rows, size_t *count, struct fault *fault)
{
    return read_rows(store, arena,
                     store_query(store,
                                 "SELECT " ROW_COLUMNS " FROM outbox_unconfirmed u"
                                 " JOIN outbox o ON o.id = u.outbox_id"
                                 " LEFT JOIN outbox_due d ON d.outbox_id = o.id"
                                 " WHERE u.accepted_utc_s < ?1 UNION ALL"
                                 " SELECT " ROW_COLUMNS " FROM outbox_due d"
                                 " JOIN outbox o ON o.id = d.outbox_id"
                                 " WHERE d.urgency = ?2 AND o.about = 'reply'"
                                 " AND o.created_utc_s + d.stepped_s < ?1 AND NOT EXISTS (SELECT 1"
                                 " FROM outbox_event e WHERE e.outbox_id = o.id"
                                 " AND e.event = 'not-confirmed') ORDER BY 1",
                                 VALUES(number(before_utc_s), number(URGENCY_EMERGENCY)), fault),
                     rows, count, fault);
}

int
outbox_rows_stale(struct store *store, void *arena, int64_t verdict_id, struct outbox_row **rows,
                  size_t *count, struct fault *fault)
{
    return read_rows(store, arena,
                     store_query(store,
                                 "SELECT " ROW_COLUMNS " FROM outbox o"
                                 " JOIN outbox_due d ON d.outbox_id = o.id"
                                 " WHERE o.verdict_id = ? AND o.expires_utc_s > 0 ORDER BY o.id",
                                 VALUES(number(verdict_id)), fault),
                     rows, count, fault);
}

int
outbox_rows_timeless(struct store *store, void *arena, int64_t text_id, struct outbox_row **rows,
                     size_t *count, struct fault *fault)
{
    return read_rows(store, arena,
                     store_query(store,
                                 "SELECT " ROW_COLUMNS " FROM outbox o"
                                 " LEFT JOIN outbox_due d ON d.outbox_id = o.id"
                                 " WHERE o.text_id = ? AND o.about = 'reply'"
                                 " AND o.verdict_id IS NOT NULL"
                                 " AND o.expires_utc_s = 0 ORDER BY o.id",
                                 VALUES(number(text_id)), fault),
                     rows, count, fault);
}
