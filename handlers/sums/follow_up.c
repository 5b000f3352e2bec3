/*
 * A text that goes on with what was worked out before: "and if she walks?", "I mean two full",
 * "make that 10", "no, I mean Tom". What it tells anew replaces what was told of the same kind,
 * everything else stays, and the sum is worked out again. Where it is not clear what is meant, it
 * is asked. A text with words of its own is none of these (follow_words.h).
 */
#include <string.h>

#include "estimate_parts.h"
#include "follow_take.h"
#include "memory.h"
#include "steps.h"
#include "sum_parts.h"

enum { FOLLOWS_S = 30 * 60, MINUTE_S = 60, THOUSAND = 1000 };

/* One text that goes on, on its way. */
struct follow {
    const struct asked *whole;
    const struct last_answer *last;
    struct follow_words words;
    struct asked before; /* the words of then */
    struct told told;    /* what is worked with */
    enum told_thing newest;
    const struct rental *other; /* it names another rental than it was about; or NULL */
};

/* ---- what it is about ------------------------------------------------------------------------ */

static const char *
lead_of(enum told_kind kind, enum language language)
{
    static const char *const leads[][LANGUAGE_COUNT] = {
        [TOLD_HOURS_LEFT] = {"batteries:", "baterias:"},
        [TOLD_BATTERY_LIFE] = {"batteries:", "baterias:"},
        [TOLD_CHARGING] = {"charging: batteries", "cargar: baterias"},
        [TOLD_TRIP] = {"trip:", "viaje:"},
        [TOLD_FLIGHT] = {"flight of", "vuelo de"},
        [TOLD_CYLINDER] = {"cylinder", "cilindro"}};

    return leads[kind][language];
}

static bool
is_cylinder(const struct last_answer *last)
{
    return last->is_sum && last->told.kind == TOLD_CYLINDER;
}

static bool
can_go_on(const struct asked *whole, const struct verdict *verdict)
{
    const struct conversation *conversation = &whole->context->conversation;
    enum open_question open = asked_open_question(whole);
    /* who breathes from a cylinder looks at its gauge for hours */
    int64_t follows_s =
        is_cylinder(&conversation->last) ? whole->context->house->conversation_s : FOLLOWS_S;

    return verdict->answer_count == 0 && conversation->last.at_utc_s > 0 &&
           whole->context->now_utc_s - conversation->last.at_utc_s <= follows_s &&
           (open == QUESTION_NONE || open == QUESTION_PLUG) && whole->context->role != SENDER_STAFF;
}

/* The last word of the text, over signs; tokens.count if there is none. */
static size_t
last_word(const struct tokens *tokens)
{
    size_t at = tokens->count;

    while (at > 0) {
        if (tokens->list[--at].kind == TOKEN_WORD) {
            return at;
        }
    }
    return tokens->count;
}

static bool
is_name(const struct asked *whole, size_t at, const char *name)
{
    struct tokens words;
    size_t length;

    if (name == NULL || at >= whole->tokens.count) {
        return false;
    }
    words = tokens_read(whole->arena, name);
    length = words.count == 0 ? 0 : strlen(words.list[0].text);
    return length > 0 && strncmp(whole->tokens.list[at].text, words.list[0].text, length) == 0 &&
           (whole->tokens.list[at].text[length] == '\0' ||
            strcmp(whole->tokens.list[at].text + length, "s") == 0);
}

/* The active rental whose renter's name is the last word; NULL if it names none or several. */
static const struct rental *
named_last(const struct asked *whole, size_t at)
{
    const struct context *context = whole->context;
    const struct rental *named = NULL;
    size_t i;

    for (i = 0; i < context->rental_count; i++) {
        const struct rental *rental = &context->rentals[i];

        if (rental_is_active(rental) && is_name(whole, at, rental->first_name)) {
            if (named != NULL) {
                return NULL;
            }
            named = rental;
        }
    }
    return named;
}

static bool
is_same_rental(const struct rental *rental, const char *rental_id)
{
    return rental == NULL || rental_id == NULL ? (rental == NULL && rental_id == NULL)
                                               : strcmp(rental->rental_id, rental_id) == 0;
}

