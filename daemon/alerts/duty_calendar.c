#include "duty_calendar.h"

#include <stdlib.h>

#include <glib.h>

#include "memory.h"

enum { WEEK_DAYS = 7, CELL_COLUMNS = 10, ROWS_MAX = 24 * 60 };

static const char *const day_names[] = {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
static const char *const month_names[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                          "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

/* The calendar on its way to being written. */
struct sheet {
    void *arena;
    const struct config *config;
    struct local_time sunday; /* on which the week begins */
    int64_t at_utc_s;
    char *text;
};

static const char *
shown_day(void *arena, const struct local_time *local)
{
    return memory_format(arena, "%s %d %s", day_names[local->weekday], local->day,
                         month_names[local->month - 1]);
}

static const char *
shown_moment(const struct sheet *sheet, int64_t utc_s)
{
    struct local_time local = zone_local(&sheet->config->zone, utc_s);

    return memory_format(sheet->arena, "%s %02d:%02d", shown_day(sheet->arena, &local), local.hour,
                         local.minute);
}

/* So many characters of a name at most, and blanks behind it but for the last of a row. */
static void
append_cell(char **text, int weekday, const char *mark, const char *name)
{
    bool is_last = weekday == WEEK_DAYS - 1;
    glong room = CELL_COLUMNS - 1 - (glong)g_utf8_strlen(mark, -1);
    glong length = g_utf8_strlen(name, -1);
    glong shown = length < room ? length : room;
    char *cut = g_utf8_substring(name, 0, shown);

    memory_append(text, "%s%s%*s", mark, cut, is_last ? 0 : (int)(room - shown + 1), "");
    g_free(cut);
}

/* ---- The line ------------------------------------------------------------------------------- */

static void
append_turn(struct sheet *sheet, const struct duty *duty)
{
    if (sheet->config->rota == NULL) {
        memory_append(&sheet->text, "No rota: always /staff as listed.\n");
        return;
    }
    memory_append(&sheet->text, "%s from %s until %s.\n", duty->is_swap ? "A swap," : "The turn is",
                  shown_moment(sheet, duty->since_utc_s), shown_moment(sheet, duty->until_utc_s));
    if (duty->confirmed_by != NULL) {
        memory_append(&sheet->text, "%s has confirmed it.\n", duty->confirmed_by->name);
    } else if (duty->asked_utc_s != 0 && duty->passed < duty->count) {
        memory_append(&sheet->text, "%s was asked at %s and has not confirmed it yet.\n",
                      duty->line[0]->name, shown_moment(sheet, duty->asked_utc_s));
    } else if (duty->passed == duty->count) {
        memory_append(&sheet->text, "Nobody has confirmed it.\n");
    }
}

static void
append_office(struct sheet *sheet)
{
    int64_t opens_utc_s;

    if (sheet->config->office_hours == NULL) {
        return;
    }
    opens_utc_s = office_opens(sheet->config->office_hours, &sheet->config->zone, sheet->at_utc_s);
    if (opens_utc_s == sheet->at_utc_s) {
        memory_append(&sheet->text, "The office is open.\n");
    } else if (opens_utc_s == INT64_MAX) {
        memory_append(&sheet->text, "The office is closed for more than a year.\n");
    } else {
        memory_append(&sheet->text, "The office is closed until %s.\n",
                      shown_moment(sheet, opens_utc_s));
    }
}

static void
append_line(struct sheet *sheet, const struct duty *duty)
{
    size_t i;

    for (i = 0; i < duty->count; i++) {
        if (i == duty->on_turn) {
            memory_append(&sheet->text,
                          "      not on this turn, called if none of them answers:\n");
        }
        memory_append(&sheet->text, "  %2zu  %-14s %s\n", i + 1, duty->line[i]->phone,
                      duty->line[i]->name);
    }
}

/* ---- The week ------------------------------------------------------------------------------- */

static int64_t
in_week(const struct sheet *sheet, int weekday, int minute)
{
    struct local_time local = sheet->sunday;

    local.day += weekday;
    local.hour = minute / 60;
    local.minute = minute % 60;
    return zone_utc(&sheet->config->zone, &local);
}

static int
compare_minutes(const void *a, const void *b)
{
    return *(const int *)a - *(const int *)b;
}

/* Times of day at which somebody's turn begins in the week, midnight first. Returns how many. */
static size_t
find_rows(const struct sheet *sheet, int **minutes)
{
    int64_t end_utc_s = in_week(sheet, WEEK_DAYS, 0);
    int64_t utc_s = in_week(sheet, 0, 0);
    int *list = memory_array(sheet->arena, int, ROWS_MAX);
    size_t count = 0, i, used = 0;

    list[count++] = 0;
    while (sheet->config->rota != NULL && count < ROWS_MAX) {
        struct local_time local;

        utc_s = duty_at(sheet->arena, sheet->config, utc_s).until_utc_s;
        if (utc_s >= end_utc_s) {
            break;
        }
        local = zone_local(&sheet->config->zone, utc_s);
        list[count++] = local.hour * 60 + local.minute;
    }
    qsort(list, count, sizeof(*list), compare_minutes);
    for (i = 0; i < count; i++) {
        if (i == 0 || list[i] != list[i - 1]) {
            list[used++] = list[i];
        }
    }
    *minutes = list;
    return used;
}

/* Who is first in line from this time of the day to that of the next row; "|" if they were already
 * in the row above. */
static void
append_hours(struct sheet *sheet, int weekday, int minute, int next_minute)
{
    int64_t from_utc_s = in_week(sheet, weekday, minute);
    int64_t next_utc_s = in_week(sheet, weekday, next_minute);
    struct duty duty = duty_at(sheet->arena, sheet->config, from_utc_s);
    bool is_asked = sheet->at_utc_s >= from_utc_s && sheet->at_utc_s < next_utc_s;
    bool goes_on = minute > 0 && duty.since_utc_s < from_utc_s;

    append_cell(&sheet->text, weekday, is_asked ? ">" : "", goes_on ? "|" : duty.line[0]->name);
}

static void
append_week(struct sheet *sheet)
{
    int *minutes;
    size_t count = find_rows(sheet, &minutes);
    size_t row;
    int day;

    memory_append(&sheet->text, "\n      ");
    for (day = 0; day < WEEK_DAYS; day++) {
        struct local_time local = zone_local(&sheet->config->zone, in_week(sheet, day, 12 * 60));

        append_cell(&sheet->text, day, "",
                    memory_format(sheet->arena, "%s %d", day_names[local.weekday], local.day));
    }
    for (row = 0; row < count; row++) {
        memory_append(&sheet->text, "\n%02d:%02d ", minutes[row] / 60, minutes[row] % 60);
        for (day = 0; day < WEEK_DAYS; day++) {
            append_hours(sheet, day, minutes[row], row + 1 < count ? minutes[row + 1] : 24 * 60);
        }
    }
    memory_append(&sheet->text, "\n\n> the time asked about; | the same goes on\n");
}

char *
duty_calendar(void *arena, const struct config *config, const struct duty *duty, int64_t at_utc_s)
{
    struct local_time local = zone_local(&config->zone, at_utc_s);
    struct sheet sheet = {
        .arena = arena,
        .config = config,
        .sunday = {.year = local.year, .month = local.month, .day = local.day - local.weekday},
        .at_utc_s = at_utc_s};

    sheet.text = memory_copy(arena, "");
    memory_append(&sheet.text, "%s, %s\n", shown_moment(&sheet, at_utc_s), config->zone_name);
    append_turn(&sheet, duty);
    append_office(&sheet);
    append_line(&sheet, duty);
    append_week(&sheet);
    return sheet.text;
}
