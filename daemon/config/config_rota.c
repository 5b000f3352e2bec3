#include "config_rota.h"

#include <string.h>

#include "clock.h"
#include "config.h"
#include "config_turns_file.h"
#include "memory.h"

#define COUNT(array) (sizeof(array) / sizeof((array)[0]))

enum { WEEKS_MAX = 52, TURNS_MAX = 400, DAYS_MAX = 400 };

/* In the order of struct local_time's weekday. */
static const char *const weekdays[] = {"sunday",   "monday", "tuesday",  "wednesday",
                                       "thursday", "friday", "saturday", NULL};

/* What stands in a turn or a swap, as it is read. */
struct entry {
    const struct config *config; /* for the names of staff */
    struct rota_line line;
    int week, weekday;
    const char *at, *from, *until;
};

#define ENTRY_TEXT(key_name, field, what)                                                          \
    {                                                                                              \
        .name = (key_name), .kind = KEY_TEXT, .required = true,                                    \
        .at = offsetof(struct entry, field), .low = 1, .high = 40, .means = (what)                 \
    }

/* ---- Who ------------------------------------------------------------------------------------ */

static void
report_nobody(const struct reading *reading, const struct config *config, const char *name,
              const char *pointer)
{
    const char **names = memory_array(reading->arena, const char *, config->staff_count);
    const char *nearest;
    size_t count = 0;
    size_t i;

    for (i = 0; i < config->staff_count; i++) {
        if (config->staff[i].name != NULL) {
            names[count++] = config->staff[i].name;
        }
    }
    nearest = keys_nearest(name, names, count);
    keys_fault(reading, pointer, "names \"%s\", who is nobody of /staff; %s%s%s", name,
               nearest != NULL ? "did you mean \"" : "list them there, or take the name out",
               nearest != NULL ? nearest : "", nearest != NULL ? "\"?" : "");
}

/* Their place in /staff; SIZE_MAX and a fault if they have none. */
static size_t
place_of(const struct reading *reading, const struct config *config, const char *name,
         const char *pointer)
{
    size_t i;

    for (i = 0; i < config->staff_count; i++) {
        if (config->staff[i].name != NULL && strcasecmp(config->staff[i].name, name) == 0) {
            return i;
        }
    }
    report_nobody(reading, config, name, pointer);
    return SIZE_MAX;
}

static void
read_line(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct entry *entry = target;
    size_t count;
    const char **names = keys_texts(reading, value, pointer, TURNS_MAX, &count);
    size_t *staff = memory_array(reading->arena, size_t, count + 1);
    size_t i, j;

    if (entry->config->staff_count == 0) {
        return; /* that has its fault */
    }
    for (i = 0; i < count; i++) {
        const char *at = memory_format(reading->arena, "%s/%zu", pointer, i);

        staff[i] = place_of(reading, entry->config, names[i], at);
        for (j = 0; j < i; j++) {
            if (staff[j] == staff[i] && staff[i] != SIZE_MAX) {
                keys_fault(reading, at, "names %s twice; name each person once", names[i]);
            }
        }
    }
    entry->line = (struct rota_line){.staff = staff, .count = count};
}

#define LINE                                                                                       \
    {                                                                                              \
        .name = "line", .kind = KEY_OWN, .required = true, .read = read_line,                      \
        .means = "who is called, by their names in /staff, first in line first: [\"Robin\", "      \
                 "\"Kim\"]; behind them come the rest of /staff"                                   \
    }

/* ---- Turns ---------------------------------------------------------------------------------- */

static const struct key turn_key_list[] = {
    {.name = "week",
     .kind = KEY_INT,
     .at = offsetof(struct entry, week),
     .low = 0,
     .high = WEEKS_MAX,
     .means = "in which week of the cycle, from 1 on; 0 in each"},
    {.name = "day",
     .kind = KEY_WORD,
     .required = true,
     .at = offsetof(struct entry, weekday),
     .words = weekdays,
     .means = "the day on which it starts"},
    ENTRY_TEXT("at", at, "the time of day at which it starts, in /zone: \"18:00\""),
    LINE,
};
static const struct key_table turn_keys = {turn_key_list, COUNT(turn_key_list)};

