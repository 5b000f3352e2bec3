#include "content.h"

#include <sodium.h>
#include <string.h>

#include <stdint.h>

_Static_assert(CONTENT_DIGEST_LENGTH == 2 * crypto_hash_sha256_BYTES, "two digits a byte");

void
content_digest(const struct content *content, char digest[CONTENT_DIGEST_LENGTH + 1])
{
    unsigned char hash[crypto_hash_sha256_BYTES];
    crypto_hash_sha256_state state;
    size_t i, byte;

    crypto_hash_sha256_init(&state);
    for (i = 0; i < content->count; i++) {
        const struct content_file *file = &content->files[i];
        unsigned char length[8];

        /* Name with its NUL, then the length: no two folders give the same stream of bytes. */
        for (byte = 0; byte < sizeof(length); byte++) {
            length[byte] = (unsigned char)((uint64_t)file->length >> (8 * byte));
        }
        crypto_hash_sha256_update(&state, (const unsigned char *)file->name,
                                  strlen(file->name) + 1);
        crypto_hash_sha256_update(&state, length, sizeof(length));
        crypto_hash_sha256_update(&state, (const unsigned char *)file->bytes, file->length);
    }
    crypto_hash_sha256_final(&state, hash);
    sodium_bin2hex(digest, CONTENT_DIGEST_LENGTH + 1, hash, sizeof(hash));
}
