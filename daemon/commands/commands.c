#include "commands.h"

#include <stdio.h>

#include "exit_code.h"

int
command_print_help(const struct command_help *help)
{
    printf("usage: %s\n\n%s", help->usage, help->text);
    return EXIT_CODE_DONE;
}

int
command_print_usage(const struct command_help *help)
{
    fprintf(stderr, "usage: %s\nTry the same with --help.\n", help->usage);
    return EXIT_CODE_USAGE;
}
