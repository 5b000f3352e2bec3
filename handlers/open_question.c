/*
 * Questions of ours and what renters answer to them. A text that does not answer goes on to the
 * other steps, and the question stays open until the conversation ends or another is asked.
 */
#include <string.h>

#include "bare_charge.h"
#include "estimate.h"
#include "handlers.h"
#include "memory.h"
#include "say.h"
#include "steps.h"

static const char no_words[] = " no nope nah neither none ninguno ninguna n ";
static const char around_no[] =
    " no nope neither none of them those these it thats not thanks thank "
    "you either gracias ninguno ninguna de los las dos ";
static const char drop_words[] = " cancel end cancelar nevermind nvm ";

/* What hangs on the answer; a question gives way to a graver one only. */
static int
gravity(enum open_question question)
{
    switch (question) {
    case QUESTION_FLOWING:
        return 3;
    case QUESTION_READING_OR_AGE:
        return 2;
    case QUESTION_PLUG:
        return 1;
    case QUESTION_NONE:
    case QUESTION_WHICH_RENTAL:
    case QUESTION_WHICH_TOPIC:
    case QUESTION_WHICH_CHARGE:
        break;
    }
    return 0;
}

bool
open_question_ask(const struct asked *asked, struct verdict *verdict, enum open_question question)
{
    struct conversation *conversation = &verdict->conversation;
    bool waits = asked_open_question(asked) != QUESTION_NONE ||
                 conversation->asked_utc_s == asked->context->now_utc_s;

    if ((waits && gravity(conversation->question) > gravity(question)) || conversation->opted_out) {
        return false;
    }
    conversation->question = question;
    conversation->asked_utc_s = asked->context->now_utc_s;
    conversation->asked_about = asked->text;
    conversation->choice_count = 0;
    verdict->conversation_changed = true;
    return true;
}

void
open_question_close(struct verdict *verdict)
{
    verdict->conversation.question = QUESTION_NONE;
    verdict->conversation.asked_about = NULL;
    verdict->conversation.choice_count = 0;
    verdict->conversation_changed = true;
}

/* "1 Ana (Wren), 2 Tom (Brook)" */
static char *
name_rentals(const struct asked *asked, struct conversation *conversation)
{
    const struct context *context = asked->context;
    char *names = memory_copy(asked->arena, "");
    size_t i;

    for (i = 0; i < context->rental_count && conversation->choice_count < CHOICES_MAX; i++) {
        const struct rental *rental = &context->rentals[i];
        const struct equipment *unit =
            rental->unit == NULL ? NULL : kb_equipment(context->kb, rental->unit);

        if (!rental_is_active(rental)) {
            continue;
        }
        conversation->choices[conversation->choice_count++] = rental->rental_id;
        memory_append(&names, "%s%zu %s", conversation->choice_count == 1 ? "" : ", ",
                      conversation->choice_count,
                      rental->first_name != NULL ? rental->first_name : rental->rental_id);
        if (unit != NULL) {
            memory_append(&names, " (%s)", unit->name);
        }
    }
    return names;
}

void
open_question_which_rental(const struct asked *asked, struct verdict *verdict, const char *topic)
{
    struct answer *answer;
    char *names;

    if (!open_question_ask(asked, verdict, QUESTION_WHICH_RENTAL)) {
        (void)gap_decide(asked, verdict); /* what cannot be asked a person finds out */
        return;
    }
    names = name_rentals(asked, &verdict->conversation);
    answer = verdict_add(verdict, ANSWER_ASK, ROUTE_ANSWER, "which-rental");
    answer->topic = topic;
    answer->text =
        say(asked->arena, asked->context->house, asked->language, SAY_WHICH_RENTAL, names, NULL);
}

static void
say_briefly(const struct asked *asked, struct verdict *verdict, const char *id, enum phrase phrase)
{
    struct answer *answer = verdict_add(verdict, ANSWER_COURTESY, ROUTE_SMALLTALK, id);

    answer->text = say(asked->arena, asked->context->house, asked->language, phrase, NULL);
}

/* What we asked about, as a question of its own. */
static struct asked
earlier_question(const struct asked *asked)
{
    const struct conversation *conversation = &asked->context->conversation;

    return asked_question(asked, conversation->asked_about, conversation->asked_utc_s);
}

static bool
which_rental(const struct asked *asked, struct verdict *verdict)
{
    const struct rental *rental = asked_says_only_which(asked) ? asked_named_rental(asked) : NULL;
    struct asked chosen = *asked, earlier;

    if (rental == NULL) {
        return false;
    }
    asked_choose_rental(&chosen, rental);
    open_question_close(verdict);
    verdict->conversation.rental_id = rental->rental_id;
    verdict->rental_id = rental->rental_id;
    verdict->rental_digest = rental->digest;
    if (asked->context->conversation.asked_about == NULL) {
        say_briefly(asked, verdict, "hello", SAY_HELLO);
        return true;
    }
    earlier = earlier_question(&chosen);
    handlers_answer(&earlier, verdict);
    return true;
}

