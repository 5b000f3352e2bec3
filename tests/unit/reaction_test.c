/* Copies of our own words in a reaction; the wordings are common practice, no source. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "reaction.h"

/* A text and what is read of it, blanks around it dropped. */
static const struct {
    const char *text, *read;
} tried[] = {
    {"Liked \"Call 911 now. Chest pain?\"", ""},
    {"Liked \xe2\x80\x9c"
     "Call 911\xe2\x80\x9d",
     ""},
    {"Loved 'Don't wait. Call 911'", ""},
    {"Reacted with a heart to \"Call 911\"", ""},
    {"Le gust\xc3\xb3 \xc2\xab"
     "Llame al 911\xc2\xbb",
     ""},
    {"No le gust\xc3\xb3 \"Llame al 911\"", ""},
    {"Liked \"Call 911\" but he cant breathe", "but he cant breathe"},
    /* in doubt everything is read */
    {"Liked \"Call 911", "Liked \"Call 911"},
    {"He said \"call 911\"", "He said \"call 911\""},
    {"Loved it. Then she said \"my chest hurts\"", "Loved it. Then she said \"my chest hurts\""},
    {"I liked \"call 911\"", "I liked \"call 911\""},
    {"cant breathe", "cant breathe"},
    {"", ""},
};

START_TEST(a_quoted_copy_is_not_read_and_what_is_added_is)
{
    void *arena = talloc_new(NULL);
    const char *read = reaction_without_copy(arena, tried[_i].text);

    ck_assert_uint_eq(strlen(read), strlen(tried[_i].text)); /* bytes keep their places */
    ck_assert_str_eq(read + strspn(read, " \n"), tried[_i].read);
    talloc_free(arena);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("reaction");
    TCase *tests = tcase_create("reaction");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_loop_test(tests, a_quoted_copy_is_not_read_and_what_is_added_is, 0,
                        sizeof(tried) / sizeof(tried[0]));
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
