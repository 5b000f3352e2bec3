#include "sign_match.h"

#include <stdbool.h>
#include <string.h>

#include "memory.h"
#include "sign_doubt.h"
#include "sign_match_inside.h"
#include "sign_search.h"

/* ---- Weighing the evidence ------------------------------------------------------------------ */

/*
 * What speaks against a phrase in a part of a sentence that is like a sign where the sentence and
 * the text are not, in units of the opinion's decision: of the best of several parts less is to be
 * believed. Chosen on unseen texts (sign_match.h).
 */
static const float part_doubt = 1.2f;
static const float phrase_says = 0.2f;

enum { ALONE_WORDS = 3 }; /* of a sentence beside a phrase that take nothing from it */

/* What speaks against any sign in a text that is mostly a figure of speech. */
static const float figure_says = 2.5f;

/* What speaks against more than a phrase of another level says. */
static const float little_said = 0.3f;

/* How much likelier another level must be for words to be taken for that alone. */
static const float in_doubt = 0.1f;

/* What speaks against an emergency that only the opinion of another language finds: it was learnt
 * from texts in which the words of this one are few. Of anything else it is not asked. */
static const float foreign_doubt = 3;

/* The text as it is judged. */
struct judging {
    struct search search;
    struct opinion_view *view;    /* or NULL: the phrases alone decide */
    bool is_asked;                /* a topic is surely asked for */
    bool is_foreign;              /* its commonest words are another language's than the index's */
    bool is_held[OPINION_LEVELS]; /* a sign of the level was held back */
    bool fires[OPINION_LEVELS];
};

static void
judging_begin(struct judging *judging, const struct sign_index *index, struct workspace *workspace,
              struct words words, bool is_asked)
{
    enum language spoken = index->language;

    *judging = (struct judging){.is_asked = is_asked};
    judging->is_foreign = words_told_language(&words, &spoken) && spoken != index->language;
    search_begin(&judging->search, index->vocabulary, workspace, words);
    judging->view = opinion_of(index->opinion, judging->search.arena, &judging->search.heard);
    if (judging->view != NULL && is_asked) {
        opinion_ask(judging->view);
    }
}

/* Some words of the text. */
struct stretch {
    int first, last;
};

/* A word and the one behind it belong together: of one sentence, no comma between them unless
 * `over_commas`. */
static bool
are_joined(const struct heard_word *left, bool over_commas)
{
    return left[1].sentence == left->sentence && (over_commas || !left[1].comma_before);
}

/* It begins something else; "el" may as well be an article. */
static bool
is_bound(const struct heard_word *word, unsigned bounds)
{
    return (word->roles & bounds) != 0 && (word->roles & ROLE_ARTICLE) == 0;
}

/* The words widened as far as they are joined and none has one of the roles. */
static struct stretch
around(const struct heard *heard, struct stretch words, bool over_commas, unsigned bounds)
{
    const struct heard_word *list = heard->list;

    while (words.first > 0 && are_joined(&list[words.first - 1], over_commas) &&
           !is_bound(&list[words.first - 1], bounds)) {
        words.first--;
    }
    while (words.last + 1 < (int)heard->count && are_joined(&list[words.last], over_commas) &&
           !is_bound(&list[words.last + 1], bounds)) {
        words.last++;
    }
    return words;
}

/* True if the words are more like a sign of the level than that. */
static bool
are_like(const struct judging *judging, enum sign_level level, struct stretch words, float doubt)
{
    return opinion_on_words(judging->view, level, words.first, words.last) > doubt;
}

/* The words are the phrase with a few more. */
static bool
is_hardly_more(struct stretch words, struct stretch phrase)
{
    return words.last - words.first <= phrase.last - phrase.first + ALONE_WORDS;
}

/* What a surely asked topic speaks against a phrase of the level: against no emergency's. */
static float
asked_doubt_of_phrase(const struct judging *judging, enum sign_level level)
{
    return judging->is_asked && level != SIGN_EMERGENCY ? opinion_asked_doubt(level) : 0;
}

/* True if the text as a whole may well be a sign of the level, of which a phrase was found in it.
 */
