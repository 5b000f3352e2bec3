/*
 * What one of staff says of a renter is no sign of their own: an order, an alert passed along, a
 * question about a renter, or what an open alert tells already. Whatever else shows a sign is
 * theirs, or new, and a colleague is called.
 */
#include <string.h>

#include "found.h"
#include "memory.h"
#include "staff_loose.h"
#include "staff_outcome.h"
#include "staff_own.h"
#include "steps.h"

/* The text is of whoever writes it. */
static bool
speaks_of_self(const struct tokens *tokens, size_t at)
{
    return tokens_any_among(tokens, at, " i im ive me my myself we us our ");
}

/* Somebody is told of who need not be the renter of an alert: "a lady here cant breathe". */
static bool
tells_of_another(const struct tokens *tokens)
{
    return tokens_any_among(
        tokens, 0,
        " a an another other someone somebody here lobby desk office counter store hall "
        "parking lot walked came found help send call ");
}

static bool
is_colleague(const struct asked *whole, size_t at)
{
    const struct context *context = whole->context;
    size_t i;

    for (i = 0; i < context->colleague_count; i++) {
        struct tokens name = tokens_read(whole->arena, context->colleagues[i].name);

        if (name.count > 0 && token_is(&whole->tokens, at, name.list[0].text)) {
            return true;
        }
    }
    return false;
}

/* "HAND Gwen", "HAND Gwen to Kim" */
static bool
hands_named(const struct asked *whole, const struct staff_order *order)
{
    const struct staff_meant meant = staff_meant(whole, order);
    struct asked rest = *whole;

    asked_set_text(&rest, meant.rest);
    return meant.by_name &&
           (rest.tokens.count == 0 || is_colleague(&rest, token_is(&rest.tokens, 0, "to") ? 1 : 0));
}

/* "Talk to me", "talk to someone please", "talk they say he has chest pain in the hall": not what
 * TALK sends. */
static bool
is_plain_talk(const struct tokens *tokens, size_t at)
{
    return (token_among(tokens, at, " to with ") &&
            token_among(tokens, at + 1, " me us someone somebody anyone you ")) ||
           (tokens_any_among(tokens, at, " he she they someone somebody another guest ") &&
            tokens_any_among(tokens, at, " lobby desk counter store hall parking lot ") &&
            !tokens_any_among(tokens, at, " you your u ur "));
}

/* "Talk is slurred", "talk there is smoke in here": a sign, and no word of it is said to anybody.
 */
static bool
tells_trouble(const struct asked *whole, size_t at)
{
    return !staff_loose_speaks_to_somebody(&whole->tokens, at) && staff_shows_sign(whole, at);
}

/* An order that an open alert is meant by: its words may tell the sign that it is about. */
static bool
is_about_alert(const struct asked *whole, const struct staff_order *order)
{
    const struct context *context = whole->context;
    size_t at = order->next + (token_is(&whole->tokens, order->next, "to") ? 1 : 0);

    if (order->has_number || order->word == STAFF_MINE || order->word == STAFF_SORTED ||
        order->word == STAFF_OPEN) {
        return true;
    }
    if (order->word == STAFF_HAND) { /* "hand is numb", "hand of Gwen is cold" are none */
        return is_colleague(whole, at) || hands_named(whole, order);
    }
    /* "talk to me, I have chest pain" is no order */
    return context->alert_count > 0 &&
           (staff_meant(whole, order).by_name ||
            (!is_plain_talk(&whole->tokens, order->next) && !tells_trouble(whole, order->next) &&
             !staff_tells_own(whole, order->next)));
}

bool
staff_relays(const struct asked *whole)
{
    const struct open_alert *to;
    struct staff_order order;
    size_t at;

    if (whole->context->role != SENDER_STAFF) {
        return false;
    }
    if ((staff_order_read(whole, 0, &order) && is_about_alert(whole, &order)) ||
        staff_outcome_tells_signs(whole) || staff_loose_to_renter(whole, &to)) {
        return true;
    }
    if (staff_order_slipped(whole, &order) && !speaks_of_self(&whole->tokens, order.next) &&
        staff_numbered(whole->context, order.number) != NULL) {
        return true;
    }
    for (at = 1; at < whole->tokens.count; at++) { /* an alert's own text, forwarded */
        if (staff_order_read(whole, at, &order) && order.has_number &&
            staff_numbered(whole->context, order.number) != NULL) {
            return true;
        }
    }
    return false;
}

