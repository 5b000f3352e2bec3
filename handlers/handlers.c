/* The order of what can happen to a text, and nothing else. */
#include "handlers.h"

#include <string.h>

#include "beside_emergency.h"
#include "emergency.h"
#include "memory.h"
#include "oximeter.h"
#include "questions.h"
#include "reply.h"
#include "say.h"
#include "steps.h"

typedef bool step(const struct asked *asked, struct verdict *verdict);

/* After the signs. */
static step *const whole_text[] = {
    flowing_decide,    staff_decide,       no_reply_decide,   worse_again_decide,
    unheard_decide,    consent_decide,     machine_decide,    in_charge_decide,
    death_decide,      foreign_decide,     danger_yes_decide, open_emergency_decide,
    help_fails_decide, worse_alone_decide, introduces_decide, hospice_decide};

static step *const each_question[] = {is_over_decide,
                                      emergency_number_decide,
                                      house_alarm_decide,
                                      ran_out_decide,
                                      weak_battery_decide,
                                      plug_decide,
                                      reminder_decide,
                                      ordered_setting_decide,
                                      charge_time_decide,
                                      fly_decide,
                                      cylinder_left_decide,
                                      other_power_decide,
                                      watt_hours_decide,
                                      display_decide,
                                      bare_percent_decide,
                                      power_decide,
                                      equipment_trouble_decide,
                                      courtesy_like_decide,
                                      brings_back_decide,
                                      topics_decide,
                                      office_decide,
                                      gap_decide};

#define STEPS(list) (sizeof(list) / sizeof((list)[0]))

static bool
run(step *const *steps, size_t count, const struct asked *asked, struct verdict *verdict)
{
    size_t i;

    for (i = 0; i < count; i++) {
        if (steps[i](asked, verdict)) {
            return true;
        }
    }
    return false;
}

void
handlers_answer(const struct asked *asked, struct verdict *verdict)
{
    (void)run(each_question, STEPS(each_question), asked, verdict);
}

/* The question shows a sign itself; what it says was answered with that. */
static bool
shows_sign(const struct asked *question)
{
    struct sign_match match;
    size_t start, end;
    int percent;

    return kb_find_signs(question->context->kb, question->context->workspace, question->text,
                         &match, 1) > 0 ||
           oximeter_read(question->text, &percent, &start, &end) || unknown_medicine_told(question);
}

/* Beside an emergency nothing is answered but power and backup, and beside a fire not even that. */
static void
answer_beside_emergency(const struct asked *whole, struct verdict *verdict)
{
    struct pieces pieces = cut_questions(whole->arena, whole->text, whole->language);
    size_t i;

    if (emergency_is_fire(verdict) || beside_emergency_names_fire(whole)) {
        return;
    }
    for (i = 0; i < pieces.count; i++) {
        struct asked piece = asked_question(whole, pieces.list[i].text, whole->message->sent_utc_s);

        if (power_asks_how_long(&piece) || !shows_sign(&piece)) {
            (void)open_emergency_aid(&piece, verdict);
        }
    }
}

/* Wishes to change or to stretch what is ordered. */
static bool
has_wish_to_stretch(const struct verdict *verdict)
{
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        if (verdict->answers[i].kind == ANSWER_SIGN &&
            (strcmp(verdict->answers[i].id, "change-setting") == 0 ||
             strcmp(verdict->answers[i].id, "rationing") == 0)) {
            return true;
        }
    }
    return false;
}

static bool
is_about_time(const struct asked *question)
{
    const char *id = question->search.count > 0 ? question->search.best[0].topic->id : "";

    return strcmp(id, "hours-left") == 0 || strcmp(id, "battery-life") == 0;
}

/*
 * Beside a sign only what has an answer is answered: a person calls anyway. Beside a wish to change
 * or stretch what is ordered no time is worked out, lest it reads as leave to do so.
 */
static void
answer_beside_sign(const struct asked *question, struct verdict *verdict)
{
    bool no_times = has_wish_to_stretch(verdict);
    bool shows = shows_sign(question);

    if (open_emergency_is(question->context)) {
        (void)open_emergency_aid(question, verdict);
        return;
    }
    if (verdict->conversation.question == QUESTION_PLUG && plug_answered(question, verdict)) {
        return;
    }
    if (!no_times && (!shows || power_asks_how_long(question)) && power_decide(question, verdict)) {
        return;
    }
    if (!shows && !display_decide(question, verdict) && !(no_times && is_about_time(question))) {
        (void)topics_decide(question, verdict);
    }
}

static void
answer_question(const struct asked *question, struct verdict *verdict, bool sign_fired)
{
    if (sign_fired) {
        answer_beside_sign(question, verdict);
    } else if (!open_question_decide(question, verdict) && !courtesy_decide(question, verdict)) {
        handlers_answer(question, verdict);
    }
}

/* A pleasantry may still answer what we asked ("yes please"); else it wants little or nothing. */
static void
answer_courtesy(const struct asked *piece, struct verdict *verdict)
{
    if (!open_question_decide(piece, verdict) && !courtesy_decide(piece, verdict)) {
        verdict_add(verdict, ANSWER_COURTESY, ROUTE_SMALLTALK, "courtesy");
    }
}

/* "E, 1500 psi, flujo 2", and nothing beside it. */
static bool
is_cylinder(const struct asked *whole)
{
    enum { SHORT_TEXT = 12 };
    const struct told *told = whole->told;

    return whole->tokens.count <= SHORT_TEXT && told->size[0] != '\0' &&
           (told->psi > 0 || told->bar > 0) && told->flow_tenths > 0;
}

/* Beside a sign nothing is put together, so that what shows it stays apart from what does not; and
 * figures of one thing that we ask for are not divided. */
