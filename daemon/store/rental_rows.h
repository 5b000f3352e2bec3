/*
 * Rentals: each content of a record is kept once by its digest, each change of a rental is a dated
 * row, and nothing is overwritten. The newest row of a rental is the current one. What stands in
 * the JSON is rental_record.h's.
 *
 * Beside the phones of the record a rental may have some that staff linked: they are not in the
 * office's file, so a new record leaves them as they are.
 */
#ifndef RENTAL_ROWS_H
#define RENTAL_ROWS_H

#include "store.h"

struct rental_row {
    const char *rental_id, *digest, *json;
};

/* Writes a record unless the current one has the same digest; *changed tells. */
int rental_rows_put(struct store *store, const struct rental_row *row, const char *const *phones,
                    size_t phone_count, const char *source, int64_t now_utc_s, bool *changed,
                    struct fault *fault);

/* The current record of a rental, in `arena`; *found is false if there is none. */
int rental_rows_newest(struct store *store, void *arena, const char *rental_id,
                       struct rental_row *row, bool *found, struct fault *fault);

/* Whether some record of a rental came from this source. */
int rental_rows_has_source(struct store *store, const char *rental_id, const char *source,
                           bool *has, struct fault *fault);

/* From now on a phone is one of a rental's, or no longer; `who` of staff says so. */
int rental_rows_link(struct store *store, const char *phone, const char *rental_id, bool linked,
                     const char *who, int64_t now_utc_s, struct fault *fault);
/* The phones that are linked to a rental now, in `arena`. */
int rental_rows_linked(struct store *store, void *arena, const char *rental_id,
                       const char ***phones, size_t *count, struct fault *fault);

/* The current records of this phone, named by them or linked, in `arena`, by rental_id. */
int rental_rows_of_phone(struct store *store, void *arena, const char *phone,
                         struct rental_row **rows, size_t *count, struct fault *fault);

/* The current record of every rental, in `arena`, by rental_id. */
int rental_rows_current(struct store *store, void *arena, struct rental_row **rows, size_t *count,
                        struct fault *fault);

/* The same one after the other, whatever their number; each row lives until `each` returns. -1 from
 * there ends it with that fault. */
int rental_rows_each(struct store *store,
                     int (*each)(void *data, const struct rental_row *row, struct fault *fault),
                     void *data, struct fault *fault);
int rental_rows_count(struct store *store, size_t *count, struct fault *fault);

#endif
