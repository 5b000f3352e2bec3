/* Reading a text: words, stems, where they came from; shorthand; spelling repair. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "ordinary.h"
#include "shorthand.h"
#include "spelling.h"
#include "words.h"

static void *arena;
static struct workspace *workspace;

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

/* The words with single blanks between them, or their stems. */
static const char *
joined(struct words words, bool stems)
{
    char *text = memory_copy(arena, "");
    size_t i;

    for (i = 0; i < words.count; i++) {
        memory_append(&text, "%s%s", i == 0 ? "" : " ",
                      stems ? words.list[i].stem : words.list[i].text);
    }
    return text;
}

static const char *
read_en(const char *text)
{
    return joined(words_read(arena, workspace, text, LANGUAGE_EN), false);
}

START_TEST(looks_alone_do_not_change_a_word)
{
    ck_assert_str_eq(read_en("Does  IT\tCharge?!"), "does it charge");
    ck_assert_str_eq(read_en("caf\xc3\xa9"), "cafe");
    ck_assert_str_eq(read_en("can\xe2\x80\x99t can't can`t"), "cant cant cant");
    ck_assert_str_eq(read_en("zero\xe2\x80\x8bwidth"), "zerowidth");
}
END_TEST

/* Unicode Standard Annex 15, figure 6 and table 4: compatibility characters and their NFKC form. */
START_TEST(compatibility_characters_become_plain)
{
    ck_assert_str_eq(read_en("\xef\xac\x81ne"), "fine");         /* U+FB01 is "fi" */
    ck_assert_str_eq(read_en("2\xe2\x81\xb5"), "25");            /* U+2075 is "5" */
    ck_assert_str_eq(read_en("\xef\xbd\x81\xef\xbd\x82"), "ab"); /* full-width letters */
    ck_assert_str_eq(read_en("\xc5\xbf\x6f"), "so");             /* U+017F is a long s */
}
END_TEST

START_TEST(numbers_keep_their_signs_and_lose_their_units)
{
    ck_assert_str_eq(read_en("2.5L at 9:30pm, 1/2 or 30min"), "2.5 l at 9:30 pm 1/2 or 30 min");
    ck_assert_str_eq(read_en("the 2nd 50% $20"), "the 2nd 50 % $ 20");
    ck_assert_str_eq(read_en("5 p.m. w/o it"), "5 pm wo it");
}
END_TEST

START_TEST(a_word_knows_where_it_came_from)
{
    const char *text = "Se\xc3\xb1or, help.\nOk";
    struct words words = words_read(arena, workspace, text, LANGUAGE_EN);

    ck_assert_uint_eq(words.count, 3);
    ck_assert_uint_eq(words.list[0].start, 0);
    ck_assert_uint_eq(words.list[0].end, 6);
    ck_assert(words.list[1].comma_before);
    ck_assert_int_eq(words.list[1].sentence, 0);
    ck_assert_int_eq(words.list[2].sentence, 1);
    ck_assert_str_eq(text + words.list[2].start, "Ok");
}
END_TEST

START_TEST(any_bytes_may_come_in)
{
    char bytes[6001];
    size_t i;
    unsigned value = 1;

    ck_assert_uint_eq(words_read(arena, workspace, "", LANGUAGE_EN).count, 0);
    ck_assert_str_eq(read_en("a \xff\xfe\xc3 b"), "a b");
    for (i = 0; i < sizeof(bytes) - 1; i++) {
        value = value * 1664525u + 1013904223u;
        bytes[i] = (char)(1 + (value >> 24) % 255);
    }
    bytes[sizeof(bytes) - 1] = '\0';
    words_read(arena, workspace, bytes, LANGUAGE_ES);
}
END_TEST

START_TEST(a_long_text_is_cut_at_a_character)
{
    char *text = memory_array(arena, char, WORDS_TEXT_MAX + 10);
    struct words words;

    memset(text, 'a', WORDS_TEXT_MAX - 1);
    strcpy(text + WORDS_TEXT_MAX - 1, "\xc3\xa9\xc3\xa9");
    words = words_read(arena, workspace, text, LANGUAGE_EN);
    ck_assert_uint_eq(words.list[0].end, WORDS_TEXT_MAX - 1);
}
END_TEST

/* Snowball's published sample vocabularies of the English and Spanish stemmers
 * (snowballstem.org, algorithms/english and algorithms/spanish). */
