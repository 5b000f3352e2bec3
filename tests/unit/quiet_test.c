/* Quiet hours: 8 am to 9 pm where the renter is (47 CFR 64.1200(c)(1)). */
#include <check.h>
#include <stdlib.h>

#include "clock.h"
#include "memory.h"
#include "quiet.h"

static void *arena;
static struct config config;
static struct place_zone places[1];

/* As `date -u -d TIME +%s` reads it. */
static int64_t
at(const char *text)
{
    int64_t utc_s;

    ck_assert_int_eq(clock_read(text, &utc_s), 0);
    return utc_s;
}

static void
zone(const char *name, struct zone *zone)
{
    struct fault fault;

    ck_assert_int_eq(clock_zone(arena, name, at("2026-06-01T00:00:00Z"), 3, zone, &fault), 0);
}

static void
set_up(void)
{
    arena = memory_must(talloc_new(NULL));
    config = (struct config){.quiet_hours = {.from = 21 * 60, .until = 8 * 60}};
    zone("America/Denver", &config.zone);
    places[0] = (struct place_zone){.words = "west fork"};
    zone("America/Los_Angeles", &places[0].zone);
    config.quiet_hours.places = places;
    config.quiet_hours.place_count = 1;
}

static void
tear_down(void)
{
    talloc_free(arena);
}

START_TEST(by_day_nothing_waits)
{
    static const char *const times[] = {"2026-02-14T08:00:00-07:00", "2026-02-14T12:00:00-07:00",
                                        "2026-02-14T20:59:59-07:00"};
    size_t i;

    for (i = 0; i < 3; i++) {
        ck_assert_int_eq(quiet_ends(&config, NULL, at(times[i])), at(times[i]));
        ck_assert_int_eq(quiet_begins(&config, NULL, at(times[i])),
                         at("2026-02-14T21:00:00-07:00"));
    }
}
END_TEST

START_TEST(by_night_it_waits_for_the_morning)
{
    ck_assert_int_eq(quiet_ends(&config, NULL, at("2026-02-14T21:00:00-07:00")),
                     at("2026-02-15T08:00:00-07:00"));
    ck_assert_int_eq(quiet_ends(&config, NULL, at("2026-02-15T00:30:00-07:00")),
                     at("2026-02-15T08:00:00-07:00"));
    ck_assert_int_eq(quiet_ends(&config, NULL, at("2026-02-15T07:59:59-07:00")),
                     at("2026-02-15T08:00:00-07:00"));
}
END_TEST

/* Summer time began on 8 March and ends on 1 November 2026 at 2 am (15 USC 260a). */
START_TEST(the_morning_comes_by_the_wall_through_both_changes_of_summer_time)
{
    ck_assert_int_eq(quiet_ends(&config, NULL, at("2026-03-07T22:00:00-07:00")),
                     at("2026-03-08T08:00:00-06:00"));
    ck_assert_int_eq(quiet_ends(&config, NULL, at("2026-10-31T22:00:00-06:00")),
                     at("2026-11-01T08:00:00-07:00"));
}
END_TEST

START_TEST(the_renters_place_decides_not_the_office)
{
    ck_assert_int_eq(quiet_ends(&config, "Cabin 2, West Fork", at("2026-02-14T08:30:00-07:00")),
                     at("2026-02-14T08:00:00-08:00"));
    ck_assert_int_eq(quiet_ends(&config, "Cabin 2, West Fork", at("2026-02-14T21:30:00-07:00")),
                     at("2026-02-14T21:30:00-07:00"));
    ck_assert_int_eq(quiet_ends(&config, "Upper Lodge", at("2026-02-14T21:30:00-07:00")),
                     at("2026-02-15T08:00:00-07:00"));
}
END_TEST

START_TEST(without_quiet_hours_nothing_ever_waits)
{
    config.quiet_hours.until = config.quiet_hours.from;
    ck_assert_int_eq(quiet_ends(&config, NULL, at("2026-02-14T23:00:00-07:00")),
                     at("2026-02-14T23:00:00-07:00"));
    ck_assert_int_eq(quiet_begins(&config, NULL, at("2026-02-14T12:00:00-07:00")), INT64_MAX);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("quiet");
    TCase *tests = tcase_create("quiet");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, by_day_nothing_waits);
    tcase_add_test(tests, by_night_it_waits_for_the_morning);
    tcase_add_test(tests, the_morning_comes_by_the_wall_through_both_changes_of_summer_time);
    tcase_add_test(tests, the_renters_place_decides_not_the_office);
    tcase_add_test(tests, without_quiet_hours_nothing_ever_waits);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
