/*
 * Texts that a renter asks for: when so little is left ("text me when 30 min are left"), or at a
 * time of their choice ("remind me to charge at 9 pm"). Set only when asked for, repeated back with
 * what was read, never an alarm. A watch goes by the low end of the hours left, which are said with
 * it; a newer charge ends it.
 */
#include <string.h>

#include "answered_time.h"
#include "estimate_parts.h"
#include "memory.h"
#include "parts.h"
#include "steps.h"
#include "when.h"

enum {
    DEFAULT_BEFORE_MIN = 30,
    BEFORE_MAX_MIN = 12 * 60,
    REMINDERS_MAX = 8,       /* of one phone */
    OFFER_FROM_MIN = 90,     /* with less left, there is a plug to be found */
    OFFER_PARTS = 2,         /* it is not worth a longer text */
    NIGHT_ENDS_HOUR = 5,     /* until then "tomorrow" may be after they have slept */
    SHORT_COMMAND_WORDS = 8, /* "please cancel all my reminders" */
    DAY_S = 86400
};

static const char id_reminder[] = "reminder";

static const char off_words[] = "cancel|stop|drop|no more|delete|end|turn off|dont need|cancela|"
                                "cancelar|quita|quitar|borra|ya no|no quiero";
static const char reminders[] = "reminder|reminders|aviso|avisos|recordatorio|recordatorios";

static const char remind_words[] = "remind me|remind us|reminder|recuerdame|recuerdeme|"
                                   "recordatorio|recuerdenme|recuerdanos|me recuerdas";
/* "Remind me how to ..." wants to know it now. */
static const char knows_not[] = "remind me how|remind me what|remind me which|remind me where|"
                                "remind me if|remind me why|remind me of|remind me again|"
                                "remind me who|recuerdame como|recuerdame que|recuerdame donde|"
                                "recuerdame cual|recuerdame cuanto";
/* What a person of the office does or knows. */
static const char other_matters[] = "deliver|delivery|delivered|delivers|driver|courier|pick up|"
                                    "picks up|pickup|refund|bill|ready to ship|ships|shipped|"
                                    "arrives|arrived|order is ready|open|office|entrega|chofer|"
                                    "recoger|oficina|llega|llegue";
static const char runs_out[] = "run out|runs out|running out|running low|runs low|gets low|is low|"
                               "getting low|almost out|about to die|before it dies|it dies|"
                               "nearly empty|almost empty|almost dead|is dying|low battery|"
                               "battery low|poca bateria|se acabe|se acabe|se acabe la bateria|"
                               "se apague|quede poco|se este acabando|se descargue";

/* ---- what is asked --------------------------------------------------------------------------- */

/* "REMIND 30", as it was offered; 0 if it is not that. */
static int
short_command(const struct tokens *tokens)
{
    int thousandths = 0;

    if (tokens->count != 2 ||
        !token_among(tokens, 0, " remind reminder aviso avisame recuerdame ") ||
        tokens_number(tokens, 1, false, &thousandths) != 1 || thousandths % 1000 != 0 ||
        thousandths < 5 * 1000 || thousandths > BEFORE_MAX_MIN * 1000) {
        return 0;
    }
    return thousandths / 1000;
}

/* The search knows a page for it that is not about batteries. */
static bool
is_of_another_page(const struct asked *asked)
{
    static const char *const ours[] = {"hours-left",   "battery-life", "charge-home",
                                       "charge-time",  "charge-level", "charge-car",
                                       "swap-battery", "drive-trip"};
    size_t i;

    if (asked->search.count == 0 || asked->search.sureness != SURE) {
        return false;
    }
    for (i = 0; i < sizeof ours / sizeof ours[0]; i++) {
        if (strcmp(asked->search.best[0].topic->id, ours[i]) == 0) {
            return false;
        }
    }
    return true;
}

enum wish { WISH_NONE, WISH_WATCH, WISH_AT, WISH_WHEN };

