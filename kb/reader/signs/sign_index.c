/* Building an index of signs; what it finds is in sign_match.c. */
#include <string.h>

#include "memory.h"
#include "sign_match_inside.h"
#include "sign_mend.h"

/* Of a "Said as" line with "/" the second opinion learns so many wordings. */
enum { EXAMPLES_A_LINE = 4 };

/* Of a sign with fewer whole texts the second opinion may not speak against a phrase: of 136
 * emergencies of the signs with the fewest 23 were missed where it might, 21 where not. */
enum { WHOLE_TEXTS_MANY = 200 };

struct sign_index *
sign_index_new(void *arena, enum language language, const struct shorthand *shorthand,
               const struct sign_classes *classes)
{
    struct sign_index *index = memory_new(arena, struct sign_index);

    index->language = language;
    index->vocabulary = vocabulary_new(index, language, shorthand);
    index->classes = classes;
    return index;
}

/* One list of a sign's file. */
struct lines {
    const char *const *list;
    const int *numbers;
    size_t count;
    bool is_figure;
};

static int
read_phrases(const struct phrase_reading *reading, const struct lines *lines,
             struct phrase_source source, struct phrase **phrases)
{
    size_t i;
    int rc = 0;

    *phrases = memory_array(reading->arena, struct phrase, lines->count);
    for (i = 0; i < lines->count; i++) {
        source.line = lines->numbers[i];
        if (phrase_read(reading, lines->list[i], lines->is_figure, &source, &(*phrases)[i]) != 0) {
            rc = -1;
        }
    }
    return rc;
}

static void
add_example(struct sign_index *index, struct opinion_example example)
{
    index->examples =
        memory_grow(index, struct opinion_example, index->examples, index->example_count);
    index->examples[index->example_count++] = example;
}

void
sign_index_ordinary(struct sign_index *index, const char *text)
{
    add_example(index, (struct opinion_example){text, NULL, OPINION_ASKED, 0});
}

void
sign_index_harmless(struct sign_index *index, const char *text)
{
    add_example(index, (struct opinion_example){text, NULL, OPINION_LISTED, 0});
}

/* All that a sign's file gives the second opinion to learn from. */
static void
add_examples(struct sign_index *index, const struct sign_file *file, const struct sign *sign)
{
    size_t i;
    int choice;

    for (i = 0; i < sign->said_as_count; i++) {
        const char *line = sign->said_as[i];

        for (choice = 0; choice < phrase_choices(line) && choice < EXAMPLES_A_LINE; choice++) {
            add_example(index, (struct opinion_example){line, sign, OPINION_PHRASE, choice});
        }
    }
    for (i = 0; i < file->whole_text_count; i++) {
        add_example(index, (struct opinion_example){file->whole_texts[i], sign, OPINION_WHOLE, 0});
    }
    for (i = 0; i < file->harmless_text_count; i++) {
        add_example(index,
                    (struct opinion_example){file->harmless_texts[i], NULL, OPINION_HARMLESS, 0});
    }
}

int
sign_index_add(struct sign_index *index, struct workspace *workspace, const struct sign_file *file,
               const struct sign *sign, struct faults *faults)
{
    const struct phrase_reading reading = {index, workspace, index->vocabulary, index->classes,
                                           faults};
    const struct lines said_as = {sign->said_as, file->said_as_lines, sign->said_as_count, false};
    const struct lines not_meant_by = {file->not_meant_by, file->not_meant_by_lines,
                                       file->not_meant_by_count, true};
    struct sign_phrases *signs;
    int rc;

    if (index->count == SIGNS_A_LANGUAGE_MAX) {
        faults_add(faults, sign->file, 0, NULL,
                   "one sign more than the %d that a language may have; join it with another",
                   SIGNS_A_LANGUAGE_MAX);
        return -1;
    }
    index->signs = memory_grow(index, struct sign_phrases, index->signs, index->count);
    signs = &index->signs[index->count++];
    signs->sign = sign;
    signs->said_as_count = sign->said_as_count;
    signs->not_meant_by_count = file->not_meant_by_count;
    signs->is_well_known = file->whole_text_count >= WHOLE_TEXTS_MANY;
    signs->lines = memory_must(talloc_memdup(
        index, file->said_as_lines, (unsigned)(sign->said_as_count * sizeof(*signs->lines))));
    rc = read_phrases(&reading, &said_as, (struct phrase_source){sign->file, "Said as", 0},
                      &signs->said_as);
    if (read_phrases(&reading, &not_meant_by, (struct phrase_source){sign->file, "Not meant by", 0},
                     &signs->not_meant_by) != 0) {
        rc = -1;
    }
    if (rc == 0) {
        add_examples(index, file, sign);
    }
    return rc;
}

/* How many bytes of a text are read at once: all, or up to a line's or a word's end. */
static size_t
piece_length(const char *text)
{
    size_t length = strnlen(text, WORDS_TEXT_MAX + 1), end = length;

    if (length <= WORDS_TEXT_MAX) {
        return length;
    }
    while (end > 0 && text[end - 1] != '\n') {
        end--;
    }
    if (end == 0) {
        for (end = WORDS_TEXT_MAX; end > 0 && text[end - 1] != ' '; end--) {
        }
    }
    return end > 0 ? end : WORDS_TEXT_MAX;
}

