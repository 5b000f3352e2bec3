#include "divide.h"

#include <math.h>

#include "cut_words.h"
#include "memory.h"
#include "stress.h"

/* More places than this are a story, which would only take time. */
enum { PLACES_MAX = 16 };

/* How a place looks. */
struct place {
    size_t at, after; /* the word that it stands before, and the first word behind what joins */
    bool sentence, comma, joined, opens;
};

/* A text on its way through dividing. */
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

/* "&" and "or" join too. */
static size_t
joiner_at(const struct words *words, size_t at)
{
    const char *text = words->list[at].text;
    size_t count = cut_words_at(words, at, cut_joiners);

    return count > 0 ? count : text[0] == '&' || (text[0] == 'o' && text[1] == 'r' && !text[2]);
}

/* True if a question may begin at the word; fills *place. */
static bool
look_at(const struct dividing *dividing, size_t at, struct place *place)
{
    const struct words *words = &dividing->words;
    size_t turn = cut_words_at(words, at, cut_turns), byte;
    bool plus = false;

    *place = (struct place){.at = at, .after = at + turn};
    if (turn == 0) {
        size_t joiner = joiner_at(words, at);

        place->joined = joiner > 0;
        place->after += joiner;
        place->after += joiner > 0 ? cut_words_at(words, place->after, cut_turns) : 0;
    }
    for (byte = words->list[at - 1].end; byte < words->list[at].start; byte++) {
        plus = plus || dividing->text[byte] == '+' || dividing->text[byte] == '/';
    }
    place->sentence = words->list[at].sentence != words->list[at - 1].sentence;
    place->comma = words->list[at].comma_before;
    place->opens = cut_words_at(words, place->after, cut_openers) > 0 ||
                   cut_words_at(words, place->after, cut_requests) > 0;
    return place->after < words->count && (turn > 0 || plus || place->joined || place->sentence ||
                                           place->comma || place->opens);
}

/* False if there are too many. */
static bool
find_places(struct dividing *dividing)
{
    struct place place;
    size_t at;

    for (at = 1; at < dividing->words.count; at++) {
        if (look_at(dividing, at, &place)) {
            if (dividing->count == PLACES_MAX) {
                return false;
            }
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

/* The odds of a topic in the search of the whole; so low if it is not among its first. */
static double
odds_within(const struct topic_search *whole, const struct topic *topic, bool *among)
{
    static const double not_among = -6;
    size_t i;

    for (i = 0; i < whole->count; i++) {
        if (whole->best[i].topic == topic) {
            return odds(whole->best[i].score);
        }
    }
    *among = false;
    return not_among;
}

/* Logarithm of the odds that both sides of the place ask for what they seem to. */
static double
judge(const struct dividing *dividing, const struct place *place, const struct topic_search *left,
      const struct topic_search *right)
{
    const struct words *words = &dividing->words;
    double one = odds(left->best[0].score), other = odds(right->best[0].score);
    bool among = true;
    double sum = -2.77 + 0.687 * one + 0.313 * other + 0.297 * (one < other ? one : other) -
                 1.0 * odds(dividing->whole.best[0].score);

    sum += 0.327 * odds_within(&dividing->whole, left->best[0].topic, &among);
    sum += 0.547 * odds_within(&dividing->whole, right->best[0].topic, &among);
    sum += among ? 1.19 : 0;
    sum += stress_asks(words, 0, place->at) ? 1.68 : 0;
    sum += stress_asks(words, place->after, words->count) ? 0.59 : 0;
    sum += (place->sentence ? 1.23 : 0) + (place->comma ? 1.83 : 0);
    sum += (place->joined ? 0.93 : 0) + (place->opens ? 1.09 : 0);
    sum -= 1.345 * log((double)place->at + 1);
    sum -= 0.615 * log((double)(words->count - place->after) + 1);
    return sum + 0.275 * (double)dividing->count;
}

static struct topic_search
search(const struct dividing *dividing, const char *text)
{
    return kb_search_topics(dividing->kb, dividing->workspace, text, dividing->words.language);
}

/* The odds of one place, by its two sides. */
static double
try_place(const struct dividing *dividing, const struct place *place, struct division *division)
{
    struct topic_search left, right;

    division->end = dividing->words.list[place->at - 1].end;
    division->start = dividing->words.list[place->after].start;
    left = search(dividing, memory_copy_n(dividing->arena, dividing->text, division->end));
    right = search(dividing, dividing->text + division->start);
    if (left.count == 0 || right.count == 0 || left.best[0].topic == right.best[0].topic) {
        return -INFINITY;
    }
    return judge(dividing, place, &left, &right);
}

bool
divide(const struct kb *kb, void *arena, struct workspace *workspace, const char *text,
       enum language language, struct division *division)
{
    struct dividing dividing = {.kb = kb, .arena = arena, .workspace = workspace, .text = text};
    double best = 0;
    bool found = false;
    size_t i;

    dividing.words = words_read(arena, workspace, text, language);
    if (!find_places(&dividing) || dividing.count == 0) {
        return false;
    }
    dividing.whole = search(&dividing, text);
    for (i = 0; i < dividing.count && dividing.whole.count > 0; i++) {
        struct division here;
        double odds_here = try_place(&dividing, &dividing.places[i], &here);

        if (odds_here > best) {
            best = odds_here;
            *division = here;
            found = true;
        }
    }
    return found;
}
