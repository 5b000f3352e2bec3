/*
 * What a command of the shell that works on the store by itself has in hand: configuration, store
 * and the time that the configuration's clock shows.
 */
#ifndef OPENED_H
#define OPENED_H

#include "config.h"
#include "store.h"

struct opened {
    void *arena;
    struct config *config;
    struct store *store;
    int64_t now_utc_s;
};

/*
 * Opens all of it. Returns 0, or -1 with each fault printed as a line of standard error; either way
 * opened_close() ends it.
 */
int opened_open(const char *config_file, enum store_mode mode, struct opened *opened);
void opened_close(struct opened *opened);

#endif