static bool
may_be_like(const struct judging *judging, enum sign_level level, struct stretch words)
{
    const bool is_all = words.first == 0 && words.last + 1 == (int)judging->search.heard.count;

    return are_like(judging, level, words,
                    (level != SIGN_CLINICAL ? -phrase_says : 0) +
                        (is_all ? asked_doubt_of_phrase(judging, level) : 0));
}

/*
 * True if a sign whose phrase was found fires: if it is nearly all of its sentence; or if the whole
 * text is like a sign, or its sentence, whatever the rest is about; or, surely, its clause, or its
 * part of one that goes on with "and", "but", "my" or "how do i": few texts have commas.
 */
static bool
agrees(const struct judging *judging, enum sign_level level, struct stretch phrase)
{
    const struct heard *heard = &judging->search.heard;
    const struct stretch text = {0, (int)heard->count - 1};
    const float doubt = part_doubt + asked_doubt_of_phrase(judging, level);
    struct stretch clause, sentence;

    if (judging->view == NULL) {
        return true;
    }
    clause = around(heard, phrase, false, 0);
    sentence = around(heard, phrase, true, 0);
    return (clause.first == phrase.first && clause.last == phrase.last) ||
           is_hardly_more(sentence, phrase) || may_be_like(judging, level, text) ||
           may_be_like(judging, level, sentence) || are_like(judging, level, clause, part_doubt) ||
           are_like(judging, level, around(heard, phrase, false, ROLE_BUT | ROLE_STATEMENT),
                    doubt) ||
           are_like(judging, level,
                    around(heard, phrase, false, ROLE_BUT | ROLE_STATEMENT | ROLE_PERSON), doubt) ||
           are_like(
               judging, level,
               around(heard, phrase, false, ROLE_BUT | ROLE_STATEMENT | ROLE_PERSON | ROLE_ASKS),
               doubt);
}

/* ---- One sign in one text ------------------------------------------------------------------ */

/* What a line of a sign is searched for, and what held it back. */
struct wanted {
    struct sign_match *match;
    const struct judging *judging; /* or NULL: whatever phrase is found fires */
    const struct phrase *held_by;  /* an open figure of speech, or NULL */
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

/* A phrase that was found is held back: the opinion is to think twice about its part. */
static void
hold(const struct judging *judging, enum sign_level level, struct stretch phrase)
{
    struct stretch part;

    if (judging != NULL && judging->view != NULL) {
        part = around(&judging->search.heard, phrase, false, ROLE_BUT);
        opinion_hold(judging->view, level, part.first, part.last);
    }
}

/* The same of the words that a figure of speech covers. */
static void
hold_masked(const struct judging *judging, enum sign_level level)
{
    int i;

    for (i = 0; judging != NULL && judging->view != NULL && i < (int)judging->search.heard.count;
         i++) {
        if (judging->search.is_masked[i]) {
            opinion_hold(judging->view, level, i, i);
        }
    }
}

/* True unless something holds the words back; then wanted tells what. */
static bool
on_said(struct search *search, const struct phrase *phrase, const int *indexes, void *user)
{
    struct wanted *wanted = user;
    const struct phrase *figure = search_said_of(search, indexes, phrase->slot_count);
    struct stretch words = found_on(search, phrase, indexes);
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
    } else if (wanted->judging != NULL &&
               !agrees(wanted->judging, wanted->match->sign->level, words)) {
        held = SIGN_UNLIKE;
    }
    if (held == SIGN_FIRES || wanted->held == SIGN_FIRES) { /* the first reason is told */
        set_match(wanted->match, search, phrase, words);
    }
    if (held != SIGN_FIRES && held != SIGN_UNLIKE) {
        hold(wanted->judging, wanted->match->sign->level, words);
    }
    if (held != SIGN_FIRES && wanted->held == SIGN_FIRES) {
        wanted->held = held;
        wanted->held_by = figure;
    }
    return held == SIGN_FIRES;
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
            hold_masked(wanted->judging, signs->sign->level);
            is_explained_yet = true;
        }
        if (search_each(search, &signs->said_as[i], on_said, wanted)) {
            wanted->held = SIGN_FIRES;
            return true;
        }
    }
    return false;
}

/* ---- All signs in one text ----------------------------------------------------------------- */

