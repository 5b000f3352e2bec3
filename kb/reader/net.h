/*
 * Which of several labels a text has, by a small net: the text's features, each with a line of
 * numbers of its own, sum up to NET_HIDDEN numbers; these, squashed by tanh, decide between the
 * labels (softmax). Labels share what they have in common through those numbers, and exclude each
 * other, which one linear decision a label (linear.h) does not.
 *
 * Learnt by stochastic gradient descent with steps that shrink with what a line has moved (AdaGrad:
 * Duchi, Hazan and Singer, JMLR 12, 2011), while no label is taken for quite sure (label smoothing:
 * Szegedy and others, CVPR 2016). The same numbers come out each time and, as no library is asked
 * for expf() or tanhf(), on every machine.
 */
#ifndef NET_H
#define NET_H

#include <stdint.h>

#include "linear.h"

enum { NET_HIDDEN = 64 };

struct net {
    int8_t *inner; /* a line of NET_HIDDEN for each feature, in a byte each */
    float *scales; /* of each feature: what its bytes are to be taken times */
    float *inner_bias;
    float *outer; /* a line of `labels` for each hidden number */
    float *outer_bias;
    uint32_t features;
    int labels;
};

/*
 * Learns from the examples, none of which has a negative label, in so many passes over them; those
 * of part `without` are left out (parts[i] belongs to example i; a number that no part has leaves
 * out none). Their own_counts are not looked at. keys[i] says when example i's turn comes, so that
 * with one text more or less in the content all others still come in the order that they did, and
 * the net stays much as it was. All of the net lives in `arena`; freeing net->inner frees it all.
 */
void net_train(void *arena, const struct examples *examples, const uint64_t *keys,
               const uint8_t *parts, int without, int passes, uint32_t features, int labels,
               struct net *net);

/* Adds what one feature of this weight puts into the hidden numbers. */
static inline void
net_add(const struct net *net, uint32_t feature, float weight, float *hidden)
{
    const int8_t *line = net->inner + feature * (size_t)NET_HIDDEN;
    float times = weight * net->scales[feature];
    int h;

    for (h = 0; h < NET_HIDDEN; h++) {
        hidden[h] += times * (float)line[h];
    }
}

/* What speaks for each label, given what the features came to; `hidden` is changed. */
void net_decide(const struct net *net, float *hidden, float *says);

/* Turns what speaks for labels into their shares, the highest 1. Returns the sum: so much of that a
 * label's share is, so likely it is. */
float net_shares(float *says, int labels);

/* A key for an example, by what it says, wherever it stands. */
uint64_t net_key(const char *text);

/* Copies what it points at (image.h). */
struct image;
void net_image(struct image *image, struct net *net);

#endif