/* Whose batteries it is about now: false if that is neither the one of before nor one named. */
static bool
find_rental(struct follow *follow, const struct rental *named)
{
    follow->other = NULL;
    if (named != NULL && !is_same_rental(named, follow->last->rental_id)) {
        follow->other = named;
        return true;
    }
    return is_same_rental(follow->whole->rental, follow->last->rental_id);
}

/* ---- what it tells --------------------------------------------------------------------------- */

/* "And Tom?" asks what Tom has; "no, I mean Tom" tells that it was Tom's all along. */
static enum taken
take_other(struct follow *follow)
{
    if (follow->other == NULL) {
        return TAKEN_NOTHING;
    }
    if (!follow->words.corrects) {
        if (follow->told.kind != TOLD_HOURS_LEFT && follow->told.kind != TOLD_BATTERY_LIFE) {
            return TAKEN_NOTHING;
        }
        follow->told = (struct told){.kind = follow->told.kind};
    }
    return TAKEN;
}

static enum taken
take_read(struct follow *follow)
{
    const struct asked *whole = follow->whole;
    struct told answer, *told = &follow->told;
    enum told_thing newest;
    enum taken taken;

    told_read(
        whole->arena, whole->context->lexicon,
        memory_format(whole->arena, "%s %s", lead_of(told->kind, whole->language), whole->text),
        &answer);
    if (told_of_untold_number(&answer) && told_batteries(told) > 1) {
        told_read(whole->arena, whole->context->lexicon,
                  memory_format(whole->arena, "%s %s. %d %s", lead_of(told->kind, whole->language),
                                whole->text, told_batteries(told),
                                whole->language == LANGUAGE_ES ? "baterias" : "batteries"),
                  &answer); /* "4 lights each": of as many as there were */
    }
    if (answer.impossible) {
        return TAKEN_NOTHING;
    }
    taken = follow_take_told(&follow->words, &answer, told);
    if (told->kind == TOLD_CYLINDER && sum_take_cylinder(whole, &follow->before, &answer, told)) {
        taken = TAKEN;
    }
    if (told->kind == TOLD_CHARGING && taken == TAKEN_NOTHING &&
        sum_take_ready_by(whole, &follow->before, &answer, told)) {
        taken = TAKEN;
    }
    newest = follow_words_newest(&whole->tokens, &answer);
    follow->newest = newest == THING_NONE ? follow->newest : newest;
    return taken;
}

/* "Marca 400", "200 and nobody has come": the gauge again, lower than before and no flow. */
static enum taken
take_gauge(struct follow *follow)
{
    enum { LEAST_GAUGE = 50 };
    int gauge = follow->words.thousandths / THOUSAND;

    if (follow->words.numbers != 1 || follow->words.person || follow->words.adds ||
        gauge < LEAST_GAUGE || follow->told.psi <= 0 || gauge > follow->told.psi) {
        return TAKEN_NOTHING;
    }
    follow->told.psi = gauge;
    follow->newest = THING_CYLINDER;
    return TAKEN;
}

static enum taken
take_told(struct follow *follow)
{
    enum taken other = take_other(follow), taken;
    bool goes_on = follow->words.corrects || follow->words.goes_on;

    if (goes_on && follow->words.numbers == 1 && !follow->words.has_thing && !follow->words.adds &&
        !follow->words.of_one) {
        if (follow->words.person) {
            return TAKEN_NOTHING; /* "and she is at 88" */
        }
        taken = follow_take_number(&follow->words, follow->last->newest, &follow->told,
                                   &follow->newest);
    } else if (goes_on || follow->told.kind == TOLD_CYLINDER) {
        taken = take_read(follow);
    } else {
        taken = TAKEN_NOTHING;
    }
    if (taken == TAKEN_NOTHING && follow->told.kind == TOLD_CYLINDER) {
        taken = take_gauge(follow);
    }
    return taken > other ? taken : other;
}

/* ---- working it out -------------------------------------------------------------------------- */

static int
lasts_low(const struct follow *follow, const struct told *told)
{
    const struct asked *before = &follow->before;
    struct running running = {.figure = NULL};

    if (before->rental != NULL) {
        running = running_now(before->rental, before->equipment, told);
    }
    return running.figure == NULL ? 0 : running.figure->lasts.low;
}

