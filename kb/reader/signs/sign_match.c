#include "sign_match.h"

#include <string.h>

#include "memory.h"
#include "sign_doubt.h"
#include "sign_mend.h"
#include "sign_weigh.h"

/* ---- One sign in one text ------------------------------------------------------------------ */

/* What a line of a sign is searched for, and what held it back. */
struct wanted {
    struct sign_match *match;
    struct judging *judging;      /* or NULL: whatever phrase is found fires */
    bool is_well_known;           /* the sign, to the second opinion */
    bool fires;                   /* nothing held it back */
    const struct phrase *held_by; /* an open figure of speech, or NULL */
    enum sign_held held;
};

/* The words of the text that a phrase was found on, with all of the last run. */
static struct stretch
found_on(const struct search *search, const struct phrase *phrase, const int *indexes)
{
    const struct heard_word *last = &search->heard.list[indexes[phrase->slot_count - 1]];

    return (struct stretch){indexes[0], last->run_end};
}

static void
set_match(struct sign_match *match, const struct search *search, const struct phrase *phrase,
          struct stretch words)
{
    match->phrase = phrase->line;
    match->by_likeness = false;
    match->start = search->heard.list[words.first].start;
    match->end = search->heard.list[words.last].end;
}

static bool
on_words(struct search *search, const struct phrase *phrase, const int *indexes, void *user)
{
    struct wanted *wanted = user;

    if (!search_is_in_place(search, phrase, indexes)) {
        return false;
    }
    set_match(wanted->match, search, phrase, found_on(search, phrase, indexes));
    return true;
}

/* There is a second opinion on the text. */
static bool
has_opinion(const struct judging *judging)
{
    return judging != NULL && judging->view != NULL;
}

/* A phrase that was found is held back: the opinion is to think twice about its part. */
static void
hold(const struct judging *judging, enum sign_level level, struct stretch phrase)
{
    struct stretch part;

    if (has_opinion(judging)) {
        part = stretch_around(&judging->search.heard, phrase, false, ROLE_BUT);
        opinion_hold(judging->view, level, part.first, part.last);
    }
}

/* The same of the words that a figure of speech covers. */
static void
hold_masked(const struct judging *judging, enum sign_level level)
{
    int i;

    for (i = 0; has_opinion(judging) && i < (int)judging->search.heard.count; i++) {
        if (judging->search.is_masked[i]) {
            opinion_hold(judging->view, level, i, i);
        }
    }
}

/* What holds words that were found back; *figure is the figure of speech that covers them. */
static enum sign_held
held_back(struct search *search, const struct wanted *wanted, const int *indexes, int count,
          struct stretch words, const struct phrase **figure)
{
    *figure = search_said_of(search, indexes, count);
    if (*figure != NULL) {
        return SIGN_EXPLAINED;
    }
    if (is_taken_back(&search->heard, indexes, count)) {
        return SIGN_TAKEN_BACK;
    }
    if (is_long_past(&search->heard, indexes, count)) {
        return SIGN_PAST;
    }
    if (has_opinion(wanted->judging) &&
        !judging_believes(wanted->judging, wanted->match->sign->level, words,
                          wanted->is_well_known)) {
        return SIGN_UNLIKE;
    }
    return SIGN_FIRES;
}

/* No second opinion can take back what was found. */
static bool
is_beyond_doubt(const struct wanted *wanted)
{
    return !has_opinion(wanted->judging) || wanted->judging->stands[wanted->match->sign->level];
}

/* Ends the search once something fires that no second opinion may take back. What holds the first
 * words back is told. */
static bool
on_said(struct search *search, const struct phrase *phrase, const int *indexes, void *user)
{
    struct wanted *wanted = user;
    struct stretch words = found_on(search, phrase, indexes);
    const struct phrase *figure;
    enum sign_held held;

    if (!search_is_in_place(search, phrase, indexes)) {
        return false;
    }
    held = held_back(search, wanted, indexes, phrase->slot_count, words, &figure);
    if (held == SIGN_FIRES) {
        if (!wanted->fires) {
            set_match(wanted->match, search, phrase, words);
        }
        wanted->fires = true;
        return is_beyond_doubt(wanted);
    }
    if (!wanted->fires && held != SIGN_UNLIKE) {
        hold(wanted->judging, wanted->match->sign->level, words);
    }
    if (!wanted->fires && wanted->held == SIGN_FIRES) {
        set_match(wanted->match, search, phrase, words);
        wanted->held = held;
        wanted->held_by = figure;
    }
    return false;
}

