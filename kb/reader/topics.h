/* Reads one topic file. Private to the library; the topic itself is in kb.h. */
#ifndef TOPICS_H
#define TOPICS_H

#include "content.h"
#include "fault.h"
#include "kb.h"

/*
 * Fills *topic from a file; everything it points at lives in `arena`. Adds a fault for everything
 * that is wrong with the file by itself. Returns 0 or -1.
 */
int topic_read(void *arena, const struct content_file *file, const char *id, enum language language,
               struct topic *topic, struct faults *faults);

/* The unit that a condition of `only_if` names ("unit wren"), or NULL if it is of another kind. */
const char *topic_condition_unit(const char *condition);

#endif
