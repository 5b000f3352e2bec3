/*
 * Spreadsheets run a cell that begins with =, +, - or @ as a formula, and a renter's name comes
 * from a stranger. So free text of that kind is written with a ' in front, which spreadsheets do
 * not show, and reading takes it off again.
 */
#include "rental_cells.h"

#include <ctype.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <glib.h>

#include "clock.h"
#include "gateway.h"
#include "memory.h"

static const char formula_starts[] = "=+-@";

/* ---- Reading ------------------------------------------------------------------------------- */

/* Any ' in front of what would be a formula. */
static bool
is_guarded(const char *text, bool is_written)
{
    size_t quotes = strspn(text, "'");

    return (is_written || quotes > 0) && text[quotes] != '\0' &&
           strchr(formula_starts, text[quotes]) != NULL;
}

/* Digits with at most one decimal: "2", "2.5", and "2,5" where that is how decimals are written. */
static json_t *
tenths(const char *text)
{
    size_t whole = strspn(text, "0123456789");
    const char *rest = text + whole;

    if (whole == 0 || whole > 3) {
        return NULL;
    }
    if (*rest == '\0') {
        return json_integer(strtol(text, NULL, 10) * 10);
    }
    if ((rest[0] != '.' && rest[0] != ',') || !isdigit((unsigned char)rest[1]) || rest[2] != '\0') {
        return NULL;
    }
    return json_integer(strtol(text, NULL, 10) * 10 + (rest[1] - '0'));
}

static json_t *
whole_number(const char *text)
{
    const char *digits = text[0] == '-' ? text + 1 : text;
    size_t count = strspn(digits, "0123456789");

    return count > 0 && count <= 9 && digits[count] == '\0' ? json_integer(strtol(text, NULL, 10))
                                                            : NULL;
}

static json_t *
decimal(const char *text)
{
    char *end;
    double value = g_ascii_strtod(text, &end);

    return end != text && *end == '\0' && isdigit((unsigned char)text[0]) && isfinite(value)
               ? json_real(value)
               : NULL;
}

static json_t *
yes_no(const char *text)
{
    if (g_ascii_strcasecmp(text, "yes") == 0) {
        return json_true();
    }
    return g_ascii_strcasecmp(text, "no") == 0 ? json_false() : NULL;
}

/* A name of ours, however it is spelt: "Texts only" is texts-only. */
static json_t *
own_name(const char *text)
{
    char *small = g_ascii_strdown(text, -1);
    json_t *name = json_string(g_strdelimit(small, " ", '-'));

    g_free(small);
    return name;
}

/* What the office's wall shows, without a time only if a day will do. */
static json_t *
moment(const struct zone *zone, const char *text, bool a_day_will_do)
{
    struct local_time local;
    bool has_time;
    int64_t utc_s;

    if (strchr(text, 'T') != NULL && clock_read(text, &utc_s) == 0) {
        return json_integer(utc_s); /* RFC 3339 says its own zone */
    }
    if (clock_read_wall(text, &local, &has_time) != 0 || (!has_time && !a_day_will_do)) {
        return NULL;
    }
    return json_integer(zone_utc(zone, &local));
}

static json_t *
phone(void *arena, const struct config *config, const char *text)
{
    enum { SHORT_MAX = 6 }; /* a dispatch may have a short number; a longer one has lost digits */
    const char *number = gateway_phone(arena, config, text);

    return number == NULL || (*number != '+' && strlen(number) > SHORT_MAX) ? NULL
                                                                            : json_string(number);
}

json_t *
rental_cell_read(void *arena, const struct rental_setting *setting, enum cell_kind kind,
                 const char *text)
{
    json_t *value = NULL;

    switch (kind) {
    case CELL_TEXT:
        text += is_guarded(text, false);
        break;
    case CELL_NAME:
        value = own_name(text);
        break;
    case CELL_PHONE:
        value = phone(arena, setting->config, text);
        break;
    case CELL_NUMBER:
        value = whole_number(text);
        break;
    case CELL_FEET:
        value = decimal(text);
        break;
    case CELL_TENTHS:
        value = tenths(text);
        break;
    case CELL_DAY:
    case CELL_MOMENT:
        value = moment(setting->zone, text, kind == CELL_DAY);
        break;
    case CELL_YES_NO:
        value = yes_no(text);
        break;
    }
    return value != NULL ? value : memory_must(json_string(text));
}

