/*
 * "My mom is 84 and on oxygen", and nothing else: somebody is introduced before anything is asked.
 * Nothing is wrong and nothing is wanted yet, so we ask what they would like to know. It is like
 * texts of readings and of other signs, which are not said then; but the number may be a reading
 * all the same, so that case is named, and what they say to it is waited for: until they tell an
 * age, whatever else they write, someone is called. "She is 84 on oxygen" stays a reading, and so
 * does "has 84": nobody has years.
 */
#include "clause.h"
#include "memory.h"
#include "persons.h"
#include "say.h"
#include "steps.h"
#include "yes_no.h"

enum { YOUNGEST = 18, OLDEST = 110, LEAST_READING = 30, MOST_READING = 100, THOUSAND = 1000 };

static const char hellos[] = " hi hello hey hola good morning afternoon evening buenas buenos dias "
                             "tardes noches , . ! ";
static const char determiners[] = " my our mi nuestra nuestro ";
static const char of_age[] = " is s who que tiene de , aged age ";
static const char has_years[] = " has "; /* with "years" behind the number only */
static const char years[] = " years year yrs yr old anos anitos edad de ";
static const char joins[] = " and y & , . she he shes hes who que ella el ";
static const char uses[] =
    " is s on uses use using wears usa usando esta con lleva has been her his "
    "su the home ";
static const char oxygen[] = " oxygen o2 oxigeno ";
static const char how_much[] =
    " at night all day the time long 24 7 / de noche dia todo el siempre "
    "only a home too . ! , ";

static size_t
skip(const struct tokens *tokens, size_t at, const char *words)
{
    while (token_among(tokens, at, words)) {
        at++;
    }
    return at;
}

/* Behind "my mom", "mi suegra", "my mother-in-law"; 0 if nobody is named. */
static size_t
past_person(const struct tokens *tokens)
{
    size_t at = skip(tokens, 0, hellos);

    if (!token_among(tokens, at, determiners) || !token_among(tokens, at + 1, person_words)) {
        return 0;
    }
    at = skip(tokens, at + 2, " - ");
    return token_is(tokens, at, "in") ? skip(tokens, at + 1, " law - ") : at;
}

/* Who is introduced, and so old. */
struct introduced {
    size_t age;       /* its token; 0: the text is another */
    int percent;      /* the same number as a reading; 0: it can be none, or years are named */
    const char *text; /* as it was written */
};

static struct introduced
introduced_read(const struct tokens *tokens)
{
    const struct introduced none = {0};
    size_t at = past_person(tokens), age = skip(tokens, at, of_age), next, taken;
    bool is_had = token_among(tokens, age, has_years), told_as_age;
    struct introduced told = {.age = age + (is_had ? 1 : 0)};
    int thousandths;

    taken = tokens_number(tokens, told.age, false, &thousandths);
    if (at == 0 || taken == 0 || thousandths < YOUNGEST * THOUSAND ||
        thousandths > OLDEST * THOUSAND) {
        return none;
    }
    next = skip(tokens, told.age + taken, years);
    told_as_age = next > told.age + taken;
    at = skip(tokens, next, joins);
    if (!told_as_age && (at == next || is_had)) {
        return none;
    }
    next = skip(tokens, at, uses);
    if (next == at || !token_among(tokens, next, oxygen) ||
        skip(tokens, next + 1, how_much) < tokens->count) {
        return none;
    }
    told.text = tokens->list[told.age].text;
    if (!told_as_age && thousandths >= LEAST_READING * THOUSAND &&
        thousandths <= MOST_READING * THOUSAND) {
        told.percent = thousandths / THOUSAND;
    }
    return told;
}

bool
introduces_told(const struct asked *whole)
{
    enum open_question open = asked_open_question(whole);

    return whole->context->alert_count == 0 && whole->context->role != SENDER_STAFF &&
           (open == QUESTION_NONE || open == QUESTION_READING_OR_AGE) &&
           introduced_read(&whole->tokens).age > 0;
}

static const char ages[] = " age aged ages years year yrs old edad anos anitos birthday cumple "
                           "cumpleanos ";
static const char readings[] = " reading readings lectura lecturas ";
/* What shows a reading, and no age. */
static const char instruments[] =
    " oximeter oximetro pulse sat sats saturation spo2 saturacion finger dedo dedito meter clip "
    "pinza aparatito ";
/* Each may stand between a denial and what it denies: "isnt an oximeter reading", "no es su edad".
 */
static const char between[] =
    " a an any the her his my your mom moms dad dads actual real oxygen "
    "o2 oximeter what how from on of tiene es era fue la el una un su mi de del "
    "lo que ";
/* They say so of the instrument, or that it is as we wrote. */
static const char shown[] =
    "what it says|what it said|what it shows|what it showed|what it reads|what it read|it says so|"
    "eso marca|eso marco|eso dice|eso sale|eso salio|lo que marca|lo que marco|lo que dice|"
    "lo que sale|lo que salio|del aparato";
static const char affirms[] =
    " it is right thats that s so exactly sure does true i know its eso es "
    "asi exacto exactamente correcto claro cierto efectivamente lo ";
/* Of oxygen and its number alone; beside anything else they are told of something else. */
static const char values[] = " oxygen o2 number level nivel numero oxigeno ";
static const char around_value[] =
    " its it is thats that s the her his my mom moms dad dads oxygen o2 number level no not at now "
    "nivel numero oxigeno es su el la mi de mama papa esta en eso ella ";
/* A denial stands before `at`, with nothing else between. A "no" that stands right before it, or
 * before "her", may answer us instead ("no, her age", "no age"): then *unclear. */
