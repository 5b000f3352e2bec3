/* Looking up phrases. The tables are written for people, so an index by first word is made. */
#include "lexicon.h"

#include <string.h>

#include "lexicon_words.h"
#include "memory.h"

enum { BUCKETS = 512 };

struct phrase {
    const struct lexicon_entry *entry;
    const char *text;
    size_t length;
    struct phrase *next;
};

struct lexicon {
    const struct kb *kb; /* or NULL */
    struct phrase *buckets[LANGUAGE_COUNT][BUCKETS];
    const struct word_list *words; /* by length; NULL without a kb */
};

/* The bucket of the word that `word` begins with; *length: the word's. */
static size_t
bucket_of(const char *word, size_t *length)
{
    size_t hash = 5381, i;

    for (i = 0; word[i] != '\0' && word[i] != ' ' && word[i] != '|'; i++) {
        hash = hash * 33 + (unsigned char)word[i];
    }
    *length = i;
    return hash % BUCKETS;
}

static size_t
count_phrases(const struct lexicon_entry *entries, size_t count)
{
    size_t phrases = 0, i;
    const char *at;

    for (i = 0; i < count; i++) {
        for (at = entries[i].phrases; at != NULL; at = strchr(at + 1, '|')) {
            phrases++;
        }
    }
    return phrases;
}

static void
add_all(struct lexicon *lexicon, enum language language, const struct lexicon_entry *entries,
        size_t count)
{
    struct phrase *phrase = memory_array(lexicon, struct phrase, count_phrases(entries, count));
    size_t i;

    for (i = 0; i < count; i++) {
        const char *text = entries[i].phrases;

        while (true) {
            size_t length;
            struct phrase **bucket = &lexicon->buckets[language][bucket_of(text, &length)];

            while (text[length] != '|' && text[length] != '\0') {
                length++;
            }
            *phrase = (struct phrase){&entries[i], text, length, *bucket};
            *bucket = phrase++;
            if (text[length] == '\0') {
                break;
            }
            text += length + 1;
        }
    }
}

const struct lexicon *
lexicon_new(void *arena, const struct kb *kb)
{
    struct lexicon *lexicon = memory_new(arena, struct lexicon);

    lexicon->kb = kb;
    lexicon->words = kb == NULL ? NULL : word_lists_new(lexicon, kb);
    add_all(lexicon, LANGUAGE_EN, lexicon_en, lexicon_en_count);
    add_all(lexicon, LANGUAGE_EN, lexicon_en_ways, lexicon_en_ways_count);
    add_all(lexicon, LANGUAGE_ES, lexicon_es, lexicon_es_count);
    add_all(lexicon, LANGUAGE_ES, lexicon_es_ways, lexicon_es_ways_count);
    return lexicon;
}

const struct kb *
lexicon_kb(const struct lexicon *lexicon)
{
    return lexicon->kb;
}

const struct lexicon_word *
lexicon_words(const struct lexicon *lexicon, size_t length, size_t *count)
{
    if (lexicon->words == NULL || length > LEXICON_WORD_MAX) {
        *count = 0;
        return NULL;
    }
    *count = lexicon->words[length].count;
    return lexicon->words[length].list;
}

/* Tokens that the phrase takes at `at`, 0 if it is not there. */
static size_t
phrase_tokens(const struct tokens *tokens, size_t at, const char *phrase, size_t length)
{
    size_t taken = 0, from = 0;

    while (from < length) {
        size_t word = from;

        while (word < length && phrase[word] != ' ') {
            word++;
        }
        if (!token_is_word(tokens, at + taken, phrase + from, word - from)) {
            return 0;
        }
        taken++;
        from = word + 1;
    }
    return taken;
}

/* What a language has for the words at `at`; longer than *longest, it takes the place of that. */
static void
look_up(const struct lexicon *lexicon, enum language language, bool own,
        const struct tokens *tokens, size_t at, struct lexicon_found *found)
{
    size_t length;
    const struct phrase *phrase =
        lexicon->buckets[language][bucket_of(tokens->list[at].text, &length)];

    for (; phrase != NULL; phrase = phrase->next) {
        size_t taken = phrase->entry->own && !own
                           ? 0
                           : phrase_tokens(tokens, at, phrase->text, phrase->length);

        if (taken > found->tokens) {
            found->tokens = taken;
            found->count = 0;
        }
        if (taken == found->tokens && taken > 0 && found->count < LEXICON_MEANINGS) {
            found->meanings[found->count++] = phrase->entry;
        }
    }
}

struct lexicon_found
lexicon_at(const struct lexicon *lexicon, enum language language, const struct tokens *tokens,
           size_t at)
{
    enum language other = language == LANGUAGE_ES ? LANGUAGE_EN : LANGUAGE_ES;
    struct lexicon_found found = {0};

    look_up(lexicon, language, true, tokens, at, &found);
    look_up(lexicon, other, false, tokens, at, &found);
    return found;
}

/* Tokens that the phrases of a language cover. */
static size_t
covered(const struct lexicon *lexicon, const struct tokens *tokens, enum language language)
{
    size_t covers = 0, at = 0;

    while (at < tokens->count) {
        struct lexicon_found found = {0};

        look_up(lexicon, language, true, tokens, at, &found);
        covers += tokens->list[at].kind == TOKEN_WORD ? found.tokens : 0;
        at += found.tokens > 0 ? found.tokens : 1;
    }
    return covers;
}

enum language
lexicon_language(const struct lexicon *lexicon, void *arena, const char *text,
                 const struct tokens *tokens)
{
    if (words_language(arena, text) == LANGUAGE_ES ||
        covered(lexicon, tokens, LANGUAGE_ES) > covered(lexicon, tokens, LANGUAGE_EN)) {
        return LANGUAGE_ES;
    }
    return LANGUAGE_EN;
}

bool
lexicon_cue(const struct tokens *tokens, enum cue cue)
{
    return tokens_have(tokens, cues_en[cue]) || tokens_have(tokens, cues_es[cue]);
}
