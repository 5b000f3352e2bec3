/* Rentals: from the office's CSV to the record, all or nothing, and the record as JSON. */
#include <check.h>

#include <string.h>

#include "memory.h"
#include "rental_reader.h"

#define HEADER "rental_id,state,name,phone_1,unit,rest_mode,rest_setting,start,due\n"
#define GOOD "R-1,out,Ada Brisk,208-555-0123,brook,continuous,2,2026-02-07 14:00,2026-02-14 10:00\n"

START_TEST(a_row_becomes_a_rental)
{
    ck_assert_msg(read_csv(HEADER GOOD) == 0, "%s", faults_text());
    ck_assert_uint_eq(reader.count, 1);
    ck_assert_str_eq(reader.rentals[0].rental_id, "R-1");
    ck_assert_int_eq(reader.rentals[0].state, RENTAL_OUT);
    ck_assert_str_eq(reader.rentals[0].first_name, "Ada");
    ck_assert_str_eq(reader.rentals[0].phones[0].number, "+12085550123");
    ck_assert(reader.rentals[0].orders[ACTIVITY_REST].known);
    ck_assert(!reader.rentals[0].orders[ACTIVITY_SLEEP].known);
    ck_assert_int_eq(reader.rentals[0].orders[ACTIVITY_REST].setting_tenths, 20);
    /* date -u -d '2026-02-14 10:00 -0700' +%s */
    ck_assert_int_eq(reader.rentals[0].due_utc_s, 1771088400);
}
END_TEST

START_TEST(the_demo_s_file_is_in_order)
{
    ck_assert_msg(read_csv(source_text("demo/rentals.csv")) == 0, "%s", faults_text());
    ck_assert_uint_eq(reader.count, 24);
    ck_assert_str_eq(reader.rentals[0].name, "Thessa Wendmark");
    ck_assert_str_eq(reader.rentals[0].emergency_address,
                     "14 Tarn House Road, Upper Dorrow, Cabin 4");
    ck_assert_uint_eq(reader.rentals[0].battery_count, 3);
    ck_assert_int_eq(reader.rentals[0].batteries[2].health_percent, 88);
    ck_assert_str_eq(reader.rentals[0].orders[ACTIVITY_FLIGHT].confirmed_by,
                     "Dr. Quellin's office");
    ck_assert_int_eq(reader.rentals[0].backup.flow_tenths, 20);
    ck_assert(reader.rentals[0].car_charger);
    ck_assert_int_eq(reader.rentals[2].phones[0].reach, REACH_TEXTS_ONLY);
    ck_assert_int_eq(reader.rentals[2].phones[2].reach, REACH_LANDLINE);
}
END_TEST

