/*
 * Asking from the shell: the very code of the daemon on a copy of its store in memory, so that the
 * second text of a conversation sees what the first changed and nothing on disk does.
 */
#include "commands.h"

#include <getopt.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <jansson.h>

#include "clock.h"
#include "exit_code.h"
#include "gateway.h"
#include "memory.h"
#include "settle.h"
#include "slow_notice.h"
#include "verdict_json.h"

static const struct command_help help = {
    .usage = "hutbell ask --as PHONE [options] \"text\"",
    .text = "Prints what would be texted back to PHONE. Needs no running daemon and changes\n"
            "nothing: it works on a copy of the database in memory.\n\n"
            "  --config FILE   the configuration (" DEFAULT_CONFIG_FILE ")\n"
            "  --as PHONE      who asks\n"
            "  --at TIME       when, as 2026-02-11T15:00:00-07:00 (now)\n"
            "  --json          print the verdict as one line of JSON\n"
            "  --batch         read {\"id\", \"from\", \"text\", \"at\"} a line from standard\n"
            "                  input and answer a line of JSON each, in order; lines of one\n"
            "                  \"from\" are one conversation, each at its own \"at\"\n"
            "  --no-record     without a database, everyone is a stranger and --as may be left\n"
            "                  out; without --config an invented office is used\n"
            "  --kb FOLDER     the content, instead of the configuration's\n",
};

#define STRANGER "+12085550199" /* who asks with --no-record, if nobody is named */

/* For --no-record without --config: the least that a configuration must say. */
static const char no_office[] =
    "{\"listen\": {\"address\": \"127.0.0.1\", \"port\": 0}, \"database\": \"none\","
    " \"kb_folder\": \"kb\", \"zone\": \"UTC\","
    " \"country\": {\"code\": \"1\", \"national_prefix\": \"1\", \"national_digits\": 10},"
    " \"house\": {\"company\": \"the rental office\", \"phone\": \"208-555-0100\","
    " \"address\": \"the address on your rental slip\", \"hours\": \"office hours\","
    " \"return_how\": \"Bring it back as your rental slip says.\", \"emergency_number\": \"911\"},"
    " \"gateways\": {\"shell\": {\"authentication\": {\"kind\": \"none\"},"
    " \"message\": {\"format\": \"json\", \"sender\": \"/from\", \"text\": \"/text\"},"
    " \"send\": {\"method\": \"POST\", \"url\": \"http://127.0.0.1:9/\","
    " \"from\": \"+12085550100\","
    " \"json\": {\"to\": \"{to}\", \"text\": \"{text}\"}}}}, \"reply_gateway\": \"shell\","
    " \"staff\": [{\"name\": \"Office\", \"phone\": \"+12085550100\"}]}";

struct ask_options {
    const char *config_file, *kb_folder, *as, *at, *text;
    bool is_json, is_batch, is_without_record;
};

struct asking {
    struct loaded *loaded;
    struct store *store;
    struct workspace *workspace;
    struct clock *clock;
};

static int
print_faults(struct faults *faults)
{
    size_t i;

    for (i = 0; i < faults->count; i++) {
        fprintf(stderr, "hutbell ask: %s\n", faults->list[i].text);
    }
    faults_release(faults);
    return -1;
}

/* ---- What it runs on ----------------------------------------------------------------------- */

static int
load_config(const struct ask_options *options, struct config **config, struct faults *faults)
{
    if (options->config_file == NULL && options->is_without_record) {
        return config_read(no_office, sizeof(no_office) - 1, "no-office.json", config, faults);
    }
    return config_load(options->config_file != NULL ? options->config_file : DEFAULT_CONFIG_FILE,
                       config, faults);
}

/* Five years either way: a text may be asked of another season. */
static int
load_zone(struct loaded *loaded, int64_t now_utc_s, struct faults *faults)
{
    const struct config *config = loaded->config;
    struct fault fault;

    if (clock_zone(config->arena, config->zone_name, now_utc_s, 5, &loaded->zone, &fault) != 0) {
        faults_add(faults, config->file, 0, "/zone", "%s", fault.text);
        return -1;
    }
    return 0;
}

