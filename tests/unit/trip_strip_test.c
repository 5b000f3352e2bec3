/* A trip as a strip of characters and as SVG, and legs as options of the command line. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "trip_leg.h"
#include "trip_strip.h"

/* One battery of a 2 L/min unit lasts 45 to 54 minutes (common practice, no source). */
enum { LASTS = 45 };

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

struct drawn {
    struct trip_leg legs[TRIP_LEGS_MAX];
    enum leg_kind kinds[TRIP_LEGS_MAX];
    struct trip trip;
    struct trip_outcome outcome;
    struct trip_drawing drawing;
};

static const struct trip_battery two[] = {{100, 100}, {100, 100}};

static struct drawn *
drawn(const int *minutes, const enum trip_power *powers, size_t count)
{
    struct drawn *drawn = memory_new(arena, struct drawn);
    size_t i;

    for (i = 0; i < count; i++) {
        drawn->legs[i] =
            (struct trip_leg){.minutes = minutes[i], .power = powers[i], .lasts = LASTS};
        drawn->kinds[i] = powers[i] == TRIP_WALL ? LEG_WAIT : LEG_DRIVE;
    }
    drawn->trip = (struct trip){.legs = drawn->legs,
                                .leg_count = count,
                                .batteries = two,
                                .battery_count = 2,
                                .wall = {true, true, {true, {96, 96}, {160, 160}}},
                                .car = {true, false, {0}}};
    trip_play(&drawn->trip, &drawn->outcome);
    drawn->drawing = (struct trip_drawing){&drawn->trip, &drawn->outcome, drawn->kinds};
    return drawn;
}

/* 90 minutes in all, a column each 15: 100, 83, 66, 50, 33, 16 and 0 %. */
START_TEST(a_battery_that_is_used_up_goes_down_to_where_it_is_empty)
{
    const int minutes[] = {120};
    const enum trip_power powers[] = {TRIP_NO_POWER};

    ck_assert_str_eq(trip_strip(arena, &drawn(minutes, powers, 1)->drawing),
                     "Mean charge of all batteries, counted low; a column is 15 min.\n"
                     "100% |#\n"
                     " 90% |#:\n"
                     " 80% |##\n"
                     " 70% |##:\n"
                     " 60% |###\n"
                     " 50% |####\n"
                     " 40% |####:\n"
                     " 30% |#####\n"
                     " 20% |#####:\n"
                     " 10% |######\n"
                     "     ++---+---+\n"
                     "hours 0   1   2\n"
                     "power .........\n"
                     "  leg drive\n"
                     "            ^ empty after 1 h 30 min (drive), 30 min short\n"
                     "(# full 10%, : part of it; power: . battery, C car, W wall)\n");
}
END_TEST

START_TEST(power_and_legs_stand_below_their_hours)
{
    const int minutes[] = {60, 90, 30};
    const enum trip_power powers[] = {TRIP_NO_POWER, TRIP_WALL, TRIP_CAR};
    const char *strip = trip_strip(arena, &drawn(minutes, powers, 3)->drawing);

    ck_assert_ptr_nonnull(strstr(strip, "\npower ....WWWWWWCCC\n"));
    ck_assert_ptr_nonnull(strstr(strip, "\n  leg drivstay  dri\n"));
    ck_assert_ptr_nonnull(strstr(strip, "\nlasts 3 h, about "));
}
END_TEST

START_TEST(strip_and_picture_say_both_that_a_trip_is_too_tight)
{
    const int minutes[] = {85}; /* of 90 */
    const enum trip_power powers[] = {TRIP_NO_POWER};
    static const char words[] = " left: too tight, keep ";

    ck_assert_ptr_nonnull(strstr(trip_strip(arena, &drawn(minutes, powers, 1)->drawing), words));
    ck_assert_ptr_nonnull(strstr(trip_svg(arena, &drawn(minutes, powers, 1)->drawing), words));
}
END_TEST

