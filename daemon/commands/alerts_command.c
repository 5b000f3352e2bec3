/*
 * Alerts from the shell, beside the daemon: it reads the rows anew each time it acts, so what is
 * taken or closed here is quiet at once, and what is opened is called within a minute.
 */
#include "commands.h"

#include <errno.h>
#include <getopt.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <glib.h>
#include <jansson.h>

#include "about_us.h"
#include "alert_facts.h"
#include "alert_hands.h"
#include "alert_renters.h"
#include "alert_text.h"
#include "audit_rows.h"
#include "clock.h"
#include "exit_code.h"
#include "memory.h"
#include "opened.h"
#include "verdict.h"

static const struct command_help alerts_help = {
    .usage = "hutbell alerts [NUMBER] [--json] [--config FILE]",
    .text = "Lists the open alerts, gravest first: number, level, what, who, where, phone,\n"
            "since when, and who has it. With a number that one alone, with all that is\n"
            "needed to act on it: the record, numbers to ring, what was said and told. That\n"
            "someone looked is written to the audit trail.\n\n"
            "  --json          one JSON object a line\n"
            "  --config FILE   the configuration (" DEFAULT_CONFIG_FILE ")\n",
};
static const struct command_help take_help = {
    .usage = "hutbell take NUMBER --by NAME [--config FILE]",
    .text = "Takes an alert in the name of one of staff, as if they had texted MINE. All roads\n"
            "are quiet then, until the time for its outcome has passed.\n\n"
            "  --by NAME       who of staff, by name or phone\n"
            "  --config FILE   the configuration (" DEFAULT_CONFIG_FILE ")\n",
};
static const struct command_help close_help = {
    .usage = "hutbell close NUMBER --by NAME OUTCOME [--config FILE]",
    .text = "Closes an alert with its outcome, in a few words, as if one of staff had texted\n"
            "SORTED.\n\n"
            "  --by NAME       who of staff, by name or phone\n"
            "  --config FILE   the configuration (" DEFAULT_CONFIG_FILE ")\n",
};
static const struct command_help tell_help = {
    .usage = "hutbell tell-office WORDS [--config FILE]",
    .text = "Opens an alert for the office about hutbell itself, in a few words. For a backup\n"
            "that failed: run it from the timer's OnFailure= or behind the script with ||.\n\n"
            "  --config FILE   the configuration (" DEFAULT_CONFIG_FILE ")\n",
};

struct alerts_options {
    const char *config_file, *by;
    bool is_json;
    int64_t number;
    const char *words; /* outcome, or what the office is told */
};

/* The command at work. */
struct work {
    struct opened on;
    const struct alerts_options *options;
    struct alert_row alert; /* the one that is looked at */
    struct alert_facts facts;
};

static int
print_fault(const struct fault *fault)
{
    fprintf(stderr, "%s\n", fault->text);
    return EXIT_CODE_FAILED;
}

/* ---- The list ------------------------------------------------------------------------------- */

static const char *
holder_name(const struct config *config, const struct alert_row *alert)
{
    const struct staff *staff =
        alert->taken_by != NULL ? config_staff_by_phone(config, alert->taken_by) : NULL;

    return staff != NULL ? staff->name : alert->taken_by;
}

static json_t *
facts_json(const struct alert_facts *facts)
{
    json_t *list = memory_must(json_array());
    size_t i;

    for (i = 0; i < facts->count; i++) {
        json_array_append_new(list, memory_must(json_pack("{s:s, s:s}", "what", facts->list[i].what,
                                                          "value", facts->list[i].value)));
    }
    return list;
}

/* `facts` NULL: without them. */
static void
print_json(const struct work *work, const struct alert_row *alert, const struct alert_facts *facts)
{
    const char *first_name = alert->first_name != NULL ? alert->first_name : alert->one_of;
    json_t *numbers = memory_must(json_array()); /* of a mains failure: the alerts called with it */
    size_t i;
    json_t *line = memory_must(json_pack(
        "{s:I, s:s, s:s, s:s?, s:s?, s:s?, s:s, s:s, s:s?}", "alert", (json_int_t)alert->number,
        "level", alert_level_name(alert->level), "about", alert->brief, "rental", alert->rental_id,
        "first_name", first_name, "place", alert->place, "phone", alert->phone, "since",
        clock_text(work->on.arena, alert->level_utc_s), "taken_by",
        holder_name(work->on.config, alert)));

    for (i = 0; i < alert->renter_count; i++) {
        json_array_append_new(numbers,
                              memory_must(json_integer((json_int_t)alert->renters[i].number)));
    }
    json_object_set_new(line, "renters", numbers);
    if (facts != NULL) {
        json_object_set_new(line, "facts", facts_json(facts));
    }
    json_dumpf(line, stdout, JSON_COMPACT);
    putchar('\n');
    json_decref(line);
}

