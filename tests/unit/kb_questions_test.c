/* The questions of renters' texts in the kb as it is shipped, and what must not change them. */
#include <check.h>
#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <jansson.h>

#include "kb.h"
#include "memory.h"
#include "questions.h"
#include "shipped.h"

static void *arena;
static struct workspace *workspace;

static const char *
path_of(const char *name)
{
    const char *root = getenv("SOURCE_ROOT");

    return memory_format(arena, "%s/%s", root == NULL ? "." : root, name);
}

static void
start(void)
{
    arena = talloc_new(NULL);
    workspace = workspace_new();
}

static void
end(void)
{
    workspace_free(workspace);
    talloc_free(arena);
}

/* "charge-car 2, billing 1": the topics found, each with how sure that is; courtesies left out. */
static const char *
found(const char *text)
{
    struct pieces pieces = kb_questions(shipped_kb(), arena, workspace, text, LANGUAGE_EN);
    char *result = memory_copy(arena, "");
    size_t i;

    for (i = 0; i < pieces.count; i++) {
        struct topic_search search;

        if (pieces.list[i].courtesy) {
            continue;
        }
        search = kb_search_topics(shipped_kb(), workspace, pieces.list[i].text, LANGUAGE_EN);
        kb_trust(&pieces.list[i], &search);
        memory_append(&result, "%s%s %d", *result == '\0' ? "" : ", ",
                      search.count == 0 ? "none" : search.best[0].topic->id, (int)search.sureness);
    }
    return result;
}

/* ---- What must not change anything ---------------------------------------------------------- */

static const char *
in_capitals(const char *text)
{
    char *changed = memory_copy(arena, text), *c;

    for (c = changed; *c != '\0'; c++) {
        *c = (char)toupper((unsigned char)*c);
    }
    return changed;
}

static const char *
in_small_letters(const char *text)
{
    char *changed = memory_copy(arena, text), *c;

    for (c = changed; *c != '\0'; c++) {
        *c = (char)tolower((unsigned char)*c);
    }
    return changed;
}

/* Every `from` becomes `to`. */
static const char *
with(const char *text, char from, const char *to)
{
    char *changed = memory_copy(arena, "");

    for (; *text != '\0'; text++) {
        memory_append(&changed, "%.*s", *text == from ? (int)strlen(to) : 1,
                      *text == from ? to : text);
    }
    return changed;
}

static void
same_for_all(const char *(*change)(const char *text))
{
    FILE *file = fopen(path_of("tests/bench/texts/dev.jsonl"), "r");
    int texts = 0;
    json_t *row;

    ck_assert_ptr_nonnull(file);
    while ((row = json_loadf(file, JSON_DISABLE_EOF_CHECK, NULL)) != NULL) {
        const char *text = json_string_value(json_object_get(row, "text"));

        ck_assert_msg(strcmp(found(text), found(change(text))) == 0, "\"%s\": %s, but \"%s\": %s",
                      text, found(text), change(text), found(change(text)));
        json_decref(row);
        texts++;
    }
    fclose(file);
    ck_assert_int_gt(texts, 200);
}

static const char *
with_doubled_blanks(const char *text)
{
    return with(text, ' ', "  ");
}

static const char *
with_accents(const char *text)
{
    return with(with(text, 'o', "\xc3\xb6"), 'e', "\xc3\xa9");
}

static const char *
with_marks_at_the_end(const char *text)
{
    return memory_format(arena, "%s%s", text, text[strlen(text) - 1] == '?' ? "?!?" : "...");
}

START_TEST(capitals_never_change_what_is_found)
{
    same_for_all(in_capitals);
}
END_TEST

START_TEST(small_letters_never_change_what_is_found)
{
    same_for_all(in_small_letters);
}
END_TEST

START_TEST(doubled_blanks_never_change_what_is_found)
{
    same_for_all(with_doubled_blanks);
}
END_TEST

START_TEST(accents_never_change_what_is_found)
{
    same_for_all(with_accents);
}
END_TEST

START_TEST(marks_at_the_end_never_change_what_is_found)
{
    same_for_all(with_marks_at_the_end);
}
END_TEST

/* ---- Dividing -------------------------------------------------------------------------------- */

START_TEST(two_questions_are_found_apart)
{
    ck_assert_str_eq(found("when is it due back and where do i drop it"),
                     "due-date 2, return-ship 2");
    ck_assert_str_eq(found("how much does it weigh, n what should be in the case"),
                     "carry 2, contents 2");
}
END_TEST

START_TEST(two_questions_are_found_that_no_word_parts)
{
    ck_assert_str_eq(found("need a longer hose, how much is that"), "tubing 2, billing 2");
    ck_assert_str_eq(found("is it due friday or can we keep it longer"), "due-date 2, extend 2");
}
END_TEST

START_TEST(a_new_line_or_a_plus_may_part_two_questions)
{
    ck_assert_str_eq(found("where do i leave it\n\ndoes there belong a car cord in the bag"),
                     "return-ship 2, contents 2");
    ck_assert_str_eq(found("car plug ok with the engine off + 1 more battery pls"),
                     "charge-car 2, extra-battery 2");
}
END_TEST

