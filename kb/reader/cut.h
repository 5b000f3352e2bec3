/*
 * Cutting a text into its questions and its pleasantries: "thx!! also, does it charge in the car
 * and where do i return it" is one courtesy and two questions. What only leads up to a question
 * ("we are off to the lake tomorrow. will it last?") stays with it.
 */
#ifndef CUT_H
#define CUT_H

#include <stdbool.h>
#include <stddef.h>

#include "words.h"

struct piece {
    const char *text; /* the bytes [start, end) of the text, without blanks around them */
    size_t start, end;
    bool courtesy; /* thanks, hello, a name, emoji: nothing that wants an answer */
    bool trusted;  /* surely about the topic of this rank in its own search (questions.h) */
    size_t rank;   /* 0 is the first */
};

struct pieces {
    const struct piece *list; /* in the text's order; none at all for an empty text */
    size_t count;
};

/*
 * Cuts a text, at most WORDS_TEXT_MAX bytes of it. Greetings and thanks around a question become
 * pieces of their own. Everything returned lives in `arena`.
 */
struct pieces cut_questions(void *arena, const char *text, enum language language);

#endif
