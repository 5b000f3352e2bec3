/*
 * Texts that are misspelt all over, read a second time with their strange words put right by what
 * stands beside them; on a sign of one line and the words of a few ordinary texts.
 */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "sign_match.h"

static void *arena;
static struct workspace *workspace;
static struct faults faults;
static struct sign_index *made;

static void
begin(void)
{
    static const char *const said_as[] = {"wake + her / him + up"};
    static const char *const ordinary[] = {"the cart goes back to the shop",
                                           "can we walk her dog up the hill",
                                           "the battery is in the box",
                                           "charge the battery up",
                                           "her box came back",
                                           "how long does the battery last"};
    static const char *const whole_texts[] = {"cant wake her up at all"};
    static const int line = 10;
    struct sign_file *file;
    size_t i;

    arena = talloc_new(NULL);
    workspace = workspace_new();
    file = memory_new(arena, struct sign_file);
    file->sign = (struct sign){.id = "unresponsive",
                               .level = SIGN_EMERGENCY,
                               .file = "signs/en/unresponsive.md",
                               .said_as = said_as,
                               .said_as_count = 1};
    file->said_as_lines = file->whole_text_lines = &line;
    file->whole_texts = whole_texts;
    file->whole_text_count = 1;
    made = sign_index_new(arena, LANGUAGE_EN, NULL, NULL);
    sign_index_add(made, workspace, file, &file->sign, &faults);
    for (i = 0; i < sizeof(ordinary) / sizeof(ordinary[0]); i++) {
        sign_index_ordinary(made, ordinary[i]);
        sign_index_know(made, ordinary[i]);
    }
    sign_index_know(made, whole_texts[0]);
    sign_index_know_foreign(made, "no se puede mojar");
    ck_assert_int_eq(sign_index_close(made, workspace, NULL, &faults), 0);
}

static void
end(void)
{
    faults_release(&faults);
    workspace_free(workspace);
    talloc_free(arena);
}

static bool
fires(const char *text, struct sign_match *match)
{
    return sign_index_find(made, workspace, words_read(arena, NULL, text, LANGUAGE_EN), false,
                           match, 1) == 1;
}

START_TEST(two_strange_words_are_put_right_by_what_stands_beside_them)
{
    static const char *const texts[] = {"kant wakr her upp", "cnat waek her upo", "wkae hre upp",
                                        "cantwake herr up"};
    struct sign_match match;
    size_t i;

    for (i = 0; i < sizeof(texts) / sizeof(texts[0]); i++) {
        ck_assert_msg(fires(texts[i], &match), "%s", texts[i]);
        ck_assert_msg(match.end <= strlen(texts[i]), "%s", texts[i]);
    }
}
END_TEST

START_TEST(a_word_of_the_ordinary_texts_is_put_right_to_that)
{
    static const char *const texts[] = {"wher is the batery boxx", "hwo longg does teh battry last",
                                        "chrge the batery upp"};
    struct sign_match match;
    size_t i;

    for (i = 0; i < sizeof(texts) / sizeof(texts[0]); i++) {
        ck_assert_msg(!fires(texts[i], &match), "%s", texts[i]);
    }
}
END_TEST

START_TEST(another_languages_words_are_not_put_right)
{
    struct sign_match match;

    ck_assert(!fires("no se puede waek her mojar upp", &match));
}
END_TEST

START_TEST(what_was_put_right_is_explained)
{
    struct sign_explained explained[4];
    size_t count = sign_index_explain(made, workspace,
                                      words_read(arena, NULL, "kant wakr her upp", LANGUAGE_EN),
                                      false, explained, 4);

    ck_assert_uint_eq(count, 1);
    ck_assert(explained[0].held == SIGN_FIRES || explained[0].held == SIGN_LIKE);
    ck_assert_uint_gt(explained[0].match.end, explained[0].match.start);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("sign_mend");
    TCase *tests = tcase_create("mend");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, begin, end);
    tcase_add_test(tests, two_strange_words_are_put_right_by_what_stands_beside_them);
    tcase_add_test(tests, a_word_of_the_ordinary_texts_is_put_right_to_that);
    tcase_add_test(tests, another_languages_words_are_not_put_right);
    tcase_add_test(tests, what_was_put_right_is_explained);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
