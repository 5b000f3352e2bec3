/*
 * A rental as a booking system sends it: the record of rental_record.h with values as people write
 * them (rental_cells.h), so without the units that the record's own names bear.
 *
 *   {"rental_id": "R-7", "state": "out", "name": "…", "language": "en", "unit": "brook", …,
 *    "phones": [{"number": "208-555-0123", "whose": "renter", "reach": "texts only"}],
 *    "orders": {"rest": {"mode": "continuous", "setting": 2, "dated": "2026-01-28",
 *                        "confirmed_by": "…"}, …},
 *    "batteries": [{"serial": "B-1", "health_percent": 92, "measured": "2026-02-06"}],
 *    "car_charger": true, "backup": {"kind": "cylinder", "size": "E", "psi": 2000,
 *                                    "checked": "2026-02-06", "flow": 2},
 *    "start": "2026-02-07T14:00:00-07:00", "due": "2026-02-14 10:00", …}
 *
 * A value is a string as in the CSV, or the number, true or false that it says; null is as not
 * given. A name that nobody knows is a fault: it may be one that matters, misspelt.
 */
#ifndef RENTAL_JSON_H
#define RENTAL_JSON_H

#include "problem.h"
#include "rental_cells.h"

struct rental_errors {
    struct problem_error *list; /* with the JSON Pointer of what is wrong in what was sent */
    size_t count;
};

/*
 * Reads and checks it; *rental, with its digest, and the record's text that is returned live in
 * `arena`. NULL with all errors if there are any.
 */
const char *rental_json_read(void *arena, const json_t *sent, const struct rental_setting *setting,
                             struct rental *rental, struct rental_errors *errors);

#endif
