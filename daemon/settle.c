#include "settle.h"

#include <stdlib.h>
#include <string.h>

#include <jansson.h>

#include "alert_group_rows.h"
#include "answer_rows.h"
#include "consent.h"
#include "conversation_rows.h"
#include "hand_text.h"
#include "handlers.h"
#include "limits.h"
#include "log.h"
#include "memory.h"
#include "reminder_rows.h"
#include "texts.h"
#include "told_json.h"
#include "verdict_json.h"
#include "verdict_rows.h"

/* One text on its way through. */
struct settling {
    struct store *store;
    void *arena;
    const struct surroundings *surroundings;
    const struct message *message;
    int64_t text_id, verdict_id, supersedes;
    int64_t give_up_utc_s; /* of the replies: counts from the first try to answer this text */
    struct context context;
    const char *started_from;
    struct verdict *verdict;
};

static int
decide(struct settling *settling, int64_t conversation_row, struct fault *fault)
{
    if (gather(settling->store, settling->arena, settling->surroundings, settling->message,
               settling->text_id, conversation_row, &settling->context, &settling->started_from,
               fault) != 0) {
        return -1;
    }
    settling->verdict = memory_new(settling->arena, struct verdict);
    handlers_decide(settling->arena, settling->message, &settling->context, settling->verdict);
    return 0;
}

static int
write_verdict(struct settling *settling, struct fault *fault)
{
    const struct verdict *verdict = settling->verdict;
    char *id = memory_format(settling->arena, "%lld", (long long)settling->text_id);
    struct verdict_row row = {.text_id = settling->text_id,
                              .supersedes = settling->supersedes,
                              .at_utc_s = settling->context.now_utc_s,
                              .kb_digest = kb_digest(settling->context.kb),
                              .rental_id = verdict->rental_id,
                              .rental_digest = verdict->rental_digest,
                              .conversation_row = settling->context.conversation.row,
                              .started_from = settling->started_from,
                              .route = verdict->route,
                              .language = verdict->language,
                              .alert_level = verdict->alert.level,
                              .json = verdict_json(settling->arena, id, verdict)};

    return verdict_rows_add(settling->store, &row, &settling->verdict_id, fault);
}

/* Seconds in which this question must be answered; 0 if nothing hangs on it. */
static int64_t
answer_time(const struct settling *settling, enum open_question question)
{
    const struct limits *limits = &settling->surroundings->loaded->config->limits;

    return question == QUESTION_FLOWING                                       ? limits->flowing_s
           : question == QUESTION_PLUG || question == QUESTION_READING_OR_AGE ? limits->plug_s
                                                                              : 0;
}

/* A question that was asked now waits for its answer; one that is not open any more does not. */
static int
write_answer_due(const struct settling *settling, struct fault *fault)
{
    const struct verdict *verdict = settling->verdict;
    const struct conversation *conversation = &verdict->conversation;
    int64_t wait_s = answer_time(settling, conversation->question);
    const struct answer_row row = {.phone = settling->message->sender,
                                   .question = conversation->question,
                                   .rental_id = verdict->rental_id,
                                   .text_id = settling->text_id,
                                   .due_utc_s = conversation->asked_utc_s + wait_s};

    if (verdict->rests && verdict->rental_id != NULL &&
        answer_rows_drop_rental(settling->store, verdict->rental_id, fault) != 0) {
        return -1;
    }
    if (wait_s == 0) {
        return answer_rows_drop(settling->store, row.phone, fault);
    }
    return conversation->asked_utc_s == settling->context.now_utc_s
               ? answer_rows_wait(settling->store, &row, fault)
               : 0;
}

static int
write_conversation(const struct settling *settling, struct fault *fault)
{
    const struct conversation_step step = {.phone = settling->message->sender,
                                           .text_id = settling->text_id,
                                           .text = settling->message->text,
                                           .before = &settling->context.conversation};
    bool asked_about_lost;

    if (!settling->verdict->conversation_changed) {
        return 0;
    }
    if (conversation_rows_add(settling->store, &step, &settling->verdict->conversation,
                              &asked_about_lost, fault) != 0) {
        return -1;
    }
    if (asked_about_lost) {
        log_event(LOG_WARNING, "asked-about-lost", "text", log_number(settling->text_id), NULL);
    }
    return write_answer_due(settling, fault);
}

