/*
 * What the search and the signs made of a text, and how each asked-as line fares: for `hutbell
 * check`, never for an answer.
 */
#ifndef KB_EXPLAIN_H
#define KB_EXPLAIN_H

#include "kb.h"
#include "sign_match.h"

/* An asked-as line that was held out while the model was built, and what then won it. */
struct kb_held_out {
    const struct topic *topic; /* whose line it is */
    size_t line;               /* its place in topic->asked_as */
    const struct topic *won;   /* NULL if no word of it is known */
    int score;                 /* thousandths, of the winner */
    enum sureness sureness;
};

/* All lines of a language in the order of topics, in `arena`; returns how many. */
size_t kb_held_out(const struct kb *kb, void *arena, enum language language,
                   struct kb_held_out **lines);

/* The words of a text that spoke most for a topic, best first, in `arena`; returns how many. */
size_t kb_topic_words(const struct kb *kb, void *arena, struct workspace *workspace,
                      const char *text, const struct topic *topic, const char **words, size_t room);

/* A sign whose words stand in a text: whether it fires, by which line, else what held it back. */
struct kb_sign_reason {
    struct sign_explained explained;
    int phrase_line;       /* of the "Said as" line, or the whole text, in the sign's file */
    int explained_by_line; /* of the "Not meant by" line; 0 if there is none */
};

/* The signs of all languages, in `arena`, in the order of their files; returns how many. */
size_t kb_sign_reasons(const struct kb *kb, void *arena, struct workspace *workspace,
                       const char *text, struct kb_sign_reason **reasons);

#endif
