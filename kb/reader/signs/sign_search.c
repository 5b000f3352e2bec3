#include "sign_search.h"

#include <assert.h>
#include <string.h>

#include "memory.h"

/* How far apart two words of a phrase may stand: words that may come between. */
enum {
    GAP_WORDS_MAX = 8,   /* of any kind */
    GAP_WEIGHTY_MAX = 1, /* that carry a meaning of their own */
    GAP_GROUPS_MAX = 2,  /* the same between the groups of a "+" */
    GAP_UNABLE_MAX = 4,  /* after "cant": without weight only */
    GAP_CLOSE_MAX = 2,   /* where words belong closely together */
    GAP_SAID_OF_MAX = 4, /* between what is spoken of and what is said of it */
    FRAGMENT_MAX = 2     /* a sentence this short may be a piece of its neighbour */
};

enum { NOT_REACHED = -1 };

static bool
fills(const struct search *search, const struct slot *slot, int index)
{
    const struct heard_word *word = &search->heard.list[index];
    int i, j;

    if (search->is_masked[index]) {
        return false;
    }
    for (i = 0; i < word->meaning_count; i++) {
        for (j = 0; j < slot->count; j++) {
            if (word->meanings[i] == slot->ids[j]) {
                return true;
            }
        }
    }
    return false;
}

/* The last of the words that fill a slot from this one on: as few as can. */
static int
last_filling(const struct search *search, const struct slot *slot, int index)
{
    const struct heard_word *word = &search->heard.list[index];
    int fewest = -1, i, j;

    for (i = 0; i < word->meaning_count; i++) {
        for (j = 0; j < slot->count; j++) {
            if (word->meanings[i] == slot->ids[j] && (fewest < 0 || word->more[i] < fewest)) {
                fewest = word->more[i];
            }
        }
    }
    return index + fewest;
}

bool
search_has_words(const struct search *search, const struct phrase *phrase)
{
    int i, j;

    for (i = 0; i < phrase->slot_count; i++) {
        const struct slot *slot = &phrase->slots[i];

        for (j = 0; j < slot->count && !search->is_present[slot->ids[j]]; j++) {
        }
        if (j == slot->count) {
            return false;
        }
    }
    return true;
}

/* ---- What may stand between ---------------------------------------------------------------- */

/* True if a phrase may go on from word `left` to word `right`, whatever stands between them. */
static bool
may_join(const struct search *search, int left, int right)
{
    const struct heard_word *l = &search->heard.list[left], *r = &search->heard.list[right];

    if (l->sentence == r->sentence) {
        return true;
    }
    return right <= l->run_end + 1 && (search->sentence_words[l->sentence] <= FRAGMENT_MAX ||
                                       search->sentence_words[r->sentence] <= FRAGMENT_MAX);
}

/* What stands between two words of a phrase. */
struct gap {
    int words;
    int weighty; /* of these, those that carry a meaning of their own */
    int verbs;   /* light verbs */
    int little;
    int humans;
    bool comma; /* one stands somewhere between */
};

static void
gap_add(struct gap *gap, const struct heard_word *word)
{
    if (word->is_in_run) {
        return; /* the word where the several begin counts for them */
    }
    gap->humans +=
        (word->roles & ROLE_HUMAN) != 0 && !(gap->words == 0 && (word->roles & ROLE_ARTICLE) != 0);
    gap->words++;
    gap->weighty += (word->roles & (ROLE_WEIGHTLESS | ROLE_NEGATION | ROLE_UNABLE)) == 0;
    gap->verbs += (word->roles & ROLE_VERB) != 0;
    gap->little += (word->roles & ROLE_LITTLE) != 0;
    gap->comma = gap->comma || word->comma_before;
}

/* Two slots of a phrase that follow each other. */
struct step {
    enum phrase_kind kind;
    const struct slot *from, *to;
};

/* True if a phrase may go on from word `left` to word `right`. */
static bool
gap_allows(const struct search *search, const struct step *step, const struct gap *gap, int left,
           int right)
{
    unsigned left_roles = search->heard.list[left].roles;
    unsigned right_roles = search->heard.list[right].roles;

    if (!may_join(search, left, right)) {
        return false;
    }
    if (step->kind == PHRASE_FIGURE) {
        return search->heard.list[left].sentence == search->heard.list[right].sentence &&
               gap->words <= GAP_CLOSE_MAX && gap->little == gap->words && gap->humans == 0 &&
               !gap->comma && !search->heard.list[right].comma_before;
    }
    if (step->kind == PHRASE_TIGHT || (right_roles & ROLE_PARTICLE) != 0) {
        return gap->words <= GAP_CLOSE_MAX && gap->weighty == 0;
    }
    if ((left_roles & ROLE_UNABLE) != 0) {
        return gap->words <= GAP_UNABLE_MAX && gap->weighty == 0 && gap->verbs == 0;
    }
    if (step->from->group != step->to->group) {
        return gap->weighty <= GAP_GROUPS_MAX;
    }
    return gap->weighty <= (step->from->is_subject ? 0 : GAP_WEIGHTY_MAX);
}

