#include "divide.h"

#include <math.h>
#include <string.h>

#include "cut_words.h"
#include "memory.h"
#include "stress.h"

/* With more places than this a stretch is left alone: trying them would take too long. */
enum { PLACES_MAX = 32 };

/* How a place looks. */
struct place {
    size_t at, after; /* the word that it stands before, and the first word behind what joins */
    bool comma, sentence, question_mark, line, sign; /* what stands in the gap; + or / is a sign */
    bool turn, joins, chooses;                       /* "also", "and", "or" */
    bool opens, cut;
};

/* A stretch of text on its way through dividing. */
struct dividing {
    const struct kb *kb;
    void *arena;
    struct workspace *workspace;
    const char *text;
    struct words words;
    const size_t *naming; /* how many of the words before each name something */
    struct topic_search whole;
    struct place places[PLACES_MAX];
    size_t count;
};

/* ---- Places --------------------------------------------------------------------------------- */

/* How many words at `at` join two questions; "&" and "or" do too. */
static size_t
joiner_at(const struct words *words, size_t at)
{
    const char *text = words->list[at].text;
    size_t count = cut_words_at(words, at, cut_joiners);

    return count > 0 ? count : strcmp(text, "or") == 0 || text[0] == '&';
}

/* True if one of the pieces begins at this byte. */
static bool
is_cut(const struct pieces *cuts, size_t byte)
{
    size_t i;

    for (i = 0; i < cuts->count; i++) {
        if (cuts->list[i].start == byte) {
            return true;
        }
    }
    return false;
}

/* True if a question may begin at the word; fills *place. */
static bool
look_at(const struct dividing *dividing, size_t at, struct place *place)
{
    const struct words *words = &dividing->words;
    const struct word *before = &words->list[at - 1], *word = &words->list[at];
    const char *gap = dividing->text + before->end;
    size_t length = word->start - before->end;
    size_t turn = cut_words_at(words, at, cut_turns);
    size_t joiner = turn > 0 ? 0 : joiner_at(words, at);

    *place = (struct place){.at = at,
                            .after = at + turn + joiner,
                            .comma = word->comma_before,
                            .sentence = word->sentence != before->sentence,
                            .line = memchr(gap, '\n', length) != NULL,
                            .turn = turn > 0,
                            .joins = joiner > 0,
                            .chooses = strcmp(word->text, "or") == 0};
    if (joiner > 0 && place->after < words->count) {
        place->after += cut_words_at(words, place->after, cut_turns);
    }
    if (place->after >= words->count) {
        return false;
    }
    place->question_mark = place->sentence && memchr(gap, '?', length) != NULL;
    place->sign = memchr(gap, '+', length) != NULL || memchr(gap, '/', length) != NULL;
    place->opens = cut_words_at(words, place->after, cut_openers) > 0 ||
                   cut_words_at(words, place->after, cut_requests) > 0;
    return place->turn || place->joins || place->sentence || place->comma || place->opens ||
           place->sign;
}

/* False if there are too many. */
static bool
find_places(struct dividing *dividing, const struct pieces *cuts, size_t from)
{
    struct place place;
    size_t at;

    for (at = 1; at < dividing->words.count; at++) {
        bool cut = is_cut(cuts, from + dividing->words.list[at].start);

        if (look_at(dividing, at, &place) || (cut && place.after < dividing->words.count)) {
            if (dividing->count == PLACES_MAX) {
                return false;
            }
            place.cut = cut;
            dividing->places[dividing->count++] = place;
        }
    }
    return true;
}

/* ---- How likely each is --------------------------------------------------------------------- */

/* Logarithm of the odds that a score in thousandths stands for. */
static double
odds(int score)
{
    double p = (score < 1 ? 1 : score > 999 ? 999 : score) / 1000.0;

    return log(p / (1 - p));
}

/* The odds of a topic in a search; so low if it is not among its first. */
static const double not_among = -6;

