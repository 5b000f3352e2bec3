/* The rows of the store: each list gives back what was put in, and says what is due or current. */
#include "alert_renters.h"
#include "alert_rows.h"
#include "conversation_rows.h"
#include "outbox_rows.h"
#include "rental_rows.h"
#include "rows_stage.h"

/* ---- Rows ---------------------------------------------------------------------------------- */

START_TEST(a_conversation_comes_back_as_it_was_put_in)
{
    struct store *store = in_memory();
    struct message later = three_am;
    struct conversation before, after,
        asking = {.last_utc_s = 1770000005,
                  .question = QUESTION_WHICH_TOPIC,
                  .asked_utc_s = 1770000004,
                  .asked_about = "battery one",
                  .choices = {"charge-car", "charge-home"},
                  .choice_count = 2,
                  .last = {.at_utc_s = 1770000003,
                           .is_sum = true,
                           .rental_id = "R-8",
                           .wrote_utc_s = 1770000001,
                           .told = {.kind = TOLD_TRIP,
                                    .charges = {{40, 50}},
                                    .charge_count = 1,
                                    .drives = true,
                                    .since_min = 20,
                                    .has_ready_by = true,
                                    .ready_by = 390,
                                    .has_day = true,
                                    .day = DAY_FRIDAY,
                                    .legs = {{90, LEG_HIKE, POWER_SOURCE_CAR}},
                                    .leg_count = 1,
                                    .flow_tenths = 25,
                                    .size = "E",
                                    .celsius = {true, -8},
                                    .missing = MISSING_SIZE},
                           .newest = THING_LENGTH},
                  .rental_id = "R-7",
                  .in_charge = "+12085550100"};
    struct conversation_step step = {three_am.sender, text_stored(store, &three_am), three_am.text,
                                     &before};
    bool lost;

    MUST(conversation_rows_newest(store, arena, three_am.sender, &before, &fault));
    ck_assert_int_eq(before.row, 0);
    MUST(conversation_rows_add(store, &step, &asking, &lost, &fault));
    MUST(conversation_rows_newest(store, arena, three_am.sender, &before, &fault));

    /* Kept through a text that says something else: it points at the first one still. */
    later.text = "hello?";
    step.text_id = text_stored(store, &later);
    step.text = later.text;
    MUST(conversation_rows_add(store, &step, &before, &lost, &fault));
    ck_assert(!lost);
    MUST(conversation_rows_newest(store, arena, three_am.sender, &after, &fault));
    ck_assert_int_gt(after.row, before.row);
    ck_assert_int_eq(after.question, QUESTION_WHICH_TOPIC);
    ck_assert_str_eq(after.asked_about, "battery one");
    ck_assert_uint_eq(after.choice_count, 2);
    ck_assert_str_eq(after.choices[1], "charge-home");
    ck_assert_str_eq(after.rental_id, "R-7");
    ck_assert_str_eq(after.in_charge, "+12085550100");
    ck_assert_int_eq(after.last_utc_s, 1770000005);
    ck_assert_int_eq(after.last.at_utc_s, 1770000003);
    ck_assert_int_eq(after.last.newest, THING_LENGTH);
    ck_assert_str_eq(after.last.rental_id, "R-8");
    ck_assert_mem_eq(&after.last.told, &asking.last.told, sizeof after.last.told);
    store_close(store);
}
END_TEST

