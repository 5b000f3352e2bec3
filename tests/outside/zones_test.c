/*
 * The zone tables that the handlers get, against the zone database's own data as `zdump -v` prints
 * it: libc's reader of the same files, which shares no code with ours. Each line of it is the last
 * second before a change or the first one of it, in UTC and as the wall shows it:
 *
 *   America/Denver  Sun Mar  8 09:00:00 2026 UT = Sun Mar  8 03:00:00 2026 MDT isdst=1
 * gmtoff=-21600
 */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "clock.h"
#include "memory.h"
#include "zone.h"

enum { FIRST_YEAR = 2021, END_YEAR = 2031 };

/* As the tables are made: ten years around this moment, `date -u -d 2026-01-01 +%s`. */
static const int64_t new_year_2026 = 1767225600;

/* No change at all; one and two hours, half an hour; south of the equator; changes by the day of a
 * moon calendar, four a year; a base that itself changed in 2023; winter as the exception. */
static const struct {
    const char *name;
    bool changes;
} zones[] = {
    {"America/Denver", true},    {"America/Phoenix", false},    {"America/Los_Angeles", true},
    {"America/Santiago", true},  {"America/Nuuk", true},        {"Europe/Dublin", true},
    {"Africa/Casablanca", true}, {"Australia/Lord_Howe", true}, {"Antarctica/Troll", true},
    {"Asia/Kathmandu", false},   {"Pacific/Chatham", true},
};

enum { ZONE_COUNT = sizeof(zones) / sizeof(zones[0]) };

enum { WORDS_MAX = 20, OF_UTC = 1, OF_WALL = 8, WORDS = 15 };

/* The words of a line of zdump; the line is cut up. */
static size_t
cut_words(char *line, char *words[WORDS_MAX])
{
    size_t count = 0;
    char *rest = NULL;
    char *word;

    for (word = strtok_r(line, " \n", &rest); word != NULL && count < WORDS_MAX;
         word = strtok_r(NULL, " \n", &rest)) {
        words[count++] = word;
    }
    return count;
}

static int
number_at(const char *text)
{
    return (int)strtol(text, NULL, 10);
}

/* "Sun Mar 8 09:00:00 2026" from `words` on. */
static struct local_time
read_wall(char *const *words)
{
    static const char months[] = "JanFebMarAprMayJunJulAugSepOctNovDec";
    const char *found = strstr(months, words[1]);

    ck_assert_ptr_nonnull(found);
    ck_assert_uint_eq(strlen(words[3]), 8);
    return (struct local_time){.year = number_at(words[4]),
                               .month = (int)(found - months) / 3 + 1,
                               .day = number_at(words[2]),
                               .hour = number_at(words[3]),
                               .minute = number_at(words[3] + 3),
                               .second = number_at(words[3] + 6)};
}

static void
is_same_wall(const char *line, const struct local_time *ours, const struct local_time *theirs)
{
    ck_assert_msg(ours->year == theirs->year && ours->month == theirs->month &&
                      ours->day == theirs->day && ours->hour == theirs->hour &&
                      ours->minute == theirs->minute && ours->second == theirs->second,
                  "%s: ours %d-%d-%d %d:%d:%d", line, ours->year, ours->month, ours->day,
                  ours->hour, ours->minute, ours->second);
}

static bool
is_step(const struct zone *zone, int64_t utc_s, long offset_s)
{
    size_t i;

    for (i = 1; i < zone->count; i++) {
        if (zone->steps[i].from_utc_s == utc_s && zone->steps[i].offset_s == offset_s) {
            return true;
        }
    }
    return false;
}

