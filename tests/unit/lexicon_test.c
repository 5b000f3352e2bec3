/* The tables of words are data that people edit: what could never be found is a mistake. */
#include "fixture.h"

#include <string.h>

#include "lexicon.h"
#include "memory.h"

/* The words of a phrase as tokens_read() would have them, parted by single blanks. */
static char *
as_tokens(void *arena, const char *phrase)
{
    struct tokens tokens = tokens_read(arena, phrase);
    char *words = memory_copy(arena, "");
    size_t i;

    for (i = 0; i < tokens.count; i++) {
        memory_append(&words, "%s%s", i > 0 ? " " : "", tokens.list[i].text);
    }
    return words;
}

static void
check_phrases(const char *phrases)
{
    void *arena = talloc_new(NULL);

    while (*phrases != '\0') {
        size_t length = strcspn(phrases, "|");
        char *phrase = memory_copy_n(arena, phrases, length);

        ck_assert_msg(strchr(phrase, '*') != NULL || strcmp(as_tokens(arena, phrase), phrase) == 0,
                      "\"%s\" is never found: a text has \"%s\"", phrase, as_tokens(arena, phrase));
        phrases += length + (phrases[length] == '|' ? 1 : 0);
    }
    talloc_free(arena);
}

static void
check_table(const struct lexicon_entry *entries, size_t count)
{
    size_t i;

    for (i = 0; i < count; i++) {
        check_phrases(entries[i].phrases);
    }
}

START_TEST(every_phrase_is_written_as_texts_are_read)
{
    int cue;

    check_table(lexicon_en, lexicon_en_count);
    check_table(lexicon_en_ways, lexicon_en_ways_count);
    check_table(lexicon_es, lexicon_es_count);
    check_table(lexicon_es_ways, lexicon_es_ways_count);
    for (cue = 0; cue < CUE_COUNT; cue++) {
        ck_assert_ptr_nonnull(cues_en[cue]);
        ck_assert_ptr_nonnull(cues_es[cue]);
        check_phrases(cues_en[cue]);
        check_phrases(cues_es[cue]);
    }
}
END_TEST

START_TEST(the_longest_phrase_wins_with_all_its_meanings)
{
    void *arena = talloc_new(NULL);
    const struct lexicon *lexicon = lexicon_new(arena, NULL);
    struct tokens tokens = tokens_read(arena, "unplugged almost full on");
    struct lexicon_found found = lexicon_at(lexicon, LANGUAGE_EN, &tokens, 0);

    ck_assert_uint_eq(found.tokens, 1);
    ck_assert_uint_eq(found.count, 2); /* a time of charges, and what it runs from */
    found = lexicon_at(lexicon, LANGUAGE_EN, &tokens, 1);
    ck_assert_uint_eq(found.tokens, 2);
    ck_assert_int_eq((int)found.meanings[0]->is, (int)ITEM_CHARGE);
    ck_assert_int_eq(found.meanings[0]->value, 85099);
    talloc_free(arena);
}
END_TEST

START_TEST(the_language_is_that_of_which_more_is_known)
{
    void *arena = talloc_new(NULL);
    static const struct {
        const char *text;
        enum language language;
    } rows[] = {
        {"una llena", LANGUAGE_ES},
        {"2 full on pulse 2", LANGUAGE_EN},
        {"la pila al 95 nivel 2", LANGUAGE_ES},
        {"how long", LANGUAGE_EN},
        {"", LANGUAGE_EN},
    };
    const struct lexicon *lexicon = lexicon_new(arena, NULL);
    size_t i;

    for (i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct tokens tokens = tokens_read(arena, rows[i].text);

        ck_assert_int_eq((int)lexicon_language(lexicon, arena, rows[i].text, &tokens),
                         (int)rows[i].language);
    }
    talloc_free(arena);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("lexicon");

    tcase_add_test(tests, every_phrase_is_written_as_texts_are_read);
    tcase_add_test(tests, the_longest_phrase_wins_with_all_its_meanings);
    tcase_add_test(tests, the_language_is_that_of_which_more_is_known);
    return fixture_run(tests);
}
