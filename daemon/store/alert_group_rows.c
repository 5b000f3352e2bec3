#include "alert_group_rows.h"

#include "alert_sql.h"
#include "memory.h"
#include "store_sql.h"

int
alert_group_head(struct store *store, int64_t alert_number, int64_t *head, struct fault *fault)
{
    return store_number(store,
                        store_query(store, "SELECT coalesce(" HEAD_OF("?1") ", ?1)",
                                    VALUES(number(alert_number)), fault),
                        0, head, fault);
}

/* ---- In ------------------------------------------------------------------------------------- */

/* The mains failure to join, 0 if there is none. */
static int
find_head(struct store *store, int64_t alert_number, const struct alert_row *alert, int64_t *head,
          struct fault *fault)
{
    sqlite3_stmt *query = store_query(
        store,
        "SELECT d.alert_number FROM alert_due d WHERE d.group_number IS NULL AND d.level = 'urgent'"
        " AND d.area = ?2 COLLATE NOCASE AND d.alert_number <> ?1 AND EXISTS (SELECT 1"
        " FROM alert_due m WHERE coalesce(m.group_number, m.alert_number) = d.alert_number"
        " AND m.outage_utc_s >= ?3) AND EXISTS (SELECT 1 FROM alert_due o WHERE o.alert_number = ?1"
        " AND o.level = 'urgent' AND o.taken_by IS NULL AND o.group_number IS NULL)"
        " AND NOT EXISTS (SELECT 1 FROM alert_due o WHERE o.group_number = ?1)"
        " ORDER BY d.alert_number LIMIT 1",
        VALUES(number(alert_number), words(alert->area), number(alert->joins_since_utc_s)), fault);

    return store_number(store, query, 0, head, fault);
}

/* Whoever has the others has this one too, and they hear of it, but not of each at once. */
static int
add_to_head(struct store *store, int64_t alert_number, int64_t head, int64_t now_utc_s,
            struct fault *fault)
{
    if (store_do(store,
                 "UPDATE alert_due SET group_number = ?2, calls = 0, (taken_by, taken_utc_s) ="
                 " (SELECT h.taken_by, h.taken_utc_s FROM alert_due h WHERE h.alert_number = ?2)"
                 " WHERE alert_number = ?1",
                 VALUES(number(alert_number), number(head)), fault) != 0 ||
        store_do(store,
                 "INSERT INTO alert_event (alert_number, event, at_utc_s, level, reason, who)"
                 " SELECT alert_number, 'taken', ?2, level, reason, taken_by FROM alert_due"
                 " WHERE alert_number = ?1 AND taken_by IS NOT NULL",
                 VALUES(number(alert_number), number(now_utc_s)), fault) != 0) {
        return -1;
    }
    return alert_group_call_new(store, head, now_utc_s, fault);
}

int
alert_group_call_new(struct store *store, int64_t head, int64_t now_utc_s, struct fault *fault)
{
    return store_do(
        store,
        "UPDATE alert_due SET ring = 1, next_utc_s = min(next_utc_s, max(?2, coalesce((SELECT"
        " max(at_utc_s) FROM alert_event e WHERE e.alert_number = ?1"
        " AND e.event IN ('called', 'rechecked')) + ?3, ?2))) WHERE alert_number = ?1"
        " AND EXISTS (SELECT 1 FROM alert_due n WHERE n.group_number = ?1 AND n.calls = 0)",
        VALUES(number(head), number(now_utc_s), number(ALERT_GROUP_PAUSE_S)), fault);
}

int
alert_group_named(struct store *store, int64_t alert_number, struct fault *fault)
{
    return store_do(store,
                    "UPDATE alert_due SET calls = max(calls, 1)"
                    " WHERE coalesce(group_number, alert_number) = " HEAD_OF("?1"),
                    VALUES(number(alert_number)), fault);
}

int
alert_group_join(struct store *store, int64_t alert_number, const struct alert_row *alert,
                 int64_t now_utc_s, struct fault *fault)
{
    int64_t head;

    if (store_do(store,
                 "UPDATE alert_due SET area = ?2, outage_utc_s = ?3, runs_out_utc_s = ?4"
                 " WHERE alert_number = ?1 AND level = 'urgent'",
                 VALUES(number(alert_number), words(alert->area), number(now_utc_s),
                        number_or_null(alert->runs_out_utc_s)),
                 fault) != 0 ||
        find_head(store, alert_number, alert, &head, fault) != 0) {
        return -1;
    }
    return head != 0 ? add_to_head(store, alert_number, head, now_utc_s, fault) : 0;
}

int
alert_group_runs_out(struct store *store, const char *rental_id, int64_t runs_out_utc_s,
                     struct fault *fault)
{
    return store_do(store,
                    "UPDATE alert_due SET runs_out_utc_s = ?2"
                    " WHERE rental_id = ?1 AND area IS NOT NULL",
                    VALUES(words(rental_id), number_or_null(runs_out_utc_s)), fault);
}

