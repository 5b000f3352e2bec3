/* Texts that renters ask for: set, said back, offered once, ended by a newer charge. */
#include "fixture.h"

#include <stdio.h>

#include "reminder_text.h"
#include "when.h"

static struct fixture *stage;

static void
set_up(void)
{
    stage = fixture_new();
}

static void
tear_down(void)
{
    fixture_free(stage);
}

static const struct reminder *
set_now(enum reminder_kind kind)
{
    ck_assert_int_eq(stage->verdict.reminder.step, REMINDER_SET);
    ck_assert_int_eq(stage->verdict.reminder.reminder.kind, kind);
    ck_assert_str_eq(stage->verdict.reminder.reminder.rental_id, "R-1");
    return &stage->verdict.reminder.reminder;
}

static int64_t
minutes_from_now(const struct reminder *reminder)
{
    return (reminder->due_utc_s - stage->context.now_utc_s) / 60;
}

/* ---- running out ----------------------------------------------------------------------------- */

/* Two full: low end 54 + 60 = 114 min (see power_test.c). */
START_TEST(a_watch_goes_by_the_low_end_and_is_said_back)
{
    fixture_text(stage, "text me when 30 min are left. 2 full batteries");
    ck_assert_int_eq(minutes_from_now(set_now(REMINDER_RUNNING_OUT)), 84);
    ck_assert_int_eq(stage->verdict.reminder.reminder.ends_utc_s,
                     stage->context.now_utc_s + INT64_C(114) * 60);
    fixture_says(stage, "Plan on 1 h 54 min, to about 1:09 pm.");
    fixture_says(stage, "I read: 100%, 100%, 30 min before.");
    fixture_says(stage, "I'll text you at about 12:39 pm, when 30 min may be left. Not an alarm: "
                        "texts can be late. Trust the machine's own alarm.");
}
END_TEST

START_TEST(without_a_charge_it_is_asked_for_and_then_the_watch_is_set)
{
    fixture_text(stage, "text me when 45 min are left");
    ck_assert_int_eq(stage->verdict.reminder.step, REMINDER_KEEP);
    ck_assert_int_eq(stage->verdict.conversation.question, QUESTION_WHICH_CHARGE);
    fixture_text(stage, "2 full");
    ck_assert_int_eq(minutes_from_now(set_now(REMINDER_RUNNING_OUT)), 114 - 45);
    fixture_says(stage, "when 45 min may be left");
}
END_TEST

START_TEST(a_charge_told_before_is_enough)
{
    fixture_text(stage, "2 full batteries how long do i have left");
    fixture_wait_minutes(stage, 10);
    fixture_text(stage, "REMIND 30");
    ck_assert_int_eq(minutes_from_now(set_now(REMINDER_RUNNING_OUT)), 114 - 10 - 30);
}
END_TEST

START_TEST(with_less_left_than_that_nothing_is_watched)
{
    fixture_text(stage, "text me when 30 min are left, one battery at 40%");
    ck_assert_int_eq(stage->verdict.reminder.step, REMINDER_KEEP);
    fixture_says(stage, "Plan on 21 min"); /* 60 x .90 x .40 = 21.6 */
    fixture_says_not(stage, "I'll text you");
    ck_assert_int_eq(stage->verdict.conversation.question, QUESTION_PLUG);
}
END_TEST

START_TEST(an_untold_length_is_half_an_hour)
{
    fixture_text(stage, "text me when its running low, 2 full batteries");
    ck_assert_int_eq(minutes_from_now(set_now(REMINDER_RUNNING_OUT)), 84);
}
END_TEST

START_TEST(a_newer_charge_ends_the_watch_and_says_so)
{
    fixture_text(stage, "text me when 30 min are left. 2 full batteries");
    fixture_text(stage, "swapped, now 1 full, how long do i have left");
    ck_assert(stage->verdict.account_changed);
    fixture_says(stage, "My text for 12:39 pm is off, as it went by the older charge.");
    fixture_text(stage, "how long do i have left");
    fixture_says_not(stage, "is off");
}
END_TEST

