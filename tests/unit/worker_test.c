#include <check.h>
#include <pthread.h>
#include <stdlib.h>

#include <event2/event.h>

#include "worker.h"

struct count_job {
    struct worker_job job; /* first, so that the worker's pointer is ours */
    int number;
    pthread_t ran_in;
    int worked, done;
};

enum { JOBS = 100 };

static struct event_base *base;
static struct worker *worker;
static struct count_job jobs[JOBS];
static int order[JOBS];
static int done_count;
static int stop_after;

static void
work(struct worker_job *job)
{
    struct count_job *count = (struct count_job *)job;

    count->ran_in = pthread_self();
    count->worked++;
}

static void
done(struct worker_job *job)
{
    struct count_job *count = (struct count_job *)job;

    count->done++;
    order[done_count++] = count->number;
    if (done_count == stop_after) {
        event_base_loopbreak(base);
    }
}

static void
begin(void)
{
    int i;

    base = event_base_new();
    worker = worker_new(base);
    for (i = 0; i < JOBS; i++) {
        jobs[i] = (struct count_job){.job = {.work = work, .done = done}, .number = i};
    }
}

static void
end(void)
{
    worker_free(worker);
    event_base_free(base);
}

START_TEST(jobs_run_in_order_off_the_loop_and_are_told_on_it)
{
    int i;

    stop_after = JOBS;
    for (i = 0; i < JOBS; i++) {
        worker_add(worker, &jobs[i].job);
    }
    ck_assert_int_eq(done_count, 0); /* not inside worker_add() */
    event_base_dispatch(base);
    for (i = 0; i < JOBS; i++) {
        ck_assert_int_eq(order[i], i);
        ck_assert_int_eq(jobs[i].worked, 1);
        ck_assert_int_eq(jobs[i].done, 1);
        ck_assert(!pthread_equal(jobs[i].ran_in, pthread_self()));
    }
}
END_TEST

static void
add_another(struct worker_job *job)
{
    done(job);
    if (done_count < JOBS) {
        worker_add(worker, &jobs[done_count].job);
    }
}

START_TEST(a_job_may_add_the_next_one_when_it_is_done)
{
    int i;

    stop_after = JOBS;
    for (i = 0; i < JOBS; i++) {
        jobs[i].job.done = add_another;
    }
    worker_add(worker, &jobs[0].job);
    event_base_dispatch(base);
    ck_assert_int_eq(done_count, JOBS);
}
END_TEST

START_TEST(every_job_is_told_when_the_worker_ends)
{
    int i;

    for (i = 0; i < JOBS; i++) {
        worker_add(worker, &jobs[i].job);
    }
    worker_free(worker); /* some ran, the others did not; all are told once */
    worker = NULL;
    for (i = 0; i < JOBS; i++) {
        ck_assert_int_eq(jobs[i].done, 1);
        ck_assert_int_le(jobs[i].worked, 1);
    }
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("worker");
    Suite *suite = suite_create("worker");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, begin, end);
    tcase_add_test(tests, jobs_run_in_order_off_the_loop_and_are_told_on_it);
    tcase_add_test(tests, a_job_may_add_the_next_one_when_it_is_done);
    tcase_add_test(tests, every_job_is_told_when_the_worker_ends);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
