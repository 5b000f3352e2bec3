/* Cutting a text into questions and pleasantries. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "cut.h"
#include "memory.h"

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

/* Pieces with | between them, pleasantries in parentheses. */
static const char *
cut_as(const char *text, enum language language)
{
    struct pieces pieces = cut_questions(arena, text, language);
    char *result = memory_copy(arena, "");
    size_t i;

    for (i = 0; i < pieces.count; i++) {
        const struct piece *piece = &pieces.list[i];

        ck_assert_uint_eq(strlen(piece->text), piece->end - piece->start);
        ck_assert_mem_eq(piece->text, text + piece->start, piece->end - piece->start);
        memory_append(&result, piece->courtesy ? "%s(%s)" : "%s%s", i == 0 ? "" : "|", piece->text);
    }
    return result;
}

static const char *
cut(const char *text)
{
    return cut_as(text, LANGUAGE_EN);
}

START_TEST(two_questions_are_two_pieces)
{
    ck_assert_str_eq(cut("can i take it on the plane, and how many batteries do i need"),
                     "can i take it on the plane|and how many batteries do i need");
    ck_assert_str_eq(cut("Does it charge in the car? Where do I return it?"),
                     "Does it charge in the car?|Where do I return it?");
    ck_assert_str_eq(cut("need to keep it till friday, also the filter is dirty"),
                     "need to keep it till friday|also the filter is dirty");
    ck_assert_str_eq(
        cut_as("puedo llevarlo en el avion y cuantas baterias necesito? gracias", LANGUAGE_ES),
        "puedo llevarlo en el avion|y cuantas baterias necesito?|(gracias)");
}
END_TEST

START_TEST(signs_numbers_requests_and_conditions_begin_a_question)
{
    ck_assert_str_eq(cut("can i put it by the window & can it get wet"),
                     "can i put it by the window|& can it get wet");
    ck_assert_str_eq(cut("1 how heavy is it 2 where do i send it 3 is it due today"),
                     "1 how heavy is it|2 where do i send it|3 is it due today");
    ck_assert_str_eq(cut("is anyone there? if so tell me the way in"),
                     "is anyone there?|if so tell me the way in");
    ck_assert_str_eq(cut("how do I see the charge, and if its low how do i swap it"),
                     "how do I see the charge|and if its low how do i swap it");
}
END_TEST

START_TEST(other_numbers_and_conditions_do_not)
{
    ck_assert_str_eq(cut("how long do 2 last at 3"), "how long do 2 last at 3");
    ck_assert_str_eq(cut("we have 1 and 2 are empty"), "we have 1 and 2 are empty");
    ck_assert_str_eq(cut("can i use it if it gets wet"), "can i use it if it gets wet");
}
END_TEST

START_TEST(one_question_stays_in_one_piece)
{
    ck_assert_str_eq(cut("how do i turn it off and on"), "how do i turn it off and on");
    ck_assert_str_eq(cut("does it work in the car or do i need a cord"),
                     "does it work in the car or do i need a cord");
    ck_assert_str_eq(cut("ok to sleep with it?"), "ok to sleep with it?");
    ck_assert_str_eq(cut("can i sleep with it on, and is that ok?"),
                     "can i sleep with it on|(and is that ok?)");
    ck_assert_str_eq(cut("does it charge in the truck? what would you say"),
                     "does it charge in the truck?|(what would you say)");
    ck_assert_str_eq(cut("I dropped it. The case is cracked"), "I dropped it. The case is cracked");
}
END_TEST

START_TEST(what_leads_up_to_a_question_stays_with_it)
{
    ck_assert_str_eq(cut("We are off to the lake tomorrow. Will it last?"),
                     "We are off to the lake tomorrow. Will it last?");
    ck_assert_str_eq(cut("how do I clean the filter? its really dusty."),
                     "how do I clean the filter? its really dusty.");
}
END_TEST

START_TEST(pleasantries_are_pieces_of_their_own)
{
    ck_assert_str_eq(cut("thx!! also, does it charge in the car"),
                     "(thx!!)|also, does it charge in the car");
    ck_assert_str_eq(cut("Hi Alma, is it due today? thank you so much"),
                     "(Hi Alma)|is it due today?|(thank you so much)");
    ck_assert_str_eq(cut("ok thanks"), "(ok thanks)");
    ck_assert_str_eq(cut("Thank you Bob"), "(Thank you Bob)");
    ck_assert_str_eq(cut("\xf0\x9f\x91\x8d"), "(\xf0\x9f\x91\x8d)");
}
END_TEST

START_TEST(what_may_be_trouble_is_no_pleasantry)
{
    ck_assert_str_eq(cut("hello battery dead"), "(hello)|battery dead");
    ck_assert_str_eq(cut("please Help"), "(please)|Help");
    ck_assert_str_eq(cut("??"), "??");
    ck_assert_str_eq(cut("Thanks Oxygen"), "(Thanks)|Oxygen");
}
END_TEST

START_TEST(nothing_is_nothing)
{
    ck_assert_uint_eq(cut_questions(arena, "", LANGUAGE_EN).count, 0);
    ck_assert_uint_eq(cut_questions(arena, " \n ", LANGUAGE_EN).count, 0);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("cut");
    TCase *tests = tcase_create("cut");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, start, end);
    tcase_add_test(tests, two_questions_are_two_pieces);
    tcase_add_test(tests, signs_numbers_requests_and_conditions_begin_a_question);
    tcase_add_test(tests, other_numbers_and_conditions_do_not);
    tcase_add_test(tests, one_question_stays_in_one_piece);
    tcase_add_test(tests, what_leads_up_to_a_question_stays_with_it);
    tcase_add_test(tests, pleasantries_are_pieces_of_their_own);
    tcase_add_test(tests, what_may_be_trouble_is_no_pleasantry);
    tcase_add_test(tests, nothing_is_nothing);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
