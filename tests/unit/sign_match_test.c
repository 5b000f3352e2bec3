/*
 * How a sign's phrases are matched: on invented signs, so that the rules are seen and not today's
 * content. What the real signs must catch is in sign_content_test.c.
 */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "sign_match.h"
#include "sign_slips.h"

static void *arena;
static struct workspace *workspace;
static struct faults faults;
static struct sign_index *made;

static void
begin(void)
{
    arena = talloc_new(NULL);
    workspace = workspace_new();
}

static void
end(void)
{
    faults_release(&faults);
    workspace_free(workspace);
    talloc_free(arena);
}

/* Makes the index of one sign with up to four lines of each kind; ends it unless told not to. */
static void
make_sign(const char *const *said_as, size_t said, const char *const *not_meant_by, size_t figures)
{
    static const int lines[4] = {10, 11, 12, 13};
    struct sign_file *file = memory_new(arena, struct sign_file);

    file->sign = (struct sign){.id = "x",
                               .level = SIGN_EMERGENCY,
                               .file = "signs/en/x.md",
                               .said_as = said_as,
                               .said_as_count = said};
    file->not_meant_by = not_meant_by;
    file->not_meant_by_count = figures;
    file->said_as_lines = file->not_meant_by_lines = lines;
    made = sign_index_new(arena, LANGUAGE_EN, NULL, NULL);
    sign_index_add(made, workspace, file, &file->sign, &faults);
}

static bool
fires(const char *text)
{
    struct sign_match match;

    return sign_index_find(made, workspace, words_read(arena, NULL, text, LANGUAGE_EN), false,
                           &match, 1) == 1;
}

/* One phrase, one text, and whether it fires. */
static const struct {
    const char *phrase, *text;
    bool fires;
} matched[] = {
    /* word forms */
    {"chest hurts", "my chest is hurting", true},
    {"cant breathe", "he cant breath", true},
    {"cant breathe", "I CAN'T BREATHE!!", true},
    {"cant breathe", "i cannot breathe", true},
    {"cant breathe", "i can not breathe", true},
    {"cant breathe", "i can\xe2\x80\x99t breathe", true},
    /* little words may be missing or between */
    {"pain in my chest", "pain chest", true},
    {"pain in my chest", "pain all over the left of his chest", true},
    {"pain in my chest", "pain after the long bus ride but chest strap fits", false},
    /* order */
    {"pain chest", "chest pain", false},
    {"pain + chest", "chest pain", true},
    {"pain + chest", "chest has been a real pain", true},
    {"pain / ache + chest / ribs", "his ribs ache", true},
    /* sentences are walls, fragments are not */
    {"chest hurts", "We put it on the chest. Nothing here hurts anyone.", false},
    {"chest hurts", "Chest. Hurts.", true},
    {"chest hurts", "chest\nhurts", true},
    {"cant breathe", "i really cant... breathe", true},
    /* "but" is a wall */
    {"chest hurts", "chest is strapped but arm hurts", false},
    /* after "cant" nothing of weight, nor a light verb */
    {"cant breathe", "he cant really seem to breathe", true},
    {"cant breathe", "cant find the breathing tube", false},
    {"cant breathe", "cant get my breathing tube on", false},
    {"wont wake", "my husband wont even wake up now", true},
    /* a particle stays with its verb */
    {"passed out", "she passed right out", true},
    {"passed out", "passed the shop on the way out", false},
    /* one word of weight: its little words must be there, close together */
    {"im blue", "machine quit and im blue", true},
    {"im blue", "im so very blue", true},
    {"im blue", "blue", false},
    {"im blue", "im sure that it was the blue one", false},
    /* one slip in a word of five letters or more */
    {"chest hurts", "chset hurts", true},
    {"chest hurts", "chesst hurts", true},
    {"chest hurts", "hest hurts", false}, /* the first letter of a short word */
    {"breathe trouble", "vreathe trouble", true},
    {"lips blue", "laps blue", false}, /* too short to repair */
};

START_TEST(phrases_are_matched_by_form_order_gaps_and_one_slip)
{
    const char *phrases[1] = {matched[_i].phrase};

    make_sign(phrases, 1, NULL, 0);
    sign_index_close(made, workspace, NULL, &faults);
    ck_assert_uint_eq(faults.count, 0);
    ck_assert_msg(fires(matched[_i].text) == matched[_i].fires, "\"%s\" on \"%s\"",
                  matched[_i].phrase, matched[_i].text);
}
END_TEST

