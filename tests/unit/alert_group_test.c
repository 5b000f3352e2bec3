/* A mains failure that several tell is one alert to staff. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "alert_calls.h"
#include "alert_group_rows.h"
#include "alert_hands.h"
#include "alert_text.h"
#include "alert_renters.h"
#include "conversation_rows.h"
#include "log.h"
#include "memory.h"
#include "rental_rows.h"
#include "step_rows.h"
#include "store_sql.h"
#include "talk.h"
#include "talk_rows.h"
#include "texts.h"

#define ROBIN "+12085550190"
#define KIM "+12085550191"
#define GWEN "+12085550110"
#define TOM "+12085550111"
#define ANA "+12085550112"

enum { START_S = 1770000000 };

static const struct zone_step step = {0, -7 * 3600};
static const struct staff staff[] = {
    {.name = "Robin", .phone = ROBIN, .road_from = {[ROAD_TEXT] = ALERT_OFFICE}},
    {.name = "Kim", .phone = KIM, .road_from = {[ROAD_TEXT] = ALERT_OFFICE}}};
static const struct gateway valley = {.name = "valley"};
static const struct config config = {
    .gateways = &valley,
    .gateway_count = 1,
    .reply_gateway = "valley",
    .staff = staff,
    .staff_count = 2,
    .zone = {&step, 1},
    .house = {.company = "Larkspur", .phone = "208-555-0100", .emergency_number = "911"},
    .alert_times = {[ALERT_OFFICE] = {.again_s = 86400},
                    [ALERT_URGENT] = {600, 1200, 900, 86400},
                    [ALERT_EMERGENCY] = {120, 300, 300, 86400}},
    .limits = {
        .give_up_s = 1800, .flowing_s = 300, .plug_s = 600, .talk_s = 600, .talk_urgent_s = 300}};

static struct store *store;
static void *arena;
static struct fault fault;
static int64_t now_utc_s, text_id;

#define MUST(call) ck_assert_msg((call) == 0, "%s", fault.text)

static void
add_rental(const char *id, const char *name, const char *place)
{
    const char *json = memory_format(
        arena, "{\"rental_id\":\"%s\",\"state\":\"out\",\"first_name\":\"%s\",\"place\":\"%s\"}",
        id, name, place);
    const struct rental_row row = {.rental_id = id, .digest = id, .json = json};
    bool changed;

    MUST(rental_rows_put(store, &row, NULL, 0, "import", START_S, &changed, &fault));
}

static void
set_up(void)
{
    const struct message message = {.gateway = "valley",
                                    .sender = GWEN,
                                    .text = "power is out",
                                    .sent_utc_s = START_S,
                                    .received_utc_s = START_S};

    log_setup(LOG_ERROR_LEVEL, LOG_LOGFMT);
    arena = memory_must(talloc_new(NULL));
    now_utc_s = START_S;
    MUST(store_open(NULL, STORE_IN_MEMORY, &store, &fault));
    MUST(texts_add(store, &message, &text_id, &fault));
    add_rental("R-1", "Gwen", "Cabin 4, Tarn House");
    add_rental("R-2", "Tom", "Cabin 5, Tarn House");
    add_rental("R-3", "Ana", "Room 7, Mill Inn");
}

static void
tear_down(void)
{
    store_close(store);
    talloc_free(arena);
}

static struct caller
caller(void)
{
    return (struct caller){&config, store, arena, now_utc_s};
}

static int64_t
told(const char *rental_id, const char *phone, const char *area, int64_t runs_out_utc_s)
{
    const struct alert_row alert = {.level = ALERT_URGENT,
                                    .rental_id = rental_id,
                                    .phone = phone,
                                    .reason = "sign:power-out-now",
                                    .brief = "power is out",
                                    .next_utc_s = now_utc_s,
                                    .ring = true,
                                    .area = area,
                                    .runs_out_utc_s = runs_out_utc_s,
                                    .joins_since_utc_s = now_utc_s - 3600};
    int64_t number;
    bool is_new;

    MUST(alert_rows_open(store, &alert, now_utc_s, &number, &is_new, &fault));
    return number;
}

static int64_t
worse(const char *rental_id, const char *phone, enum alert_level level, const char *reason)
{
    const struct alert_row alert = {.level = level,
                                    .rental_id = rental_id,
                                    .phone = phone,
                                    .reason = reason,
                                    .brief = "worse",
                                    .next_utc_s = now_utc_s};
    int64_t number;
    bool is_new;

    MUST(alert_rows_open(store, &alert, now_utc_s, &number, &is_new, &fault));
    return number;
}

static int64_t
head_of(int64_t number)
{
    int64_t head;

    MUST(alert_group_head(store, number, &head, &fault));
    return head;
}

static struct alert_row
found(int64_t number)
{
    struct alert_row alert;
    bool is_open;

    MUST(alert_rows_find(store, arena, number, &alert, &is_open, &fault));
    ck_assert(is_open);
    MUST(alert_renters(store, arena, &config, &alert, &fault));
    return alert;
}

static bool
is_open(int64_t number)
{
    struct alert_row alert;
    bool open;

    MUST(alert_rows_find(store, arena, number, &alert, &open, &fault));
    return open;
}

/* Makes the calls that are due; returns how many. */
static size_t
call(void)
{
    const struct caller now = caller();
    struct alert_calls calls;

    MUST(alert_calls_make(&now, &calls, &fault));
    ck_assert_uint_eq(calls.failed, 0);
    return calls.count;
}

