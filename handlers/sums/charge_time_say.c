#include "charge_time_parts.h"

#include "memory.h"

enum { MINUTE_S = 60, FULL = 100, CHANGES_SAID_MAX = 4 };

static char *
clock_at(const struct asked *asked, int minutes)
{
    return say_clock(asked->arena, asked->context->zone,
                     asked->context->now_utc_s + (int64_t)minutes * MINUTE_S);
}

static char *
say_two(const struct asked *asked, enum phrase phrase, const char *first, const char *second)
{
    return say(asked->arena, asked->context->house, asked->language, phrase, first, second, NULL);
}

static void
list(char **text, const char *item)
{
    memory_append(text, "%s%s", (*text)[0] == '\0' ? "" : ", ", item);
}

/* The battery by what was told of it: "20%", "25-50%". */
static char *
battery_name(const struct asked *asked, const struct charge_sum *sum, size_t battery)
{
    struct percent charge = sum->charges.list[battery];

    return charge.low == charge.high
               ? memory_format(asked->arena, "%d%%", charge.low)
               : memory_format(asked->arena, "%d-%d%%", charge.low, charge.high);
}

static bool
has_place(const struct charge_sum *sum, enum charge_place place)
{
    size_t i;

    for (i = 0; i < sum->place_count; i++) {
        if (sum->is[i] == place) {
            return true;
        }
    }
    return false;
}

/* "Counted from the wall, in the unit while it runs and in the charger." */
static char *
counted_from(const struct asked *asked, const struct charge_sum *sum)
{
    static const enum phrase places[] = {[PLACE_RUNNING] = SAY_PLACE_RUNNING,
                                         [PLACE_OFF] = SAY_PLACE_OFF,
                                         [PLACE_APART] = SAY_PLACE_APART};
    char *where = estimate_say(asked, places[sum->is[0]], NULL);

    if (sum->is[0] != PLACE_APART && has_place(sum, PLACE_APART)) {
        where = say_two(asked, SAY_AND, where, estimate_say(asked, SAY_PLACE_APART, NULL));
    }
    return sum->from_car ? say_two(asked, SAY_CHARGED_CAR, where,
                                   memory_format(asked->arena, "%d", sum->fuse_amps))
                         : estimate_say(asked, SAY_CHARGED_WALL, where);
}

/* Behind what is planned: what was read, and from what it is counted. */
static void
finish(const struct asked *asked, const struct charge_sum *sum, char *text, struct answer *answer)
{
    if (sum->from_car) {
        estimate_append(&text, counted_from(asked, sum));
        if (has_place(sum, PLACE_OFF)) {
            estimate_append(&text, estimate_say(asked, SAY_CAR_ONLY_OFF, NULL));
        }
    }
    estimate_append_read(asked, sum->told, &text);
    answer->text = text;
    if (!sum->from_car) {
        estimate_extra(answer, counted_from(asked, sum));
    }
}

/* ---- when they are full ---------------------------------------------------------------------- */

/* "Emptiest first; change at 9:10 pm, 1:40 am." True if somebody must get up for that. */
static bool
append_changes(const struct asked *asked, const struct charge_sum *sum, char **text)
{
    char *times = memory_copy(asked->arena, "");
    bool by_night = false;
    size_t count = 0, i;

    for (i = 0; i < sum->full.count; i++) {
        int start = sum->full.steps[i].start.high;

        if (start > 0 && count++ < CHANGES_SAID_MAX) {
            list(&times, clock_at(asked, start));
            by_night = by_night || timetable_is_night(sum->night_from, start);
        }
    }
    if (count > 0) {
        estimate_append(text, estimate_say(asked, SAY_CHANGES_AT, times));
    }
    return by_night;
}

void
charge_say_when(const struct asked *asked, const struct charge_sum *sum, struct answer *answer)
{
    size_t batteries = sum->charges.count;
    char *text = say(asked->arena, asked->context->house, asked->language,
                     batteries == 1 ? SAY_FULL_IN : SAY_ALL_FULL_IN,
                     say_minutes(asked->arena, sum->full.all_done.high),
                     clock_at(asked, sum->full.all_done.high), NULL);
    bool by_night = append_changes(asked, sum, &text);

    finish(asked, sum, text, answer);
    estimate_extra(answer, estimate_say(asked, SAY_TO_80_IN,
                                        say_minutes(asked->arena, sum->to_80.all_done.high)));
    if (sum->apart_minutes > 0 && sum->apart_minutes < sum->full.all_done.high) {
        estimate_extra(answer, estimate_say(asked, batteries == 1 ? SAY_APART_IN : SAY_ALL_APART_IN,
                                            say_minutes(asked->arena, sum->apart_minutes)));
    } else if (sum->off_minutes > 0) {
        estimate_extra(
            answer, estimate_say(asked, SAY_OFF_IN, say_minutes(asked->arena, sum->off_minutes)));
    }
    if (by_night && !sum->from_car) {
        estimate_extra(answer, estimate_say(asked, SAY_ASK_TONIGHT, NULL));
    }
}

