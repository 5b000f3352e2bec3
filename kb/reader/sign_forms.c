/*
 * The words that the content has, ready to be looked up as they are spelt: most words of most texts
 * are among them, and cost one look-up instead of a sound, a stem and several searches.
 */
#include <string.h>

#include "memory.h"
#include "sign_vocabulary_inside.h"
#include "sound.h"

/* The slot of a word, or the empty one where it belongs. */
static struct sign_form *
slot_of(const struct vocabulary *vocabulary, const char *spelt, size_t length)
{
    uint32_t at = spelling_key(spelt, length, length, length) & vocabulary->form_mask;
    struct sign_form *form = &vocabulary->forms[at];

    while (form->spelt != NULL &&
           (strncmp(form->spelt, spelt, length) != 0 || form->spelt[length] != '\0')) {
        at = (at + 1) & vocabulary->form_mask;
        form = &vocabulary->forms[at];
    }
    return form;
}

const struct sign_form *
vocabulary_form(const struct vocabulary *vocabulary, const char *spelt, size_t length)
{
    const struct sign_form *form = slot_of(vocabulary, spelt, length);

    return form->spelt == NULL ? NULL : form;
}

/* ---- Kin ----------------------------------------------------------------------------------- */

/* True for an English ending that leaves a word what it is. */
static bool
is_inflection(const char *ending)
{
    static const char *const endings[] = {
        "",   "s",  "es",  "e",   "ed",   "d",   "ing",  "in",    "y",   "ies", "ied",
        "ly", "er", "ers", "est", "ness", "ion", "ions", "iness", "ily", "ier", "iest"};
    size_t i;

    for (i = 0; i < sizeof(endings) / sizeof(endings[0]); i++) {
        if (strcmp(endings[i], ending) == 0) {
            return true;
        }
    }
    return false;
}

/* By how many letters forms of a Spanish word differ: "muere", "murieron". "con" is no form of
 * "conocio", whose stem it has. */
enum { SHORT_WORD = 3, INFLECTED_MORE = 7, SHORT_INFLECTED_MORE = 3 };

static bool
may_be_inflected(const char *one, const char *other)
{
    size_t left = strlen(one), right = strlen(other);
    size_t shorter = left < right ? left : right, longer = left < right ? right : left;

    return longer - shorter <= (shorter > SHORT_WORD ? INFLECTED_MORE : SHORT_INFLECTED_MORE);
}

bool
vocabulary_is_kin(const struct vocabulary *vocabulary, const char *one, const char *other)
{
    size_t same = 0;

    if (vocabulary->language != LANGUAGE_EN) {
        return may_be_inflected(one, other);
    }
    while (one[same] != '\0' && one[same] == other[same]) {
        same++;
    }
    one += same;
    other += same;
    if (same > 0 && *one != '\0' && one[0] == one[-1]) {
        one++; /* a doubled letter */
    } else if (same > 0 && *other != '\0' && other[0] == other[-1]) {
        other++;
    }
    return is_inflection(one) && is_inflection(other);
}

struct sign_spelling *
vocabulary_kin(const struct vocabulary *vocabulary, const char *text, const char *stem)
{
    size_t length = strlen(stem);
    uint32_t at = vocabulary->stem_heads[spelling_key(stem, length, length, length) % STEM_HEADS];
    struct sign_spelling *kin = NULL;

    for (; at != 0; at = vocabulary->spellings[at - 1].next) {
        struct sign_spelling *spelling = &vocabulary->spellings[at - 1];

        if (strcmp(spelling->text, text) == 0) {
            return spelling;
        }
        if (strcmp(spelling->stem, stem) == 0 &&
            vocabulary_is_kin(vocabulary, spelling->text, text)) {
            kin = spelling;
        }
    }
    return kin;
}

int
vocabulary_id_of(const struct vocabulary *vocabulary, const char *text, const char *stem)
{
    const struct sign_spelling *kin = vocabulary_kin(vocabulary, text, stem);

    return kin == NULL ? -1 : kin->id;
}

/* ---- Filling ------------------------------------------------------------------------------- */

void
vocabulary_open_forms(struct vocabulary *vocabulary)
{
    vocabulary->form_mask = 4095;
    vocabulary->forms = memory_array(vocabulary, struct sign_form, vocabulary->form_mask + 1);
}

static void
grow(struct vocabulary *vocabulary)
{
    struct sign_form *forms = vocabulary->forms;
    uint32_t old_mask = vocabulary->form_mask, i;

    vocabulary->form_mask = 2 * old_mask + 1;
    vocabulary->forms = memory_array(vocabulary, struct sign_form, vocabulary->form_mask + 1);
    for (i = 0; i <= old_mask; i++) {
        if (forms[i].spelt != NULL) {
            *slot_of(vocabulary, forms[i].spelt, strlen(forms[i].spelt)) = forms[i];
        }
    }
    talloc_free(forms);
}

void
vocabulary_know(struct vocabulary *vocabulary, const char *text, bool is_foreign)
{
    struct sign_form *form = slot_of(vocabulary, text, strlen(text));

    if (form->spelt != NULL) {
        form->is_shared = form->is_shared || form->is_foreign != is_foreign;
        form->is_foreign = form->is_foreign && is_foreign;
        return;
    }
    *form = (struct sign_form){
        .spelt = memory_copy(vocabulary, text), .id = -1, .is_foreign = is_foreign};
    if (2 * ++vocabulary->form_count > vocabulary->form_mask) {
        grow(vocabulary);
    }
}

static void
know_role(const char *word, void *user)
{
    vocabulary_know(user, word, false);
}

/* A word of another language is none of ours, however it sounds and stems; "tia" is in both. */
static void
fill(const struct vocabulary *vocabulary, struct workspace *workspace, struct sign_form *form)
{
    void *arena = vocabulary->forms;

    if (form->is_foreign) {
        form->text = form->stem = form->spelt;
        return;
    }
    form->text = sound_of(arena, form->spelt, vocabulary->language);
    form->stem = words_stem(arena, workspace, form->text, vocabulary->language);
    form->roles = roles_of(vocabulary->roles, form->text);
    form->id = vocabulary_id_of(vocabulary, form->text, form->stem);
    form->may_pair = roles_may_pair(vocabulary->language, form->spelt);
}

void
vocabulary_close_forms(struct vocabulary *vocabulary, struct workspace *workspace)
{
    uint32_t i;

    roles_each(vocabulary->language, know_role, vocabulary);
    for (i = 0; i <= vocabulary->form_mask; i++) {
        if (vocabulary->forms[i].spelt != NULL) {
            fill(vocabulary, workspace, &vocabulary->forms[i]);
        }
    }
}
