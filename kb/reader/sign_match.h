/*
 * Finds warning signs in a text. Private to the library; kb_find_signs() is the way in.
 *
 * It generalises from the phrases of the sign files: word forms (stems), misspellings, lost and
 * stray blanks (sign_slips.h), word classes, little words that may be missing, words of no weight
 * in between, body part and complaint in either order, fragments ("Chest. Hurts."). What can hold a
 * sign back is in sign_doubt.h and in the sign's own "Not meant by".
 *
 * A phrase found is evidence, not proof ("she leans"), and so is the second opinion on the words
 * (sign_opinion.h). A phrase fires if it is all of its clause or nearly all of the text, if the
 * whole text is like a sign, or its sentence, or surely its clause or the part of that which "and",
 * "but", "my" and the like divide, whatever the rest is about. Without a phrase the text, or a
 * stretch of it, must be surely like one; what is like an emergency but likelier something milder
 * is taken for that.
 *
 * What was tried, on 440 emergencies and 1,660 ordinary and look-alike texts of people who had seen
 * neither phrases nor program (share of the emergencies found where 4 % of the others are taken for
 * one, English / Spanish; before: 84 % at 7 %, 88 % at 17 %):
 *
 *     the opinion on the likeliest run of sentences   77 / 74
 *     the opinion on the whole text                   84 / 77
 *     the same and 0.6 for a phrase (0.3, 0.9 alike)  87 / 85
 *     540 more whole texts a language                 90 / 86
 *     the phrases as traits of the opinion, or judged by how often each was right; nearness and
 *     some twenty more numbers in a logistic sum      dropped: no better, or worse on ordinary
 * texts
 *
 * Then on texts of the same kind that nothing was learnt from (590 Spanish and 280 English
 * emergencies, 340 and 190 harmless that sound like one) and a third of the open data's ordinary
 * ones (8,300); emergencies missed in % Spanish / English, false in % Spanish / English / ordinary:
 *
 *     as it was                                       16.9 / 9.6   14.7 / 21.1 / 0.6
 *     stretches judged, an emergency without a bodily word doubted, bounds not set by the lists of
 *     which many sound like a sign: Spanish, whose ordinary texts were few, had them 0.6 too high
 *                                                     12 / 7.1     12.5 / 21.1 / 0.4
 *     the bounds set by stretches too, 400 ordinary texts, a phrase worth 0.7, not 0.9
 *                                                     10 / 7.5     19.4 / 16.8 / 0.3
 *     words after "if" as other traits, as those after "no" are; emergencies as trouble too
 *                                                     dropped: no better; far worse for trouble
 *
 * (Spanish in the second and third line: one set each, as the other was learnt from since.)
 *
 * Then the opinion itself. Emergencies found in % where 2, 5 and 10 % of those that only sound like
 * one exceed it, Spanish / English, of texts that nothing was learnt from:
 *
 *     as it was                                       51 67 76 / 61 76 83
 *     a sign's own texts count as much as any other (8 times before), full rarity, pairs of words
 *     twice a word's share (0.7 before), a phrase's line 0.005 of a text (0.02 before)
 *                                                     72 79 84 / 75 83 88
 *     2,400 more whole texts (other texts to judge by) 80 87 92 / 89 93 95
 *     a plain linear machine of a general library on words, pairs and letter runs, first texts
 *                                                     75 80 89 / 76 83 89
 *
 * Beside it a phrase says little: at 4 % false 84 to 92 % are found with nothing for a phrase, the
 * same with 0.1 to 0.3, 65 to 83 % with 0.9.
 *
 * Then one decision a level became several (sign_opinion.h), and more whole texts were learnt from,
 * 19,000 in all languages. Emergencies found in % where 2, 5 and 10 % of those that only sound like
 * one exceed it, each time on 400 to 800 emergencies and 700 to 1,600 others of texts that nothing
 * was learnt from (each row other texts than the one before), Spanish / English:
 *
 *     before, a linear machine of a general library   57 73 81 / 61 77 84
 *     the same with several decisions and one for     62 80 87 / 72 82 88
 *     harmless texts
 *     ours, the same texts                            68 79 85 / 71 80 86
 *     6,300 more texts                                82 91 94 / 75 84 90
 *     4,700 more (harder texts to judge by)           82 88 93 / 80 88 93
 *
 * What a phrase adds to that, at the bounds as they are, emergencies found and others taken for
 * one, in % Spanish / English: the opinion with 0.1 for a phrase 88 5 / 92 9; its clause judged too
 * 88 8 / 92 12; 0.3 for a phrase 89 10 / 92 14. The clause is judged all the same, because a sign
 * in its own sentence must fire whatever stands beside it. "Nearly all of the text" adds 0.1. Of
 * emergencies that the opinion alone finds, 2 in 100 are likelier trouble, of the clinical texts
 * that it takes for one 90 to 95: 55 of 60 are no longer called emergencies since they are
 * compared.
 *
 * Then what a phrase needs beside it, on 425 emergencies and 1,650 harmless texts of 12 blind sets,
 * both languages; found 407 each time, harmless ones taken for an emergency: 82 with 0.1 for a
 * phrase, its clause and the part of it judged as the sentence is; 66 with nothing for a phrase and
 * 0.35 asked of parts of a sentence; 54 if only the sentence counts, but then "can i take it on the
 * plane and i have chest pain and where is the filter" is missed.
 *
 * A part that begins with a person's word ("where is the filter my lips are kind of blue") is
 * judged by itself too: on 600 emergencies and 2,199 harmless texts of blind sets 1 more of these
 * is taken for an emergency (95, not 94), none is missed more; "el" begins none, for it is mostly
 * an article (4 more). Two such texts of ordinary questions before blue lips were missed without.
 */
