/*
 * SMS parts: how a text is carried. 3GPP TS 23.038 (default alphabet, extension table) and TS
 * 23.040 (concatenation): 160 septets or 70 UCS-2 units in one part, 153 or 67 in each of several;
 * neither an escape pair nor a surrogate pair is split over two parts.
 */
#ifndef PARTS_H
#define PARTS_H

#include <stdbool.h>
#include <stddef.h>

struct parts {
    bool gsm7;    /* else UCS-2 */
    size_t units; /* septets or UCS-2 units, escapes counted */
    size_t parts; /* 0 for an empty text */
};

/* `text` is UTF-8; bytes that are not count as one UCS-2 unit each. */
struct parts parts_count(const char *text);

/*
 * A copy of `text` in `arena` in which what needlessly forces UCS-2 (curly quotes, dashes,
 * ellipsis, odd spaces, bullets, the degree sign) is said in GSM-7. Letters are left alone.
 */
char *parts_plain(void *arena, const char *text);

#endif
