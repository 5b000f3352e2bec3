/*
 * Staff work from their own phone, half asleep: a few plain words of ours (staff_order.h) and a
 * number that may be left out when only one alert is open; when several are a name or place tells
 * which, or they are asked and the order waits for the answer. HERE alone confirms their turn on
 * call. Of whatever else they write they are told that nobody got it (staff_loose.h).
 */
#include "staff_list.h"
#include "staff_loose.h"
#include "staff_outcome.h"
#include "staff_say.h"

#include <string.h>

#include "memory.h"
#include "parts.h"
#include "steps.h"

/* "Gwen, Cabin 4" between these; "" if neither is known. */
static char *
who(const struct asked *whole, const char *before, const struct open_alert *alert,
    const char *after)
{
    const char *known = staff_list_who(whole, alert);

    return memory_format(whole->arena, "%s%s%s", known[0] == '\0' ? "" : before, known,
                         known[0] == '\0' ? "" : after);
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

/* Closes it with this outcome. */
static struct answer *
close_with(const struct asked *whole, struct verdict *verdict, const struct open_alert *alert,
           const char *note, bool only_this)
{
    bool is_several = staff_list_count(whole->context, alert->number) > 1;
    struct answer *answer;

    change(verdict, ALERT_STEP_CLOSE, alert);
    verdict->alert_change.note = note;
    verdict->alert_change.only_this = only_this;
    answer = staff_say(whole, verdict, SAY_STAFF_CLOSED, staff_say_number(whole, alert->number),
                       is_several && !only_this ? "" : who(whole, ": ", alert, ""));
    if (!only_this && staff_list_is_outage(alert)) {
        answer->text = staff_list_closed(whole, alert, answer->text);
    }
    return answer;
}

static void
close_alert(const struct asked *whole, struct verdict *verdict, const struct staff_meant *meant)
{
    const struct open_alert *alert = meant->alert;
    bool is_several = staff_list_count(whole->context, alert->number) > 1;
    const char *only = is_several ? behind_only(meant->rest) : NULL;
    const char *note = only != NULL ? only : meant->rest;
    bool only_this = only != NULL || (is_several && meant->by_name);

    if (note[0] == '\0') {
        staff_outcome_ask(whole, verdict, alert, only_this); /* no alert ends without one */
    } else {
        (void)close_with(whole, verdict, alert, note, only_this);
    }
}

/* Words for the renter, or the wish to have what the renter texts: either way a person has it. */
static void
talk(const struct asked *whole, struct verdict *verdict, const struct staff_meant *meant)
{
    const struct open_alert *alert = meant->alert;
    const char *number = staff_say_number(whole, alert->number);
    const char *named = who(whole, "", alert, ": w");

    if (alert->no_texts) {
        staff_say(whole, verdict, alert->phone[0] == '+' ? SAY_TALK_RING : SAY_TALK_NOBODY, number,
                  alert->phone);
        return;
    }
    change(verdict, ALERT_STEP_TALK, alert);
    verdict->rental_id = alert->rental_id;
    verdict->relay.to = alert->phone;
    if (meant->rest[0] == '\0') {
        staff_say(whole, verdict, SAY_TALK_ASKED, number, named[0] != '\0' ? named : "W");
        return;
    }
    verdict->relay.text =
        parts_plain(whole->arena,
                    memory_format(whole->arena, "%s: %s", whole->context->staff_name, meant->rest));
    staff_say(whole, verdict, SAY_TALK_SENT, number, who(whole, " to ", alert, ""));
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
hand_on(const struct asked *whole, struct verdict *verdict, const struct staff_meant *meant)
{
    const struct open_alert *alert = meant->alert;
    const char *number = staff_say_number(whole, alert->number);
    const struct colleague *to = colleague_named(whole, meant->rest);

    if (to == NULL || strcmp(to->phone, whole->message->sender) == 0) {
        staff_say(whole, verdict, SAY_HAND_WHO, number, colleague_names(whole));
        return;
    }
    change(verdict, ALERT_STEP_HAND, alert);
    verdict->alert_change.to = to->phone;
    staff_say_words(verdict, say(whole->arena, whole->context->house, LANGUAGE_EN, SAY_HAND_ASKED,
                                 number, to->name, who(whole, " (", alert, ")"), NULL));
}

/* Whoever takes an alert reads whose it is; of several also whom to go to first. */
static void
take(const struct asked *whole, struct verdict *verdict, const struct open_alert *alert)
{
    bool is_several = staff_list_count(whole->context, alert->head) > 1;
    const char *whose =
        is_several ? "" : memory_format(whole->arena, ": %s", staff_list_whose(whole, alert));
    struct answer *answer;

    change(verdict, ALERT_STEP_TAKE, alert);
    answer =
        staff_say(whole, verdict, SAY_STAFF_TAKEN, staff_say_number(whole, alert->head), whose);
    answer->text = is_several ? staff_list_taken(whole, alert->head, answer->text,
                                                 &verdict->alert_change.names_all)
                              : memory_format(whole->arena, "%s%s", answer->text,
                                              staff_list_record(whole, alert, " "));
}

static void
obey(const struct asked *whole, struct verdict *verdict, enum staff_word word,
     const struct staff_meant *meant)
{
    const struct open_alert *alert = meant->alert;
    const char *sender = whole->message->sender;
    bool is_offered = alert->offered_to != NULL && strcmp(alert->offered_to, sender) == 0;
    bool is_anothers =
        alert->taken_by != NULL && strcmp(alert->taken_by, sender) != 0 && !is_offered;

    if (word == STAFF_SORTED) {
        close_alert(whole, verdict, meant); /* anyone may */
    } else if (is_anothers) {
        staff_say(whole, verdict, SAY_STAFF_HAS_IT, staff_say_number(whole, alert->number),
                  staff_list_holder(alert));
    } else if (word == STAFF_TALK) {
        talk(whole, verdict, meant);
    } else if (word == STAFF_HAND) {
        hand_on(whole, verdict, meant);
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
    staff_say(whole, verdict,
              context->turn == TURN_NOT_ASKED  ? SAY_TURN_NONE
              : context->turn == TURN_ANOTHERS ? SAY_TURN_ANOTHERS
                                               : SAY_TURN_YOURS,
              context->turn == TURN_ANOTHERS ? context->turn_name : NULL, NULL);
    return true;
}

/* Lists what is open; what was ordered waits until they say which one is meant. */
static void
ask_which(const struct asked *whole, struct verdict *verdict, const struct staff_order *order)
{
    const char *before = "Which one? Open:\n";

    if (order->has_number) {
        before =
            memory_format(whole->arena, "%lld is not open. %s", (long long)order->number, before);
    }
    staff_meant_ask(whole, verdict);
    staff_say_words(verdict, staff_list_open(whole, before, "\nText only its number or name."));
}

static void
order_decide(const struct asked *whole, struct verdict *verdict, const struct staff_order *order)
{
    const struct context *context = whole->context;
    struct staff_meant meant = staff_meant(whole, order);

    staff_meant_close(verdict);
    if (context->alert_count == 0) {
        staff_say(whole, verdict, SAY_STAFF_NONE_OPEN, NULL, NULL);
    } else if (order->word == STAFF_OPEN) {
        staff_say_words(verdict, order->has_number && meant.alert != NULL
                                     ? staff_list_one(whole, meant.alert)
                                     : staff_list_open(whole, "Open:\n", ""));
    } else if (meant.alert == NULL) {
        ask_which(whole, verdict, order);
    } else {
        obey(whole, verdict, order->word, &meant);
    }
}

/* "12", "Gwen": which one was meant by what they ordered before. */
static bool
which_decide(const struct asked *whole, struct verdict *verdict)
{
    struct staff_meant meant;
    struct staff_order order;
    struct asked earlier;

    if (!staff_meant_answered(whole, &earlier, &order, &meant)) {
        return false;
    }
    staff_meant_close(verdict);
    obey(&earlier, verdict, order.word, &meant);
    return true;
}

/* What happened to the alert that they were about to close. */
static bool
outcome_decide(const struct asked *whole, struct verdict *verdict)
{
    bool only_this;
    const struct open_alert *alert = staff_outcome_awaited(whole, &only_this);
    struct answer *answer;

    if (alert == NULL || !staff_outcome_is_told(whole)) {
        return false;
    }
    staff_meant_close(verdict);
    answer = close_with(whole, verdict, alert, whole->text, only_this);
    answer->text = memory_format(whole->arena, "%s Your text is its note.", answer->text);
    return true;
}

/* Taking an alert and looking hurt nobody and are done; what else may be meant is asked back. */
static bool
slip_decide(const struct asked *whole, struct verdict *verdict)
{
    struct staff_meant meant = {.alert = staff_loose_taken(whole), .rest = ""};
    struct staff_order order = {.word = STAFF_MINE, .rest = ""};

    if (meant.alert == NULL && staff_order_slipped(whole, &order)) {
        if (order.word == STAFF_OPEN) {
            order_decide(whole, verdict, &order);
            return true;
        }
        meant.alert = staff_numbered(whole->context, order.number);
    }
    if (meant.alert == NULL) {
        return false;
    }
    staff_meant_close(verdict);
    if (order.word == STAFF_MINE && order.rest[0] == '\0') {
        obey(whole, verdict, STAFF_MINE, &meant);
    } else {
        staff_meant_ask(whole, verdict);
        staff_say(whole, verdict, SAY_STAFF_SLIP, staff_order_word(order.word),
                  staff_say_number(whole, order.number));
    }
    return true;
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
        staff_died_decide(whole, verdict) || staff_absent_decide(whole, verdict)) {
        return true;
    }
    if (staff_order_read(whole, 0, &order)) {
        order_decide(whole, verdict, &order);
    } else if (!which_decide(whole, verdict) && !slip_decide(whole, verdict) &&
               !outcome_decide(whole, verdict)) {
        staff_loose_decide(whole, verdict);
    }
    return true;
}
