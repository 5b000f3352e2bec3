#include "estimate_parts.h"

#include "broken_plug.h"
#include "cold.h"
#include "fill.h"
#include "in_car.h"
#include "memory.h"
#include "steps.h"

static const char hours_left[] = "hours-left";

/* The topic that a kind of arithmetic belongs to. */
static const char *
topic_of(enum told_kind kind)
{
    static const char *const topics[] = {
        [TOLD_NOTHING] = hours_left,          [TOLD_HOURS_LEFT] = hours_left,
        [TOLD_BATTERY_LIFE] = "battery-life", [TOLD_CHARGING] = "charge-time",
        [TOLD_TRIP] = "drive-trip",           [TOLD_FLIGHT] = "fly",
        [TOLD_CYLINDER] = "cylinder-left",    [TOLD_WATCH] = hours_left};

    return topics[kind];
}

static char *
planning_figure(const struct asked *asked, struct minutes time)
{
    const struct zone *zone = asked->context->zone;
    int to_plug = time.low - plug_reserve(time.low);
    char *lasts = say_minutes(asked->arena, time.low);
    char *until = say_clock(asked->arena, zone, asked->context->now_utc_s + time.low * 60);
    char *plug = say_clock(asked->arena, zone, asked->context->now_utc_s + to_plug * 60);

    if (time.low == 0) {
        return estimate_say(asked, SAY_PLAN_ON_NOTHING, NULL);
    }
    if (broken_plug_is_told(asked)) {
        return say(asked->arena, asked->context->house, asked->language, SAY_PLAN_UNTIL, lasts,
                   until, NULL);
    }
    if (to_plug == 0) {
        return say(asked->arena, asked->context->house, asked->language, SAY_PLAN_ON_SHORT, lasts,
                   until, NULL);
    }
    return say(asked->arena, asked->context->house, asked->language, SAY_PLAN_ON, lasts, until,
               plug, NULL);
}

static char *
hours_left_text(const struct asked *asked, const struct ground *ground)
{
    char *text = planning_figure(asked, ground->time);

    if (!ground->remembered) {
        estimate_append_read(asked, &ground->told, &text);
    }
    if (ground->remembered) {
        estimate_append(&text, estimate_say(asked, SAY_SINCE,
                                            say_clock(asked->arena, asked->context->zone,
                                                      ground->as_of_utc_s)));
    }
    if (ground->cold_percent < 100) {
        estimate_append(
            &text,
            estimate_say(asked, SAY_COLD, memory_format(asked->arena, "%d", ground->cold_percent)));
    }
    if (ground->running.activity == ACTIVITY_SLEEP) {
        estimate_append(&text, estimate_say(asked, SAY_SLEEP_UNIT_ONLY, NULL));
    }
    if (ground->running.is == RUNNING_DIFFERS) {
        estimate_append(&text, estimate_record_says(asked, &ground->running));
        estimate_append(&text, estimate_say(asked, SAY_STAFF_WILL_CALL, NULL));
    }
    return text;
}

static void
add_extras(const struct asked *asked, const struct ground *ground, struct answer *answer)
{
    estimate_say_counted(asked, &ground->running, "", answer);
    if (ground->time.high > ground->time.low && ground->time.low > 0) {
        estimate_extra(
            answer, estimate_say(asked, SAY_UP_TO, say_minutes(asked->arena, ground->time.high)));
    }
}

/* ---- what no number can be given for --------------------------------------------------------- */

static void
ask_charge(const struct asked *asked, struct verdict *verdict, const struct told *told)
{
    const struct topic *topic = kb_topic(asked->context->kb, hours_left, asked->language);
    struct answer *answer =
        estimate_add(asked, verdict, ANSWER_ASK, ROUTE_ANSWER, told, "which-charge", hours_left);
    char *text = memory_copy(asked->arena, "");
    const char *how = "";

    if (told_of_untold_number(told)) {
        estimate_forget(asked, verdict);
    }
    if (told->impossible) {
        estimate_append(&text, estimate_say(asked, SAY_IMPOSSIBLE, told->impossible_what));
    }
    if (topic == NULL || told->impossible) {
        if (asked->equipment != NULL && asked->equipment->gauge_how != NULL &&
            asked->language == LANGUAGE_EN) {
            how = memory_format(asked->arena, " %s", asked->equipment->gauge_how);
        }
        estimate_append(&text, estimate_say(asked, SAY_WHICH_CHARGE, how));
    } else {
        const struct filling with = {asked->context->house, asked->context->zone,
                                     asked->rental,         asked->equipment,
                                     asked->language,       asked->context->now_utc_s};

        estimate_append(&text, fill(asked->arena, topic->answer, &with, NULL));
    }
    answer->text = text;
    open_question_ask(asked, verdict, QUESTION_WHICH_CHARGE);
}

