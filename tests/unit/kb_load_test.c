/* A whole knowledge base: from a folder and from memory, and that a bad one never half loads. */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "content.h"
#include "kb.h"
#include "memory.h"

static struct faults faults;
static struct kb *kb;
static struct workspace *workspace;

static void
begin(void)
{
    workspace = workspace_new();
}

static void
end(void)
{
    kb_free(kb);
    kb = NULL;
    workspace_free(workspace);
    faults_release(&faults);
}

static bool
has_fault(const char *words)
{
    size_t i;

    for (i = 0; i < faults.count; i++) {
        if (strstr(faults.list[i].text, words) != NULL) {
            return true;
        }
    }
    return false;
}

#define SIGN(title, level, brief) "# " title "\n\nLevel: " level "\nIn brief: " brief "\n\n"

/* A small invented kb, in name order. */
static const struct {
    const char *name, *text;
} sound[] = {
    {"equipment/wren.json", "{\"name\":\"Wren\",\"battery\":{\"retirement_health\":80}}"},
    {"signs/en/bad-tea.md",
     SIGN("Bad tea", "emergency", "bad tea") "Call {emergency} now.\n\n## Said as\n\n- tea is "
                                             "poisoned\n- taste / smell + almonds\n"},
    {"signs/en/cold-tea.md",
     SIGN("Cold tea", "clinical", "cold tea") "We will call.\n\n## Said as\n\n- tea is cold\n"},
    {"signs/en/low-reading.md", SIGN("Low", "emergency", "low") "Call {emergency} now.\n"},
    {"signs/en/reading.md", SIGN("Reading", "clinical", "reading") "We will call.\n"},
    {"signs/es/bad-tea.md",
     SIGN("Malo", "emergency",
          "te malo") "Llame al {emergency}.\n\n## Said as\n\n- te envenenado\n"},
    {"topics/en/kettle.md",
     "# Kettle\n\nFill it.\n\n## Asked as\n\n- how do i boil water\n\n## Only if\n\n- unit wren\n"},
    {"topics/en/milk.md", "# Milk\n\nIn the fridge.\n\n## Asked as\n\n- where is the milk\n"},
    {"topics/es/milk.md", "# Leche\n\nEn la nevera.\n\n## Asked as\n\n- donde esta la leche\n"},
    {"words/en-known.txt", "# right as spelt\nteal\n"},
};
enum { SOUND_COUNT = sizeof(sound) / sizeof(sound[0]) };

/* Reads the sound kb from memory with one file put in, or in the place of the one of its name. */
static int
read_with(const char *name, const char *text)
{
    struct content_file files[SOUND_COUNT + 1];
    struct content content = {.files = files};
    bool is_in = false;
    size_t i;

    for (i = 0; i < SOUND_COUNT; i++) {
        bool is_same = name != NULL && strcmp(sound[i].name, name) == 0;
        const char *bytes = is_same ? text : sound[i].text;

        is_in = is_in || is_same;
        if (bytes != NULL) {
            files[content.count++] = (struct content_file){sound[i].name, bytes, strlen(bytes)};
        }
    }
    if (name != NULL && !is_in) {
        files[content.count++] = (struct content_file){name, text, strlen(text)};
    }
    return kb_read(&content, &kb, &faults);
}

START_TEST(a_sound_kb_answers)
{
    struct topic_search search;
    size_t count;

    ck_assert_int_eq(read_with(NULL, NULL), 0);
    ck_assert_str_eq(kb_topic(kb, "milk", LANGUAGE_ES)->title, "Leche");
    ck_assert_str_eq(kb_topic(kb, "kettle", LANGUAGE_ES)->title, "Kettle"); /* none in Spanish */
    ck_assert_ptr_null(kb_topic(kb, "tea", LANGUAGE_EN));
    ck_assert_str_eq(kb_sign(kb, "reading", LANGUAGE_ES)->title, "Reading");
    ck_assert_str_eq(kb_equipment(kb, "wren")->name, "Wren");
    ck_assert_ptr_null(kb_equipment(kb, "robin"));
    kb_topics(kb, &count);
    ck_assert_uint_eq(count, 3);
    kb_signs(kb, &count);
    ck_assert_uint_eq(count, 5);
    kb_equipment_all(kb, &count);
    ck_assert_uint_eq(count, 1);
    search = kb_search_topics(kb, workspace, "where is the milk", LANGUAGE_EN);
    ck_assert_uint_ge(search.count, 1);
    ck_assert_str_eq(search.best[0].topic->id, "milk");
    ck_assert_str_eq(search.best[0].nearest, "where is the milk");
}
END_TEST