START_TEST(each_bad_cell_is_told_with_line_column_and_remedy)
{
    static const struct {
        const char *row, *begins, *remedy;
    } cases[] = {
        {"R-2,gone,Ada,2085550123,brook,pulse,2,2026-02-07 14:00,2026-02-14 10:00",
         "r.csv:2: state: \"gone\"", "booked, out, overdue"},
        {"R-2,out,Ada,12,brook,pulse,2,2026-02-07 14:00,2026-02-14 10:00",
         "r.csv:2: phone_1: \"12\"", "+12085550123"},
        {"R-2,out,Ada,,brook,pulse,2,2026-02-07 14:00,2026-02-14 10:00",
         "r.csv:2: phone_1: is missing", "at least one phone"},
        {"R-2,out,Ada,2085550123,heron,pulse,2,2026-02-07 14:00,2026-02-14 10:00",
         "r.csv:2: unit: \"heron\"", "brook"},
        {"R-2,out,Ada,2085550123,brook,fast,2,2026-02-07 14:00,2026-02-14 10:00",
         "r.csv:2: rest_mode: \"fast\"", "continuous, pulse, night"},
        {"R-2,out,Ada,2085550123,brook,pulse,two,2026-02-07 14:00,2026-02-14 10:00",
         "r.csv:2: rest_setting: \"two\"", "as 2 or 2.5"},
        {"R-2,out,Ada,2085550123,brook,pulse,,2026-02-07 14:00,2026-02-14 10:00",
         "r.csv:2: rest_setting: is missing", "as 2 or 2.5"},
        {"R-2,out,Ada,2085550123,brook,pulse,2,2026-02-07 14:00,2026-02-30 10:00",
         "r.csv:2: due: \"2026-02-30 10:00\"", "day and time"},
        {"R-2,out,Ada,2085550123,brook,pulse,2,2026-02-07 14:00,2026-02-14",
         "r.csv:2: due: \"2026-02-14\"", "day and time"},
        {"R-2,out,Ada,2085550123,brook,pulse,2,2026-02-07 14:00,2026-02-01 10:00",
         "r.csv:2: due: is not after the start", "correct"},
        {"R 2,out,Ada,2085550123,brook,pulse,2,2026-02-07 14:00,2026-02-14 10:00",
         "r.csv:2: rental_id: \"R 2\"", "own number"},
        {"R-2,out,Ada,2085550123,brook,pulse,2,2026-02-07 14:00,2026-02-14 10:00,x",
         "r.csv:2: has 10 cells", "quotation marks"},
    };
    size_t i;

    for (i = 0; i < sizeof(cases) / sizeof(cases[0]); i++) {
        ck_assert_int_eq(read_csv(memory_format(reader.arena, "%s%s\n", HEADER, cases[i].row)), -1);
        ck_assert_msg(reader.faults.count == 1, "%s: %s", cases[i].row, faults_text());
        ck_assert_msg(
            strncmp(reader.faults.list[0].text, cases[i].begins, strlen(cases[i].begins)) == 0,
            "%s", faults_text());
        ck_assert_msg(strstr(reader.faults.list[0].text, cases[i].remedy) != NULL, "%s",
                      faults_text());
        faults_release(&reader.faults);
    }
}
END_TEST

START_TEST(all_faults_of_all_rows_are_told_at_once)
{
    ck_assert_int_eq(read_csv(HEADER GOOD
                              "R-2,gone,,2085550123,brook,pulse,2,2026-02-07 14:00,soon\n"
                              "R-3,out,\"Ada\nBrisk\",2085550123,brook,pulse,2,2026-02-07 14:00,"
                              "2026-02-14 10:00\n"
                              "R-4,out,Bo,2085550123,brook,pulse,99,2026-02-07 14:00,"
                              "2026-02-14 10:00\n"),
                     -1);
    ck_assert_uint_eq(reader.faults.count, 5);
    ck_assert_ptr_nonnull(strstr(faults_text(), "r.csv:3: state: "));
    ck_assert_ptr_nonnull(strstr(faults_text(), "r.csv:3: name: is missing"));
    ck_assert_ptr_nonnull(strstr(faults_text(), "r.csv:3: due: "));
    /* A line end inside quotation marks counts: the next row begins on line 6. */
    ck_assert_ptr_nonnull(strstr(faults_text(), "r.csv:4: name: "));
    ck_assert_ptr_nonnull(strstr(faults_text(), "r.csv:6: rest_setting: "));
}
END_TEST

START_TEST(columns_are_checked_before_rows)
{
    ck_assert_int_eq(read_csv("rental_id,state,name,colour,unit,unit,start\nR-1,gone\n"), -1);
    ck_assert_ptr_nonnull(strstr(faults_text(), "r.csv:1: colour: is not a known column"));
    ck_assert_ptr_nonnull(strstr(faults_text(), "r.csv:1: unit: is there twice"));
    ck_assert_ptr_nonnull(strstr(faults_text(), "r.csv:1: has no column due"));
    ck_assert_uint_eq(reader.faults.count, 3);
}
END_TEST

START_TEST(a_rental_stands_once_in_a_file)
{
    ck_assert_int_eq(read_csv(HEADER GOOD GOOD), -1);
    ck_assert_ptr_nonnull(strstr(faults_text(), "r.csv:3: rental_id: \"R-1\" stands on line 2"));
}
END_TEST

