/*
 * A battery that misbehaves: it is empty long before it should be ("drained in half an hour",
 * "solo me dura 15 minutos"). Nobody is told how long it lasts then: a person must see to it.
 *
 * Short is what is less than any battery that is still rented out lasts: the low end of a new one
 * at the most draining order, at the health at which one is retired; or less than that share of
 * what the text itself says it lasted before.
 */
#include <string.h>

#include "amounts.h"
#include "cold.h"
#include "items.h"
#include "memory.h"
#include "running.h"
#include "say.h"
#include "steps.h"
#include "told.h"

enum { MUCH_LESS = 75, LOOK_BACK = 6, NEARLY_FULL = 80 };

static const char of_battery[] =
    " battery batteries batt batts bat bats pack packs bateria baterias pila pilas ";
static const char as_it[] = "it * last|it * lasts|it * lasted|it * holds|it * lasting|they * last|"
                            "they * lasted|it * dies|it * died|me dura|me duran|me duro|"
                            "nos dura|me aguanta|me aguantan";
static const char other_machines[] =
    "phone|cell|laptop|tablet|watch|hearing aid|flashlight|camera|remote|scooter|telefono|celular|"
    "audifono|linterna|camara|movie|show|meeting|trip|flight";
static const char emptied[] =
    " drained drain drains dead died dies dying die empty empties emptied flat gone out discharged "
    "discharges drops dropped finished depleted acaba acabo acaban agota agoto agotan descarga "
    "descargo descargan vacia vacio vacian muere murio mueren gasta gasto gastan baja bajo ";
static const char within[] = " in after within under inside en dentro tras a despues ";
static const char lasts[] = " last lasts lasted lasting hold holds held run runs ran going go got "
                            "get gets give gives gave dura duran duro duraron aguanta aguanto "
                            "aguantan rinde rindio da dio ";
static const char no_more[] =
    " only just barely hardly merely even not doesnt dont didnt wont isnt solo solamente apenas "
    "nomas ni no casi ";
static const char before[] = " used before instead normally usually solia solian antes vez lugar ";
/* What will be, or is only asked or wished, is no trouble that is told. */
static const char supposed[] =
    " if will would when until till before can could may might going should need needs want how "
    "si cuando hasta puede va cuanto quiero necesito debe supposed ";

static bool
has_before(const struct items *items, size_t at, size_t from, const char *words)
{
    size_t token = items->list[at].from;

    while (token > from && items->list[at].from - token < LOOK_BACK) {
        token--;
        if (token_among(items->tokens, token, words)) {
            return true;
        }
    }
    return false;
}

/* "How come it dies in", "why does it only last", "it will only last 10 min now": a complaint, in
 * words of a question or of what will be. */
static const char complains[] = "how come|why|por que|como es que|will only last|can only last|"
                                "would only last|will only hold|will only run";

static bool
is_supposed(const struct items *items, size_t at, size_t clause)
{
    return has_before(items, at, clause, supposed) && !tokens_have(items->tokens, complains);
}

/*
 * "Drained in", "is dead after", "only lasts", "no dura ni": told of the duration at `at`; or
 * "lasts" and no more, if it is much less than `expected` minutes.
 */
static bool
is_told_short(const struct items *items, size_t at, int expected)
{
    enum { MUCH = 3 };
    size_t clause = items->list[sentence_start(items, at)].from, last = items->list[at].from;

    if (is_supposed(items, at, clause)) {
        return false;
    }
    if (has_before(items, at, clause, lasts) && (has_before(items, at, clause, no_more) ||
                                                 (has_before(items, at, clause, of_battery) &&
                                                  duration_minutes(items, at) * MUCH < expected))) {
        return true;
    }
    return has_before(items, at, clause, emptied) && last >= 2 &&
           (token_among(items->tokens, last - 1, within) ||
            token_among(items->tokens, last - 2, within));
}

/* "That used to last 2 hours": what it lasted, 0 if not told. */
static int
minutes_before(const struct items *items)
{
    size_t i;

    for (i = 0; i < items->count; i++) {
        size_t sentence = items->list[sentence_start(items, i)].from;

        if (item_is_duration(items, i) && has_before(items, i, sentence, before)) {
            return duration_minutes(items, i);
        }
    }
    return 0;
}

/* The shortest that a battery of this unit may last, as long as it is one to rent out. */
static int
least_minutes(const struct run_time *figure, const struct equipment *unit, const struct told *told)
{
    int celsius, share = 100;

    if (cold_told(told, &celsius) && !cold_share(unit, celsius, &share)) {
        return 0; /* how much of it is the cold's is not known */
    }
    return figure->lasts.low * unit->retirement_health / 100 * share / 100;
}