START_TEST(signs_of_all_languages_are_tried_gravest_first_each_once)
{
    struct sign_match matches[4];

    ck_assert_int_eq(read_with(NULL, NULL), 0);
    ck_assert_uint_eq(
        kb_find_signs(kb, workspace, "tea is cold. the tea is poisoned, te envenenado", matches, 4),
        2);
    ck_assert_str_eq(matches[0].sign->id, "bad-tea");
    ck_assert_uint_eq(matches[0].start, 17);
    ck_assert_str_eq(matches[1].sign->id, "cold-tea");
    ck_assert_uint_eq(kb_find_signs(kb, workspace, "te envenenado", matches, 4), 1);
    ck_assert_int_eq(matches[0].sign->language, LANGUAGE_ES);
    ck_assert_uint_eq(kb_find_signs(kb, workspace, "tea is cold. the tea is poisoned", matches, 1),
                      1);
    ck_assert_str_eq(matches[0].sign->id, "bad-tea"); /* with room for one, the gravest */
    ck_assert_uint_eq(kb_find_signs(kb, workspace, "where is the milk", matches, 4), 0);
}
END_TEST

START_TEST(a_sign_at_the_end_of_a_very_long_text_is_found)
{
    static const char end_of_text[] = "the tea is poisoned";
    struct sign_match matches[4];
    size_t length = 3 * WORDS_TEXT_MAX, i;
    char *text = malloc(length + sizeof(end_of_text));

    for (i = 0; i < length; i++) {
        text[i] = i % 8 == 7 ? ' ' : 'x';
    }
    memcpy(text + length, end_of_text, sizeof(end_of_text));
    ck_assert_int_eq(read_with(NULL, NULL), 0);
    ck_assert_uint_eq(kb_find_signs(kb, workspace, text, matches, 4), 1);
    ck_assert_uint_eq(matches[0].start, length + 4);
    ck_assert_uint_eq(matches[0].end, length + 19);
    free(text);
}
END_TEST

/* One file put in or changed (NULL: left out), and words that must be in what is said of it. */
static const struct {
    const char *name, *text, *fault;
} unsound[] = {
    {"signs/en/reading.md", NULL, "signs/en/reading.md is missing"},
    {"signs/es/bad-tea.md",
     SIGN("Malo", "clinical", "te") "Llame.\n\n## Said as\n\n- te envenenado\n",
     "signs/es/bad-tea.md: Level: is not the level of signs/en/bad-tea.md"},
    {"signs/en/bad-tea.md",
     SIGN("Bad tea", "emergency", "bad tea") "Call.\n\n## Said as\n\n- tea is cold\n\n## Not meant "
                                             "by\n\n- tea cold\n",
     "bad-tea.md:10: Said as: \"tea is cold\" would not fire"},
    {"signs/en/bad-tea.md",
     SIGN("Bad tea", "emergency", "bad tea") "Call.\n\n## Said as\n\n- tea /\n",
     "bad-tea.md:10: Said as: \"tea /\": a / needs a word"},
    {"signs/en/bad-tea.md",
     SIGN("Bad tea", "emergency", "bad tea") "Call.\n\n## Said as\n\n- a + b + c + d\n",
     "two + at most"},
    {"topics/en/milk.md", "# Milk\n\nHere.\n\n## Asked as\n\n- how do i boil water\n",
     "\"how do i boil water\" is in topics/en/kettle.md too"},
    {"topics/en/kettle.md", "# K\n\nFill.\n\n## Asked as\n\n- boil\n\n## Only if\n\n- unit robin\n",
     "no unit \"robin\""},
    {"topics/fr/milk.md", "# M\n\nM.\n\n## Asked as\n\n- m\n", "topics/fr/milk.md: no such file"},
    {"topics/en/Milk Jug.md", "# M\n\nM.\n\n## Asked as\n\n- m\n", "Jug.md: no such file"},
    {"topics/loose.md", "# M\n\nM.\n\n## Asked as\n\n- m\n", "topics/loose.md: no such file"},
    {"equipment/wren.txt", "{}", "equipment/wren.txt: no such file"},
    {"equipment/old/wren.json", "{}", "equipment/old/wren.json: no such file"},
    {"words/fr.txt", "u = tu\n", "words/fr.txt: no such file"},
    {"words/en-classes.txt", "people he, she\n", "words/en-classes.txt:1: write: name = word"},
    {"words/en-classes.txt", "people = he, [cats]\n", "words/en-classes.txt:1: there is no class"},
    {"words/en-classes.txt", "a = [b]\nb = [a]\n", "words/en-classes.txt:1: [a] takes in itself"},
};

