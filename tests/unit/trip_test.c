#include <check.h>
#include <stdlib.h>

#include "trip.h"

/* One battery of a 2 L/min unit lasts 45 to 54 minutes (common practice, no source). */
enum { LASTS = 45 };

static const struct charge_minutes rate = {true, {96, 96}, {160, 160}};
static const struct trip_battery three[] = {{100, 100}, {100, 100}, {100, 100}};

static struct trip_leg
leg(int minutes, enum trip_power power)
{
    return (struct trip_leg){.minutes = minutes, .power = power, .lasts = LASTS};
}

static struct trip_outcome
played(const struct trip_leg *legs, size_t count, const struct trip_battery *batteries,
       size_t battery_count)
{
    const struct trip trip = {.legs = legs,
                              .leg_count = count,
                              .batteries = batteries,
                              .battery_count = battery_count,
                              .lasts_after = LASTS,
                              .wall = {true, true, rate},
                              .car = {true, false, {0}}};
    struct trip_outcome outcome;

    trip_play(&trip, &outcome);
    return outcome;
}

/* Three batteries: 135 to 162 minutes (common practice, no source); the low end is planned on. */
START_TEST(three_batteries_of_45_minutes_last_135)
{
    struct trip_leg drive = leg(135, TRIP_NO_POWER);
    struct trip_outcome outcome = played(&drive, 1, three, 3);

    ck_assert(outcome.lasts);
    ck_assert_int_eq(outcome.margin_minutes, 0);
    drive.minutes = 136;
    outcome = played(&drive, 1, three, 3);
    ck_assert(!outcome.lasts);
    ck_assert_int_eq(outcome.runs_out_at, 135);
    ck_assert_int_eq(outcome.short_minutes, 1);
}
END_TEST

START_TEST(an_outlet_that_only_runs_the_unit_spares_the_batteries)
{
    struct trip_leg legs[] = {leg(300, TRIP_CAR), leg(100, TRIP_NO_POWER)};
    struct trip_outcome outcome = played(legs, 2, three, 3);

    ck_assert(outcome.lasts);
    ck_assert_int_eq(outcome.margin_minutes, 35);
}
END_TEST

/* Three batteries of 45 min: after 2 h 10 min on them 5 are left, whatever a wall gives later; for
 * 130 min 32 are to be kept in hand (20 %). */
START_TEST(what_is_charged_later_makes_no_tight_stretch_safe)
{
    struct trip_leg legs[] = {leg(130, TRIP_NO_POWER), leg(480, TRIP_WALL), leg(20, TRIP_NO_POWER)};
    struct trip_outcome outcome = played(legs, 3, three, 3);

    ck_assert(outcome.lasts);
    ck_assert_int_gt(outcome.margin_minutes, 60);
    ck_assert_int_le(outcome.least_minutes, 5);
    ck_assert_int_ge(outcome.reserve_minutes, 26);
    ck_assert(!trip_is_safe(&outcome));
    legs[0].minutes = 60;
    outcome = played(legs, 3, three, 3);
    ck_assert(trip_is_safe(&outcome));
}
END_TEST

START_TEST(a_stop_at_the_wall_charges_what_was_used_up)
{
    struct trip_leg legs[] = {leg(90, TRIP_NO_POWER), leg(96, TRIP_WALL), leg(80, TRIP_NO_POWER)};
    struct trip_outcome outcome = played(legs, 3, three, 3);

    /* one full and one at 80 %, less a hair by rounding: 45 + 36 */
    ck_assert(outcome.lasts);
    ck_assert_int_ge(outcome.margin_minutes, 0);
    ck_assert_int_le(outcome.margin_minutes, 1);
    legs[1].minutes = 48; /* 40 %: 18 minutes */
    outcome = played(legs, 3, three, 3);
    ck_assert(!outcome.lasts);
    ck_assert_uint_eq(outcome.runs_out_leg, 2);
}
END_TEST

START_TEST(asleep_only_the_battery_in_the_unit_counts)
{
    struct trip_leg night = leg(60, TRIP_NO_POWER);
    struct trip_outcome outcome;

    night.asleep = true;
    outcome = played(&night, 1, three, 3);
    ck_assert(!outcome.lasts);
    ck_assert_int_eq(outcome.runs_out_at, 45);
}
END_TEST

