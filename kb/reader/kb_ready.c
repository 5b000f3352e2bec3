/* Makes what was read ready to be searched: the signs and the model of the topics. */
#include "kb_parts.h"

#include <string.h>

#include "memory.h"
#include "model.h"
#include "sign_match.h"
#include "signs_read.h"

typedef void take_text(struct sign_index *signs, const char *text);

/* Gives the signs each of these lines, unless # begins it; NULL has none. */
static void
take_lines(struct kb *kb, const char *file, take_text *take, struct sign_index *signs)
{
    char *lines = file == NULL ? NULL : memory_copy(kb, file), *line;

    while (lines != NULL && (line = strtok_r(lines, "\r\n", &lines)) != NULL) {
        if (line[0] != '#') {
            take(signs, line);
        }
    }
}

/* The lines that # does not begin, with blanks in the place of the others. */
static char *
without_comments(void *arena, const char *lines)
{
    char *copy = memory_copy(arena, lines), *line = copy;

    while (*line != '\0') {
        size_t length = strcspn(line, "\r\n");

        if (line[0] == '#') {
            memset(line, ' ', length);
        }
        line += length;
        line += strspn(line, "\r\n");
    }
    return copy;
}

/* How the words of a language are taken by the signs of a language. */
static take_text *
knower(enum language of_text, enum language of_signs)
{
    return of_text == of_signs ? sign_index_know : sign_index_know_foreign;
}

/* The words that the office wrote of a topic are no slips, and nothing that it is asked for by is a
 * sign. What it is asked for by may be misspelt, as renters do. */
static void
know_topic(struct sign_index *signs, const struct topic *topic, enum language language)
{
    take_text *know = knower(topic->language, language);
    size_t i;

    know(signs, topic->title);
    know(signs, topic->answer);
    know(signs, topic->handout);
    for (i = 0; i < topic->asked_as_count && topic->language == language; i++) {
        sign_index_ordinary(signs, topic->asked_as[i]);
    }
}

void
build_signs(struct build *build, enum language language)
{
    struct kb *kb = build->kb;
    struct kb_language *of = &kb->languages[language];
    size_t i;

    of->signs = sign_index_new(kb, language, of->shorthand, of->classes);
    for (i = 0; i < LANGUAGE_COUNT; i++) { /* a word of one is no slip of the other's */
        if (kb->languages[i].known != NULL) {
            char *known = without_comments(kb, kb->languages[i].known);

            knower((enum language)i, language)(of->signs, known);
            talloc_free(known);
        }
    }
    for (i = 0; i < kb->sign_count; i++) {
        if (kb->signs[i].language == language) {
            sign_index_add(of->signs, build->workspace, &kb->sign_files[i], &kb->signs[i],
                           build->faults);
        }
        knower(kb->signs[i].language, language)(of->signs, kb->signs[i].reply);
    }
    for (i = 0; i < kb->topic_count; i++) {
        know_topic(of->signs, &kb->topics[i], language);
    }
    take_lines(kb, of->elsewhere, sign_index_ordinary, of->signs);
    take_lines(kb, of->harmless, sign_index_harmless, of->signs);
}

/* Texts of a label, one a line, added to the phrases; # begins a comment. */
static struct model_phrase *
add_lines(struct kb *kb, char *lines, int label, struct model_phrase *phrases, size_t *count)
{
    char *line;

    while ((line = strtok_r(lines, "\r\n", &lines)) != NULL) {
        if (line[0] != '#') {
            phrases = memory_grow(kb, struct model_phrase, phrases, *count);
            phrases[(*count)++] = (struct model_phrase){.text = line, .label = label};
        }
    }
    return phrases;
}

/* The sentences of a text about a topic, which share its words with what renters ask. */
static struct model_phrase *
add_sentences(struct kb *kb, const char *text, int label, struct model_phrase *phrases,
              size_t *count)
{
    enum { SHORTEST = 9 }; /* bytes; less is a number or a list's mark */
    char *rest = memory_copy(kb, text), *sentence;

    while ((sentence = strtok_r(rest, ".?!\r\n", &rest)) != NULL) {
        if (strlen(sentence) >= SHORTEST) {
            phrases = memory_grow(kb, struct model_phrase, phrases, *count);
            phrases[(*count)++] =
                (struct model_phrase){.text = sentence, .label = label, .about = true};
        }
    }
    return phrases;
}

