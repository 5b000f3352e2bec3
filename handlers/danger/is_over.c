/*
 * What was wrong is over, was none, or help is there: "it stopped beeping", "he is ok again",
 * "false alarm", "ya llego la ambulancia". Nobody's word for it closes an alert, and nothing is
 * called well: staff hear of it, and the renter is told what to look at. It holds only for a text
 * that tells nothing else: "alarm is off and so is the machine" is trouble. While an emergency is
 * open, what is told of things does not count unless somebody is told to be well beside it, and a
 * good value only if nothing but values was told; but what can be of nobody and nothing else ("he
 * coughed it up") does in a longer text too, if that shows no sign and denies and doubts nothing.
 */
#include <string.h>

#include "emergency.h"
#include "found.h"
#include "is_over_words.h"
#include "memory.h"
#include "persons.h"
#include "say.h"
#include "steps.h"
#include "yes_no.h"

static const char of_persons[] = PERSON_AGAIN "|" DOES_AGAIN "|" WAS_NONE "|" SURELY "|" OF_ALERT;
static const char of_missing[] =
    PERSON_AGAIN "|" DOES_AGAIN "|" FOUND_AGAIN "|" WAS_NONE "|" SURELY "|" OF_ALERT;
/* One who has a stroke may talk and smile. */
static const char of_stroke[] = PERSON_AGAIN "|" WAS_NONE "|" SURELY "|" OF_ALERT;
/* Who took too much, or breathes what kills, feels well for hours; who wishes to die or is hurt by
 * others may be made to say so, or say so to be left alone. */
static const char of_hidden[] = NO_ALARM;
static const char of_persons_untold[] = PERSON_AGAIN "|" WAS_NONE "|" SURELY;
static const char of_units[] = UNIT_AGAIN;
static const char of_units_in_waiting[] = UNIT_AGAIN "|" OF_FLOWING;
static const char surely_over[] = SURELY;

/* And beside what is told of people alone: a unit that works "a lot" tells nothing. Cold is what
 * the lost and the fallen die of, "up a bit" and "ok but" are no all-clear. */
static const char around_people[] = " a lot mucho ";
/* What it came from, where that is told as past: "it was the tube kinked, he is ok now". */
static const char was[] = "was|were|era|eran|fue|estaba|estaban";
static const char causes[] =
    " was were era eran fue estaba estaban just hose tube tubing kink kinked bent cannula prongs "
    "unplugged loose disconnected slipped twisted un una manguera manguerita tubo doblada doblado "
    "torcida torcido canula puntas desconectada desconectado suelta suelto zafada zafado nomas "
    "nada mas solamente ";
static const char things[] =
    " machine unit concentrator oxygen aparato maquina equipo concentrador oxigeno ";

/* What is no longer needed is no doubt. */
static const char not_needed[] =
    "no need|dont need|do not need|dont send|do not send|dont come|no ambulance needed|"
    "dont worry|no worries|no problem|no hace falta|ya no hace falta|no es necesario|no vengan|"
    "no manden|no se preocupen|no se preocupe|no necesitamos";
/* And what makes it doubtful in a longer text. */
static const char doubtful[] =
    "no|not|isnt|doesnt|didnt|dont|wont|cant|couldnt|havent|hasnt|nobody|nothing|never|without|"
    "still|barely|hardly|only|almost|but|if|when|until|than|except|though|dead|died|hope|hoping|"
    "think|maybe|off|worse|cold|frio|fria|helado|helada|for now|por ahora|a little|a bit|"
    "un poco|un poquito|worse|same|gone|?|ni|sin|nada|nunca|nadie|pero|todavia|aun|casi|apenas|si|"
    "cuando|hasta|aunque|ojala|creo|quizas|igual|peor|sigue|sigo|muerto|murio|apago";

/* What tells that somebody is well, by what was told of them. */
static const char *
persons_phrases(const struct asked *asked)
{
    static const char *const hidden[] = {"poison", "self-harm", "in-danger", "bad-gas",
                                         "medicines"};
    static const char *const wish[] = {"self-harm"};
    static const char *const stroke[] = {"stroke-signs", "confusion"};
    static const char *const missing[] = {"missing-person"};
    const struct context *context = asked->context;

    if (found_alerted_of(context, hidden, sizeof hidden / sizeof hidden[0]) &&
        !(found_alerted_only(asked, wish, 1) && self_harm_was_of_another(asked))) {
        return of_hidden;
    }
    if (found_alerted_of(context, stroke, sizeof stroke / sizeof stroke[0])) {
        return of_stroke;
    }
    return found_alerted_of(context, missing, 1) ? of_missing : of_persons;
}

