/* Equipment tables that load but have holes or contradict themselves. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "equipment_check.h"
#include "memory.h"

static void *arena;
static struct remarks remarks;

/* An invented unit without any hole. */
static const struct run_time whole_times[] = {
    {.mode = MODE_CONTINUOUS, .setting_tenths = 10, .lasts = {80, 90}},
    {.mode = MODE_CONTINUOUS, .setting_tenths = 15, .lasts = {60, 70}},
    {.mode = MODE_CONTINUOUS, .setting_tenths = 20, .lasts = {45, 54}},
    {.mode = MODE_PULSE, .setting_tenths = 10, .lasts = {200, 240}},
    {.mode = MODE_PULSE, .setting_tenths = 20, .lasts = {160, 190}},
};
static const struct gauge_step whole_gauge[] = {{0, {0, 10}}, {1, {11, 50}}, {2, {50, 100}}};
static const struct cold_step whole_cold[] = {{20, 100}, {0, 85}};
static const char *const wall[] = {"continuous 2.5", "night"};

static struct equipment unit;

static void
begin(void)
{
    arena = talloc_new(NULL);
    remarks = (struct remarks){.arena = arena};
    unit = (struct equipment){.id = "finch",
                              .name = "Finch",
                              .file = "equipment/finch.json",
                              .run_times = whole_times,
                              .run_time_count = 5,
                              .gauge = whole_gauge,
                              .gauge_count = 3,
                              .cold = whole_cold,
                              .cold_count = 2,
                              .charging_off = {.known = true},
                              .car = {.known = true},
                              .needs_wall = wall,
                              .needs_wall_count = 2,
                              .running = {true, 5, 40}};
}

static void
end(void)
{
    talloc_free(arena);
}

/* Checks; fails unless there is exactly one remark, of this kind, in the file, with these words. */
static void
expect_one(enum remark_kind kind, const char *words)
{
    equipment_check(&unit, &remarks);
    ck_assert_uint_eq(remarks.count, 1);
    ck_assert_int_eq(remarks.list[0].kind, kind);
    ck_assert_str_eq(remarks.list[0].file, "equipment/finch.json");
    ck_assert_msg(strstr(remarks.list[0].what, words) != NULL, "\"%s\" is not in \"%s\"", words,
                  remarks.list[0].what);
    ck_assert_str_ne(remarks.list[0].remedy, "");
}

START_TEST(a_whole_table_has_no_remark)
{
    equipment_check(&unit, &remarks);
    ck_assert_uint_eq(remarks.count, 0);
}
END_TEST

START_TEST(a_setting_left_out_between_two_is_a_hole)
{
    struct run_time times[4];

    memcpy(times, whole_times, sizeof times);
    times[2].setting_tenths = 25; /* 1, 1.5, 2.5: steps of a half */
    unit.run_times = times;
    unit.run_time_count = 3;
    expect_one(REMARK_HOLE, "continuous has 1.5 and 2.5 but not 2");
}
END_TEST

START_TEST(settings_go_by_whole_numbers_unless_finer_ones_are_there)
{
    const struct run_time times[] = {
        {.mode = MODE_PULSE, .setting_tenths = 30, .lasts = {100, 120}},
        {.mode = MODE_PULSE, .setting_tenths = 10, .lasts = {200, 240}},
    };

    unit.run_times = times; /* not in order either */
    unit.run_time_count = 2;
    expect_one(REMARK_HOLE, "pulse has 1 and 3 but not 2");
}
END_TEST

START_TEST(a_setting_that_only_the_wall_feeds_is_no_hole)
{
    const struct run_time times[] = {
        {.mode = MODE_CONTINUOUS, .setting_tenths = 15, .lasts = {60, 70}},
        {.mode = MODE_CONTINUOUS, .setting_tenths = 20, .lasts = {45, 54}},
        {.mode = MODE_CONTINUOUS, .setting_tenths = 30, .lasts = {30, 36}},
    };

    unit.run_times = times;
    unit.run_time_count = 3;
    equipment_check(&unit, &remarks);
    ck_assert_uint_eq(remarks.count, 0);
    ck_assert(equipment_needs_wall(&unit, MODE_CONTINUOUS, 25));
    ck_assert(!equipment_needs_wall(&unit, MODE_CONTINUOUS, 20));
    ck_assert(equipment_needs_wall(&unit, MODE_NIGHT, 40)); /* the whole mode */
    ck_assert(!equipment_needs_wall(&unit, MODE_PULSE, 25));
}
END_TEST

START_TEST(minutes_that_do_not_fall_contradict)
{
    struct run_time times[5];

    memcpy(times, whole_times, sizeof times);
    times[4].lasts = (struct minutes){200, 230};
    unit.run_times = times;
    expect_one(REMARK_EQUIPMENT, "pulse 1 lasts 200 to 240 min and pulse 2 lasts 200 to 230");
}
END_TEST

