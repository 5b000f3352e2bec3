/* hutbell: a table of sub-commands. */
#include <stdio.h>
#include <string.h>

#include "commands.h"
#include "exit_code.h"

struct command {
    const char *name;
    int (*run)(int argc, char **argv);
    const char *what; /* one line for --help */
};

static int command_help(int argc, char **argv);
static int command_version(int argc, char **argv);

static const struct command commands[] = {
    {"serve", command_serve, "run the daemon: take texts, answer them, call staff"},
    {"ask", command_ask, "ask as a renter would, from the shell; nothing is sent"},
    {"trip", command_trip, "draw how the batteries last a trip, by hours"},
    {"alerts", command_alerts, "list the open alerts, gravest first"},
    {"take", command_take, "take an alert in the name of one of staff"},
    {"close", command_close, "close an alert with its outcome"},
    {"duty", command_duty, "who is on duty, now or at another time, and the week around it"},
    {"notice", command_notice, "text all renters whom something concerns: a battery called back"},
    {"tell-office", command_tell_office, "open an alert about hutbell itself: the backup failed"},
    {"import", command_import, "read rentals from a CSV file into the store"},
    {"report", command_report, "the night book: what was asked, what is missing, who was called"},
    {"log", command_log, "conversations with the reasons for each answer"},
    {"export", command_export, "write all rentals as a CSV file"},
    {"check", command_check, "read everything, tell what is wrong with it, worst first"},
    {"check-config", command_check_config, "read configuration and content, tell all faults"},
    {"version", command_version, "print the version"},
    {"help", command_help, "print this, or the help of one command"},
};

enum { COMMAND_COUNT = sizeof(commands) / sizeof(commands[0]) };

static const struct command *
find(const char *name)
{
    size_t i;

    for (i = 0; i < COMMAND_COUNT; i++) {
        if (strcmp(commands[i].name, name) == 0) {
            return &commands[i];
        }
    }
    return NULL;
}

static void
print_overview(FILE *out)
{
    size_t i;

    fputs("usage: hutbell COMMAND [OPTION]...\n\n"
          "Answers the texts of people who rent portable oxygen concentrators, and calls\n"
          "staff about what a machine must not answer. Not a medical device, and no\n"
          "replacement for the emergency number.\n\n"
          "Commands:\n",
          out);
    for (i = 0; i < COMMAND_COUNT; i++) {
        fprintf(out, "  %-14s%s\n", commands[i].name, commands[i].what);
    }
    fputs("\nEach command explains itself: hutbell COMMAND --help. First steps:\n"
          "  hutbell check-config --config FILE    is everything in order?\n"
          "  hutbell check --config FILE           what is wrong with the content?\n"
          "  hutbell serve --config FILE           run it\n"
          "  hutbell ask --config FILE --as +12085550123 \"does it charge in the car?\"\n"
          "\nExit codes: 0 done; 1 it did not work, or what was read has faults; 2 the command\n"
          "line was not understood. The manual: man hutbell.\n",
          out);
}

static int
command_help(int argc, char **argv)
{
    char help[] = "--help";
    const struct command *command = argc > 1 ? find(argv[1]) : NULL;

    if (command != NULL && command->run != command_help && command->run != command_version) {
        char *arguments[] = {argv[1], help, NULL};

        return command->run(2, arguments);
    }
    print_overview(stdout);
    return EXIT_CODE_DONE;
}

static int
command_version(int argc, char **argv)
{
    (void)argc;
    (void)argv;
    puts("hutbell " HUTBELL_VERSION);
    return EXIT_CODE_DONE;
}

int
main(int argc, char **argv)
{
    const struct command *command;

    if (argc < 2) {
        print_overview(stderr);
        return EXIT_CODE_USAGE;
    }
    if (strcmp(argv[1], "--help") == 0 || strcmp(argv[1], "-h") == 0) {
        print_overview(stdout);
        return EXIT_CODE_DONE;
    }
    if (strcmp(argv[1], "--version") == 0) {
        return command_version(argc - 1, argv + 1);
    }
    command = find(argv[1]);
    if (command == NULL) {
        fprintf(stderr, "hutbell: there is no command \"%s\"; see hutbell --help\n", argv[1]);
        return EXIT_CODE_USAGE;
    }
    return command->run(argc - 1, argv + 1);
}
