#include "commands.h"

#include <getopt.h>
#include <stdio.h>

#include "exit_code.h"
#include "loaded.h"

static const struct command_help help = {
    .usage = "hutbell check-config [--config FILE]",
    .text = "Reads a configuration and the content it names, and tells every fault at once with\n"
            "its place and what to do about it. Changes nothing, needs no running daemon.\n\n"
            "  --config FILE   the configuration (" DEFAULT_CONFIG_FILE ")\n"
            "  --explain       prints every key with what it means, and reads nothing\n\n"
            "Run it before you tell a running daemon to read its files again (SIGHUP).\n",
};

static int
print_faults(struct faults *faults)
{
    size_t i;

    for (i = 0; i < faults->count; i++) {
        fprintf(stderr, "%s\n", faults->list[i].text);
    }
    fprintf(stderr, "%zu fault%s\n", faults->count, faults->count == 1 ? "" : "s");
    return EXIT_CODE_FAILED;
}

static int
check(const char *config_file)
{
    struct faults faults = {0};
    struct loaded *loaded = NULL;
    size_t topics, signs, units;
    int rc = EXIT_CODE_DONE;

    if (loaded_read(config_file, &loaded, &faults) != 0) {
        rc = print_faults(&faults);
    } else {
        (void)kb_topics(loaded->kb, &topics);
        (void)kb_signs(loaded->kb, &signs);
        (void)kb_equipment_all(loaded->kb, &units);
        printf("in order: %zu gateways, %zu on call, %zu topics, %zu signs, %zu units, "
               "content %.12s, %zu warnings\n",
               loaded->config->gateway_count, loaded->config->staff_count, topics, signs, units,
               kb_digest(loaded->kb), faults.warnings);
    }
    loaded_free(loaded);
    faults_release(&faults);
    return rc;
}

int
command_check_config(int argc, char **argv)
{
    static const struct option options[] = {{"config", required_argument, NULL, 'c'},
                                            {"explain", no_argument, NULL, 'e'},
                                            {"help", no_argument, NULL, 'h'},
                                            {0}};
    const char *config_file = DEFAULT_CONFIG_FILE;
    int option;

    while ((option = getopt_long(argc, argv, "", options, NULL)) != -1) {
        switch (option) {
        case 'c':
            config_file = optarg;
            break;
        case 'e':
            config_explain(stdout);
            return EXIT_CODE_DONE;
        case 'h':
            return command_print_help(&help);
        default:
            return command_print_usage(&help);
        }
    }
    return optind == argc ? check(config_file) : command_print_usage(&help);
}