START_TEST(it_is_offered_once_and_only_when_it_helps)
{
    fixture_text(stage, "thanks"); /* the first reply of a conversation is long enough */
    fixture_text(stage, "one full battery how long do i have left"); /* under an hour: a plug */
    ck_assert_int_eq(stage->verdict.reminder.step, REMINDER_KEEP);
    fixture_text(stage, "yes");
    fixture_text(stage, "2 full batteries how long do i have left");
    ck_assert_int_eq(stage->verdict.reminder.step, REMINDER_OFFER);
    fixture_says(stage, "Text REMIND 30 if you want a text when 30 min may be left.");
    fixture_text(stage, "2 full batteries how long do i have left");
    fixture_says_not(stage, "REMIND 30");
}
END_TEST

/* ---- at a time ------------------------------------------------------------------------------- */

START_TEST(a_time_is_said_back_with_its_day)
{
    fixture_text(stage, "remind me to charge at 9 pm");
    ck_assert_int_eq(minutes_from_now(set_now(REMINDER_AT)), 9 * 60 + 45);
    fixture_says(stage, "I'll text you Tuesday, Feb 10, 9 pm. Not an alarm: texts can be late.");
    fixture_text(stage, "remind me quarter past 7 tomorrow morning to grab the batteries");
    ck_assert_int_eq(minutes_from_now(set_now(REMINDER_AT)), 20 * 60);
    fixture_text(stage, "reminder please friday noon to pack up the oxygen");
    ck_assert_int_eq(minutes_from_now(set_now(REMINDER_AT)), 3 * 24 * 60 + 45);
}
END_TEST

START_TEST(an_hour_that_may_be_of_either_half_of_the_day_is_asked_for)
{
    fixture_text(stage, "remind me to charge at 9");
    ck_assert_int_eq(stage->verdict.reminder.step, REMINDER_KEEP);
    fixture_says(stage, "When shall I text you?");
}
END_TEST

START_TEST(a_time_that_is_past_is_asked_for_again)
{
    fixture_text(stage, "remind me today at 9 am to charge");
    ck_assert_int_eq(stage->verdict.reminder.step, REMINDER_KEEP);
    fixture_says(stage, "I read 9:00 am today, which is past.");
}
END_TEST

START_TEST(all_are_cancelled_with_a_word)
{
    fixture_text(stage, "cancel the reminder");
    fixture_says(stage, "No reminder is set.");
    fixture_text(stage, "remind me to charge at 9 pm");
    fixture_text(stage, "please cancel my reminders");
    ck_assert_int_eq(stage->verdict.reminder.step, REMINDER_CANCEL);
    fixture_says(stage, "All right: I'll send no reminder.");
}
END_TEST

START_TEST(nobody_can_pile_them_up)
{
    int hour;

    for (hour = 1; hour <= 9; hour++) {
        char text[64];

        snprintf(text, sizeof text, "remind me tomorrow at %d pm to charge", hour);
        fixture_text(stage, text);
    }
    ck_assert_int_eq(stage->verdict.reminder.step, REMINDER_KEEP);
    fixture_says(stage, "I can't add one");
}
END_TEST

/* ---- not ours -------------------------------------------------------------------------------- */

START_TEST(what_is_no_reminder_goes_on_to_the_others)
{
    static const char *const texts[] = {
        "let me know when the driver is here", "text me when you deliver the new unit",
        "remind me how to charge it in the car", "remind me what time my rental is due"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.reminder.step == REMINDER_KEEP, "%s", texts[i]);
        ck_assert_msg(fixture_answer(stage, "reminder") == NULL, "%s", texts[i]);
    }
}
END_TEST

START_TEST(a_stranger_and_one_who_wants_no_texts_get_none)
{
    stage->context.conversation.opted_out = true;
    fixture_text(stage, "remind me to charge at 9 pm");
    ck_assert_int_eq(stage->verdict.reminder.step, REMINDER_KEEP);
    fixture_stranger(stage);
    stage->context.conversation.opted_out = false;
    fixture_text(stage, "remind me to charge at 9 pm");
    ck_assert_int_eq(stage->verdict.reminder.step, REMINDER_KEEP);
}
END_TEST

START_TEST(an_emergency_in_the_same_text_comes_alone)
{
    fixture_text(stage, "i have chest pain, remind me to charge at 9 pm");
    ck_assert_int_eq(stage->verdict.route, ROUTE_EMERGENCY);
    ck_assert_int_eq(stage->verdict.reminder.step, REMINDER_KEEP);
}
END_TEST