/* All that one topic gives the model to learn from. */
static struct model_phrase *
add_topic(struct kb *kb, const struct topic *topic, int label, struct model_phrase *phrases,
          size_t *count)
{
    size_t i;

    for (i = 0; i < topic->asked_as_count; i++) {
        phrases = memory_grow(kb, struct model_phrase, phrases, *count);
        phrases[(*count)++] = (struct model_phrase){.text = topic->asked_as[i], .label = label};
    }
    phrases = add_sentences(kb, topic->title, label, phrases, count);
    phrases = add_sentences(kb, topic->answer, label, phrases, count);
    return add_sentences(kb, topic->handout, label, phrases, count);
}

/* A model of these, with what the language has of words. */
static struct model *
model_of(const struct build *build, enum language language, const struct model_phrase *phrases,
         size_t count, int label_count)
{
    const struct kb_language *of = &build->kb->languages[language];

    return model_build(build->kb, build->workspace,
                       &(struct model_content){.language = language,
                                               .phrases = phrases,
                                               .phrase_count = count,
                                               .label_count = label_count,
                                               .shorthand = of->shorthand,
                                               .ordinary = of->ordinary,
                                               .vectors = of->vectors});
}

static void
build_model(struct build *build, enum language language)
{
    struct kb *kb = build->kb;
    struct kb_language *of = &kb->languages[language];
    struct model_phrase *phrases = NULL;
    size_t count = 0, i;

    of->labels = memory_array(kb, const struct topic *, kb->topic_count);
    for (i = 0; i < kb->topic_count; i++) {
        const struct topic *topic = &kb->topics[i];

        if (topic->language != language) {
            continue;
        }
        phrases = add_topic(kb, topic, of->label_count, phrases, &count);
        of->labels[of->label_count++] = topic;
    }
    if (of->elsewhere != NULL) {
        phrases = add_lines(kb, of->elsewhere, MODEL_ELSEWHERE, phrases, &count);
    }
    of->phrases = phrases;
    of->phrase_count = count;
    of->topics = model_of(build, language, phrases, count, of->label_count);
}

/* What is to be told apart, and behind it the rest. */
struct told_apart {
    struct model_phrase *phrases;
    size_t count, told_count;
    const char **topics; /* ids: what asks for these is about the same as the first */
    size_t topic_count;
    bool follows;       /* every other one of the rest stands behind one of the first */
    int asking;         /* label of what asks for any other topic */
    int equipment;      /* and of what shows a sign of the equipment */
    size_t asked_every; /* every so many-th of what asks is enough */
};

/* Adds every so many-th of some texts to the rest. */
static void
add_rest(struct kb *kb, struct told_apart *list, int label, const char *const *texts,
         size_t text_count, size_t every)
{
    size_t i;

    for (i = 0; i < text_count; i += every) {
        size_t rest = list->count - list->told_count;
        const char *before = list->phrases[rest % list->told_count].text;
        bool is_plain = !list->follows || rest % 2 == 0;

        list->phrases = memory_grow(kb, struct model_phrase, list->phrases, list->count);
        list->phrases[list->count++] = (struct model_phrase){
            .text = is_plain ? texts[i] : memory_format(kb, "%s %s", before, texts[i]),
            .label = label};
    }
}

static bool
is_among(const char *id, const char *const *ids, size_t count)
{
    size_t i;

    for (i = 0; i < count && strcmp(id, ids[i]) != 0; i++) {
    }
    return i < count;
}

/* All else that is texted, of which some is enough to tell the first from. The lines of `elsewhere`
 * were cut by then. */
