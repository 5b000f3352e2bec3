#include "form.h"

#include <stdlib.h>
#include <string.h>

#include <event2/http.h>

#include "memory.h"

/* "two+words%21" -> "two words!", or NULL with a fault. */
static const char *
decode(void *arena, const char *text, size_t length, struct fault *fault)
{
    char *encoded = memory_copy_n(arena, text, length);
    size_t decoded_length = 0;
    char *decoded = memory_must(evhttp_uridecode(encoded, 1, &decoded_length));
    char *copy = memory_copy_n(arena, decoded, decoded_length);

    free(decoded);
    if (strlen(copy) != decoded_length) {
        fault_set(fault, "the form holds a NUL byte; expected text");
        return NULL;
    }
    return copy;
}

static int
read_pair(void *arena, const char *text, size_t length, struct form_pair *pair, struct fault *fault)
{
    const char *equals = memchr(text, '=', length);
    size_t name_length = equals == NULL ? length : (size_t)(equals - text);

    pair->name = decode(arena, text, name_length, fault);
    pair->value = equals == NULL ? "" : decode(arena, equals + 1, length - name_length - 1, fault);
    return pair->name == NULL || pair->value == NULL ? -1 : 0;
}

int
form_read(void *arena, const char *bytes, size_t length, struct form *form, struct fault *fault)
{
    size_t at = 0;

    *form = (struct form){0};
    if (memchr(bytes, '\0', length) != NULL) {
        fault_set(fault, "the form holds a NUL byte; expected text");
        return -1;
    }
    while (at < length) {
        const char *end = memchr(bytes + at, '&', length - at);
        size_t pair_length = end == NULL ? length - at : (size_t)(end - (bytes + at));

        if (pair_length > 0) { /* "a=1&&b=2" has two pairs */
            if (form->count == FORM_PAIRS_MAX) {
                fault_set(fault, "the form has more than %d fields", FORM_PAIRS_MAX);
                return -1;
            }
            form->pairs = memory_grow(arena, struct form_pair, form->pairs, form->count);
            if (read_pair(arena, bytes + at, pair_length, &form->pairs[form->count], fault) != 0) {
                return -1;
            }
            form->count++;
        }
        at += pair_length + 1;
    }
    return 0;
}

const char *
form_get(const struct form *form, const char *name)
{
    size_t i;

    for (i = 0; i < form->count; i++) {
        if (strcmp(form->pairs[i].name, name) == 0) {
            return form->pairs[i].value;
        }
    }
    return NULL;
}

static int
compare_pairs(const void *a, const void *b)
{
    const struct form_pair *one = a;
    const struct form_pair *other = b;
    int by_name = strcmp(one->name, other->name);

    return by_name != 0 ? by_name : strcmp(one->value, other->value);
}

void
form_sort(struct form *form)
{
    if (form->count > 1) {
        qsort(form->pairs, form->count, sizeof(*form->pairs), compare_pairs);
    }
}

void
form_append(char **text, const char *name, const char *value)
{
    char *encoded_name = memory_must(evhttp_uriencode(name, -1, 1));
    char *encoded_value = memory_must(evhttp_uriencode(value, -1, 1));

    memory_append(text, "%s%s=%s", **text == '\0' ? "" : "&", encoded_name, encoded_value);
    free(encoded_name);
    free(encoded_value);
}