START_TEST(a_unit_without_run_times_is_a_hole)
{
    unit.run_time_count = 0;
    expect_one(REMARK_HOLE, "/run_times");
}
END_TEST

START_TEST(a_charge_that_no_lights_stand_for_contradicts)
{
    const struct gauge_step gap[] = {{0, {0, 10}}, {1, {15, 50}}, {2, {50, 100}}};

    unit.gauge = gap;
    expect_one(REMARK_EQUIPMENT, "/gauge/steps/1: no lights stand for 10 to 15 %");
}
END_TEST

START_TEST(a_charge_that_two_numbers_of_lights_stand_for_contradicts)
{
    const struct gauge_step overlap[] = {{0, {0, 10}}, {1, {10, 50}}, {2, {40, 100}}};

    unit.gauge = overlap;
    expect_one(REMARK_EQUIPMENT, "/gauge/steps/2: 40 to 50 % are 1 lights and 2");
}
END_TEST

START_TEST(a_gauge_that_does_not_reach_from_0_to_100_contradicts)
{
    const struct gauge_step short_of_both[] = {{0, {5, 10}}, {1, {10, 50}}, {2, {50, 95}}};

    unit.gauge = short_of_both;
    equipment_check(&unit, &remarks);
    ck_assert_uint_eq(remarks.count, 2);
    ck_assert_ptr_nonnull(strstr(remarks.list[0].what, "0 to 5 %"));
    ck_assert_ptr_nonnull(strstr(remarks.list[1].what, "95 to 100 %"));
}
END_TEST

START_TEST(no_gauge_is_a_hole)
{
    unit.gauge_count = 0;
    expect_one(REMARK_HOLE, "/gauge/steps");
}
END_TEST

START_TEST(no_charging_figures_are_a_hole)
{
    unit.charging_off.known = false;
    expect_one(REMARK_HOLE, "/charging/off");
}
END_TEST

START_TEST(nothing_on_the_car_outlet_is_a_hole)
{
    unit.car.known = false;
    expect_one(REMARK_HOLE, "/car");
}
END_TEST

START_TEST(a_cold_table_that_ends_too_warm_is_a_hole)
{
    unit.running.low_celsius = -5;
    expect_one(REMARK_HOLE, "/cold/1: ends at 0 C, but the unit may run at -5 C");
}
END_TEST

START_TEST(a_cold_table_without_the_full_time_is_a_hole)
{
    unit.cold = &whole_cold[1];
    unit.cold_count = 1;
    expect_one(REMARK_HOLE, "/cold/0: begins at 85 %");
}
END_TEST

START_TEST(no_cold_table_is_a_hole)
{
    unit.cold_count = 0;
    expect_one(REMARK_HOLE, "/cold: missing");
}
END_TEST

START_TEST(remarks_come_errors_first_then_for_the_office_and_equals_keep_their_order)
{
    remark_add(&remarks, REMARK_GRADE, NULL, 0, "", "d");
    remark_add(&remarks, REMARK_GRADE, NULL, 0, "", "c")->gravity = 2;
    remark_add(&remarks, REMARK_GRADE, NULL, 0, "", "e");
    remark_add(&remarks, REMARK_RECORD, NULL, 0, "", "b");
    remark_add(&remarks, REMARK_FAULT, NULL, 0, "", "a");
    remarks_sort(&remarks);
    ck_assert_uint_eq(remarks_of_kind(&remarks, REMARK_GRADE), 3);
    for (size_t i = 0; i < remarks.count; i++) {
        ck_assert_int_eq(remarks.list[i].what[0], 'a' + (char)i);
    }
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("equipment_check");
    TCase *tests = tcase_create("equipment_check");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, begin, end);
    tcase_add_test(tests, a_whole_table_has_no_remark);
    tcase_add_test(tests, a_setting_left_out_between_two_is_a_hole);
    tcase_add_test(tests, settings_go_by_whole_numbers_unless_finer_ones_are_there);
    tcase_add_test(tests, a_setting_that_only_the_wall_feeds_is_no_hole);
    tcase_add_test(tests, minutes_that_do_not_fall_contradict);
    tcase_add_test(tests, a_unit_without_run_times_is_a_hole);
    tcase_add_test(tests, a_charge_that_no_lights_stand_for_contradicts);
    tcase_add_test(tests, a_charge_that_two_numbers_of_lights_stand_for_contradicts);
    tcase_add_test(tests, a_gauge_that_does_not_reach_from_0_to_100_contradicts);
    tcase_add_test(tests, no_gauge_is_a_hole);
    tcase_add_test(tests, no_charging_figures_are_a_hole);
    tcase_add_test(tests, nothing_on_the_car_outlet_is_a_hole);
    tcase_add_test(tests, a_cold_table_that_ends_too_warm_is_a_hole);
    tcase_add_test(tests, a_cold_table_without_the_full_time_is_a_hole);
    tcase_add_test(tests, no_cold_table_is_a_hole);
    tcase_add_test(tests,
                   remarks_come_errors_first_then_for_the_office_and_equals_keep_their_order);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
