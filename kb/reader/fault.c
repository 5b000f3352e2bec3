#include "fault.h"

#include <stdarg.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "memory.h"

/* A byte that continues a UTF-8 character. */
static bool
is_continuation(char byte)
{
    return ((unsigned char)byte & 0xc0) == 0x80;
}

/* Drops the part of a character that a full buffer cut off at its end. */
static void
end_at_character(char *text, size_t length)
{
    size_t start = length;

    while (start > 0 && is_continuation(text[start - 1])) {
        start--;
    }
    if (start > 0 && (unsigned char)text[start - 1] >= 0xc0) {
        text[start - 1] = '\0';
    }
}

static void __attribute__((format(printf, 2, 0)))
set_list(struct fault *fault, const char *format, va_list arguments)
{
    int wanted = vsnprintf(fault->text, sizeof(fault->text), format, arguments);
    char *c;

    if (wanted >= (int)sizeof(fault->text)) {
        end_at_character(fault->text, sizeof(fault->text) - 1);
    }
    for (c = fault->text; *c != '\0'; c++) {
        if (*c == '\n' || *c == '\r') {
            *c = ' '; /* one line, whatever was quoted */
        }
    }
}

void
fault_set(struct fault *fault, const char *format, ...)
{
    va_list arguments;

    va_start(arguments, format);
    set_list(fault, format, arguments);
    va_end(arguments);
}

void
faults_add(struct faults *faults, const char *file, int line, const char *field, const char *format,
           ...)
{
    struct fault message;
    char place[512] = "";
    size_t used = 0;
    va_list arguments;

    va_start(arguments, format);
    set_list(&message, format, arguments);
    va_end(arguments);

    if (file != NULL) {
        snprintf(place, sizeof(place), line > 0 ? "%.400s:%d: " : "%.400s: ", file, line);
        used = strlen(place);
    }
    if (field != NULL) {
        snprintf(place + used, sizeof(place) - used, "%.80s: ", field);
    }
    if (faults->count == faults->capacity) {
        faults->capacity = faults->capacity == 0 ? 8 : faults->capacity * 2;
        faults->list =
            memory_must(reallocarray(faults->list, faults->capacity, sizeof(*faults->list)));
    }
    fault_set(&faults->list[faults->count++], "%s%s", place, message.text);
}

void
faults_release(struct faults *faults)
{
    free(faults->list);
    memset(faults, 0, sizeof(*faults));
}