/* ---- Writing ------------------------------------------------------------------------------- */

/* As the wall shows it if that can be read in one way only, else with its zone. */
static char *
moment_text(void *arena, const struct zone *zone, int64_t utc_s, bool a_day_will_do)
{
    struct local_time local = zone_local(zone, utc_s);

    if (zone_utc(zone, &local) != utc_s || local.second != 0) {
        return clock_text(arena, utc_s);
    }
    if (a_day_will_do && local.hour == 0 && local.minute == 0) {
        return memory_format(arena, "%04d-%02d-%02d", local.year, local.month, local.day);
    }
    return memory_format(arena, "%04d-%02d-%02d %02d:%02d", local.year, local.month, local.day,
                         local.hour, local.minute);
}

static char *
tenths_text(void *arena, int64_t value)
{
    return value % 10 == 0 ? memory_format(arena, "%lld", (long long)(value / 10))
                           : memory_format(arena, "%lld.%lld", (long long)(value / 10),
                                           (long long)(value % 10));
}

char *
rental_cell_write(void *arena, const struct zone *zone, enum cell_kind kind, const json_t *value)
{
    const char *text = json_is_string(value) ? json_string_value(value) : "";

    if (value == NULL) {
        return memory_copy(arena, "");
    }
    switch (kind) {
    case CELL_TEXT:
        return memory_format(arena, "%s%s", is_guarded(text, true) ? "'" : "", text);
    case CELL_NAME:
    case CELL_PHONE:
        return memory_copy(arena, text);
    case CELL_NUMBER:
        return memory_format(arena, "%lld", (long long)json_integer_value(value));
    case CELL_FEET: {
        char digits[G_ASCII_DTOSTR_BUF_SIZE]; /* six digits, as the record keeps them */

        return memory_copy(
            arena, g_ascii_formatd(digits, sizeof(digits), "%.6g", json_number_value(value)));
    }
    case CELL_TENTHS:
        return tenths_text(arena, json_integer_value(value));
    case CELL_DAY:
    case CELL_MOMENT:
        return moment_text(arena, zone, json_integer_value(value), kind == CELL_DAY);
    case CELL_YES_NO:
        return memory_copy(arena, json_is_true(value) ? "yes" : "no");
    }
    return memory_copy(arena, "");
}

/* ---- Into the record ----------------------------------------------------------------------- */

/* The child that a token names, made if it is not there: a list if the next token is a number. */
static json_t *
child(json_t *parent, const char *token, bool is_list)
{
    json_t *made = is_list ? json_array() : json_object();
    json_t *there;

    if (json_is_array(parent)) {
        size_t index = (size_t)strtol(token, NULL, 10);

        while (json_array_size(parent) <= index) {
            json_array_append_new(parent, json_null());
        }
        there = json_array_get(parent, index);
        if (json_is_null(there)) {
            json_array_set(parent, index, made);
            there = made;
        }
    } else {
        there = json_object_get(parent, token);
        if (there == NULL) {
            json_object_set(parent, token, made);
            there = made;
        }
    }
    json_decref(made);
    return there;
}

void
rental_cell_put(json_t *record, const struct rental_column *column, json_t *value)
{
    char **tokens = g_strsplit(column->pointer + 1, "/", 0);
    json_t *parent = record;
    size_t i;

    for (i = 0; tokens[i + 1] != NULL; i++) {
        parent = child(parent, tokens[i], isdigit((unsigned char)tokens[i + 1][0]) != 0);
    }
    if (column->only_beside && json_object_size(parent) == 0) {
        json_object_del(json_object_get(record, tokens[0]), tokens[i - 1]);
        json_decref(value);
    } else {
        json_object_set_new(parent, tokens[i], value);
    }
    g_strfreev(tokens);
}
