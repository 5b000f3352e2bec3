#include "loaded.h"

#include <string.h>
#include <unistd.h>

#include "log.h"
#include "memory.h"

/* With the configuration and its zone; NULL with faults. */
static struct loaded *
loaded_begin(const char *config_file, struct faults *faults)
{
    struct loaded *read = memory_new(NULL, struct loaded);

    if (config_load(config_file, &read->config, faults) != 0) {
        loaded_free(read);
        return NULL;
    }
    read->zone = read->config->zone;
    return read;
}

int
loaded_read(const char *config_file, struct loaded **loaded, struct faults *faults)
{
    struct loaded *read = loaded_begin(config_file, faults);

    if (read == NULL ||
        kb_load(read->config->kb_folder, read->config->cache_folder, &read->kb, faults) != 0) {
        loaded_free(read);
        return -1;
    }
    read->lexicon = lexicon_new(read, read->kb);
    *loaded = read;
    return 0;
}

int
loaded_read_units(const char *config_file, struct loaded **loaded, struct faults *faults)
{
    struct loaded *read = loaded_begin(config_file, faults);

    if (read == NULL || kb_load_equipment(read->config->kb_folder, &read->kb, faults) != 0) {
        loaded_free(read);
        return -1;
    }
    *loaded = read;
    return 0;
}

void
loaded_free(struct loaded *loaded)
{
    if (loaded == NULL) {
        return;
    }
    kb_free(loaded->kb);
    config_free(loaded->config);
    talloc_free(loaded);
}

void
loaded_keep(const struct loaded *loaded)
{
    struct fault fault;

    if (kb_keep(loaded->kb, loaded->config->cache_folder, KEPT_LIVE, &fault) != 0) {
        log_event(LOG_WARNING, "cache-not-kept", "why", fault.text, NULL);
    }
}

void
loaded_keep_checked(const struct loaded *loaded)
{
    struct fault fault; /* not told: the next start is no slower than it was */

    if (loaded != NULL && access(loaded->config->cache_folder, W_OK) == 0) {
        (void)kb_keep(loaded->kb, loaded->config->cache_folder, KEPT_CHECKED, &fault);
    }
}

int64_t
loaded_unapproved(const struct loaded *loaded)
{
    size_t topic_count, sign_count, i;
    const struct topic *topics = kb_topics(loaded->kb, &topic_count);
    const struct sign *signs = kb_signs(loaded->kb, &sign_count);
    int64_t unapproved = 0;

    for (i = 0; i < topic_count; i++) {
        unapproved += !topics[i].approved;
    }
    for (i = 0; i < sign_count; i++) {
        unapproved += !signs[i].approved;
    }
    return unapproved;
}

static int
same(struct faults *faults, const char *file, const char *pointer, bool is_same)
{
    if (is_same) {
        return 0;
    }
    faults_add(faults, file, 0, pointer,
               "changed, but only a restart can change it: restart, or put the old value back");
    return -1;
}

int
loaded_can_replace(const struct loaded *now, const struct loaded *next, struct faults *faults)
{
    const struct config *a = now->config;
    const struct config *b = next->config;
    int rc = 0;

    rc |=
        same(faults, b->file, "/listen/address", strcmp(a->listen_address, b->listen_address) == 0);
    rc |= same(faults, b->file, "/listen/port", a->listen_port == b->listen_port);
    rc |= same(faults, b->file, "/database", strcmp(a->database, b->database) == 0);
    rc |=
        same(faults, b->file, "/played_clock",
             a->played_start_utc_s == b->played_start_utc_s && a->played_speed == b->played_speed);
    return rc == 0 ? 0 : -1;
}