static void
know(struct sign_index *index, const char *text, enum word_source source)
{
    size_t length, i;

    for (; *text != '\0'; text += length) {
        void *arena = memory_must(talloc_new(NULL));
        struct words words;

        length = piece_length(text);
        words = words_read(arena, NULL, memory_copy_n(arena, text, length), index->language);
        for (i = 0; i < words.count; i++) {
            vocabulary_know(index->vocabulary, words.list[i].text, source);
        }
        talloc_free(arena);
    }
}

void
sign_index_know(struct sign_index *index, const char *text)
{
    know(index, text, WORD_OF_OFFICE);
}

void
sign_index_know_foreign(struct sign_index *index, const char *text)
{
    know(index, text, WORD_FOREIGN);
}

bool
sign_index_knows(const struct sign_index *index, void *arena, const char *word)
{
    return vocabulary_has(index->vocabulary, arena, word);
}

/* Adds a fault if the sign does not fire on one of its own lines. */
static void
check_own_lines(const struct sign_index *index, struct workspace *workspace,
                const struct sign_phrases *signs, struct faults *faults)
{
    void *arena = memory_must(talloc_new(NULL));
    size_t i;
    int choice;

    for (i = 0; i < signs->said_as_count; i++) {
        const char *line = signs->said_as[i].line;

        for (choice = 0; choice < phrase_choices(line); choice++) {
            const char *example = phrase_example(arena, index->classes, line, choice);

            if (!sign_index_fires(index, workspace, signs,
                                  words_read(arena, NULL, example, index->language))) {
                faults_add(
                    faults, signs->sign->file, signs->lines[i], "Said as",
                    "\"%s\" would not fire on \"%s\"; see whether \"Not meant by\" covers it", line,
                    example);
                break;
            }
        }
    }
    talloc_free(arena);
}

/* Files each phrase under the words of its rarest slot: count, sum up, file. */
static void
file_phrases(struct sign_index *index)
{
    size_t ids = (size_t)vocabulary_count(index->vocabulary), i, j;
    int pass, k;

    index->begins = memory_array(index, size_t, ids + 2);
    for (pass = 0; pass < 2; pass++) {
        for (i = 0; i < index->count; i++) {
            const struct sign_phrases *signs = &index->signs[i];

            for (j = 0; j < signs->said_as_count; j++) {
                const struct phrase *phrase = &signs->said_as[j];
                const struct slot *slot = &phrase->slots[phrase_rarest_slot(phrase)];

                for (k = 0; k < slot->count; k++) {
                    size_t *begins = &index->begins[slot->ids[k]];

                    if (pass == 0) {
                        begins[2]++;
                    } else {
                        index->filed[begins[1]++] = (int)(signs->first + j);
                    }
                }
            }
        }
        for (i = 2; i < ids + 2 && pass == 0; i++) {
            index->begins[i] += index->begins[i - 1];
        }
        if (pass == 0) {
            index->filed = memory_array(index, int, index->begins[ids + 1] + 1);
        }
    }
}

/* Lets the words of a person's body and state be known by their class, whether or not a phrase
 * names it. Its entries were not read for a phrase, so what cannot be read is a fault of their
 * file. */
static void
add_bodily(struct sign_index *index, struct workspace *workspace, struct faults *faults)
{
    const char *name = sign_class_bodily + 1, *refused;
    const struct sign_class *class = sign_classes_find(index->classes, name, strcspn(name, "]"));
    struct class_added added;

    if (class != NULL &&
        vocabulary_add_class(index->vocabulary, workspace, class, &added, &refused) != 0) {
        faults_add(faults, "words", 0, name, "entry \"%s\": one to five plain words", refused);
    }
}

int
sign_index_close(struct sign_index *index, struct workspace *workspace,
                 const struct ordinary *ordinary, struct faults *faults)
{
    size_t before = faults->count, i, j;

    add_bodily(index, workspace, faults);
    vocabulary_close(index->vocabulary, workspace);
    for (i = 0; i < index->count; i++) {
        struct sign_phrases *signs = &index->signs[i];

        signs->first = index->phrase_count;
        index->phrase_count += signs->said_as_count;
        for (j = 0; j < signs->said_as_count; j++) {
            phrase_resolve(index->vocabulary, &signs->said_as[j]);
        }
        for (j = 0; j < signs->not_meant_by_count; j++) {
            phrase_resolve(index->vocabulary, &signs->not_meant_by[j]);
        }
    }
    file_phrases(index);
    for (i = 0; i < index->count; i++) {
        check_own_lines(index, workspace, &index->signs[i], faults);
    }
    index->opinion = opinion_build(index, workspace, index->vocabulary, index->classes,
                                   index->examples, index->example_count);
    sign_mend_build(index, ordinary);
    return faults->count == before ? 0 : -1;
}
