/*
 * A word as it sounds. Who texts in Spanish writes by ear: "no ai haire", "se desmallo", "me aogo",
 * "kiero morir", "labios moraos". Signs compare words by what they sound like, so that all of
 * these are the word that is meant. English is not spelt as it sounds, so its words stay as they
 * are.
 */
#ifndef SOUND_H
#define SOUND_H

#include "words.h"

/*
 * The sound of a cleaned word (words.h), in `arena` or the word itself. Only to be compared with
 * other sounds and to be stemmed. Spanish: h is silent; b v, s z x c(e i), k qu c, y ll, j g(e i)
 * are one; m before b p; a letter written twice or "nooooo" counts once (rr stays); "ao" at the end
 * is "ado".
 */
const char *sound_of(void *arena, const char *word, enum language language);

#endif
