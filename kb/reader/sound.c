#include "sound.h"

#include <stdbool.h>
#include <string.h>

#include "memory.h"

/* A word on its way to its sound. */
struct sounding {
    const char *word; /* what is left of it */
    char *sound;
    size_t length;
};

static bool
is_front_vowel(char letter)
{
    return letter == 'e' || letter == 'i';
}

static bool
is_vowel(char letter)
{
    return letter != '\0' && strchr("aeiou", letter) != NULL;
}

/* Adds a character unless it is the last letter once more; "rr" is not "r", but "rrr" is "rr". */
static void
add(struct sounding *to, char letter)
{
    size_t length = to->length;
    bool is_again = length > 0 && to->sound[length - 1] == letter;
    bool is_third = length > 1 && to->sound[length - 2] == letter;

    if (!is_again || letter < 'a' || (letter == 'r' && length > 1 && !is_third)) {
        to->sound[to->length++] = letter;
    }
}

/* c, which sounds as s, k or (with h) as itself. Returns the letters taken. */
static size_t
add_c(struct sounding *to)
{
    const char *at = to->word;
    size_t same = at[1] == 'c' ? 2 : 1; /* "accidente" */

    if (at[1] == 'h') {
        add(to, 'c');
        add(to, 'h');
        return 2;
    }
    if (is_front_vowel(at[same]) || at[1] == 's') { /* "ocsigeno" is with x */
        add(to, 's');
        return same;
    }
    add(to, 'k');
    return 1;
}

/* Adds the sound at to->word; returns the letters taken. */
static size_t
add_sound(struct sounding *to)
{
    const char *at = to->word;
    char next = at[1];

    switch (at[0]) {
    case 'h':
        return 1;
    case 'c':
        return add_c(to);
    case 'q':
        add(to, 'k');
        return next == 'u' && is_front_vowel(at[2]) ? 2 : 1;
    case 'z':
    case 'x':
        add(to, 's');
        return 1;
    case 'v':
        add(to, 'b');
        return 1;
    case 'g':
        add(to, is_front_vowel(next) ? 'j' : 'g');
        return 1;
    case 'y':
        add(to, is_vowel(next) ? 'y' : 'i');
        return 1;
    case 'l':
        add(to, next == 'l' && is_vowel(at[2]) ? 'y' : 'l');
        return next == 'l' ? 2 : 1;
    case 'i':
        add(to, to->length == 0 && next == 'e' ? 'y' : 'i'); /* "hielo" */
        return 1;
    case 'n':
        add(to, next == 'b' || next == 'v' || next == 'p' ? 'm' : 'n');
        return 1;
    default:
        add(to, at[0]);
        return 1;
    }
}

/* Puts `ending` in the place of `wrong` if the sound ends with that; both may take a plural. */
static void
mend_ending(struct sounding *to, const char *wrong, const char *ending, const char *plural)
{
    size_t plural_length = strlen(plural), length = strlen(wrong);
    char *end = to->sound + to->length;
    bool is_plural =
        to->length > plural_length && memcmp(end - plural_length, plural, plural_length) == 0;
    size_t before = to->length - (is_plural ? plural_length : 0);

    if (before > length && memcmp(to->sound + before - length, wrong, length) == 0) {
        to->length = before - length;
        memcpy(to->sound + to->length, ending, strlen(ending));
        to->length += strlen(ending);
        memcpy(to->sound + to->length, plural, is_plural ? plural_length : 0);
        to->length += is_plural ? plural_length : 0;
    }
}

const char *
sound_of(void *arena, const char *word, enum language language)
{
    struct sounding to = {.word = word};

    if (language != LANGUAGE_ES) {
        return word;
    }
    to.sound = memory_array(arena, char, 2 * strlen(word) + 4); /* an ending may grow */
    while (*to.word != '\0') {
        to.word += add_sound(&to);
    }
    mend_ending(&to, "sion", "cion", "es"); /* as the stemmer knows it */
    mend_ending(&to, "ao", "ado", "s");
    to.sound[to.length] = '\0';
    return to.length > 0 ? to.sound : word;
}
