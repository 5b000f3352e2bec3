/* Rows behind the roads to staff: how a call fares, what a taking drops, links, test texts. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "alert_hands.h"
#include "line_test_rows.h"
#include "link_rows.h"
#include "memory.h"
#include "outbox_rows.h"

#define ROBIN "+12085550190"
#define KIM "+12085550191"
#define RENTER "+12085550111"

static void *arena;
static struct store *store;
static struct fault fault;

#define MUST(call) ck_assert_msg((call) == 0, "%s", fault.text)

static void
set_up(void)
{
    arena = talloc_new(NULL);
    MUST(store_open(NULL, STORE_IN_MEMORY, &store, &fault));
    MUST(store_begin(store, &fault));
}

static void
tear_down(void)
{
    store_rollback(store);
    store_close(store);
    talloc_free(arena);
}

static int64_t
opened(void)
{
    const struct alert_row alert = {.level = ALERT_URGENT,
                                    .phone = RENTER,
                                    .reason = "sign:reading",
                                    .brief = "dizzy",
                                    .next_utc_s = 100};
    int64_t number;
    bool is_new;

    MUST(alert_rows_open(store, &alert, 100, &number, &is_new, &fault));
    return number;
}

static int64_t
called(int64_t number, const char *who)
{
    int64_t call_id;

    MUST(alert_rows_called(store, number, ALERT_CALLED, who, 100, &call_id, &fault));
    ck_assert_int_gt(call_id, 0);
    return call_id;
}

static int64_t
put(int64_t number, int64_t call_id, enum road road, const char *to)
{
    const struct outbox_new row = {.about = call_id != 0 ? OUTBOX_ALERT : OUTBOX_REPLY,
                                   .alert_id = number,
                                   .call_id = call_id,
                                   .road = road,
                                   .gateway = "bell",
                                   .to = to,
                                   .body = "words",
                                   .urgency = URGENCY_EMERGENCY,
                                   .now_utc_s = 100,
                                   .give_up_utc_s = 1900};
    int64_t id;

    MUST(outbox_rows_add(store, &row, &id, &fault));
    return id;
}

static void
happens(int64_t id, enum outbox_event event)
{
    const struct outbox_result result = {
        .id = id, .event = event, .now_utc_s = 110, .next_utc_s = 120, .gateway_id = "g-1"};

    MUST(outbox_rows_result(store, &result, &fault));
}

static size_t
due(void)
{
    struct outbox_row *rows;
    size_t count;

    MUST(outbox_rows_due(store, arena, INT64_MAX, 100, &rows, &count, &fault));
    return count;
}

START_TEST(a_call_knows_which_of_its_roads_are_used_and_which_failed)
{
    int64_t number = opened();
    int64_t call_id = called(number, ROBIN);
    struct outbox_call call;

    happens(put(number, call_id, ROAD_TEXT, ROBIN), OUTBOX_TRIED_AGAIN_LATER);
    happens(put(number, call_id, ROAD_RING, ROBIN), OUTBOX_ACCEPTED);
    put(number, call_id, ROAD_MAIL, ROBIN);
    put(number, called(number, ROBIN), ROAD_WEBHOOK, ROBIN); /* another call */
    MUST(outbox_rows_call(store, call_id, ROBIN, &call, &fault));
    ck_assert_uint_eq(call.used, 1 << ROAD_TEXT | 1 << ROAD_RING | 1 << ROAD_MAIL);
    ck_assert_uint_eq(call.failed, 1 << ROAD_TEXT);
}
END_TEST

START_TEST(a_taking_drops_what_waits_about_the_alert_and_nothing_else)
{
    const struct alert_hand hand = {.who = ROBIN, .road = "ring", .now_utc_s = 200};
    const struct config config = {.alert_times = {[ALERT_URGENT] = {.recheck_s = 900}}};
    const struct caller caller = {&config, store, arena, 200};
    int64_t number = opened();
    int64_t call_id = called(number, ROBIN);
    int64_t text = put(number, call_id, ROAD_TEXT, ROBIN);
    enum hands_result result;
    const char *holder;
    bool is_dropped;

    put(number, call_id, ROAD_MAIL, ROBIN);
    put(0, 0, ROAD_TEXT, RENTER); /* a reply */
    ck_assert_uint_eq(due(), 3);
    MUST(alert_take(&caller, number, &hand, &result, &holder, &fault));
    ck_assert_int_eq(result, HANDS_DONE);
    ck_assert_uint_eq(due(), 1);
    MUST(outbox_rows_is_dropped(store, text, &is_dropped, &fault));
    ck_assert(is_dropped);
}
END_TEST

START_TEST(a_second_taker_hears_who_was_first_and_a_closed_alert_is_not_taken)
{
    struct alert_hand hand = {.who = ROBIN, .road = "text", .now_utc_s = 200};
    const struct config config = {0};
    const struct caller caller = {&config, store, arena, 200};
    int64_t number = opened();
    enum hands_result result;
    const char *holder = NULL;

    MUST(alert_take(&caller, number, &hand, &result, NULL, &fault));
    hand.who = KIM;
    MUST(alert_take(&caller, number, &hand, &result, &holder, &fault));
    ck_assert_int_eq(result, HANDS_ANOTHERS);
    ck_assert_str_eq(holder, ROBIN);
    MUST(alert_close(&caller, number, &hand, "rang her", &result, &fault));
    ck_assert_int_eq(result, HANDS_DONE);
    MUST(alert_close(&caller, number, &hand, "rang her", &result, &fault));
    ck_assert_int_eq(result, HANDS_NOT_OPEN);
    MUST(alert_take(&caller, number, &hand, &result, &holder, &fault));
    ck_assert_int_eq(result, HANDS_NOT_OPEN);
}
END_TEST

