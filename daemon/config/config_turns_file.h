/* Turns and swaps from a CSV file, and what it shares with those in the configuration; private to
 * config*.c. */
#ifndef CONFIG_TURNS_FILE_H
#define CONFIG_TURNS_FILE_H

#include "config_keys.h"
#include "rota.h"

struct config;

/* The rota as it is read. */
struct rota_reading {
    const struct config *config;
    int weeks;
    int64_t confirm_s;
    const char *first_week, *turns_file;
    struct rota_turn *turns;
    size_t turn_count;
    struct rota_swap *swaps;
    size_t swap_count;
};

/* Adds the turn or the swap that an object tells; every fault is added to those of the reading. */
void rota_turn_read(const struct reading *reading, json_t *value, const char *pointer,
                    struct rota_reading *rota);
void rota_swap_read(const struct reading *reading, json_t *value, const char *pointer,
                    struct rota_reading *rota);

/* Adds what the file holds; each fault names its line, its column and the remedy. */
void turns_file_read(const struct reading *reading, const char *path, struct rota_reading *rota);

#endif
