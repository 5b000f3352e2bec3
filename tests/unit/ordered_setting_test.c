/* What is ordered for this renter may be told; anything beyond is the prescriber's. Ana has
 * continuous 2 at rest, pulse 3 for walking and pulse 2 for sleep. */
#include "shipped_stage.h"

START_TEST(what_the_record_has_as_ordered_is_told_and_calls_nobody)
{
    static const char *const texts[] = {"can i use 3 for walking around",
                                        "is it right to set pulse 3 when walking",
                                        "ok to put it on 2 for sleeping?",
                                        "what number am i on for sleep",
                                        "What's my setting",
                                        "what am i supposed to run on",
                                        "what did my doctor order"};
    static const char *const in_spanish[] = {"puedo ponerlo en 3 para caminar",
                                             "en que numero lo pongo para dormir",
                                             "cual es mi numero"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_NONE, "%s", texts[i]);
        fixture_says(stage, "continuous 2 at rest, pulse 3 for walking, pulse 2 for sleep");
        fixture_says(stage, "Set nothing else unless your prescriber says so");
    }
    for (i = 0; i < sizeof in_spanish / sizeof in_spanish[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, in_spanish[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_NONE, "%s", in_spanish[i]);
        fixture_says(stage, "pulso 3 para caminar");
    }
}
END_TEST

START_TEST(any_other_setting_and_any_reason_for_one_is_the_prescribers)
{
    static const char *const texts[] = {"can i use 4 when i walk",
                                        "should i use 3 when i sleep",
                                        "should i turn it up to 3 when i walk uphill",
                                        "what setting should i use at altitude",
                                        "puedo subirle a 3 para caminar",
                                        "what setting do i use if my fingers go blue",
                                        "what setting do i use, chest infection",
                                        "en que numero lo pongo con fiebre"};
    static const char *const of_other_things[] = {
        "a que numero llamo", "a que numero llamo si me ahogo", "en que numero esta la oficina",
        "which setting for my wife, she forgot her unit", "what number should it be"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_URGENT, "%s", texts[i]);
    }
    for (i = 0; i < sizeof of_other_things / sizeof of_other_things[0]; i++) {
        shipped_talk_anew();
        fixture_text(stage, of_other_things[i]);
        fixture_says_not(stage, "continuous 2 at rest");
        fixture_says_not(stage, "pulso 3 para caminar");
    }
    shipped_talk_anew();
    fixture_text(stage, "can i use 3 when walking, my chest hurts");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    shipped_talk_anew();
    fixture_stranger(stage);
    fixture_text(stage, "am i ok to use 3 when i walk");
    fixture_alerts(stage, ALERT_URGENT, "sign:change-setting");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("ordered setting");

    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_checked_fixture(tests, shipped_talk_set_up, stage_tear_down);
    tcase_add_test(tests, what_the_record_has_as_ordered_is_told_and_calls_nobody);
    tcase_add_test(tests, any_other_setting_and_any_reason_for_one_is_the_prescribers);
    return fixture_run(tests);
}
