/* How Spanish words sound, so that who writes by ear is understood. */
#include <check.h>
#include <stdlib.h>

#include "memory.h"
#include "sound.h"

static void *arena;

static void
begin(void)
{
    arena = talloc_new(NULL);
}

static void
end(void)
{
    talloc_free(arena);
}

static const char *
sound(const char *word)
{
    return sound_of(arena, word, LANGUAGE_ES);
}

/* Spellings by ear that are common practice in texts (no source), without accents as words.h
 * cleans them. */
static const char *const same[][2] = {
    {"hay", "ai"},
    {"hace", "ase"},
    {"ahogo", "aogo"},
    {"hinchada", "inchada"},
    {"boca", "voca"},
    {"vomita", "bomita"},
    {"cabeza", "cabesa"},
    {"cerebro", "serebro"},
    {"oxigeno", "osijeno"},
    {"oxigeno", "ocsigeno"},
    {"desmayo", "desmallo"},
    {"llama", "yama"},
    {"quiero", "kiero"},
    {"que", "ke"},
    {"convulsion", "combulcion"},
    {"presion", "precion"},
    {"presiones", "preciones"},
    {"accidente", "asidente"},
    {"ambulancia", "anbulansia"},
    {"morado", "morao"},
    {"hinchados", "inchaos"},
    {"hielo", "yelo"},
    {"ayuda", "ayudaaaaa"},
    {"perro", "perrrrro"},
    {"psicologo", "psicologo"},
};

START_TEST(a_word_written_by_ear_sounds_like_the_word)
{
    ck_assert_str_eq(sound(same[_i][0]), sound(same[_i][1]));
}
END_TEST

static const char *const different[][2] = {
    {"pero", "perro"},    {"pecho", "peso"}, {"cara", "cera"},   {"noche", "noqe"},
    {"gota", "jota"},     {"casa", "cama"},  {"muere", "mueve"}, {"pelo", "perro"},
    {"sangre", "sanjre"}, {"calla", "cala"}, {"ao", "ado"},      {"911", "91"},
};

START_TEST(words_that_sound_otherwise_stay_apart)
{
    ck_assert_str_ne(sound(different[_i][0]), sound(different[_i][1]));
}
END_TEST

START_TEST(an_english_word_stays_as_it_is)
{
    ck_assert_str_eq(sound_of(arena, "hobby", LANGUAGE_EN), "hobby");
}
END_TEST

START_TEST(any_word_has_a_sound)
{
    ck_assert_str_eq(sound(""), "");
    ck_assert_str_eq(sound("h"), "h");
    ck_assert_str_eq(sound("ccc"), "k");
    ck_assert_str_eq(sound("84%"), "84%");
    ck_assert_str_eq(sound("\xd0\xb4\xd0\xb0"), "\xd0\xb4\xd0\xb0");
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("sound");
    TCase *tests = tcase_create("sound");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, begin, end);
    tcase_add_loop_test(tests, a_word_written_by_ear_sounds_like_the_word, 0,
                        sizeof(same) / sizeof(same[0]));
    tcase_add_loop_test(tests, words_that_sound_otherwise_stay_apart, 0,
                        sizeof(different) / sizeof(different[0]));
    tcase_add_test(tests, an_english_word_stays_as_it_is);
    tcase_add_test(tests, any_word_has_a_sound);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
