#include "number_words.h"

#include <stdbool.h>
#include <stddef.h>
#include <string.h>

static const struct entry {
    const char *word;
    enum number_word_kind kind;
    int value;
} entries[] = {
    /* English */
    {"zero", NUMBER_WORD_UNIT, 0},
    {"one", NUMBER_WORD_UNIT, 1},
    {"two", NUMBER_WORD_UNIT, 2},
    {"three", NUMBER_WORD_UNIT, 3},
    {"four", NUMBER_WORD_UNIT, 4},
    {"five", NUMBER_WORD_UNIT, 5},
    {"six", NUMBER_WORD_UNIT, 6},
    {"seven", NUMBER_WORD_UNIT, 7},
    {"eight", NUMBER_WORD_UNIT, 8},
    {"nine", NUMBER_WORD_UNIT, 9},
    {"ten", NUMBER_WORD_TEEN, 10},
    {"eleven", NUMBER_WORD_TEEN, 11},
    {"twelve", NUMBER_WORD_TEEN, 12},
    {"thirteen", NUMBER_WORD_TEEN, 13},
    {"fourteen", NUMBER_WORD_TEEN, 14},
    {"fifteen", NUMBER_WORD_TEEN, 15},
    {"sixteen", NUMBER_WORD_TEEN, 16},
    {"seventeen", NUMBER_WORD_TEEN, 17},
    {"eighteen", NUMBER_WORD_TEEN, 18},
    {"nineteen", NUMBER_WORD_TEEN, 19},
    {"twenty", NUMBER_WORD_TENS, 20},
    {"thirty", NUMBER_WORD_TENS, 30},
    {"forty", NUMBER_WORD_TENS, 40},
    {"fourty", NUMBER_WORD_TENS, 40},
    {"fifty", NUMBER_WORD_TENS, 50},
    {"sixty", NUMBER_WORD_TENS, 60},
    {"seventy", NUMBER_WORD_TENS, 70},
    {"eighty", NUMBER_WORD_TENS, 80},
    {"ninety", NUMBER_WORD_TENS, 90},
    {"sixties", NUMBER_WORD_TEEN, 60},
    {"seventies", NUMBER_WORD_TEEN, 70},
    {"eighties", NUMBER_WORD_TEEN, 80},
    {"treintas", NUMBER_WORD_TEEN, 30},
    {"cuarentas", NUMBER_WORD_TEEN, 40},
    {"cincuentas", NUMBER_WORD_TEEN, 50},
    {"sesentas", NUMBER_WORD_TEEN, 60},
    {"setentas", NUMBER_WORD_TEEN, 70},
    {"ochentas", NUMBER_WORD_TEEN, 80},
    {"noventas", NUMBER_WORD_TEEN, 90},
    {"nineties", NUMBER_WORD_TEEN, 90},
    {"hundred", NUMBER_WORD_HUNDRED, 100},
    {"thousand", NUMBER_WORD_THOUSAND, 1000},
    /* Spanish */
    {"cero", NUMBER_WORD_UNIT, 0},
    {"uno", NUMBER_WORD_UNIT, 1},
    {"dos", NUMBER_WORD_UNIT, 2},
    {"tres", NUMBER_WORD_UNIT, 3},
    {"cuatro", NUMBER_WORD_UNIT, 4},
    {"cinco", NUMBER_WORD_UNIT, 5},
    {"seis", NUMBER_WORD_UNIT, 6},
    {"siete", NUMBER_WORD_UNIT, 7},
    {"ocho", NUMBER_WORD_UNIT, 8},
    {"nueve", NUMBER_WORD_UNIT, 9},
    {"diez", NUMBER_WORD_TEEN, 10},
    {"once", NUMBER_WORD_TEEN, 11},
    {"doce", NUMBER_WORD_TEEN, 12},
    {"trece", NUMBER_WORD_TEEN, 13},
    {"catorce", NUMBER_WORD_TEEN, 14},
    {"quince", NUMBER_WORD_TEEN, 15},
    {"dieciseis", NUMBER_WORD_TEEN, 16},
    {"diecisiete", NUMBER_WORD_TEEN, 17},
    {"dieciocho", NUMBER_WORD_TEEN, 18},
    {"diecinueve", NUMBER_WORD_TEEN, 19},
    {"veinte", NUMBER_WORD_TENS, 20},
    {"veintiun", NUMBER_WORD_TEEN, 21},
    {"veintiuno", NUMBER_WORD_TEEN, 21},
    {"veintidos", NUMBER_WORD_TEEN, 22},
    {"veintitres", NUMBER_WORD_TEEN, 23},
    {"veinticuatro", NUMBER_WORD_TEEN, 24},
    {"veinticinco", NUMBER_WORD_TEEN, 25},
    {"veintiseis", NUMBER_WORD_TEEN, 26},
    {"veintisiete", NUMBER_WORD_TEEN, 27},
    {"veintiocho", NUMBER_WORD_TEEN, 28},
    {"veintinueve", NUMBER_WORD_TEEN, 29},
    {"treinta", NUMBER_WORD_TENS, 30},
    {"cuarenta", NUMBER_WORD_TENS, 40},
    {"cincuenta", NUMBER_WORD_TENS, 50},
    {"sesenta", NUMBER_WORD_TENS, 60},
    {"setenta", NUMBER_WORD_TENS, 70},
    {"ochenta", NUMBER_WORD_TENS, 80},
    {"noventa", NUMBER_WORD_TENS, 90},
    {"cien", NUMBER_WORD_SUM, 100},
    {"ciento", NUMBER_WORD_SUM, 100},
    {"doscientos", NUMBER_WORD_SUM, 200},
    {"doscientas", NUMBER_WORD_SUM, 200},
    {"trescientos", NUMBER_WORD_SUM, 300},
    {"trescientas", NUMBER_WORD_SUM, 300},
    {"cuatrocientos", NUMBER_WORD_SUM, 400},
    {"cuatrocientas", NUMBER_WORD_SUM, 400},
    {"quinientos", NUMBER_WORD_SUM, 500},
    {"quinientas", NUMBER_WORD_SUM, 500},
    {"seiscientos", NUMBER_WORD_SUM, 600},
    {"seiscientas", NUMBER_WORD_SUM, 600},
    {"setecientos", NUMBER_WORD_SUM, 700},
    {"setecientas", NUMBER_WORD_SUM, 700},
    {"ochocientos", NUMBER_WORD_SUM, 800},
    {"ochocientas", NUMBER_WORD_SUM, 800},
    {"novecientos", NUMBER_WORD_SUM, 900},
    {"novecientas", NUMBER_WORD_SUM, 900},
    {"mil", NUMBER_WORD_THOUSAND, 1000},
};

