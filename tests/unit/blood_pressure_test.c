#include "fixture.h"

#include "blood_pressure.h"
#include "memory.h"

struct row {
    const char *text;
    int upper, lower; /* 0: none */
};

START_TEST(a_pressure_is_read_by_its_name_or_where_it_can_be_nothing_else)
{
    static const struct row rows[] = {
        {"bp 85/45", 85, 45},
        {"her blood pressure is 205/115", 205, 115},
        {"195/110 what do i do", 195, 110},
        {"su presion esta en 88/50", 88, 50},
        {"blood pressure 150 over 90", 150, 90},
        {"he is 85/50 and dizzy", 85, 50},
        {"batteries at 80/40, on 2", 0, 0},
        {"sats 92/70", 0, 0},
        {"90/60, setting 2, how long", 0, 0},
        {"2000 / 500 psi", 0, 0},
        {"1/2 full", 0, 0},
        {"we leave 120/80/5", 0, 0},
        {"la presion le salio 65 30", 65, 30},
        {"bp 160 - 95", 160, 95},
        {"her bp is 205", 205, 0},
        {"a mi mama le subio la presion a 190", 190, 0},
        {"blood pressure down to 78", 78, 0},
        {"bp 125", 0, 0},
        {"la presion del cilindro en 200", 0, 0},
        {"tank pressure is 1500", 0, 0},
    };
    void *arena = talloc_new(NULL);
    size_t i;

    for (i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct tokens tokens = tokens_read(arena, rows[i].text);
        struct blood_pressure pressure = {0};
        bool found = blood_pressure_read(&tokens, &pressure);

        ck_assert_msg(
            found == (rows[i].upper != 0) &&
                (!found || (pressure.upper == rows[i].upper && pressure.lower == rows[i].lower)),
            "\"%s\" was read as %d/%d", rows[i].text, found ? pressure.upper : 0,
            found ? pressure.lower : 0);
    }
    talloc_free(arena);
}
END_TEST

START_TEST(very_high_and_very_low_ones_are_extreme)
{
    ck_assert(blood_pressure_is_extreme(&(struct blood_pressure){.upper = 205, .lower = 100}));
    ck_assert(blood_pressure_is_extreme(&(struct blood_pressure){.upper = 150, .lower = 122}));
    ck_assert(blood_pressure_is_extreme(&(struct blood_pressure){.upper = 84, .lower = 50}));
    ck_assert(!blood_pressure_is_extreme(&(struct blood_pressure){.upper = 130, .lower = 80}));
}
END_TEST

START_TEST(those_that_nobody_should_wait_with_are_grave)
{
    ck_assert(blood_pressure_is_grave(&(struct blood_pressure){.upper = 225, .lower = 100}));
    ck_assert(blood_pressure_is_grave(&(struct blood_pressure){.upper = 180, .lower = 135}));
    ck_assert(blood_pressure_is_grave(&(struct blood_pressure){.upper = 68, .lower = 35}));
    ck_assert(!blood_pressure_is_grave(&(struct blood_pressure){.upper = 205, .lower = 100}));
    ck_assert(!blood_pressure_is_grave(&(struct blood_pressure){.upper = 84}));
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("blood pressure");

    tcase_add_test(tests, a_pressure_is_read_by_its_name_or_where_it_can_be_nothing_else);
    tcase_add_test(tests, very_high_and_very_low_ones_are_extreme);
    tcase_add_test(tests, those_that_nobody_should_wait_with_are_grave);
    return fixture_run(tests);
}
