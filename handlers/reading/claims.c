#include "claims.h"

static const char whose[] =
    " friend friends neighbor neighbors neighbour buddy guy lady guys people folks box website "
    "site "
    "brochure manual ad booklet review reviews yesterday internet online paper papers label "
    "amigo amiga vecino vecina caja pagina folleto manual anuncio ayer internet papel etiqueta ";
static const char tells[] =
    " gets get got gave gives lasted lasts says said say claims claim did does goes went ran runs "
    "told rated promised promises advertised shows dura duro duraba dio da daba rinde rindio "
    "rendia "
    "aguanto aguantaba dice dijo decia dicen promete ";

/* Somebody or something else in the clause, or another time. */
static bool
is_of_others(const struct items *items, size_t from, size_t at)
{
    size_t i;

    if (items_have_word(items, from, at, whose) ||
        items_have_word(items, at, clause_end(items, at),
                        " his hers theirs suya suyo box label brochure manual website caja folleto "
                        "etiqueta ")) {
        return true;
    }
    for (i = items->list[from].from; i < items->list[at].from; i++) {
        if ((token_is(items->tokens, i, "told") && token_among(items->tokens, i + 1, " us me ")) ||
            (token_is(items->tokens, i, "last") &&
             token_among(items->tokens, i + 1, " time year month trip week summer winter ")) ||
            (token_among(items->tokens, i, " ano mes verano invierno semana ") &&
             token_among(items->tokens, i + 1, " pasado pasada ")) ||
            (token_is(items->tokens, i, "vez") && token_among(items->tokens, i + 1, " pasada ")) ||
            (token_is(items->tokens, i, "home") &&
             token_among(items->tokens, i - 1, " at back ")) ||
            (token_is(items->tokens, i, "ultima") && token_is(items->tokens, i + 1, "vez"))) {
            return true;
        }
    }
    return false;
}

void
claim_of_length(struct items *items, size_t at)
{
    size_t from = clause_start(items, at), to = clause_end(items, at), i;

    if (item_in(items, at, UNIT_MINUTE) &&
        (item_is(items, at + 1, ITEM_LEFT) ||
         token_among(items->tokens, items->list[at].from - (at > 0), " quedan queda faltan ")) &&
        items_have_word(items, at > from + 3 ? at - 3 : from, at,
                        " says say said predicts estimates shows dice marca ")) {
        items_spend(items, at, 1); /* "it says 4 hours left": what the unit reckons */
        return;
    }
    if (!item_in(items, at, UNIT_MINUTE) || items->list[at].spent ||
        !items_have_word(items, from, at, tells) || !is_of_others(items, from, at) ||
        items_find(items, from, to, ITEM_GOING) < to ||
        items_find(items, from, to, ITEM_GATE) < to || items_find(items, from, to, ITEM_AIR) < to ||
        items_have_word(items, from, at, " need needs ago hace ocupo necesito ")) {
        return;
    }
    for (i = from; i < at; i++) {
        if (item_is(items, i, ITEM_FULL) || item_is(items, i, ITEM_CHARGE) ||
            item_is(items, i, ITEM_BATTERY)) {
            items_spend(items, i, 1);
        }
    }
    items_spend(items, at, 1);
}