static const struct {
    const char *text;
    bool fires;
} negated[] = {
    {"no chest pain", false},
    {"i dont have any chest pain", false},
    {"without chest pain", false},
    {"never had chest pain", false},
    {"he is not having chest pain", false},
    {"no cough or chest pain", false},
    {"no cough, chest pain or fever", false},
    {"not chest pain, just asking", false},
    /* an answer, not a negation */
    {"no, chest pain", true},
    {"no my chest pain is back", true},
    {"no he has chest pain", true},
    /* the negation belongs to something else */
    {"no oxygen chest pain", true},
    {"machine not working chest pain", true},
    {"i dont know why i have chest pain", true},
    {"cant take this chest pain", true},
    {"not only chest pain", true},
    {"not better, chest pain", true},
    /* it does not reach across a sentence, a line or but, nor further than five words */
    {"I am not well. Chest pain", true},
    {"not dizzy\nchest pain", true},
    {"not dizzy but chest pain", true},
    {"no a the of in at all chest pain", true},
};

START_TEST(a_negation_takes_back_only_what_it_governs)
{
    static const char *const phrases[] = {"chest pain", "cough"};

    make_sign(phrases, 2, NULL, 0);
    sign_index_close(made, workspace, NULL, &faults);
    ck_assert_msg(fires(negated[_i].text) == negated[_i].fires, "\"%s\"", negated[_i].text);
}
END_TEST

START_TEST(a_negation_inside_a_phrase_takes_it_back_unless_it_is_doubled)
{
    static const char *const phrases[] = {"chest hurts"};

    make_sign(phrases, 1, NULL, 0);
    sign_index_close(made, workspace, NULL, &faults);
    ck_assert(!fires("my chest doesnt hurt"));
    ck_assert(fires("my chest wont stop hurting"));
}
END_TEST

START_TEST(a_negation_that_is_part_of_the_phrase_takes_nothing_back)
{
    static const char *const phrases[] = {"not breathing", "cant wake"};

    make_sign(phrases, 2, NULL, 0);
    sign_index_close(made, workspace, NULL, &faults);
    ck_assert(fires("he is not breathing"));
    ck_assert(fires("he isnt moving and not breathing"));
    ck_assert(fires("no cant wake him"));
}
END_TEST

START_TEST(a_figure_of_speech_covers_its_own_words_only)
{
    static const char *const phrases[] = {"heart attack", "im dying", "wont wake"};
    static const char *const figures[] = {"gave heart attack", "dying to",
                                          "machine / screen wont wake", "wont wake sleep mode"};

    make_sign(phrases, 3, figures, 4);
    sign_index_close(made, workspace, NULL, &faults);
    ck_assert_uint_eq(faults.count, 0);
    ck_assert(!fires("this price gave me a heart attack lol"));
    ck_assert(fires("the price gave me a heart attack lol. now it is a heart attack"));
    ck_assert(!fires("im dying to ski"));
    ck_assert(fires("im dying"));
    ck_assert(fires("im dying hurry to cabin 4"));
    ck_assert(!fires("the machine wont wake"));
    ck_assert(!fires("it wont wake from sleep mode"));
    ck_assert(fires("he wont wake from his sleep"));
    ck_assert(fires("machine is on and he wont wake"));
}
END_TEST

START_TEST(a_word_that_is_right_as_spelt_is_no_slip)
{
    static const char *const phrases[] = {"choking"};

    make_sign(phrases, 1, NULL, 0);
    sign_index_know(made, "is cooking ok");
    sign_index_close(made, workspace, NULL, &faults);
    ck_assert(!fires("cooking"));
    ck_assert(fires("chokng"));
}
END_TEST

START_TEST(a_match_tells_its_bytes_and_its_line)
{
    static const char *const phrases[] = {"chest / ribs + pain"};
    struct sign_match match;

    make_sign(phrases, 1, NULL, 0);
    sign_index_close(made, workspace, NULL, &faults);
    ck_assert_uint_eq(
        sign_index_find(made, workspace,
                        words_read(arena, NULL, "\xc3\xa9h, my Chest is in Pain!", LANGUAGE_EN),
                        false, &match, 1),
        1);
    ck_assert_str_eq(match.phrase, phrases[0]);
    ck_assert_uint_eq(match.start, 8);
    ck_assert_uint_eq(match.end, 24);
    ck_assert_str_eq(match.sign->id, "x");
}
END_TEST

START_TEST(a_sign_fires_amid_any_other_text)
{
    static const char *const phrases[] = {"chest pain"};
    static const char *const before[] = {"", "Thanks for the quick help with the charger! ",
                                         "is it due friday or can we keep it\n",
                                         "not sure about the cord. "};
    static const char *const after[] = {"", " by the way.", "\nAlso where is the car cord?",
                                        ". No hurry, thanks!"};
    size_t i, j;

    make_sign(phrases, 1, NULL, 0);
    sign_index_close(made, workspace, NULL, &faults);
    for (i = 0; i < 4; i++) {
        for (j = 0; j < 4; j++) {
            ck_assert(fires(memory_format(arena, "%sHe has chest pain%s", before[i], after[j])));
        }
    }
}
END_TEST

