#include <check.h>
#include <stdlib.h>

#include "clock.h"
#include "memory.h"

/* 2026-06-01T00:00:00Z */
static const int64_t june_2026 = 1780272000;

static int64_t
at(const char *text)
{
    int64_t utc_s = -1;

    ck_assert_int_eq(clock_read(text, &utc_s), 0);
    return utc_s;
}

/* Offset at a moment by the steps alone. */
static int32_t
offset_at(const struct zone *zone, int64_t utc_s)
{
    size_t i = zone->count - 1;

    while (i > 0 && zone->steps[i].from_utc_s > utc_s) {
        i--;
    }
    return zone->steps[i].offset_s;
}

static void
read_zone(void *arena, const char *name, struct zone *zone)
{
    struct fault fault = {""};

    ck_assert_msg(clock_zone(arena, name, june_2026, 2, zone, &fault) == 0, "%s", fault.text);
}

/* Energy Policy Act of 2005, section 110 (15 U.S.C. 260a): from the second Sunday of March to the
 * first Sunday of November, at 2 am local time; in 2026 that is March 8 and November 1. */
START_TEST(summer_time_begins_and_ends_at_2_am_local)
{
    static const struct {
        const char *name;
        const char *begins, *ends; /* the first second of each */
        int32_t winter_s;
    } zones[] = {
        {"America/Denver", "2026-03-08T09:00:00Z", "2026-11-01T08:00:00Z", -7 * 3600},
        {"America/Boise", "2026-03-08T09:00:00Z", "2026-11-01T08:00:00Z", -7 * 3600},
        {"America/New_York", "2026-03-08T07:00:00Z", "2026-11-01T06:00:00Z", -5 * 3600},
        {"America/Los_Angeles", "2026-03-08T10:00:00Z", "2026-11-01T09:00:00Z", -8 * 3600},
    };
    void *arena = talloc_new(NULL);
    struct zone zone;
    size_t i;

    for (i = 0; i < sizeof(zones) / sizeof(zones[0]); i++) {
        int64_t begins = at(zones[i].begins);
        int64_t ends = at(zones[i].ends);

        read_zone(arena, zones[i].name, &zone);
        ck_assert_int_eq(offset_at(&zone, begins - 1), zones[i].winter_s);
        ck_assert_int_eq(offset_at(&zone, begins), zones[i].winter_s + 3600);
        ck_assert_int_eq(offset_at(&zone, ends - 1), zones[i].winter_s + 3600);
        ck_assert_int_eq(offset_at(&zone, ends), zones[i].winter_s);
    }
    talloc_free(arena);
}
END_TEST

/* Two years each way: eight changes, after the one step that holds from before. */
START_TEST(steps_are_in_order_and_none_repeats_its_offset)
{
    void *arena = talloc_new(NULL);
    struct zone zone;
    size_t i;

    read_zone(arena, "America/Denver", &zone);
    ck_assert_uint_eq(zone.count, 9);
    for (i = 1; i < zone.count; i++) {
        ck_assert_int_gt(zone.steps[i].from_utc_s, zone.steps[i - 1].from_utc_s);
        ck_assert_int_ne(zone.steps[i].offset_s, zone.steps[i - 1].offset_s);
    }
    talloc_free(arena);
}
END_TEST

/* The handlers' own arithmetic on these steps: a clock on the wall skips from 1:59:59 to 3:00. */
START_TEST(the_wall_shows_3_am_after_the_gap)
{
    void *arena = talloc_new(NULL);
    struct local_time local;
    struct zone zone;

    read_zone(arena, "America/Denver", &zone);
    local = zone_local(&zone, at("2026-03-08T08:59:59Z"));
    ck_assert_int_eq(local.hour * 100 + local.minute, 159);
    local = zone_local(&zone, at("2026-03-08T09:00:00Z"));
    ck_assert_int_eq(local.hour * 100 + local.minute, 300);
    ck_assert_int_eq(local.weekday, 0); /* a Sunday */
    talloc_free(arena);
}
END_TEST

/* Arizona keeps no summer time: 15 U.S.C. 260a lets a state opt out. */
START_TEST(a_zone_without_changes_has_one_step)
{
    void *arena = talloc_new(NULL);
    struct zone zone;

    read_zone(arena, "America/Phoenix", &zone);
    ck_assert_uint_eq(zone.count, 1);
    ck_assert_int_eq(zone.steps[0].offset_s, -7 * 3600);
    talloc_free(arena);
}
END_TEST

