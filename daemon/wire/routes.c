#include "routes.h"

#include <string.h>

#include <glib.h>
#include <jansson.h>

#include "bookings.h"
#include "clock.h"
#include "deliveries.h"
#include "gateway.h"
#include "hand_routes.h"
#include "health.h"
#include "intake.h"
#include "log.h"
#include "memory.h"
#include "rental_json.h"
#include "request_proof.h"

enum { ROUTE_COUNT = 4 + HAND_ROUTE_COUNT, REQUEST_ID_MAX = 256 };

struct routes {
    struct routes_parts parts;
    struct hand_routes *hands;
    struct http_route table[ROUTE_COUNT];
};

static int64_t
now_of(const struct routes *routes)
{
    return clock_now_utc_s(routes->parts.clock);
}

/* ---- Who sent it ---------------------------------------------------------------------------- */

/*
 * The gateway that a request proves to come from, and what it sent; NULL once it is refused.
 */
static const struct gateway *
proven_gateway(struct routes *routes, struct http_request *request, bool is_delivery,
               struct incoming *incoming)
{
    const struct config *config = routes->parts.loaded->config;
    const struct gateway *gateway = config_gateway(config, http_request_tail(request));

    if (gateway == NULL || (is_delivery && !gateway->delivery.configured)) {
        request_refuse(request, 404, NULL, "no gateway of this name is configured for this");
        return NULL;
    }
    *incoming = request_incoming(request, config);
    return request_is_proven(request, gateway,
                             is_delivery ? gateway->delivery.form : gateway->message.form, incoming,
                             now_of(routes))
               ? gateway
               : NULL;
}

/* ---- Texts and reports ----------------------------------------------------------------------- */

static void
reply_taken(struct http_request *request)
{
    static const char taken[] = "{\"taken\":true}\n";

    http_reply(request, 200, "application/json", taken, sizeof(taken) - 1);
}

static void
reply_not_stored(struct http_request *request)
{
    http_problem(request, 503, NULL, "the store cannot be written now; send it again", NULL);
}

static void
on_taken(void *data, enum intake_outcome outcome)
{
    struct http_request *request = data;

    if (outcome == INTAKE_STORED || outcome == INTAKE_REPEAT) {
        reply_taken(request);
    } else {
        reply_not_stored(request);
    }
}

static void
on_message(struct http_request *request, void *data)
{
    struct routes *routes = data;
    struct incoming incoming;
    const struct gateway *gateway = proven_gateway(routes, request, false, &incoming);
    struct message *message;
    struct fault fault = {""};

    if (gateway == NULL) {
        return;
    }
    message = memory_new(http_request_arena(request), struct message);
    if (gateway_message(http_request_arena(request), routes->parts.loaded->config, gateway,
                        &incoming, now_of(routes), message, &fault) != 0) {
        request_refuse(request, 400, gateway->name, fault.text);
        return;
    }
    intake_take(routes->parts.intake, message, on_taken, request);
}

static void
on_reported(void *data, bool is_written)
{
    if (is_written) {
        reply_taken(data);
    } else {
        reply_not_stored(data);
    }
}

static void
on_delivery(struct http_request *request, void *data)
{
    struct routes *routes = data;
    struct incoming incoming;
    const struct gateway *gateway = proven_gateway(routes, request, true, &incoming);
    struct delivery delivery;
    struct fault fault = {""};

    if (gateway == NULL) {
        return;
    }
    if (gateway_delivery(http_request_arena(request), gateway, &incoming, &delivery, &fault) != 0) {
        request_refuse(request, 400, gateway->name, fault.text);
    } else if (delivery.status == DELIVERY_DELIVERED || delivery.status == DELIVERY_FAILED) {
        deliveries_take(routes->parts.deliveries, gateway, &delivery, on_reported, request);
    } else {
        log_event(LOG_DEBUG, "delivery-settles-nothing", "gateway", gateway->name, "word",
                  delivery.word, NULL);
        reply_taken(request);
    }
}

/* ---- Rentals -------------------------------------------------------------------------------- */

static void
on_put(void *data, enum booking_outcome outcome)
{
    struct http_request *request = data;
    const char *text =
        outcome == BOOKING_UNCHANGED ? "{\"changed\":false}\n" : "{\"changed\":true}\n";

    if (outcome == BOOKING_NOT_STORED) {
        reply_not_stored(request);
    } else { /* RFC 9110, 9.3.4: 201 only for what was not there */
        http_reply(request, outcome == BOOKING_NEW ? 201 : 200, "application/json", text,
                   strlen(text));
    }
}

