/* Word vectors for the measuring programs. */
#ifndef VECTORS_FILE_H
#define VECTORS_FILE_H

#include "vectors.h"

/* Maps a file that kb/reader/cut-vectors made; says what is wrong with it and ends if it cannot. */
const struct vectors *map_vectors(void *arena, const char *path);

#endif