/* Nobody changes the battery: of three of 45 min, 5 of the one in the unit are left after 40. */
START_TEST(what_is_left_after_a_night_is_what_the_battery_in_the_unit_has)
{
    struct trip_leg night = leg(40, TRIP_NO_POWER);
    struct trip_outcome outcome = played(&night, 1, three, 3);

    ck_assert_int_eq(outcome.least_minutes, 95);
    ck_assert(trip_is_safe(&outcome));
    night.asleep = true;
    outcome = played(&night, 1, three, 3);
    ck_assert(outcome.lasts);
    ck_assert_int_ge(outcome.least_minutes, 4); /* a hair less by rounding */
    ck_assert_int_le(outcome.least_minutes, 5);
    ck_assert_int_eq(outcome.margin_minutes, outcome.least_minutes);
    ck_assert(!trip_is_safe(&outcome));
}
END_TEST

/* Who wakes up can change batteries; who sleeps on cannot. */
START_TEST(a_night_is_as_tight_as_its_battery_also_if_they_go_on_without_power)
{
    struct trip_leg legs[] = {leg(40, TRIP_NO_POWER), leg(10, TRIP_NO_POWER)};
    struct trip_outcome outcome;

    legs[0].asleep = true;
    outcome = played(legs, 2, three, 3);
    ck_assert(outcome.lasts);
    ck_assert_int_le(outcome.least_minutes, 5);
    ck_assert(!outcome.least_at_end);
    ck_assert(!trip_is_safe(&outcome));
    legs[0].minutes = 20; /* 25 are left, 15 to be kept */
    outcome = played(legs, 2, three, 3);
    ck_assert(trip_is_safe(&outcome));
}
END_TEST

START_TEST(without_a_stretch_on_battery_what_is_left_is_that_of_the_end)
{
    struct trip_leg legs[] = {leg(60, TRIP_WALL), leg(60, TRIP_CAR)};
    struct trip trip = {.lasts_after = LASTS};
    struct trip_outcome outcome = played(legs, 2, three, 3);

    ck_assert(!outcome.has_stretch);
    ck_assert(trip_is_safe(&outcome));
    ck_assert_int_eq(trip_left(&trip, &outcome), 135);
}
END_TEST

/* After 60 min on battery 75 of 135 are left; the wall then fills them again. */
START_TEST(what_is_told_as_left_is_that_of_the_tightest_stretch_or_of_the_end_if_that_is_less)
{
    struct trip_leg legs[] = {leg(60, TRIP_NO_POWER), leg(480, TRIP_WALL), leg(5, TRIP_NO_POWER)};
    struct trip trip = {.lasts_after = LASTS};
    struct trip_outcome outcome = played(legs, 3, three, 3);

    ck_assert(trip_is_safe(&outcome));
    ck_assert_int_gt(outcome.margin_minutes, 120);
    ck_assert_int_le(trip_left(&trip, &outcome), 75);
    ck_assert_int_ge(trip_left(&trip, &outcome), 74);
    ck_assert(!outcome.least_at_end);
    /* 85 min leave 50 of which 22 are to be kept, 15 more leave 35 of which 15 are: the slack of
     * the first is greater, the rest of the second smaller */
    legs[0].minutes = 85;
    legs[1] = leg(1, TRIP_CAR);
    legs[2].minutes = 15;
    outcome = played(legs, 3, three, 3);
    ck_assert_int_eq(trip_left(&trip, &outcome), outcome.margin_minutes);
}
END_TEST

START_TEST(what_mends_a_trip_is_tried_the_easiest_first)
{
    struct trip_leg legs[] = {leg(150, TRIP_NO_POWER)};
    struct trip trip = {.legs = legs,
                        .leg_count = 1,
                        .batteries = three,
                        .battery_count = 3,
                        .wall = {true, true, rate},
                        .car = {true, false, {0}}};

    ck_assert_int_eq(trip_mend(&trip, 80), TRIP_MEND_ONE_BATTERY); /* 135 + 36 */
    legs[0].minutes = 190;
    ck_assert_int_eq(trip_mend(&trip, 80), TRIP_MEND_TWO_BATTERIES);
    legs[0].minutes = 300;
    ck_assert_int_eq(trip_mend(&trip, 80), TRIP_MEND_NONE);
    legs[0].stays = true;
    ck_assert_int_eq(trip_mend(&trip, 80), TRIP_MEND_WALL_STOPS);
    legs[0].drives = true;
    ck_assert_int_eq(trip_mend(&trip, 80), TRIP_MEND_CAR_CORD);
}
END_TEST

