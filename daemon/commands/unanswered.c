#include "unanswered.h"

#include "alert_rows.h"
#include "answer_rows.h"
#include "conversation_rows.h"
#include "handlers.h"

static int
call(struct store *store, void *arena, const struct answer_row *row, int64_t now_utc_s,
     struct fault *fault)
{
    struct alert_row alert = {.rental_id = row->rental_id,
                              .phone = row->phone,
                              .text_id = row->text_id,
                              .next_utc_s = now_utc_s};
    struct conversation conversation;
    struct alert_call called;
    int64_t number;
    bool is_new;

    if (conversation_rows_newest(store, arena, row->phone, &conversation, fault) != 0) {
        return -1;
    }
    conversation.question = row->question; /* a new talk may have begun since */
    called = handlers_unanswered(&conversation);
    alert.level = called.level;
    alert.reason = called.reason;
    alert.brief = called.brief;
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
        if (call(store, arena, &rows[i], now_utc_s, fault) != 0) {
            return -1;
        }
    }
    return 0;
}
