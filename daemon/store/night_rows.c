#include "night_rows.h"

#include "memory.h"
#include "rental_sql.h"
#include "store_sql.h"

#define SPAN_OF_TEXTS                                                                              \
    "t.received_utc_s >= ?1 AND t.received_utc_s < ?2 AND (?3 IS NULL OR t.sender = ?3)"

/* Runs a query over a span and hands each row to `read`. */
static int
each_row(struct store *store, const char *sql, const struct night_span *span,
         void (*read)(void *list, sqlite3_stmt *query), void *list, struct fault *fault)
{
    sqlite3_stmt *query = store_query(
        store, sql,
        VALUES(number(span->since_utc_s), number(span->until_utc_s), words(span->phone)), fault);
    bool more;

    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    while (more) {
        read(list, query);
        if (store_next(store, query, &more, fault) != 0) {
            return -1;
        }
    }
    return 0;
}

struct texts {
    void *arena;
    struct night_text *list;
    size_t count;
};

static void
read_text(void *data, sqlite3_stmt *query)
{
    struct texts *texts = data;

    texts->list = memory_grow(texts->arena, struct night_text, texts->list, texts->count);
    texts->list[texts->count++] =
        (struct night_text){.id = sqlite3_column_int64(query, 0),
                            .sender = column_text(texts->arena, query, 1),
                            .body = column_text(texts->arena, query, 2),
                            .sent_utc_s = sqlite3_column_int64(query, 3),
                            .received_utc_s = sqlite3_column_int64(query, 4),
                            .route = column_text(texts->arena, query, 5),
                            .json = column_text(texts->arena, query, 6),
                            .first_name = column_text(texts->arena, query, 7),
                            .place = column_text(texts->arena, query, 8)};
}

int
night_rows_texts(struct store *store, void *arena, const struct night_span *span,
                 struct night_text **list, size_t *count, struct fault *fault)
{
    struct texts texts = {.arena = arena};
    int rc = each_row(store,
                      "SELECT t.id, t.sender, t.body, t.sent_utc_s, t.received_utc_s, v.route,"
                      " v.json, json_extract(s.json, '$.first_name'),"
                      " json_extract(s.json, '$.place') FROM text t LEFT JOIN verdict v"
                      " ON v.id = (SELECT max(id) FROM verdict WHERE text_id = t.id)"
                      " LEFT JOIN rental_snapshot s ON s.digest = v.rental_digest"
                      " WHERE " SPAN_OF_TEXTS " ORDER BY t.id",
                      span, read_text, &texts, fault);

    *list = texts.list;
    *count = texts.count;
    return rc;
}

struct replies {
    void *arena;
    struct night_reply *list;
    size_t count;
};

static void
read_reply(void *data, sqlite3_stmt *query)
{
    struct replies *replies = data;

    replies->list = memory_grow(replies->arena, struct night_reply, replies->list, replies->count);
    replies->list[replies->count++] =
        (struct night_reply){.text_id = sqlite3_column_int64(query, 0),
                             .body = column_text(replies->arena, query, 1),
                             .created_utc_s = sqlite3_column_int64(query, 2),
                             .state = column_text(replies->arena, query, 3),
                             .to = column_text(replies->arena, query, 4),
                             .by = column_text(replies->arena, query, 5),
                             .why = (enum night_sent)sqlite3_column_int(query, 6),
                             .first_name = column_text(replies->arena, query, 7),
                             .place = column_text(replies->arena, query, 8)};
}

/* The numbers are those of enum night_sent. */
#define REPLIES                                                                                    \
    "SELECT o.*, CASE WHEN o.verdict_id IS NOT NULL THEN 0 WHEN n.who IS NOT NULL THEN 2"          \
    " WHEN t.sender IS NULL THEN 4 WHEN t.sender = o.recipient THEN 3 ELSE 1 END AS why,"          \
    " n.who AS notice_who, t.sender FROM outbox o LEFT JOIN text t ON t.id = o.text_id"            \
    " LEFT JOIN notice_phone p ON p.outbox_id = o.id LEFT JOIN notice n"                           \
    " ON n.number = p.notice_number WHERE o.about = 'reply'"                                       \
    " AND CASE WHEN o.verdict_id IS NOT NULL THEN " SPAN_OF_TEXTS                                  \
    " ELSE o.created_utc_s >= ?1 AND o.created_utc_s < ?2"                                         \
    " AND (?3 IS NULL OR o.recipient = ?3) END"

