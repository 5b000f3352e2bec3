/* A turn: what is ready together is written together, and nobody hears of it before COMMIT. */
#include <check.h>

#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>

#include <event2/event.h>

#include "memory.h"
#include "store.h"
#include "texts.h"
#include "turn.h"

static char folder[64];
static char *path;
static void *arena;
static struct event_base *base;
static struct store *store;
static struct turn *turn;
static char *story; /* what happened, in order */

static void
set_up(void)
{
    struct fault fault = {""};

    strcpy(folder, "/tmp/hutbell-turn-XXXXXX");
    ck_assert_ptr_nonnull(mkdtemp(folder));
    arena = memory_must(talloc_new(NULL));
    path = memory_format(arena, "%s/a.db", folder);
    story = memory_copy(arena, "");
    base = event_base_new();
    ck_assert_msg(store_open(path, STORE_WRITE, &store, &fault) == 0, "%s", fault.text);
    turn = turn_new(base, store);
}

static void
tear_down(void)
{
    char *command = memory_format(arena, "rm -rf %s", folder);

    turn_free(turn);
    store_close(store);
    event_base_free(base);
    ck_assert_int_eq(system(command), 0);
    talloc_free(arena);
}

/* A job that stores its word as a text, and fails after that if its word is "bad". */
struct word_job {
    struct turn_job job;
    const char *word;
    struct word_job *then; /* added when this one is done */
};

static int
write_word(struct turn_job *turn_job, struct store *to, void *turn_arena, struct fault *fault)
{
    struct word_job *job = (struct word_job *)turn_job;
    struct message message = {
        .gateway = "valley", .sender = "+12085550123", .text = memory_copy(turn_arena, job->word)};
    int64_t id;

    memory_append(&story, "write %s, ", job->word);
    if (texts_add(to, &message, &id, fault) != 0) {
        return -1;
    }
    if (strcmp(job->word, "bad") == 0) {
        fault_set(fault, "it was bad");
        return -1;
    }
    return 0;
}

static void
word_done(struct turn_job *turn_job, enum turn_outcome outcome, const struct fault *fault)
{
    static const char *const names[] = {[TURN_WRITTEN] = "written",
                                        [TURN_ROLLED_BACK] = "rolled back",
                                        [TURN_STORE_BROKEN] = "broken"};
    struct word_job *job = (struct word_job *)turn_job;

    memory_append(&story, "%s %s, ", job->word, names[outcome]);
    if (outcome == TURN_ROLLED_BACK) {
        ck_assert_str_eq(fault->text, "it was bad");
    }
    if (job->then != NULL) {
        turn_add(turn, &job->then->job);
    }
}

static struct word_job *
word(const char *text)
{
    struct word_job *job = memory_new(arena, struct word_job);

    job->job = (struct turn_job){.write = write_word, .done = word_done};
    job->word = text;
    return job;
}

static void
add(struct word_job *job)
{
    turn_add(turn, &job->job);
}

/* Runs until nothing is left to do. */
static void
run(void)
{
    ck_assert_int_ge(event_base_dispatch(base), 0);
}

/* The words that stand in the file, as another program sees them. */
static char *
stored(void)
{
    char *words = memory_copy(arena, "");
    struct fault fault = {""};
    struct store *reader;
    struct message message;
    int64_t id;
    bool found = true;

    ck_assert_msg(store_open(path, STORE_READ, &reader, &fault) == 0, "%s", fault.text);
    for (id = 1; found; id++) {
        ck_assert_int_eq(texts_load(reader, arena, id, &message, &found, &fault), 0);
        if (found) {
            memory_append(&words, "%s ", message.text);
        }
    }
    store_close(reader);
    return words;
}

START_TEST(jobs_of_a_turn_are_all_written_before_any_is_told)
{
    add(word("one"));
    add(word("two"));
    ck_assert_str_eq(story, ""); /* nothing runs inside turn_add() */
    run();
    ck_assert_str_eq(story, "write one, write two, one written, two written, ");
    ck_assert_str_eq(stored(), "one two ");
}
END_TEST

