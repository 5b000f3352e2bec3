#include "staff_order.h"

#include <string.h>

#include "memory.h"
#include "slip.h"

static const char *const staff_words[] = {[STAFF_MINE] = "mine",
                                          [STAFF_SORTED] = "sorted",
                                          [STAFF_TALK] = "talk",
                                          [STAFF_HAND] = "hand",
                                          [STAFF_OPEN] = "open"};
enum { STAFF_WORDS = sizeof staff_words / sizeof staff_words[0] };

static char
small(char letter)
{
    return letter >= 'A' && letter <= 'Z' ? (char)(letter - 'A' + 'a') : letter;
}

bool
staff_is_word(const char *text, size_t length, const char *word)
{
    size_t i;

    for (i = 0; i < length && word[i] != '\0' && small(text[i]) == small(word[i]); i++) {
    }
    return i == length && word[i] == '\0';
}

/* "12", "#12" or "alert 12" at `at`; returns how many tokens it took. */
static size_t
read_number(const struct tokens *tokens, size_t at, struct staff_order *order)
{
    size_t number = at;

    while (token_among(tokens, number, " alert # ")) {
        number++;
    }
    if (number >= tokens->count || tokens->list[number].kind != TOKEN_NUMBER ||
        tokens->list[number].thousandths % 1000 != 0) {
        return 0;
    }
    order->has_number = true;
    order->number = tokens->list[number].thousandths / 1000;
    return number + 1 - at;
}

/* "mine12" is one token: a word of ours with digits behind it. */
static bool
read_glued(const char *text, const char *word, struct staff_order *order)
{
    size_t length = strlen(word);
    int64_t number = 0;
    const char *digit;

    if (strncmp(text, word, length) != 0 || text[length] == '\0') {
        return false;
    }
    for (digit = text + length; *digit != '\0'; digit++) {
        if (*digit < '0' || *digit > '9' || number > 1000000) {
            return false;
        }
        number = number * 10 + (*digit - '0');
    }
    order->has_number = true;
    order->number = number;
    return true;
}

/* What stands behind the word, from token `next` on. */
static void
read_rest(const struct asked *whole, size_t next, struct staff_order *order)
{
    const struct tokens *tokens = &whole->tokens;

    while (token_among(tokens, next, " : . , - ")) {
        next++;
    }
    order->next = next;
    order->rest = memory_copy(whole->arena,
                              next < tokens->count ? whole->text + tokens->list[next].start : "");
}

bool
staff_order_read(const struct asked *whole, size_t at, struct staff_order *order)
{
    const struct tokens *tokens = &whole->tokens;
    size_t i;

    for (i = 0; i < STAFF_WORDS && at < tokens->count; i++) {
        bool alone = token_is(tokens, at, staff_words[i]);

        *order = (struct staff_order){.word = (enum staff_word)i};
        if (!alone && !read_glued(tokens->list[at].text, staff_words[i], order)) {
            continue;
        }
        read_rest(whole, at + 1 + (alone ? read_number(tokens, at + 1, order) : 0), order);
        return order->word != STAFF_OPEN || order->rest[0] == '\0';
    }
    return false;
}

bool
staff_order_slipped(const struct asked *whole, struct staff_order *order)
{
    const struct tokens *tokens = &whole->tokens;
    size_t i, length;

    for (i = 0; i < STAFF_WORDS && tokens->count > 0; i++) {
        *order = (struct staff_order){.word = (enum staff_word)i};
        length = read_number(tokens, 1, order);
        if (slip_between(tokens->list[0].text, staff_words[i]) != SLIP_NONE &&
            (length > 0 || (order->word == STAFF_OPEN && tokens->count == 1))) {
            read_rest(whole, 1 + length, order);
            return true;
        }
    }
    return false;
}

const char *
staff_order_word(enum staff_word word)
{
    static const char *const shown[] = {[STAFF_MINE] = "MINE",
                                        [STAFF_SORTED] = "SORTED",
                                        [STAFF_TALK] = "TALK",
                                        [STAFF_HAND] = "HAND",
                                        [STAFF_OPEN] = "OPEN"};

    return shown[word];
}
