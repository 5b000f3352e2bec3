/*
 * "My mom is 84 and on oxygen", and nothing else: somebody is introduced before anything is asked.
 * Nothing is wrong and nothing is wanted yet, so we ask what they would like to know. It is like
 * texts of readings and of other signs, which are not said then; but the number may be a reading
 * all the same, so that case is named. "She is 84 on oxygen" stays a reading.
 */
#include "memory.h"
#include "say.h"
#include "steps.h"

enum { YOUNGEST = 18, OLDEST = 110, THOUSAND = 1000 };

static const char hellos[] = " hi hello hey hola good morning afternoon evening buenas buenos dias "
                             "tardes noches , . ! ";
static const char determiners[] = " my our mi nuestra nuestro ";
static const char persons[] =
    " mom moms mum mother dad dads father husband wife grandma grandmother granny nana grandpa "
    "grandfather aunt uncle sister brother son daughter friend partner mama madre mami papa padre "
    "papi esposo esposa marido mujer abuela abuelo abuelita abuelito suegra suegro tia tio hermana "
    "hermano hija hijo amiga amigo ";
static const char of_age[] = " in law - is s has who que tiene de , aged age ";
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

/* The token of the age, 0 if the text is another; *told_as_age if years are named. */
static size_t
age_at(const struct tokens *tokens, bool *told_as_age)
{
    size_t at = skip(tokens, 0, hellos), age, next, taken;
    int thousandths;

    if (!token_among(tokens, at, determiners) || !token_among(tokens, at + 1, persons)) {
        return 0;
    }
    age = skip(tokens, at + 2, of_age);
    taken = tokens_number(tokens, age, false, &thousandths);
    if (taken == 0 || thousandths < YOUNGEST * THOUSAND || thousandths > OLDEST * THOUSAND) {
        return 0;
    }
    next = skip(tokens, age + taken, years);
    *told_as_age = next > age + taken;
    at = skip(tokens, next, joins);
    if (at == next && !*told_as_age) {
        return 0;
    }
    next = skip(tokens, at, uses);
    return next > at && token_among(tokens, next, oxygen) &&
                   skip(tokens, next + 1, how_much) >= tokens->count
               ? age
               : 0;
}

bool
introduces_told(const struct asked *whole)
{
    bool told_as_age = false;

    return whole->context->alert_count == 0 && asked_open_question(whole) == QUESTION_NONE &&
           whole->context->role != SENDER_STAFF && age_at(&whole->tokens, &told_as_age) > 0;
}

bool
introduces_decide(const struct asked *whole, struct verdict *verdict)
{
    const struct house *house = whole->context->house;
    struct answer *answer;
    bool told_as_age = false;
    size_t age;

    if (!introduces_told(whole)) {
        return false;
    }
    age = age_at(&whole->tokens, &told_as_age);
    answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, "introduces");
    answer->text = say(whole->arena, house, whole->language, SAY_WHAT_TO_KNOW, NULL);
    if (!told_as_age) {
        answer->text = memory_format(whole->arena, "%s %s", answer->text,
                                     say(whole->arena, house, whole->language, SAY_IF_A_READING,
                                         whole->tokens.list[age].text, NULL));
    }
    if (asked_is_active_renter(whole)) {
        verdict_alert(verdict, ALERT_OFFICE, false, "introduces", "says who is on oxygen");
    }
    return true;
}
