/*
 * Reads one sign file. Private to the library; the sign itself is in kb.h.
 *
 * Sections after what is texted back:
 *
 *   Said as         phrases that show the sign; sign_phrases.h says how they are written
 *   Not meant by    figures of speech, phrases too, that must not trip it
 *   Whole texts     whole messages, as people write them, that show it: sign_opinion.h learns from
 *                   them
 *   Harmless texts  whole messages that sound like it and are harmless: it learns from them too
 *   Sources         where this comes from
 *   Approved        who approved it
 */
#ifndef SIGNS_READ_H
#define SIGNS_READ_H

#include "content.h"
#include "fault.h"
#include "kb.h"

/*
 * Signs that fire on an oximeter value and so have no "Said as". The program needs their words, so
 * each must be there in English. Ended by NULL.
 */
extern const char *const signs_on_numbers[];

/* A sign with what only the matcher needs of its file. */
struct sign_file {
    struct sign sign;
    const char *const *not_meant_by;
    size_t not_meant_by_count;
    const int *said_as_lines, *not_meant_by_lines, *whole_text_lines; /* of the file, of each */
    const char *const *whole_texts, *const *harmless_texts;
    size_t whole_text_count, harmless_text_count;
};

/*
 * Fills *sign_file; everything it points at lives in `arena`. Adds a fault for everything that is
 * wrong with the file by itself. Returns 0 or -1.
 */
int sign_read(void *arena, const struct content_file *file, const char *id, enum language language,
              struct sign_file *sign_file, struct faults *faults);

#endif
