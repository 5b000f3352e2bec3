#include "commands.h"

#include <errno.h>
#include <fcntl.h>
#include <getopt.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "audit_rows.h"
#include "clock.h"
#include "config.h"
#include "exit_code.h"
#include "memory.h"
#include "progress.h"
#include "rental_csv_write.h"
#include "rental_rows.h"

static const struct command_help help = {
    .usage = "hutbell export rentals [FILE.csv] [--config FILE]",
    .text = "Writes the current record of every rental as CSV, every column there is, to the\n"
            "file or to standard output. hutbell import reads it again, and if nobody edited it\n"
            "nothing changes. Phones that staff linked by text are not in it; an import leaves\n"
            "them as they are. May run beside the daemon. That it was done is written down in\n"
            "the audit trail.\n\n"
            "  --config FILE   the configuration (" DEFAULT_CONFIG_FILE ")\n\n"
            "The file holds names, addresses and phones: only its owner may read it. It begins\n"
            "with a byte order mark, by which spreadsheets know UTF-8.\n",
};

struct export_options {
    const char *config_file;
    const char *file; /* NULL: standard output */
};

struct writing {
    struct rental_csv_writer writer;
    struct progress progress;
    size_t done, all;
};

static int
on_row(void *data, const struct rental_row *row, struct fault *fault)
{
    struct writing *writing = data;

    if (rental_csv_write_row(&writing->writer, row->json) != 0) {
        fault_set(fault, "rental %s: its record cannot be read; import it again", row->rental_id);
        return -1;
    }
    progress_show(&writing->progress, ++writing->done, writing->all);
    return 0;
}

static int
write_rows(struct store *store, const struct config *config, FILE *out, size_t count,
           struct fault *fault)
{
    void *arena = memory_must(talloc_new(NULL));
    struct writing writing = {.progress = progress_begin(stderr, "writing"), .all = count};
    int rc;

    writing.writer = rental_csv_write_begin(arena, out, &config->zone);
    rc = rental_rows_each(store, on_row, &writing, fault);
    progress_end(&writing.progress);
    talloc_free(arena);
    return rc;
}

/* ---- Where to ------------------------------------------------------------------------------ */

static FILE *
open_new(const char *path, struct fault *fault)
{
    int file = open(path, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, S_IRUSR | S_IWUSR);
    FILE *out = file < 0 ? NULL : fdopen(file, "w");

    if (out == NULL) {
        fault_set(fault, "%s: cannot be written: %s", path, strerror(errno));
        if (file >= 0) {
            close(file);
        }
    }
    return out;
}

static int
write_stdout(struct store *store, const struct config *config, size_t count, struct fault *fault)
{
    if (write_rows(store, config, stdout, count, fault) != 0) {
        return -1;
    }
    if (fflush(stdout) != 0 || ferror(stdout)) {
        fault_set(fault, "standard output: cannot be written: %s", strerror(errno));
        return -1;
    }
    return 0;
}

/* Aside first, so that a file of this name is whole or is what it was. */
static int
write_file(struct store *store, const struct config *config, const char *file, size_t count,
           struct fault *fault)
{
    char *aside = memory_format(NULL, "%s.part", file);
    FILE *out = open_new(aside, fault);
    int rc = -1;

    if (out == NULL) {
        goto out;
    }
    fputs("\xef\xbb\xbf", out);
    rc = write_rows(store, config, out, count, fault);
    if ((fflush(out) != 0 || ferror(out) || fsync(fileno(out)) != 0) && rc == 0) {
        fault_set(fault, "%s: cannot be written: %s", aside, strerror(errno));
        rc = -1;
    }
    if (fclose(out) != 0 && rc == 0) {
        fault_set(fault, "%s: cannot be written: %s", aside, strerror(errno));
        rc = -1;
    }
    if (rc == 0 && rename(aside, file) != 0) {
        fault_set(fault, "%s: cannot be written: %s", file, strerror(errno));
        rc = -1;
    }
    if (rc != 0) {
        unlink(aside);
    }
out:
    talloc_free(aside);
    return rc;
}

/* ---- The story ----------------------------------------------------------------------------- */

/* Before anything is shown: what cannot be written down is not shown. */
static int
write_audit(struct store *store, const struct export_options *options, size_t count,
            int64_t now_utc_s, struct fault *fault)
{
    char *detail = memory_format(NULL, "%zu rows", count);
    const struct audit_row audit = {.who = "hutbell export",
                                    .what = "export-rentals",
                                    .subject = options->file,
                                    .detail = detail};
    int rc = store_begin_patiently(store, fault);

    if (rc == 0) {
        rc = audit_rows_add(store, &audit, now_utc_s, fault);
        rc = rc == 0 ? store_commit(store, fault) : -1;
    }
    if (rc != 0) {
        store_rollback(store);
    }
    talloc_free(detail);
    return rc;
}

static int
export_rentals(const struct export_options *options, const struct config *config,
               struct fault *fault)
{
    struct clock *clock = clock_new(config->played_start_utc_s, config->played_speed);
    struct store *store = NULL;
    struct stat there;
    size_t count = 0;
    int rc = -1;

    if (stat(config->database, &there) != 0) {
        fault_set(fault, "%s: there is no database yet; import rentals first", config->database);
        goto out;
    }
    if (store_open(config->database, STORE_WRITE, &store, fault) != 0 ||
        rental_rows_count(store, &count, fault) != 0 ||
        write_audit(store, options, count, clock_now_utc_s(clock), fault) != 0) {
        goto out;
    }
    rc = options->file == NULL ? write_stdout(store, config, count, fault)
                               : write_file(store, config, options->file, count, fault);
    if (rc == 0 && options->file != NULL) {
        printf("%zu rentals\n", count);
    }
out:
    store_close(store);
    clock_free(clock);
    return rc;
}

static int
run(const struct export_options *options)
{
    struct faults faults = {0};
    struct fault fault = {""};
    struct config *config = NULL;
    int rc = config_load(options->config_file, &config, &faults);
    size_t i;

    for (i = 0; i < faults.count; i++) {
        fprintf(stderr, "%s\n", faults.list[i].text);
    }
    if (rc == 0) {
        rc = export_rentals(options, config, &fault);
    }
    if (fault.text[0] != '\0') {
        fprintf(stderr, "%s\n", fault.text);
    }
    config_free(config);
    faults_release(&faults);
    return rc == 0 ? EXIT_CODE_DONE : EXIT_CODE_FAILED;
}

int
command_export(int argc, char **argv)
{
    static const struct option known[] = {
        {"config", required_argument, NULL, 'c'}, {"help", no_argument, NULL, 'h'}, {0}};
    struct export_options options = {.config_file = DEFAULT_CONFIG_FILE};
    int option;

    while ((option = getopt_long(argc, argv, "", known, NULL)) != -1) {
        switch (option) {
        case 'c':
            options.config_file = optarg;
            break;
        case 'h':
            return command_print_help(&help);
        default:
            return command_print_usage(&help);
        }
    }
    if (optind < argc && strcmp(argv[optind], "rentals") != 0) {
        return command_print_usage(&help);
    }
    if (optind + 2 < argc) {
        return command_print_usage(&help);
    }
    if (optind + 1 < argc) {
        options.file = argv[optind + 1];
    }
    return run(&options);
}