static bool
is_denied(const struct tokens *tokens, size_t at, bool *unclear)
{
    bool has_verb = false;
    size_t i;

    for (i = at; i > 0; i--) {
        if (yes_no_denies_at(tokens, i - 1)) {
            *unclear = token_among(tokens, i - 1, " no nope nah ") && !has_verb;
            return !*unclear;
        }
        if (tokens->list[i - 1].kind != TOKEN_NUMBER && !token_among(tokens, i - 1, between)) {
            return false;
        }
        has_verb = has_verb || token_among(tokens, i - 1, " es era fue ");
    }
    return false;
}

/* YES if one of these is told, NO if they are denied, NEITHER if none stands there clearly. */
static enum yes_no
said_of(const struct tokens *tokens, const char *words)
{
    enum yes_no said = SAID_NEITHER;
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        bool unclear = false;

        if (!token_among(tokens, i, words)) {
            continue;
        }
        if (is_denied(tokens, i, &unclear)) {
            said = said == SAID_YES ? said : SAID_NO;
        } else if (!unclear) {
            said = SAID_YES;
        }
    }
    return said;
}

/* "How old is the unit": they ask, or tell it of a thing. */
static bool
is_age_of_else(const struct tokens *tokens)
{
    static const char asks[] = " how what is was que cuantos ";
    static const char things[] = " battery batteries machine unit concentrator tank bateria "
                                 "baterias maquina concentrador tanque ";
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        struct clause clause = clause_around(tokens, i);

        if (token_among(tokens, i, ages) &&
            (token_among(tokens, clause.from, asks) || token_is(tokens, clause.end, "?") ||
             clause_has(tokens, clause, things))) {
            return true;
        }
    }
    return false;
}

/* "No", "no it isnt thanks". */
static bool
is_plain_no(const struct tokens *tokens)
{
    static const char noes[] = " no nope nah not isnt it its is that thats thanks thank you es eso "
                               "gracias ";

    return yes_no_denies_at(tokens, 0) && tokens_words_among(tokens, noes) &&
           !tokens_have(tokens, "?") && !token_is(tokens, tokens->count - 1, "is");
}

static bool
affirms_reading(const struct tokens *tokens)
{
    return yes_no_begins_with_yes(tokens) || tokens_have(tokens, shown) ||
           tokens_words_among(tokens, affirms) ||
           (said_of(tokens, values) == SAID_YES && tokens_words_among(tokens, around_value));
}

enum number_meant { MEANT_UNKNOWN, MEANT_READING, MEANT_AGE };

/* Which of the two they say: in doubt neither, for whoever is not told an age may be dying. */
static enum number_meant
number_meant(const struct tokens *tokens)
{
    enum yes_no age = said_of(tokens, ages), reading = said_of(tokens, readings),
                instrument = said_of(tokens, instruments);

    if (instrument == SAID_YES) {
        return MEANT_READING;
    }
    if (age == SAID_YES) {
        return reading == SAID_YES || is_age_of_else(tokens) ? MEANT_UNKNOWN : MEANT_AGE;
    }
    if (age == SAID_NO) {
        return reading == SAID_NO ? MEANT_UNKNOWN : MEANT_READING;
    }
    if (reading == SAID_YES) {
        return MEANT_READING;
    }
    if (reading == SAID_NO || instrument == SAID_NO || is_plain_no(tokens)) {
        return tokens_have(tokens, "?") ? MEANT_UNKNOWN : MEANT_AGE;
    }
    return affirms_reading(tokens) ? MEANT_READING : MEANT_UNKNOWN;
}

int
introduces_as_reading(const struct asked *whole)
{
    const char *about = whole->context->conversation.asked_about;
    struct tokens before;

    if (asked_open_question(whole) != QUESTION_READING_OR_AGE || about == NULL ||
        whole->tokens.count == 0 || number_meant(&whole->tokens) != MEANT_READING) {
        return 0;
    }
    before = tokens_read(whole->arena, about);
    return introduced_read(&before).percent;
}

bool
introduces_is_age(const struct asked *asked)
{
    return asked_open_question(asked) == QUESTION_READING_OR_AGE && asked->tokens.count > 0 &&
           number_meant(&asked->tokens) == MEANT_AGE;
}

bool
introduces_answered(const struct asked *asked, struct verdict *verdict)
{
    enum { SHORT_TEXT = 12 };

    if (!introduces_is_age(asked)) {
        return false; /* it stays open, and somebody is called if it is not answered */
    }
    open_question_close(verdict);
    if (asked->tokens.count > SHORT_TEXT) {
        return false; /* they go on with what they want to know */
    }
    verdict_add(verdict, ANSWER_COURTESY, ROUTE_SMALLTALK, "an-age")->text =
        say(asked->arena, asked->context->house, asked->language, SAY_WHAT_TO_KNOW, NULL);
    return true;
}

bool
introduces_decide(const struct asked *whole, struct verdict *verdict)
{
    const struct house *house = whole->context->house;
    struct introduced told;
    struct answer *answer;

    if (!introduces_told(whole)) {
        return false;
    }
    told = introduced_read(&whole->tokens);
    answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, "introduces");
    answer->text = say(whole->arena, house, whole->language, SAY_WHAT_TO_KNOW, NULL);
    if (told.percent > 0) {
        answer->text = memory_format(
            whole->arena, "%s %s", answer->text,
            say(whole->arena, house, whole->language, SAY_IF_A_READING, told.text, NULL));
        (void)open_question_ask(whole, verdict, QUESTION_READING_OR_AGE);
    }
    if (asked_is_active_renter(whole)) {
        verdict_alert(verdict, ALERT_OFFICE, false, "introduces", "says who is on oxygen");
    }
    return true;
}
