#include "duty.h"

#include <assert.h>
#include <string.h>

#include "memory.h"

struct duty
duty_at(void *arena, const struct config *config, int64_t utc_s)
{
    const struct staff **line = memory_array(arena, const struct staff *, config->staff_count);
    struct duty duty = {.line = line,
                        .on_turn = config->staff_count,
                        .since_utc_s = INT64_MIN,
                        .until_utc_s = INT64_MAX};
    size_t i;

    assert(config->staff_count > 0);
    if (config->rota != NULL) {
        const struct rota_now now = rota_at(config->rota, &config->zone, utc_s);

        for (i = 0; i < now.line.count; i++) {
            line[duty.count++] = &config->staff[now.line.staff[i]];
        }
        duty.on_turn = now.line.count;
        duty.since_utc_s = now.since_utc_s;
        duty.until_utc_s = now.until_utc_s;
        duty.is_swap = now.is_swap;
    }
    for (i = 0; i < config->staff_count; i++) {
        if (duty_place(&duty, config->staff[i].phone) == duty.count) {
            line[duty.count++] = &config->staff[i];
        }
    }
    return duty;
}

size_t
duty_place(const struct duty *duty, const char *phone)
{
    size_t place = 0;

    while (place < duty->count && strcmp(duty->line[place]->phone, phone) != 0) {
        place++;
    }
    return place;
}

/* Whether this event of the turn is told of this person. */
static bool
has_event(const struct turn_row *rows, size_t count, enum turn_event event, const char *phone)
{
    size_t i;

    for (i = 0; i < count; i++) {
        if (rows[i].event == event && strcmp(rows[i].who, phone) == 0) {
            return true;
        }
    }
    return false;
}

/* Moves those who match, or those who do not, into `line`; returns how many. */
static size_t
add_those(const struct duty *duty, const struct turn_row *rows, size_t count, bool passed,
          const struct staff **line)
{
    size_t added = 0;
    size_t i;

    for (i = 0; i < duty->count; i++) {
        const struct staff *staff = duty->line[i];

        if (staff != duty->confirmed_by &&
            has_event(rows, count, TURN_PASSED, staff->phone) == passed) {
            line[added++] = staff;
        }
    }
    return added;
}

void
duty_apply(void *arena, struct duty *duty, const struct turn_row *rows, size_t count)
{
    const struct staff **line = memory_array(arena, const struct staff *, duty->count);
    size_t used = 0;
    size_t i;

    for (i = 0; i < duty->count && duty->confirmed_by == NULL; i++) {
        if (has_event(rows, count, TURN_CONFIRMED, duty->line[i]->phone)) {
            duty->confirmed_by = duty->line[i];
            line[used++] = duty->line[i];
        }
    }
    used += add_those(duty, rows, count, false, line + used);
    duty->passed = add_those(duty, rows, count, true, line + used);
    duty->line = line;
    for (i = 0; i < count; i++) {
        if (rows[i].event == TURN_ASKED && strcmp(rows[i].who, line[0]->phone) == 0) {
            duty->asked_utc_s = rows[i].at_utc_s;
        }
    }
}

int
duty_now(struct store *store, void *arena, const struct config *config, int64_t now_utc_s,
         struct duty *duty, struct fault *fault)
{
    struct turn_row *rows;
    size_t count;

    *duty = duty_at(arena, config, now_utc_s);
    if (config->rota == NULL || config->turn_confirm_s == 0) {
        return 0;
    }
    if (turn_rows_of(store, arena, duty->since_utc_s, &rows, &count, fault) != 0) {
        return -1;
    }
    duty_apply(arena, duty, rows, count);
    return 0;
}

void
duty_leave_out(void *arena, struct duty *duty, const char *phone)
{
    size_t place = duty_place(duty, phone);
    const struct staff **line;
    size_t i;

    if (place == duty->count || duty->count == 1) {
        return;
    }
    line = memory_array(arena, const struct staff *, duty->count);
    for (i = 0; i + 1 < duty->count; i++) {
        line[i] = duty->line[i < place ? i : i + 1];
    }
    duty->line = line;
    duty->count--;
}

int64_t
duty_office_opens(const struct config *config, int64_t utc_s)
{
    int64_t opens_utc_s = utc_s;

    if (config->office_hours != NULL && utc_s != INT64_MAX) {
        opens_utc_s = office_opens(config->office_hours, &config->zone, utc_s);
    }
    return opens_utc_s == INT64_MAX ? utc_s : opens_utc_s; /* so long nothing waits */
}
