/*
 * hutbell check: everything that is wrong with what the office keeps, before a renter finds it.
 * Reads only; needs no running daemon.
 */
#include "commands.h"

#include <errno.h>
#include <getopt.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "check_answers.h"
#include "check_print.h"
#include "check_rentals.h"
#include "check_why.h"
#include "clock.h"
#include "equipment_check.h"
#include "exit_code.h"
#include "loaded.h"
#include "memory.h"
#include "phrasing_check.h"
#include "slow_notice.h"

static const struct command_help help = {
    .usage = "hutbell check [--config FILE] [--why \"text\" | --topic ID] [--all]\n"
             "                     [--json]",
    .text = "Reads configuration, content, equipment and, if it is there, the database, and\n"
            "tells everything that is wrong with file and line and what to do about it: errors\n"
            "first, then what the office can act on (records, equipment, approvals), whole, then\n"
            "how many warnings there are for who writes the content, by kind and by topic.\n"
            "Changes none of that, needs no running daemon. What takes seconds to make of\n"
            "changed content is kept in the configuration's cache_folder, if that is there and\n"
            "only its owner may write it, beside what the daemon keeps: the next check is\n"
            "quick, and so is the daemon when it reads that content.\n\n"
            "  --config FILE   the configuration (" DEFAULT_CONFIG_FILE ")\n"
            "  --why \"text\"    instead: which sign fires on this text and by which line, or\n"
            "                  what holds it back; which topics come first, by which line\n"
            "  --topic ID      instead: all that is to be said of one topic or sign, in every\n"
            "                  language, and what is taken for it\n"
            "  --all           the content's warnings one by one too, and every line of all kinds\n"
            "  --json          one JSON object\n\n"
            "Exit code: 0 with warnings or nothing, 1 with errors.\n",
};

struct check_options {
    const char *config_file, *why, *topic;
    bool is_json, is_all;
};

/* ---- Faults as remarks --------------------------------------------------------------------- */

/* Takes "file:line: message" apart; a message without a file stays whole. */
static void
add_fault(struct remarks *remarks, const char *text)
{
    const char *colon = strstr(text, ": ");
    size_t length = colon == NULL ? 0 : (size_t)(colon - text), digits = 0;
    char *file = memory_copy_n(remarks->arena, text, length);
    int line = 0;

    while (digits < length && file[length - 1 - digits] >= '0' &&
           file[length - 1 - digits] <= '9') {
        digits++;
    }
    if (digits > 0 && digits + 1 < length && file[length - 1 - digits] == ':') {
        line = (int)strtol(file + length - digits, NULL, 10);
        file[length - 1 - digits] = '\0';
    }
    if (length == 0 || strchr(file, ' ') != NULL) {
        remark_add(remarks, REMARK_FAULT, NULL, 0, "", "%s", text);
    } else {
        remark_add(remarks, REMARK_FAULT, file, line, "", "%s", colon + 2);
    }
}

/* ---- What is checked ----------------------------------------------------------------------- */

static void
check_equipment(const struct kb *kb, struct remarks *remarks)
{
    size_t count, i;
    const struct equipment *const *units = kb_equipment_all(kb, &count);

    for (i = 0; i < count; i++) {
        equipment_check(units[i], remarks);
    }
}

static bool
answers_in(const struct kb *kb, enum language language)
{
    size_t topic_count, sign_count, i;
    const struct topic *topics = kb_topics(kb, &topic_count);
    const struct sign *signs = kb_signs(kb, &sign_count);
    bool answers = false;

    for (i = 0; i < topic_count; i++) {
        answers = answers || topics[i].language == language;
    }
    for (i = 0; i < sign_count; i++) {
        answers = answers || signs[i].language == language;
    }
    return answers;
}

/* Without them a reply in Spanish has an English sentence in its midst. */
static void
check_house(const struct loaded *loaded, const char *config_file, struct remarks *remarks)
{
    const struct house *house = &loaded->config->house;
    const struct {
        const char *key, *spanish;
    } words[] = {{"hours", house->hours[LANGUAGE_ES]},
                 {"return_how", house->return_how[LANGUAGE_ES]}};
    bool answers = answers_in(loaded->kb, LANGUAGE_ES);
    size_t i;

    for (i = 0; i < sizeof words / sizeof words[0]; i++) {
        if (answers && words[i].spanish == NULL) {
            remark_add(remarks, REMARK_UNTRANSLATED, config_file, 0,
                       "write it in Spanish in the configuration",
                       "/house/%s_es is missing: replies in Spanish say /house/%s in English",
                       words[i].key, words[i].key);
        }
    }
}

static void
add_note(struct check_scope *scope, const char *note)
{
    scope->notes[scope->note_count++] = note;
}

static void
check_database(const struct loaded *loaded, int64_t now_utc_s, struct remarks *remarks,
               struct check_scope *scope)
{
    const char *path = loaded->config->database;
    struct fault fault = {""};
    struct store *store = NULL;

    if (access(path, F_OK) != 0 && errno == ENOENT) {
        add_note(scope,
                 memory_format(remarks->arena,
                               "There is no database yet (%s): no rentals were checked.", path));
    } else if (store_open(path, STORE_READ, &store, &fault) != 0 ||
               check_rentals(store, loaded->kb, path, now_utc_s, remarks, &scope->rentals,
                             &fault) != 0) {
        remark_add(remarks, REMARK_FAULT, path, 0, "", "%s", fault.text);
        add_note(scope, "The database could not be read: not all rentals were checked.");
    }
    store_close(store);
}

