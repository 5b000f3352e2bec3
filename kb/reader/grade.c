/*
 * Syllables are counted as groups of vowels, corrected by a table of letters that sound as one more
 * or one less. The tables were made against the CMU pronouncing dictionary, whose counts the tests
 * hold.
 */
#include "grade.h"

#include <ctype.h>
#include <string.h>

enum { NUMBER_SYLLABLES_MAX = 3, WORD_MAX = 40 };

/* ---- Syllables of a word ------------------------------------------------------------------- */

/* Common words that the rules get wrong, and names of letters that are no words. */
static const struct {
    const char *word;
    int syllables;
} exceptions[] = {
    {"area", 3},        {"areas", 3},    {"usb", 3},      {"faa", 3},         {"tsa", 3},
    {"suv", 3},         {"id", 2},       {"idea", 3},     {"ideas", 3},       {"people", 2},
    {"friend", 1},      {"friends", 1},  {"friendly", 2}, {"science", 2},     {"clothes", 1},
    {"hour", 2},        {"hours", 2},    {"our", 2},      {"ours", 2},        {"rely", 2},
    {"maybe", 2},       {"business", 2}, {"several", 2},  {"interest", 2},    {"interested", 3},
    {"interesting", 3}, {"evening", 2},  {"evenings", 2}, {"temperature", 3}, {"temperatures", 3},
    {"hundred", 2},     {"argue", 2},    {"video", 3},    {"petroleum", 4},   {"lawyer", 2},
    {"prayer", 1},      {"min", 1},      {"recipe", 3},   {"being", 2},       {"theater", 3},
    {"shoes", 1},       {"goes", 1},     {"oneself", 2},  {"something", 2},   {"vehicle", 3},
    {"breathes", 1},    {"etc", 4},      {"ok", 2},       {"tv", 2},          {"minute", 2},
};

struct rule {
    const char *before;  /* one of these letters stands before; with ^, some other one; "" any */
    const char *letters; /* $ at their end: the word ends there */
    int change;
};

static const struct rule rules[] = {
    /* two vowels that are two syllables */
    {"^ctsgq", "ia", 1},
    {"^ctsgxln", "io", 1},
    {"^ctsgx", "iu", 1},
    {"aeiouy", "ing$", 1},
    {"aeiouy", "ings$", 1},
    {"^gq", "ua", 1},
    {"^gq", "uou", 1},
    {"^g", "eo", 1},
    {"^aeio", "ier$", 1},
    {"^aeio", "iers$", 1},
    {"^aeio", "iest$", 1},
    {"^aeo", "iet", 1},
    {"^aeotc", "ien", 1},
    {"^aeiouqg", "uel", 1},
    {"^w", "yer", 1},
    {"ao", "ya", 1},
    {"", "yon", 1},
    {"c", "reat", 1},
    {"p", "oem", 1},
    {"p", "oet", 1},
    {"ct", "iat", 1},
    {"^aeiou", "ire$", 1},
    {"^aeiou", "ires$", 1},
    {"^aeiou", "ired$", 1},
    {"", "sm$", 1},
    {"sd", "n't$", 1},
    /* vowels that are not heard */
    {"^aeiouyl", "e$", -1},
    {"aeiouyrl", "le$", -1},
    {"^aeiouytdl", "ed$", -1},
    {"aeiouyrl", "led$", -1},
    {"^aeiouysxzcghl", "es$", -1},
    {"aeiouyrl", "les$", -1},
    {"", "que$", -1},
    {"", "gue$", -1},
    {"^aeiouy", "ely$", -1},
    {"^aeiouy", "eful$", -1},
    {"^aeiouy", "efully$", -1},
    {"^aeiouy", "eless$", -1},
    {"^aeiouyl", "ement$", -1},
    {"^aeiouyl", "ements$", -1},
    {"^aeiouy", "eness$", -1},
    {"", "ically$", -1},
    {"", "iage", -1},
    {"", "every", -1},
};

/* First halves of compounds, whose last e is not heard: "someone", "safety", "hosepipe". */
static const char *const first_halves[] = {
    "some", "there", "where", "here",  "safe",  "home", "base", "time",  "pipe", "guide", "life",
    "fire", "else",  "fore",  "phone", "house", "side", "care", "spare", "line", "hose",  "tube",
    "nose", "wire",  "note",  "frame", "smoke", "nine", "like", "name",  "file",
};