static void
print_line(const struct work *work, const struct alert_row *alert)
{
    int64_t minutes = (work->on.now_utc_s - alert->level_utc_s) / 60;
    const char *holder = holder_name(work->on.config, alert);

    printf("%s\n    for %lld min, %s%s, called %d time%s\n", alert_line(work->on.arena, alert),
           (long long)(minutes > 0 ? minutes : 0), holder != NULL ? "with " : "nobody has it",
           holder != NULL ? holder : "", alert->calls, alert->calls == 1 ? "" : "s");
}

static int
list(struct work *work, struct fault *fault)
{
    struct alert_row *rows;
    size_t count;
    size_t i;

    if (alert_rows_due(work->on.store, work->on.arena, INT64_MAX, &rows, &count, fault) != 0) {
        return print_fault(fault);
    }
    for (i = 0; i < count; i++) {
        if (alert_renters(work->on.store, work->on.arena, work->on.config, &rows[i], fault) != 0) {
            return print_fault(fault);
        }
        if (work->options->is_json) {
            print_json(work, &rows[i], NULL);
        } else {
            print_line(work, &rows[i]);
        }
    }
    if (count == 0 && !work->options->is_json) {
        printf("no alert is open\n");
    }
    return EXIT_CODE_DONE;
}

/* ---- What changes something ----------------------------------------------------------------- */

/* One transaction with its line in the audit trail. */
static int
write_all(struct work *work, int (*write)(struct work *work, struct fault *fault),
          const struct audit_row *audit, struct fault *fault)
{
    if (store_begin_patiently(work->on.store, fault) != 0) {
        return -1;
    }
    if (write(work, fault) == 0 &&
        audit_rows_add(work->on.store, audit, work->on.now_utc_s, fault) == 0 &&
        store_commit(work->on.store, fault) == 0) {
        return 0;
    }
    store_rollback(work->on.store);
    return -1;
}

static int
change(struct work *work, bool is_closing, struct fault *fault)
{
    const struct alerts_options *options = work->options;
    const struct staff *staff = config_staff_by_name(work->on.config, options->by);
    const struct caller caller = {.config = work->on.config,
                                  .store = work->on.store,
                                  .arena = work->on.arena,
                                  .now_utc_s = work->on.now_utc_s};
    struct alert_hand hand = {.road = "shell", .now_utc_s = work->on.now_utc_s};
    enum hands_result result;
    const char *holder = NULL;
    const char *words;
    int rc;

    if (staff == NULL) {
        staff = config_staff_by_phone(work->on.config, options->by);
    }
    if (staff == NULL) {
        fault_set(fault, "--by: \"%s\" is nobody of /staff in the configuration", options->by);
        return -1;
    }
    hand.who = staff->phone;
    rc = is_closing ? alert_close(&caller, options->number, &hand, options->words, &result, fault)
                    : alert_take(&caller, options->number, &hand, &result, &holder, fault);
    if (rc != 0) {
        return -1;
    }
    words = alert_hands_words(work->on.arena, work->on.config, options->number, is_closing, result,
                              holder);
    if (result != HANDS_DONE) {
        fault_set(fault, "%s",
                  result == HANDS_NOT_OPEN ? "no alert of this number is open; see hutbell alerts"
                                           : words);
        return -1;
    }
    printf("%s\n", words);
    return 0;
}

static int
write_take(struct work *work, struct fault *fault)
{
    return change(work, false, fault);
}

static int
write_close(struct work *work, struct fault *fault)
{
    return change(work, true, fault);
}

static int
write_tell(struct work *work, struct fault *fault)
{
    int64_t number;

    if (about_us(work->on.config, work->on.store, ALERT_OFFICE, "us:told", work->options->words,
                 work->on.now_utc_s, &number, fault) != 0) {
        return -1;
    }
    printf("alert %lld\n", (long long)number);
    return 0;
}

static int
write_look(struct work *work, struct fault *fault)
{
    bool found;

    if (alert_rows_find(work->on.store, work->on.arena, work->options->number, &work->alert, &found,
                        fault) != 0) {
        return -1;
    }
    if (!found) {
        fault_set(fault, "no alert of this number is open; see hutbell alerts");
        return -1;
    }
    return alert_renters(work->on.store, work->on.arena, work->on.config, &work->alert, fault) != 0
               ? -1
               : alert_facts_read(work->on.store, work->on.arena, work->on.config, &work->alert,
                                  work->on.now_utc_s, &work->facts, fault);
}

/* Nothing is shown before it is written down that someone looked. */
static int
look(struct work *work, struct fault *fault)
{
    const struct audit_row audit = {
        .who = "hutbell alerts",
        .what = "look-at-alert",
        .subject = memory_format(work->on.arena, "%lld", (long long)work->options->number)};

    if (write_all(work, write_look, &audit, fault) != 0) {
        return print_fault(fault);
    }
    if (work->options->is_json) {
        print_json(work, &work->alert, &work->facts);
    } else {
        print_line(work, &work->alert);
        fputs(alert_facts_lines(work->on.arena, &work->facts), stdout);
    }
    return EXIT_CODE_DONE;
}

