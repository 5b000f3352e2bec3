/* What a model is made of. Private to model*.c. */
#ifndef MODEL_INSIDE_H
#define MODEL_INSIDE_H

#include "calibrate.h"
#include "feature.h"
#include "linear.h"
#include "model.h"
#include "net.h"
#include "shorthand.h"
#include "spelling.h"
#include "usage.h"

/* Which phrases have a feature (stems and pairs only), and how much of the phrase it is. */
struct posting {
    uint32_t phrase;
    float value;
};

struct phrase_index {
    uint32_t *begins; /* of the postings of each stem and pair; one more at the end */
    struct posting *postings;
};

/* Finds a way of asking by all of its stems in order. */
struct line_index {
    struct line_slot *slots; /* open addressing */
    uint32_t mask;
};

struct line_slot {
    uint32_t key;
    uint32_t phrase; /* + 1; 0 is empty */
};

struct model {
    enum language language;
    uint32_t phrase_count;
    int32_t *labels; /* of each phrase */
    uint8_t *parts;  /* of each phrase: in which fifth it was held out */
    uint32_t *first; /* of each label: one of its phrases; UINT32_MAX: never found */
    struct spelling spelling;
    struct feature_space space;
    struct linear linear; /* its last label is "elsewhere", which is never found */
    struct net net;       /* of the same labels, or of none at all: with few phrases */
    struct usage usage;
    struct phrase_index index;
    struct line_index lines;
    struct calibration calibration;
    struct model_held_out *held_out; /* of each phrase */
    const struct shorthand *shorthand;
    const struct vectors *vectors;
};

/* True for the features that the index has: stems and pairs. */
bool model_indexes(const struct model *model, uint32_t feature);

/* The part of phrases that are about a label and no way of asking: never held out. */
enum { PART_ABOUT = PARTS_MAX - 1 };

/* A search before it is judged. */
struct finding {
    struct evidence evidence;
    int labels[PLACES];
    uint32_t nearest[PLACES];
    size_t count;
};

/* What is learnt: the model's own, or what would be without one part of the phrases. */
struct learnt {
    const struct linear *linear;
    const struct net *net;
    const struct usage *usage;
    int without; /* the part whose phrases are not looked at; PARTS_MAX: all are */
};

/* Ranks the labels for a text's row. */
void model_find(const struct model *model, void *arena, const struct learnt *learnt,
                const struct row *row, size_t word_count, struct finding *finding);

/* The finding with scores and its band. */
void model_judge(const struct model *model, const struct finding *finding,
                 struct model_result *result);

/* Key of a text's stems for line_index. */
uint32_t model_line_key(const struct words *words);

/* True for a phrase that may be the nearest: a way of asking. */
bool model_is_asked(const struct model *model, size_t phrase);

/* Fills index, from the rows of all phrases. */
void model_index(void *arena, struct model *model, const struct row *rows);

#endif
