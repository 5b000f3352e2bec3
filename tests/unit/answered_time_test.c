/* What we asked back, answered in a few words. It is Tuesday, 11:15 am. */
#include "answered_time.h"

#include "stage.h"

/* Minutes from now to what the text tells; -1 if it tells no time. */
static int
minutes_until(const char *text, enum language language)
{
    const struct asked whole = asked_whole(stage->arena, &stage->message, &stage->context);
    struct asked asked = asked_question(&whole, text, stage->context.now_utc_s);
    int64_t utc_s;

    asked.language = language;
    return answered_time(&asked, &utc_s) ? (int)(utc_s - stage->context.now_utc_s) / 60 : -1;
}

static void
with_a_message(void)
{
    stage_set_up();
    fixture_text(stage, "hello");
}

START_TEST(a_time_from_now_is_counted_from_now)
{
    static const struct {
        const char *text;
        enum language language;
        int minutes;
    } times[] = {
        {"in 2 hours", LANGUAGE_EN, 120},
        {"in half an hour", LANGUAGE_EN, 30},
        {"in an hour and a half", LANGUAGE_EN, 90},
        {"in about 45 min", LANGUAGE_EN, 45},
        {"in two and a half hours", LANGUAGE_EN, 150},
        {"we leave in 3 hrs", LANGUAGE_EN, 180},
        {"en 2 horas", LANGUAGE_ES, 120},
        {"dentro de media hora", LANGUAGE_ES, 30},
        {"en hora y media", LANGUAGE_ES, -1}, /* no number: it is asked again */
        {"en una hora y media", LANGUAGE_ES, 90},
    };
    size_t i;

    for (i = 0; i < sizeof times / sizeof times[0]; i++) {
        ck_assert_msg(minutes_until(times[i].text, times[i].language) == times[i].minutes, "%s: %d",
                      times[i].text, minutes_until(times[i].text, times[i].language));
    }
}
END_TEST

START_TEST(a_clock_time_is_the_next_one)
{
    static const struct {
        const char *text;
        enum language language;
        int minutes;
    } times[] = {
        {"at 9 pm", LANGUAGE_EN, 585},
        {"at 9", LANGUAGE_EN, 585}, /* 9 am is past */
        {"around 12:30", LANGUAGE_EN, 75},
        {"11", LANGUAGE_EN, 705},
        {"noon", LANGUAGE_EN, 45},
        {"tomorrow at 8 am", LANGUAGE_EN, 1245},
        {"tomorrow at 8", LANGUAGE_EN, 1245},
        {"19:00", LANGUAGE_EN, 465},
        {"a las 9", LANGUAGE_ES, 585},
        {"a las 9 de la noche", LANGUAGE_ES, 585},
        {"mañana a las 8", LANGUAGE_ES, 1245},
        {"yes please", LANGUAGE_EN, -1},
        {"2 full", LANGUAGE_EN, -1},
        {"today at 9 am", LANGUAGE_EN, -1}, /* past */
    };
    size_t i;

    for (i = 0; i < sizeof times / sizeof times[0]; i++) {
        ck_assert_msg(minutes_until(times[i].text, times[i].language) == times[i].minutes, "%s: %d",
                      times[i].text, minutes_until(times[i].text, times[i].language));
    }
}
END_TEST

START_TEST(by_when_is_asked_and_a_bare_time_answers_it)
{
    fixture_text(stage, "need both charged before we leave. one is at 20% the other empty");
    fixture_says(stage, "By when must they be charged?");
    fixture_text(stage, "in 2 hours");
    fixture_says(stage, "At 1:15 pm plan on at least ");
    fixture_says(stage, "I read: 20%, 0%, 1:15 pm today.");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
    fixture_text(stage, "need both charged before we leave. one is at 20% the other empty");
    fixture_text(stage, "at 9");
    fixture_says(stage, "All full at 9:00 pm.");
}
END_TEST

START_TEST(only_am_or_pm_and_only_the_day_are_answers_too)
{
    fixture_text(stage, "need both charged by 6, both at 10%");
    fixture_text(stage, "pm");
    fixture_says(stage, "I read: 10%, 10%, 6:00 pm.");
    fixture_wait_minutes(stage, 5 * 60);
    fixture_text(stage, "need both charged by 1 pm today, both at 10%");
    fixture_says(stage, "1:00 pm is past already.");
    fixture_text(stage, "tomorrow");
    fixture_says(stage, "1:00 pm tomorrow");
}
END_TEST

START_TEST(the_parts_of_a_trip_and_its_charges_may_come_one_after_the_other)
{
    fixture_text(stage, "will my batteries last a day trip?");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_WHICH_CHARGE);
    fixture_text(stage, "we drive 20 min, walk 30 min and drive 20 min");
    fixture_says(stage, "How full is each battery");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_WHICH_CHARGE);
    fixture_text(stage, "2 full");
    ck_assert_int_eq(stage_estimate("drive-trip", ESTIMATE_TRIP)->trip->total_minutes, 70);
}
END_TEST

START_TEST(when_to_remind_is_asked_and_a_bare_time_answers_it)
{
    fixture_text(stage, "remind me to charge the batteries");
    fixture_says(stage, "When shall I text you?");
    fixture_text(stage, "at 9");
    fixture_says(stage, "I'll text you Tuesday, Feb 10, 9 pm.");
    ck_assert_int_eq(stage->verdict.reminder.reminder.due_utc_s, fixture_start_utc_s + 585 * 60);
    fixture_text(stage, "remind me to charge in half an hour");
    fixture_says(stage, "11:45 am");
}
END_TEST

START_TEST(a_text_about_something_else_is_no_time)
{
    fixture_text(stage, "remind me to charge the batteries");
    fixture_text(stage, "when is it due");
    fixture_says(stage, "Your rental is due");
    ck_assert_int_eq(stage->verdict.reminder.step, REMINDER_KEEP);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("answered_time");

    tcase_add_checked_fixture(tests, with_a_message, stage_tear_down);
    tcase_add_test(tests, a_time_from_now_is_counted_from_now);
    tcase_add_test(tests, a_clock_time_is_the_next_one);
    tcase_add_test(tests, by_when_is_asked_and_a_bare_time_answers_it);
    tcase_add_test(tests, only_am_or_pm_and_only_the_day_are_answers_too);
    tcase_add_test(tests, the_parts_of_a_trip_and_its_charges_may_come_one_after_the_other);
    tcase_add_test(tests, when_to_remind_is_asked_and_a_bare_time_answers_it);
    tcase_add_test(tests, a_text_about_something_else_is_no_time);
    return fixture_run(tests);
}
