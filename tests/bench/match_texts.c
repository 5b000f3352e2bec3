/*
 * What the search makes of renters' texts, apart from all that the handlers add: for choosing
 * constants on texts/dev.jsonl, and for looking at others.
 *
 *     match_texts KB FILE.jsonl...    {"text","route","topics","alt","lang"} a line
 *
 * Of texts that a topic answers, in %: first is a right topic, answered with a right one, with a
 * wrong one, two offered, and one of the two right. Of texts that ask two things: both answered.
 * Of texts that no topic fits: answered all the same. AUROC of the best score.
 */
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <jansson.h>

#include "area.h"
#include "kb.h"
#include "memory.h"
#include "questions.h"

enum { TEXTS_MAX = 10000, QUESTIONS_MAX = 8 };

/* What became of the texts of one file. */
struct tally {
    int asked, first, right, wrong, offered, helped, two, both, answered;
    struct scores inside, outside;
};

static bool
names(const json_t *list, const char *id)
{
    size_t i;

    for (i = 0; i < json_array_size(list); i++) {
        if (strcmp(json_string_value(json_array_get(list, i)), id) == 0) {
            return true;
        }
    }
    return false;
}

/* True if the topic is one of those asked for, or as good as one. */
static bool
is_good(const json_t *row, const char *id)
{
    const json_t *others;
    const char *key;

    json_object_foreach (json_object_get(row, "alt"), key, others) {
        if (names(others, id)) {
            return true;
        }
    }
    return names(json_object_get(row, "topics"), id);
}

/* The topics that one text is answered with, and what its first question was taken for. */
struct reply {
    const char *answered[QUESTIONS_MAX];
    size_t count;
    struct topic_search first;
    int score;
};

static struct reply
reply_to(void *arena, const struct kb *kb, struct workspace *workspace, const char *text)
{
    struct pieces pieces = kb_questions(kb, arena, workspace, text, LANGUAGE_EN);
    struct reply reply = {.count = 0};
    bool any = false;
    size_t i;

    for (i = 0; i < pieces.count && reply.count < QUESTIONS_MAX; i++) {
        struct topic_search search;

        if (pieces.list[i].courtesy) {
            continue;
        }
        search = kb_search_topics(kb, workspace, pieces.list[i].text, LANGUAGE_EN);
        kb_trust(&pieces.list[i], &search);
        if (search.count > 0 && search.sureness == SURE) {
            reply.answered[reply.count++] = search.best[0].topic->id;
        }
        if (search.count > 0 && search.best[0].score > reply.score) {
            reply.score = search.best[0].score;
        }
        if (!any || (search.count > 0 && search.sureness == SURE && reply.first.sureness != SURE)) {
            reply.first = search;
            any = true;
        }
    }
    return reply;
}

/* True if the topic, or one as good, is among those answered. */
static bool
is_answered(const json_t *row, const char *id, const struct reply *reply)
{
    const json_t *others = json_object_get(json_object_get(row, "alt"), id);
    size_t i;

    for (i = 0; i < reply->count; i++) {
        if (strcmp(reply->answered[i], id) == 0 || names(others, reply->answered[i])) {
            return true;
        }
    }
    return false;
}

static void
count_asked(struct tally *tally, const json_t *row, const struct reply *reply)
{
    const json_t *topics = json_object_get(row, "topics");
    const struct topic_search *first = &reply->first;
    bool right = reply->count > 0 && is_good(row, reply->answered[0]);
    size_t found = 0, i;

    tally->asked++;
    tally->inside.list[tally->inside.count++] = reply->score;
    tally->first += first->count > 0 && is_good(row, first->best[0].topic->id);
    tally->right += right;
    tally->wrong += reply->count > 0 && !right;
    if (reply->count == 0 && first->sureness == BETWEEN_TWO) {
        tally->offered++;
        tally->helped +=
            is_good(row, first->best[0].topic->id) || is_good(row, first->best[1].topic->id);
    }
    for (i = 0; i < json_array_size(topics); i++) {
        found += is_answered(row, json_string_value(json_array_get(topics, i)), reply);
    }
    if (json_array_size(topics) == 2) {
        tally->two++;
        tally->both += found == 2;
    }
}

static void
count_text(struct tally *tally, const struct kb *kb, struct workspace *workspace, const json_t *row)
{
    const char *text = json_string_value(json_object_get(row, "text"));
    const char *route = json_string_value(json_object_get(row, "route"));
    const char *code = json_string_value(json_object_get(row, "lang"));
    void *arena = memory_must(talloc_new(NULL));

    if (text != NULL && route != NULL && code != NULL && strcmp(code, "en") == 0) {
        struct reply reply = reply_to(arena, kb, workspace, text);

        if (strcmp(route, "answer") == 0 && tally->inside.count < TEXTS_MAX) {
            count_asked(tally, row, &reply);
        } else if (strcmp(route, "unanswered") == 0 && tally->outside.count < TEXTS_MAX) {
            tally->outside.list[tally->outside.count++] = reply.score;
            tally->answered += reply.count > 0;
        }
    }
    talloc_free(arena);
}

static double
percent(int part, size_t whole)
{
    return whole == 0 ? 0 : 100.0 * part / (double)whole;
}

static void
print_file(const struct kb *kb, struct workspace *workspace, const char *path)
{
    void *arena = memory_must(talloc_new(NULL));
    struct tally tally = {.inside.list = memory_array(arena, int, TEXTS_MAX),
                          .outside.list = memory_array(arena, int, TEXTS_MAX)};
    FILE *file = fopen(path, "r");
    json_t *row;

    if (file == NULL) {
        perror(path);
        exit(1);
    }
    while ((row = json_loadf(file, JSON_DISABLE_EOF_CHECK, NULL)) != NULL) {
        count_text(&tally, kb, workspace, row);
        json_decref(row);
    }
    fclose(file);
    printf("%s\n  of %d asked: first %.1f, right %.1f, wrong %.1f, two offered %.1f (%.1f); ", path,
           tally.asked, percent(tally.first, tally.inside.count),
           percent(tally.right, tally.inside.count), percent(tally.wrong, tally.inside.count),
           percent(tally.offered, tally.inside.count), percent(tally.helped, tally.inside.count));
    printf("both of %d: %.1f; of %zu elsewhere answered %.1f; AUROC .%03.0f\n", tally.two,
           percent(tally.both, (size_t)tally.two), tally.outside.count,
           percent(tally.answered, tally.outside.count),
           1000 * area(&tally.inside, &tally.outside));
    talloc_free(arena);
}

int
main(int count, char **arguments)
{
    struct workspace *workspace = workspace_new();
    struct faults faults = {0};
    struct kb *kb;
    int i;

    if (count < 3) {
        fprintf(stderr, "usage: match_texts KB FILE.jsonl...\n");
        return 2;
    }
    if (kb_load(arguments[1], NULL, &kb, &faults) != 0) {
        fprintf(stderr, "%s\n", faults.list[0].text);
        return 1;
    }
    for (i = 2; i < count; i++) {
        print_file(kb, workspace, arguments[i]);
    }
    kb_free(kb);
    workspace_free(workspace);
    return 0;
}
