/* What happens to an alert once it is open: calls, hands, its end. */
#include "alert_rows.h"

#include "alert_group_rows.h"
#include "alert_sql.h"
#include "store_sql.h"

const char *
alert_event_name(enum alert_event event)
{
    static const char *const event_names[] = {
        [ALERT_OPENED] = "opened", [ALERT_RAISED] = "raised",   [ALERT_ADDED] = "added",
        [ALERT_CALLED] = "called", [ALERT_TAKEN] = "taken",     [ALERT_RECHECKED] = "rechecked",
        [ALERT_CLOSED] = "closed", [ALERT_OFFERED] = "offered", [ALERT_RELEASED] = "released",
    };

    return event_names[event];
}

/* Appends an event with the level and reason that an open alert has; *happened: it is open. */
static int
append(struct store *store, int64_t alert_number, enum alert_event event,
       const struct alert_hand *hand, const char *note, bool *happened, struct fault *fault)
{
    if (store_do(store,
                 "INSERT INTO alert_event (alert_number, event, at_utc_s, level, reason, who, note,"
                 " road) SELECT alert_number, ?2, ?3, level, reason, ?4, ?5, ?6 FROM alert_due"
                 " WHERE alert_number = ?1",
                 VALUES(number(alert_number), words(alert_event_name(event)),
                        number(hand->now_utc_s), words(hand->who), words(note), words(hand->road)),
                 fault) != 0) {
        return -1;
    }
    *happened = store_changes(store) == 1;
    return 0;
}

int
alert_rows_called(struct store *store, int64_t alert_number, enum alert_event event,
                  const char *who, int64_t now_utc_s, int64_t *call_id, struct fault *fault)
{
    const struct alert_hand hand = {.who = who, .now_utc_s = now_utc_s};
    bool is_open;

    if (append(store, alert_number, event, &hand, NULL, &is_open, fault) != 0) {
        return -1;
    }
    *call_id = is_open ? store_last_id(store) : 0;
    return store_do(store,
                    "UPDATE alert_due SET calls = calls + 1"
                    " WHERE alert_number = ?1 OR group_number = ?1",
                    VALUES(number(alert_number)), fault);
}

int
alert_rows_is_called_since(struct store *store, int64_t alert_number, const char *who,
                           int64_t call_id, bool *is_called, struct fault *fault)
{
    sqlite3_stmt *query =
        store_query(store,
                    "SELECT 1 FROM alert_event WHERE alert_number = ? AND who = ? AND id > ?"
                    " AND event IN ('called', 'rechecked') LIMIT 1",
                    VALUES(number(alert_number), words(who), number(call_id)), fault);

    if (query == NULL || store_next(store, query, is_called, fault) != 0) {
        return -1;
    }
    if (*is_called) {
        store_end(query);
    }
    return 0;
}

int
alert_rows_told(struct store *store, int64_t alert_number, int64_t now_utc_s, struct fault *fault)
{
    return store_do(store, "UPDATE alert_due SET told_utc_s = ?2 WHERE alert_number = ?1",
                    VALUES(number(alert_number), number(now_utc_s)), fault);
}

int
alert_rows_next_call(struct store *store, int64_t alert_number, int64_t next_utc_s,
                     struct fault *fault)
{
    return store_do(store, "UPDATE alert_due SET next_utc_s = ?2 WHERE alert_number = ?1",
                    VALUES(number(alert_number), number(next_utc_s)), fault);
}

int
alert_rows_call_again(struct store *store, int64_t alert_number, int64_t next_utc_s,
                      struct fault *fault)
{
    return store_do(
        store,
        "UPDATE alert_due SET next_utc_s = ?2"
        " WHERE alert_number = ?1 AND next_utc_s > ?3",
        VALUES(number(alert_number), number(next_utc_s), number(next_utc_s + ALERT_SOON_S)), fault);
}

