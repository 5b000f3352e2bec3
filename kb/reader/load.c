/*
 * The only file of the library that opens content. It knows nothing of what is in them: it hands
 * over names and bytes, with limits on both, so that everything after it can be tested in memory.
 */
#include "content.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "cache.h"
#include "kb.h"
#include "memory.h"

/* Equipment first: kb_load_equipment() reads no more. */
static const char *const folders[] = {"equipment", "signs", "topics", "words"};

/* topics/en/ID.md is as deep as content goes. */
enum { FOLDERS_DEEP_MAX = 2 };

struct load {
    void *arena;
    struct content_file *files;
    size_t count;
    struct faults *faults;
};

static size_t
limit_of(const char *name)
{
    const char *dot = strrchr(name, '.');

    return dot != NULL && strcmp(dot, ".vectors") == 0 ? CONTENT_VECTORS_BYTES_MAX
                                                       : CONTENT_FILE_BYTES_MAX;
}

/* Reads what is open as `descriptor` to its end. Returns 0, or -1 with a fault. */
static int
read_bytes(struct load *load, int descriptor, const char *name, struct content_file *file)
{
    size_t limit = limit_of(name), length = 0, room = limit + 1;
    struct stat status;
    char *bytes;

    if (fstat(descriptor, &status) == 0 && (size_t)status.st_size < limit) {
        room = (size_t)status.st_size + 1; /* one more, to see the end */
    }
    bytes = memory_must(talloc_array(load->arena, char, (unsigned)room + 1));
    while (length < room) {
        ssize_t got = read(descriptor, bytes + length, room - length);

        if (got < 0 && errno == EINTR) {
            continue;
        }
        if (got < 0) {
            faults_add(load->faults, name, 0, NULL, "cannot be read: %s", strerror(errno));
            return -1;
        }
        if (got == 0) {
            break;
        }
        length += (size_t)got;
    }
    if (length > limit) {
        faults_add(load->faults, name, 0, NULL, "larger than %zu bytes; split it", limit);
        return -1;
    }
    if (length == room && room <= limit) {
        faults_add(load->faults, name, 0, NULL, "was written to while it was read; load again");
        return -1;
    }
    file->name = name;
    file->bytes = memory_must(talloc_realloc(load->arena, bytes, char, (unsigned)length + 1));
    file->length = length;
    return 0;
}

static void
load_file(struct load *load, int parent, const char *entry, const char *name)
{
    struct content_file file;
    int descriptor;

    if (load->count == CONTENT_FILES_MAX) {
        faults_add(load->faults, name, 0, NULL,
                   "more than %d files of content; is this the folder?", CONTENT_FILES_MAX);
        load->count++; /* said once */
    }
    if (load->count > CONTENT_FILES_MAX) {
        return;
    }
    descriptor = openat(parent, entry, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
    if (descriptor < 0) {
        faults_add(load->faults, name, 0, NULL, "cannot be opened: %s", strerror(errno));
        return;
    }
    if (read_bytes(load, descriptor, name, &file) == 0) {
        load->files = memory_grow(load->arena, struct content_file, load->files, load->count);
        load->files[load->count++] = file;
    }
    close(descriptor);
}

static bool
is_left_out(const char *entry)
{
    return entry[0] == '.' || entry[strlen(entry) - 1] == '~';
}

static void load_folder(struct load *load, int parent, const char *entry, const char *name,
                        int deep);

static void
load_entry(struct load *load, int parent, const char *entry, const char *name, int deep)
{
    struct stat status;

    if (fstatat(parent, entry, &status, 0) != 0) {
        faults_add(load->faults, name, 0, NULL, "cannot be read: %s", strerror(errno));
    } else if (S_ISDIR(status.st_mode) && deep < FOLDERS_DEEP_MAX) {
        load_folder(load, parent, entry, name, deep + 1);
    } else if (S_ISREG(status.st_mode)) {
        load_file(load, parent, entry, name);
    } else {
        faults_add(load->faults, name, 0, NULL, "not a file; move it out of the content folders");
    }
}

static void
load_folder(struct load *load, int parent, const char *entry, const char *name, int deep)
{
    int descriptor = openat(parent, entry, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    DIR *stream = descriptor < 0 ? NULL : fdopendir(descriptor);
    struct dirent *found;

    if (stream == NULL) {
        if (descriptor >= 0) {
            close(descriptor);
        }
        if (errno != ENOENT || deep > 1) { /* a kb may lack one of the four folders */
            faults_add(load->faults, name, 0, NULL, "cannot be opened: %s", strerror(errno));
        }
        return;
    }
    while ((found = readdir(stream)) != NULL) {
        if (!is_left_out(found->d_name)) {
            load_entry(load, dirfd(stream), found->d_name,
                       memory_format(load->arena, "%s/%s", name, found->d_name), deep);
        }
    }
    closedir(stream);
}

static int
by_name(const void *left, const void *right)
{
    return strcmp(((const struct content_file *)left)->name,
                  ((const struct content_file *)right)->name);
}

/* The first `count` of the folders. */
static int
load_folders(void *arena, const char *folder, size_t count, struct content *content,
             struct faults *faults)
{
    struct load load = {.arena = arena, .faults = faults};
    size_t before = faults->count, i;
    int root = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);

    if (root < 0) {
        faults_add(faults, folder, 0, NULL,
                   "cannot be opened: %s; name the folder that holds the "
                   "content (topics, signs, equipment, words)",
                   strerror(errno));
        return -1;
    }
    for (i = 0; i < count; i++) {
        load_folder(&load, root, folders[i], folders[i], 1);
    }
    close(root);
    if (faults->count > before) {
        return -1;
    }
    if (load.count > 0) {
        qsort(load.files, load.count, sizeof(*load.files), by_name);
    }
    content->files = load.files;
    content->count = load.count;
    return 0;
}

int
content_load(void *arena, const char *folder, struct content *content, struct faults *faults)
{
    return load_folders(arena, folder, sizeof(folders) / sizeof(folders[0]), content, faults);
}

int
kb_load_equipment(const char *folder, struct kb **kb, struct faults *faults)
{
    void *arena = memory_must(talloc_new(NULL));
    struct content content = {0};
    int rc = load_folders(arena, folder, 1, &content, faults);

    if (rc == 0) {
        rc = kb_read_equipment(&content, kb, faults);
    }
    talloc_free(arena);
    return rc;
}

int
kb_load(const char *folder, const char *cache_folder, struct kb **kb, struct faults *faults)
{
    void *arena = memory_must(talloc_new(NULL));
    struct content content = {0};
    int rc = content_load(arena, folder, &content, faults);

    if (rc == 0) {
        if (cache_folder != NULL) {
            cache_read(arena, cache_folder, &content);
        }
        rc = kb_read(&content, kb, faults);
    }
    talloc_free(arena);
    return rc;
}