static int
below(int most)
{
    return rand() % most; /* NOLINT: seeded, the same every time */
}

static size_t
make_up(struct trip_leg *legs, struct trip_battery *batteries, size_t battery_count)
{
    size_t count = 1 + (size_t)below(5), i;

    for (i = 0; i < count; i++) {
        legs[i] = leg(below(200), (enum trip_power)below(3));
        legs[i].lasts = 30 + below(100);
    }
    for (i = 0; i < battery_count; i++) {
        batteries[i] = (struct trip_battery){below(101), 70 + below(31)};
    }
    return count;
}

START_TEST(more_charge_never_gives_less_and_another_leg_never_mends)
{
    int round;

    srand(7);
    for (round = 0; round < 3000; round++) {
        struct trip_leg legs[6];
        struct trip_battery batteries[3];
        size_t count = make_up(legs, batteries, 3);
        struct trip_outcome less = played(legs, count, batteries, 3), more, longer;
        size_t which = (size_t)below(3);

        batteries[which].charge += below(101 - batteries[which].charge);
        more = played(legs, count, batteries, 3);
        ck_assert_int_ge(more.runs_out_at, less.runs_out_at);
        ck_assert_int_le(more.short_minutes, less.short_minutes);
        legs[count] = leg(below(200), TRIP_NO_POWER);
        longer = played(legs, count + 1, batteries, 3);
        ck_assert(!longer.lasts || more.lasts);
        ck_assert_int_ge(longer.short_minutes, more.short_minutes);
        legs[count].lasts = legs[count - 1].lasts; /* what is left is told at the last leg's rate */
        ck_assert_int_le(played(legs, count + 1, batteries, 3).margin_minutes, more.margin_minutes);
    }
}
END_TEST

START_TEST(the_strip_has_a_sample_every_quarter_of_an_hour_and_fits)
{
    struct trip_leg legs[] = {leg(135, TRIP_NO_POWER), leg(2880, TRIP_WALL)};
    struct trip_outcome outcome = played(legs, 1, three, 3);

    ck_assert_int_eq(outcome.sample_minutes, 15);
    ck_assert_uint_eq(outcome.sample_count, 10);
    ck_assert_int_eq(outcome.samples[0], 100);
    ck_assert_int_eq(outcome.samples[9], 0);
    outcome = played(legs, 2, three, 3);
    ck_assert_uint_le(outcome.sample_count, TRIP_SAMPLES_MAX);
    ck_assert_int_eq(outcome.samples[outcome.sample_count - 1], 100);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("trip");
    TCase *tests = tcase_create("trip");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_test(tests, three_batteries_of_45_minutes_last_135);
    tcase_add_test(tests, an_outlet_that_only_runs_the_unit_spares_the_batteries);
    tcase_add_test(tests, a_stop_at_the_wall_charges_what_was_used_up);
    tcase_add_test(tests, what_is_charged_later_makes_no_tight_stretch_safe);
    tcase_add_test(tests, asleep_only_the_battery_in_the_unit_counts);
    tcase_add_test(tests, what_is_left_after_a_night_is_what_the_battery_in_the_unit_has);
    tcase_add_test(tests, a_night_is_as_tight_as_its_battery_also_if_they_go_on_without_power);
    tcase_add_test(tests, without_a_stretch_on_battery_what_is_left_is_that_of_the_end);
    tcase_add_test(
        tests, what_is_told_as_left_is_that_of_the_tightest_stretch_or_of_the_end_if_that_is_less);
    tcase_add_test(tests, what_mends_a_trip_is_tried_the_easiest_first);
    tcase_add_test(tests, more_charge_never_gives_less_and_another_leg_never_mends);
    tcase_add_test(tests, the_strip_has_a_sample_every_quarter_of_an_hour_and_fits);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
