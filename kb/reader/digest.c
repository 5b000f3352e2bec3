#include "content.h"

#include <sodium.h>
#include <string.h>

#include <stdint.h>

enum { DIGEST_BYTES = 32 };

_Static_assert(CONTENT_DIGEST_LENGTH == 2 * DIGEST_BYTES, "two digits a byte");

void
content_digest(const struct content *content, char digest[CONTENT_DIGEST_LENGTH + 1])
{
    unsigned char hash[DIGEST_BYTES];
    crypto_generichash_state state;
    size_t i, byte;

    crypto_generichash_init(&state, NULL, 0, DIGEST_BYTES);
    for (i = 0; i < content->count; i++) {
        const struct content_file *file = &content->files[i];
        unsigned char length[8];

        /* Name with its NUL, then the length: no two folders give the same stream of bytes. */
        for (byte = 0; byte < sizeof(length); byte++) {
            length[byte] = (unsigned char)((uint64_t)file->length >> (8 * byte));
        }
        crypto_generichash_update(&state, (const unsigned char *)file->name,
                                  strlen(file->name) + 1);
        crypto_generichash_update(&state, length, sizeof(length));
        crypto_generichash_update(&state, (const unsigned char *)file->bytes, file->length);
    }
    crypto_generichash_final(&state, hash, DIGEST_BYTES);
    sodium_bin2hex(digest, CONTENT_DIGEST_LENGTH + 1, hash, sizeof(hash));
}
