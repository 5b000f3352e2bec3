/*
 * What takes time to build, kept from one start to the next: for each language the model of topics
 * (CACHE/en.model) and the second opinion on signs (CACHE/en.signs), each behind the digest of the
 * content that it was built from. What is missing, damaged or of other content is built again;
 * losing the folder costs a second at the next start. Private to the library but for kb_keep(),
 * which kb.h declares.
 */
#ifndef CACHE_H
#define CACHE_H

#include "content.h"

/* Fills content->kept with what the folder has of content with this digest. */
void cache_read(void *arena, const char *folder, struct content *content);

#endif
