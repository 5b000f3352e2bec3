/* Texts in the store: which are repeats of another, and which came just before. */
#include "rows_stage.h"

/* ---- Repeats ------------------------------------------------------------------------------- */

static enum repeat
repeat_of(struct store *store, const struct message *message)
{
    enum repeat repeat;
    int64_t id;

    MUST(texts_find_repeat(store, message, &repeat, &id, &fault));
    return repeat;
}

static void
take_in(struct store *store, const struct message *message)
{
    int64_t id = text_stored(store, message);

    MUST(texts_remember(store, message, id, message->received_utc_s - 3600, &fault));
}

START_TEST(the_same_id_with_the_same_content_is_a_repeat)
{
    struct store *store = in_memory();
    struct message again = three_am;

    ck_assert_int_eq(repeat_of(store, &three_am), REPEAT_NOT);
    take_in(store, &three_am);
    again.received_utc_s += 1800; /* the gateway tried again half an hour later */
    ck_assert_int_eq(repeat_of(store, &again), REPEAT_CERTAIN);
    again.gateway = "other";
    ck_assert_int_eq(repeat_of(store, &again), REPEAT_NOT);
    store_close(store);
}
END_TEST

START_TEST(the_same_id_with_other_content_is_a_new_text)
{
    struct store *store = in_memory();
    struct message other = three_am;

    take_in(store, &three_am);
    other.text = "chest pain";
    ck_assert_int_eq(repeat_of(store, &other), REPEAT_NOT);
    other = three_am;
    other.sender = "+12085550199";
    ck_assert_int_eq(repeat_of(store, &other), REPEAT_NOT);
    other = three_am;
    other.id = "m-2";
    ck_assert_int_eq(repeat_of(store, &other), REPEAT_NOT);
    store_close(store);
}
END_TEST

START_TEST(without_id_and_time_the_same_words_repeat_for_ten_seconds)
{
    struct store *store = in_memory();
    struct message silent = three_am;

    silent.id = NULL;
    silent.sent_utc_s = silent.received_utc_s = 1000;
    take_in(store, &silent);
    silent.sent_utc_s = silent.received_utc_s = 1010;
    ck_assert_int_eq(repeat_of(store, &silent), REPEAT_LIKELY);
    silent.sent_utc_s = silent.received_utc_s = 1011;
    ck_assert_int_eq(repeat_of(store, &silent), REPEAT_NOT);
    store_close(store);
}
END_TEST

START_TEST(without_id_the_time_sent_tells_a_repeat)
{
    struct store *store = in_memory();
    struct message timed = three_am;

    timed.id = NULL;
    timed.sent_utc_s = 1000;
    timed.received_utc_s = 1001;
    take_in(store, &timed);
    timed.received_utc_s = 1300;
    ck_assert_int_eq(repeat_of(store, &timed), REPEAT_CERTAIN);
    timed.sent_utc_s = 1003; /* "ok" and three seconds later "ok" once more */
    timed.received_utc_s = 1004;
    ck_assert_int_eq(repeat_of(store, &timed), REPEAT_NOT);
    store_close(store);
}
END_TEST

START_TEST(what_made_repeats_is_forgotten_in_time)
{
    struct store *store = in_memory();
    struct message later = three_am;

    take_in(store, &three_am);
    later.id = "m-2";
    later.received_utc_s += 3601;
    take_in(store, &later);
    ck_assert_int_eq(repeat_of(store, &three_am), REPEAT_NOT);
    ck_assert_int_eq(repeat_of(store, &later), REPEAT_CERTAIN);
    store_close(store);
}
END_TEST

/* ---- Recent texts -------------------------------------------------------------------------- */

START_TEST(texts_of_the_last_three_minutes_come_oldest_first)
{
    struct store *store = in_memory();
    static const int64_t sent[] = {1000, 1100, 1200, 1250};
    struct message message = three_am;
    struct recent_texts recent;
    int64_t id = 0;
    size_t i;

    for (i = 0; i < 4; i++) {
        message.text = memory_format(arena, "text %zu", i);
        message.sent_utc_s = message.received_utc_s = sent[i];
        id = text_stored(store, &message);
    }
    MUST(texts_recent(store, arena, &message, id, &recent, &fault));
    ck_assert_uint_eq(recent.count, 2); /* 1000 is 250 s before 1250 */
    ck_assert_str_eq(recent.list[0].text, "text 1");
    ck_assert_str_eq(recent.list[1].text, "text 2");
    store_close(store);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("text rows");
    TCase *tests = tcase_create("text rows");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, the_same_id_with_the_same_content_is_a_repeat);
    tcase_add_test(tests, the_same_id_with_other_content_is_a_new_text);
    tcase_add_test(tests, without_id_and_time_the_same_words_repeat_for_ten_seconds);
    tcase_add_test(tests, without_id_the_time_sent_tells_a_repeat);
    tcase_add_test(tests, what_made_repeats_is_forgotten_in_time);
    tcase_add_test(tests, texts_of_the_last_three_minutes_come_oldest_first);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? 0 : 1;
}
