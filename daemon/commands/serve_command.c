/* `hutbell serve`, as it is typed. */
#include "commands.h"

#include <getopt.h>
#include <stddef.h>

#include "serve.h"

static const struct command_help help = {
    .usage = "hutbell serve [--config FILE]",
    .text = "Runs the daemon: takes texts by webhook, answers them, calls staff. One process in\n"
            "the foreground; the log goes to standard error.\n\n"
            "  --config FILE   the configuration (" DEFAULT_CONFIG_FILE ")\n\n"
            "Signals:\n"
            "  HUP          read configuration and content again; with a fault in either the old\n"
            "               ones stay and the log says why\n"
            "  TERM, INT    finish what is in hand, then exit 0\n\n"
            "GET /health says how it is. Every fault of the configuration is told at once and\n"
            "nothing starts; see also hutbell check-config.\n",
};

int
command_serve(int argc, char **argv)
{
    static const struct option options[] = {
        {"config", required_argument, NULL, 'c'}, {"help", no_argument, NULL, 'h'}, {0}};
    const char *config_file = DEFAULT_CONFIG_FILE;
    int option;

    while ((option = getopt_long(argc, argv, "", options, NULL)) != -1) {
        switch (option) {
        case 'c':
            config_file = optarg;
            break;
        case 'h':
            return command_print_help(&help);
        default:
            return command_print_usage(&help);
        }
    }
    return optind == argc ? serve_run(config_file) : command_print_usage(&help);
}
