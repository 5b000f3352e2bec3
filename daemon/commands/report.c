/* hutbell report and hutbell log: the night book in the terminal. Looking is written down. */
#include "commands.h"

#include <getopt.h>
#include <stdio.h>
#include <string.h>

#include "audit_rows.h"
#include "clock.h"
#include "exit_code.h"
#include "gateway.h"
#include "memory.h"
#include "night.h"

#define OPTIONS_HELP                                                                               \
    "  --config FILE   the configuration (" DEFAULT_CONFIG_FILE ")\n"                              \
    "  --since WHEN    yesterday, today, 2026-02-13 or 2026-02-13T21:00:00-07:00\n"                \
    "                  (yesterday)\n"                                                              \
    "  --until WHEN    the same (now)\n"

static const struct command_help report_help = {
    .usage = "hutbell report [--since WHEN] [--until WHEN] [--csv | --json] [--config FILE]",
    .text = "Prints what happened: renters' texts by hour, what was asked, what nothing answered, "
            "alerts\n"
            "answered, alerts with the time until a person had them, what waited longest. Texts\n"
            "of staff are counted apart. That someone looked is written to the audit "
            "trail.\n\n" OPTIONS_HELP "  --csv, --json   the same as data\n",
};

static const struct command_help log_help = {
    .usage = "hutbell log [--phone PHONE] [--since WHEN] [--until WHEN] [--csv | --json]",
    .text = "Prints conversations: each text, what was sent back, why, and whom it alerted; what\n"
            "staff wrote to renters, notices and reminders in between, with who wrote them. That\n"
            "someone looked is written to the audit trail.\n\n"
            "  --phone PHONE   only with this phone\n" OPTIONS_HELP
            "  --csv, --json   the same as data\n",
};

enum night_format { NIGHT_TEXT, NIGHT_CSV, NIGHT_JSON };

struct night_options {
    bool is_log;
    const char *config_file, *phone, *since, *until;
    enum night_format format;
};

static int
read_span(const struct night_options *options, void *arena, const struct config *config,
          const struct zone *zone, int64_t now_utc_s, struct night_span *span, struct fault *fault)
{
    *span = (struct night_span){.until_utc_s = INT64_MAX};
    if (night_when(options->since, zone, now_utc_s, &span->since_utc_s, fault) != 0 ||
        (options->until != NULL &&
         night_when(options->until, zone, now_utc_s, &span->until_utc_s, fault) != 0)) {
        return -1;
    }
    if (span->since_utc_s > span->until_utc_s) {
        fault_set(fault, "--until is before --since (\"%s\"): that span holds nothing",
                  options->since);
        return -1;
    }
    if (options->phone != NULL) {
        span->phone = gateway_phone(arena, config, options->phone);
        if (span->phone == NULL) {
            fault_set(fault, "\"%s\" is no phone number; give it as +12085550123", options->phone);
            return -1;
        }
    }
    return 0;
}

/* Looking at what people wrote is itself written down, before anything is shown. */
static int
note_looking(struct store *store, const struct night_options *options,
             const struct night_span *span, int64_t now_utc_s, struct fault *fault)
{
    void *arena = memory_must(talloc_new(NULL));
    const struct audit_row row = {.who = options->is_log ? "hutbell log" : "hutbell report",
                                  .what = "look",
                                  .subject = span->phone,
                                  .detail = memory_format(arena, "%s to %s",
                                                          clock_text(arena, span->since_utc_s),
                                                          clock_text(arena, span->until_utc_s))};
    int rc = store_begin_patiently(store, fault);

    if (rc == 0) {
        rc = audit_rows_add(store, &row, now_utc_s, fault);
        if (rc == 0) {
            rc = store_commit(store, fault);
        }
        if (rc != 0) {
            store_rollback(store);
        }
    }
    talloc_free(arena);
    return rc;
}

static void
print_json(json_t *json)
{
    json_dumpf(json, stdout, JSON_INDENT(1));
    putchar('\n');
    json_decref(json);
}

static void
print(const struct night_options *options, const struct night *night)
{
    switch (options->format) {
    case NIGHT_CSV:
        (options->is_log ? night_csv_log : night_csv_report)(stdout, night);
        break;
    case NIGHT_JSON:
        print_json((options->is_log ? night_json_log : night_json_report)(night));
        break;
    default:
        (options->is_log ? night_print_log : night_print_report)(stdout, night);
    }
}

static int
look(const struct night_options *options, void *arena, const struct config *config,
     struct fault *fault)
{
    struct clock *clock = clock_new(config->played_start_utc_s, config->played_speed);
    int64_t now_utc_s = clock_now_utc_s(clock);
    struct store *store = NULL;
    struct night night = {.config = config, .end_utc_s = now_utc_s};
    struct zone zone;
    int rc = -1;

    night.zone = &zone;
    if (clock_zone(arena, config->zone_name, now_utc_s, 5, &zone, fault) == 0 &&
        read_span(options, arena, config, &zone, now_utc_s, &night.span, fault) == 0 &&
        store_open(config->database, STORE_WRITE, &store, fault) == 0 &&
        note_looking(store, options, &night.span, now_utc_s, fault) == 0 &&
        night_gather(store, arena, &night, fault) == 0) {
        print(options, &night);
        rc = 0;
    }
    store_close(store);
    clock_free(clock);
    return rc;
}

static int
run(const struct night_options *options)
{
    const char *name = options->is_log ? "hutbell log" : "hutbell report";
    void *arena = memory_must(talloc_new(NULL));
    struct config *config = NULL;
    struct faults faults = {0};
    struct fault fault = {""};
    int rc = config_load(options->config_file, &config, &faults);
    size_t i;

    for (i = 0; i < faults.count; i++) {
        fprintf(stderr, "%s: %s\n", name, faults.list[i].text);
    }
    if (rc == 0) {
        rc = look(options, arena, config, &fault);
        if (rc != 0) {
            fprintf(stderr, "%s: %s\n", name, fault.text);
        }
    }
    config_free(config);
    faults_release(&faults);
    talloc_free(arena);
    return rc == 0 ? EXIT_CODE_DONE : EXIT_CODE_FAILED;
}

static int
run_with(int argc, char **argv, bool is_log)
{
    static const struct option known[] = {
        {"config", required_argument, NULL, 'c'}, {"since", required_argument, NULL, 's'},
        {"until", required_argument, NULL, 'u'},  {"phone", required_argument, NULL, 'p'},
        {"csv", no_argument, NULL, 'v'},          {"json", no_argument, NULL, 'j'},
        {"help", no_argument, NULL, 'h'},         {0}};
    const struct command_help *help = is_log ? &log_help : &report_help;
    struct night_options options = {
        .is_log = is_log, .config_file = DEFAULT_CONFIG_FILE, .since = "yesterday"};
    int option;

    while ((option = getopt_long(argc, argv, "", known, NULL)) != -1) {
        switch (option) {
        case 'c':
            options.config_file = optarg;
            break;
        case 's':
            options.since = optarg;
            break;
        case 'u':
            options.until = optarg;
            break;
        case 'p':
            options.phone = optarg;
            break;
        case 'v':
            options.format = NIGHT_CSV;
            break;
        case 'j':
            options.format = NIGHT_JSON;
            break;
        case 'h':
            return command_print_help(help);
        default:
            return command_print_usage(help);
        }
    }
    if (optind != argc || (options.phone != NULL && !is_log)) {
        return command_print_usage(help);
    }
    return run(&options);
}

int
command_report(int argc, char **argv)
{
    return run_with(argc, argv, false);
}

int
command_log(int argc, char **argv)
{
    return run_with(argc, argv, true);
}
