/* How the daemon is: what GET /health says. */
#ifndef HEALTH_H
#define HEALTH_H

#include <stdbool.h>
#include <stdint.h>

struct kb;
struct store;
struct turn;

struct health_parts {
    struct store *store;
    const struct turn *turn;
    const struct kb *kb;
    int64_t now_utc_s;
};

/*
 * One JSON object in `arena`: whether the store can be read and its last transaction went well, how
 * many texts wait to be sent and for how long, how many alerts are open, and which program and
 * content run. *is_well is false if the store is broken.
 */
char *health_json(void *arena, const struct health_parts *parts, bool *is_well);

#endif
