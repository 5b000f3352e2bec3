/*
 * Which battery question is asked, if any. The search of the kb knows the ways of asking; what the
 * text tells of charges settles what the search leaves open ("2 full and one half").
 */
#include "estimate.h"

#include <string.h>

#include "bare_charge.h"
#include "memory.h"
#include "steps.h"

enum power_question { POWER_NONE, POWER_HOURS_LEFT, POWER_BATTERY_LIFE };

static const char how_long[] = "how long|how much longer|how much time|how many hours|"
                               "how many minutes|how many hrs|will it last|will they last|"
                               "will this last|will that last|hours left|time left|hrs left|"
                               "cuanto * dura|cuanto * duran|cuanto * queda|cuantas horas|"
                               "cuanto tiempo|me alcanza";
static const char from_now[] = "left|now|still|remaining|until|till|queda|quedan|ahora|todavia";

/* How long something else takes: charging, the rental. */
static const char other_times[] = "charge|charging|charged|recharge|fill|due|rent|rental|keep|"
                                  "return|bring|stay|deliver|start|cargar|carga|renta|devolver";

/* A number by itself may as well be an oximeter's or an order's: a person reads those. */
static const char of_batteries[] =
    "battery|batteries|batt|batts|bats|pack|packs|spare|unplugged|charged|full|dead|empty|"
    "bateria|baterias|pila|pilas|llena|llenas|vacia|vacias|muerta|muertas|desconectada|"
    "completa|completas";

static bool
speaks_of_battery(const struct asked *asked, const struct told *told)
{
    return told->light_count > 0 || tokens_have(&asked->tokens, of_batteries) ||
           tokens_have(&asked->tokens, how_long) ||
           (tokens_have(&asked->tokens, "%|percent|por ciento") &&
            (told->has_mode || told->has_setting));
}

static bool
waits_for_oxygen(const struct asked *asked)
{
    return asked_open_question(asked) == QUESTION_FLOWING;
}

static enum power_question
question_named(const struct topic_match *match)
{
    if (strcmp(match->topic->id, "hours-left") == 0) {
        return POWER_HOURS_LEFT;
    }
    return strcmp(match->topic->id, "battery-life") == 0 ? POWER_BATTERY_LIFE : POWER_NONE;
}

static enum power_question
between_two(const struct asked *asked, bool has_charge)
{
    enum power_question first = question_named(&asked->search.best[0]);
    enum power_question second =
        asked->search.count > 1 ? question_named(&asked->search.best[1]) : POWER_NONE;

    if (first != POWER_NONE && second != POWER_NONE) {
        return has_charge || tokens_have(&asked->tokens, from_now) ? POWER_HOURS_LEFT
                                                                   : POWER_BATTERY_LIFE;
    }
    if (has_charge && (first == POWER_HOURS_LEFT || second == POWER_HOURS_LEFT)) {
        return POWER_HOURS_LEFT;
    }
    return POWER_NONE;
}

/* "2 full, one half" and no question: the page on reading gauges is near, but they have read them;
 * "changed batteries, all full": so is that on changing them, which they have done. */
static bool
only_tells_charges(const struct asked *asked, const struct told *told)
{
    const char *topic = asked->search.best[0].topic->id;

    return told->kind == TOLD_HOURS_LEFT &&
           (told_has_charge(told) || told_of_untold_number(told)) &&
           (strcmp(topic, "charge-level") == 0 || strcmp(topic, "swap-battery") == 0) &&
           !tokens_have(&asked->tokens,
                        "?|how|what|why|which|where|does|do|can|mean|means|como|que|"
                        "cual|donde|puedo|significa");
}

