/* Repairing a text's unknown words; the known ones are in spelling.c. */
#include "spelling.h"

#include <string.h>

#include "memory.h"
#include "ordinary.h"

/* How much likelier a slip that fingers make often is than any other, and how much less likely two
 * slips are than one; chosen by cross-validation on texts with typing errors (see model.h). */
static const float likely_slip = 4;

/* How much a known neighbour counts against a word's own frequency. */
static const float neighbour_counts = 30;

/* Known words that a typed one may stand for. */
enum { CANDIDATES_MAX = 24 };

struct candidate {
    uint32_t parts[2]; /* numbers of the words + 1; the second is 0 for a word in one piece */
    float weight;
};

struct candidates {
    struct candidate list[CANDIDATES_MAX];
    size_t count;
};

/* Where the repair of a text stands. */
struct repair {
    const struct spelling *spelling;
    const struct words *words;
    struct word *list;
    size_t count;
    uint32_t before; /* number of the last word put into list, + 1; 0 at the edge and if unknown */
};

static const char *
text_of(const struct spelling *spelling, uint32_t number)
{
    return spelling->text + spelling->words[number].text;
}

/* ---- How far two words are apart ------------------------------------------------------------ */

/* True if two letters lie side by side on a keyboard. */
static bool
are_neighbours(char one, char other)
{
    static const char *const rows[] = {"qwertyuiop", "asdfghjkl", "zxcvbnm"};
    const char letters[2] = {one, other};
    int row[2] = {-1, -1}, place[2] = {0, 0}, i, k;

    for (i = 0; i < 3; i++) {
        for (k = 0; k < 2; k++) {
            const char *found = letters[k] == '\0' ? NULL : strchr(rows[i], letters[k]);

            if (found != NULL) {
                row[k] = i;
                place[k] = 2 * (int)(found - rows[i]) + i; /* rows are shifted by half a key */
            }
        }
    }
    return row[0] >= 0 && row[1] >= 0 && row[0] - row[1] <= 1 && row[1] - row[0] <= 1 &&
           place[0] - place[1] <= 2 && place[1] - place[0] <= 2;
}

/* How likely fingers turn `known` into `typed` by one slip: 0 if that takes more than one. */
static float
slip_weight(const char *typed, const char *known)
{
    size_t a = strlen(typed), b = strlen(known), head = 0, tail = 0;
    size_t shorter = a < b ? a : b;

    while (head < shorter && typed[head] == known[head]) {
        head++;
    }
    while (tail < shorter - head && typed[a - 1 - tail] == known[b - 1 - tail]) {
        tail++;
    }
    a -= head + tail;
    b -= head + tail;
    typed += head;
    known += head;
    if (a == 1 && b == 1) {
        return are_neighbours(*typed, *known) ? likely_slip : 1;
    }
    if (a == 2 && b == 2 && typed[0] == known[1] && typed[1] == known[0]) {
        return likely_slip;
    }
    if (a + b == 1) { /* a letter more or less: doubled and undoubled ones are common */
        char letter = a == 1 ? typed[0] : known[0];

        return head > 0 && letter == typed[-1] ? likely_slip : 1;
    }
    return 0;
}

/* True if at most two slips lie between the words: the usual table, swaps included. */
static bool
is_within_two(const char *typed, const char *known)
{
    size_t a = strlen(typed), b = strlen(known), i, k;
    unsigned char rows[3][SPELLING_LONGEST + 1], *above = rows[0], *row = rows[1], *top = rows[2];

    if (a > SPELLING_LONGEST || b > SPELLING_LONGEST || a > b + 2 || b > a + 2) {
        return false;
    }
    for (k = 0; k <= b; k++) {
        above[k] = (unsigned char)k;
    }
    memset(top, SPELLING_LONGEST, sizeof(rows[0]));
    for (i = 1; i <= a; i++) {
        unsigned char *oldest = top;

        row[0] = (unsigned char)i;
        for (k = 1; k <= b; k++) {
            int least = above[k - 1] + (typed[i - 1] != known[k - 1]);

            least = above[k] + 1 < least ? above[k] + 1 : least;
            least = row[k - 1] + 1 < least ? row[k - 1] + 1 : least;
            if (i > 1 && k > 1 && typed[i - 1] == known[k - 2] && typed[i - 2] == known[k - 1] &&
                top[k - 2] + 1 < least) {
                least = top[k - 2] + 1;
            }
            row[k] = (unsigned char)least;
        }
        top = above;
        above = row;
        row = oldest;
    }
    return above[b] <= 2;
}

/* ---- Candidates ----------------------------------------------------------------------------- */