/*
 * Since the charges were told they were used as was told then: where it lasts longer now, the
 * minutes that are gone are more of the new ones.
 */
static int64_t
wrote_as_used(const struct follow *follow)
{
    int was = lasts_low(follow, &follow->last->told), is = lasts_low(follow, &follow->told);
    int64_t now_utc_s = follow->whole->context->now_utc_s, wrote = follow->last->wrote_utc_s;
    int64_t elapsed_s = now_utc_s - wrote + follow->told.since_min * (int64_t)MINUTE_S;

    if (follow->words.is_now) {
        return follow->whole->wrote_utc_s;
    }
    if (follow->told.kind != TOLD_HOURS_LEFT || follow->other != NULL || was <= 0 || is <= was ||
        elapsed_s <= 0) {
        return wrote;
    }
    return wrote - (elapsed_s * (is - was) + was - 1) / was;
}

static bool
work_out(const struct asked *after, struct verdict *verdict, const struct told *told)
{
    switch (told->kind) {
    case TOLD_HOURS_LEFT:
        estimate_hours_left(after, verdict, told);
        return true;
    case TOLD_BATTERY_LIFE:
        return estimate_battery_life(after, verdict, told);
    case TOLD_TRIP:
        return estimate_trip(after, verdict, told);
    case TOLD_CHARGING:
        return estimate_charging(after, verdict, told);
    case TOLD_FLIGHT:
        return estimate_flight(after, verdict, told);
    case TOLD_CYLINDER:
        estimate_cylinder(after, verdict, told);
        return true;
    case TOLD_NOTHING:
    case TOLD_WATCH:
        break;
    }
    return false;
}

/*
 * "And if she walks?" only supposes: what we asked of how it is stays open, and its answer is due
 * when it was. So it is after a correction, if that leaves it open.
 */
static void
keep_plug_open(const struct follow *follow, struct verdict *verdict)
{
    const struct asked *whole = follow->whole;
    const struct conversation *was = &whole->context->conversation;
    struct conversation *now = &verdict->conversation;

    if (asked_open_question(whole) != QUESTION_PLUG) {
        return;
    }
    if (now->question == QUESTION_NONE && !follow->words.corrects && !plug_is_missing(verdict)) {
        now->question = QUESTION_PLUG;
        now->asked_about = was->asked_about;
        plug_ask_again(whole, verdict);
    }
    if (now->question == QUESTION_PLUG) {
        now->asked_utc_s = was->asked_utc_s;
    }
}

/*
 * "And at 1?": of a setting that is not ordered no time is told as a way to last longer; it is
 * worked out as ordered, and said so. True if it was so.
 */
static bool
leave_as_ordered(struct follow *follow, struct running *supposed)
{
    const struct asked *before = &follow->before;
    struct told *told = &follow->told;

    if (follow->words.corrects || before->rental == NULL ||
        (told->kind != TOLD_HOURS_LEFT && told->kind != TOLD_TRIP) ||
        (told->has_mode == follow->last->told.has_mode &&
         told->has_setting == follow->last->told.has_setting &&
         told->setting_tenths == follow->last->told.setting_tenths)) {
        return false;
    }
    *supposed = running_now(before->rental, before->equipment, told);
    if (supposed->is != RUNNING_DIFFERS) {
        return false;
    }
    told->has_mode = told->has_setting = false;
    return true;
}

static bool
answer_again(struct follow *follow, struct verdict *verdict)
{
    const struct asked *whole = follow->whole;
    struct last_answer *last = &verdict->conversation.last;
    struct asked after = follow->before;
    struct running supposed;
    bool only_supposes;

    after.wrote_utc_s = wrote_as_used(follow);
    after.tokens =
        tokens_read(whole->arena, memory_format(whole->arena, "%s. %s", after.text, whole->text));
    only_supposes = leave_as_ordered(follow, &supposed);
    if (!work_out(&after, verdict, &follow->told)) {
        return false;
    }
    if (only_supposes && verdict->answer_count > 0) {
        struct answer *answer = &verdict->answers[verdict->answer_count - 1];

        answer->text = memory_format(whole->arena, "%s %s", answer->text,
                                     estimate_record_says(&after, &supposed));
    }
    if (follow->other != NULL) {
        verdict->conversation.rental_id = follow->other->rental_id;
        verdict->rental_id = follow->other->rental_id;
        verdict->rental_digest = follow->other->digest;
    }
    keep_plug_open(follow, verdict);
    last->goes_on = true;
    last->wrote_utc_s = after.wrote_utc_s;
    last->newest = follow->newest;
    return true;
}

