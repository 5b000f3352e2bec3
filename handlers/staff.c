/*
 * Staff work from their own phone, half asleep: a few plain words of ours (staff_order.h) and a
 * number that may be left out when only one alert is open, never when two are. HERE alone confirms
 * their turn on call. Whatever else they write gets the list of words.
 */
#include "staff_list.h"
#include "staff_order.h"

#include <string.h>

#include "memory.h"
#include "parts.h"
#include "say.h"
#include "steps.h"

/* The one that all open ones are called by; NULL if there are several to choose from. */
static const struct open_alert *
only_alert(const struct context *context)
{
    const struct open_alert *only = NULL;
    size_t i;

    for (i = 0; i < context->alert_count; i++) {
        if (context->alerts[i].head == context->alerts[i].number) {
            if (only != NULL) {
                return NULL;
            }
            only = &context->alerts[i];
        }
    }
    return only;
}

/* An order that an open alert is meant by: its words may tell the sign that it is about. */
static bool
is_about_alert(const struct asked *whole, const struct staff_order *order)
{
    const struct context *context = whole->context;
    const struct open_alert *only = only_alert(context);

    if (order->has_number || order->word == STAFF_MINE || order->word == STAFF_SORTED) {
        return true;
    }
    /* "talk to me, I have chest pain" of someone who has no alert in hand is no order */
    return only != NULL && only->taken_by != NULL &&
           strcmp(only->taken_by, whole->message->sender) == 0;
}

bool
staff_relays(const struct asked *whole)
{
    const struct context *context = whole->context;
    struct staff_order order;
    size_t at, i;

    if (context->role != SENDER_STAFF) {
        return false;
    }
    if (staff_order_read(whole, 0, &order) && is_about_alert(whole, &order)) {
        return true;
    }
    for (at = 1; at < whole->tokens.count; at++) { /* an alert's own text, forwarded */
        if (!staff_order_read(whole, at, &order) || !order.has_number) {
            continue;
        }
        for (i = 0; i < context->alert_count; i++) {
            if (context->alerts[i].number == order.number) {
                return true;
            }
        }
    }
    return false;
}

static char *
alert_number(const struct asked *whole, int64_t number)
{
    return memory_format(whole->arena, "%lld", (long long)number);
}

static void
reply(const struct asked *whole, struct verdict *verdict, enum phrase phrase, const char *first,
      const char *second)
{
    struct answer *answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, "staff");

    answer->text =
        say(whole->arena, whole->context->house, LANGUAGE_EN, phrase, first, second, NULL);
}

/* The alert meant: by number, or the only one that is open. NULL if neither. Words for a renter
 * need to know for whom. */
static const struct open_alert *
alert_meant(const struct context *context, const struct staff_order *order)
{
    size_t i;

    if (!order->has_number) {
        return order->word == STAFF_TALK && context->alert_count > 1 ? NULL : only_alert(context);
    }
    for (i = 0; i < context->alert_count; i++) {
        if (context->alerts[i].number == order->number) {
            return &context->alerts[i];
        }
    }
    return NULL;
}

/* ---- What is done with it ------------------------------------------------------------------- */

static void
change(struct verdict *verdict, enum alert_step step, const struct open_alert *alert)
{
    verdict->alert_change = (struct alert_change){.step = step, .number = alert->number};
}

/* Behind "only ", which closes an alert for its own renter and leaves those who are called with it;
 * NULL if it does not stand there. */
static const char *
behind_only(const char *rest)
{
    size_t length = strcspn(rest, " ");

    return staff_is_word(rest, length, "only") ? rest + length + strspn(rest + length, " ,.:")
                                               : NULL;
}

static void
close_alert(const struct asked *whole, struct verdict *verdict, const struct staff_order *order,
            const struct open_alert *alert)
{
    const char *number = alert_number(whole, alert->number);
    size_t count = staff_list_count(whole->context, alert->number);
    const char *only = count > 1 ? behind_only(order->rest) : NULL;
    const char *note = only != NULL ? only : order->rest;

    if (note[0] == '\0') {
        reply(whole, verdict, SAY_STAFF_OUTCOME, number, NULL); /* no alert ends without one */
        return;
    }
    change(verdict, ALERT_STEP_CLOSE, alert);
    verdict->alert_change.note = note;
    verdict->alert_change.only_this = only != NULL;
    reply(whole, verdict, SAY_STAFF_CLOSED, number, NULL);
    if (only == NULL && staff_list_is_outage(alert)) {
        struct answer *answer = &verdict->answers[verdict->answer_count - 1];

        answer->text = staff_list_closed(whole, alert, answer->text);
    }
}

/* Words for the renter, or the wish to have what the renter texts: either way a person has it. */
static void
talk(const struct asked *whole, struct verdict *verdict, const struct staff_order *order,
     const struct open_alert *alert)
{
    const char *number = alert_number(whole, alert->number);

    if (alert->no_texts) {
        reply(whole, verdict, alert->phone[0] == '+' ? SAY_TALK_RING : SAY_TALK_NOBODY, number,
              alert->phone);
        return;
    }
    change(verdict, ALERT_STEP_TALK, alert);
    verdict->rental_id = alert->rental_id;
    verdict->relay.to = alert->phone;
    if (order->rest[0] != '\0') {
        verdict->relay.text =
            parts_plain(whole->arena, memory_format(whole->arena, "%s: %s",
                                                    whole->context->staff_name, order->rest));
    }
    reply(whole, verdict, order->rest[0] != '\0' ? SAY_TALK_SENT : SAY_TALK_ASKED, number, NULL);
}