static struct pieces
pieces_of(const struct asked *whole, bool sign_fired)
{
    return sign_fired || is_cylinder(whole) || asked_open_question(whole) == QUESTION_WHICH_CHARGE
               ? cut_questions(whole->arena, whole->text, whole->language)
               : kb_questions(whole->context->kb, whole->arena, whole->context->workspace,
                              whole->text, whole->language);
}

/* A piece that was told apart by what it is about is about that, unless no topic fits it. Any other
 * is looked at together with the question before it, if it is none by itself. */
static void
lean_on(const struct asked *whole, const struct pieces *pieces, size_t at,
        const struct topic_search *before, struct asked *piece)
{
    size_t first = at;

    kb_trust(&pieces->list[at], &piece->search);
    while (first > 0 && pieces->list[first - 1].courtesy) {
        first--;
    }
    if (first > 0) {
        const char *both = memory_copy_n(whole->arena, whole->text + pieces->list[first - 1].start,
                                         pieces->list[at].end - pieces->list[first - 1].start);

        kb_lean(whole->context->kb, whole->context->workspace, both, whole->language, before,
                &piece->search);
    }
}

/* "All good?": it is a courtesy, and waits for a word all the same. */
static bool
is_courtesy_that_asks(const struct asked *whole, const struct verdict *verdict)
{
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        if (verdict->answers[i].kind != ANSWER_COURTESY || verdict->answers[i].text[0] != '\0') {
            return false;
        }
    }
    return verdict->answer_count > 0 && tokens_have(&whole->tokens, "?");
}

static void
answer_pieces(const struct asked *whole, struct verdict *verdict)
{
    bool sign_fired = verdict->answer_count > 0 && verdict->answers[0].kind == ANSWER_SIGN;
    struct pieces pieces = pieces_of(whole, sign_fired);
    struct topic_search before = {.sureness = UNSURE};
    size_t i;
    bool settled =
        !sign_fired && (follow_up_decide(whole, verdict) || done_so_decide(whole, verdict));

    for (i = 0; i < pieces.count && !settled; i++) {
        struct asked piece = asked_question(whole, pieces.list[i].text, whole->message->sent_utc_s);

        if (!pieces.list[i].courtesy) {
            lean_on(whole, &pieces, i, &before, &piece);
            before = piece.search;
            answer_question(&piece, verdict, sign_fired);
        } else if (!sign_fired) {
            answer_courtesy(&piece, verdict);
        }
    }
    if (!sign_fired && is_courtesy_that_asks(whole, verdict)) {
        verdict->answers[0].text =
            say(whole->arena, whole->context->house, whole->language, SAY_COURTESY, NULL);
    }
    if (verdict->answer_count == 0) { /* no words at all */
        struct asked question = asked_question(whole, whole->text, whole->message->sent_utc_s);

        answer_courtesy(&question, verdict);
    }
    flowing_ask_again(whole, verdict);
}

static void
verdict_begin(void *arena, const struct asked *whole, struct verdict *verdict)
{
    *verdict = (struct verdict){.arena = arena,
                                .route = ROUTE_SMALLTALK,
                                .language = whole->language,
                                .conversation = whole->context->conversation};
    if (asked_begins_anew(whole->context)) {
        verdict->conversation.rental_id = NULL;
    }
    if (whole->rental != NULL) {
        verdict->rental_id = whole->rental->rental_id;
        verdict->rental_digest = whole->rental->digest;
    }
}

/* What is not answered, "gracias", tells the language of the next text as well. */
static void
keep_language(const struct context *context, struct verdict *verdict)
{
    struct conversation *conversation = &verdict->conversation;

    conversation->is_spoken = true;
    conversation->language = verdict->language;
    if (!context->conversation.is_spoken || context->conversation.language != verdict->language) {
        verdict->conversation_changed = true;
    }
}

void
handlers_decide(void *arena, const struct message *message, const struct context *context,
                struct verdict *verdict)
{
    struct asked whole = asked_whole(arena, message, context);

    verdict_begin(arena, &whole, verdict);
    if (!signs_decide(&whole, verdict) && !run(whole_text, STEPS(whole_text), &whole, verdict)) {
        answer_pieces(&whole, verdict);
    } else if (verdict->route == ROUTE_EMERGENCY) {
        answer_beside_emergency(&whole, verdict);
    }
    keep_language(context, verdict);
    in_charge_pass_on(&whole, verdict);
    follow_up_keep(&whole, verdict);
    power_keep_reading(&whole, verdict);
    reminder_mention(&whole, verdict);
    outage_say_hours(&whole, verdict);
    reply_compose(&whole, verdict);
    limited_hold(&whole, verdict);
    no_reply_hold(&whole, verdict);
    outage_mark(&whole, verdict);
    verdict->alert.call_utc_s = office_hours_call(&whole, verdict);
}

/* What is not stored cannot be open: nobody would know what an answer is about. */
static void
leave_out_questions(struct verdict *verdict)
{
    size_t i, kept = 0;

    for (i = 0; i < verdict->answer_count; i++) {
        if (verdict->answers[i].kind != ANSWER_ASK) {
            verdict->answers[kept++] = verdict->answers[i];
        }
    }
    verdict->answer_count = kept;
}

bool
handlers_decide_unrecorded(void *arena, const struct message *message,
                           const struct context *context, struct verdict *verdict)
{
    struct asked whole = asked_whole(arena, message, context);

    verdict_begin(arena, &whole, verdict);
    (void)signs_decide(&whole, verdict);
    leave_out_questions(verdict);
    if (verdict->alert.level < ALERT_URGENT) {
        return false;
    }
    reply_compose(&whole, verdict);
    verdict->reply_count = verdict->reply_count > 1 ? 1 : verdict->reply_count;
    no_reply_hold(&whole, verdict);
    return true;
}