/* "Remind me in 2 hours": the clock of then. */
static bool
read_from_now(const struct asked *asked, struct told *told)
{
    int minutes = minutes_from_now(&asked->tokens);

    if (minutes == 0) {
        return false;
    }
    told->has_remind_at = true;
    told->has_day = true;
    answered_as_told(asked, asked->context->now_utc_s + minutes * INT64_C(60), &told->remind_at,
                     &told->day);
    return true;
}

static enum wish
wish_of(const struct asked *asked, struct told *told)
{
    const struct tokens *tokens = &asked->tokens;
    bool reminds = tokens_have(tokens, remind_words);

    if (told->kind != TOLD_WATCH || told->impossible || tokens_have(tokens, knows_not) ||
        (!reminds && tokens_have(tokens, other_matters))) {
        return WISH_NONE;
    }
    if (told->has_remind_at || ((reminds || !tokens_have(tokens, runs_out)) &&
                                told->remind_before_min == 0 && read_from_now(asked, told))) {
        return WISH_AT;
    }
    if (told->remind_before_min > 0) {
        return WISH_WATCH;
    }
    if (is_of_another_page(asked)) {
        return WISH_NONE;
    }
    if (tokens_have(tokens, runs_out)) {
        return WISH_WATCH;
    }
    return reminds || (told->missing & MISSING_AM_PM) != 0 ? WISH_WHEN : WISH_NONE;
}

/* The charges stand in another sentence of the same text. */
static void
take_charges(const struct asked *asked, struct told *told)
{
    struct told whole;
    int before_min = told->remind_before_min;

    if (told_has_charge(told) || !asked_in_message(asked)) {
        return;
    }
    told_read(asked->arena, asked->context->lexicon, asked->message->text, &whole);
    if (told_has_charge(&whole) && !whole.impossible) {
        *told = whole;
        told->kind = TOLD_WATCH;
        told->remind_before_min = before_min;
    }
}

/* ---- what is said ---------------------------------------------------------------------------- */

static void
add(const struct asked *asked, struct verdict *verdict, enum answer_kind kind, enum phrase phrase,
    const char *argument)
{
    struct answer *answer = verdict_add(verdict, kind, ROUTE_ANSWER, id_reminder);

    answer->text = estimate_say(asked, phrase, argument);
}

static void
append(struct answer *answer, const struct asked *asked, const char *sentence)
{
    char *text = memory_copy(asked->arena, answer->text);

    estimate_append(&text, sentence);
    answer->text = text;
}

static size_t
waiting_count(const struct context *context)
{
    size_t count = 0, i;

    for (i = 0; i < context->reminder_count; i++) {
        count += context->reminders[i].kind != REMINDER_OFFERED;
    }
    return count;
}

static struct answer *
hours_left_of(struct verdict *verdict)
{
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        struct answer *answer = &verdict->answers[i];

        if (answer->estimate != NULL && answer->estimate->kind == ESTIMATE_HOURS_LEFT) {
            return answer;
        }
    }
    return NULL;
}

/* ---- the two kinds --------------------------------------------------------------------------- */

static void
set(const struct asked *asked, struct verdict *verdict, struct reminder reminder)
{
    reminder.rental_id = asked->rental->rental_id;
    verdict->reminder = (struct reminder_change){REMINDER_SET, reminder};
}

/* The moment at which the charge that is counted with was so. */
static int64_t
as_of(const struct asked *asked, const struct verdict *verdict)
{
    return verdict->account_changed ? verdict->account.as_of_utc_s : asked->account->as_of_utc_s;
}

