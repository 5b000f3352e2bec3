#include "sign_weigh.h"

#include <math.h>

/* What speaks against any sign in a text that is mostly a figure of speech. */
static const float figure_says = 2.5f;

/* What speaks against more than a phrase of another level says. */
static const float little_said = 0.3f;

/* How much likelier another level must be for words to be taken for that alone. */
static const float in_doubt = 0.1f;

/*
 * A phrase fires for nothing if neither the whole text nor its likeliest stretch is so much like a
 * sign of the level; and a whole text that is so much like one shows it, whatever was held back in
 * it and whatever speaks against a stretch.
 */
static const float needed[OPINION_LEVELS] = {
    [SIGN_CLINICAL] = 0, [SIGN_EQUIPMENT] = -0.5f, [SIGN_EMERGENCY] = 0};
static const float enough[OPINION_LEVELS] = {
    [SIGN_CLINICAL] = 0.15f, [SIGN_EQUIPMENT] = 2, [SIGN_EMERGENCY] = 0.6f};

/* What speaks against an emergency that only the opinion of another language finds: it was learnt
 * from texts in which the words of this one are few. Of anything else it is not asked. */
static const float foreign_doubt = 3;

/*
 * What speaks against a phrase in a part of a sentence that is like a sign where the sentence and
 * the text are not, in units of the opinion's decision: of the best of several parts less is to be
 * believed. Chosen on unseen texts (sign_match.h).
 */
static const float part_doubt = 1.2f;
static const float phrase_says = 0.2f;
static const float alone_doubt = -0.5f; /* the same in a sentence that has hardly more words */

enum {
    ALONE_WORDS = 3, /* of a sentence beside a phrase that take nothing from it */
    FEW_WORDS = 6    /* too few for the opinion to be sure of, either way */
};

void
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

struct stretch
stretch_around(const struct heard *heard, struct stretch words, bool over_commas, unsigned bounds)
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

static float
says_of(const struct judging *judging, enum sign_level level, struct stretch words)
{
    return opinion_on_words(judging->view, level, words.first, words.last);
}

/* True if the words are more like a sign of the level than that. */
static bool
are_like(const struct judging *judging, enum sign_level level, struct stretch words, float doubt)
{
    return says_of(judging, level, words) > doubt;
}

