#include "config_keys.h"

#include <inttypes.h>
#include <stdarg.h>
#include <string.h>

#include "memory.h"

enum { TEXT_MAX = 1000, COMPARED_MAX = 40 };

void
keys_fault(const struct reading *reading, const char *pointer, const char *format, ...)
{
    va_list arguments;
    char *text;

    va_start(arguments, format);
    text = memory_must(talloc_vasprintf(reading->arena, format, arguments));
    va_end(arguments);
    faults_add(reading->faults, reading->file, reading->line,
               reading->place != NULL ? reading->place(pointer)
               : *pointer == '\0'     ? "/"
                                      : pointer,
               "%s", text);
}

const char *
keys_pointer(const struct reading *reading, const char *pointer, const char *name)
{
    char *whole = memory_format(reading->arena, "%s/", pointer);

    for (; *name != '\0'; name++) {
        switch (*name) {
        case '~':
            memory_append(&whole, "~0");
            break;
        case '/':
            memory_append(&whole, "~1");
            break;
        default:
            memory_append(&whole, "%c", *name);
        }
    }
    return whole;
}

const char *
keys_kind(const json_t *value)
{
    if (value == NULL) {
        return "nothing";
    }
    switch (json_typeof(value)) {
    case JSON_OBJECT:
        return "an object";
    case JSON_ARRAY:
        return "a list";
    case JSON_STRING:
        return "text";
    case JSON_INTEGER:
        return "a whole number";
    case JSON_REAL:
        return "a number with a fraction";
    case JSON_NULL:
        return "null";
    default:
        return "true or false";
    }
}

/* ---- Did you mean …? ------------------------------------------------------------------------ */

static size_t
least(size_t a, size_t b, size_t c)
{
    size_t ab = a < b ? a : b;

    return ab < c ? ab : c;
}

/* Insertions, deletions and changes of one byte that turn one text into the other. */
static size_t
edit_distance(const char *one, const char *other)
{
    size_t row[COMPARED_MAX + 1];
    size_t length = strlen(other);
    size_t i, j;

    if (length > COMPARED_MAX) {
        return SIZE_MAX;
    }
    for (j = 0; j <= length; j++) {
        row[j] = j;
    }
    for (i = 1; *one != '\0'; one++, i++) {
        size_t diagonal = row[0];

        row[0] = i;
        for (j = 1; j <= length; j++) {
            size_t above = row[j];

            row[j] = least(above + 1, row[j - 1] + 1, diagonal + (*one == other[j - 1] ? 0 : 1));
            diagonal = above;
        }
    }
    return row[length];
}

const char *
keys_nearest(const char *name, const char *const *words, size_t count)
{
    size_t best = 1 + strlen(name) / 3; /* further away is another word, not a slip */
    const char *nearest = NULL;
    size_t i;

    for (i = 0; i < count; i++) {
        size_t distance = edit_distance(name, words[i]);

        if (distance <= best && (nearest == NULL || distance < best)) {
            best = distance;
            nearest = words[i];
        }
    }
    return nearest;
}

/* ---- One key -------------------------------------------------------------------------------- */

static void
read_text(const struct reading *reading, const struct key *key, json_t *value, const char *pointer,
          const char **text)
{
    int64_t high = key->high > 0 ? key->high : TEXT_MAX;
    size_t length;

    if (!json_is_string(value)) {
        keys_fault(reading, pointer, "is %s; expected text in quotes: %s", keys_kind(value),
                   key->means);
        return;
    }
    length = json_string_length(value);
    if ((int64_t)length < key->low || (int64_t)length > high) {
        keys_fault(reading, pointer, "has %zu bytes; expected %" PRId64 " to %" PRId64 ": %s",
                   length, key->low, high, key->means);
        return;
    }
    *text = memory_copy(reading->arena, json_string_value(value));
}

static const char *
path_of(const struct reading *reading, const char *path)
{
    if (path == NULL || *path == '/' || *reading->folder == '\0') {
        return path;
    }
    return memory_format(reading->arena, "%s/%s", reading->folder, path);
}

