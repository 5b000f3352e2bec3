/*
 * Puts the knowledge base together from its files. Everything hangs on one talloc context, the kb
 * itself, so that a load that fails half-way is dropped whole.
 */
#include "kb_parts.h"

#include <stdlib.h>
#include <string.h>

#include "equipment_read.h"
#include "kb_image.h"
#include "memory.h"
#include "ordinary.h"
#include "shorthand.h"
#include "sign_classes.h"
#include "signs_read.h"
#include "topics.h"
#include "vectors.h"

/* ---- Files to topics, signs, equipment ------------------------------------------------------ */

enum { ID_MAX = 60 };

/* The id of a file "FOLDER/ID.SUFFIX" in `id`; false if the name is no such thing. */
static bool
read_id(const char *name, const char *suffix, char id[ID_MAX + 1])
{
    static const char letters[] = "abcdefghijklmnopqrstuvwxyz0123456789-";
    const char *base = strrchr(name, '/') + 1;
    size_t length = strspn(base, letters);

    if (length == 0 || length > ID_MAX || strcmp(base + length, suffix) != 0) {
        return false;
    }
    memcpy(id, base, length);
    id[length] = '\0';
    return true;
}

/* The language of a file "FOLDER/LANG/ID.md"; LANGUAGE_COUNT if the name is no such thing. */
static enum language
read_language(const char *name)
{
    const char *code = strchr(name, '/') + 1;
    char two[3] = {0};

    if (strlen(code) < 4 || code[2] != '/' || strchr(code + 3, '/') != NULL) {
        return LANGUAGE_COUNT;
    }
    memcpy(two, code, 2);
    return language_named(two);
}

static void
refuse_name(const struct build *build, const struct content_file *file, const char *expected)
{
    faults_add(build->faults, file->name, 0, NULL,
               "no such file belongs here; expected %s (ID: small letters, digits, -)", expected);
}

static void
read_topic_file(struct build *build, const struct content_file *file)
{
    struct kb *kb = build->kb;
    enum language language = read_language(file->name);
    char id[ID_MAX + 1];

    if (language == LANGUAGE_COUNT || !read_id(file->name, ".md", id)) {
        refuse_name(build, file, "topics/en/ID.md or topics/es/ID.md");
    } else if (topic_read(kb, file, id, language, &kb->topics[kb->topic_count], build->faults) ==
               0) {
        kb->topic_count++;
    }
}

static void
read_sign_file(struct build *build, const struct content_file *file)
{
    struct kb *kb = build->kb;
    enum language language = read_language(file->name);
    char id[ID_MAX + 1];

    if (language == LANGUAGE_COUNT || !read_id(file->name, ".md", id)) {
        refuse_name(build, file, "signs/en/ID.md or signs/es/ID.md");
    } else if (sign_read(kb, file, id, language, &kb->sign_files[kb->sign_count], build->faults) ==
               0) {
        kb->signs[kb->sign_count] = kb->sign_files[kb->sign_count].sign;
        kb->sign_count++;
    }
}

static void
read_equipment_file(struct build *build, const struct content_file *file)
{
    struct kb *kb = build->kb;
    struct equipment *equipment = memory_new(kb, struct equipment);
    char id[ID_MAX + 1];

    if (strchr(strchr(file->name, '/') + 1, '/') != NULL || !read_id(file->name, ".json", id)) {
        refuse_name(build, file, "equipment/ID.json");
    } else if (equipment_read(kb, file, id, equipment, build->faults) == 0) {
        kb->equipment[kb->equipment_count++] = equipment;
    }
}

/* "words/en.vectors": the vectors, which point into the bytes, need a copy that stays. */
static void
read_vectors_file(struct build *build, const struct content_file *file)
{
    char id[ID_MAX + 1], *bytes;
    enum language language = LANGUAGE_COUNT;
    struct fault fault;

    if (strchr(strchr(file->name, '/') + 1, '/') == NULL && read_id(file->name, ".vectors", id)) {
        language = language_named(id);
    }
    if (language == LANGUAGE_COUNT) {
        refuse_name(build, file, "words/en.vectors or words/es.vectors");
        return;
    }
    bytes = memory_must(talloc_memdup(build->kb, file->bytes, file->length + 1));
    if (vectors_read(build->kb, bytes, file->length, &build->kb->languages[language].vectors,
                     &fault) != 0) {
        faults_add(build->faults, file->name, 0, NULL, "%s", fault.text);
    }
}

