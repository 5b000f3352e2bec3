#include "turns.h"

#include <string.h>

#include "about_us.h"
#include "log.h"
#include "memory.h"
#include "parts.h"
#include "say.h"

enum turn_step
turn_step_due(const struct duty *duty, int64_t confirm_s, int64_t now_utc_s, int64_t *next_utc_s)
{
    *next_utc_s = duty->until_utc_s > now_utc_s ? duty->until_utc_s : now_utc_s + 1;
    if (confirm_s <= 0 || duty->confirmed_by != NULL || duty->passed == duty->count) {
        return TURN_WAIT;
    }
    if (duty->asked_utc_s == 0) {
        bool is_new = now_utc_s - duty->since_utc_s < TURN_ASK_WITHIN_S;

        return is_new || duty->passed > 0 ? TURN_ASK : TURN_WAIT;
    }
    if (now_utc_s >= duty->asked_utc_s + confirm_s) {
        return TURN_PASS;
    }
    if (duty->asked_utc_s + confirm_s < *next_utc_s) {
        *next_utc_s = duty->asked_utc_s + confirm_s;
    }
    return TURN_WAIT;
}

int
turns_next(struct store *store, const struct config *config, int64_t now_utc_s, int64_t *next_utc_s,
           struct fault *fault)
{
    void *arena;
    struct duty duty;
    int rc;

    *next_utc_s = INT64_MAX;
    if (config->rota == NULL || config->turn_confirm_s == 0) {
        return 0;
    }
    arena = memory_must(talloc_new(NULL));
    rc = duty_now(store, arena, config, now_utc_s, &duty, fault);
    if (rc == 0 &&
        turn_step_due(&duty, config->turn_confirm_s, now_utc_s, next_utc_s) != TURN_WAIT) {
        *next_utc_s = now_utc_s;
    }
    talloc_free(arena);
    return rc;
}

/* ---- Asking --------------------------------------------------------------------------------- */

static const char *
question(const struct caller *caller, const struct duty *duty, const char *before)
{
    char *text = memory_copy(caller->arena, "");

    if (before != NULL) {
        memory_append(&text, "%s did not confirm the turn. ", before);
    }
    memory_append(&text,
                  "You are on call until %s. Text HERE within %lld min, or the next in line "
                  "takes it.",
                  say_day(caller->arena, &caller->config->zone, LANGUAGE_EN, duty->until_utc_s),
                  (long long)((caller->config->turn_confirm_s + 59) / 60));
    return parts_plain(caller->arena, text);
}

static int
add_event(const struct caller *caller, const struct duty *duty, enum turn_event event,
          const struct staff *staff, struct fault *fault)
{
    const struct turn_row row = {event, staff->phone, caller->now_utc_s};

    return turn_rows_add(caller->store, duty->since_utc_s, &row, fault);
}

/* Past the time for an answer the text is of no use. It is about no alert: if it is lost, the next
 * in line is asked all the same. */
static int
ask(const struct caller *caller, const struct duty *duty, const char *before, struct fault *fault)
{
    const struct staff *staff = duty->line[0];
    const struct outbox_new text = {.about = OUTBOX_ALERT,
                                    .road = ROAD_TEXT,
                                    .gateway = calls_carrier(caller->config, ROAD_TEXT),
                                    .to = staff->phone,
                                    .body = question(caller, duty, before),
                                    .urgency = URGENCY_URGENT,
                                    .now_utc_s = caller->now_utc_s,
                                    .give_up_utc_s =
                                        caller->now_utc_s + caller->config->turn_confirm_s};
    int64_t id;

    log_event(LOG_INFO, "turn-asked", "who", staff->name, NULL);
    return add_event(caller, duty, TURN_ASKED, staff, fault) != 0
               ? -1
               : outbox_rows_add(caller->store, &text, &id, fault);
}

/* ---- Passing it on -------------------------------------------------------------------------- */

static int
tell_office(const struct caller *caller, const char *before, const struct duty *duty,
            struct fault *fault)
{
    bool nobody = duty->passed == duty->count;
    const char *brief = nobody ? "nobody has confirmed the turn on call"
                               : memory_format(caller->arena, "%s did not confirm the turn, now %s",
                                               before, duty->line[0]->name);
    int64_t number;

    return about_us(caller->config, caller->store, nobody ? ALERT_URGENT : ALERT_OFFICE, "us:turn",
                    brief, caller->now_utc_s, &number, fault);
}

static int
pass_on(const struct caller *caller, struct duty *duty, struct fault *fault)
{
    const struct staff *before = duty->line[0];

    log_event(LOG_WARNING, "turn-passed", "who", before->name, NULL);
    if (add_event(caller, duty, TURN_PASSED, before, fault) != 0 ||
        duty_now(caller->store, caller->arena, caller->config, caller->now_utc_s, duty, fault) !=
            0 ||
        tell_office(caller, before->name, duty, fault) != 0) {
        return -1;
    }
    return duty->passed == duty->count ? 0 : ask(caller, duty, before->name, fault);
}

int
turns_step(const struct caller *caller, struct fault *fault)
{
    const struct config *config = caller->config;
    struct duty duty;
    int64_t next_utc_s;

    if (config->rota == NULL || config->turn_confirm_s == 0) {
        return 0;
    }
    if (duty_now(caller->store, caller->arena, config, caller->now_utc_s, &duty, fault) != 0) {
        return -1;
    }
    switch (turn_step_due(&duty, config->turn_confirm_s, caller->now_utc_s, &next_utc_s)) {
    case TURN_ASK:
        return ask(caller, &duty, NULL, fault);
    case TURN_PASS:
        return pass_on(caller, &duty, fault);
    default:
        return 0;
    }
}

/* ---- The answer ----------------------------------------------------------------------------- */

int
turns_confirm(struct store *store, void *arena, const struct config *config, const char *phone,
              int64_t now_utc_s, struct fault *fault)
{
    const struct turn_row row = {TURN_CONFIRMED, phone, now_utc_s};
    struct duty duty = duty_at(arena, config, now_utc_s);

    log_event(LOG_INFO, "turn-confirmed", "by", log_phone(phone), NULL);
    return turn_rows_add(store, duty.since_utc_s, &row, fault);
}

int
turns_of(struct store *store, void *arena, const struct config *config, const char *phone,
         int64_t now_utc_s, struct context *context, struct fault *fault)
{
    struct turn_row *rows;
    struct duty duty;
    size_t count, i;

    context->turn = TURN_NOT_ASKED;
    if (config->rota == NULL || config->turn_confirm_s == 0) {
        return 0;
    }
    if (duty_now(store, arena, config, now_utc_s, &duty, fault) != 0 ||
        turn_rows_of(store, arena, duty.since_utc_s, &rows, &count, fault) != 0) {
        return -1;
    }
    if (duty.confirmed_by != NULL) {
        bool is_theirs = strcmp(duty.confirmed_by->phone, phone) == 0;

        context->turn = is_theirs ? TURN_THEIRS : TURN_ANOTHERS;
        context->turn_name = duty.confirmed_by->name;
        return 0;
    }
    for (i = 0; i < count; i++) {
        if (rows[i].event == TURN_ASKED && strcmp(rows[i].who, phone) == 0) {
            context->turn = TURN_ASKED_THEM; /* who was passed over may still come */
        }
    }
    return 0;
}
