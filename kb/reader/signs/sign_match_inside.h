/* What an index of signs is made of. Private to sign_match.c and sign_index.c. */
#ifndef SIGN_MATCH_INSIDE_H
#define SIGN_MATCH_INSIDE_H

#include "sign_match.h"
#include "sign_opinion.h"
#include "sign_phrases.h"
#include "spelling.h"

/* One sign with its lines. */
struct sign_phrases {
    const struct sign *sign;
    const int *lines; /* of the file, one a phrase */
    struct phrase *said_as, *not_meant_by;
    size_t said_as_count, not_meant_by_count;
    size_t first;       /* number of the first of its phrases, among those of all signs */
    bool is_well_known; /* to the second opinion: it has many whole texts */
};

struct sign_index {
    enum language language;
    struct vocabulary *vocabulary;
    const struct sign_classes *classes;
    struct sign_phrases *signs;
    size_t count;
    size_t phrase_count; /* "Said as" lines of all signs */
    size_t *begins;      /* by id: where its entries in `filed` begin; one more at the end */
    int *filed;          /* numbers of the phrases of which a slot is filled by the id */
    struct opinion_example *examples; /* for the second opinion */
    size_t example_count;
    struct opinion *opinion; /* or NULL */
    struct spelling right;   /* what misspelt texts are mended by (sign_mend.h) */
};

/* True if a phrase of the sign fires on a text. */
bool sign_index_fires(const struct sign_index *index, struct workspace *workspace,
                      const struct sign_phrases *signs, struct words words);

#endif