/* The list of texts that a file "words/LANG-….txt" of this ending holds; NULL if it is of no such.
 */
static char **
list_named(struct kb_language *of, const char *ending)
{
    const struct {
        const char *ending;
        char **list;
    } lists[] = {{"-elsewhere", &of->elsewhere}, {"-harmless", &of->harmless},
                 {"-courtesy", &of->courtesy},   {"-request", &of->request},
                 {"-fault", &of->fault},         {"-inquiry", &of->inquiry}};
    size_t i;

    for (i = 0; i < sizeof lists / sizeof lists[0]; i++) {
        if (strcmp(ending, lists[i].ending) == 0) {
            return lists[i].list;
        }
    }
    return NULL;
}

static void
read_words_file(struct build *build, const struct content_file *file)
{
    struct kb_language *languages = build->kb->languages;
    char id[ID_MAX + 1], code[3] = {0};
    enum language language = LANGUAGE_COUNT;
    const char *dot = strrchr(file->name, '.');

    if (dot != NULL && strcmp(dot, ".vectors") == 0) {
        read_vectors_file(build, file);
        return;
    }
    if (strchr(strchr(file->name, '/') + 1, '/') == NULL && read_id(file->name, ".txt", id)) {
        memcpy(code, id, strlen(id) < 2 ? strlen(id) : 2);
        language = language_named(code);
    }
    if (language != LANGUAGE_COUNT && id[2] == '\0') {
        shorthand_read(build->kb, build->workspace, file->name, file->bytes, file->length, language,
                       &languages[language].shorthand, build->faults);
    } else if (language != LANGUAGE_COUNT && strcmp(id + 2, "-known") == 0) {
        languages[language].known = memory_copy_n(build->kb, file->bytes, file->length);
        languages[language].right = ordinary_read(build->kb, file->bytes, file->length);
    } else if (language != LANGUAGE_COUNT && list_named(&languages[language], id + 2) != NULL) {
        *list_named(&languages[language], id + 2) =
            memory_copy_n(build->kb, file->bytes, file->length);
    } else if (language != LANGUAGE_COUNT && strcmp(id + 2, "-classes") == 0) {
        sign_classes_read(build->kb, file->name, file->bytes, file->length,
                          &languages[language].classes, build->faults);
    } else if (language != LANGUAGE_COUNT && strcmp(id + 2, "-ordinary") == 0) {
        languages[language].ordinary = ordinary_read(build->kb, file->bytes, file->length);
    } else {
        refuse_name(build, file,
                    "words/en.txt, words/en-known.txt, words/en-ordinary.txt, "
                    "words/en-classes.txt, words/en-elsewhere.txt, words/en-harmless.txt, "
                    "words/en-courtesy.txt, words/en-request.txt, words/en-fault.txt, "
                    "words/en-inquiry.txt or the same with es");
    }
}

static void
read_files(struct build *build, const struct content *content)
{
    static const struct {
        const char *folder;
        void (*read)(struct build *build, const struct content_file *file);
    } readers[] = {{"topics/", read_topic_file},
                   {"signs/", read_sign_file},
                   {"equipment/", read_equipment_file},
                   {"words/", read_words_file}};
    struct kb *kb = build->kb;
    size_t i, j;

    kb->topics = memory_array(kb, struct topic, content->count);
    kb->signs = memory_array(kb, struct sign, content->count);
    kb->sign_files = memory_array(kb, struct sign_file, content->count);
    kb->equipment = memory_array(kb, struct equipment *, content->count);
    for (i = 0; i < content->count; i++) {
        for (j = 0; j < sizeof(readers) / sizeof(readers[0]); j++) {
            size_t length = strlen(readers[j].folder);

            if (strncmp(content->files[i].name, readers[j].folder, length) == 0) {
                readers[j].read(build, &content->files[i]);
            }
        }
    }
}

/* ---- What one file alone cannot show --------------------------------------------------------- */

