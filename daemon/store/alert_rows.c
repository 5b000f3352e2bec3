#include "alert_rows.h"

#include <string.h>

#include "alert_group_rows.h"
#include "alert_sql.h"
#include "memory.h"
#include "rental_sql.h"
#include "store_sql.h"
#include "verdict.h"

enum { REASONS_ROOM_MIN = 40 }; /* beside how the renter can be reached */

enum alert_level
alert_level_named(const char *name)
{
    int level;

    for (level = ALERT_EMERGENCY; level > ALERT_NONE; level--) {
        if (strcmp(alert_level_name((enum alert_level)level), name) == 0) {
            return (enum alert_level)level;
        }
    }
    return ALERT_NONE;
}

/* ---- Opening ------------------------------------------------------------------------------- */

/* What is already open for the same rental or stranger. */
struct standing {
    bool found, reason_known;
    bool is_apart; /* urgent or graver, and not for a mains failure alone */
    int64_t number;
    enum alert_level level;
    const char *brief;
};

static int
find_rental(struct store *store, void *arena, const struct alert_row *alert, const char **rental_id,
            struct fault *fault)
{
    sqlite3_stmt *query;
    bool more;

    *rental_id = alert->rental_id;
    if (alert->rental_id != NULL || alert->text_id == 0) {
        return 0;
    }
    query = store_query(store,
                        "SELECT rental_id FROM verdict WHERE text_id = ? ORDER BY id DESC LIMIT 1",
                        VALUES(number(alert->text_id)), fault);
    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    if (more) {
        *rental_id = column_text(arena, query, 0);
        store_end(query);
    }
    return 0;
}

static int
find_standing(struct store *store, void *arena, const struct alert_row *alert,
              const char *rental_id, struct standing *standing, struct fault *fault)
{
    sqlite3_stmt *query = store_query(
        store,
        "SELECT alert_number, level, EXISTS (SELECT 1 FROM alert_event e"
        " WHERE e.alert_number = d.alert_number AND e.reason = ?3), area IS NULL, brief FROM "
        "alert_due d"
        " WHERE CASE WHEN ?1 IS NULL THEN rental_id IS NULL AND phone = ?2 ELSE rental_id = ?1 END",
        VALUES(words(rental_id), words(alert->phone), words(alert->reason)), fault);

    if (query == NULL || store_next(store, query, &standing->found, fault) != 0) {
        return -1;
    }
    if (standing->found) {
        standing->number = sqlite3_column_int64(query, 0);
        standing->level = alert_level_named((const char *)sqlite3_column_text(query, 1));
        standing->reason_known = sqlite3_column_int(query, 2) != 0;
        standing->is_apart = standing->level >= ALERT_URGENT && sqlite3_column_int(query, 3) != 0;
        standing->brief = column_text(arena, query, 4);
        store_end(query);
    }
    return 0;
}

static int
add_event(struct store *store, int64_t alert_number, enum alert_event event,
          const struct alert_row *alert, int64_t now_utc_s, struct fault *fault)
{
    return store_do(
        store,
        "INSERT INTO alert_event (alert_number, event, at_utc_s, level, reason, text_id)"
        " VALUES (?, ?, ?, ?, ?, ?)",
        VALUES(number(alert_number), words(alert_event_name(event)), number(now_utc_s),
               words(alert_level_name(alert->level)), words(alert->reason),
               number_or_null(alert->text_id)),
        fault);
}

static int
open_new(struct store *store, const struct alert_row *alert, const char *rental_id,
         int64_t now_utc_s, int64_t *alert_number, struct fault *fault)
{
    if (store_do(store,
                 "INSERT INTO alert (rental_id, phone, text_id, opened_utc_s) VALUES (?, ?, ?, ?)",
                 VALUES(words(rental_id), words(alert->phone), number_or_null(alert->text_id),
                        number(now_utc_s)),
                 fault) != 0) {
        return -1;
    }
    *alert_number = store_last_id(store);
    if (store_do(store,
                 "INSERT INTO alert_due (alert_number, rental_id, phone, level, reason, brief,"
                 " calls, next_utc_s, ring) VALUES (?, ?, ?, ?, ?, ?, 0, ?, ?)",
                 VALUES(number(*alert_number), words(rental_id), words(alert->phone),
                        words(alert_level_name(alert->level)), words(alert->reason),
                        words(alert->brief), number(alert->next_utc_s), number(alert->ring)),
                 fault) != 0) {
        return -1;
    }
    return add_event(store, *alert_number, ALERT_OPENED, alert, now_utc_s, fault);
}

