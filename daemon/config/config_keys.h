/*
 * Keys of the configuration as a table; private to config*.c. One row says where a key stands, of
 * which type and within which bounds, what holds without it, where it goes and what it means. The
 * reader, the faults and the printed explanation all come from the same rows.
 */
#ifndef CONFIG_KEYS_H
#define CONFIG_KEYS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <jansson.h>

#include "fault.h"

enum key_kind {
    KEY_TEXT,    /* const char *; low to high bytes long */
    KEY_PATH,    /* const char *; relative to the configuration's folder */
    KEY_INT,     /* int */
    KEY_SECONDS, /* int64_t */
    KEY_WORD,    /* int or an enum: index into `words` */
    KEY_EITHER,  /* bool: the second of two `words` */
    KEY_SECTION, /* an object with a table of its own, in the same struct */
    KEY_OWN      /* read() knows */
};

struct reading {
    void *arena;        /* what is read lives here */
    const char *file;   /* named in faults */
    const char *folder; /* where relative paths start */
    struct faults *faults;
    /* Of another file than the configuration: the line that is read, and how a pointer into it is
     * named in faults. 0 and NULL: it stands in JSON. */
    int line;
    const char *(*place)(const char *pointer);
};

struct key_table;

struct key {
    const char *name;
    enum key_kind kind;
    bool required;
    size_t at; /* offset in the struct that the table fills */
    int64_t low, high;
    int64_t number;                /* what holds without it; of words, the index */
    const char *text;              /* KEY_TEXT, KEY_PATH: the same, or NULL */
    const char *const *words;      /* KEY_WORD, KEY_EITHER: ended by NULL */
    const struct key_table *table; /* KEY_SECTION; KEY_OWN: of each element, for the explanation */
    /* KEY_OWN: `value` is NULL if it is not there; `pointer` is where it would stand. */
    void (*read)(const struct reading *reading, json_t *value, const char *pointer, void *target);
    const char *each;  /* KEY_OWN: how elements are named in pointers ("NAME", "0"), or NULL */
    const char *means; /* in plain words */
};

struct key_table {
    const struct key *keys;
    size_t count;
};

/*
 * Fills `target` from an object. Every fault is added to reading->faults with its JSON Pointer; a
 * member whose name starts with '#' is a remark and is passed over. `object` NULL: nothing is
 * there, so defaults hold and required keys are missing.
 */
void keys_read(const struct reading *reading, const struct key_table *table, json_t *object,
               const char *pointer, void *target);

/* "pointer/name", with ~ and / in the name escaped (RFC 6901, section 3). */
const char *keys_pointer(const struct reading *reading, const char *pointer, const char *name);

/* Adds a fault at a pointer. */
void keys_fault(const struct reading *reading, const char *pointer, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

/* "an object", "text" …; "nothing" for NULL. */
const char *keys_kind(const json_t *value);

/* Which of key->words a value is; key->number and a fault if it is none. */
int keys_word(const struct reading *reading, const struct key *key, json_t *value,
              const char *pointer);

/* A list of texts from a JSON array of at least one; NULL and a fault if it is none. */
const char **keys_texts(const struct reading *reading, json_t *value, const char *pointer,
                        size_t most, size_t *count);

/* "18:30", `length` bytes long, as minutes of the day, 24:00 among them; -1 if it is none. */
int keys_minutes(const char *text, size_t length);

/* The word nearest to `name`, if it is near enough to have been meant, else NULL. */
const char *keys_nearest(const char *name, const char *const *words, size_t count);

/* Prints each key of a table: pointer, type, bounds, default, meaning. */
void keys_explain(FILE *out, const struct key_table *table, const char *pointer);

#endif
