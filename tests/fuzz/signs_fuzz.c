/*
 * Any bytes as a text: they are looked through for warning signs and for oximeter values of the
 * content in kb, which must not crash, hang or point outside of the text. libFuzzer.
 *
 *   CC=clang meson setup build-fuzz && ninja -C build-fuzz tests/signs_fuzz
 *   build-fuzz/tests/signs_fuzz -max_total_time=60 -max_len=600 FOUND tests/fuzz/signs
 *
 * Run it in the top folder; new texts go to FOUND. The corpus holds one text a file.
 */
#include <assert.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "kb_explain.h"
#include "memory.h"
#include "oximeter.h"

int LLVMFuzzerInitialize(int *count, char ***arguments);
int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static struct kb *kb;
static struct workspace *workspace;

int
LLVMFuzzerInitialize(int *count, char ***arguments)
{
    struct faults faults = {0};

    (void)count;
    (void)arguments;
    workspace = workspace_new();
    if (kb_load("kb", getenv("KB_CACHE"), &kb, &faults) != 0) { /* NULL: made ready anew */
        abort();                                                /* not run in the top folder */
    }
    return 0;
}

int
LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    enum { ROOM = 12 };
    void *arena = talloc_new(NULL);
    const char *text = memory_copy_n(arena, (const char *)data, size);
    struct sign_match matches[ROOM];
    struct kb_sign_reason *reasons;
    size_t count = kb_find_signs(kb, workspace, text, matches, ROOM), start, end, i;
    int percent;

    for (i = 0; i < count; i++) {
        assert(matches[i].start < matches[i].end && matches[i].end <= strlen(text));
    }
    count = kb_sign_reasons(kb, arena, workspace, text, &reasons);
    for (i = 0; i < count; i++) {
        assert(reasons[i].explained.match.end <= strlen(text));
    }
    if (oximeter_read(text, &percent, &start, &end)) {
        assert(start < end && end <= strlen(text) && percent >= 30 && percent <= 100);
    }
    if (oximeter_read_again(text, &percent)) {
        assert(percent >= 30 && percent <= 100);
    }
    talloc_free(arena);
    return 0;
}
