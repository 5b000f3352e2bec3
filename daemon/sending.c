#include "sending.h"

#include <assert.h>

#include "clock.h"
#include "link_rows.h"
#include "memory.h"
#include "road_request.h"
#include "send_outcome.h"
#include "turn.h"

struct sending {
    struct turn_job job; /* first: the turn's pointer is ours */
    const struct sending_parts *parts;
    const struct outbox_row *row;
    sending_done *done;
    void *cookie;
    char token[LINK_TOKEN_SIZE];
    struct transfer *transfer; /* of HTTP */
    bool job_waits;
};

static int64_t
now_of(const struct sending *sending)
{
    return clock_now_utc_s(sending->parts->clock);
}

static void
finish(struct sending *sending, const struct sending_result *result)
{
    sending->done(result, sending->cookie);
    talloc_free(sending);
}

static const struct gateway *
carrier_of(const struct sending *sending)
{
    const struct outbox_row *row = sending->row;
    const struct ring_service *service;

    if (row->road == ROAD_TEXT) {
        return config_gateway(sending->parts->config, row->gateway);
    }
    service = row->road == ROAD_RING ? config_ring(sending->parts->config, row->gateway) : NULL;
    return service != NULL ? &service->carrier : NULL;
}

static void
on_answer(const struct transfer_result *answer, void *cookie)
{
    struct sending *sending = cookie;
    const struct gateway *carrier = carrier_of(sending);
    struct sending_result result = {
        .event = send_outcome_of(answer->status),
        .retry_after_s = answer->retry_after_s,
        .detail = send_outcome_detail(sending, answer->status, answer->error)};

    sending->transfer = NULL;
    if (result.event == OUTBOX_ACCEPTED && carrier != NULL) {
        result.gateway_id = gateway_accepted_id(sending, carrier, answer->body, answer->body_size);
    }
    finish(sending, &result);
}

static void
on_mail(const struct mail_result *answer, void *cookie)
{
    struct sending *sending = cookie;
    const struct sending_result result = {
        .event = send_outcome_of_mail(answer->status),
        .detail = answer->status == 0
                      ? answer->error
                      : memory_format(sending, "SMTP %d %s", answer->status, answer->error)};

    finish(sending, &result);
}

/* Hands it over; -1 with a fault if that cannot be. */
static int
hand_over(struct sending *sending, const char *token, struct fault *fault)
{
    void *arena = memory_must(talloc_new(NULL));
    struct road_request request;
    int rc = road_request(arena, sending->parts->config, sending->row, token, now_of(sending),
                          &request, fault);

    if (rc == 0 && request.is_mail) {
        mailer_send(sending->parts->mailer, &request.mail, on_mail, sending);
    } else if (rc == 0) {
        sending->transfer = send_shaped(sending->parts->transfers, &request.http,
                                        request.timeout_ms, on_answer, sending);
        if (sending->transfer == NULL) {
            fault_set(fault, "the request cannot be started");
            rc = -1;
        }
    }
    talloc_free(arena);
    return rc;
}

/* ---- The link of an e-mail ------------------------------------------------------------------ */

static int
on_write(struct turn_job *job, struct store *store, void *arena, struct fault *fault)
{
    struct sending *sending = (struct sending *)job;
    const struct link link = {.alert_number = sending->row->alert_id,
                              .who = sending->row->to,
                              .expires_utc_s =
                                  now_of(sending) + sending->parts->config->mail.link_s};

    (void)arena;
    return link_rows_add(store, sending->token, &link, now_of(sending), fault);
}

static void
on_done(struct turn_job *job, enum turn_outcome outcome, const struct fault *fault)
{
    struct sending *sending = (struct sending *)job;
    struct sending_result result = {.event = OUTBOX_TRIED_AGAIN_LATER};
    struct fault why;

    sending->job_waits = false;
    if (outcome != TURN_WRITTEN) {
        result.is_held_up = true;
        result.detail = fault->text;
        finish(sending, &result);
    } else if (hand_over(sending, sending->token, &why) != 0) {
        result.detail = why.text;
        finish(sending, &result);
    }
}

/* ---- From outside --------------------------------------------------------------------------- */

struct sending *
sending_start(const struct sending_parts *parts, const struct outbox_row *row, sending_done *done,
              void *cookie, struct fault *fault)
{
    struct sending *sending = memory_new(NULL, struct sending);

    sending->job = (struct turn_job){.write = on_write, .done = on_done};
    sending->parts = parts;
    sending->row = row;
    sending->done = done;
    sending->cookie = cookie;
    if (row->road == ROAD_MAIL && parts->turn != NULL) {
        link_token(sending->token);
        sending->job_waits = true;
        turn_add(parts->turn, &sending->job);
    } else if (hand_over(sending, NULL, fault) != 0) {
        talloc_free(sending);
        return NULL;
    }
    return sending;
}

void
sending_cancel(struct sending *sending)
{
    assert(!sending->job_waits);
    if (sending->transfer != NULL) {
        transfer_cancel(sending->transfer);
    }
    talloc_free(sending);
}
