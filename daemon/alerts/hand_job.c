#include "hand_job.h"

#include <string.h>

#include "alert_renters.h"
#include "link_rows.h"
#include "log.h"
#include "memory.h"
#include "not_reached.h"
#include "turn.h"

/* Keys on the telephone, as alert_spoken() names them. */
static const char key_take[] = "1";
static const char key_close[] = "5";

struct hand_job {
    struct turn_job job; /* first: the turn's pointer is ours */
    struct hand_request request;
    struct hand_answer answer; /* strings are in the job's memory */
    void (*done)(void *data, const struct hand_answer *answer);
    void *data;
    char new_token[LINK_TOKEN_SIZE];
};

/* ---- What is asked, of which alert, by whom ------------------------------------------------- */

/* A call is settled by a key, which no later report takes back. */
static int
note_ring(const struct hand_job *job, struct store *store, void *arena,
          const struct outbox_row *row, struct fault *fault)
{
    const struct hand_request *request = &job->request;
    bool is_pressed = request->report.pressed[0] != '\0';
    const struct outbox_result result = {
        .id = row->id,
        .event = is_pressed ? OUTBOX_DELIVERED : OUTBOX_UNDELIVERED,
        .now_utc_s = request->now_utc_s,
        .detail = is_pressed ? "answered with a key" : "nobody pressed a key"};
    const struct caller caller = {
        .config = request->config, .store = store, .arena = arena, .now_utc_s = request->now_utc_s};
    bool is_news;

    if (outbox_rows_is_news(store, row->id, result.event, &is_news, fault) != 0) {
        return -1;
    }
    if (!is_news) {
        return 0;
    }
    if (outbox_rows_result(store, &result, fault) != 0) {
        return -1;
    }
    return is_pressed ? 0 : not_reached(&caller, row, result.event, fault);
}

static int
find_ring(struct hand_job *job, struct store *store, void *arena, struct fault *fault)
{
    const struct ring_report *report = &job->request.report;
    struct outbox_row row;
    bool found;

    if (outbox_rows_by_gateway_id(store, arena, ROAD_RING, job->request.service, report->ring, &row,
                                  &found, fault) != 0) {
        return -1;
    }
    if (!found) {
        job->answer.state = HAND_UNKNOWN;
        return 0;
    }
    job->answer.number = row.alert_id;
    job->answer.who = memory_copy(job, row.to);
    job->answer.is_closing = strcmp(report->pressed, key_close) == 0;
    if (!job->answer.is_closing && strcmp(report->pressed, key_take) != 0) {
        job->answer.state = HAND_NOTHING;
    }
    return report->result == RING_UNKNOWN ? 0 : note_ring(job, store, arena, &row, fault);
}

static int
find_link(struct hand_job *job, struct store *store, void *arena, struct fault *fault)
{
    const struct hand_request *request = &job->request;
    struct link link;
    bool found;

    if (link_rows_find(store, arena, request->token, &link, &found, fault) != 0) {
        return -1;
    }
    if (!found || link.is_used || link.expires_utc_s <= request->now_utc_s) {
        job->answer.state = found ? HAND_SPENT : HAND_UNKNOWN;
        return 0;
    }
    job->answer.number = link.alert_number;
    job->answer.who = memory_copy(job, link.who);
    job->answer.is_closing = request->is_closing;
    return link_rows_use(store, request->token, request->now_utc_s, fault);
}

static int
find(struct hand_job *job, struct store *store, void *arena, struct fault *fault)
{
    const struct hand_request *request = &job->request;

    switch (request->source) {
    case HAND_BY_RING:
        return find_ring(job, store, arena, fault);
    case HAND_BY_LINK:
        return find_link(job, store, arena, fault);
    default:
        job->answer.number = request->number;
        job->answer.who = memory_copy(job, request->who);
        job->answer.is_closing = request->is_closing;
        return 0;
    }
}

/* ---- Doing it ------------------------------------------------------------------------------- */

static enum road
road_of(enum hand_source source)
{
    return source == HAND_BY_RING ? ROAD_RING : source == HAND_BY_LINK ? ROAD_MAIL : ROAD_WEBHOOK;
}

