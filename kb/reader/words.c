/*
 * From bytes to words, in one pass over the characters. Every character is cleaned by itself
 * (utf8proc), so that each word knows the bytes of the original that it came from; a clean-up of
 * the whole text first would lose that.
 */
#include "words.h"

#include <assert.h>
#include <libstemmer.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>
#include <utf8proc.h>

#include "memory.h"
#include "spelling.h"

/* A word whose stem is remembered, since most words come again and stemming costs more than all
 * else about them. Texts that are longer are stemmed anew each time. */
struct stemmed {
    char text[16], stem[16]; /* both ended by NUL; an empty text is a free slot */
};

enum { STEMMED = 4096 }; /* of each language: a word takes the slot of what was there before */

struct workspace {
    struct sb_stemmer *stemmers[LANGUAGE_COUNT];
    struct stemmed stemmed[LANGUAGE_COUNT][STEMMED];
};

struct workspace *
workspace_new(void)
{
    static const char *const names[LANGUAGE_COUNT] = {"english", "spanish"};
    struct workspace *workspace = memory_must(calloc(1, sizeof(*workspace)));
    int language;

    for (language = 0; language < LANGUAGE_COUNT; language++) {
        workspace->stemmers[language] = memory_must(sb_stemmer_new(names[language], "UTF_8"));
    }
    return workspace;
}

void
workspace_free(struct workspace *workspace)
{
    int language;

    if (workspace == NULL) {
        return;
    }
    for (language = 0; language < LANGUAGE_COUNT; language++) {
        sb_stemmer_delete(workspace->stemmers[language]);
    }
    free(workspace);
}

/* The stem of a word of `length` bytes, and how long it is; stays until the next call. */
static const char *
find_stem(struct workspace *workspace, enum language language, const char *text, size_t *length)
{
    struct sb_stemmer *stemmer = workspace->stemmers[language];
    struct stemmed *slot = NULL;
    const sb_symbol *stem;

    if (*length > 0 && *length < sizeof(slot->text)) {
        slot =
            &workspace->stemmed[language][spelling_key(text, *length, *length, *length) % STEMMED];
        if (memcmp(slot->text, text, *length) == 0 && slot->text[*length] == '\0') {
            *length = strlen(slot->stem);
            return slot->stem;
        }
    }
    stem = memory_must(
        (void *)(uintptr_t)sb_stemmer_stem(stemmer, (const sb_symbol *)text, (int)*length));
    if (slot != NULL && (size_t)sb_stemmer_length(stemmer) < sizeof(slot->stem)) {
        memcpy(slot->text, text, *length);
        slot->text[*length] = '\0';
        memcpy(slot->stem, stem, (size_t)sb_stemmer_length(stemmer));
        slot->stem[sb_stemmer_length(stemmer)] = '\0';
    }
    *length = (size_t)sb_stemmer_length(stemmer);
    return (const char *)stem;
}

const char *
words_stem(void *arena, struct workspace *workspace, const char *text, enum language language)
{
    size_t length = strlen(text);
    const char *stem = find_stem(workspace, language, text, &length);

    return memory_copy_n(arena, stem, length);
}

/* ---- Characters --------------------------------------------------------------------------- */

enum kind { LETTER, DIGIT, SIGN, BLANK, LINE_END, STOP, PAUSE, APOSTROPHE, OTHER };

/* One cleaned character and the bytes of the original that it stands for. */
struct character {
    char bytes[4];
    unsigned char length;
    unsigned char kind;
    unsigned short start, end;
};

struct characters {
    struct character *list;
    size_t count;
};

