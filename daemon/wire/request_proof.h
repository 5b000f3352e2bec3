/* Who sent a request, and how it is refused; shared by the routes. */
#ifndef REQUEST_PROOF_H
#define REQUEST_PROOF_H

#include "gateway.h"
#include "http.h"

/* A request as what checks and maps it sees it. */
struct incoming request_incoming(struct http_request *request, const struct config *config);

/* Answers with a problem and logs why; `from` is the gateway's name, or NULL. */
void request_refuse(struct http_request *request, int status, const char *from, const char *why);

/* Whether it proves to come from this gateway, and its body can be read; else it is refused with
 * 401 or 415. */
bool request_is_proven(struct http_request *request, const struct gateway *gateway, bool is_form,
                       const struct incoming *incoming, int64_t now_utc_s);

#endif