static double
odds_in(const struct topic_search *search, const struct topic *topic)
{
    size_t i;

    for (i = 0; i < search->count; i++) {
        if (search->best[i].topic == topic) {
            return odds(search->best[i].score);
        }
    }
    return not_among;
}

/* How far the second is behind. */
static double
gap_in(const struct topic_search *search)
{
    return search->count > 1 ? odds(search->best[0].score) - odds(search->best[1].score)
                             : -not_among;
}

/* A part of what speaks for a division, in units of logarithms of odds. */
struct evidence {
    double factor, of;
};

static double
sum_of(const struct evidence *evidence, size_t count)
{
    double sum = 0;
    size_t i;

    for (i = 0; i < count; i++) {
        sum += evidence[i].factor * evidence[i].of;
    }
    return sum;
}

#define SUM(list) sum_of(list, sizeof(list) / sizeof((list)[0]))

/* So many of the first topics of either side are looked at. */
enum { RANKS = 2 };

/* What the two sides of a place may be about. */
struct sides {
    struct topic_search left, right;
};

/* What its looks and the whole say of the place. */
static double
judge_place(const struct dividing *dividing, const struct place *place)
{
    const struct words *words = &dividing->words;
    bool asks = stress_asks(words, 0, place->at);
    bool other_asks = stress_asks(words, place->after, words->count);
    bool mark_at_end = strchr(dividing->text + words->list[words->count - 1].end, '?') != NULL;
    size_t naming = dividing->naming[place->at];
    size_t other_naming = dividing->naming[words->count] - dividing->naming[place->after];
    double other_length = log((double)(words->count - place->after) + 1);
    enum { SHORT = 3 }; /* words */
    const struct evidence evidence[] = {
        {-0.45, 1},
        {-1.35, odds(dividing->whole.best[0].score)},
        {1.07, asks},
        {-1.63, other_asks},
        {1.10, asks && other_asks},
        {-1.04, log((double)place->at + 1)},
        {-0.35, other_length},
        {-0.58, other_asks ? 0 : other_length},
        {-0.41, words->count - place->after < SHORT},
        {0.97, place->comma},
        {1.95, place->cut},
        {2.46, place->sentence},
        {-0.72, place->sentence && place->opens},
        {2.41, place->line},
        {4.05, place->sign},
        {2.23, place->turn},
        {1.25, place->joins},
        {0.19, place->joins && place->opens},
        {-2.09, place->chooses},
        {0.46, place->question_mark && mark_at_end},
        {-1.48, mark_at_end},
        {-2.35, naming == 0},
        {-1.01, naming == 1},
        {-2.03, other_naming == 0},
        {-1.03, other_naming == 1},
        {-1.11, dividing->whole.elsewhere},
    };

    return SUM(evidence);
}

/* What speaks for a question on each side, whatever the two are about. */
static double
judge_sides(const struct sides *sides)
{
    const struct evidence evidence[] = {
        {0.13, gap_in(&sides->left)},         {0.20, gap_in(&sides->right)},
        {0.56, sides->left.sureness == SURE}, {-0.21, sides->left.elsewhere},
        {-0.69, sides->right.elsewhere},
    };

    return SUM(evidence);
}

/* What speaks for the two sides being about these of their topics. */
static double
judge_topics(const struct dividing *dividing, const struct sides *sides, size_t of_left,
             size_t of_right)
{
    const struct topic_match *one = &sides->left.best[of_left];
    const struct topic_match *other = &sides->right.best[of_right];
    const struct evidence evidence[] = {
        {0.85, odds(one->score)},
        {0.61, odds(other->score)},
        {1.00, one->score / 1000.0 * other->score / 1000.0},
        {0.16, odds_in(&dividing->whole, one->topic)},
        {0.06, odds_in(&dividing->whole, other->topic)},
        {1.41, of_left > 0},
        {1.27, of_right > 0},
    };

    return SUM(evidence);
}

/*
 * The most that both sides and their topics can add to what a place has by itself, given what the
 * left one may be about: the right one is then surely about what the whole is likeliest about, and
 * about nothing else. (That its second topic counts 1.27 more is less than the gap it costs.)
 */