/* Keeps a candidate; the least likely gives way if there are too many. */
static void
keep(struct candidates *candidates, struct candidate candidate)
{
    size_t least = 0, i;

    for (i = 0; i < candidates->count; i++) {
        if (candidates->list[i].parts[0] == candidate.parts[0] &&
            candidates->list[i].parts[1] == candidate.parts[1]) {
            return;
        }
        if (candidates->list[i].weight < candidates->list[least].weight) {
            least = i;
        }
    }
    if (candidates->count < CANDIDATES_MAX) {
        candidates->list[candidates->count++] = candidate;
    } else if (candidate.weight > candidates->list[least].weight) {
        candidates->list[least] = candidate;
    }
}

static void
look_up(const struct spelling *spelling, const char *typed, uint32_t hash, int slips,
        struct candidates *candidates)
{
    uint32_t at = hash & spelling->slip_mask;

    for (; spelling->slips[at].word != 0; at = (at + 1) & spelling->slip_mask) {
        uint32_t number = spelling->slips[at].word - 1;
        float weight;

        if (spelling->slips[at].hash != hash) {
            continue;
        }
        weight = slips == 1 ? slip_weight(typed, text_of(spelling, number))
                            : (float)is_within_two(typed, text_of(spelling, number));
        if (weight > 0) {
            weight *= (float)spelling->words[number].often;
            keep(candidates, (struct candidate){{number + 1, 0}, weight});
        }
    }
}

/* Known words one slip from the typed one, or two if there are none. */
static void
find_near(const struct spelling *spelling, const char *typed, struct candidates *candidates)
{
    size_t length = strlen(typed), one, other;

    for (one = 0; one <= length; one++) {
        look_up(spelling, typed, spelling_key(typed, length, one, length), 1, candidates);
    }
    if (candidates->count > 0 || length < SPELLING_TWO_SLIPS) {
        return;
    }
    for (one = 0; one <= length; one++) {
        look_up(spelling, typed, spelling_key(typed, length, one, length), 2, candidates);
        for (other = one + 1; other < length; other++) {
            look_up(spelling, typed, spelling_key(typed, length, one, other), 2, candidates);
        }
    }
}

size_t
spelling_near(const struct spelling *spelling, const char *typed, int slips, uint32_t *numbers,
              size_t room)
{
    size_t length = strlen(typed), one, other, i;
    struct candidates candidates = {.count = 0};

    for (one = 0; one <= length; one++) {
        look_up(spelling, typed, spelling_key(typed, length, one, length), slips, &candidates);
        for (other = one + 1; slips == 2 && other < length; other++) {
            look_up(spelling, typed, spelling_key(typed, length, one, other), 2, &candidates);
        }
    }
    for (i = 0; i < candidates.count && i < room; i++) {
        numbers[i] = candidates.list[i].parts[0] - 1;
    }
    return i;
}

/* A blank lost, or replaced by another letter: cuts into two known words. */
static void
find_cuts(const struct spelling *spelling, const char *typed, struct candidates *candidates)
{
    size_t length = strlen(typed), i, gap;

    for (gap = 0; gap <= 1; gap++) {
        for (i = 1; i + gap < length; i++) {
            uint32_t one, other;
            float a, b;

            if (spelling_find(spelling, typed, i, &one) &&
                spelling_find(spelling, typed + i + gap, length - i - gap, &other)) {
                a = (float)spelling->words[one].often;
                b = (float)spelling->words[other].often;
                keep(candidates, (struct candidate){{one + 1, other + 1}, a < b ? a : b});
            }
        }
    }
}

/* How well a candidate sits between its neighbours (numbers + 1; 0 where none is known). */
static float
fit(const struct spelling *spelling, const struct candidate *candidate, uint32_t before,
    uint32_t after)
{
    uint32_t first = candidate->parts[0], last = candidate->parts[1];
    float weight = candidate->weight;

    last = last == 0 ? first : last;
    if (first != last) {
        weight *= spelling_has_pair(spelling, first, last) ? 1.0f : 0.02f;
    }
    weight *= 1 + neighbour_counts * (float)spelling_has_pair(spelling, before, first);
    return weight * (1 + neighbour_counts * (float)spelling_has_pair(spelling, last, after));
}

/* ---- Repairing ------------------------------------------------------------------------------ */

/* Puts a known word in the place of one or more of the text's. */
static void
put(struct repair *repair, uint32_t number, const struct word *word)
{
    struct word *put = &repair->list[repair->count++];

    *put = *word;
    put->text = text_of(repair->spelling, number);
    put->stem = repair->spelling->text + repair->spelling->words[number].stem;
    repair->before = number + 1;
}

