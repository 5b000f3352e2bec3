/*
 * Rentals from the office's CSV (csv_text.h; a first line of column names in any order).
 *
 * Columns: rental_id, state, name, first_name, language, in_words (yes: the renter is blind
 * or read to), phone_1 to phone_4 (each with _whose and
 * _reach), unit, serial, for rest, walking, sleep and flight each rest_mode, rest_setting,
 * rest_dated and rest_confirmed_by, orders_dated and orders_confirmed_by for all that have none of
 * their own, battery_1 to battery_8 (serial; each with _health and _measured), chargers,
 * car_charger, backup_kind, backup_size, backup_psi, backup_checked, backup_flow, tube_feet, start,
 * due, emergency_address, access, place, altitude_ft, desk_phone, emergency_contact,
 * prescriber_phone, dispatch_number, call_below_reading. Days and times are those of the office's
 * zone ("2026-02-14", "2026-02-14 10:00"). An empty cell is not known.
 */
#ifndef RENTAL_CSV_H
#define RENTAL_CSV_H

#include "csv_text.h"
#include "rental.h"
#include "rental_cells.h"

/* After so many faults no further row is looked at: they have one cause. */
enum { RENTAL_CSV_FAULTS_MAX = 10000 };

struct rental_csv {
    const char *file; /* names it in faults */
    struct rental_setting setting;
    /* Each row that has no fault, with its digest; it and `json`, which is the record as
     * rental_record.h writes it, live until the call ends. */
    void (*on_rental)(void *data, const struct rental *rental, const char *json);
    void (*on_progress)(void *data, size_t done, size_t all); /* or NULL; of the text's bytes */
    void *data;
};

/*
 * Reads all rows. Returns 0, or -1 with every fault of every row: file and line, column, what was
 * found, and what to write instead; then nothing of the file may be used.
 */
int rental_csv_read(const struct csv_text *text, const struct rental_csv *csv,
                    struct faults *faults);

#endif