START_TEST(a_trusted_piece_is_about_the_topic_of_its_rank)
{
    const char *text = "how long does that take";
    struct topic_search plain = kb_search_topics(shipped_kb(), workspace, text, LANGUAGE_EN),
                        search = plain;
    struct piece piece = {.text = text, .rank = 1};

    plain.elsewhere = search.elsewhere = false;
    ck_assert_uint_gt(plain.count, 1);
    kb_trust(&piece, &search);
    ck_assert_ptr_eq(search.best[0].topic, plain.best[0].topic);
    piece.trusted = true;
    kb_trust(&piece, &search);
    ck_assert_ptr_eq(search.best[0].topic, plain.best[1].topic);
    ck_assert_ptr_eq(search.best[1].topic, plain.best[0].topic);
    ck_assert_int_eq(search.sureness, SURE);
    search = plain;
    search.elsewhere = true;
    kb_trust(&piece, &search);
    ck_assert_ptr_eq(search.best[0].topic, plain.best[0].topic);
}
END_TEST

START_TEST(a_few_words_about_nothing_lead_up_to_a_question)
{
    ck_assert_str_eq(found("hello? anyone? is this a person or an answering thing?"),
                     "who-are-you 2");
}
END_TEST

START_TEST(each_side_may_ask_two_things_itself)
{
    ck_assert_str_eq(found("how do i clean the filter plus whats the number for the office and "
                           "when is it due back"),
                     "filter-care 2, contact 2, due-date 2");
}
END_TEST

START_TEST(a_story_stays_with_its_question)
{
    ck_assert_str_eq(found("we have two batteries and a charger here. how do i pack it all to "
                           "send it back"),
                     "return-pack 2");
}
END_TEST

START_TEST(what_only_adds_to_a_question_stays_with_it)
{
    ck_assert_str_eq(found("can i sleep with it on, and is that ok?"), "night-mode 2");
    ck_assert_str_eq(found("where do i return it? what would you say"), "return-ship 2");
}
END_TEST

START_TEST(what_is_about_something_else_stays_a_question_for_a_person)
{
    const char *both = found("can i charge it in the car? and where can we rent skis");

    ck_assert_msg(strncmp(both, "charge-car 2, ", 14) == 0 && both[strlen(both) - 1] == '0',
                  "found %s", both);
}
END_TEST

START_TEST(another_devices_battery_is_no_topic_of_ours)
{
    ck_assert_ptr_null(strstr(found("my hearing aid needs a battery, who sells those"), " 2"));
    ck_assert_ptr_null(strstr(found("the tablet wont charge"), " 2"));
    ck_assert_ptr_null(strstr(found("2"), " 2"));
}
END_TEST

/* ---- Leaning on the question before --------------------------------------------------------- */

/* The second question's topic after the first, and how sure that is: "charge-time 2". */
static const char *
after(const char *first, const char *second)
{
    struct topic_search before = kb_search_topics(shipped_kb(), workspace, first, LANGUAGE_EN);
    struct topic_search search = kb_search_topics(shipped_kb(), workspace, second, LANGUAGE_EN);

    ck_assert_int_ne(search.sureness, SURE); /* alone */
    kb_lean(shipped_kb(), workspace, memory_format(arena, "%s %s", first, second), LANGUAGE_EN,
            &before, &search);
    return memory_format(arena, "%s %d", search.count == 0 ? "none" : search.best[0].topic->id,
                         (int)search.sureness);
}

START_TEST(a_question_leans_on_the_one_before)
{
    ck_assert_str_eq(after("can the car charge it", "how long does that take"), "charge-time 2");
}
END_TEST

START_TEST(what_has_nothing_to_do_with_it_does_not)
{
    const char *skis = after("can I charge it in our truck", "where do people rent skis");
    const char *ears = after("my hearing aid", "how long does that take");

    ck_assert_ptr_null(strstr(skis, " 2"));
    ck_assert_ptr_null(strstr(ears, " 2"));
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("questions of the kb");
    TCase *tests = tcase_create("questions");
    SRunner *runner;
    int failed;

    tcase_set_timeout(tests, 120);
    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_checked_fixture(tests, start, end);
    tcase_add_test(tests, capitals_never_change_what_is_found);
    tcase_add_test(tests, small_letters_never_change_what_is_found);
    tcase_add_test(tests, doubled_blanks_never_change_what_is_found);
    tcase_add_test(tests, accents_never_change_what_is_found);
    tcase_add_test(tests, marks_at_the_end_never_change_what_is_found);
    tcase_add_test(tests, two_questions_are_found_apart);
    tcase_add_test(tests, two_questions_are_found_that_no_word_parts);
    tcase_add_test(tests, a_new_line_or_a_plus_may_part_two_questions);
    tcase_add_test(tests, a_trusted_piece_is_about_the_topic_of_its_rank);
    tcase_add_test(tests, a_few_words_about_nothing_lead_up_to_a_question);
    tcase_add_test(tests, each_side_may_ask_two_things_itself);
    tcase_add_test(tests, a_story_stays_with_its_question);
    tcase_add_test(tests, what_only_adds_to_a_question_stays_with_it);
    tcase_add_test(tests, what_is_about_something_else_stays_a_question_for_a_person);
    tcase_add_test(tests, a_question_leans_on_the_one_before);
    tcase_add_test(tests, what_has_nothing_to_do_with_it_does_not);
    tcase_add_test(tests, another_devices_battery_is_no_topic_of_ours);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? 0 : 1;
}
