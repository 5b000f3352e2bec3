#include "check_why.h"

#include <string.h>

#include "check_print.h"
#include "questions.h"
#include "kb_explain.h"
#include "memory.h"

enum { WORDS_SHOWN = 5 };

static const char *const sureness_names[] = {
    [UNSURE] = "not sure", [BETWEEN_TWO] = "between two", [SURE] = "sure"};
static const char *const sureness_means[] = {[UNSURE] = "a person answers, and it is a gap",
                                             [BETWEEN_TWO] = "both titles are offered",
                                             [SURE] = "the first is answered"};
static const char *const held_names[] = {
    [SIGN_FIRES] = "fires",           [SIGN_LIKE] = "fires by likeness",
    [SIGN_TAKEN_BACK] = "taken back", [SIGN_EXPLAINED] = "explained",
    [SIGN_UNLIKE] = "unlike",         [SIGN_PAST] = "past"};
static const char *const level_names[] = {
    [SIGN_CLINICAL] = "clinical", [SIGN_EQUIPMENT] = "equipment", [SIGN_EMERGENCY] = "emergency"};

static char *
words_of(void *arena, const char *text, const struct sign_match *match)
{
    return memory_copy_n(arena, text + match->start, match->end - match->start);
}

/* The line of a topic's file on which an asked-as line stands; 0 if it is none of its. */
static int
line_of(const struct topic *topic, const char *asked_as)
{
    size_t i;

    for (i = 0; i < topic->asked_as_count; i++) {
        if (strcmp(topic->asked_as[i], asked_as) == 0) {
            return topic->asked_as_lines[i];
        }
    }
    return 0;
}

/* ---- For people ---------------------------------------------------------------------------- */

static void
print_sign(FILE *out, void *arena, const char *text, const struct kb_sign_reason *reason)
{
    const struct sign_explained *explained = &reason->explained;
    const struct sign *sign = explained->match.sign;
    bool is_like = explained->held == SIGN_LIKE;
    const char *words = words_of(arena, text, &explained->match);

    check_print_text(
        out, 2,
        memory_format(arena, "%s (%s) %s \"%s\"", sign->id, level_names[sign->level],
                      explained->held == SIGN_FIRES || is_like ? "fires on" : "is held back on",
                      words));
    check_print_text(out, 4,
                     memory_format(arena, "%s:%d: %s: %s", sign->file, reason->phrase_line,
                                   is_like ? "most like, of what was learnt" : "Said as",
                                   explained->match.phrase));
    if (explained->held == SIGN_TAKEN_BACK) {
        check_print_text(out, 4, "a negation before these words takes them back");
    } else if (explained->held == SIGN_PAST) {
        check_print_text(out, 4, "a time long past beside these words puts them there");
    } else if (explained->held == SIGN_UNLIKE) {
        check_print_text(out, 4, "all the rest of the text is like harmless ones");
    } else if (explained->explained_by != NULL) {
        check_print_text(out, 4,
                         memory_format(arena, "%s:%d: Not meant by: %s", sign->file,
                                       reason->explained_by_line, explained->explained_by));
    }
}

static void
print_signs(FILE *out, void *arena, const char *text, const struct kb_sign_reason *reasons,
            size_t count)
{
    size_t i;

    fputs("Signs, in the whole text\n", out);
    for (i = 0; i < count; i++) {
        print_sign(out, arena, text, &reasons[i]);
    }
    if (count == 0) {
        fputs("  none: no line of a sign has its words here\n", out);
    }
    check_print_text(out, 2, "(Oxygen readings fire by their number; hutbell ask shows that.)");
}

static void
print_match(FILE *out, void *arena, const struct kb *kb, struct workspace *workspace,
            const char *question, const struct topic_match *match, size_t place)
{
    const struct topic *topic = match->topic;
    const char *words[WORDS_SHOWN];
    size_t count = kb_topic_words(kb, arena, workspace, question, topic, words, WORDS_SHOWN), i;
    char *counted = memory_copy(arena, "");

    check_print_text(out, 2,
                     memory_format(arena, "%zu. %s, score %d", place, topic->id, match->score));
    check_print_text(out, 5,
                     memory_format(arena, "nearest: %s:%d: \"%s\"", topic->file,
                                   line_of(topic, match->nearest), match->nearest));
    for (i = 0; i < count; i++) {
        memory_append(&counted, "%s%s", i == 0 ? "" : ", ", words[i]);
    }
    if (count > 0) {
        check_print_text(out, 5, memory_format(arena, "words that counted: %s", counted));
    }
}

