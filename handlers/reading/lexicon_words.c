#include "lexicon_words.h"

#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "number_words.h"
#include "sound.h"

static const struct table {
    const struct lexicon_entry *entries;
    const size_t *count;
    enum language language;
} tables[] = {{lexicon_en, &lexicon_en_count, LANGUAGE_EN},
              {lexicon_en_ways, &lexicon_en_ways_count, LANGUAGE_EN},
              {lexicon_es, &lexicon_es_count, LANGUAGE_ES},
              {lexicon_es_ways, &lexicon_es_ways_count, LANGUAGE_ES}};

enum { TABLES = sizeof tables / sizeof tables[0] };

/* The phrases or number word at `place`, counted through all tables; NULL past the last. */
static const char *
phrases_at(size_t place, enum language *language)
{
    size_t i;

    for (i = 0; i < TABLES; i++) {
        *language = tables[i].language;
        if (place < *tables[i].count) {
            return tables[i].entries[place].phrases;
        }
        place -= *tables[i].count;
    }
    if (place < 2 * CUE_COUNT) {
        *language = place < CUE_COUNT ? LANGUAGE_EN : LANGUAGE_ES;
        return place < CUE_COUNT ? cues_en[place] : cues_es[place - CUE_COUNT];
    }
    *language = LANGUAGE_COUNT;
    return number_word_at(place - 2 * CUE_COUNT);
}

/* A walk through every word, again where one stands in several phrases; begins as {0}. */
struct walk {
    const char *word; /* `length` bytes of it */
    size_t length;
    enum language language; /* LANGUAGE_COUNT of a number word */
    size_t place;
};

/* False past the last. */
static bool
next_word(struct walk *walk)
{
    walk->word += walk->length;
    while (walk->word == NULL || *walk->word == '\0') {
        walk->word = phrases_at(walk->place, &walk->language);
        if (walk->word == NULL) {
            return false;
        }
        walk->place++;
    }
    walk->word += *walk->word == ' ' || *walk->word == '|' ? 1 : 0;
    walk->length = strcspn(walk->word, " |");
    return true;
}

/* All words by their length, as often as they stand in the tables. */
static void
collect(struct word_list *lists)
{
    struct walk walk = {0};

    while (next_word(&walk)) {
        struct lexicon_word word = {.text = NULL};
        struct word_list *words;
        int language;

        if (walk.length > LEXICON_WORD_MAX) {
            continue;
        }
        word.text = memory_copy_n(lists, walk.word, walk.length);
        for (language = 0; language < LANGUAGE_COUNT; language++) {
            word.of[language] =
                walk.language == LANGUAGE_COUNT || walk.language == (enum language)language;
        }
        words = &lists[walk.length];
        words->list = memory_grow(lists, struct lexicon_word, words->list, words->count);
        words->list[words->count++] = word;
    }
}

static int
by_text(const void *left, const void *right)
{
    return strcmp(((const struct lexicon_word *)left)->text,
                  ((const struct lexicon_word *)right)->text);
}

/* Makes one of those that are alike. */
static void
once_each(struct word_list *words)
{
    size_t kept = 0, i;
    int language;

    if (words->count == 0) {
        return;
    }
    qsort(words->list, words->count, sizeof *words->list, by_text);
    for (i = 1; i < words->count; i++) {
        struct lexicon_word *last = &words->list[kept];

        if (by_text(last, &words->list[i]) != 0) {
            words->list[++kept] = words->list[i];
            continue;
        }
        for (language = 0; language < LANGUAGE_COUNT; language++) {
            last->of[language] = last->of[language] || words->list[i].of[language];
        }
    }
    words->count = kept + 1;
}

const struct word_list *
word_lists_new(void *arena, const struct kb *kb)
{
    struct word_list *lists = memory_array(arena, struct word_list, LEXICON_WORD_MAX + 1);
    size_t length, i;
    int value;

    collect(lists);
    for (length = 1; length <= LEXICON_WORD_MAX; length++) {
        once_each(&lists[length]);
        for (i = 0; i < lists[length].count; i++) {
            struct lexicon_word *word = &lists[length].list[i];

            word->sound = word->of[LANGUAGE_ES] ? sound_of(lists, word->text, LANGUAGE_ES) : NULL;
            word->is_number = number_word(word->text, &value) != NUMBER_WORD_NONE;
            word->is_right = kb_is_ordinary(kb, word->text, LANGUAGE_EN);
        }
    }
    return lists;
}
