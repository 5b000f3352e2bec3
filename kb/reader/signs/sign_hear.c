/* Hearing a text with the vocabulary of the signs; the vocabulary itself is in sign_vocabulary.c.
 */
#include <string.h>

#include "memory.h"
#include "shorthand.h"
#include "sign_slips.h"
#include "sign_vocabulary_inside.h"
#include "sound.h"

/* A word of the text and what is known of it. */
struct looked_up {
    const struct sign_form *form; /* NULL: the content has no such word */
    const char *text, *stem;
    int id;
};

/* A text on its way from words to heard words. */
struct hearing {
    const struct vocabulary *vocabulary;
    void *arena;
    struct workspace *workspace;
    struct words words;
    struct looked_up *looked_up; /* of each word */
    bool is_ours;                /* most words are of this language */
    struct heard heard;
};

/* Looks up a word as it is spelt. */
static struct looked_up
look_up(struct hearing *hearing, const char *spelt)
{
    const struct vocabulary *vocabulary = hearing->vocabulary;
    struct looked_up found = {.id = -1};
    size_t length = strlen(spelt);

    if (vocabulary->is_closed) {
        found.form = vocabulary_form(vocabulary, spelt, length);
    }
    if (vocabulary->is_closed && found.form == NULL && length > 4 && spelt[length - 1] == 's') {
        found.form = vocabulary_form(vocabulary, spelt, length - 1); /* "Fleming's" */
    }
    if (found.form != NULL) {
        return (struct looked_up){found.form, found.form->text, found.form->stem, found.form->id};
    }
    found.text = sound_of(hearing->arena, spelt, vocabulary->language);
    found.stem = words_stem(hearing->arena, hearing->workspace, found.text, vocabulary->language);
    if (vocabulary->is_closed) {
        found.id = vocabulary_id_of(vocabulary, found.text, found.stem);
    }
    return found;
}

/* The next heard word, spelt so, with the place in the text of one that was read. */
static struct heard_word *
put(struct hearing *hearing, const struct word *read, const char *spelt,
    const struct looked_up *found)
{
    struct heard_word *word = &hearing->heard.list[hearing->heard.count];

    word->spelt = spelt;
    word->text = found->text;
    word->stem = found->stem;
    word->roles = found->form != NULL ? found->form->roles
                                      : roles_of(hearing->vocabulary->roles, found->text);
    word->start = read->start;
    word->end = read->end;
    word->sentence = read->sentence;
    word->comma_before = read->comma_before;
    word->run_end = (int)hearing->heard.count;
    hearing->heard.count++;
    if (found->id >= 0) {
        vocabulary_mean(hearing->vocabulary, word, found->id);
    }
    return word;
}

/* A word whose blanks were lost becomes several; false if it is none. */
static bool
put_cut(struct hearing *hearing, const struct word *read, const struct looked_up *found)
{
    size_t ends[SLIPS_PIECES_MAX] = {0}, begin = 0;
    int pieces = slips_cut(hearing->vocabulary, found->text, ends), i;

    for (i = 0; i < pieces; i++) {
        const char *piece = memory_copy_n(hearing->arena, found->text + begin, ends[i] - begin);
        struct looked_up piece_found = look_up(hearing, piece);
        struct heard_word *word = put(hearing, read, piece, &piece_found);

        word->comma_before = i == 0 && read->comma_before;
        begin = ends[i];
    }
    return pieces > 0;
}

/* Two words with a stray blank between them are also the one that they make. */
static void
mend_blank(struct hearing *hearing, const struct word *first, const struct word *second,
           struct heard_word *word)
{
    const struct sign_spelling *spelling;
    const char *both;

    if (second->sentence != first->sentence) {
        return;
    }
    both =
        sound_of(hearing->arena, memory_format(hearing->arena, "%s%s", first->text, second->text),
                 hearing->vocabulary->language);
    spelling = vocabulary_spelling(hearing->vocabulary, both, strlen(both));
    if (spelling != NULL && spelling->may_slip) {
        vocabulary_mean(hearing->vocabulary, word, spelling->id);
        word->run_end = (int)(word - hearing->heard.list) + 1;
    }
}

/* True if the content has no such word at all: a slip, or a piece of one. */
static bool
is_strange(const struct looked_up *found)
{
    return found->form == NULL && found->id < 0;
}

