#include "questions.h"

#include "divide.h"
#include "memory.h"

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

/* Adds the bytes [from, to), divided into its questions; `depth` times it was divided before. */
static void
add_stretch(struct questions *questions, size_t from, size_t to, int depth)
{
    struct division at = {.tries = questions->tries};
    struct piece piece = {.start = from, .end = to, .trusted = depth > 0};

    bool divided = !questions->few && depth < DEEPEST &&
                   divide(questions->kb, questions->arena, questions->workspace, questions->text,
                          from, to, &questions->cuts, questions->language, &at);

    questions->tries = at.tries;
    if (divided) {
        add_stretch(questions, from, at.end, depth + 1);
        add_stretch(questions, at.start, to, depth + 1);
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
    return asked < MANY * topics;
}

/* True if two neighbours are no one stretch; what no topic fits is for a person. */
static bool
stay_apart(const struct questions *questions, const struct topic_search *one,
           const struct topic_search *other)
{
    bool sure = questions->few && one->sureness == SURE && other->sureness == SURE;

    return (sure || one->elsewhere || other->elsewhere) && first_of(one) != first_of(other);
}

/* The piece after the last of the stretch that begins with this one, which is no courtesy. */
static size_t
end_of_stretch(const struct questions *questions, size_t piece)
{
    const struct piece *cuts = questions->cuts.list;
    struct topic_search last = {.sureness = UNSURE}, next;
    size_t end = piece;

    while (end + 1 < questions->cuts.count && !cuts[end + 1].courtesy) {
        if (end == piece) {
            last = kb_search_topics(questions->kb, questions->workspace, cuts[end].text,
                                    questions->language);
        }
        next = kb_search_topics(questions->kb, questions->workspace, cuts[end + 1].text,
                                questions->language);
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
            add_stretch(&questions, cut->start, questions.cuts.list[next - 1].end, 0);
        }
    }
    return (struct pieces){questions.list, questions.count};
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