/* The same of what can be of nobody and nothing else. */
static const char *
surely_phrases(const struct asked *asked)
{
    const char *phrases = persons_phrases(asked);

    return phrases == of_hidden ? of_hidden : surely_over;
}

static bool
are_fillers(const struct asked *asked, const struct tokens *tokens, bool of_things)
{
    struct tokens rest = tokens_without(asked->arena, tokens, reported);
    bool names_cause = tokens_have(tokens, was);
    bool of_people =
        !tokens_have(&asked->tokens, of_units) && !tokens_any_among(&asked->tokens, 0, things);
    size_t i;

    for (i = 0; i < rest.count; i++) {
        if (rest.list[i].kind == TOKEN_NUMBER || token_is(&rest, i, "?") ||
            (rest.list[i].kind == TOKEN_WORD && !token_among(&rest, i, around) &&
             !(of_people && token_among(&rest, i, around_people)) &&
             !(of_things && token_among(&rest, i, things)) &&
             !(names_cause && token_among(&rest, i, causes)))) {
            return false;
        }
    }
    return true;
}

/* "Ya quedo" is told of a unit that is mended; of a person it may tell that all is lost. */
static bool
may_be_of_somebody(const struct tokens *tokens)
{
    static const char of_unit[] = "ya jala|ya sirve|ya arranco|ya trabaja|ya anda|ya quedo";
    size_t i;

    for (i = 0; tokens_have(tokens, of_unit) && i < tokens->count; i++) {
        if (token_among(tokens, i, person_words) ||
            (token_is(tokens, i, "el") && token_is(tokens, i + 1, "ya"))) {
            return true;
        }
    }
    return false;
}

bool
is_over_may_be_lost(const struct asked *asked)
{
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, "ya quedo");

    return may_be_of_somebody(&asked->tokens) && rest.count < asked->tokens.count &&
           are_fillers(asked, &rest, false);
}

/* One of the phrases of persons or things, and nothing but fillers beside them and what harms
 * nobody; with NULL for things, nothing is told of any. */
static bool
only_tells(const struct asked *asked, const char *persons, const char *things_told)
{
    struct tokens told = tokens_without(asked->arena, &asked->tokens, harmless), rest = told;

    if (things_told != NULL) {
        rest = tokens_without(asked->arena, &rest, things_told);
    }
    rest = tokens_without(asked->arena, &rest, persons);
    return rest.count < told.count && are_fillers(asked, &rest, things_told != NULL);
}

/* "Power back on machine running im ok now": of things, but of somebody as well. */
static bool
tells_of_both(const struct asked *asked)
{
    return tokens_have(&asked->tokens, persons_phrases(asked)) &&
           only_tells(asked, persons_phrases(asked), of_units);
}

/* "Ok it was asleep from how i laid on it. its back": by itself "its back" is what was wrong. */
static bool
is_back_from_harmless(const struct asked *asked)
{
    return tokens_have(&asked->tokens, harmless) && persons_phrases(asked) != of_hidden &&
           only_tells(asked, "its back|is back|it came back|came back|ya volvio|ya regreso", NULL);
}

/* "False alarm from the unit" says nothing of anybody. */
static bool
is_alarm_of_thing(const struct tokens *tokens)
{
    enum { NEAR = 3 };
    size_t i, words, next;

    for (i = 0; i < tokens->count; i++) {
        words = tokens_phrase_at(tokens, i, "false alarm|falsa alarma");
        for (next = i + words; words > 0 && next < i + words + NEAR; next++) {
            if (token_among(tokens, i + words, " from of on by de del ") &&
                token_among(tokens, next, things)) {
                return true;
            }
        }
    }
    return false;
}

static bool
surely_tells(const struct asked *asked)
{
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, surely_phrases(asked));
    struct tokens other = tokens_without(asked->arena, &rest, not_needed);

    return rest.count < asked->tokens.count && !tokens_have(&other, doubtful) &&
           !is_alarm_of_thing(&asked->tokens);
}

const char *
is_over_beside(const struct asked *asked)
{
    static const char subjects[] = " he hes she shes im ella ";
    struct tokens of_unit = tokens_without(asked->arena, &asked->tokens, of_units);
    struct tokens rest = tokens_without(asked->arena, &of_unit, of_persons_untold);
    char *text = memory_copy(asked->arena, "");
    size_t i;

    for (i = 0; i < rest.count; i++) {
        const struct token *token = &rest.list[i];
        bool is_new = i == 0 || rest.list[i - 1].end + 1 < token->start ||
                      token_among(&rest, i, subjects); /* "the unit hes limp" */

        memory_append(&text, "%s%.*s", is_new ? ". " : " ", (int)(token->end - token->start),
                      asked->text + token->start);
    }
    return rest.count < asked->tokens.count ? text : NULL;
}