/* ---- Out ------------------------------------------------------------------------------------ */

/* The first that has joined this one; 0 if none has. */
static int
find_next(struct store *store, int64_t head, int64_t *next, struct fault *fault)
{
    sqlite3_stmt *query = store_query(
        store, "SELECT coalesce(min(alert_number), 0) FROM alert_due WHERE group_number = ?",
        VALUES(number(head)), fault);

    return store_number(store, query, 0, next, fault);
}

/* Since when the alert of this number has its level. */
#define LEVEL_UTC_S(number)                                                                        \
    "(SELECT e.at_utc_s + l.stepped_s FROM alert_due l JOIN alert_event e ON e.id ="               \
    " (SELECT max(id) FROM alert_event WHERE alert_number = l.alert_number"                        \
    " AND event IN ('opened', 'raised')) WHERE l.alert_number = " number ")"

/* Those who wait have waited as long as the one that goes: who is called does not begin anew. */
static int
age(struct store *store, int64_t old_head, int64_t new_head, struct fault *fault)
{
    return store_do(store,
                    "UPDATE alert_due SET stepped_s = stepped_s + min(0, " LEVEL_UTC_S(
                        "?1") " - " LEVEL_UTC_S("?2") ") WHERE alert_number = ?2",
                    VALUES(number(old_head), number(new_head)), fault);
}

/* The next of them is the head, with the times of the one that goes. */
static int
promote(struct store *store, int64_t old_head, int64_t new_head, struct fault *fault)
{
    if (age(store, old_head, new_head, fault) != 0 ||
        store_do(store,
                 "UPDATE alert_due SET (next_utc_s, ring, offered_to, offer_ends_utc_s) ="
                 " (SELECT h.next_utc_s, h.ring, h.offered_to, h.offer_ends_utc_s"
                 " FROM alert_due h WHERE h.alert_number = ?1) WHERE alert_number = ?2",
                 VALUES(number(old_head), number(new_head)), fault) != 0) {
        return -1;
    }
    return store_do(store,
                    "UPDATE alert_due SET group_number = nullif(?2, alert_number)"
                    " WHERE group_number = ?1",
                    VALUES(number(old_head), number(new_head)), fault);
}

int
alert_group_leave(struct store *store, int64_t alert_number, struct fault *fault)
{
    int64_t next;

    if (find_next(store, alert_number, &next, fault) != 0 ||
        (next != 0 && promote(store, alert_number, next, fault) != 0)) {
        return -1;
    }
    return store_do(store,
                    "UPDATE alert_due SET group_number = NULL, area = NULL, outage_utc_s = NULL,"
                    " next_utc_s = coalesce((SELECT h.next_utc_s FROM alert_due h"
                    " WHERE h.alert_number = alert_due.group_number), next_utc_s)"
                    " WHERE alert_number = ?",
                    VALUES(number(alert_number)), fault);
}

/* ---- Reading -------------------------------------------------------------------------------- */

int
alert_group_renters(struct store *store, void *arena, int64_t head, struct alert_renter **renters,
                    size_t *count, struct fault *fault)
{
    sqlite3_stmt *query = store_query(
        store,
        "SELECT d.alert_number, d.rental_id, d.phone, json_extract(s.json, '$.first_name'),"
        " json_extract(s.json, '$.place'), d.brief, d.runs_out_utc_s, d.told_utc_s, d.calls FROM "
        "alert_due d"
        " LEFT JOIN rental_row r"
        " ON r.id = (SELECT max(id) FROM rental_row WHERE rental_id = d.rental_id)"
        " LEFT JOIN rental_snapshot s ON s.digest = r.digest"
        " WHERE d.alert_number = ?1 OR d.group_number = ?1"
        " ORDER BY coalesce(d.runs_out_utc_s, 0), d.alert_number",
        VALUES(number(head)), fault);
    bool more;

    *renters = NULL;
    *count = 0;
    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    while (more) {
        *renters = memory_grow(arena, struct alert_renter, *renters, *count);
        (*renters)[(*count)++] =
            (struct alert_renter){.number = sqlite3_column_int64(query, 0),
                                  .rental_id = column_text(arena, query, 1),
                                  .phone = column_text(arena, query, 2),
                                  .first_name = column_text(arena, query, 3),
                                  .place = column_text(arena, query, 4),
                                  .brief = column_text(arena, query, 5),
                                  .runs_out_utc_s = sqlite3_column_int64(query, 6),
                                  .told_utc_s = sqlite3_column_int64(query, 7),
                                  .is_new = sqlite3_column_int64(query, 8) == 0};
        if (store_next(store, query, &more, fault) != 0) {
            return -1;
        }
    }
    return 0;
}
