#include "intake.h"

#include <string.h>

#include "answered_lately.h"
#include "calls.h"
#include "clock.h"
#include "handlers.h"
#include "line_test_rows.h"
#include "log.h"
#include "memory.h"
#include "settle.h"
#include "texts.h"
#include "turn.h"

struct intake {
    struct intake_parts parts;
    struct workspace *workspace;
    struct answered_lately *unrecorded;
};

struct intake_job {
    struct turn_job job; /* first: the turn knows it by this */
    struct intake *intake;
    const struct message *message;
    void (*done)(void *data, enum intake_outcome outcome);
    void *data;
    bool is_repeat, is_line_test;
    int64_t text_id;
    const char *route;
};

static struct surroundings
surroundings_now(const struct intake *intake)
{
    return (struct surroundings){.loaded = intake->parts.loaded,
                                 .workspace = intake->workspace,
                                 .now_utc_s = clock_now_utc_s(intake->parts.clock)};
}

/* ---- Into the store ------------------------------------------------------------------------ */

static bool
shows_sign(const struct intake *intake, void *arena, const struct message *message)
{
    struct surroundings surroundings = surroundings_now(intake);
    struct context context = gather_without_record(&surroundings, message->sender);
    struct verdict verdict = {0};

    return handlers_decide_unrecorded(arena, message, &context, &verdict);
}

/* A sign never counts as a repeat on likelihood alone: who asks twice for help is heard twice. */
static int
find_repeat(struct intake_job *job, struct store *store, void *arena, struct fault *fault)
{
    enum repeat repeat;

    if (texts_find_repeat(store, job->message, &repeat, &job->text_id, fault) != 0) {
        return -1;
    }
    job->is_repeat = repeat == REPEAT_CERTAIN ||
                     (repeat == REPEAT_LIKELY && !shows_sign(job->intake, arena, job->message));
    return 0;
}

/* Our own test text has come back: it is nobody's question. */
static int
find_line_test(struct intake_job *job, struct store *store, const struct surroundings *surroundings,
               struct fault *fault)
{
    const struct line_test_times *test = &surroundings->loaded->config->line_test;

    job->is_line_test = false;
    if (!test->is_on || strcmp(job->message->sender, test->to) != 0) {
        return 0;
    }
    return line_test_rows_come(store, job->message->sender, job->message->text,
                               surroundings->now_utc_s, &job->is_line_test, fault);
}

static int
on_write(struct turn_job *turn_job, struct store *store, void *arena, struct fault *fault)
{
    struct intake_job *job = (struct intake_job *)turn_job;
    const struct surroundings surroundings = surroundings_now(job->intake);
    int64_t keep_s = surroundings.loaded->config->limits.repeat_keep_s;
    struct verdict *verdict;

    if (find_line_test(job, store, &surroundings, fault) != 0 ||
        find_repeat(job, store, arena, fault) != 0) {
        return -1;
    }
    if (job->is_line_test || job->is_repeat) {
        return 0;
    }
    if (settle(store, arena, &surroundings, job->message, &verdict, &job->text_id, fault) != 0) {
        return -1;
    }
    job->route = route_name(verdict->route);
    return texts_remember(store, job->message, job->text_id, surroundings.now_utc_s - keep_s,
                          fault);
}

/* ---- Past a broken store ------------------------------------------------------------------- */

/* Whether it was handed on. */
static bool
reply_unrecorded(const struct intake *intake, const struct message *message,
                 const struct reply *reply)
{
    const struct outbox_row row = {.about = OUTBOX_REPLY,
                                   .gateway = message->gateway,
                                   .to = message->sender,
                                   .body = reply->text,
                                   .urgency = reply->urgency};

    return intake->parts.send_unrecorded(intake->parts.data, &row);
}

