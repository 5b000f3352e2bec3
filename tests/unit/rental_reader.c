#include "rental_reader.h"

#include <stdlib.h>
#include <string.h>

#include <check.h>
#include <glib.h>

#include "kb.h"
#include "memory.h"

static const struct zone_step steps[] = {{0, -7 * 3600}};
static const struct zone zone = {steps, 1};
static struct config config = {.country_code = "1", .national_prefix = "1", .national_digits = 10};
static struct kb *kb;

struct rental_reader reader;

void
reader_load(void)
{
    void *arena = memory_must(talloc_new(NULL));
    struct faults faults = {0};

    ck_assert_msg(
        kb_load_equipment(memory_format(arena, "%s/kb", getenv("SOURCE_ROOT")), &kb, &faults) == 0,
        "%s", faults.count > 0 ? faults.list[0].text : "");
    faults_release(&faults);
    talloc_free(arena);
}

void
reader_unload(void)
{
    kb_free(kb);
}

void
reader_set_up(void)
{
    reader = (struct rental_reader){.arena = memory_must(talloc_new(NULL)),
                                    .setting = {&config, &zone, kb}};
}

void
reader_tear_down(void)
{
    faults_release(&reader.faults);
    talloc_free(reader.arena);
}

/* The record's arena ends with the row, so what was read is what its text says. */
static void
take_rental(void *data, const struct rental *rental, const char *json)
{
    struct rental *kept;

    (void)data;
    reader.rentals = memory_grow(reader.arena, struct rental, reader.rentals, reader.count);
    reader.texts = memory_grow(reader.arena, const char *, reader.texts, reader.count);
    kept = &reader.rentals[reader.count];
    ck_assert(rental_record_parse(reader.arena, json, kept));
    kept->digest = memory_copy(reader.arena, rental->digest);
    reader.texts[reader.count++] = memory_copy(reader.arena, json);
}

int
read_bytes(const char *bytes, size_t length)
{
    const struct rental_csv csv = {
        .file = "r.csv", .setting = reader.setting, .on_rental = take_rental};
    struct csv_text text;
    int rc;

    reader.rentals = NULL;
    reader.texts = NULL;
    reader.count = 0;
    faults_release(&reader.faults);
    rc = csv_text_read(bytes, length, "r.csv", &text, &reader.faults);
    if (rc == 0) {
        rc = rental_csv_read(&text, &csv, &reader.faults);
        csv_text_release(&text);
    }
    return rc;
}

int
read_csv(const char *text)
{
    return read_bytes(text, strlen(text));
}

char *
source_text(const char *name)
{
    char *bytes, *copy;

    ck_assert(g_file_get_contents(memory_format(reader.arena, "%s/%s", getenv("SOURCE_ROOT"), name),
                                  &bytes, NULL, NULL));
    copy = memory_copy(reader.arena, bytes);
    g_free(bytes);
    return copy;
}

const char *
faults_text(void)
{
    char *all = memory_copy(reader.arena, "");
    size_t i;

    for (i = 0; i < reader.faults.count; i++) {
        memory_append(&all, "%s\n", reader.faults.list[i].text);
    }
    return all;
}