static bool
is_vowel(char c)
{
    return c != '\0' && strchr("aeiouy", c) != NULL;
}

/* y before a vowel and u behind q are consonants. */
static bool
is_heard_vowel(const char *word, size_t at)
{
    if (word[at] == 'y' && at == 0) {
        return !is_vowel(word[1]);
    }
    return is_vowel(word[at]) && !(word[at] == 'u' && at > 0 && word[at - 1] == 'q');
}

static int
vowel_groups(const char *word)
{
    int groups = 0;
    size_t i;

    for (i = 0; word[i] != '\0'; i++) {
        groups += is_heard_vowel(word, i) && (i == 0 || !is_heard_vowel(word, i - 1));
    }
    return groups;
}

/* `before` is the letter before, NULL at the beginning of the word. */
static bool
may_stand_before(const struct rule *rule, const char *before)
{
    if (rule->before[0] == '\0') {
        return true;
    }
    if (before == NULL) {
        return false;
    }
    return rule->before[0] == '^' ? strchr(rule->before + 1, *before) == NULL
                                  : strchr(rule->before, *before) != NULL;
}

/* How often a rule holds in a word. */
static int
times(const struct rule *rule, const char *word)
{
    bool at_end = rule->letters[strlen(rule->letters) - 1] == '$';
    size_t of_letters = strlen(rule->letters) - at_end, length = strlen(word), i;
    int count = 0;

    for (i = 0; i + of_letters <= length; i++) {
        if (strncmp(word + i, rule->letters, of_letters) == 0 &&
            (!at_end || i + of_letters == length) &&
            may_stand_before(rule, i == 0 ? NULL : &word[i - 1])) {
            count++;
        }
    }
    return count;
}

/* "someone": the e of "some" is not heard. "somewhat", but not "homes", "timer", "carefully". */
static bool
is_compound(const char *word)
{
    size_t i;

    for (i = 0; i < sizeof(first_halves) / sizeof(first_halves[0]); i++) {
        size_t length = strlen(first_halves[i]);

        if (strncmp(word, first_halves[i], length) == 0) {
            const char *rest = word + length;

            return strlen(rest) >= 2 && vowel_groups(rest) > 0 && strncmp(rest, "ly", 2) != 0 &&
                   strncmp(rest, "ful", 3) != 0 && strcmp(rest, "less") != 0 &&
                   (!is_vowel(rest[0]) || strncmp(rest, "one", 3) == 0);
        }
    }
    return false;
}

/* Syllables of a word of small letters and apostrophes; "wife's" is read as "wife". */
static size_t
word_syllables(char *word)
{
    size_t length = strlen(word), i;
    int count;

    if (length > 2 && strcmp(word + length - 2, "'s") == 0) {
        word[length - 2] = '\0';
    }
    count = vowel_groups(word);
    for (i = 0; i < sizeof(exceptions) / sizeof(exceptions[0]); i++) {
        if (strcmp(exceptions[i].word, word) == 0) {
            return (size_t)exceptions[i].syllables;
        }
    }
    if (count == 0) {
        return strlen(word); /* spelt out: "rv" */
    }
    for (i = 0; i < sizeof(rules) / sizeof(rules[0]); i++) {
        count += rules[i].change * times(&rules[i], word);
    }
    count -= is_compound(word);
    return count < 1 ? 1 : (size_t)count;
}

/* ---- Words of a text ----------------------------------------------------------------------- */

static size_t
number_syllables(size_t digits)
{
    return digits > NUMBER_SYLLABLES_MAX ? NUMBER_SYLLABLES_MAX : digits;
}

/* Syllables of what stands between hyphens: a word, a number, or letters beside digits. */
static size_t
piece_syllables(const char *piece, size_t length)
{
    char word[WORD_MAX + 1];
    size_t digits = 0, letters = 0, used = 0, dots = 0, i;

    for (i = 0; i < length; i++) {
        unsigned char c = (unsigned char)piece[i];

        digits += isdigit(c) != 0;
        letters += isalpha(c) != 0;
        dots += c == '.' && i + 1 < length;
        if ((isalpha(c) || c == '\'') && used < WORD_MAX) {
            word[used++] = (char)tolower(c);
        }
    }
    word[used] = '\0';
    if (digits > 0) {
        return number_syllables(digits) + (letters <= 3 ? letters : word_syllables(word));
    }
    return letters == 0 || dots > 0 ? letters : word_syllables(word); /* "a.m." is spelt out */
}

