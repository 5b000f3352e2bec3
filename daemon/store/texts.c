#include "texts.h"

#include <string.h>

#include <sodium.h>

#include "memory.h"
#include "store_sql.h"

enum { LIKELY_REPEAT_S = 10 };

int
texts_add(struct store *store, const struct message *message, int64_t *text_id, struct fault *fault)
{
    if (store_do(store,
                 "INSERT INTO text (gateway, gateway_id, sender, recipient, body, attachments,"
                 " sent_utc_s, received_utc_s) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                 VALUES(words(message->gateway), words(message->id), words(message->sender),
                        words(message->recipient), words(message->text),
                        number(message->attachments), number(message->sent_utc_s),
                        number(message->received_utc_s)),
                 fault) != 0) {
        return -1;
    }
    *text_id = store_last_id(store);
    return 0;
}

int
texts_load(struct store *store, void *arena, int64_t text_id, struct message *message, bool *found,
           struct fault *fault)
{
    sqlite3_stmt *query =
        store_query(store,
                    "SELECT gateway, gateway_id, sender, recipient, body, attachments, sent_utc_s,"
                    " received_utc_s FROM text WHERE id = ? AND body IS NOT NULL",
                    VALUES(number(text_id)), fault);

    if (query == NULL || store_next(store, query, found, fault) != 0) {
        return -1;
    }
    if (*found) {
        *message = (struct message){.gateway = column_text(arena, query, 0),
                                    .id = column_text(arena, query, 1),
                                    .sender = column_text(arena, query, 2),
                                    .recipient = column_text(arena, query, 3),
                                    .text = column_text(arena, query, 4),
                                    .attachments = sqlite3_column_int(query, 5),
                                    .sent_utc_s = sqlite3_column_int64(query, 6),
                                    .received_utc_s = sqlite3_column_int64(query, 7)};
        store_end(query);
    }
    return 0;
}

static void
turn_round(struct recent_texts *recent)
{
    size_t i, j;

    for (i = 0, j = recent->count; i + 1 < j; i++) {
        struct recent_text text = recent->list[i];
        int64_t id = recent->ids[i];

        j--;
        recent->list[i] = recent->list[j];
        recent->ids[i] = recent->ids[j];
        recent->list[j] = text;
        recent->ids[j] = id;
    }
}

int
texts_recent(struct store *store, void *arena, const struct message *message, int64_t text_id,
             struct recent_texts *recent, struct fault *fault)
{
    /* The inner limit bounds the work for a sender with ten thousand texts. */
    sqlite3_stmt *query = store_query(
        store,
        "SELECT id, body, sent_utc_s FROM"
        " (SELECT * FROM text WHERE sender = ?1 AND id < ?2 ORDER BY id DESC LIMIT ?5)"
        " WHERE body IS NOT NULL"
        " AND (abs(sent_utc_s - ?3) <= ?6 OR received_utc_s >= ?4 - ?6) ORDER BY id DESC",
        VALUES(words(message->sender), number(text_id), number(message->sent_utc_s),
               number(message->received_utc_s), number(TEXTS_RECENT_MAX), number(JOIN_RECENT_S)),
        fault);
    bool more;

    recent->count = 0;
    if (query == NULL || store_next(store, query, &more, fault) != 0) {
        return -1;
    }
    while (more) {
        recent->ids[recent->count] = sqlite3_column_int64(query, 0);
        recent->list[recent->count++] = (struct recent_text){
            .text = column_text(arena, query, 1), .sent_utc_s = sqlite3_column_int64(query, 2)};
        if (store_next(store, query, &more, fault) != 0) {
            return -1;
        }
    }
    turn_round(recent);
    return 0;
}

int
texts_erase(struct store *store, int64_t text_id, int64_t now_utc_s, bool *erased,
            struct fault *fault)
{
    *erased = false;
    if (store_do(store,
                 "UPDATE text SET body = NULL, erased_utc_s = ?2 WHERE id = ?1 AND body IS NOT NULL"
                 " AND NOT EXISTS (SELECT 1 FROM outbox JOIN outbox_due ON outbox_id = id"
                 " WHERE text_id = ?1)",
                 VALUES(number(text_id), number(now_utc_s)), fault) != 0) {
        return -1;
    }
    if (store_changes(store) == 0) {
        return 0;
    }
    if (store_do(store, "UPDATE verdict SET json = NULL WHERE text_id = ?", VALUES(number(text_id)),
                 fault) != 0 ||
        store_do(store, "UPDATE outbox SET body = NULL WHERE text_id = ?", VALUES(number(text_id)),
                 fault) != 0 ||
        store_do(store, "DELETE FROM repeat_key WHERE text_id = ?", VALUES(number(text_id)),
                 fault) != 0) {
        return -1;
    }
    *erased = true;
    return 0;
}

