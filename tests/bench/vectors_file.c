#include "vectors_file.h"

#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

static void
die(const char *what)
{
    perror(what);
    exit(1);
}

const struct vectors *
map_vectors(void *arena, const char *path)
{
    struct vectors *vectors;
    struct fault fault;
    struct stat status;
    int descriptor = open(path, O_RDONLY | O_CLOEXEC);
    void *bytes;

    if (descriptor < 0 || fstat(descriptor, &status) != 0) {
        die(path);
    }
    bytes = mmap(NULL, (size_t)status.st_size, PROT_READ, MAP_PRIVATE, descriptor, 0);
    if (bytes == MAP_FAILED) {
        die(path);
    }
    close(descriptor);
    if (vectors_read(arena, bytes, (size_t)status.st_size, &vectors, &fault) != 0) {
        fprintf(stderr, "%s: %s\n", path, fault.text);
        exit(1);
    }
    return vectors;
}
