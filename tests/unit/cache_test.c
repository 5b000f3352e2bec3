/* What is kept of a knowledge base from one start to the next, and what of that is believed. */
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <glib.h>

#include "content.h"
#include "kb.h"
#include "memory.h"
#include "small_kb.h"

static struct kb *kb;
static struct workspace *workspace;

static void
begin(void)
{
    workspace = workspace_new();
    small_kb_lay();
}

static void
end(void)
{
    small_kb_remove();
    kb_free(kb);
    workspace_free(workspace);
}

static void
load_again(const char *cache)
{
    struct faults faults = {0};

    kb_free(kb);
    kb = NULL;
    ck_assert_int_eq(kb_load(small_kb_folder, cache, &kb, &faults), 0);
}

/* The file's number in the cache folder. */
static ino_t
file_of(const char *cache, const char *name)
{
    char path[128];
    struct stat is;

    snprintf(path, sizeof(path), "%s/%s", cache, name);
    ck_assert_int_eq(stat(path, &is), 0);
    return is.st_ino;
}

static ino_t
kept_as(const char *cache)
{
    struct fault fault;

    ck_assert_int_eq(kb_keep(kb, cache, KEPT_LIVE, &fault), 0);
    return file_of(cache, "kb");
}

static ino_t
checked_as(const char *cache)
{
    struct fault fault;

    ck_assert_int_eq(kb_keep(kb, cache, KEPT_CHECKED, &fault), 0);
    return file_of(cache, "kb-checked");
}

START_TEST(what_is_kept_serves_the_same_content_and_no_other)
{
    char cache[64];
    const char *other = "# Milk\n\nAll gone.\n\n## Asked as\n\n- is milk left\n";
    struct topic_search built, kept;
    ino_t first;

    snprintf(cache, sizeof(cache), "%s/cache", small_kb_folder);
    load_again(cache); /* which is not there yet */
    built = kb_search_topics(kb, workspace, "wheres the milk then", LANGUAGE_EN);
    first = kept_as(cache);
    load_again(cache);
    kept = kb_search_topics(kb, workspace, "wheres the milk then", LANGUAGE_EN);
    ck_assert_str_eq(kept.best[0].topic->id, "milk");
    ck_assert_int_eq(kept.best[0].score, built.best[0].score);
    ck_assert_uint_eq(kept_as(cache), first); /* it came from there: nothing is written */
    small_kb_write("topics/en/milk.md", other, strlen(other));
    load_again(cache);
    ck_assert_uint_ne(kept_as(cache), first);
}
END_TEST