/* Which phrases a text has a rare word of, by their numbers; in the search's arena. */
static bool *
find_likely(const struct sign_index *index, const struct search *search)
{
    bool *is_likely = memory_array(search->arena, bool, index->phrase_count + 1);
    size_t i, k;

    for (i = 0; i < search->present_count; i++) {
        int id = search->present[i];

        for (k = index->begins[id]; k < index->begins[id + 1]; k++) {
            is_likely[index->filed[k]] = true;
        }
    }
    return is_likely;
}

/* The first line of the sign that fires; else *wanted tells what held the first one back. */
static bool
find_sign(struct search *search, const struct sign_phrases *signs, const bool *is_likely,
          struct wanted *wanted)
{
    bool is_explained_yet = false;
    size_t i;

    *wanted->match = (struct sign_match){.sign = signs->sign};
    wanted->is_well_known = signs->is_well_known;
    for (i = 0; i < signs->said_as_count; i++) {
        if (!is_likely[signs->first + i] || !search_has_words(search, &signs->said_as[i])) {
            continue;
        }
        if (!is_explained_yet) {
            search_explain(search, signs->not_meant_by, signs->not_meant_by_count);
            hold_masked(wanted->judging, signs->sign->level);
            is_explained_yet = true;
        }
        if (search_each(search, &signs->said_as[i], on_said, wanted)) {
            break;
        }
    }
    wanted->held = wanted->fires ? SIGN_FIRES : wanted->held;
    return wanted->fires;
}

/* ---- All signs in one text ----------------------------------------------------------------- */

/* Adds what the second opinion finds on levels that no phrase has found; returns how many there are
 * then. Beside an emergency it adds nothing. */
static size_t
add_like(struct judging *judging, struct sign_match *matches, size_t count, size_t room)
{
    int level;

    for (level = OPINION_LEVELS - 1;
         judging->view != NULL && level >= 0 && !judging->fires[SIGN_EMERGENCY]; level--) {
        if (count < room && !judging->fires[level] &&
            (level == SIGN_EMERGENCY || !judging->is_foreign) &&
            judging_is_like(judging, (enum sign_level)level, &matches[count])) {
            judging->fires[matches[count++].sign->level] = true;
        }
    }
    return count;
}

/* Keeps in mind what became of a sign's phrases. */
static void
note(struct judging *judging, enum sign_level level, enum sign_held held, bool fires)
{
    judging->fires[level] = judging->fires[level] || fires;
    judging->is_held[level] =
        judging->is_held[level] || (held != SIGN_FIRES && held != SIGN_UNLIKE);
}

/* Leaves out the signs of levels that only phrases speak for; returns how many are left. */
static size_t
without_unlike(struct judging *judging, struct sign_match *matches, size_t count)
{
    bool is_unlike[OPINION_LEVELS];
    size_t kept = 0, i;

    judging_take_back(judging, is_unlike);
    for (i = 0; i < count; i++) {
        if (!is_unlike[matches[i].sign->level]) {
            matches[kept++] = matches[i];
        }
    }
    return kept;
}

/* Adds what one reading of a text shows; returns how many there are then. */
static size_t
find_in(const struct sign_index *index, struct judging *judging, struct sign_match *matches,
        size_t room)
{
    bool *is_likely = find_likely(index, &judging->search);
    size_t count = 0, i;

    for (i = 0; i < index->count && count < room; i++) {
        struct wanted wanted = {.match = &matches[count], .judging = judging};
        bool fires = find_sign(&judging->search, &index->signs[i], is_likely, &wanted);

        note(judging, index->signs[i].sign->level, wanted.held, fires);
        count += fires;
    }
    return add_like(judging, matches, without_unlike(judging, matches, count), room);
}

/* Adds what a misspelt text shows once it is mended, if a word that was put right is part of it;
 * returns how many there are. */
static size_t
find_mended(const struct sign_index *index, struct workspace *workspace,
            const struct mended *mended, bool is_asked, struct sign_match *matches, size_t room)
{
    struct judging judging;
    size_t count, kept = 0, i;

    judging_begin(&judging, index, workspace, mended->words, is_asked);
    count = find_in(index, &judging, matches, room);
    for (i = 0; i < count; i++) {
        if (sign_mended_in(mended, matches[i].start, matches[i].end)) {
            matches[kept++] = matches[i];
        }
    }
    talloc_free(judging.search.arena);
    return kept;
}

