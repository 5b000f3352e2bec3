/*
 * What reading one text costs, against one Jansson parse of a webhook's request, and what a model
 * costs to build, to load and to keep.
 *
 *     match_speed KB [VECTORS]
 *
 * The machine may be shared: each time is the least of several rounds.
 */
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include <jansson.h>

#include "cut.h"
#include "image.h"
#include "kb.h"
#include "memory.h"
#include "model.h"
#include "questions.h"
#include "vectors_file.h"

static const char renters_text[] =
    "hi, we are heading up to the lake tomorow and my husband wants to know how long the battries "
    "will last on setting 2 and whether we can charge them in the car??"; /* 160 characters */

/* ---- Time ----------------------------------------------------------------------------------- */

static double
seconds(void)
{
    struct timespec now;

    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec + (double)now.tv_nsec / 1e9;
}

/* What is timed: one act, and what it acts on. */
struct act {
    void (*once)(const struct act *act);
    const struct kb *kb;
    const struct model *model;
    struct workspace *workspace;
    const char *request;
};

/* Seconds that one act takes. */
static double
time_of(const struct act *act)
{
    enum { ROUNDS = 15, TIMES = 400 };
    double least = 0;
    int round, i;

    for (round = 0; round < ROUNDS; round++) {
        double start = seconds(), took;

        for (i = 0; i < TIMES; i++) {
            act->once(act);
        }
        took = (seconds() - start) / TIMES;
        least = round == 0 || took < least ? took : least;
    }
    return least;
}

static void
parse(const struct act *act)
{
    json_decref(json_loads(act->request, JSON_REJECT_DUPLICATES, NULL));
}

static void
cut(const struct act *act)
{
    void *arena = memory_must(talloc_new(NULL));

    cut_questions(arena, renters_text, LANGUAGE_EN);
    talloc_free(arena);
    (void)act;
}

static void
put_together(const struct act *act)
{
    void *arena = memory_must(talloc_new(NULL));

    kb_questions(act->kb, arena, act->workspace, renters_text, LANGUAGE_EN);
    talloc_free(arena);
}

static void
find_signs(const struct act *act)
{
    struct sign_match match;

    kb_find_signs(act->kb, act->workspace, renters_text, &match, 1);
}

static void
find_topic(const struct act *act)
{
    kb_search_topics(act->kb, act->workspace, renters_text, LANGUAGE_EN);
}

static void
search(const struct act *act)
{
    model_search(act->model, NULL, act->workspace, renters_text);
}

/* ---- Models --------------------------------------------------------------------------------- */

/* Phrases to build from. */
struct set {
    struct model_phrase *phrases;
    size_t count;
    int labels;
};

/* At most `each` ways of asking of every topic. */
static struct set
asked_of(void *arena, const struct kb *kb, size_t each)
{
    struct set set = {NULL, 0, 0};
    size_t count, i, k;
    const struct topic *topics = kb_topics(kb, &count);

    for (i = 0; i < count; i++) {
        if (topics[i].language != LANGUAGE_EN) {
            continue;
        }
        for (k = 0; k < topics[i].asked_as_count && k < each; k++) {
            set.phrases = memory_grow(arena, struct model_phrase, set.phrases, set.count);
            set.phrases[set.count++] =
                (struct model_phrase){.text = topics[i].asked_as[k], .label = set.labels};
        }
        set.labels++;
    }
    return set;
}

/* As many phrases as wanted: those there are, then new ones put together from two. */
static void
grow_to(void *arena, struct set *set, size_t wanted)
{
    size_t base = set->count;
    uint32_t random = 1;

    while (set->count < wanted) {
        const struct model_phrase *one, *other;

        random = random * 1664525u + 1013904223u;
        one = &set->phrases[(random >> 8) % base];
        random = random * 1664525u + 1013904223u;
        other = &set->phrases[(random >> 8) % base];
        set->phrases = memory_grow(arena, struct model_phrase, set->phrases, set->count);
        set->phrases[set->count++] = (struct model_phrase){
            .text = memory_format(arena, "%s %s", one->text, other->text), .label = one->label};
    }
}