static int
take(struct work *work, struct fault *fault)
{
    const struct audit_row audit = {
        .who = "hutbell take",
        .what = "take-alert",
        .subject = memory_format(work->on.arena, "%lld", (long long)work->options->number),
        .detail = work->options->by};

    return write_all(work, write_take, &audit, fault) == 0 ? EXIT_CODE_DONE : print_fault(fault);
}

static int
close_it(struct work *work, struct fault *fault)
{
    const struct audit_row audit = {
        .who = "hutbell close",
        .what = "close-alert",
        .subject = memory_format(work->on.arena, "%lld", (long long)work->options->number),
        .detail = work->options->by};

    return write_all(work, write_close, &audit, fault) == 0 ? EXIT_CODE_DONE : print_fault(fault);
}

static int
tell(struct work *work, struct fault *fault)
{
    const struct audit_row audit = {
        .who = "hutbell tell-office", .what = "tell-office", .detail = work->options->words};

    return write_all(work, write_tell, &audit, fault) == 0 ? EXIT_CODE_DONE : print_fault(fault);
}

/* ---- The command line ----------------------------------------------------------------------- */

static int
run(const struct alerts_options *options, enum store_mode mode,
    int (*act)(struct work *work, struct fault *fault))
{
    struct work work = {.options = options};
    struct fault fault = {""};
    int rc = EXIT_CODE_FAILED;

    if (opened_open(options->config_file, mode, &work.on) == 0) {
        rc = act(&work, &fault);
    }
    opened_close(&work.on);
    return rc;
}

/* Reads options and leaves optind at the rest. Returns -1 to go on, or an exit code. */
static int
read_options(int argc, char **argv, const struct command_help *help, struct alerts_options *options)
{
    static const struct option known[] = {{"config", required_argument, NULL, 'c'},
                                          {"by", required_argument, NULL, 'b'},
                                          {"json", no_argument, NULL, 'j'},
                                          {"help", no_argument, NULL, 'h'},
                                          {0}};
    int option;

    *options = (struct alerts_options){.config_file = DEFAULT_CONFIG_FILE};
    while ((option = getopt_long(argc, argv, "", known, NULL)) != -1) {
        switch (option) {
        case 'c':
            options->config_file = optarg;
            break;
        case 'b':
            options->by = optarg;
            break;
        case 'j':
            options->is_json = true;
            break;
        case 'h':
            return command_print_help(help);
        default:
            return command_print_usage(help);
        }
    }
    return -1;
}

/* A whole number above 0; "#12" is one too. */
static bool
read_number(const char *text, int64_t *number)
{
    char *end;

    text += *text == '#' ? 1 : 0;
    errno = 0;
    *number = strtoll(text, &end, 10);
    return errno == 0 && *text >= '0' && *text <= '9' && *end == '\0' && *number > 0;
}

/* One line of plain words. */
static bool
is_said(const char *words)
{
    const char *c;

    for (c = words; *c != '\0'; c++) {
        if ((unsigned char)*c < ' ') {
            return false;
        }
    }
    return words[strspn(words, " ")] != '\0' && g_utf8_validate(words, -1, NULL);
}

int
command_alerts(int argc, char **argv)
{
    struct alerts_options options;
    int rc = read_options(argc, argv, &alerts_help, &options);

    if (rc >= 0) {
        return rc;
    }
    if (options.by != NULL || optind + 1 < argc ||
        (optind + 1 == argc && !read_number(argv[optind], &options.number))) {
        return command_print_usage(&alerts_help);
    }
    return options.number == 0 ? run(&options, STORE_READ, list) : run(&options, STORE_WRITE, look);
}

int
command_take(int argc, char **argv)
{
    struct alerts_options options;
    int rc = read_options(argc, argv, &take_help, &options);

    if (rc >= 0) {
        return rc;
    }
    if (optind + 1 != argc || options.by == NULL || options.is_json ||
        !read_number(argv[optind], &options.number)) {
        return command_print_usage(&take_help);
    }
    return run(&options, STORE_WRITE, take);
}

int
command_close(int argc, char **argv)
{
    struct alerts_options options;
    int rc = read_options(argc, argv, &close_help, &options);

    if (rc >= 0) {
        return rc;
    }
    if (optind + 2 != argc || options.by == NULL || options.is_json ||
        !read_number(argv[optind], &options.number) || !is_said(argv[optind + 1])) {
        return command_print_usage(&close_help);
    }
    options.words = argv[optind + 1];
    return run(&options, STORE_WRITE, close_it);
}

int
command_tell_office(int argc, char **argv)
{
    struct alerts_options options;
    int rc = read_options(argc, argv, &tell_help, &options);

    if (rc >= 0) {
        return rc;
    }
    if (optind + 1 != argc || options.by != NULL || options.is_json || !is_said(argv[optind])) {
        return command_print_usage(&tell_help);
    }
    options.words = argv[optind];
    return run(&options, STORE_WRITE, tell);
}
