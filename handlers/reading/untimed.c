#include "untimed.h"

/* "before our ride comes", "antes de que pase el taxi": by something whose time is not told. */
bool
is_ready_untimed(const struct items *items)
{
    static const char whose[] =
        " we i he she they our my his her their the a dinner lunch bed work "
        "breakfast supper checkout church de del ";
    static const char no_events[] = " battery batteries it charge bateria baterias pila pilas "
                                    "carga las la los el mediodia manana noon midnight que ";
    size_t at, next, i;

    if (lexicon_cue(items->tokens, CUE_READY_UNTIMED)) {
        return true;
    }
    for (at = 0; at < items->count; at++) {
        next = items->list[at].from + 1;
        if (!token_among(items->tokens, next - 1, " before antes ") ||
            !token_among(items->tokens, next, whose)) {
            continue;
        }
        next += token_among(items->tokens, next, " de del the a ") ? 1 : 0;
        for (i = at + 1; i < items->count && items->list[i].is != ITEM_STOP &&
                         items->list[i].is != ITEM_CLOCK && items->list[i].is != ITEM_NUMBER;
             i++) {
        }
        if ((i >= items->count || items->list[i].is == ITEM_STOP) &&
            (!token_among(items->tokens, next, no_events) ||
             (token_is(items->tokens, next, "que") && items->spanish))) {
            return true;
        }
    }
    return false;
}

/* "ok till bedtime?", "hasta el amanecer": until when is not told. */
bool
lasts_until_untimed(const struct items *items)
{
    static const char times[] = " bedtime dinner dinnertime supper suppertime lunchtime sundown "
                                "sunset sunrise dawn dark daylight amanecer anochecer cena ";
    size_t at;

    for (at = 0; at < items->count; at++) {
        if (item_is(items, at, ITEM_UNTIL) &&
            (token_among(items->tokens, items->list[at].to, times) ||
             (token_among(items->tokens, items->list[at].to, " the el la ") &&
              token_among(items->tokens, items->list[at].to + 1, times)))) {
            return true;
        }
    }
    return false;
}
