/*
 * Spelling repair against the words that the content knows. An unknown word becomes the likeliest
 * known one that is a slip or two away (a letter lost, added, changed, two swapped; a blank lost,
 * added or moved by one), by how often the content says it and whether beside its neighbours. A
 * word with no such neighbour stays as it is.
 */
#ifndef SPELLING_H
#define SPELLING_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "words.h"

struct ordinary;

/* The known words and how to find the neighbours of an unknown one. Plain arrays, so that a model
 * can keep them as bytes. Made by spelling_build(). */
struct spelling {
    char *text; /* every word and its stem, each ended by NUL */
    uint32_t text_size;
    struct known_word *words;
    uint32_t word_count;
    uint32_t *by_text; /* open addressing: number of the word + 1; 0 is empty */
    uint32_t by_text_mask;
    struct slip *slips; /* open addressing by what is left when one or two letters are lost */
    uint32_t slip_mask;
    uint32_t *pairs; /* open addressing: keys of words that stand side by side; 0 is empty */
    uint32_t pair_mask;
    const struct ordinary *ordinary; /* or NULL; what stands there is no slip */
};

struct known_word {
    uint32_t text, stem; /* where in `text` they begin */
    uint32_t often;      /* how often the content says it */
};

struct slip {
    uint32_t hash;
    uint32_t word; /* number of the word + 1; 0 is empty */
};

/* Collects the words of these texts, already expanded. Everything lives in `arena`. */
void spelling_build(void *arena, const struct words *texts, size_t count,
                    const struct ordinary *ordinary, struct spelling *spelling);

/* Copies what it points at (image.h); `ordinary` is there already, or NULL. */
struct image;
void spelling_image(struct image *image, struct spelling *spelling,
                    const struct ordinary *ordinary);

/* The number of a known word of `length` bytes; false if it is not known. */
bool spelling_find(const struct spelling *spelling, const char *word, size_t length,
                   uint32_t *number);

/* The numbers of the known words that `slips` (1, or at most 2) lie between; at most `room`. */
size_t spelling_near(const struct spelling *spelling, const char *typed, int slips,
                     uint32_t *numbers, size_t room);

/* The words with unknown ones repaired; in `arena`. Repaired words point into `spelling`. */
struct words spelling_repair(void *arena, const struct spelling *spelling, struct words words);

/* ---- Between spelling.c, which builds, and repair.c, which repairs -------------------------- */

/* Shorter words have too many neighbours to be repaired, longer ones are no words; only from
 * SPELLING_TWO_SLIPS letters on is a word still itself after two slips. */
enum { SPELLING_SHORTEST = 3, SPELLING_TWO_SLIPS = 6, SPELLING_LONGEST = 32 };

/* Words of letters alone are repaired; numbers never. */
bool spelling_is_letters(const char *word);

/* Key of a word that lost the letters at places `one` < `other`; places past its end lose none. */
uint32_t spelling_key(const char *word, size_t length, size_t one, size_t other);

/* True if the content says two words side by side; each a number + 1, 0 for the text's edge. */
bool spelling_has_pair(const struct spelling *spelling, uint32_t one, uint32_t other);

#endif
