#include "sign_classes.h"

#include <ctype.h>
#include <string.h>

#include "memory.h"

/* Classes within classes, so deep. */
const char sign_class_bodily[] = "[bodily]";

enum { DEPTH_MAX = 4 };

struct sign_classes {
    struct sign_class *list;
    int *lines; /* of the file: where each class begins */
    size_t count;
};

/* A file on its way to classes. */
struct classes_reader {
    struct sign_classes *classes;
    const char *file;
    struct faults *faults;
};

/* The place of the class of this name; count if there is none. */
static size_t
place_of(const struct sign_classes *classes, const char *name, size_t length)
{
    size_t i;

    for (i = 0; i < classes->count; i++) {
        if (strncmp(classes->list[i].name, name, length) == 0 &&
            classes->list[i].name[length] == '\0') {
            break;
        }
    }
    return i;
}

const struct sign_class *
sign_classes_find(const struct sign_classes *classes, const char *name, size_t length)
{
    size_t place = classes == NULL ? 0 : place_of(classes, name, length);

    return classes == NULL || place == classes->count ? NULL : &classes->list[place];
}

static char *
trimmed(char *text)
{
    char *end;

    text += strspn(text, " \t\r");
    end = text + strlen(text);
    while (end > text && isspace((unsigned char)end[-1])) {
        end--;
    }
    *end = '\0';
    return text;
}

static struct sign_class *
class_named(struct sign_classes *classes, const char *name, int line)
{
    size_t place = place_of(classes, name, strlen(name));

    if (place == classes->count) {
        classes->list = memory_grow(classes, struct sign_class, classes->list, classes->count);
        classes->lines = memory_grow(classes, int, classes->lines, classes->count);
        classes->lines[classes->count] = line;
        classes->list[classes->count++] = (struct sign_class){.name = memory_copy(classes, name)};
    }
    return &classes->list[place];
}

static void
add_entry(struct sign_classes *classes, struct sign_class *class, const char *entry)
{
    size_t i;

    for (i = 0; i < class->count; i++) {
        if (strcmp(class->entries[i], entry) == 0) {
            return;
        }
    }
    class->entries = memory_grow(classes, const char *, class->entries, class->count);
    class->entries[class->count++] = entry;
}

static void
read_line(struct classes_reader *reader, char *line, int number)
{
    static const char letters[] = "abcdefghijklmnopqrstuvwxyz0123456789-";
    char *comment = strchr(line, '#'), *equals, *name, *rest, *entry;
    struct sign_class *class;

    if (comment != NULL) {
        *comment = '\0';
    }
    if (*trimmed(line) == '\0') {
        return;
    }
    equals = strchr(line, '=');
    if (equals != NULL) {
        *equals = '\0';
    }
    name = trimmed(line);
    if (equals == NULL || *name == '\0' || name[strspn(name, letters)] != '\0') {
        faults_add(reader->faults, reader->file, number, NULL,
                   "write: name = word, word, several words, [other-class] (name: small letters, "
                   "digits, -)");
        return;
    }
    class = class_named(reader->classes, name, number);
    rest = equals + 1;
    while ((entry = strtok_r(rest, ",", &rest)) != NULL) {
        entry = trimmed(entry);
        if (*entry != '\0') {
            add_entry(reader->classes, class, memory_copy(reader->classes, entry));
        }
    }
}

/* Adds to `whole` the words of a class and of those that it takes in. */
static void
take_in(struct classes_reader *reader, const struct sign_class *class, int line, int depth,
        struct sign_class *whole)
{
    size_t i;

    if (depth > DEPTH_MAX) {
        faults_add(reader->faults, reader->file, line, NULL,
                   "[%s] takes in itself, or too many classes within each other", whole->name);
        return;
    }
    for (i = 0; i < class->count; i++) {
        const char *entry = class->entries[i];
        const struct sign_class *other;

        if (entry[0] != '[') {
            add_entry(reader->classes, whole, entry);
            continue;
        }
        other = sign_classes_find(reader->classes, entry + 1, strcspn(entry + 1, "]"));
        if (other == NULL) {
            faults_add(reader->faults, reader->file, line, NULL, "there is no class %s", entry);
        } else {
            take_in(reader, other, line, depth + 1, whole);
        }
    }
}

int
sign_classes_read(void *arena, const char *file, const char *bytes, size_t length,
                  struct sign_classes **classes, struct faults *faults)
{
    struct sign_classes *read = memory_new(arena, struct sign_classes);
    struct classes_reader reader = {read, file, faults};
    struct sign_class *whole;
    size_t before = faults->count, at = 0, i;
    int number = 1;

    while (at < length) {
        const char *end = memchr(bytes + at, '\n', length - at);
        size_t size = end == NULL ? length - at : (size_t)(end - (bytes + at));

        read_line(&reader, memory_copy_n(read, bytes + at, size), number++);
        at += size + 1;
    }
    whole = memory_array(read, struct sign_class, read->count + 1);
    for (i = 0; i < read->count; i++) {
        whole[i].name = read->list[i].name;
        take_in(&reader, &read->list[i], read->lines[i], 0, &whole[i]);
    }
    read->list = whole;
    if (faults->count > before) {
        talloc_free(read);
        return -1;
    }
    *classes = read;
    return 0;
}
