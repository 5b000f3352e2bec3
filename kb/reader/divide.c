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
    bool comma, opens, cut, question_mark;
};

/* A stretch of text on its way through dividing. */
struct dividing {
    const struct kb *kb;
    void *arena;
    struct workspace *workspace;
    const char *text;
    struct words words;
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

    *place = (struct place){.at = at, .after = at + turn + joiner, .comma = word->comma_before};
    if (joiner > 0 && place->after < words->count) {
        place->after += cut_words_at(words, place->after, cut_turns);
    }
    if (place->after >= words->count) {
        return false;
    }
    place->question_mark = word->sentence != before->sentence && memchr(gap, '?', length) != NULL;
    place->opens = cut_words_at(words, place->after, cut_openers) > 0 ||
                   cut_words_at(words, place->after, cut_requests) > 0;
    return turn > 0 || joiner > 0 || word->sentence != before->sentence || place->comma ||
           place->opens || memchr(gap, '+', length) != NULL || memchr(gap, '/', length) != NULL;
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

/* Logarithm of the odds that both sides of the place ask for what they seem to. */
static double
judge(const struct dividing *dividing, const struct place *place, const struct topic_search *left,
      const struct topic_search *right)
{
    const struct words *words = &dividing->words;
    const struct topic_search *whole = &dividing->whole;
    const struct topic *one = left->best[0].topic, *other = right->best[0].topic;
    double one_in_whole = odds_in(whole, one), other_in_whole = odds_in(whole, other);
    enum { SHORT = 3 }; /* words */
    const struct {
        double factor, of;
    } evidence[] = {
        {-1.88, 1},
        {0.29, odds(left->best[0].score)},
        {-0.84, odds(whole->best[0].score)},
        {0.41, one_in_whole},
        {0.36, other_in_whole},
        {0.63, one_in_whole > not_among && other_in_whole > not_among},
        {1.70, stress_asks(words, 0, place->at)},
        {1.27, stress_asks(words, place->after, words->count)},
        {0.57, place->comma},
        {1.03, place->opens},
        {0.82, place->cut},
        {-1.75, log((double)place->at + 1)},
        {0.21, (double)dividing->count},
        {-1.04, left->elsewhere},
        {-0.84, right->elsewhere},
        {0.31, gap_in(left)},
        {0.33, gap_in(right)},
        {0.24, odds_in(left, other)},
        {0.22, odds_in(right, one)},
        {1.01, place->question_mark},
        {1.18, left->best[0].score / 1000.0 * right->best[0].score / 1000.0},
        {-1.61, place->at < SHORT},
        {0.52, words->count - place->after < SHORT},
    };
    double sum = 0;
    size_t i;

    for (i = 0; i < sizeof(evidence) / sizeof(evidence[0]); i++) {
        sum += evidence[i].factor * evidence[i].of;
    }
    return sum;
}

static struct topic_search
search(const struct dividing *dividing, const char *text)
{
    return kb_search_topics(dividing->kb, dividing->workspace, text, dividing->words.language);
}

/* The odds of one place, by its two sides. */
static double
try_place(const struct dividing *dividing, const struct place *place)
{
    size_t end = dividing->words.list[place->at - 1].end;
    struct topic_search left =
        search(dividing, memory_copy_n(dividing->arena, dividing->text, end));
    struct topic_search right =
        search(dividing, dividing->text + dividing->words.list[place->after].start);

    if (left.count == 0 || right.count == 0 || left.best[0].topic == right.best[0].topic) {
        return -INFINITY;
    }
    return judge(dividing, place, &left, &right);
}

bool
divide(const struct kb *kb, void *arena, struct workspace *workspace, const char *text, size_t from,
       size_t to, const struct pieces *cuts, enum language language, struct division *division)
{
    struct dividing dividing = {.kb = kb, .arena = arena, .workspace = workspace};
    const struct place *best = NULL;
    double best_odds = 0;
    size_t i;

    dividing.text = memory_copy_n(arena, text + from, to - from);
    dividing.words = words_read(arena, workspace, dividing.text, language);
    if (!find_places(&dividing, cuts, from) || dividing.count > division->tries) {
        return false;
    }
    division->tries -= dividing.count;
    dividing.whole = search(&dividing, dividing.text);
    for (i = 0; i < dividing.count && dividing.whole.count > 0; i++) {
        double odds_here = try_place(&dividing, &dividing.places[i]);

        if (odds_here > best_odds) {
            best_odds = odds_here;
            best = &dividing.places[i];
        }
    }
    if (best != NULL) {
        division->end = from + dividing.words.list[best->at - 1].end;
        division->start = from + dividing.words.list[best->after].start;
    }
    return best != NULL;
}
