/*
 * Rentals from strangers' files and requests: a file is refused with a fault or read, and whatever
 * was read comes out of the export and in again as the same record. libFuzzer; the first byte says
 * whether the rest is a file or a request.
 *
 *   CC=clang meson setup build-fuzz && ninja -C build-fuzz tests/rental_fuzz
 *   build-fuzz/tests/rental_fuzz -max_total_time=60 -max_len=2000
 *
 * It reads the content in kb/, so it is run from the top of the sources.
 */
#include <assert.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <jansson.h>

#include "memory.h"
#include "rental_csv.h"
#include "rental_csv_write.h"
#include "rental_json.h"
#include "rental_record.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

struct kept {
    void *arena;
    const char **texts;
    size_t count;
};

static const struct zone_step steps[] = {
    {0, -7 * 3600}, {1772960400, -6 * 3600}, {1793520000, -7 * 3600}};
static const struct zone zone = {steps, 3};
static const struct config config = {
    .country_code = "1", .national_prefix = "1", .national_digits = 10};
static struct kb *kb;

static void
load_once(void)
{
    struct faults faults = {0};

    if (kb == NULL && kb_load("kb", NULL, &kb, &faults) != 0) {
        fprintf(stderr, "%s\n", faults.list[0].text);
        exit(1);
    }
}

static void
keep(void *data, const struct rental *rental, const char *json)
{
    struct kept *kept = data;

    (void)rental;
    kept->texts = memory_grow(kept->arena, const char *, kept->texts, kept->count);
    kept->texts[kept->count++] = memory_copy(kept->arena, json);
}

static int
read_file(const char *bytes, size_t length, struct kept *kept)
{
    const struct rental_csv csv = {
        .file = "f", .setting = {&config, &zone, kb}, .on_rental = keep, .data = kept};
    struct faults faults = {0};
    struct csv_text text;
    int rc = csv_text_read(bytes, length, "f", &text, &faults);

    if (rc == 0) {
        rc = rental_csv_read(&text, &csv, &faults);
        csv_text_release(&text);
    }
    assert((rc == 0) == (faults.count == 0));
    faults_release(&faults);
    return rc;
}

/* Out and in again. */
static void
same_again(const struct kept *kept)
{
    struct kept again = {.arena = kept->arena};
    struct rental_csv_writer writer;
    char *bytes = NULL;
    size_t length = 0, i;
    FILE *out = open_memstream(&bytes, &length);
    int rc;

    writer = rental_csv_write_begin(kept->arena, out, &zone);
    for (i = 0; i < kept->count; i++) {
        rc = rental_csv_write_row(&writer, kept->texts[i]);
        assert(rc == 0);
    }
    (void)fclose(out);
    rc = read_file(bytes, length, &again);
    assert(rc == 0 && again.count == kept->count);
    for (i = 0; i < kept->count; i++) {
        assert(strcmp(again.texts[i], kept->texts[i]) == 0);
    }
    free(bytes);
}

static void
try_request(const char *bytes, size_t length, struct kept *kept)
{
    const struct rental_setting setting = {&config, &zone, kb};
    json_t *sent = json_loadb(bytes, length, JSON_REJECT_DUPLICATES, NULL);
    struct rental_errors errors;
    struct rental rental;
    const char *text;

    if (sent == NULL) {
        return;
    }
    text = rental_json_read(kept->arena, sent, &setting, &rental, &errors);
    assert((text == NULL) == (errors.count > 0));
    if (text != NULL) {
        keep(kept, &rental, text);
    }
    json_decref(sent);
}

int
LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    struct kept kept = {.arena = memory_must(talloc_new(NULL))};

    load_once();
    if (size > 0 && data[0] % 2 == 0) {
        if (read_file((const char *)data + 1, size - 1, &kept) != 0) {
            kept.count = 0;
        }
    } else if (size > 0) {
        try_request((const char *)data + 1, size - 1, &kept);
    }
    if (kept.count > 0) {
        same_again(&kept);
    }
    talloc_free(kept.arena);
    return 0;
}
