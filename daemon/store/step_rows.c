#include "step_rows.h"

#include "store_sql.h"

#define NEVER "9223372036854775807"

int
step_rows_shift(struct store *store, int64_t step_s, struct fault *fault)
{
    static const char *const shifts[] = {
        "UPDATE alert_due SET stepped_s = stepped_s + ?1, taken_utc_s = taken_utc_s + ?1,"
        " offer_ends_utc_s = offer_ends_utc_s + ?1, outage_utc_s = outage_utc_s + ?1,"
        " runs_out_utc_s = runs_out_utc_s + ?1, next_utc_s = CASE WHEN level = 'office'"
        " OR next_utc_s = " NEVER " THEN next_utc_s ELSE next_utc_s + ?1 END",
        "UPDATE answer_due SET due_utc_s = due_utc_s + ?1",
        ("UPDATE talk SET due_utc_s = due_utc_s + ?1 WHERE due_utc_s < " NEVER),
        "UPDATE outbox_due SET next_utc_s = next_utc_s + ?1, stepped_s = stepped_s + ?1",
        "UPDATE outbox_unconfirmed SET accepted_utc_s = accepted_utc_s + ?1",
    };
    size_t i;

    for (i = 0; i < sizeof(shifts) / sizeof(shifts[0]); i++) {
        if (store_do(store, shifts[i], VALUES(number(step_s)), fault) != 0) {
            return -1;
        }
    }
    return 0;
}

static int
clamp_alerts(struct store *store, const struct step_limits *limits, int64_t now_utc_s,
             struct fault *fault)
{
    return store_do(store,
                    "UPDATE alert_due SET taken_utc_s = min(taken_utc_s, ?1),"
                    " next_utc_s = min(next_utc_s, CASE level WHEN 'emergency' THEN ?2"
                    " WHEN 'urgent' THEN ?3 ELSE ?4 END)",
                    VALUES(number(now_utc_s), number(now_utc_s + limits->call_s[ALERT_EMERGENCY]),
                           number(now_utc_s + limits->call_s[ALERT_URGENT]),
                           number(limits->office_call_utc_s)),
                    fault);
}

int
step_rows_clamp(struct store *store, const struct step_limits *limits, int64_t now_utc_s,
                struct fault *fault)
{
    if (clamp_alerts(store, limits, now_utc_s, fault) != 0 ||
        store_do(store, "UPDATE answer_due SET due_utc_s = min(due_utc_s, ?)",
                 VALUES(number(now_utc_s + limits->answer_s)), fault) != 0 ||
        store_do(store, "UPDATE talk SET due_utc_s = min(due_utc_s, ?) WHERE due_utc_s < " NEVER,
                 VALUES(number(now_utc_s + limits->talk_s)), fault) != 0 ||
        store_do(store, "UPDATE outbox_due SET next_utc_s = min(next_utc_s, ?)",
                 VALUES(number(now_utc_s + limits->send_s)), fault) != 0) {
        return -1;
    }
    return store_do(store, "UPDATE outbox_unconfirmed SET accepted_utc_s = min(accepted_utc_s, ?)",
                    VALUES(number(now_utc_s)), fault);
}