static enum power_question
what_is_asked(const struct asked *asked, const struct told *told)
{
    bool has_charge = told_has_charge(told);
    bool remembered = asked->account != NULL && asked->account->known;
    bool is_sure = asked->search.count > 0 && asked->search.sureness == SURE;
    enum power_question question = is_sure ? question_named(&asked->search.best[0]) : POWER_NONE;

    if (bare_charge_is_told(asked)) {
        return POWER_HOURS_LEFT;
    }
    if (question == POWER_NONE && (has_charge || remembered || waits_for_oxygen(asked)) &&
        tokens_have(&asked->tokens, how_long) && !tokens_have(&asked->tokens, other_times)) {
        question = POWER_HOURS_LEFT; /* whatever page is nearest: it is the hours that matter */
    }
    if (question == POWER_BATTERY_LIFE && told->kind == TOLD_HOURS_LEFT &&
        (has_charge || told_of_untold_number(told))) {
        return POWER_HOURS_LEFT; /* "both full, going to sleep, how long": theirs, from now */
    }
    if (is_sure) {
        return question == POWER_NONE && only_tells_charges(asked, told) ? POWER_HOURS_LEFT
                                                                         : question;
    }
    if (question == POWER_NONE && asked->search.sureness == BETWEEN_TWO) {
        question = between_two(asked, has_charge);
    }
    if (question == POWER_NONE && asked->search.sureness == UNSURE &&
        (has_charge || told->impossible) && speaks_of_battery(asked, told)) {
        question = POWER_HOURS_LEFT; /* charges and nothing else: they want to know how long */
    }
    return question;
}

/* It was worked out for an earlier question of this text. */
static bool
is_answered(const struct verdict *verdict, const char *id)
{
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        const struct answer *answer = &verdict->answers[i];

        if (answer->kind == ANSWER_ESTIMATE && strcmp(answer->id, id) == 0) {
            return true;
        }
    }
    return false;
}

/*
 * What the question tells, and if it tells no charge what the whole text does ("How long do I have?
 * 2 full, 1 half"). A question asked earlier is read by itself.
 */
static void
read_asked(const struct asked *asked, struct told *told)
{
    const struct told *whole = asked->message_told;

    *told = *asked->told;
    if (told_has_charge(told) || told->impossible || !asked_in_message(asked)) {
        return;
    }
    if ((whole->kind == TOLD_HOURS_LEFT || whole->kind == TOLD_TRIP) && told_has_charge(whole) &&
        !whole->impossible) {
        *told = *whole;
    }
}

bool
power_asks_how_long(const struct asked *asked)
{
    return told_has_charge(asked->told) && !asked->told->may_be_of_body &&
           tokens_have(&asked->tokens, how_long);
}

bool
power_decide(const struct asked *asked, struct verdict *verdict)
{
    const struct topic *topic;
    struct told told;

    if (weak_battery_in_message(asked)) {
        return false;
    }
    read_asked(asked, &told);
    if (told.impossible && told.kind != TOLD_NOTHING) {
        estimate_impossible(asked, verdict, &told);
        return true;
    }
    if ((told.kind == TOLD_TRIP && is_answered(verdict, "drive-trip")) ||
        estimate_trip(asked, verdict, &told)) {
        return true;
    }
    switch (what_is_asked(asked, &told)) {
    case POWER_HOURS_LEFT:
        if (is_answered(verdict, "hours-left") && told.kind == TOLD_HOURS_LEFT) {
            return true;
        }
        estimate_hours_left(asked, verdict, &told);
        return true;
    case POWER_BATTERY_LIFE:
        if (asked->which_rental) {
            open_question_which_rental(asked, verdict, "battery-life");
            return true;
        }
        if (estimate_battery_life(asked, verdict, &told)) {
            return true;
        }
        topic = kb_topic(asked->context->kb, "battery-life", asked->language);
        if (topic == NULL) {
            return false;
        }
        topics_answer(asked, verdict, topic);
        verdict->answers[verdict->answer_count - 1].read =
            memory_must(talloc_memdup(asked->arena, &told, sizeof told));
        return true;
    case POWER_NONE:
        break;
    }
    return false;
}

void
power_keep_reading(const struct asked *whole, struct verdict *verdict)
{
    const struct told *told = whole->told;

    if (told->kind != TOLD_NOTHING && verdict->answer_count > 0 &&
        whole->context->role != SENDER_STAFF) {
        verdict->answers[0].read = told;
    }
}
