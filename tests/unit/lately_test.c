/* What a short text tells within the hour after a reading, or after a question about a medicine. */
#include "shipped_stage.h"

#include <string.h>

/* What staff are called about for the second of two texts. */
static const struct alert_call *
after(const char *first, int minutes, const char *text)
{
    shipped_talk_anew();
    fixture_text(stage, first);
    ck_assert_msg(stage->verdict.alert.level >= ALERT_URGENT, "%s", first);
    fixture_wait_minutes(stage, minutes);
    return &fixture_text(stage, text)->alert;
}

#define EACH_EMERGENCY(first, minutes, texts)                                                      \
    each_emergency(first, minutes, texts, sizeof(texts) / sizeof((texts)[0]))

static void
each_emergency(const char *first, int minutes, const char *const *texts, size_t count)
{
    size_t i;

    for (i = 0; i < count; i++) {
        ck_assert_msg(after(first, minutes, texts[i])->level == ALERT_EMERGENCY, "%s || %s", first,
                      texts[i]);
    }
}

#define NONE_EMERGENCY(first, minutes, texts)                                                      \
    none_emergency(first, minutes, texts, sizeof(texts) / sizeof((texts)[0]))

static void
none_emergency(const char *first, int minutes, const char *const *texts, size_t count)
{
    size_t i;

    for (i = 0; i < count; i++) {
        const struct alert_call *call = after(first, minutes, texts[i]);

        ck_assert_msg(call->level < ALERT_EMERGENCY, "%s || %s: %s", first, texts[i], call->reason);
    }
}

/* ---- Readings ------------------------------------------------------------------------------- */

START_TEST(after_a_reading_a_short_text_tells_the_next_one)
{
    static const char *const texts[] = {"84",
                                        "its 83",
                                        "now 84",
                                        "79 now",
                                        "down to 82",
                                        "shes 82",
                                        "dropped to 81",
                                        "its at 80 now",
                                        "still 84",
                                        "84 and dropping",
                                        "83%",
                                        "ok 82 now",
                                        "up to 84",
                                        "checked again, 83",
                                        "only 78",
                                        "eighty two",
                                        "baja 84",
                                        "ya va en 82",
                                        "va en 80",
                                        "va por 75",
                                        "ahora 83",
                                        "sigue en 84",
                                        "ochenta y dos",
                                        "ya bajo a 81",
                                        "ahorita 79 y bajando"};

    EACH_EMERGENCY("her oxygen is 90", 12, texts);
    EACH_EMERGENCY("oxigeno en 90", 55, texts);
}
END_TEST

START_TEST(after_a_reading_that_it_falls_needs_no_number)
{
    static const char *const texts[] = {
        "sigue bajando",     "still dropping", "it keeps going down", "lower now",
        "its still falling", "wont come up",   "no le sube",          "va bajando mas",
        "even lower",        "it is very low", "my mom is dropping",  "no, sigue bajando"};

    EACH_EMERGENCY("sat 89", 12, texts);
}
END_TEST

START_TEST(after_a_reading_other_things_are_still_told)
{
    static const char *const texts[] = {"battery 84",
                                        "84 left on it",
                                        "my spare is at 80",
                                        "la pila en 84",
                                        "both at 80",
                                        "how long at 84",
                                        "im at 84 pine street",
                                        "be there in 45",
                                        "80 dollars right",
                                        "she is 84 years old",
                                        "room 84",
                                        "cabin 72",
                                        "not dropping anymore",
                                        "the battery keeps dropping",
                                        "bateria baja",
                                        "we turned it to 3",
                                        "thanks",
                                        "72 degrees in here",
                                        "its 8:45"};

    NONE_EMERGENCY("her oxygen is 90", 12, texts);
}
END_TEST

START_TEST(a_value_that_is_not_low_is_a_reading_too)
{
    const struct alert_call *call = after("sat 89", 12, "its 94 now");

    ck_assert_int_eq(call->level, ALERT_URGENT);
    ck_assert_str_eq(call->reason, "sign:reading");
}
END_TEST