size_t
reading_syllables(const char *word, size_t length)
{
    size_t syllables = 0, digits = 0, letters = 0, from = 0, i;

    for (i = 0; i < length; i++) {
        digits += isdigit((unsigned char)word[i]) != 0;
        letters += isalpha((unsigned char)word[i]) != 0;
    }
    if (letters == 0) {
        return number_syllables(digits); /* "208-555-0100" is one number */
    }
    for (i = 0; i <= length; i++) {
        if (i == length || word[i] == '-') {
            syllables += piece_syllables(word + from, i - from);
            from = i + 1;
        }
    }
    return syllables;
}

static bool
is_blank(char c)
{
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

/* The end of the word that begins here: a blank, or a slash between letters. */
static size_t
word_length(const char *text)
{
    size_t i;

    for (i = 0; text[i] != '\0' && !is_blank(text[i]); i++) {
        if (text[i] == '/' && i > 0 && isalpha((unsigned char)text[i - 1]) &&
            isalpha((unsigned char)text[i + 1])) {
            break;
        }
    }
    return i;
}

/* True for "a.m." and "e.g.", whose last dot is part of them. */
static bool
is_spelt_with_dots(const char *word, size_t length)
{
    size_t i;

    for (i = 0; i + 1 < length; i += 2) {
        if (!isalpha((unsigned char)word[i]) || word[i + 1] != '.') {
            return false;
        }
    }
    return length >= 4 && i == length;
}

static bool
is_cut_short(const char *word, size_t length)
{
    static const char *const titles[] = {"Dr.", "Mr.", "Mrs.", "Ms.", "St.", "No.", "approx."};
    size_t i;

    for (i = 0; i < sizeof(titles) / sizeof(titles[0]); i++) {
        if (strlen(titles[i]) == length && memcmp(titles[i], word, length) == 0) {
            return true;
        }
    }
    return false;
}

/* True if a sentence ends with this word; `rest` is what follows it. */
static bool
ends_sentence(const char *word, size_t length, const char *rest)
{
    rest += strspn(rest, " \t\r");
    if (*rest == '\0' || *rest == '\n') {
        return true;
    }
    while (length > 0 && strchr("\"')]", word[length - 1]) != NULL) {
        length--;
    }
    if (length == 0 || strchr(".!?", word[length - 1]) == NULL || is_cut_short(word, length)) {
        return false;
    }
    return !is_spelt_with_dots(word, length) || isupper((unsigned char)*rest);
}

struct reading_count
reading_count(const char *text)
{
    struct reading_count count = {0, 0, 0};
    size_t in_sentence = 0;

    while (*text != '\0') {
        size_t length = word_length(text);
        size_t syllables = reading_syllables(text, length);

        count.words += syllables > 0;
        count.syllables += syllables;
        in_sentence += syllables > 0;
        if (length > 0 && in_sentence > 0 && ends_sentence(text, length, text + length)) {
            count.sentences++;
            in_sentence = 0;
        }
        text += length;
        text += *text != '\0'; /* past the blank or slash */
    }
    count.sentences += in_sentence > 0; /* the last line ended in blanks and marks only */
    return count;
}

/* ---- The formulas -------------------------------------------------------------------------- */

bool
reading_grade(const struct reading_count *count, double *value)
{
    if (count->words == 0 || count->sentences == 0) {
        return false;
    }
    *value = 0.39 * (double)count->words / (double)count->sentences +
             11.8 * (double)count->syllables / (double)count->words - 15.59;
    return true;
}

bool
reading_ease(const struct reading_count *count, double *value)
{
    if (count->words == 0 || count->sentences == 0) {
        return false;
    }
    *value = 206.835 - 1.015 * (double)count->words / (double)count->sentences -
             84.6 * (double)count->syllables / (double)count->words;
    return true;
}
