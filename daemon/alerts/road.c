#include "road.h"

#include <string.h>

#include "config.h"

static const char *const names[] = {
    [ROAD_TEXT] = "text", [ROAD_RING] = "ring", [ROAD_MAIL] = "e-mail", [ROAD_WEBHOOK] = "webhook"};

const char *
road_name(enum road road)
{
    return names[road];
}

enum road
road_named(const char *name)
{
    int road;

    for (road = 0; road < ROAD_COUNT; road++) {
        if (strcmp(names[road], name) == 0) {
            return (enum road)road;
        }
    }
    return ROAD_TEXT;
}

static bool
is_there(const struct config *config, const struct staff *staff, enum road road)
{
    switch (road) {
    case ROAD_RING:
        return config->ring_service != NULL;
    case ROAD_MAIL:
        return config->mail.url != NULL && staff->address != NULL;
    case ROAD_WEBHOOK:
        return staff->webhook_url != NULL;
    default:
        return true;
    }
}

/* Those that are there and begin at this level or below it. */
static unsigned
roads_up_to(const struct config *config, const struct staff *staff, enum alert_level level)
{
    unsigned roads = 0;
    int road;

    for (road = 0; road < ROAD_COUNT; road++) {
        enum alert_level from = staff->road_from[road];

        if (from != ALERT_NONE && from <= level && is_there(config, staff, (enum road)road)) {
            roads |= 1U << road;
        }
    }
    return roads;
}

unsigned
roads_of(const struct config *config, const struct staff *staff)
{
    unsigned roads = roads_up_to(config, staff, ALERT_EMERGENCY);

    return roads != 0 ? roads : 1U << ROAD_TEXT;
}

unsigned
roads_for(const struct config *config, const struct staff *staff, enum alert_level level, bool ring)
{
    unsigned all = roads_of(config, staff);
    unsigned roads = roads_up_to(config, staff, level);

    if (level == ALERT_EMERGENCY || ring) {
        return roads != 0 ? roads : all;
    }
    roads &= ~(1U << ROAD_RING);
    all = all == 1U << ROAD_RING ? all : all & ~(1U << ROAD_RING);
    return roads != 0 ? roads : all;
}

unsigned
roads_instead(const struct config *config, const struct staff *staff, enum alert_level level,
              unsigned used, bool is_final)
{
    unsigned left = roads_of(config, staff) & ~used;

    return level == ALERT_OFFICE && !is_final ? left & ~(1U << ROAD_RING) : left;
}
