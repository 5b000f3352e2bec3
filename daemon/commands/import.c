#include "commands.h"

#include <getopt.h>
#include <inttypes.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

#include <glib.h>

#include "clock.h"
#include "exit_code.h"
#include "import_write.h"
#include "loaded.h"
#include "memory.h"
#include "progress.h"
#include "rental_csv.h"

static const struct command_help help = {
    .usage = "hutbell import rentals FILE.csv [--dry-run] [--config FILE]",
    .text = "Takes the office's rentals in. Every row is checked first; if any has a fault, all\n"
            "faults are told with line, column and what to write instead, and nothing changes.\n"
            "A rental that is not in the file stays as it is; one that changed gets a new row,\n"
            "and its older ones stay. May run beside the daemon. If it is interrupted while it\n"
            "writes, import the same file again.\n\n"
            "  --config FILE   the configuration (" DEFAULT_CONFIG_FILE ")\n"
            "  --dry-run       check, and tell what would change\n\n"
            "The file is CSV (RFC 4180) in UTF-8 or Windows-1252, with commas, semicolons or\n"
            "tabs, and column names in the first line: rental_id, state (booked, out, overdue,\n"
            "returned, closed), name, phone_1, unit, start and due at least. hutbell export\n"
            "writes every column there is.\n",
};

enum { FILE_BYTES_MAX = 512 * 1024 * 1024 };

struct import_options {
    const char *config_file, *file;
    bool is_dry_run;
};

/* Checked rentals, close together: there may be 100,000 of them. */
struct pending {
    void *arena;
    GStringChunk *texts;
    struct import_rental *list;
    size_t count;
    struct progress progress;
};

/* Column names and cells are a stranger's; a terminal would obey some of their bytes. */
static void
print_line(const char *text)
{
    for (; *text != '\0'; text++) {
        fputc((unsigned char)*text < ' ' || *text == 0x7f ? '?' : *text, stderr);
    }
    fputc('\n', stderr);
}

/* ---- Checking ------------------------------------------------------------------------------ */

static void
on_rental(void *data, const struct rental *rental, const char *json)
{
    struct pending *pending = data;

    pending->list =
        memory_grow(pending->arena, struct import_rental, pending->list, pending->count);
    pending->list[pending->count++] =
        (struct import_rental){g_string_chunk_insert(pending->texts, rental->digest),
                               g_string_chunk_insert(pending->texts, json)};
}

static void
on_progress(void *data, size_t done, size_t all)
{
    struct pending *pending = data;

    progress_show(&pending->progress, done, all);
}

static int
read_bytes(const char *file, char **bytes, size_t *length, struct faults *faults)
{
    GError *error = NULL;
    struct stat there;

    if (stat(file, &there) == 0 && there.st_size > FILE_BYTES_MAX) {
        faults_add(faults, file, 0, NULL, "has more than %d bytes; import it in pieces",
                   FILE_BYTES_MAX);
        return -1;
    }
    if (!g_file_get_contents(file, bytes, length, &error)) {
        faults_add(faults, NULL, 0, NULL, "%s", error->message);
        g_error_free(error);
        return -1;
    }
    return 0;
}

static int
check_file(const struct import_options *options, const struct loaded *loaded,
           struct pending *pending, struct faults *faults)
{
    const struct rental_csv csv = {.file = options->file,
                                   .setting = {loaded->config, &loaded->zone, loaded->kb},
                                   .on_rental = on_rental,
                                   .on_progress = on_progress,
                                   .data = pending};
    struct csv_text text;
    size_t length;
    char *bytes;
    int rc = -1;

    if (read_bytes(options->file, &bytes, &length, faults) != 0) {
        return -1;
    }
    pending->progress = progress_begin(stderr, "checking");
    if (csv_text_read(bytes, length, options->file, &text, faults) == 0) {
        rc = rental_csv_read(&text, &csv, faults);
        progress_end(&pending->progress);
        if (text.was_windows_1252) {
            fprintf(stderr, "%s: was read as Windows-1252, for it is not UTF-8\n", options->file);
        }
        csv_text_release(&text);
    }
    g_free(bytes);
    return rc;
}

/* ---- Writing ------------------------------------------------------------------------------- */