static void
to_staff(const struct asked *asked, struct verdict *verdict, const struct ground *ground)
{
    const struct running *running = &ground->running;
    struct answer *answer = estimate_add(asked, verdict, ANSWER_OFFICE, ROUTE_STAFF, &ground->told,
                                         hours_left, hours_left);
    char *text = memory_copy(asked->arena, "");

    if (running->is == RUNNING_NO_ORDER && running->activity == ACTIVITY_SLEEP) {
        estimate_append(&text, estimate_say(asked, SAY_NO_SLEEP_ORDER, NULL));
        verdict_alert(verdict, ALERT_URGENT, false, "power:no-sleep-order", "no sleep order");
    } else if (running->is == RUNNING_DIFFERS) {
        estimate_append(&text, estimate_record_says(asked, running));
        estimate_append(&text, estimate_say(asked, SAY_NO_FIGURE, NULL));
        verdict_alert(verdict, ALERT_URGENT, false, "power:differs", "setting differs");
    } else {
        estimate_append(&text, estimate_say(asked, SAY_NO_FIGURE, NULL));
        verdict_alert(verdict, ALERT_URGENT, false, "power:no-figure", "hours left?");
    }
    answer->text = text;
}

static void
no_record(const struct asked *asked, struct verdict *verdict, const struct told *told)
{
    if (asked->which_rental) {
        open_question_which_rental(asked, verdict, hours_left);
        verdict->answers[verdict->answer_count - 1].read = estimate_keep(asked, told);
        return;
    }
    estimate_no_record(asked, verdict, told, hours_left, "hours left?");
}

/* ---- hours left ------------------------------------------------------------------------------ */

/* "It's -12 C. 2 full. How long": the cold may be told in another part of the text. */
static void
take_cold_of_message(const struct asked *asked, struct told *told)
{
    const struct told *whole = asked->message_told;

    if (asked_in_message(asked) && !told->celsius.told && !told->fahrenheit.told) {
        told->celsius = whole->celsius;
        told->fahrenheit = whole->fahrenheit;
    }
}

/* From the text, else from what was told before; false if neither tells a charge. */
static bool
find_ground(const struct asked *asked, const struct told *told, struct ground *ground)
{
    const struct battery_account *account = asked->account;

    *ground =
        (struct ground){.told = *told, .as_of_utc_s = asked->wrote_utc_s - told->since_min * 60};
    take_cold_of_message(asked, &ground->told);
    if (told_has_charge(told)) {
        return !told->is_earlier; /* of an unknown time ago: what do they show now? */
    }
    if (told->count > 0 || told_of_untold_number(told) || !account->known ||
        asked->wrote_utc_s - account->as_of_utc_s > ACCOUNT_OLD_S) {
        return false;
    }
    ground->told = account->told;
    ground->as_of_utc_s = account->as_of_utc_s;
    ground->remembered = true;
    if (told->has_mode || told->has_setting) { /* what runs now */
        ground->told.has_mode = told->has_mode;
        ground->told.mode = told->mode;
        ground->told.has_setting = told->has_setting;
        ground->told.setting_tenths = told->setting_tenths;
    }
    if (told->celsius.told || told->fahrenheit.told) { /* else it is as cold as it was */
        ground->told.celsius = told->celsius;
        ground->told.fahrenheit = told->fahrenheit;
    }
    ground->told.has_activity = told->has_activity;
    ground->told.activity = told->activity;
    return true;
}

/* Minutes are said as from now: who reads "2 h" of a late answer counts from when it comes. */
static int
elapsed_minutes(const struct asked *asked, const struct ground *ground)
{
    int64_t seconds = asked->context->now_utc_s - ground->as_of_utc_s;

    return seconds > 0 ? (int)((seconds + 59) / 60) : 0;
}

bool
estimate_take_cold(const struct asked *asked, struct ground *ground, struct minutes *lasts)
{
    int celsius;

    *lasts = ground->running.figure->lasts;
    ground->cold_percent = 100;
    if (!cold_told(&ground->told, &celsius)) {
        return true;
    }
    if (!cold_share(asked->equipment, celsius, &ground->cold_percent)) {
        return false;
    }
    lasts->low = lasts->low * ground->cold_percent / 100; /* inside a coat it may be warm */
    return true;
}

/* Batteries that were on a plug when their charge was told may be full by now. */
static void
may_have_charged(const struct ground *ground, struct charges *charges)
{
    bool on_plug =
        ground->told.on_power == POWER_SOURCE_WALL || ground->told.on_power == POWER_SOURCE_CAR;
    size_t i;

    for (i = 0; on_plug && i < charges->count; i++) {
        charges->list[i].high = 100;
    }
}

/* Nothing is left once the reserve is kept for reaching a plug. */
static bool
is_for_now(struct minutes time)
{
    return time.low <= plug_reserve(time.low);
}