static enum hands_result
take(int64_t number, const char *who)
{
    const struct caller now = caller();
    const struct alert_hand hand = {.who = who, .road = "text", .now_utc_s = now_utc_s};
    enum hands_result result;

    MUST(alert_take(&now, number, &hand, &result, NULL, &fault));
    return result;
}

static void
close_alert(int64_t number)
{
    const struct caller now = caller();
    const struct alert_hand hand = {.who = ROBIN, .road = "text", .now_utc_s = now_utc_s};
    enum hands_result result;

    MUST(alert_close(&now, number, &hand, "power is back", &result, &fault));
    ck_assert_int_eq(result, HANDS_DONE);
}

START_TEST(the_next_of_the_village_joins_the_first_and_another_village_does_not)
{
    int64_t gwen = told("R-1", GWEN, "Upper Dorrow", 0);
    int64_t tom = told("R-2", TOM, "upper dorrow", 0);
    int64_t ana = told("R-3", ANA, "Hessick", 0);

    ck_assert_int_eq(head_of(tom), gwen);
    ck_assert_int_eq(head_of(gwen), gwen);
    ck_assert_int_eq(head_of(ana), ana);
    ck_assert_uint_eq(call(), 2);
}
END_TEST

START_TEST(who_tells_it_much_later_does_not_join)
{
    told("R-1", GWEN, "Upper Dorrow", 0);
    now_utc_s += 3601;
    ck_assert_int_eq(head_of(told("R-2", TOM, "Upper Dorrow", 0)), 2);
}
END_TEST

START_TEST(a_stepped_clock_changes_neither_who_joins_nor_how_long_batteries_last)
{
    told("R-1", GWEN, "Upper Dorrow", START_S + 5400);
    MUST(step_rows_shift(store, 7200, &fault));
    now_utc_s += 7200;
    ck_assert_int_eq(head_of(told("R-2", TOM, "Upper Dorrow", 0)), 1);
    ck_assert_int_eq(found(1).runs_out_utc_s, now_utc_s + 5400);
}
END_TEST