START_TEST(an_unknown_zone_is_named_in_the_fault)
{
    void *arena = talloc_new(NULL);
    struct fault fault = {""};
    struct zone zone;

    ck_assert_int_eq(clock_zone(arena, "Valley/Nowhere", june_2026, 2, &zone, &fault), -1);
    ck_assert_ptr_nonnull(strstr(fault.text, "Valley/Nowhere"));
    talloc_free(arena);
}
END_TEST

START_TEST(times_are_read_as_rfc_3339_and_unix_numbers)
{
    /* The first four: examples of RFC 3339, 5.8; the fifth of facts about webhooks: 2026-11-25. */
    ck_assert_int_eq(at("1985-04-12T23:20:50.52Z"), 482196050);
    ck_assert_int_eq(at("1996-12-19T16:39:57-08:00"), 851042397);
    ck_assert_int_eq(at("1996-12-20T00:39:57Z"), 851042397);
    ck_assert_int_eq(at("1937-01-01T12:00:27.87+00:20"), -1041337173);
    ck_assert_int_eq(at("2026-11-25T14:30:00Z"), 1795617000);
    ck_assert_int_eq(at("2026-11-25t14:30:00z"), 1795617000);
    ck_assert_int_eq(at("2026-02-11T15:00:00-07:00"), 1770847200);
    ck_assert_int_eq(at("1795617000"), 1795617000);
    ck_assert_int_eq(at("1795617000999"), 1795617000); /* milliseconds */
    ck_assert_int_eq(at("0"), 0);
}
END_TEST

START_TEST(what_is_no_time_is_refused)
{
    static const char *const texts[] = {
        "",
        " ",
        "now",
        "2026-11-25",
        "2026-11-25T14:30:00",
        "2026-11-25T14:30Z",
        "2026-13-25T14:30:00Z",
        "2026-02-30T14:30:00Z",
        "2026-11-25T25:30:00Z",
        "2026-11-25T14:30:00+0700",
        "2026-11-25T14:30:00Zx",
        "2026-11-25T14:30:00.Z",
        "20261125T143000Z",
        "-5",
        "+5",
        "1795617000 ",
        "99999999999999999999999",
        "1.5",
    };
    int64_t utc_s;
    size_t i;

    for (i = 0; i < sizeof(texts) / sizeof(texts[0]); i++) {
        ck_assert_msg(clock_read(texts[i], &utc_s) == -1, "read \"%s\"", texts[i]);
    }
}
END_TEST

START_TEST(the_walls_time_is_read_with_a_day_and_perhaps_a_time)
{
    static const char *const no_times[] = {"",
                                           "2026-02-30",
                                           "2026-13-01",
                                           "2/14/2026",
                                           "2026-02-14 24:00",
                                           "2026-02-14 10:60",
                                           "2026-02-14 ",
                                           "2026-02-14 10:00:99",
                                           "2026-02-14 10:00x"};
    struct local_time local;
    bool has_time;
    size_t i;

    ck_assert_int_eq(clock_read_wall("2026-02-14", &local, &has_time), 0);
    ck_assert(!has_time);
    ck_assert_int_eq(local.weekday, 6); /* a Saturday */
    ck_assert_int_eq(clock_read_wall("2026-02-14T10:05", &local, &has_time), 0);
    ck_assert(has_time);
    ck_assert_int_eq(local.hour * 60 + local.minute, 605);
    ck_assert_int_eq(clock_read_wall("2026-02-14 10:05:07", &local, &has_time), 0);
    ck_assert_int_eq(local.second, 7);
    for (i = 0; i < sizeof(no_times) / sizeof(no_times[0]); i++) {
        ck_assert_msg(clock_read_wall(no_times[i], &local, &has_time) == -1, "read \"%s\"",
                      no_times[i]);
    }
}
END_TEST

START_TEST(a_time_is_written_as_it_is_read)
{
    char *text = clock_text(NULL, 1770847200);

    ck_assert_str_eq(text, "2026-02-11T22:00:00Z");
    ck_assert_int_eq(at(text), 1770847200);
    talloc_free(text);
}
END_TEST