static int64_t
read_number(const struct reading *reading, const struct key *key, json_t *value,
            const char *pointer)
{
    int64_t number;

    if (!json_is_integer(value)) {
        keys_fault(reading, pointer,
                   "is %s; expected a whole number from %" PRId64 " to %" PRId64 ": %s",
                   keys_kind(value), key->low, key->high, key->means);
        return key->number;
    }
    number = json_integer_value(value);
    if (number < key->low || number > key->high) {
        keys_fault(reading, pointer, "is %" PRId64 "; expected %" PRId64 " to %" PRId64 ": %s",
                   number, key->low, key->high, key->means);
        return key->number;
    }
    return number;
}

static char *
words_listed(const struct reading *reading, const char *const *words)
{
    char *list = memory_copy(reading->arena, "");

    for (; *words != NULL; words++) {
        memory_append(&list, "%s\"%s\"", *list == '\0' ? "" : ", ", *words);
    }
    return list;
}

int
keys_word(const struct reading *reading, const struct key *key, json_t *value, const char *pointer)
{
    const char *word = json_is_string(value) ? json_string_value(value) : NULL;
    int i;

    for (i = 0; word != NULL && key->words[i] != NULL; i++) {
        if (strcmp(word, key->words[i]) == 0) {
            return i;
        }
    }
    keys_fault(reading, pointer, "is %s%s%s; expected one of %s: %s",
               word == NULL ? keys_kind(value) : "\"", word == NULL ? "" : word,
               word == NULL ? "" : "\"", words_listed(reading, key->words), key->means);
    return (int)key->number;
}

/* The key was not there: what holds then. */
static void
set_default(const struct reading *reading, const struct key *key, char *at)
{
    switch (key->kind) {
    case KEY_TEXT:
        *(const char **)(void *)at = key->text;
        break;
    case KEY_PATH:
        *(const char **)(void *)at = path_of(reading, key->text);
        break;
    case KEY_INT:
    case KEY_WORD:
        *(int *)(void *)at = (int)key->number;
        break;
    case KEY_EITHER:
        *(bool *)(void *)at = key->number == 1;
        break;
    case KEY_SECONDS:
        *(int64_t *)(void *)at = key->number;
        break;
    default:
        break;
    }
}

static void
set_value(const struct reading *reading, const struct key *key, json_t *value, const char *pointer,
          char *at)
{
    switch (key->kind) {
    case KEY_TEXT:
        read_text(reading, key, value, pointer, (const char **)(void *)at);
        break;
    case KEY_PATH:
        read_text(reading, key, value, pointer, (const char **)(void *)at);
        *(const char **)(void *)at = path_of(reading, *(const char **)(void *)at);
        break;
    case KEY_INT:
        *(int *)(void *)at = (int)read_number(reading, key, value, pointer);
        break;
    case KEY_SECONDS:
        *(int64_t *)(void *)at = read_number(reading, key, value, pointer);
        break;
    case KEY_WORD:
        *(int *)(void *)at = keys_word(reading, key, value, pointer);
        break;
    case KEY_EITHER:
        *(bool *)(void *)at = keys_word(reading, key, value, pointer) == 1;
        break;
    default:
        break;
    }
}

static void
read_key(const struct reading *reading, const struct key *key, json_t *value, const char *pointer,
         char *target)
{
    if (key->kind == KEY_SECTION) {
        keys_read(reading, key->table, value, pointer, target);
        return;
    }
    if (value == NULL && key->required) {
        keys_fault(reading, pointer, "is missing: %s", key->means);
    }
    if (key->kind == KEY_OWN) {
        if (value != NULL || !key->required) {
            key->read(reading, value, pointer, target);
        }
        return;
    }
    set_default(reading, key, target + key->at);
    if (value != NULL) {
        set_value(reading, key, value, pointer, target + key->at);
    }
}

/* ---- A table -------------------------------------------------------------------------------- */

static bool
is_known(const struct key_table *table, const char *name)
{
    size_t i;

    for (i = 0; i < table->count; i++) {
        if (strcmp(table->keys[i].name, name) == 0) {
            return true;
        }
    }
    return false;
}

static void
report_unknown(const struct reading *reading, const struct key_table *table, const char *name,
               const char *pointer)
{
    const char **words = memory_array(reading->arena, const char *, table->count);
    char *list = memory_copy(reading->arena, "");
    const char *nearest;
    size_t i;

    for (i = 0; i < table->count; i++) {
        words[i] = table->keys[i].name;
        memory_append(&list, "%s%s", i == 0 ? "" : ", ", words[i]);
    }
    nearest = keys_nearest(name, words, table->count);
    if (nearest != NULL) {
        keys_fault(reading, pointer, "is no key; did you mean \"%s\"?", nearest);
    } else {
        keys_fault(reading, pointer, "is no key; take it out (known here: %s)", list);
    }
}