START_TEST(staff_are_told_of_all_who_runs_out_first_in_front)
{
    struct alert_row alert;

    told("R-1", GWEN, "Upper Dorrow", START_S + 5400);
    told("R-2", TOM, "Upper Dorrow", START_S + 1800);
    told("R-3", ANA, "Upper Dorrow", 0);
    alert = found(1);
    ck_assert_str_eq(alert_text(arena, &alert, NULL),
                     "URGENT 1: power is out. 3 renters, first to run out first: 3 Ana, Room 7, "
                     "Mill Inn, +12085550112, charge not told; 2 Tom, Cabin 5, Tarn House, "
                     "+12085550111, until 8:10 pm; 1 Gwen, Cabin 4, Tarn House, +12085550110, "
                     "until 9:10 pm. Text MINE 1 to take all, SORTED 1 and what happened to close "
                     "all, SORTED 3 for that one.");
    MUST(alert_group_runs_out(store, "R-3", START_S + 9000, &fault));
    alert = found(1);
    ck_assert_str_eq(alert.renters[0].first_name, "Tom");
    ck_assert_ptr_nonnull(strstr(alert_spoken(arena, &alert, NULL, false),
                                 "3 renters. First to run out: Tom, Cabin 5, Tarn House, until "
                                 "8:10 pm."));
    ck_assert_ptr_nonnull(
        strstr(alert_json(arena, &alert, NULL, "Robin", now_utc_s), "\"renters\":[{\"alert\":2,"));
}
END_TEST

START_TEST(it_is_taken_once_and_whoever_joins_later_is_in_the_same_hands)
{
    told("R-1", GWEN, "Upper Dorrow", 0);
    told("R-2", TOM, "Upper Dorrow", 0);
    ck_assert_int_eq(take(2, ROBIN), HANDS_DONE);
    ck_assert_str_eq(found(1).taken_by, ROBIN);
    ck_assert_str_eq(found(2).taken_by, ROBIN);
    ck_assert_int_eq(take(1, KIM), HANDS_ANOTHERS);
    told("R-3", ANA, "Upper Dorrow", 0);
    ck_assert_int_eq(head_of(3), 1);
    ck_assert_str_eq(found(3).taken_by, ROBIN);
    ck_assert_uint_eq(call(), 1); /* Robin hears of Ana */
    ck_assert_int_eq(take(3, KIM), HANDS_ANOTHERS);
}
END_TEST

START_TEST(however_many_tell_it_staff_are_not_called_for_each)
{
    told("R-1", GWEN, "Upper Dorrow", 0);
    ck_assert_uint_eq(call(), 1);
    now_utc_s += 10;
    told("R-2", TOM, "Upper Dorrow", 0);
    told("R-3", ANA, "Upper Dorrow", 0);
    ck_assert_uint_eq(call(), 0);
    now_utc_s += ALERT_GROUP_PAUSE_S - 10;
    ck_assert_uint_eq(call(), 1);
}
END_TEST

START_TEST(no_outcome_in_time_brings_the_next_in_line_for_all)
{
    told("R-1", GWEN, "Upper Dorrow", 0);
    told("R-2", TOM, "Upper Dorrow", 0);
    take(1, ROBIN);
    now_utc_s += 900;
    ck_assert_uint_eq(call(), 2);
    ck_assert_int_eq(take(2, KIM), HANDS_DONE);
    ck_assert_str_eq(found(1).taken_by, KIM);
}
END_TEST

START_TEST(an_emergency_goes_out_of_it_and_is_called_by_itself)
{
    told("R-1", GWEN, "Upper Dorrow", 0);
    told("R-2", TOM, "Upper Dorrow", 0);
    told("R-3", ANA, "Upper Dorrow", 0);
    call();
    ck_assert_int_eq(worse("R-2", TOM, ALERT_EMERGENCY, "sign:chest-pain"), 2);
    ck_assert_int_eq(head_of(2), 2);
    ck_assert_int_eq(head_of(3), 1);
    ck_assert_uint_eq(found(1).renter_count, 2);
    ck_assert_uint_eq(found(2).renter_count, 0);
    ck_assert_uint_eq(call(), 1);
}
END_TEST

