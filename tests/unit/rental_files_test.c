/* Files of rentals as spreadsheets and other programs leave them, and the export that reads back.
 */
#include <check.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <glib.h>

#include "memory.h"
#include "rental_csv_write.h"
#include "rental_reader.h"

#define HEADER "rental_id,state,name,phone_1,unit,rest_mode,rest_setting,start,due\n"
#define GOOD "R-1,out,Ada Brisk,208-555-0123,brook,continuous,2,2026-02-07 14:00,2026-02-14 10:00\n"

/* Reading fails with a fault that begins so. */
static void
refused_bytes(const char *bytes, size_t length, const char *begins)
{
    ck_assert_int_eq(read_bytes(bytes, length), -1);
    ck_assert_msg(strncmp(faults_text(), begins, strlen(begins)) == 0, "%s", faults_text());
}

static void
refused(const char *text, const char *begins)
{
    refused_bytes(text, strlen(text), begins);
}

static void
taken(const char *text)
{
    ck_assert_msg(read_csv(text) == 0, "%s", faults_text());
}

/* ---- Encodings and separators --------------------------------------------------------------- */

static char *
with_separator(const char *text, char separator)
{
    char *copy = memory_copy(reader.arena, text);
    char *c;

    for (c = copy; *c != '\0'; c++) {
        if (*c == ',') {
            *c = separator;
        }
    }
    return copy;
}

START_TEST(semicolons_and_tabs_part_cells_as_commas_do)
{
    taken(with_separator(HEADER GOOD, ';'));
    ck_assert_str_eq(reader.rentals[0].name, "Ada Brisk");
    taken(with_separator(HEADER GOOD, '\t'));
    ck_assert_str_eq(reader.rentals[0].name, "Ada Brisk");
    ck_assert_int_eq(reader.rentals[0].orders[ACTIVITY_REST].setting_tenths, 20);
}
END_TEST

START_TEST(where_semicolons_part_cells_a_comma_is_a_decimal_or_just_a_comma)
{
    taken("rental_id;state;name;phone_1;unit;rest_mode;rest_setting;start;due;place\r\n"
          "R-1;out;Ada;2085550123;brook;pulse;2,5;2026-02-07 14:00;2026-02-14 10:00;Cabin 4, "
          "Lodge\r\n");
    ck_assert_int_eq(reader.rentals[0].orders[ACTIVITY_REST].setting_tenths, 25);
    ck_assert_str_eq(reader.rentals[0].place, "Cabin 4, Lodge");
}
END_TEST

START_TEST(the_remedy_for_too_many_cells_names_the_file_s_own_separator)
{
    refused("rental_id;state;name;phone_1;unit;start;due\nR-1;out;a;b;c;d;e;f\n",
            "r.csv:2: has 8 cells and the first line 7; put a cell that holds a semicolon");
}
END_TEST

/* e acute is E9, right single quotation mark 92, euro 80 in Windows-1252. */
START_TEST(windows_1252_is_read_as_such)
{
    taken(HEADER "R-1,out,Jos\xe9 O\x92"
                 "Hara \x80,2085550123,brook,,,2026-02-07 14:00,2026-02-14 10:00\n");
    ck_assert_str_eq(reader.rentals[0].name, "Jos\u00e9 O\u2019Hara \u20ac");
}
END_TEST

START_TEST(a_byte_that_windows_1252_does_not_know_is_a_fault_with_its_line)
{
    refused(HEADER GOOD "R-2,\x81\n", "r.csv:3: holds a byte that is neither");
}
END_TEST

/* Taken for Windows-1252 every good letter of the file would become two wrong ones. */
START_TEST(broken_utf_8_beside_whole_characters_is_not_taken_for_windows_1252)
{
    refused(HEADER "R-1,out,Jos\u00e9,2085550123,brook,,,2026-02-07 14:00,2026-02-14 10:00\n"
                   "R-2,out,Jos\xe9,2085550124,brook,,,2026-02-07 14:00,2026-02-14 10:00\n",
            "r.csv:3: is UTF-8 that is broken here");
    refused("\xef\xbb\xbf" HEADER "R-1,out,Jos\xe9\n", "r.csv:2: is UTF-8 that is broken here");
}
END_TEST

START_TEST(overlong_and_surrogate_utf_8_are_broken)
{
    refused("\xef\xbb\xbf" HEADER "R-1,out,\xc0\xaf\n", "r.csv:2: is UTF-8 that is broken");
    refused("\xef\xbb\xbf" HEADER "R-1,out,\xed\xa0\x80\n", "r.csv:2: is UTF-8 that is broken");
}
END_TEST

