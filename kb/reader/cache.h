/*
 * What takes time to build, kept from one start to the next: the whole knowledge base (kb_image.h),
 * behind the digest of the content that it was built from and that of the sources of the program
 * that built it. CACHE/kb is the content that answers renters; CACHE/kb-checked is what was last
 * looked at beside it, such as a draft, and serves once that goes live. What is missing, damaged or
 * of other content is built again, and so is what somebody else than root or who reads it owns or
 * may write, file or folder, and what lies behind a link; losing the folder costs seconds at the
 * next start. Private to the library but for kb_keep(), which kb.h declares.
 */
#ifndef CACHE_H
#define CACHE_H

#include "content.h"

/* The digest of the library's sources, as 64 hex digits and a NUL: another program's structs may
 * lie otherwise, and its words may be stemmed otherwise. The build writes it (made_by.c.in). */
extern const char cache_made_by[CONTENT_DIGEST_LENGTH + 1];

/* Fills content->kept with what the folder has of this content. */
void cache_read(void *arena, const char *folder, struct content *content);

#endif
