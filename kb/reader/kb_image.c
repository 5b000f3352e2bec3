/*
 * Copies what a kb is asked for. What only its building needed is left out: word classes, the lists
 * that the signs and the model were made from, texts that only sound like a sign.
 */
#include "kb_image.h"

#include "kb_parts.h"
#include "memory.h"
#include "model.h"
#include "ordinary.h"
#include "shorthand.h"
#include "sign_match.h"
#include "vectors.h"

/* ---- Topics and signs ---------------------------------------------------------------------- */

static void
topics_image(struct image *image, struct kb *kb)
{
    size_t i;

    image_array(image, &kb->topics, kb->topic_count);
    for (i = 0; i < kb->topic_count; i++) {
        struct topic *topic = &kb->topics[i];

        image_text(image, &topic->id);
        image_text(image, &topic->title);
        image_text(image, &topic->answer);
        image_text(image, &topic->handout);
        image_texts(image, &topic->asked_as, topic->asked_as_count);
        image_array(image, &topic->asked_as_lines, topic->asked_as_count);
        image_texts(image, &topic->only_if, topic->only_if_count);
        image_text(image, &topic->file);
    }
}

static void
sign_image(struct image *image, struct sign *sign)
{
    image_text(image, &sign->id);
    image_text(image, &sign->title);
    image_text(image, &sign->in_brief);
    image_text(image, &sign->reply);
    image_texts(image, &sign->said_as, sign->said_as_count);
    image_text(image, &sign->file);
}

static void
sign_file_image(struct image *image, struct sign_file *file)
{
    image_texts(image, &file->not_meant_by, file->not_meant_by_count);
    image_array(image, &file->said_as_lines, file->sign.said_as_count);
    image_array(image, &file->not_meant_by_lines, file->not_meant_by_count);
    image_texts(image, &file->whole_texts, file->whole_text_count);
    image_array(image, &file->whole_text_lines, file->whole_text_count);
    file->sign = (struct sign){0};
    file->harmless_texts = NULL;
    file->harmless_text_count = 0;
}

static void
signs_image(struct image *image, struct kb *kb)
{
    size_t i;

    image_array(image, &kb->signs, kb->sign_count);
    image_array(image, &kb->sign_files, kb->sign_count);
    for (i = 0; i < kb->sign_count; i++) {
        sign_image(image, &kb->signs[i]);
        sign_file_image(image, &kb->sign_files[i]);
    }
}

/* ---- Equipment ----------------------------------------------------------------------------- */

static void
unit_image(struct image *image, struct equipment **of)
{
    struct equipment *unit = image_array(image, of, 1);
    struct alarm *alarms;
    size_t i;

    image_text(image, &unit->id);
    image_text(image, &unit->name);
    image_text(image, &unit->file);
    image_array(image, &unit->run_times, unit->run_time_count);
    image_array(image, &unit->gauge, unit->gauge_count);
    image_text(image, &unit->gauge_how);
    image_text(image, &unit->swap_how);
    image_texts(image, &unit->needs_wall, unit->needs_wall_count);
    image_text(image, &unit->no_breath);
    alarms = image_array(image, &unit->alarms, unit->alarm_count);
    for (i = 0; i < unit->alarm_count; i++) {
        image_text(image, &alarms[i].shows);
        image_text(image, &alarms[i].meaning);
        image_text(image, &alarms[i].meaning_es);
    }
    image_array(image, &unit->cold, unit->cold_count);
}

static void
equipment_image(struct image *image, struct kb *kb)
{
    size_t i;

    image_pointers(image, &kb->equipment, kb->equipment_count);
    for (i = 0; i < kb->equipment_count; i++) {
        unit_image(image, &kb->equipment[i]);
    }
}

/* ---- What is said in a language ------------------------------------------------------------ */

/* A model with what the language has of words, which is in the image by then. */
static void
of_words_image(struct image *image, struct model **model, const struct kb_language *of)
{
    model_image(image, model,
                &(struct model_content){
                    .shorthand = of->shorthand, .ordinary = of->ordinary, .vectors = of->vectors});
}

static void
search_image(struct image *image, struct kb_language *of, const struct kb *from,
             const struct kb *copy)
{
    struct model_phrase *phrases = image_array(image, &of->phrases, of->phrase_count);
    size_t i;
    int label;

    for (i = 0; i < of->phrase_count; i++) {
        image_text(image, &phrases[i].text);
    }
    image_pointers(image, &of->labels, (size_t)of->label_count);
    for (label = 0; label < of->label_count; label++) {
        image_same(image, &of->labels[label], copy->topics + (of->labels[label] - from->topics));
    }
    of_words_image(image, &of->topics, of);
}

static void
language_image(struct image *image, struct kb_language *of, const struct kb *from,
               const struct kb *copy)
{
    of->classes = NULL;
    of->known = of->elsewhere = of->harmless = NULL;
    of->courtesy = of->request = of->fault = of->inquiry = NULL;
    shorthand_image(image, &of->shorthand);
    ordinary_image(image, &of->ordinary);
    ordinary_image(image, &of->right);
    vectors_image(image, &of->vectors);
    sign_index_image(image, &of->signs,
                     &(struct sign_image){from->signs, copy->signs, of->shorthand, of->ordinary});
    search_image(image, of, from, copy);
    if (of->courtesies != NULL) {
        of_words_image(image, &of->courtesies, of);
    }
    if (of->matters != NULL) {
        of_words_image(image, &of->matters, of);
    }
}

/* ---- All together -------------------------------------------------------------------------- */

const char *
kb_image(const struct kb *kb, struct image *image, size_t *length, struct fault *fault)
{
    struct kb *copy = (struct kb *)(uintptr_t)kb; /* until it is copied */
    int language;

    image_array(image, &copy, 1);
    topics_image(image, copy);
    signs_image(image, copy);
    equipment_image(image, copy);
    for (language = 0; language < LANGUAGE_COUNT; language++) {
        language_image(image, &copy->languages[language], kb, copy);
    }
    return image_bytes(image, length, fault);
}

int
kb_of_image(const struct content_kept *kept, struct kb **kb, struct fault *fault)
{
    const struct kb *first = image_open(kept->bytes, kept->length, fault);

    if (first == NULL) {
        return -1;
    }
    *kb = memory_new(NULL, struct kb);
    **kb = *first;
    (*kb)->kept = kept->as;
    memory_must(talloc_reparent(talloc_parent(kept->bytes), *kb, kept->bytes));
    return 0;
}
