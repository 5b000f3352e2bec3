/*
 * A text that is misspelt all over: "kant wayk her upp". Slips word by word (sign_slips.h) must be
 * strict, for a short word is a slip away from many; here what stands beside a word decides, as
 * spelling.h repairs it against all texts of the content, those of danger and those that ask for a
 * topic alike: "batery" is a battery before it is anything of a sign. Private to the library.
 *
 * Such a text is read as it stands and once more mended; either may fire. On texts of which nothing
 * was learnt, two and more slips in each: see tests/bench/texts/README.md.
 */
#ifndef SIGN_MEND_H
#define SIGN_MEND_H

#include <stdbool.h>

#include "sign_match_inside.h"

/* Learns the words of the index's examples: those spelt right, or said often. */
void sign_mend_build(struct sign_index *index, const struct ordinary *ordinary);

/* A text with its strange words put right, and as it was. */
struct mended {
    struct words words, typed;
};

/* Puts strange words right; all in `arena`. False if too few are strange, or
 * most of the text is in another language. */
bool sign_mend_words(const struct sign_index *index, void *arena, struct words typed,
                     struct mended *mended);

/* True if a word was put right within these bytes of the text. */
bool sign_mended_in(const struct mended *mended, size_t start, size_t end);

#endif