/* ---- when its time has come ------------------------------------------------------------------ */

/* From 9:15 pm, 10 hours after the start, to 8 am. */
static int64_t
quiet_until(int64_t late_s)
{
    const int64_t evening_s = INT64_C(10) * 3600, morning_s = (INT64_C(20) * 60 + 45) * 60;

    return fixture_start_utc_s + (late_s >= evening_s && late_s < morning_s ? morning_s : late_s);
}

static enum reminder_news
news(enum reminder_kind kind, int64_t late_s, int64_t *next_utc_s)
{
    const struct reminder reminder = {.kind = kind, .due_utc_s = fixture_start_utc_s};

    return reminder_news(&reminder, quiet_until(late_s), fixture_start_utc_s + late_s, next_utc_s);
}

static void
sets_after(const char *text, int minutes)
{
    fixture_text(stage, text);
    ck_assert_int_eq(minutes_from_now(set_now(REMINDER_AT)), minutes);
}

START_TEST(a_length_from_now_is_a_time_however_the_text_is_asked_for)
{
    sets_after("remind me in 2 hours", 120);
    sets_after("wake me in 2 hours to swap battery", 120);
    sets_after("wake me in 3 hours", 180);
    sets_after("text me in 90 minutes", 90);
    sets_after("despiertame en 2 horas", 120);
    sets_after("avisame en 90 minutos", 90);
}
END_TEST

START_TEST(late_it_is_no_reminder_any_more_and_very_late_no_news)
{
    int64_t next_utc_s;

    ck_assert_int_eq(news(REMINDER_AT, -1, &next_utc_s), REMINDER_WAITS);
    ck_assert_int_eq(next_utc_s, fixture_start_utc_s);
    ck_assert_int_eq(news(REMINDER_AT, 0, &next_utc_s), REMINDER_DUE);
    ck_assert_int_eq(news(REMINDER_AT, 600, &next_utc_s), REMINDER_DUE);
    ck_assert_int_eq(news(REMINDER_AT, 601, &next_utc_s), REMINDER_LATE);
    ck_assert_int_eq(news(REMINDER_AT, 12 * 3600 + 1, &next_utc_s), REMINDER_PAST);
}
END_TEST

/* 47 CFR 64.1200(c)(1): from 8 am to 9 pm at the called party's place. */
START_TEST(at_night_only_what_was_chosen_or_cannot_wait_is_sent)
{
    const int64_t ten_hours_later = INT64_C(10) * 3600; /* 9:15 pm */
    int64_t next_utc_s;

    ck_assert_int_eq(news(REMINDER_AT, ten_hours_later, &next_utc_s), REMINDER_WAITS);
    ck_assert_int_eq(next_utc_s, fixture_start_utc_s + (INT64_C(20) * 60 + 45) * 60); /* 8 am */
    ck_assert_int_eq(news(REMINDER_RUNNING_OUT, ten_hours_later, &next_utc_s), REMINDER_LATE);
}
END_TEST

START_TEST(what_is_sent_names_the_time_and_is_no_alarm)
{
    const struct reminder watch = {.kind = REMINDER_RUNNING_OUT,
                                   .due_utc_s = fixture_start_utc_s + 84 * 60,
                                   .ends_utc_s = fixture_start_utc_s + 114 * 60,
                                   .as_of_utc_s = fixture_start_utc_s};
    const struct reminder at = {.kind = REMINDER_AT, .due_utc_s = fixture_start_utc_s};
    void *arena = stage->arena;

    ck_assert_str_eq(reminder_text(arena, &stage->house, &stage->zone, LANGUAGE_EN, &watch,
                                   REMINDER_DUE, "text me", watch.due_utc_s),
                     "Reminder: by the charge you told at 11:15 am, the batteries may be empty at "
                     "about 1:09 pm. Be at a plug now. Not an alarm: texts can be late. Trust the "
                     "machine's own alarm.");
    ck_assert_str_eq(reminder_text(arena, &stage->house, &stage->zone, LANGUAGE_EN, &at,
                                   REMINDER_DUE, "remind me to charge {phone}", at.due_utc_s),
                     "Reminder, as you asked: \"remind me to charge {phone}\"");
    ck_assert_str_eq(reminder_text(arena, &stage->house, &stage->zone, LANGUAGE_EN, &at,
                                   REMINDER_LATE, NULL, at.due_utc_s + 3600),
                     "I could not text you at 11:15 am as you asked; it is 12:15 pm now.");
}
END_TEST