static double
most_with_left(const struct dividing *dividing, const struct topic_search *left)
{
    const struct topic_match *likeliest = &dividing->whole.best[0];
    const struct topic *topic = odds(likeliest->score) > not_among ? likeliest->topic : NULL;
    const struct sides sides = {
        .left = *left,
        .right = {.best = {{.topic = topic, .score = 1000}, {.score = 0}}, .count = 2}};
    double most = -INFINITY;
    size_t i;

    for (i = 0; i < RANKS && i < left->count; i++) {
        most = fmax(most, judge_topics(dividing, &sides, i, 0));
    }
    return most + judge_sides(&sides);
}

/* Logarithm of the odds that it takes to divide one side of a division again: three questions in
 * one text are rare. */
static const double enough_again = 2;

/*
 * More than this the sides and their topics hardly ever add to what a place has by itself: one that
 * would need more is not worth its two searches, which are nearly all that dividing costs. With 11,
 * 2 of 3,979 texts (tests/bench/texts) are divided otherwise than if all places were tried, for 3
 * in 5 of the searches; with 10 it is 5, and fewer pairs of questions are answered both.
 */
static const double sides_add_most = 11;

/* ---- The likeliest -------------------------------------------------------------------------- */

static struct topic_search
search(const struct dividing *dividing, const char *text)
{
    return kb_search_topics(dividing->kb, dividing->workspace, text, dividing->words.language);
}

/* Looks among the first topics of both sides of the place for a likelier division than *best. */
static void
try_place(const struct dividing *dividing, const struct place *place, size_t from,
          double *best_odds, struct division *best)
{
    size_t end = dividing->words.list[place->at - 1].end;
    size_t start = dividing->words.list[place->after].start, i, j;
    double here = judge_place(dividing, place);
    struct sides sides = {.left = {.count = 0}};

    if (here + sides_add_most <= *best_odds) {
        return;
    }
    sides.left = search(dividing, memory_copy_n(dividing->arena, dividing->text, end));
    if (here + most_with_left(dividing, &sides.left) <= *best_odds) {
        return;
    }
    sides.right = search(dividing, dividing->text + start);
    here += judge_sides(&sides);
    for (i = 0; i < RANKS && i < sides.left.count; i++) {
        for (j = 0; j < RANKS && j < sides.right.count; j++) {
            double odds_here = here + judge_topics(dividing, &sides, i, j);

            if (sides.left.best[i].topic != sides.right.best[j].topic && odds_here > *best_odds) {
                *best_odds = odds_here;
                best->end = from + end;
                best->start = from + start;
                best->rank[0] = i;
                best->rank[1] = j;
            }
        }
    }
}

/* How many of the words before each, and of all, name something. */
static size_t *
count_naming(void *arena, const struct words *words)
{
    size_t *naming = memory_array(arena, size_t, words->count + 1), i;

    for (i = 0; i < words->count; i++) {
        naming[i + 1] = naming[i] + cut_words_naming(words, i, i + 1);
    }
    return naming;
}

bool
divide(const struct kb *kb, void *arena, struct workspace *workspace, const char *text, size_t from,
       size_t to, const struct pieces *cuts, enum language language, struct division *division)
{
    struct dividing dividing = {.kb = kb, .arena = arena, .workspace = workspace};
    double least = division->again ? enough_again : 0, best_odds = least;
    size_t i;

    dividing.text = memory_copy_n(arena, text + from, to - from);
    dividing.words = words_read(arena, NULL, dividing.text, language);
    if (!find_places(&dividing, cuts, from) || dividing.count == 0 ||
        dividing.count > division->tries) {
        return false;
    }
    dividing.naming = count_naming(arena, &dividing.words);
    division->tries -= dividing.count;
    dividing.whole = search(&dividing, dividing.text);
    for (i = 0; i < dividing.count && dividing.whole.count > 0; i++) {
        try_place(&dividing, &dividing.places[i], from, &best_odds, division);
    }
    return best_odds > least;
}