void
reminder_watch(const struct asked *asked, struct verdict *verdict, const struct told *told)
{
    int before_min = told->remind_before_min > 0 ? told->remind_before_min : DEFAULT_BEFORE_MIN;
    int64_t now_utc_s = asked->context->now_utc_s, ends_utc_s, due_utc_s;
    struct answer *answer = hours_left_of(verdict);

    if (answer == NULL) {
        estimate_hours_left(asked, verdict, told);
        answer = hours_left_of(verdict);
    }
    if (answer == NULL) {
        return; /* it was asked for what is missing, or a person was called */
    }
    ends_utc_s = answer->estimate->from_utc_s + answer->estimate->minutes.low * INT64_C(60);
    due_utc_s = ends_utc_s - before_min * INT64_C(60);
    if (due_utc_s <= now_utc_s) {
        return; /* so little is left now, and that has just been said */
    }
    set(asked, verdict,
        (struct reminder){.kind = REMINDER_RUNNING_OUT,
                          .due_utc_s = due_utc_s,
                          .ends_utc_s = ends_utc_s,
                          .as_of_utc_s = as_of(asked, verdict)});
    append(answer, asked,
           say(asked->arena, asked->context->house, asked->language, SAY_REMIND_WATCH,
               say_clock(asked->arena, asked->context->zone, due_utc_s),
               say_minutes(asked->arena, before_min), NULL));
    append(answer, asked, estimate_say(asked, SAY_NOT_AN_ALARM, NULL));
}

static void
remind_at(const struct asked *asked, struct verdict *verdict, const struct told *told)
{
    const struct zone *zone = asked->context->zone;
    int64_t at_utc_s =
        when_told(zone, asked->context->now_utc_s, told->remind_at, told->has_day, told->day);
    int64_t due_utc_s = at_utc_s - told->remind_before_min * INT64_C(60);
    char *clock = say_clock(asked->arena, zone, due_utc_s);

    if (due_utc_s <= asked->context->now_utc_s) {
        add(asked, verdict, ANSWER_ASK, SAY_REMIND_PAST, clock);
        append(&verdict->answers[verdict->answer_count - 1], asked,
               estimate_say(asked, SAY_REMIND_WHEN, NULL));
        (void)open_question_ask(asked, verdict, QUESTION_WHICH_CHARGE);
        return;
    }
    add(asked, verdict, ANSWER_TOPIC, SAY_REMIND_AT,
        say_day(asked->arena, zone, asked->language, due_utc_s));
    if (told->has_day && told->day == DAY_TOMORROW &&
        zone_local(zone, asked->context->now_utc_s).hour < NIGHT_ENDS_HOUR &&
        due_utc_s - DAY_S > asked->context->now_utc_s) {
        append(&verdict->answers[verdict->answer_count - 1], asked,
               estimate_say(asked, SAY_REMIND_TODAY, clock));
    }
    append(&verdict->answers[verdict->answer_count - 1], asked,
           estimate_say(asked, SAY_NOT_AN_ALARM, NULL));
    set(asked, verdict,
        (struct reminder){.kind = REMINDER_AT, .due_utc_s = due_utc_s, .ends_utc_s = due_utc_s});
}

/* ---- steps ----------------------------------------------------------------------------------- */

static bool
cancels(const struct asked *asked, struct verdict *verdict)
{
    bool any = waiting_count(asked->context) > 0;

    if (asked->tokens.count > SHORT_COMMAND_WORDS || !tokens_have(&asked->tokens, off_words) ||
        !tokens_have(&asked->tokens, reminders)) {
        return false;
    }
    add(asked, verdict, ANSWER_TOPIC, any ? SAY_REMIND_ALL_OFF : SAY_REMIND_NONE, NULL);
    if (any) {
        verdict->reminder = (struct reminder_change){.step = REMINDER_CANCEL};
    }
    return true;
}

static void
answer_wish(const struct asked *asked, struct verdict *verdict, enum wish wish, struct told *told)
{
    if (wish == WISH_WHEN) {
        add(asked, verdict, ANSWER_ASK, SAY_REMIND_WHEN, NULL);
        (void)open_question_ask(asked, verdict, QUESTION_WHICH_CHARGE);
    } else if (waiting_count(asked->context) >= REMINDERS_MAX) {
        add(asked, verdict, ANSWER_TOPIC, SAY_REMIND_MANY, NULL);
    } else if (wish == WISH_AT) {
        remind_at(asked, verdict, told);
    } else {
        take_charges(asked, told);
        reminder_watch(asked, verdict, told);
    }
}