/* True if the word may be a misspelling that a phrase lists: where so many words are known to be
 * right that any other may be wrong. */
static bool
is_listed_slip(const struct hearing *hearing, const struct looked_up *found)
{
    enum { RIGHT_MIN = 8000 };

    return hearing->vocabulary->right_count >= RIGHT_MIN && found->form != NULL &&
           !found->form->is_spelt_right && !found->form->is_foreign && found->form->roles == 0;
}

/* The one word that the word at `at` (and the next: *taken is 2) is also written as, or NULL. */
static const char *
pair_of(const struct hearing *hearing, size_t at, size_t *taken)
{
    const struct vocabulary *vocabulary = hearing->vocabulary;
    const struct word *first = &hearing->words.list[at];
    const struct sign_form *form = hearing->looked_up[at].form;
    const char *one = NULL;

    *taken = 1;
    if (vocabulary->is_closed && (form == NULL || !form->may_pair)) {
        return NULL;
    }
    if (at + 1 < hearing->words.count && first[1].sentence == first->sentence) {
        one = roles_pair(vocabulary->language, first->text, first[1].text);
    }
    if (one != NULL) {
        *taken = 2;
        return one;
    }
    return roles_pair(vocabulary->language, first->text, NULL);
}

/* How many of some words are of this language alone, and of another one alone. */
struct whose {
    size_t own, foreign;
};

static void
count_word(const struct hearing *hearing, size_t at, struct whose *whose)
{
    const struct sign_form *form = hearing->looked_up[at].form;

    whose->own += form != NULL && !form->is_foreign && !form->is_shared;
    whose->foreign += form != NULL && form->is_foreign;
}

/* Unless most words are of this language, none is a slip of ours, and figures are read by the other
 * ("cuarto 911"). */
static void
tell_whose(struct hearing *hearing)
{
    struct whose whose = {0, 0};
    size_t i;

    for (i = 0; i < hearing->words.count; i++) {
        count_word(hearing, i, &whose);
    }
    hearing->is_ours = whose.foreign <= whose.own;
}

/* If nearly all words of a sentence are another language's, what stands in both is theirs too ("mi
 * tia"), while "my dad no puede breathe" is a bit of both. */
static bool
is_theirs(const struct hearing *hearing, size_t at)
{
    enum { NEARLY_ALL = 3 }; /* times as many */
    const struct word *list = hearing->words.list;
    struct whose whose = {0, 0};
    size_t i;

    for (i = at; i > 0 && list[i - 1].sentence == list[at].sentence; i--) {
    }
    for (; i < hearing->words.count && list[i].sentence == list[at].sentence; i++) {
        count_word(hearing, i, &whose);
    }
    return whose.foreign > NEARLY_ALL * whose.own;
}

/* True for a word of a text in another language that says nothing in this one. */
static bool
says_nothing(const struct hearing *hearing, size_t at)
{
    const struct word *word = &hearing->words.list[at];
    const struct sign_form *form = hearing->looked_up[at].form;

    return (word->text[0] >= '0' && word->text[0] <= '9') ||
           (form != NULL && form->is_shared && is_theirs(hearing, at));
}

/* Hears a word of a text in another language. */
static void
hear_theirs(struct hearing *hearing, size_t at)
{
    const struct word *word = &hearing->words.list[at];
    struct looked_up heard = hearing->looked_up[at];

    heard.id = says_nothing(hearing, at) ? -1 : heard.id;
    put(hearing, word, word->text, &heard);
}

/* Hears the word at `at`; returns how many words of the text it took. */
static size_t
hear_word(struct hearing *hearing, size_t at)
{
    const struct word *first = &hearing->words.list[at];
    const struct looked_up *found = &hearing->looked_up[at];
    struct heard_word *word;
    const char *one;
    size_t taken;

    one = pair_of(hearing, at, &taken);
    if (one != NULL) {
        struct looked_up of_pair = look_up(hearing, one);

        word = put(hearing, first, one, &of_pair);
        word->end = first[taken - 1].end;
        return taken;
    }
    if (!hearing->vocabulary->is_closed) {
        put(hearing, first, first->text, found);
        return 1;
    }
    if (!hearing->is_ours) {
        hear_theirs(hearing, at);
        return 1;
    }
    if (is_strange(found) && put_cut(hearing, first, found)) {
        return 1;
    }
    word = put(hearing, first, first->text, found);
    if (is_strange(found) && word->roles == 0) {
        slips_add(hearing->vocabulary, hearing->arena, word);
    } else if (is_listed_slip(hearing, found)) {
        slips_add_to_listed(hearing->vocabulary, word);
    }
    if (at + 1 < hearing->words.count &&
        (is_strange(found) || is_strange(&hearing->looked_up[at + 1]))) {
        mend_blank(hearing, first, first + 1, word);
    }
    return 1;
}

