#include "reaction.h"

#include <ctype.h>
#include <stdbool.h>
#include <string.h>

#include "memory.h"
#include "words.h"

/* How reactions begin, and marks that may open and close the copy. Common practice, no source. */
static const char *const verbs[] = {
    "liked",      "loved",       "laughed at", "emphasized",  "emphasised",
    "disliked",   "questioned",  "reacted",    "removed",     "hearted",
    "le gusto",   "le gusta",    "me gusto",   "me gusta",    "le encanto",
    "me encanto", "no le gusto", "se rio",     "le dio risa", "enfatizo",
    "destaco",    "cuestiono",   "reacciono",  "quito",       "elimino"};

static const struct quote {
    const char *open, *close;
} quotes[] = {{"\xe2\x80\x9c", "\xe2\x80\x9d"}, /* curly, double */
              {"\xe2\x80\x98", "\xe2\x80\x99"}, /* curly, single */
              {"\xc2\xab", "\xc2\xbb"},         /* guillemets */
              {"\"", "\""},
              {"'", "'"}};

/* Bytes of the lead before the quote: "Reacted with a thumbs up to". */
enum { LEAD_MAX = 60 };

/* The first mark that opens a quote near the beginning, or NULL. */
static const char *
find_open(const char *text, const struct quote **quote)
{
    const char *first = NULL;
    size_t i;

    for (i = 0; i < sizeof(quotes) / sizeof(quotes[0]); i++) {
        const char *at = strstr(text, quotes[i].open);

        if (at != NULL && at - text <= LEAD_MAX && (first == NULL || at < first)) {
            first = at;
            *quote = &quotes[i];
        }
    }
    return first;
}

/* True if the lead is one of a reaction: begins with its verb, in one sentence. */
static bool
is_reaction(const char *lead)
{
    void *scratch = memory_must(talloc_new(NULL));
    struct words words = words_read(scratch, NULL, lead, LANGUAGE_EN);
    char *plain = memory_copy(scratch, "");
    bool found = false;
    size_t i;

    for (i = 0; i < words.count; i++) {
        memory_append(&plain, "%s ", words.list[i].text);
    }
    for (i = 0; i < sizeof(verbs) / sizeof(verbs[0]) && words.count > 0; i++) {
        size_t length = strlen(verbs[i]);

        found = found || (strncmp(plain, verbs[i], length) == 0 && plain[length] == ' ');
    }
    found = found && words.list[words.count - 1].sentence == 0;
    talloc_free(scratch);
    return found;
}

/* The mark that ends the quote: what follows it is no letter. An apostrophe is no end. */
static const char *
find_close(const char *from, const char *mark)
{
    const char *at = strstr(from, mark);

    while (at != NULL && isalnum((unsigned char)at[strlen(mark)])) {
        at = strstr(at + 1, mark);
    }
    return at;
}

const char *
reaction_without_copy(void *arena, const char *text)
{
    const struct quote *quote = NULL;
    const char *open = find_open(text, &quote), *close;
    char *blanked;

    if (open == NULL || !is_reaction(memory_copy_n(arena, text, (size_t)(open - text)))) {
        return text;
    }
    close = find_close(open + strlen(quote->open), quote->close);
    if (close == NULL) {
        return text;
    }
    close += strlen(quote->close);
    blanked = memory_copy(arena, text);
    memset(blanked, ' ', (size_t)(close - text));
    if (close < text + strlen(text)) {
        blanked[close - text - 1] = '\n'; /* what is added stands by itself */
    }
    return blanked;
}
