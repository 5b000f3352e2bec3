#include "opened.h"

#include <stdio.h>

#include "clock.h"
#include "memory.h"

static void
print_faults(const struct faults *faults)
{
    size_t i;

    for (i = 0; i < faults->count; i++) {
        fprintf(stderr, "%s\n", faults->list[i].text);
    }
}

int
opened_open(const char *config_file, enum store_mode mode, struct opened *opened)
{
    struct faults faults = {0};
    struct fault fault = {""};
    struct clock *clock;
    int rc;

    *opened = (struct opened){.arena = memory_must(talloc_new(NULL))};
    rc = config_load(config_file, &opened->config, &faults);
    print_faults(&faults);
    faults_release(&faults);
    if (rc == 0 && store_open(opened->config->database, mode, &opened->store, &fault) != 0) {
        fprintf(stderr, "%s\n", fault.text);
        rc = -1;
    }
    if (rc == 0) {
        clock = clock_new(opened->config->played_start_utc_s, opened->config->played_speed);
        opened->now_utc_s = clock_now_utc_s(clock);
        clock_free(clock);
    }
    return rc;
}

void
opened_close(struct opened *opened)
{
    store_close(opened->store);
    config_free(opened->config);
    talloc_free(opened->arena);
}