bool
reminder_decide(const struct asked *asked, struct verdict *verdict)
{
    int before_min = short_command(&asked->tokens);
    struct told told;
    enum wish wish = WISH_WATCH;

    if (!asked_is_active_renter(asked) || asked->context->conversation.opted_out) {
        return false;
    }
    if (cancels(asked, verdict)) {
        return true;
    }
    if (before_min > 0) {
        told = (struct told){.kind = TOLD_WATCH, .remind_before_min = before_min};
    } else {
        told_read(asked->arena, asked->context->lexicon, asked->text, &told);
        wish = wish_of(asked, &told);
    }
    if (wish == WISH_NONE) {
        return false;
    }
    if (asked->rental == NULL) {
        open_question_which_rental(asked, verdict, NULL);
        return true;
    }
    answer_wish(asked, verdict, wish, &told);
    return true;
}

bool
reminder_goes_on(const struct asked *before, const struct asked *asked, struct verdict *verdict)
{
    struct told told = *before->told;
    int64_t utc_s;

    if (before->rental == NULL || !answered_time(asked, &utc_s)) {
        return false;
    }
    told.kind = TOLD_WATCH;
    told.has_remind_at = true;
    told.has_day = true;
    answered_as_told(asked, utc_s, &told.remind_at, &told.day);
    open_question_close(verdict);
    answer_wish(before, verdict, WISH_AT, &told);
    return true;
}

static const struct reminder *
watch_of(const struct context *context, const char *rental_id)
{
    size_t i;

    for (i = 0; i < context->reminder_count; i++) {
        if (context->reminders[i].kind == REMINDER_RUNNING_OUT &&
            strcmp(context->reminders[i].rental_id, rental_id) == 0) {
            return &context->reminders[i];
        }
    }
    return NULL;
}

static bool
was_offered(const struct context *context, const char *rental_id)
{
    size_t i;

    for (i = 0; i < context->reminder_count; i++) {
        if (strcmp(context->reminders[i].rental_id, rental_id) == 0) {
            return true; /* or set, which is as good */
        }
    }
    return false;
}

/* It helps: awake, away from a plug for a while, and nothing graver to be read in the same text. */
static bool
may_offer(const struct asked *whole, const struct verdict *verdict, const struct answer *answer,
          const char *with_offer)
{
    return answer->estimate->minutes.low >= OFFER_FROM_MIN &&
           answer->estimate->activity != ACTIVITY_SLEEP && verdict->route == ROUTE_ANSWER &&
           verdict->alert.level == ALERT_NONE && verdict->conversation.question == QUESTION_NONE &&
           !whole->context->conversation.opted_out &&
           !was_offered(whole->context, verdict->rental_id) &&
           parts_count(parts_plain(whole->arena, with_offer)).parts <= OFFER_PARTS;
}

void
reminder_mention(const struct asked *whole, struct verdict *verdict)
{
    struct answer *answer = hours_left_of(verdict);
    const struct reminder *watch;
    char *with_offer;
    size_t i;

    if (verdict->rental_id == NULL || verdict->reminder.step != REMINDER_KEEP) {
        return;
    }
    watch = watch_of(whole->context, verdict->rental_id);
    if (watch != NULL && verdict->account_changed) {
        append(answer != NULL ? answer : &verdict->answers[verdict->answer_count - 1], whole,
               estimate_say(whole, SAY_REMIND_WATCH_OFF,
                            say_clock(whole->arena, whole->context->zone, watch->due_utc_s)));
        return;
    }
    if (answer == NULL) {
        return;
    }
    with_offer = memory_copy(whole->arena, answer->text);
    for (i = 0; i < answer->extra_count; i++) {
        estimate_append(&with_offer, answer->extras[i]); /* they come first */
    }
    estimate_append(&with_offer, estimate_say(whole, SAY_REMIND_OFFER, NULL));
    if (may_offer(whole, verdict, answer, with_offer)) {
        estimate_extra(answer, estimate_say(whole, SAY_REMIND_OFFER, NULL));
        verdict->reminder =
            (struct reminder_change){REMINDER_OFFER, {.rental_id = verdict->rental_id}};
    }
}