/* Nobody is called again about an office alert by itself, so each further text does, now and then.
 */
static int
bring_forward_for(struct store *store, const struct standing *standing,
                  const struct alert_row *alert, struct fault *fault)
{
    if (alert->level > standing->level || !standing->reason_known) {
        return alert_rows_bring_forward(store, standing->number, alert->next_utc_s, fault);
    }
    if (standing->level != ALERT_OFFICE) {
        return 0;
    }
    return store_do(
        store,
        "UPDATE alert_due SET next_utc_s = min(next_utc_s, max(?2, coalesce((SELECT"
        " max(at_utc_s) FROM alert_event e WHERE e.alert_number = ?1"
        " AND e.event IN ('called', 'rechecked')) + ?3, ?2))) WHERE alert_number = ?1",
        VALUES(number(standing->number), number(alert->next_utc_s), number(ALERT_OFFICE_PAUSE_S)),
        fault);
}

static bool
names(const char *brief, const char *reason)
{
    size_t length = strlen(reason);
    const char *at;

    for (at = strstr(brief, reason); at != NULL; at = strstr(at + 1, reason)) {
        bool begins = at == brief || (at - brief >= 3 && strncmp(at - 3, " + ", 3) == 0);

        if (begins && (at[length] == '\0' || strncmp(at + length, "; ", 2) == 0 ||
                       strncmp(at + length, " + ", 3) == 0)) {
            return true;
        }
    }
    return false;
}

/* Cuts off whole reasons at the end, or words if there is only one. */
static void
cut_to_fit(char *reasons, ptrdiff_t room)
{
    const char *const ends[] = {" + ", " "};
    char *at, *end = NULL;
    size_t i;

    if ((ptrdiff_t)strlen(reasons) <= room) {
        return;
    }
    for (i = 0; i < 2 && end == NULL; i++) {
        for (at = strstr(reasons, ends[i]); at != NULL && at - reasons <= room;
             at = strstr(at + 1, ends[i])) {
            end = at;
        }
    }
    if (end != NULL) {
        *end = '\0';
    }
}

/* Both, cut to fit; how the renter can be reached ("; never ring, text") is not cut off. */
static char *
brief_of_both(void *arena, const char *first, const char *second)
{
    char *brief = memory_format(arena, "%s + %s", first, second);
    char *note = strstr(brief, "; "), *behind;
    ptrdiff_t length = 0;

    if (strlen(brief) <= ALERT_BRIEF_MAX || note == NULL) {
        cut_to_fit(brief, ALERT_BRIEF_MAX);
        return brief;
    }
    behind = strstr(note, " + ");
    length = behind == NULL ? (ptrdiff_t)strlen(note) : behind - note;
    first = memory_format(arena, "%.*s", (int)length, note);
    brief = memory_format(arena, "%.*s%s", (int)(note - brief), brief, note + length);
    length = ALERT_BRIEF_MAX - length;
    cut_to_fit(brief, length < REASONS_ROOM_MIN ? REASONS_ROOM_MIN : length);
    return memory_format(arena, "%s%s", brief, first);
}

/* What staff are told grows with each new reason: in front, for the old one they have heard, unless
 * it is the lesser of the two. */
static int
say_too(struct store *store, const struct standing *standing, const struct alert_row *alert,
        struct fault *fault)
{
    bool in_front = alert->level >= standing->level;
    void *arena;
    char *brief;
    int rc;

    if (names(standing->brief, alert->brief)) {
        return 0;
    }
    arena = memory_must(talloc_new(NULL));
    brief = brief_of_both(arena, in_front ? alert->brief : standing->brief,
                          in_front ? standing->brief : alert->brief);
    rc = store_do(store, "UPDATE alert_due SET brief = ?2 WHERE alert_number = ?1",
                  VALUES(number(standing->number), words(brief)), fault);
    talloc_free(arena);
    return rc;
}

