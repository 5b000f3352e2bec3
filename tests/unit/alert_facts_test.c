/* All that one of staff needs to act on an alert, and where it may be shown. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "alert_facts.h"
#include "link_page.h"
#include "memory.h"

static const struct zone_step step = {0, -7 * 3600};
static const struct zone zone = {&step, 1};
static const struct alert_row alert = {.number = 12,
                                       .level = ALERT_EMERGENCY,
                                       .phone = "+12085550123",
                                       .first_name = "Gwen",
                                       .brief = "chest pain"};
static struct rental gwen;
static void *arena;

static void
set_up(void)
{
    arena = talloc_new(NULL);
    gwen = (struct rental){.rental_id = "R-7",
                           .state = RENTAL_OUT,
                           .name = "Gwen Sedge",
                           .phone_count = 2,
                           .unit = "brook",
                           .serial = "BR-0204",
                           .place = "Cabin 4",
                           .emergency_address = "4 Upper Lodge Road",
                           .access = "gate code at the desk",
                           .altitude_ft = 9100,
                           .desk_phone = "+12085550140",
                           .emergency_contact = "+12085550141",
                           .prescriber_phone = "+12085550142",
                           .dispatch_number = "+12085550143",
                           .call_below_reading = 88};
    gwen.phones[0] = (struct phone){"+12085550123", "renter", REACH_ANY};
    gwen.phones[1] = (struct phone){"+12085550124", "daughter", REACH_TEXTS_ONLY};
    gwen.orders[ACTIVITY_REST] = (struct order){.known = true, .setting_tenths = 20};
    gwen.backup = (struct backup){true, "cylinder", "E", 2000, 0, 20};
}

static void
tear_down(void)
{
    talloc_free(arena);
}

static struct alert_facts
facts(void)
{
    struct alert_facts all = {0};

    alert_facts_of_rental(arena, &zone, &gwen, &all);
    return all;
}

static void
tells(const char *what, const char *value)
{
    struct alert_facts all = facts();
    size_t i;

    for (i = 0; i < all.count; i++) {
        if (strcmp(all.list[i].what, what) == 0) {
            ck_assert_msg(value != NULL && strcmp(all.list[i].value, value) == 0, "%s: \"%s\"",
                          what, all.list[i].value);
            return;
        }
    }
    ck_assert_msg(value == NULL, "nothing is told of %s", what);
}

START_TEST(all_of_the_record_that_helps_is_told)
{
    tells("renter", "Gwen Sedge, rental R-7, out");
    tells("phone, renter", "+12085550123");
    tells("phone, daughter, texts-only", "+12085550124");
    tells("unit", "brook, serial BR-0204");
    tells("ordered", "at rest continuous 2");
    tells("backup", "E cylinder, 2000 psi, ordered flow 2");
    tells("address", "4 Upper Lodge Road");
    tells("access", "gate code at the desk");
    tells("altitude", "9100 ft");
    tells("desk", "+12085550140");
    tells("emergency contact", "+12085550141");
    tells("prescriber", "+12085550142");
    tells("local dispatch", "+12085550143");
    tells("call prescriber", "at a reading below 88");
}
END_TEST

START_TEST(what_the_record_does_not_tell_is_left_out_but_for_a_missing_backup)
{
    gwen.access = gwen.dispatch_number = NULL;
    gwen.altitude_ft = gwen.call_below_reading = 0;
    gwen.backup.known = false;
    tells("access", NULL);
    tells("local dispatch", NULL);
    tells("altitude", NULL);
    tells("call prescriber", NULL);
    tells("backup", "none on record");
}
END_TEST

START_TEST(a_day_without_a_time_of_day_has_none)
{
    gwen.backup.checked_utc_s = 1770188400; /* 2026-02-04, midnight there */
    tells("backup", "E cylinder, 2000 psi, checked Wednesday, Feb 4, ordered flow 2");
    gwen.backup.checked_utc_s += 14 * 3600;
    tells("backup", "E cylinder, 2000 psi, checked Wednesday, Feb 4, 2 pm, ordered flow 2");
}
END_TEST

START_TEST(read_aloud_numbers_are_digits_and_names_are_not_said)
{
    struct alert_facts all = facts();
    const char *spoken = alert_facts_spoken(arena, &all);

    ck_assert_ptr_nonnull(strstr(spoken, "unit: brook, serial BR-0204. ordered: at rest "));
    ck_assert_ptr_nonnull(strstr(spoken, "address: 4 Upper Lodge Road."));
    ck_assert_ptr_nonnull(strstr(spoken, "local dispatch: 1 2 0 8 5 5 5 0 1 4 3."));
    ck_assert_ptr_null(strstr(spoken, "Sedge"));
}
END_TEST

START_TEST(on_the_page_a_number_is_rung_by_a_touch_and_nothing_is_markup)
{
    struct alert_facts all;
    const char *page;

    gwen.access = "<b>key</b> & \"bell\"";
    all = facts();
    page = link_page_ask(arena, &alert, &all, NULL, "token");
    ck_assert_ptr_nonnull(
        strstr(page, "<dt>local dispatch</dt><dd><a href=\"tel:+12085550143\">+12085550143</a>"));
    ck_assert_ptr_nonnull(strstr(page, "&lt;b&gt;key&lt;/b&gt; &amp; &quot;bell&quot;"));
    ck_assert_ptr_null(strstr(page, "<b>key"));
}
END_TEST

START_TEST(the_page_that_a_scanner_opens_holds_a_button_instead)
{
    const char *page = link_page_ask(arena, &alert, NULL, NULL, "token");

    ck_assert_ptr_nonnull(strstr(page, "value=\"show\""));
    ck_assert_ptr_null(strstr(page, "<dl>"));
}
END_TEST

START_TEST(in_the_shell_each_fact_is_a_line_beside_its_name)
{
    struct alert_facts all = facts();
    const char *lines = alert_facts_lines(arena, &all);

    ck_assert_ptr_nonnull(strstr(lines, "    phone, daughter, texts-only +12085550124\n"));
    ck_assert_ptr_nonnull(strstr(lines, "    address                     4 Upper Lodge Road\n"));
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("alert facts");
    TCase *tests = tcase_create("alert facts");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, all_of_the_record_that_helps_is_told);
    tcase_add_test(tests, what_the_record_does_not_tell_is_left_out_but_for_a_missing_backup);
    tcase_add_test(tests, a_day_without_a_time_of_day_has_none);
    tcase_add_test(tests, read_aloud_numbers_are_digits_and_names_are_not_said);
    tcase_add_test(tests, on_the_page_a_number_is_rung_by_a_touch_and_nothing_is_markup);
    tcase_add_test(tests, the_page_that_a_scanner_opens_holds_a_button_instead);
    tcase_add_test(tests, in_the_shell_each_fact_is_a_line_beside_its_name);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