int
night_rows_replies(struct store *store, void *arena, const struct night_span *span,
                   struct night_reply **list, size_t *count, struct fault *fault)
{
    struct replies replies = {.arena = arena};
    int rc = each_row(
        store,
        "SELECT o.text_id, o.body,"
        " o.created_utc_s, (SELECT event FROM outbox_event e"
        " WHERE e.outbox_id = o.id ORDER BY e.id DESC LIMIT 1), o.recipient,"
        " CASE o.why WHEN 1 THEN o.sender ELSE o.notice_who END, o.why,"
        " json_extract(s.json, '$.first_name'), json_extract(s.json, '$.place')"
        " FROM (" REPLIES ") o LEFT JOIN rental_row r ON o.why <> 0 AND r.id ="
        " (SELECT max(id) FROM rental_row WHERE rental_id IN"
        " (" RENTAL_IDS_OF_PHONE(
            "o.recipient") "))"
                           " LEFT JOIN rental_snapshot s ON s.digest = r.digest"
                           " AND json_extract(s.json, '$.state') <> 'closed' ORDER BY o.id",
        span, read_reply, &replies, fault);

    *list = replies.list;
    *count = replies.count;
    return rc;
}

bool
night_sent_before(const struct night_reply *sent, const struct night_text *text)
{
    return sent->why == NIGHT_STAFF ? sent->text_id < text->id /* however fast the answer was */
                                    : sent->created_utc_s < text->received_utc_s;
}

struct alerts {
    void *arena;
    struct night_alert *list;
    size_t count;
};

static void
read_alert(void *data, sqlite3_stmt *query)
{
    struct alerts *alerts = data;

    alerts->list = memory_grow(alerts->arena, struct night_alert, alerts->list, alerts->count);
    alerts->list[alerts->count++] =
        (struct night_alert){.number = sqlite3_column_int64(query, 0),
                             .phone = column_text(alerts->arena, query, 1),
                             .opened_utc_s = sqlite3_column_int64(query, 2),
                             .level = column_text(alerts->arena, query, 3),
                             .reasons = column_text(alerts->arena, query, 4),
                             .taken_utc_s = sqlite3_column_int64(query, 5),
                             .taken_by = column_text(alerts->arena, query, 6),
                             .closed_utc_s = sqlite3_column_int64(query, 7),
                             .outcome = column_text(alerts->arena, query, 8),
                             .calls = sqlite3_column_int64(query, 9),
                             .first_name = column_text(alerts->arena, query, 10),
                             .place = column_text(alerts->arena, query, 11)};
}

#define EVENTS "FROM alert_event e WHERE e.alert_number = a.number"
#define FIRST(event) EVENTS " AND e.event = '" event "' ORDER BY e.id LIMIT 1"

int
night_rows_alerts(struct store *store, void *arena, const struct night_span *span,
                  struct night_alert **list, size_t *count, struct fault *fault)
{
    struct alerts alerts = {.arena = arena};
    int rc = each_row(
        store,
        "SELECT a.number, a.phone, a.opened_utc_s,"
        " (SELECT e.level " EVENTS " ORDER BY CASE e.level WHEN 'emergency' THEN 0"
        "  WHEN 'urgent' THEN 1 ELSE 2 END LIMIT 1),"
        " (SELECT group_concat(reason, ', ') FROM (SELECT e.reason " EVENTS
        "  AND e.event IN ('opened', 'raised', 'added') GROUP BY e.reason ORDER BY min(e.id))),"
        " (SELECT e.at_utc_s " FIRST("taken") "), (SELECT e.who " FIRST(
            "taken") "),"
                     " (SELECT e.at_utc_s " FIRST("closed") "), (SELECT e.note " FIRST(
                         "closed") "),"
                                   " (SELECT count(*) " EVENTS
                                   " AND e.event IN ('called', 'rechecked')),"
                                   " json_extract(s.json, '$.first_name'), json_extract(s.json, "
                                   "'$.place')"
                                   " FROM alert a LEFT JOIN rental_row r"
                                   " ON r.id = (SELECT max(id) FROM rental_row WHERE rental_id = "
                                   "a.rental_id)"
                                   " LEFT JOIN rental_snapshot s ON s.digest = r.digest"
                                   " WHERE a.opened_utc_s < ?2 AND (?3 IS NULL OR a.phone = ?3)"
                                   " AND (a.opened_utc_s >= ?1 OR NOT EXISTS (SELECT 1 " EVENTS
                                   "  AND e.event = 'closed' AND e.at_utc_s < ?1)) ORDER BY "
                                   "a.number",
        span, read_alert, &alerts, fault);

    *list = alerts.list;
    *count = alerts.count;
    return rc;
}