/* ---- Repeats ------------------------------------------------------------------------------- */

struct digest {
    unsigned char bytes[crypto_generichash_BYTES];
};

/* The 0 that ends each piece keeps "ab" + "c" apart from "a" + "bc". */
static void
digest_piece(crypto_generichash_state *state, const char *text)
{
    const char *piece = text == NULL ? "" : text;

    crypto_generichash_update(state, (const unsigned char *)piece, strlen(piece) + 1);
}

static struct digest
digest_of(const struct message *message)
{
    crypto_generichash_state state;
    struct digest digest;

    crypto_generichash_init(&state, NULL, 0, sizeof(digest.bytes));
    digest_piece(&state, message->sender);
    digest_piece(&state, message->recipient);
    digest_piece(&state, message->text);
    crypto_generichash_update(&state, (const unsigned char *)&message->attachments,
                              sizeof(message->attachments));
    crypto_generichash_final(&state, digest.bytes, sizeof(digest.bytes));
    return digest;
}

static char *
key_of(void *arena, const struct message *message)
{
    return message->id != NULL ? memory_format(arena, "id:%s", message->id)
                               : memory_format(arena, "at:%lld", (long long)message->sent_utc_s);
}

static int
find(struct store *store, const char *sql, const struct value *values, size_t count, bool *found,
     int64_t *text_id, struct fault *fault)
{
    sqlite3_stmt *query = store_query(store, sql, values, count, fault);

    if (query == NULL || store_next(store, query, found, fault) != 0) {
        return -1;
    }
    if (*found) {
        *text_id = sqlite3_column_int64(query, 0);
        store_end(query);
    }
    return 0;
}

int
texts_find_repeat(struct store *store, const struct message *message, enum repeat *repeat,
                  int64_t *text_id, struct fault *fault)
{
    struct digest digest = digest_of(message);
    char *key = key_of(NULL, message);
    bool found;
    int rc;

    *repeat = REPEAT_NOT;
    rc = find(
        store, "SELECT text_id FROM repeat_key WHERE gateway = ? AND digest = ? AND key = ?",
        VALUES(words(message->gateway), octets(digest.bytes, sizeof(digest.bytes)), words(key)),
        &found, text_id, fault);
    talloc_free(key);
    if (rc != 0) {
        return -1;
    }
    if (found) {
        bool is_told = message->id != NULL || message->sent_utc_s != message->received_utc_s;

        *repeat = is_told ? REPEAT_CERTAIN : REPEAT_LIKELY;
        return 0;
    }
    if (message->id != NULL || message->sent_utc_s != message->received_utc_s) {
        return 0; /* the gateway tells texts apart, and says that this is another */
    }
    if (find(store,
             "SELECT text_id FROM repeat_key WHERE gateway = ? AND digest = ? AND key LIKE 'at:%'"
             " AND seen_utc_s >= ? ORDER BY seen_utc_s DESC LIMIT 1",
             VALUES(words(message->gateway), octets(digest.bytes, sizeof(digest.bytes)),
                    number(message->received_utc_s - LIKELY_REPEAT_S)),
             &found, text_id, fault) != 0) {
        return -1;
    }
    *repeat = found ? REPEAT_LIKELY : REPEAT_NOT;
    return 0;
}

int
texts_remember(struct store *store, const struct message *message, int64_t text_id,
               int64_t drop_before_utc_s, struct fault *fault)
{
    struct digest digest = digest_of(message);
    char *key = key_of(NULL, message);
    int rc;

    /* A sign that came twice in a second has its key already; the newer text takes it over. */
    rc = store_do(store,
                  "INSERT OR REPLACE INTO repeat_key (gateway, digest, key, seen_utc_s, text_id)"
                  " VALUES (?, ?, ?, ?, ?)",
                  VALUES(words(message->gateway), octets(digest.bytes, sizeof(digest.bytes)),
                         words(key), number(message->received_utc_s), number(text_id)),
                  fault);
    talloc_free(key);
    if (rc != 0) {
        return -1;
    }
    return store_do(store, "DELETE FROM repeat_key WHERE seen_utc_s < ?",
                    VALUES(number(drop_before_utc_s)), fault);
}