/* One line of zdump; the offset before it in *before. 1 if it is a change of the offset. */
static int
check_line(const struct zone *zone, char *line, long *before)
{
    static const struct zone_step utc_step = {0, 0};
    static const struct zone utc = {&utc_step, 1};
    const char *whole = memory_copy(NULL, line);
    char *words[WORDS_MAX];
    size_t count = cut_words(line, words);
    struct local_time theirs, ours;
    int is_change = 0;

    if (count > WORDS) {
        int64_t utc_s;
        long offset_s = strtol(words[WORDS] + strlen("gmtoff="), NULL, 10);

        theirs = read_wall(&words[OF_UTC]);
        utc_s = zone_utc(&utc, &theirs);
        if (theirs.year >= FIRST_YEAR && theirs.year < END_YEAR) {
            theirs = read_wall(&words[OF_WALL]);
            ours = zone_local(zone, utc_s);
            is_same_wall(whole, &ours, &theirs);
            if (*before != offset_s) {
                ck_assert_msg(is_step(zone, utc_s, offset_s), "no step at: %s", whole);
                is_change = 1;
            }
            *before = offset_s;
        }
    }
    talloc_free((void *)whole);
    return is_change;
}

/* How many steps of ours lie in these years. */
static int
steps_in_years(const struct zone *zone)
{
    int count = 0;
    size_t i;

    for (i = 1; i < zone->count; i++) {
        int year = zone_local(zone, zone->steps[i].from_utc_s).year;

        count += year >= FIRST_YEAR && year < END_YEAR;
    }
    return count;
}

START_TEST(each_change_of_a_zone_is_where_the_zone_database_has_it)
{
    void *arena = memory_must(talloc_new(NULL));
    char *command =
        memory_format(arena, "zdump -v -c %d,%d %s", FIRST_YEAR - 1, END_YEAR, zones[_i].name);
    FILE *dump = popen(command, "r"); /* NOLINT(cert-env33-c): a fixed command */
    struct fault fault = {""};
    struct zone zone;
    char line[256];
    long before;
    int changes = 0;

    ck_assert_ptr_nonnull(dump);
    ck_assert_msg(clock_zone(arena, zones[_i].name, new_year_2026, 5, &zone, &fault) == 0, "%s",
                  fault.text);
    before = zone.steps[0].offset_s;
    while (fgets(line, sizeof(line), dump) != NULL) {
        changes += check_line(&zone, line, &before);
    }
    ck_assert_int_eq(pclose(dump), 0);
    ck_assert_int_eq(changes, steps_in_years(&zone));
    ck_assert_msg(zones[_i].changes ? changes >= 5 : changes == 0, "%s: %d changes", zones[_i].name,
                  changes);
    talloc_free(arena);
}
END_TEST

/* Through each change and round it, minute by minute: what the wall shows leads back to a moment at
 * which it shows that. */
START_TEST(each_minute_round_a_change_leads_back_to_a_moment_that_shows_it)
{
    void *arena = memory_must(talloc_new(NULL));
    struct fault fault = {""};
    struct zone zone;
    size_t i;

    ck_assert_int_eq(clock_zone(arena, zones[_i].name, new_year_2026, 5, &zone, &fault), 0);
    for (i = 1; i < zone.count; i++) {
        int64_t utc_s;

        for (utc_s = zone.steps[i].from_utc_s - 14400; utc_s < zone.steps[i].from_utc_s + 14400;
             utc_s += 60) {
            struct local_time wall = zone_local(&zone, utc_s);
            int64_t back_utc_s = zone_utc(&zone, &wall);
            struct local_time again = zone_local(&zone, back_utc_s);

            is_same_wall(zones[_i].name, &again, &wall);
            ck_assert_int_le(back_utc_s, utc_s); /* of two moments the earlier */
        }
    }
    talloc_free(arena);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("zones");
    TCase *tests = tcase_create("zone database");
    SRunner *runner;
    int failed;

    tcase_add_loop_test(tests, each_change_of_a_zone_is_where_the_zone_database_has_it, 0,
                        ZONE_COUNT);
    tcase_add_loop_test(tests, each_minute_round_a_change_leads_back_to_a_moment_that_shows_it, 0,
                        ZONE_COUNT);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