START_TEST(if_the_first_is_an_emergency_the_next_stands_for_the_others_and_is_called_in_time)
{
    int64_t next_utc_s;

    told("R-1", GWEN, "Upper Dorrow", 0);
    told("R-2", TOM, "Upper Dorrow", 0);
    told("R-3", ANA, "Upper Dorrow", 0);
    call();
    worse("R-1", GWEN, ALERT_EMERGENCY, "flowing:no-answer");
    ck_assert_int_eq(head_of(1), 1);
    ck_assert_int_eq(head_of(2), 2);
    ck_assert_int_eq(head_of(3), 2);
    ck_assert_uint_eq(call(), 1); /* the emergency; the others were called a moment ago */
    ck_assert_uint_eq(found(1).renter_count, 0);
    next_utc_s = found(2).next_utc_s;
    ck_assert_int_gt(next_utc_s, now_utc_s);
    ck_assert_int_le(next_utc_s, now_utc_s + 600);
}
END_TEST

START_TEST(whoever_stands_for_the_others_then_is_called_as_the_first_would_have_been)
{
    told("R-1", GWEN, "Upper Dorrow", 0);
    ck_assert_uint_eq(call(), 1);
    now_utc_s += 599;
    told("R-2", TOM, "Upper Dorrow", 0);
    call();
    worse("R-1", GWEN, ALERT_EMERGENCY, "sign:chest-pain");
    ck_assert_int_eq(head_of(2), 2);
    ck_assert_int_eq(found(2).level_utc_s, START_S);
    MUST(step_rows_shift(store, 7200, &fault));
    ck_assert_int_eq(found(2).level_utc_s, START_S + 7200);
}
END_TEST

START_TEST(an_emergency_is_never_joined)
{
    told("R-1", GWEN, "Upper Dorrow", 0);
    worse("R-1", GWEN, ALERT_EMERGENCY, "flowing:no");
    ck_assert_int_eq(head_of(told("R-2", TOM, "Upper Dorrow", 0)), 2);
    worse("R-3", ANA, ALERT_EMERGENCY, "flowing:no");
    told("R-3", ANA, "Upper Dorrow", 0); /* hers is an emergency already */
    ck_assert_int_eq(head_of(3), 3);
}
END_TEST

START_TEST(what_is_urgent_for_another_reason_already_stays_by_itself)
{
    told("R-1", GWEN, "Upper Dorrow", 0);
    take(1, ROBIN);
    worse("R-2", TOM, ALERT_URGENT, "sign:dizzy");
    told("R-2", TOM, "Upper Dorrow", 0);
    ck_assert_int_eq(head_of(2), 2);
    ck_assert_ptr_null(found(2).taken_by);
    told("R-3", ANA, "Upper Dorrow", 0);
    worse("R-3", ANA, ALERT_URGENT, "sign:dizzy"); /* nor does who went out come in again */
    told("R-3", ANA, "Upper Dorrow", 0);
    ck_assert_int_eq(head_of(3), 3);
}
END_TEST

START_TEST(what_somebody_has_already_does_not_change_hands)
{
    worse("R-2", TOM, ALERT_OFFICE, "office:extend");
    take(1, KIM);
    told("R-1", GWEN, "Upper Dorrow", 0);
    told("R-2", TOM, "Upper Dorrow", 0);
    ck_assert_int_eq(head_of(1), 1);
    ck_assert_str_eq(found(1).taken_by, KIM);
}
END_TEST

START_TEST(its_number_closes_all_and_that_of_a_renter_that_one)
{
    told("R-1", GWEN, "Upper Dorrow", 0);
    told("R-2", TOM, "Upper Dorrow", 0);
    told("R-3", ANA, "Upper Dorrow", 0);
    call();
    close_alert(2);
    ck_assert(!is_open(2));
    ck_assert(is_open(1) && is_open(3));
    close_alert(1);
    ck_assert(!is_open(1) && !is_open(3));
}
END_TEST

START_TEST(of_whom_staff_have_heard_nothing_is_not_closed_with_the_others)
{
    told("R-1", GWEN, "Upper Dorrow", 0);
    told("R-2", TOM, "Upper Dorrow", 0);
    call();
    now_utc_s += 10;
    told("R-3", ANA, "Upper Dorrow", 0);
    close_alert(1);
    ck_assert(!is_open(1) && !is_open(2));
    ck_assert(is_open(3));
    ck_assert_int_le(found(3).next_utc_s, now_utc_s + ALERT_GROUP_PAUSE_S);
}
END_TEST

