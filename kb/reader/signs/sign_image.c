/*
 * The signs of a language as part of an image (image.h). What only the building asked for is left
 * out: keys of words once they have ids, and the word classes.
 */
#include <string.h>

#include "image.h"
#include "sign_match_inside.h"
#include "sign_opinion_inside.h"
#include "sign_vocabulary_inside.h"

/* ---- Vocabulary ---------------------------------------------------------------------------- */

static void
spellings_image(struct image *image, struct vocabulary *vocabulary)
{
    size_t i;

    image_array(image, &vocabulary->spellings, vocabulary->spelling_count);
    for (i = 0; i < vocabulary->spelling_count; i++) {
        image_text(image, &vocabulary->spellings[i].text);
        image_text(image, &vocabulary->spellings[i].stem);
        vocabulary->spellings[i].key = NULL;
    }
    spelling_image(image, &vocabulary->slips, NULL);
    image_array(image, &vocabulary->slip_ids, vocabulary->slips.word_count);
    image_array(image, &vocabulary->sounds, vocabulary->sound_count);
    for (i = 0; i < vocabulary->sound_count; i++) {
        image_text(image, &vocabulary->sounds[i].sound);
    }
}

/* Most forms are spelt as they sound, and many are their own stem. */
static void
form_image(struct image *image, struct sign_form *form)
{
    const char *spelt = form->spelt, *text = form->text, *stem = form->stem;

    if (spelt == NULL) {
        return;
    }
    image_text(image, &form->spelt);
    if (strcmp(text, spelt) == 0) {
        image_same(image, &form->text, form->spelt);
    } else {
        image_text(image, &form->text);
    }
    if (strcmp(stem, text) == 0) {
        image_same(image, &form->stem, form->text);
    } else {
        image_text(image, &form->stem);
    }
}

static void
forms_image(struct image *image, struct vocabulary *vocabulary)
{
    uint32_t i;

    image_array(image, &vocabulary->forms, (size_t)vocabulary->form_mask + 1);
    for (i = 0; i <= vocabulary->form_mask; i++) {
        form_image(image, &vocabulary->forms[i]);
    }
}

static void
classes_image(struct image *image, struct vocabulary *vocabulary)
{
    size_t i;

    image_array(image, &vocabulary->runs, vocabulary->run_count);
    for (i = 0; i < vocabulary->run_count; i++) {
        memset(vocabulary->runs[i].keys, 0, sizeof(vocabulary->runs[i].keys));
        vocabulary->runs[i].key = NULL;
    }
    image_array(image, &vocabulary->members, vocabulary->member_count);
    for (i = 0; i < vocabulary->member_count; i++) {
        vocabulary->members[i].entry = NULL;
        vocabulary->members[i].class = NULL;
    }
}

static void
vocabulary_image(struct image *image, struct vocabulary **of, const struct shorthand *shorthand)
{
    struct vocabulary *vocabulary = image_array(image, of, 1);

    image_same(image, &vocabulary->shorthand, shorthand);
    roles_image(image, &vocabulary->roles);
    image_texts(image, (const char *const **)&vocabulary->keys, vocabulary->key_count);
    spellings_image(image, vocabulary);
    forms_image(image, vocabulary);
    classes_image(image, vocabulary);
}

static void
point_at_sign(struct image *image, const struct sign **field, const struct sign_image *signs)
{
    image_same(image, field, *field == NULL ? NULL : signs->copies + (*field - signs->signs));
}

/* ---- Phrases ------------------------------------------------------------------------------- */

static void
slot_image(struct image *image, struct slot *slot)
{
    slot->keys = NULL;
    image_array(image, &slot->ids, (size_t)slot->count);
}

static void
phrases_image(struct image *image, struct phrase **of, size_t count)
{
    struct phrase *phrases = image_array(image, of, count);
    size_t i;
    int k;

    for (i = 0; i < count; i++) {
        image_text(image, &phrases[i].line);
        slot_image(image, &phrases[i].company);
        for (k = 0; k < phrases[i].slot_count; k++) {
            slot_image(image, &phrases[i].slots[k]);
        }
        for (; k < PHRASE_SLOTS_MAX; k++) {
            memset(&phrases[i].slots[k], 0, sizeof(phrases[i].slots[k])); /* once dropped */
        }
    }
}

/* ---- Second opinion ------------------------------------------------------------------------ */

static void
examples_image(struct image *image, struct sign_index *index, const struct sign_image *signs)
{
    size_t i;

    image_array(image, &index->examples, index->example_count);
    for (i = 0; i < index->example_count; i++) {
        struct opinion_example *example = &index->examples[i];

        image_text(image, &example->line);
        point_at_sign(image, &example->sign, signs);
    }
}

static void
opinion_image(struct image *image, struct opinion **of, const struct sign_index *index)
{
    struct opinion *opinion = image_array(image, of, 1);
    size_t row_size;

    if (opinion == NULL) {
        return;
    }
    row_size = opinion->rows.begins[opinion->count];
    image_same(image, &opinion->vocabulary, index->vocabulary);
    image_same(image, &opinion->examples, index->examples);
    image_array(image, &opinion->rows.begins, opinion->count + 1);
    image_array(image, &opinion->rows.index, row_size);
    image_array(image, &opinion->rows.value, row_size);
    feature_space_image(image, &opinion->space, NULL);
    net_image(image, &opinion->net);
    image_array(image, &opinion->firsts, OPINION_LABELS_MAX);
}

/* ---- All together -------------------------------------------------------------------------- */

void
sign_index_image(struct image *image, struct sign_index **of, const struct sign_image *from)
{
    struct sign_index *index = image_array(image, of, 1);
    size_t i, ids = (size_t)vocabulary_count(index->vocabulary);
    size_t filed = index->begins[ids];

    index->classes = NULL;
    vocabulary_image(image, &index->vocabulary, from->shorthand);
    image_array(image, &index->signs, index->count);
    for (i = 0; i < index->count; i++) {
        struct sign_phrases *phrases = &index->signs[i];

        point_at_sign(image, &phrases->sign, from);
        image_array(image, &phrases->lines, phrases->said_as_count);
        phrases_image(image, &phrases->said_as, phrases->said_as_count);
        phrases_image(image, &phrases->not_meant_by, phrases->not_meant_by_count);
    }
    image_array(image, &index->begins, ids + 1);
    image_array(image, &index->filed, filed);
    examples_image(image, index, from);
    opinion_image(image, &index->opinion, index);
    spelling_image(image, &index->right, from->ordinary);
}
