#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "alert_text.h"
#include "memory.h"
#include "parts.h"

static const struct alert_row chest_pain = {.number = 12,
                                            .level = ALERT_EMERGENCY,
                                            .phone = "+12085550123",
                                            .first_name = "Gwen",
                                            .place = "Cabin 4, Upper Lodge",
                                            .reason = "sign:chest-pain",
                                            .brief = "chest pain"};

static void *arena;

static void
begin(void)
{
    arena = talloc_new(NULL);
}

static void
end(void)
{
    talloc_free(arena);
}

START_TEST(a_call_names_who_where_what_and_how_to_take_and_close_it)
{
    ck_assert_str_eq(alert_text(arena, &chest_pain, NULL),
                     "EMERGENCY 12: chest pain. Gwen, Cabin 4, Upper Lodge, +12085550123. Text "
                     "MINE 12 to take it, SORTED 12 and what happened to close it.");
}
END_TEST

/* One SMS part: 3GPP TS 23.040, 160 septets. */
START_TEST(a_call_fits_one_part)
{
    struct parts parts = parts_count(alert_text(arena, &chest_pain, NULL));

    ck_assert(parts.gsm7);
    ck_assert_uint_eq(parts.parts, 1);
}
END_TEST

START_TEST(a_recheck_names_who_took_it)
{
    ck_assert_ptr_nonnull(
        strstr(alert_text(arena, &chest_pain, "Robin"), ". Taken by Robin, still open. Text MINE"));
}
END_TEST

START_TEST(a_stranger_is_called_by_the_phone_alone)
{
    struct alert_row stranger = chest_pain;

    stranger.first_name = NULL;
    stranger.place = NULL;
    stranger.level = ALERT_URGENT;
    ck_assert_ptr_nonnull(strstr(alert_text(arena, &stranger, NULL),
                                 "URGENT 12: chest pain. no rental on record, +12085550123."));
}
END_TEST

START_TEST(a_phone_with_two_rentals_is_called_by_both_names)
{
    struct alert_row either = chest_pain;

    either.first_name = NULL;
    either.one_of = "Anna, Bert";
    either.place = "Cabin 4";
    ck_assert_ptr_nonnull(strstr(alert_text(arena, &either, NULL),
                                 "chest pain. one of Anna, Bert; Cabin 4, +12085550123. Text"));
}
END_TEST

START_TEST(what_could_not_be_stored_has_no_number_to_take)
{
    struct alert_row unstored = chest_pain;
    const char *text;

    unstored.number = 0;
    text = alert_text(arena, &unstored, NULL);
    ck_assert_ptr_nonnull(strstr(text, "EMERGENCY: chest pain. Gwen"));
    ck_assert_ptr_null(strstr(text, "MINE"));

    /* Nobody could look for a rental, so nothing is said about one. */
    unstored.first_name = NULL;
    unstored.place = NULL;
    ck_assert_ptr_nonnull(
        strstr(alert_text(arena, &unstored, NULL), "EMERGENCY: chest pain. +12085550123."));
}
END_TEST

START_TEST(not_reached_says_whom_to_ring)
{
    const char *text = alert_text_not_reached(arena, ALERT_EMERGENCY, 12, "+12085550123");

    ck_assert_ptr_nonnull(strstr(text, "EMERGENCY 12: not reached"));
    ck_assert_ptr_nonnull(strstr(text, "Ring +12085550123"));
}
END_TEST

/* ---- The other roads ------------------------------------------------------------------------ */

START_TEST(a_ring_reads_digits_one_by_one_and_names_the_key)
{
    ck_assert_str_eq(alert_spoken(arena, &chest_pain, NULL, false),
                     "Emergency. Alert 12. chest pain. Gwen. Cabin 4, Upper Lodge. Telephone 1 2 0 "
                     "8 5 5 5 0 1 2 3. Press 1 to take it.");
}
END_TEST

START_TEST(a_ring_at_the_recheck_asks_whoever_has_it_and_tells_the_next_who_that_is)
{
    ck_assert_ptr_nonnull(
        strstr(alert_spoken(arena, &chest_pain, "Robin", true),
               ". You have it. Press 1 if you still see to it, 5 if it is settled."));
    ck_assert_ptr_nonnull(strstr(alert_spoken(arena, &chest_pain, "Robin", false),
                                 ". Taken by Robin, still open. Press 1 to take it."));
}
END_TEST