/* "Is he ok now" asks, with or without a mark. */
static bool
asks(const struct tokens *tokens)
{
    return token_among(tokens, 0,
                       " are do does did can could should will would what how why when "
                       "who where ") ||
           (token_among(tokens, 0, " is am was ") &&
            token_among(tokens, 1, " he she it they this that i mom dad my our the "));
}

/* What food that burns may be taken for. */
static const char *const smells[] = {"face-burn-fire", "battery-smoking", "bad-gas"};

bool
is_over_of_smell(const struct sign *sign)
{
    size_t i;

    for (i = 0; i < sizeof smells / sizeof smells[0]; i++) {
        if (strcmp(sign->id, smells[i]) == 0) {
            return true;
        }
    }
    return false;
}

/* "It was burnt toast", while nothing but smoke or its smell was told. What still burns beside
 * oxygen is no all-clear, and a stove that burns gas is none for gas that is smelt. */
bool
is_over_was_cooking(const struct asked *asked)
{
    static const char cooked[] =
        "toast|toaster|bacon|popcorn|dinner|supper|breakfast|cooking|barbecue|grill|incense|"
        "pan tostado|pan quemado|pan|tostadora|tortilla|tortillas|frijoles|comida|cena|palomitas|"
        "asado|parrilla|incienso|vecino cocinando|vecina cocinando";
    static const char may_leak[] = "stove|oven|cooking|barbecue|grill|in the kitchen|estufa|horno|"
                                   "cocinando|asado|parrilla|en la cocina";
    static const char was_burnt[] = "burnt|burned|quemado|quemada|quemo";
    static const char *const gas[] = {"bad-gas"};
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, cooked), other;
    const char *phrases =
        "smoke|smell|burnt|burned|stove|oven|neighbor|neighbors|humo|olor|quemado|"
        "quemada|quemo|in the kitchen|en la cocina|estufa|horno|vecino|vecina|"
        "vecinos|false alarm|falsa alarma|todo bien|all good";

    other = tokens_without(asked->arena, &rest, phrases);
    return rest.count < asked->tokens.count && tokens_have(&asked->tokens, was) &&
           found_alerted_of(asked->context, smells, sizeof smells / sizeof smells[0]) &&
           (!found_alerted_of(asked->context, gas, 1) ||
            (tokens_have(&asked->tokens, was_burnt) && !tokens_have(&asked->tokens, may_leak))) &&
           are_fillers(asked, &other, false);
}

/* "He is not" and then "breathing": the text before is read with it. */
static bool
was_denied(const struct asked *asked)
{
    const struct context *context = asked->context;
    const struct recent_text *before;
    struct tokens tokens;

    if (context->recent_count == 0) {
        return false;
    }
    before = &context->recent[context->recent_count - 1];
    tokens = tokens_read(asked->arena, before->text);
    return asked->message->sent_utc_s - before->sent_utc_s <= JOIN_RECENT_S && tokens.count > 0 &&
           yes_no_denies_at(&tokens, tokens.count - 1);
}

static bool
speaks_against(const struct asked *asked)
{
    return asks(&asked->tokens) || was_denied(asked) || is_over_in_doubt(asked);
}

/* Help is there, and beside that at most how they are: "the paramedics are here, he is ok". */
static bool
is_help_told(const struct asked *asked)
{
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, help_there);
    struct tokens person = tokens_without(asked->arena, &rest, persons_phrases(asked));
    struct tokens other = tokens_without(asked->arena, &person, harmless);

    return rest.count < asked->tokens.count && are_fillers(asked, &other, false);
}

/* The phrases that count now, by what is open, and nothing else. */
static bool
tells_all_clear(const struct asked *asked)
{
    if (open_emergency_stands(asked->context)) {
        return only_tells(asked, persons_phrases(asked), NULL) || tells_of_both(asked) ||
               is_back_from_harmless(asked);
    }
    if (asked_open_question(asked) == QUESTION_FLOWING) {
        return only_tells(asked, persons_phrases(asked), of_units_in_waiting);
    }
    return only_tells(asked,
                      asked->context->alert_count > 0 ? persons_phrases(asked) : of_persons_untold,
                      of_units);
}

bool
is_over_of_anything(const struct asked *asked)
{
    return !speaks_against(asked) && !may_be_of_somebody(&asked->tokens) &&
           !is_over_of_another(asked) && only_tells(asked, persons_phrases(asked), of_units);
}