START_TEST(the_newest_row_of_a_rental_counts_and_the_old_ones_stay)
{
    static const char *const old_phones[] = {"+12085550123", "+12085550124"};
    struct store *store = in_memory();
    struct rental_row first = {"R-7", "d1", "{\"v\":1}"}, second = {"R-7", "d2", "{\"v\":2}"};
    struct rental_row *rows;
    size_t count;
    bool changed;

    MUST(rental_rows_put(store, &first, old_phones, 2, "import", 1, &changed, &fault));
    ck_assert(changed);
    MUST(rental_rows_put(store, &first, old_phones, 2, "import", 2, &changed, &fault));
    ck_assert(!changed);
    MUST(rental_rows_put(store, &second, old_phones, 1, "import", 3, &changed, &fault));
    ck_assert(changed);

    MUST(rental_rows_of_phone(store, arena, "+12085550123", &rows, &count, &fault));
    ck_assert_uint_eq(count, 1);
    ck_assert_str_eq(rows[0].json, "{\"v\":2}");
    /* A phone that the current record no longer names gets nobody's data. */
    MUST(rental_rows_of_phone(store, arena, "+12085550124", &rows, &count, &fault));
    ck_assert_uint_eq(count, 0);

    /* Back to what it was: dated anew, kept once. */
    MUST(rental_rows_put(store, &first, old_phones, 2, "import", 4, &changed, &fault));
    ck_assert(changed);
    MUST(rental_rows_of_phone(store, arena, "+12085550124", &rows, &count, &fault));
    ck_assert_uint_eq(count, 1);
    store_close(store);
}
END_TEST

START_TEST(the_most_urgent_text_is_due_first)
{
    struct store *store = in_memory();
    struct outbox_new text = {.gateway = "valley", .to = "+12085550123", .now_utc_s = 100};
    struct outbox_row *rows;
    int64_t reply, emergency, next;
    size_t count;

    text.body = "a reply";
    text.urgency = URGENCY_REPLY;
    MUST(outbox_rows_add(store, &text, &reply, &fault));
    text.body = "an emergency";
    text.urgency = URGENCY_EMERGENCY;
    MUST(outbox_rows_add(store, &text, &emergency, &fault));
    MUST(outbox_rows_due(store, arena, 100, 8, &rows, &count, &fault));
    ck_assert_uint_eq(count, 2);
    ck_assert_int_eq(rows[0].id, emergency);
    ck_assert_str_ne(rows[0].key, rows[1].key);

    MUST(outbox_rows_result(store,
                            &(struct outbox_result){.id = emergency,
                                                    .event = OUTBOX_TRIED_AGAIN_LATER,
                                                    .now_utc_s = 100,
                                                    .next_utc_s = 130},
                            &fault));
    MUST(outbox_rows_result(
        store, &(struct outbox_result){.id = reply, .event = OUTBOX_REFUSED, .now_utc_s = 101},
        &fault));
    MUST(outbox_rows_due(store, arena, 129, 8, &rows, &count, &fault));
    ck_assert_uint_eq(count, 0);
    MUST(outbox_rows_next(store, &next, &fault));
    ck_assert_int_eq(next, 130);
    MUST(outbox_rows_due(store, arena, 130, 8, &rows, &count, &fault));
    ck_assert_uint_eq(count, 1);
    ck_assert_int_eq(rows[0].attempts, 1);
    store_close(store);
}
END_TEST

START_TEST(an_accepted_emergency_is_unconfirmed_until_it_is_reported)
{
    struct store *store = in_memory();
    struct outbox_new text = {.gateway = "valley",
                              .to = "+12085550123",
                              .body = "call",
                              .urgency = URGENCY_EMERGENCY,
                              .now_utc_s = 100};
    struct outbox_result result = {
        .event = OUTBOX_ACCEPTED, .now_utc_s = 105, .gateway_id = "g-17"};
    struct outbox_row *rows, row;
    size_t count;
    bool found;

    MUST(outbox_rows_add(store, &text, &result.id, &fault));
    MUST(outbox_rows_result(store, &result, &fault));
    MUST(outbox_rows_unconfirmed(store, arena, 105, &rows, &count, &fault));
    ck_assert_uint_eq(count, 0);
    MUST(outbox_rows_unconfirmed(store, arena, 106, &rows, &count, &fault));
    ck_assert_uint_eq(count, 1);

    MUST(outbox_rows_by_gateway_id(store, arena, ROAD_TEXT, "other", "g-17", &row, &found, &fault));
    ck_assert(!found);
    MUST(
        outbox_rows_by_gateway_id(store, arena, ROAD_TEXT, "valley", "g-17", &row, &found, &fault));
    ck_assert(found);
    ck_assert_int_eq(row.id, result.id);
    result.event = OUTBOX_DELIVERED;
    MUST(outbox_rows_result(store, &result, &fault));
    MUST(outbox_rows_unconfirmed(store, arena, 106, &rows, &count, &fault));
    ck_assert_uint_eq(count, 0);
    store_close(store);
}
END_TEST

