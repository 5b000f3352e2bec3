/*
 * `hutbell notice`, beside the daemon: it writes the rows of all texts in one transaction, and the
 * daemon sends them as it sends everything. Without --send nothing is written.
 */
#include "commands.h"

#include <errno.h>
#include <getopt.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <glib.h>

#include "audit_rows.h"
#include "exit_code.h"
#include "memory.h"
#include "opened.h"
#include "notice_print.h"

static const struct command_help help = {
    .usage = "hutbell notice TEXT WHICH... [--es TEXT] [--urgent] [--send --by NAME]\n"
             "       hutbell notice [NUMBER]",
    .text =
        "Texts all renters whom something concerns: a battery called back, the mains off, a\n"
        "road closed. First look: without --send it only shows the texts, who gets them\n"
        "when, and whom to ring because a text does not reach them.\n\n"
        "  hutbell notice \"Batteries with serial B-7... may stop. We bring you another today.\\\n"
        "    Keep the unit on the wall until then.\" --serial 'B-7*' \\\n"
        "    --es \"Las baterias B-7... pueden fallar. Hoy le llevamos otra. Use el enchufe.\"\n\n"
        "Once it is sent, hutbell notice NUMBER tells who answered and whom to ring, and\n"
        "hutbell notice alone lists all of them. Company and office phone are put around the\n"
        "text. Texts travel unencrypted: name no illness and no setting, and never tell\n"
        "anyone to change or stop their oxygen; the prescription decides.\n\n"
        "Which rentals (at least one of these; all must fit; * and ? stand for anything):\n"
        "  --unit ID       kind of unit: brook\n"
        "  --serial NAME   of the unit or of one of the batteries: 'B-7*'\n"
        "  --place WORDS   words of the place: \"Upper Lodge\"\n"
        "  --state STATE   booked, out, overdue or returned; more than once for several;\n"
        "                  without it out and overdue\n"
        "  --everyone      no other choice than the state\n\n"
        "How:\n"
        "  --es TEXT       the same in Spanish, for those whose record says so\n"
        "  --urgent        now, whatever the hour, and past the share of notices a day;\n"
        "                  without it nobody is texted in the quiet hours of their place\n"
        "  --send          send it\n"
        "  --by NAME       who of staff sends it, by name or phone; goes into the audit trail\n"
        "  --config FILE   the configuration (" DEFAULT_CONFIG_FILE ")\n\n"
        "Nobody is texted who texted STOP, on a landline, or for whom a death was told.\n"
        "Exit codes: 0 done; 1 it did not work, or nobody fits; 2 the command line was not\n"
        "understood.\n",
};

enum { TEXT_CHARACTERS_MAX = 480 };

struct options {
    const char *config_file, *by;
    struct notice_pick pick;
    const char *english, *spanish;
    int64_t number;
    bool is_everyone, is_urgent, is_sent;
};

/* The command at work. */
struct work {
    struct opened on;
    const struct options *options;
};

/* ---- Sending -------------------------------------------------------------------------------- */

static const struct staff *
sender_of(const struct work *work)
{
    const struct staff *staff = config_staff_by_name(work->on.config, work->options->by);

    return staff != NULL ? staff : config_staff_by_phone(work->on.config, work->options->by);
}

static int
plan(struct work *work, struct notice *notice, struct fault *fault)
{
    size_t unread;

    *notice = (struct notice){.english = work->options->english,
                              .spanish = work->options->spanish,
                              .is_urgent = work->options->is_urgent};
    if (notice_plan(work->on.store, work->on.arena, work->on.config, &work->options->pick,
                    work->on.now_utc_s, notice, &unread, fault) != 0) {
        return -1;
    }
    if (unread > 0) {
        fprintf(stderr, "%zu record%s cannot be read and %s left out; see hutbell check\n", unread,
                unread == 1 ? "" : "s", unread == 1 ? "is" : "are");
    }
    if (notice->count == 0) {
        fault_set(fault, "no rental fits: %s",
                  notice_pick_words(work->on.arena, &work->options->pick));
        return -1;
    }
    return 0;
}

/* Whoever reads Spanish is not left with a text that they may not understand. */
static int
check_languages(const struct notice *notice, struct fault *fault)
{
    if (notice->spanish == NULL && notice->texted_in[LANGUAGE_ES] > 0) {
        fault_set(fault, "%zu of these phones read Spanish: give the text with --es as well",
                  notice->texted_in[LANGUAGE_ES]);
        return -1;
    }
    return 0;
}

