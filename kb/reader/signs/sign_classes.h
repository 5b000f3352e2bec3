/*
 * Word classes: words that all sign files of a language may use by one name. Read from
 * kb/words/LANG-classes.txt, one class a line:
 *
 *   people = he, she, dad, mom, mother in law, [children]
 *   children = baby, son, daughter
 *
 * Entries stand between commas and may be several words; "[children]" takes in another class; a
 * second line of the same name adds to the first; # begins a comment. A phrase names a class as
 * [people] (sign_phrases.h). Private to the library.
 */
#ifndef SIGN_CLASSES_H
#define SIGN_CLASSES_H

#include <stdbool.h>
#include <stddef.h>

#include "fault.h"

struct sign_classes;

/* The class of what speaks of a person's body and state: "[bodily]". Its words are words of the
 * signs though no phrase has them: heard when misspelt, and told apart by the second opinion
 * (sign_traits.h). A language may lack it. */
extern const char sign_class_bodily[];

/* One class with its entries, those of the classes that it takes in among them. */
struct sign_class {
    const char *name;
    const char **entries;
    size_t count;
};

/*
 * Reads a file of classes. On success *classes lives in `arena`; every line that cannot be read,
 * and a class that takes in itself or one that is not there, is a fault with file and line, and the
 * answer is -1.
 */
int sign_classes_read(void *arena, const char *file, const char *bytes, size_t length,
                      struct sign_classes **classes, struct faults *faults);

/* The class of this name (`length` bytes), or NULL; `classes` may be NULL. */
const struct sign_class *sign_classes_find(const struct sign_classes *classes, const char *name,
                                           size_t length);

#endif