START_TEST(utf_16_and_byte_0_are_refused_with_what_to_do)
{
    refused_bytes("\xff\xfer\0e\0", 6, "r.csv:1: is UTF-16; save the file as CSV UTF-8");
    refused_bytes("\xfe\xff\0r\0e", 6, "r.csv:1: is UTF-16");
    refused_bytes(HEADER "R\0", sizeof(HEADER "R\0") - 1, "r.csv:2: holds a byte 0");
}
END_TEST

/* ---- Rows ---------------------------------------------------------------------------------- */

START_TEST(a_file_with_nothing_in_it_is_told_and_one_with_names_only_holds_no_rentals)
{
    refused("", "r.csv: is empty");
    refused("\xef\xbb\xbf\r\n\r\n", "r.csv: is empty");
    taken(HEADER);
    ck_assert_uint_eq(reader.count, 0);
}
END_TEST

START_TEST(a_cell_longer_than_any_field_is_a_fault_that_is_cut)
{
    char *name = memory_array(reader.arena, char, 100001);

    memset(name, 'x', 100000);
    refused(memory_format(reader.arena,
                          HEADER "R-1,out,%s,2085550123,brook,,,2026-02-07 14:00,2026-02-14 10:00",
                          name),
            "r.csv:2: name: \"xxx");
    ck_assert_uint_lt(strlen(faults_text()), 300);
}
END_TEST

START_TEST(a_quoted_value_is_cut_at_the_end_of_a_character)
{
    char *name = memory_copy(reader.arena, "");
    int i;

    for (i = 0; i < 150; i++) {
        memory_append(&name, "\u00e9");
    }
    refused(memory_format(reader.arena,
                          HEADER "R-1,out,%s,2085550123,brook,,,2026-02-07 14:00,2026-02-14 10:00",
                          name),
            "r.csv:2: name: \"\u00e9");
    ck_assert_ptr_nonnull(strstr(faults_text(), "\u00e9 is not possible here"));
}
END_TEST

START_TEST(dates_that_could_be_read_two_ways_are_not_read)
{
    static const char *const days[] = {
        "2/14/2026 10:00",     "14.02.2026 10:00", "2026-02-14 10:00 AM", "2026-02-14 25:00",
        "2026-02-14 10:00:61", "2026-13-14 10:00", "2026-02-29 10:00",    "1026-02-14 10:00",
        "2026-02-14T10:00+07", "tomorrow",         "45702.41667"};
    size_t i;

    for (i = 0; i < sizeof(days) / sizeof(days[0]); i++) {
        refused(memory_format(reader.arena,
                              HEADER "R-1,out,Ada,2085550123,brook,,,2026-02-07 14:00,%s\n",
                              days[i]),
                "r.csv:2: due: ");
    }
}
END_TEST

START_TEST(times_may_have_seconds_or_a_zone_of_their_own)
{
    taken(HEADER "R-1,out,Ada,2085550123,brook,,,2026-02-07 14:00:00,2026-02-14T10:00:00-05:00\n");
    /* date -u -d '2026-02-07 14:00 -0700' +%s; date -u -d '2026-02-14 10:00 -0500' +%s */
    ck_assert_int_eq(reader.rentals[0].start_utc_s, 1770498000);
    ck_assert_int_eq(reader.rentals[0].due_utc_s, 1771081200);
}
END_TEST

START_TEST(an_order_may_have_a_date_of_its_own_beside_that_of_all)
{
    taken("rental_id,state,name,phone_1,unit,rest_mode,rest_setting,sleep_mode,sleep_setting,"
          "orders_dated,orders_confirmed_by,sleep_dated,sleep_confirmed_by,start,due\n"
          "R-1,out,Ada,2085550123,brook,pulse,2,pulse,3,2026-01-28,Dr. A,2026-02-03,Dr. B,"
          "2026-02-07 14:00,2026-02-14 10:00\n");
    ck_assert_str_eq(reader.rentals[0].orders[ACTIVITY_REST].confirmed_by, "Dr. A");
    ck_assert_str_eq(reader.rentals[0].orders[ACTIVITY_SLEEP].confirmed_by, "Dr. B");
    ck_assert_int_gt(reader.rentals[0].orders[ACTIVITY_SLEEP].dated_utc_s,
                     reader.rentals[0].orders[ACTIVITY_REST].dated_utc_s);
    ck_assert(!reader.rentals[0].orders[ACTIVITY_WALKING].known);
}
END_TEST

