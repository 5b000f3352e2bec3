/*
 * How near a word must be hangs on its length: in a short one only letters that changed places or
 * lost their double are plain slips. Spanish has more words than our list, and their endings tell
 * person and number, so that there a wrong letter is rather another word.
 */
#include "mending.h"

#include <string.h>

#include "memory.h"
#include "number_words.h"
#include "slip.h"
#include "sound.h"
#include "spelling.h"

enum {
    SHORTEST = 3,
    LONGEST = 20,
    SLIPS_MAX = 32, /* of one text; the others stay as they are */
    FIRST_FROM = 5, /* from here on the first letter may be the one that is wrong */
    LETTER_FROM = 5,
    LESS_FROM = 4,
    SPANISH_LETTER_FROM = 6
};

/* How near two words are; the smaller, the nearer. */
enum nearness { NEAR_SOUND, NEAR_FINGER, NEAR_FINGER_FIRST, NEAR_ONE_LETTER, NEAR_WRONG, NEAR_NOT };

/* A misspelt word on its way to what is meant. */
struct search {
    enum language language;
    struct token *token;
    const char *typed, *sound; /* the sound of Spanish, else NULL */
    size_t length;
    enum nearness best;
    char found[LONGEST + 2];
    bool is_right;            /* the reader knows the word as it stands */
    bool several;             /* another word is as near as that */
    char number[LONGEST + 2]; /* a number word that is a slip away */
    bool numbers;             /* another one is too */
};

/* First letters that may stand for one sound; an h is silent. */
static bool
may_sound_alike(const char *one, const char *other)
{
    static const char *const alike[] = {"bv", "szxc", "ckq", "yl", "jg"};
    size_t i;

    if (*one == 'h' || *other == 'h') {
        return one[*one == 'h'] == other[*other == 'h'];
    }
    for (i = 0; i < sizeof alike / sizeof alike[0]; i++) {
        if (strchr(alike[i], *one) != NULL && strchr(alike[i], *other) != NULL) {
            return true;
        }
    }
    return false;
}

/* Spares most words the comparison. */
static bool
may_be_near(const struct search *search, const char *known)
{
    const char *typed = search->typed;

    return typed[0] == known[0] || (typed[0] == known[1] && typed[1] == known[0]) ||
           (search->sound != NULL && may_sound_alike(typed, known));
}

/* "whats", "bars": one more or less at the end is a form of the word, no slip. */
static bool
is_other_form(const char *one, const char *other)
{
    size_t a = strlen(one), b = strlen(other);

    return a != b && (a > b ? one : other)[(a > b ? a : b) - 1] == 's' &&
           strncmp(one, other, a < b ? a : b) == 0;
}

static enum nearness
by_letter(const struct search *search, enum slip_kind slip, const char *known)
{
    bool spanish = search->language == LANGUAGE_ES, less = slip == SLIP_LETTER_LESS;
    size_t from = spanish ? SPANISH_LETTER_FROM : less ? LESS_FROM : LETTER_FROM;

    if (search->typed[0] != known[0] || search->length < from || (spanish && !less) ||
        is_other_form(search->typed, known)) {
        return NEAR_NOT;
    }
    return slip == SLIP_WRONG_LETTER ? NEAR_WRONG : NEAR_ONE_LETTER;
}

static enum nearness
nearness_of(const struct search *search, enum slip_kind slip, const struct lexicon_word *word)
{
    const char *known = word->text;

    if (search->sound != NULL && strcmp(search->sound, word->sound) == 0) {
        return NEAR_SOUND;
    }
    switch (slip) {
    case SLIP_NONE:
        return NEAR_NOT;
    case SLIP_SWAP:
    case SLIP_DOUBLE:
        if (search->typed[0] != known[0]) {
            return search->length < FIRST_FROM ? NEAR_NOT : NEAR_FINGER_FIRST;
        }
        if (search->language == LANGUAGE_ES &&
            (slip == SLIP_DOUBLE || search->length < FIRST_FROM)) {
            return NEAR_NOT; /* the sound has told: "cerro" is not "cero" */
        }
        return NEAR_FINGER;
    case SLIP_LETTER_LESS:
    case SLIP_LETTER_MORE:
    case SLIP_WRONG_LETTER:
        break;
    }
    return by_letter(search, slip, known);
}

