#include "hand_text.h"

#include "alert_group_rows.h"
#include "alert_hands.h"
#include "answer_rows.h"
#include "audit_rows.h"
#include "rental_rows.h"
#include "rest_rows.h"
#include "talk.h"
#include "turns.h"

struct ordering {
    const struct caller *caller;
    const struct message *message;
    int64_t text_id;
    const struct verdict *verdict;
};

/* What staff wrote goes out by the gateway that the renter uses. */
static int
write_to_renter(const struct ordering *ordering, enum alert_level level, struct fault *fault)
{
    const struct caller *caller = ordering->caller;
    const struct relay *relay = &ordering->verdict->relay;
    struct outbox_new row = {.about = OUTBOX_REPLY,
                             .text_id = ordering->text_id,
                             .road = ROAD_TEXT,
                             .to = relay->to,
                             .body = relay->text,
                             .urgency = calls_urgency(level),
                             .now_utc_s = caller->now_utc_s,
                             .give_up_utc_s = caller->now_utc_s + caller->config->limits.give_up_s};
    int64_t id;

    if (talk_gateway(caller, relay->to, &row.gateway, fault) != 0) {
        return -1;
    }
    return outbox_rows_add(caller->store, &row, &id, fault);
}

static int
talk(const struct ordering *ordering, const struct alert_hand *hand, struct fault *fault)
{
    const struct caller *caller = ordering->caller;
    int64_t number = ordering->verdict->alert_change.number;
    bool wrote = ordering->verdict->relay.text != NULL;
    enum hands_result result;
    struct alert_row alert;
    bool is_open;

    if (alert_take(caller, number, hand, &result, NULL, fault) != 0 ||
        alert_rows_find(caller->store, caller->arena, number, &alert, &is_open, fault) != 0) {
        return -1;
    }
    if (result != HANDS_DONE) {
        return 0;
    }
    if (wrote && write_to_renter(ordering, alert.level, fault) != 0) {
        return -1;
    }
    return talk_begin(caller, &alert, hand->who, wrote, ordering->text_id, fault);
}

/* What staff did to an alert by texting. */
static int
write_alert_change(const struct ordering *ordering, struct fault *fault)
{
    const struct alert_change *change = &ordering->verdict->alert_change;
    const struct caller *caller = ordering->caller;
    const struct alert_hand hand = {.who = ordering->message->sender,
                                    .road = road_name(ROAD_TEXT),
                                    .now_utc_s = caller->now_utc_s};
    enum hands_result result;

    switch (change->step) {
    case ALERT_STEP_CLOSE:
        return (change->only_this ? alert_close_one : alert_close)(caller, change->number, &hand,
                                                                   change->note, &result, fault);
    case ALERT_STEP_TAKE:
        if (change->names_all && alert_group_named(caller->store, change->number, fault) != 0) {
            return -1;
        }
        return alert_take(caller, change->number, &hand, &result, NULL, fault);
    case ALERT_STEP_HAND:
        return alert_pass(caller, change->number, &hand, change->to, &result, fault);
    case ALERT_STEP_TALK:
        return talk(ordering, &hand, fault);
    default:
        return 0;
    }
}

static int
write_audit(const struct ordering *ordering, const char *what, const char *subject,
            const char *detail, struct fault *fault)
{
    const struct audit_row audit = {
        .who = ordering->message->sender, .what = what, .subject = subject, .detail = detail};

    return audit_rows_add(ordering->caller->store, &audit, ordering->caller->now_utc_s, fault);
}

/* Whose phone it is, as staff say. */
static int
write_phone_link(const struct ordering *ordering, struct fault *fault)
{
    const struct phone_link *link = &ordering->verdict->phone_link;
    bool is_linked = link->step == PHONE_LINK_ADD;
    struct store *store = ordering->caller->store;

    if (link->step == PHONE_LINK_NONE) {
        return 0;
    }
    if (rental_rows_link(store, link->phone, link->rental_id, is_linked, ordering->message->sender,
                         ordering->caller->now_utc_s, fault) != 0 ||
        write_audit(ordering, is_linked ? "link-phone" : "unlink-phone", link->rental_id,
                    link->phone, fault) != 0) {
        return -1;
    }
    return is_linked ? alert_rows_attach(store, link->phone, link->rental_id, fault) : 0;
}

/* A renter has died: what we asked waits for no answer. */
static int
write_rest(const struct ordering *ordering, struct fault *fault)
{
    const struct rest_change *rest = &ordering->verdict->rest_change;
    bool begins = rest->step == REST_STEP_BEGIN;
    struct store *store = ordering->caller->store;

    if (rest->step == REST_STEP_NONE) {
        return 0;
    }
    if (rest_rows_add(store, rest->rental_id, begins, ordering->message->sender,
                      ordering->caller->now_utc_s, fault) != 0 ||
        write_audit(ordering, begins ? "rental-rests" : "rental-rests-no-more", rest->rental_id,
                    NULL, fault) != 0) {
        return -1;
    }
    return begins ? answer_rows_drop_rental(store, rest->rental_id, fault) : 0;
}

int
hand_text_write(const struct caller *caller, const struct message *message, int64_t text_id,
                const struct verdict *verdict, struct fault *fault)
{
    const struct ordering ordering = {caller, message, text_id, verdict};

    if (write_alert_change(&ordering, fault) != 0 || write_phone_link(&ordering, fault) != 0 ||
        write_rest(&ordering, fault) != 0) {
        return -1;
    }
    return verdict->confirms_turn ? turns_confirm(caller->store, caller->arena, caller->config,
                                                  message->sender, caller->now_utc_s, fault)
                                  : 0;
}

int
hand_text_pass_on(const struct caller *caller, const struct message *message, int64_t text_id,
                  const struct verdict *verdict, struct fault *fault)
{
    const struct relay *relay = &verdict->relay;

    if (relay->to == NULL || verdict->alert_change.step == ALERT_STEP_TALK) {
        return 0; /* nothing, or an order, which is written already */
    }
    return relay->number != 0
               ? talk_show(caller, relay->number, relay->to, relay->text, text_id, fault)
               : talk_pass_on(caller, message->sender, relay->text, text_id, fault);
}
