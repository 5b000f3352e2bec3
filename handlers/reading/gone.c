#include "gone.h"

enum { OBJECT_REACH = 3, STATE_REACH = 5 };

/* Words between a verb and what it counts, or between what is counted and its verb. */
static const char little[] =
    " back up me us em them the of out my our a la las lo de ellas ya otra "
    "vez batteries battery baterias bateria pilas pila ones that we i he "
    "she que mis nos got is was are has have had been just esta fue se "
    "and its it y le his her ";

/* The first token behind a verb that went before what it counts; 0 if none stands there. */
static size_t
behind_verb(const struct tokens *tokens, size_t at)
{
    static const char verbs[] =
        "stepped on|ran over|sat on|broke|cracked|lost|misplaced|forgot|returned|gave|sold|lent|"
        "loaned|traded in|sent|turned in|handed|took|left|dropped off|giving up|had to give|"
        "devolvi|devolvimos|devolvio|regrese|regresamos|entregue|entregamos|perdi|perdimos|perdio|"
        "olvide|olvidamos|se me olvido|preste|prestamos|rompi|rompio|quebre|quebro|vendi|"
        "se llevo|se llevaron|di|dimos|deje|dejamos|dejo|pise|piso|se nos perdio|se me perdio|"
        "se me cayo|se nos cayo|se me rompio|se nos rompio";
    size_t taken = tokens_phrase_at(tokens, at, verbs);

    return taken > 0 ? at + taken : 0;
}

/* Verbs that only tell of a battery gone if where it went stands behind them. */
static bool
tells_where(const struct items *items, size_t verb, size_t number)
{
    size_t to = items->list[number].to;

    if (!token_among(items->tokens, verb,
                     " left gave took sent handed deje dejamos dejo di dimos ")) {
        return true;
    }
    return tokens_phrase_at(items->tokens, items->list[number].from - 1, "back") > 0 ||
           token_among(items->tokens, to,
                       " back behind away at home to off over en a al atras olvidada ") ||
           tokens_phrase_at(items->tokens, to, "in the room|in the car|in my room|of them") > 0;
}

/* Behind what it counts: "one broke", "una se perdio", "1 of them got left behind". */
static bool
went(const struct tokens *tokens, size_t at)
{
    static const char verbs[] =
        "died|ran out|gave "
        "out|acabo|acabaron|gasto|gastaron|murio|murieron|broke|broken|busted|cracked|gone|lost|"
        "stolen|missing|recalled|went back|left behind|"
        "left at|got left|returned|went missing|was returned|is no good|no good|defective|"
        "wont charge|wont take a charge|doesnt work|wont work|quit working|stopped working|"
        "doesnt charge|wont hold a charge|isnt mine|not mine|"
        "quebro|rompio|perdio|rota|quebrada|danada|descompuesta|descompuso|no sirve|no funciona|"
        "no jala|ya no carga|no agarra carga|no es mia|se llevo|se llevaron|robaron|"
        "ni entra|no entra|ni prende|no prende|no cuenta|doesnt fit|wont fit|doesnt count|"
        "wont turn on|doesnt turn on|se mojo|se quedo en|devolvi|devolvimos|olvidada|mala";
    size_t i;

    for (i = at; i < at + OBJECT_REACH + 1; i++) {
        if (tokens_phrase_at(tokens, i, verbs) > 0) {
            return !token_among(tokens, i + 1, " up ");
        }
        if (!token_among(tokens, i, little)) {
            return false;
        }
    }
    return false;
}

/* A charge is told of it in the clause: it is there, though it was left somewhere. */
static bool
has_charge(const struct items *items, size_t at)
{
    size_t to = clause_end(items, at), i;

    for (i = at + 1; i < to && i < at + STATE_REACH; i++) {
        if (item_in(items, i, UNIT_PERCENT) || item_is(items, i, ITEM_FULL) ||
            item_is(items, i, ITEM_HALF) || item_is(items, i, ITEM_CHARGE) ||
            item_is(items, i, ITEM_LIGHT) || item_is(items, i, ITEM_QUARTER) ||
            (item_free_number(items, i) && !items->list[i].one)) {
            return true;
        }
    }
    return false;
}

/* The item of a small number at a token; items->count if there is none. */
static size_t
number_at(const struct items *items, size_t from, size_t token)
{
    size_t i;

    for (i = from; i < items->count && items->list[i].from <= token; i++) {
        if (items->list[i].from == token && is_count(items, i)) {
            return i;
        }
    }
    return items->count;
}

static bool
is_gone(const struct items *items, size_t at)
{
    size_t first = items->list[at].from, back;

    if (!is_count(items, at) || has_charge(items, at) || item_is(items, at + 1, ITEM_UNIT) ||
        item_is(items, at + 1, ITEM_LIGHT) || items->list[at].value > 3 * 1000) {
        return false;
    }
    if (went(items->tokens, items->list[at].to)) {
        return items->list[at].one || item_is(items, at + 1, ITEM_OF) ||
               token_among(items->tokens, items->list[at].to, " are were got no died ya se ") ||
               item_is(items, at + 1, ITEM_BATTERY);
    }
    if (first > 0 && token_among(items->tokens, first - 1, " otras otros ")) {
        return false; /* "regresamos otras 2": hours of the way back */
    }
    for (back = 1; back <= OBJECT_REACH + 2 && back <= first; back++) {
        size_t behind = behind_verb(items->tokens, first - back);

        if (token_among(items->tokens, first - back, " . ! ? ; : pulse pulso setting ")) {
            return false; /* "the socket broke. pulse 2" */
        }
        if (behind > 0 && behind <= first) {
            return tells_where(items, first - back, at);
        }
        if (back > 2 && !token_among(items->tokens, first - back + 1, little)) {
            return false;
        }
    }
    return false;
}

