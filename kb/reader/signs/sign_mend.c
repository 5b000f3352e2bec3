#include "sign_mend.h"

#include <string.h>

#include "memory.h"
#include "ordinary.h"
#include "shorthand.h"

enum {
    OFTEN = 3, /* said so often, a word is hardly a misspelling */
    LETTERS_MIN = 3,
    STRANGE_MIN = 2, /* so many strange words are one text's way of spelling */
    ONE_OF = 4,      /* if they are one word of so many */
    SHORT_TEXT = 3   /* of so many words one is enough */
};

/* ---- Building ------------------------------------------------------------------------------ */

/* True for a text as renters send it. */
static bool
is_text(const struct opinion_example *example)
{
    return example->weight != OPINION_PHRASE;
}

static struct words
read_text(const struct sign_index *index, void *arena, const char *text)
{
    return shorthand_expand(arena, vocabulary_shorthand(index->vocabulary),
                            words_read(arena, NULL, text, index->language));
}

/* Cuts a text where a word is none to put others right by; adds the pieces. */
static struct words *
add_pieces(const struct sign_index *index, void *arena, const struct spelling *all,
           struct words text, struct words *pieces, size_t *count)
{
    size_t i, begins = 0;

    for (i = 0; i <= text.count; i++) {
        const char *word = i < text.count ? text.list[i].text : "";
        uint32_t number;
        bool is_word = i < text.count && (vocabulary_has_right(index->vocabulary, word) ||
                                          (spelling_find(all, word, strlen(word), &number) &&
                                           all->words[number].often >= OFTEN));

        if (!is_word && i > begins) {
            pieces = memory_grow(arena, struct words, pieces, *count);
            pieces[(*count)++] = (struct words){text.list + begins, i - begins, text.language};
        }
        begins = is_word ? begins : i + 1;
    }
    return pieces;
}

void
sign_mend_build(struct sign_index *index, const struct ordinary *ordinary)
{
    void *scratch = memory_must(talloc_new(NULL));
    struct words *texts = memory_array(scratch, struct words, index->example_count + 1);
    struct words *pieces = NULL;
    struct spelling all;
    size_t count = 0, piece_count = 0, i;

    for (i = 0; i < index->example_count; i++) {
        if (is_text(&index->examples[i])) {
            texts[count++] = read_text(index, scratch, index->examples[i].line);
        }
    }
    spelling_build(scratch, texts, count, NULL, &all);
    for (i = 0; i < count; i++) {
        pieces = add_pieces(index, scratch, &all, texts[i], pieces, &piece_count);
    }
    spelling_build(index, pieces, piece_count, ordinary, &index->right);
    talloc_free(scratch);
}

/* ---- Mending ------------------------------------------------------------------------------- */

static bool
is_strange(const struct sign_index *index, void *arena, const char *word)
{
    uint32_t number;

    return strlen(word) >= LETTERS_MIN && spelling_is_letters(word) &&
           !spelling_find(&index->right, word, strlen(word), &number) &&
           !ordinary_has(index->right.ordinary, word) &&
           !vocabulary_has(index->vocabulary, arena, word);
}

bool
sign_mend_words(const struct sign_index *index, void *arena, struct words typed,
                struct mended *mended)
{
    size_t strange = 0, foreign = 0, i;

    for (i = 0; i < typed.count; i++) {
        foreign += vocabulary_is_foreign(index->vocabulary, typed.list[i].text);
    }
    if (2 * foreign >= typed.count) {
        return false; /* another language's words are no slips of ours */
    }
    for (i = 0; i < typed.count; i++) {
        strange += is_strange(index, arena, typed.list[i].text);
    }
    if (ONE_OF * strange < typed.count ||
        (strange < STRANGE_MIN && (strange == 0 || foreign > 0 || typed.count > SHORT_TEXT))) {
        return false;
    }
    *mended = (struct mended){spelling_repair(arena, &index->right, typed), typed};
    return true;
}

bool
sign_mended_in(const struct mended *mended, size_t start, size_t end)
{
    const struct words *typed = &mended->typed, *words = &mended->words;
    size_t i, k = 0;

    for (i = 0; i < words->count; i++) {
        const struct word *word = &words->list[i];

        while (k < typed->count && typed->list[k].start < word->start) {
            k++;
        }
        if (word->start >= start && word->end <= end &&
            (k == typed->count || strcmp(typed->list[k].text, word->text) != 0)) {
            return true;
        }
    }
    return false;
}