static bool
ask_which(const struct follow *follow, struct verdict *verdict)
{
    const struct asked *before = &follow->before;
    bool is_trip = follow->told.kind == TOLD_TRIP;

    if (follow->told.kind == TOLD_CYLINDER) {
        return false;
    }
    if (follow->words.corrects) {
        estimate_forget(follow->whole, verdict);
    }
    estimate_ask_back(before, verdict, &follow->told,
                      is_trip                              ? "drive-trip"
                      : follow->told.kind == TOLD_CHARGING ? "charge-time"
                                                           : "hours-left",
                      estimate_say(before, is_trip ? SAY_TRIP_ASK_LENGTH : SAY_WHICH_CHARGE, ""));
    return true;
}

/* What stands beside the gauge of a cylinder that somebody waits with. */
static const char nobody_comes[] =
    "nobody has come|no one has come|nobody came|no one came|nobody is here|no one is here|"
    "nobody here yet|nobody yet|no one yet|still nobody|still no one|still waiting|still here|"
    "and falling|and dropping|going down|it says|it reads|is at|psi|"
    "nadie llega|no llega nadie|nadie ha llegado|nadie viene|nadie ha venido|no viene nadie|"
    "no han llegado|no llegan|todavia nadie|seguimos esperando|y bajando|va en|va bajando|ya va|ya "
    "marca|marca|psi|libras";

/* "No, I mean my mother's": of several rentals, which? */
static bool
names_by_kin(const struct asked *whole, size_t at)
{
    return whole->context->rental_count > 1 &&
           token_among(&whole->tokens, at,
                       " mine his hers other mom moms mother mothers dad dads father fathers wife "
                       "wifes husband husbands mama papa madre padre esposa esposo otra otro mia ");
}

static bool
begin(struct follow *follow, const struct asked *whole, const struct verdict *verdict)
{
    const struct conversation *conversation = &whole->context->conversation;

    *follow = (struct follow){.whole = whole, .last = &conversation->last};
    if (!can_go_on(whole, verdict) || !follow->last->is_sum || conversation->asked_about == NULL) {
        return false;
    }
    follow->told = follow->last->told;
    follow->newest = follow->last->newest;
    follow->before =
        asked_question(whole, conversation->asked_about, conversation->last.wrote_utc_s);
    return true;
}

bool
follow_up_decide(const struct asked *whole, struct verdict *verdict)
{
    size_t at = last_word(&whole->tokens);
    const struct rental *named = named_last(whole, at);
    struct tokens tokens = whole->tokens;
    struct follow follow;
    bool kin;

    if (!begin(&follow, whole, verdict)) {
        return false;
    }
    if (is_cylinder(follow.last) && named == NULL) {
        tokens = tokens_without(whole->arena, &whole->tokens, nobody_comes);
        at = tokens.count;
    }
    kin = named == NULL && names_by_kin(whole, at);
    if (!follow_words_read(whole->context->lexicon, whole->language, &tokens,
                           named != NULL || kin ? at : tokens.count, &follow.words) ||
        (follow.words.denies && !follow.words.corrects)) {
        return false;
    }
    if (kin && follow.words.corrects) {
        open_question_which_rental(&follow.before, verdict, "hours-left");
        return true;
    }
    if (!find_rental(&follow, named)) {
        return false;
    }
    if (follow.other != NULL) {
        asked_choose_rental(&follow.before, follow.other);
    }
    switch (take_told(&follow)) {
    case TAKEN_NOTHING:
        return false;
    case TAKEN_UNSURE:
        return ask_which(&follow, verdict);
    case TAKEN:
        break;
    }
    return answer_again(&follow, verdict);
}
