#include "nobody_yet.h"

#include <string.h>

#include "handlers.h"
#include "rest_rows.h"
#include "talk.h"
#include "talk_rows.h"

static bool
is_due(const struct caller *caller, const struct alert_row *alert)
{
    int64_t everyone_s = caller->config->alert_times[alert->level].everyone_s;

    return alert->level >= ALERT_URGENT && alert->taken_by == NULL && everyone_s > 0 &&
           caller->now_utc_s - alert->level_utc_s >= everyone_s;
}

/* Whether the renter of this alert may be texted of it. */
static int
may_tell(const struct caller *caller, const struct alert_renter *renter, bool *may,
         struct fault *fault)
{
    struct open_alert *alerts;
    size_t count, i;
    bool rests = false;

    *may = false;
    if (strcmp(renter->phone, ALERT_ABOUT_US) == 0 ||
        config_staff_by_phone(caller->config, renter->phone) != NULL) {
        return 0;
    }
    if (alert_rows_open_of(caller->store, caller->arena, renter->phone, &alerts, &count, fault) !=
            0 ||
        (renter->rental_id != NULL &&
         rest_rows_is(caller->store, renter->rental_id, &rests, fault) != 0)) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        if (alerts[i].number == renter->number) {
            *may = !rests && !alerts[i].no_texts &&
                   strstr(alerts[i].reasons, NO_REPLY_REASON) == NULL &&
                   strstr(alerts[i].reasons, "sign:death-told") == NULL;
        }
    }
    return 0;
}

/* Who has it, if it is not NULL; else that nobody has. */
static int
tell(const struct caller *caller, const struct alert_renter *renter, enum alert_level level,
     const char *holder, struct fault *fault)
{
    const struct house *house = &caller->config->house;
    struct outbox_new row = {.about = OUTBOX_REPLY,
                             .road = ROAD_TEXT,
                             .to = renter->phone,
                             .urgency = calls_urgency(level),
                             .now_utc_s = caller->now_utc_s,
                             .give_up_utc_s = caller->now_utc_s + caller->config->limits.give_up_s};
    struct talk_renter spoken;
    bool may;
    int64_t id;

    if (may_tell(caller, renter, &may, fault) != 0) {
        return -1;
    }
    if (!may) {
        return 0;
    }
    if (talk_rows_renter(caller->store, caller->arena, renter->phone, &spoken, fault) != 0 ||
        talk_gateway(caller, renter->phone, &row.gateway, fault) != 0) {
        return -1;
    }
    row.body = holder != NULL
                   ? handlers_someone_has_it(caller->arena, house, spoken.language, holder)
                   : handlers_nobody_yet(caller->arena, house, spoken.language);
    return outbox_rows_add(caller->store, &row, &id, fault);
}

int
nobody_yet_tell(const struct caller *caller, const struct alert_row *alert, struct fault *fault)
{
    const struct alert_renter only = {.number = alert->number,
                                      .rental_id = alert->rental_id,
                                      .phone = alert->phone,
                                      .told_utc_s = alert->told_utc_s};
    const struct alert_renter *renters = alert->renter_count > 0 ? alert->renters : &only;
    size_t count = alert->renter_count > 0 ? alert->renter_count : 1;
    size_t i;

    if (!is_due(caller, alert)) {
        return 0;
    }
    for (i = 0; i < count; i++) {
        /* who joined since the others were told has not been */
        if (renters[i].told_utc_s == 0 &&
            (tell(caller, &renters[i], alert->level, NULL, fault) != 0 ||
             alert_rows_told(caller->store, renters[i].number, caller->now_utc_s, fault) != 0)) {
            return -1;
        }
    }
    return 0;
}

int
nobody_yet_taken(const struct caller *caller, const struct alert_renter *renter,
                 enum alert_level level, const char *holder, struct fault *fault)
{
    if (renter->told_utc_s <= 0) {
        return 0;
    }
    return tell(caller, renter, level, holder, fault) != 0
               ? -1
               : alert_rows_told(caller->store, renter->number, -caller->now_utc_s, fault);
}
