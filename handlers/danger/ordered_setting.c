#include "ordered_setting.h"

#include "steps.h"

/* The order itself, by its names. */
static const char own_order[] =
    "whats my setting|what is my setting|whats my number|what is my number|whats my flow|"
    "what is my flow|whats my order|what is my order|my prescribed setting|my ordered setting|"
    "what setting am i|what number am i|what liter am i|what liters am i|what flow am i|"
    "which setting am i|which number am i|how many liters am i|what setting is he supposed|"
    "what setting is she supposed|what setting was i|what setting did * order|"
    "what number did * order|what did * dr order|what did * doctor order|what did * order for|"
    "what was ordered|what is ordered|whats ordered|what am i ordered|what am i prescribed|"
    "what was i prescribed|supposed to have it on|supposed to be on|supposed to run on|"
    "supposed to set it|supposed to be set|what should mine be|what should it be on|"
    "what should it be set|what should i have it on|what should i have it set|"
    "what setting should it be|which setting for|what setting for|"
    "what setting do i|which setting do i|"
    "cual es mi numero|cual es mi flujo|cual es mi nivel|cual es mi ajuste|cual es mi orden|"
    "cual es mi receta|en que numero|a que numero|que numero me toca|que numero debo|"
    "que flujo me toca|que nivel me toca|en que nivel|a cuanto lo pongo|en cuanto lo pongo|"
    "en cuanto lo debo|en cuanto debo ponerlo|a cuanto debo|en cuanto me lo|cuantos litros me "
    "tocan|"
    "que me ordenaron|que me recetaron|que me receto|que ordeno el|que receto el";
/* So it begins, or leave is asked for. */
static const char asks[] = "?|what|whats|which|how many|que|cual|en cuanto|a cuanto|cuantos|a que|"
                           "en que";
static const char asks_leave[] =
    "can|may|ok|okay|should|right|correct|allowed|fine|do i|puedo|puede|esta bien|debo|se puede|"
    "correcto|va en|lo pongo";
/* Nothing else may stand beside it: any other word may be a reason to want another, or tell of
 * something else altogether ("a que numero llamo"). */
static const char around[] =
    " a an the my our his her for at to in on it its me i im we he she am is are be was do does "
    "did "
    "should can may use put set have run using setting set settings number flow order orders "
    "ordered prescribed prescription doctor dr doc liter liters litre litres lpm l pulse pulsed "
    "continuous mode when while during around ok okay right correct allowed fine supposed what "
    "whats which how many and or again please pls thanks thank you hi hello hey so now just "
    "el la los las lo un una mi mis su de del para por en a al con que cual es soy estoy me le se "
    "debo puedo puede poner ponerlo pongo pone ponga usar usarlo uso numero nivel flujo ajuste "
    "orden receta doctor doctora medico litro litros pulso continuo modo cuando mientras esta bien "
    "correcto va hola gracias favor y o toca tocan ordenaron recetaron receto ordeno cuantos "
    "cuanto "
    "? ! . , ";

static const char walks[] = " walk walking walks stroll strolling moving caminar caminando camino "
                            "camina ando andar ";
static const char sleeps[] = " sleep sleeping asleep night nights nighttime bed bedtime overnight "
                             "dormir durmiendo duermo noche noches ";
static const char rests[] = " rest resting sit sitting seated reposo sentado sentada descanso "
                            "descansar descansando ";

static bool
has_orders(const struct asked *asked)
{
    int i;

    for (i = 0; asked->rental != NULL && i < ACTIVITY_COUNT; i++) {
        if (asked->rental->orders[i].known) {
            return true;
        }
    }
    return false;
}

/* The one activity that is spoken of; ACTIVITY_COUNT if there is none or are several. */
static enum activity
activity_of(const struct tokens *tokens)
{
    static const char *const words[] = {
        [ACTIVITY_REST] = rests, [ACTIVITY_WALKING] = walks, [ACTIVITY_SLEEP] = sleeps};
    enum activity activity, found = ACTIVITY_COUNT;

    for (activity = ACTIVITY_REST; activity <= ACTIVITY_SLEEP; activity++) {
        if (tokens_any_among(tokens, 0, words[activity])) {
            if (found != ACTIVITY_COUNT) {
                return ACTIVITY_COUNT;
            }
            found = activity;
        }
    }
    return found;
}

/* Numbers are told, and each is the one that is ordered. */
static bool
tells_only_number(const struct tokens *tokens, int tenths)
{
    enum { THOUSANDTHS_IN_TENTH = 100 };
    bool is_told = false;
    size_t i, taken;
    int thousandths;

    for (i = 0; i < tokens->count; i += taken) {
        taken = tokens_number(tokens, i, false, &thousandths);
        if (taken == 0) {
            taken = 1;
        } else if (thousandths != tenths * THOUSANDTHS_IN_TENTH) {
            return false;
        } else {
            is_told = true;
        }
    }
    return is_told;
}

static bool
tells_other_mode(const struct tokens *tokens, enum mode mode)
{
    static const char *const others[] = {
        [MODE_CONTINUOUS] = " pulse pulsed pulso ",
        [MODE_PULSE] = " continuous continuo continua constant steady liter liters litros litro "};

    return (size_t)mode < sizeof others / sizeof others[0] &&
           tokens_any_among(tokens, 0, others[mode]);
}

/* "Am i ok to use 3 when i walk", and that is the order for it. */
static bool
asks_leave_for_order(const struct asked *asked)
{
    const struct tokens *tokens = &asked->tokens;
    enum activity activity = activity_of(tokens);
    const struct order *order;

    if (activity == ACTIVITY_COUNT || !tokens_have(tokens, asks_leave)) {
        return false;
    }
    order = &asked->rental->orders[activity];
    return order->known && tells_only_number(tokens, order->setting_tenths) &&
           !tells_other_mode(tokens, order->mode);
}

/* No number, or it would be another's wish; the reply lists what is ordered. */
static bool
asks_what_is_ordered(const struct tokens *tokens)
{
    size_t i;
    int thousandths;

    for (i = 0; i < tokens->count; i++) {
        if (tokens_number(tokens, i, false, &thousandths) > 0) {
            return false;
        }
    }
    return tokens_have(tokens, own_order) && tokens_have(tokens, asks);
}

static bool
is_all_there_is(const struct tokens *tokens)
{
    static const char *const activities[] = {walks, sleeps, rests};
    size_t i, k;

    for (i = 0; i < tokens->count; i++) {
        bool is_of_it = tokens->list[i].kind == TOKEN_NUMBER || token_among(tokens, i, around);

        for (k = 0; k < sizeof activities / sizeof activities[0]; k++) {
            is_of_it = is_of_it || token_among(tokens, i, activities[k]);
        }
        if (!is_of_it) {
            return false;
        }
    }
    return true;
}

bool
ordered_setting_is_asked(const struct asked *asked)
{
    return asked->context->role != SENDER_STAFF && has_orders(asked) &&
           is_all_there_is(&asked->tokens) &&
           (asks_leave_for_order(asked) || asks_what_is_ordered(&asked->tokens));
}

bool
ordered_setting_decide(const struct asked *asked, struct verdict *verdict)
{
    const struct topic *topic = kb_topic(asked->context->kb, "change-mode", asked->language);

    if (topic == NULL || !ordered_setting_is_asked(asked)) {
        return false;
    }
    topics_answer(asked, verdict, topic);
    return true;
}
