/* Reads rentals as the office's files come in, for tests. */
#ifndef RENTAL_READER_H
#define RENTAL_READER_H

#include "rental_csv.h"
#include "rental_record.h"

/* Seven hours west of Greenwich, and the content of the sources. */
struct rental_reader {
    void *arena; /* of one test */
    struct rental_setting setting;
    struct rental *rentals; /* what the last file held */
    const char **texts;     /* the same as the store keeps it */
    size_t count;
    struct faults faults;
};

extern struct rental_reader reader;

/* Fixtures: content once, the rest for each test. */
void reader_load(void);
void reader_unload(void);
void reader_set_up(void);
void reader_tear_down(void);

/* Reads a file; 0, or -1 with reader.faults. */
int read_bytes(const char *bytes, size_t length);
int read_csv(const char *text);

/* A file of the sources, in the test's arena. */
char *source_text(const char *name);
/* All faults, a line each. */
const char *faults_text(void);

#endif
