/* Rentals in the store: current and older records, linked phones, and what a new record voids. */
#include <check.h>

#include <string.h>

#include "alert_rows.h"
#include "conversation_rows.h"
#include "memory.h"
#include "rental_put.h"
#include "rental_record.h"
#include "rental_rows.h"
#include "texts.h"

#define MUST(call)                                                                                 \
    do {                                                                                           \
        ck_assert_msg((call) == 0, "%s", fault.text);                                              \
    } while (0)

static const char ada[] = "+12085550123", daughter[] = "+12085550124";

static void *arena;
static struct store *store;
static struct fault fault;
static struct rental rental;

static void
set_up(void)
{
    arena = memory_must(talloc_new(NULL));
    fault = (struct fault){""};
    MUST(store_open(NULL, STORE_IN_MEMORY, &store, &fault));
    rental = (struct rental){.rental_id = "R-7",
                             .state = RENTAL_OUT,
                             .name = "Ada Brisk",
                             .first_name = "Ada",
                             .phones = {{.number = ada}},
                             .phone_count = 1,
                             .unit = "wren",
                             .serial = "W-1",
                             .start_utc_s = 1770500000,
                             .due_utc_s = 1771500000};
    rental.orders[ACTIVITY_REST] =
        (struct order){.known = true, .mode = MODE_PULSE, .setting_tenths = 30};
}

static void
tear_down(void)
{
    store_close(store);
    talloc_free(arena);
}

static struct rental_put
put(int64_t now_utc_s)
{
    char *text = rental_record_text(arena, &rental);
    struct rental_put made;

    rental.digest = rental_record_digest(arena, text);
    MUST(rental_put(store, arena, &rental, text, "import", now_utc_s, &made, &fault));
    return made;
}

static size_t
rentals_of(const char *phone)
{
    struct rental_row *rows;
    size_t count;

    MUST(rental_rows_of_phone(store, arena, phone, &rows, &count, &fault));
    return count;
}

/* What the renter told of the batteries, as it stands now; "" for nothing. */
static const char *
told(void)
{
    int64_t row, as_of_utc_s;
    char *text;

    MUST(battery_rows_newest(store, arena, "R-7", &row, &as_of_utc_s, &text, &fault));
    return text == NULL ? "" : text;
}

static void
tell(int64_t as_of_utc_s, const char *what)
{
    const struct message message = {
        .gateway = "valley", .sender = ada, .text = "1 full", .sent_utc_s = as_of_utc_s};
    int64_t text_id;

    MUST(texts_add(store, &message, &text_id, &fault));
    MUST(battery_rows_add(store, "R-7", as_of_utc_s, what, text_id, &fault));
}

START_TEST(a_record_is_new_then_changed_then_as_it_was)
{
    struct rental_row row;
    bool found;

    MUST(rental_rows_newest(store, arena, "R-7", &row, &found, &fault));
    ck_assert(!found);
    ck_assert(put(1).is_new);
    ck_assert(!put(2).is_changed);
    rental.place = "Cabin 4";
    ck_assert(put(3).is_changed);
    ck_assert(!put(4).is_new);
    MUST(rental_rows_newest(store, arena, "R-7", &row, &found, &fault));
    ck_assert(found);
    ck_assert_str_eq(row.digest, rental.digest);
    ck_assert_ptr_nonnull(strstr(row.json, "Cabin 4"));
}
END_TEST

START_TEST(judging_a_record_writes_nothing)
{
    struct rental_put made;
    size_t count;

    put(1);
    rental.serial = "W-2";
    rental.digest = rental_record_digest(arena, rental_record_text(arena, &rental));
    MUST(rental_put_judge(store, arena, &rental, &made, &fault));
    ck_assert(made.is_changed);
    ck_assert(made.change.is_swap);
    MUST(rental_rows_count(store, &count, &fault));
    ck_assert_uint_eq(count, 1);
    ck_assert(put(2).is_changed); /* it was not so yet */
}
END_TEST