/* True if figures of speech make up half of the text: "im dying to ski". */
static bool
is_mostly_figure(const struct judging *judging)
{
    size_t count = judging->search.heard.count, figures = 0, i;

    for (i = 0; i < count; i++) {
        figures += judging->search.is_figure[i];
    }
    return 2 * figures >= count;
}

/* What speaks against the second opinion alone on a level. */
static float
doubt_of(const struct judging *judging)
{
    bool fires_yet = judging->fires[SIGN_CLINICAL] || judging->fires[SIGN_EQUIPMENT];

    if (is_mostly_figure(judging)) {
        return figure_says;
    }
    return (fires_yet ? little_said : 0) + (judging->is_foreign ? foreign_doubt : 0);
}

/*
 * The level that words like a sign of this one are taken for: if they are likelier another, that.
 * "Her heart is racing" is in part like an emergency, but more like trouble. Equipment gives way to
 * trouble that a phrase has found; trouble gives way to nothing.
 */
static enum sign_level
likelier_level(const struct judging *judging, enum sign_level level, int first, int last)
{
    float says = opinion_on_words(judging->view, level, first, last) + in_doubt;
    float trouble = opinion_on_words(judging->view, SIGN_CLINICAL, first, last);
    float equipment = opinion_on_words(judging->view, SIGN_EQUIPMENT, first, last);

    if (level == SIGN_EMERGENCY && equipment > says && equipment > trouble) {
        return SIGN_EQUIPMENT;
    }
    if (trouble > says &&
        (level == SIGN_EMERGENCY || (level == SIGN_EQUIPMENT && judging->fires[SIGN_CLINICAL]))) {
        return SIGN_CLINICAL;
    }
    return level;
}

/* What the second opinion finds on a level without a phrase; false if nothing. */
static bool
find_like(const struct judging *judging, enum sign_level level, struct sign_match *match)
{
    const struct heard *heard = &judging->search.heard;
    float against = doubt_of(judging);
    const struct opinion_example *nearest;
    enum sign_level likelier;
    int first, last;

    if (opinion_alone(judging->view, level, &first, &last) - against <= 0) {
        return false;
    }
    likelier = likelier_level(judging, level, first, last);
    if (likelier != level && (judging->fires[likelier] || judging->is_held[likelier])) {
        return false;
    }
    nearest = opinion_nearest(judging->view, likelier, first, last);
    if (nearest == NULL) { /* no sign of the level has an example */
        return false;
    }
    *match = (struct sign_match){.sign = nearest->sign,
                                 .phrase = nearest->line,
                                 .start = heard->list[first].start,
                                 .end = heard->list[last].end,
                                 .by_likeness = true};
    return true;
}

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
            find_like(judging, (enum sign_level)level, &matches[count])) {
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

size_t
sign_index_find(const struct sign_index *index, struct workspace *workspace, struct words words,
                bool is_asked, struct sign_match *matches, size_t room)
{
    struct judging judging;
    size_t count = 0, i;
    bool *is_likely;

    judging_begin(&judging, index, workspace, words, is_asked);
    is_likely = find_likely(index, &judging.search);
    for (i = 0; i < index->count && count < room; i++) {
        struct wanted wanted = {.match = &matches[count], .judging = &judging};
        bool fires = find_sign(&judging.search, &index->signs[i], is_likely, &wanted);

        note(&judging, index->signs[i].sign->level, wanted.held, fires);
        count += fires;
    }
    count = add_like(&judging, matches, count, room);
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

size_t
sign_index_explain(const struct sign_index *index, struct workspace *workspace, struct words words,
                   bool is_asked, struct sign_explained *explained, size_t room)
{
    struct sign_match like[OPINION_LEVELS];
    struct judging judging;
    size_t count = 0, likes, i;
    bool *is_likely;

    judging_begin(&judging, index, workspace, words, is_asked);
    is_likely = find_likely(index, &judging.search);
    for (i = 0; i < index->count && count < room; i++) {
        count += explain_sign(&judging, &index->signs[i], is_likely, &explained[count]);
    }
    likes = add_like(&judging, like, 0, OPINION_LEVELS);
    for (i = 0; i < likes && count < room; i++) {
        explained[count++] = (struct sign_explained){like[i], SIGN_LIKE, NULL};
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