/* The text is nothing but words of these. */
static bool
is_only(const struct tokens *tokens, size_t but_at, const char *words)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (i != but_at && tokens->list[i].kind != TOKEN_SIGN && !token_among(tokens, i, words)) {
            return false;
        }
    }
    return true;
}

/* "2", "number 2 please", "the second one"; 0 if none. */
static size_t
number_told(const struct tokens *tokens, size_t count)
{
    static const char around[] = " number the option one first second please pls thanks i meant "
                                 "mean el la opcion numero por favor primero primera segundo "
                                 "segunda gracias ";
    int thousandths = 0;
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (!is_only(tokens, i, around)) {
            continue;
        }
        if (token_among(tokens, i, " first primero primera ")) {
            return 1;
        }
        if (token_among(tokens, i, " second segundo segunda ")) {
            return 2;
        }
        if (tokens_number(tokens, i, tokens->count == 1, &thousandths) == 1 &&
            thousandths % 1000 == 0 && thousandths / 1000 <= (int)count) {
            return (size_t)thousandths / 1000;
        }
    }
    return 0;
}

/* Which of the two, by number or by what the topic is called; 0 if neither is told. */
static size_t
choice_told(const struct asked *asked)
{
    const struct conversation *conversation = &asked->context->conversation;
    size_t number = number_told(&asked->tokens, conversation->choice_count), i;

    for (i = 0; i < conversation->choice_count && number == 0; i++) {
        if (asked_is_surely_about(asked, conversation->choices[i])) {
            number = i + 1;
        }
    }
    return number;
}

static bool
which_topic(const struct asked *asked, struct verdict *verdict)
{
    const struct conversation *conversation = &asked->context->conversation;
    bool neither =
        token_among(&asked->tokens, 0, no_words) && is_only(&asked->tokens, 0, around_no);
    size_t choice = neither ? 0 : choice_told(asked);
    const struct topic *topic;
    struct asked earlier;

    if (conversation->asked_about == NULL) {
        return false;
    }
    if (neither) {
        open_question_close(verdict);
        earlier = earlier_question(asked);
        return gap_decide(&earlier, verdict);
    }
    topic = choice == 0
                ? NULL
                : kb_topic(asked->context->kb, conversation->choices[choice - 1], asked->language);
    if (topic == NULL) {
        return false;
    }
    open_question_close(verdict);
    earlier = earlier_question(asked);
    earlier.search =
        (struct topic_search){.sureness = SURE, .best = {{.topic = topic}}, .count = 1};
    handlers_answer(&earlier, verdict);
    return true;
}

/* "All full": as many as were spoken of before. */
static void
spread_over_all(const struct asked *asked, const struct told *before, struct told *told)
{
    int count = told_batteries(before);

    if (told->charge_count != 1 || told_batteries(told) != 1 ||
        !tokens_have(&asked->tokens, "all|each|every|todas|cada una|they")) {
        return;
    }
    while ((int)told->charge_count < count && told->charge_count < TOLD_BATTERIES_MAX) {
        told->charges[told->charge_count++] = told->charges[0];
    }
}

/* A bare "80" is a charge when we asked for one. */
static void
read_bare_percent(const struct asked *asked, struct told *told)
{
    int thousandths;

    if (told_has_charge(told) || asked->tokens.count != 1 ||
        tokens_number(&asked->tokens, 0, false, &thousandths) != 1 || thousandths % 1000 != 0 ||
        thousandths < 10 * 1000 || thousandths > 100 * 1000) {
        return;
    }
    told->charges[0] = (struct percent){thousandths / 1000, thousandths / 1000};
    told->charge_count = 1;
    told->has_setting = false;
}

/* "2", "just one": of as many as that is what was told of each ("one light on each"). */
static void
count_told_charges(const struct asked *asked, const char *about, struct told *told)
{
    struct told before;
    int thousandths, count = told->count;

    told_read(asked->arena, asked->context->lexicon, about, &before);
    if (told_has_charge(told) || told->impossible || !told_of_untold_number(&before)) {
        return;
    }
    if (count == 0 && asked->tokens.count == 1 &&
        tokens_number(&asked->tokens, 0, true, &thousandths) == 1 && thousandths % 1000 == 0) {
        count = thousandths / 1000;
    }
    if (count > 0 && count <= TOLD_BATTERIES_MAX &&
        (asked->rental == NULL || (size_t)count <= asked->rental->battery_count)) {
        told_read(asked->arena, asked->context->lexicon,
                  memory_format(asked->arena, "%s. %d %s", about, count,
                                asked->language == LANGUAGE_ES ? "baterias" : "batteries"),
                  told);
    }
}

