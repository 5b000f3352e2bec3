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
#include "small_kb.h"

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

/* Reads the sound kb from memory with one file put in, or in the place of the one of its name. */
static int
read_with(const char *name, const char *text)
{
    struct content_file files[SMALL_KB_COUNT + 1];
    struct content content = {.files = files};
    bool is_in = false;
    size_t i;

    for (i = 0; i < SMALL_KB_COUNT; i++) {
        bool is_same = name != NULL && strcmp(small_kb[i].name, name) == 0;
        const char *bytes = is_same ? text : small_kb[i].text;

        is_in = is_in || is_same;
        if (bytes != NULL) {
            files[content.count++] = (struct content_file){small_kb[i].name, bytes, strlen(bytes)};
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
    {"words/en-request.txt", "# wishes\nTopics: kettle, saucer\nbring me tea\n",
     "words/en-request.txt:2: Topics: no topic has the id saucer"},
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

static void
begin_folder(void)
{
    begin();
    small_kb_lay();
}

static void
end_folder(void)
{
    small_kb_remove();
    end();
}

START_TEST(a_folder_loads_as_its_files_do_in_memory)
{
    char digest[CONTENT_DIGEST_LENGTH + 1];

    ck_assert_int_eq(read_with(NULL, NULL), 0);
    strcpy(digest, kb_digest(kb));
    kb_free(kb);
    kb = NULL;
    ck_assert_int_eq(kb_load(small_kb_folder, NULL, &kb, &faults), 0);
    ck_assert_str_eq(kb_digest(kb), digest);
}
END_TEST

START_TEST(what_editors_leave_behind_and_other_folders_do_not_count)
{
    char digest[CONTENT_DIGEST_LENGTH + 1];

    ck_assert_int_eq(kb_load(small_kb_folder, NULL, &kb, &faults), 0);
    strcpy(digest, kb_digest(kb));
    kb_free(kb);
    kb = NULL;
    small_kb_write("topics/en/milk.md~", "old", 3);
    small_kb_write("topics/en/.milk.md.swp", "x", 1);
    small_kb_write("reader/code.c", "x", 1);
    ck_assert_int_eq(kb_load(small_kb_folder, NULL, &kb, &faults), 0);
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
    small_kb_write("topics/en/huge.md", text, length);
    free(text);
    ck_assert_int_eq(kb_load(small_kb_folder, NULL, &kb, &faults), -1);
    ck_assert(has_fault("topics/en/huge.md: larger than 1048576 bytes"));
}
END_TEST

START_TEST(too_many_files_are_refused_once)
{
    char name[64];
    int i;

    for (i = 0; i < CONTENT_FILES_MAX; i++) {
        snprintf(name, sizeof(name), "topics/en/t%d.md", i);
        small_kb_write(name, "", 0);
    }
    ck_assert_int_eq(kb_load(small_kb_folder, NULL, &kb, &faults), -1);
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
        small_kb_write(name, text, strlen(text));
    }
    ck_assert_int_eq(kb_load(small_kb_folder, NULL, &kb, &faults), -1);
    ck_assert(has_fault("one sign more than the 127 that a language may have"));
}
END_TEST

START_TEST(what_is_no_file_is_refused_and_not_waited_for)
{
    char path[256];

    snprintf(path, sizeof(path), "%s/topics/en/pipe.md", small_kb_folder);
    ck_assert_int_eq(mkfifo(path, 0600), 0);
    ck_assert_int_eq(kb_load(small_kb_folder, NULL, &kb, &faults), -1);
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
