/*
 * What goes out by a road: an HTTP request to a gateway, a telephone service or a webhook, or an
 * e-mail. Pure but for the clock and random numbers that come in; no I/O.
 */
#ifndef ROAD_REQUEST_H
#define ROAD_REQUEST_H

#include "gateway.h"
#include "mailer.h"
#include "outbox_rows.h"

struct road_request {
    bool is_mail;
    struct shaped_request http;
    struct mail_message mail;
    int timeout_ms;
};

/*
 * Shapes a row for its road, in `arena`. `link_token` is that of an e-mail, or NULL for one without
 * a link. Returns 0, or -1 with a fault if the configuration knows the gateway, the service or the
 * person no more.
 */
int road_request(void *arena, const struct config *config, const struct outbox_row *row,
                 const char *link_token, int64_t now_utc_s, struct road_request *request,
                 struct fault *fault);

#endif