START_TEST(a_bare_number_is_a_batterys_when_no_reading_was_told_lately)
{
    ck_assert_int_lt(after("sat 89", 90, "84")->level, ALERT_EMERGENCY);
    ck_assert_int_lt(after("sat 89", 90, "sigue bajando")->level, ALERT_EMERGENCY);
    ck_assert_int_lt(after("im dizzy", 12, "84")->level, ALERT_EMERGENCY);
}
END_TEST

START_TEST(what_we_asked_of_a_battery_since_the_reading_is_answered_by_its_charge)
{
    (void)after("her oxygen is 90", 10, "how long do I have");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_WHICH_CHARGE);
    fixture_wait_minutes(stage, 1);
    fixture_text(stage, "84");
    ck_assert_int_lt(stage->verdict.alert.level, ALERT_EMERGENCY);
    fixture_wait_minutes(stage, 1);
    fixture_text(stage, "now 83");
    ck_assert_int_lt(stage->verdict.alert.level, ALERT_EMERGENCY);
    fixture_wait_minutes(stage, 20);
    fixture_text(stage, "now 82"); /* that was spoken of long ago */
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_EMERGENCY);
}
END_TEST

/* ---- Medicines ------------------------------------------------------------------------------ */

START_TEST(after_a_question_about_a_medicine_so_many_are_an_overdose)
{
    static const char *const texts[] = {"i took 10",
                                        "i took ten",
                                        "she already took 5",
                                        "she took 6 by mistake",
                                        "he took like 8 of them",
                                        "dad had 7 already",
                                        "actually it was the whole bottle",
                                        "i took 2 by accident",
                                        "took all of them",
                                        "se tomo seis",
                                        "ya se tomo 8",
                                        "me tome todo el frasco",
                                        "poison control number?",
                                        "le dieron 5 de mas",
                                        "she had half the bottle",
                                        "i took them all",
                                        "like a dozen",
                                        "se acabo el frasco"};

    EACH_EMERGENCY("can i take my sleeping pill", 8, texts);
    EACH_EMERGENCY("can mom have her zintrapan tonight", 30, texts);
}
END_TEST

START_TEST(after_a_question_about_a_medicine_other_counts_are_no_overdose)
{
    static const char *const texts[] = {"i took 1",
                                        "i took 2",
                                        "the nurse took 3 hours",
                                        "it took 5 of us to carry it",
                                        "she has 4 batteries left",
                                        "i took 5 mg",
                                        "we took 3 photos",
                                        "tomo 20 minutos"};

    NONE_EMERGENCY("can i take my sleeping pill", 8, texts);
    ck_assert_int_eq(after("can i take my sleeping pill", 8, "i took 2")->level, ALERT_URGENT);
    ck_assert_int_lt(after("can i take my sleeping pill", 90, "i took 10")->level, ALERT_EMERGENCY);
}
END_TEST

START_TEST(who_asks_for_poison_control_has_somebody_who_needs_it)
{
    fixture_text(stage, "whats the poison control number");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:poison");
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("what was told lately");
    TCase *tests = tcase_create("lately");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_checked_fixture(tests, shipped_talk_set_up, stage_tear_down);
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, after_a_reading_a_short_text_tells_the_next_one);
    tcase_add_test(tests, after_a_reading_that_it_falls_needs_no_number);
    tcase_add_test(tests, after_a_reading_other_things_are_still_told);
    tcase_add_test(tests, a_value_that_is_not_low_is_a_reading_too);
    tcase_add_test(tests, a_bare_number_is_a_batterys_when_no_reading_was_told_lately);
    tcase_add_test(tests, what_we_asked_of_a_battery_since_the_reading_is_answered_by_its_charge);
    tcase_add_test(tests, after_a_question_about_a_medicine_so_many_are_an_overdose);
    tcase_add_test(tests, after_a_question_about_a_medicine_other_counts_are_no_overdose);
    tcase_add_test(tests, who_asks_for_poison_control_has_somebody_who_needs_it);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? 0 : 1;
}
