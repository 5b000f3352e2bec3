#include "in_words.h"

#include <stdbool.h>
#include <string.h>

#include "memory.h"

/* Longer ones before those they begin with. */
static const struct sign_word {
    const char *sign;
    const char *word[LANGUAGE_COUNT];
} sign_words[] = {
    {"->", {" to ", " a "}},
    {"<-", {" from ", " de "}},
    {"<=", {" at most ", " hasta "}},
    {">=", {" at least ", " al menos "}},
    {"<", {" under ", " menos de "}},
    {">", {" over ", " mas de "}},
    {"=", {" is ", " es "}},
    {"~", {" about ", " unos "}},
    {"&", {" and ", " y "}},
    {"%", {" percent", " por ciento"}},
    {"*", {" ", " "}},
    {"_", {" ", " "}},
    {"|", {" ", " "}},
    {"[", {" ", " "}},
    {"]", {" ", " "}},
    {"^", {" ", " "}},
};

static const struct fraction {
    const char *sign;
    const char *word[LANGUAGE_COUNT];
} fractions[] = {
    {"1/2", {"one half", "un medio"}},           {"1/3", {"one third", "un tercio"}},
    {"2/3", {"two thirds", "dos tercios"}},      {"1/4", {"one quarter", "un cuarto"}},
    {"3/4", {"three quarters", "tres cuartos"}},
};

/* Behind a number. */
static const struct unit_word {
    const char *unit;
    const char *one[LANGUAGE_COUNT], *many[LANGUAGE_COUNT];
} unit_words[] = {
    {"h", {"hour", "hora"}, {"hours", "horas"}},
    {"hr", {"hour", "hora"}, {"hours", "horas"}},
    {"hrs", {"hours", "horas"}, {"hours", "horas"}},
    {"min", {"minute", "minuto"}, {"minutes", "minutos"}},
    {"ft", {"foot", "pie"}, {"feet", "pies"}},
    {"lb", {"pound", "libra"}, {"pounds", "libras"}},
    {"kg", {"kilogram", "kilo"}, {"kilograms", "kilos"}},
    {"L/min", {"liter a minute", "litro por minuto"}, {"liters a minute", "litros por minuto"}},
    {"Wh", {"watt hour", "vatio hora"}, {"watt hours", "vatios hora"}},
};

#define COUNT(list) (sizeof(list) / sizeof((list)[0]))

static bool
is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static bool
is_letter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (unsigned char)c >= 0x80;
}

/* Appends a word; between words stands one space. */
static void
append(char **out, const char *word)
{
    size_t length = strlen(*out);
    bool has_space = length == 0 || (*out)[length - 1] == ' ' || (*out)[length - 1] == '\n';

    memory_append(out, "%s", word + (has_space && word[0] == ' ' ? 1 : 0));
}

/* Bytes of `text` that a fraction takes, 0 for none; "11/2" and "1/2/26" are none. */
static size_t
say_fraction(char **out, enum language language, const char *text, char before)
{
    size_t i;

    for (i = 0; i < COUNT(fractions) && !is_digit(before) && before != '/'; i++) {
        size_t length = strlen(fractions[i].sign);

        if (strncmp(text, fractions[i].sign, length) == 0 && !is_digit(text[length]) &&
            text[length] != '/') {
            memory_append(out, "%s", fractions[i].word[language]);
            return length;
        }
    }
    return 0;
}

/* A number and the unit behind it: "2 h", "45min", "1 L/min". */
static size_t
say_measure(char **out, enum language language, const char *text, char before)
{
    size_t digits = strspn(text, "0123456789."), at = digits, i;

    if (digits == 0 || !is_digit(text[0]) || is_digit(before) || is_letter(before)) {
        return 0;
    }
    at += text[at] == ' ' ? 1 : 0;
    for (i = 0; i < COUNT(unit_words); i++) {
        const struct unit_word *word = &unit_words[i];
        size_t length = strlen(word->unit);
        bool is_one = digits == 1 && text[0] == '1';

        if (strncmp(text + at, word->unit, length) == 0 && !is_letter(text[at + length]) &&
            text[at + length] != '/') {
            memory_append(out, "%.*s %s", (int)digits, text,
                          is_one ? word->one[language] : word->many[language]);
            return at + length;
        }
    }
    return 0;
}

static size_t
say_sign(char **out, enum language language, const char *text)
{
    size_t i;

    for (i = 0; i < COUNT(sign_words); i++) {
        size_t length = strlen(sign_words[i].sign);

        if (strncmp(text, sign_words[i].sign, length) == 0) {
            append(out, sign_words[i].word[language]);
            return length;
        }
    }
    if (text[0] == '+' && text[1] == ' ') { /* before a digit it is a phone's */
        append(out, language == LANGUAGE_ES ? " y " : " and ");
        return 1;
    }
    if (text[0] == '#' && is_digit(text[1])) {
        append(out, language == LANGUAGE_ES ? " numero " : " number ");
        return 1;
    }
    return 0;
}

char *
in_words(void *arena, enum language language, const char *text)
{
    char *out = memory_copy(arena, "");
    char before = ' ';

    while (*text != '\0') {
        size_t taken = say_fraction(&out, language, text, before);

        taken = taken > 0 ? taken : say_measure(&out, language, text, before);
        taken = taken > 0 ? taken : say_sign(&out, language, text);
        if (taken == 0) {
            const char one[] = {*text, '\0'};

            append(&out, one);
            taken = 1;
        }
        text += taken;
        before = text[-1];
    }
    return out;
}