static void
print_sums(const struct import_sums *sums, bool is_dry_run)
{
    printf("%zu rentals: %zu new, %zu changed, %zu as they were\n", sums->seen, sums->added,
           sums->changed, sums->seen - sums->added - sums->changed);
    if (sums->swaps + sums->new_orders > 0) {
        printf("%zu with another unit or other batteries, %zu with another order: what their "
               "renters told of the batteries %s no longer\n",
               sums->swaps, sums->new_orders, is_dry_run ? "would count" : "counts");
    }
    if (sums->to_confirm > 0) {
        printf("%zu with a pulse setting on another model: staff %s to ask the prescriber\n",
               sums->to_confirm, is_dry_run ? "would be called" : "are called");
    }
    if (is_dry_run) {
        printf("nothing was changed\n");
    } else if (sums->added + sums->changed > 0) {
        printf("nobody else could write for at most %" PRId64 " ms at a stretch\n",
               sums->longest_hold_ms);
    }
}

/* A database that is not there yet holds nothing, and a dry run does not make it. */
static int
judge(struct import_write *job, const char *database, struct import_sums *sums, struct fault *fault)
{
    struct stat there;
    bool is_there = stat(database, &there) == 0;
    int rc = store_open(database, is_there ? STORE_READ : STORE_IN_MEMORY, &job->store, fault);

    return rc == 0 ? import_judge(job, sums, fault) : -1;
}

static int
write_pending(const struct import_options *options, const struct loaded *loaded,
              struct pending *pending, struct faults *faults)
{
    const struct config *config = loaded->config;
    struct clock *clock = clock_new(config->played_start_utc_s, config->played_speed);
    struct import_write job = {.rentals = pending->list,
                               .count = pending->count,
                               .file = options->file,
                               .now_utc_s = clock_now_utc_s(clock),
                               .on_progress = on_progress,
                               .data = pending};
    struct import_sums sums = {0};
    struct fault fault = {""};
    int rc;

    pending->progress = progress_begin(stderr, options->is_dry_run ? "comparing" : "writing");
    if (options->is_dry_run) {
        rc = judge(&job, config->database, &sums, &fault);
    } else {
        rc = store_open(config->database, STORE_WRITE, &job.store, &fault);
        rc = rc == 0 ? import_write(&job, &sums, &fault) : -1;
    }
    progress_end(&pending->progress);
    if (rc == 0) {
        print_sums(&sums, options->is_dry_run);
    } else {
        faults_add(faults, NULL, 0, NULL, "%s", fault.text);
        if (sums.seen > 0 && !options->is_dry_run) {
            faults_add(faults, NULL, 0, NULL,
                       "%zu of %zu rentals are written; import the same file again for the rest",
                       sums.seen, pending->count);
        }
    }
    store_close(job.store);
    clock_free(clock);
    return rc;
}

/* ---- The story ----------------------------------------------------------------------------- */

static int
import(const struct import_options *options, const struct loaded *loaded, struct faults *faults)
{
    struct pending pending = {.arena = memory_must(talloc_new(NULL)),
                              .texts = g_string_chunk_new(1024 * 1024)};
    int rc = check_file(options, loaded, &pending, faults);

    if (rc != 0) {
        faults_add(faults, NULL, 0, NULL, "%zu fault%s; nothing was changed", faults->count,
                   faults->count == 1 ? "" : "s");
    } else if (rc == 0) {
        rc = write_pending(options, loaded, &pending, faults);
    }
    g_string_chunk_free(pending.texts);
    talloc_free(pending.arena);
    return rc;
}

static int
run(const struct import_options *options)
{
    struct faults faults = {0};
    struct loaded *loaded = NULL;
    int rc = loaded_read_units(options->config_file, &loaded, &faults);
    size_t i;

    if (rc == 0) {
        rc = import(options, loaded, &faults);
    }
    for (i = 0; i < faults.count; i++) {
        print_line(faults.list[i].text);
    }
    loaded_free(loaded);
    faults_release(&faults);
    return rc == 0 ? EXIT_CODE_DONE : EXIT_CODE_FAILED;
}

int
command_import(int argc, char **argv)
{
    static const struct option known[] = {{"config", required_argument, NULL, 'c'},
                                          {"dry-run", no_argument, NULL, 'n'},
                                          {"help", no_argument, NULL, 'h'},
                                          {0}};
    struct import_options options = {.config_file = DEFAULT_CONFIG_FILE};
    int option;

    while ((option = getopt_long(argc, argv, "", known, NULL)) != -1) {
        switch (option) {
        case 'c':
            options.config_file = optarg;
            break;
        case 'n':
            options.is_dry_run = true;
            break;
        case 'h':
            return command_print_help(&help);
        default:
            return command_print_usage(&help);
        }
    }
    if (optind + 2 != argc || strcmp(argv[optind], "rentals") != 0) {
        return command_print_usage(&help);
    }
    options.file = argv[optind + 1];
    return run(&options);
}