/* What is sent is planned inside the transaction: nobody has texted STOP since. */
static int
write_all(struct work *work, const struct staff *staff, struct notice *notice, int64_t *number,
          struct fault *fault)
{
    const char *picked = notice_pick_words(work->on.arena, &work->options->pick);
    struct audit_row audit = {.who = staff->phone, .what = "send-notice"};

    if (store_begin_patiently(work->on.store, fault) != 0) {
        return -1;
    }
    if (plan(work, notice, fault) == 0 && check_languages(notice, fault) == 0 &&
        notice_write(work->on.store, work->on.arena, work->on.config, notice, staff->phone, picked,
                     work->on.now_utc_s, number, fault) == 0) {
        audit.subject = memory_format(work->on.arena, "%lld", (long long)*number);
        audit.detail = memory_format(work->on.arena, "%zu texts, %s%s", notice->texted, picked,
                                     notice->is_urgent ? ", urgent" : "");
        if (audit_rows_add(work->on.store, &audit, work->on.now_utc_s, fault) == 0 &&
            store_commit(work->on.store, fault) == 0) {
            return 0;
        }
    }
    store_rollback(work->on.store);
    return -1;
}

static int
send_it(struct work *work, struct fault *fault)
{
    const struct staff *staff = sender_of(work);
    struct notice notice;
    int64_t number;

    if (staff == NULL) {
        fault_set(fault, "--by: \"%s\" is nobody of /staff in the configuration",
                  work->options->by);
        return -1;
    }
    if (write_all(work, staff, &notice, &number, fault) != 0) {
        return -1;
    }
    notice_print_plan(work->on.arena, work->on.config, &notice, work->on.now_utc_s);
    printf("\nnotice %lld: %zu text%s for the daemon to send; who answers: hutbell notice %lld\n",
           (long long)number, notice.texted, notice.texted == 1 ? "" : "s", (long long)number);
    return 0;
}

static int
preview(struct work *work, struct fault *fault)
{
    struct notice notice;

    if (plan(work, &notice, fault) != 0) {
        return -1;
    }
    notice_print_plan(work->on.arena, work->on.config, &notice, work->on.now_utc_s);
    if (check_languages(&notice, fault) != 0) {
        return -1;
    }
    printf("\nNothing was sent. To send it: the same with --send --by NAME\n");
    return 0;
}

static int
list(struct work *work, struct fault *fault)
{
    return notice_print_all(work->on.store, work->on.arena, work->on.config, fault);
}

static int
show(struct work *work, struct fault *fault)
{
    return notice_print_one(work->on.store, work->on.arena, work->on.config, work->options->number,
                            fault);
}

/* ---- The command line ----------------------------------------------------------------------- */

static int
run(const struct options *options, enum store_mode mode,
    int (*act)(struct work *work, struct fault *fault))
{
    struct work work = {.options = options};
    struct fault fault = {""};
    int rc = EXIT_CODE_FAILED;

    if (opened_open(options->config_file, mode, &work.on) == 0) {
        rc = act(&work, &fault) == 0 ? EXIT_CODE_DONE : EXIT_CODE_FAILED;
        if (rc != EXIT_CODE_DONE) {
            fprintf(stderr, "hutbell notice: %s\n", fault.text);
        }
    }
    opened_close(&work.on);
    return rc;
}

/* A state that may be texted: closed rentals' numbers are other people's by now. */
static bool
add_state(struct notice_pick *pick, const char *name)
{
    int state = rental_state_named(name);

    if (state < 0 || state == RENTAL_CLOSED) {
        fprintf(stderr, "--state: \"%s\" is none; expected booked, out, overdue or returned\n",
                name);
        return false;
    }
    pick->states |= 1U << state;
    return true;
}

/* One line of plain words that people can be texted. */
static bool
is_text(const char *words, const char *what)
{
    const char *c;

    for (c = words; *c != '\0'; c++) {
        if ((unsigned char)*c < ' ' || *c == 0x7f) {
            fprintf(stderr, "%s has a line break or a control character; write it in one line\n",
                    what);
            return false;
        }
    }
    if (!g_utf8_validate(words, -1, NULL) || words[strspn(words, " ")] == '\0' ||
        g_utf8_strlen(words, -1) > TEXT_CHARACTERS_MAX) {
        fprintf(stderr, "%s is empty, not UTF-8, or longer than %d characters\n", what,
                TEXT_CHARACTERS_MAX);
        return false;
    }
    return true;
}