static void
add_turn(const struct reading *reading, struct rota_reading *rota, const struct rota_turn *turn,
         const char *pointer)
{
    size_t i;

    for (i = 0; i < rota->turn_count; i++) {
        if (rota->turns[i].week == turn->week && rota->turns[i].weekday == turn->weekday &&
            rota->turns[i].minute == turn->minute) {
            keys_fault(reading, pointer, "starts when another turn does; take one of them out");
            return;
        }
    }
    rota->turns = memory_grow(reading->arena, struct rota_turn, rota->turns, rota->turn_count);
    rota->turns[rota->turn_count++] = *turn;
}

void
rota_turn_read(const struct reading *reading, json_t *value, const char *pointer,
               struct rota_reading *rota)
{
    struct entry entry = {.config = rota->config};
    struct rota_turn turn;
    int week;

    keys_read(reading, &turn_keys, value, pointer, &entry);
    if (entry.at == NULL) {
        return; /* has its fault */
    }
    turn = (struct rota_turn){.weekday = entry.weekday,
                              .minute = keys_minutes(entry.at, strlen(entry.at)),
                              .line = entry.line};
    if (turn.minute < 0 || turn.minute >= 24 * 60) {
        keys_fault(reading, keys_pointer(reading, pointer, "at"),
                   "is none; expected a time of day from 00:00 to 23:59");
    }
    if (entry.week > rota->weeks) {
        keys_fault(reading, keys_pointer(reading, pointer, "week"),
                   "is %d, but the cycle has %d: make /rota/weeks longer, or count from 1",
                   entry.week, rota->weeks);
        return;
    }
    for (week = 0; week < rota->weeks; week++) {
        if (entry.week == 0 || entry.week == week + 1) {
            turn.week = week;
            add_turn(reading, rota, &turn, pointer);
        }
    }
}

/* A list of so many objects at most. */
static bool
is_list(const struct reading *reading, json_t *value, const char *pointer, size_t least)
{
    if (json_is_array(value) && json_array_size(value) >= least &&
        json_array_size(value) <= TURNS_MAX) {
        return true;
    }
    keys_fault(reading, pointer, "is %s; expected a list of %zu to %d objects",
               json_is_array(value) && json_array_size(value) == 0 ? "empty" : keys_kind(value),
               least, TURNS_MAX);
    return false;
}

static void
read_turns(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct rota_reading *rota = target;
    json_t *member;
    size_t i;

    if (value == NULL || !is_list(reading, value, pointer, 1)) {
        return;
    }
    json_array_foreach (value, i, member) {
        rota_turn_read(reading, member, memory_format(reading->arena, "%s/%zu", pointer, i), rota);
    }
}

/* ---- Swaps ---------------------------------------------------------------------------------- */

static const struct key swap_key_list[] = {
    ENTRY_TEXT("from", from, "from when on, in /zone: \"2026-03-07 20:00\""),
    ENTRY_TEXT("until", until, "until when, likewise"),
    LINE,
};
static const struct key_table swap_keys = {swap_key_list, COUNT(swap_key_list)};

static bool
read_wall(const struct reading *reading, const char *text, const char *pointer,
          struct local_time *local)
{
    bool has_time;

    if (text == NULL) {
        return false; /* has its fault */
    }
    if (clock_read_wall(text, local, &has_time) != 0 || !has_time) {
        keys_fault(reading, pointer,
                   "is \"%s\"; expected a day and a time as the wall shows them: "
                   "\"2026-03-07 20:00\"",
                   text);
        return false;
    }
    return true;
}

static int64_t
wall_minutes(const struct local_time *local)
{
    return zone_days(local->year, local->month, local->day) * 24 * 60 + (int64_t)local->hour * 60 +
           local->minute;
}

void
rota_swap_read(const struct reading *reading, json_t *value, const char *pointer,
               struct rota_reading *rota)
{
    struct entry entry = {.config = rota->config};
    struct rota_swap swap = {0};

