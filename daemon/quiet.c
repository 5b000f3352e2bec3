#include "quiet.h"

#include <string.h>

#include <glib.h>

static bool
has_words(const char *place, const char *words)
{
    char *folded_place = g_utf8_casefold(place, -1);
    char *folded_words = g_utf8_casefold(words, -1);
    bool has = strstr(folded_place, folded_words) != NULL;

    g_free(folded_place);
    g_free(folded_words);
    return has;
}

const struct zone *
quiet_zone(const struct config *config, const char *place)
{
    size_t i;

    for (i = 0; place != NULL && i < config->quiet_hours.place_count; i++) {
        if (has_words(place, config->quiet_hours.places[i].words)) {
            return &config->quiet_hours.places[i].zone;
        }
    }
    return &config->zone;
}

/* The first time after `utc_s` that the wall shows this minute of the day. */
static int64_t
next_at(const struct zone *zone, int64_t utc_s, int minute)
{
    struct local_time local = zone_local(zone, utc_s);
    int64_t at;

    local.hour = minute / 60;
    local.minute = minute % 60;
    local.second = 0;
    at = zone_utc(zone, &local);
    if (at <= utc_s) {
        local.day++;
        at = zone_utc(zone, &local);
    }
    return at;
}

static bool
is_quiet(const struct quiet_hours *quiet, const struct zone *zone, int64_t utc_s)
{
    struct local_time local = zone_local(zone, utc_s);
    int minute = local.hour * 60 + local.minute;

    return quiet->from <= quiet->until ? minute >= quiet->from && minute < quiet->until
                                       : minute >= quiet->from || minute < quiet->until;
}

int64_t
quiet_ends(const struct config *config, const char *place, int64_t utc_s)
{
    const struct zone *zone = quiet_zone(config, place);

    return is_quiet(&config->quiet_hours, zone, utc_s)
               ? next_at(zone, utc_s, config->quiet_hours.until)
               : utc_s;
}

int64_t
quiet_begins(const struct config *config, const char *place, int64_t utc_s)
{
    const struct quiet_hours *quiet = &config->quiet_hours;

    return quiet->from == quiet->until ? INT64_MAX
                                       : next_at(quiet_zone(config, place), utc_s, quiet->from);
}
