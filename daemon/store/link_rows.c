#include "link_rows.h"

#include <assert.h>
#include <string.h>

#include <sodium.h>

#include "store_sql.h"

enum { KEEP_EXPIRED_S = 30 * 86400 }; /* so that a late click is told what happened to it */

void
link_token(char token[LINK_TOKEN_SIZE])
{
    unsigned char random[32];

    static_assert(LINK_TOKEN_SIZE == sodium_base64_ENCODED_LEN(
                                         sizeof(random), sodium_base64_VARIANT_URLSAFE_NO_PADDING),
                  "the token fits");
    randombytes_buf(random, sizeof(random));
    (void)sodium_bin2base64(token, LINK_TOKEN_SIZE, random, sizeof(random),
                            sodium_base64_VARIANT_URLSAFE_NO_PADDING);
}

struct hash {
    unsigned char bytes[crypto_generichash_BYTES];
};

static struct hash
hash_of(const char *token)
{
    struct hash hash;

    (void)crypto_generichash(hash.bytes, sizeof(hash.bytes), (const unsigned char *)token,
                             strlen(token), NULL, 0);
    return hash;
}

int
link_rows_add(struct store *store, const char *token, const struct link *link, int64_t now_utc_s,
              struct fault *fault)
{
    struct hash hash = hash_of(token);

    if (store_do(store, "DELETE FROM link WHERE expires_utc_s < ?",
                 VALUES(number(now_utc_s - KEEP_EXPIRED_S)), fault) != 0) {
        return -1;
    }
    return store_do(store,
                    "INSERT INTO link (hash, alert_number, who, expires_utc_s) VALUES (?, ?, ?, ?)",
                    VALUES(octets(hash.bytes, sizeof(hash.bytes)), number(link->alert_number),
                           words(link->who), number(link->expires_utc_s)),
                    fault);
}

int
link_rows_find(struct store *store, void *arena, const char *token, struct link *link, bool *found,
               struct fault *fault)
{
    struct hash hash = hash_of(token);
    sqlite3_stmt *query =
        store_query(store,
                    "SELECT alert_number, who, expires_utc_s, used_utc_s IS NOT NULL FROM link"
                    " WHERE hash = ?",
                    VALUES(octets(hash.bytes, sizeof(hash.bytes))), fault);

    if (query == NULL || store_next(store, query, found, fault) != 0) {
        return -1;
    }
    if (*found) {
        *link = (struct link){.alert_number = sqlite3_column_int64(query, 0),
                              .who = column_text(arena, query, 1),
                              .expires_utc_s = sqlite3_column_int64(query, 2),
                              .is_used = sqlite3_column_int(query, 3) != 0};
        store_end(query);
    }
    return 0;
}

int
link_rows_use(struct store *store, const char *token, int64_t now_utc_s, struct fault *fault)
{
    struct hash hash = hash_of(token);

    return store_do(store, "UPDATE link SET used_utc_s = ?2 WHERE hash = ?1",
                    VALUES(octets(hash.bytes, sizeof(hash.bytes)), number(now_utc_s)), fault);
}
