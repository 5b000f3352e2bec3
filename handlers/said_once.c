#include "said_once.h"

#include <stdbool.h>
#include <string.h>

#include "memory.h"

/* Bytes of the sentence at `text`, with its stop and without the blank behind it. */
static size_t
sentence_length(const char *text)
{
    size_t i = 0;

    while (text[i] != '\0' &&
           !((text[i] == '.' || text[i] == '!') && (text[i + 1] == ' ' || text[i + 1] == '\0'))) {
        i++;
    }
    return text[i] == '\0' ? i : i + 1;
}

static const char *
after_sentence(const char *text)
{
    text += sentence_length(text);
    return text + strspn(text, " ");
}

static bool
begin_alike(const char *one, size_t one_length, const char *other, size_t other_length)
{
    size_t shorter = one_length < other_length ? one_length : other_length;

    return shorter > 1 && strncmp(one, other, shorter - 1) == 0;
}

static bool
is_said(const char *said, const char *sentence, size_t length)
{
    for (; *said != '\0'; said = after_sentence(said)) {
        if (begin_alike(said, sentence_length(said), sentence, length)) {
            return true;
        }
    }
    return false;
}

char *
said_once(void *arena, const char *said, const char *text)
{
    char *rest = memory_copy(arena, "");

    for (; *text != '\0'; text = after_sentence(text)) {
        size_t length = sentence_length(text);

        if (!is_said(said, text, length)) {
            memory_append(&rest, "%s%.*s", rest[0] == '\0' ? "" : " ", (int)length, text);
        }
    }
    return rest;
}
