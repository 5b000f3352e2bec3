#include "answered_lately.h"

#include <glib.h>

#include "memory.h"

struct answer {
    enum alert_level level;
    int64_t at_utc_s;
};

struct answered_lately {
    GHashTable *senders; /* phone -> struct answer, both of its own */
};

struct answered_lately *
answered_lately_new(void)
{
    struct answered_lately *lately = memory_new(NULL, struct answered_lately);

    lately->senders = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_free);
    return lately;
}

void
answered_lately_free(struct answered_lately *lately)
{
    if (lately != NULL) {
        g_hash_table_destroy(lately->senders);
        talloc_free(lately);
    }
}

/* A clock that was set back must not silence anyone for long. */
static bool
is_lately(const struct answer *answer, int64_t now_utc_s)
{
    return now_utc_s >= answer->at_utc_s && now_utc_s - answer->at_utc_s < ANSWERED_PAUSE_S;
}

bool
answered_lately(const struct answered_lately *lately, const char *sender, enum alert_level level,
                int64_t now_utc_s)
{
    const struct answer *last = g_hash_table_lookup(lately->senders, sender);

    return last != NULL && last->level >= level && is_lately(last, now_utc_s);
}

static gboolean
is_long_ago(gpointer sender, gpointer answer, gpointer now)
{
    (void)sender;
    return !is_lately(answer, *(const int64_t *)now);
}

void
answered_lately_note(struct answered_lately *lately, const char *sender, enum alert_level level,
                     int64_t now_utc_s)
{
    const struct answer answer = {.level = level, .at_utc_s = now_utc_s};

    if (g_hash_table_size(lately->senders) >= ANSWERED_SENDERS_MAX) {
        g_hash_table_foreach_remove(lately->senders, is_long_ago, &now_utc_s);
    }
    if (g_hash_table_size(lately->senders) >= ANSWERED_SENDERS_MAX) {
        g_hash_table_remove_all(lately->senders); /* some hear it twice, but nobody never */
    }
    g_hash_table_replace(lately->senders, g_strdup(sender), g_memdup2(&answer, sizeof(answer)));
}

size_t
answered_lately_count(const struct answered_lately *lately)
{
    return g_hash_table_size(lately->senders);
}
