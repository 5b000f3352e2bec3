#include "sign_phrases.h"

#include <string.h>

#include "memory.h"

/* A line on its way to a phrase. */
struct line_reader {
    const struct phrase_reading *with;
    struct phrase *phrase;
    const struct phrase_source *source;
    int group;
};

static int
refuse(const struct line_reader *reader, const char *what)
{
    faults_add(reader->with->faults, reader->source->file, reader->source->line,
               reader->source->section, "\"%s\": %s", reader->phrase->line, what);
    return -1;
}

/* The last slot for one more choice, or a new one; NULL with a fault if there is no room. */
static struct slot *
next_slot(struct line_reader *reader, bool as_choice)
{
    struct phrase *phrase = reader->phrase;
    struct slot *slot;

    if (!as_choice) {
        if (phrase->slot_count == PHRASE_SLOTS_MAX) {
            refuse(reader, "more than 8 words of weight; keep those that carry the meaning");
            return NULL;
        }
        slot = &phrase->slots[phrase->slot_count++];
        *slot = (struct slot){.group = reader->group, .is_little = true};
    }
    slot = &phrase->slots[phrase->slot_count - 1];
    if (slot->count == SLOT_WORDS_MAX) {
        refuse(reader, "more than 16 words with / between them; make it two lines, or a class");
        return NULL;
    }
    slot->is_choice = slot->is_choice || as_choice;
    return slot;
}

static void
add_key(struct line_reader *reader, struct slot *slot, const char *key)
{
    slot->keys = memory_grow(reader->with->arena, const char *, slot->keys, (size_t)slot->count);
    slot->keys[slot->count++] = key;
}

/* Adds one heard word to the last slot (`as_choice`) or as a new slot. */
static int
add_heard(struct line_reader *reader, const struct heard_word *word, bool as_choice)
{
    struct slot *slot = next_slot(reader, as_choice);

    if (slot == NULL) {
        return -1;
    }
    add_key(reader, slot,
            vocabulary_add(reader->with->vocabulary, word,
                           reader->phrase->kind != PHRASE_FIGURE && word->roles == 0));
    slot->is_little = slot->is_little && (word->roles & (ROLE_LITTLE | ROLE_PARTICLE)) != 0;
    slot->is_particle = slot->is_particle || (word->roles & ROLE_PARTICLE) != 0;
    slot->is_subject = slot->is_subject || (word->roles & ROLE_HUMAN) != 0;
    slot->is_common = slot->is_common || word->roles != 0;
    slot->is_number = slot->is_number || (word->text[0] >= '0' && word->text[0] <= '9');
    return 0;
}

/* Reads plain words that stand side by side, so that "i am" becomes the one word it also is. */
static int
read_words(struct line_reader *reader, const char *words, bool as_choice)
{
    const struct phrase_reading *with = reader->with;
    void *scratch = memory_must(talloc_new(NULL));
    struct heard heard = vocabulary_hear_text(with->vocabulary, scratch, with->workspace, words);
    size_t i;
    int rc = 0;

    if (heard.count == 0 || (as_choice && heard.count != 1)) {
        rc = refuse(reader, "only plain words; around / single ones, and no shorthand for several");
    }
    for (i = 0; i < heard.count && rc == 0; i++) {
        rc = add_heard(reader, &heard.list[i], as_choice);
    }
    talloc_free(scratch);
    return rc;
}

static bool
is_class(const char *token)
{
    return token != NULL && token[0] == '[' && token[strlen(token) - 1] == ']';
}

static const struct sign_class *
class_of(const struct sign_classes *classes, const char *token)
{
    return sign_classes_find(classes, token + 1, strlen(token) - 2);
}

static int
read_class(struct line_reader *reader, const char *token, bool as_choice)
{
    const struct sign_class *class = class_of(reader->with->classes, token);
    struct class_added added;
    const char *refused = NULL;
    struct slot *slot;

    if (class == NULL) {
        return refuse(reader,
                      memory_format(reader->with->arena,
                                    "there is no class %s; see words/LANG-classes.txt", token));
    }
    slot = next_slot(reader, as_choice);
    if (slot == NULL) {
        return -1;
    }
    if (vocabulary_add_class(reader->with->vocabulary, reader->with->workspace, class, &added,
                             &refused) != 0) {
        return refuse(reader, memory_format(reader->with->arena,
                                            "entry \"%s\" of the class %s: one to five plain words",
                                            refused, token));
    }
    add_key(reader, slot, added.key);
    slot->is_choice = true;
    slot->is_subject = slot->is_subject || added.has_person;
    slot->is_little = slot->is_little && slot->is_subject;
    slot->is_common = slot->is_common || slot->is_subject;
    return 0;
}

static bool
is_mark(const char *token, const char *mark)
{
    return token != NULL && strcmp(token, mark) == 0;
}

