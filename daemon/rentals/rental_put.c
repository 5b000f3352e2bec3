#include "rental_put.h"

#include <string.h>

#include "alert_rows.h"
#include "conversation_rows.h"
#include "rental_record.h"
#include "reminder_rows.h"
#include "rental_rows.h"

int
rental_put_judge(struct store *store, void *arena, const struct rental *rental,
                 struct rental_put *put, struct fault *fault)
{
    struct rental_row row;
    struct rental before;
    bool found;

    *put = (struct rental_put){0};
    if (rental_rows_newest(store, arena, rental->rental_id, &row, &found, fault) != 0) {
        return -1;
    }
    put->is_new = !found;
    put->is_changed = !found || strcmp(row.digest, rental->digest) != 0;
    if (!put->is_new && put->is_changed) {
        /* One that cannot be read any more may have been anything. */
        if (!rental_record_parse(arena, row.json, &before)) {
            memset(&before, 0, sizeof(before));
        }
        put->change = rental_change_of(&before, rental);
    }
    return 0;
}

static int
write_row(struct store *store, const struct rental *rental, const char *json, const char *source,
          int64_t now_utc_s, struct fault *fault)
{
    const struct rental_row row = {rental->rental_id, rental->digest, json};
    const char *phones[RENTAL_PHONES_MAX];
    bool changed;
    size_t i;

    for (i = 0; i < rental->phone_count; i++) {
        phones[i] = rental->phones[i].number;
    }
    return rental_rows_put(store, &row, phones, rental->phone_count, source, now_utc_s, &changed,
                           fault);
}

static int
call_staff(struct store *store, const struct rental *rental, enum alert_level level,
           int64_t now_utc_s, struct fault *fault)
{
    const struct alert_row alert = {.level = level,
                                    .rental_id = rental->rental_id,
                                    .phone = rental->phones[0].number,
                                    .reason = "rental:other-model",
                                    .brief = "confirm pulse setting, other model",
                                    .next_utc_s = now_utc_s};
    int64_t number;
    bool is_new;

    if (level == ALERT_NONE) {
        return 0;
    }
    return alert_rows_open(store, &alert, now_utc_s, &number, &is_new, fault);
}

int
rental_put(struct store *store, void *arena, const struct rental *rental, const char *json,
           const char *source, int64_t now_utc_s, struct rental_put *put, struct fault *fault)
{
    if (rental_put_judge(store, arena, rental, put, fault) != 0) {
        return -1;
    }
    if (!put->is_changed) {
        return 0;
    }
    if (write_row(store, rental, json, source, now_utc_s, fault) != 0) {
        return -1;
    }
    if (rental_change_voids_account(&put->change) &&
        (battery_rows_void(store, rental->rental_id, now_utc_s, fault) != 0 ||
         reminder_rows_void(store, rental->rental_id, NULL, now_utc_s, fault) != 0)) {
        return -1;
    }
    if (!rental_is_active(rental) &&
        reminder_rows_end_rental(store, rental->rental_id, "ended", now_utc_s, fault) != 0) {
        return -1;
    }
    return call_staff(store, rental, put->change.confirm_pulse, now_utc_s, fault);
}
