#include "sign_vocabulary.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "sign_slips.h"
#include "sign_vocabulary_inside.h"
#include "sound.h"

struct vocabulary *
vocabulary_new(void *arena, enum language language, const struct shorthand *shorthand)
{
    struct vocabulary *vocabulary = memory_new(arena, struct vocabulary);

    vocabulary->language = language;
    vocabulary->shorthand = shorthand;
    vocabulary->roles = roles_new(vocabulary, language);
    vocabulary_open_forms(vocabulary);
    return vocabulary;
}

/* ---- Building ------------------------------------------------------------------------------ */

static const char *
add_key(struct vocabulary *vocabulary, const char *key)
{
    key = memory_copy(vocabulary, key);
    vocabulary->keys =
        memory_grow(vocabulary, const char *, vocabulary->keys, vocabulary->key_count);
    vocabulary->keys[vocabulary->key_count++] = key;
    return key;
}

/* Where the chain of the spellings of this stem begins. */
static uint32_t *
stem_head(struct vocabulary *vocabulary, const char *stem)
{
    size_t length = strlen(stem);

    return &vocabulary->stem_heads[spelling_key(stem, length, length, length) % STEM_HEADS];
}

/* Chains the spelling at this place to those of the same stem. */
static void
chain(struct vocabulary *vocabulary, size_t place)
{
    struct sign_spelling *spelling = &vocabulary->spellings[place];
    uint32_t *head = stem_head(vocabulary, spelling->stem);

    spelling->next = *head;
    *head = (uint32_t)place + 1;
}

/* The key of a word none of whose forms is there: its stem, if no other word has that. */
static const char *
new_key(struct vocabulary *vocabulary, const struct heard_word *word)
{
    uint32_t at = *stem_head(vocabulary, word->stem);

    for (; at != 0; at = vocabulary->spellings[at - 1].next) { /* only one of this stem has it */
        if (strcmp(vocabulary->spellings[at - 1].key, word->stem) == 0) {
            return add_key(vocabulary, memory_format(vocabulary, "%s~%s", word->stem, word->text));
        }
    }
    return add_key(vocabulary, word->stem);
}

const char *
vocabulary_add(struct vocabulary *vocabulary, const struct heard_word *word, bool may_slip)
{
    struct sign_spelling *kin = vocabulary_kin(vocabulary, word->text, word->stem), *spelling;
    const char *key;

    assert(!vocabulary->is_closed);
    vocabulary_know(vocabulary, word->spelt, WORD_OF_PHRASE);
    if (kin != NULL && strcmp(kin->text, word->text) == 0) {
        kin->may_slip = kin->may_slip || may_slip;
        return kin->key;
    }
    key = kin != NULL ? kin->key : new_key(vocabulary, word);
    vocabulary->spellings = memory_grow(vocabulary, struct sign_spelling, vocabulary->spellings,
                                        vocabulary->spelling_count);
    spelling = &vocabulary->spellings[vocabulary->spelling_count++];
    *spelling = (struct sign_spelling){.text = memory_copy(vocabulary, word->text),
                                       .stem = memory_copy(vocabulary, word->stem),
                                       .key = key,
                                       .length = strlen(word->text),
                                       .may_slip = may_slip};
    chain(vocabulary, vocabulary->spelling_count - 1);
    return key;
}

/* Adds the several words of an entry, which have these keys; returns their key together. */
static const char *
add_run(struct vocabulary *vocabulary, const char *const *keys, size_t count)
{
    struct sign_run *run;
    char *key = memory_copy(vocabulary, "");
    size_t i;

    vocabulary->runs =
        memory_grow(vocabulary, struct sign_run, vocabulary->runs, vocabulary->run_count);
    run = &vocabulary->runs[vocabulary->run_count++];
    *run = (struct sign_run){.count = (int)count};
    for (i = 0; i < count; i++) {
        run->keys[i] = keys[i];
        memory_append(&key, "%s%s", i == 0 ? "" : " ", keys[i]);
    }
    run->key = add_key(vocabulary, key);
    return run->key;
}