START_TEST(a_bad_cell_that_counts_for_all_orders_is_told_once_and_by_its_own_name)
{
    refused("rental_id,state,name,phone_1,unit,rest_mode,rest_setting,sleep_mode,sleep_setting,"
            "orders_dated,sleep_dated,start,due\n"
            "R-1,out,Ada,2085550123,brook,pulse,2,pulse,3,soon,,2026-02-07 14:00,"
            "2026-02-14 10:00\n"
            "R-2,out,Ada,2085550123,brook,pulse,2,pulse,3,2026-01-28,soon,2026-02-07 14:00,"
            "2026-02-14 10:00\n",
            "r.csv:2: orders_dated: \"soon\"");
    ck_assert_uint_eq(reader.faults.count, 2);
    ck_assert_ptr_nonnull(strstr(faults_text(), "r.csv:3: sleep_dated: \"soon\""));
}
END_TEST

START_TEST(a_phone_that_lost_digits_is_no_short_number)
{
    refused(HEADER "R-1,out,Ada,208-555-01,brook,,,2026-02-07 14:00,2026-02-14 10:00\n",
            "r.csv:2: phone_1: \"208-555-01\"");
}
END_TEST

START_TEST(checking_stops_where_every_row_is_bad)
{
    GString *text = g_string_new(HEADER);
    const struct fault *last;
    int i;

    for (i = 0; i < RENTAL_CSV_FAULTS_MAX; i++) {
        g_string_append_printf(text, "R-%d,gone,,1,brook,,,2026-02-07 14:00,2026-02-14 10:00\n", i);
    }
    ck_assert_int_eq(read_csv(text->str), -1);
    g_string_free(text, TRUE);
    ck_assert_uint_lt(reader.faults.count, RENTAL_CSV_FAULTS_MAX + 10);
    last = &reader.faults.list[reader.faults.count - 1];
    ck_assert_ptr_nonnull(strstr(last->text, "is where checking stopped"));
}
END_TEST

/* ---- Out and in ---------------------------------------------------------------------------- */

/* Writes what was read last, and reads that. */
static char *
written(void)
{
    void *arena = memory_must(talloc_new(NULL));
    struct rental_csv_writer writer;
    char *bytes = NULL, *copy;
    size_t length = 0;
    FILE *out = open_memstream(&bytes, &length);
    size_t i;

    writer = rental_csv_write_begin(arena, out, reader.setting.zone);
    for (i = 0; i < reader.count; i++) {
        ck_assert_int_eq(rental_csv_write_row(&writer, reader.texts[i]), 0);
    }
    ck_assert_int_eq(fclose(out), 0);
    copy = memory_copy(reader.arena, bytes);
    free(bytes);
    talloc_free(arena);
    return copy;
}

static void
reads_back_the_same(void)
{
    const char **before = reader.texts;
    size_t count = reader.count;
    char *text = written();
    size_t i;

    ck_assert_uint_gt(count, 0);
    taken(text);
    ck_assert_uint_eq(reader.count, count);
    for (i = 0; i < count; i++) {
        ck_assert_str_eq(reader.texts[i], before[i]);
    }
}

START_TEST(the_demo_s_rentals_come_back_the_same)
{
    taken(source_text("demo/rentals.csv"));
    reads_back_the_same();
}
END_TEST

START_TEST(every_field_comes_back_the_same)
{
    taken(
        "rental_id,state,name,first_name,language,in_words,phone_1,phone_2,phone_2_whose,phone_2_"
        "reach,"
        "unit,serial,flight_mode,flight_setting,flight_dated,flight_confirmed_by,battery_1,"
        "battery_1_health,battery_1_measured,chargers,car_charger,backup_kind,backup_size,"
        "backup_psi,backup_checked,backup_flow,tube_feet,start,due,emergency_address,access,"
        "place,altitude_ft,desk_phone,emergency_contact,prescriber_phone,dispatch_number,"
        "call_below_reading\n"
        "R-1,overdue,\"Ada \"\"Lark\"\" Brisk\",Ada,es,yes,2085550123,73855,\"a, b; c\",never ring,"
        "brook,\"S;1\",night,2.5,2026-01-28 09:30,\"Dr. A\",B-1,91,2026-02-01,2,yes,cylinder,E,"
        "1900,2026-02-03,1.5,7.25,2026-02-07 14:00:30,2026-02-14 10:00,\" 4 Upper Lodge Road \","
        "key box,Cabin 4,-20,2085550160,2085550151,2085550170,911,88\n");
    ck_assert(reader.rentals[0].in_words);
    ck_assert_int_eq(reader.rentals[0].altitude_ft, -20);
    ck_assert(reader.rentals[0].tube_feet > 7.2 && reader.rentals[0].tube_feet < 7.3);
    reads_back_the_same();
    ck_assert_str_eq(reader.rentals[0].emergency_address, " 4 Upper Lodge Road ");
}
END_TEST