static void
print_model(void *arena, const struct set *set, const struct vectors *vectors, double one_parse)
{
    struct workspace *workspace = workspace_new();
    const struct model_content content = {.language = LANGUAGE_EN,
                                          .phrases = set->phrases,
                                          .phrase_count = set->count,
                                          .label_count = set->labels,
                                          .vectors = vectors};
    double start = seconds(), built, saved, loading, took;
    struct model *model = model_build(arena, workspace, &content), *copy = model, *loaded;
    struct fault fault;
    struct image *image = image_new(arena, &fault);
    size_t length;
    const char *kept;
    char *bytes;

    built = seconds() - start;
    if (image != NULL) {
        model_image(image, &copy, &(struct model_content){.language = LANGUAGE_EN});
    }
    kept = image == NULL ? NULL : image_bytes(image, &length, &fault);
    if (kept == NULL) {
        fprintf(stderr, "%s\n", fault.text);
        exit(1);
    }
    bytes = memory_must(talloc_memdup(arena, kept, (unsigned)length));
    talloc_free(image);
    saved = seconds();
    loaded = image_open(bytes, length, &fault);
    if (loaded == NULL) {
        fprintf(stderr, "%s\n", fault.text);
        exit(1);
    }
    loading = seconds() - saved;
    took = time_of(&(struct act){.once = search, .model = loaded, .workspace = workspace});
    printf("%7zu phrases: built in %.0f ms, loaded in %.1f ms, %.1f MB; a search %.1f us = %.1f "
           "parses\n",
           set->count, 1000 * built, 1000 * loading, (double)length / 1048576, 1e6 * took,
           took / one_parse);
    talloc_free(bytes);
    talloc_free(model);
    workspace_free(workspace);
}

/* The parts of a verdict with the kb as it is. */
static double
print_parts(const struct kb *kb)
{
    static const struct {
        const char *name;
        void (*once)(const struct act *act);
    } parts[] = {{"cutting it", cut},
                 {"cutting and putting together", put_together},
                 {"finding the topic", find_topic},
                 {"finding signs", find_signs}};
    struct act act = {.once = parse, .kb = kb, .workspace = workspace_new()};
    char *request = memory_format(NULL,
                                  "{\"id\":\"m-000123\",\"from\":\"+12085550123\",\"to\":"
                                  "\"+12085550100\",\"body\":\"%s\",\"at\":"
                                  "\"2026-02-03T03:12:45Z\"}",
                                  renters_text);
    double one_parse, took;
    size_t i;

    act.request = request;
    one_parse = time_of(&act);
    printf("one parse of a webhook request: %.2f us; with the content as it is,\n",
           1e6 * one_parse);
    for (i = 0; i < sizeof(parts) / sizeof(parts[0]); i++) {
        act.once = parts[i].once;
        took = time_of(&act);
        printf("  %-29s %5.1f us = %4.1f parses\n", parts[i].name, 1e6 * took, took / one_parse);
    }
    talloc_free(request);
    workspace_free(act.workspace);
    return one_parse;
}

int
main(int count, char **arguments)
{
    static const size_t sizes[] = {2000, 20000, 100000};
    void *arena = memory_must(talloc_new(NULL));
    const struct vectors *vectors = NULL;
    struct faults faults = {0};
    double one_parse;
    struct set set;
    struct kb *kb;
    size_t i;

    if (count < 2 || count > 3) {
        fprintf(stderr, "usage: match_speed KB [VECTORS]\n");
        return 2;
    }
    if (count == 3) {
        vectors = map_vectors(arena, arguments[2]);
    }
    if (kb_load(arguments[1], NULL, &kb, &faults) != 0) {
        fprintf(stderr, "%s\n", faults.list[0].text);
        return 1;
    }
    one_parse = print_parts(kb);
    set = asked_of(arena, kb, 40);
    print_model(arena, &set, vectors, one_parse);
    for (i = 0; i < sizeof(sizes) / sizeof(sizes[0]); i++) {
        grow_to(arena, &set, sizes[i]);
        print_model(arena, &set, vectors, one_parse);
    }
    set = asked_of(arena, kb, SIZE_MAX);
    print_model(arena, &set, vectors, one_parse);
    kb_free(kb);
    talloc_free(arena);
    return 0;
}
