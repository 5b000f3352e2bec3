#include "power_denied.h"

/* "for the first 2 hours only" */
static bool
item_has_hours_only(const struct items *items, size_t token)
{
    size_t i;

    for (i = token + 1; i < token + 5; i++) {
        if (token_among(items->tokens, i,
                        " hour hours hrs leg half part hora horas mitad tramo ")) {
            return true;
        }
    }
    return false;
}

/* "we have the charger but it blows the fuse", "cargador pero no sirve" */
static bool
is_taken_back(const struct tokens *tokens, size_t token)
{
    size_t i;

    token += token_is(tokens, token, ",") ? 1 : 0;
    if (!token_among(tokens, token, " but pero though except only ")) {
        return false;
    }
    for (i = token + 1; i < token + 4; i++) {
        if (token_among(
                tokens, i,
                " no not doesnt isnt wont cant dont never broke broken blows blew dead died "
                "quit shot nunca fallo falla truena quema ")) {
            return true;
        }
    }
    return false;
}

/* "forgot the car charger", "left the adapter at home", "se me quedo el cargador en el hotel" */
static bool
is_left_behind(const struct items *items, size_t at)
{
    static const char somewhere[] =
        " home behind house hotel room cabin condo lodge motel office drawer casa cuarto cabana "
        "habitacion hospedaje olvidado olvidada ";
    static const char gone[] =
        "cant find it|cannot find it|couldnt find it|in the mail|on order|hasnt come|hasnt arrived|"
        "is lost|got lost|went missing|left it home|left it at|left it behind|forgot it|no lo "
        "encuentro|no la encuentro|no lo encontramos|no aparece|no ha llegado|lo deje en|lo "
        "dejamos en|lo olvide|lo olvidamos|se perdio";
    const struct tokens *tokens = items->tokens;
    size_t first = items->list[at].from, behind = items->list[at].to, i;
    size_t from = items->list[clause_start(items, at)].from;

    for (i = behind; i < items->list[sentence_end(items, at) - 1].to; i++) {
        if (tokens_phrase_at(tokens, i, gone) > 0) {
            return true;
        }
    }
    for (i = first; i > from && first - i < 6; i--) {
        if (token_among(tokens, i - 1,
                        " forgot forgotten lost misplaced olvide olvido olvidamos olvidaron perdi "
                        "perdio perdimos ")) {
            return true;
        }
        if (token_among(tokens, i - 1, " left leave deje dejo dejamos dejaron quedo ")) {
            return tokens_between_among(tokens, behind, behind + 6, somewhere);
        }
    }
    return token_among(tokens, behind, " is was got se esta ") &&
           (token_among(tokens, behind + 1, " back left forgotten lost quedo olvido perdio ") ||
            tokens_phrase_at(tokens, behind,
                             "is at home|is at the hotel|is in the room|"
                             "esta en casa|esta en la casa|esta en el hotel|"
                             "se me quedo|se me olvido|se me perdio|se nos quedo|"
                             "se nos olvido|se nos perdio") > 0);
}

bool
power_is_negated(const struct items *items, size_t at)
{
    size_t token = items->list[at].from, from = items->list[clause_start(items, at)].from;

    if (is_left_behind(items, at)) {
        return true;
    }
    for (; token > from && items->list[at].from - token < 5; token--) {
        if (token_among(items->tokens, token - 1,
                        " no nothing nowhere without sin ningun cant not isnt wont doesnt dont "
                        "nada hunting "
                        "hunt looking searching buscar buscando ") ||
            tokens_phrase_at(items->tokens, token - 1, "w / o") > 0) {
            return true;
        }
    }
    token = items->list[at].to;
    if (is_taken_back(items->tokens, token)) {
        return true;
    }
    while (token_among(items->tokens, token, " is was are got it has es esta no ") &&
           token_among(items->tokens, token + 1,
                       " is was are got es esta broken broke out down bad dead busted quit gone "
                       "missing roto rota descompuesto descompuesta sirve funciona jala ")) {
        token++;
    }
    return token_among(
               items->tokens, token,
               " dont doesnt isnt wont broken not broke no didnt cant busted dead bad roto rota "
               "descompuesto descompuesta sirve funciona jala quit ") &&
           !token_is(items->tokens, token, "no");
}

/* "there might be a plug", "creo que hay enchufe" */
static bool
power_is_doubted(const struct items *items, size_t at)
{
    return items_have_word(
        items, clause_start(items, at), at,
        " might maybe hopefully probably supposedly perhaps think guess hope hoping "
        "unsure creo quiza quizas talvez ojala dizque parece ");
}

/* "someone is always on it", "siempre lo usa alguien", but no "but I am always late" */
static bool
is_always_held(const struct tokens *tokens, size_t always)
{
    size_t token;

    for (token = always + 1; token < always + 4; token++) {
        if (token_among(tokens, token,
                        " using someone somebody people crowded packed alguien gente otro otros "
                        "usan usando lleno llenos ") ||
            (token_is(tokens, token, "on") && token_among(tokens, token + 1, " it them that ")) ||
            (token_is(tokens, token, "in") && token_is(tokens, token + 1, "use"))) {
            return true;
        }
    }
    return false;
}

/* "I would not count on it", "no cuento con eso" */
static bool
is_not_counted_on(const struct tokens *tokens, size_t counts)
{
    return token_among(tokens, counts, " count counting cuento cuenten contar ") &&
           (token_among(tokens, counts - 1, " dont cant not no ") ||
            token_is(tokens, counts + 2, "out"));
}

/* "a wall socket, but someone is always on it": told behind, in the same sentence */
static bool
power_is_taken(const struct items *items, size_t at)
{
    const struct tokens *tokens = items->tokens;
    size_t token = items->list[at].to, to = items->list[sentence_end(items, at) - 1].to;

    while (token < to && !token_among(tokens, token, " but though pero aunque ")) {
        token++;
    }
    for (; token < to; token++) {
        if (token_among(tokens, token,
                        " occupied taken busy hogging hogs ocupado ocupada ocupados ") ||
            (token_among(tokens, token, " always siempre ") && is_always_held(tokens, token)) ||
            is_not_counted_on(tokens, token)) {
            return true;
        }
    }
    return false;
}

bool
power_is_denied(const struct items *items, size_t at)
{
    size_t token;

    if (power_is_doubted(items, at) || power_is_taken(items, at)) {
        return true;
    }

    for (token = items->list[at].from; token < items->list[at].to + 6; token++) {
        if (token >= items->list[at].to &&
            token_among(items->tokens, token, " only half sometimes partly some solo aveces ") &&
            token_among(items->tokens, token + 1,
                        " works the of for first way time part funciona sirve las ")) {
            return true; /* "the plug only works half the time" */
        }
        if (token_among(items->tokens, token,
                        " sometimes flaky spotty iffy loose aveces fails falla fallar ")) {
            return true; /* "el cargador a veces falla" */
        }
        if (token_among(items->tokens, token, " first last primera primeras ultima ultimas ") &&
            item_has_hours_only(items, token)) {
            return true;
        }
    }
    return power_is_negated(items, at);
}
