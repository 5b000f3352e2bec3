#include "road_request.h"

#include <string.h>

#include "alert_text.h"
#include "calls.h"
#include "clock.h"
#include "gateway_parts.h"
#include "memory.h"

enum { WEBHOOK_TIMEOUT_MS = 15000 }; /* Standard Webhooks 1.0.0: 15 to 30 s */

static int
carried(void *arena, const struct gateway *carrier, const struct outbox_row *row, int64_t now_utc_s,
        struct road_request *request)
{
    const struct outgoing outgoing = {
        .to = row->to, .text = row->body, .key = row->key, .now_utc_s = now_utc_s};

    gateway_shape(arena, carrier, &outgoing, &request->http);
    request->timeout_ms = carrier->send.timeout_ms;
    return 0;
}

static int
by_text(void *arena, const struct config *config, const struct outbox_row *row, int64_t now_utc_s,
        struct road_request *request, struct fault *fault)
{
    const struct gateway *gateway = config_gateway(config, row->gateway);

    if (gateway == NULL) {
        fault_set(fault, "its gateway is not configured");
        return -1;
    }
    return carried(arena, gateway, row, now_utc_s, request);
}

static int
by_ring(void *arena, const struct config *config, const struct outbox_row *row, int64_t now_utc_s,
        struct road_request *request, struct fault *fault)
{
    const struct ring_service *service = config_ring(config, row->gateway);

    if (service == NULL) {
        fault_set(fault, "its telephone service is not configured");
        return -1;
    }
    return carried(arena, &service->carrier, row, now_utc_s, request);
}

/* Standard Webhooks 1.0.0; the id is the same at each try, the timestamp is the try's. */
static int
by_webhook(void *arena, const struct staff *staff, const struct outbox_row *row, int64_t now_utc_s,
           struct road_request *request, struct fault *fault)
{
    const char **headers = memory_array(arena, const char *, 5);
    const char *signature;

    if (staff == NULL || staff->webhook_url == NULL) {
        fault_set(fault, "no webhook is configured for this person");
        return -1;
    }
    signature = gateway_webhook_signature(arena, staff->webhook_secret, row->key, now_utc_s,
                                          row->body, strlen(row->body));
    headers[0] = "Content-Type: application/json";
    headers[1] = memory_format(arena, "webhook-id: %s", row->key);
    headers[2] = memory_format(arena, "webhook-timestamp: %lld", (long long)now_utc_s);
    headers[3] = memory_format(arena, "webhook-signature: %s", signature);
    request->http = (struct shaped_request){.method = "POST",
                                            .url = staff->webhook_url,
                                            .headers = headers,
                                            .body = row->body,
                                            .body_length = strlen(row->body)};
    request->timeout_ms = WEBHOOK_TIMEOUT_MS;
    return 0;
}

static const char *
mail_text(void *arena, const struct config *config, const char *body, const char *link_token,
          int64_t now_utc_s)
{
    if (link_token == NULL) {
        return body;
    }
    return memory_format(arena,
                         "%s\n\nTo take or to close it, open this page and press a button:\n"
                         "%s/links/%s\n\nThe link is yours alone: please do not pass this e-mail "
                         "on. It is good for one answer, until %s.\n",
                         body, config->public_url, link_token,
                         mail_date(arena, now_utc_s + config->mail.link_s));
}

static int
by_mail(void *arena, const struct config *config, const struct staff *staff,
        const struct outbox_row *row, const char *link_token, int64_t now_utc_s,
        struct road_request *request, struct fault *fault)
{
    const struct mail *mail = &config->mail;

    if (staff == NULL || staff->address == NULL || mail->url == NULL) {
        fault_set(fault, "no e-mail is configured for this person");
        return -1;
    }
    request->is_mail = true;
    request->mail = (struct mail_message){
        .url = mail->url,
        .user = mail->user,
        .password = mail->password,
        .ca_file = mail->ca_file,
        .from = mail->from,
        .to = staff->address,
        .subject = alert_mail_subject(arena, calls_level(row->urgency), row->alert_id),
        .id = row->key,
        .date = mail_date(arena, now_utc_s),
        .text = mail_text(arena, config, row->body, link_token, now_utc_s),
        .timeout_ms = mail->timeout_ms};
    return 0;
}

int
road_request(void *arena, const struct config *config, const struct outbox_row *row,
             const char *link_token, int64_t now_utc_s, struct road_request *request,
             struct fault *fault)
{
    const struct staff *staff = config_staff_by_phone(config, row->to);

    *request = (struct road_request){0};
    switch (row->road) {
    case ROAD_RING:
        return by_ring(arena, config, row, now_utc_s, request, fault);
    case ROAD_WEBHOOK:
        return by_webhook(arena, staff, row, now_utc_s, request, fault);
    case ROAD_MAIL:
        return by_mail(arena, config, staff, row, link_token, now_utc_s, request, fault);
    default:
        return by_text(arena, config, row, now_utc_s, request, fault);
    }
}