static int
write_account(const struct settling *settling, struct fault *fault)
{
    const struct verdict *verdict = settling->verdict;
    char *told;
    json_t *json;
    int rc;

    if (!verdict->account_changed || verdict->rental_id == NULL) {
        return 0;
    }
    json = told_json(&verdict->account.told);
    told = memory_must(json_dumps(json, JSON_COMPACT));
    rc = battery_rows_add(settling->store, verdict->rental_id, verdict->account.as_of_utc_s, told,
                          settling->text_id, fault);
    free(told);
    json_decref(json);
    return rc;
}

/* A newer charge, STOP and a death end what waits; what this text asks for is set after that. */
static int
write_reminder(const struct settling *settling, struct fault *fault)
{
    const struct verdict *verdict = settling->verdict;
    const struct reminder_row row = {.phone = settling->message->sender,
                                     .gateway = settling->message->gateway,
                                     .language = verdict->language,
                                     .text_id = settling->text_id,
                                     .reminder = verdict->reminder.reminder};
    int64_t now_utc_s = settling->context.now_utc_s;

    if (verdict->consent == CONSENT_OUT) {
        return reminder_rows_end_phone(settling->store, row.phone, "stop", now_utc_s, fault);
    }
    if (verdict->rests && verdict->rental_id != NULL) {
        return reminder_rows_end_rental(settling->store, verdict->rental_id, "death", now_utc_s,
                                        fault);
    }
    if (verdict->account_changed && verdict->rental_id != NULL &&
        reminder_rows_void(settling->store, verdict->rental_id, row.phone, now_utc_s, fault) != 0) {
        return -1;
    }
    switch (verdict->reminder.step) {
    case REMINDER_SET:
    case REMINDER_OFFER:
        return reminder_rows_set(settling->store, &row, now_utc_s, fault);
    case REMINDER_CANCEL:
        return reminder_rows_end_phone(settling->store, row.phone, "asked", now_utc_s, fault);
    case REMINDER_KEEP:
        break;
    }
    return 0;
}

static struct caller
caller_of(const struct settling *settling)
{
    return (struct caller){.config = settling->surroundings->loaded->config,
                           .store = settling->store,
                           .arena = settling->arena,
                           .now_utc_s = settling->context.now_utc_s};
}

static int
write_orders(const struct settling *settling, struct fault *fault)
{
    const struct caller caller = caller_of(settling);

    return hand_text_write(&caller, settling->message, settling->text_id, settling->verdict, fault);
}

static int
pass_on(const struct settling *settling, struct fault *fault)
{
    const struct caller caller = caller_of(settling);

    return hand_text_pass_on(&caller, settling->message, settling->text_id, settling->verdict,
                             fault);
}

static int
write_alert(const struct settling *settling, struct fault *fault)
{
    int64_t outage_s = settling->surroundings->loaded->config->limits.outage_s;
    const struct verdict *verdict = settling->verdict;
    struct alert_row alert = {.level = verdict->alert.level,
                              .rental_id = verdict->rental_id,
                              .phone = settling->message->sender,
                              .reason = verdict->alert.reason,
                              .brief = verdict->alert.brief,
                              .text_id = settling->text_id,
                              .next_utc_s = verdict->alert.call_utc_s,
                              .ring = verdict->alert.ring,
                              .area = outage_s > 0 ? verdict->alert.area : NULL,
                              .runs_out_utc_s = verdict->runs_out_utc_s,
                              .joins_since_utc_s = settling->context.now_utc_s - outage_s};
    int64_t number;
    bool is_new;

    if (verdict->account_changed && verdict->rental_id != NULL &&
        alert_group_runs_out(settling->store, verdict->rental_id, verdict->runs_out_utc_s, fault) !=
            0) {
        return -1;
    }
    if (verdict->alert.level == ALERT_NONE) {
        return 0;
    }
    return alert_rows_open(settling->store, &alert, settling->context.now_utc_s, &number, &is_new,
                           fault);
}

