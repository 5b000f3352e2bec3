#include "intake_stage.h"

#include <stdlib.h>
#include <string.h>

#include <event2/event.h>
#include <sqlite3.h>

#include "memory.h"
#include "rental_record.h"
#include "rental_rows.h"
#include "shipped.h"
#include "turn.h"

static const char configuration[] =
    "{\"listen\": {\"address\": \"127.0.0.1\", \"port\": 0}, \"database\": \"a.db\","
    " \"kb_folder\": \"kb\", \"zone\": \"America/Denver\","
    " \"country\": {\"code\": \"1\", \"national_prefix\": \"1\", \"national_digits\": 10},"
    " \"house\": {\"company\": \"Larkspur Air\", \"phone\": \"208-555-0100\","
    " \"address\": \"3 Millrace Lane\", \"hours\": \"8 am to 6 pm\","
    " \"return_how\": \"Bring it back.\", \"emergency_number\": \"911\"},"
    " \"gateways\": {\"valley\": {\"authentication\": {\"kind\": \"none\"},"
    " \"message\": {\"format\": \"json\", \"sender\": \"/from\", \"text\": \"/text\"},"
    " \"send\": {\"method\": \"POST\", \"url\": \"http://127.0.0.1:9/\","
    " \"from\": \"+12085550100\", \"json\": {\"to\": \"{to}\", \"text\": \"{text}\"}}}},"
    " \"reply_gateway\": \"valley\","
    " \"staff\": [{\"name\": \"Perrin\", \"phone\": \"+12085550190\"},"
    "             {\"name\": \"Ysolde\", \"phone\": \"+12085550191\"}]}";

static const char record[] =
    "{\"rental_id\":\"R-7\",\"state\":\"out\",\"name\":\"Ada Brisk\",\"unit\":\"brook\","
    "\"phones\":[{\"number\":\"+12085550123\"}],"
    "\"orders\":{\"rest\":{\"mode\":\"continuous\",\"setting_tenths\":20}},"
    "\"batteries\":[{\"serial\":\"B-1\",\"health_percent\":90,\"measured_utc_s\":1770900000},"
    "{\"serial\":\"B-2\",\"health_percent\":90,\"measured_utc_s\":1770900000}],"
    "\"start_utc_s\":1770500000,\"due_utc_s\":1771500000}";

const char ada[] = "+12085550123";
struct loaded loaded;
void *arena;
static char folder[64];
static char *path;
struct clock *evening;
static struct event_base *base;
struct store *store;
static struct turn *turn;
struct intake *intake;
char *sent;
char *told;

void
stage_load(void)
{
    struct faults faults = {0};
    struct fault fault;

    ck_assert_msg(
        config_read(configuration, strlen(configuration), "a.json", &loaded.config, &faults) == 0,
        "%s", faults.count > 0 ? faults.list[0].text : "");
    ck_assert_int_eq(
        clock_zone(loaded.config->arena, "America/Denver", EVENING, 5, &loaded.zone, &fault), 0);
    loaded.kb = shipped_load();
    loaded.lexicon = lexicon_new(loaded.config->arena, loaded.kb);
    faults_release(&faults);
}

void
stage_free(void)
{
    kb_free(loaded.kb);
    config_free(loaded.config);
}

static bool
note_unrecorded(void *data, const struct outbox_row *row)
{
    (void)data;
    ck_assert_str_eq(row->gateway, "valley");
    ck_assert_int_le(row->urgency, URGENCY_URGENT);
    memory_append(&sent, "%s: %s\n", row->to, row->body);
    return true;
}

static void
put_rental(void)
{
    const struct record_namer namer = {0};
    const char *const phones[] = {ada};
    struct faults faults = {0};
    struct rental rental;
    struct rental_row row;
    struct fault fault = {""};
    json_t *json = json_loads(record, 0, NULL);
    bool changed;

    ck_assert_int_eq(rental_record_read(arena, json, &namer, &rental, &faults), 0);
    json_decref(json);
    row.rental_id = rental.rental_id;
    row.json = rental_record_text(arena, &rental);
    row.digest = rental_record_digest(arena, row.json);
    ck_assert_msg(rental_rows_put(store, &row, phones, 1, "import", EVENING, &changed, &fault) == 0,
                  "%s", fault.text);
}

static void
open_all(void)
{
    struct intake_parts parts = {.loaded = &loaded, .send_unrecorded = note_unrecorded};
    struct fault fault = {""};

    strcpy(folder, "/tmp/hutbell-intake-XXXXXX");
    ck_assert_ptr_nonnull(mkdtemp(folder));
    path = memory_format(arena, "%s/a.db", folder);
    ck_assert_msg(store_open(path, STORE_WRITE, &store, &fault) == 0, "%s", fault.text);
    put_rental();
    base = event_base_new();
    turn = turn_new(base, store);
    evening = clock_new(EVENING, 1);
    parts.turn = turn;
    parts.clock = evening;
    intake = intake_new(&parts);
    sent = memory_copy(arena, "");
    told = memory_copy(arena, "");
}

static void
close_all(void)
{
    char *command = memory_format(arena, "rm -rf %s", folder);

    turn_free(turn);
    intake_free(intake);
    clock_free(evening);
    store_close(store);
    event_base_free(base);
    ck_assert_int_eq(system(command), 0);
}

void
stage_afresh(void)
{
    close_all();
    open_all();
}

void
stage_set_up(void)
{
    arena = memory_must(talloc_new(NULL));
    open_all();
}

void
stage_tear_down(void)
{
    close_all();
    talloc_free(arena);
}

static void
on_taken(void *data, enum intake_outcome outcome)
{
    static const char *const names[] = {
        [INTAKE_STORED] = "stored", [INTAKE_REPEAT] = "repeat", [INTAKE_NOT_STORED] = "not stored"};

    (void)data;
    memory_append(&told, "%s, ", names[outcome]);
}

struct message
text_of(const char *sender, const char *id, const char *text)
{
    return (struct message){.gateway = "valley",
                            .id = id,
                            .sender = sender,
                            .text = text,
                            .sent_utc_s = EVENING,
                            .received_utc_s = EVENING};
}

void
take(const struct message *message)
{
    intake_take(intake, message, on_taken, NULL);
}

void
run(void)
{
    ck_assert_int_ge(event_base_dispatch(base), 0);
}

char *
asked(const char *sql)
{
    char *all = memory_copy(arena, "");
    sqlite3_stmt *query;
    sqlite3 *database;
    int column, step;

    ck_assert_int_eq(sqlite3_open_v2(path, &database, SQLITE_OPEN_READONLY, NULL), SQLITE_OK);
    ck_assert_msg(sqlite3_prepare_v2(database, sql, -1, &query, NULL) == SQLITE_OK, "%s",
                  sqlite3_errmsg(database));
    while ((step = sqlite3_step(query)) == SQLITE_ROW) {
        for (column = 0; column < sqlite3_column_count(query); column++) {
            const unsigned char *text = sqlite3_column_text(query, column);

            memory_append(&all, "%s%s", column == 0 ? "" : "|",
                          text == NULL ? "" : (const char *)text);
        }
        memory_append(&all, "\n");
    }
    ck_assert_int_eq(step, SQLITE_DONE);
    sqlite3_finalize(query);
    sqlite3_close(database);
    return all;
}