/* "kim", "to Kim.": the colleague whose name, or first word of it, stands there alone. */
static const struct colleague *
colleague_named(const struct asked *whole, const char *rest)
{
    static const char ends[] = " .,!";
    const struct context *context = whole->context;
    const struct colleague *found = NULL;
    size_t length, i;

    rest += strlen(rest) > 3 && staff_is_word(rest, 2, "to") && rest[2] == ' ' ? 3 : 0;
    for (length = strlen(rest); length > 0 && strchr(ends, rest[length - 1]) != NULL; length--) {
    }
    for (i = 0; i < context->colleague_count; i++) {
        const struct colleague *colleague = &context->colleagues[i];
        size_t first = strcspn(colleague->name, " ");

        if (staff_is_word(rest, length, colleague->name)) {
            return colleague;
        }
        if (first == length &&
            staff_is_word(rest, length, memory_copy_n(whole->arena, colleague->name, first))) {
            if (found != NULL) {
                return NULL; /* two of that name */
            }
            found = colleague;
        }
    }
    return found;
}

static char *
colleague_names(const struct asked *whole)
{
    const struct context *context = whole->context;
    char *names = memory_copy(whole->arena, "");
    size_t i;

    for (i = 0; i < context->colleague_count; i++) {
        if (strcmp(context->colleagues[i].phone, whole->message->sender) != 0) {
            memory_append(&names, "%s%s", names[0] == '\0' ? "" : ", ",
                          context->colleagues[i].name);
        }
    }
    return names;
}

static void
hand_on(const struct asked *whole, struct verdict *verdict, const struct staff_order *order,
        const struct open_alert *alert)
{
    const char *number = alert_number(whole, alert->number);
    const struct colleague *to = colleague_named(whole, order->rest);

    if (to == NULL || strcmp(to->phone, whole->message->sender) == 0) {
        reply(whole, verdict, SAY_HAND_WHO, number, colleague_names(whole));
        return;
    }
    change(verdict, ALERT_STEP_HAND, alert);
    verdict->alert_change.to = to->phone;
    reply(whole, verdict, SAY_HAND_ASKED, number, to->name);
}

/* Whoever takes the alert of several has to know whom to go to first. */
static void
take(const struct asked *whole, struct verdict *verdict, const struct open_alert *alert)
{
    const char *number = alert_number(whole, alert->head);

    change(verdict, ALERT_STEP_TAKE, alert);
    reply(whole, verdict, SAY_STAFF_TAKEN, number, NULL);
    if (staff_list_count(whole->context, alert->head) > 1) {
        struct answer *answer = &verdict->answers[verdict->answer_count - 1];

        answer->text =
            staff_list_taken(whole, alert->head, answer->text, &verdict->alert_change.names_all);
    }
}

static void
obey(const struct asked *whole, struct verdict *verdict, const struct staff_order *order,
     const struct open_alert *alert)
{
    const char *sender = whole->message->sender;
    bool is_offered = alert->offered_to != NULL && strcmp(alert->offered_to, sender) == 0;
    bool is_anothers =
        alert->taken_by != NULL && strcmp(alert->taken_by, sender) != 0 && !is_offered;

    if (order->word == STAFF_SORTED) {
        close_alert(whole, verdict, order, alert); /* anyone may */
    } else if (is_anothers) {
        reply(whole, verdict, SAY_STAFF_HAS_IT, alert_number(whole, alert->number),
              staff_list_holder(alert));
    } else if (order->word == STAFF_TALK) {
        talk(whole, verdict, order, alert);
    } else if (order->word == STAFF_HAND) {
        hand_on(whole, verdict, order, alert);
    } else {
        take(whole, verdict, alert);
    }
}

/* "Here", "HERE!" */
static bool
confirm_turn(const struct asked *whole, struct verdict *verdict)
{
    const struct context *context = whole->context;
    size_t end = 1;

    while (token_among(&whole->tokens, end, " . ! , ")) {
        end++;
    }
    if (!token_is(&whole->tokens, 0, "here") || end < whole->tokens.count) {
        return false;
    }
    verdict->confirms_turn = context->turn == TURN_ASKED_THEM;
    reply(whole, verdict,
          context->turn == TURN_NOT_ASKED  ? SAY_TURN_NONE
          : context->turn == TURN_ANOTHERS ? SAY_TURN_ANOTHERS
                                           : SAY_TURN_YOURS,
          context->turn == TURN_ANOTHERS ? context->turn_name : NULL, NULL);
    return true;
}

static void
order_decide(const struct asked *whole, struct verdict *verdict, const struct staff_order *order)
{
    const struct context *context = whole->context;
    const struct open_alert *alert = alert_meant(context, order);

    if (context->alert_count == 0) {
        reply(whole, verdict, SAY_STAFF_NONE_OPEN, NULL, NULL);
    } else if (order->word == STAFF_OPEN) {
        reply(whole, verdict, SAY_STAFF_OPEN, staff_list_open(whole), NULL);
    } else if (alert == NULL) {
        reply(whole, verdict, SAY_STAFF_LIST, staff_list_open(whole), NULL);
    } else {
        obey(whole, verdict, order, alert);
    }
}

bool
staff_decide(const struct asked *whole, struct verdict *verdict)
{
    struct staff_order order;

    if (whole->context->role != SENDER_STAFF) {
        return false;
    }
    if (verdict->answer_count > 0) {
        return true; /* a sign of their own was answered */
    }
    if (confirm_turn(whole, verdict) || staff_link_decide(whole, verdict) ||
        staff_died_decide(whole, verdict)) {
        return true;
    }
    if (staff_order_read(whole, 0, &order)) {
        order_decide(whole, verdict, &order);
    } else {
        reply(whole, verdict, SAY_STAFF_HELP, NULL, NULL);
    }
    return true;
}
