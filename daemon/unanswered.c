#include "unanswered.h"

#include "alert_rows.h"
#include "answer_rows.h"
#include "handlers.h"

static int
call(struct store *store, const struct answer_row *row, int64_t now_utc_s, struct fault *fault)
{
    const struct alert_call called = handlers_unanswered(row->question);
    const struct alert_row alert = {.level = called.level,
                                    .rental_id = row->rental_id,
                                    .phone = row->phone,
                                    .reason = called.reason,
                                    .brief = called.brief,
                                    .text_id = row->text_id,
                                    .next_utc_s = now_utc_s};
    int64_t number;
    bool is_new;

    if (called.level != ALERT_NONE &&
        alert_rows_open(store, &alert, now_utc_s, &number, &is_new, fault) != 0) {
        return -1;
    }
    return answer_rows_drop(store, row->phone, fault);
}

int
unanswered_call(struct store *store, void *arena, int64_t now_utc_s, struct fault *fault)
{
    struct answer_row *rows;
    size_t count, i;

    if (answer_rows_due(store, arena, now_utc_s, &rows, &count, fault) != 0) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        if (call(store, &rows[i], now_utc_s, fault) != 0) {
            return -1;
        }
    }
    return 0;
}