static bool
is_no_more(struct stretch words, struct stretch phrase)
{
    return words.first == phrase.first && words.last == phrase.last;
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

/* True if the words, were they a text of their own, are like a sign, or too few to judge by. */
static bool
is_like_alone(const struct judging *judging, enum sign_level level, struct stretch words)
{
    return words.last - words.first < FEW_WORDS || are_like(judging, level, words, alone_doubt);
}

/* What the words around a phrase say of a sign of the level, whatever the rest is about: few texts
 * have commas. */
struct around {
    float clause, sentence;
    float parts; /* the clause or the likeliest part that "and", "but", "my" leave of it */
};

static struct around
say_around(const struct judging *judging, enum sign_level level, struct stretch phrase)
{
    static const unsigned bounds[] = {ROLE_BUT | ROLE_STATEMENT,
                                      ROLE_BUT | ROLE_STATEMENT | ROLE_PERSON,
                                      ROLE_BUT | ROLE_STATEMENT | ROLE_PERSON | ROLE_ASKS};
    const struct heard *heard = &judging->search.heard;
    struct around around = {
        .clause = says_of(judging, level, stretch_around(heard, phrase, false, 0)),
        .sentence = says_of(judging, level, stretch_around(heard, phrase, true, 0))};
    size_t i;

    around.parts = around.clause;
    for (i = 0; i < sizeof(bounds) / sizeof(bounds[0]); i++) {
        const struct stretch part = stretch_around(heard, phrase, false, bounds[i]);

        around.parts = fmaxf(around.parts, says_of(judging, level, part));
    }
    return around;
}

/* The words around a phrase are surely like a sign. */
static bool
are_sure(const struct judging *judging, enum sign_level level, struct stretch phrase,
         const struct around *around)
{
    const struct heard *heard = &judging->search.heard;
    const struct stretch sentence = stretch_around(heard, phrase, true, 0);

    return is_no_more(sentence, phrase) ||
           (level == SIGN_EMERGENCY &&
            is_no_more(stretch_around(heard, phrase, false, 0), phrase)) ||
           (is_hardly_more(sentence, phrase) && is_like_alone(judging, level, sentence)) ||
           around->clause > part_doubt ||
           around->parts > part_doubt + asked_doubt_of_phrase(judging, level);
}

/* Nothing speaks against a phrase: it is nearly all of its sentence, or the whole text is like a
 * sign, or its sentence. */
static bool
agrees(const struct judging *judging, enum sign_level level, struct stretch phrase)
{
    const struct heard *heard = &judging->search.heard;
    const struct stretch text = {0, (int)heard->count - 1};
    const struct stretch sentence = stretch_around(heard, phrase, true, 0);

    return is_hardly_more(sentence, phrase) || may_be_like(judging, level, text) ||
           may_be_like(judging, level, sentence);
}

bool
judging_believes(struct judging *judging, enum sign_level level, struct stretch phrase,
                 bool is_well_known)
{
    const struct around around = say_around(judging, level, phrase);
    const bool is_sure = are_sure(judging, level, phrase, &around);

    if (!is_sure && !agrees(judging, level, phrase)) {
        return false;
    }
    if (is_sure || !is_well_known || fmaxf(around.parts, around.sentence) >= needed[level]) {
        judging->stands[level] = true;
    }
    return true;
}

/* ---- Without a phrase ----------------------------------------------------------------------- */

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

/* The whole text is surely like a sign of the level, whatever was held back in it. */
static bool
is_like_as_a_whole(const struct judging *judging, enum sign_level level)
{
    return !judging->is_foreign && judging->search.heard.count > FEW_WORDS &&
           opinion_on_text(judging->view, level) > enough[level];
}

/* Takes words that are like a sign of the level for that, or for what they are likelier, unless
 * phrases have told of it already. */
static bool
take_words(const struct judging *judging, enum sign_level level, struct stretch words,
           struct sign_match *match)
{
    const struct heard *heard = &judging->search.heard;
    enum sign_level likelier = likelier_level(judging, level, words.first, words.last);
    const struct opinion_example *nearest;

    if (likelier != level && (judging->fires[likelier] || judging->is_held[likelier])) {
        return false;
    }
    nearest = opinion_nearest(judging->view, likelier, words.first, words.last);
    if (nearest == NULL) { /* no sign of the level has an example */
        return false;
    }
    *match = (struct sign_match){.sign = nearest->sign,
                                 .phrase = nearest->line,
                                 .start = heard->list[words.first].start,
                                 .end = heard->list[words.last].end,
                                 .by_likeness = true};
    return true;
}

/* How likely a sign of the level is where no phrase found it, and in which words. Another
 * language's text is judged as a whole: of its stretches none is ever so sure as it asks. */
static float
say_alone(const struct judging *judging, enum sign_level level, struct stretch *words)
{
    if (judging->is_foreign) {
        return opinion_on_text(judging->view, level);
    }
    return opinion_alone(judging->view, level, &words->first, &words->last);
}

bool
judging_is_like(const struct judging *judging, enum sign_level level, struct sign_match *match)
{
    struct stretch words = {0, (int)judging->search.heard.count - 1};

    if (is_like_as_a_whole(judging, level) && take_words(judging, level, words, match)) {
        return true;
    }
    return say_alone(judging, level, &words) > doubt_of(judging) &&
           take_words(judging, level, words, match);
}

static bool
is_unlike(const struct judging *judging, enum sign_level level)
{
    int first, last;

    return judging->view != NULL && judging->fires[level] && !judging->stands[level] &&
           opinion_on_text(judging->view, level) < needed[level] &&
           opinion_alone(judging->view, level, &first, &last) < needed[level];
}

void
judging_take_back(struct judging *judging, bool is_unlike_sign[OPINION_LEVELS])
{
    int level;

    for (level = 0; level < OPINION_LEVELS; level++) {
        is_unlike_sign[level] = is_unlike(judging, (enum sign_level)level);
        judging->fires[level] = judging->fires[level] && !is_unlike_sign[level];
    }
}
