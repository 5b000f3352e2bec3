/*
 * The lines of "Said as" and "Not meant by", made ready for matching. Private to the library.
 *
 * How a line is written:
 *
 *   cant breathe                  these words, in this order, within one sentence
 *   chest / ribs + pain / tight   any word of the left group and any of the right, in either order;
 *                                 three groups at most
 *   [people] / patient collapsed  any entry of a word class (sign_classes.h), or that word
 *   im blue                       a line with one word of weight: its little words must be there
 *                                 too
 *
 *   help me .                     only where the sentence ends after it (". no": begins before it)
 *
 * "/" stands between single words or classes that may take each other's place, "+" between groups
 * that may come in any order. Little words (sign_roles.h) may be missing from a "Said as" line.
 * Write as people text, without apostrophes: im, cant, wont.
 *
 * "Not meant by" is strict where "Said as" is lax: all its words must be there, close together.
 * With "..." at its end or beginning it holds back whatever the sign's lines say OF its words:
 *
 *   [devices] ...                 "the machine is choking"
 *   ... [devices]                 "se desmaya la maquina"
 *
 * With "&" at its end it counts only in company: one of the words after it stands in the same
 * sentence or the next to it:
 *
 *   heart attack & bill / price   "about had a heart attack when I saw the bill"
 *   ... & joke / [laughs]         whatever the sign's lines say, beside these
 */
#ifndef SIGN_PHRASES_H
#define SIGN_PHRASES_H

#include <stdbool.h>
#include <stddef.h>

#include "fault.h"
#include "sign_classes.h"
#include "sign_vocabulary.h"

enum { PHRASE_SLOTS_MAX = 8, SLOT_WORDS_MAX = 16, PHRASE_GROUPS_MAX = 3 };

/* One place of a phrase and the words that may fill it. */
struct slot {
    const char **keys; /* of words and classes */
    int *ids;          /* of the keys, once the vocabulary is closed */
    int count;
    int group;
    bool is_little;   /* all its words are little ones or particles: no weight of its own */
    bool is_particle; /* it begins with a particle, which may not be missing */
    bool is_common;   /* one of its words is a small one, as most texts have */
    bool is_number;   /* one of its words is a number: the little word before it counts ("to 3") */
    bool is_choice;   /* it has several words or a class */
    bool is_subject;  /* one of its words is a person: what is said of it stands close by */
};

enum phrase_kind {
    PHRASE_LAX,   /* little words may be missing, others may stand between */
    PHRASE_TIGHT, /* one word of weight: its little words must be there, close together */
    PHRASE_FIGURE /* a figure of speech: as tight, and nothing but little words between */
};

/* For a figure of speech: on which side the sign's own words stand. */
enum phrase_open { OPEN_NOT, OPEN_AFTER, OPEN_BEFORE, OPEN_ANYWHERE };

struct phrase {
    const char *line; /* as the file has it */
    struct slot slots[PHRASE_SLOTS_MAX];
    int slot_count;
    int group_count;
    enum phrase_kind kind;
    enum phrase_open open;
    bool begins_sentence, ends_sentence; /* nothing else stands before, after it */
    struct slot company;                 /* count 0: it needs none */
};

/* What lines are read with. */
struct phrase_reading {
    void *arena; /* what phrases point at lives here */
    struct workspace *workspace;
    struct vocabulary *vocabulary;      /* still open */
    const struct sign_classes *classes; /* or NULL */
    struct faults *faults;
};

/* Where a line stands, for faults. */
struct phrase_source {
    const char *file, *section;
    int line;
};

/*
 * Takes a line apart and adds its words to the vocabulary. Returns 0, or -1 with a fault.
 */
int phrase_read(const struct phrase_reading *reading, const char *line, bool is_figure,
                const struct phrase_source *source, struct phrase *phrase);

/* Looks up the ids, once the vocabulary is closed. */
void phrase_resolve(const struct vocabulary *vocabulary, struct phrase *phrase);

/* The slot by which the phrase is filed: its words are the rarest of texts. */
int phrase_rarest_slot(const struct phrase *phrase);

/*
 * The line as a person could have texted it, each "/" decided for its `choice`th word (or its
 * last), each class for its first entry. Lives in `arena`.
 */
const char *phrase_example(void *arena, const struct sign_classes *classes, const char *line,
                           int choice);

/* How many choices the longest "/" list of a line has; at least 1. */
int phrase_choices(const char *line);

#endif
