#include "sign_match.h"

#include <stdbool.h>
#include <string.h>

#include "memory.h"
#include "sign_doubt.h"
#include "sign_match_inside.h"
#include "sign_search.h"

/* ---- One sign in one text ------------------------------------------------------------------ */

/* What a line of a sign is searched for, and what held it back. */
struct wanted {
    struct sign_match *match;
    const struct phrase *held_by; /* an open figure of speech, or NULL */
    enum sign_held held;
};

static bool
on_words(struct search *search, const struct phrase *phrase, const int *indexes, void *user)
{
    struct wanted *wanted = user;
    const struct heard_word *last = &search->heard.list[indexes[phrase->slot_count - 1]];

    if (!search_is_in_place(search, phrase, indexes)) {
        return false;
    }
    wanted->match->phrase = phrase->line;
    wanted->match->start = search->heard.list[indexes[0]].start;
    wanted->match->end = search->heard.list[last->run_end].end;
    return true;
}

/* True unless something holds the words back; then wanted tells what. */
static bool
on_said(struct search *search, const struct phrase *phrase, const int *indexes, void *user)
{
    struct wanted *wanted = user;
    const struct phrase *figure = search_said_of(search, indexes, phrase->slot_count);
    enum sign_held held = SIGN_FIRES;

    if (!search_is_in_place(search, phrase, indexes)) {
        return false;
    }
    if (figure != NULL) {
        held = SIGN_EXPLAINED;
    } else if (is_taken_back(&search->heard, indexes, phrase->slot_count)) {
        held = SIGN_TAKEN_BACK;
    } else if (is_long_past(&search->heard, indexes, phrase->slot_count)) {
        held = SIGN_PAST;
    }
    if (held == SIGN_FIRES) {
        return on_words(search, phrase, indexes, user);
    }
    if (wanted->held == SIGN_FIRES) { /* the first reason is told */
        wanted->held = held;
        wanted->held_by = figure;
        on_words(search, phrase, indexes, user);
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
    for (i = 0; i < signs->said_as_count; i++) {
        if (!is_likely[signs->first + i] || !search_has_words(search, &signs->said_as[i])) {
            continue;
        }
        if (!is_explained_yet) {
            search_explain(search, signs->not_meant_by, signs->not_meant_by_count);
            is_explained_yet = true;
        }
        if (search_each(search, &signs->said_as[i], on_said, wanted)) {
            wanted->held = SIGN_FIRES;
            return true;
        }
    }
    return false;
}

/* True if a sign of this level or above is among the matches: a second opinion adds nothing. */
static bool
has_level(const struct sign_match *matches, size_t count, int level)
{
    size_t i;

    for (i = 0; i < count; i++) {
        if ((int)matches[i].sign->level == level || matches[i].sign->level == SIGN_EMERGENCY) {
            return true;
        }
    }
    return false;
}

/* Adds what the second opinion finds and no phrase found or had to hold back; returns how many
 * there are then. */
static size_t
add_opinion(const struct sign_index *index, struct search *search, const struct held_back *held,
            struct sign_match *matches, size_t count, size_t room)
{
    struct opinion_finding findings[OPINION_LEVELS];
    int level;

    if (index->opinion == NULL || has_level(matches, count, SIGN_EMERGENCY)) {
        return count;
    }
    opinion_find(index->opinion, search->arena, &search->heard, findings);
    for (level = OPINION_LEVELS - 1; level >= 0; level--) {
        const struct opinion_finding *finding = &findings[level];

        if (finding->nearest != NULL && count < room && !has_level(matches, count, level) &&
            !opinion_was_held(finding, &search->heard, held)) {
            matches[count++] = (struct sign_match){finding->nearest->sign, finding->nearest->line,
                                                   search->heard.list[finding->first].start,
                                                   search->heard.list[finding->last].end};
        }
    }
    return count;
}

size_t
sign_index_find(const struct sign_index *index, struct workspace *workspace, struct words words,
                struct sign_match *matches, size_t room)
{
    struct search search;
    struct held_back held = {0};
    size_t count = 0, i;
    bool *is_likely;

    search_begin(&search, index->vocabulary, workspace, words);
    held.list = memory_array(search.arena, struct sign_match, index->count + 1);
    held.is_figure = search.is_figure;
    is_likely = find_likely(index, &search);
    for (i = 0; i < index->count && count < room; i++) {
        struct wanted wanted = {.match = &matches[count]};

        if (find_sign(&search, &index->signs[i], is_likely, &wanted)) {
            count++;
        } else if (wanted.held != SIGN_FIRES) {
            held.list[held.count++] = *wanted.match;
        }
    }
    count = add_opinion(index, &search, &held, matches, count, room);
    talloc_free(search.arena);
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

static bool
explain_sign(struct search *search, const struct sign_phrases *signs, const bool *is_likely,
             struct sign_explained *explained)
{
    struct sign_match figure = {0};
    struct wanted wanted = {.match = &explained->match}, by = {.match = &figure};

    *explained = (struct sign_explained){.held = SIGN_FIRES};
    if (find_sign(search, signs, is_likely, &wanted)) {
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

size_t
sign_index_explain(const struct sign_index *index, struct workspace *workspace, struct words words,
                   struct sign_explained *explained, size_t room)
{
    struct sign_match *matches = memory_array(NULL, struct sign_match, room + 1);
    struct search search;
    struct held_back held = {0};
    size_t count = 0, fired = 0, all, i;
    bool *is_likely;

    search_begin(&search, index->vocabulary, workspace, words);
    held.list = memory_array(search.arena, struct sign_match, index->count + 1);
    held.is_figure = search.is_figure;
    is_likely = find_likely(index, &search);
    for (i = 0; i < index->count && count < room; i++) {
        if (explain_sign(&search, &index->signs[i], is_likely, &explained[count])) {
            if (explained[count].held == SIGN_FIRES) {
                matches[fired++] = explained[count].match;
            } else {
                held.list[held.count++] = explained[count].match;
            }
            count++;
        }
    }
    all = add_opinion(index, &search, &held, matches, fired, room - count + fired);
    for (i = fired; i < all; i++) {
        explained[count++] = (struct sign_explained){matches[i], SIGN_LIKE, NULL};
    }
    talloc_free(search.arena);
    talloc_free(matches);
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