START_TEST(strange_bytes_and_very_long_texts_do_no_harm)
{
    static const char *const phrases[] = {"cant breathe", "chest + pain"};
    char *text = memory_copy(arena, "");
    int i;

    make_sign(phrases, 2, NULL, 0);
    sign_index_close(made, workspace, NULL, &faults);
    ck_assert(!fires(""));
    ck_assert(!fires("\xff\xfe\x80 \xf0\x9f"));
    ck_assert(!fires("... !!! ???"));
    for (i = 0; i < 3000; i++) {
        memory_append(&text, "cant chest ");
    }
    ck_assert(!fires(text));
}
END_TEST

/* Lines that cannot be read, and what is said of them. */
static const struct {
    const char *line, *fault;
} unreadable[] = {
    {"/ chest", "a / needs a word on either side"},
    {"chest /", "a / needs a word on either side"},
    {"chest / / rib", "a / needs a word on either side"},
    {"+ chest", "two + at most, between words"},
    {"chest +", "some on either side of +"},
    {"a + b + c + d", "two + at most"},
    {"[people] coughs", "there is no class [people]"},
    {"... chest", "... only in \"Not meant by\""},
    {"!!!", "only plain words"},
    {"chest / ribs-and-back", "single ones, and no shorthand"},
    {"aa bb cc dd ee ff gg hh ii", "more than 8 words"},
    {"a1 / c / d / e / f / g / h / i1 / j / k / l / m / n / o / p / q / r", "more than 16"},
};

START_TEST(a_line_that_cannot_be_read_is_a_fault_with_its_place)
{
    const char *phrases[1] = {unreadable[_i].line};

    make_sign(phrases, 1, NULL, 0);
    ck_assert_uint_ge(faults.count, 1);
    ck_assert_ptr_nonnull(strstr(faults.list[0].text, "signs/en/x.md:10: Said as: "));
    ck_assert_msg(strstr(faults.list[0].text, unreadable[_i].fault) != NULL, "%s",
                  faults.list[0].text);
}
END_TEST

START_TEST(a_line_that_its_own_figures_cover_is_a_fault)
{
    static const char *const phrases[] = {"hit / bumped head"};
    static const char *const figures[] = {"bumped head"};

    make_sign(phrases, 1, figures, 1);
    ck_assert_int_eq(sign_index_close(made, workspace, NULL, &faults), -1);
    ck_assert_ptr_nonnull(strstr(faults.list[0].text, "would not fire on \"bumped head\""));
}
END_TEST

START_TEST(one_slip_is_one_letter_wrong_missing_more_or_two_swapped)
{
    ck_assert(is_one_slip("breathe", "breathd"));
    ck_assert(is_one_slip("breathe", "breahe"));
    ck_assert(is_one_slip("breathe", "brreathe"));
    ck_assert(is_one_slip("breathe", "braethe"));
    ck_assert(is_one_slip("breathe", "breath"));
    ck_assert(!is_one_slip("breathe", "breathe"));
    ck_assert(!is_one_slip("breathe", "braethr"));
    ck_assert(!is_one_slip("breathe", "brea"));
    ck_assert(!is_one_slip("ab", "ba b"));
    ck_assert(is_one_slip("", "a"));
    ck_assert(!is_one_slip("", ""));
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("sign_match");
    TCase *tests = tcase_create("sign_match");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, begin, end);
    tcase_add_loop_test(tests, phrases_are_matched_by_form_order_gaps_and_one_slip, 0,
                        sizeof(matched) / sizeof(matched[0]));
    tcase_add_loop_test(tests, a_negation_takes_back_only_what_it_governs, 0,
                        sizeof(negated) / sizeof(negated[0]));
    tcase_add_test(tests, a_negation_inside_a_phrase_takes_it_back_unless_it_is_doubled);
    tcase_add_test(tests, a_negation_that_is_part_of_the_phrase_takes_nothing_back);
    tcase_add_test(tests, a_figure_of_speech_covers_its_own_words_only);
    tcase_add_test(tests, a_word_that_is_right_as_spelt_is_no_slip);
    tcase_add_test(tests, a_match_tells_its_bytes_and_its_line);
    tcase_add_test(tests, a_sign_fires_amid_any_other_text);
    tcase_add_test(tests, strange_bytes_and_very_long_texts_do_no_harm);
    tcase_add_loop_test(tests, a_line_that_cannot_be_read_is_a_fault_with_its_place, 0,
                        sizeof(unreadable) / sizeof(unreadable[0]));
    tcase_add_test(tests, a_line_that_its_own_figures_cover_is_a_fault);
    tcase_add_test(tests, one_slip_is_one_letter_wrong_missing_more_or_two_swapped);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
