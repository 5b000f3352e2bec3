#include "ages.h"

const char ages_family[] =
    " mom mother dad father husband wife grandma grandpa grandmother "
    "grandfather aunt uncle hubby sister brother papa mama abuela abuelo abue "
    "esposo esposa nana mum gramps im hes shes ";
static const char persons[] =
    " hija hijo tia tio nieta nieto suegra suegro prima primo nuera yerno cunada cunado senora "
    "senor "
    "nino nina bebe muchacha muchacho sobrina sobrino abuelita abuelito madrina padrino comadre "
    "compadre vecina vecino amiga amigo mujer hombre marido esposa esposo hermana hermano mama "
    "papa "
    "madre padre abuela abuelo daughter son niece nephew cousin grandson granddaughter kid boy "
    "girl "
    "man woman lady baby toddler mom dad mother father grandma grandpa aunt uncle sister brother "
    "wife husband law ";

static bool
is_number(const struct items *items, size_t at)
{
    return at < items->count && items->list[at].is == ITEM_NUMBER;
}

/* "my sister and I (both 84, both on oxygen)" */
static bool
are_both_so_old(const struct items *items, size_t at)
{
    size_t from = sentence_start(items, at);

    return item_is(items, at - 1, ITEM_BOTH) && items->list[at].value >= 55 * 1000 &&
           items_have_word(items, from, at, persons) &&
           items_have_word(items, from, at, " i yo he she ella el ") &&
           items_find(items, from, at, ITEM_BATTERY) == at &&
           items_find(items, from, at, ITEM_HAVE) == at;
}

/* "mi papa vuela el miercoles, tiene 83 y es la primera vez": a person, and no thing since */
static bool
is_of_person(const struct items *items, size_t at)
{
    static const char things[] = " bateria baterias pila pilas unidad aparato maquina maquinita "
                                 "otra otro una la concentrador pantalla cargada puesta ";
    size_t from = items->list[sentence_start(items, at)].from, i;

    for (i = items->list[at].from - 1; i > from; i--) {
        if (token_among(items->tokens, i - 1, things)) {
            return false;
        }
        if (token_among(items->tokens, i - 1, persons)) {
            return token_among(items->tokens, items->list[at].to, " y , . ");
        }
    }
    return false;
}

/* "mi abue tiene 92", "es para mi suegro, tiene 79", "tiene 92 (anos)": a charge would have its
 * battery, and where none is named an age is the likelier one. */
static bool
has_so_many_years(const struct items *items, size_t at)
{
    const struct tokens *tokens = items->tokens;
    size_t verb = tokens_back(items->list[at].from, 1);

    if (tokens_phrase_at(tokens, tokens_back(verb, 1), "a mis|a sus|a los|a tus") == 2) {
        return true; /* "a mis 67 ya ronco" */
    }
    if (item_is(items, at + 1, ITEM_UNIT) || !token_among(tokens, verb, " tiene cumple cumplio ")) {
        return false;
    }
    if (at + 2 < items->count && items->list[at + 1].is == ITEM_PAUSE &&
        token_among(tokens, items->list[at + 2].from, " anos anios ")) {
        return true;
    }
    if (is_of_person(items, at)) {
        return true;
    }
    verb = tokens_back(verb, token_among(tokens, verb - 1, " , que ya ella el ; ") ? 2 : 1);
    return token_among(tokens, verb, persons) || token_among(tokens, verb, ages_family);
}

/* "he is 74", "my mom 82": years */
void
age_put_aside(struct items *items, size_t at)
{
    const struct tokens *tokens = items->tokens;
    size_t before;

    if (is_number(items, at) && items->list[at].from > 1 && items->list[at].value <= 110 * 1000 &&
        token_among(tokens, items->list[at].from - 1, " de of aged age ") &&
        token_among(tokens, items->list[at].from - 2, persons)) {
        items_spend(items, at, 1); /* "mi hija de 12" */
        return;
    }
    if (!is_number(items, at) || items->list[at].value < 30 * 1000 ||
        items->list[at].value > 110 * 1000 || at == 0) {
        return;
    }
    if (items->list[at].value >= 55 * 1000 && has_so_many_years(items, at)) {
        items_spend(items, at, 1);
        return;
    }
    if (items->list[at].value >= 55 * 1000 && !item_is(items, at + 1, ITEM_UNIT) &&
        tokens_phrase_at(tokens, tokens_back(items->list[at].from, 3), "me , at|me at my") == 3) {
        items_spend(items, at, 1); /* "they talked me into the falls, me, at 78!" */
        return;
    }
    if (are_both_so_old(items, at)) {
        items_spend(items, at, 1);
        return;
    }
    before = items->list[at].from;
    if (token_among(tokens, before - 1, ages_family) ||
        (before > 1 && token_among(tokens, before - 1, " de of at ") &&
         token_among(tokens, before - 2, ages_family) &&
         !token_among(tokens, before - 2, " im hes shes ")) ||
        (before > 1 && token_among(tokens, before - 1, " is am es ") &&
         token_among(tokens, before - 2, " i he she mom dad husband wife mother father "))) {
        items_spend(items, at, 1);
    }
}
