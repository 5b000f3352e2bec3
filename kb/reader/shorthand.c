#include "shorthand.h"

#include <stdint.h>
#include <string.h>

#include "image.h"
#include "memory.h"

/* One line: the words that a short form stands for. */
struct entry {
    const char *brief; /* NULL in an empty slot */
    struct words full;
};

/* Open addressing: every word of every text is looked up here. */
struct shorthand {
    struct entry *slots;
    size_t mask;
    size_t longest; /* most words that one short form stands for */
};

static size_t
hash_of(const char *text)
{
    uint32_t hash = 2166136261u;

    for (; *text != '\0'; text++) {
        hash = (hash ^ (unsigned char)*text) * 16777619u;
    }
    return hash ^ (hash >> 15);
}

/* The slot of a short form, or the empty one where it belongs. */
static struct entry *
slot_of(const struct shorthand *shorthand, const char *brief)
{
    size_t at = hash_of(brief) & shorthand->mask;

    while (shorthand->slots[at].brief != NULL && strcmp(shorthand->slots[at].brief, brief) != 0) {
        at = (at + 1) & shorthand->mask;
    }
    return &shorthand->slots[at];
}

/* Where reading a file stands. */
struct lines {
    struct shorthand *shorthand;
    struct workspace *workspace;
    const char *file;
    enum language language;
    struct faults *faults;
};

/* Takes one line, which is ended by NUL and may be changed. */
static void
read_line(struct lines *lines, char *line, int number)
{
    char *equals, *comment = strchr(line, '#');
    struct words brief, full;
    struct entry *slot;

    if (comment != NULL) {
        *comment = '\0';
    }
    if (line[strspn(line, " \t\r")] == '\0') {
        return;
    }
    equals = strchr(line, '=');
    if (equals == NULL) {
        faults_add(lines->faults, lines->file, number, NULL, "no \"=\"; write: short = long words");
        return;
    }
    *equals = '\0';
    brief = words_read(lines->shorthand, NULL, line, lines->language);
    full = words_read(lines->shorthand, lines->workspace, equals + 1, lines->language);
    if (brief.count != 1 || full.count == 0) {
        faults_add(lines->faults, lines->file, number, NULL,
                   "want one word before the \"=\" and at least one after it");
        return;
    }
    slot = slot_of(lines->shorthand, brief.list[0].text);
    if (slot->brief != NULL) {
        faults_add(lines->faults, lines->file, number, NULL, "\"%s\" stands here twice; keep one",
                   slot->brief);
        return;
    }
    slot->brief = brief.list[0].text;
    slot->full.list = full.list; /* one by one: the gap behind them is kept, and stays clear */
    slot->full.count = full.count;
    slot->full.language = full.language;
    if (full.count > lines->shorthand->longest) {
        lines->shorthand->longest = full.count;
    }
}

static size_t
count_lines(const char *bytes, size_t length)
{
    size_t lines = 1, i;

    for (i = 0; i < length; i++) {
        lines += bytes[i] == '\n';
    }
    return lines;
}

int
shorthand_read(void *arena, struct workspace *workspace, const char *file, const char *bytes,
               size_t length, enum language language, struct shorthand **shorthand,
               struct faults *faults)
{
    struct shorthand *read = memory_new(arena, struct shorthand);
    struct lines lines = {read, workspace, file, language, faults};
    size_t faults_before = faults->count, at = 0;
    int number = 1;

    read->longest = 1;
    read->mask = 63;
    while (read->mask < 2 * count_lines(bytes, length)) {
        read->mask = 2 * read->mask + 1;
    }
    read->slots = memory_array(read, struct entry, read->mask + 1);
    while (at < length) {
        const char *end = memchr(bytes + at, '\n', length - at);
        size_t size = end == NULL ? length - at : (size_t)(end - (bytes + at));

        read_line(&lines, memory_copy_n(read, bytes + at, size), number++);
        at += size + 1;
    }
    if (faults->count > faults_before) {
        talloc_free(read);
        return -1;
    }
    *shorthand = read;
    return 0;
}

/* Adds the long words for one word of the text. */
static size_t
add_full(struct word *list, size_t count, const struct word *word, const struct words *full)
{
    size_t i;

    for (i = 0; i < full->count; i++) {
        list[count] = *word;
        list[count].text = full->list[i].text;
        list[count].stem = full->list[i].stem;
        list[count].comma_before = word->comma_before && i == 0;
        count++;
    }
    return count;
}

struct words
shorthand_expand(void *arena, const struct shorthand *shorthand, struct words words)
{
    struct word *list;
    size_t count = 0, i;

    if (shorthand == NULL) {
        return words;
    }
    list = memory_must(
        talloc_array(arena, struct word, (unsigned)(words.count * shorthand->longest + 1)));
    for (i = 0; i < words.count; i++) {
        const struct entry *slot = slot_of(shorthand, words.list[i].text);

        if (slot->brief == NULL) {
            list[count++] = words.list[i];
        } else {
            count = add_full(list, count, &words.list[i], &slot->full);
        }
    }
    return (struct words){list, count, words.language};
}

static void
entry_image(struct image *image, struct entry *entry)
{
    struct word *list = image_array(image, &entry->full.list, entry->full.count);
    size_t i;

    image_text(image, &entry->brief);
    for (i = 0; i < entry->full.count; i++) {
        image_text(image, &list[i].text);
        image_text(image, &list[i].stem);
    }
}

void
shorthand_image(struct image *image, struct shorthand **of)
{
    struct shorthand *shorthand = image_array(image, of, 1);
    size_t i;

    if (shorthand != NULL) {
        image_array(image, &shorthand->slots, shorthand->mask + 1);
        for (i = 0; i <= shorthand->mask; i++) {
            entry_image(image, &shorthand->slots[i]);
        }
    }
}
