/*
 * How renters are reached, as the record says. Who may not be rung ("never ring", "texts only") is
 * not told that somebody will call, and staff hear that they must not; who is blind gets words.
 */
#include <string.h>

#include "memory.h"
#include "steps.h"

static const struct {
    const char *call, *text;
} promises[] = {{"will call you", "will text you"},
                {"will still call you", "will still text you"},
                {"le va a llamar", "le va a escribir"}};

/* How the record says that the sender is reached; REACH_ANY if it does not say. */
static enum reach
reach_of_sender(const struct asked *whole)
{
    const struct context *context = whole->context;
    size_t i, j;

    for (i = 0; i < context->rental_count; i++) {
        for (j = 0; j < context->rentals[i].phone_count; j++) {
            const struct phone *phone = &context->rentals[i].phones[j];

            if (strcmp(phone->number, whole->message->sender) == 0) {
                return phone->reach;
            }
        }
    }
    return REACH_ANY;
}

bool
reach_is_by_text(const struct asked *whole)
{
    enum reach reach = reach_of_sender(whole);

    return reach == REACH_NEVER_RING || reach == REACH_TEXTS_ONLY;
}

bool
reach_is_landline(const struct asked *whole)
{
    return reach_of_sender(whole) == REACH_LANDLINE && whole->context->role != SENDER_STAFF;
}

bool
reach_is_in_words(const struct asked *whole)
{
    const struct context *context = whole->context;
    size_t i;

    for (i = 0; i < context->rental_count; i++) {
        if (context->rentals[i].in_words) {
            return context->role != SENDER_STAFF;
        }
    }
    return false;
}

const char *
reach_words(const struct asked *whole, const char *text)
{
    size_t i;

    for (i = 0; i < sizeof(promises) / sizeof(promises[0]) && reach_is_by_text(whole); i++) {
        const char *at = strstr(text, promises[i].call);

        while (at != NULL) {
            size_t before = (size_t)(at - text);

            text = memory_format(whole->arena, "%.*s%s%s", (int)before, text, promises[i].text,
                                 at + strlen(promises[i].call));
            at = strstr(text + before + strlen(promises[i].text), promises[i].call);
        }
    }
    return text;
}
