/*
 * Staff say that a renter has died, "DIED R-34" or "DIED 12" by the alert: everything that the
 * program would start for the rental stops, and it says nothing more to its phones but what a sign
 * asks for. ALIVE takes it back. What is meant must be named: nothing here goes by being the only
 * one.
 */
#include "staff_say.h"

#include <string.h>

#include "memory.h"
#include "steps.h"

/* "12" or "#12" behind the word, and no more: the rental of that open alert, or NULL. */
static const char *
rental_of_alert(const struct asked *whole)
{
    const struct context *context = whole->context;
    size_t at = token_is(&whole->tokens, 1, "#") ? 2 : 1, i;

    if (at + 1 != whole->tokens.count || whole->tokens.list[at].kind != TOKEN_NUMBER) {
        return NULL;
    }
    for (i = 0; i < context->alert_count; i++) {
        if (context->alerts[i].number * 1000 == whole->tokens.list[at].thousandths) {
            return context->alerts[i].rental_id;
        }
    }
    return NULL;
}

bool
staff_died_decide(const struct asked *whole, struct verdict *verdict)
{
    const struct rental *rental = whole->context->named_rental;
    bool is_alive = token_is(&whole->tokens, 0, "alive");
    const char *rental_id;

    if (!is_alive && !token_is(&whole->tokens, 0, "died")) {
        return false;
    }
    rental_id = rental != NULL ? rental->rental_id : rental_of_alert(whole);
    if (rental_id == NULL) {
        staff_say(whole, verdict, SAY_DIED_WHO, NULL, NULL);
        return true;
    }
    verdict->rest_change =
        (struct rest_change){is_alive ? REST_STEP_END : REST_STEP_BEGIN, rental_id};
    staff_say(whole, verdict, is_alive ? SAY_ALIVE : SAY_DIED, rental_id,
              rental != NULL ? rental->first_name : "as the alert has it");
    return true;
}