static void
print_question(FILE *out, void *arena, const struct kb *kb, struct workspace *workspace,
               const char *question, enum language language)
{
    struct topic_search search = kb_search_topics(kb, workspace, question, language);
    size_t i;

    check_print_text(out, 0, memory_format(arena, "Topics for \"%s\"", question));
    for (i = 0; i < search.count; i++) {
        print_match(out, arena, kb, workspace, question, &search.best[i], i + 1);
    }
    check_print_text(out, 2,
                     search.count == 0
                         ? "none: no word of it is known; a person answers, and it is a gap"
                         : memory_format(arena, "%s: %s", sureness_names[search.sureness],
                                         sureness_means[search.sureness]));
}

void
check_why_print(FILE *out, const struct kb *kb, struct workspace *workspace, const char *text)
{
    void *arena = memory_must(talloc_new(NULL));
    enum language language = words_language(arena, text);
    struct pieces pieces = kb_questions(kb, arena, workspace, text, language);
    struct kb_sign_reason *reasons;
    size_t count = kb_sign_reasons(kb, arena, workspace, text, &reasons), i;

    print_signs(out, arena, text, reasons, count);
    for (i = 0; i < pieces.count; i++) {
        fputc('\n', out);
        if (pieces.list[i].courtesy) {
            check_print_text(out, 0, memory_format(arena, "Courtesy: \"%s\"", pieces.list[i].text));
        } else {
            print_question(out, arena, kb, workspace, pieces.list[i].text, language);
        }
    }
    fputs("\nThis is what the content says; hutbell ask shows what would be texted.\n", out);
    talloc_free(arena);
}

/* ---- For programs -------------------------------------------------------------------------- */

static json_t *
sign_json(void *arena, const char *text, const struct kb_sign_reason *reason)
{
    const struct sign_explained *explained = &reason->explained;
    const struct sign *sign = explained->match.sign;

    return memory_must(
        json_pack("{s:s, s:s, s:s, s:s, s:s, s:i, s:s, s:s?, s:i}", "sign", sign->id, "level",
                  level_names[sign->level], "held", held_names[explained->held], "words",
                  words_of(arena, text, &explained->match), "file", sign->file, "line",
                  reason->phrase_line, "phrase", explained->match.phrase, "explained_by",
                  explained->explained_by, "explained_by_line", reason->explained_by_line));
}

static json_t *
match_json(void *arena, const struct kb *kb, struct workspace *workspace, const char *question,
           const struct topic_match *match)
{
    const struct topic *topic = match->topic;
    const char *words[WORDS_SHOWN];
    size_t count = kb_topic_words(kb, arena, workspace, question, topic, words, WORDS_SHOWN), i;
    json_t *list = memory_must(json_array());

    for (i = 0; i < count; i++) {
        json_array_append_new(list, json_string(words[i]));
    }
    return memory_must(json_pack("{s:s, s:i, s:s, s:i, s:s, s:o}", "topic", topic->id, "score",
                                 match->score, "file", topic->file, "line",
                                 line_of(topic, match->nearest), "nearest", match->nearest, "words",
                                 list));
}

static json_t *
question_json(void *arena, const struct kb *kb, struct workspace *workspace, const char *question,
              enum language language)
{
    struct topic_search search = kb_search_topics(kb, workspace, question, language);
    json_t *topics = memory_must(json_array());
    size_t i;

    for (i = 0; i < search.count; i++) {
        json_array_append_new(topics, match_json(arena, kb, workspace, question, &search.best[i]));
    }
    return memory_must(json_pack("{s:s, s:s, s:o}", "text", question, "band",
                                 sureness_names[search.sureness], "topics", topics));
}

json_t *
check_why_json(const struct kb *kb, struct workspace *workspace, const char *text)
{
    void *arena = memory_must(talloc_new(NULL));
    enum language language = words_language(arena, text);
    struct pieces pieces = kb_questions(kb, arena, workspace, text, language);
    json_t *signs = memory_must(json_array()), *questions = memory_must(json_array());
    struct kb_sign_reason *reasons;
    size_t count = kb_sign_reasons(kb, arena, workspace, text, &reasons), i;

    for (i = 0; i < count; i++) {
        json_array_append_new(signs, sign_json(arena, text, &reasons[i]));
    }
    for (i = 0; i < pieces.count; i++) {
        if (!pieces.list[i].courtesy) {
            json_array_append_new(
                questions, question_json(arena, kb, workspace, pieces.list[i].text, language));
        }
    }
    talloc_free(arena);
    return memory_must(json_pack("{s:s, s:s, s:o, s:o}", "text", text, "language",
                                 language_code(language), "signs", signs, "questions", questions));
}
