/* Texts in: what one text changes in the store, alone, among others, and when the store is broken.
 */
#include "intake_stage.h"

#include <signal.h>
#include <string.h>
#include <sys/resource.h>

#include "memory.h"

/* ---- One turn ------------------------------------------------------------------------------ */

/* Everything that texts leave behind, but for the random keys. */
static char *
left_behind(void)
{
    static const char *const tables[] = {
        "SELECT * FROM text",
        "SELECT * FROM conversation",
        "SELECT * FROM battery_account",
        "SELECT * FROM consent",
        "SELECT * FROM verdict",
        "SELECT * FROM alert",
        "SELECT * FROM alert_event",
        "SELECT * FROM alert_due",
        "SELECT id, text_id, verdict_id, body, urgency, created_utc_s, expires_utc_s FROM outbox",
        "SELECT * FROM outbox_due",
        "SELECT hex(digest), key, seen_utc_s, text_id FROM repeat_key",
    };
    char *all = memory_copy(arena, "");
    size_t i;

    for (i = 0; i < sizeof(tables) / sizeof(tables[0]); i++) {
        memory_append(&all, "%s\n%s", tables[i], asked(tables[i]));
    }
    return all;
}

/*
 * Takes the three in one turn or in three, in a fresh store; again if the clock's second changed
 * meanwhile, so that both ways happen at the same moment.
 */
static char *
after_three(const struct message *texts, bool in_one_turn)
{
    for (;;) {
        size_t i;

        for (i = 0; i < 3; i++) {
            take(&texts[i]);
            if (!in_one_turn) {
                run();
            }
        }
        run();
        if (clock_now_utc_s(evening) == EVENING) {
            ck_assert_str_eq(told, "stored, stored, stored, ");
            return left_behind();
        }
        stage_afresh();
    }
}

static void
check_three(const char *first, const char *second, const char *third)
{
    const struct message texts[] = {text_of(ada, "1", first), text_of(ada, "2", second),
                                    text_of(ada, "3", third)};
    char *together, *apart;

    stage_afresh();
    together = after_three(texts, true);
    stage_afresh();
    apart = after_three(texts, false);
    ck_assert_str_eq(together, apart);
}

START_TEST(three_texts_in_one_turn_end_as_the_same_three_one_by_one)
{
    check_three("how long have i got left", "one is full and one is half",
                "how long have i got left");
    check_three("can i charge it in the car", "when is it due", "thanks");
    check_three("STOP", "i have chest pain", "START");
    check_three("can i charge it in the car", "i have chest pain", "and cant breathe");
}
END_TEST

START_TEST(the_second_text_of_a_turn_sees_what_the_first_changed)
{
    struct message first = text_of(ada, "1", "how long have i got left");
    struct message second = text_of(ada, "2", "one is full and one is half");
    struct message third = text_of(ada, "3", "how long have i got left");

    take(&first);
    take(&second);
    take(&third);
    run();
    ck_assert_str_eq(asked("SELECT c.question, v.conversation_id = c.id FROM verdict v"
                           " JOIN conversation c ON c.text_id = 1 WHERE v.text_id = 2"),
                     "which-charge|1\n");
    ck_assert_str_eq(asked("SELECT json_extract(told, '$.charges') FROM battery_account"),
                     "[[100,100],[50,50]]\n");
    ck_assert_str_eq(asked("SELECT json_extract(started_from, '$.rentals[0].account'),"
                           " json_extract(started_from, '$.recent') FROM verdict ORDER BY id"),
                     "0|[]\n0|[1]\n1|[1,2]\n");
}
END_TEST

