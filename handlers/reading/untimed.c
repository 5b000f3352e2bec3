#include "untimed.h"

/* "when the nurse comes", "cuando lleguen mis nietos" */
static bool
is_when_somebody_comes(const struct items *items)
{
    static const char comes[] = " comes come arrives arrive gets get shows show stops swings "
                                "llegue lleguen llega llegan venga vengan viene vienen pase pasen ";
    static const char whose[] = " the my our his her a they he she mis mi el la los las su nuestra "
                                "nuestro ";
    const struct tokens *tokens = items->tokens;
    size_t when, i;

    for (when = 0; when < tokens->count; when++) {
        bool spanish = token_is(tokens, when, "cuando");

        if ((!spanish && !token_is(tokens, when, "when") &&
             !(token_is(tokens, when, "time") &&
               tokens_phrase_at(tokens, tokens_back(when, 2), "by the time") == 3)) ||
            !(token_among(tokens, when + 1, whose) || spanish)) {
            continue;
        }
        for (i = when + 1; i < when + 5; i++) {
            if (token_among(tokens, i, comes) &&
                (spanish || i > when + 2 || token_among(tokens, when + 1, " they he she "))) {
                return !token_among(tokens, i + 1, " low full to at a dead ");
            }
        }
    }
    return false;
}

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

    if (lexicon_cue(items->tokens, CUE_READY_UNTIMED) || is_when_somebody_comes(items)) {
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

/* "spending the day at the zoo", "an afternoon at the gardens", "todo el dia en el rancho": how
 * long that is, nobody tells. */
bool
spends_part_of_day(const struct items *items)
{
    static const char parts[] =
        "the day|the afternoon|the morning|the evening|el dia|la tarde|la manana";
    static const char whole[] = "all day|a day|whole day|full day|entire day|all afternoon|an "
                                "afternoon|whole afternoon|all "
                                "morning|a morning|whole morning|all evening|an evening|whole "
                                "evening|todo el dia|un dia|el "
                                "dia entero|toda la tarde|una tarde|toda la manana|una manana";
    const struct tokens *tokens = items->tokens;
    size_t at, after;

    for (at = 0; at < items->count; at++) {
        if (items->list[at].is == ITEM_CLOCK || item_in(items, at, UNIT_MINUTE)) {
            return false;
        }
    }
    for (at = 0; at < tokens->count; at++) {
        bool spent = at > 0 && token_among(tokens, at - 1,
                                           " spend spending spent pass passing stay staying pasar "
                                           "paso pasamos pasaremos pasando pasemos ");

        after = at + tokens_phrase_at(tokens, at, whole);
        if (after > at &&
            (spent || (token_among(tokens, after, " at in on with en ") &&
                       token_among(tokens, after + 1, " the my our a his her el la mi un una ")))) {
            return true;
        }
        if (spent && tokens_phrase_at(tokens, at, parts) > 0) {
            return true;
        }
    }
    return false;
}