static void
check_loaded(const struct loaded *loaded, const char *config_file, struct workspace *workspace,
             struct remarks *remarks, struct check_scope *scope)
{
    const struct config *config = loaded->config;
    struct clock *clock = clock_new(config->played_start_utc_s, config->played_speed);
    int64_t now_utc_s = clock_now_utc_s(clock);

    clock_free(clock);
    scope->content = config->kb_folder;
    scope->digest = kb_digest(loaded->kb);
    (void)kb_topics(loaded->kb, &scope->topics);
    (void)kb_signs(loaded->kb, &scope->signs);
    (void)kb_equipment_all(loaded->kb, &scope->units);
    check_answers(loaded, now_utc_s, remarks);
    check_house(loaded, config_file, remarks);
    check_equipment(loaded->kb, remarks);
    phrasing_check(loaded->kb, workspace, remarks);
    check_database(loaded, now_utc_s, remarks, scope);
}

/* ---- The command --------------------------------------------------------------------------- */

static void
print_json(json_t *json)
{
    json_dumpf(json, stdout, JSON_INDENT(1) | JSON_ENSURE_ASCII);
    fputc('\n', stdout);
    json_decref(json);
}

static int
show(const struct check_options *options, struct remarks *remarks, const struct check_scope *scope)
{
    size_t errors, warnings;

    remarks_sort(remarks);
    if (options->is_json) {
        print_json(check_json(remarks, scope));
    } else {
        check_print(stdout, remarks, scope, options->is_all || options->topic != NULL);
    }
    check_count(remarks, &errors, &warnings);
    return errors == 0 ? EXIT_CODE_DONE : EXIT_CODE_FAILED;
}

static int
explain(const struct check_options *options, const struct kb *kb, struct workspace *workspace)
{
    if (options->is_json) {
        print_json(check_why_json(kb, workspace, options->why));
    } else {
        check_why_print(stdout, kb, workspace, options->why);
    }
    return EXIT_CODE_DONE;
}

static bool
is_known(const struct kb *kb, const char *id)
{
    bool is = false;
    int language;

    for (language = 0; language < LANGUAGE_COUNT; language++) {
        is = is || kb_topic(kb, id, (enum language)language) != NULL ||
             kb_sign(kb, id, (enum language)language) != NULL;
    }
    return is;
}

/* All that is there, or what is about one topic. */
static int
check(const struct check_options *options, const struct loaded *loaded, struct workspace *workspace,
      struct remarks *remarks, struct check_scope *scope)
{
    if (options->topic != NULL && !is_known(loaded->kb, options->topic)) {
        fprintf(stderr, "hutbell check: there is no topic or sign \"%s\" in %s\n", options->topic,
                loaded->config->kb_folder);
        return EXIT_CODE_FAILED;
    }
    check_loaded(loaded, options->config_file, workspace, remarks, scope);
    if (options->topic != NULL) {
        remarks_keep_about(remarks, options->topic);
    }
    return show(options, remarks, scope);
}

static int
run(const struct check_options *options)
{
    void *arena = memory_must(talloc_new(NULL));
    struct remarks remarks = {.arena = arena};
    struct check_scope scope = {0};
    struct workspace *workspace = workspace_new();
    struct loaded *loaded = NULL;
    struct faults faults = {0};
    size_t i;
    int rc;

    slow_notice_begin("hutbell check: reading and judging the content; this takes some seconds\n");
    if (loaded_read(options->config_file, &loaded, &faults) != 0) {
        for (i = 0; i < faults.count; i++) {
            add_fault(&remarks, faults.list[i].text);
        }
        add_note(&scope, "Mend these first: nothing else can be checked until it loads.");
        rc = show(options, &remarks, &scope);
    } else if (options->why != NULL) {
        rc = explain(options, loaded->kb, workspace);
    } else {
        rc = check(options, loaded, workspace, &remarks, &scope);
    }
    loaded_keep_checked(loaded);
    slow_notice_end();
    faults_release(&faults);
    loaded_free(loaded);
    workspace_free(workspace);
    talloc_free(arena);
    return rc;
}

int
command_check(int argc, char **argv)
{
    static const struct option known[] = {{"config", required_argument, NULL, 'c'},
                                          {"why", required_argument, NULL, 'w'},
                                          {"topic", required_argument, NULL, 't'},
                                          {"all", no_argument, NULL, 'a'},
                                          {"json", no_argument, NULL, 'j'},
                                          {"help", no_argument, NULL, 'h'},
                                          {0}};
    struct check_options options = {.config_file = DEFAULT_CONFIG_FILE};
    int option;

    while ((option = getopt_long(argc, argv, "", known, NULL)) != -1) {
        switch (option) {
        case 'c':
            options.config_file = optarg;
            break;
        case 'w':
            options.why = optarg;
            break;
        case 't':
            options.topic = optarg;
            break;
        case 'a':
            options.is_all = true;
            break;
        case 'j':
            options.is_json = true;
            break;
        case 'h':
            return command_print_help(&help);
        default:
            return command_print_usage(&help);
        }
    }
    if (optind != argc || (options.why != NULL && options.topic != NULL)) {
        return command_print_usage(&help);
    }
    return run(&options);
}