START_TEST(who_was_told_with_the_first_is_closed_with_the_next)
{
    told("R-1", GWEN, "Upper Dorrow", 0);
    told("R-2", TOM, "Upper Dorrow", 0);
    told("R-3", ANA, "Upper Dorrow", 0);
    call();
    worse("R-1", GWEN, ALERT_EMERGENCY, "sign:chest-pain");
    close_alert(2);
    ck_assert(!is_open(2) && !is_open(3));
    ck_assert(is_open(1));
}
END_TEST

START_TEST(whoever_takes_it_before_they_were_told_of_all_is_told_of_them)
{
    told("R-1", GWEN, "Upper Dorrow", 0);
    call();
    now_utc_s += 10;
    told("R-2", TOM, "Upper Dorrow", 0);
    take(1, ROBIN);
    ck_assert_int_le(found(1).next_utc_s, now_utc_s + ALERT_GROUP_PAUSE_S);
    now_utc_s += ALERT_GROUP_PAUSE_S;
    ck_assert_uint_eq(call(), 1);
    ck_assert_int_ge(found(1).next_utc_s, START_S + 900);
    close_alert(1);
    ck_assert(!is_open(2));
}
END_TEST

START_TEST(whom_the_answer_to_the_taking_named_is_told)
{
    told("R-1", GWEN, "Upper Dorrow", 0);
    call();
    now_utc_s += 10;
    told("R-2", TOM, "Upper Dorrow", 0);
    MUST(alert_group_named(store, 2, &fault));
    take(2, ROBIN);
    ck_assert_int_eq(found(1).next_utc_s, now_utc_s + 900);
    close_alert(1);
    ck_assert(!is_open(2));
}
END_TEST

static int64_t
count_told(const char *phone)
{
    sqlite3_stmt *query = store_query(store,
                                      "SELECT count(*) FROM outbox WHERE about = 'reply'"
                                      " AND recipient = ? AND body LIKE 'Nobody of our staff%'",
                                      VALUES(words(phone)), &fault);
    int64_t count;
    bool more;

    ck_assert_ptr_nonnull(query);
    MUST(store_next(store, query, &more, &fault));
    count = sqlite3_column_int64(query, 0);
    store_end(query);
    return count;
}

static void
pass(int64_t seconds)
{
    for (int64_t end_utc_s = now_utc_s + seconds; now_utc_s < end_utc_s; now_utc_s += 60) {
        call();
    }
}

START_TEST(the_first_can_be_closed_alone)
{
    const struct caller now = caller();
    const struct alert_hand hand = {.who = ROBIN, .road = "text", .now_utc_s = now_utc_s};
    enum hands_result result;

    told("R-1", GWEN, "Upper Dorrow", 0);
    told("R-2", TOM, "Upper Dorrow", 0);
    told("R-3", ANA, "Upper Dorrow", 0);
    MUST(alert_close_one(&now, 1, &hand, "has a tank", &result, &fault));
    ck_assert(!is_open(1));
    ck_assert_int_eq(head_of(3), 2);
    ck_assert_uint_eq(found(2).renter_count, 2);
}
END_TEST

START_TEST(each_hears_once_that_nobody_has_answered_when_everyone_is_called)
{
    told("R-1", GWEN, "Upper Dorrow", 0);
    told("R-2", TOM, "Upper Dorrow", 0);
    pass(1200);
    ck_assert_int_eq(count_told(GWEN), 0);
    pass(3600);
    ck_assert_int_eq(count_told(GWEN), 1);
    ck_assert_int_eq(count_told(TOM), 1);
    worse("R-2", TOM, ALERT_EMERGENCY, "sign:chest-pain");
    pass(600);
    ck_assert_int_eq(count_told(GWEN), 1);
    ck_assert_int_eq(count_told(TOM), 2); /* it is graver now */
}
END_TEST