bool
is_over_of_supply(const struct asked *asked)
{
    /* a NO just before answered our question */
    return !asks(&asked->tokens) && !is_over_in_doubt(asked) &&
           only_tells(asked, of_units_in_waiting, of_units_in_waiting);
}

bool
is_over_too_soon(const struct asked *asked)
{
    static const char *const late[] = {"poison", "bad-gas"};

    return open_emergency_stands(asked->context) && !speaks_against(asked) &&
           found_alerted_of(asked->context, late, sizeof late / sizeof late[0]) &&
           !is_over_told(asked) && only_tells(asked, of_persons, NULL);
}

/* "No im fine", after nothing but a cry for help: it says no to that, and denies nothing. */
static bool
says_no_to_cry(const struct asked *asked)
{
    static const char *const cry[] = {"asks-emergency"};
    static const char no[] = "no im|no i am|no we|no were|no all|no everything|no sorry|no oops";
    struct asked rest = *asked;
    size_t i;

    rest.tokens = tokens_without(asked->arena, &asked->tokens, "nope|nah");
    for (i = 0; i < rest.tokens.count; i++) {
        if (tokens_phrase_at(&rest.tokens, i, no) > 0 ||
            (token_is(&rest.tokens, i, "no") && token_is(&rest.tokens, i + 1, ","))) {
            memmove(&rest.tokens.list[i], &rest.tokens.list[i + 1],
                    (rest.tokens.count - i - 1) * sizeof *rest.tokens.list);
            rest.tokens.count--;
            break;
        }
    }
    return rest.tokens.count < asked->tokens.count && open_emergency_stands(asked->context) &&
           found_alerted_only(asked, cry, 1) && !speaks_against(&rest) &&
           only_tells(&rest, of_persons, NULL);
}

bool
is_over_told(const struct asked *asked)
{
    if (open_emergency_stands(asked->context) && (explained_told(asked) || says_no_to_cry(asked))) {
        return true;
    }
    return !speaks_against(asked) && !may_be_of_somebody(&asked->tokens) &&
           !is_over_of_another(asked) &&
           (tells_all_clear(asked) || is_help_told(asked) || is_over_was_cooking(asked) ||
            is_over_corrects_reading(asked) || is_over_reads_well(asked));
}

/* What is said to it; nothing if others see to them. */
static const char *
words_for(const struct asked *asked)
{
    bool is_grave = open_emergency_stands(asked->context);

    if (is_grave && is_help_told(asked)) {
        return "";
    }
    return say(asked->arena, asked->context->house, asked->language,
               is_grave ? SAY_OVER_CALLED : SAY_IS_OVER, NULL);
}

/* "No es emergencia, nomas quiero saber ...": it leads up to a question, and nothing that could be
 * over was told. */
static bool
only_leads_up(const struct asked *asked)
{
    static const char none[] =
        "no emergency|not an emergency|no es emergencia|no es una emergencia|"
        "no es ninguna emergencia|no hay emergencia|nada de emergencia";

    return asked->context->alert_count == 0 && asked_open_question(asked) == QUESTION_NONE &&
           strcmp(asked->text, asked->message->text) != 0 && only_tells(asked, none, NULL);
}

/* "Wrong number sorry", and nothing that could be over was told. */
static bool
is_of_nothing(const struct asked *asked)
{
    return asked->context->alert_count == 0 && asked_open_question(asked) == QUESTION_NONE &&
           only_tells(asked, WAS_NONE, NULL) && !speaks_against(asked);
}

bool
is_over_decide(const struct asked *asked, struct verdict *verdict)
{
    if (only_leads_up(asked)) {
        verdict_add(verdict, ANSWER_COURTESY, ROUTE_SMALLTALK, "courtesy");
        return true;
    }
    if (is_of_nothing(asked)) {
        verdict_add(verdict, ANSWER_COURTESY, ROUTE_SMALLTALK, "courtesy")->text =
            say(asked->arena, asked->context->house, asked->language, SAY_COURTESY, NULL);
        return true;
    }
    if (!is_over_told(asked) && !(open_emergency_stands(asked->context) && !speaks_against(asked) &&
                                  !is_over_of_another(asked) && surely_tells(asked))) {
        return false;
    }
    verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, "is-over")->text = words_for(asked);
    if (asked_is_active_renter(asked) || asked->context->alert_count > 0) {
        verdict_alert(verdict, ALERT_OFFICE, false, IS_OVER_REASON,
                      is_help_told(asked) ? "says help is there" : "says it is over");
    }
    return true;
}
