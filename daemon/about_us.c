#include "about_us.h"

#include "duty.h"

int
about_us(const struct config *config, struct store *store, enum alert_level level,
         const char *reason, const char *brief, int64_t now_utc_s, int64_t *number,
         struct fault *fault)
{
    const struct alert_row alert = {
        .level = level,
        .phone = ALERT_ABOUT_US,
        .reason = reason,
        .brief = brief,
        .next_utc_s = level == ALERT_OFFICE ? duty_office_opens(config, now_utc_s) : now_utc_s,
        .ring = level > ALERT_OFFICE};
    bool is_new;

    return alert_rows_open(store, &alert, now_utc_s, number, &is_new, fault);
}
