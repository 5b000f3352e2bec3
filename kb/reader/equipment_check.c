#include "equipment_check.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "memory.h"

/* Settings go by whole numbers unless the file has finer steps. */
enum { WHOLE_STEP = 10 };

/* ---- Run times ----------------------------------------------------------------------------- */

static int
by_setting(const void *left, const void *right)
{
    const struct run_time *l = left, *r = right;

    return l->setting_tenths < r->setting_tenths ? -1 : l->setting_tenths > r->setting_tenths;
}

/* The rows of one mode in the order of their settings, in `arena`. */
static struct run_time *
rows_of(void *arena, const struct equipment *equipment, enum mode mode, size_t *count)
{
    struct run_time *rows = memory_array(arena, struct run_time, equipment->run_time_count + 1);
    size_t i;

    *count = 0;
    for (i = 0; i < equipment->run_time_count; i++) {
        if (equipment->run_times[i].mode == mode) {
            rows[(*count)++] = equipment->run_times[i];
        }
    }
    qsort(rows, *count, sizeof(*rows), by_setting);
    return rows;
}

/* The step from setting to setting of a mode: the finest that its rows show. */
static int
step_of(const struct run_time *rows, size_t count)
{
    int step = WHOLE_STEP;
    size_t i;

    for (i = 1; i < count; i++) {
        int apart = rows[i].setting_tenths - rows[i - 1].setting_tenths;

        step = apart < step ? apart : step;
    }
    return step;
}

static void
check_neighbours(const struct equipment *equipment, const struct run_time *lower,
                 const struct run_time *upper, int step, struct remarks *remarks)
{
    const char *mode = mode_name(lower->mode);
    double low = lower->setting_tenths / 10.0, high = upper->setting_tenths / 10.0;
    int between;

    if (upper->lasts.low >= lower->lasts.low || upper->lasts.high >= lower->lasts.high) {
        remark_add(remarks, REMARK_EQUIPMENT, equipment->file, 0,
                   "measure both again, or correct the minutes",
                   "/run_times: %s %g lasts %d to %d min and %s %g lasts %d to %d: more oxygen for "
                   "no less time",
                   mode, low, lower->lasts.low, lower->lasts.high, mode, high, upper->lasts.low,
                   upper->lasts.high);
    }
    for (between = lower->setting_tenths + step; between < upper->setting_tenths; between += step) {
        if (!equipment_needs_wall(equipment, lower->mode, between)) {
            remark_add(remarks, REMARK_HOLE, equipment->file, 0,
                       "add its row, or name it in needs_wall; until then staff are asked",
                       "/run_times: %s has %g and %g but not %g", mode, low, high, between / 10.0);
        }
    }
}

static void
check_run_times(const struct equipment *equipment, struct remarks *remarks)
{
    void *arena = memory_must(talloc_new(NULL));
    int mode;

    if (equipment->run_time_count == 0) {
        remark_add(remarks, REMARK_HOLE, equipment->file, 0,
                   "add the minutes of one battery for each mode and setting",
                   "/run_times: missing, so no hours can be worked out");
    }
    for (mode = 0; mode < MODE_COUNT; mode++) {
        size_t count, i;
        struct run_time *rows = rows_of(arena, equipment, (enum mode)mode, &count);
        int step = step_of(rows, count);

        for (i = 1; i < count; i++) {
            check_neighbours(equipment, &rows[i - 1], &rows[i], step, remarks);
        }
    }
    talloc_free(arena);
}

/* ---- Gauge --------------------------------------------------------------------------------- */

static void
check_gauge(const struct equipment *equipment, struct remarks *remarks)
{
    static const char remedy[] = "let each band begin where the one before it ends";
    const struct gauge_step *steps = equipment->gauge;
    size_t count = equipment->gauge_count, i;

    if (count == 0) {
        remark_add(remarks, REMARK_HOLE, equipment->file, 0,
                   "add the charge that each number of lights stands for",
                   "/gauge/steps: missing, so \"2 lights\" tells nothing");
        return;
    }
    if (steps[0].band.low > 0) {
        remark_add(remarks, REMARK_EQUIPMENT, equipment->file, 0, "let the first band begin at 0",
                   "/gauge/steps/0: no lights stand for 0 to %d %%", steps[0].band.low);
    }
    for (i = 1; i < count; i++) {
        int before = steps[i - 1].band.high, begins = steps[i].band.low;

        if (begins > before + 1) { /* 10 and 11 meet */
            remark_add(remarks, REMARK_EQUIPMENT, equipment->file, 0, remedy,
                       "/gauge/steps/%zu: no lights stand for %d to %d %%", i, before, begins);
        } else if (begins < before) {
            remark_add(remarks, REMARK_EQUIPMENT, equipment->file, 0, remedy,
                       "/gauge/steps/%zu: %d to %d %% are %d lights and %d", i, begins, before,
                       steps[i - 1].lights, steps[i].lights);
        }
    }
    if (steps[count - 1].band.high < 100) {
        remark_add(remarks, REMARK_EQUIPMENT, equipment->file, 0, "let the last band end at 100",
                   "/gauge/steps/%zu: no lights stand for %d to 100 %%", count - 1,
                   steps[count - 1].band.high);
    }
}

/* ---- The rest ------------------------------------------------------------------------------ */

static void
check_cold(const struct equipment *equipment, struct remarks *remarks)
{
    const struct cold_step *steps = equipment->cold;
    size_t count = equipment->cold_count;

    if (count == 0) {
        remark_add(remarks, REMARK_HOLE, equipment->file, 0,
                   "add the share of the run time that is left at each temperature",
                   "/cold: missing, so cold is not counted");
        return;
    }
    if (steps[0].percent != 100) {
        remark_add(remarks, REMARK_HOLE, equipment->file, 0,
                   "begin with the temperature from which a battery lasts its full time",
                   "/cold/0: begins at %d %%, so no temperature gives the full time",
                   steps[0].percent);
    }
    if (equipment->running.known && steps[count - 1].celsius > equipment->running.low_celsius) {
        remark_add(remarks, REMARK_HOLE, equipment->file, 0,
                   "go on to the coldest place in which the unit may run",
                   "/cold/%zu: ends at %d C, but the unit may run at %d C", count - 1,
                   steps[count - 1].celsius, equipment->running.low_celsius);
    }
}

void
equipment_check(const struct equipment *equipment, struct remarks *remarks)
{
    check_run_times(equipment, remarks);
    check_gauge(equipment, remarks);
    check_cold(equipment, remarks);
    if (!equipment->charging_off.known) {
        remark_add(remarks, REMARK_HOLE, equipment->file, 0,
                   "add the minutes to 80 % and to full with the unit off",
                   "/charging/off: missing, so nobody is told how long charging takes");
    }
    if (!equipment->car.known) {
        remark_add(remarks, REMARK_HOLE, equipment->file, 0,
                   "say whether it runs, charges, or does both there",
                   "/car: missing, so nobody is told what the car outlet does");
    }
}
