/* Reading grade: Flesch-Kincaid, and what counts as a word, a sentence, a syllable. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "grade.h"

/*
 * Worked examples of both formulas (source of the formulas: VA HSR&D page of instruments, archived;
 * values computed from them).
 */
static const struct {
    struct reading_count count;
    double grade, ease;
} worked[] = {
    {{6, 1, 6}, -1.45, 116.145},  {{12, 2, 14}, 0.517, 102.045}, {{100, 10, 140}, 4.83, 78.245},
    {{24, 3, 32}, 3.263, 85.915}, {{13, 1, 24}, 11.265, 37.455}, {{119, 7, 180}, 8.889, 61.614},
};

START_TEST(the_formulas_give_the_worked_examples)
{
    double value = 0;

    ck_assert(reading_grade(&worked[_i].count, &value));
    ck_assert_double_eq_tol(value, worked[_i].grade, 0.0005);
    ck_assert(reading_ease(&worked[_i].count, &value));
    ck_assert_double_eq_tol(value, worked[_i].ease, 0.0005);
}
END_TEST

/* Text, words, sentences, syllables. The first two are worked examples too, 911 as 3 syllables. */
static const struct {
    const char *text;
    struct reading_count count;
} counted[] = {
    {"The cat sat on the mat.", {6, 1, 6}},
    {"If you are short of breath, call 911 now. Do not wait.", {12, 2, 14}},
    {"", {0, 0, 0}},
    {" - ... !", {0, 0, 0}},
    {"No end", {2, 1, 2}},
    {"Two lines\nof text", {4, 2, 4}},
    {"Set it to 2 L/min.", {6, 1, 6}},        /* L and min are two words of one syllable */
    {"SpO2 is a number.", {4, 1, 8}},         /* S, p, O, 2 */
    {"Call 208-555-0100 now.", {3, 1, 5}},    /* a phone number is three, as 911 is */
    {"It lasts 2.5 h or 15 min.", {7, 1, 9}}, /* 2.5 two, 15 two: a syllable for each digit */
    {"Open 8 a.m. to 6 p.m. on most days.", {9, 1, 12}},
    {"We close at 6 p.m. Call before.", {7, 2, 9}},
    {"Dr. Moss knows.", {3, 1, 4}}, /* the dot of a title ends no sentence */
    {"\"Is it on?\" She asked.", {5, 2, 5}},
    {"A 12-volt plug", {3, 1, 5}},
    {"In the RV", {3, 1, 4}}, /* no vowel: spelt out */
};

START_TEST(what_counts_is_decided_once)
{
    struct reading_count count = reading_count(counted[_i].text);

    ck_assert_msg(count.words == counted[_i].count.words, "\"%s\": %zu words", counted[_i].text,
                  count.words);
    ck_assert_msg(count.sentences == counted[_i].count.sentences, "\"%s\": %zu sentences",
                  counted[_i].text, count.sentences);
    ck_assert_msg(count.syllables == counted[_i].count.syllables, "\"%s\": %zu syllables",
                  counted[_i].text, count.syllables);
}
END_TEST

START_TEST(nothing_has_no_grade_and_divides_by_nothing)
{
    const struct reading_count nothing = reading_count(""), no_end = {5, 0, 5};
    double value = 42;

    ck_assert(!reading_grade(&nothing, &value));
    ck_assert(!reading_ease(&nothing, &value));
    ck_assert(!reading_grade(&no_end, &value));
    ck_assert_double_eq(value, 42);
}
END_TEST

/* Numbers of syllables as the CMU Pronouncing Dictionary (0.7b) has them: its vowels with stress.
 */
static const struct {
    const char *word;
    size_t syllables;
} dictionary[] = {
    {"oxygen", 3},    {"battery", 3},    {"batteries", 3},  {"charging", 2},     {"changes", 2},
    {"handles", 2},   {"bottle", 2},     {"bubbles", 2},    {"enabled", 3},      {"used", 1},
    {"needed", 2},    {"plugged", 1},    {"breathe", 1},    {"breathing", 2},    {"being", 2},
    {"trying", 2},    {"safely", 2},     {"safety", 2},     {"someone", 2},      {"sometimes", 2},
    {"careful", 2},   {"movement", 2},   {"element", 3},    {"create", 2},       {"science", 2},
    {"patient", 2},   {"experience", 4}, {"quiet", 2},      {"area", 3},         {"video", 3},
    {"people", 2},    {"question", 2},   {"radio", 3},      {"usual", 3},        {"continuous", 4},
    {"emergency", 4}, {"altitude", 3},   {"humidifier", 5}, {"refrigerator", 5}, {"isn't", 2},
    {"can't", 1},     {"tongue", 1},     {"unique", 2},     {"player", 2},       {"easier", 3},
    {"basically", 3}, {"beyond", 2},     {"nineteen", 2},
};

START_TEST(syllables_are_those_of_the_pronouncing_dictionary)
{
    const char *word = dictionary[_i].word;
    size_t syllables = reading_syllables(word, strlen(word));

    ck_assert_msg(syllables == dictionary[_i].syllables, "\"%s\": %zu, expected %zu", word,
                  syllables, dictionary[_i].syllables);
}
END_TEST

START_TEST(capitals_and_marks_around_a_word_change_nothing)
{
    ck_assert_uint_eq(reading_syllables("BATTERY", 7), 3);
    ck_assert_uint_eq(reading_syllables("\"battery,\"", 10), 3);
    ck_assert_uint_eq(reading_syllables("(battery)", 9), 3);
    ck_assert_uint_eq(reading_syllables("...", 3), 0);
}
END_TEST

#define COUNT(list) ((int)(sizeof(list) / sizeof((list)[0])))

int
main(void)
{
    Suite *suite = suite_create("grade");
    TCase *tests = tcase_create("grade");
    SRunner *runner;
    int failed;

    tcase_add_loop_test(tests, the_formulas_give_the_worked_examples, 0, COUNT(worked));
    tcase_add_loop_test(tests, what_counts_is_decided_once, 0, COUNT(counted));
    tcase_add_test(tests, nothing_has_no_grade_and_divides_by_nothing);
    tcase_add_loop_test(tests, syllables_are_those_of_the_pronouncing_dictionary, 0,
                        COUNT(dictionary));
    tcase_add_test(tests, capitals_and_marks_around_a_word_change_nothing);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
