/*
 * GLib names no list of a zone's changes, but it numbers the stretches between them; so the
 * changes are found by looking at each day's stretch and bisecting the days that differ.
 */
#include "clock.h"

#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include <glib.h>

#include "memory.h"

enum { DAY_S = 24 * 60 * 60, YEAR_S = 366 * DAY_S };

/* Whole numbers above this are milliseconds: as seconds they would lie past the year 5100. */
static const int64_t milliseconds_above = 100000000000;

struct clock {
    int64_t start_utc_s; /* 0: the real clock */
    int64_t started_monotonic_ms;
    int speed;
    struct clock_source source;
    int64_t ahead_ms; /* UTC minus what has passed, for the real clock */
};

static int64_t
now_ms(clockid_t id)
{
    struct timespec now;
    int rc = clock_gettime(id, &now);

    assert(rc == 0);
    (void)rc;
    return (int64_t)now.tv_sec * 1000 + now.tv_nsec / 1000000;
}

static int64_t
wall_ms(void *data)
{
    (void)data;
    return now_ms(CLOCK_REALTIME);
}

static int64_t
passed_ms(void *data)
{
    (void)data;
    return now_ms(CLOCK_BOOTTIME);
}

/* By how much the wall is ahead of what has passed. */
static int64_t
wall_ahead_ms(const struct clock *clock)
{
    const struct clock_source *source = &clock->source;

    return source->wall_ms(source->data) - source->passed_ms(source->data);
}

struct clock *
clock_new_by(const struct clock_source *source)
{
    struct clock *clock = memory_new(NULL, struct clock);

    clock->speed = 1;
    clock->source = *source;
    clock->ahead_ms = wall_ahead_ms(clock);
    return clock;
}

struct clock *
clock_new(int64_t start_utc_s, int speed)
{
    static const struct clock_source system = {wall_ms, passed_ms, NULL};

    struct clock *clock = clock_new_by(&system);

    assert(speed >= 1);
    clock->start_utc_s = start_utc_s;
    clock->started_monotonic_ms = now_ms(CLOCK_MONOTONIC);
    clock->speed = speed;
    return clock;
}

void
clock_free(struct clock *clock)
{
    talloc_free(clock);
}

int64_t
clock_now_utc_s(const struct clock *clock)
{
    int64_t played_ms;

    if (clock->start_utc_s == 0) {
        return (clock->source.passed_ms(clock->source.data) + clock->ahead_ms) / 1000;
    }
    played_ms = now_ms(CLOCK_MONOTONIC) - clock->started_monotonic_ms;
    return clock->start_utc_s + played_ms * clock->speed / 1000;
}

int64_t
clock_step_s(struct clock *clock)
{
    int64_t step_ms = wall_ahead_ms(clock) - clock->ahead_ms;

    if (clock->start_utc_s != 0) {
        return 0;
    }
    if (step_ms > -CLOCK_SLACK_S * 1000 && step_ms < CLOCK_SLACK_S * 1000) {
        clock->ahead_ms += step_ms;
        return 0;
    }
    return step_ms / 1000;
}

void
clock_move(struct clock *clock, int64_t seconds)
{
    clock->ahead_ms += seconds * 1000;
}

struct timeval
clock_wait(const struct clock *clock, int64_t seconds)
{
    int64_t wait_us;

    if (seconds > YEAR_S) {
        seconds = YEAR_S; /* a timer looks anew when it fires, so a shorter wait does no harm */
    }
    wait_us = seconds > 0 ? seconds * 1000000 / clock->speed : 0;
    if (wait_us < 1000) {
        wait_us = 1000;
    }
    return (struct timeval){.tv_sec = wait_us / 1000000, .tv_usec = wait_us % 1000000};
}

static gint
stretch_at(GTimeZone *zone, int64_t utc_s)
{
    return g_time_zone_find_interval(zone, G_TIME_TYPE_UNIVERSAL, utc_s);
}

/* The first second of the stretch that `later` lies in; `earlier` lies in one before it. */
static int64_t
stretch_start(GTimeZone *zone, int64_t earlier, int64_t later)
{
    gint wanted = stretch_at(zone, later);

    while (later - earlier > 1) {
        int64_t middle = earlier + (later - earlier) / 2;

        if (stretch_at(zone, middle) == wanted) {
            later = middle;
        } else {
            earlier = middle;
        }
    }
    return later;
}

int
clock_zone(void *arena, const char *name, int64_t now_utc_s, int years, struct zone *zone,
           struct fault *fault)
{
    GTimeZone *source = g_time_zone_new_identifier(name);
    int64_t day = now_utc_s - (int64_t)years * YEAR_S;
    int64_t end = now_utc_s + (int64_t)years * YEAR_S;
    struct zone_step *steps;
    size_t count = 0;

    if (source == NULL) {
        fault_set(fault,
                  "time zone \"%s\": the system has none of that name; names look like "
                  "\"America/Denver\" (package tzdata)",
                  name);
        return -1;
    }
    steps = memory_grow(arena, struct zone_step, NULL, 0);
    steps[count++] = (struct zone_step){
        .from_utc_s = day, .offset_s = g_time_zone_get_offset(source, stretch_at(source, day))};
    for (; day < end; day += DAY_S) {
        gint next = stretch_at(source, day + DAY_S);
        int32_t offset_s = g_time_zone_get_offset(source, next);

        if (offset_s == steps[count - 1].offset_s) {
            continue; /* at most the stretch's name changed */
        }
        steps = memory_grow(arena, struct zone_step, steps, count);
        steps[count++] = (struct zone_step){.from_utc_s = stretch_start(source, day, day + DAY_S),
                                            .offset_s = offset_s};
    }
    g_time_zone_unref(source);
    zone->steps = steps;
    zone->count = count;
    return 0;
}