static enum kind
ascii_kind(int32_t c)
{
    if ((c >= 'a' && c <= 'z') || c >= 128) {
        return LETTER;
    }
    if (c >= '0' && c <= '9') {
        return DIGIT;
    }
    switch (c) {
    case '\n':
    case '\r':
        return LINE_END;
    case ' ':
    case '\t':
        return BLANK;
    case '.':
    case '!':
    case '?':
    case ';':
        return STOP;
    case ',':
    case ':':
    case '-':
    case '(':
    case ')':
    case '[':
    case ']':
    case '/':
        return PAUSE;
    case '\'':
    case '`':
        return APOSTROPHE;
    case '%':
    case '$':
    case '&':
        return SIGN;
    default:
        return OTHER;
    }
}

static enum kind
kind_of(int32_t c)
{
    if (c < 128) {
        return ascii_kind(c);
    }
    switch (utf8proc_category(c)) {
    case UTF8PROC_CATEGORY_LU:
    case UTF8PROC_CATEGORY_LL:
    case UTF8PROC_CATEGORY_LT:
    case UTF8PROC_CATEGORY_LM:
    case UTF8PROC_CATEGORY_LO:
        return LETTER;
    case UTF8PROC_CATEGORY_ND:
    case UTF8PROC_CATEGORY_NL:
    case UTF8PROC_CATEGORY_NO:
        return DIGIT;
    case UTF8PROC_CATEGORY_ZS:
        return BLANK;
    case UTF8PROC_CATEGORY_ZL:
    case UTF8PROC_CATEGORY_ZP:
        return LINE_END;
    case UTF8PROC_CATEGORY_PD:
        return PAUSE;
    default:
        return OTHER;
    }
}

/* Signs that clean-up would lose or that people use for others. */
static int32_t
plain(int32_t c)
{
    switch (c) {
    case 0x00b4: /* acute accent and its like, typed for an apostrophe */
    case 0x2018:
    case 0x2019:
    case 0x02bc:
    case 0x2032:
        return '\'';
    case 0x00bf: /* the Spanish opening marks begin a sentence */
    case 0x00a1:
        return ';';
    default:
        return c;
    }
}

/* Cleans one code point into at most a few characters, all of which stand for bytes start..end. */
static void
clean(struct characters *characters, int32_t c, size_t start, size_t end)
{
    static const utf8proc_option_t how = UTF8PROC_STABLE | UTF8PROC_COMPAT | UTF8PROC_DECOMPOSE |
                                         UTF8PROC_CASEFOLD | UTF8PROC_STRIPMARK | UTF8PROC_IGNORE |
                                         UTF8PROC_STRIPNA | UTF8PROC_LUMP;
    int32_t parts[18]; /* the longest compatibility decomposition of Unicode has 18 */
    int boundary = 0;
    utf8proc_ssize_t count, i;

    if (c < 128) { /* most of every text: no table needed */
        parts[0] = c >= 'A' && c <= 'Z' ? c + ('a' - 'A') : c;
        count = 1;
    } else {
        count = utf8proc_decompose_char(plain(c), parts, 18, how, &boundary);
    }
    for (i = 0; i < count && i < 18; i++) {
        struct character *character = &characters->list[characters->count++];

        character->kind = (unsigned char)kind_of(parts[i]);
        character->length =
            (unsigned char)utf8proc_encode_char(parts[i], (utf8proc_uint8_t *)character->bytes);
        character->start = (unsigned short)start;
        character->end = (unsigned short)end;
    }
}

static size_t
cut_length(const char *text)
{
    size_t length = strnlen(text, WORDS_TEXT_MAX + 1);

    if (length > WORDS_TEXT_MAX) {
        length = WORDS_TEXT_MAX;
        while (length > 0 && ((unsigned char)text[length] & 0xc0) == 0x80) {
            length--;
        }
    }
    return length;
}

/* How many characters so many bytes may become: one of ASCII one, any other at most 18. */
static size_t
most_characters(const char *text, size_t length)
{
    size_t most = length + 1, i;

    for (i = 0; i < length; i++) {
        most += (unsigned char)text[i] < 0xc0 ? 0 : 17;
    }
    return most;
}