static char *
class_key(void *arena, const struct sign_class *class)
{
    return memory_format(arena, "[%s]", class->name);
}

/* What was added for a class before; false if nothing was. */
static bool
find_class(struct vocabulary *vocabulary, const struct sign_class *class, struct class_added *added)
{
    char *key = class_key(vocabulary, class);
    size_t i;

    *added = (struct class_added){NULL, false};
    for (i = 0; i < vocabulary->member_count; i++) {
        const struct sign_member *member = &vocabulary->members[i];

        if (strcmp(member->class, key) == 0) {
            added->key = member->class;
            added->has_person = added->has_person || member->is_person;
        }
    }
    talloc_free(key);
    return added->key != NULL;
}

int
vocabulary_add_class(struct vocabulary *vocabulary, struct workspace *workspace,
                     const struct sign_class *class, struct class_added *added,
                     const char **refused)
{
    const char *keys[RUN_WORDS_MAX];
    size_t i, k;

    if (find_class(vocabulary, class, added)) {
        return 0;
    }
    *added = (struct class_added){add_key(vocabulary, class_key(vocabulary, class)), false};
    for (i = 0; i < class->count; i++) {
        struct heard heard =
            vocabulary_hear_text(vocabulary, vocabulary, workspace, class->entries[i]);
        struct sign_member *member;

        if (heard.count == 0 || heard.count > RUN_WORDS_MAX) {
            *refused = class->entries[i];
            return -1;
        }
        for (k = 0; k < heard.count; k++) {
            keys[k] = vocabulary_add(vocabulary, &heard.list[k], heard.list[k].roles == 0);
        }
        vocabulary->members = memory_grow(vocabulary, struct sign_member, vocabulary->members,
                                          vocabulary->member_count);
        member = &vocabulary->members[vocabulary->member_count++];
        member->class = added->key;
        member->is_person = heard.count == 1 && (heard.list[0].roles & ROLE_HUMAN) != 0;
        added->has_person = added->has_person || member->is_person;
        member->entry = heard.count == 1 ? keys[0] : add_run(vocabulary, keys, heard.count);
    }
    return 0;
}

/* ---- Closing ------------------------------------------------------------------------------- */

static int
by_text(const void *left, const void *right)
{
    return strcmp(((const struct sign_spelling *)left)->text,
                  ((const struct sign_spelling *)right)->text);
}

static int
by_bytes(const void *left, const void *right)
{
    return strcmp(*(const char *const *)left, *(const char *const *)right);
}

static int
by_first_and_length(const void *left, const void *right)
{
    const struct sign_run *l = left, *r = right;

    return l->ids[0] != r->ids[0] ? l->ids[0] - r->ids[0] : r->count - l->count;
}

static int
by_entry(const void *left, const void *right)
{
    const struct sign_member *l = left, *r = right;

    return l->entry_id != r->entry_id ? l->entry_id - r->entry_id : l->class_id - r->class_id;
}

/* Sorts a list of strings and drops repeats; returns how many are left. */
static size_t
sort_once(const char **list, size_t count)
{
    size_t i, kept = 0;

    if (count == 0) {
        return 0;
    }
    qsort(list, count, sizeof(*list), by_bytes);
    for (i = 1; i < count; i++) {
        if (strcmp(list[kept], list[i]) != 0) {
            list[++kept] = list[i];
        }
    }
    return kept + 1;
}

static void
close_spellings(struct vocabulary *vocabulary)
{
    size_t i;

    if (vocabulary->spelling_count == 0) {
        return;
    }
    qsort(vocabulary->spellings, vocabulary->spelling_count, sizeof(*vocabulary->spellings),
          by_text);
    memset(vocabulary->stem_heads, 0, sizeof(vocabulary->stem_heads));
    for (i = 0; i < vocabulary->spelling_count; i++) {
        vocabulary->spellings[i].id = vocabulary_id(vocabulary, vocabulary->spellings[i].key);
        chain(vocabulary, i);
    }
}