static int
write_reply(const struct settling *settling, const struct reply *reply, struct fault *fault)
{
    const struct limits *limits = &settling->surroundings->loaded->config->limits;
    int64_t now_utc_s = settling->context.now_utc_s;
    bool confirms = settling->verdict->consent == CONSENT_OUT;
    struct outbox_new row = {.about = OUTBOX_REPLY,
                             .text_id = settling->text_id,
                             .verdict_id = settling->verdict_id,
                             .gateway = settling->message->gateway,
                             .to = settling->message->sender,
                             .body = reply->text,
                             .urgency = reply->urgency,
                             .now_utc_s = now_utc_s,
                             .expires_utc_s = reply->holds_time ? now_utc_s + limits->stale_s : 0,
                             .give_up_utc_s = confirms ? now_utc_s + OPT_OUT_CONFIRMED_S
                                                       : settling->give_up_utc_s};
    int64_t id;

    return outbox_rows_add(settling->store, &row, &id, fault);
}

static int
write_replies(const struct settling *settling, struct fault *fault)
{
    const struct verdict *verdict = settling->verdict;
    size_t i;

    for (i = 0; i < verdict->reply_count; i++) {
        if (write_reply(settling, &verdict->replies[i], fault) != 0) {
            return -1;
        }
    }
    return 0;
}

int
settle(struct store *store, void *arena, const struct surroundings *surroundings,
       const struct message *message, struct verdict **verdict, int64_t *text_id,
       struct fault *fault)
{
    struct settling settling = {.store = store,
                                .arena = arena,
                                .surroundings = surroundings,
                                .message = message,
                                .give_up_utc_s = surroundings->now_utc_s +
                                                 surroundings->loaded->config->limits.give_up_s};

    if (texts_add(store, message, &settling.text_id, fault) != 0 ||
        decide(&settling, CONVERSATION_NEWEST, fault) != 0 ||
        write_verdict(&settling, fault) != 0 || write_conversation(&settling, fault) != 0 ||
        write_account(&settling, fault) != 0 || write_reminder(&settling, fault) != 0 ||
        consent_write(store, settling.verdict, message->sender, settling.text_id,
                      surroundings->now_utc_s, fault) != 0 ||
        write_orders(&settling, fault) != 0 || write_alert(&settling, fault) != 0 ||
        pass_on(&settling, fault) != 0 || write_replies(&settling, fault) != 0 ||
        limits_note(store, surroundings->loaded->config, message, &settling.context, fault) != 0) {
        return -1;
    }
    *verdict = settling.verdict;
    *text_id = settling.text_id;
    return 0;
}

/* ---- Again --------------------------------------------------------------------------------- */

static int
replace(const struct settling *settling, const struct outbox_row *rows, size_t count,
        struct fault *fault)
{
    size_t i;

    for (i = 0; i < count; i++) {
        struct outbox_result result = {
            .id = rows[i].id, .event = OUTBOX_REPLACED, .now_utc_s = settling->context.now_utc_s};

        if (outbox_rows_result(settling->store, &result, fault) != 0) {
            return -1;
        }
    }
    return 0;
}

static bool
holds_time(const struct verdict *verdict)
{
    size_t i;

    for (i = 0; i < verdict->reply_count; i++) {
        if (verdict->replies[i].holds_time) {
            return true;
        }
    }
    return false;
}

static bool
says(const struct verdict *verdict, const char *body)
{
    size_t i;

    for (i = 0; i < verdict->reply_count; i++) {
        if (strcmp(verdict->replies[i].text, body) == 0) {
            return true;
        }
    }
    return false;
}

static bool
has_body(const struct outbox_row *rows, size_t count, const char *body)
{
    size_t i;

    for (i = 0; i < count; i++) {
        if (strcmp(rows[i].body, body) == 0) {
            return true;
        }
    }
    return false;
}

/*
 * No time is left to tell, so all of it is news but what was sent, or waits to be, in the same
 * words. What waits in other words is replaced with the rest.
 */