enum { ENTRIES = sizeof entries / sizeof entries[0] };

/* "eightyfour", "ochentaidos", "noventaycinco": tens and a unit run into one word. */
static bool
is_run_together(const char *word, int *value)
{
    size_t i, k;

    for (i = 0; i < ENTRIES; i++) {
        size_t length;
        const char *unit;

        if (entries[i].kind != NUMBER_WORD_TENS || entries[i].word[0] != word[0]) {
            continue;
        }
        length = strlen(entries[i].word);
        if (strncmp(word, entries[i].word, length) != 0) {
            continue;
        }
        unit = word + length;
        unit += *unit == 'y' || (*unit == 'i' && unit[1] != '\0');
        for (k = 0; k < ENTRIES; k++) {
            if (entries[k].kind == NUMBER_WORD_UNIT && strcmp(unit, entries[k].word) == 0) {
                *value = entries[i].value + entries[k].value;
                return true;
            }
        }
    }
    return false;
}

enum number_word_kind
number_word(const char *word, int *value)
{
    size_t i;

    for (i = 0; i < ENTRIES; i++) {
        if (word[0] == entries[i].word[0] && strcmp(word, entries[i].word) == 0) {
            *value = entries[i].value;
            return entries[i].kind;
        }
    }
    return is_run_together(word, value) ? NUMBER_WORD_TEEN : NUMBER_WORD_NONE;
}

const char *
number_word_at(size_t i)
{
    return i < ENTRIES ? entries[i].word : NULL;
}
