/* Reminders in the store: what is put into the outbox, when, and what stays of it. */
#include "intake_stage.h"

#include <stdlib.h>

#include "alert_rows.h"
#include "memory.h"
#include "reminder_rows.h"
#include "reminders.h"
#include "rental_rows.h"

static void
ada_texts(const char *id, const char *text)
{
    const struct message message = text_of(ada, id, text);

    take(&message);
    run();
}

static void
send_at(int64_t now_utc_s)
{
    struct fault fault = {""};

    ck_assert_int_eq(store_begin(store, &fault), 0);
    ck_assert_msg(reminders_send(store, arena, &loaded, now_utc_s, &fault) == 0, "%s", fault.text);
    ck_assert_int_eq(store_commit(store, &fault), 0);
}

static void
staff_close(void)
{
    const struct alert_hand hand = {.who = "+12085550190", .now_utc_s = EVENING + 3600};
    struct fault fault = {""};
    bool closed;

    ck_assert_int_eq(store_begin(store, &fault), 0);
    ck_assert_int_eq(alert_rows_close(store, 1, &hand, "safe", &closed, &fault), 0);
    ck_assert_int_eq(store_commit(store, &fault), 0);
    ck_assert(closed);
}

#define STATES "SELECT kind, state, next_utc_s FROM reminder"
#define BODIES "SELECT body FROM outbox WHERE verdict_id IS NULL"

/* 8 pm is an hour after EVENING. */
START_TEST(a_chosen_time_is_kept_to_the_second_also_in_quiet_hours)
{
    ada_texts("1", "remind me at 11 pm to charge both");
    send_at(EVENING + 4 * 3600 - 1);
    ck_assert_str_eq(asked(BODIES), "");
    send_at(EVENING + 4 * 3600);
    ck_assert_str_eq(asked(BODIES),
                     "Reminder, as you asked: \"remind me at 11 pm to charge both\"\n");
    send_at(EVENING + 4 * 3600 + 1);
    ck_assert_str_eq(asked("SELECT count(*) FROM outbox WHERE verdict_id IS NULL"), "1\n");
    ck_assert_str_eq(asked(STATES), "at|sent|\n");
}
END_TEST

/* 47 CFR 64.1200(c)(1): 8 am to 9 pm at the called party's place. */
START_TEST(that_it_was_missed_is_told_in_the_morning)
{
    ada_texts("1", "remind me at 8 pm to charge both");
    send_at(EVENING + 4 * 3600); /* 11 pm: the machine was off till now */
    ck_assert_str_eq(asked(BODIES), "");
    ck_assert_str_eq(asked(STATES), memory_format(arena, "at|waits|%d\n", EVENING + 13 * 3600));
    send_at(EVENING + 13 * 3600);
    ck_assert_str_eq(asked(BODIES),
                     "I could not text you at 8:00 pm as you asked; it is 8:00 am now.\n");
    ck_assert_str_eq(asked(STATES), "at|late|\n");
}
END_TEST

/* Brook, continuous 2: 45 min new; health 90: 40 a battery, 80 in all; no later than that. */
START_TEST(a_battery_that_runs_out_must_be_told_of_before_it_is_empty)
{
    ada_texts("1", "text me when 30 min are left, 2 full batteries");
    send_at(EVENING + 51 * 60);
    ck_assert_str_eq(asked("SELECT urgency, (give_up_utc_s - 1771034400 + 30) / 60 FROM outbox"
                           " WHERE verdict_id IS NULL"),
                     "1|80\n");
}
END_TEST

START_TEST(a_new_watch_replaces_the_one_before_and_the_same_time_is_one_reminder)
{
    ada_texts("1", "text me when 30 min are left, 2 full batteries");
    ada_texts("2", "text me when 20 min are left, 2 full batteries");
    ada_texts("3", "remind me at 8 pm to charge");
    ada_texts("4", "remind me at 8 pm to charge please");
    ck_assert_str_eq(asked("SELECT kind, state, reason FROM reminder"),
                     "running-out|cancelled|charge\nrunning-out|waits|\nat|waits|\n");
}
END_TEST

START_TEST(a_phone_that_is_not_the_rentals_any_more_gets_nothing)
{
    struct fault fault = {""};
    const char *const others[] = {"+12085550124"};
    struct rental_row row;
    bool found, changed;

    ada_texts("1", "remind me at 8 pm to charge");
    ck_assert_int_eq(rental_rows_newest(store, arena, "R-7", &row, &found, &fault), 0);
    row.digest = "another";
    row.json = "{}";
    ck_assert_int_eq(rental_rows_put(store, &row, others, 1, "import", EVENING, &changed, &fault),
                     0);
    send_at(EVENING + 3600);
    ck_assert_str_eq(asked(BODIES), "");
    ck_assert_str_eq(asked("SELECT state, reason FROM reminder"), "cancelled|not-theirs\n");
}
END_TEST

START_TEST(nothing_is_sent_to_a_phone_that_somebody_else_may_read)
{
    ada_texts("1", "remind me at 8 pm to charge both");
    ada_texts("2", "my husband hit me and said he will kill me");
    ada_texts("3", "do not text me he reads my phone");
    send_at(EVENING + 3600);
    ck_assert_str_eq(asked(BODIES), "");
    ck_assert_str_eq(asked("SELECT state FROM reminder"), "waits\n");
    staff_close();
    send_at(EVENING + 3600 + 600);
    ck_assert_str_eq(asked(BODIES),
                     "Reminder, as you asked: \"remind me at 8 pm to charge both\"\n");
}
END_TEST

START_TEST(an_offer_waits_for_nothing)
{
    int64_t next_utc_s;
    struct fault fault = {""};
    const struct reminder_row row = {.phone = ada,
                                     .gateway = "valley",
                                     .text_id = 1,
                                     .reminder = {.kind = REMINDER_OFFERED, .rental_id = "R-7"}};
    struct reminder *list;
    size_t count;

    ada_texts("1", "what is your address");
    ck_assert_int_eq(reminder_rows_set(store, &row, EVENING, &fault), 0);
    ck_assert_int_eq(reminder_rows_next(store, &next_utc_s, &fault), 0);
    ck_assert_int_eq(next_utc_s, INT64_MAX);
    ck_assert_int_eq(reminder_rows_of_phone(store, arena, ada, 2, &list, &count, &fault), 0);
    ck_assert_uint_eq(count, 1);
    ck_assert_int_eq(list[0].kind, REMINDER_OFFERED);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("reminders");
    TCase *tests = tcase_create("reminders");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_set_timeout(tests, 60);
    tcase_add_unchecked_fixture(tests, stage_load, stage_free);
    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_add_test(tests, a_chosen_time_is_kept_to_the_second_also_in_quiet_hours);
    tcase_add_test(tests, that_it_was_missed_is_told_in_the_morning);
    tcase_add_test(tests, a_battery_that_runs_out_must_be_told_of_before_it_is_empty);
    tcase_add_test(tests, a_new_watch_replaces_the_one_before_and_the_same_time_is_one_reminder);
    tcase_add_test(tests, a_phone_that_is_not_the_rentals_any_more_gets_nothing);
    tcase_add_test(tests, nothing_is_sent_to_a_phone_that_somebody_else_may_read);
    tcase_add_test(tests, an_offer_waits_for_nothing);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
