#include "sign_traits.h"

#include "memory.h"
#include "sign_vocabulary_inside.h"

enum {
    NEGATION_REACH = 4, /* words after "no" that are marked */
    RUN_LONGEST = 5,    /* letters; kin and misspelt words share most runs */
    TRAITS_A_WORD = 5   /* besides its runs */
};

/* Kinds of traits, so that a stem and a class never meet. */
enum kind { KIND_STEM = 1, KIND_CLASS, KIND_STEMS, KIND_CLASSES, KIND_APART };

static uint64_t
mix(uint64_t hash, uint64_t value)
{
    hash = (hash ^ value) * 0x9e3779b97f4a7c15u;
    return hash ^ (hash >> 29);
}

static uint64_t
hash_text(const char *text)
{
    uint64_t hash = 14695981039346656037u; /* FNV-1a */
    size_t i;

    for (i = 0; text[i] != '\0'; i++) {
        hash = (hash ^ (unsigned char)text[i]) * 1099511628211u;
    }
    return hash;
}

/* What a word is, in numbers. */
struct trait_word {
    uint64_t stem, class;
};

/* A word of the signs is told by its number, any other by its stem. What is bodily is too much for
 * a class of its own. */
static struct trait_word
look_at(const struct vocabulary *vocabulary, int bodily, const struct heard_word *word,
        bool is_negated)
{
    struct trait_word seen = {hash_text(word->stem), 0};
    bool has_class = false;
    int i;

    if (word->meaning_count > 0) {
        seen.stem = mix(1, (uint64_t)word->meanings[0] + 1);
    }
    for (i = 0; i < word->meaning_count && !has_class; i++) {
        if (word->meanings[i] != bodily && vocabulary->keys[word->meanings[i]][0] == '[') {
            seen.class = mix(2, (uint64_t)word->meanings[i] + 1);
            has_class = true;
        }
    }
    if (!has_class) {
        seen.class = seen.stem;
    }
    seen.class = mix(seen.class, is_negated ? 7 : 3);
    return seen;
}

static void
add(struct traits *traits, enum kind kind, uint64_t hash, int word, int reach)
{
    enum feature_block block = kind == KIND_STEM || kind == KIND_CLASS ? BLOCK_STEMS : BLOCK_PAIRS;

    traits->reach[traits->features.count] = (uint8_t)reach;
    traits->features.list[traits->features.count++] =
        (struct feature){mix(hash, (uint64_t)kind), (uint16_t)word, (uint8_t)block};
}

/* The traits that end with the word at `at`. */
static void
add_word(struct traits *traits, const struct heard *heard, const struct trait_word *seen, int at)
{
    const struct heard_word *word = &heard->list[at];
    const struct trait_word *own = &seen[at];

    add(traits, KIND_STEM, own->stem, at, 0);
    add(traits, KIND_CLASS, own->class, at, 0);
    features_add_runs(&traits->features, word->text, (size_t)at, RUN_LONGEST); /* of reach 0 */
    if (at > 0 && word[-1].sentence == word->sentence) {
        add(traits, KIND_STEMS, mix(own[-1].stem, own->stem), at, 1);
        add(traits, KIND_CLASSES, mix(own[-1].class, own->class), at, 1);
    }
    if (at > 1 && word[-2].sentence == word->sentence) {
        add(traits, KIND_APART, mix(own[-2].class, own->class), at, 2);
    }
}

struct traits
traits_read(void *arena, const struct vocabulary *vocabulary, const struct heard *heard)
{
    struct traits traits = {{NULL, 0}, NULL};
    size_t room = TRAITS_A_WORD * heard->count + 1;
    struct trait_word *seen =
        memory_must(talloc_array(arena, struct trait_word, (unsigned)(heard->count + 1)));
    int bodily = vocabulary_id(vocabulary, sign_class_bodily), negated = 0, i;

    for (i = 0; i < (int)heard->count; i++) {
        room += features_runs_room(heard->list[i].text, RUN_LONGEST);
    }
    traits.features.list = memory_must(talloc_array(arena, struct feature, (unsigned)room));
    traits.reach = memory_array(arena, uint8_t, room);
    for (i = 0; i < (int)heard->count; i++) {
        const struct heard_word *word = &heard->list[i];

        if (word->comma_before || (word->roles & ROLE_BUT) != 0 ||
            (i > 0 && word->sentence != word[-1].sentence)) {
            negated = 0;
        }
        seen[i] = look_at(vocabulary, bodily, word, negated > 0);
        negated = (word->roles & ROLE_NEGATION) != 0 ? NEGATION_REACH : negated - 1;
        add_word(&traits, heard, seen, i);
    }
    return traits;
}

struct features
traits_within(void *arena, const struct traits *traits, int first, int last)
{
    struct features within = {NULL, 0};
    size_t i;

    within.list =
        memory_must(talloc_array(arena, struct feature, (unsigned)traits->features.count + 1));
    for (i = 0; i < traits->features.count; i++) {
        const struct feature *feature = &traits->features.list[i];

        if ((int)feature->word - traits->reach[i] >= first && feature->word <= last) {
            within.list[within.count++] = *feature;
        }
    }
    return within;
}