static int
open_store(const struct ask_options *options, struct asking *asking, struct faults *faults)
{
    const char *path = asking->loaded->config->database;
    struct fault fault = {""};
    struct store *disk = NULL;
    int rc;

    if (options->is_without_record) {
        rc = store_open(NULL, STORE_IN_MEMORY, &asking->store, &fault);
    } else {
        rc = store_open(path, STORE_READ, &disk, &fault);
        if (rc == 0) {
            rc = store_copy(disk, &asking->store, &fault);
        }
        store_close(disk);
    }
    if (rc != 0) {
        faults_add(faults, NULL, 0, NULL, "%s%s", fault.text,
                   options->is_without_record ? "" : "; --no-record asks without a database");
    }
    return rc;
}

static int
begin_asking(const struct ask_options *options, struct asking *asking)
{
    struct loaded *loaded = asking->loaded = memory_new(NULL, struct loaded);
    struct faults faults = {0};
    const char *folder;

    if (load_config(options, &loaded->config, &faults) != 0) {
        return print_faults(&faults);
    }
    folder = options->kb_folder != NULL ? options->kb_folder : loaded->config->kb_folder;
    asking->workspace = workspace_new();
    asking->clock = clock_new(loaded->config->played_start_utc_s, loaded->config->played_speed);
    if (kb_load(folder, loaded->config->cache_folder, &loaded->kb, &faults) != 0 ||
        load_zone(loaded, clock_now_utc_s(asking->clock), &faults) != 0 ||
        open_store(options, asking, &faults) != 0) {
        return print_faults(&faults);
    }
    loaded->lexicon = lexicon_new(loaded, loaded->kb);
    faults_release(&faults);
    return 0;
}

static void
end_asking(struct asking *asking)
{
    store_close(asking->store);
    clock_free(asking->clock);
    workspace_free(asking->workspace);
    loaded_free(asking->loaded);
}

/* ---- One text ------------------------------------------------------------------------------ */

struct question {
    const char *from, *text;
    bool has_time;
    int64_t at_utc_s;
};

static int
answer(struct asking *asking, void *arena, const struct question *question,
       struct verdict **verdict, struct fault *fault)
{
    const struct config *config = asking->loaded->config;
    int64_t at_utc_s = question->has_time ? question->at_utc_s : clock_now_utc_s(asking->clock);
    const struct surroundings surroundings = {asking->loaded, asking->workspace, at_utc_s,
                                              .is_unlimited = true};
    const struct message message = {.gateway = config->reply_gateway,
                                    .sender = gateway_phone(arena, config, question->from),
                                    .text = question->text,
                                    .sent_utc_s = at_utc_s,
                                    .received_utc_s = at_utc_s};
    int64_t text_id;

    if (message.sender == NULL) {
        fault_set(fault, "\"%s\" is no phone number; give it as +12085550123", question->from);
        return -1;
    }
    if (store_begin(asking->store, fault) != 0) {
        return -1;
    }
    if (settle(asking->store, arena, &surroundings, &message, verdict, &text_id, fault) != 0) {
        store_rollback(asking->store);
        return -1;
    }
    return store_commit(asking->store, fault);
}

/* As a person reads it: the texts, and below them who is called. */
static void
print_for_people(const struct verdict *verdict)
{
    size_t i;

    for (i = 0; i < verdict->reply_count; i++) {
        printf("%s%s\n", i == 0 ? "" : "\n", verdict->replies[i].text);
    }
    if (verdict->reply_count == 0) {
        printf("(no reply)\n");
    }
    if (verdict->alert.level != ALERT_NONE) {
        printf("\n(staff are called: %s, %s)\n", alert_level_name(verdict->alert.level),
               verdict->alert.reason);
    }
}

static int
ask_one(const struct ask_options *options, struct asking *asking)
{
    void *arena = memory_must(talloc_new(NULL));
    struct question question = {.from = options->as, .text = options->text};
    struct verdict *verdict;
    struct fault fault = {""};
    int rc = -1;

    question.has_time = options->at != NULL;
    if (question.has_time && clock_read(options->at, &question.at_utc_s) != 0) {
        fault_set(&fault, "--at %s is no time; give it as 2026-02-11T15:00:00-07:00", options->at);
    } else {
        rc = answer(asking, arena, &question, &verdict, &fault);
    }
    if (rc != 0) {
        fprintf(stderr, "hutbell ask: %s\n", fault.text);
    } else if (options->is_json) {
        printf("%s\n", verdict_json(arena, "1", verdict));
    } else {
        print_for_people(verdict);
    }
    talloc_free(arena);
    return rc;
}

/* ---- Many ---------------------------------------------------------------------------------- */

static const char *
id_of(void *arena, const json_t *id)
{
    return json_is_integer(id)
               ? memory_format(arena, "%" JSON_INTEGER_FORMAT, json_integer_value(id))
               : json_string_value(id);
}

