/*
 * Two neighbours stay apart if each is about a topic of its own, or if one of them is about
 * something that no topic fits: that one is for a person. They are one question if together they
 * are surely about what the surer one is about.
 *
 * Tried and dropped: to put together two that are sure of different topics unless both show among
 * the first three of the whole (it took a third of the true pairs of questions with it).
 */
#include "questions.h"

#include "divide.h"
#include "memory.h"

static const struct topic *
first_of(const struct topic_search *search)
{
    return search->count == 0 ? NULL : search->best[0].topic;
}

/* Thousandths: from this score of another topic on, a piece is no mere addition to its neighbour.
 */
enum { A_QUESTION_OF_ITS_OWN = 350 };

/* Both pieces and all between them as one. */
static struct piece
join(void *arena, const char *text, const struct piece *one, const struct piece *other)
{
    struct piece both = {.start = one->start, .end = other->end};

    both.text = memory_copy_n(arena, text + both.start, both.end - both.start);
    return both;
}

/* True if the two are one question; `both` is the search for them together. */
static bool
belong_together(const struct topic_search *one, const struct topic_search *other,
                const struct topic_search *both)
{
    bool is_one_sure = one->sureness == SURE, is_other_sure = other->sureness == SURE;
    const struct topic_search *sure = is_one_sure ? one : other;
    const struct topic_search *unsure = is_one_sure ? other : one;

    if ((one->elsewhere || other->elsewhere) && first_of(one) != first_of(other)) {
        return false;
    }
    if (is_one_sure && is_other_sure && first_of(one) != first_of(other)) {
        return false;
    }
    if (sure->sureness != SURE) {
        return both->sureness == SURE || !both->elsewhere;
    }
    if (first_of(unsure) != first_of(sure) && unsure->count > 0 &&
        unsure->best[0].score >= A_QUESTION_OF_ITS_OWN) {
        return false;
    }
    return both->sureness == SURE && first_of(both) == first_of(sure);
}

/* Cut by words, and what means nothing alone put together again. */
static struct pieces
cut_and_join(const struct kb *kb, void *arena, struct workspace *workspace, const char *text,
             enum language language)
{
    struct pieces pieces = cut_questions(arena, text, language);
    struct piece *list = memory_array(arena, struct piece, pieces.count + 1);
    struct topic_search last = {.sureness = UNSURE};
    size_t questions = 0, kept = 0, i;

    for (i = 0; i < pieces.count; i++) {
        questions += !pieces.list[i].courtesy;
    }
    if (questions < 2) {
        return pieces;
    }
    for (i = 0; i < pieces.count; i++) {
        const struct piece *piece = &pieces.list[i];
        struct topic_search search = {.sureness = UNSURE}, joined;

        if (!piece->courtesy) {
            search = kb_search_topics(kb, workspace, piece->text, language);
        }
        if (!piece->courtesy && kept > 0 && !list[kept - 1].courtesy) {
            struct piece both = join(arena, text, &list[kept - 1], piece);

            joined = kb_search_topics(kb, workspace, both.text, language);
            if (belong_together(&last, &search, &joined)) {
                list[kept - 1] = both;
                last = joined;
                continue;
            }
        }
        list[kept++] = *piece;
        last = search;
    }
    return (struct pieces){list, kept};
}

/* The bytes [start, end) of the text as a piece. */
static struct piece
piece_of(void *arena, const char *text, size_t start, size_t end)
{
    return (struct piece){memory_copy_n(arena, text + start, end - start), start, end, false};
}

struct pieces
kb_questions(const struct kb *kb, void *arena, struct workspace *workspace, const char *text,
             enum language language)
{
    struct pieces pieces = cut_and_join(kb, arena, workspace, text, language);
    struct piece *list = memory_array(arena, struct piece, 2 * pieces.count + 1);
    size_t count = 0, i;

    for (i = 0; i < pieces.count; i++) {
        const struct piece *piece = &pieces.list[i];
        struct division division;

        if (!piece->courtesy &&
            divide(kb, arena, workspace, piece->text, language, &division)) {
            list[count++] = piece_of(arena, text, piece->start, piece->start + division.end);
            list[count++] = piece_of(arena, text, piece->start + division.start, piece->end);
        } else {
            list[count++] = *piece;
        }
    }
    return (struct pieces){list, count};
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
