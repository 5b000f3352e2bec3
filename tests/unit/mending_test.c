#include "fixture.h"

#include <string.h>

#include "memory.h"
#include "mending.h"
#include "shipped.h"
#include "slip.h"

struct row {
    const char *text, *mended;
};

/* The words of a text as the reader sees them, by what the shipped content knows. */
static void
mends(const struct row *rows, size_t count, enum language language)
{
    void *arena = talloc_new(NULL);
    const struct lexicon *lexicon = lexicon_new(arena, shipped_kb());
    size_t i, k;

    for (i = 0; i < count; i++) {
        struct tokens tokens = tokens_read(arena, rows[i].text);
        char *words = memory_copy(arena, "");
        bool mended = mend_words(arena, lexicon, language, &tokens);

        for (k = 0; k < tokens.count; k++) {
            memory_append(&words, k > 0 ? " %s" : "%s", tokens.list[k].text);
        }
        ck_assert_str_eq(words, rows[i].mended);
        ck_assert_int_eq(mended, strcmp(rows[i].text, rows[i].mended) != 0);
    }
    talloc_free(arena);
}

#define MENDS(rows, language) mends(rows, sizeof(rows) / sizeof((rows)[0]), language)

START_TEST(a_slip_of_the_finger_becomes_the_word_that_was_meant)
{
    static const struct row rows[] = {
        {"battrey at half", "battery at half"},
        {"chargin from 20", "charging from 20"},
        {"walikng on pulse 2", "walking on pulse 2"},
        {"two fulll ones", "two full ones"},
        {"ful", "full"},
        {"emtpy", "empty"},
        {"the flihgt", "the flight"},
        {"otehr one", "other one"},
        {"unpluged at noon", "unplugged at noon"},
    };
    MENDS(rows, LANGUAGE_EN);
}
END_TEST

START_TEST(right_words_and_the_readers_own_stay)
{
    static const struct row rows[] = {
        {"whats left on both batts", "whats left on both batts"},
        {"talking while it is snowing", "talking while it is snowing"},
        {"the sats are 88", "the sats are 88"},
        {"tmrw at 6", "tmrw at 6"},
        {"its 40 lpm", "its 40 lpm"},
    };
    MENDS(rows, LANGUAGE_EN);
}
END_TEST

START_TEST(spanish_is_mended_by_ear)
{
    static const struct row rows[] = {
        {"vateria yena", "bateria llena"},
        {"asta las 8", "hasta las 8"},
        {"dos oras", "dos horas"},
        {"me qeda la mitad", "me queda la mitad"},
        {"pulzo 2", "pulso 2"},
        {"el cerro es alto", "el cerro es alto"},
        {"una manzana", "una manzana"},
    };
    MENDS(rows, LANGUAGE_ES);
}
END_TEST

START_TEST(a_number_word_is_mended_only_if_no_other_is_near)
{
    static const struct row rows[] = {
        {"eigthy percent", "eighty percent"},
        {"seveny", "seveny"},
        {"sixt", "sixt"},
        {"ninty", "ninety"},
    };
    static const struct row spanish[] = {
        {"ochneta", "ochenta"}, {"sefenta", "sefenta"}, {"sinco", "cinco"}};

    MENDS(rows, LANGUAGE_EN);
    MENDS(spanish, LANGUAGE_ES);
}
END_TEST

START_TEST(slips_are_told_apart)
{
    ck_assert_int_eq(slip_between("tehy", "they"), SLIP_SWAP);
    ck_assert_int_eq(slip_between("seting", "setting"), SLIP_DOUBLE);
    ck_assert_int_eq(slip_between("plugg", "plug"), SLIP_DOUBLE);
    ck_assert_int_eq(slip_between("settin", "setting"), SLIP_LETTER_LESS);
    ck_assert_int_eq(slip_between("settimng", "settimg"), SLIP_LETTER_MORE);
    ck_assert_int_eq(slip_between("setring", "setting"), SLIP_WRONG_LETTER);
    ck_assert_int_eq(slip_between("setting", "setting"), SLIP_NONE);
    ck_assert_int_eq(slip_between("sit", "setting"), SLIP_NONE);
    ck_assert_int_eq(slip_between("", ""), SLIP_NONE);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("mending");

    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_test(tests, a_slip_of_the_finger_becomes_the_word_that_was_meant);
    tcase_add_test(tests, right_words_and_the_readers_own_stay);
    tcase_add_test(tests, spanish_is_mended_by_ear);
    tcase_add_test(tests, a_number_word_is_mended_only_if_no_other_is_near);
    tcase_add_test(tests, slips_are_told_apart);
    return fixture_run(tests);
}
