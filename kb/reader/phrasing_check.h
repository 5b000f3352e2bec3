/*
 * What the ways of asking are worth: which of them another topic would win, which are like no other
 * line, which topics are taken for each other, which have too few, and which never reach their
 * topic because a sign takes them.
 */
#ifndef PHRASING_CHECK_H
#define PHRASING_CHECK_H

#include "kb.h"
#include "remark.h"

enum { PHRASINGS_ENOUGH = 25, PAIRS_SHOWN = 15 };

/* Adds warnings for all languages. A line is judged by a model that was built without it. */
void phrasing_check(const struct kb *kb, struct workspace *workspace, struct remarks *remarks);

#endif
