/*
 * Reading grade of English text (Flesch-Kincaid; source: VA HSR&D page of instruments). Pure.
 *
 *   grade = 0.39 x words / sentences + 11.8 x syllables / words - 15.59
 *   ease  = 206.835 - 1.015 x words / sentences - 84.6 x syllables / words
 *
 * Neither is clamped: a grade may be below 0, an ease above 100. Counters differ by a grade and
 * more, so what counts as what is decided here, once:
 *
 *   - A word is what stands between blanks and has a letter or digit. "L/min" is two words,
 *     "12-volt" is one.
 *   - A number is one word with a syllable for each digit, at most three: "911" three, "15" two,
 *     "2.5" two. A phone number is dialled or looked at rather than read, so "208-555-0100" counts
 *     three as well.
 *   - Letters that are spelt out count one each: words without any vowel ("RV"), single letters
 *     ("L", "E"), those of "a.m.", and up to three beside digits ("SpO2" four, "O2" two). "USB" and
 *     the like are in a table.
 *   - A sentence ends at . ! ? before a blank (a quote or bracket may close in between), and at a
 *     line end. The dot of "Dr." ends none, that of "a.m." only before a capital. Words behind the
 *     last end are a sentence too.
 *   - Syllables of a word are its groups of vowels, corrected by a table of rules and one of words.
 *     Debian's libhyphen finds where a line may break, which is another thing: it counts 83 % of
 *     the words of our content as the CMU pronouncing dictionary does; this counts 99 % of them,
 *     and 97 % of 5,085 other words. Programs that speak would count well but are no library to
 *     take along for this.
 */
#ifndef GRADE_H
#define GRADE_H

#include <stdbool.h>
#include <stddef.h>

struct reading_count {
    size_t words, sentences, syllables;
};

/* Counts a text in UTF-8; letters beyond ASCII are passed over. */
struct reading_count reading_count(const char *text);

/* Syllables of one word, in any case of letters; at least 1 unless it has no letter or digit. */
size_t reading_syllables(const char *word, size_t length);

/* The index in *value; false, *value untouched, if there are no words or no sentences. */
bool reading_grade(const struct reading_count *count, double *value);
bool reading_ease(const struct reading_count *count, double *value);

#endif
