#include "kb_explain.h"

#include <string.h>

#include "kb_parts.h"
#include "memory.h"
#include "model.h"
#include "reaction.h"

/* ---- Topics -------------------------------------------------------------------------------- */

size_t
kb_held_out(const struct kb *kb, void *arena, enum language language, struct kb_held_out **lines)
{
    const struct kb_language *of = &kb->languages[language];
    size_t phrases, count = 0, i;
    const struct model_held_out *held_out = model_held_out(of->topics, &phrases);
    struct kb_held_out *list = memory_array(arena, struct kb_held_out, phrases + 1);

    for (i = 0; i < phrases; i++) {
        int label = of->phrases[i].label;
        const struct kb_held_out *before = count == 0 ? NULL : &list[count - 1];

        if (label == MODEL_ELSEWHERE || of->phrases[i].about) {
            continue; /* no way of asking, but more for the model to learn from */
        }
        list[count].topic = of->labels[label];
        list[count].line =
            before != NULL && before->topic == list[count].topic ? before->line + 1 : 0;
        list[count].won =
            held_out[i].label == MODEL_ELSEWHERE ? NULL : of->labels[held_out[i].label];
        list[count].score = held_out[i].score;
        list[count].sureness = held_out[i].sureness;
        count++;
    }
    *lines = list;
    return count;
}

size_t
kb_topic_words(const struct kb *kb, void *arena, struct workspace *workspace, const char *text,
               const struct topic *topic, const char **words, size_t room)
{
    const struct kb_language *of = &kb->languages[topic->language];
    int label;

    for (label = 0; label < of->label_count && of->labels[label] != topic; label++) {
    }
    return label == of->label_count
               ? 0
               : model_words(of->topics, arena, workspace, text, label, words, room);
}

/* ---- Signs --------------------------------------------------------------------------------- */

/* The line of the file on which one of its list items stands; 0 for none. */
static int
line_of(const char *const *items, const int *lines, size_t count, const char *item)
{
    size_t i;

    for (i = 0; i < count && item != NULL; i++) {
        if (strcmp(items[i], item) == 0) {
            return lines[i];
        }
    }
    return 0;
}

static void
find_lines(const struct kb *kb, struct kb_sign_reason *reason)
{
    const struct sign_explained *explained = &reason->explained;
    const struct sign *sign = explained->match.sign;
    const struct sign_file *file = &kb->sign_files[sign - kb->signs];

    reason->phrase_line =
        line_of(sign->said_as, file->said_as_lines, sign->said_as_count, explained->match.phrase);
    if (reason->phrase_line == 0) {
        reason->phrase_line = line_of(file->whole_texts, file->whole_text_lines,
                                      file->whole_text_count, explained->match.phrase);
    }
    reason->explained_by_line = line_of(file->not_meant_by, file->not_meant_by_lines,
                                        file->not_meant_by_count, explained->explained_by);
}

size_t
kb_sign_reasons(const struct kb *kb, void *arena, struct workspace *workspace, const char *text,
                struct kb_sign_reason **reasons)
{
    struct sign_explained *all = memory_array(arena, struct sign_explained, kb->sign_count + 1);
    struct words words = words_read(arena, NULL, reaction_without_copy(arena, text), LANGUAGE_EN);
    size_t count = 0, i;
    int language;

    for (language = 0; language < LANGUAGE_COUNT; language++) {
        count += sign_index_explain(kb->languages[language].signs, workspace, words,
                                    kb_is_asked(kb, workspace, text, (enum language)language),
                                    all + count, kb->sign_count - count);
    }
    *reasons = memory_array(arena, struct kb_sign_reason, count + 1);
    for (i = 0; i < count; i++) {
        (*reasons)[i].explained = all[i];
        find_lines(kb, &(*reasons)[i]);
    }
    return count;
}
