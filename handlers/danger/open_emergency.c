/*
 * Texts that come while an emergency is open and show no sign of their own. What counts then is
 * that somebody has called the emergency number, and after that only power and backup; all else
 * waits for the person who has the alert, who hears of each text. A quarter of an hour after it was
 * last told, what the topics answer at any other time is answered behind that question, each time;
 * before that it gets the question alone, and what surely is about the rental rings nobody again.
 * Once the renter has told that it
 * is over or that help is there, or two hours after it was last told, what would be answered at any
 * other time is answered again, though staff have not closed it: two hours are longer than help
 * takes to come, and who still waits then says so ("nobody came"), which is asked about whatever
 * the hour. If the topics leave doubt, "Called 911?" goes before the answer, once; what would find
 * no answer ("please come", "they cant find us") gets that alone, each time.
 */
#include <string.h>

#include "beside_emergency.h"
#include "emergency.h"
#include "everyday.h"
#include "found.h"
#include "memory.h"
#include "say.h"
#include "steps.h"
#include "yes_no.h"

static const char *const aid_topics[] = {
    "hours-left",  "battery-life", "backup",       "cylinder-left", "swap-battery",
    "charge-home", "charge-car",   "charge-level", "power-outage",  "power-source",
};

enum { FRESH_S = 2 * 3600, AT_FIRST_S = 15 * 60 };

static const char wrote_again[] = "wrote-again";

/* Of what else is told after it, none of these is. */
static const char *const grave_reasons[] = {"sign:", "trouble:", "flowing:", "help", "asks-"};

static bool
begins(const char *reason, const char *with)
{
    return strncmp(reason, with, strlen(with)) == 0;
}

static bool
is_told_over(const struct open_alert *alert)
{
    const char *reason = alert->reasons;
    bool is_over = false;
    size_t i;

    while (reason != NULL && *reason != '\0') {
        is_over = is_over || begins(reason, IS_OVER_REASON);
        for (i = 0; i < sizeof grave_reasons / sizeof grave_reasons[0]; i++) {
            is_over = is_over && !begins(reason, grave_reasons[i]);
        }
        reason += strcspn(reason, ",");
        reason += *reason == ',' ? 1 : 0;
    }
    return is_over;
}

/* Which emergencies count: one that is open, was told within hours, presses: it was not told to be
 * over since; or was told just now. */
enum standing { STANDS_OPEN, STANDS_FRESH, STANDS_PRESSING, STANDS_AT_FIRST };

static bool
stands(const struct context *context, enum standing least)
{
    size_t i;

    for (i = 0; i < context->alert_count && context->role != SENDER_STAFF; i++) {
        const struct open_alert *alert = &context->alerts[i];
        int64_t since_s = context->now_utc_s - alert->grave_utc_s;
        bool is_fresh = since_s <= (least < STANDS_AT_FIRST ? FRESH_S : AT_FIRST_S);

        if (alert->level == ALERT_EMERGENCY && (least < STANDS_FRESH || is_fresh) &&
            (least < STANDS_PRESSING || !is_told_over(alert))) {
            return true;
        }
    }
    return false;
}

bool
open_emergency_stands(const struct context *context)
{
    return stands(context, STANDS_OPEN);
}

bool
open_emergency_is(const struct context *context)
{
    return stands(context, STANDS_PRESSING);
}

/* What burns, or gas: whatever they ask is asked because of it. */
static bool
is_of_fire(const struct context *context)
{
    static const char *const outside[] = {"face-burn-fire", "battery-smoking", "bad-gas"};

    return found_alerted_of(context, outside, sizeof outside / sizeof outside[0]);
}

/* Who was told to be outside changes no battery there: "should i take the battery out" may be that
 * of the alarm. */
static bool
is_of_aid(const struct asked *question)
{
    return !is_of_fire(question->context) &&
           everyday_is_surely_of(question, aid_topics, sizeof aid_topics / sizeof aid_topics[0]);
}

/* False, verdict untouched, if neither. */
static bool
answer_aid(const struct asked *question, struct verdict *verdict)
{
    return cylinder_left_decide(question, verdict) || power_decide(question, verdict) ||
           (is_of_aid(question) && topics_decide(question, verdict));
}

bool
open_emergency_aid(const struct asked *question, struct verdict *verdict)
{
    const struct verdict before = *verdict;
    size_t i;

    if (!(power_asks_how_long(question) || is_of_aid(question)) || !answer_aid(question, verdict)) {
        return false;
    }
    for (i = before.answer_count; i < verdict->answer_count; i++) {
        if (verdict->answers[i].kind == ANSWER_ASK) {
            *verdict = before; /* nothing is asked beside "call 911" */
            return false;
        }
    }
    return true;
}

