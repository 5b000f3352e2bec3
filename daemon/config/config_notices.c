/* When renters may be texted unasked, and how many at once. */
#include "config_notices.h"

#include <string.h>

#include "clock.h"
#include "memory.h"

#define COUNT(array) (sizeof(array) / sizeof((array)[0]))

enum { PLACES_MAX = 50, ZONE_YEARS = 5 };

static const struct key notices_key_list[] = {
    {.name = "per_minute",
     .kind = KEY_INT,
     .at = offsetof(struct config, notices.per_minute),
     .low = 1,
     .high = 600,
     .number = 20,
     .means = "texts of a notice that are sent in a minute"},
    {.name = "per_day",
     .kind = KEY_INT,
     .at = offsetof(struct config, notices.per_day),
     .low = 1,
     .high = 20,
     .number = 3,
     .means = "notices that one phone gets in 24 hours; past it only urgent ones"},
};
const struct key_table notices_keys = {notices_key_list, COUNT(notices_key_list)};

/* ---- Quiet hours ---------------------------------------------------------------------------- */

static const struct key place_key_list[] = {
    {.name = "place",
     .kind = KEY_TEXT,
     .required = true,
     .at = offsetof(struct place_zone, words),
     .low = 2,
     .high = 100,
     .means = "words that stand in the place of a rental"},
    {.name = "zone",
     .kind = KEY_TEXT,
     .required = true,
     .at = offsetof(struct place_zone, zone_name),
     .low = 1,
     .high = 100,
     .means = "the time zone there"},
};
static const struct key_table place_keys = {place_key_list, COUNT(place_key_list)};

static void
places_read(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct quiet_hours *quiet = target;
    struct place_zone *places;
    json_t *entry;
    size_t i;

    if (value == NULL) {
        return;
    }
    if (!json_is_array(value) || json_array_size(value) > PLACES_MAX) {
        keys_fault(reading, pointer, "is %s; expected a list of at most %d places",
                   keys_kind(value), PLACES_MAX);
        return;
    }
    places = memory_array(reading->arena, struct place_zone, json_array_size(value) + 1);
    json_array_foreach (value, i, entry) {
        keys_read(reading, &place_keys, entry, memory_format(reading->arena, "%s/%zu", pointer, i),
                  &places[i]);
    }
    quiet->places = places;
    quiet->place_count = json_array_size(value);
}

static const struct key quiet_hours_key_list[] = {
    {.name = "from",
     .kind = KEY_TEXT,
     .at = offsetof(struct quiet_hours, from_text),
     .low = 5,
     .high = 5,
     .text = "21:00",
     .means = "from when on renters are texted nothing that they did not ask for"},
    {.name = "until",
     .kind = KEY_TEXT,
     .at = offsetof(struct quiet_hours, until_text),
     .low = 5,
     .high = 5,
     .text = "08:00",
     .means = "until when; the same as from: no quiet hours"},
    {.name = "places",
     .kind = KEY_OWN,
     .read = places_read,
     .table = &place_keys,
     .each = "0",
     .means = "places that lie in another zone than /zone"},
};
const struct key_table quiet_hours_keys = {quiet_hours_key_list, COUNT(quiet_hours_key_list)};

static int
read_minute(const struct reading *reading, const char *text, const char *pointer, const char *name)
{
    int minute = text != NULL ? keys_minutes(text, strlen(text)) : 0;

    if (minute < 0 || minute >= 24 * 60) {
        keys_fault(reading, keys_pointer(reading, pointer, name),
                   "is \"%s\"; expected a time of day from 00:00 to 23:59", text);
    }
    return minute;
}

void
quiet_hours_read(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct quiet_hours *quiet = &((struct config *)target)->quiet_hours;

    keys_read(reading, &quiet_hours_keys, value, pointer, quiet);
    quiet->from = read_minute(reading, quiet->from_text, pointer, "from");
    quiet->until = read_minute(reading, quiet->until_text, pointer, "until");
}

void
quiet_hours_check(const struct reading *reading, struct config *config)
{
    struct clock *clock = clock_new(config->played_start_utc_s, config->played_speed);
    struct quiet_hours *quiet = &config->quiet_hours;
    struct fault fault;
    size_t i;

    for (i = 0; i < quiet->place_count; i++) {
        if (quiet->places[i].zone_name != NULL &&
            clock_zone(reading->arena, quiet->places[i].zone_name, clock_now_utc_s(clock),
                       ZONE_YEARS, &quiet->places[i].zone, &fault) != 0) {
            keys_fault(reading, memory_format(reading->arena, "/quiet_hours/places/%zu/zone", i),
                       "%s", fault.text);
        }
    }
    clock_free(clock);
}