/* A blank put into a word, or moved by one: what the two become. How many words; 0 if nothing. */
static size_t
join(const struct spelling *spelling, const char *one, const char *other, uint32_t parts[2])
{
    size_t a = strlen(one), b = strlen(other);
    char both[2 * SPELLING_LONGEST + 1];

    if (a + b >= sizeof(both)) {
        return 0;
    }
    memcpy(both, one, a + 1);
    memcpy(both + a, other, b + 1);
    if (spelling_find(spelling, both, a + b, &parts[0])) {
        return 1;
    }
    if (a > 1 && spelling_find(spelling, both, a - 1, &parts[0]) &&
        spelling_find(spelling, both + a - 1, b + 1, &parts[1])) {
        return 2;
    }
    if (b > 1 && spelling_find(spelling, both, a + 1, &parts[0]) &&
        spelling_find(spelling, both + a + 1, b - 1, &parts[1])) {
        return 2;
    }
    return 0;
}

/* Number of the text's word i, + 1; 0 past the end or if it is not known. */
static uint32_t
number_at(const struct repair *repair, size_t i)
{
    uint32_t number;

    if (i >= repair->words->count || !spelling_find(repair->spelling, repair->words->list[i].text,
                                                    strlen(repair->words->list[i].text), &number)) {
        return 0;
    }
    return number + 1;
}

/* True for a word that neither the content nor the language has. */
static bool
is_strange(const struct repair *repair, size_t i)
{
    return number_at(repair, i) == 0 &&
           !ordinary_has(repair->spelling->ordinary, repair->words->list[i].text);
}

/* Tries to mend the blank between words i and i + 1, one of which is strange. */
static bool
mend_blank(struct repair *repair, size_t i)
{
    const struct word *one = &repair->words->list[i], *other = one + 1;
    struct word both = *one;
    uint32_t parts[2] = {0, 0};
    size_t count, k;

    if (!spelling_is_letters(one->text) || !spelling_is_letters(other->text)) {
        return false;
    }
    count = join(repair->spelling, one->text, other->text, parts);
    both.end = other->end;
    for (k = 0; k < count; k++) {
        put(repair, parts[k], &both);
        both.comma_before = false;
    }
    return count > 0;
}

/* True for what may be a slip: letters, and no English word that the content merely lacks. */
static bool
is_slip(const struct spelling *spelling, const char *typed)
{
    size_t length = strlen(typed);

    return length >= SPELLING_SHORTEST && length <= SPELLING_LONGEST &&
           spelling_is_letters(typed) && !ordinary_has(spelling->ordinary, typed);
}

static void
mend_word(struct repair *repair, size_t i)
{
    const struct word *word = &repair->words->list[i];
    size_t length = strlen(word->text), best = 0, k;
    struct candidates candidates = {.count = 0};
    struct word rest = *word;
    float best_fit = 0;

    if (is_slip(repair->spelling, word->text)) {
        find_near(repair->spelling, word->text, &candidates);
        if (length > SPELLING_SHORTEST && candidates.count == 0) {
            find_cuts(repair->spelling, word->text, &candidates);
        }
    }
    for (k = 0; k < candidates.count; k++) {
        float fits =
            fit(repair->spelling, &candidates.list[k], repair->before, number_at(repair, i + 1));

        if (fits > best_fit ||
            (fits == best_fit && candidates.list[k].parts[0] < candidates.list[best].parts[0])) {
            best_fit = fits;
            best = k;
        }
    }
    if (candidates.count == 0) {
        repair->list[repair->count++] = *word;
        repair->before = UINT32_MAX;
        return;
    }
    put(repair, candidates.list[best].parts[0] - 1, word);
    if (candidates.list[best].parts[1] != 0) {
        rest.comma_before = false;
        put(repair, candidates.list[best].parts[1] - 1, &rest);
    }
}

struct words
spelling_repair(void *arena, const struct spelling *spelling, struct words words)
{
    struct repair repair = {.spelling = spelling, .words = &words};
    size_t i;

    repair.list = memory_must(talloc_array(arena, struct word, (unsigned)(2 * words.count + 1)));
    for (i = 0; i < words.count; i++) {
        uint32_t number = number_at(&repair, i);

        if (i + 1 < words.count && (is_strange(&repair, i) || is_strange(&repair, i + 1)) &&
            mend_blank(&repair, i)) {
            i++;
        } else if (number != 0) {
            repair.list[repair.count++] = words.list[i];
            repair.before = number;
        } else {
            mend_word(&repair, i);
        }
    }
    return (struct words){repair.list, repair.count, words.language};
}