static struct characters
read_characters(void *arena, const char *text)
{
    size_t length = cut_length(text), at = 0;
    struct characters characters = {NULL, 0};

    characters.list =
        memory_must(talloc_array(arena, struct character, (unsigned)most_characters(text, length)));
    while (at < length) {
        int32_t c;
        utf8proc_ssize_t used = utf8proc_iterate((const utf8proc_uint8_t *)text + at,
                                                 (utf8proc_ssize_t)(length - at), &c);

        if (used <= 0) {
            at++; /* not UTF-8: skipped */
            continue;
        }
        clean(&characters, c, at, at + (size_t)used);
        at += (size_t)used;
    }
    return characters;
}

/* ---- Words -------------------------------------------------------------------------------- */

/* Where the reading of one text stands. */
struct reading {
    void *arena;
    struct workspace *workspace;
    enum language language;
    struct characters characters;
    struct word *words;
    size_t count;
    char *text; /* room for all words' texts, each ended by NUL */
    size_t used;
    int sentence;
    bool stop_before, comma_before;
};

static enum kind
kind_at(const struct reading *reading, size_t i)
{
    return i < reading->characters.count ? (enum kind)reading->characters.list[i].kind : BLANK;
}

static bool
is_byte(const struct reading *reading, size_t i, char byte)
{
    const struct character *c = &reading->characters.list[i];

    return i < reading->characters.count && c->length == 1 && c->bytes[0] == byte;
}

/* Units that people write onto their number: "30min", "2lpm". Ordinals stay in one piece. */
static bool
is_unit(const char *letters, size_t length)
{
    static const char *const units[] = {
        "l",     "lpm",  "lt",      "min",  "mins",  "m",    "h",      "hr",  "hrs",  "hour",
        "hours", "am",   "pm",      "ft",   "lb",    "lbs",  "psi",    "v",   "volt", "volts",
        "w",     "wh",   "pct",     "mph",  "days",  "day",  "bars",   "bar", "f",    "c",
        "k",     "feet", "minutes", "hora", "horas", "dias", "minutos"};
    size_t i;

    for (i = 0; i < sizeof(units) / sizeof(units[0]); i++) {
        if (strlen(units[i]) == length && memcmp(units[i], letters, length) == 0) {
            return true;
        }
    }
    return false;
}

/* True if the digits that end before i are followed by letters that are a unit and nothing more. */
static bool
unit_follows(const struct reading *reading, size_t i)
{
    char letters[8];
    size_t length = 0;

    while (kind_at(reading, i) == LETTER && length < sizeof(letters)) {
        letters[length++] = reading->characters.list[i++].bytes[0];
    }
    return kind_at(reading, i) != LETTER && kind_at(reading, i) != DIGIT &&
           is_unit(letters, length);
}

/* True if the sign at i holds its neighbours together: can't, 2.5, 9:30, 1/2, a.m., w/o. */
static bool
joins(const struct reading *reading, size_t begin, size_t i, bool *keep)
{
    enum kind before = kind_at(reading, i - 1), after = kind_at(reading, i + 1);
    bool single_before = i - begin == 1 || kind_at(reading, i - 2) == STOP;
    bool single_after = kind_at(reading, i + 2) != LETTER && kind_at(reading, i + 2) != DIGIT;

    *keep = false;
    if (kind_at(reading, i) == APOSTROPHE) {
        return (before == LETTER || before == DIGIT) && after == LETTER;
    }
    if (before == DIGIT && after == DIGIT) {
        *keep = true;
        return is_byte(reading, i, '.') || is_byte(reading, i, ',') || is_byte(reading, i, ':') ||
               is_byte(reading, i, '/');
    }
    return before == LETTER && after == LETTER && single_before && single_after &&
           (is_byte(reading, i, '.') || is_byte(reading, i, '/'));
}

/* Stems are never longer than their word, so the room for texts, taken twice, holds them too. */
static const char *
stem_of(struct reading *reading, const char *text)
{
    size_t longest = strlen(text), length = longest;
    const char *stem = find_stem(reading->workspace, reading->language, text, &length);
    char *copy = reading->text + reading->used;

    assert(length <= longest);
    memcpy(copy, stem, length);
    copy[length] = '\0';
    reading->used += length + 1;
    return copy;
}

