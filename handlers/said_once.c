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

/* Sentences that begin so tell the same, however they go on. */
static const char *const families[] = {"A person was alerted", "Staff were alerted",
                                       "Una persona ya lo sabe", "El personal ya lo sabe"};

static bool
are_of_family(const char *one, const char *other)
{
    size_t i;

    for (i = 0; i < sizeof families / sizeof families[0]; i++) {
        size_t length = strlen(families[i]);

        if (strncmp(one, families[i], length) == 0 && strncmp(other, families[i], length) == 0) {
            return true;
        }
    }
    return false;
}

/* The sentence stands in what was said, or is how one there begins: what goes on further than that
 * ("Only your prescriber can say if ...") is not said yet. */
static bool
is_said(const char *said, const char *sentence, size_t length)
{
    for (; *said != '\0'; said = after_sentence(said)) {
        bool begins = length > 1 && length <= sentence_length(said) &&
                      strncmp(said, sentence, length - 1) == 0;

        if (begins || are_of_family(said, sentence)) {
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
