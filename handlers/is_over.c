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
static const char of_persons_untold[] = PERSON_AGAIN "|" WAS_NONE "|" SURELY;
static const char of_units[] = UNIT_AGAIN;
static const char of_units_in_waiting[] = UNIT_AGAIN "|" OF_FLOWING;
static const char surely_over[] = SURELY;

/* What may stand beside it without telling anything more; of things too. */
static const char around[] =
    " it its the that this now again already ok okay yes yeah yep hi hello oh phew thanks thank "
    "you so much very good great finally all and thing darn damn silly just he hes she shes they "
    "theyre we were im i am are "
    "my our mom moms mum mother dad dads father husband wife grandma grandpa nana son daughter "
    "sister brother sorry with us him her them by itself everyone lol haha jaja whew uf god "
    "ya el la los las lo le les es esta estan estamos estoy todo muy bien gracias dios a ahora "
    "otra vez nuevo de mi mama papa esposo esposa senora abuela abuelo abuelita abuelito hijo hija "
    "y si hola perdon disculpe disculpen por fin al con nos aqui ella ahorita solo sola "
    "tranquilos ";
/* And beside what is told of people alone: a unit that works "but a little" does not. */
static const char around_people[] =
    " a bit little lot much for too also cold but un poco poquito mucho bastante frio pero ";
/* What it came from, where that is told as past: "it was the tube kinked, he is ok now". */
static const char was[] = "was|were|era|eran|fue|estaba|estaban";
static const char causes[] =
    " was were era eran fue estaba estaban just hose tube tubing kink kinked bent cannula prongs "
    "unplugged loose disconnected slipped twisted un una manguera manguerita tubo doblada doblado "
    "torcida torcido canula puntas desconectada desconectado suelta suelto zafada zafado nomas "
    "nada mas solamente ";
/* What it came from, and harms nobody: "just stood up too fast"; told beside that it is over. */
static const char harmless[] =
    "just stood up too fast|stood up too fast|got up too fast|stood up too quick|got up too quick|"
    "was just stairs|just the stairs|just stairs|it was the stairs|was just the hill|"
    "was just asleep|was asleep|fell asleep|was sleeping|was just sleeping|was napping|"
    "was dreaming|from how i laid on it|how i laid on it|laid on it|slept on it|how i slept|"
    "hadnt eaten|had not eaten|didnt eat|forgot to eat|on wrong finger|wrong finger|"
    "on the wrong finger|cold finger|cold fingers|fingers were cold|finger was cold|nail polish|"
    "went down wrong|swallowed wrong|me pare muy rapido|se paro muy rapido|se levanto muy rapido|"
    "no habia comido|no comio|no ha comido|no he comido|no habia desayunado|que no habia comido|"
    "estaba dormido|estaba dormida|se quedo dormido|se quedo dormida|en el dedo equivocado|"
    "dedo equivocado|dedo frio|dedos frios|fueron las escaleras|por las escaleras|"
    "eran las escaleras";
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
    "think|maybe|off|worse|same|gone|?|ni|sin|nada|nunca|nadie|pero|todavia|aun|casi|apenas|si|"
    "cuando|hasta|aunque|ojala|creo|quizas|igual|peor|sigue|sigo|muerto|murio|apago";

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
    return tokens_have(&asked->tokens, of_persons) && only_tells(asked, of_persons, of_units);
}

/* "Ok it was asleep from how i laid on it. its back": by itself "its back" is what was wrong. */
static bool
is_back_from_harmless(const struct asked *asked)
{
    return tokens_have(&asked->tokens, harmless) &&
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
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, surely_over);
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

/* An alert that is open was told with this value: "reading 84". */
static bool
was_told_before(const struct asked *asked, int value)
{
    enum { THOUSAND = 1000 };
    size_t i, j;

    for (i = 0; i < asked->context->alert_count; i++) {
        struct tokens brief = tokens_read(asked->arena, asked->context->alerts[i].brief);

        for (j = 0; j < brief.count; j++) {
            if (brief.list[j].kind == TOKEN_NUMBER &&
                brief.list[j].thousandths == value * THOUSAND) {
                return true;
            }
        }
    }
    return false;
}

/*
 * "94 not 84", "94, no, 84", or with "typo" one number alone: the value that holds; 0 if none is
 * told so. Of two with "no" between them the first holds only if the second stands right behind it
 * and is what was told before: "94 no 84". All else puts the first right.
 */
static int
value_put_right(const struct asked *asked)
{
    enum { THOUSAND = 1000 };
    const struct tokens *tokens = &asked->tokens;
    bool was_wrong = tokens_have(tokens, "meant|typo|misread|quise decir|lei mal|me equivoque");
    size_t count = 0, denial = 0, numbers[2] = {0, 0}, i;
    int values[2] = {0, 0};

    for (i = 0; i < tokens->count; i++) {
        if (yes_no_denies_at(tokens, i)) {
            if (count == 0) {
                return 0; /* "not 94 but 84" */
            }
            denial = count == 1 ? i : denial;
        }
        if (tokens->list[i].kind == TOKEN_NUMBER && count++ < 2) {
            numbers[count - 1] = i;
            values[count - 1] = tokens->list[i].thousandths / THOUSAND;
        }
    }
    if (count == 2 && denial > 0) {
        return denial == numbers[0] + 1 && numbers[1] == denial + 1 &&
                       was_told_before(asked, values[1])
                   ? values[0]
                   : values[1];
    }
    return count == 1 && was_wrong && denial == 0 ? values[0] : 0;
}