#ifndef SIGN_MATCH_H
#define SIGN_MATCH_H

#include <stdbool.h>
#include <stddef.h>

#include "fault.h"
#include "kb.h"
#include "signs_read.h"

/*
 * The signs of one language, ready to be searched; never changes once it is closed. `shorthand`
 * and `classes` may be NULL and must outlive the index.
 */
struct sign_index;
struct shorthand;
struct sign_classes;
struct sign_index *sign_index_new(void *arena, enum language language,
                                  const struct shorthand *shorthand,
                                  const struct sign_classes *classes);

/*
 * Adds one sign; `sign` must live as long as the index. Returns 0, or -1 with faults for lines that
 * cannot be read.
 */
int sign_index_add(struct sign_index *index, struct workspace *workspace,
                   const struct sign_file *file, const struct sign *sign, struct faults *faults);

/* Takes all words of a text of ours, however long, as rightly spelt. */
void sign_index_know(struct sign_index *index, const char *text);

/* The same for a text of another language, whose words are none of this one's signs. */
void sign_index_know_foreign(struct sign_index *index, const char *text);

/* Takes a text as harmless, for the second opinion (sign_opinion.h): an ordinary one, or one of a
 * list in which there are some that sound like a sign. It must outlive the index. */
void sign_index_ordinary(struct sign_index *index, const char *text);
void sign_index_harmless(struct sign_index *index, const char *text);

/* True for a word that stands in a phrase or was taken as rightly spelt; once the index is closed.
 */
bool sign_index_knows(const struct sign_index *index, void *arena, const char *word);

/*
 * Ends the building. Adds a fault for every "Said as" line that would not fire on itself, such as
 * one that "Not meant by" covers. Returns 0 or -1.
 */
int sign_index_close(struct sign_index *index, struct workspace *workspace, struct faults *faults);

/* Copies a closed index (image.h); the shorthand is in the image already, and so are the signs. */
struct image;
struct sign_image {
    const struct sign *signs, *copies; /* the list that the index was made of, and its copy */
};
void sign_index_image(struct image *image, struct sign_index **of,
                      const struct shorthand *shorthand, const struct sign_image *signs);

/* Every sign that the text shows, each once: those of the phrases in the order in which they were
 * added, then what the second opinion adds. */
size_t sign_index_find(const struct sign_index *index, struct workspace *workspace,
                       struct words words, struct sign_match *matches, size_t room);

/* What became of a sign whose words stand in a text. */
enum sign_held {
    SIGN_FIRES,      /* by its own phrase */
    SIGN_LIKE,       /* fires by the second opinion: the text is like a whole text of its file */
    SIGN_TAKEN_BACK, /* by a negation: "no chest pain" */
    SIGN_EXPLAINED,  /* by a figure of speech of "Not meant by" */
    SIGN_UNLIKE,     /* by the second opinion: all the rest is like harmless texts */
    SIGN_PAST        /* by a time long past: "had a stroke in 2015" */
};

struct sign_explained {
    struct sign_match match; /* as it fired, or would have */
    enum sign_held held;
    const char *explained_by; /* the "Not meant by" line, or NULL */
};

/* Like sign_index_find(), with the signs that were held back, and by what. */
size_t sign_index_explain(const struct sign_index *index, struct workspace *workspace,
                          struct words words, struct sign_explained *explained, size_t room);

#endif
