/* All-clears that are in doubt: of somebody else, beside other trouble, or of what hides itself. */
#include "talk_stage.h"

/* One or two minutes apart: what was told just before is known word for word. */
static bool
is_over_behind(const char *const *texts)
{
    size_t i;

    begin_anew();
    for (i = 0; i < 3 && texts[i] != NULL; i++) {
        fixture_wait_minutes(stage, 1);
        fixture_text(stage, texts[i]);
    }
    return fixture_answer(stage, "is-over") != NULL;
}

START_TEST(a_good_value_of_another_or_beside_other_trouble_clears_nothing)
{
    static const char *const told[][3] = {{"my wife spo2 71", "wrong finger, dad is at 96"},
                                          {"my mom spo2 71", "cold finger, my sat is 96"},
                                          {"my spo2 is 71", "cold finger, he is at 96"},
                                          {"my dad spo2 71", "cold finger, she is at 96"},
                                          {"my dad spo2 71", "my mom is fine"},
                                          {"my mom and my dad spo2 71", "cold finger, its 96"},
                                          {"spo2 71", "machine stopped", "cold finger, its 96 now"},
                                          {"spo2 71", "i feel dizzy", "cold finger, its 96 now"},
                                          {"spo2 71 and i feel dizzy", "cold finger, its 96 now"},
                                          {"spo2 71", "its 95 now"},
                                          {"spo2 71", "its 95 now", "72"},
                                          {"spo2 71", "its 91 now", "its 95 now"},
                                          {"spo2 71", "ya va en 96"}};
    static const char *const well[][3] = {{"my wife spo2 71", "wrong finger, she is at 96"},
                                          {"my spo2 is 71", "cold finger, my sat is 96"},
                                          {"my dad spo2 71", "dad is ok now"},
                                          {"spo2 71", "its 95 now", "96"},
                                          {"spo2 71", "ya subio a 95", "96 ahora"}};
    size_t i;

    for (i = 0; i < sizeof told / sizeof told[0]; i++) {
        ck_assert_msg(!is_over_behind(told[i]), "%s", told[i][1]);
        ck_assert_msg(stage->verdict.alert.level > ALERT_NONE, "%s", told[i][1]);
    }
    for (i = 0; i < sizeof well / sizeof well[0]; i++) {
        ck_assert_msg(is_over_behind(well[i]), "%s", well[i][1]);
    }
}
END_TEST

/* What the danger itself hides: only "false alarm" and help take these back. */
START_TEST(feeling_fine_takes_back_no_poison_no_wish_to_die_no_stroke)
{
    static const char *const grave[] = {"sign:poison", "sign:self-harm", "sign:in-danger",
                                        "sign:bad-gas"};
    static const char *const texts[] = {"i feel fine", "hes ok now",    "just kidding",
                                        "forget it",   "estoy bien",    "era broma",
                                        "hes awake",   "me siento bien"};
    size_t i, j;

    for (i = 0; i < sizeof grave / sizeof grave[0]; i++) {
        for (j = 0; j < sizeof texts / sizeof texts[0]; j++) {
            begin_anew();
            fixture_alert(stage, 1, grave[i])->level = ALERT_EMERGENCY;
            stage->alerts[0].grave_utc_s = stage->context.now_utc_s;
            fixture_text(stage, texts[j]);
            ck_assert_msg(fixture_answer(stage, "is-over") == NULL, "%s: %s", grave[i], texts[j]);
        }
        fixture_text(stage, i % 2 == 0 ? "false alarm, sorry" : "falsa alarma");
        ck_assert_msg(fixture_answer(stage, "is-over") != NULL, "%s", grave[i]);
    }
    begin_anew();
    fixture_alert(stage, 1, "sign:stroke-signs")->level = ALERT_EMERGENCY;
    stage->alerts[0].grave_utc_s = stage->context.now_utc_s;
    fixture_text(stage, "hes smiling");
    ck_assert_ptr_null(fixture_answer(stage, "is-over"));
}
END_TEST

/* However long ago it was told; who names the other one, or takes it back, closes it. */
START_TEST(whoever_writes_is_well_says_nothing_of_another)
{
    static const char *const open[][2] = {{"my husband cant breathe", "im alright"},
                                          {"mom has chest pain", "im better"},
                                          {"dad stopped breathing", "i am alright"},
                                          {"she has chest pain", "im ok, were good"},
                                          {"her face burned", "we are ok"},
                                          {"he has chest pain", "estoy bien"},
                                          {"my wife has no breath", "estamos bien gracias"}};
    static const char *const over[][2] = {{"my husband cant breathe", "he is ok"},
                                          {"she has chest pain", "she is fine now"},
                                          {"dad stopped breathing", "were fine he is awake"},
                                          {"my husband cant breathe", "false alarm, im ok"},
                                          {"i cant breathe", "im alright"},
                                          {"chest pain", "im better, were good"},
                                          {"he has chest pain", "ya se siente mejor"},
                                          {"no puedo respirar", "ya estoy mejor"}};
    size_t i;

    for (i = 0; i < sizeof open / sizeof open[0]; i++) {
        begin_anew();
        fixture_text(stage, open[i][0]);
        ck_assert_int_eq(stage->verdict.alert.level, ALERT_EMERGENCY);
        fixture_wait_minutes(stage, 5);
        fixture_text(stage, open[i][1]);
        ck_assert_msg(fixture_answer(stage, "is-over") == NULL, "%s", open[i][0]);
        ck_assert_msg(fixture_answer(stage, "called-911") != NULL, "%s", open[i][0]);
    }
    for (i = 0; i < sizeof over / sizeof over[0]; i++) {
        begin_anew();
        fixture_text(stage, over[i][0]);
        fixture_wait_minutes(stage, 5);
        fixture_text(stage, over[i][1]);
        ck_assert_msg(fixture_answer(stage, "is-over") != NULL, "%s", over[i][0]);
    }
}
END_TEST

START_TEST(found_is_one_after_somebody_was_missed)
{
    static const char *const texts[] = {"we found him", "ya lo encontramos gracias a dios",
                                        "found her cold", "lo encontre frio"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        begin_anew();
        fixture_alert(stage, 1, "sign:missing-person")->level = ALERT_EMERGENCY;
        stage->alerts[0].grave_utc_s = stage->context.now_utc_s;
        fixture_text(stage, texts[i]);
        ck_assert_msg((fixture_answer(stage, "is-over") != NULL) == (i < 2), "%s", texts[i]);
    }
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("is_over_doubt");

    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_add_test(tests, a_good_value_of_another_or_beside_other_trouble_clears_nothing);
    tcase_add_test(tests, feeling_fine_takes_back_no_poison_no_wish_to_die_no_stroke);
    tcase_add_test(tests, whoever_writes_is_well_says_nothing_of_another);
    tcase_add_test(tests, found_is_one_after_somebody_was_missed);
    return fixture_run(tests);
}
