#include "yes_no.h"

#include <string.h>

/* What may stand before an answer without being one. */
static const char leads[] = " ok okay oh um well hi hello hey sorry thank thanks you god please "
                            "hola bueno gracias perdon pues ";
static const char yes_words[] = " yes yeah yep yup yea yess yesss yas sip affirmative correct ";
/* Also "if", "already", "and": a yes only where nothing follows that they might begin. */
static const char doubtful_yes[] = " y ya si simon aja ";
static const char after_doubtful[] = " gracias por claro todo , . ! ";

static const char no_words[] =
    " no nope nah n neither none nothing not nada negative negativo never without isnt arent "
    "doesnt didnt dont wont cant cannot couldnt hasnt havent wasnt aint nothings ninguno ninguna "
    "todavia aun tampoco nunca jamas sin nel nop nanais ";
/* "no problem", "no worries": nothing is denied. "No symptoms" denies something else. */
static const char harmless_after[] =
    " problem problems worries worry need thanks thank rush hurry else bad pain trouble symptoms "
    "symptom issue issues doubt biggie matter only problema problemas gracias "
    "preocupe prisa ";

/* Behind "no", "not", "dont": that they do not know, or meant something else. */
static const char doubtful_after[] = " idea clue sure certain know remember seguro segura ";
static const char taken_back[] = " mean meant wait digo espera espere ";
/* Behind "no se": it is "I do not know", and no "it cannot be plugged in". */
static const char after_no_se[] = " si donde cual cuales que cuanto cuanta cuantas como quien "
                                  "bien exactamente la . , ! ? ";

static const char asks[] =
    " how what when where which who why can could should do does is are will "
    "may como que cuando donde cual quien puedo debo ";
static const char goes_on[] = " but except although though however pero aunque ";

enum { SHORT_TEXT = 8, BEFORE_THING = 4, AFTER_THING = 2 };

/* "nooo" */
static bool
is_drawn_out_no(const char *text)
{
    return text[0] == 'n' && text[1] == 'o' && strspn(text + 1, "o") == strlen(text + 1);
}

bool
yes_no_denies_at(const struct tokens *tokens, size_t at)
{
    return (token_among(tokens, at, no_words) ||
            (at < tokens->count && is_drawn_out_no(tokens->list[at].text))) &&
           !token_among(tokens, at + 1, harmless_after);
}

/* "I mean" right behind a no. "No, sorry" stays a no. */
static bool
is_taken_back(const struct tokens *tokens, size_t at)
{
    size_t next = at + 1;

    while (token_among(tokens, next, " i , . - no yo ")) {
        next++;
    }
    return token_among(tokens, next, taken_back) ||
           (token_is(tokens, next, "quise") && token_is(tokens, next + 1, "decir"));
}

bool
yes_no_doubts_at(const struct tokens *tokens, size_t at)
{
    if (token_is(tokens, at, "no") && token_is(tokens, at + 1, "se")) {
        return at + 2 >= tokens->count || token_among(tokens, at + 2, after_no_se);
    }
    if (token_among(tokens, at, " no ni ") && token_is(tokens, at + 1, "tengo")) {
        return token_is(tokens, at + 2, "idea");
    }
    return (token_among(tokens, at, " no not dont ni nunca ") &&
            token_among(tokens, at + 1, doubtful_after)) ||
           (token_is(tokens, at, "no") &&
            (tokens_have(tokens, "no estoy seguro|no estoy segura") || is_taken_back(tokens, at)));
}

/* "Not really sure why it stopped", "dont know what happened", "no se por que": what they do not
 * know is not what was asked. "Not sure if it flows" is. */
static bool
knows_no_cause(const struct tokens *tokens, size_t at)
{
    size_t next = at + 1;

    while (token_among(tokens, next, " really too quite exactly all that very a muy bien ")) {
        next++;
    }
    return (token_among(tokens, next, doubtful_after) || token_is(tokens, next, "se")) &&
           token_among(tokens, next + 1, " why what who por que ");
}

static size_t
head_of(const struct tokens *tokens)
{
    size_t head = 0;

    while (head < tokens->count &&
           (token_among(tokens, head, leads) || tokens->list[head].kind == TOKEN_SIGN)) {
        head++;
    }
    return head;
}

static bool
is_beside_thing(const struct tokens *tokens, size_t at, const char *things)
{
    size_t from = tokens_back(at, AFTER_THING), i;

    for (i = from; i <= at + BEFORE_THING; i++) {
        if (i != at && token_among(tokens, i, things)) {
            return true;
        }
    }
    return false;
}

bool
yes_no_denies_one_of(const struct tokens *tokens, const char *things)
{
    size_t at, i;

    for (at = 0; at < tokens->count; at++) {
        if (!yes_no_denies_at(tokens, at)) {
            continue;
        }
        for (i = at;
             i < tokens->count && i <= at + BEFORE_THING && tokens->list[i].kind != TOKEN_SIGN;
             i++) {
            if (token_among(tokens, i, things)) {
                return true;
            }
        }
        for (i = at; i > 0 && at - i < AFTER_THING && tokens->list[i - 1].kind != TOKEN_SIGN; i--) {
            if (token_among(tokens, i - 1, things)) {
                return true;
            }
        }
    }
    return false;
}

static bool
heads_yes(const struct tokens *tokens, size_t head)
{
    return token_among(tokens, head, yes_words) ||
           (token_among(tokens, head, doubtful_yes) &&
            (head + 1 >= tokens->count || token_among(tokens, head + 1, after_doubtful)));
}

bool
yes_no_begins_with_yes(const struct tokens *tokens)
{
    return heads_yes(tokens, head_of(tokens));
}

bool
yes_no_goes_on(const struct tokens *tokens)
{
    return tokens->count > SHORT_TEXT ||
           tokens_any_among(tokens, 0,
                            " ? how what when where which who why como cuando donde cual quien ");
}

enum yes_no
yes_no_read(const struct tokens *tokens, const struct yes_no_about *about)
{
    size_t head = head_of(tokens), i;
    bool is_in_doubt = false;
    bool is_yes = heads_yes(tokens, head);
    bool is_well = tokens_have(tokens, about->well);
    bool stands_alone = is_yes && token_among(tokens, head + 1, " . , ! and also y ");
    bool is_question =
        token_among(tokens, head, asks) || (tokens_any_among(tokens, 0, " ? ") && !stands_alone);
    bool is_short = tokens->count - head <= SHORT_TEXT && !is_question && !is_yes;

    for (i = head; i < tokens->count; i++) {
        bool doubts = about->takes_doubt && yes_no_doubts_at(tokens, i);
        bool denies =
            yes_no_denies_at(tokens, i) && !doubts && (i == head || !knows_no_cause(tokens, i));

        is_in_doubt = is_in_doubt || doubts;

        if (denies && (is_short || i == head || is_beside_thing(tokens, i, about->things))) {
            return SAID_NO;
        }
        if (is_short && !is_well && token_among(tokens, i, about->ill)) {
            return SAID_NO;
        }
    }
    if (is_question || is_in_doubt || tokens_any_among(tokens, 0, goes_on)) {
        return SAID_NEITHER;
    }
    return is_yes || is_well ? SAID_YES : SAID_NEITHER;
}