static int
add_to(struct store *store, const struct standing *standing, const struct alert_row *alert,
       int64_t now_utc_s, struct fault *fault)
{
    bool is_graver = alert->level > standing->level;
    bool is_more = is_graver || (alert->level == ALERT_URGENT && !standing->reason_known);

    if (is_more && alert->area == NULL && alert_group_leave(store, standing->number, fault) != 0) {
        return -1;
    }
    if (is_graver &&
        store_do(store,
                 "UPDATE alert_due SET level = ?2, reason = ?3, stepped_s = 0, told_utc_s = NULL"
                 " WHERE alert_number = ?1",
                 VALUES(number(standing->number), words(alert_level_name(alert->level)),
                        words(alert->reason)),
                 fault) != 0) {
        return -1;
    }
    if (say_too(store, standing, alert, fault) != 0 ||
        (alert->ring && store_do(store, "UPDATE alert_due SET ring = 1 WHERE alert_number = ?",
                                 VALUES(number(standing->number)), fault) != 0)) {
        return -1;
    }
    if (bring_forward_for(store, standing, alert, fault) != 0) {
        return -1;
    }
    return add_event(store, standing->number, is_graver ? ALERT_RAISED : ALERT_ADDED, alert,
                     now_utc_s, fault);
}

int
alert_rows_bring_forward(struct store *store, int64_t alert_number, int64_t next_utc_s,
                         struct fault *fault)
{
    return store_do(store,
                    "UPDATE alert_due SET next_utc_s = min(next_utc_s, ?2)"
                    " WHERE alert_number = " HEAD_OF("?1"),
                    VALUES(number(alert_number), number(next_utc_s)), fault);
}

int
alert_rows_open(struct store *store, const struct alert_row *alert, int64_t now_utc_s,
                int64_t *alert_number, bool *is_new, struct fault *fault)
{
    void *arena = memory_must(talloc_new(NULL));
    struct standing standing;
    const char *rental_id;
    int rc = -1;

    if (find_rental(store, arena, alert, &rental_id, fault) != 0 ||
        find_standing(store, arena, alert, rental_id, &standing, fault) != 0) {
        goto out;
    }
    *is_new = !standing.found;
    if (standing.found) {
        *alert_number = standing.number;
        rc = add_to(store, &standing, alert, now_utc_s, fault);
    } else {
        rc = open_new(store, alert, rental_id, now_utc_s, alert_number, fault);
    }
    if (rc == 0 && alert->area != NULL && !(standing.found && standing.is_apart)) {
        rc = alert_group_join(store, *alert_number, alert, now_utc_s, fault);
    }
out:
    talloc_free(arena);
    return rc;
}

int
alert_rows_attach(struct store *store, const char *phone, const char *rental_id,
                  struct fault *fault)
{
    return store_do(store,
                    "UPDATE OR IGNORE alert_due SET rental_id = ?2"
                    " WHERE phone = ?1 AND rental_id IS NULL",
                    VALUES(words(phone), words(rental_id)), fault);
}

/* ---- Reading ------------------------------------------------------------------------------- */

static void
read_row(void *arena, sqlite3_stmt *query, struct alert_row *row)
{
    *row = (struct alert_row){
        .number = sqlite3_column_int64(query, 0),
        .level = alert_level_named((const char *)sqlite3_column_text(query, 1)),
        .rental_id = column_text(arena, query, 2),
        .phone = column_text(arena, query, 3),
        .reason = column_text(arena, query, 4),
        .brief = column_text(arena, query, 5),
        .text_id = sqlite3_column_int64(query, 6),
        .level_utc_s = sqlite3_column_int64(query, 7),
        .taken_by = column_text(arena, query, 8),
        .taken_utc_s = sqlite3_column_int64(query, 9),
        .calls = sqlite3_column_int(query, 10),
        .next_utc_s = sqlite3_column_int64(query, 11),
        .first_name = column_text(arena, query, 12),
        .place = column_text(arena, query, 13),
        .people_called = (size_t)sqlite3_column_int64(query, 14),
        .ring = sqlite3_column_int(query, 15) != 0,
        .offered_to = column_text(arena, query, 16),
        .offer_ends_utc_s = sqlite3_column_int64(query, 17),
        .area = column_text(arena, query, 18),
        .runs_out_utc_s = sqlite3_column_int64(query, 19),
        .told_utc_s = sqlite3_column_int64(query, 20),
    };
}

