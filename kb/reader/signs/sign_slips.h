/*
 * Words that are meant although they are spelt otherwise: in panic, dictated, or as they sound.
 * Private to the library.
 *
 * A word that the content does not know stands for every word of the signs that is
 *   one slip away (a letter wrong, missing, too many, two swapped), from five letters on, two
 *   swapped from four on;
 *   two slips away, from ten letters on;
 *   (the small words around it as well, swapped from three letters on: "nto breathign");
 *   the same once letters drawn out are one ("hellllp");
 *   the same to the ear ("seezure"): slips_sound().
 * In a text of which more words are another language's nothing is a slip.
 *
 * "cooking" is one slip from "choking": so a word that the content uses as it stands (topics,
 * handouts, replies, words/LANG-known.txt) is no slip. A word that stands in a phrase alone may be
 * a misspelling that the phrase lists ("breth"): it is also taken for the words one slip away that
 * the content uses as they stand (if it has a list of such words).
 */
#ifndef SIGN_SLIPS_H
#define SIGN_SLIPS_H

#include <stdbool.h>

#include "sign_vocabulary.h"

/* How a word sounds, in `arena`: a coarse spelling in which sounds alike are written alike. */
const char *slips_sound(void *arena, const char *text, enum language language);

/* Takes a heard word that the content does not have for all sign words that it may be a
 * misspelling of; `arena` is for scratch. */
void slips_add(const struct vocabulary *vocabulary, void *arena, struct heard_word *word);

/* The same of a word that a phrase alone has. */
void slips_add_to_listed(const struct vocabulary *vocabulary, struct heard_word *word);

/*
 * Cuts a word of `length` bytes whose blanks were lost into two or three words of the signs or
 * small words ("cantbreathe"): fills ends[] with where each ends. How many; 0 if it cannot be cut.
 */
enum { SLIPS_PIECES_MAX = 3 };
int slips_cut(const struct vocabulary *vocabulary, const char *text, size_t ends[SLIPS_PIECES_MAX]);

/* True if two words differ by one letter wrong, missing, too many, or two letters swapped. */
bool is_one_slip(const char *left, const char *right);

#endif