START_TEST(a_played_clock_starts_where_told_and_its_timers_wait_less)
{
    struct clock *played = clock_new(june_2026, 60);
    struct clock *real = clock_new(0, 1);
    struct timeval wait = clock_wait(played, 600);

    ck_assert_int_ge(clock_now_utc_s(played), june_2026);
    ck_assert_int_lt(clock_now_utc_s(played), june_2026 + 3600);
    ck_assert_int_eq(wait.tv_sec, 10);
    wait = clock_wait(real, 600);
    ck_assert_int_eq(wait.tv_sec, 600);
    wait = clock_wait(real, -5);
    ck_assert_int_eq(wait.tv_sec, 0);
    ck_assert_int_eq(wait.tv_usec, 1000);
    wait = clock_wait(real, INT64_MAX);
    ck_assert_int_gt(wait.tv_sec, 0);
    clock_free(played);
    clock_free(real);
}
END_TEST

/* ---- A wall clock that is set ---------------------------------------------------------------- */

/* What a machine shows, in milliseconds. */
struct machine {
    int64_t wall, passed;
};

static int64_t
wall_of(void *data)
{
    return ((struct machine *)data)->wall;
}

static int64_t
passed_of(void *data)
{
    return ((struct machine *)data)->passed;
}

static void
seconds_pass(struct machine *machine, int64_t seconds)
{
    machine->wall += seconds * 1000;
    machine->passed += seconds * 1000;
}

START_TEST(a_wall_clock_that_is_set_changes_nothing_until_the_rows_have_moved)
{
    struct machine machine = {june_2026 * 1000, 5000};
    const struct clock_source source = {wall_of, passed_of, &machine};
    struct clock *clock = clock_new_by(&source);

    seconds_pass(&machine, 100);
    ck_assert_int_eq(clock_now_utc_s(clock), june_2026 + 100);
    ck_assert_int_eq(clock_step_s(clock), 0);
    machine.wall += (int64_t)7200 * 1000; /* set, or learnt from the network */
    ck_assert_int_eq(clock_now_utc_s(clock), june_2026 + 100);
    ck_assert_int_eq(clock_step_s(clock), 7200);
    seconds_pass(&machine, 10); /* it is not moved yet: time goes on as it was */
    ck_assert_int_eq(clock_now_utc_s(clock), june_2026 + 110);
    clock_move(clock, clock_step_s(clock));
    ck_assert_int_eq(clock_now_utc_s(clock), june_2026 + 7310);
    ck_assert_int_eq(clock_step_s(clock), 0);
    machine.wall -= (int64_t)86400 * 1000;
    ck_assert_int_eq(clock_step_s(clock), -86400);
    clock_free(clock);
}
END_TEST

START_TEST(a_wall_clock_that_drifts_is_followed_silently)
{
    struct machine machine = {june_2026 * 1000, 5000};
    const struct clock_source source = {wall_of, passed_of, &machine};
    struct clock *clock = clock_new_by(&source);
    int i;

    for (i = 0; i < 100; i++) {
        seconds_pass(&machine, 10);
        machine.wall += 1000;
        ck_assert_int_eq(clock_step_s(clock), 0);
    }
    ck_assert_int_eq(clock_now_utc_s(clock), june_2026 + 1100);
    clock_free(clock);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("clock");
    Suite *suite = suite_create("clock");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_test(tests, summer_time_begins_and_ends_at_2_am_local);
    tcase_add_test(tests, steps_are_in_order_and_none_repeats_its_offset);
    tcase_add_test(tests, the_wall_shows_3_am_after_the_gap);
    tcase_add_test(tests, a_zone_without_changes_has_one_step);
    tcase_add_test(tests, an_unknown_zone_is_named_in_the_fault);
    tcase_add_test(tests, times_are_read_as_rfc_3339_and_unix_numbers);
    tcase_add_test(tests, what_is_no_time_is_refused);
    tcase_add_test(tests, the_walls_time_is_read_with_a_day_and_perhaps_a_time);
    tcase_add_test(tests, a_time_is_written_as_it_is_read);
    tcase_add_test(tests, a_played_clock_starts_where_told_and_its_timers_wait_less);
    tcase_add_test(tests, a_wall_clock_that_is_set_changes_nothing_until_the_rows_have_moved);
    tcase_add_test(tests, a_wall_clock_that_drifts_is_followed_silently);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