/* Whole rows of alert_due, with what the current record says of the renter. */
#define ROWS                                                                                       \
    "SELECT d.alert_number, d.level, d.rental_id, d.phone, d.reason, d.brief, a.text_id,"          \
    " level.at_utc_s + d.stepped_s, d.taken_by, d.taken_utc_s, d.calls, d.next_utc_s,"             \
    " json_extract(s.json, '$.first_name'), json_extract(s.json, '$.place'),"                      \
    " (SELECT count(DISTINCT who) FROM alert_event e WHERE e.alert_number = d.alert_number"        \
    " AND e.event = 'called' AND e.id < level.id), d.ring, d.offered_to,"                          \
    " d.offer_ends_utc_s, d.area, d.runs_out_utc_s, d.told_utc_s"                                  \
    " FROM alert_due d JOIN alert a ON a.number = d.alert_number"                                  \
    " JOIN alert_event level ON level.id = (SELECT max(id) FROM alert_event e"                     \
    " WHERE e.alert_number = d.alert_number AND e.event IN ('opened', 'raised'))"                  \
    " LEFT JOIN rental_row r"                                                                      \
    " ON r.id = (SELECT max(id) FROM rental_row WHERE rental_id = d.rental_id)"                    \
    " LEFT JOIN rental_snapshot s ON s.digest = r.digest"