START_TEST(an_unsound_kb_is_refused)
{
    ck_assert_int_eq(read_with(unsound[_i].name, unsound[_i].text), -1);
    ck_assert_ptr_null(kb);
    ck_assert_msg(has_fault(unsound[_i].fault), "wanted \"%s\", got \"%s\"", unsound[_i].fault,
                  faults.count > 0 ? faults.list[0].text : "nothing");
}
END_TEST

/* ---- The digest ----------------------------------------------------------------------------- */

static void
digest_of(const char *name, const char *text, char *digest)
{
    struct content_file file = {name, text, strlen(text)};
    struct content content = {.files = &file, .count = 1};

    content_digest(&content, digest);
}

/* The BLAKE2b of no bytes at all, at 32 bytes (RFC 7693; the value from its reference program). */
START_TEST(the_digest_is_blake2b)
{
    char digest[CONTENT_DIGEST_LENGTH + 1];
    struct content none = {.files = NULL};

    content_digest(&none, digest);
    ck_assert_str_eq(digest, "0e5751c026e543b2e8ab2eb06099daa1d1e5df47778f7787faab45cdf12fe3a8");
}
END_TEST

START_TEST(the_digest_tells_names_and_bytes_apart)
{
    char first[CONTENT_DIGEST_LENGTH + 1], second[CONTENT_DIGEST_LENGTH + 1];

    digest_of("a", "bc", first);
    digest_of("ab", "c", second);
    ck_assert_str_ne(first, second);
    digest_of("a", "bd", second);
    ck_assert_str_ne(first, second);
    digest_of("a", "bc", second);
    ck_assert_str_eq(first, second);
}
END_TEST

/* ---- The disk ------------------------------------------------------------------------------- */

static char folder[] = "/tmp/kb_load_test_XXXXXX";

static void
write_file(const char *name, const char *text, size_t length)
{
    char path[256];
    char *slash;
    FILE *file;

    snprintf(path, sizeof(path), "%s/%s", folder, name);
    for (slash = path + strlen(folder) + 1; (slash = strchr(slash, '/')) != NULL; slash++) {
        *slash = '\0';
        mkdir(path, 0700);
        *slash = '/';
    }
    file = fopen(path, "wb");
    ck_assert_ptr_nonnull(file);
    ck_assert_uint_eq(fwrite(text, 1, length, file), length);
    ck_assert_int_eq(fclose(file), 0);
}

static void
begin_folder(void)
{
    size_t i;

    begin();
    strcpy(folder + strlen(folder) - 6, "XXXXXX");
    ck_assert_ptr_nonnull(mkdtemp(folder));
    for (i = 0; i < SOUND_COUNT; i++) {
        write_file(sound[i].name, sound[i].text, strlen(sound[i].text));
    }
}

static void
end_folder(void)
{
    char command[128];

    snprintf(command, sizeof(command), "rm -r %s", folder);
    ck_assert_int_eq(system(command), 0);
    end();
}

START_TEST(a_folder_loads_as_its_files_do_in_memory)
{
    char digest[CONTENT_DIGEST_LENGTH + 1];

    ck_assert_int_eq(read_with(NULL, NULL), 0);
    strcpy(digest, kb_digest(kb));
    kb_free(kb);
    kb = NULL;
    ck_assert_int_eq(kb_load(folder, NULL, &kb, &faults), 0);
    ck_assert_str_eq(kb_digest(kb), digest);
}
END_TEST

static void
load_again(const char *cache)
{
    kb_free(kb);
    kb = NULL;
    ck_assert_int_eq(kb_load(folder, cache, &kb, &faults), 0);
}

static ino_t
kept_as(const char *cache)
{
    char path[128];
    struct stat is;
    struct fault fault;

    ck_assert_int_eq(kb_keep(kb, cache, &fault), 0);
    snprintf(path, sizeof(path), "%s/kb", cache);
    ck_assert_int_eq(stat(path, &is), 0);
    return is.st_ino;
}