START_TEST(a_swap_or_a_new_order_voids_what_was_told_and_a_later_word_counts)
{
    put(1);
    tell(100, "{\"count\":1}");
    rental.due_utc_s++;
    put(200);
    ck_assert_str_eq(told(), "{\"count\":1}");
    rental.serial = "W-2";
    put(300);
    ck_assert_str_eq(told(), "{}");
    tell(250, "{\"count\":2}"); /* read off before the swap */
    ck_assert_str_eq(told(), "{}");
    tell(400, "{\"count\":3}");
    ck_assert_str_eq(told(), "{\"count\":3}");
    rental.orders[ACTIVITY_REST].setting_tenths = 20;
    put(350); /* by another clock, and all the same after what was told */
    ck_assert_str_eq(told(), "{}");
}
END_TEST

START_TEST(where_nothing_was_told_a_swap_has_nothing_to_void)
{
    put(1);
    rental.serial = "W-2";
    put(2);
    ck_assert_str_eq(told(), "");
}
END_TEST

START_TEST(another_model_opens_one_alert_about_the_rental)
{
    struct open_alert *alerts;
    size_t count;

    put(1);
    rental.unit = "brook";
    ck_assert_int_eq(put(2).change.confirm_pulse, ALERT_URGENT);
    rental.unit = "wren";
    put(3);
    MUST(alert_rows_open_of(store, arena, NULL, &alerts, &count, &fault));
    ck_assert_uint_eq(count, 1);
    ck_assert_int_eq(alerts[0].level, ALERT_URGENT);
    ck_assert_str_eq(alerts[0].reason, "rental:other-model");
    ck_assert_str_eq(alerts[0].rental_id, "R-7");
    ck_assert_str_eq(alerts[0].phone, ada);
}
END_TEST

START_TEST(a_record_that_cannot_be_read_any_more_may_have_been_any_unit)
{
    const struct rental_row unreadable = {"R-7", "d1", "{\"colour\":1}"};
    const char *const phones[] = {ada};
    bool changed;

    MUST(rental_rows_put(store, &unreadable, phones, 1, "import", 1, &changed, &fault));
    ck_assert(put(2).change.is_swap);
}
END_TEST

START_TEST(a_linked_phone_counts_until_it_is_unlinked_whatever_the_record_becomes)
{
    put(1);
    MUST(rental_rows_link(store, daughter, "R-7", true, "+12085550190", 2, &fault));
    ck_assert_uint_eq(rentals_of(daughter), 1);
    ck_assert_uint_eq(rentals_of(ada), 1);
    rental.place = "Cabin 4";
    put(3);
    ck_assert_uint_eq(rentals_of(daughter), 1);
    rental.phones[1].number = daughter; /* the office writes it down too: still one */
    rental.phone_count = 2;
    put(4);
    ck_assert_uint_eq(rentals_of(daughter), 1);
    rental.phone_count = 1;
    put(5);
    MUST(rental_rows_link(store, daughter, "R-7", false, "+12085550190", 6, &fault));
    ck_assert_uint_eq(rentals_of(daughter), 0);
    MUST(rental_rows_link(store, daughter, "R-7", true, "+12085550190", 7, &fault));
    ck_assert_uint_eq(rentals_of(daughter), 1);
}
END_TEST

START_TEST(an_alert_of_the_rental_is_also_that_of_its_linked_phone)
{
    const struct alert_row alert = {.level = ALERT_URGENT,
                                    .rental_id = "R-7",
                                    .phone = ada,
                                    .reason = "gap",
                                    .brief = "no answer found"};
    struct open_alert *alerts;
    int64_t number;
    size_t count;
    bool is_new;

    put(1);
    MUST(alert_rows_open(store, &alert, 2, &number, &is_new, &fault));
    MUST(alert_rows_open_of(store, arena, daughter, &alerts, &count, &fault));
    ck_assert_uint_eq(count, 0);
    MUST(rental_rows_link(store, daughter, "R-7", true, "+12085550190", 3, &fault));
    MUST(alert_rows_open_of(store, arena, daughter, &alerts, &count, &fault));
    ck_assert_uint_eq(count, 1);
}
END_TEST

