/*
 * What only the office can do waits until it is open, unless the renter needs it before: their
 * rental begins or ends tomorrow at the latest, they fly then, they ask for tonight, they ask how
 * long a battery lasts that they are on, or something graver is open about them.
 */
#include <string.h>

#include "steps.h"

static const char flight_words[] = "flight|flights|fly|flying|plane|airplane|airport|airline|vuelo|"
                                   "vuelos|volar|vuelo|avion|aeropuerto|aerolinea";
static const char soon_words[] = "today|tonight|tomorrow|this morning|this afternoon|this evening|"
                                 "in the morning|hoy|esta noche|manana|esta tarde";
static const char tonight_words[] = "tonight|right now|right away|esta noche|ahorita|ahora mismo";

/* The end of tomorrow, or the office's opening if that comes later. */
static int64_t
needed_before(const struct context *context)
{
    struct local_time local = zone_local(context->zone, context->now_utc_s);
    int64_t end_utc_s;

    local = (struct local_time){.year = local.year, .month = local.month, .day = local.day + 2};
    end_utc_s = zone_utc(context->zone, &local);
    return context->office_opens_utc_s > end_utc_s ? context->office_opens_utc_s : end_utc_s;
}

static bool
is_soon(const struct context *context, int64_t utc_s)
{
    return utc_s >= context->now_utc_s && utc_s < needed_before(context);
}

/* Of any rental that this phone may mean. */
static bool
rental_is_near_its_end(const struct asked *asked)
{
    const struct context *context = asked->context;
    size_t i;

    for (i = 0; i < context->rental_count; i++) {
        const struct rental *rental = &context->rentals[i];

        if (!rental_is_active(rental)) {
            continue;
        }
        if (is_soon(context, rental->due_utc_s) ||
            (rental->state == RENTAL_BOOKED && is_soon(context, rental->start_utc_s))) {
            return true;
        }
    }
    return false;
}

static bool
says_so(const struct asked *asked)
{
    return tokens_have(&asked->tokens, tonight_words) ||
           (tokens_have(&asked->tokens, flight_words) && tokens_have(&asked->tokens, soon_words));
}

static bool
something_graver_is_open(const struct context *context)
{
    size_t i;

    for (i = 0; i < context->alert_count; i++) {
        if (context->alerts[i].level > ALERT_OFFICE) {
            return true;
        }
    }
    return false;
}

/* They are on a battery. */
static bool
asks_hours_left(const struct verdict *verdict)
{
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        const char *topic = verdict->answers[i].topic;

        if (topic != NULL && strcmp(topic, "hours-left") == 0) {
            return true;
        }
    }
    return false;
}

bool
office_hours_wait(const struct asked *asked)
{
    return asked->context->office_opens_utc_s > asked->context->now_utc_s && !says_so(asked) &&
           !rental_is_near_its_end(asked) && !something_graver_is_open(asked->context);
}

int64_t
office_hours_call(const struct asked *whole, const struct verdict *verdict)
{
    bool waits = whole->context->role != SENDER_STAFF && /* of their turn, which may begin soon */
                 verdict->alert.level == ALERT_OFFICE && !verdict->alert.ring &&
                 !asks_hours_left(verdict) && office_hours_wait(whole);

    return waits ? whole->context->office_opens_utc_s : whole->context->now_utc_s;
}
