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

/*
 * Spanish endings as they sound (sound.h), by what they are endings of: verbs in -ar, verbs in -er
 * and -ir, and all other words. Each has a blank before and after it; the first is no ending at
 * all.
 */
static const char ar_endings[] =
    "  a o os e as es an en amos emos aba abas aban ando ado ada ados adas adito adita ar aste "
    "aron are "
    "ara aras aran aremos aria arias arian ase asen arse acion aciones amiento asos ason adura "
    "aduras ante antes ador adora adores ue ues uen uemos ";
static const char er_endings[] = "  a o os e as es an en amos emos imos ia ias ian iendo ido ida "
                                 "idos idas idito idita er ir i iste io "
                                 "ieron ere era eras eran eremos eria erian ire ira iras iran iria "
                                 "irian iera ieras ieran iese ion "
                                 "iones ue ues uen uir ye yen yendo yo yeron os "
                                 "imiento edura ";
static const char other_endings[] =
    "  s es a o e as os ito ita itos itas sito sita sitos sitas ote ona on onas ones isimo isima "
    "mente "
    "amente idad idades edad edades eria ero oso osa osos osas es esa ";
static const char *const spanish_endings[] = {ar_endings, er_endings, other_endings};

/* What may hang on a verb: "ahogandose", "ayudenme". */
static const char *const clitics[] = {"me",  "te",  "se",  "lo",  "la",   "le",
                                      "nos", "los", "las", "les", "melo", "selo"};

static bool
is_listed(const char *list, const char *ending, size_t length)
{
    const char *at = list;

    while ((at = strchr(at, ' ')) != NULL && at[1] != '\0') {
        at++;
        if (strncmp(at, ending, length) == 0 && at[length] == ' ') {
            return true;
        }
    }
    return false;
}

/* True for an ending of that list, or one with what hangs on it. */
static bool
is_spanish_ending(const char *list, const char *ending)
{
    size_t length = strlen(ending), i;

    if (is_listed(list, ending, length)) {
        return true;
    }
    for (i = 0; i < sizeof(clitics) / sizeof(clitics[0]); i++) {
        size_t hangs = strlen(clitics[i]);

        if (length > hangs && strcmp(ending + length - hangs, clitics[i]) == 0 &&
            is_listed(list, ending, length - hangs)) {
            return true;
        }
    }
    return false;
}

/* True for a word that ends so from the letter `at` on. Verbs do not grow from a vowel: that is
 * their ending ("vale" is none of "balearon"). */
static bool
ends_so(const char *list, const char *word, size_t at)
{
    bool is_bare = word[at] == '\0' && strchr("aeiou", word[at - 1]) != NULL;

    return !(is_bare && list != other_endings) && is_spanish_ending(list, word + at);
}

/* True if two Spanish words of one stem may be forms of one word: "mareo" and "mareado" may,
 * "marido" and "mareado" may not, nor "con" and "conocio". */
static bool
may_be_inflected(const char *one, const char *other)
{
    enum { SHORTEST = 2 };
    size_t same = 0, list;

    while (one[same] != '\0' && one[same] == other[same]) {
        same++;
    }
    for (; same >= SHORTEST; same--) {
        for (list = 0; list < sizeof(spanish_endings) / sizeof(spanish_endings[0]); list++) {
            if (ends_so(spanish_endings[list], one, same) &&
                ends_so(spanish_endings[list], other, same)) {
                return true;
            }
        }
    }
    return false;
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
vocabulary_know(struct vocabulary *vocabulary, const char *text, enum word_source source)
{
    bool is_foreign = source == WORD_FOREIGN;
    bool is_right = source == WORD_OF_OFFICE;
    struct sign_form *form = slot_of(vocabulary, text, strlen(text));

    vocabulary->right_count += is_right && !form->is_spelt_right;
    if (form->spelt != NULL) {
        form->is_shared = form->is_shared || form->is_foreign != is_foreign;
        form->is_foreign = form->is_foreign && is_foreign;
        form->is_spelt_right = form->is_spelt_right || is_right;
        return;
    }
    *form = (struct sign_form){.spelt = memory_copy(vocabulary, text),
                               .id = -1,
                               .is_foreign = is_foreign,
                               .is_spelt_right = is_right};
    if (2 * ++vocabulary->form_count > vocabulary->form_mask) {
        grow(vocabulary);
    }
}

static void
know_role(const char *word, void *user)
{
    vocabulary_know(user, word, WORD_OF_OFFICE);
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