static struct alert_hand given;

/* By text, at this moment. */
static const struct alert_hand *
hand(const char *who, int64_t now_utc_s)
{
    given = (struct alert_hand){.who = who, .road = "text", .now_utc_s = now_utc_s};
    return &given;
}

static void
call_staff(struct store *store, int64_t number, const char *who, int64_t now_utc_s,
           int64_t next_utc_s)
{
    int64_t call_id;

    MUST(alert_rows_called(store, number, ALERT_CALLED, who, now_utc_s, &call_id, &fault));
    MUST(alert_rows_next_call(store, number, next_utc_s, &fault));
}

START_TEST(a_rental_has_one_open_alert_that_only_gets_graver)
{
    struct store *store = in_memory();
    struct alert_row call = {.level = ALERT_URGENT,
                             .rental_id = "R-7",
                             .phone = "+12085550123",
                             .reason = "sign:reading",
                             .brief = "dizzy",
                             .next_utc_s = 100};
    struct alert_row *rows;
    int64_t first, second;
    bool is_new, done;
    size_t count;

    MUST(alert_rows_open(store, &call, 100, &first, &is_new, &fault));
    ck_assert(is_new);
    MUST(alert_rows_take(store, first, hand("+12085550100", 110), 900, &done, &fault));
    ck_assert(done);
    MUST(alert_rows_take(store, first, hand("+12085550101", 111), 900, &done, &fault));
    ck_assert_msg(!done, "someone else has it");

    /* The same again lets who took it work; from another phone it is the same rental. */
    call.phone = "+12085550124";
    call.next_utc_s = 120;
    MUST(alert_rows_open(store, &call, 120, &second, &is_new, &fault));
    ck_assert(!is_new);
    ck_assert_int_eq(first, second);
    MUST(alert_rows_due(store, arena, 130, &rows, &count, &fault));
    ck_assert_uint_eq(count, 0);

    call.level = ALERT_EMERGENCY;
    call.reason = "sign:chest-pain";
    call.brief = "chest pain";
    call.next_utc_s = 140;
    MUST(alert_rows_open(store, &call, 140, &second, &is_new, &fault));
    call.level = ALERT_OFFICE;
    call.reason = "gap";
    call.brief = "not answered";
    MUST(alert_rows_open(store, &call, 141, &second, &is_new, &fault));
    MUST(alert_rows_open(store, &call, 141, &second, &is_new, &fault));
    MUST(alert_rows_due(store, arena, 141, &rows, &count, &fault));
    ck_assert_uint_eq(count, 1);
    ck_assert_int_eq(rows[0].level, ALERT_EMERGENCY);
    ck_assert_str_eq(rows[0].reason, "sign:chest-pain");
    ck_assert_str_eq(rows[0].taken_by, "+12085550100");
    ck_assert_str_eq(rows[0].brief, "chest pain + dizzy + not answered");

    MUST(alert_rows_close(store, first, hand("+12085550100", 200), "at the hospital", &done,
                          &fault));
    ck_assert(done);
    MUST(alert_rows_close(store, first, hand("+12085550100", 201), "again", &done, &fault));
    ck_assert(!done);
    MUST(alert_rows_open(store, &call, 300, &second, &is_new, &fault));
    ck_assert(is_new);
    ck_assert_int_ne(first, second);
    store_close(store);
}
END_TEST

