#include "pointer.h"

#include <string.h>

#include "memory.h"

bool
pointer_is_valid(const char *pointer)
{
    const char *c;

    if (*pointer != '\0' && *pointer != '/') {
        return false;
    }
    for (c = strchr(pointer, '~'); c != NULL; c = strchr(c + 1, '~')) {
        if (c[1] != '0' && c[1] != '1') {
            return false;
        }
    }
    return true;
}

/* Section 4: ~1 and ~0 in one pass, so that "~01" becomes "~1" and no more. */
static void
unescape(const char *token, size_t length, char *name)
{
    size_t used = 0;
    size_t i;

    for (i = 0; i < length; i++) {
        if (token[i] == '~' && i + 1 < length) {
            i++;
            name[used++] = token[i] == '1' ? '/' : '~';
        } else {
            name[used++] = token[i];
        }
    }
    name[used] = '\0';
}

/* An array index: digits without a leading zero; anything else names no element. */
static json_t *
element(json_t *array, const char *name)
{
    size_t index = 0;
    const char *c;

    if (*name == '\0' || (name[0] == '0' && name[1] != '\0')) {
        return NULL;
    }
    for (c = name; *c != '\0'; c++) {
        if (*c < '0' || *c > '9' || index > json_array_size(array)) {
            return NULL;
        }
        index = index * 10 + (size_t)(*c - '0');
    }
    return json_array_get(array, index);
}

json_t *
pointer_get(json_t *root, const char *pointer)
{
    char *name = memory_array(NULL, char, strlen(pointer) + 1);
    json_t *value = pointer_is_valid(pointer) ? root : NULL;

    while (value != NULL && *pointer == '/') {
        size_t length = strcspn(pointer + 1, "/");

        unescape(pointer + 1, length, name);
        value = json_is_array(value) ? element(value, name) : json_object_get(value, name);
        pointer += 1 + length;
    }
    talloc_free(name);
    return value;
}
