/* A shock from a defibrillator in the chest; with the content as it ships. */
#include "shipped_stage.h"

#include <string.h>

#include "heart_device.h"

static int
shock(const char *text)
{
    struct tokens tokens = tokens_read(stage->arena, text);

    return (int)heart_shock_told(&tokens).often;
}

static const char *
reason_of(const char *text)
{
    shipped_talk_anew();
    fixture_text(stage, text);
    return stage->verdict.alert.level == ALERT_NONE ? "" : stage->verdict.alert.reason;
}

START_TEST(a_shock_is_told_in_many_words)
{
    static const char *const several[] = {"my defib went off twice",
                                          "my icd shocked me 3 times",
                                          "the defibrillator keeps shocking him",
                                          "pacemaker zapped her again",
                                          "icd went off twice but im near my sister's house",
                                          "i got two jolts from my icd",
                                          "el desfibrilador me dio dos descargas",
                                          "su marcapasos le dio toques otra vez"};
    static const char *const one[] = {"my icd just shocked me",
                                      "defib fired",
                                      "my icd shocked me and the unit beeps",
                                      "my icd went off at 3",
                                      "his icd fired, he is near my cabin",
                                      "el marcapasos le dio un toque a mi papa",
                                      "mi desfibrilador me dio una descarga"};
    static const char *const none[] = {"is there a defibrillator in the lobby",
                                       "will the icd shock me near the unit",
                                       "my icd hasnt gone off",
                                       "my defib went off last year",
                                       "i have an icd, can i fly with it",
                                       "the unit shocked me",
                                       "the alarm went off, mom has a pacemaker",
                                       "my pacemaker battery went off warranty",
                                       "fireworks went off near dad, he has a pacemaker",
                                       "tuvimos un choque, mi mama tiene marcapasos",
                                       "el caballo le dio una patada, trae marcapasos",
                                       "the outlet shocked me and i have a pacemaker",
                                       "puede el concentrador afectar mi marcapasos"};
    size_t i;

    for (i = 0; i < sizeof several / sizeof several[0]; i++) {
        ck_assert_msg(shock(several[i]) == SHOCKED_SEVERAL_TIMES, "%s", several[i]);
    }
    for (i = 0; i < sizeof one / sizeof one[0]; i++) {
        ck_assert_msg(shock(one[i]) == SHOCKED_ONCE, "%s", one[i]);
    }
    for (i = 0; i < sizeof none / sizeof none[0]; i++) {
        ck_assert_msg(shock(none[i]) == NOT_SHOCKED, "%s", none[i]);
    }
}
END_TEST

/* Common practice, no source. */
START_TEST(several_or_one_with_a_symptom_are_an_emergency)
{
    static const char *const grave[] = {"my defib went off twice", "defib fired and im dizzy",
                                        "el desfibrilador me dio dos descargas",
                                        "el DAI se activo y se siente mareado"};
    size_t i;

    for (i = 0; i < sizeof grave / sizeof grave[0]; i++) {
        const char *reason = reason_of(grave[i]);

        ck_assert_msg(strcmp(reason, "sign:sudden-illness") == 0, "%s: %s", grave[i], reason);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "%s", grave[i]);
    }
    ck_assert_str_eq(reason_of("mi desfibrilador me dio una descarga"), "sign:heart-racing");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_URGENT);
    ck_assert_str_eq(reason_of("pacemaker gave me a jolt and my chest hurts"), "sign:chest-pain");
    (void)reason_of("my icd just shocked me");
    fixture_wait_minutes(stage, 1);
    fixture_text(stage, "im dizzy");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_EMERGENCY);
}
END_TEST

/* Whoever is hurt as well is told what helps there. */
START_TEST(a_shock_takes_nothing_from_another_danger)
{
    static const char *const both[][2] = {
        {"choque de auto, mi papa trae marcapasos", "head-injury"},
        {"ran over his legs with the truck, pacemaker set off", "head-injury"},
        {"fell down the stairs and my defibrillator shocked me", "head-injury"},
        {"his icd shocked him he fell off the ladder", "head-injury"},
        {"gas explosion, everything blew, my lifevest went off", "face-burn-fire"},
        {"la estufa exploto y el desfibrilador le dio una descarga", "face-burn-fire"},
        {"bleeding bad from the leg, icd went off", "bleeding"}};
    size_t i;

    for (i = 0; i < sizeof both / sizeof both[0]; i++) {
        (void)reason_of(both[i][0]);
        ck_assert_int_eq(stage->verdict.alert.level, ALERT_EMERGENCY);
        ck_assert_msg(fixture_answer(stage, both[i][1]) != NULL, "%s", both[i][0]);
    }
    (void)reason_of("my icd just shocked me");
    fixture_wait_minutes(stage, 1);
    fixture_text(stage, "there is smoke in the cabin");
    ck_assert_ptr_null(fixture_answer(stage, "heart-racing"));
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("heart_device");

    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_checked_fixture(tests, shipped_talk_set_up, stage_tear_down);
    tcase_add_test(tests, a_shock_is_told_in_many_words);
    tcase_add_test(tests, several_or_one_with_a_symptom_are_an_emergency);
    tcase_add_test(tests, a_shock_takes_nothing_from_another_danger);
    tcase_set_timeout(tests, 120);
    return fixture_run(tests);
}