START_TEST(an_e_mail_says_what_a_text_says_and_its_subject_only_how_grave_it_is)
{
    ck_assert_str_eq(
        alert_mail(arena, &chest_pain, "Robin"),
        "EMERGENCY 12: chest pain. Gwen, Cabin 4, Upper Lodge, +12085550123. Taken by Robin, "
        "still open.");
    ck_assert_str_eq(alert_mail_subject(arena, ALERT_EMERGENCY, 12), "EMERGENCY 12");
}
END_TEST

START_TEST(a_webhook_tells_the_same_in_json)
{
    ck_assert_str_eq(alert_json(arena, &chest_pain, "Robin", "Kim", 1771034400),
                     "{\"type\":\"alert.called\",\"timestamp\":\"2026-02-14T02:00:00Z\",\"data\":{"
                     "\"alert\":12,\"level\":\"emergency\",\"to\":\"Kim\",\"about\":\"chest pain\","
                     "\"first_name\":\"Gwen\",\"place\":\"Cabin 4, Upper Lodge\",\"phone\":"
                     "\"+12085550123\",\"taken_by\":\"Robin\"}}");
}
END_TEST

START_TEST(an_alert_about_hutbell_itself_names_no_renter)
{
    const struct alert_row disk = {
        .number = 3, .level = ALERT_OFFICE, .phone = ALERT_ABOUT_US, .brief = "disk nearly full"};

    ck_assert_str_eq(
        alert_text(arena, &disk, NULL),
        "OFFICE 3: disk nearly full. This is about hutbell itself. Text MINE 3 to take "
        "it, SORTED 3 and what happened to close it.");
    ck_assert_ptr_nonnull(strstr(alert_spoken(arena, &disk, NULL, false),
                                 "disk nearly full. This is about the text line itself. Press 1"));
}
END_TEST

START_TEST(what_could_not_be_stored_names_no_key_either)
{
    struct alert_row unstored = chest_pain;

    unstored.number = 0;
    ck_assert_ptr_null(strstr(alert_spoken(arena, &unstored, NULL, false), "Press"));
    ck_assert_ptr_nonnull(strstr(alert_mail(arena, &unstored, NULL), "Our records are down"));
    ck_assert_str_eq(alert_mail_subject(arena, ALERT_URGENT, 0), "URGENT");
}
END_TEST

START_TEST(whoever_has_a_mains_failure_reads_who_is_new)
{
    struct alert_renter renters[] = {
        {.number = 3, .first_name = "Ana", .phone = "+12085550112", .brief = "x", .is_new = true},
        {.number = 1, .first_name = "Gwen", .phone = "+12085550110", .brief = "x"},
        {.number = 4, .phone = "+12085550113", .brief = "x", .until = "8:10 pm", .is_new = true}};
    const struct alert_row alert = {
        .number = 1, .level = ALERT_URGENT, .renters = renters, .renter_count = 3};

    ck_assert_str_eq(alert_text_joined(arena, &alert),
                     "New with URGENT 1, which you have: 3 Ana, +12085550112, charge not told; 4 "
                     "+12085550113, until 8:10 pm. Text SORTED 4 and what happened to close that "
                     "one.");
    renters[0].is_new = renters[2].is_new = false;
    ck_assert_ptr_null(alert_text_joined(arena, &alert));
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("alert_text");
    Suite *suite = suite_create("alert_text");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, begin, end);
    tcase_add_test(tests, a_call_names_who_where_what_and_how_to_take_and_close_it);
    tcase_add_test(tests, a_call_fits_one_part);
    tcase_add_test(tests, a_recheck_names_who_took_it);
    tcase_add_test(tests, a_stranger_is_called_by_the_phone_alone);
    tcase_add_test(tests, a_phone_with_two_rentals_is_called_by_both_names);
    tcase_add_test(tests, what_could_not_be_stored_has_no_number_to_take);
    tcase_add_test(tests, not_reached_says_whom_to_ring);
    tcase_add_test(tests, a_ring_reads_digits_one_by_one_and_names_the_key);
    tcase_add_test(tests, a_ring_at_the_recheck_asks_whoever_has_it_and_tells_the_next_who_that_is);
    tcase_add_test(tests, an_e_mail_says_what_a_text_says_and_its_subject_only_how_grave_it_is);
    tcase_add_test(tests, a_webhook_tells_the_same_in_json);
    tcase_add_test(tests, an_alert_about_hutbell_itself_names_no_renter);
    tcase_add_test(tests, what_could_not_be_stored_names_no_key_either);
    tcase_add_test(tests, whoever_has_a_mains_failure_reads_who_is_new);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
