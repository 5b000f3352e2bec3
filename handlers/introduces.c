/*
 * "My mom is 84 and on oxygen", and nothing else: somebody is introduced before anything is asked.
 * Nothing is wrong and nothing is wanted yet, so we ask what they would like to know. It is like
 * texts of readings and of other signs, which are not said then; but the number may be a reading
 * all the same, so that case is named, and what they say to it is waited for: unanswered, someone
 * is called. "She is 84 on oxygen" stays a reading, and so does "has 84": nobody has years.
 */
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

/* That the number is no reading, or an age. */
static bool
tells_age(const struct tokens *tokens)
{
    return tokens_have(tokens, "not a reading|not * reading|no reading|isnt * reading|"
                               "no es lectura|no es * lectura|age|aged|years|year|yrs|old|edad|"
                               "anos|anitos|birthday|cumple");
}

int
introduces_as_reading(const struct asked *whole)
{
    const char *about = whole->context->conversation.asked_about;
    const struct tokens *tokens = &whole->tokens;
    struct tokens before;

    if (asked_open_question(whole) != QUESTION_READING_OR_AGE || about == NULL ||
        tells_age(tokens) ||
        !(yes_no_begins_with_yes(tokens) ||
          tokens_have(tokens,
                      "reading|readings|number|level|oxygen|o2|oximeter|sat|sats|saturation|"
                      "spo2|pulse ox|finger|meter|clip|lectura|lecturas|nivel|oxigeno|"
                      "oximetro|saturacion|dedo|dedito|aparatito"))) {
        return 0;
    }
    before = tokens_read(whole->arena, about);
    return introduced_read(&before).percent;
}

bool
introduces_is_age(const struct asked *asked)
{
    enum { SHORT_TEXT = 12 };
    static const char noes[] = " no nope nah not isnt it its is that thats thanks thank you es eso "
                               "gracias ";
    const struct tokens *tokens = &asked->tokens;

    return asked_open_question(asked) == QUESTION_READING_OR_AGE && tokens->count <= SHORT_TEXT &&
           !tokens_have(tokens, "?") &&
           (tells_age(tokens) || (yes_no_denies_at(tokens, 0) && tokens_words_among(tokens, noes)));
}

bool
introduces_answered(const struct asked *asked, struct verdict *verdict)
{
    open_question_close(verdict);
    if (!introduces_is_age(asked)) {
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