/* A whole number, nothing before or behind it. */
static bool
read_number(const char *text, int64_t *number)
{
    gint64 value;

    if (!g_ascii_isdigit(text[0]) ||
        !g_ascii_string_to_signed(text, 10, 0, G_MAXINT64 / 2, &value, NULL)) {
        return false;
    }
    *number = value;
    return true;
}

/* RFC 3339, 5.6: date, T (or a space), time and offset must all be there; GLib reads any ISO 8601.
 */
static bool
is_rfc3339(const char *text)
{
    static const char shape[] = "dddd-dd-ddTdd:dd:dd";
    size_t i;

    for (i = 0; i < sizeof(shape) - 1; i++) {
        if (shape[i] == 'd'   ? !g_ascii_isdigit(text[i])
            : shape[i] == 'T' ? strchr("Tt ", text[i]) == NULL || text[i] == '\0'
                              : text[i] != shape[i]) {
            return false;
        }
    }
    text += i;
    if (*text == '.') {
        size_t digits = strspn(text + 1, "0123456789");

        if (digits == 0) {
            return false;
        }
        text += 1 + digits;
    }
    if (*text == 'Z' || *text == 'z') {
        return text[1] == '\0';
    }
    return (*text == '+' || *text == '-') && g_ascii_isdigit(text[1]) && g_ascii_isdigit(text[2]) &&
           text[3] == ':' && g_ascii_isdigit(text[4]) && g_ascii_isdigit(text[5]) &&
           text[6] == '\0';
}

int
clock_read(const char *text, int64_t *utc_s)
{
    GDateTime *read;
    char *upper;

    if (read_number(text, utc_s)) {
        if (*utc_s > milliseconds_above) {
            *utc_s /= 1000;
        }
        return 0;
    }
    if (!is_rfc3339(text)) {
        return -1;
    }
    upper = g_ascii_strup(text, -1); /* RFC 3339 allows t and z, GLib does not */
    read = g_date_time_new_from_iso8601(upper, NULL);
    g_free(upper);
    if (read == NULL) {
        return -1;
    }
    *utc_s = g_date_time_to_unix(read);
    g_date_time_unref(read);
    return 0;
}

static bool
is_possible(const struct local_time *local)
{
    return local->month >= 1 && local->month <= 12 && local->day >= 1 && local->day <= 31 &&
           local->hour >= 0 && local->hour <= 23 && local->minute >= 0 && local->minute <= 59 &&
           local->second >= 0 && local->second <= 59;
}

int
clock_read_wall(const char *text, struct local_time *local, bool *has_time)
{
    static const struct zone_step utc_step = {0, 0};
    static const struct zone utc = {&utc_step, 1};
    struct local_time read = {0}, shown;
    size_t length = strlen(text);
    int day_used = 0, used = 0, all_used = 0;
    int count;

    /* NOLINTBEGIN(cert-err34-c): each number has a width, and the date is checked below */
    count = sscanf(text, "%4d-%2d-%2d%n%*1[ T]%2d:%2d%n:%2d%n", &read.year, &read.month, &read.day,
                   &day_used, &read.hour, &read.minute, &used, &read.second, &all_used);
    /* NOLINTEND(cert-err34-c) */
    if (!(count == 6 && (size_t)all_used == length) && !(count == 5 && (size_t)used == length) &&
        !(count == 3 && (size_t)day_used == length)) {
        return -1;
    }
    shown = zone_local(&utc, zone_utc(&utc, &read));
    if (!is_possible(&read) || shown.month != read.month) {
        return -1; /* no 30 February */
    }
    *local = shown;
    *has_time = count > 3;
    return 0;
}

/* gmtime_r() asks no clock. Years past 9999 cannot be written in RFC 3339. */
static struct tm
utc_of(int64_t utc_s)
{
    const int64_t last = 253402300799; /* 9999-12-31T23:59:59Z */
    time_t seconds = utc_s < 0 ? 0 : utc_s > last ? last : utc_s;
    struct tm utc;

    gmtime_r(&seconds, &utc);
    return utc;
}

char *
clock_text(void *arena, int64_t utc_s)
{
    struct tm utc = utc_of(utc_s);
    char text[32];

    strftime(text, sizeof(text), "%Y-%m-%dT%H:%M:%SZ", &utc);
    return memory_copy(arena, text);
}

int64_t
clock_monotonic_us(void)
{
    return now_ms(CLOCK_MONOTONIC) * 1000;
}

void
clock_stamp(char stamp[CLOCK_STAMP_SIZE])
{
    int64_t ms = now_ms(CLOCK_REALTIME);
    struct tm utc = utc_of(ms / 1000);
    char seconds[24];

    strftime(seconds, sizeof(seconds), "%Y-%m-%dT%H:%M:%S", &utc);
    snprintf(stamp, CLOCK_STAMP_SIZE, "%s.%03dZ", seconds, (int)(ms % 1000));
}
