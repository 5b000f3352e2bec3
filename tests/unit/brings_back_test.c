/* Who has the unit and asks when they may bring it, and who asks when we do. */
#include "shipped_stage.h"

START_TEST(who_has_the_unit_brings_it_back_and_what_we_bring_is_not_told)
{
    static const char *const texts[] = {
        "could i bring it tomorrow instead", "we will drop it off on saturday, is that ok",
        "bring it back at five ok?", "lo puedo devolver pasado manana"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        stage->rentals[0].state = RENTAL_OVERDUE;
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "return-ship") != NULL, "%s", texts[i]);
        fixture_says_not(stage, "We bring it");
    }
    shipped_talk_anew();
    fixture_text(stage, "could i bring it tomorrow instead");
    fixture_alerts(stage, ALERT_OFFICE, "office:return");
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "noon?");
    fixture_says_not(stage, "We bring it");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_OFFICE);
}
END_TEST

START_TEST(what_we_bring_and_what_is_carried_along_is_another_thing)
{
    static const char *const texts[] = {"can i bring it on the plane", "can i bring it to dinner",
                                        "when do you bring it", "where do you deliver"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(fixture_answer(stage, "return-ship") == NULL, "%s", texts[i]);
    }
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("brings back");

    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_checked_fixture(tests, shipped_talk_set_up, stage_tear_down);
    tcase_add_test(tests, who_has_the_unit_brings_it_back_and_what_we_bring_is_not_told);
    tcase_add_test(tests, what_we_bring_and_what_is_carried_along_is_another_thing);
    return fixture_run(tests);
}