START_TEST(stems_are_those_that_snowball_publishes)
{
    struct words en = words_read(arena, workspace,
                                 "consigned consignment consistency consolations consolatory "
                                 "knackeries knightly",
                                 LANGUAGE_EN);
    struct words es =
        words_read(arena, workspace, "chicharrones chico torear torero toros", LANGUAGE_ES);

    ck_assert_str_eq(joined(en, true),
                     "consign consign consist consol consolatori knackeri knight");
    ck_assert_str_eq(joined(es, true), "chicharron chic tor torer tor");
}
END_TEST

/* More words than a workspace remembers, each read again when others took its place. */
START_TEST(a_remembered_stem_is_that_of_the_word_in_its_language)
{
    enum { WORDS = 20000 };
    struct workspace *fresh;
    int i;

    for (i = 0; i < WORDS; i++) {
        char *word = memory_format(arena, "c%c%c%crg%s", 'a' + i % 26, 'a' + i / 26 % 26,
                                   'a' + i / 676 % 26, i % 2 == 0 ? "s" : "ing");
        const char *stem = words_stem(arena, workspace, word, LANGUAGE_EN);

        ck_assert_str_eq(words_stem(arena, workspace, word, LANGUAGE_EN), stem);
        ck_assert_int_eq(strncmp(word, stem, 4), 0);
    }
    fresh = workspace_new();
    for (i = 0; i < 2; i++) { /* the second time from memory */
        ck_assert_str_eq(words_stem(arena, workspace, "baterias", LANGUAGE_EN),
                         words_stem(arena, fresh, "baterias", LANGUAGE_EN));
        ck_assert_str_eq(words_stem(arena, workspace, "baterias", LANGUAGE_ES), "bateri");
        ck_assert_str_eq(words_stem(arena, workspace, "charges", LANGUAGE_EN), "charg");
        ck_assert_str_eq(words_stem(arena, workspace, "responsibilities", LANGUAGE_EN), "respons");
    }
    workspace_free(fresh);
}
END_TEST

START_TEST(the_language_shows_in_small_words)
{
    ck_assert_int_eq(words_language(arena, "does it charge in the car"), LANGUAGE_EN);
    ck_assert_int_eq(words_language(arena, "puedo cargar la bateria en el carro"), LANGUAGE_ES);
    ck_assert_int_eq(words_language(arena, "\xc2\xbf"
                                           "cargar?"),
                     LANGUAGE_ES);
    ck_assert_int_eq(words_language(arena, "battery"), LANGUAGE_EN);
}
END_TEST

/* ---- Shorthand ------------------------------------------------------------------------------- */

static int
read_shorthand(const char *file, struct shorthand **shorthand, struct faults *faults)
{
    return shorthand_read(arena, workspace, "words/en.txt", file, strlen(file), LANGUAGE_EN,
                          shorthand, faults);
}

START_TEST(shorthand_stands_for_its_long_words)
{
    struct shorthand *shorthand = NULL;
    struct faults faults = {0};
    struct words words;

    ck_assert_int_eq(read_shorthand("# texting\nu = you\npoc = portable concentrator # trade\n\n",
                                    &shorthand, &faults),
                     0);
    words = words_read(arena, workspace, "can U carry the poc", LANGUAGE_EN);
    words = shorthand_expand(arena, shorthand, words);
    ck_assert_str_eq(joined(words, false), "can you carry the portable concentrator");
    ck_assert_uint_eq(words.list[4].start, words.list[5].start);
}
END_TEST

START_TEST(a_bad_line_of_shorthand_is_named)
{
    struct shorthand *shorthand = NULL;
    struct faults faults = {0};

    ck_assert_int_eq(
        read_shorthand("u = you\nno sign\nu = your\ntwo words = x\n", &shorthand, &faults), -1);
    ck_assert_uint_eq(faults.count, 3);
    ck_assert_ptr_nonnull(strstr(faults.list[0].text, "words/en.txt:2"));
    ck_assert_ptr_nonnull(strstr(faults.list[1].text, "words/en.txt:3"));
    ck_assert_ptr_nonnull(strstr(faults.list[2].text, "words/en.txt:4"));
    ck_assert_ptr_null(shorthand);
    faults_release(&faults);
}
END_TEST

/* ---- Spelling ---------------------------------------------------------------------------------
 */

