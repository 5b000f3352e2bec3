/* See memory.h for why talloc. */
#include "memory.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

void *
memory_must(void *pointer)
{
    if (pointer == NULL) {
        fputs("hutbell: out of memory\n", stderr);
        abort();
    }
    return pointer;
}

char *
memory_format(void *arena, const char *format, ...)
{
    va_list arguments;
    char *text;

    va_start(arguments, format);
    text = talloc_vasprintf(arena, format, arguments);
    va_end(arguments);
    return memory_must(text);
}

char *
memory_copy(void *arena, const char *text)
{
    return memory_must(talloc_strdup(arena, text));
}

char *
memory_copy_n(void *arena, const char *text, size_t length)
{
    return memory_must(talloc_strndup(arena, text, length));
}

void
memory_append(char **text, const char *format, ...)
{
    va_list arguments;

    va_start(arguments, format);
    *text = memory_must(talloc_vasprintf_append_buffer(*text, format, arguments));
    va_end(arguments);
}

void *
memory_grow_bytes(void *arena, void *list, size_t each, size_t count)
{
    size_t had = list == NULL ? 0 : talloc_get_size(list) / each, room = had < 8 ? 8 : had * 2;
    char *grown;

    if (count < had) {
        return list;
    }
    grown = memory_must(list == NULL ? talloc_array_size(arena, each, (unsigned)room)
                                     : talloc_realloc_size(arena, list, each * room));
    memset(grown + had * each, 0, (room - had) * each);
    return grown;
}