/* ---- Of a renter, in words of their own ----------------------------------------------------- */

/* Behind "is the renter", "tell him" or the like at `at`; 0 if nothing of that stands there. */
static size_t
behind_subject(const struct asked *whole, size_t at)
{
    const struct tokens *tokens = &whole->tokens;
    bool is_message = token_among(tokens, at, " tell ask ");
    size_t subject = at + (token_is(tokens, at + 1, "the") ? 2 : 1);

    if (!is_message &&
        !token_among(tokens, at,
                     " is are was were does do did has have had can could will would should ")) {
        return 0;
    }
    return staff_names_renter(whole, subject) ||
                   (is_message && token_among(tokens, subject, " him her "))
               ? subject + 1
               : 0;
}

/* Something else may be told here: a second sentence, a number, a reason. */
static bool
tells_more(const struct tokens *tokens, size_t at)
{
    for (; at < tokens->count; at++) {
        if (tokens->list[at].kind == TOKEN_SIGN
                ? !token_among(tokens, at, " ? . ! ") || at + 1 < tokens->count
                : tokens->list[at].kind == TOKEN_NUMBER ||
                      token_among(tokens, at,
                                  " is are was were isnt arent wasnt has hasnt have cant wont dont "
                                  "doesnt didnt supposed meant normal normally why because but and "
                                  "so having dying ")) {
            return true;
        }
    }
    return false;
}

bool
staff_asks_of_renter(const struct asked *whole)
{
    const struct tokens *tokens = &whole->tokens;
    struct staff_order order;
    size_t at, behind;

    if (whole->context->role != SENDER_STAFF) {
        return false;
    }
    at = staff_order_read(whole, 0, &order) ? order.next : 0;
    behind = behind_subject(whole, at);
    return behind > 0 && !speaks_of_self(tokens, at) && !tells_of_another(tokens) &&
           !tells_more(tokens, behind);
}

/* They speak of this alert: they have it in hand, it is the only one, they name its renter, or they
 * were asked what happened to it. */
static bool
is_spoken_of(const struct asked *whole, const struct open_alert *alert)
{
    bool only_this;

    return alert == staff_outcome_awaited(whole, &only_this) ||
           alert == staff_only_alert(whole->context) ||
           (alert->taken_by != NULL && strcmp(alert->taken_by, whole->message->sender) == 0) ||
           staff_names_alert(whole, alert);
}

/* The open alert that they speak of tells this sign. */
static bool
is_told(const struct asked *whole, const struct sign *sign)
{
    const struct context *context = whole->context;
    size_t i;

    for (i = 0; i < context->alert_count; i++) {
        /* NOLINTNEXTLINE(clang-analyzer-core.NullDereference): a count has its list */
        const struct open_alert *alert = &context->alerts[i];

        if (found_alert_tells(alert, sign->id) && is_spoken_of(whole, alert)) {
            return true;
        }
    }
    return false;
}

bool
staff_speaks_of_renter(const struct asked *whole)
{
    const struct tokens *tokens = &whole->tokens;
    bool only_this;
    size_t at;

    if (whole->context->role != SENDER_STAFF || speaks_of_self(tokens, 0) ||
        tells_of_another(tokens)) {
        return false;
    }
    if (staff_outcome_awaited(whole, &only_this) != NULL ||
        token_among(tokens, 0, " is are was were does did ")) {
        return true; /* "is the chest pain gone" */
    }
    for (at = 0; at < tokens->count; at++) {
        if (token_among(tokens, at, " him her his hers them their ") ||
            staff_names_renter(whole, at)) {
            return true;
        }
    }
    return false;
}

bool
staff_says_of_renter(const struct asked *whole, const struct sign_match *match)
{
    if (staff_asks_of_renter(whole)) {
        return match->sign->level != SIGN_EMERGENCY || match->by_likeness ||
               is_told(whole, match->sign);
    }
    return staff_speaks_of_renter(whole) && is_told(whole, match->sign);
}

bool
staff_spoke_of_renter(const struct asked *whole, const char *text)
{
    struct asked earlier = *whole;
    struct staff_order order;

    if (whole->context->role != SENDER_STAFF) {
        return false;
    }
    asked_set_text(&earlier, text);
    return staff_relays(&earlier) || staff_asks_of_renter(&earlier) ||
           (staff_order_read(&earlier, 0, &order) && !speaks_of_self(&earlier.tokens, order.next));
}