/* Everyone on call, by every road. */
static bool
call_staff_unrecorded(const struct intake *intake, void *arena, const struct message *message,
                      const struct alert_call *call)
{
    const struct caller caller = {.config = intake->parts.loaded->config,
                                  .arena = arena,
                                  .now_utc_s = clock_now_utc_s(intake->parts.clock)};
    const struct alert_row alert = {.level = call->level,
                                    .phone = message->sender,
                                    .reason = call->reason,
                                    .brief = call->brief};
    struct outbox_row row = {.about = OUTBOX_ALERT, .urgency = calls_urgency(call->level)};
    bool is_sent = false;
    size_t i;
    int road;

    for (i = 0; i < caller.config->staff_count; i++) {
        const struct staff *staff = &caller.config->staff[i];

        for (road = 0; road < ROAD_COUNT; road++) {
            if ((roads_of(caller.config, staff) & 1U << road) != 0) {
                row.road = (enum road)road;
                row.gateway = calls_carrier(caller.config, row.road);
                row.to = staff->phone;
                row.body = calls_words(&caller, &alert, staff, row.road);
                is_sent |= intake->parts.send_unrecorded(intake->parts.data, &row);
            }
        }
    }
    return is_sent;
}

static void
answer_unrecorded(struct intake *intake, const struct message *message)
{
    void *arena = memory_must(talloc_new(NULL));
    const struct surroundings surroundings = surroundings_now(intake);
    const struct context context = gather_without_record(&surroundings, message->sender);
    struct verdict verdict = {0};
    bool is_sent = false;
    size_t i;

    if (handlers_decide_unrecorded(arena, message, &context, &verdict) &&
        !answered_lately(intake->unrecorded, message->sender, verdict.alert.level,
                         surroundings.now_utc_s)) {
        for (i = 0; i < verdict.reply_count; i++) {
            is_sent |= reply_unrecorded(intake, message, &verdict.replies[i]);
        }
        is_sent |= call_staff_unrecorded(intake, arena, message, &verdict.alert);
        if (is_sent) {
            answered_lately_note(intake->unrecorded, message->sender, verdict.alert.level,
                                 surroundings.now_utc_s);
        }
        log_event(LOG_ERROR_LEVEL, is_sent ? "sign-unrecorded" : "sign-unrecorded-not-sent", "from",
                  log_phone(message->sender), "level", alert_level_name(verdict.alert.level), NULL);
    }
    talloc_free(arena);
}

static void
on_done(struct turn_job *turn_job, enum turn_outcome outcome, const struct fault *fault)
{
    struct intake_job *job = (struct intake_job *)turn_job;
    enum intake_outcome told = job->is_repeat ? INTAKE_REPEAT : INTAKE_STORED;

    if (outcome == TURN_WRITTEN) {
        log_event(LOG_INFO,
                  job->is_line_test ? "line-test-came"
                  : job->is_repeat  ? "text-repeated"
                                    : "text-stored",
                  "text", log_number(job->text_id), "from", log_phone(job->message->sender),
                  "gateway", job->message->gateway, "route", job->route, NULL);
    } else {
        told = INTAKE_NOT_STORED;
        log_event(LOG_ERROR_LEVEL, "text-not-stored", "from", log_phone(job->message->sender),
                  "gateway", job->message->gateway, "why", fault->text, NULL);
        answer_unrecorded(job->intake, job->message);
    }
    job->done(job->data, told);
    talloc_free(job);
}

/* ---- From outside -------------------------------------------------------------------------- */

struct intake *
intake_new(const struct intake_parts *parts)
{
    struct intake *intake = memory_new(NULL, struct intake);

    intake->parts = *parts;
    intake->workspace = workspace_new();
    intake->unrecorded = answered_lately_new();
    return intake;
}

void
intake_free(struct intake *intake)
{
    if (intake == NULL) {
        return;
    }
    answered_lately_free(intake->unrecorded);
    workspace_free(intake->workspace);
    talloc_free(intake);
}

void
intake_use(struct intake *intake, const struct loaded *loaded)
{
    intake->parts.loaded = loaded;
}

void
intake_take(struct intake *intake, const struct message *message,
            void (*done)(void *data, enum intake_outcome outcome), void *data)
{
    struct intake_job *job = memory_new(NULL, struct intake_job);

    *job = (struct intake_job){.job = {.write = on_write, .done = on_done},
                               .intake = intake,
                               .message = message,
                               .done = done,
                               .data = data};
    turn_add(intake->parts.turn, &job->job);
}

int
intake_work_out_again(void *cookie, struct store *store, void *arena, const struct outbox_row *row,
                      struct fault *fault)
{
    const struct intake *intake = cookie;
    const struct surroundings surroundings = surroundings_now(intake);

    return settle_again(store, arena, &surroundings, row, fault);
}
