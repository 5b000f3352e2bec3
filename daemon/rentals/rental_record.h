/*
 * The rental record as JSON: what the store keeps of a rental, and what an import makes of a row.
 *
 *   {"rental_id": "R-7", "state": "out", "name": "…", "language": "en", "unit": "brook", …,
 *    "phones": [{"number": "+12085550123", "whose": "renter", "reach": "texts-only"}],
 *    "orders": {"rest": {"mode": "continuous", "setting_tenths": 20, …}, …},
 *    "batteries": [{"serial": "B-1", "health_percent": 92, "measured_utc_s": 1770000000}],
 *    "backup": {"kind": "cylinder", "size": "E", "psi": 2000, "checked_utc_s": …,
 *               "flow_tenths": 20}, "start_utc_s": …, "due_utc_s": …, …}
 *
 * Keys are those of struct rental; rental_record.c has the table with the bounds of each.
 */
#ifndef RENTAL_RECORD_H
#define RENTAL_RECORD_H

#include <jansson.h>

#include "fault.h"
#include "rental.h"

/* How faults call a value; `pointer` is its JSON Pointer. */
struct record_namer {
    const char *file;                                           /* or NULL */
    int line;                                                   /* or 0 */
    const char *(*name)(const void *data, const char *pointer); /* NULL: the pointer itself */
    const void *data;
    /* Hears each fault with its name apart, beside the list; NULL: nobody does. */
    void (*on_fault)(void *listener, const char *name, const char *what);
    void *listener;
};

/*
 * Reads and checks every field; strings are copied into `arena`, rental->digest is not set. null
 * counts as not given, also in a list. Returns 0, or -1 with what was found, what was expected and
 * the remedy for each fault, added to *faults.
 */
int rental_record_read(void *arena, const json_t *json, const struct record_namer *namer,
                       struct rental *rental, struct faults *faults);

/* The same of a record that the store keeps; false if this program cannot read it. */
bool rental_record_parse(void *arena, const char *text, struct rental *rental);

/* Adds a fault of a value in the namer's words: what was found and the remedy. */
void rental_record_fault(void *arena, const struct record_namer *namer, const char *pointer,
                         const char *what, const char *remedy, struct faults *faults);

/* A record as canonical text in `arena` (sorted keys, no spaces, absent where not known), and its
 * SHA-256 as 64 hex digits. */
char *rental_record_text(void *arena, const struct rental *rental);
char *rental_record_digest(void *arena, const char *text);

/* "any", "texts-only", "never-ring", "landline". */
const char *reach_name(enum reach reach);

#endif