    keys_read(reading, &swap_keys, value, pointer, &entry);
    swap.line = entry.line;
    if (read_wall(reading, entry.from, keys_pointer(reading, pointer, "from"), &swap.from) &&
        read_wall(reading, entry.until, keys_pointer(reading, pointer, "until"), &swap.until) &&
        wall_minutes(&swap.from) >= wall_minutes(&swap.until)) {
        keys_fault(reading, keys_pointer(reading, pointer, "until"),
                   "is not after \"from\"; exchange them, or mend the dates");
    }
    rota->swaps = memory_grow(reading->arena, struct rota_swap, rota->swaps, rota->swap_count);
    rota->swaps[rota->swap_count++] = swap;
}

static void
read_swaps(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    json_t *member;
    size_t i;

    if (value == NULL || !is_list(reading, value, pointer, 0)) {
        return;
    }
    json_array_foreach (value, i, member) {
        rota_swap_read(reading, member, memory_format(reading->arena, "%s/%zu", pointer, i),
                       target);
    }
}

/* ---- The rota ------------------------------------------------------------------------------- */

static const struct key rota_key_list[] = {
    {.name = "weeks",
     .kind = KEY_INT,
     .at = offsetof(struct rota_reading, weeks),
     .low = 1,
     .high = WEEKS_MAX,
     .number = 1,
     .means = "after how many weeks it starts again"},
    {.name = "first_week",
     .kind = KEY_TEXT,
     .at = offsetof(struct rota_reading, first_week),
     .low = 1,
     .high = 40,
     .means = "any day of a first week of the cycle, \"2026-02-01\"; weeks begin on Sunday; may be "
              "left out if there is only one week"},
    {.name = "confirm_s",
     .kind = KEY_SECONDS,
     .at = offsetof(struct rota_reading, confirm_s),
     .high = 3600,
     .number = 600,
     .means =
         "seconds in which whose turn begins must text HERE, else the next in line takes it; 0 "
         "nobody is asked"},
    {.name = "turns_file",
     .kind = KEY_PATH,
     .at = offsetof(struct rota_reading, turns_file),
     .low = 1,
     .high = 500,
     .means = "a CSV file with turns and swaps, behind those below: columns week, day, at, from, "
              "until, first, second, third; a row with day and at is a turn that comes back, one "
              "with from and until a swap"},
    {.name = "turns",
     .kind = KEY_OWN,
     .read = read_turns,
     .table = &turn_keys,
     .each = "0",
     .means = "each lasts until the next one starts; these or turns_file"},
    {.name = "swaps",
     .kind = KEY_OWN,
     .read = read_swaps,
     .table = &swap_keys,
     .each = "0",
     .means = "someone else for once; of two at a time the later in the list counts"},
};
const struct key_table rota_keys = {rota_key_list, COUNT(rota_key_list)};

/* The Sunday on or before the day that was told. */
static int64_t
first_day(const struct reading *reading, const struct rota_reading *rota, const char *pointer)
{
    const char *at = keys_pointer(reading, pointer, "first_week");
    struct local_time local;
    bool has_time;

    if (rota->first_week == NULL) {
        if (rota->weeks > 1) {
            keys_fault(reading, at, "is missing: any day of a first week, \"2026-02-01\"");
        }
        return zone_days(2026, 2, 1); /* any Sunday will do */
    }
    if (clock_read_wall(rota->first_week, &local, &has_time) != 0 || has_time) {
        keys_fault(reading, at, "is \"%s\"; expected a day: \"2026-02-01\"", rota->first_week);
        return 0;
    }
    return zone_days(local.year, local.month, local.day) - local.weekday;
}

