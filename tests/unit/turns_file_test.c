/* Turns and swaps from a CSV file: read as those of the configuration, faults by line and column.
 */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "config_turns_file.h"
#include "config.h"
#include "memory.h"

static void *arena;
static struct faults faults;
static struct rota_reading rota;
static char path[] = "/tmp/turns-XXXXXX";

static const struct staff staff[] = {{.name = "Robin"}, {.name = "Kim"}, {.name = "Sam"}};
static struct config config = {.staff = staff, .staff_count = 3};

static void
set_up(void)
{
    int file;

    strcpy(path, "/tmp/turns-XXXXXX");
    file = mkstemp(path);
    ck_assert_int_ge(file, 0);
    close(file);
    arena = memory_must(talloc_new(NULL));
    faults = (struct faults){0};
    rota = (struct rota_reading){.config = &config, .weeks = 2};
}

static void
tear_down(void)
{
    unlink(path);
    faults_release(&faults);
    talloc_free(arena);
}

static void
read_csv(const char *text)
{
    const struct reading reading = {.arena = arena, .file = "hutbell.json", .faults = &faults};
    FILE *file = fopen(path, "w");

    ck_assert_ptr_nonnull(file);
    ck_assert_int_ge(fputs(text, file), 0);
    ck_assert_int_eq(fclose(file), 0);
    turns_file_read(&reading, path, &rota);
}

START_TEST(turns_and_swaps_stand_in_one_file)
{
    read_csv("week,day,at,from,until,first,second,third\n"
             "1,Monday,09:00,,,Robin,kim,\n"
             "2,monday,9:00,,,Kim,Robin,Sam\n"
             ",,,2026-03-07 20:00,2026-03-08 08:00,Sam,,\n");
    ck_assert_msg(faults.count == 0, "%s", faults.count > 0 ? faults.list[0].text : "");
    ck_assert_uint_eq(rota.turn_count, 2);
    ck_assert_int_eq(rota.turns[1].week, 1);
    ck_assert_int_eq(rota.turns[1].weekday, 1);
    ck_assert_int_eq(rota.turns[1].minute, 540);
    ck_assert_uint_eq(rota.turns[1].line.count, 3);
    ck_assert_uint_eq(rota.turns[0].line.staff[1], 1);
    ck_assert_uint_eq(rota.swap_count, 1);
    ck_assert_int_eq(rota.swaps[0].from.hour, 20);
    ck_assert_uint_eq(rota.swaps[0].line.staff[0], 2);
}
END_TEST

START_TEST(a_turn_without_week_is_of_each_and_columns_may_stand_anywhere)
{
    read_csv("first;at;day\nRobin;18:00;friday\n");
    ck_assert_uint_eq(faults.count, 0);
    ck_assert_uint_eq(rota.turn_count, 2);
}
END_TEST

static const struct {
    const char *row;  /* the third line */
    const char *says; /* the fault, from the line on */
} bad[] = {
    {"1,munday,09:00,,,Robin,,", ":3: day: is \"munday\""},
    {"1,tuesday,25:00,,,Robin,,", ":3: at: is none; expected a time of day"},
    {"1,tuesday,,,,Robin,,", ":3: at: is missing"},
    {"1,tuesday,09:00,,,,,", ":3: first: is missing"},
    {"1,tuesday,09:00,,,Robyn,,", ":3: first: names \"Robyn\", who is nobody of /staff; did you "
                                  "mean \"Robin\"?"},
    {"1,tuesday,09:00,,,Robin,Robin,", ":3: second: names Robin twice"},
    {"3,tuesday,09:00,,,Robin,,", ":3: week: is 3, but the cycle has 2"},
    {"one,tuesday,09:00,,,Robin,,", ":3: week: is text; expected a whole number"},
    {"1,monday,09:00,,,Kim,,", ":3: starts when another turn does"},
    {",,,3/7/2026,2026-03-08 08:00,Sam,,", ":3: from: is \"3/7/2026\"; expected a day and a time"},
    {",,,2026-03-08 20:00,2026-03-08 08:00,Sam,,", ":3: until: is not after"},
    {",,,2026-03-08 20:00,,Sam,,", ":3: until: is missing"},
    {"1,tuesday,09:00,2026-03-08 20:00,,Sam,,", ":3: from: stands beside a weekly turn"},
};

START_TEST(a_fault_names_line_column_and_remedy)
{
    read_csv(memory_format(arena,
                           "week,day,at,from,until,first,second,third\n1,monday,09:00,,,Robin,,\n"
                           "%s\n",
                           bad[_i].row));
    ck_assert_uint_ge(faults.count, 1);
    ck_assert_msg(strstr(faults.list[0].text, bad[_i].says) != NULL, "%s", faults.list[0].text);
    ck_assert_msg(strncmp(faults.list[0].text, path, strlen(path)) == 0, "%s", faults.list[0].text);
}
END_TEST

START_TEST(a_wrong_heading_and_a_file_that_is_not_there_are_told)
{
    read_csv("weak,day,at,first\n1,monday,09:00,Robin\n");
    ck_assert_ptr_nonnull(strstr(faults.list[0].text, ":1: weak: is no column; did you mean "
                                                      "\"week\"?"));
    faults_release(&faults);
    unlink(path);
    {
        const struct reading reading = {.arena = arena, .file = "hutbell.json", .faults = &faults};

        turns_file_read(&reading, path, &rota);
    }
    ck_assert_ptr_nonnull(strstr(faults.list[0].text, "/rota/turns_file: cannot be read"));
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("turns file");
    TCase *tests = tcase_create("turns file");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, turns_and_swaps_stand_in_one_file);
    tcase_add_test(tests, a_turn_without_week_is_of_each_and_columns_may_stand_anywhere);
    tcase_add_loop_test(tests, a_fault_names_line_column_and_remedy, 0,
                        sizeof(bad) / sizeof(bad[0]));
    tcase_add_test(tests, a_wrong_heading_and_a_file_that_is_not_there_are_told);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
