/* How much each word of a question counts. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "stress.h"

static void *arena;

static void
start(void)
{
    arena = talloc_new(NULL);
}

static void
end(void)
{
    talloc_free(arena);
}

/* The words that count whole, with single blanks between them. */
static const char *
whole(const char *text)
{
    struct words words = words_read(arena, NULL, text, LANGUAGE_EN);
    float *stress = stress_of(arena, &words);
    char *result = memory_copy(arena, "");
    size_t i;

    for (i = 0; i < words.count; i++) {
        ck_assert(stress[i] > 0 && stress[i] <= 1);
        if (stress[i] == 1) {
            memory_append(&result, "%s%s", *result == '\0' ? "" : " ", words.list[i].text);
        }
    }
    return result;
}

START_TEST(the_story_counts_less_than_the_question)
{
    ck_assert_str_eq(whole("We are up at the lake. The truck is full. can I get a longer hose?"),
                     "can i get a longer hose");
    ck_assert_str_eq(whole("how often do I wash the filter? the cabin is dusty"),
                     "how often do i wash the filter");
}
END_TEST

START_TEST(a_question_needs_no_mark_and_no_first_place)
{
    ck_assert_str_eq(whole("The driver was nice. my husband wants to know if the case has wheels"),
                     "my husband wants to know if the case has wheels");
    ck_assert_str_eq(whole("The box came. tomorrow will the tank be picked up"),
                     "tomorrow will the tank be picked up");
}
END_TEST

START_TEST(a_question_that_names_little_leaves_all_as_it_is)
{
    ck_assert_str_eq(whole("It fell in the snow. Is that ok?"), "it fell in the snow is that ok");
}
END_TEST

START_TEST(where_nothing_asks_all_counts)
{
    ck_assert_str_eq(whole("battery low. charger lost"), "battery low charger lost");
    ck_assert_str_eq(whole(""), "");
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("stress");
    TCase *tests = tcase_create("stress");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, start, end);
    tcase_add_test(tests, the_story_counts_less_than_the_question);
    tcase_add_test(tests, a_question_needs_no_mark_and_no_first_place);
    tcase_add_test(tests, a_question_that_names_little_leaves_all_as_it_is);
    tcase_add_test(tests, where_nothing_asks_all_counts);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