static void
close_classes(struct vocabulary *vocabulary)
{
    size_t i;
    int k;

    for (i = 0; i < vocabulary->run_count; i++) {
        struct sign_run *run = &vocabulary->runs[i];

        run->id = vocabulary_id(vocabulary, run->key);
        for (k = 0; k < run->count; k++) {
            run->ids[k] = vocabulary_id(vocabulary, run->keys[k]);
        }
    }
    if (vocabulary->run_count > 0) {
        qsort(vocabulary->runs, vocabulary->run_count, sizeof(*vocabulary->runs),
              by_first_and_length);
    }
    for (i = 0; i < vocabulary->member_count; i++) {
        struct sign_member *member = &vocabulary->members[i];

        member->entry_id = vocabulary_id(vocabulary, member->entry);
        member->class_id = vocabulary_id(vocabulary, member->class);
    }
    if (vocabulary->member_count > 0) {
        qsort(vocabulary->members, vocabulary->member_count, sizeof(*vocabulary->members),
              by_entry);
    }
}

static int
by_sound(const void *left, const void *right)
{
    const struct sign_sound *l = left, *r = right;
    int order = strcmp(l->sound, r->sound);

    return order != 0 ? order : l->id - r->id;
}

/* A spelling that may be misspelt, and what it is then taken for. */
struct slip_source {
    const char *text;
    int id; /* -1 for a word that has a role alone */
};

/* What may be misspelt: the words of phrases and their stems, as they sound and as they are
 * written, and the small words. */
static struct slip_source *
slip_sources(const struct vocabulary *vocabulary, void *arena, size_t *count)
{
    struct slip_source *sources = memory_array(
        arena, struct slip_source, 2 * vocabulary->spelling_count + vocabulary->form_count + 1);
    size_t i;

    *count = 0;
    for (i = 0; i < vocabulary->spelling_count; i++) {
        const struct sign_spelling *spelling = &vocabulary->spellings[i];

        if (spelling->may_slip) {
            sources[(*count)++] = (struct slip_source){spelling->stem, spelling->id};
            sources[(*count)++] = (struct slip_source){spelling->text, spelling->id};
        }
    }
    for (i = 0; i <= vocabulary->form_mask; i++) {
        const struct sign_form *form = &vocabulary->forms[i];
        const struct sign_spelling *spelling =
            form->spelt == NULL ? NULL
                                : vocabulary_spelling(vocabulary, form->text, strlen(form->text));

        if (form->spelt != NULL && form->roles != 0) {
            sources[(*count)++] = (struct slip_source){form->text, form->id};
        } else if (spelling != NULL && spelling->may_slip && strcmp(form->spelt, form->text) != 0) {
            sources[(*count)++] = (struct slip_source){form->spelt, form->id};
        }
    }
    return sources;
}

/* Files what may be misspelt by its letters. */
static void
close_slips(struct vocabulary *vocabulary)
{
    void *scratch = memory_must(talloc_new(NULL));
    size_t count, i;
    struct slip_source *sources = slip_sources(vocabulary, scratch, &count);
    struct word *words = memory_array(scratch, struct word, count + 1);
    struct words *texts = memory_array(scratch, struct words, count + 1);
    uint32_t number;

    for (i = 0; i < count; i++) {
        words[i].text = words[i].stem = sources[i].text;
        texts[i] = (struct words){&words[i], 1, vocabulary->language};
    }
    spelling_build(vocabulary, texts, count, NULL, &vocabulary->slips);
    vocabulary->slip_ids = memory_array(vocabulary, int, vocabulary->slips.word_count + 1);
    for (i = 0; i < count; i++) {
        if (spelling_find(&vocabulary->slips, sources[i].text, strlen(sources[i].text), &number)) {
            vocabulary->slip_ids[number] = sources[i].id;
        }
    }
    talloc_free(scratch);
}