int
alert_rows_find(struct store *store, void *arena, int64_t alert_number, struct alert_row *row,
                bool *found, struct fault *fault)
{
    sqlite3_stmt *query =
        store_query(store, ROWS " WHERE d.alert_number = ?", VALUES(number(alert_number)), fault);

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
alert_rows_due(struct store *store, void *arena, int64_t now_utc_s, struct alert_row **rows,
               size_t *count, struct fault *fault)
{
    sqlite3_stmt *query = store_query(
        store,
        ROWS " WHERE d.next_utc_s <= ? AND d.group_number IS NULL"
             " ORDER BY CASE d.level WHEN 'emergency' THEN 0 WHEN 'urgent' THEN 1 ELSE 2 END,"
             " d.alert_number",
        VALUES(number(now_utc_s)), fault);
    struct alert_row *list = NULL;
    size_t used = 0;
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    while (more) {
        list = memory_grow(arena, struct alert_row, list, used);
        read_row(arena, query, &list[used++]);
        if (store_next(store, query, &more, fault) != 0) {
            return -1;
        }
    }
    *rows = list;
    *count = used;
    return 0;
}

int
alert_rows_next(struct store *store, int64_t *next_utc_s, struct fault *fault)
{
    return store_soonest(store,
                         "SELECT next_utc_s FROM alert_due WHERE group_number IS NULL"
                         " ORDER BY next_utc_s LIMIT 1",
                         next_utc_s, fault);
}

/* The current record says so of the phone that began the alert of alert_due. */
#define IS_LANDLINE                                                                                \
    "EXISTS (SELECT 1 FROM rental_row r JOIN rental_snapshot s ON s.digest = r.digest,"            \
    " json_each(s.json, '$.phones') p WHERE r.id = (SELECT max(id) FROM rental_row"                \
    " WHERE rental_id = alert_due.rental_id) AND json_extract(p.value, '$.number') ="              \
    " alert_due.phone AND json_extract(p.value, '$.reach') = 'landline')"

/* A renter's text, and not what staff did about it. */
#define IS_TOLD "e.event IN ('opened', 'raised', 'added')"

/* The row that the query of alert_rows_open_of() is at. */
static struct open_alert
open_alert_of(void *arena, sqlite3_stmt *query)
{
    return (struct open_alert){.number = sqlite3_column_int64(query, 0),
                               .level =
                                   alert_level_named((const char *)sqlite3_column_text(query, 1)),
                               .rental_id = column_text(arena, query, 2),
                               .phone = column_text(arena, query, 3),
                               .reason = column_text(arena, query, 4),
                               .brief = column_text(arena, query, 5),
                               .taken_by = column_text(arena, query, 6),
                               .opened_utc_s = sqlite3_column_int64(query, 7),
                               .reasons = column_text(arena, query, 8),
                               .offered_to = column_text(arena, query, 9),
                               .no_texts = sqlite3_column_int(query, 10) == 0,
                               .head = sqlite3_column_int64(query, 11),
                               .has_talk = sqlite3_column_int(query, 12) != 0,
                               .first_name = column_text(arena, query, 13),
                               .place = column_text(arena, query, 14),
                               .runs_out_utc_s = sqlite3_column_int64(query, 15),
                               .is_new = sqlite3_column_int(query, 16) != 0,
                               .grave_utc_s = sqlite3_column_int64(query, 17),
                               .grave_texts = column_text(arena, query, 18)};
}

int
alert_rows_open_of(struct store *store, void *arena, const char *phone, struct open_alert **alerts,
                   size_t *count, struct fault *fault)
{
    sqlite3_stmt *query = store_query(
        store,
        "SELECT alert_number, level, alert_due.rental_id, alert_due.phone, reason, brief,"
        " CASE WHEN " IS_LAPSED " THEN NULL ELSE taken_by END, a.opened_utc_s,"
        " (SELECT group_concat(reason) FROM (SELECT e.reason FROM alert_event e"
        " WHERE e.alert_number = alert_due.alert_number AND " IS_TOLD
        " GROUP BY e.reason ORDER BY max(e.id))),"
        " (SELECT h.offered_to FROM alert_due h WHERE h.alert_number ="
        " coalesce(alert_due.group_number, alert_due.alert_number)),"
        " coalesce((SELECT given FROM consent c WHERE c.phone = alert_due.phone"
        " ORDER BY c.id DESC LIMIT 1), 1) AND NOT " IS_LANDLINE ", coalesce(group_number,"
        " alert_number), EXISTS (SELECT 1 FROM talk WHERE talk.alert_number ="
        " alert_due.alert_number), json_extract(s.json, '$.first_name'),"
        " json_extract(s.json, '$.place'), coalesce(alert_due.runs_out_utc_s, 0),"
        " calls = 0,"
        " coalesce((SELECT max(at_utc_s) FROM alert_event e WHERE e.alert_number ="
        " alert_due.alert_number AND e.level = 'emergency' AND " IS_TOLD "), 0),"
        " (SELECT group_concat(t.body, char(10)) FROM alert_event e JOIN text t ON t.id = e.text_id"
        " WHERE e.alert_number = alert_due.alert_number AND e.level = 'emergency'"
        " AND e.reason GLOB 'sign:*' AND " IS_TOLD ")"
        " FROM alert_due JOIN alert a ON a.number = alert_due.alert_number"
        " LEFT JOIN rental_row r"
        " ON r.id = (SELECT max(id) FROM rental_row WHERE rental_id = alert_due.rental_id)"
        " LEFT JOIN rental_snapshot s ON s.digest = r.digest"
        " WHERE ?1 IS NULL OR alert_due.phone = ?1"
        " OR alert_due.rental_id IN (" RENTAL_IDS_OF_PHONE("?1") ") ORDER BY alert_number",
        VALUES(words(phone)), fault);
    struct open_alert *list = NULL;
    size_t used = 0;
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    while (more) {
        list = memory_grow(arena, struct open_alert, list, used);
        list[used++] = open_alert_of(arena, query);
        if (store_next(store, query, &more, fault) != 0) {
            return -1;
        }
    }
    *alerts = list;
    *count = used;
    return 0;
}

int
alert_rows_open_because(struct store *store, void *arena, const char *phone, const char *reason,
                        bool *is_so, struct fault *fault)
{
    struct open_alert *alerts;
    size_t count, i;

    *is_so = false;
    if (alert_rows_open_of(store, arena, phone, &alerts, &count, fault) != 0) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        *is_so = *is_so || strstr(alerts[i].reasons, reason) != NULL;
    }
    return 0;
}
