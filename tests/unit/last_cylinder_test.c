/* A cylinder that is as good as empty beside a unit that gives nothing, and who knocks again while
 * we wait whether oxygen flows. With the content as it ships. */
#include "shipped_stage.h"

#include <string.h>

static void
is_level(const char *first, const char *text, enum alert_level level)
{
    shipped_talk_anew();
    fixture_stranger(stage);
    if (first != NULL) {
        fixture_text(stage, first);
        fixture_wait_minutes(stage, 5);
    }
    fixture_text(stage, text);
    ck_assert_msg(stage->verdict.alert.level == level, "%s || %s: %d %s",
                  first == NULL ? "" : first, text, (int)stage->verdict.alert.level,
                  stage->verdict.alert.reason == NULL ? "" : stage->verdict.alert.reason);
}

START_TEST(a_unit_that_gives_nothing_beside_a_cylinder_that_ends_is_an_emergency)
{
    static const char *const texts[] = {
        "machine wont start, using the tank, gauge at 180",
        "concentrator quit and the E reads 200 psi",
        "unit is dead. bottle shows 350",
        "no air from the unit, cylinder at 15 bar",
        "la maquina no prende, al cilindro le quedan 200",
        "el aparato se apago y el tanque marca 300 psi",
    };
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        is_level(NULL, texts[i], ALERT_EMERGENCY);
    }
    is_level("the unit quit", "on the bottle, 200 left", ALERT_EMERGENCY);
}
END_TEST

START_TEST(a_cylinder_that_lasts_or_another_one_or_a_unit_that_runs_is_none)
{
    static const char *const texts[] = {
        "concentrator quit, on the tank, 1900 psi",
        "unit stopped, this tank is at 200 but we have another full one",
        "the unit stopped working, i paid 300 for it",
        "unit stopped near mile 250",
    };
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        is_level(NULL, texts[i], ALERT_URGENT);
    }
    is_level(NULL, "the unit runs well, tank shows 300", ALERT_NONE);
}
END_TEST

START_TEST(who_knocks_again_after_a_unit_stopped_is_in_an_emergency)
{
    static const char *const texts[] = {
        "nobody picks up",  "no one is answering the phone", "hello??",
        "is anybody there", "it just goes to voicemail",     "nadie me contesta",
        "hay alguien ahi?"};
    static const char *const calm[] = {"hello", "thanks", "yes", "when are you coming"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        is_level("the unit quit", texts[i], ALERT_EMERGENCY);
        fixture_says(stage, "911");
    }
    for (i = 0; i < sizeof calm / sizeof calm[0]; i++) {
        is_level("the unit quit", calm[i], ALERT_NONE);
    }
    is_level(NULL, "hello??", ALERT_NONE);
    is_level("power is out, unit runs on its battery", "nobody picks up", ALERT_NONE);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("last cylinder");

    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_checked_fixture(tests, shipped_talk_set_up, stage_tear_down);
    tcase_add_test(tests, a_unit_that_gives_nothing_beside_a_cylinder_that_ends_is_an_emergency);
    tcase_add_test(tests, a_cylinder_that_lasts_or_another_one_or_a_unit_that_runs_is_none);
    tcase_add_test(tests, who_knocks_again_after_a_unit_stopped_is_in_an_emergency);
    return fixture_run(tests);
}