static int
write_all_anew(const struct settling *settling, struct fault *fault)
{
    const struct verdict *verdict = settling->verdict;
    struct outbox_row *rows;
    size_t count;
    size_t i;

    if (outbox_rows_timeless(settling->store, settling->arena, settling->text_id, &rows, &count,
                             fault) != 0) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        bool waits = rows[i].next_utc_s != 0;

        if (waits && !says(verdict, rows[i].body) && replace(settling, &rows[i], 1, fault) != 0) {
            return -1;
        }
    }
    for (i = 0; i < verdict->reply_count; i++) {
        if (!has_body(rows, count, verdict->replies[i].text) &&
            write_reply(settling, &verdict->replies[i], fault) != 0) {
            return -1;
        }
    }
    return 0;
}

/* What held no time goes out as it was. */
static int
write_times_anew(const struct settling *settling, struct fault *fault)
{
    const struct verdict *verdict = settling->verdict;
    size_t i;

    for (i = 0; i < verdict->reply_count; i++) {
        if (verdict->replies[i].holds_time &&
            write_reply(settling, &verdict->replies[i], fault) != 0) {
            return -1;
        }
    }
    return 0;
}

/*
 * A question that is asked only now must be open for its answer. If a later text of the renter has
 * moved the conversation on, it stays there, and takes the question up unless it has one itself.
 */
static int
write_conversation_again(struct settling *settling, struct fault *fault)
{
    const struct conversation *before = &settling->context.conversation;
    struct conversation *after = &settling->verdict->conversation;
    struct conversation newest;
    bool is_of;

    if (conversation_rows_is_of(settling->store, settling->message->sender, before->row,
                                settling->text_id, &is_of, fault) != 0) {
        return -1;
    }
    if (is_of) {
        return write_conversation(settling, fault);
    }
    if (after->question == QUESTION_NONE) {
        return 0;
    }
    if (conversation_rows_newest(settling->store, settling->arena, settling->message->sender,
                                 &newest, fault) != 0) {
        return -1;
    }
    if (newest.question != QUESTION_NONE) {
        return 0;
    }
    after->last_utc_s =
        newest.last_utc_s > after->last_utc_s ? newest.last_utc_s : after->last_utc_s;
    after->rental_id = newest.rental_id;
    after->in_charge = newest.in_charge;
    return write_conversation(settling, fault);
}

static int
write_again(struct settling *settling, enum alert_level level_before, struct fault *fault)
{
    if (write_verdict(settling, fault) != 0 || write_conversation_again(settling, fault) != 0) {
        return -1;
    }
    if (settling->verdict->alert.level > level_before && write_alert(settling, fault) != 0) {
        return -1;
    }
    return holds_time(settling->verdict) ? write_times_anew(settling, fault)
                                         : write_all_anew(settling, fault);
}

int
settle_again(struct store *store, void *arena, const struct surroundings *surroundings,
             const struct outbox_row *row, struct fault *fault)
{
    struct surroundings unlimited = *surroundings;
    struct message message;
    struct settling settling = {.store = store,
                                .arena = arena,
                                .surroundings = &unlimited,
                                .message = &message,
                                .text_id = row->text_id,
                                .supersedes = row->verdict_id,
                                .give_up_utc_s = row->give_up_utc_s};
    struct outbox_row *stale;
    enum alert_level level_before;
    int64_t conversation_row;
    size_t count;
    bool found;

    unlimited.is_unlimited = true; /* that it is answered was decided when it came */
    if (outbox_rows_stale(store, arena, row->verdict_id, &stale, &count, fault) != 0) {
        return -1;
    }
    if (count == 0) {
        return 0; /* another row of the same verdict came first */
    }
    if (texts_load(store, arena, row->text_id, &message, &found, fault) != 0) {
        return -1;
    }
    if (!found) {
        fault_set(fault, "text %lld is gone, so its reply cannot be worked out again",
                  (long long)row->text_id);
        return -1;
    }
    if (verdict_rows_start(store, row->verdict_id, &conversation_row, &level_before, fault) != 0 ||
        decide(&settling, conversation_row, fault) != 0 ||
        replace(&settling, stale, count, fault) != 0) {
        return -1;
    }
    return write_again(&settling, level_before, fault);
}
