/*
 * YES or NO to a question of ours, in whatever words it is said: "nooo", "it isnt", "sigue igual",
 * "its back on". Pure.
 */
#ifndef YES_NO_H
#define YES_NO_H

#include "tokens.h"

enum yes_no { SAID_NEITHER, SAID_YES, SAID_NO };

/* What the question was about; words with a blank before and after each, phrases with "|". */
struct yes_no_about {
    const char *things; /* what NO is said of: " oxygen air flow " */
    const char *well;   /* phrases that mean YES: "back on|working again" */
    const char *ill;    /* words that mean NO when the text is short: " dead off " */
    /* "No idea" and "no, I mean Ana" say neither. False where not to know is as grave as NO. */
    bool takes_doubt;
};

/*
 * What a whole text or one question of it says. In a short text any denial is NO; in a longer one,
 * or one that asks something itself, only at its head or beside a thing. YES that goes on with
 * "but" says neither: something is wrong all the same.
 */
enum yes_no yes_no_read(const struct tokens *tokens, const struct yes_no_about *about);

/* "Yes", whatever comes after it. */
bool yes_no_begins_with_yes(const struct tokens *tokens);

/* More than an answer: long, or a question after it ("yes when is it due"). */
bool yes_no_goes_on(const struct tokens *tokens);

/* "No idea", "not sure", "no se", "no, I mean": who does not know, or takes back, denies nothing.
 */
bool yes_no_doubts_at(const struct tokens *tokens, size_t at);

/* Any of these things is denied, in the same sentence: "there is no oxygen". */
bool yes_no_denies_one_of(const struct tokens *tokens, const char *things);

/* A denial stands at `at`: "no", "isnt", "todavia", but not "no problem". */
bool yes_no_denies_at(const struct tokens *tokens, size_t at);

#endif