static bool
is_any_mark(const char *token)
{
    return is_mark(token, "/") || is_mark(token, "+") || is_mark(token, "...") ||
           is_mark(token, "&") || is_mark(token, ".");
}

static int
read_choice(struct line_reader *reader, const char *token, bool as_choice)
{
    return is_class(token) ? read_class(reader, token, as_choice)
                           : read_words(reader, token, as_choice);
}

static int
read_open(struct line_reader *reader, bool is_first, bool is_last)
{
    struct phrase *phrase = reader->phrase;

    if (phrase->kind != PHRASE_FIGURE || is_first == is_last || phrase->open != OPEN_NOT) {
        return refuse(reader, "... only in \"Not meant by\", at one end, beside words or &");
    }
    phrase->open = is_first ? OPEN_BEFORE : OPEN_AFTER;
    return 0;
}

/* Reads what follows "&": one list, whose slot becomes the phrase's company. */
static int
read_company(struct line_reader *reader, char *const *tokens, int at)
{
    struct phrase *phrase = reader->phrase;
    int slots = phrase->slot_count;

    if (phrase->kind != PHRASE_FIGURE || tokens[at] == NULL || is_any_mark(tokens[at]) ||
        (slots == 0 && phrase->open == OPEN_NOT)) {
        return refuse(reader, "& only in \"Not meant by\", after words or ..., before a list");
    }
    if (read_choice(reader, tokens[at++], false) != 0) {
        return -1;
    }
    while (is_mark(tokens[at], "/") && tokens[at + 1] != NULL && !is_any_mark(tokens[at + 1])) {
        if (read_choice(reader, tokens[at + 1], true) != 0) {
            return -1;
        }
        at += 2;
    }
    if (tokens[at] != NULL || phrase->slot_count != slots + 1) {
        return refuse(reader, "after & one list of single words or classes, and nothing more");
    }
    phrase->company = phrase->slots[--phrase->slot_count];
    phrase->open = slots == 0 ? OPEN_ANYWHERE : phrase->open;
    return at;
}

/* Reads the tokens from `at` on that belong together; returns the index after them, or -1. */
static int
read_tokens(struct line_reader *reader, char *const *tokens, int at)
{
    struct phrase *phrase = reader->phrase;
    bool is_empty =
        phrase->slot_count == 0 || phrase->slots[phrase->slot_count - 1].group != reader->group;
    char *words;

    if (is_mark(tokens[at], "...")) {
        bool is_last = tokens[at + 1] == NULL || (at > 0 && is_mark(tokens[at + 1], "&"));

        return read_open(reader, at == 0, is_last) == 0 ? at + 1 : -1;
    }
    if (is_mark(tokens[at], ".")) {
        if (at > 0 && tokens[at + 1] != NULL) {
            return refuse(reader, "a . only at the beginning or at the end");
        }
        *(at == 0 ? &phrase->begins_sentence : &phrase->ends_sentence) = true;
        return at + 1;
    }
    if (is_mark(tokens[at], "&")) {
        return read_company(reader, tokens, at + 1);
    }
    if (is_mark(tokens[at], "+")) {
        if (reader->group + 1 == PHRASE_GROUPS_MAX || is_empty) {
            return refuse(reader, "two + at most, between words");
        }
        reader->group++;
        return at + 1;
    }
    if (is_mark(tokens[at], "/")) {
        if (is_empty || tokens[at + 1] == NULL || is_any_mark(tokens[at + 1])) {
            return refuse(reader, "a / needs a word on either side");
        }
        return read_choice(reader, tokens[at + 1], true) == 0 ? at + 2 : -1;
    }
    if (is_class(tokens[at])) {
        return read_class(reader, tokens[at], false) == 0 ? at + 1 : -1;
    }
    words = memory_copy(reader->with->arena, tokens[at]);
    if (!is_mark(tokens[at + 1], "/")) {
        while (tokens[at + 1] != NULL && !is_any_mark(tokens[at + 1]) &&
               !is_class(tokens[at + 1]) && !is_mark(tokens[at + 2], "/")) {
            memory_append(&words, " %s", tokens[++at]);
        }
    }
    return read_words(reader, words, false) == 0 ? at + 1 : -1;
}

/* Takes out what need not be said, unless too little would be left. */
static void
drop_little_words(struct phrase *phrase)
{
    int weighty = 0, kept = 0, i;

    for (i = 0; i < phrase->slot_count; i++) {
        weighty += !phrase->slots[i].is_little;
    }
    if (phrase->kind == PHRASE_LAX && weighty < 2) {
        phrase->kind = PHRASE_TIGHT;
    }
    if (phrase->kind != PHRASE_LAX) {
        return;
    }
    for (i = 0; i < phrase->slot_count; i++) {
        if (phrase->slots[i].is_choice || !phrase->slots[i].is_little ||
            phrase->slots[i].is_particle ||
            (i + 1 < phrase->slot_count && phrase->slots[i + 1].is_number)) {
            phrase->slots[kept++] = phrase->slots[i];
        }
    }
    phrase->slot_count = kept;
}