static const char *
repaired_but_for(const char *text, const struct ordinary *ordinary)
{
    static const char *const known[] = {
        "how do i charge the battery in the car", "where does the charger go",
        "is the concentrator allowed on the airplane", "the form is from the office"};
    struct spelling spelling;
    struct words texts[4];
    size_t i;

    for (i = 0; i < 4; i++) {
        texts[i] = words_read(arena, workspace, known[i], LANGUAGE_EN);
    }
    spelling_build(arena, texts, 4, ordinary, &spelling);
    return joined(
        spelling_repair(arena, &spelling, words_read(arena, workspace, text, LANGUAGE_EN)), false);
}

static const char *
repaired(const char *text)
{
    return repaired_but_for(text, NULL);
}

START_TEST(an_ordinary_word_is_no_slip_of_another)
{
    static const char lines[] = "# words\ncane\r\nfarm\nback\nbar";
    const struct ordinary *ordinary = ordinary_read(arena, lines, sizeof(lines) - 1);

    ck_assert(ordinary_has(ordinary, "cane"));
    ck_assert(ordinary_has(ordinary, "bar")); /* the last line has no end */
    ck_assert(!ordinary_has(ordinary, "words"));
    ck_assert(!ordinary_has(NULL, "cane"));
    ck_assert_str_eq(repaired("farm"), "form");
    ck_assert_str_eq(repaired_but_for("farm", ordinary), "farm");
    ck_assert_str_eq(repaired("the bar"), "the car");
    ck_assert_str_eq(repaired_but_for("the bar", ordinary), "the bar");
    ck_assert_str_eq(repaired_but_for("offise", ordinary), "office");
}
END_TEST

START_TEST(one_slip_is_repaired)
{
    ck_assert_str_eq(repaired("chrge"), "charge");     /* a letter lost */
    ck_assert_str_eq(repaired("batttery"), "battery"); /* one added */
    ck_assert_str_eq(repaired("offise"), "office");    /* one changed */
    ck_assert_str_eq(repaired("chagrer"), "charger");  /* two swapped */
}
END_TEST

START_TEST(two_slips_are_repaired_in_long_words_only)
{
    ck_assert_str_eq(repaired("concetrater"), "concentrator");
    ck_assert_str_eq(repaired("cxy"), "cxy");
}
END_TEST

START_TEST(blanks_lost_added_and_moved_are_repaired)
{
    ck_assert_str_eq(repaired("thecar"), "the car");
    ck_assert_str_eq(repaired("air plane"), "airplane");
    ck_assert_str_eq(repaired("th ecar"), "the car");
}
END_TEST

START_TEST(a_neighbour_decides_between_two_repairs)
{
    ck_assert_str_eq(repaired("charge the frm is"), "charge the form is");
    ck_assert_str_eq(repaired("is frm the office"), "is from the office");
}
END_TEST

START_TEST(known_words_numbers_and_strangers_stay)
{
    ck_assert_str_eq(repaired("the car 2.5 zzzzzz"), "the car 2.5 zzzzzz");
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("words");
    TCase *reading = tcase_create("reading"), *repair = tcase_create("repair");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(reading, start, end);
    tcase_add_test(reading, looks_alone_do_not_change_a_word);
    tcase_add_test(reading, compatibility_characters_become_plain);
    tcase_add_test(reading, numbers_keep_their_signs_and_lose_their_units);
    tcase_add_test(reading, a_word_knows_where_it_came_from);
    tcase_add_test(reading, any_bytes_may_come_in);
    tcase_add_test(reading, a_long_text_is_cut_at_a_character);
    tcase_add_test(reading, stems_are_those_that_snowball_publishes);
    tcase_add_test(reading, a_remembered_stem_is_that_of_the_word_in_its_language);
    tcase_add_test(reading, the_language_shows_in_small_words);
    tcase_add_test(reading, shorthand_stands_for_its_long_words);
    tcase_add_test(reading, a_bad_line_of_shorthand_is_named);
    suite_add_tcase(suite, reading);
    tcase_add_checked_fixture(repair, start, end);
    tcase_add_test(repair, an_ordinary_word_is_no_slip_of_another);
    tcase_add_test(repair, one_slip_is_repaired);
    tcase_add_test(repair, two_slips_are_repaired_in_long_words_only);
    tcase_add_test(repair, blanks_lost_added_and_moved_are_repaired);
    tcase_add_test(repair, a_neighbour_decides_between_two_repairs);
    tcase_add_test(repair, known_words_numbers_and_strangers_stay);
    suite_add_tcase(suite, repair);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
