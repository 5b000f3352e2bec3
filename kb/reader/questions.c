#include "questions.h"

#include <string.h>

#include "cut_words.h"
#include "divide.h"
#include "memory.h"
#include "stress.h"

static const struct topic *
first_of(const struct topic_search *search)
{
    return search->count == 0 ? NULL : search->best[0].topic;
}

/* A text on its way to its questions. */
struct questions {
    const struct kb *kb;
    void *arena;
    struct workspace *workspace;
    const char *text;
    enum language language;
    struct pieces cuts; /* by words alone */
    bool few;           /* ways of asking there are */
    size_t tries;       /* left for places at which the text may be divided */
    struct piece *list;
    size_t count;
};

/* A stretch is divided into four at most: each side of its division may be divided once more. No
 * text, however long, may hold the others up. */
enum { DEEPEST = 2, TRIES = 64 };

/* Adds the bytes [from, to), divided into its questions; `depth` times it was divided before, and
 * is about the topic of this rank if ever. */
static void
add_stretch(struct questions *questions, size_t from, size_t to, int depth, size_t rank)
{
    struct division at = {.tries = questions->tries, .again = depth > 0};
    struct piece piece = {.start = from, .end = to, .trusted = depth > 0, .rank = rank};

    bool divided = !questions->few && depth < DEEPEST &&
                   divide(questions->kb, questions->arena, questions->workspace, questions->text,
                          from, to, &questions->cuts, questions->language, &at);

    questions->tries = at.tries;
    if (divided) {
        add_stretch(questions, from, at.end, depth + 1, at.rank[0]);
        add_stretch(questions, at.start, to, depth + 1, at.rank[1]);
        return;
    }
    piece.text = memory_copy_n(questions->arena, questions->text + from, to - from);
    questions->list =
        memory_grow(questions->arena, struct piece, questions->list, questions->count);
    questions->list[questions->count++] = piece;
}

/*
 * What divide.h weighs was fitted on content with some 200 ways of asking a topic; with fewer than
 * so many, scores tell less, and two neighbours are two questions if each is surely one.
 */
enum { MANY = 60 };

static bool
has_few(const struct kb *kb, enum language language)
{
    size_t count, topics = 0, asked = 0, i;
    const struct topic *list = kb_topics(kb, &count);

    for (i = 0; i < count; i++) {
        topics += list[i].language == language;
        asked += list[i].language == language ? list[i].asked_as_count : 0;
    }
    return topics == 0 || asked < MANY * topics;
}

/* A piece with what was found for it. */
struct found {
    struct topic_search search;
    bool elsewhere; /* it says something by itself, and that is about nothing that a topic fits */
};

/*
 * What sounds like texts elsewhere may still lead up to a question ("anyone?", "who can blame
 * them"): it stands alone if it names so many things at least, and its likeliest topic is less
 * likely than so many thousandths; the latter if it asks nothing.
 */
enum { NAMING_ENOUGH = 2, UNLIKELY = 300, NO_TOPIC = 100 };

static struct found
find(const struct questions *questions, const struct piece *piece)
{
    struct found found = {.search = kb_search_topics(questions->kb, questions->workspace,
                                                     piece->text, questions->language)};
    struct words words;
    int score = found.search.count == 0 ? 0 : found.search.best[0].score;

    if (found.search.elsewhere && score < UNLIKELY) {
        words =
            words_read(questions->arena, questions->workspace, piece->text, questions->language);
        found.elsewhere = cut_words_naming(&words, 0, words.count) >= NAMING_ENOUGH &&
                          (score < NO_TOPIC || stress_asks(&words, 0, words.count));
    }
    return found;
}

/* True if two neighbours are no one stretch; what no topic fits is for a person. */
static bool
stay_apart(const struct questions *questions, const struct found *one, const struct found *other)
{
    bool sure = questions->few && one->search.sureness == SURE && other->search.sureness == SURE;

    return (sure || one->elsewhere || other->elsewhere) &&
           first_of(&one->search) != first_of(&other->search);
}

/* The piece after the last of the stretch that begins with this one, which is no courtesy. */
static size_t
end_of_stretch(const struct questions *questions, size_t piece)
{
    const struct piece *cuts = questions->cuts.list;
    struct found last, next;
    size_t end = piece;

    while (end + 1 < questions->cuts.count && !cuts[end + 1].courtesy) {
        if (end == piece) {
            last = find(questions, &cuts[end]);
        }
        next = find(questions, &cuts[end + 1]);
        if (stay_apart(questions, &last, &next)) {
            break;
        }
        last = next;
        end++;
    }
    return end + 1;
}

struct pieces
kb_questions(const struct kb *kb, void *arena, struct workspace *workspace, const char *text,
             enum language language)
{
    struct questions questions = {.kb = kb,
                                  .arena = arena,
                                  .workspace = workspace,
                                  .text = text,
                                  .language = language,
                                  .tries = TRIES};
    size_t i = 0, next;

    questions.cuts = cut_questions(arena, text, language);
    questions.few = has_few(kb, language);
    for (; i < questions.cuts.count; i = next) {
        const struct piece *cut = &questions.cuts.list[i];

        if (cut->courtesy) {
            next = i + 1;
            questions.list = memory_grow(arena, struct piece, questions.list, questions.count);
            questions.list[questions.count++] = *cut;
        } else {
            next = end_of_stretch(&questions, i);
            add_stretch(&questions, cut->start, questions.cuts.list[next - 1].end, 0, 0);
        }
    }
    return (struct pieces){questions.list, questions.count};
}

void
kb_trust(const struct piece *piece, struct topic_search *search)
{
    struct topic_match about;

    if (!piece->trusted || search->elsewhere || piece->rank >= search->count) {
        return;
    }
    about = search->best[piece->rank];
    memmove(&search->best[1], &search->best[0], piece->rank * sizeof(about));
    search->best[0] = about;
    search->sureness = SURE;
}

void
kb_lean(const struct kb *kb, struct workspace *workspace, const char *both, enum language language,
        const struct topic_search *before, struct topic_search *search)
{
    enum { LIKELY_ENOUGH = 150, NEAR = 2 }; /* thousandths; the first so many of both */
    const struct topic *topic = first_of(search);
    struct topic_search joined;
    size_t i;

    if (before->sureness != SURE || search->sureness == SURE || topic == NULL ||
        topic == first_of(before) || search->best[0].score < LIKELY_ENOUGH) {
        return;
    }
    joined = kb_search_topics(kb, workspace, both, language);
    for (i = 0; i < joined.count && i < NEAR; i++) {
        if (joined.best[i].topic == topic) {
            search->sureness = SURE;
        }
    }
}
