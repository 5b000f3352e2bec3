#include "phrasing_check.h"

#include <stdlib.h>

#include "kb_explain.h"
#include "memory.h"

/* ---- Lines that another topic wins --------------------------------------------------------- */

static int
line_number(const struct kb_held_out *line)
{
    return line->topic->asked_as_lines[line->line];
}

/* Another topic wins it, and surely enough for a renter to be told so. */
static bool
is_lost(const struct kb_held_out *line)
{
    return line->won != NULL && line->won != line->topic && line->sureness != UNSURE;
}

static void
add_lost(const struct kb_held_out *line, struct remarks *remarks)
{
    struct remark *remark = remark_add(remarks, REMARK_LOST, line->topic->file, line_number(line),
                                       "move it there, or add two or three lines like it here",
                                       "\"%s\" %s %s (%d)", line->topic->asked_as[line->line],
                                       line->sureness == SURE ? "would be answered with"
                                                              : "would be met with an offer of",
                                       line->won->id, line->score);

    remark->gravity = (int)line->sureness * 1000 + line->score;
}

/* Tells of one topic, whose lines these are, which of them nothing else leads to. */
static void
check_lonely(const struct kb_held_out *lines, size_t count, struct remarks *remarks)
{
    const struct topic *topic = lines[0].topic;
    char *numbers = memory_copy(remarks->arena, "");
    int lonely = 0;
    size_t i;

    for (i = 0; i < count; i++) {
        if (lines[i].won != topic && !is_lost(&lines[i])) {
            memory_append(&numbers, "%s%d", lonely == 0 ? "" : ", ", line_number(&lines[i]));
            lonely++;
        }
    }
    if (lonely > 0) {
        remark_add(remarks, REMARK_LONELY, topic->file, topic->asked_as_lines[0],
                   "add a line or two like each, so that other wordings are found too",
                   "%d of %zu; without the line itself its text would be a gap: lines %s", lonely,
                   count, numbers)
            ->gravity = lonely;
    }
}

/* ---- Pairs of topics ----------------------------------------------------------------------- */

/* Two topics, `one` before `other` in the kb, and the lines of either that the other won. */
struct pair {
    const struct topic *one, *other;
    int from_one, from_other;
    const struct kb_held_out *example; /* the one that was surest of the wrong topic */
};

static int
by_topics(const void *left, const void *right)
{
    const struct pair *l = left, *r = right;

    if (l->one != r->one) {
        return l->one < r->one ? -1 : 1;
    }
    return l->other < r->other ? -1 : l->other > r->other;
}

static void
add_pair(const struct pair *pair, struct remarks *remarks)
{
    const struct kb_held_out *example = pair->example;
    struct remark *remark =
        remark_add(remarks, REMARK_CONFUSED, example->topic->file, line_number(example),
                   "move lines that belong to the other, or write to each what only it is asked",
                   "%s and %s: %d lines (%d and %d), such as \"%s\"", pair->one->id,
                   pair->other->id, pair->from_one + pair->from_other, pair->from_one,
                   pair->from_other, example->topic->asked_as[example->line]);

    remark->other =
        memory_copy(remarks->arena, example->topic == pair->one ? pair->other->id : pair->one->id);
    remark->gravity = pair->from_one + pair->from_other;
}

/* Puts the lines of the same two topics together; returns how many pairs are left. */
static size_t
sum_up(struct pair *pairs, size_t count)
{
    size_t kept = 0, i;

    qsort(pairs, count, sizeof(*pairs), by_topics);
    for (i = 0; i < count; i++) {
        struct pair *last = kept == 0 ? NULL : &pairs[kept - 1];

        if (last == NULL || by_topics(last, &pairs[i]) != 0) {
            pairs[kept++] = pairs[i];
            continue;
        }
        last->from_one += pairs[i].from_one;
        last->from_other += pairs[i].from_other;
        if (pairs[i].example->score > last->example->score) {
            last->example = pairs[i].example;
        }
    }
    return kept;
}

static int
by_lines_falling(const void *left, const void *right)
{
    const struct pair *l = left, *r = right;
    int of_l = l->from_one + l->from_other, of_r = r->from_one + r->from_other;

    return of_l != of_r ? (of_l > of_r ? -1 : 1) : by_topics(left, right);
}

static void
check_pairs(struct pair *pairs, size_t count, struct remarks *remarks)
{
    size_t i;

    count = sum_up(pairs, count);
    qsort(pairs, count, sizeof(*pairs), by_lines_falling);
    for (i = 0; i < count && i < PAIRS_SHOWN; i++) {
        if (pairs[i].from_one + pairs[i].from_other > 1) { /* a single line shows nothing */
            add_pair(&pairs[i], remarks);
        }
    }
}

static void
check_language(const struct kb *kb, enum language language, struct remarks *remarks)
{
    void *arena = memory_must(talloc_new(NULL));
    struct kb_held_out *lines;
    size_t count = kb_held_out(kb, arena, language, &lines), wrong = 0, first = 0, i;
    struct pair *pairs = memory_array(arena, struct pair, count + 1);

    for (i = 0; i < count; i++) {
        const struct kb_held_out *line = &lines[i];

        if (is_lost(line)) {
            add_lost(line, remarks);
        }
        if (line->won != NULL && line->won != line->topic) {
            bool is_first = line->topic < line->won;

            pairs[wrong++] =
                (struct pair){is_first ? line->topic : line->won,
                              is_first ? line->won : line->topic, is_first, !is_first, line};
        }
        if (i + 1 == count || lines[i + 1].topic != line->topic) {
            check_lonely(&lines[first], i + 1 - first, remarks);
            first = i + 1;
        }
    }
    check_pairs(pairs, wrong, remarks);
    talloc_free(arena);
}

/* ---- Topic by topic ------------------------------------------------------------------------ */

static void
check_signs(const struct kb *kb, struct workspace *workspace, const struct topic *topic,
            struct remarks *remarks)
{
    struct sign_match match;
    size_t i;

    for (i = 0; i < topic->asked_as_count; i++) {
        if (kb_find_signs(kb, workspace, topic->asked_as[i], &match, 1) > 0) {
            remark_add(remarks, REMARK_SIGN_FIRST, topic->file, topic->asked_as_lines[i],
                       "take it out if the sign is right, else see \"Not meant by\" of the sign",
                       "\"%s\" fires %s on \"%.*s\"", topic->asked_as[i], match.sign->id,
                       (int)(match.end - match.start), topic->asked_as[i] + match.start);
        }
    }
}

void
phrasing_check(const struct kb *kb, struct workspace *workspace, struct remarks *remarks)
{
    size_t count, i;
    const struct topic *topics = kb_topics(kb, &count);
    int language;

    for (i = 0; i < count; i++) {
        const struct topic *topic = &topics[i];

        check_signs(kb, workspace, topic, remarks);
        if (topic->asked_as_count < PHRASINGS_ENOUGH) {
            remark_add(remarks, REMARK_FEW, topic->file, topic->asked_as_lines[0],
                       "add ways in which renters really ask, from the night book's gaps",
                       "%zu ways of asking; at least %d are wanted", topic->asked_as_count,
                       PHRASINGS_ENOUGH)
                ->gravity = PHRASINGS_ENOUGH - (int)topic->asked_as_count;
        }
    }
    for (language = 0; language < LANGUAGE_COUNT; language++) {
        check_language(kb, (enum language)language, remarks);
    }
}
