#include "check_rentals.h"

#include <jansson.h>

#include "battery_set.h"
#include "equipment_check.h"
#include "memory.h"
#include "rental_record.h"
#include "rental_rows.h"

/* ---- Orders -------------------------------------------------------------------------------- */

/* "0.5 to 2", or NULL if the unit has no such mode. */
static const char *
settings_of(void *arena, const struct equipment *unit, enum mode mode)
{
    int lowest = 0, highest = 0;
    size_t i;

    for (i = 0; i < unit->run_time_count; i++) {
        int setting = unit->run_times[i].setting_tenths;

        if (unit->run_times[i].mode == mode) {
            lowest = lowest == 0 || setting < lowest ? setting : lowest;
            highest = setting > highest ? setting : highest;
        }
    }
    return lowest == 0 ? NULL : memory_format(arena, "%g to %g", lowest / 10.0, highest / 10.0);
}

static bool
is_by_a_wall(enum activity activity)
{
    return activity == ACTIVITY_REST || activity == ACTIVITY_SLEEP;
}

static void
check_order(const struct equipment *unit, const struct rental *rental, enum activity activity,
            const char *database, struct remarks *remarks)
{
    static const char remedy[] = "ask the prescriber's office and swap the unit, or correct the "
                                 "record; staff answer until then";
    const struct order *order = &rental->orders[activity];
    const char *mode = mode_name(order->mode);
    const char *settings = settings_of(remarks->arena, unit, order->mode);

    if (equipment_run_time(unit, order->mode, order->setting_tenths) != NULL) {
        return;
    }
    if (equipment_needs_wall(unit, order->mode, order->setting_tenths)) {
        if (!is_by_a_wall(activity)) {
            remark_add(remarks, REMARK_ORDER, database, 0, remedy,
                       "rental %s: %s %g is ordered for %s, but %s does that from the wall only",
                       rental->rental_id, mode, order->setting_tenths / 10.0,
                       activity_name(activity), unit->name);
        }
    } else if (settings == NULL) {
        remark_add(remarks, REMARK_ORDER, database, 0, remedy,
                   "rental %s: %s %g is ordered for %s, but %s has no %s mode", rental->rental_id,
                   mode, order->setting_tenths / 10.0, activity_name(activity), unit->name, mode);
    } else {
        remark_add(remarks, REMARK_ORDER, database, 0, remedy,
                   "rental %s: %s %g is ordered for %s, but %s has %s %s", rental->rental_id, mode,
                   order->setting_tenths / 10.0, activity_name(activity), unit->name, mode,
                   settings);
    }
}

static void
check_orders(const struct equipment *unit, const struct rental *rental, const char *database,
             struct remarks *remarks)
{
    bool any = false;
    int i;

    for (i = 0; i < ACTIVITY_COUNT; i++) {
        if (rental->orders[i].known) {
            any = true;
            check_order(unit, rental, (enum activity)i, database, remarks);
        }
    }
    if (!any) {
        remark_add(remarks, REMARK_RECORD, database, 0,
                   "put the orders into the record; without them no hours are told",
                   "rental %s: no order is on record", rental->rental_id);
    }
}

/* ---- Batteries ----------------------------------------------------------------------------- */

static void
check_batteries(const struct equipment *unit, const struct rental *rental, const char *database,
                int64_t now_utc_s, struct remarks *remarks)
{
    char *never = memory_copy(remarks->arena, ""), *old = memory_copy(remarks->arena, "");
    size_t i;

    for (i = 0; i < rental->battery_count; i++) {
        const struct battery *battery = &rental->batteries[i];
        const char *serial = battery->serial == NULL ? "without a serial" : battery->serial;

        if (battery->health_percent == 0) {
            memory_append(&never, "%s%s", never[0] == '\0' ? "" : ", ", serial);
        } else if (battery->measured_utc_s == 0 ||
                   now_utc_s - battery->measured_utc_s > HEALTH_OLD_S) {
            memory_append(&old, "%s%s", old[0] == '\0' ? "" : ", ", serial);
        }
    }
    if (never[0] != '\0') {
        remark_add(remarks, REMARK_RECORD, database, 0, "measure them when they come back",
                   "rental %s: battery health was never measured (%s); counted at %d %%",
                   rental->rental_id, never, unit->retirement_health);
    }
    if (old[0] != '\0') {
        remark_add(remarks, REMARK_RECORD, database, 0, "measure them again when they come back",
                   "rental %s: battery health was not measured in the last year (%s); counted at "
                   "%d %% or less",
                   rental->rental_id, old, unit->retirement_health);
    }
    if (rental->battery_count == 0) {
        remark_add(remarks, REMARK_RECORD, database, 0, "put the batteries into the record",
                   "rental %s: no battery is on record", rental->rental_id);
    }
}

/* ---- Rentals ------------------------------------------------------------------------------- */

void
check_rental(const struct kb *kb, const struct rental *rental, const char *database,
             int64_t now_utc_s, struct remarks *remarks)
{
    const struct equipment *unit = rental->unit == NULL ? NULL : kb_equipment(kb, rental->unit);

    if (!rental_is_active(rental)) {
        return;
    }
    if (rental->unit == NULL) {
        remark_add(remarks, REMARK_UNIT, database, 0, "put the unit into the record",
                   "rental %s: no unit is on record", rental->rental_id);
    } else if (unit == NULL) {
        remark_add(remarks, REMARK_UNIT, database, 0,
                   "write its equipment file, or correct the record",
                   "rental %s: there is no equipment/%s.json", rental->rental_id, rental->unit);
    } else {
        check_orders(unit, rental, database, remarks);
        check_batteries(unit, rental, database, now_utc_s, remarks);
    }
}

/* Reads a record; false, with a remark, if it cannot be read. */
static bool
read_record(void *arena, const struct rental_row *row, const char *database, struct rental *rental,
            struct remarks *remarks)
{
    struct record_namer namer = {0};
    struct faults faults = {0};
    json_t *json = json_loads(row->json, 0, NULL);
    bool is_read = rental_record_read(arena, json, &namer, rental, &faults) == 0;
    size_t i;

    for (i = 0; i < faults.count; i++) {
        remark_add(remarks, REMARK_FAULT, database, 0, "import this rental again", "rental %s: %s",
                   row->rental_id, faults.list[i].text);
    }
    faults_release(&faults);
    json_decref(json);
    return is_read;
}

int
check_rentals(struct store *store, const struct kb *kb, const char *database, int64_t now_utc_s,
              struct remarks *remarks, size_t *checked, struct fault *fault)
{
    void *arena = memory_must(talloc_new(NULL));
    struct rental_row *rows;
    size_t count, i;
    int rc = rental_rows_current(store, arena, &rows, &count, fault);

    *checked = 0;
    for (i = 0; rc == 0 && i < count; i++) {
        struct rental rental;

        if (read_record(arena, &rows[i], database, &rental, remarks)) {
            *checked += rental_is_active(&rental);
            check_rental(kb, &rental, database, now_utc_s, remarks);
        }
    }
    talloc_free(arena);
    return rc;
}
