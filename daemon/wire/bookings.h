/*
 * What a booking system sends about rentals: each is a job of the turn, and the sender hears of it
 * after COMMIT.
 */
#ifndef BOOKINGS_H
#define BOOKINGS_H

#include <stdbool.h>

#include "rental.h"

struct bookings;
struct clock;
struct turn;

/* Borrowed, and outlive the bookings. */
struct bookings *bookings_new(struct turn *turn, const struct clock *clock);
/* After turn_free(). NULL is fine. */
void bookings_free(struct bookings *bookings);

struct booking {
    const struct rental *rental;
    const char *json; /* rental_record.h's text of it */
    const char *id;   /* the sender's own id of the request, or NULL */
};

enum booking_outcome {
    BOOKING_NEW,
    BOOKING_CHANGED,
    BOOKING_UNCHANGED, /* the record was so already, or this request was taken before */
    BOOKING_NOT_STORED /* nothing was written: the sender should send it again */
};

/*
 * Takes a checked rental. A request whose id was taken already changes nothing: it may come again
 * when a newer one has changed the record since. What `booking` points at stays the caller's and
 * must live until `done`, which is called once, never from inside this call.
 */
void bookings_take(struct bookings *bookings, const struct booking *booking,
                   void (*done)(void *data, enum booking_outcome outcome), void *data);

#endif