/* Whoever has taken an alert is told all about it. */
static int
load_facts(struct hand_job *job, struct store *store, struct fault *fault)
{
    struct hand_answer *answer = &job->answer;

    if (alert_rows_find(store, job, answer->number, &answer->alert, &answer->is_yours, fault) !=
            0 ||
        alert_renters(store, job, job->request.config, &answer->alert, fault) != 0) {
        return -1;
    }
    return alert_facts_read(store, job, job->request.config, &answer->alert, job->request.now_utc_s,
                            &answer->facts, fault);
}

/* By telephone it is read to them: they have pressed a key, so no machine listens. */
static int
tell_facts(struct hand_job *job, struct store *store, struct fault *fault)
{
    const char *facts;

    if (load_facts(job, store, fault) != 0) {
        return -1;
    }
    facts = alert_facts_spoken(job, &job->answer.facts);
    if (*facts != '\0') {
        job->answer.words = memory_format(job, "%s %s", job->answer.words, facts);
    }
    return 0;
}

/* Whoever took an alert by its link gets another one to close it with. */
static int
offer_closing(struct hand_job *job, struct store *store, struct fault *fault)
{
    struct hand_answer *answer = &job->answer;
    const struct link link = {.alert_number = answer->number,
                              .who = answer->who,
                              .expires_utc_s =
                                  job->request.now_utc_s + job->request.config->mail.link_s};

    if (load_facts(job, store, fault) != 0) {
        return -1;
    }
    link_token(job->new_token);
    answer->token = job->new_token;
    return link_rows_add(store, job->new_token, &link, job->request.now_utc_s, fault);
}

static int
on_write(struct turn_job *turn_job, struct store *store, void *arena, struct fault *fault)
{
    struct hand_job *job = (struct hand_job *)turn_job;
    const struct hand_request *request = &job->request;
    struct hand_answer *answer = &job->answer;
    struct alert_hand hand = {.road = road_name(road_of(request->source)),
                              .now_utc_s = request->now_utc_s};
    const struct caller caller = {
        .config = request->config, .store = store, .arena = arena, .now_utc_s = request->now_utc_s};
    const char *holder = NULL;
    int rc;

    *answer = (struct hand_answer){.state = HAND_TOLD};
    if (find(job, store, arena, fault) != 0) {
        return -1;
    }
    if (answer->state != HAND_TOLD) {
        return 0;
    }
    hand.who = answer->who;
    rc = answer->is_closing
             ? alert_close(&caller, answer->number, &hand,
                           request->source == HAND_BY_RING ? "settled, by a key on the telephone"
                                                           : request->outcome,
                           &answer->result, fault)
             : alert_take(&caller, answer->number, &hand, &answer->result, &holder, fault);
    if (rc != 0) {
        return -1;
    }
    answer->words = alert_hands_words(job, request->config, answer->number, answer->is_closing,
                                      answer->result, holder);
    if (answer->is_closing || answer->result != HANDS_DONE) {
        return 0;
    }
    return request->source == HAND_BY_LINK   ? offer_closing(job, store, fault)
           : request->source == HAND_BY_RING ? tell_facts(job, store, fault)
                                             : 0;
}

static void
on_done(struct turn_job *turn_job, enum turn_outcome outcome, const struct fault *fault)
{
    struct hand_job *job = (struct hand_job *)turn_job;
    struct hand_answer *answer = &job->answer;
    const char *road = road_name(road_of(job->request.source));

    if (outcome != TURN_WRITTEN) {
        answer->state = HAND_NOT_WRITTEN;
        log_event(LOG_ERROR_LEVEL, "hand-not-written", "road", road, "why", fault->text, NULL);
    } else if (answer->state == HAND_TOLD && answer->result == HANDS_DONE) {
        log_event(LOG_INFO, answer->is_closing ? "alert-closed" : "alert-taken", "alert",
                  log_number(answer->number), "road", road, "who", log_phone(answer->who), NULL);
    }
    job->done(job->data, answer);
    talloc_free(job);
}

void
hand_job_add(struct turn *turn, const struct hand_request *request,
             void (*done)(void *data, const struct hand_answer *answer), void *data)
{
    struct hand_job *job = memory_new(NULL, struct hand_job);

    job->job = (struct turn_job){.write = on_write, .done = on_done};
    job->request = *request;
    job->done = done;
    job->data = data;
    turn_add(turn, &job->job);
}
