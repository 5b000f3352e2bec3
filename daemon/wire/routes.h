/*
 * What the HTTP server answers: POST /messages/GATEWAY (a renter's or staff's text), POST
 * /deliveries/GATEWAY (a report about one of ours), PUT /rentals/ID (the booking system's record of
 * a rental), GET /health, and what staff answer to alerts (hand_routes.h). Every refusal is a
 * problem document; nothing of a refused request is stored.
 */
#ifndef ROUTES_H
#define ROUTES_H

#include "http.h"
#include "loaded.h"

struct bookings;
struct clock;
struct deliveries;
struct intake;
struct routes;
struct store;
struct turn;

/* Borrowed, and outlive the routes. */
struct routes_parts {
    const struct clock *clock;
    struct store *store;
    struct turn *turn;
    struct intake *intake;
    struct deliveries *deliveries;
    struct bookings *bookings;
    const struct loaded *loaded;
};

struct routes *routes_new(const struct routes_parts *parts);
/* After http_free(). NULL is fine. */
void routes_free(struct routes *routes);

/* Another configuration from now on. */
void routes_use(struct routes *routes, const struct loaded *loaded);

/* The table for http_new(). */
const struct http_route *routes_table(struct routes *routes, size_t *count);

#endif