static void
collect_rest(struct kb *kb, enum language language, struct told_apart *list)
{
    enum { SIGN_EVERY = 3 };
    const struct kb_language *of = &kb->languages[language];
    size_t i;

    for (i = 0; i < of->phrase_count; i++) {
        if (of->phrases[i].label == MODEL_ELSEWHERE) {
            add_rest(kb, list, MODEL_ELSEWHERE, &of->phrases[i].text, 1, 1);
        }
    }
    for (i = 0; i < kb->topic_count; i++) {
        const struct topic *topic = &kb->topics[i];

        if (topic->language == language && !is_among(topic->id, list->topics, list->topic_count)) {
            add_rest(kb, list, list->asking, topic->asked_as, topic->asked_as_count,
                     list->asked_every);
        }
    }
    for (i = 0; i < kb->sign_count; i++) {
        if (kb->signs[i].language == language) {
            add_rest(kb, list,
                     kb->signs[i].level == SIGN_EQUIPMENT ? list->equipment : MODEL_ELSEWHERE,
                     kb->sign_files[i].whole_texts, kb->sign_files[i].whole_text_count, SIGN_EVERY);
        }
    }
}

/* What wants no answer, against some of all that does. Thanks alone do not make one. */
static void
build_courtesies(struct build *build, enum language language)
{
    struct kb *kb = build->kb;
    struct kb_language *of = &kb->languages[language];
    struct told_apart list = {
        .follows = true, .asking = MODEL_ELSEWHERE, .equipment = MODEL_ELSEWHERE, .asked_every = 8};

    if (of->courtesy == NULL) {
        return;
    }
    list.phrases = add_lines(kb, of->courtesy, 0, list.phrases, &list.count);
    list.told_count = list.count;
    if (list.count > 0) {
        collect_rest(kb, language, &list);
    }
    of->courtesies = model_of(build, language, list.phrases, list.count, 1);
}

/* Takes the ids behind "Topics:" out of the lines of a matter. */
static void
take_topics(struct build *build, const char *file, char *lines, struct told_apart *list)
{
    static const char head[] = "Topics:", between[] = ", \t\r\n";
    char *line = lines, *ids, *id;
    int number = 1;

    for (; strncmp(line, head, strlen(head)) != 0; line++, number++) {
        line = strchr(line, '\n');
        if (line == NULL) {
            return;
        }
    }
    ids = memory_copy_n(build->kb, line + strlen(head), strcspn(line, "\n") - strlen(head));
    *line = '#'; /* it is none of the texts */
    while ((id = strtok_r(ids, between, &ids)) != NULL) {
        if (kb_topic(build->kb, id, LANGUAGE_EN) == NULL) {
            faults_add(build->faults, file, number, "Topics", "no topic has the id %s", id);
        }
        list->topics = memory_grow(build->kb, const char *, list->topics, list->topic_count);
        list->topics[list->topic_count++] = id;
    }
}

/* What the office must hear of, against questions about the same and some of all else. */
static void
build_matters(struct build *build, enum language language)
{
    struct kb *kb = build->kb;
    struct kb_language *of = &kb->languages[language];
    char *const lists[] = {[MATTER_REQUEST] = of->request, [MATTER_FAULT] = of->fault};
    const char *const files[] = {[MATTER_REQUEST] = "request", [MATTER_FAULT] = "fault"};
    struct told_apart list = {.asking = MATTER_NONE, .equipment = MATTER_FAULT, .asked_every = 4};
    int matter;

    for (matter = 0; matter < MATTER_NONE; matter++) {
        if (lists[matter] != NULL) {
            take_topics(
                build, memory_format(kb, "words/%s-%s.txt", language_code(language), files[matter]),
                lists[matter], &list);
            list.phrases = add_lines(kb, lists[matter], matter, list.phrases, &list.count);
        }
    }
    list.told_count = list.count;
    if (list.count == 0) {
        return;
    }
    if (of->inquiry != NULL) {
        list.phrases = add_lines(kb, of->inquiry, MATTER_NONE, list.phrases, &list.count);
    }
    collect_rest(kb, language, &list);
    of->matters = model_of(build, language, list.phrases, list.count, MATTER_NONE + 1);
}

void
build_ready(struct build *build, enum language language)
{
    sign_index_close(build->kb->languages[language].signs, build->workspace,
                     build->kb->languages[language].ordinary, build->faults);
    build_model(build, language);
    build_courtesies(build, language);
    build_matters(build, language);
}