/* The words and marks of a line, ended by two NULLs; NULL if there are too many. */
static char **
split(void *arena, const char *line)
{
    enum { TOKENS_MAX = PHRASE_SLOTS_MAX * SLOT_WORDS_MAX };
    char **tokens = memory_array(arena, char *, TOKENS_MAX + 2);
    char *rest = memory_copy(arena, line), *token;
    int count = 0;

    while ((token = strtok_r(rest, " ", &rest)) != NULL) {
        if (count == TOKENS_MAX) {
            return NULL;
        }
        tokens[count++] = token;
    }
    return tokens;
}

int
phrase_read(const struct phrase_reading *reading, const char *line, bool is_figure,
            const struct phrase_source *source, struct phrase *phrase)
{
    struct line_reader reader = {reading, phrase, source, 0};
    void *scratch = memory_must(talloc_new(NULL));
    char **tokens = split(scratch, line);
    int at = 0;

    memset(phrase, 0, sizeof(*phrase));
    phrase->line = memory_copy(reading->arena, line);
    phrase->kind = is_figure ? PHRASE_FIGURE : PHRASE_LAX;
    if (tokens == NULL) {
        at = refuse(&reader, "too long; keep the words that carry the meaning");
    }
    while (at >= 0 && tokens[at] != NULL) {
        at = read_tokens(&reader, tokens, at);
    }
    talloc_free(scratch);
    if (at < 0) {
        return -1;
    }
    if (phrase->open != OPEN_ANYWHERE &&
        (phrase->slot_count == 0 || phrase->slots[phrase->slot_count - 1].group != reader.group)) {
        return refuse(&reader, "expected words, and some on either side of +");
    }
    phrase->group_count = reader.group + 1;
    drop_little_words(phrase);
    return 0;
}

static void
resolve_slot(const struct vocabulary *vocabulary, struct slot *slot)
{
    int i;

    if (slot->count == 0) {
        return;
    }
    slot->ids = memory_array(slot->keys, int, (size_t)slot->count);
    for (i = 0; i < slot->count; i++) {
        slot->ids[i] = vocabulary_id(vocabulary, slot->keys[i]);
    }
}

void
phrase_resolve(const struct vocabulary *vocabulary, struct phrase *phrase)
{
    int i;

    for (i = 0; i < phrase->slot_count; i++) {
        resolve_slot(vocabulary, &phrase->slots[i]);
    }
    resolve_slot(vocabulary, &phrase->company);
}

int
phrase_rarest_slot(const struct phrase *phrase)
{
    int best = 0, i;

    for (i = 1; i < phrase->slot_count; i++) {
        const struct slot *slot = &phrase->slots[i], *other = &phrase->slots[best];

        if (slot->is_common != other->is_common ? other->is_common : slot->count < other->count) {
            best = i;
        }
    }
    return best;
}

int
phrase_choices(const char *line)
{
    int most = 1, count = 1;
    const char *c;

    for (c = line; *c != '\0'; c++) {
        if (c[0] == ' ' && c[1] == '/' && c[2] == ' ') {
            count++;
            most = count > most ? count : most;
            c += 2; /* its word follows */
            c += strcspn(c + 1, " ");
        } else if (c[0] == ' ') {
            count = 1;
        }
    }
    return most;
}

/* A token as texted: the first entry of a class, or itself. */
static const char *
as_texted(const struct sign_classes *classes, const char *token)
{
    const struct sign_class *class = is_class(token) ? class_of(classes, token) : NULL;

    return class == NULL || class->count == 0 ? token : class->entries[0];
}

const char *
phrase_example(void *arena, const struct sign_classes *classes, const char *line, int choice)
{
    char *copy = memory_copy(arena, line), *rest = copy, *token;
    char *example = memory_copy(arena, "");
    const char *held = NULL;
    int passed = 0;
    bool choice_next = false;

    while ((token = strtok_r(rest, " ", &rest)) != NULL) {
        if (is_mark(token, "+") || is_mark(token, "...") || is_mark(token, ".")) {
            continue;
        }
        if (is_mark(token, "/")) {
            choice_next = true;
            continue;
        }
        if (choice_next) {
            if (++passed <= choice) {
                held = token;
            }
        } else {
            if (held != NULL) {
                memory_append(&example, "%s ", as_texted(classes, held));
            }
            held = token;
            passed = 0;
        }
        choice_next = false;
    }
    memory_append(&example, "%s", held == NULL ? "" : as_texted(classes, held));
    return example;
}