/* So that it is known later of whom it was told. */
START_TEST(an_emergency_keeps_the_texts_that_told_it)
{
    struct store *store = in_memory();
    struct alert_row alert = {.level = ALERT_EMERGENCY,
                              .phone = three_am.sender,
                              .reason = "sign:x",
                              .brief = "x",
                              .text_id = text_stored(store, &three_am)};
    struct open_alert *open;
    int64_t number;
    size_t count;
    bool is_new;

    MUST(alert_rows_open(store, &alert, 100, &number, &is_new, &fault));
    MUST(alert_rows_open_of(store, arena, three_am.sender, &open, &count, &fault));
    ck_assert_str_eq(open[0].grave_texts, three_am.text);
    store_close(store);
}
END_TEST

START_TEST(alerts_are_due_gravest_first)
{
    struct store *store = in_memory();
    static const enum alert_level levels[] = {ALERT_OFFICE, ALERT_URGENT, ALERT_EMERGENCY};
    static const char *const phones[] = {"+12085550121", "+12085550122", "+12085550123"};
    struct open_alert *open;
    struct alert_row *rows;
    int64_t alert;
    size_t i, count;
    bool is_new;

    for (i = 0; i < 3; i++) {
        MUST(alert_rows_open(store,
                             &(struct alert_row){.level = levels[i],
                                                 .phone = phones[i],
                                                 .reason = "sign:x",
                                                 .brief = "x",
                                                 .next_utc_s = 100},
                             100, &alert, &is_new, &fault));
        ck_assert(is_new);
    }
    MUST(alert_rows_due(store, arena, 100, &rows, &count, &fault));
    ck_assert_uint_eq(count, 3);
    ck_assert_int_eq(rows[0].level, ALERT_EMERGENCY);
    ck_assert_int_eq(rows[2].level, ALERT_OFFICE);
    MUST(alert_rows_open_of(store, arena, phones[1], &open, &count, &fault));
    ck_assert_uint_eq(count, 1);
    ck_assert_int_eq(open[0].level, ALERT_URGENT);
    MUST(alert_rows_open_of(store, arena, NULL, &open, &count, &fault));
    ck_assert_uint_eq(count, 3);
    store_close(store);
}
END_TEST

static int64_t
next_call(struct store *store)
{
    int64_t next_utc_s;

    MUST(alert_rows_next(store, &next_utc_s, &fault));
    return next_utc_s;
}

START_TEST(an_office_alert_is_called_again_about_a_further_text_ten_minutes_on)
{
    struct store *store = in_memory();
    struct alert_row question = {.level = ALERT_OFFICE,
                                 .phone = "+12085550123",
                                 .reason = "gap",
                                 .brief = "no answer",
                                 .next_utc_s = 100};
    int64_t number;
    bool is_new;

    MUST(alert_rows_open(store, &question, 100, &number, &is_new, &fault));
    call_staff(store, number, "+12085550190", 100, INT64_MAX);
    ck_assert_int_eq(next_call(store), INT64_MAX);

    question.next_utc_s = 150;
    MUST(alert_rows_open(store, &question, 150, &number, &is_new, &fault));
    ck_assert(!is_new);
    ck_assert_int_eq(next_call(store), 700);
    question.next_utc_s = 200;
    MUST(alert_rows_open(store, &question, 200, &number, &is_new, &fault));
    ck_assert_int_eq(next_call(store), 700);

    call_staff(store, number, "+12085550190", 700, INT64_MAX);
    question.next_utc_s = 5000;
    MUST(alert_rows_open(store, &question, 5000, &number, &is_new, &fault));
    ck_assert_int_eq(next_call(store), 5000);
    store_close(store);
}
END_TEST

