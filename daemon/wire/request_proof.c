#include "request_proof.h"

#include "log.h"

static const char *
header_of(const struct incoming *incoming, const char *name)
{
    return http_request_header(incoming->request, name);
}

struct incoming
request_incoming(struct http_request *request, const struct config *config)
{
    struct incoming incoming = {.url = http_request_url(request, config->public_url),
                                .content_type = http_request_header(request, "Content-Type"),
                                .header = header_of,
                                .request = request};

    incoming.body = http_request_body(request, &incoming.body_length);
    return incoming;
}

void
request_refuse(struct http_request *request, int status, const char *from, const char *why)
{
    log_event(LOG_WARNING, "request-refused", "status", log_number(status), "gateway", from, "why",
              why, NULL);
    http_problem(request, status, NULL, why, NULL);
}

bool
request_is_proven(struct http_request *request, const struct gateway *gateway, bool is_form,
                  const struct incoming *incoming, int64_t now_utc_s)
{
    struct fault fault = {""};

    if (!gateway_authentic(gateway, incoming, now_utc_s, &fault)) {
        http_reply_header(request, "WWW-Authenticate", gateway_challenge(gateway));
        request_refuse(request, 401, gateway->name, fault.text);
        return false;
    }
    if (!gateway_reads_type(is_form, incoming->content_type)) {
        request_refuse(request, 415, gateway->name, "the Content-Type is not the one configured");
        return false;
    }
    return true;
}