static void
count_number(struct search *search, const char *known)
{
    search->numbers =
        search->numbers || (search->number[0] != '\0' && strcmp(search->number, known) != 0);
    memcpy(search->number, known, strlen(known) + 1);
}

/* One word of the reader: is it what was meant? */
static void
weigh(struct search *search, const struct lexicon_word *word)
{
    const char *known = word->text;
    enum slip_kind slip = slip_between(search->typed, known);
    enum nearness near = nearness_of(search, slip, word);

    if (slip == SLIP_NONE && near == NEAR_NOT) {
        return;
    }
    if (word->is_number) {
        count_number(search, known);
    }
    if (near == NEAR_NOT || near > search->best ||
        (near == search->best && strcmp(search->found, known) == 0) ||
        (search->language == LANGUAGE_EN && !word->is_right)) {
        return; /* the tables have misspellings too: what is meant is a right word */
    }
    search->several = near == search->best;
    search->best = near;
    memcpy(search->found, known, strlen(known) + 1);
}

static bool
may_be_slip(const struct kb *kb, enum language language, const struct token *token)
{
    size_t length = strlen(token->text);

    return token->kind == TOKEN_WORD && !token->used && length >= SHORTEST && length <= LONGEST &&
           token->end - token->start == length && spelling_is_letters(token->text) &&
           !kb_is_ordinary(kb, token->text, language);
}

/* The words that may be slips. */
static size_t
find_slips(void *scratch, const struct kb *kb, enum language language, struct tokens *tokens,
           struct search *searches)
{
    size_t count = 0, i;

    for (i = 0; i < tokens->count && count < SLIPS_MAX; i++) {
        struct token *token = &tokens->list[i];

        if (may_be_slip(kb, language, token)) {
            searches[count++] = (struct search){
                .language = language,
                .token = token,
                .typed = token->text,
                .length = strlen(token->text),
                .sound = language == LANGUAGE_ES ? sound_of(scratch, token->text, language) : NULL,
                .best = NEAR_NOT};
        }
    }
    return count;
}

/* Compares it with all words of the reader that have so many letters. */
static void
compare(struct search *search, const struct lexicon *lexicon, size_t length)
{
    size_t count, i;
    const struct lexicon_word *words = lexicon_words(lexicon, length, &count);

    for (i = 0; i < count && !search->is_right; i++) {
        if (!may_be_near(search, words[i].text)) {
            continue;
        }
        if (strcmp(search->typed, words[i].text) == 0) {
            search->is_right = true;
        } else if (words[i].of[search->language]) {
            weigh(search, &words[i]);
        }
    }
}

static bool
is_sure(const struct search *search)
{
    int value;

    return !search->is_right && search->best != NEAR_NOT && !search->several &&
           (number_word(search->found, &value) == NUMBER_WORD_NONE ||
            (!search->numbers && search->best != NEAR_WRONG));
}

bool
mend_words(void *arena, const struct lexicon *lexicon, enum language language,
           struct tokens *tokens)
{
    void *scratch = memory_must(talloc_new(arena));
    struct search *searches = memory_array(scratch, struct search, SLIPS_MAX);
    const struct kb *kb = lexicon_kb(lexicon);
    size_t count = kb == NULL ? 0 : find_slips(scratch, kb, language, tokens, searches), i;
    bool mended = false;

    for (i = 0; i < count; i++) {
        struct search *search = &searches[i];
        size_t length = search->length > SHORTEST ? search->length - 1 : SHORTEST;

        for (; length <= search->length + 1; length++) {
            compare(search, lexicon, length);
        }
        if (is_sure(search)) {
            search->token->text = memory_copy(arena, search->found);
            mended = true;
        }
    }
    talloc_free(scratch);
    return mended;
}