/* A question of its own that only speaks of charges: "can I charge a half full one in the car?" */
static bool
asks_another(const struct asked *asked)
{
    const char *topic = asked->search.count > 0 ? asked->search.best[0].topic->id : "";
    bool of_hours = strcmp(topic, "hours-left") == 0 || strcmp(topic, "battery-life") == 0 ||
                    strcmp(topic, "charge-level") == 0;
    bool is_question = token_among(&asked->tokens, 0,
                                   " how can could do does is should what when where which why "
                                   "may como puedo que cual cuando donde debo ") ||
                       tokens_have(&asked->tokens, "?");

    return is_question && asked->search.sureness == SURE && !of_hours;
}

static bool
which_charge(const struct asked *asked, struct verdict *verdict)
{
    const char *about = asked->context->conversation.asked_about;
    struct told told = *asked->told, before = {0};

    if (about != NULL && bare_percent_is_told(asked)) {
        struct asked earlier = earlier_question(asked);

        if (bare_percent_is_told(&earlier)) {
            return false; /* asked what it is, they tell the number again */
        }
    }
    read_bare_percent(asked, &told);
    if (about != NULL) {
        count_told_charges(asked, about, &told);
    }
    if (about != NULL && bare_charge_is_of_battery(asked)) {
        told_read(asked->arena, asked->context->lexicon, about, &told);
    }
    if ((!told_has_charge(&told) && !told.impossible) || asks_another(asked) ||
        weak_battery_told(asked)) {
        return false;
    }
    if (about != NULL) {
        told_read(asked->arena, asked->context->lexicon, about, &before);
    }
    spread_over_all(asked, &before, &told);
    if (!told.has_mode && !told.has_setting) {
        told.has_mode = before.has_mode;
        told.mode = before.mode;
        told.has_setting = before.has_setting;
        told.setting_tenths = before.setting_tenths;
    }
    if (!told.has_activity) {
        told.has_activity = before.has_activity;
        told.activity = before.activity;
    }
    open_question_close(verdict);
    if (before.kind == TOLD_WATCH) {
        told.remind_before_min = before.remind_before_min;
        reminder_watch(asked, verdict, &told);
    } else {
        estimate_hours_left(asked, verdict, &told);
    }
    return true;
}

static bool
drop(const struct asked *asked, struct verdict *verdict)
{
    if (asked->tokens.count > 2 || !token_among(&asked->tokens, 0, drop_words)) {
        return false;
    }
    open_question_close(verdict);
    say_briefly(asked, verdict, "dropped", SAY_DROPPED);
    return true;
}

bool
open_question_decide(const struct asked *asked, struct verdict *verdict)
{
    if (verdict->conversation.question == QUESTION_NONE) {
        return false; /* another piece of the text has closed it */
    }
    switch (asked_open_question(asked)) {
    case QUESTION_NONE:
    case QUESTION_FLOWING: /* the whole text answers that one (flowing.c) */
        return false;
    case QUESTION_WHICH_RENTAL:
        return drop(asked, verdict) || which_rental(asked, verdict);
    case QUESTION_WHICH_TOPIC:
        return drop(asked, verdict) || which_topic(asked, verdict);
    case QUESTION_WHICH_CHARGE:
        return drop(asked, verdict) || sum_goes_on(asked, verdict) || which_charge(asked, verdict);
    case QUESTION_PLUG:
        return plug_answered(asked, verdict);
    case QUESTION_READING_OR_AGE:
        return introduces_answered(asked, verdict);
    }
    return false;
}

struct alert_call
handlers_unanswered(const struct conversation *conversation)
{
    switch (conversation->question) {
    case QUESTION_FLOWING:
        return (struct alert_call){.level = flowing_unanswered_level(conversation),
                                   .reason = "flowing:no-answer",
                                   .brief = "asked if oxygen flows, no answer",
                                   .ring = true};
    case QUESTION_PLUG:
        return (struct alert_call){
            .level = ALERT_URGENT, .reason = "plug:no-answer", .brief = "under 1 hour, plug?"};
    case QUESTION_READING_OR_AGE:
        return (struct alert_call){.level = ALERT_URGENT,
                                   .reason = "introduces:no-answer",
                                   .brief = "reading or age? no answer"};
    case QUESTION_NONE:
    case QUESTION_WHICH_RENTAL:
    case QUESTION_WHICH_TOPIC:
    case QUESTION_WHICH_CHARGE:
        break;
    }
    return (struct alert_call){.level = ALERT_NONE};
}