void
rota_read(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct config *config = target;
    struct rota_reading read = {.config = config};
    size_t faults = reading->faults->count;
    struct rota *rota;

    if (value == NULL) {
        return;
    }
    keys_read(reading, &rota_keys, value, pointer, &read);
    if (read.turns_file != NULL) {
        turns_file_read(reading, read.turns_file, &read);
    }
    if (read.turn_count == 0 && reading->faults->count == faults) {
        keys_fault(reading, keys_pointer(reading, pointer, "turns"),
                   "is missing: at least one turn, here or in turns_file");
    }
    rota = memory_new(reading->arena, struct rota);
    *rota = (struct rota){.weeks = read.weeks,
                          .first_day = first_day(reading, &read, pointer),
                          .turns = read.turns,
                          .turn_count = read.turn_count,
                          .swaps = read.swaps,
                          .swap_count = read.swap_count};
    config->rota = rota;
    config->turn_confirm_s = read.confirm_s;
}

/* ---- Office hours --------------------------------------------------------------------------- */

struct hours_reading {
    const char *days[7];
    int64_t *holidays;
    size_t holiday_count;
};

static void
read_holidays(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct hours_reading *hours = target;
    const char **days;
    size_t count, i;

    if (value == NULL || (json_is_array(value) && json_array_size(value) == 0)) {
        return;
    }
    days = keys_texts(reading, value, pointer, DAYS_MAX, &count);
    hours->holidays = memory_array(reading->arena, int64_t, count + 1);
    for (i = 0; i < count; i++) {
        struct local_time local;
        bool has_time;

        if (clock_read_wall(days[i], &local, &has_time) != 0 || has_time) {
            keys_fault(reading, memory_format(reading->arena, "%s/%zu", pointer, i),
                       "is \"%s\"; expected a day: \"2026-12-25\"", days[i]);
            continue;
        }
        hours->holidays[hours->holiday_count++] = zone_days(local.year, local.month, local.day);
    }
}

#define DAY(key_name, weekday)                                                                     \
    {                                                                                              \
        .name = (key_name), .kind = KEY_TEXT, .at = offsetof(struct hours_reading, days[weekday]), \
        .low = 1, .high = 40, .means = "\"08:00-18:00\"; without it closed all day"                \
    }

static const struct key office_hours_key_list[] = {
    DAY("sunday", 0),
    DAY("monday", 1),
    DAY("tuesday", 2),
    DAY("wednesday", 3),
    DAY("thursday", 4),
    DAY("friday", 5),
    DAY("saturday", 6),
    {.name = "holidays",
     .kind = KEY_OWN,
     .read = read_holidays,
     .means = "days on which it is closed: [\"2026-12-25\"]"},
};
const struct key_table office_hours_keys = {office_hours_key_list, COUNT(office_hours_key_list)};

static struct office_day
read_day(const struct reading *reading, const char *text, const char *pointer)
{
    const char *dash = strchr(text, '-');
    struct office_day day = {0};

    if (dash != NULL) {
        day.open = keys_minutes(text, (size_t)(dash - text));
        day.close = keys_minutes(dash + 1, strlen(dash + 1));
    }
    if (dash == NULL || day.open < 0 || day.close < 0 || day.open >= day.close) {
        keys_fault(reading, pointer,
                   "is \"%s\"; expected when it opens and closes that day: \"08:00-18:00\"", text);
    }
    return day;
}

void
office_hours_read(const struct reading *reading, json_t *value, const char *pointer, void *target)
{
    struct config *config = target;
    struct hours_reading read = {{0}, NULL, 0};
    struct office_hours *hours;
    bool is_ever_open = false;
    int day;

    if (value == NULL) {
        return;
    }
    keys_read(reading, &office_hours_keys, value, pointer, &read);
    hours = memory_new(reading->arena, struct office_hours);
    hours->holidays = read.holidays;
    hours->holiday_count = read.holiday_count;
    for (day = 0; day < 7; day++) {
        if (read.days[day] != NULL) {
            is_ever_open = true;
            hours->days[day] =
                read_day(reading, read.days[day], keys_pointer(reading, pointer, weekdays[day]));
        }
    }
    if (!is_ever_open) {
        keys_fault(reading, pointer,
                   "names no day on which the office is open; give one, \"monday\": "
                   "\"08:00-18:00\", or take it all out");
    }
    config->office_hours = hours;
}