/* Spreadsheets run such cells as formulas. */
START_TEST(a_name_that_is_a_formula_is_harmless_in_the_export_and_comes_back)
{
    taken(HEADER
          "R-1,out,\"=HYPERLINK(\"\"x\"\")\",2085550123,brook,,,2026-02-07 14:00,2026-02-14 10:00\n"
          "R-2,out,'@home,2085550124,brook,,,2026-02-07 14:00,2026-02-14 10:00\n"
          "R-3,out,''+1,2085550125,brook,,,2026-02-07 14:00,2026-02-14 10:00\n"
          "R-4,out,'Tis Me,2085550126,brook,,,2026-02-07 14:00,2026-02-14 10:00\n");
    ck_assert_str_eq(reader.rentals[0].name, "=HYPERLINK(\"x\")");
    ck_assert_str_eq(reader.rentals[1].name, "@home");
    ck_assert_str_eq(reader.rentals[2].name, "'+1");
    ck_assert_str_eq(reader.rentals[3].name, "'Tis Me");
    ck_assert_ptr_nonnull(strstr(written(), "'=HYPERLINK"));
    ck_assert_ptr_nonnull(strstr(written(), "'@home"));
    reads_back_the_same();
}
END_TEST

/* ---- Damage -------------------------------------------------------------------------------- */

static unsigned
next_number(unsigned *state)
{
    *state = *state * 1664525U + 1013904223U;
    return *state >> 8;
}

START_TEST(whatever_happens_to_its_bytes_a_file_is_read_or_refused)
{
    char *good = source_text("demo/rentals.csv");
    size_t length = strlen(good);
    unsigned state = 1;
    int refused_count = 0, round, i, rc;

    length = length < 4000 ? length : 4000;
    for (round = 0; round < 400; round++) {
        char *bytes = memory_array(reader.arena, char, length);

        memcpy(bytes, good, length);
        for (i = 0; i < 1 + round % 7; i++) {
            bytes[next_number(&state) % length] = (char)next_number(&state);
        }
        rc = read_bytes(bytes, length - next_number(&state) % 100);
        ck_assert_int_eq(rc != 0, reader.faults.count > 0);
        ck_assert(g_utf8_validate(faults_text(), -1, NULL));
        refused_count += rc != 0;
        talloc_free(bytes);
    }
    ck_assert_int_gt(refused_count, 100);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("rental files");
    TCase *tests = tcase_create("rental files");
    SRunner *runner;
    int failed;

    tcase_add_unchecked_fixture(tests, reader_load, reader_unload);
    tcase_add_checked_fixture(tests, reader_set_up, reader_tear_down);
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, semicolons_and_tabs_part_cells_as_commas_do);
    tcase_add_test(tests, where_semicolons_part_cells_a_comma_is_a_decimal_or_just_a_comma);
    tcase_add_test(tests, the_remedy_for_too_many_cells_names_the_file_s_own_separator);
    tcase_add_test(tests, windows_1252_is_read_as_such);
    tcase_add_test(tests, a_byte_that_windows_1252_does_not_know_is_a_fault_with_its_line);
    tcase_add_test(tests, broken_utf_8_beside_whole_characters_is_not_taken_for_windows_1252);
    tcase_add_test(tests, overlong_and_surrogate_utf_8_are_broken);
    tcase_add_test(tests, utf_16_and_byte_0_are_refused_with_what_to_do);
    tcase_add_test(tests,
                   a_file_with_nothing_in_it_is_told_and_one_with_names_only_holds_no_rentals);
    tcase_add_test(tests, a_cell_longer_than_any_field_is_a_fault_that_is_cut);
    tcase_add_test(tests, a_quoted_value_is_cut_at_the_end_of_a_character);
    tcase_add_test(tests, dates_that_could_be_read_two_ways_are_not_read);
    tcase_add_test(tests, times_may_have_seconds_or_a_zone_of_their_own);
    tcase_add_test(tests, an_order_may_have_a_date_of_its_own_beside_that_of_all);
    tcase_add_test(tests, a_bad_cell_that_counts_for_all_orders_is_told_once_and_by_its_own_name);
    tcase_add_test(tests, a_phone_that_lost_digits_is_no_short_number);
    tcase_add_test(tests, checking_stops_where_every_row_is_bad);
    tcase_add_test(tests, the_demo_s_rentals_come_back_the_same);
    tcase_add_test(tests, every_field_comes_back_the_same);
    tcase_add_test(tests, a_name_that_is_a_formula_is_harmless_in_the_export_and_comes_back);
    tcase_add_test(tests, whatever_happens_to_its_bytes_a_file_is_read_or_refused);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? 0 : 1;
}
