#include <check.h>
#include <stdlib.h>

#include "cylinder.h"

/* facts C: a published example (AAOS form), the Virginia EMS minimums, and the stated formula. */
START_TEST(minutes_are_as_the_published_tables_say)
{
    static const struct {
        const char *size;
        int psi, flow_tenths, minutes;
    } rows[] = {
        {"D", 2000, 5, 576},  {"E", 2000, 20, 252}, {"E", 2200, 20, 280}, {"E", 1100, 30, 84},
        {"D", 1800, 20, 128}, {"M", 1500, 40, 507}, {"G", 900, 60, 281},  {"H", 1200, 50, 628},
        {"D", 500, 30, 16},   {"E", 200, 20, 0},    {"E", 150, 20, 0},    {"D", 1150, 100, 15},
        {"E", 750, 100, 15},  {"H", 300, 100, 31},  {"k", 300, 100, 31},  {"M", 392, 100, 29}};
    size_t i;

    for (i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct minutes time =
            cylinder_time(cylinder_factor(rows[i].size), (struct psi){rows[i].psi, rows[i].psi},
                          rows[i].flow_tenths);

        ck_assert_msg(time.low == rows[i].minutes, "%s %d psi: %d", rows[i].size, rows[i].psi,
                      time.low);
        ck_assert_int_ge(time.high, time.low);
        ck_assert_int_le(time.high, time.low + 1);
    }
}
END_TEST

START_TEST(a_size_that_nobody_listed_has_no_factor)
{
    ck_assert_int_eq(cylinder_factor("C"), 0);
    ck_assert_int_eq(cylinder_factor("EE"), 0);
    ck_assert_int_eq(cylinder_factor(""), 0);
}
END_TEST

START_TEST(a_gauge_is_read_only_roughly)
{
    struct psi read = cylinder_gauge(2000);

    ck_assert_int_eq(read.low, 1950);
    ck_assert_int_eq(read.high, 2050);
    ck_assert_int_eq(cylinder_gauge(30).low, 0);
    /* NIST SP 811: 138 bar are 2001.5 psi */
    read = cylinder_gauge_bar(138);
    ck_assert_int_eq(read.low, 2001 - 50);
    ck_assert_int_eq(read.high, 2002 + 50);
}
END_TEST

/* 1 bar is 14.5038 psi: NIST SP 811. */
START_TEST(bar_to_psi_and_back_is_the_same_gauge)
{
    int bar;

    for (bar = 4; bar <= 340; bar++) { /* where neither end of the scale cuts it off */
        struct psi read = cylinder_gauge_bar(bar);
        double middle = (read.low + read.high) / 2.0 / 14.5038;

        ck_assert_int_eq((int)(middle + 0.5), bar);
        ck_assert(read.low <= bar * 14.5038 && bar * 14.5038 <= read.high);
    }
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("cylinder");
    TCase *tests = tcase_create("cylinder");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_test(tests, minutes_are_as_the_published_tables_say);
    tcase_add_test(tests, a_size_that_nobody_listed_has_no_factor);
    tcase_add_test(tests, a_gauge_is_read_only_roughly);
    tcase_add_test(tests, bar_to_psi_and_back_is_the_same_gauge);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