/* The value by which they put right a reading that staff were alerted of; 0 if the text is none of
 * that alone. */
static int
reading_put_right(const struct asked *asked)
{
    static const char *const readings[] = {"low-reading", "reading", "reading-and-symptom"};
    struct tokens rest = tokens_without(
        asked->arena, &asked->tokens,
        "not|no|meant|i mean|typo|misread|read it wrong|wrong|quise decir|digo|"
        "lei mal|me equivoque|era|eran|fue|was|percent|por ciento|wait|espere|actually|"
        "really|is|at|in fact|correction|de hecho|en realidad|tiene|marca");

    return tokens_words_among(&rest, around) &&
                   found_alerted_of(asked->context, readings, sizeof readings / sizeof readings[0])
               ? value_put_right(asked)
               : 0;
}

/* A value that is no cause to call. */
static bool
is_well(const struct asked *asked, int value)
{
    enum { WELL = 90, MOST = 100 };

    return value >= WELL && value <= MOST && value > emergency_reading(asked->context);
}

/* Nothing but values was told of them, and nothing that they feel. */
static bool
only_readings_told(const struct asked *asked)
{
    static const char *const of_readings[] = {"low-reading", "reading", "low-oxygen"};
    size_t i, count = 0;

    for (i = 0; i < asked->context->alert_count; i++) {
        const char *reasons = asked->context->alerts[i].reasons;

        while (reasons != NULL) {
            const struct sign *sign = found_next_reason(asked, &reasons);
            bool is_of_reading = sign != NULL && (strcmp(sign->id, of_readings[0]) == 0 ||
                                                  strcmp(sign->id, of_readings[1]) == 0 ||
                                                  strcmp(sign->id, of_readings[2]) == 0);

            if (sign != NULL && !is_of_reading) {
                return false;
            }
            count += is_of_reading;
        }
    }
    return count > 0;
}

bool
is_over_reads_well(const struct asked *asked)
{
    enum { THOUSAND = 1000 };
    static const char rises[] = "now|again|back to|back up|up to|went up|came up|back at|ya|ahora|"
                                "ahorita|subio|ya subio";
    static const char of_value[] =
        " it its the was is on at up to back went came now again ok okay good sorry thanks god he "
        "hes she shes my his her him mom dad oxygen o2 sat sats spo2 level reading reads says "
        "finger oximeter and so percent ya esta en el la su mi de subio ahora ahorita oxigeno "
        "saturacion gracias a dios dedo marca dice por ciento perdon era es y "
        "estaba puesto ";
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, harmless);
    size_t i, count = 0;
    int value = 0;

    for (i = 0; i < rest.count; i++) {
        if (rest.list[i].kind == TOKEN_NUMBER) {
            value = rest.list[i].thousandths / THOUSAND;
            count++;
        }
    }
    /* After a reading that was no emergency another one is a reading, which we do not judge. */
    return open_emergency_stands(asked->context) && count == 1 && is_well(asked, value) &&
           tokens_words_among(&rest, of_value) &&
           (rest.count < asked->tokens.count || tokens_have(&rest, rises)) &&
           only_readings_told(asked);
}

/* "Sorry, 94 not 84": what was told as a low reading is none. */
static bool
corrects_reading(const struct asked *asked)
{
    return is_well(asked, reading_put_right(asked));
}

int
is_over_still_low(const struct asked *asked)
{
    enum { LEAST = 30 };
    int value = reading_put_right(asked);

    return value >= LEAST && value <= emergency_reading(asked->context) ? value : 0;
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
    struct tokens other = tokens_without(asked->arena, &rest, of_persons);

    return rest.count < asked->tokens.count && are_fillers(asked, &other, false);
}

/* The phrases that count now, by what is open, and nothing else. */
static bool
tells_all_clear(const struct asked *asked)
{
    if (open_emergency_stands(asked->context)) {
        return only_tells(asked, of_persons, NULL) || tells_of_both(asked) ||
               is_back_from_harmless(asked);
    }
    if (asked_open_question(asked) == QUESTION_FLOWING) {
        return only_tells(asked, of_persons, of_units_in_waiting);
    }
    return only_tells(asked, asked->context->alert_count > 0 ? of_persons : of_persons_untold,
                      of_units);
}

bool
is_over_of_anything(const struct asked *asked)
{
    return !speaks_against(asked) && !may_be_of_somebody(&asked->tokens) &&
           only_tells(asked, of_persons, of_units);
}

bool
is_over_told(const struct asked *asked)
{
    return !speaks_against(asked) && !may_be_of_somebody(&asked->tokens) &&
           (tells_all_clear(asked) || is_help_told(asked) || is_over_was_cooking(asked) ||
            corrects_reading(asked) || is_over_reads_well(asked));
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

bool
is_over_decide(const struct asked *asked, struct verdict *verdict)
{
    if (only_leads_up(asked)) {
        verdict_add(verdict, ANSWER_COURTESY, ROUTE_SMALLTALK, "courtesy");
        return true;
    }
    if (!is_over_told(asked) &&
        !(open_emergency_stands(asked->context) && !speaks_against(asked) && surely_tells(asked))) {
        return false;
    }
    verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, "is-over")->text = words_for(asked);
    if (asked_is_active_renter(asked) || asked->context->alert_count > 0) {
        verdict_alert(verdict, ALERT_OFFICE, false, IS_OVER_REASON,
                      is_help_told(asked) ? "says help is there" : "says it is over");
    }
    return true;
}