static bool
means(const struct heard_word *word, int id)
{
    int i;

    for (i = 0; i < word->meaning_count; i++) {
        if (word->meanings[i] == id) {
            return true;
        }
    }
    return false;
}

/* True if the several words begin at the heard word `at`. */
static bool
run_begins(const struct heard *heard, const struct sign_run *run, size_t at)
{
    int k;

    if (at + (size_t)run->count > heard->count) {
        return false;
    }
    for (k = 0; k < run->count; k++) {
        const struct heard_word *word = &heard->list[at + (size_t)k];

        if (!means(word, run->ids[k]) || word->sentence != heard->list[at].sentence ||
            (k > 0 && word->comma_before)) {
            return false;
        }
    }
    return true;
}

/* The first of the runs that begin with this id; run_count if there is none. */
static size_t
first_run(const struct vocabulary *vocabulary, int id)
{
    size_t low = 0, high = vocabulary->run_count;

    while (low < high) {
        size_t middle = low + (high - low) / 2;

        if (vocabulary->runs[middle].ids[0] < id) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low;
}

/* Takes a word for the several words that begin with it; what it means by itself stays so. */
static void
mean_run(const struct vocabulary *vocabulary, struct heard_word *word, const struct sign_run *run)
{
    int i = word->meaning_count;

    vocabulary_mean(vocabulary, word, run->id);
    for (; i < word->meaning_count; i++) {
        word->more[i] = run->count - 1;
    }
}

/* Adds to the word at `at` what several words from there on mean. */
static void
hear_runs_at(struct hearing *hearing, size_t at)
{
    const struct vocabulary *vocabulary = hearing->vocabulary;
    struct heard_word *word = &hearing->heard.list[at];
    int meanings = word->meaning_count, i;
    size_t r;

    for (i = 0; i < meanings; i++) {
        for (r = first_run(vocabulary, word->meanings[i]);
             r < vocabulary->run_count && vocabulary->runs[r].ids[0] == word->meanings[i]; r++) {
            const struct sign_run *run = &vocabulary->runs[r];
            int end = (int)at + run->count - 1;

            if (run_begins(&hearing->heard, run, at)) {
                mean_run(vocabulary, word, run);
                word->run_end = end > word->run_end ? end : word->run_end;
            }
        }
    }
}

static void
hear_runs(struct hearing *hearing)
{
    struct heard *heard = &hearing->heard;
    size_t i;
    int k;

    for (i = 0; i < heard->count; i++) {
        hear_runs_at(hearing, i);
        for (k = (int)i + 1; k <= heard->list[i].run_end && k < (int)heard->count; k++) {
            heard->list[k].is_in_run = true;
        }
    }
}

struct heard
vocabulary_hear(const struct vocabulary *vocabulary, void *arena, struct workspace *workspace,
                struct words words)
{
    struct hearing hearing = {.vocabulary = vocabulary, .arena = arena, .workspace = workspace};
    size_t at = 0, i;

    hearing.words = shorthand_expand(arena, vocabulary->shorthand, words);
    hearing.looked_up = memory_array(arena, struct looked_up, hearing.words.count + 1);
    for (i = 0; i < hearing.words.count; i++) {
        hearing.looked_up[i] = look_up(&hearing, hearing.words.list[i].text);
    }
    tell_whose(&hearing);
    hearing.heard.list =
        memory_array(arena, struct heard_word, SLIPS_PIECES_MAX * hearing.words.count + 1);
    while (at < hearing.words.count) {
        at += hear_word(&hearing, at);
    }
    if (vocabulary->is_closed) {
        hear_runs(&hearing);
    }
    return hearing.heard;
}

struct heard
vocabulary_hear_text(const struct vocabulary *vocabulary, void *arena, struct workspace *workspace,
                     const char *text)
{
    return vocabulary_hear(vocabulary, arena, workspace,
                           words_read(arena, NULL, text, vocabulary->language));
}