START_TEST(a_text_that_cannot_be_written_leaves_the_others_of_its_turn)
{
    struct message first = text_of(ada, "1", "when is it due");
    struct message bad = text_of(ada, "2", "who carries this?");
    struct message third = text_of("+12085550177", "3", "when is it due");

    bad.gateway = NULL; /* the store wants to know */
    take(&first);
    take(&bad);
    take(&third);
    run();
    ck_assert_str_eq(told, "stored, not stored, stored, ");
    ck_assert_str_eq(asked("SELECT text_id FROM verdict ORDER BY id"), "1\n2\n");
    ck_assert_str_eq(asked("SELECT gateway_id FROM text ORDER BY id"), "1\n3\n");
}
END_TEST

/* ---- What is written ----------------------------------------------------------------------- */

START_TEST(an_emergency_s_reply_and_alert_are_due_at_once)
{
    struct message text = text_of(ada, "1", "i have chest pain");

    take(&text);
    run();
    ck_assert_str_eq(asked("SELECT d.level, d.reason, d.rental_id, d.phone,"
                           " d.next_utc_s - a.opened_utc_s"
                           " FROM alert_due d JOIN alert a ON a.number = d.alert_number"),
                     "emergency|sign:chest-pain|R-7|+12085550123|0\n");
    ck_assert_str_eq(asked("SELECT min(urgency) FROM outbox_due"), "0\n");
    ck_assert_str_eq(asked("SELECT route, alert_level FROM verdict"), "emergency|emergency\n");
}
END_TEST

START_TEST(a_verdict_names_all_that_it_hangs_on)
{
    struct message text = text_of(ada, "1", "when is it due");

    take(&text);
    run();
    ck_assert_str_eq(asked("SELECT kb_digest FROM verdict"),
                     memory_format(arena, "%s\n", kb_digest(loaded.kb)));
    ck_assert_str_eq(asked("SELECT json_extract(started_from, '$.rentals[0].digest') ="
                           " (SELECT digest FROM rental_row) FROM verdict"),
                     "1\n");
    ck_assert_str_eq(asked("SELECT json_extract(json, '$.id') = CAST(verdict.text_id AS TEXT),"
                           " json_extract(json, '$.route') = route,"
                           " json_extract(json, '$.replies[0]') = body"
                           " FROM verdict JOIN outbox ON verdict_id = verdict.id"),
                     "1|1|1\n");
}
END_TEST

/* ---- Repeats ------------------------------------------------------------------------------- */

START_TEST(a_text_that_its_gateway_sends_again_is_decided_once)
{
    struct message text = text_of(ada, "1", "i have chest pain");
    struct message again = text;

    again.received_utc_s += 5;
    take(&text);
    take(&again); /* in the same turn */
    run();
    take(&again); /* and later */
    run();
    ck_assert_str_eq(told, "stored, repeat, repeat, ");
    ck_assert_str_eq(asked("SELECT count(*) FROM verdict"), "1\n");
}
END_TEST

START_TEST(without_id_and_time_a_sign_is_never_a_repeat)
{
    struct message sign = text_of(ada, NULL, "i have chest pain");
    struct message other = text_of(ada, NULL, "when is it due");

    take(&sign);
    take(&sign);
    take(&other);
    take(&other);
    run();
    ck_assert_str_eq(told, "stored, stored, stored, repeat, ");
}
END_TEST

/* ---- A broken store ------------------------------------------------------------------------ */

static struct rlimit unlimited;

static void
fill_disk(void)
{
    struct rlimit nothing;

    signal(SIGXFSZ, SIG_IGN);
    ck_assert_int_eq(getrlimit(RLIMIT_FSIZE, &unlimited), 0);
    nothing = unlimited;
    nothing.rlim_cur = 0;
    ck_assert_int_eq(setrlimit(RLIMIT_FSIZE, &nothing), 0);
}

/* How many unrecorded texts went to this phone. */
static int
lines_to(const char *phone)
{
    char *begin = memory_format(arena, "\n%s: ", phone);
    char *all = memory_format(arena, "\n%s", sent);
    const char *at;
    int count = 0;

    for (at = strstr(all, begin); at != NULL; at = strstr(at + 1, begin)) {
        count++;
    }
    return count;
}