/* Files what may be misspelt by its sound. */
static void
close_sounds(struct vocabulary *vocabulary)
{
    size_t i;

    vocabulary->sounds =
        memory_array(vocabulary, struct sign_sound, vocabulary->spelling_count + 1);
    for (i = 0; i < vocabulary->spelling_count; i++) {
        const struct sign_spelling *spelling = &vocabulary->spellings[i];

        if (spelling->may_slip) {
            vocabulary->sounds[vocabulary->sound_count++] = (struct sign_sound){
                slips_sound(vocabulary, spelling->text, vocabulary->language), spelling->id};
        }
    }
    if (vocabulary->sound_count > 0) {
        qsort(vocabulary->sounds, vocabulary->sound_count, sizeof(*vocabulary->sounds), by_sound);
    }
}

void
vocabulary_close(struct vocabulary *vocabulary, struct workspace *workspace)
{
    assert(!vocabulary->is_closed);
    vocabulary->is_closed = true;
    vocabulary->key_count = sort_once(vocabulary->keys, vocabulary->key_count);
    close_spellings(vocabulary);
    close_classes(vocabulary);
    vocabulary_close_forms(vocabulary, workspace);
    close_slips(vocabulary);
    close_sounds(vocabulary);
}

/* ---- Looking up ---------------------------------------------------------------------------- */

enum language
vocabulary_language(const struct vocabulary *vocabulary)
{
    return vocabulary->language;
}

const struct shorthand *
vocabulary_shorthand(const struct vocabulary *vocabulary)
{
    return vocabulary->shorthand;
}

int
vocabulary_count(const struct vocabulary *vocabulary)
{
    return (int)vocabulary->key_count;
}

int
vocabulary_id(const struct vocabulary *vocabulary, const char *key)
{
    const char **found;

    if (vocabulary->key_count == 0) {
        return -1;
    }
    found =
        bsearch(&key, vocabulary->keys, vocabulary->key_count, sizeof(*vocabulary->keys), by_bytes);
    return found == NULL ? -1 : (int)(found - vocabulary->keys);
}

const struct sign_spelling *
vocabulary_spelling(const struct vocabulary *vocabulary, const char *text, size_t length)
{
    size_t low = 0, high = vocabulary->spelling_count;

    while (low < high) {
        size_t middle = low + (high - low) / 2;
        const struct sign_spelling *spelling = &vocabulary->spellings[middle];
        int order = strncmp(spelling->text, text, length);

        if (order == 0 && spelling->text[length] == '\0') {
            return spelling;
        }
        if (order < 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return NULL;
}

bool
vocabulary_has(const struct vocabulary *vocabulary, void *arena, const char *text)
{
    const char *sound = sound_of(arena, text, vocabulary->language);

    return vocabulary_form(vocabulary, text, strlen(text)) != NULL ||
           vocabulary_spelling(vocabulary, sound, strlen(sound)) != NULL;
}

bool
vocabulary_is_foreign(const struct vocabulary *vocabulary, const char *text)
{
    const struct sign_form *form = vocabulary_form(vocabulary, text, strlen(text));

    return form != NULL && form->is_foreign;
}

bool
vocabulary_has_right(const struct vocabulary *vocabulary, const char *text)
{
    const struct sign_form *form = vocabulary_form(vocabulary, text, strlen(text));

    return form != NULL && form->is_spelt_right;
}

/* The first member whose entry is not below the id. */
static size_t
first_member(const struct vocabulary *vocabulary, int id)
{
    size_t low = 0, high = vocabulary->member_count;

    while (low < high) {
        size_t middle = low + (high - low) / 2;

        if (vocabulary->members[middle].entry_id < id) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low;
}

static void
add_meaning(struct heard_word *word, int id)
{
    int i;

    for (i = 0; i < word->meaning_count; i++) {
        if (word->meanings[i] == id) {
            return;
        }
    }
    if (word->meaning_count < HEARD_MEANINGS_MAX) {
        word->more[word->meaning_count] = 0;
        word->meanings[word->meaning_count++] = id;
    }
}

void
vocabulary_mean(const struct vocabulary *vocabulary, struct heard_word *word, int id)
{
    size_t i;

    add_meaning(word, id);
    for (i = first_member(vocabulary, id);
         i < vocabulary->member_count && vocabulary->members[i].entry_id == id; i++) {
        add_meaning(word, vocabulary->members[i].class_id);
    }
}