/* The same person has all that are called with it. */
static int
taken_with(struct store *store, int64_t alert_number, const struct alert_hand *hand,
           struct fault *fault)
{
    if (store_do(store,
                 "UPDATE alert_due SET taken_by = ?2, taken_utc_s = ?3"
                 " WHERE group_number = " HEAD_OF("?1"),
                 VALUES(number(alert_number), words(hand->who), number(hand->now_utc_s)),
                 fault) != 0) {
        return -1;
    }
    return store_do(
        store,
        "INSERT INTO alert_event (alert_number, event, at_utc_s, level, reason, who,"
        " road) SELECT alert_number, 'taken', ?3, level, reason, ?2, ?4 FROM alert_due"
        " WHERE coalesce(group_number, alert_number) = " HEAD_OF("?1"),
        VALUES(number(alert_number), words(hand->who), number(hand->now_utc_s), words(hand->road)),
        fault);
}

int
alert_rows_take(struct store *store, int64_t alert_number, const struct alert_hand *hand,
                int64_t recheck_utc_s, bool *taken, struct fault *fault)
{
    if (store_do(
            store,
            "UPDATE alert_due SET taken_by = ?2, taken_utc_s = ?3, next_utc_s = ?4,"
            " offered_to = NULL, offer_ends_utc_s = NULL"
            " WHERE alert_number = " HEAD_OF(
                "?1") " AND (taken_by IS NULL OR taken_by = ?2 OR offered_to = ?2 OR " IS_LAPSED
                      ")",
            VALUES(number(alert_number), words(hand->who), number(hand->now_utc_s),
                   number(recheck_utc_s)),
            fault) != 0) {
        return -1;
    }
    *taken = store_changes(store) == 1;
    return *taken ? taken_with(store, alert_number, hand, fault) : 0;
}

int
alert_rows_offer(struct store *store, int64_t alert_number, const struct alert_hand *hand,
                 const char *to, int64_t ends_utc_s, struct fault *fault)
{
    const struct alert_hand offered = {.who = to, .road = hand->road, .now_utc_s = hand->now_utc_s};
    bool is_open;

    if (append(store, alert_number, ALERT_OFFERED, &offered, NULL, &is_open, fault) != 0) {
        return -1;
    }
    return store_do(store,
                    "UPDATE alert_due SET offered_to = ?2, offer_ends_utc_s = ?3,"
                    " next_utc_s = min(next_utc_s, ?3) WHERE alert_number = ?1",
                    VALUES(number(alert_number), words(to), number(ends_utc_s)), fault);
}

int
alert_rows_offer_over(struct store *store, int64_t alert_number, struct fault *fault)
{
    return store_do(store,
                    "UPDATE alert_due SET offered_to = NULL, offer_ends_utc_s = NULL"
                    " WHERE alert_number = ?1",
                    VALUES(number(alert_number)), fault);
}

int
alert_rows_release(struct store *store, int64_t alert_number, int64_t now_utc_s,
                   struct fault *fault)
{
    if (alert_group_leave(store, alert_number, fault) != 0 ||
        store_do(store,
                 "INSERT INTO alert_event (alert_number, event, at_utc_s, level, reason, who)"
                 " SELECT alert_number, 'released', ?2, level, reason, taken_by FROM alert_due"
                 " WHERE alert_number = ?1",
                 VALUES(number(alert_number), number(now_utc_s)), fault) != 0) {
        return -1;
    }
    return store_do(store,
                    "UPDATE alert_due SET taken_by = NULL, taken_utc_s = NULL, offered_to = NULL,"
                    " offer_ends_utc_s = NULL, next_utc_s = ?2 WHERE alert_number = ?1",
                    VALUES(number(alert_number), number(now_utc_s)), fault);
}

int
alert_rows_close(struct store *store, int64_t alert_number, const struct alert_hand *hand,
                 const char *note, bool *closed, struct fault *fault)
{
    if (append(store, alert_number, ALERT_CLOSED, hand, note, closed, fault) != 0 ||
        store_do(store,
                 "DELETE FROM answer_due WHERE EXISTS (SELECT 1 FROM alert_due d"
                 " WHERE d.alert_number = ? AND (d.phone = answer_due.phone"
                 " OR d.rental_id = answer_due.rental_id))",
                 VALUES(number(alert_number)), fault) != 0 ||
        alert_group_leave(store, alert_number, fault) != 0) {
        return -1;
    }
    return store_do(store, "DELETE FROM alert_due WHERE alert_number = ?",
                    VALUES(number(alert_number)), fault);
}