static void
add_word(struct reading *reading, size_t begin, size_t end, size_t text_start)
{
    struct word *word = &reading->words[reading->count];

    reading->text[reading->used++] = '\0';
    if (reading->stop_before && reading->count > 0) {
        reading->sentence++;
    }
    word->text = reading->text + text_start;
    word->stem = reading->workspace == NULL ? word->text : stem_of(reading, word->text);
    word->start = reading->characters.list[begin].start;
    word->end = reading->characters.list[end - 1].end;
    word->sentence = reading->sentence;
    word->comma_before = reading->comma_before;
    reading->stop_before = reading->comma_before = false;
    reading->count++;
}

/* Reads the word that begins at `begin`; returns the index after it. */
static size_t
read_word(struct reading *reading, size_t begin)
{
    size_t i = begin, start = reading->used;
    bool keep = true;

    for (;; i++) {
        enum kind kind = kind_at(reading, i);
        const struct character *c = &reading->characters.list[i];

        if (kind == LETTER && i > begin && kind_at(reading, i - 1) == DIGIT &&
            unit_follows(reading, i)) {
            break;
        }
        if (kind != LETTER && kind != DIGIT) {
            if (i >= reading->characters.count || !joins(reading, begin, i, &keep)) {
                break;
            }
            if (!keep) {
                continue;
            }
        }
        memcpy(reading->text + reading->used, c->bytes, c->length);
        reading->used += c->length;
    }
    add_word(reading, begin, i, start);
    return i;
}

/* A sign that counts as a word of its own. */
static void
read_sign(struct reading *reading, size_t i)
{
    size_t start = reading->used;

    reading->text[reading->used++] = reading->characters.list[i].bytes[0];
    add_word(reading, i, i + 1, start);
}

/* A hyphen inside a word is no pause; with a blank on either side, or doubled, it is. */
static bool
is_pause(const struct reading *reading, size_t i)
{
    if (is_byte(reading, i, '/')) {
        return false;
    }
    return !is_byte(reading, i, '-') || i == 0 || kind_at(reading, i - 1) > DIGIT ||
           kind_at(reading, i + 1) > DIGIT;
}

/* Makes room for the words of the characters: one begins where the kind changes, or is a sign. Each
 * is there twice, as text and as stem, with a NUL. */
static void
make_room(struct reading *reading)
{
    size_t words = 0, bytes = 0, i;

    for (i = 0; i < reading->characters.count; i++) {
        enum kind kind = kind_at(reading, i);

        words += kind == SIGN || (kind <= DIGIT && (i == 0 || kind_at(reading, i - 1) != kind));
        bytes += reading->characters.list[i].length;
    }
    reading->words = memory_array(reading->arena, struct word, words + 1);
    reading->text =
        memory_must(talloc_array(reading->words, char, (unsigned)(2 * (bytes + words) + 1)));
}

struct words
words_read(void *arena, struct workspace *workspace, const char *text, enum language language)
{
    struct reading reading = {.arena = arena, .workspace = workspace, .language = language};
    size_t i = 0;

    reading.characters = read_characters(arena, text);
    make_room(&reading);
    while (i < reading.characters.count) {
        switch (kind_at(&reading, i)) {
        case LETTER:
        case DIGIT:
            i = read_word(&reading, i);
            continue;
        case SIGN:
            read_sign(&reading, i);
            break;
        case STOP:
        case LINE_END:
            reading.stop_before = true;
            break;
        case PAUSE:
            reading.comma_before = reading.comma_before || is_pause(&reading, i);
            break;
        case BLANK:
        case APOSTROPHE:
        case OTHER:
            break;
        }
        i++;
    }
    talloc_free(reading.characters.list);
    return (struct words){reading.words, reading.count, language};
}