START_TEST(with_a_full_disk_signs_are_answered_unrecorded_once_a_sender)
{
    struct message sign = text_of(ada, "1", "i have chest pain");
    struct message other = text_of("+12085550177", "2", "when is it due");

    fill_disk();
    take(&sign);
    take(&other);
    run();
    take(&sign);
    run();
    ck_assert_int_eq(setrlimit(RLIMIT_FSIZE, &unlimited), 0);

    ck_assert_str_eq(told, "not stored, not stored, not stored, ");
    ck_assert_ptr_eq(strstr(sent, "+12085550123: "), sent); /* the renter first */
    ck_assert_ptr_null(strstr(sent + 1, "\n+12085550123: "));
    ck_assert_ptr_nonnull(strstr(sent, "911"));
    ck_assert_ptr_nonnull(strstr(sent, "\n+12085550190: "));
    ck_assert_ptr_nonnull(strstr(sent, "\n+12085550191: "));
    ck_assert_ptr_nonnull(strstr(sent, "chest pain"));
    ck_assert_ptr_null(strstr(sent, "+12085550177"));
    ck_assert_str_eq(asked("SELECT count(*) FROM text"), "0\n");

    /* The gateway sends it again, as it was told: now it is taken. */
    take(&sign);
    run();
    ck_assert_str_eq(asked("SELECT count(*) FROM text"), "1\n");
}
END_TEST

START_TEST(with_a_full_disk_a_lesser_sign_does_not_hold_back_an_emergency)
{
    struct message lesser = text_of(ada, "1", "my reading is 88");
    struct message graver = text_of(ada, "2", "i have chest pain");

    fill_disk();
    take(&lesser);
    run();
    take(&graver);
    run();
    take(&lesser);
    take(&graver);
    run();
    ck_assert_int_eq(setrlimit(RLIMIT_FSIZE, &unlimited), 0);

    ck_assert_str_eq(told, "not stored, not stored, not stored, not stored, ");
    ck_assert_ptr_nonnull(strstr(sent, "EMERGENCY: chest pain"));
    ck_assert_int_eq(lines_to(ada), 2);
    ck_assert_int_eq(lines_to("+12085550190"), 2);
}
END_TEST

START_TEST(what_could_not_be_handed_on_does_not_hold_back_the_next_try)
{
    struct message sign = text_of(ada, "1", "i have chest pain");

    fill_disk();
    loaded.config->gateway_count = 0;
    take(&sign);
    run();
    loaded.config->gateway_count = 1;
    take(&sign);
    run();
    ck_assert_int_eq(setrlimit(RLIMIT_FSIZE, &unlimited), 0);
    ck_assert_int_eq(lines_to(ada), 1);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("intake");
    TCase *tests = tcase_create("intake");
    SRunner *runner;
    int failed;

    tcase_add_unchecked_fixture(tests, stage_load, stage_free);
    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_set_timeout(tests, 100);
    tcase_add_test(tests, three_texts_in_one_turn_end_as_the_same_three_one_by_one);
    tcase_add_test(tests, the_second_text_of_a_turn_sees_what_the_first_changed);
    tcase_add_test(tests, a_text_that_cannot_be_written_leaves_the_others_of_its_turn);
    tcase_add_test(tests, an_emergency_s_reply_and_alert_are_due_at_once);
    tcase_add_test(tests, a_verdict_names_all_that_it_hangs_on);
    tcase_add_test(tests, a_text_that_its_gateway_sends_again_is_decided_once);
    tcase_add_test(tests, without_id_and_time_a_sign_is_never_a_repeat);
    tcase_add_test(tests, with_a_full_disk_signs_are_answered_unrecorded_once_a_sender);
    tcase_add_test(tests, with_a_full_disk_a_lesser_sign_does_not_hold_back_an_emergency);
    tcase_add_test(tests, what_could_not_be_handed_on_does_not_hold_back_the_next_try);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? 0 : 1;
}