START_TEST(words_that_fit_on_neither_side_of_the_mark_stand_below_it)
{
    const int minutes[] = {420, 240};
    const enum trip_power powers[] = {TRIP_CAR, TRIP_NO_POWER};
    const char *strip = trip_strip(arena, &drawn(minutes, powers, 2)->drawing);
    const char *mark = strstr(strip, "^\nempty after 8 h 30 min");

    ck_assert_msg(mark != NULL, "%s", strip);
    ck_assert_int_eq(mark[-41], '\n'); /* 34 columns of 15 min behind the names of the rows */
}
END_TEST

START_TEST(no_line_is_wider_than_a_terminal)
{
    static const int lengths[] = {1, 14, 1040, 1100, 1440, 2880};
    size_t i;

    for (i = 0; i < sizeof lengths / sizeof lengths[0]; i++) {
        const int minutes[] = {lengths[i], lengths[i], 60};
        const enum trip_power powers[] = {TRIP_WALL, TRIP_WALL, TRIP_NO_POWER};
        const char *strip = trip_strip(arena, &drawn(minutes, powers, i < 3 ? 2 : 3)->drawing);

        while (*strip != '\0') {
            size_t length = strcspn(strip, "\n");

            ck_assert_msg(length <= TRIP_STRIP_WIDTH, "%d: %.*s", lengths[i], (int)length, strip);
            strip += length + 1;
        }
    }
}
END_TEST

START_TEST(the_picture_tells_the_same_in_words)
{
    const int minutes[] = {120};
    const enum trip_power powers[] = {TRIP_NO_POWER};
    const char *svg = trip_svg(arena, &drawn(minutes, powers, 1)->drawing);

    ck_assert_int_eq(strncmp(svg, "<svg xmlns=\"http://www.w3.org/2000/svg\"", 39), 0);
    ck_assert_ptr_nonnull(strstr(svg, "empty after 1 h 30 min (drive), 30 min short</title>"));
    ck_assert_ptr_nonnull(strstr(svg, ">drive, battery</text>"));
    ck_assert_ptr_nonnull(strstr(svg, "stroke-dasharray"));
    ck_assert_str_eq(svg + strlen(svg) - 7, "</svg>\n");
}
END_TEST

static bool
reads(const char *words, struct told_leg *leg)
{
    return trip_leg_read(memory_copy(arena, words), leg);
}

START_TEST(a_leg_is_kind_length_and_power)
{
    static const char *const bad[] = {"",           "drive",       "drive x",    "fly 60",
                                      "drive 0",    "drive 1:60",  "drive 60 x", "drive 2881",
                                      "drive 49:0", "drive 60min", "drive -5"};
    struct told_leg leg;
    size_t i;

    ck_assert(reads("drive 1:40 car", &leg));
    ck_assert_int_eq(leg.kind, LEG_DRIVE);
    ck_assert_int_eq(leg.minutes, 100);
    ck_assert_int_eq(leg.power, POWER_SOURCE_CAR);
    ck_assert(reads("walk 45", &leg));
    ck_assert_int_eq(leg.kind, LEG_HIKE);
    ck_assert_int_eq(leg.power, POWER_SOURCE_NONE);
    for (i = 0; i < sizeof bad / sizeof bad[0]; i++) {
        ck_assert_msg(!reads(bad[i], &leg), "%s", bad[i]);
    }
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("trip_strip");
    TCase *tests = tcase_create("trip_strip");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, a_battery_that_is_used_up_goes_down_to_where_it_is_empty);
    tcase_add_test(tests, power_and_legs_stand_below_their_hours);
    tcase_add_test(tests, strip_and_picture_say_both_that_a_trip_is_too_tight);
    tcase_add_test(tests, words_that_fit_on_neither_side_of_the_mark_stand_below_it);
    tcase_add_test(tests, no_line_is_wider_than_a_terminal);
    tcase_add_test(tests, the_picture_tells_the_same_in_words);
    tcase_add_test(tests, a_leg_is_kind_length_and_power);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
