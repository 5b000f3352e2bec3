#include "log.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <utf8proc.h>

#include "clock.h"
#include "fault.h"
#include "memory.h"

static struct {
    enum log_level level;
    enum log_format format;
} setup = {LOG_INFO, LOG_LOGFMT};

static const char *const level_names[] = {"error", "warning", "info", "debug"};

void
log_setup(enum log_level level, enum log_format format)
{
    setup.level = level;
    setup.format = format;
}

/* A JSON string (RFC 8259); what is not UTF-8 becomes U+FFFD, controls are escaped. */
static void
put_quoted(FILE *line, const char *value)
{
    const utf8proc_uint8_t *at = (const utf8proc_uint8_t *)value;
    utf8proc_ssize_t left = (utf8proc_ssize_t)strlen(value);

    fputc('"', line);
    while (left > 0) {
        utf8proc_int32_t point;
        utf8proc_ssize_t used = utf8proc_iterate(at, left, &point);

        if (used < 1) {
            fputs("\xef\xbf\xbd", line);
            used = 1;
        } else if (point == '"' || point == '\\') {
            fprintf(line, "\\%c", (char)point);
        } else if (point < 0x20 || (point >= 0x7f && point < 0xa0)) {
            fprintf(line, "\\u%04x", (unsigned)point);
        } else {
            fwrite(at, 1, (size_t)used, line);
        }
        at += used;
        left -= used;
    }
    fputc('"', line);
}

/* Whether logfmt can take a value without quotes. */
static bool
is_bare(const char *value)
{
    const char *c;

    for (c = value; *c != '\0'; c++) {
        if (*c <= ' ' || *c >= 0x7f || strchr("\"=\\", *c) != NULL) {
            return false;
        }
    }
    return c > value;
}

static void
put_pair(FILE *line, const char *name, const char *value)
{
    if (setup.format == LOG_JSON) {
        fprintf(line, ",\"%s\":", name);
        put_quoted(line, value);
    } else {
        fprintf(line, " %s=", name);
        if (is_bare(value)) {
            fputs(value, line);
        } else {
            put_quoted(line, value);
        }
    }
}

/* One write() a line, so that lines of two threads never mix. */
static void
write_whole(const char *bytes, size_t length)
{
    while (length > 0) {
        ssize_t written = write(STDERR_FILENO, bytes, length);

        if (written <= 0) {
            return; /* nowhere left to complain */
        }
        bytes += written;
        length -= (size_t)written;
    }
}

void
log_event(enum log_level level, const char *event, ...)
{
    char stamp[CLOCK_STAMP_SIZE];
    char *bytes = NULL;
    size_t length = 0;
    const char *name;
    va_list pairs;
    FILE *line;

    if (level > setup.level) {
        return;
    }
    line = memory_must(open_memstream(&bytes, &length));
    clock_stamp(stamp);
    fprintf(line,
            setup.format == LOG_JSON ? "{\"at\":\"%s\",\"level\":\"%s\",\"event\":\"%s\""
                                     : "at=%s level=%s event=%s",
            stamp, level_names[level], event);
    va_start(pairs, event);
    while ((name = va_arg(pairs, const char *)) != NULL) {
        const char *value = va_arg(pairs, const char *);

        if (value != NULL) {
            put_pair(line, name, value);
        }
    }
    va_end(pairs);
    fputs(setup.format == LOG_JSON ? "}\n" : "\n", line);
    if (fclose(line) == 0) {
        write_whole(bytes, length);
    }
    free(bytes);
}

/* Four, so that one log_event() may name several; of the thread, so that no lock is needed. */
static char *
next_buffer(size_t *size)
{
    static _Thread_local char buffers[4][24];
    static _Thread_local unsigned next;

    *size = sizeof(buffers[0]);
    return buffers[next++ % 4];
}

const char *
log_phone(const char *phone)
{
    size_t size;
    char *buffer = next_buffer(&size);
    size_t length = strlen(phone);

    /* A short code is nobody's own number, and its last four digits would be all of it. */
    snprintf(buffer, size, length > 4 ? "\xe2\x80\xa6%.8s" : "%.8s",
             length > 4 ? phone + length - 4 : phone);
    return buffer;
}

const char *
log_number(int64_t number)
{
    size_t size;
    char *buffer = next_buffer(&size);

    snprintf(buffer, size, "%lld", (long long)number);
    return buffer;
}

void
log_faults(const char *event, const struct faults *faults)
{
    size_t i;

    for (i = 0; i < faults->count; i++) {
        log_event(LOG_ERROR_LEVEL, event, "what", faults->list[i].text, NULL);
    }
}