/* They have called, and help is coming or there. */
static const char help_comes[] =
    "already called|i called|we called|i did call|called 911|called them|on their way|on the way|"
    "they are here|theyre here|are coming|is coming|ambulance|paramedics|medics|ya llame|"
    "ya llamamos|ya vienen|ya llegaron|ya estan aqui|ambulancia";
static const char speaks_with_them[] =
    "911 is answering|911 answered|on the phone with|on the line with|on with 911|talking to 911|"
    "hablando con el 911|ya contesto|ya contestaron";
/* What may stand beside it, if nothing more is told. */
static const char beside_help[] =
    " the an a i we they he she it is are has have and now already just here there coming on way "
    "their 911 them me us with ok okay yes yeah yep si y ya el la los las aqui esta estan viene "
    "vienen en camino llego llegaron llame llamamos al thank thanks you so much very god good "
    "great finally gracias a dios por fin muchas bueno bien called call help ambulance ambulances "
    "paramedics medics ambulancia paramedicos ";

/* Somebody waits for a word of ours. */
static bool
waits_for_word(const struct tokens *tokens)
{
    return tokens_have(tokens, "hello|hi|hey|hola|?|wrong|busy|hold|nobody|no one|nadie|ocupado|"
                               "equivocado|espera");
}

/* What is said of calling, beside what is no answer to it. */
static enum yes_no
said_of_calling(const struct asked *whole)
{
    static const struct yes_no_about calling = {.things = " ", .well = "", .ill = " "};

    return yes_no_read(&whole->tokens, &calling);
}

bool
open_emergency_is_helped(const struct asked *whole)
{
    return (tokens_have(&whole->tokens, help_comes) ||
            tokens_have(&whole->tokens, speaks_with_them)) &&
           !help_is_late_told(whole) && !waits_for_word(&whole->tokens) &&
           said_of_calling(whole) != SAID_NO;
}

/* Help comes or is there, and nothing else is told: "yes they are coming". */
static bool
tells_only_help(const struct asked *whole)
{
    struct tokens rest = tokens_without(whole->arena, &whole->tokens, help_comes);

    return open_emergency_is_helped(whole) && tokens_words_among(&rest, beside_help);
}

/* Thanks, or YES to whether they called: nothing to say to that. "No, not yet" is neither. */
static bool
wants_nothing(const struct asked *whole, const struct pieces *pieces)
{
    static const char relieved[] =
        " phew whew uf thanks thank you so much ok okay god all everyone "
        "for your help gracias muchas mil por todo menos mal a dios ";

    if (waits_for_word(&whole->tokens)) {
        return false;
    }
    if (whole->tokens.count > 0 && tokens_words_among(&whole->tokens, relieved)) {
        return true;
    }
    return tells_only_help(whole) ||
           (everyday_is_courtesy(pieces) && said_of_calling(whole) != SAID_NO) ||
           (yes_no_begins_with_yes(&whole->tokens) &&
            tokens_words_among(&whole->tokens, beside_help));
}

/* They wrote since it was told to be over, or since it began: they were asked whether they called.
 */
static bool
was_asked_before(const struct context *context)
{
    size_t i;

    for (i = 0; i < context->alert_count; i++) {
        const char *reasons = context->alerts[i].reasons;
        const char *wrote = strstr(reasons, wrote_again), *over = strstr(reasons, IS_OVER_REASON);
        const char *called = strstr(reasons, CALLED_REASON);

        if (context->alerts[i].level == ALERT_EMERGENCY &&
            ((wrote != NULL && (over == NULL || wrote > over)) ||
             (called != NULL && (over == NULL || called > over)))) {
            return true;
        }
    }
    return false;
}

static bool
asks_to_go_in(const struct asked *whole)
{
    return is_of_fire(whole->context) &&
           tokens_have(&whole->tokens,
                       "go back|go in|back in|go inside|back inside|run in|run back|"
                       "entrar|volver|regresar|meterme|meternos");
}

