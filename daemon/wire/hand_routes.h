/*
 * How staff answer an alert over HTTP.
 *
 *   POST /rings/SERVICE    the telephone service tells which key was pressed; proven as a gateway
 *                          is. The answer's "say" may be read to whoever is on the telephone.
 *   GET  /links/TOKEN      the page that the link of an e-mail leads to; changes nothing
 *   POST /links/TOKEN      its buttons; uses the link up
 *   POST /alerts           {"alert": 12, "by": "Robin", "do": "take"}, or "do": "close" and
 *                          "outcome": "…"; signed with Robin's webhook secret by Standard Webhooks
 *                          1.0.0
 */
#ifndef HAND_ROUTES_H
#define HAND_ROUTES_H

#include "http.h"

struct hand_routes;
struct routes_parts;

enum { HAND_ROUTE_COUNT = 4 };

/* Writes HAND_ROUTE_COUNT routes to `table`. `parts` may change and outlives them; they live in
 * `arena`. */
struct hand_routes *hand_routes_new(void *arena, const struct routes_parts *parts,
                                    struct http_route *table);

#endif
