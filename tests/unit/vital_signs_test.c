/* A pulse and how often somebody breathes, told as numbers. */
#include "fixture.h"

#include <string.h>

#include "memory.h"
#include "shipped.h"
#include "vital_signs.h"

struct row {
    const char *text;
    enum vital pulse, breaths;
};

static void *arena;

static void
set_up(void)
{
    arena = memory_must(talloc_new(NULL));
}

static void
tear_down(void)
{
    talloc_free(arena);
}

static void
each_is(const struct row *rows, size_t count)
{
    size_t i;

    for (i = 0; i < count; i++) {
        struct tokens tokens = tokens_read(arena, rows[i].text);

        ck_assert_msg(vital_pulse(&tokens) == rows[i].pulse, "pulse of \"%s\"", rows[i].text);
        ck_assert_msg(vital_breaths(&tokens) == rows[i].breaths, "breaths of \"%s\"", rows[i].text);
    }
}

#define EACH_IS(rows) each_is(rows, sizeof(rows) / sizeof((rows)[0]))

START_TEST(a_pulse_is_looked_at_where_it_is_far_out_and_grave_where_farther)
{
    static const struct row rows[] = {
        {"pulse 36", VITAL_GRAVE, VITAL_NOT_FAR_OUT},
        {"her heart rate is 172 sitting down", VITAL_GRAVE, VITAL_NOT_FAR_OUT},
        {"HR: 158", VITAL_GRAVE, VITAL_NOT_FAR_OUT},
        {"160 bpm just sitting", VITAL_GRAVE, VITAL_NOT_FAR_OUT},
        {"el pulso esta en treinta y cinco", VITAL_GRAVE, VITAL_NOT_FAR_OUT},
        {"trae 155 latidos por minuto", VITAL_GRAVE, VITAL_NOT_FAR_OUT},
        {"frecuencia cardiaca de 31", VITAL_GRAVE, VITAL_NOT_FAR_OUT},
        {"pulse went up to 128", VITAL_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"dad's pulse is only 46", VITAL_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"le subio el pulso a 134", VITAL_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"pulso 134", VITAL_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"her heart rate was 161 last week", VITAL_FAR_OUT, VITAL_NOT_FAR_OUT},
    };

    EACH_IS(rows);
}
END_TEST

START_TEST(a_setting_a_charge_and_a_time_are_no_pulse)
{
    static const struct row rows[] = {
        {"pulse 2", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"pulse 5 and 40% left", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"on pulse 45 left how long", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"pulse 40%", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"pulse, 35 and 60", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"2 hr 45 from here", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"an hr 30 by car", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"con pulso 2 y 40 por ciento", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"pulso 45 por ciento", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"pulse ox 84", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"heart rate 74", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"do we call if the pulse is over 120", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"pulse 128/70", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
    };

    EACH_IS(rows);
}
END_TEST

START_TEST(too_many_and_too_few_breaths_a_minute_are_grave)
{
    static const struct row rows[] = {
        {"25 breaths a minute", VITAL_NOT_FAR_OUT, VITAL_GRAVE},
        {"he is breathing 36 times a minute", VITAL_NOT_FAR_OUT, VITAL_GRAVE},
        {"breathing at 40 per minute", VITAL_NOT_FAR_OUT, VITAL_GRAVE},
        {"respiratory rate is 31", VITAL_NOT_FAR_OUT, VITAL_GRAVE},
        {"she takes six breaths a minute", VITAL_NOT_FAR_OUT, VITAL_GRAVE},
        {"respira 33 veces por minuto", VITAL_NOT_FAR_OUT, VITAL_GRAVE},
        {"hace 7 respiraciones por minuto", VITAL_NOT_FAR_OUT, VITAL_GRAVE},
        {"frecuencia respiratoria de 29", VITAL_NOT_FAR_OUT, VITAL_GRAVE},
        {"24 breaths a minute", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"16 respiraciones por minuto", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"takes 3 breaths before it puffs", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"can it puff at 30 breaths a minute", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"breathing at 2 per minute flow", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
        {"it beeps 30 times a minute", VITAL_NOT_FAR_OUT, VITAL_NOT_FAR_OUT},
    };

    EACH_IS(rows);
}
END_TEST

/* Of somebody who has not written before. */
static struct fixture *
first_text(const char *text)
{
    struct fixture *stage = fixture_new();

    stage->context.kb = shipped_kb();
    fixture_text(stage, text);
    return stage;
}

START_TEST(staff_are_called_for_them_and_for_the_grave_ones_911_is_named)
{
    static const char *const urgent[] = {"her pulse is 125", "pulso 46", "bp 195 over 100",
                                         "su presion esta en 85 50"};
    static const char *const grave[] = {"pulse 33",
                                        "heart rate 176 and he is just lying there",
                                        "pulso en 34",
                                        "31 breaths a minute",
                                        "respira 38 veces por minuto",
                                        "bp 68/35",
                                        "presion 230 con 125"};
    struct fixture *stage;
    size_t i;

    for (i = 0; i < sizeof urgent / sizeof urgent[0]; i++) {
        stage = first_text(urgent[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_URGENT, "%s", urgent[i]);
        fixture_free(stage);
    }
    for (i = 0; i < sizeof grave / sizeof grave[0]; i++) {
        stage = first_text(grave[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "%s", grave[i]);
        fixture_says(stage, "911");
        fixture_free(stage);
    }
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("vital signs");
    TCase *tests = tcase_create("vital signs");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, a_pulse_is_looked_at_where_it_is_far_out_and_grave_where_farther);
    tcase_add_test(tests, a_setting_a_charge_and_a_time_are_no_pulse);
    tcase_add_test(tests, too_many_and_too_few_breaths_a_minute_are_grave);
    tcase_add_test(tests, staff_are_called_for_them_and_for_the_grave_ones_911_is_named);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? 0 : 1;
}