START_TEST(what_is_kept_serves_the_same_content_and_no_other)
{
    char cache[64];
    const char *other = "# Milk\n\nAll gone.\n\n## Asked as\n\n- is milk left\n";
    struct topic_search built, kept;
    ino_t first;

    snprintf(cache, sizeof(cache), "%s/cache", folder);
    load_again(cache); /* which is not there yet */
    built = kb_search_topics(kb, workspace, "wheres the milk then", LANGUAGE_EN);
    first = kept_as(cache);
    load_again(cache);
    kept = kb_search_topics(kb, workspace, "wheres the milk then", LANGUAGE_EN);
    ck_assert_str_eq(kept.best[0].topic->id, "milk");
    ck_assert_int_eq(kept.best[0].score, built.best[0].score);
    ck_assert_uint_eq(kept_as(cache), first); /* it came from there: nothing is written */
    write_file("topics/en/milk.md", other, strlen(other));
    load_again(cache);
    ck_assert_uint_ne(kept_as(cache), first);
}
END_TEST

/* Changes one byte of what is kept, or cuts it there. */
static void
damage(const char *cache, long at, bool is_cut)
{
    char path[128];
    FILE *file;
    int byte;

    snprintf(path, sizeof(path), "%s/kb", cache);
    file = fopen(path, "r+b");
    ck_assert_ptr_nonnull(file);
    ck_assert_int_eq(fseek(file, at, SEEK_SET), 0);
    byte = fgetc(file);
    ck_assert_int_eq(fseek(file, at, SEEK_SET), 0);
    ck_assert_int_ne(fputc(byte ^ 0x10, file), EOF);
    ck_assert_int_eq(fclose(file), 0);
    ck_assert_int_eq(is_cut ? truncate(path, at) : 0, 0);
}

/* In the digest of the content, in that of the program, in the head, in the middle. */
START_TEST(what_is_kept_is_not_believed_when_damaged)
{
    static const long places[] = {3, CONTENT_DIGEST_LENGTH + 3, 2 * CONTENT_DIGEST_LENGTH + 9,
                                  20000};
    char cache[64];
    ino_t before;

    snprintf(cache, sizeof(cache), "%s/cache", folder);
    load_again(NULL);
    before = kept_as(cache);
    damage(cache, places[_i / 2], _i % 2 == 1);
    load_again(cache);
    ck_assert_str_eq(
        kb_search_topics(kb, workspace, "where is the milk", LANGUAGE_EN).best[0].topic->id,
        "milk");
    ck_assert_uint_ne(kept_as(cache), before); /* it was built again */
}
END_TEST

START_TEST(what_others_may_write_is_not_believed)
{
    char cache[64], path[128];
    ino_t before;

    snprintf(cache, sizeof(cache), "%s/cache", folder);
    snprintf(path, sizeof(path), "%s/kb", cache);
    load_again(NULL);
    before = kept_as(cache);
    load_again(cache);
    ck_assert_uint_eq(kept_as(cache), before);
    ck_assert_int_eq(chmod(path, 0666), 0);
    load_again(cache);
    ck_assert_uint_ne(kept_as(cache), before); /* it was built again */
}
END_TEST

START_TEST(what_is_kept_is_its_folder_s_owner_s)
{
    enum { SOMEBODY = 4711 };
    char cache[64], path[128];
    struct stat is;

    snprintf(cache, sizeof(cache), "%s/cache", folder);
    ck_assert_int_eq(mkdir(cache, 0700), 0);
    if (geteuid() == 0) { /* nobody else can give it away */
        ck_assert_int_eq(chown(cache, SOMEBODY, SOMEBODY), 0);
    }
    load_again(NULL);
    (void)kept_as(cache);
    snprintf(path, sizeof(path), "%s/kb", cache);
    ck_assert_int_eq(stat(path, &is), 0);
    ck_assert_uint_eq(is.st_uid, geteuid() == 0 ? SOMEBODY : geteuid());
}
END_TEST

START_TEST(a_cache_folder_that_cannot_be_made_is_named)
{
    struct fault fault;

    load_again(NULL);
    ck_assert_int_eq(kb_keep(kb, "/dev/null/cache", &fault), -1);
    ck_assert_ptr_nonnull(strstr(fault.text, "/dev/null/cache: cannot be made"));
}
END_TEST

START_TEST(what_editors_leave_behind_and_other_folders_do_not_count)
{
    char digest[CONTENT_DIGEST_LENGTH + 1];

    ck_assert_int_eq(kb_load(folder, NULL, &kb, &faults), 0);
    strcpy(digest, kb_digest(kb));
    kb_free(kb);
    kb = NULL;
    write_file("topics/en/milk.md~", "old", 3);
    write_file("topics/en/.milk.md.swp", "x", 1);
    write_file("reader/code.c", "x", 1);
    ck_assert_int_eq(kb_load(folder, NULL, &kb, &faults), 0);
    ck_assert_str_eq(kb_digest(kb), digest);
}
END_TEST