START_TEST(a_bad_job_rolls_back_alone)
{
    add(word("one"));
    add(word("bad"));
    add(word("two"));
    run();
    ck_assert_str_eq(
        story, "write one, write bad, write two, one written, bad rolled back, two written, ");
    ck_assert_str_eq(stored(), "one two ");
}
END_TEST

START_TEST(a_job_that_is_added_when_another_is_told_is_of_the_next_turn)
{
    struct word_job *one = word("one");

    one->then = word("three");
    add(one);
    add(word("two"));
    run();
    ck_assert_str_eq(story, "write one, write two, one written, two written, "
                            "write three, three written, ");
}
END_TEST

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

static void
empty_disk(void)
{
    ck_assert_int_eq(setrlimit(RLIMIT_FSIZE, &unlimited), 0);
}

START_TEST(if_commit_fails_every_job_hears_it_and_nothing_is_written)
{
    add(word("zero"));
    run();
    story = memory_copy(arena, "");
    add(word("one"));
    add(word("two"));
    fill_disk();
    run();
    empty_disk();
    /* Both had been written when COMMIT failed. */
    ck_assert_str_eq(story, "write one, write two, one broken, two broken, ");
    ck_assert_str_eq(stored(), "zero ");
    ck_assert(turn_store_is_broken(turn));

    add(word("three"));
    run();
    ck_assert_str_eq(stored(), "zero three ");
    ck_assert(!turn_store_is_broken(turn));
}
END_TEST

static struct store *other; /* another program that writes */

static void
on_other_done(evutil_socket_t unused, short what, void *cookie)
{
    struct fault fault;

    (void)unused;
    (void)what;
    (void)cookie;
    memory_append(&story, "the other is done, ");
    ck_assert_int_eq(store_commit(other, &fault), 0);
}

START_TEST(a_turn_waits_for_another_program_that_writes)
{
    const struct timeval soon = {.tv_usec = 100000};
    struct fault fault;

    ck_assert_int_eq(store_open(path, STORE_WRITE, &other, &fault), 0);
    ck_assert_int_eq(store_begin(other, &fault), 0);
    event_base_once(base, -1, EV_TIMEOUT, on_other_done, NULL, &soon);
    add(word("one"));
    run();
    ck_assert_str_eq(story, "the other is done, write one, one written, ");
    store_close(other);
}
END_TEST

START_TEST(a_store_that_stays_locked_is_told_to_every_job)
{
    struct fault fault;

    ck_assert_int_eq(store_open(path, STORE_WRITE, &other, &fault), 0);
    ck_assert_int_eq(store_begin(other, &fault), 0);
    add(word("one"));
    add(word("two"));
    run();
    ck_assert_str_eq(story, "one broken, two broken, ");
    store_close(other);
}
END_TEST

static void
on_written(void *data)
{
    (void)data;
    memory_append(&story, "looked, ");
}

START_TEST(who_waits_for_a_commit_hears_of_those_that_wrote_something)
{
    turn_on_written(turn, on_written, NULL);
    add(word("bad"));
    run();
    ck_assert_str_eq(story, "write bad, bad rolled back, ");
    add(word("one"));
    run();
    ck_assert_str_eq(story, "write bad, bad rolled back, write one, one written, looked, ");
}
END_TEST

START_TEST(jobs_that_wait_when_the_turn_ends_are_told)
{
    add(word("one"));
    turn_free(turn);
    turn = NULL;
    ck_assert_str_eq(story, "one broken, ");
    ck_assert_str_eq(stored(), "");
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("turn");
    TCase *tests = tcase_create("turn");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, jobs_of_a_turn_are_all_written_before_any_is_told);
    tcase_add_test(tests, a_bad_job_rolls_back_alone);
    tcase_add_test(tests, a_job_that_is_added_when_another_is_told_is_of_the_next_turn);
    tcase_add_test(tests, if_commit_fails_every_job_hears_it_and_nothing_is_written);
    tcase_add_test(tests, a_turn_waits_for_another_program_that_writes);
    tcase_add_test(tests, a_store_that_stays_locked_is_told_to_every_job);
    tcase_add_test(tests, who_waits_for_a_commit_hears_of_those_that_wrote_something);
    tcase_add_test(tests, jobs_that_wait_when_the_turn_ends_are_told);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? 0 : 1;
}
