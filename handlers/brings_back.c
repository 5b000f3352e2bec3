/*
 * "Can i bring it tomorrow", of somebody who has the unit: they bring it back, and we bring nothing
 * to them. What the topics know of bringing is mostly ours, so who does it is looked at first; the
 * office hears of the day they name. And "noon?" alone asks for no delivery of theirs.
 */
#include <string.h>

#include "steps.h"

static const char they[] =
    " i we ill well id wed im were my he she husband wife son daughter mom dad ";
static const char brings[] =
    " bring bringing brings return returning drop dropping take taking give "
    "giving leave leaving turn hand ";
static const char the_unit[] = " it this them unit machine concentrator oxygen back in off ";
static const char brings_es[] =
    "puedo llevarlo|puedo llevarla|lo puedo llevar|la puedo llevar|lo llevo|la llevo|puedo traerlo|"
    "lo puedo traer|lo traigo|puedo devolverlo|lo puedo devolver|lo devuelvo|puedo regresarlo|"
    "lo puedo regresar|lo regreso|puedo entregarlo|lo puedo entregar|lo entrego|llevarselo|"
    "se lo llevo|se los llevo|podemos llevarlo|podemos devolverlo|podemos entregarlo|"
    "voy a llevarlo|voy a devolverlo";
static const char delivers[] =
    " you your u deliver delivers delivery delivered delivering bring brings bringing send sends "
    "driver come comes coming arrive arrives who someone entregan entrega traen trae llega llegan "
    "mandan repartidor ustedes vienen ";

static bool
has_the_unit(const struct asked *asked)
{
    return asked->rental != NULL &&
           (asked->rental->state == RENTAL_OUT || asked->rental->state == RENTAL_OVERDUE);
}

/* Among the topics that fit best. */
static bool
may_be_about(const struct asked *asked, const char *const *ids, size_t count)
{
    enum { LOOKED_AT = 2 };
    size_t i, j;

    for (i = 0; i < asked->search.count && i < LOOKED_AT; i++) {
        for (j = 0; j < count; j++) {
            if (strcmp(asked->search.best[i].topic->id, ids[j]) == 0) {
                return true;
            }
        }
    }
    return false;
}

/* "It on the plane", "lo llevo al avion": carried along, unless it is to us. */
static bool
goes_elsewhere(const struct tokens *tokens, size_t at)
{
    static const char ours[] =
        " you office desk shop counter front lodge oficina recepcion ustedes ";
    enum { NEAR = 4 };

    while (token_among(tokens, at, the_unit)) {
        at++;
    }
    return token_among(tokens, at, " to on into onto along inside with al a en con conmigo ") &&
           !tokens_between_among(tokens, at, at + NEAR, ours) &&
           !token_among(tokens, at + 1,
                        " las la monday tuesday wednesday thursday friday saturday "
                        "sunday time ");
}

/* "Can i bring it", "bring it back at noon ok?"; not "can i see what you bring". */
static bool
tells_they_bring(const struct tokens *tokens)
{
    enum { NEAR = 4 };
    size_t i, j, spanish;

    for (i = 0; i < tokens->count; i++) {
        spanish = tokens_phrase_at(tokens, i, brings_es);
        if (spanish > 0 && !goes_elsewhere(tokens, i + spanish)) {
            return true;
        }
        for (j = i + 1; token_among(tokens, i, they) && j < i + NEAR && j < tokens->count; j++) {
            if (token_among(tokens, j, " you u your someone somebody ")) {
                break;
            }
            if (token_among(tokens, j, brings) && token_among(tokens, j + 1, the_unit)) {
                return !goes_elsewhere(tokens, j + 1);
            }
        }
    }
    return token_among(tokens, 0, brings) && token_among(tokens, 1, the_unit) &&
           token_among(tokens, 2, " back off in ");
}

bool
brings_back_decide(const struct asked *asked, struct verdict *verdict)
{
    static const char *const of_returns[] = {"delivery", "extend", "due-date", "return-ship"};
    static const char delivery[] = "delivery";
    const struct topic *topic = kb_topic(asked->context->kb, "return-ship", asked->language);

    if (!has_the_unit(asked) || topic == NULL || asked_is_surely_about(asked, topic->id) ||
        asked_is_surely_about(asked, "due-date")) {
        return false;
    }
    if (tells_they_bring(&asked->tokens) &&
        may_be_about(asked, of_returns, sizeof of_returns / sizeof of_returns[0])) {
        topics_answer(asked, verdict, topic);
        verdict_alert(verdict, ALERT_OFFICE, false, "office:return", "when they bring it back");
        return true;
    }
    return asked_is_surely_about(asked, delivery) &&
           !tokens_any_among(&asked->tokens, 0, delivers) &&
           (office_decide(asked, verdict) || gap_decide(asked, verdict));
}