/* A number alone is a notice that was sent, never a text. */
static bool
read_number(const char *text, int64_t *number)
{
    char *end;

    errno = 0;
    *number = strtoll(text, &end, 10);
    return errno == 0 && *text >= '0' && *text <= '9' && *end == '\0' && *number > 0;
}

/* One of the options that say which rentals; false if it is none of them. */
static bool
read_pick(int option, const char *value, struct options *options)
{
    switch (option) {
    case 'u':
        options->pick.unit = value;
        return true;
    case 's':
        options->pick.serial = value;
        return true;
    case 'p':
        options->pick.place = value;
        return true;
    case 'a':
        options->is_everyone = true;
        return true;
    default:
        return false;
    }
}

/* One that says what is done and how; false if it is none of them. */
static bool
read_how(int option, const char *value, struct options *options)
{
    switch (option) {
    case 'e':
        options->spanish = value;
        return true;
    case 'g':
        options->is_urgent = true;
        return true;
    case 'n':
        options->is_sent = true;
        return true;
    case 'b':
        options->by = value;
        return true;
    case 'c':
        options->config_file = value;
        return true;
    default:
        return false;
    }
}

/* Returns -1 to go on, or an exit code. */
static int
read_options(int argc, char **argv, struct options *options)
{
    static const struct option known[] = {
        {"unit", required_argument, NULL, 'u'},  {"serial", required_argument, NULL, 's'},
        {"place", required_argument, NULL, 'p'}, {"state", required_argument, NULL, 't'},
        {"everyone", no_argument, NULL, 'a'},    {"es", required_argument, NULL, 'e'},
        {"urgent", no_argument, NULL, 'g'},      {"send", no_argument, NULL, 'n'},
        {"by", required_argument, NULL, 'b'},    {"config", required_argument, NULL, 'c'},
        {"help", no_argument, NULL, 'h'},        {0}};
    int option;

    *options = (struct options){.config_file = DEFAULT_CONFIG_FILE};
    while ((option = getopt_long(argc, argv, "", known, NULL)) != -1) {
        if (option == 'h') {
            return command_print_help(&help);
        }
        if (option == 't') {
            if (!add_state(&options->pick, optarg)) {
                return EXIT_CODE_USAGE;
            }
        } else if (!read_pick(option, optarg, options) && !read_how(option, optarg, options)) {
            return command_print_usage(&help);
        }
    }
    return -1;
}

/* Nothing is said but where the configuration is. */
static bool
is_bare(const struct options *options)
{
    const struct notice_pick *pick = &options->pick;

    return pick->unit == NULL && pick->serial == NULL && pick->place == NULL && pick->states == 0 &&
           !options->is_everyone && !options->is_urgent && !options->is_sent &&
           options->spanish == NULL && options->by == NULL;
}

/* Whether the options fit a text that is to be sent or shown. */
static bool
is_complete(const struct options *options)
{
    const struct notice_pick *pick = &options->pick;
    bool picks = pick->unit != NULL || pick->serial != NULL || pick->place != NULL;

    if (!picks && !options->is_everyone && pick->states == 0) {
        fprintf(stderr, "say which rentals: --unit, --serial, --place, --state or --everyone\n");
        return false;
    }
    if (picks && options->is_everyone) {
        fprintf(stderr, "--everyone and a choice of rentals: leave one of them out\n");
        return false;
    }
    if (options->is_sent != (options->by != NULL)) {
        fprintf(stderr, "--send and --by NAME go together\n");
        return false;
    }
    return true;
}

int
command_notice(int argc, char **argv)
{
    struct options options;
    int rc = read_options(argc, argv, &options);
    int rest = argc - optind;

    if (rc >= 0) {
        return rc;
    }
    if (rest == 0 && is_bare(&options)) {
        return run(&options, STORE_READ, list);
    }
    if (rest == 1 && is_bare(&options) && read_number(argv[optind], &options.number)) {
        return run(&options, STORE_READ, show);
    }
    if (rest != 1) {
        return command_print_usage(&help);
    }
    options.english = argv[optind];
    if (!is_text(options.english, "the text") ||
        (options.spanish != NULL && !is_text(options.spanish, "--es")) || !is_complete(&options)) {
        return command_print_usage(&help);
    }
    return options.is_sent ? run(&options, STORE_WRITE, send_it)
                           : run(&options, STORE_READ, preview);
}