/*
 * Whose plug or cord is broken is called, however much is left. Under an hour: is a plug near? Who
 * says no, or nothing, is called. Where that cannot be asked, or there is no time to wait for it,
 * they are called at once, and nothing is asked of who is called anyway.
 */
void
estimate_see_to_plug(const struct asked *asked, struct verdict *verdict, struct minutes time)
{
    struct answer *answer = &verdict->answers[verdict->answer_count - 1];
    char *text = memory_copy(asked->arena, answer->text);
    bool is_called = verdict->alert.level >= ALERT_URGENT; /* the text says so already */

    if (broken_plug_is_told(asked)) {
        estimate_append(&text, estimate_say(asked, SAY_BROKEN_PLUG, NULL));
        estimate_append(&text, say_use_backup(asked->arena, asked->context->house, asked->language,
                                              asked->rental));
        if (time.low < SHORT_MINUTES) {
            estimate_append(&text, estimate_say(asked, SAY_BREATHING_911, NULL));
        }
        answer->text = text;
        broken_plug_call(asked, verdict);
        plug_settled(verdict);
        return;
    }
    if (time.low >= SHORT_MINUTES) {
        plug_settled(verdict);
        return;
    }
    if (plug_is_missing(verdict)) {
        return; /* the text itself says so, and staff were called for that */
    }
    if (is_called || is_for_now(time) || verdict->route <= ROUTE_EQUIPMENT ||
        !plug_ask(asked, verdict)) {
        if (!is_called) {
            estimate_append(&text, estimate_say(asked, SAY_STAFF_ALERTED, NULL));
        }
        estimate_append(&text, estimate_say(asked, SAY_BREATHING_911, NULL));
        answer->text = text;
        verdict_alert(verdict, ALERT_URGENT, false, "power:short", "under 1 hour left");
    }
}

static void
say_hours_left(const struct asked *asked, struct verdict *verdict, const struct ground *ground,
               int batteries)
{
    bool differs = ground->running.is == RUNNING_DIFFERS;
    const char *in_car = in_car_words(asked);
    struct answer *answer =
        estimate_add(asked, verdict, ANSWER_ESTIMATE, differs ? ROUTE_STAFF : ROUTE_ANSWER,
                     &ground->told, hours_left, hours_left);

    estimate_attach(asked, answer, ground, ESTIMATE_HOURS_LEFT, batteries);
    answer->text = hours_left_text(asked, ground);
    add_extras(asked, ground, answer);
    if (differs) {
        verdict_alert(verdict, ALERT_URGENT, false, "power:differs", "setting differs");
    }
    if (in_car != NULL && ground->time.low < SHORT_MINUTES) {
        answer->text = memory_format(asked->arena, "%s %s", answer->text, in_car);
    }
    estimate_see_to_plug(asked, verdict, ground->time);
}

void
estimate_impossible(const struct asked *asked, struct verdict *verdict, const struct told *told)
{
    struct answer *answer;
    char *text = memory_copy(asked->arena, "");

    if ((told->missing & MISSING_CHARGE) != 0 && told->kind == TOLD_HOURS_LEFT) {
        ask_charge(asked, verdict, told);
        return;
    }
    answer = estimate_add(asked, verdict, ANSWER_ASK, ROUTE_ANSWER, told, "impossible",
                          topic_of(told->kind));
    estimate_append(&text, estimate_say(asked, SAY_IMPOSSIBLE, told->impossible_what));
    estimate_append(&text, estimate_say(asked, SAY_TELL_AGAIN, NULL));
    answer->text = text;
}

/* What runs is fed by the wall alone: whoever counts hours may be on a battery that cannot. */
static void
say_wall_only(const struct asked *asked, struct verdict *verdict, const struct ground *ground,
              const char *wall_only)
{
    struct answer *answer = estimate_add(asked, verdict, ANSWER_OFFICE, ROUTE_STAFF, &ground->told,
                                         hours_left, hours_left);
    char *text = memory_copy(asked->arena, wall_only);

    verdict_alert(verdict, ALERT_URGENT, false, "power:wall-only", "needs the wall, on battery?");
    if (estimate_is_said(verdict, "power-out-now")) {
        answer->text = ""; /* that told them to go to the backup, and not to a plug that is dead */
        return;
    }
    if (ground->running.is == RUNNING_DIFFERS) {
        estimate_append(&text, estimate_record_says(asked, &ground->running));
    }
    estimate_append(&text, estimate_say(asked, SAY_WALL_NOW, NULL));
    answer->text = text;
}

