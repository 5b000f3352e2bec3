/*
 * Finds warning signs in a text. Private to the library; kb_find_signs() is the way in.
 *
 * It generalises from the phrases of the sign files: word forms (stems), misspellings, lost and
 * stray blanks (sign_slips.h), word classes, little words that may be missing, words of no weight
 * in between, body part and complaint in either order, fragments ("Chest. Hurts."). What can hold a
 * sign back is in sign_doubt.h and in the sign's own "Not meant by".
 *
 * A phrase found is evidence, not proof ("she leans"), and so is the second opinion on the words
 * (sign_opinion.h). A phrase fires if the whole text or its sentence is like a sign, if its
 * sentence has hardly more words, or if surely its clause is like one or the part of that which
 * "and", "but", "my" and the like divide, whatever the rest is about; but unless it is so by those
 * words alone, these words, the whole text or a stretch of it must not be unlike a sign of that
 * level: a question that is asked beside a danger takes nothing from it. Without a
 * phrase the text, or a stretch of it, must be like one; what is like an emergency but likelier
 * something milder is taken for that. Where a phrase was held back (a negation, a figure of speech)
 * the opinion must be very sure of whatever holds its part of the sentence, or sure of the whole
 * text; where the text surely asks for a topic, more is asked of all but a sentence with a phrase.
 *
 * Each figure below is of texts that nothing was learnt from, by people who had seen neither
 * phrases nor program, each time other texts than the time before. Emergencies found in % where 2,
 * 5 and 10 % of those that only sound like one exceed the opinion, Spanish / English:
 *
 *     one linear decision a level                     51 67 76 / 61 76 83
 *     a sign's own texts count as any other, full rarity, pairs of words twice a word's share, a
 *     phrase's line 0.005 of a text                   72 79 84 / 75 83 88
 *     2,400 more whole texts                          80 87 92 / 89 93 95
 *     harder texts to judge by: one decision          57 73 81 / 61 77 84
 *     several decisions and one for harmless texts    68 79 85 / 71 80 86
 *     11,000 more texts                               82 88 93 / 80 88 93
 *     the same, other texts to judge by               88 93 97 / 87 92 97
 *     a net with a label for each sign (net.h)        92 96 98 / 92 96 97
 *
 * Of the last two lines the program's own count, on 600 emergencies, 730 texts that only sound like
 * one and 1,469 ordinary ones: missed 23, 21; sounding like one and taken for one 60, 49; ordinary
 * ones 30, 29. Beside a net a phrase adds little: with nothing for it 284 of 300 English
 * emergencies are found and 23 of 365 others, as its parts must be as sure as they are now; with
 * parts believed at 0.35, 284 and 33; without any phrase 279 and 14.
 *
 * That a phrase must not be alone, and that a whole text surely like a sign shows it whatever was
 * held back, counted before and after on 954 emergencies, 1,047 texts that only sound like one,
 * 782 clinical ones and 2,099 ordinary ones, none learnt from: emergencies missed 29, 25; taken for
 * one 105, 67; clinical ones missed 56, 52; ordinary ones taken for an emergency 36, 27, for a
 * clinical question 30, 18. Of 732 emergencies with a phrase three were unlike one, of 108 others
 * 66. Unless the words around a phrase were like a sign by themselves, though, an ordinary question
 * beside a danger could silence it: of 3,546 texts made of a danger and questions 99 found before
 * were lost, 48 with it (most by other causes); on the texts above missed 31, 28, taken for one
 * 130, 157, ordinary ones for a clinical question 19, 24.
 *
 * Dropped, because no better: phrases as traits of the opinion or judged by how often each was
 * right; a logistic sum of nearness and twenty more numbers; words after "if" as other traits; no
 * decision on parts of a sentence ("can i take it on the plane and i have chest pain and where is
 * the filter" is missed).
 *
 * A part that begins with a person's word ("where is the filter my lips are kind of blue") is
 * judged by itself too; "el" begins none, for it is mostly an article.
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

enum { SIGNS_A_LANGUAGE_MAX = 127 };

/*
 * Adds one sign; `sign` must live as long as the index. Returns 0, or -1 with faults for lines that
 * cannot be read, or for one sign more than there may be.
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
 * one that "Not meant by" covers. Returns 0 or -1. What stands in `ordinary` (or NULL; it must
 * outlive the index) is not mended in a text that is misspelt all over (sign_mend.h).
 */
struct ordinary;
int sign_index_close(struct sign_index *index, struct workspace *workspace,
                     const struct ordinary *ordinary, struct faults *faults);

/* Copies a closed index (image.h); what it points at is in the image already. */
struct image;
struct sign_image {
    const struct sign *signs, *copies; /* the list that the index was made of, and its copy */
    const struct shorthand *shorthand;
    const struct ordinary *ordinary;
};
void sign_index_image(struct image *image, struct sign_index **of, const struct sign_image *from);

/* Every sign that the text shows, each once: those of the phrases in the order in which they were
 * added, then what the second opinion adds. `is_asked` if the text surely asks for a topic
 * (kb_is_asked()). */
size_t sign_index_find(const struct sign_index *index, struct workspace *workspace,
                       struct words words, bool is_asked, struct sign_match *matches, size_t room);

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
                          struct words words, bool is_asked, struct sign_explained *explained,
                          size_t room);

#endif