START_TEST(what_is_no_csv_is_refused_with_its_line)
{
    ck_assert_int_eq(read_csv(""), -1);
    ck_assert_ptr_nonnull(strstr(faults_text(), "is empty"));
    faults_release(&reader.faults);
    ck_assert_int_eq(read_csv(HEADER "R-2,\"out\n"), -1);
    ck_assert_ptr_nonnull(strstr(faults_text(), "never ends"));
    faults_release(&reader.faults);
    ck_assert_int_eq(read_csv(HEADER "R-2,\"o\"ut,\n"), -1);
    ck_assert_ptr_nonnull(strstr(faults_text(), "r.csv:2: has a quotation mark"));
}
END_TEST

/* RFC 4180, 2: line ends are CRLF, the last one is optional, a quotation mark is doubled. */
START_TEST(csv_is_read_as_its_rfc_says)
{
    ck_assert_msg(read_csv("\xef\xbb\xbfrental_id,state,name,phone_1,unit,start,due,place\r\n"
                           "R-1,out,\"Ada \"\"Lark\"\" Brisk\",2085550123,brook,2026-02-07 14:00,"
                           "2026-02-14 10:00,\"Cabin 4, Upper Lodge\"\r\n"
                           ",,,,,,,\r\n"
                           "R-2,out,Bo,2085550124,brook,2026-02-07 14:00,2026-02-14 10:00,") == 0,
                  "%s", faults_text());
    ck_assert_uint_eq(reader.count, 2);
    ck_assert_str_eq(reader.rentals[0].name, "Ada \"Lark\" Brisk");
    ck_assert_str_eq(reader.rentals[0].place, "Cabin 4, Upper Lodge");
    ck_assert_ptr_null(reader.rentals[1].place);
}
END_TEST

START_TEST(a_record_comes_back_from_its_json_as_it_was)
{
    struct record_namer namer = {0};
    struct rental again;
    json_t *json;
    size_t i;

    ck_assert_int_eq(read_csv(source_text("demo/rentals.csv")), 0);
    for (i = 0; i < reader.count; i++) {
        char *text = rental_record_text(reader.arena, &reader.rentals[i]);

        json = json_loads(text, 0, NULL);
        ck_assert_msg(rental_record_read(reader.arena, json, &namer, &again, &reader.faults) == 0,
                      "%s", faults_text());
        json_decref(json);
        ck_assert_str_eq(rental_record_text(reader.arena, &again), text);
        ck_assert_str_eq(rental_record_digest(reader.arena, text), reader.rentals[i].digest);
    }
}
END_TEST

/* SHA-256 of "abc": FIPS 180-2, B.1. */
START_TEST(the_digest_is_sha_256)
{
    ck_assert_str_eq(rental_record_digest(reader.arena, "abc"),
                     "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
}
END_TEST

START_TEST(a_field_that_nobody_knows_is_a_fault_of_the_record)
{
    struct record_namer namer = {0};
    struct rental rental;
    json_t *json = json_pack("{s:s}", "colour", "blue");

    ck_assert_int_eq(rental_record_read(reader.arena, json, &namer, &rental, &reader.faults), -1);
    ck_assert_ptr_nonnull(strstr(faults_text(), "/colour: is not a known field"));
    json_decref(json);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("rentals");
    TCase *tests = tcase_create("rentals");
    SRunner *runner;
    int failed;

    tcase_add_unchecked_fixture(tests, reader_load, reader_unload);
    tcase_add_checked_fixture(tests, reader_set_up, reader_tear_down);
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, a_row_becomes_a_rental);
    tcase_add_test(tests, the_demo_s_file_is_in_order);
    tcase_add_test(tests, each_bad_cell_is_told_with_line_column_and_remedy);
    tcase_add_test(tests, all_faults_of_all_rows_are_told_at_once);
    tcase_add_test(tests, columns_are_checked_before_rows);
    tcase_add_test(tests, a_rental_stands_once_in_a_file);
    tcase_add_test(tests, what_is_no_csv_is_refused_with_its_line);
    tcase_add_test(tests, csv_is_read_as_its_rfc_says);
    tcase_add_test(tests, a_record_comes_back_from_its_json_as_it_was);
    tcase_add_test(tests, the_digest_is_sha_256);
    tcase_add_test(tests, a_field_that_nobody_knows_is_a_fault_of_the_record);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? 0 : 1;
}