void
estimate_hours_left(const struct asked *asked, struct verdict *verdict, const struct told *told)
{
    const struct percent unknown = {0, 100};
    struct ground ground;
    struct charges charges;
    const char *wall_only;
    struct minutes lasts;
    size_t in_unit = 0;

    if (asked->rental == NULL) {
        no_record(asked, verdict, told);
        return;
    }
    ground = (struct ground){.told = *told,
                             .running = running_now(asked->rental, asked->equipment, told)};
    wall_only = estimate_wall_only(asked, &ground.running, told);
    if (wall_only != NULL) {
        say_wall_only(asked, verdict, &ground, wall_only);
        return;
    }
    if (told->impossible || !find_ground(asked, told, &ground)) {
        ask_charge(asked, verdict, told);
        return;
    }
    if (!ground.remembered && estimate_too_many(asked, verdict, told, hours_left)) {
        return;
    }
    if (!ground.remembered) {
        estimate_remember(asked, verdict, told);
    }
    ground.running = running_now(asked->rental, asked->equipment, &ground.told);
    if (ground.running.figure == NULL) {
        to_staff(asked, verdict, &ground);
        return;
    }
    if (!estimate_charges(&ground.told, asked->equipment, unknown, &charges)) {
        ask_charge(asked, verdict, told);
        return;
    }
    if (ground.remembered) {
        may_have_charged(&ground, &charges);
    }
    if (ground.running.activity == ACTIVITY_SLEEP) {
        in_unit = (size_t)asked->equipment->batteries_held;
    }
    if (!estimate_take_cold(asked, &ground, &lasts) ||
        !battery_set_time(asked->rental, asked->equipment, lasts, charges.list, charges.count,
                          in_unit, asked->wrote_utc_s, &ground.time)) {
        to_staff(asked, verdict, &ground);
        return;
    }
    /* Whether it ran on battery all the while is not told, so the high end stays. */
    ground.time = minutes_after(ground.time, elapsed_minutes(asked, &ground), false);
    if (ground.remembered && ground.time.low == 0) {
        ask_charge(asked, verdict, told);
        return;
    }
    say_hours_left(asked, verdict, &ground, (int)charges.count);
}

/* What was told to be in the batteries, counted from then on; false if no number can be given. */
static bool
work_out_account(const struct asked *asked, const struct battery_account *account,
                 struct ground *ground, struct charges *charges)
{
    const struct percent unknown = {0, 100};
    struct minutes lasts;
    size_t in_unit = 0;

    if (!account->known || asked->equipment == NULL ||
        asked->wrote_utc_s - account->as_of_utc_s > ACCOUNT_OLD_S) {
        return false;
    }
    *ground = (struct ground){.told = account->told, .as_of_utc_s = account->as_of_utc_s};
    ground->running = running_now(asked->rental, asked->equipment, &ground->told);
    if (ground->running.figure == NULL ||
        estimate_wall_only(asked, &ground->running, &ground->told) != NULL ||
        !estimate_charges(&ground->told, asked->equipment, unknown, charges)) {
        return false;
    }
    if (ground->running.activity == ACTIVITY_SLEEP) {
        in_unit = (size_t)asked->equipment->batteries_held;
    }
    return estimate_take_cold(asked, ground, &lasts) &&
           battery_set_time(asked->rental, asked->equipment, lasts, charges->list, charges->count,
                            in_unit, asked->wrote_utc_s, &ground->time);
}

int64_t
estimate_runs_out(const struct asked *asked, const struct battery_account *account)
{
    struct ground ground;
    struct charges charges;
    int64_t ends_utc_s;

    if (!work_out_account(asked, account, &ground, &charges)) {
        return 0;
    }
    ends_utc_s = ground.as_of_utc_s + ground.time.low * INT64_C(60);
    return ends_utc_s > asked->wrote_utc_s ? ends_utc_s : 0; /* they were charged since, or not */
}

void
estimate_mention_left(const struct asked *asked, const struct battery_account *account,
                      struct answer *answer)
{
    struct ground ground;
    struct charges charges;

    if (!work_out_account(asked, account, &ground, &charges) ||
        ground.running.is != RUNNING_ORDERED) {
        return; /* what is not ordered is a person's to speak of */
    }
    ground.time = minutes_after(ground.time, elapsed_minutes(asked, &ground), false);
    if (ground.time.low == 0) {
        return;
    }
    estimate_attach(asked, answer, &ground, ESTIMATE_HOURS_LEFT, (int)charges.count);
    estimate_extra(answer, say(asked->arena, asked->context->house, asked->language, SAY_OUT_LASTS,
                               say_minutes(asked->arena, ground.time.low),
                               say_clock(asked->arena, asked->context->zone,
                                         asked->context->now_utc_s + ground.time.low * 60),
                               NULL));
    estimate_extra(answer, estimate_say(asked, SAY_READ,
                                        say_read(asked->arena, asked->language, &ground.told)));
    estimate_extra(answer, estimate_counted_with(asked, &ground.running, ""));
}