struct gone
gone_read(struct items *items)
{
    struct gone gone = {0};
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (is_gone(items, at)) {
            gone.number += items->list[at].value / 1000;
            gone.at = at;
            items_spend(items, at, 1);
        }
    }
    return gone;
}

/* The fullest of the groups told before item `at`; groups->count if none was. */
static size_t
fullest_before(const struct groups *groups, size_t at)
{
    size_t found = groups->count, i;

    for (i = 0; i < groups->count; i++) {
        const struct state *state = &groups->list[i].state;

        if (state->from < at && !state->is_lights && groups->list[i].times > 0 &&
            (found == groups->count || state->charge.low > groups->list[found].state.charge.low)) {
            found = i;
        }
    }
    return found;
}

void
gone_take(const struct gone *gone, struct counted *counted, struct groups *groups)
{
    int left = gone->number;

    if (left == 0) {
        return;
    }
    if (counted->total > 0 && counted->both_at > gone->at) {
        return; /* "gave one back, both are at 50" */
    }
    if (counted->total > 0 && counted->at < gone->at) {
        counted->total = counted->total > left ? counted->total - left : 0;
        return;
    }
    if (groups->count > 0 && groups->list[groups->count - 1].state.from > gone->at) {
        return; /* what is there is told behind it */
    }
    for (; left > 0; left--) {
        size_t fullest = fullest_before(groups, gone->at);

        if (fullest == groups->count) {
            return;
        }
        if (groups->list[fullest].times > 1) {
            groups->list[fullest].times--;
        } else {
            groups_drop(groups, fullest, 1);
        }
    }
}

/* "I left the full one at home", "se me olvido la llena en la casa" */
static bool
is_left_somewhere(const struct items *items, const struct state *state)
{
    static const char left[] = "left the|left my|left a|forgot the|forgot my|lost the|deje la|"
                               "deje una|dejamos la|olvide la|olvido la|olvidamos la";
    static const char where[] = " home behind back hotel room cabin house car casa cuarto hotel "
                                "cabana carro coche ";
    static const char stops[] = " , . ; and y charging charger plugged cargando but pero ";
    size_t first = items->list[state->from].from, i;
    size_t after = items->list[state->from + state->count - 1].to;

    if (tokens_phrase_at(items->tokens, after,
                         "la deje en|la dejamos en|la olvide en|se quedo en|se me quedo en|"
                         "is at home|is back home|is back at|i left at home") > 0) {
        return true;
    }
    for (i = tokens_back(first, 3); i < first; i++) {
        size_t taken = tokens_phrase_at(items->tokens, i, left);

        if (taken > 0 && i + taken + 1 >= first) {
            for (i = after; i < after + 5 && !token_among(items->tokens, i, stops); i++) {
                if (token_among(items->tokens, i, where)) {
                    return true;
                }
            }
            return false;
        }
    }
    return false;
}

bool
gone_is_left_out(const struct items *items, struct groups *groups, const struct group *group)
{
    static const char leaves[] =
        "scratch the|scratch one|forget the|forget about the|ignore the|skip the|cross out the|"
        "leave out the|not counting the|dont count the|dont count that|not including the|except "
        "the|take away the|take off the|minus the|olvida la|olvidate de la|borra la|quita la|"
        "sin contar la|no cuentes la|no cuente la|menos la|ignora la|tacha la";
    size_t from = items->list[sentence_start(items, group->state.from)].from, i, leave = 0;
    bool left_out = false;

    if (is_left_somewhere(items, &group->state)) {
        return true;
    }

    for (i = from; i < items->list[group->state.from].from; i++) {
        if (tokens_phrase_at(items->tokens, i, leaves) > 0) {
            left_out = true;
            leave = i;
        }
    }
    if (!left_out || items->list[group->state.from].from - leave > 6) {
        return false;
    }
    for (i = groups->count; i > 0; i--) {
        struct group *before = &groups->list[i - 1];

        if (before->state.is_lights == group->state.is_lights &&
            before->state.charge.low == group->state.charge.low &&
            before->state.charge.high == group->state.charge.high) {
            if (before->times > 1) {
                before->times--;
            } else if (before->times == 1) {
                groups_drop(groups, i - 1, 1);
            }
            break;
        }
    }
    return true;
}

int
gone_emptied(const struct items *items, size_t at, size_t *number)
{
    static const char verbs[] =
        "used|went through|ran through|burned through|ran down|drained|emptied|killed|gastamos|"
        "gaste|usamos|ya use|me acabe|nos acabamos|acabamos|vacie|vaciamos|se gasto|se acabo|"
        "se nos acabo|se me acabo";
    size_t token = items->list[at].from, taken;

    taken = tokens_phrase_at(items->tokens, token, verbs);
    if (taken == 0) {
        return 0;
    }
    *number = number_at(items, at, token + taken);
    return *number < items->count && !item_is(items, *number + 1, ITEM_UNIT) &&
                   !has_charge(items, *number) && items->list[*number].value <= 3 * 1000
               ? items->list[*number].value / 1000
               : 0;
}