START_TEST(what_is_only_checked_is_kept_beside_what_is_live)
{
    char cache[64];
    const char *draft = "# Milk\n\nSome is left.\n\n## Asked as\n\n- is milk left\n";
    ino_t live, checked;

    snprintf(cache, sizeof(cache), "%s/cache", small_kb_folder);
    load_again(cache);
    live = kept_as(cache);
    small_kb_write("topics/en/milk.md", draft, strlen(draft));
    load_again(cache);
    checked = checked_as(cache);
    ck_assert_uint_eq(file_of(cache, "kb"), live);
    load_again(cache);
    ck_assert_uint_eq(checked_as(cache), checked); /* it came from there: nothing is written */
    ck_assert_uint_ne(kept_as(cache), live);       /* it went live */
    ck_assert_uint_eq(file_of(cache, "kb-checked"), checked);
    live = kept_as(cache);
    load_again(cache);
    ck_assert_uint_eq(kept_as(cache), live);
    ck_assert_str_eq(kb_topic(kb, "milk", LANGUAGE_EN)->answer, "Some is left.");
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

    snprintf(cache, sizeof(cache), "%s/cache", small_kb_folder);
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

    snprintf(cache, sizeof(cache), "%s/cache", small_kb_folder);
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

START_TEST(a_folder_that_others_may_write_is_not_believed_nor_written)
{
    static const mode_t modes[] = {0720, 0702, 01777};
    char cache[64];
    struct fault fault;
    ino_t before;

    snprintf(cache, sizeof(cache), "%s/cache", small_kb_folder);
    load_again(NULL);
    before = kept_as(cache);
    ck_assert_int_eq(chmod(cache, modes[_i]), 0);
    load_again(cache);
    ck_assert_int_eq(kb_keep(kb, cache, KEPT_LIVE, &fault), -1);
    ck_assert_ptr_nonnull(strstr(fault.text, "others may write it; chmod go-w"));
    ck_assert_int_eq(chmod(cache, 0750), 0);
    ck_assert_uint_eq(file_of(cache, "kb"), before);
    ck_assert_uint_ne(kept_as(cache), before); /* it was built again */
}
END_TEST

START_TEST(no_link_is_followed_to_what_is_kept)
{
    char cache[64], link[64], slashed[80], file[80], other[80];
    struct fault fault;
    ino_t before;

    snprintf(cache, sizeof(cache), "%s/cache", small_kb_folder);
    snprintf(link, sizeof(link), "%s/link", small_kb_folder);
    snprintf(file, sizeof(file), "%s/kb", cache);
    snprintf(other, sizeof(other), "%s/other", cache);
    load_again(NULL);
    before = kept_as(cache);
    ck_assert_int_eq(symlink(cache, link), 0);
    load_again(link);
    ck_assert_int_eq(kb_keep(kb, link, KEPT_LIVE, &fault), -1);
    ck_assert_ptr_nonnull(strstr(fault.text, "/link: is no folder, or a link to one"));
    snprintf(slashed, sizeof(slashed), "%s//", link);
    load_again(slashed);
    ck_assert_int_eq(kb_keep(kb, slashed, KEPT_LIVE, &fault), -1);
    ck_assert_ptr_nonnull(strstr(fault.text, "is no folder, or a link to one"));
    ck_assert_uint_eq(file_of(cache, "kb"), before);
    ck_assert_int_eq(rename(file, other), 0);
    ck_assert_int_eq(symlink("other", file), 0);
    load_again(cache);
    ck_assert_uint_ne(kept_as(cache), before); /* it was built again, in the link's place */
    ck_assert_uint_eq(file_of(cache, "other"), before);
    ck_assert_int_eq(unlink(link), 0);
}
END_TEST

START_TEST(what_is_kept_is_its_folder_s_owner_s)
{
    enum { SOMEBODY = 4711 };
    char cache[64], path[128];
    struct stat is;

    snprintf(cache, sizeof(cache), "%s/cache", small_kb_folder);
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
    ck_assert_int_eq(kb_keep(kb, "/dev/null/cache", KEPT_LIVE, &fault), -1);
    ck_assert_ptr_nonnull(strstr(fault.text, "/dev/null/cache: cannot be made"));
}
END_TEST

/* ---- What two runs keep ---------------------------------------------------------------------- */

/* Of each kind of file enough for all that is built of it, and no more: that takes seconds. */
static bool
is_wanted(const char *name, size_t at)
{
    bool is_sign = strncmp(name, "signs/", 6) == 0, is_topic = strncmp(name, "topics/", 7) == 0;

    return strstr(name, "/reading.md") != NULL || strstr(name, "/low-reading.md") != NULL ||
           ((!is_sign || at % 12 == 0) && (!is_topic || at % 15 == 0));
}

/* Lists of words and texts may end after any line; nothing else may. */
static size_t
shortened(const struct content_file *file)
{
    enum { ENOUGH_BYTES = 4000 };
    bool is_list = strncmp(file->name, "words/", 6) == 0 && strstr(file->name, "-classes") == NULL;
    size_t length = file->length;

    while (is_list && length > 0 && (length > ENOUGH_BYTES || file->bytes[length - 1] != '\n')) {
        length--;
    }
    return length;
}

/* A list without the head line that names topics, which may not be among the wanted. */
static void
drop_head(struct content_file *file)
{
    static const char head[] = "\nTopics:";
    const char *begin = strncmp(file->name, "words/", 6) == 0
                            ? g_strstr_len(file->bytes, (gssize)file->length, head)
                            : NULL;
    const char *end;

    if (begin != NULL) {
        end = memchr(begin + 1, '\n', file->length - (size_t)(begin + 1 - file->bytes));
        file->length -= (size_t)(end - file->bytes);
        file->bytes = end;
    }
}

/* Keeps a part of the shipped content, built anew; says why if it cannot. */
static bool
keep_some(const char *in)
{
    void *arena = memory_must(talloc_new(NULL));
    struct content content, some = {0};
    struct faults faults = {0};
    struct content_file *files;
    struct fault fault = {""};
    struct kb *built = NULL;
    bool is_kept = false;
    size_t i;

    if (content_load(arena, memory_format(arena, "%s/kb", getenv("SOURCE_ROOT")), &content,
                     &faults) != 0) {
        content.count = 0;
    }
    some.files = files = memory_array(arena, struct content_file, content.count);
    for (i = 0; i < content.count; i++) {
        if (is_wanted(content.files[i].name, i)) {
            files[some.count] = content.files[i];
            drop_head(&files[some.count]);
            files[some.count].length = shortened(&files[some.count]);
            some.count++;
        }
    }
    content_digest(&some, some.digest);
    is_kept = kb_read(&some, &built, &faults) == 0 && kb_keep(built, in, KEPT_LIVE, &fault) == 0;
    if (!is_kept) {
        fprintf(stderr, "%s\n", faults.count == 0 ? fault.text : faults.list[0].text);
    }
    faults_release(&faults);
    kb_free(built);
    talloc_free(arena);
    return is_kept;
}

/* Has another run of this program do so. */
static void
keep_in_another_run(char *in)
{
    char program[] = "/proc/self/exe";
    char *arguments[] = {program, in, NULL};
    char **variables = g_environ_setenv(g_get_environ(), "ASAN_OPTIONS", "", TRUE);
    int status = -1;

    ck_assert(g_spawn_sync(NULL, arguments, variables, G_SPAWN_DEFAULT, NULL, NULL, NULL, NULL,
                           &status, NULL));
    ck_assert_int_eq(status, 0);
    g_strfreev(variables);
}

/*
 * In the other run all lay elsewhere, the program too, and new memory was full of other bytes
 * (tests/meson.build). A pointer that was copied as bytes would differ, and so would a gap that
 * nobody cleared.
 */
START_TEST(two_runs_keep_the_same_bytes)
{
    char *here_in = g_build_filename(small_kb_folder, "here", NULL);
    char *there_in = g_build_filename(small_kb_folder, "there", NULL);
    char *here_file = g_build_filename(here_in, "kb", NULL);
    char *there_file = g_build_filename(there_in, "kb", NULL);
    size_t here_length, there_length, at = 0;
    char *here, *there;

    keep_in_another_run(there_in);
    ck_assert(keep_some(here_in));
    ck_assert(g_file_get_contents(here_file, &here, &here_length, NULL));
    ck_assert(g_file_get_contents(there_file, &there, &there_length, NULL));
    ck_assert_uint_eq(here_length, there_length);
    ck_assert_uint_gt(here_length, 1024 * 1024);
    while (at < here_length && here[at] == there[at]) {
        at++;
    }
    ck_assert_msg(at == here_length, "they differ from byte %zu of %zu on", at, here_length);
    g_free(here);
    g_free(there);
    g_free(here_file);
    g_free(there_file);
    g_free(here_in);
    g_free(there_in);
}
END_TEST

/* usage: cache_test [FOLDER]     with a folder it only keeps something there, as another run */
int
main(int argc, char **argv)
{
    Suite *suite;
    TCase *tests;
    SRunner *runner;
    int failed;

    if (argc == 2) {
        return keep_some(argv[1]) ? EXIT_SUCCESS : EXIT_FAILURE;
    }
    suite = suite_create("cache");
    tests = tcase_create("cache");
    runner = srunner_create(suite);
    tcase_add_checked_fixture(tests, begin, end);
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, what_is_kept_serves_the_same_content_and_no_other);
    tcase_add_test(tests, what_is_only_checked_is_kept_beside_what_is_live);
    tcase_add_loop_test(tests, what_is_kept_is_not_believed_when_damaged, 0, 8);
    tcase_add_test(tests, what_others_may_write_is_not_believed);
    tcase_add_loop_test(tests, a_folder_that_others_may_write_is_not_believed_nor_written, 0, 3);
    tcase_add_test(tests, no_link_is_followed_to_what_is_kept);
    tcase_add_test(tests, what_is_kept_is_its_folder_s_owner_s);
    tcase_add_test(tests, a_cache_folder_that_cannot_be_made_is_named);
    tcase_add_test(tests, two_runs_keep_the_same_bytes);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