/* What is said to it. */
static const char *
beside_words(const struct asked *whole, const struct verdict *verdict, enum beside beside)
{
    const struct house *house = whole->context->house;
    const struct beside_words *words = beside_emergency_words(beside);
    const char *steps = beside == BESIDE_CANNOT_CALL ? emergency_steps(whole, verdict) : "";
    char *text = memory_copy(whole->arena, "");

    if (beside == BESIDE_ASKS_WHAT_TO_DO && asks_to_go_in(whole)) {
        memory_append(&text, "%s ",
                      say(whole->arena, house, whole->language, SAY_NOT_BACK_IN, NULL));
    }
    memory_append(&text, "%s%s%s", say(whole->arena, house, whole->language, words->phrase, NULL),
                  steps[0] == '\0' ? "" : " ", steps);
    if (beside == BESIDE_ASKS_WHERE && emergency_address(whole) != NULL) {
        memory_append(
            &text, " %s",
            say(whole->arena, house, whole->language, SAY_ADDRESS, emergency_address(whole), NULL));
    }
    if (words->staff != PHRASE_COUNT) {
        memory_append(&text, " %s", say(whole->arena, house, whole->language, words->staff, NULL));
    }
    return text;
}

/* To who tells of helpers, and more than that. */
static enum phrase
of_helpers(const struct asked *whole)
{
    static const char with_them[] =
        "here|came|arrived|pulled up|with him|with her|has her|has him|checked|llegaron|"
        "llego|vinieron|vino|aqui|se lo lleva|se la lleva";

    if (!open_emergency_is_helped(whole)) {
        return SAY_CALLED_911;
    }
    return tokens_have(&whole->tokens, with_them) ? SAY_KEEP_ON : SAY_ASK_911;
}

/* Whether they have called, unless the text tells or asks what has words of its own. */
static const char *
words_for(const struct asked *whole, const struct verdict *verdict, const struct pieces *pieces,
          enum beside beside)
{
    const struct house *house = whole->context->house;
    const char *in_spanish = cannot_call_words(whole);

    if (self_harm_stands(whole)) {
        return self_harm_words(whole);
    }
    if (beside != BESIDE_NOTHING) {
        return beside_words(whole, verdict, beside);
    }
    if (in_spanish != NULL) {
        return memory_format(whole->arena, "%s %s", in_spanish,
                             say(whole->arena, house, whole->language, SAY_STAFF_ALERTED, NULL));
    }
    if (!self_harm_was_told(whole->context) && wants_nothing(whole, pieces)) {
        return "";
    }
    return say(whole->arena, house, whole->language, of_helpers(whole), NULL);
}

/* "Lost him", "gurgling": of few words, and of any with somebody in them, no topic is sure. */
static bool
may_be_of_somebody(const struct asked *whole)
{
    enum { FEW = 4 };
    size_t words = 0, i;

    for (i = 0; i < whole->tokens.count; i++) {
        words += whole->tokens.list[i].kind == TOKEN_WORD;
    }
    return words < FEW ||
           tokens_any_among(&whole->tokens, 0, " he hes him his she shes her hers ella lo le ");
}

/* What it tells or asks beside signs; nothing of what is surely answered, or waits for no word. */
static enum beside
beside_of(const struct asked *whole, enum beside beside, enum everyday everyday,
          const struct pieces *pieces)
{
    if (beside_emergency_of_person(whole, beside)) {
        return beside;
    }
    return beside > BESIDE_OXYGEN &&
                   (wants_nothing(whole, pieces) ||
                    (beside == BESIDE_ASKS_WHAT_TO_DO && !is_of_fire(whole->context) &&
                     everyday_of_rental(whole, pieces)) ||
                    (beside == BESIDE_TELLS_MORE && everyday == SURELY_EVERYDAY &&
                     !may_be_of_somebody(whole)))
               ? BESIDE_NOTHING
               : beside;
}

/* "Can i keep it another day" asks what to do as well, but with nobody. */
static enum everyday
everyday_beside(const struct asked *whole, enum everyday everyday, enum beside beside)
{
    return beside == BESIDE_ASKS_WHAT_TO_DO && beside_emergency_of_person(whole, beside)
               ? NOT_EVERYDAY
               : everyday;
}

/* While an emergency presses: it is no longer new, and nothing is told that may belong to it,
 * though a topic be like it ("its really quiet"). */
static bool
is_calm(const struct asked *whole, const struct pieces *pieces, enum beside told,
        enum beside beside)
{
    return beside == BESIDE_NOTHING && !stands(whole->context, STANDS_AT_FIRST) &&
           !may_be_of_somebody(whole) &&
           (told == BESIDE_NOTHING || everyday_of_rental(whole, pieces));
}

/* What is told or asked of the help calls a person again. Whoever hears that staff were asked to
 * call is right whatever the hour: an emergency that was over or is old is one again by that. */