START_TEST(a_folder_that_is_not_there_is_named)
{
    ck_assert_int_eq(kb_load("/tmp/kb_load_test_none", NULL, &kb, &faults), -1);
    ck_assert(has_fault("/tmp/kb_load_test_none: cannot be opened: No such file"));
}
END_TEST

START_TEST(a_huge_file_is_refused)
{
    size_t length = CONTENT_FILE_BYTES_MAX + 1;
    char *text = malloc(length);

    memset(text, 'x', length);
    write_file("topics/en/huge.md", text, length);
    free(text);
    ck_assert_int_eq(kb_load(folder, NULL, &kb, &faults), -1);
    ck_assert(has_fault("topics/en/huge.md: larger than 1048576 bytes"));
}
END_TEST

START_TEST(too_many_files_are_refused_once)
{
    char name[64];
    int i;

    for (i = 0; i < CONTENT_FILES_MAX; i++) {
        snprintf(name, sizeof(name), "topics/en/t%d.md", i);
        write_file(name, "", 0);
    }
    ck_assert_int_eq(kb_load(folder, NULL, &kb, &faults), -1);
    ck_assert_uint_eq(faults.count, 1);
    ck_assert(has_fault("more than 2000 files"));
}
END_TEST

START_TEST(more_signs_than_a_language_may_have_are_refused)
{
    static const char text[] =
        SIGN("Odd tea", "clinical", "odd tea") "We will call.\n\n## Said as\n\n- tea is odd\n";
    char name[64];
    int i;

    for (i = 0; i < 128; i++) {
        snprintf(name, sizeof(name), "signs/en/odd-%d.md", i);
        write_file(name, text, strlen(text));
    }
    ck_assert_int_eq(kb_load(folder, NULL, &kb, &faults), -1);
    ck_assert(has_fault("one sign more than the 127 that a language may have"));
}
END_TEST

START_TEST(what_is_no_file_is_refused_and_not_waited_for)
{
    char path[256];

    snprintf(path, sizeof(path), "%s/topics/en/pipe.md", folder);
    ck_assert_int_eq(mkfifo(path, 0600), 0);
    ck_assert_int_eq(kb_load(folder, NULL, &kb, &faults), -1);
    ck_assert(has_fault("topics/en/pipe.md: not a file"));
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("kb_load");
    TCase *memory = tcase_create("memory"), *disk = tcase_create("disk");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(memory, begin, end);
    tcase_add_test(memory, a_sound_kb_answers);
    tcase_add_test(memory, signs_of_all_languages_are_tried_gravest_first_each_once);
    tcase_add_test(memory, a_sign_at_the_end_of_a_very_long_text_is_found);
    tcase_add_loop_test(memory, an_unsound_kb_is_refused, 0, sizeof(unsound) / sizeof(unsound[0]));
    tcase_add_test(memory, the_digest_is_blake2b);
    tcase_add_test(memory, the_digest_tells_names_and_bytes_apart);
    tcase_add_checked_fixture(disk, begin_folder, end_folder);
    tcase_set_timeout(disk, 60);
    tcase_add_test(disk, a_folder_loads_as_its_files_do_in_memory);
    tcase_add_test(disk, what_is_kept_serves_the_same_content_and_no_other);
    tcase_add_loop_test(disk, what_is_kept_is_not_believed_when_damaged, 0, 8);
    tcase_add_test(disk, what_others_may_write_is_not_believed);
    tcase_add_test(disk, what_is_kept_is_its_folder_s_owner_s);
    tcase_add_test(disk, a_cache_folder_that_cannot_be_made_is_named);
    tcase_add_test(disk, what_editors_leave_behind_and_other_folders_do_not_count);
    tcase_add_test(disk, a_folder_that_is_not_there_is_named);
    tcase_add_test(disk, a_huge_file_is_refused);
    tcase_add_test(disk, too_many_files_are_refused_once);
    tcase_add_test(disk, more_signs_than_a_language_may_have_are_refused);
    tcase_add_test(disk, what_is_no_file_is_refused_and_not_waited_for);
    suite_add_tcase(suite, memory);
    suite_add_tcase(suite, disk);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
