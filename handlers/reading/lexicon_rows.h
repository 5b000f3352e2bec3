/* How the tables of lexicon_*.c write their rows. Private to them. */
#ifndef LEXICON_ROWS_H
#define LEXICON_ROWS_H

#include "lexicon.h"
#include "told.h"

/* In a text of either language, and only in one of the table's own. */
/* clang-format off */
#define ROW(is, value, phrases) {is, value, false, phrases}
#define OWN(is, value, phrases) {is, value, true, phrases}
/* A charge of [low, high] percent (common practice, no source). */
#define CHARGE(low, high, phrases) {ITEM_CHARGE, (low)*1000 + (high), false, phrases}
/* clang-format on */

#endif