START_TEST(who_joins_when_the_others_were_told_hears_it_too)
{
    told("R-1", GWEN, "Upper Dorrow", 0);
    pass(1500);
    ck_assert_int_eq(count_told(GWEN), 1);
    told("R-2", TOM, "Upper Dorrow", 0);
    pass(1500);
    ck_assert_int_eq(head_of(2), 1);
    ck_assert_int_eq(count_told(TOM), 1);
    ck_assert_int_eq(count_told(GWEN), 1);
}
END_TEST

START_TEST(who_has_somebody_or_wants_no_texts_or_has_told_a_death_does_not)
{
    told("R-1", GWEN, "Upper Dorrow", 0);
    worse("R-2", TOM, ALERT_URGENT, "sign:dizzy");
    worse("R-3", ANA, ALERT_URGENT, "sign:death-told");
    MUST(consent_rows_add(store, TOM, false, text_id, now_utc_s, &fault));
    take(1, ROBIN);
    pass(600);
    ck_assert_int_eq(count_told(GWEN), 0);
    pass(3600);
    ck_assert_int_eq(count_told(TOM), 0);
    ck_assert_int_eq(count_told(ANA), 0);
}
END_TEST

START_TEST(whom_a_person_leaves_waiting_goes_out_of_it)
{
    struct caller now = caller();
    struct alert_row alert;

    told("R-1", GWEN, "Upper Dorrow", 0);
    told("R-2", TOM, "Upper Dorrow", 0);
    take(1, ROBIN);
    alert = found(1);
    MUST(talk_begin(&now, &alert, ROBIN, false, text_id, &fault));
    now_utc_s += 300;
    ck_assert_uint_ge(call(), 1);
    ck_assert_ptr_null(found(1).taken_by);
    ck_assert_int_eq(head_of(2), 2);
    ck_assert_str_eq(found(2).taken_by, ROBIN);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("alert_group");
    TCase *tests = tcase_create("alert_group");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, the_next_of_the_village_joins_the_first_and_another_village_does_not);
    tcase_add_test(tests, who_tells_it_much_later_does_not_join);
    tcase_add_test(tests, a_stepped_clock_changes_neither_who_joins_nor_how_long_batteries_last);
    tcase_add_test(tests, staff_are_told_of_all_who_runs_out_first_in_front);
    tcase_add_test(tests, it_is_taken_once_and_whoever_joins_later_is_in_the_same_hands);
    tcase_add_test(tests, however_many_tell_it_staff_are_not_called_for_each);
    tcase_add_test(tests, no_outcome_in_time_brings_the_next_in_line_for_all);
    tcase_add_test(tests, an_emergency_goes_out_of_it_and_is_called_by_itself);
    tcase_add_test(
        tests, if_the_first_is_an_emergency_the_next_stands_for_the_others_and_is_called_in_time);
    tcase_add_test(tests,
                   whoever_stands_for_the_others_then_is_called_as_the_first_would_have_been);
    tcase_add_test(tests, an_emergency_is_never_joined);
    tcase_add_test(tests, what_is_urgent_for_another_reason_already_stays_by_itself);
    tcase_add_test(tests, what_somebody_has_already_does_not_change_hands);
    tcase_add_test(tests, its_number_closes_all_and_that_of_a_renter_that_one);
    tcase_add_test(tests, of_whom_staff_have_heard_nothing_is_not_closed_with_the_others);
    tcase_add_test(tests, who_was_told_with_the_first_is_closed_with_the_next);
    tcase_add_test(tests, whoever_takes_it_before_they_were_told_of_all_is_told_of_them);
    tcase_add_test(tests, whom_the_answer_to_the_taking_named_is_told);
    tcase_add_test(tests, the_first_can_be_closed_alone);
    tcase_add_test(tests, each_hears_once_that_nobody_has_answered_when_everyone_is_called);
    tcase_add_test(tests, who_joins_when_the_others_were_told_hears_it_too);
    tcase_add_test(tests, who_has_somebody_or_wants_no_texts_or_has_told_a_death_does_not);
    tcase_add_test(tests, whom_a_person_leaves_waiting_goes_out_of_it);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
