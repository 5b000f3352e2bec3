/* A small invented knowledge base, in memory and as a folder. */
#ifndef SMALL_KB_H
#define SMALL_KB_H

#include <stddef.h>

/* The head of a sign's file. */
#define SIGN(title, level, brief) "# " title "\n\nLevel: " level "\nIn brief: " brief "\n\n"

enum { SMALL_KB_COUNT = 10 };

/* In name order. */
extern const struct small_kb_file {
    const char *name, *text;
} small_kb[SMALL_KB_COUNT];

/* Where small_kb_lay() laid it, below /tmp; small_kb_remove() takes it away with all in it. */
extern char small_kb_folder[];

void small_kb_lay(void);
void small_kb_remove(void);
/* A file in the folder, in the place of one of that name; its own folder is made. */
void small_kb_write(const char *name, const char *text, size_t length);

#endif