/* The nearest word before `right` that fills the slot before and that the gap allows. */
static int
find_before(const struct search *search, const struct step *step, const int *reached, int right)
{
    struct gap gap = {0, 0, 0, 0, 0, false};
    int left;

    for (left = right - 1; left >= 0 && gap.words <= GAP_WORDS_MAX; left--) {
        const struct heard_word *word = &search->heard.list[left];

        if (reached[left] != NOT_REACHED && last_filling(search, step->from, left) < right &&
            gap_allows(search, step, &gap, left, right)) {
            return left;
        }
        if ((word->roles & ROLE_BUT) != 0) {
            break;
        }
        gap_add(&gap, word);
    }
    return NOT_REACHED;
}

/* ---- One phrase in one text ---------------------------------------------------------------- */

/* Fills search->before for the slots in the order that `order` gives. */
static void
reach(struct search *search, const struct phrase *phrase, const int *order)
{
    int words = (int)search->heard.count, k, i;

    for (k = 0; k < phrase->slot_count; k++) {
        const struct slot *slot = &phrase->slots[order[k]];
        struct step step = {phrase->kind, k == 0 ? slot : &phrase->slots[order[k - 1]], slot};
        int *row = search->before + (ptrdiff_t)k * words;

        for (i = 0; i < words; i++) {
            if (!fills(search, slot, i)) {
                row[i] = NOT_REACHED;
            } else {
                row[i] = k == 0 ? i : find_before(search, &step, row - words, i);
            }
        }
    }
}

/* The words of a match that ends at `end`, in the order of the text. */
static void
trace(const struct search *search, const struct phrase *phrase, int end, int *indexes)
{
    int words = (int)search->heard.count, k;

    for (k = phrase->slot_count - 1; k >= 0; k--) {
        indexes[k] = end;
        end = search->before[(ptrdiff_t)k * words + end];
    }
}

/* The orders in which two or three groups may come. */
static const int group_orders[][PHRASE_GROUPS_MAX] = {{0, 1, 2}, {1, 0, 2}, {0, 2, 1},
                                                      {1, 2, 0}, {2, 0, 1}, {2, 1, 0}};
static const int orders_of[PHRASE_GROUPS_MAX + 1] = {0, 1, 2, 6};

static void
order_slots(const struct phrase *phrase, int turn, int *order)
{
    int count = 0, g, i;

    for (g = 0; g < phrase->group_count; g++) {
        for (i = 0; i < phrase->slot_count; i++) {
            if (phrase->slots[i].group == group_orders[turn][g]) {
                order[count++] = i;
            }
        }
    }
    assert(count == phrase->slot_count);
}

bool
search_each(struct search *search, const struct phrase *phrase, on_match *on_found, void *user)
{
    int order[PHRASE_SLOTS_MAX], indexes[PHRASE_SLOTS_MAX] = {0};
    int words = (int)search->heard.count, turn, i;

    if (!search_has_words(search, phrase)) {
        return false;
    }
    for (turn = 0; turn < orders_of[phrase->group_count]; turn++) {
        order_slots(phrase, turn, order);
        reach(search, phrase, order);
        for (i = 0; i < words; i++) {
            if (search->before[(ptrdiff_t)(phrase->slot_count - 1) * words + i] == NOT_REACHED) {
                continue;
            }
            trace(search, phrase, i, indexes);
            if (on_found(search, phrase, indexes, user)) {
                return true;
            }
        }
    }
    return false;
}

bool
search_is_in_place(const struct search *search, const struct phrase *phrase, const int *indexes)
{
    const struct heard *heard = &search->heard;
    int first = indexes[0], last = heard->list[indexes[phrase->slot_count - 1]].run_end;

    if (phrase->begins_sentence && first > 0 &&
        heard->list[first - 1].sentence == heard->list[first].sentence) {
        return false;
    }
    return !phrase->ends_sentence || last + 1 >= (int)heard->count ||
           heard->list[last + 1].sentence != heard->list[last].sentence;
}

/* ---- Said of something else ---------------------------------------------------------------- */

/* True if nothing but weightless words, and no new statement, stands between two words. */
static bool
is_said_between(const struct heard *heard, int left, int right)
{
    int i;

    if (left >= right || heard->list[left].sentence != heard->list[right].sentence ||
        right - left - 1 > GAP_SAID_OF_MAX) {
        return false;
    }
    for (i = left + 1; i <= right; i++) {
        const struct heard_word *word = &heard->list[i];

        if (word->comma_before ||
            (i < right && ((word->roles & (ROLE_HUMAN | ROLE_BUT | ROLE_STATEMENT)) != 0 ||
                           (word->roles & (ROLE_WEIGHTLESS | ROLE_NEGATION | ROLE_UNABLE)) == 0))) {
            return false;
        }
    }
    return true;
}

