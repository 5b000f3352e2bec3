/*
 * The default alphabet and its extension are listed here as Unicode code points, in the order of
 * 3GPP TS 23.038 tables 6.2.1 and 6.2.1.1. 0x09 is capital C with cedilla, as in the standard.
 */
#include "parts.h"

#include <stdint.h>
#include <string.h>

#include <utf8proc.h>

#include "memory.h"

enum {
    GSM7_ALONE = 160,
    GSM7_JOINED = 153,
    UCS2_ALONE = 70,
    UCS2_JOINED = 67,
    NOT_A_CHARACTER = -1
};

static const uint16_t default_alphabet[] = {
    0x40,  0xa3,  0x24,  0xa5,  0xe8,  0xe9,  0xf9, 0xec,  0xf2,  0xc7,  0x0a,
    0xd8,  0xf8,  0x0d,  0xc5,  0xe5,  0x394, 0x5f, 0x3a6, 0x393, 0x39b, 0x3a9,
    0x3a0, 0x3a8, 0x3a3, 0x398, 0x39e, 0xc6,  0xe6, 0xdf,  0xc9,  0xa4,  0xa1,
    0xc4,  0xd6,  0xd1,  0xdc,  0xa7,  0xbf,  0xe4, 0xf6,  0xf1,  0xfc,  0xe0,
};

/* Where the default alphabet and ASCII are the same, these are the printable ones that differ. */
static const char not_default[] = "[\\]^`{|}~";
static const uint16_t extension[] = {'^', '{', '}', '\\', '[', '~', ']', '|', 0x20ac, 0x0c};

/* What is needlessly outside of the alphabet, and how it is said inside. */
static const struct substitute {
    utf8proc_int32_t from;
    const char *to;
} substitutes[] = {
    {0x09, " "},     {0x60, "'"},    {0xa0, " "},    {0xa9, "(c)"},  {0xab, "\""},   {0xad, ""},
    {0xb2, "2"},     {0xb3, "3"},    {0xb4, "'"},    {0xb7, "-"},    {0xbb, "\""},   {0xbc, " 1/4"},
    {0xbd, " 1/2"},  {0xbe, " 3/4"}, {0xd7, "x"},    {0x2010, "-"},  {0x2011, "-"},  {0x2012, "-"},
    {0x2013, "-"},   {0x2014, "-"},  {0x2015, "-"},  {0x2018, "'"},  {0x2019, "'"},  {0x201a, "'"},
    {0x201b, "'"},   {0x201c, "\""}, {0x201d, "\""}, {0x201e, "\""}, {0x201f, "\""}, {0x2022, "-"},
    {0x2026, "..."}, {0x2028, "\n"}, {0x2029, "\n"}, {0x2032, "'"},  {0x2033, "\""}, {0x2039, "'"},
    {0x203a, "'"},   {0x2044, "/"},  {0x2082, "2"},  {0x2122, ""},   {0x2190, "<-"}, {0x2192, "->"},
    {0x2212, "-"},   {0x2264, "<="}, {0x2265, ">="}, {0x3000, " "},  {0xae, ""},
};

/* Reads one character; *code is NOT_A_CHARACTER for a byte that is none. Returns its length. */
static size_t
next_character(const char *text, size_t length, utf8proc_int32_t *code)
{
    utf8proc_ssize_t read =
        utf8proc_iterate((const utf8proc_uint8_t *)text, (utf8proc_ssize_t)length, code);

    if (read <= 0) {
        *code = NOT_A_CHARACTER;
        return 1;
    }
    return (size_t)read;
}

/* Septets that a character takes: 1, 2 with an escape, 0 if the alphabet has none. */
static size_t
septets(utf8proc_int32_t code)
{
    size_t i;

    for (i = 0; i < sizeof extension / sizeof extension[0]; i++) {
        if (extension[i] == code) {
            return 2;
        }
    }
    if (code >= 0x20 && code < 0x7f) {
        return strchr(not_default, (int)code) == NULL ? 1 : 0;
    }
    for (i = 0; i < sizeof default_alphabet / sizeof default_alphabet[0]; i++) {
        if (default_alphabet[i] == code) {
            return 1;
        }
    }
    return 0;
}

static bool
all_gsm7(const char *text, size_t length)
{
    utf8proc_int32_t code;
    size_t at = 0;

    while (at < length) {
        at += next_character(text + at, length - at, &code);
        if (septets(code) == 0) {
            return false;
        }
    }
    return true;
}

struct parts
parts_count(const char *text)
{
    size_t length = strlen(text);
    struct parts parts = {.gsm7 = all_gsm7(text, length)};
    size_t alone = parts.gsm7 ? GSM7_ALONE : UCS2_ALONE;
    size_t joined = parts.gsm7 ? GSM7_JOINED : UCS2_JOINED;
    size_t in_part = 0, full_parts = 0, at = 0;
    utf8proc_int32_t code;

    while (at < length) {
        size_t units;

        at += next_character(text + at, length - at, &code);
        units = parts.gsm7 ? septets(code) : (code > 0xffff ? 2 : 1);
        if (in_part + units > joined) { /* a pair goes whole into the next part */
            full_parts++;
            in_part = 0;
        }
        in_part += units;
        parts.units += units;
    }
    if (parts.units > 0) {
        parts.parts = parts.units <= alone ? 1 : full_parts + 1;
    }
    return parts;
}

/* "40\u00b0C" is said "40 C", a bare degree sign "40 degrees". */
static const char *
degree_words(const char *said, const char *rest)
{
    size_t length = strlen(said);
    bool blank_before = length == 0 || said[length - 1] == ' ';
    bool scale_follows = rest[0] == 'C' || rest[0] == 'F' || rest[0] == ' ';

    if (rest[0] == ' ' && (rest[1] == 'C' || rest[1] == 'F')) {
        return "";
    }
    if (scale_follows && rest[0] != ' ') {
        return blank_before ? "" : " ";
    }
    return blank_before ? "degrees" : " degrees";
}

static const char *
substitute_for(utf8proc_int32_t code)
{
    size_t i;

    if (code >= 0x2000 && code <= 0x200a) { /* spaces of every width */
        return " ";
    }
    if ((code >= 0x200b && code <= 0x200f) || code == 0x202f || code == 0x205f || code == 0x2060 ||
        code == 0xfeff) {
        return code == 0x202f || code == 0x205f ? " " : "";
    }
    for (i = 0; i < sizeof substitutes / sizeof substitutes[0]; i++) {
        if (substitutes[i].from == code) {
            return substitutes[i].to;
        }
    }
    return NULL;
}

char *
parts_plain(void *arena, const char *text)
{
    size_t length = strlen(text), at = 0;
    char *plain = memory_copy(arena, "");
    utf8proc_int32_t code;

    while (at < length) {
        size_t read = next_character(text + at, length - at, &code);
        const char *instead =
            code == 0xb0 ? degree_words(plain, text + at + read) : substitute_for(code);

        if (instead == NULL) {
            memory_append(&plain, "%.*s", (int)read, text + at);
        } else {
            bool blank_twice =
                instead[0] == ' ' && (plain[0] == '\0' || plain[strlen(plain) - 1] == ' ');

            memory_append(&plain, "%s", blank_twice && instead[1] != '\0' ? instead + 1 : instead);
        }
        at += read;
    }
    return plain;
}
