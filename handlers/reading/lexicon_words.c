/* The words of the tables one by one: lexicon.h. */
#include <string.h>

#include "lexicon.h"
#include "number_words.h"

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

bool
lexicon_next_word(struct lexicon_walk *walk)
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
    for (walk->length = 0; walk->word[walk->length] != '\0' && walk->word[walk->length] != ' ' &&
                           walk->word[walk->length] != '|';
         walk->length++) {
    }
    return true;
}
