/* "It stopped beeping": thanked, and nothing is called well. */
#include "stage.h"

START_TEST(what_is_over_is_thanked_for_and_raises_nothing)
{
    static const char *const texts[] = {"it stopped beeping now", "the power is back",
                                        "it works again, thanks", "ya no pita",
                                        "ya regreso la luz",      "ya se le paso"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "is-over") != NULL, "%s", texts[i]);
        ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
        fixture_says(stage, "911");
    }
}
END_TEST

START_TEST(what_is_not_or_only_may_be_over_is_not)
{
    static const char *const texts[] = {"is it ok when it stopped beeping?",
                                        "it is still not working now",
                                        "works now but the light stays red",
                                        "ya no pita pero no sale aire",
                                        "me siento mejor con 3",
                                        "she feels better without it",
                                        "se siente mejor sin la canula"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "is-over") == NULL, "%s", texts[i]);
    }
}
END_TEST

/* "Ya regreso" may be the power or somebody who says that they come back. */
START_TEST(until_oxygen_is_told_to_flow_that_is_asked_again)
{
    fixture_text(stage, "se fue la luz");
    fixture_wait_minutes(stage, 4);
    fixture_text(stage, "ya regreso");
    ck_assert_ptr_nonnull(fixture_answer(stage, "is-over"));
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
    fixture_says(stage, "Conteste SI o NO");
    fixture_says_not(stage, "Empaque");
}
END_TEST

START_TEST(an_open_alert_hears_of_it)
{
    stage->keeps_alerts = true;
    fixture_text(stage, "machine stopped");
    fixture_wait_minutes(stage, 4);
    fixture_text(stage, "Yes");
    fixture_text(stage, "the alarm stopped");
    fixture_alerts(stage, ALERT_OFFICE, "is-over");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("is_over");

    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_add_test(tests, what_is_over_is_thanked_for_and_raises_nothing);
    tcase_add_test(tests, what_is_not_or_only_may_be_over_is_not);
    tcase_add_test(tests, until_oxygen_is_told_to_flow_that_is_asked_again);
    tcase_add_test(tests, an_open_alert_hears_of_it);
    return fixture_run(tests);
}
