/*
 * Misspelt words of a text, mended before anything is looked up: "settin", "wlaking", "yena". Pure.
 *
 * A word that is neither the reader's (lexicon.h, number_words.h) nor right as it stands (the lists
 * of the kb beside it) becomes the one word of the reader that is a slip away (slip.h) or, in
 * Spanish, sounds the same (sound.h). Where two are as near nothing is mended: a word not
 * understood is asked about, a wrong one is believed. So a number word is mended only if no other
 * one is near.
 */
#ifndef MENDING_H
#define MENDING_H

#include <stdbool.h>

#include "lexicon.h"
#include "tokens.h"

/* Replaces the text of words in *tokens, as `arena`'s; true if there was one to mend. */
bool mend_words(void *arena, const struct lexicon *lexicon, enum language language,
                struct tokens *tokens);

#endif
