#include "csv_text.h"

#include <string.h>

#include <glib.h>

static const char save_as[] = "save the file as CSV UTF-8";

int
csv_text_line(const char *bytes, const char *place)
{
    int line = 1;

    for (; bytes < place; bytes++) {
        line += *bytes == '\n';
    }
    return line;
}

/* Whether some character of more than one byte is whole. */
static bool
has_whole_character(const char *bytes, size_t length)
{
    const char *end = bytes + length;

    while (bytes < end) {
        gunichar read =
            (unsigned char)*bytes < 0x80 ? 0 : g_utf8_get_char_validated(bytes, end - bytes);

        if (read != 0 && read != (gunichar)-1 && read != (gunichar)-2) {
            return true;
        }
        bytes++;
    }
    return false;
}

/* Windows-1252 gives five bytes no meaning: those cannot be converted. */
static int
convert(struct csv_text *text, const char *file, struct faults *faults)
{
    gsize read = 0, written = 0;

    text->converted = g_convert(text->bytes, (gssize)text->length, "UTF-8", "WINDOWS-1252", &read,
                                &written, NULL);
    if (text->converted == NULL) {
        faults_add(faults, file, csv_text_line(text->bytes, text->bytes + read), NULL,
                   "holds a byte that is neither UTF-8 nor Windows-1252; %s", save_as);
        return -1;
    }
    text->bytes = text->converted;
    text->length = written;
    text->was_windows_1252 = true;
    return 0;
}

static int
to_utf8(struct csv_text *text, bool is_marked, const char *file, struct faults *faults)
{
    const char *invalid;

    if (g_utf8_validate_len(text->bytes, text->length, &invalid)) {
        return 0;
    }
    if (is_marked || has_whole_character(text->bytes, text->length)) {
        faults_add(faults, file, csv_text_line(text->bytes, invalid), NULL,
                   "is UTF-8 that is broken here; write the word anew, and %s", save_as);
        return -1;
    }
    return convert(text, file, faults);
}

/* Names of columns hold none of them, so the first line tells. */
static char
separator_of(const struct csv_text *text)
{
    static const char separators[] = ",;\t";
    const char *line_end = memchr(text->bytes, '\n', text->length);
    const char *end = line_end != NULL ? line_end : text->bytes + text->length;
    char found = ',';
    size_t most = 0, i;

    for (i = 0; separators[i] != '\0'; i++) {
        size_t count = 0;
        const char *c;

        for (c = text->bytes; c < end; c++) {
            count += *c == separators[i];
        }
        if (count > most) {
            most = count;
            found = separators[i];
        }
    }
    return found;
}

int
csv_text_read(const char *bytes, size_t length, const char *file, struct csv_text *text,
              struct faults *faults)
{
    bool is_marked = length >= 3 && memcmp(bytes, "\xef\xbb\xbf", 3) == 0;
    const char *nul;

    *text = (struct csv_text){.bytes = bytes, .length = length};
    if (length >= 2 && (memcmp(bytes, "\xff\xfe", 2) == 0 || memcmp(bytes, "\xfe\xff", 2) == 0)) {
        faults_add(faults, file, 1, NULL, "is UTF-16; %s", save_as);
        return -1;
    }
    nul = memchr(bytes, '\0', length);
    if (nul != NULL) {
        faults_add(faults, file, csv_text_line(bytes, nul), NULL,
                   "holds a byte 0, so it is no CSV file; %s", save_as);
        return -1;
    }
    if (is_marked) {
        text->bytes += 3;
        text->length -= 3;
    }
    if (to_utf8(text, is_marked, file, faults) != 0) {
        return -1;
    }
    text->separator = separator_of(text);
    return 0;
}

void
csv_text_release(struct csv_text *text)
{
    g_free(text->converted);
    text->converted = NULL;
}
