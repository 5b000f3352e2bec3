/*
 * What a kb is made of. Private to the library: kb_read.c and kb_ready.c build it, kb.c answers
 * from it.
 */
#ifndef KB_PARTS_H
#define KB_PARTS_H

#include "content.h"
#include "kb.h"

struct model_phrase;
struct sign_file;

/* What there is of one language. */
struct kb_language {
    struct shorthand *shorthand;  /* or NULL */
    struct sign_classes *classes; /* or NULL */
    struct ordinary *ordinary;    /* or NULL */
    struct ordinary *right;       /* the words of `known`; or NULL */
    struct vectors *vectors;      /* or NULL */
    char *known;                  /* lines of words that are right as they are spelt; or NULL */
    char *elsewhere;              /* lines of texts that no topic fits; or NULL */
    char *harmless;               /* lines of texts that are no signs; or NULL */
    char *courtesy;               /* lines of texts that want no answer; or NULL */
    char *request;                /* lines of texts that want something done; or NULL */
    char *fault;                  /* lines of texts that tell of a fault; or NULL */
    char *inquiry;                /* lines of questions about the same matters; or NULL */
    struct sign_index *signs;
    struct model *topics;
    struct model *courtesies;    /* with one label, of what wants no answer; NULL without lines */
    struct model *matters;       /* its labels are enum matter; NULL without lines */
    const struct topic **labels; /* label of the model -> topic */
    const struct model_phrase *phrases;
    size_t phrase_count;
    int label_count;
};

struct kb {
    enum kept_as kept; /* where it came from */
    char digest[CONTENT_DIGEST_LENGTH + 1];
    struct topic *topics;
    size_t topic_count;
    struct sign *signs;
    struct sign_file *sign_files; /* beside `signs`, same order */
    size_t sign_count;
    struct equipment **equipment;
    size_t equipment_count;
    struct kb_language languages[LANGUAGE_COUNT];
};

/* A kb on its way from files to something that can be searched. */
struct build {
    struct kb *kb;
    struct workspace *workspace;
    struct faults *faults;
};

/* Gives the signs of a language all that they are built from; topics and signs are read by then. */
void build_signs(struct build *build, enum language language);

/* Closes the signs and builds the model of a language. */
void build_ready(struct build *build, enum language language);

#endif