size_t
sign_index_find(const struct sign_index *index, struct workspace *workspace, struct words words,
                bool is_asked, struct sign_match *matches, size_t room)
{
    struct judging judging;
    struct mended mended;
    size_t count;

    judging_begin(&judging, index, workspace, words, is_asked);
    count = find_in(index, &judging, matches, room);
    if (!judging.fires[SIGN_EMERGENCY] &&
        sign_mend_words(index, judging.search.arena, words, &mended)) {
        count += find_mended(index, workspace, &mended, is_asked, matches + count, room - count);
    }
    talloc_free(judging.search.arena);
    return count;
}

/* The first phrase of a list whose words stand in the text; false if none does. */
static bool
any_words(struct search *search, const struct phrase *phrases, size_t count, struct wanted *wanted)
{
    while (count > 0 && !search_each(search, phrases, on_words, wanted)) {
        phrases++;
        count--;
    }
    return count > 0;
}

/* True if there is something to tell of the sign; what became of its phrases is noted. */
static bool
explain_sign(struct judging *judging, const struct sign_phrases *signs, const bool *is_likely,
             struct sign_explained *explained)
{
    struct search *search = &judging->search;
    struct sign_match figure = {0};
    struct wanted wanted = {.match = &explained->match, .judging = judging};
    struct wanted by = {.match = &figure};
    bool fires;

    *explained = (struct sign_explained){.held = SIGN_FIRES};
    fires = find_sign(search, signs, is_likely, &wanted);
    note(judging, signs->sign->level, wanted.held, fires);
    if (fires) {
        return true;
    }
    explained->held = wanted.held;
    explained->explained_by = wanted.held_by == NULL ? NULL : wanted.held_by->line;
    if (wanted.held != SIGN_FIRES) {
        return true;
    }
    search_unexplain(search); /* what the figures of speech cover */
    if (!any_words(search, signs->said_as, signs->said_as_count, &wanted)) {
        return false;
    }
    any_words(search, signs->not_meant_by, signs->not_meant_by_count, &by);
    explained->held = SIGN_EXPLAINED;
    explained->explained_by = figure.phrase;
    return true;
}

/* The same of what is explained: they were held back. */
static void
hold_unlike(struct judging *judging, struct sign_explained *explained, size_t count)
{
    bool is_unlike[OPINION_LEVELS];
    size_t i;

    judging_take_back(judging, is_unlike);
    for (i = 0; i < count; i++) {
        if (is_unlike[explained[i].match.sign->level] && explained[i].held == SIGN_FIRES) {
            explained[i].held = SIGN_UNLIKE;
        }
    }
}

/* Adds what became of the signs in one reading of a text; returns how many there are. */
static size_t
explain_in(const struct sign_index *index, struct judging *judging,
           struct sign_explained *explained, size_t room)
{
    bool *is_likely = find_likely(index, &judging->search);
    struct sign_match like[OPINION_LEVELS];
    size_t count = 0, likes, i;

    for (i = 0; i < index->count && count < room; i++) {
        count += explain_sign(judging, &index->signs[i], is_likely, &explained[count]);
    }
    hold_unlike(judging, explained, count);
    likes = add_like(judging, like, 0, OPINION_LEVELS);
    for (i = 0; i < likes && count < room; i++) {
        explained[count++] = (struct sign_explained){like[i], SIGN_LIKE, NULL};
    }
    return count;
}

size_t
sign_index_explain(const struct sign_index *index, struct workspace *workspace, struct words words,
                   bool is_asked, struct sign_explained *explained, size_t room)
{
    struct judging judging;
    struct mended mended;
    size_t count, i;

    judging_begin(&judging, index, workspace, words, is_asked);
    count = explain_in(index, &judging, explained, room);
    if (!judging.fires[SIGN_EMERGENCY] &&
        sign_mend_words(index, judging.search.arena, words, &mended)) {
        struct sign_match matches[SIGNS_A_LANGUAGE_MAX];
        size_t left = room - count < SIGNS_A_LANGUAGE_MAX ? room - count : SIGNS_A_LANGUAGE_MAX;
        size_t found = find_mended(index, workspace, &mended, is_asked, matches, left);

        for (i = 0; i < found; i++) {
            explained[count++] =
                (struct sign_explained){matches[i], SIGN_FIRES + matches[i].by_likeness, NULL};
        }
    }
    talloc_free(judging.search.arena);
    return count;
}

bool
sign_index_fires(const struct sign_index *index, struct workspace *workspace,
                 const struct sign_phrases *signs, struct words words)
{
    struct sign_match match;
    struct wanted wanted = {.match = &match};
    struct search search;
    bool fires;

    search_begin(&search, index->vocabulary, workspace, words);
    fires = find_sign(&search, signs, find_likely(index, &search), &wanted);
    talloc_free(search.arena);
    return fires;
}
