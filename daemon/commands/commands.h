/*
 * The sub-commands of hutbell. Each gets its own name as argv[0] and its options behind it, reads
 * them with getopt_long(), and returns an enum exit_code. main.c holds the table that finds them.
 */
#ifndef COMMANDS_H
#define COMMANDS_H

#define DEFAULT_CONFIG_FILE "/etc/hutbell/hutbell.json"

int command_serve(int argc, char **argv);
int command_ask(int argc, char **argv);
int command_trip(int argc, char **argv);
int command_alerts(int argc, char **argv);
int command_take(int argc, char **argv);
int command_close(int argc, char **argv);
int command_duty(int argc, char **argv);
int command_notice(int argc, char **argv);
int command_tell_office(int argc, char **argv);
int command_import(int argc, char **argv);
int command_log(int argc, char **argv);
int command_report(int argc, char **argv);
int command_export(int argc, char **argv);
int command_check(int argc, char **argv);
int command_check_config(int argc, char **argv);

/* Prints how a command is used: to standard output for --help, to standard error otherwise. */
struct command_help {
    const char *usage; /* "hutbell serve [--config FILE]" */
    const char *text;  /* what it does and what each option means; lines of at most 80 */
};

/* For --help: prints to standard output and returns EXIT_CODE_DONE. */
int command_print_help(const struct command_help *help);
/* For a command line that was not understood: says how it is used and returns EXIT_CODE_USAGE. */
int command_print_usage(const struct command_help *help);

#endif