START_TEST(a_stranger_s_alert_becomes_the_rental_s_unless_that_has_one)
{
    struct alert_row alert = {
        .level = ALERT_EMERGENCY, .phone = daughter, .reason = "sign:x", .brief = "x"};
    struct open_alert *alerts;
    int64_t number;
    size_t count;
    bool is_new;

    put(1);
    MUST(alert_rows_open(store, &alert, 2, &number, &is_new, &fault));
    MUST(alert_rows_attach(store, daughter, "R-7", &fault));
    MUST(alert_rows_open_of(store, arena, ada, &alerts, &count, &fault));
    ck_assert_uint_eq(count, 1);
    ck_assert_str_eq(alerts[0].rental_id, "R-7");
    alert.phone = "+12085550125";
    MUST(alert_rows_open(store, &alert, 3, &number, &is_new, &fault));
    MUST(alert_rows_attach(store, alert.phone, "R-7", &fault));
    MUST(alert_rows_open_of(store, arena, NULL, &alerts, &count, &fault));
    ck_assert_uint_eq(count, 2); /* neither is lost */
}
END_TEST

START_TEST(the_source_of_a_record_is_known_again)
{
    bool has;

    put(1);
    MUST(rental_rows_has_source(store, "R-7", "import", &has, &fault));
    ck_assert(has);
    MUST(rental_rows_has_source(store, "R-7", "booking b-1", &has, &fault));
    ck_assert(!has);
    MUST(rental_rows_has_source(store, "R-8", "import", &has, &fault));
    ck_assert(!has);
}
END_TEST

static int
note_id(void *data, const struct rental_row *row, struct fault *why)
{
    char **ids = data;

    memory_append(ids, "%s ", row->rental_id);
    if (strcmp(row->rental_id, "R-9") == 0) {
        fault_set(why, "enough");
        return -1;
    }
    return 0;
}

START_TEST(all_current_records_are_handed_out_in_order_until_one_ends_it)
{
    char *ids = memory_copy(arena, "");

    rental.rental_id = "R-8";
    put(1);
    rental.rental_id = "R-7";
    put(2);
    rental.place = "Cabin 4";
    put(3);
    MUST(rental_rows_each(store, note_id, &ids, &fault));
    ck_assert_str_eq(ids, "R-7 R-8 ");
    rental.rental_id = "R-9";
    put(4);
    ck_assert_int_eq(rental_rows_each(store, note_id, &ids, &fault), -1);
    ck_assert_str_eq(fault.text, "enough");
    ck_assert_uint_eq(rentals_of(ada), 3); /* the store works on */
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("rental rows");
    TCase *tests = tcase_create("rental rows");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, a_record_is_new_then_changed_then_as_it_was);
    tcase_add_test(tests, judging_a_record_writes_nothing);
    tcase_add_test(tests, a_swap_or_a_new_order_voids_what_was_told_and_a_later_word_counts);
    tcase_add_test(tests, where_nothing_was_told_a_swap_has_nothing_to_void);
    tcase_add_test(tests, another_model_opens_one_alert_about_the_rental);
    tcase_add_test(tests, a_record_that_cannot_be_read_any_more_may_have_been_any_unit);
    tcase_add_test(tests, a_linked_phone_counts_until_it_is_unlinked_whatever_the_record_becomes);
    tcase_add_test(tests, an_alert_of_the_rental_is_also_that_of_its_linked_phone);
    tcase_add_test(tests, a_stranger_s_alert_becomes_the_rental_s_unless_that_has_one);
    tcase_add_test(tests, the_source_of_a_record_is_known_again);
    tcase_add_test(tests, all_current_records_are_handed_out_in_order_until_one_ends_it);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? 0 : 1;
}
