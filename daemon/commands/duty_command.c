/* Who is on duty, from the shell; needs no running daemon. Of now also who confirmed the turn; what
 * another time will bring only the rota tells. */
#include "commands.h"

#include <getopt.h>
#include <stdio.h>
#include <string.h>

#include "clock.h"
#include "duty_calendar.h"
#include "exit_code.h"
#include "memory.h"

static const struct command_help help = {
    .usage = "hutbell duty [--at TIME] [--config FILE]",
    .text = "Prints who is on duty, who is second and third in line and until when, and the\n"
            "week around it as a calendar.\n\n"
            "  --at TIME       another time than now: \"2026-03-07 20:00\" as the office's wall\n"
            "                  shows it, a day alone, or RFC 3339\n"
            "  --config FILE   the configuration (" DEFAULT_CONFIG_FILE ")\n",
};

/* Returns 0 and *utc_s, or -1. */
static int
read_time(const struct config *config, const char *text, int64_t *utc_s)
{
    struct local_time local;
    bool has_time;

    if (clock_read_wall(text, &local, &has_time) == 0) {
        *utc_s = zone_utc(&config->zone, &local);
        return 0;
    }
    return strchr(text, 'T') != NULL ? clock_read(text, utc_s) : -1;
}

static int64_t
now(const struct config *config)
{
    struct clock *clock = clock_new(config->played_start_utc_s, config->played_speed);
    int64_t now_utc_s = clock_now_utc_s(clock);

    clock_free(clock);
    return now_utc_s;
}

/* Without a store the rota alone. */
static void
show_now(void *arena, const struct config *config)
{
    int64_t now_utc_s = now(config);
    struct duty duty = duty_at(arena, config, now_utc_s);
    struct store *store = NULL;
    struct fault fault = {""};

    if (store_open(config->database, STORE_READ, &store, &fault) != 0 ||
        duty_now(store, arena, config, now_utc_s, &duty, &fault) != 0) {
        fprintf(stderr, "by the rota alone, for the store cannot be read: %s\n", fault.text);
    }
    store_close(store);
    fputs(duty_calendar(arena, config, &duty, now_utc_s), stdout);
}

static int
show(const char *config_file, const char *at)
{
    void *arena = memory_must(talloc_new(NULL));
    struct config *config = NULL;
    struct faults faults = {0};
    int rc = EXIT_CODE_DONE;
    struct duty duty;
    int64_t at_utc_s;
    size_t i;

    if (config_load(config_file, &config, &faults) != 0) {
        for (i = 0; i < faults.count; i++) {
            fprintf(stderr, "%s\n", faults.list[i].text);
        }
        rc = EXIT_CODE_FAILED;
    } else if (at == NULL) {
        show_now(arena, config);
    } else if (read_time(config, at, &at_utc_s) != 0) {
        fprintf(stderr, "--at: \"%s\" is no time; expected one such as \"2026-03-07 20:00\"\n", at);
        rc = EXIT_CODE_USAGE;
    } else {
        duty = duty_at(arena, config, at_utc_s);
        fputs(duty_calendar(arena, config, &duty, at_utc_s), stdout);
    }
    config_free(config);
    faults_release(&faults);
    talloc_free(arena);
    return rc;
}

int
command_duty(int argc, char **argv)
{
    static const struct option options[] = {{"at", required_argument, NULL, 'a'},
                                            {"config", required_argument, NULL, 'c'},
                                            {"help", no_argument, NULL, 'h'},
                                            {0}};
    const char *config_file = DEFAULT_CONFIG_FILE;
    const char *at = NULL;
    int option;

    while ((option = getopt_long(argc, argv, "", options, NULL)) != -1) {
        switch (option) {
        case 'a':
            at = optarg;
            break;
        case 'c':
            config_file = optarg;
            break;
        case 'h':
            return command_print_help(&help);
        default:
            return command_print_usage(&help);
        }
    }
    return optind == argc ? show(config_file, at) : command_print_usage(&help);
}