START_TEST(an_emergency_that_is_no_text_waits_for_no_delivery_report)
{
    int64_t number = opened();
    int64_t call_id = called(number, ROBIN);
    struct outbox_row *rows;
    size_t count;

    happens(put(number, call_id, ROAD_RING, ROBIN), OUTBOX_ACCEPTED);
    MUST(outbox_rows_unconfirmed(store, arena, 10000, &rows, &count, &fault));
    ck_assert_uint_eq(count, 0);
    happens(put(number, call_id, ROAD_TEXT, ROBIN), OUTBOX_ACCEPTED);
    MUST(outbox_rows_unconfirmed(store, arena, 10000, &rows, &count, &fault));
    ck_assert_uint_eq(count, 1);
}
END_TEST

START_TEST(a_row_is_found_by_the_far_side_s_id_and_by_our_key_on_its_road_only)
{
    int64_t number = opened();
    int64_t id = put(number, called(number, ROBIN), ROAD_RING, ROBIN);
    struct outbox_row row, same;
    bool found;

    happens(id, OUTBOX_ACCEPTED);
    MUST(outbox_rows_by_gateway_id(store, arena, ROAD_RING, "bell", "g-1", &row, &found, &fault));
    ck_assert(found && row.id == id);
    MUST(
        outbox_rows_by_gateway_id(store, arena, ROAD_RING, "bell", row.key, &same, &found, &fault));
    ck_assert(found && same.id == id);
    MUST(outbox_rows_by_gateway_id(store, arena, ROAD_TEXT, "bell", "g-1", &row, &found, &fault));
    ck_assert(!found);
    MUST(
        outbox_rows_by_gateway_id(store, arena, ROAD_RING, "gong", same.key, &row, &found, &fault));
    ck_assert(!found);
}
END_TEST

START_TEST(a_link_comes_back_by_its_token_and_is_used_once)
{
    const struct link put_in = {.alert_number = opened(), .who = ROBIN, .expires_utc_s = 500};
    char token[LINK_TOKEN_SIZE], other[LINK_TOKEN_SIZE];
    struct link link;
    bool found;

    link_token(token);
    link_token(other);
    ck_assert_uint_eq(strlen(token), LINK_TOKEN_SIZE - 1);
    ck_assert_str_ne(token, other);
    MUST(link_rows_add(store, token, &put_in, 100, &fault));
    MUST(link_rows_find(store, arena, other, &link, &found, &fault));
    ck_assert(!found);
    MUST(link_rows_find(store, arena, token, &link, &found, &fault));
    ck_assert(found && !link.is_used);
    ck_assert_str_eq(link.who, ROBIN);
    ck_assert_int_eq(link.expires_utc_s, 500);
    MUST(link_rows_use(store, token, 200, &fault));
    MUST(link_rows_find(store, arena, token, &link, &found, &fault));
    ck_assert(found && link.is_used);
}
END_TEST

START_TEST(a_link_that_expired_long_ago_is_forgotten)
{
    const struct link old = {.alert_number = opened(), .who = ROBIN, .expires_utc_s = 500};
    struct link link;
    bool found;

    MUST(link_rows_add(store, "old", &old, 100, &fault));
    MUST(link_rows_add(store, "new", &old, 500 + 31 * 86400, &fault));
    MUST(link_rows_find(store, arena, "old", &link, &found, &fault));
    ck_assert(!found);
}
END_TEST

START_TEST(a_test_text_comes_back_only_from_where_it_went_and_with_its_token)
{
    struct line_test_row row;
    bool found, is_test;

    MUST(line_test_rows_newest(store, arena, &row, &found, &fault));
    ck_assert(!found);
    MUST(line_test_rows_add(store, "0a1b2c", KIM, 1000, &fault));
    MUST(line_test_rows_come(store, ROBIN, "Line test 0a1b2c.", 1010, &is_test, &fault));
    ck_assert(!is_test);
    MUST(line_test_rows_come(store, KIM, "Line test ffffff.", 1010, &is_test, &fault));
    ck_assert(!is_test);
    MUST(line_test_rows_newest(store, arena, &row, &found, &fault));
    ck_assert(found && row.is_open);
    MUST(line_test_rows_come(store, KIM, "Fwd: Line test 0a1b2c.", 1010, &is_test, &fault));
    ck_assert(is_test);
    MUST(line_test_rows_newest(store, arena, &row, &found, &fault));
    ck_assert(found && !row.is_open);
    /* Twice, it is still no question of anyone; weeks later it is only words. */
    MUST(line_test_rows_come(store, KIM, "Line test 0a1b2c.", 1020, &is_test, &fault));
    ck_assert(is_test);
    MUST(line_test_rows_come(store, KIM, "Line test 0a1b2c.", 1000 + 8 * 86400, &is_test, &fault));
    ck_assert(!is_test);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("road_rows");
    Suite *suite = suite_create("road_rows");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, a_call_knows_which_of_its_roads_are_used_and_which_failed);
    tcase_add_test(tests, a_taking_drops_what_waits_about_the_alert_and_nothing_else);
    tcase_add_test(tests, a_second_taker_hears_who_was_first_and_a_closed_alert_is_not_taken);
    tcase_add_test(tests, an_emergency_that_is_no_text_waits_for_no_delivery_report);
    tcase_add_test(tests, a_row_is_found_by_the_far_side_s_id_and_by_our_key_on_its_road_only);
    tcase_add_test(tests, a_link_comes_back_by_its_token_and_is_used_once);
    tcase_add_test(tests, a_link_that_expired_long_ago_is_forgotten);
    tcase_add_test(tests, a_test_text_comes_back_only_from_where_it_went_and_with_its_token);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