static void
note_spoken(struct search *search, const struct phrase *figure, int at)
{
    search->spoken =
        memory_grow(search->arena, struct spoken_of, search->spoken, search->spoken_count);
    search->spoken[search->spoken_count++] = (struct spoken_of){figure, at};
}

/* True if a word of the figure's company stands in this sentence or one beside it. */
static bool
has_company(const struct search *search, const struct phrase *figure, int sentence)
{
    int i;

    for (i = 0; i < (int)search->heard.count; i++) {
        int away = search->heard.list[i].sentence - sentence;

        if (away >= -1 && away <= 1 && fills(search, &figure->company, i)) {
            return true;
        }
    }
    return figure->company.count == 0;
}

static bool
on_figure(struct search *search, const struct phrase *figure, const int *indexes, void *user)
{
    int last = indexes[figure->slot_count - 1], i;

    (void)user;
    if (!search_is_in_place(search, figure, indexes) ||
        !has_company(search, figure, search->heard.list[indexes[0]].sentence)) {
        return false;
    }
    if (figure->open != OPEN_NOT) {
        search->spoken =
            memory_grow(search->arena, struct spoken_of, search->spoken, search->spoken_count);
        search->spoken[search->spoken_count++] = (struct spoken_of){
            figure, figure->open == OPEN_AFTER ? search->heard.list[last].run_end : indexes[0]};
        return false;
    }
    for (i = 0; i < figure->slot_count; i++) {
        search->is_covered[indexes[i]] = true;
    }
    return false; /* all of them count */
}

void
search_explain(struct search *search, const struct phrase *figures, size_t count)
{
    size_t i;

    search_unexplain(search);
    memset(search->is_covered, 0, (search->heard.count + 1) * sizeof(bool));
    for (i = 0; i < count; i++) {
        if (figures[i].open == OPEN_ANYWHERE) {
            note_spoken(search, &figures[i], 0);
        } else {
            search_each(search, &figures[i], on_figure, NULL);
        }
    }
    memcpy(search->is_masked, search->is_covered, (search->heard.count + 1) * sizeof(bool));
    for (i = 0; i < search->heard.count; i++) {
        search->is_figure[i] = search->is_figure[i] || search->is_covered[i];
    }
}

void
search_unexplain(struct search *search)
{
    memset(search->is_masked, 0, (search->heard.count + 1) * sizeof(bool));
    search->spoken_count = 0;
}

const struct phrase *
search_said_of(const struct search *search, const int *indexes, int count)
{
    const struct heard *heard = &search->heard;
    int first = indexes[0], last = heard->list[indexes[count - 1]].run_end;
    size_t i;

    for (i = 0; i < search->spoken_count; i++) {
        const struct spoken_of *spoken = &search->spoken[i];
        bool is_said = false;

        switch (spoken->figure->open) {
        case OPEN_AFTER:
            is_said = is_said_between(heard, spoken->at, first);
            break;
        case OPEN_BEFORE:
            is_said = is_said_between(heard, last, spoken->at);
            break;
        case OPEN_ANYWHERE:
            is_said = has_company(search, spoken->figure, heard->list[first].sentence);
            break;
        case OPEN_NOT:
            break;
        }
        if (is_said) {
            return spoken->figure;
        }
    }
    return NULL;
}

/* ---- Beginning ----------------------------------------------------------------------------- */

void
search_begin(struct search *search, const struct vocabulary *vocabulary,
             struct workspace *workspace, struct words read)
{
    size_t words, i;
    int j;

    search->arena = memory_must(talloc_new(NULL));
    search->heard = vocabulary_hear(vocabulary, search->arena, workspace, read);
    words = search->heard.count;
    search->is_present = memory_array(search->arena, bool, vocabulary_count(vocabulary) + 1);
    search->sentence_words = memory_array(search->arena, int, words + 1);
    search->is_masked = memory_array(search->arena, bool, words + 1);
    search->is_covered = memory_array(search->arena, bool, words + 1);
    search->is_figure = memory_array(search->arena, bool, words + 1);
    search->spoken = NULL;
    search->spoken_count = 0;
    search->before = memory_array(search->arena, int, PHRASE_SLOTS_MAX *(words + 1));
    search->present = memory_array(search->arena, int, HEARD_MEANINGS_MAX *words + 1);
    search->present_count = 0;
    for (i = 0; i < words; i++) {
        const struct heard_word *word = &search->heard.list[i];

        assert(word->sentence >= 0 && (size_t)word->sentence <= words);
        search->sentence_words[word->sentence]++;
        for (j = 0; j < word->meaning_count; j++) {
            if (!search->is_present[word->meanings[j]]) {
                search->is_present[word->meanings[j]] = true;
                search->present[search->present_count++] = word->meanings[j];
            }
        }
    }
}