/* The signature covers the body, not the path: so the body must say which rental it is. */
static bool
is_of_path(struct http_request *request, const struct rental *rental)
{
    char *id = g_uri_unescape_string(http_request_tail(request), NULL);
    bool is_same = id != NULL && strcmp(id, rental->rental_id) == 0;

    g_free(id);
    return is_same;
}

/* By which a repeat is known; only where it is signed with the rest. */
static const char *
request_id(const struct http_request *request, const struct gateway *booking)
{
    const char *id = http_request_header(request, "webhook-id");

    return booking->authentication.kind == AUTHENTICATION_STANDARD_WEBHOOKS && id != NULL &&
                   strlen(id) <= REQUEST_ID_MAX && g_utf8_validate(id, -1, NULL)
               ? id
               : NULL;
}

static void
put_rental(struct routes *routes, struct http_request *request, const json_t *sent)
{
    const struct loaded *loaded = routes->parts.loaded;
    const struct rental_setting setting = {loaded->config, &loaded->zone, loaded->kb};
    struct rental *rental = memory_new(http_request_arena(request), struct rental);
    struct booking booking = {.rental = rental, .id = request_id(request, loaded->config->booking)};
    struct rental_errors errors;

    booking.json = rental_json_read(http_request_arena(request), sent, &setting, rental, &errors);
    if (booking.json == NULL) {
        log_event(LOG_WARNING, "rental-refused", "faults", log_number((int64_t)errors.count), NULL);
        http_problem_of_all(request, 422, "The rental has faults; nothing was changed.",
                            errors.list, errors.count);
    } else if (!is_of_path(request, rental)) {
        http_problem(request, 422, NULL,
                     "rental_id is not the one of the path; nothing was changed.", "/rental_id");
    } else {
        bookings_take(routes->parts.bookings, &booking, on_put, request);
    }
}

static void
on_rental(struct http_request *request, void *data)
{
    struct routes *routes = data;
    const struct config *config = routes->parts.loaded->config;
    struct incoming incoming = request_incoming(request, config);
    json_error_t at;
    json_t *sent;

    if (config->booking == NULL) {
        request_refuse(request, 404, NULL, "no booking system is configured");
        return;
    }
    if (!request_is_proven(request, config->booking, false, &incoming, now_of(routes))) {
        return;
    }
    sent = json_loadb(incoming.body, incoming.body_length, JSON_REJECT_DUPLICATES, &at);
    if (sent == NULL) {
        request_refuse(request, 400, config->booking->name,
                       memory_format(http_request_arena(request),
                                     "the body is not JSON, line %d column %d", at.line,
                                     at.column));
        return;
    }
    put_rental(routes, request, sent);
    json_decref(sent);
}

/* ---- Health --------------------------------------------------------------------------------- */

static void
on_health(struct http_request *request, void *data)
{
    struct routes *routes = data;
    const struct health_parts parts = {.store = routes->parts.store,
                                       .turn = routes->parts.turn,
                                       .kb = routes->parts.loaded->kb,
                                       .now_utc_s = now_of(routes)};
    bool is_well;
    const char *text = health_json(http_request_arena(request), &parts, &is_well);

    http_reply_header(request, "Cache-Control", "no-store");
    http_reply(request, is_well ? 200 : 503, "application/json", text, strlen(text));
}

/* ---- From outside --------------------------------------------------------------------------- */

struct routes *
routes_new(const struct routes_parts *parts)
{
    struct routes *routes = memory_new(NULL, struct routes);

    routes->parts = *parts;
    routes->table[0] = (struct http_route){"POST", "/messages/", on_message, routes};
    routes->table[1] = (struct http_route){"POST", "/deliveries/", on_delivery, routes};
    routes->table[2] = (struct http_route){"PUT", "/rentals/", on_rental, routes};
    routes->table[3] = (struct http_route){"GET", "/health", on_health, routes};
    routes->hands = hand_routes_new(routes, &routes->parts, &routes->table[4]);
    return routes;
}

void
routes_free(struct routes *routes)
{
    talloc_free(routes);
}

void
routes_use(struct routes *routes, const struct loaded *loaded)
{
    routes->parts.loaded = loaded; /* the hands' routes look at the same parts */
}

const struct http_route *
routes_table(struct routes *routes, size_t *count)
{
    *count = ROUTE_COUNT;
    return routes->table;
}