static bool
calls_again(const struct context *context, enum beside beside)
{
    switch (beside) {
    case BESIDE_CANNOT_CALL:
    case BESIDE_NO_WAY:
    case BESIDE_LATE:
    case BESIDE_ASKS_WHETHER:
        return true;
    case BESIDE_STILL_NEEDED:
        return stands(context, STANDS_FRESH); /* "he is ok now", and then this */
    default:
        return open_emergency_is(context);
    }
}

static void
alert_of(const struct asked *whole, struct verdict *verdict, enum beside beside, bool is_courtesy,
         bool is_answered)
{
    const char *reason = beside == BESIDE_NOTHING ? NULL : beside_emergency_words(beside)->reason;

    if (self_harm_stands(whole) ||
        (self_harm_was_told(whole->context) && beside == BESIDE_NOTHING && !is_answered)) {
        self_harm_alert(whole, verdict, is_courtesy);
    } else if (reason != NULL && calls_again(whole->context, beside)) {
        verdict_alert(verdict, ALERT_EMERGENCY, true, reason,
                      beside_emergency_words(beside)->brief);
    } else if (beside == BESIDE_NOTHING && open_emergency_is_helped(whole)) {
        verdict_alert(verdict, ALERT_OFFICE, false, CALLED_REASON, "says 911 was called");
    } else {
        verdict_alert(verdict, ALERT_OFFICE, false, wrote_again, "wrote again");
    }
}

/* It was told to be over; after a wish to die the line is named all the same. */
static bool
decide_over(const struct asked *whole, struct verdict *verdict)
{
    struct answer *answer;

    if (!is_over_decide(whole, verdict)) {
        return false;
    }
    answer = &verdict->answers[verdict->answer_count - 1];
    if (self_harm_stands(whole) && answer->text[0] != '\0') {
        answer->text = self_harm_words(whole);
    }
    return true;
}

bool
open_emergency_decide(const struct asked *whole, struct verdict *verdict)
{
    struct pieces pieces = cut_questions(whole->arena, whole->text, whole->language);
    enum everyday asks, everyday;
    enum beside told, beside;
    struct answer *answer;
    bool shows_danger, presses;
    size_t i;

    if (!open_emergency_stands(whole->context) || verdict->answer_count > 0) {
        return false;
    }
    told = beside_emergency_read(whole);
    asks = told < BESIDE_ASKS_WHAT_TO_DO ? NOT_EVERYDAY : everyday_read(whole, verdict, &pieces);
    beside = beside_of(whole, told, asks, &pieces);
    if ((beside >= BESIDE_TELLS_MORE || explained_told(whole)) && decide_over(whole, verdict)) {
        return true;
    }
    shows_danger = whole->sign_left_out || beside_emergency_names_fire(whole);
    presses = open_emergency_is(whole->context);
    everyday = presses && (shows_danger || !is_calm(whole, &pieces, told, beside))
                   ? NOT_EVERYDAY
                   : everyday_beside(whole, asks, beside);
    if (!presses && (everyday == SURELY_EVERYDAY ||
                     (everyday == MAY_BE_EVERYDAY && was_asked_before(whole->context)))) {
        alert_of(whole, verdict, BESIDE_NOTHING, everyday_is_courtesy(&pieces), true);
        return false;
    }
    answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, "called-911");
    if (everyday == SURELY_EVERYDAY || (!presses && everyday == MAY_BE_EVERYDAY)) {
        alert_of(whole, verdict, BESIDE_NOTHING, everyday_is_courtesy(&pieces), true);
        answer->text = words_for(whole, verdict, &pieces, BESIDE_NOTHING);
        return false;
    }
    for (i = 0; i < pieces.count && !beside_emergency_of_person(whole, beside); i++) {
        struct asked piece = asked_question(whole, pieces.list[i].text, whole->message->sent_utc_s);

        if (!open_question_decide(&piece, verdict) && !pieces.list[i].courtesy && !shows_danger) {
            (void)answer_aid(&piece, verdict);
        }
    }
    if (beside == BESIDE_ASKS_WHAT_TO_DO && verdict->answer_count > 1 && !shows_danger) {
        beside = BESIDE_NOTHING; /* what they asked is answered behind it */
    }
    alert_of(whole, verdict, beside, everyday_is_courtesy(&pieces),
             everyday_beside(whole, asks, beside) == SURELY_EVERYDAY);
    answer->text = words_for(whole, verdict, &pieces, beside);
    return true;
}