/* ---- what they have then --------------------------------------------------------------------- */

void
charge_say_after(const struct asked *asked, const struct charge_sum *sum, int minutes,
                 struct answer *answer)
{
    struct percent after[CHARGING_BATTERIES_MAX];
    char *levels = memory_copy(asked->arena, ""), *text;
    size_t i;

    charging_levels_after(&sum->full, sum->charges.list, sum->charges.count, sum->places, minutes,
                          after);
    for (i = 0; i < sum->charges.count; i++) {
        list(&levels, memory_format(asked->arena, "%d%%", after[i].low));
    }
    text = say_two(asked, SAY_LEVELS_AFTER, say_minutes(asked->arena, minutes), levels);
    finish(asked, sum, text, answer);
}

/* "now 20% in the unit, 70% in the charger; 9:50 pm 40% in the charger" */
static char *
steps_text(const struct asked *asked, const struct charge_sum *sum, const struct timetable *table)
{
    bool two_kinds = sum->is[0] != PLACE_APART && has_place(sum, PLACE_APART);
    char *text = memory_copy(asked->arena, "");
    size_t i;

    for (i = 0; i < table->count; i++) {
        const struct timetable_step *step = &table->steps[i];
        bool same_time = i > 0 && table->steps[i - 1].at == step->at;
        char *what = battery_name(asked, sum, step->battery);

        if (two_kinds) {
            memory_append(
                &what, " %s",
                estimate_say(asked,
                             sum->is[step->place] == PLACE_APART ? SAY_IN_CHARGER : SAY_IN_UNIT,
                             NULL));
        }
        if (!same_time) {
            what = step->at == 0 ? estimate_say(asked, SAY_PUT_NOW, what)
                                 : say_two(asked, SAY_PUT_AT, clock_at(asked, step->at), what);
        }
        memory_append(&text, "%s%s", i == 0 ? "" : same_time ? ", " : "; ", what);
    }
    return text;
}

/* Times at which somebody would have to get up; "" if never. */
static char *
times_in_the_night(const struct asked *asked, const struct charge_sum *sum,
                   const struct timetable *table)
{
    char *times = memory_copy(asked->arena, "");
    size_t i;

    for (i = 0; i < table->count; i++) {
        if (timetable_is_night(sum->night_from, table->steps[i].at)) {
            list(&times, clock_at(asked, table->steps[i].at));
        }
    }
    return times;
}

static void
append_night(const struct asked *asked, const struct charge_sum *sum, const struct timetable *table,
             int until, char **text)
{
    struct timetable awake;
    char *times;

    if (table->all_full) {
        if (until > sum->night_from) {
            estimate_append(text, estimate_say(asked, SAY_NOBODY_GETS_UP, NULL));
        }
        return;
    }
    timetable_make(sum->charges.list, sum->charges.count, sum->places, sum->place_count,
                   TIMETABLE_NO_NIGHT, until, &awake);
    times = times_in_the_night(asked, sum, &awake);
    if (awake.all_full && times[0] != '\0') {
        estimate_append(text, estimate_say(asked, SAY_SOMEBODY_GETS_UP, times));
    } else {
        estimate_append(text, estimate_say(asked, SAY_NOT_ALL_BY_THEN, NULL));
    }
}

void
charge_say_plan(const struct asked *asked, const struct charge_sum *sum, int until,
                struct answer *answer)
{
    char *levels = memory_copy(asked->arena, ""), *text;
    struct timetable table;
    size_t i;

    timetable_make(sum->charges.list, sum->charges.count, sum->places, sum->place_count,
                   sum->night_from, until, &table);
    text = estimate_say(asked, SAY_TIMETABLE, steps_text(asked, sum, &table));
    for (i = 0; i < sum->charges.count; i++) {
        list(&levels, memory_format(asked->arena, "%d%%", table.levels[i]));
    }
    estimate_append(&text, table.all_full
                               ? estimate_say(asked, SAY_ALL_FULL_AT, clock_at(asked, until))
                               : say_two(asked, SAY_LEVELS_AT, clock_at(asked, until), levels));
    append_night(asked, sum, &table, until, &text);
    finish(asked, sum, text, answer);
}
