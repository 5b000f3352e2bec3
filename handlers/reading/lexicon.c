/*
 * Looking up phrases. The tables are written for people, so an index by first word is made for
 * each text: one pass over some ten thousand bytes.
 */
#include "lexicon.h"

#include <string.h>

#include "memory.h"

enum { BUCKETS = 512 };

struct phrase {
    const struct lexicon_entry *entry;
    const char *text;
    size_t length;
    struct phrase *next;
};

struct lexicon {
    struct phrase *buckets[BUCKETS];
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

/* Those added later are found first, so the text's own language is added last. */
static void
add_all(struct lexicon *lexicon, const struct lexicon_entry *entries, size_t count, bool own)
{
    struct phrase *phrase = memory_array(lexicon, struct phrase, count_phrases(entries, count));
    size_t i;

    for (i = 0; i < count; i++) {
        const char *text = entries[i].phrases;

        while (!entries[i].own || own) {
            size_t length;
            struct phrase **bucket = &lexicon->buckets[bucket_of(text, &length)];

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

static void
add_english(struct lexicon *lexicon, bool own)
{
    add_all(lexicon, lexicon_en, lexicon_en_count, own);
    add_all(lexicon, lexicon_en_ways, lexicon_en_ways_count, own);
}

static void
add_spanish(struct lexicon *lexicon, bool own)
{
    add_all(lexicon, lexicon_es, lexicon_es_count, own);
    add_all(lexicon, lexicon_es_ways, lexicon_es_ways_count, own);
}

const struct lexicon *
lexicon_new(void *arena, enum language language)
{
    struct lexicon *lexicon = memory_new(arena, struct lexicon);
    bool spanish = language == LANGUAGE_ES;

    if (spanish) {
        add_english(lexicon, false);
    }
    add_spanish(lexicon, spanish);
    if (!spanish) {
        add_english(lexicon, true);
    }
    return lexicon;
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
        if (at + taken >= tokens->count || strlen(tokens->list[at + taken].text) != word - from ||
            strncmp(tokens->list[at + taken].text, phrase + from, word - from) != 0) {
            return 0;
        }
        taken++;
        from = word + 1;
    }
    return taken;
}

size_t
lexicon_at(const struct lexicon *lexicon, const struct tokens *tokens, size_t at,
           const struct lexicon_entry **meanings, size_t most, size_t *count)
{
    const char *word = tokens->list[at].text;
    size_t length, longest = 0;
    const struct phrase *phrase = lexicon->buckets[bucket_of(word, &length)];

    *count = 0;
    for (; phrase != NULL; phrase = phrase->next) {
        size_t taken = phrase_tokens(tokens, at, phrase->text, phrase->length);

        if (taken > longest) {
            longest = taken;
            *count = 0;
        }
        if (taken == longest && taken > 0 && *count < most) {
            meanings[(*count)++] = phrase->entry;
        }
    }
    return longest;
}

/* Tokens that the phrases of a language cover. */
static size_t
covered(void *arena, const struct tokens *tokens, void (*add)(struct lexicon *, bool))
{
    struct lexicon *lexicon = memory_new(arena, struct lexicon);
    const struct lexicon_entry *meanings[1];
    size_t found = 0, at = 0, one;

    add(lexicon, true);
    while (at < tokens->count) {
        size_t taken = lexicon_at(lexicon, tokens, at, meanings, 1, &one);

        found += tokens->list[at].kind == TOKEN_WORD ? taken : 0;
        at += taken > 0 ? taken : 1;
    }
    talloc_free(lexicon);
    return found;
}

enum language
lexicon_language(void *arena, const char *text, const struct tokens *tokens)
{
    if (words_language(arena, text) == LANGUAGE_ES ||
        covered(arena, tokens, add_spanish) > covered(arena, tokens, add_english)) {
        return LANGUAGE_ES;
    }
    return LANGUAGE_EN;
}

bool
lexicon_cue(const struct tokens *tokens, enum cue cue)
{
    return tokens_have(tokens, cues_en[cue]) || tokens_have(tokens, cues_es[cue]);
}