static int
of_rental(const struct asked *asked, const struct rental *rental)
{
    const struct equipment *unit =
        rental->unit == NULL ? NULL : kb_equipment(asked->context->kb, rental->unit);
    struct running running = running_now(rental, unit, asked->told);

    return unit == NULL || running.figure == NULL
               ? 0
               : least_minutes(running.figure, unit, asked->told);
}

/* Of a unit that we do not know: what some unit of the house lasts at its most draining. */
static int
of_any_unit(const struct asked *asked)
{
    const struct equipment *const *all;
    size_t count, i, j;
    int most = 0;

    all = kb_equipment_all(asked->context->kb, &count);
    for (i = 0; i < count; i++) {
        int least = 0;

        for (j = 0; j < all[i]->run_time_count; j++) {
            int minutes = least_minutes(&all[i]->run_times[j], all[i], asked->told);

            least = j == 0 || minutes < least ? minutes : least;
        }
        most = least > most ? least : most;
    }
    return most;
}

/* Of several rentals on this phone, the longer: a person looks which one it is. */
static int
least_expected(const struct asked *asked)
{
    const struct context *context = asked->context;
    int most = 0;
    size_t i;

    if (asked->rental != NULL) {
        return of_rental(asked, asked->rental);
    }
    for (i = 0; i < context->rental_count; i++) {
        int minutes =
            rental_is_active(&context->rentals[i]) ? of_rental(asked, &context->rentals[i]) : 0;

        most = minutes > most ? minutes : most;
    }
    return most > 0 ? most : of_any_unit(asked);
}

/* A charge is told that it started from, and it was not full. */
static bool
was_half_empty(const struct told *told)
{
    size_t i;

    for (i = 0; i < told->charge_count; i++) {
        if (told->charges[i].high > 0 && told->charges[i].low < NEARLY_FULL) {
            return true;
        }
    }
    return told->light_count > 0;
}

/* Of a battery of ours, by its name or as "it". */
static bool
speaks_of_battery(const struct tokens *tokens)
{
    return !tokens_have(tokens, other_machines) &&
           (tokens_any_among(tokens, 0, of_battery) || tokens_have(tokens, as_it));
}

static bool
is_told_by(const struct asked *asked, const struct tokens *tokens, const struct told *told)
{
    bool is_short = false;
    struct items items;
    int expected, earlier;
    size_t i;

    if (!speaks_of_battery(tokens) || was_half_empty(told)) {
        return false;
    }
    items = items_read(asked->arena, asked->context->lexicon, tokens, asked->language);
    amounts_make(&items);
    earlier = minutes_before(&items) * MUCH_LESS / 100;
    expected = least_expected(asked);
    expected = earlier > expected ? earlier : expected;
    for (i = 0; i < items.count && !is_short; i++) {
        is_short = item_is_duration(&items, i) && is_told_short(&items, i, expected) &&
                   duration_minutes(&items, i) < expected;
    }
    return is_short;
}

bool
weak_battery_told(const struct asked *asked)
{
    return is_told_by(asked, &asked->tokens, asked->told);
}

bool
weak_battery_in_message(const struct asked *asked)
{
    struct tokens all;

    if (weak_battery_told(asked)) {
        return true;
    }
    if (!asked_in_message(asked) || strcmp(asked->text, asked->message->text) == 0) {
        return false;
    }
    all = tokens_read(asked->arena, asked->message->text);
    return is_told_by(asked, &all, asked->message_told);
}

/* There is no other battery: by the record, or as they say. */
static bool
is_last(const struct asked *asked)
{
    return (asked->rental != NULL && asked->rental->battery_count == 1) ||
           tokens_have(&asked->tokens,
                       "only battery|only one battery|last battery|last one|no spare|no other|"
                       "no more batteries|both batteries|both of them|all batteries|"
                       "all of them|the other one too|unica bateria|unica pila|ultima bateria|"
                       "ultima pila|no tengo otra|las dos|ambas|todas");
}

bool
weak_battery_decide(const struct asked *asked, struct verdict *verdict)
{
    const struct house *house = asked->context->house;
    enum trouble trouble = equipment_trouble_told(asked);

    if (!weak_battery_told(asked) || trouble == TROUBLE_DANGER || trouble == TROUBLE_STOPPED) {
        return false;
    }
    verdict_add(verdict, ANSWER_OFFICE, ROUTE_EQUIPMENT, "weak-battery")->text =
        say(asked->arena, house, asked->language, SAY_WEAK_BATTERY, NULL);
    if (is_last(asked)) {
        verdict_alert(verdict, ALERT_URGENT, true, "trouble:last-battery", "last battery fails");
    } else {
        verdict_alert(verdict, ALERT_OFFICE, false, "trouble:weak-battery", "battery short");
    }
    (void)reminder_decide(asked, verdict); /* "..., remind me at 9 to call" */
    return true;
}