START_TEST(a_raised_alert_counts_from_when_it_was_raised)
{
    struct store *store = in_memory();
    struct alert_row call = {.level = ALERT_OFFICE,
                             .phone = "+12085550123",
                             .reason = "gap",
                             .brief = "no answer",
                             .next_utc_s = 100};
    struct alert_row *rows;
    int64_t number;
    bool is_new;
    size_t count;

    MUST(alert_rows_open(store, &call, 100, &number, &is_new, &fault));
    call_staff(store, number, "+12085550190", 100, INT64_MAX);
    call.level = ALERT_EMERGENCY;
    call.reason = "sign:chest-pain";
    call.next_utc_s = 9000;
    MUST(alert_rows_open(store, &call, 9000, &number, &is_new, &fault));
    call_staff(store, number, "+12085550191", 9000, 9120);
    MUST(alert_rows_due(store, arena, 9120, &rows, &count, &fault));
    ck_assert_uint_eq(count, 1);
    ck_assert_int_eq(rows[0].level_utc_s, 9000);
    ck_assert_uint_eq(rows[0].people_called, 1);
    store_close(store);
}
END_TEST

static void
put_rental(struct store *store, const char *rental_id, const char *digest, const char *json)
{
    static const char *const phones[] = {"+12085550123"};
    const struct rental_row row = {rental_id, digest, json};
    bool changed;

    MUST(rental_rows_put(store, &row, phones, 1, "import", 1, &changed, &fault));
}

START_TEST(an_alert_about_no_known_rental_tells_whom_the_phone_belongs_to)
{
    struct store *store = in_memory();
    struct alert_row call = {.phone = "+12085550123"}, known = {.rental_id = "R-1"};

    MUST(alert_renters(store, arena, &(struct config){0}, &call, &fault));
    ck_assert_ptr_null(call.first_name);
    ck_assert_ptr_null(call.one_of);

    put_rental(store, "R-1", "d1",
               "{\"first_name\":\"Anna\",\"place\":\"Cabin 4\",\"state\":\"out\"}");
    put_rental(store, "R-2", "d2",
               "{\"first_name\":\"Gone\",\"place\":\"Dell\",\"state\":\"closed\"}");
    MUST(alert_renters(store, arena, &(struct config){0}, &call, &fault));
    ck_assert_str_eq(call.first_name, "Anna");
    ck_assert_str_eq(call.place, "Cabin 4");

    put_rental(store, "R-3", "d3",
               "{\"first_name\":\"Bert\",\"place\":\"Cabin 4\",\"state\":\"overdue\"}");
    call = (struct alert_row){.phone = "+12085550123"};
    MUST(alert_renters(store, arena, &(struct config){0}, &call, &fault));
    ck_assert_ptr_null(call.first_name);
    ck_assert_str_eq(call.one_of, "Anna, Bert");
    ck_assert_str_eq(call.place, "Cabin 4");

    put_rental(store, "R-3", "d4",
               "{\"first_name\":\"Bert\",\"place\":\"Aspen House\",\"state\":\"out\"}");
    MUST(alert_renters(store, arena, &(struct config){0}, &call, &fault));
    ck_assert_str_eq(call.place, "Cabin 4 or Aspen House");

    MUST(alert_renters(store, arena, &(struct config){0}, &known, &fault));
    ck_assert_ptr_null(known.one_of);
    store_close(store);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("store rows");
    TCase *tests = tcase_create("store rows");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, a_conversation_comes_back_as_it_was_put_in);
    tcase_add_test(tests, the_newest_row_of_a_rental_counts_and_the_old_ones_stay);
    tcase_add_test(tests, the_most_urgent_text_is_due_first);
    tcase_add_test(tests, an_accepted_emergency_is_unconfirmed_until_it_is_reported);
    tcase_add_test(tests, a_rental_has_one_open_alert_that_only_gets_graver);
    tcase_add_test(tests, an_emergency_keeps_the_texts_that_told_it);
    tcase_add_test(tests, alerts_are_due_gravest_first);
    tcase_add_test(tests, an_office_alert_is_called_again_about_a_further_text_ten_minutes_on);
    tcase_add_test(tests, a_raised_alert_counts_from_when_it_was_raised);
    tcase_add_test(tests, an_alert_about_no_known_rental_tells_whom_the_phone_belongs_to);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? 0 : 1;
}