void
keys_read(const struct reading *reading, const struct key_table *table, json_t *object,
          const char *pointer, void *target)
{
    const char *name;
    json_t *member;
    size_t i;

    if (object != NULL && !json_is_object(object)) {
        keys_fault(reading, pointer, "is %s; expected an object in braces", keys_kind(object));
        return;
    }
    json_object_foreach (object, name, member) {
        if (*name != '#' && !is_known(table, name)) {
            report_unknown(reading, table, name, keys_pointer(reading, pointer, name));
        }
    }
    for (i = 0; i < table->count; i++) {
        const struct key *key = &table->keys[i];

        read_key(reading, key, json_object_get(object, key->name),
                 keys_pointer(reading, pointer, key->name), target);
    }
}

const char **
keys_texts(const struct reading *reading, json_t *value, const char *pointer, size_t most,
           size_t *count)
{
    const char **texts;
    json_t *element;
    size_t i;

    *count = 0;
    if (!json_is_array(value) || json_array_size(value) < 1 || json_array_size(value) > most) {
        keys_fault(reading, pointer, "is %s; expected a list of 1 to %zu texts", keys_kind(value),
                   most);
        return NULL;
    }
    texts = memory_array(reading->arena, const char *, json_array_size(value));
    json_array_foreach (value, i, element) {
        if (!json_is_string(element) || json_string_length(element) == 0) {
            keys_fault(reading, pointer, "holds %s; expected text in quotes",
                       json_is_string(element) ? "an empty text" : keys_kind(element));
            continue;
        }
        texts[(*count)++] = memory_copy(reading->arena, json_string_value(element));
    }
    return texts;
}

int
keys_minutes(const char *text, size_t length)
{
    int minutes;

    if (length != 5 || strspn(text, "0123456789") != 2 || text[2] != ':' || text[3] > '5' ||
        strspn(text + 3, "0123456789") < 2) {
        return -1;
    }
    minutes = ((text[0] - '0') * 10 + text[1] - '0') * 60 + (text[3] - '0') * 10 + text[4] - '0';
    return minutes <= 24 * 60 ? minutes : -1;
}

/* ---- Explanation ---------------------------------------------------------------------------- */

static void
explain_bounds(FILE *out, const struct key *key)
{
    const char *const *word;

    switch (key->kind) {
    case KEY_INT:
    case KEY_SECONDS:
        fprintf(out, "%" PRId64 " to %" PRId64, key->low, key->high);
        break;
    case KEY_WORD:
    case KEY_EITHER:
        for (word = key->words; *word != NULL; word++) {
            fprintf(out, "%s\"%s\"", word == key->words ? "" : " or ", *word);
        }
        break;
    case KEY_OWN:
        fprintf(out, "%s", key->table == NULL ? "see below" : "as follows");
        break;
    default:
        fprintf(out, "text");
    }
    if (key->required) {
        fprintf(out, ", required");
    } else if (key->kind == KEY_WORD || key->kind == KEY_EITHER) {
        fprintf(out, ", without it \"%s\"", key->words[key->number]);
    } else if (key->kind == KEY_INT || key->kind == KEY_SECONDS) {
        fprintf(out, ", without it %" PRId64, key->number);
    } else if (key->text != NULL) {
        fprintf(out, ", without it \"%s\"", key->text);
    }
}

void
keys_explain(FILE *out, const struct key_table *table, const char *pointer)
{
    size_t i;

    for (i = 0; i < table->count; i++) {
        const struct key *key = &table->keys[i];
        char *place = memory_format(NULL, "%s/%s", pointer, key->name);

        if (key->kind != KEY_SECTION) {
            fprintf(out, "%s (", place);
            explain_bounds(out, key);
            fprintf(out, ")\n    %s\n", key->means);
        }
        if (key->each != NULL) {
            memory_append(&place, "/%s", key->each);
        }
        if (key->table != NULL) {
            keys_explain(out, key->table, place);
        }
        talloc_free(place);
    }
}