static int
read_time(void *arena, const json_t *at, struct question *question, struct fault *fault)
{
    const char *text = id_of(arena, at); /* a text or a whole number */

    question->has_time = at != NULL && !json_is_null(at);
    if (question->has_time && (text == NULL || clock_read(text, &question->at_utc_s) != 0)) {
        fault_set(fault, "\"at\" is no time; give it as \"2026-02-11T15:00:00-07:00\"");
        return -1;
    }
    return 0;
}

static int
answer_line(const struct ask_options *options, struct asking *asking, void *arena,
            const json_t *line, struct fault *fault)
{
    const char *id = id_of(arena, json_object_get(line, "id"));
    struct question question = {.from = json_string_value(json_object_get(line, "from")),
                                .text = json_string_value(json_object_get(line, "text"))};
    struct verdict *verdict;

    if (question.from == NULL) {
        question.from = options->as;
    }
    if (id == NULL || question.from == NULL || question.text == NULL) {
        fault_set(fault, "give \"id\", \"from\" and \"text\" on each line");
        return -1;
    }
    if (read_time(arena, json_object_get(line, "at"), &question, fault) != 0 ||
        answer(asking, arena, &question, &verdict, fault) != 0) {
        return -1;
    }
    printf("%s\n", verdict_json(arena, id, verdict));
    return 0;
}

/* A line that cannot be read is told and the rest is answered all the same. */
static int
ask_batch(const struct ask_options *options, struct asking *asking)
{
    char *bytes = NULL;
    size_t room = 0;
    ssize_t length;
    int rc = 0, line_number = 0;

    while ((length = getline(&bytes, &room, stdin)) >= 0) {
        void *arena = memory_must(talloc_new(NULL));
        json_error_t where;
        json_t *line = json_loadb(bytes, (size_t)length, JSON_REJECT_DUPLICATES, &where);
        struct fault fault = {""};

        line_number++;
        if (line == NULL) {
            fault_set(&fault, "is no JSON: %s", where.text);
        }
        if (line == NULL || answer_line(options, asking, arena, line, &fault) != 0) {
            fprintf(stderr, "hutbell ask: line %d: %s\n", line_number, fault.text);
            rc = -1;
        }
        fflush(stdout);
        json_decref(line);
        talloc_free(arena);
    }
    free(bytes);
    return rc;
}

/* ---- The command --------------------------------------------------------------------------- */

static int
run(const struct ask_options *options)
{
    struct asking asking = {0};
    int rc;

    slow_notice_begin(
        "hutbell ask: reading the content for the first time, or after a change; this "
        "takes some seconds\n");
    rc = begin_asking(options, &asking);
    slow_notice_end();
    if (rc == 0) {
        rc = options->is_batch ? ask_batch(options, &asking) : ask_one(options, &asking);
    }
    end_asking(&asking);
    return rc == 0 ? EXIT_CODE_DONE : EXIT_CODE_FAILED;
}

int
command_ask(int argc, char **argv)
{
    static const struct option known[] = {{"config", required_argument, NULL, 'c'},
                                          {"as", required_argument, NULL, 'p'},
                                          {"at", required_argument, NULL, 't'},
                                          {"json", no_argument, NULL, 'j'},
                                          {"batch", no_argument, NULL, 'b'},
                                          {"no-record", no_argument, NULL, 'n'},
                                          {"kb", required_argument, NULL, 'k'},
                                          {"help", no_argument, NULL, 'h'},
                                          {0}};
    struct ask_options options = {0};
    int option;

    while ((option = getopt_long(argc, argv, "", known, NULL)) != -1) {
        switch (option) {
        case 'c':
            options.config_file = optarg;
            break;
        case 'p':
            options.as = optarg;
            break;
        case 't':
            options.at = optarg;
            break;
        case 'j':
            options.is_json = true;
            break;
        case 'b':
            options.is_batch = true;
            break;
        case 'n':
            options.is_without_record = true;
            break;
        case 'k':
            options.kb_folder = optarg;
            break;
        case 'h':
            return command_print_help(&help);
        default:
            return command_print_usage(&help);
        }
    }
    if (options.is_without_record && !options.is_batch && options.as == NULL) {
        options.as = STRANGER;
    }
    if (options.is_batch ? optind != argc : optind + 1 != argc || options.as == NULL) {
        return command_print_usage(&help);
    }
    options.text = argv[optind]; /* NULL for a batch */
    return run(&options);
}
