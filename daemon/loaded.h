/*
 * What the program runs on: one configuration with its content and its time zone, read together
 * and checked together. It never changes; reading it again builds a new one.
 */
#ifndef LOADED_H
#define LOADED_H

#include "config.h"
#include "kb.h"
#include "lexicon.h"
#include "zone.h"

struct loaded {
    struct config *config;
    struct kb *kb;
    const struct lexicon *lexicon; /* with that kb; NULL if it has units alone */
    struct zone zone;              /* in the configuration's memory */
};

/*
 * Reads the configuration and, from where that says, content and zone. On success *loaded is the
 * caller's, to be freed with loaded_free(); on failure it is untouched and each fault names place
 * and remedy. Touches nothing else, so it may run in the worker. Returns 0 or -1.
 */
int loaded_read(const char *config_file, struct loaded **loaded, struct faults *faults);
/* The same with no more of the content than the units, at once: for what answers nobody. */
int loaded_read_units(const char *config_file, struct loaded **loaded, struct faults *faults);
/* NULL is fine. */
void loaded_free(struct loaded *loaded);

/* Keeps what took time to build, so that the next start is quick; logs if it cannot. May run in the
 * worker as long as *loaded is not shared. */
void loaded_keep(const struct loaded *loaded);
/* The same of what a command only looks at, beside what is live, and only in a folder that is
 * there; says nothing if it cannot. NULL is fine. */
void loaded_keep_checked(const struct loaded *loaded);

/* How many files of topics and signs nobody has approved. */
int64_t loaded_unapproved(const struct loaded *loaded);

/*
 * Whether `next` can take the place of `now` while the program runs: what only a start can change
 * (where it listens, its store, its clock) must be the same. Returns 0, or -1 with one fault each.
 */
int loaded_can_replace(const struct loaded *now, const struct loaded *next, struct faults *faults);

#endif
