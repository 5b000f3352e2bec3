/*
 * What can hold a sign back although its words are there. Pure; private to the library.
 *
 * In doubt a sign fires, so each rule here must see its reason on the page.
 */
#ifndef SIGN_DOUBT_H
#define SIGN_DOUBT_H

#include <stdbool.h>

#include "sign_vocabulary.h"

/*
 * True if a negation takes back the words at indexes[0..count-1] of the text (ascending): "no chest
 * pain", "my chest doesnt hurt". It reaches at most five words on, never across a sentence or
 * "but", and only through words that carry a negation on ("dont have any ..."), so that "cant stop
 * coughing blood" and "no oxygen chest pain" fire. A negation that is itself among the words
 * ("cant breathe") belongs to the complaint, and so does one behind it ("no sabe ni que dia es").
 */
bool is_taken_back(const struct heard *heard, const int *indexes, int count);

/*
 * True if a time long past stands beside the words: "had a stroke in 2015", "she fainted two
 * winters ago", "hace dos anos tuvo un infarto". Weeks and days are not long past; what is not over
 * ("now", "again", "since", "cant") is not past, nor what may last ("me duele hace dos meses"); and
 * nothing of weight may stand between.
 */
bool is_long_past(const struct heard *heard, const int *indexes, int count);

#endif