/* The start is a Tuesday, 11:15 am. */
START_TEST(a_day_of_the_week_is_the_next_one)
{
    const int64_t day = 86400, quarter = 900;
    int64_t now = fixture_start_utc_s;

    ck_assert_int_eq(when_told(&stage->zone, now, 11 * 60 + 30, false, DAY_TODAY), now + quarter);
    ck_assert_int_eq(when_told(&stage->zone, now, 11 * 60, false, DAY_TODAY), now + day - quarter);
    ck_assert_int_eq(when_told(&stage->zone, now, 11 * 60, true, DAY_TODAY), now - quarter);
    ck_assert_int_eq(when_told(&stage->zone, now, 11 * 60 + 15, true, DAY_TOMORROW), now + day);
    ck_assert_int_eq(when_told(&stage->zone, now, 11 * 60 + 30, true, DAY_TUESDAY), now + quarter);
    ck_assert_int_eq(when_told(&stage->zone, now, 11 * 60, true, DAY_TUESDAY),
                     now + 7 * day - quarter);
    ck_assert_int_eq(when_told(&stage->zone, now, 11 * 60 + 15, true, DAY_MONDAY), now + 6 * day);
    ck_assert_int_eq(when_told(&stage->zone, now, 11 * 60 + 15, true, DAY_SUNDAY), now + 5 * day);
}
END_TEST

START_TEST(tomorrow_told_in_the_night_is_said_with_its_day_and_how_to_have_it_today)
{
    fixture_wait_minutes(stage, 15 * 60 + 45); /* Wednesday, 3 am */
    fixture_text(stage, "remind me tomorrow at 7am");
    fixture_says(stage, "I'll text you Thursday, Feb 12, 7 am.");
    fixture_says(stage, "Meant in a few hours? Text \"remind me today 7:00 am\".");
    fixture_text(stage, "remind me today 7 am");
    fixture_says(stage, "I'll text you Wednesday, Feb 11, 7 am.");
    fixture_says_not(stage, "Meant in a few hours?");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("reminder");

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, a_watch_goes_by_the_low_end_and_is_said_back);
    tcase_add_test(tests, without_a_charge_it_is_asked_for_and_then_the_watch_is_set);
    tcase_add_test(tests, a_charge_told_before_is_enough);
    tcase_add_test(tests, with_less_left_than_that_nothing_is_watched);
    tcase_add_test(tests, an_untold_length_is_half_an_hour);
    tcase_add_test(tests, a_newer_charge_ends_the_watch_and_says_so);
    tcase_add_test(tests, it_is_offered_once_and_only_when_it_helps);
    tcase_add_test(tests, a_time_is_said_back_with_its_day);
    tcase_add_test(tests, an_hour_that_may_be_of_either_half_of_the_day_is_asked_for);
    tcase_add_test(tests, a_time_that_is_past_is_asked_for_again);
    tcase_add_test(tests, all_are_cancelled_with_a_word);
    tcase_add_test(tests, nobody_can_pile_them_up);
    tcase_add_test(tests, what_is_no_reminder_goes_on_to_the_others);
    tcase_add_test(tests, a_stranger_and_one_who_wants_no_texts_get_none);
    tcase_add_test(tests, an_emergency_in_the_same_text_comes_alone);
    tcase_add_test(tests, a_length_from_now_is_a_time_however_the_text_is_asked_for);
    tcase_add_test(tests, late_it_is_no_reminder_any_more_and_very_late_no_news);
    tcase_add_test(tests, at_night_only_what_was_chosen_or_cannot_wait_is_sent);
    tcase_add_test(tests, what_is_sent_names_the_time_and_is_no_alarm);
    tcase_add_test(tests, a_day_of_the_week_is_the_next_one);
    tcase_add_test(tests, tomorrow_told_in_the_night_is_said_with_its_day_and_how_to_have_it_today);
    return fixture_run(tests);
}