/* A kb that cannot answer an oxygen reading is worse than none. */
static void
check_signs(const struct build *build)
{
    size_t i;

    for (i = 0; signs_on_numbers[i] != NULL; i++) {
        if (kb_sign(build->kb, signs_on_numbers[i], LANGUAGE_EN) == NULL) {
            faults_add(build->faults, NULL, 0, NULL,
                       "signs/en/%s.md is missing or faulty; it says what is texted back to an "
                       "oxygen reading",
                       signs_on_numbers[i]);
        }
    }
    for (i = 0; i < build->kb->sign_count; i++) {
        const struct sign *sign = &build->kb->signs[i];
        const struct sign *english = kb_sign(build->kb, sign->id, LANGUAGE_EN);

        if (english != NULL && english->level != sign->level) {
            faults_add(build->faults, sign->file, 0, "Level",
                       "is not the level of %s; a sign has one level in all languages",
                       english->file);
        }
    }
}

static void
check_units(const struct build *build)
{
    size_t i, j;

    for (i = 0; i < build->kb->topic_count; i++) {
        const struct topic *topic = &build->kb->topics[i];

        for (j = 0; j < topic->only_if_count; j++) {
            const char *unit = topic_condition_unit(topic->only_if[j]);

            if (unit != NULL && kb_equipment(build->kb, unit) == NULL) {
                faults_add(build->faults, topic->file, 0, "Only if",
                           "no unit \"%s\"; there is no equipment/%s.json", unit, unit);
            }
        }
    }
}

/* One way of asking and the topic it stands in. */
struct asked {
    const char *line;
    const struct topic *topic;
};

static int
by_language_and_line(const void *left, const void *right)
{
    const struct asked *l = left, *r = right;
    int order = (int)l->topic->language - (int)r->topic->language;

    return order != 0 ? order : strcmp(l->line, r->line);
}

/* Two topics that claim the same line would make the search guess. */
static void
check_asked_once(const struct build *build)
{
    struct asked *all = NULL;
    size_t count = 0, i, j;

    for (i = 0; i < build->kb->topic_count; i++) {
        const struct topic *topic = &build->kb->topics[i];

        for (j = 0; j < topic->asked_as_count; j++) {
            all = memory_grow(build->kb, struct asked, all, count);
            all[count].line = topic->asked_as[j];
            all[count++].topic = topic;
        }
    }
    if (count > 0) {
        qsort(all, count, sizeof(*all), by_language_and_line);
    }
    for (i = 1; i < count; i++) {
        if (by_language_and_line(&all[i - 1], &all[i]) == 0) {
            faults_add(build->faults, all[i].topic->file, 0, "Asked as",
                       "\"%s\" is in %s too; keep it where it belongs", all[i].line,
                       all[i - 1].topic->file);
        }
    }
    talloc_free(all);
}

static void
build_all(struct build *build, const struct content *content)
{
    size_t before = build->faults->count;
    int language;

    read_files(build, content);
    check_signs(build);
    check_units(build);
    check_asked_once(build);
    for (language = 0; language < LANGUAGE_COUNT; language++) {
        build_signs(build, (enum language)language);
    }
    if (build->faults->count > before) {
        return; /* what follows would only repeat it */
    }
    for (language = 0; language < LANGUAGE_COUNT; language++) {
        build_ready(build, (enum language)language);
    }
}

/* What is built of the files is up to `build_of`. */
static int
read_with(void (*build_of)(struct build *build, const struct content *content),
          const struct content *content, struct kb **kb, struct faults *faults)
{
    size_t before = faults->count;
    struct build build = {memory_new(NULL, struct kb), workspace_new(), faults};

    if (content->digest[0] == '\0') {
        content_digest(content, build.kb->digest);
    } else {
        memcpy(build.kb->digest, content->digest, sizeof(content->digest));
    }
    build_of(&build, content);
    workspace_free(build.workspace);
    if (faults->count > before) {
        talloc_free(build.kb);
        return -1;
    }
    *kb = build.kb;
    return 0;
}

int
kb_read(const struct content *content, struct kb **kb, struct faults *faults)
{
    struct fault other; /* not told: it only costs time */

    if (content->kept.length > 0 && kb_of_image(&content->kept, kb, &other) == 0) {
        return 0;
    }
    return read_with(build_all, content, kb, faults);
}

int
kb_read_equipment(const struct content *content, struct kb **kb, struct faults *faults)
{
    return read_with(read_files, content, kb, faults);
}
