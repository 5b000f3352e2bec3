/* The net on made-up features: what it learns, what it leaves out, and that only what the examples
 * are decides, not where they stand. */
#include <check.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "net.h"

enum { FEATURES = 3, COPIES = 40, KINDS = 4, EXAMPLES = COPIES * KINDS, NO_PART = 9 };

/* All have the third feature; which of the others they have decides. */
static const uint32_t kinds[KINDS][FEATURES] = {{2, 0, 0}, {2, 0, 0}, {2, 1, 0}, {2, 0, 1}};
static const size_t sizes[KINDS] = {1, 2, 2, 3};
static const int wanted[KINDS] = {0, 1, 2, 0};

static void *arena;
static struct row rows[EXAMPLES];
static int labels[EXAMPLES];
static float costs[EXAMPLES];
static uint64_t keys[EXAMPLES];
static uint8_t parts[EXAMPLES];

static void
begin(void)
{
    int i, k;

    arena = talloc_new(NULL);
    for (i = 0; i < EXAMPLES; i++) {
        const int kind = i % KINDS;

        rows[i].count = sizes[kind];
        rows[i].index = memory_array(arena, uint32_t, FEATURES);
        rows[i].value = memory_array(arena, float, FEATURES);
        for (k = 0; k < FEATURES; k++) {
            rows[i].index[k] = kinds[kind][k];
            rows[i].value[k] = 1;
        }
        labels[i] = wanted[kind];
        costs[i] = 1;
        keys[i] = 0x9e3779b97f4a7c15u * (uint64_t)(i + 1);
        parts[i] = (uint8_t)kind;
    }
}

static void
end(void)
{
    talloc_free(arena);
}

static struct net
learn(int without, int label_count)
{
    const struct examples examples = {rows, labels, costs, EXAMPLES, 1};
    struct net net;

    net_train(arena, &examples, keys, parts, without, 4, FEATURES, label_count, &net);
    return net;
}

static int
likeliest(const struct net *net, int kind)
{
    float hidden[NET_HIDDEN] = {0}, says[8];
    int best = 0, label;
    size_t k;

    for (k = 0; k < sizes[kind]; k++) {
        net_add(net, kinds[kind][k], 1, hidden);
    }
    net_decide(net, hidden, says);
    for (label = 1; label < net->labels; label++) {
        best = says[label] > says[best] ? label : best;
    }
    return best;
}

START_TEST(each_kind_gets_its_label)
{
    const struct net net = learn(NO_PART, 3);
    int kind;

    for (kind = 0; kind < KINDS; kind++) {
        ck_assert_msg(likeliest(&net, kind) == wanted[kind], "kind %d", kind);
    }
}
END_TEST

START_TEST(what_is_left_out_is_not_learnt)
{
    struct net net;
    int i;

    for (i = 0; i < EXAMPLES; i++) { /* a label of its own for one kind */
        labels[i] = parts[i] == 3 ? 3 : labels[i];
    }
    net = learn(NO_PART, 4);
    ck_assert_int_eq(likeliest(&net, 3), 3);
    net = learn(3, 4);
    ck_assert_int_ne(likeliest(&net, 3), 3);
}
END_TEST

START_TEST(where_an_example_stands_changes_nothing)
{
    const struct net net = learn(NO_PART, 3);
    struct net turned;
    int i;

    for (i = 0; i < EXAMPLES / 2; i++) {
        const int j = EXAMPLES - 1 - i, label = labels[i];
        const struct row row = rows[i];
        const uint64_t key = keys[i];

        rows[i] = rows[j];
        labels[i] = labels[j];
        keys[i] = keys[j];
        rows[j] = row;
        labels[j] = label;
        keys[j] = key;
    }
    turned = learn(NO_PART, 3);
    ck_assert_mem_eq(net.inner, turned.inner, FEATURES * (size_t)NET_HIDDEN);
    ck_assert_mem_eq(net.outer, turned.outer, 3 * (size_t)NET_HIDDEN * sizeof(float));
}
END_TEST

START_TEST(what_costs_nothing_teaches_nothing)
{
    struct net net;
    int i;

    for (i = 0; i < EXAMPLES; i++) {
        labels[i] = parts[i] == 3 ? 3 : labels[i];
        costs[i] = parts[i] == 3 ? 0 : 1;
    }
    net = learn(NO_PART, 4);
    ck_assert_int_ne(likeliest(&net, 3), 3);
}
END_TEST

/* Labels speak several at a time; each must say what it says by itself. */
START_TEST(every_label_says_what_it_is_reckoned_to)
{
    static const int counts[] = {2, 15, 16, 17, 40};
    size_t i;

    for (i = 0; i < sizeof(counts) / sizeof(counts[0]); i++) {
        const struct net net = learn(NO_PART, counts[i] > 3 ? counts[i] : 3);
        float hidden[NET_HIDDEN] = {0}, says[40];
        int label, h;

        net_add(&net, 2, 1, hidden);
        net_add(&net, 1, 3, hidden);
        net_decide(&net, hidden, says); /* `hidden` is squashed now */
        for (label = 0; label < net.labels; label++) {
            double wants = net.outer_bias[label];

            for (h = 0; h < NET_HIDDEN; h++) {
                wants += (double)hidden[h] * net.outer[h * net.labels + label];
            }
            ck_assert_double_eq_tol(says[label], wants, 1e-4);
        }
    }
}
END_TEST

START_TEST(hidden_numbers_are_squashed_by_tanh)
{
    static const float given[] = {0, 0.001f, -0.4f, 1, -3, 9, -30, 1e6f, -1e6f};
    const struct net net = learn(NO_PART, 3);
    float hidden[NET_HIDDEN] = {0}, says[3];
    size_t i;

    memcpy(hidden, given, sizeof(given));
    net_decide(&net, hidden, says);
    for (i = 0; i < sizeof(given) / sizeof(given[0]); i++) {
        ck_assert_double_eq_tol(hidden[i], tanh((double)given[i] + net.inner_bias[i]), 1e-6);
    }
}
END_TEST

START_TEST(shares_are_as_e_is_raised)
{
    static const float given[] = {3, 2.5f, 0, -7, -200, 3};
    enum { COUNT = sizeof(given) / sizeof(given[0]) };
    float says[COUNT], sum;
    double wants = 0;
    int i;

    memcpy(says, given, sizeof(given));
    sum = net_shares(says, COUNT);
    for (i = 0; i < COUNT; i++) {
        ck_assert_double_eq_tol(says[i], exp((double)given[i] - 3), 1e-5);
        wants += exp((double)given[i] - 3);
    }
    ck_assert_double_eq_tol(sum, wants, 1e-5);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("net");
    TCase *tests = tcase_create("net");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, begin, end);
    tcase_add_test(tests, each_kind_gets_its_label);
    tcase_add_test(tests, what_is_left_out_is_not_learnt);
    tcase_add_test(tests, where_an_example_stands_changes_nothing);
    tcase_add_test(tests, what_costs_nothing_teaches_nothing);
    tcase_add_test(tests, every_label_says_what_it_is_reckoned_to);
    tcase_add_test(tests, hidden_numbers_are_squashed_by_tanh);
    tcase_add_test(tests, shares_are_as_e_is_raised);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
