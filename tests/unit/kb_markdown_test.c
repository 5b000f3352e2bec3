/* Content files: what a topic and a sign are read from, and what is said of a faulty one. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "content.h"
#include "markdown.h"
#include "memory.h"
#include "signs_read.h"
#include "topics.h"

static void *arena;
static struct faults faults;

static void
begin(void)
{
    arena = talloc_new(NULL);
}

static void
end(void)
{
    faults_release(&faults);
    talloc_free(arena);
}

static struct content_file
file_of(const char *name, const char *text)
{
    return (struct content_file){name, text, strlen(text)};
}

/* True if some fault holds all of `words`. */
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

static int
read_topic(const char *text, struct topic *topic)
{
    struct content_file file = file_of("topics/en/kettle.md", text);

    return topic_read(arena, &file, "kettle", LANGUAGE_EN, topic, &faults);
}

static int
read_sign(const char *id, const char *text, struct sign_file *sign)
{
    struct content_file file = file_of("signs/en/x.md", text);

    return sign_read(arena, &file, id, LANGUAGE_EN, sign, &faults);
}

#define TITLE "# Kettle\n\n"
#define ANSWER "Fill the kettle,\nthen call {phone}.\n\n"
#define ASKED "## Asked as\n\n- how do i boil\n- kettle how\n\n"

START_TEST(a_topic_is_read_whole)
{
    struct topic topic;

    ck_assert_int_eq(read_topic(TITLE ANSWER ASKED
                                "## Only if\n\n- mode pulse\n- unit wren\n\n"
                                "## Handout\n\nLong *text*.\n\n### Part\n\nMore.\n\n"
                                "## Sources\n\n- a book\n\n"
                                "## Approved\n\n- A. Name, nurse, 2026-11-30\n",
                                &topic),
                     0);
    ck_assert_str_eq(topic.id, "kettle");
    ck_assert_str_eq(topic.title, "Kettle");
    ck_assert_str_eq(topic.answer, "Fill the kettle, then call {phone}.");
    ck_assert_int_eq(topic.answer_line, 3);
    ck_assert_uint_eq(topic.asked_as_count, 2);
    ck_assert_str_eq(topic.asked_as[1], "kettle how");
    ck_assert_uint_eq(topic.only_if_count, 2);
    ck_assert_str_eq(topic_condition_unit(topic.only_if[1]), "wren");
    ck_assert_str_eq(topic.handout, "Long *text*.\n\n### Part\n\nMore.");
    ck_assert(topic.approved);
}
END_TEST

START_TEST(not_yet_and_no_section_are_not_approved)
{
    struct topic topic;

    ck_assert_int_eq(read_topic(TITLE ANSWER ASKED "## Approved\n\n- not yet\n", &topic), 0);
    ck_assert(!topic.approved);
    ck_assert_int_eq(read_topic(TITLE ANSWER ASKED, &topic), 0);
    ck_assert(!topic.approved);
}
END_TEST

/* Each faulty topic, and words that must be in what is said of it. */
static const struct {
    const char *text, *fault;
} faulty_topics[] = {
    {ANSWER ASKED, "title"},
    {TITLE ASKED, "answer"},
    {TITLE ANSWER, "Asked as"},
    {TITLE "Call {fone}.\n\n" ASKED, "kettle.md:3: {fone} is no placeholder"},
    {TITLE "Line one.\nIt is due {due}.\n\n" ASKED,
     "kettle.md:4: {due} is not known for a stranger"},
    {TITLE "Due {due|as {place|told}}.\n\n" ASKED, "{place} stands in the words for a stranger"},
    {TITLE "Due {due|soon.\n\n" ASKED, "brace without its partner"},
    {TITLE "Due soon}.\n\n" ASKED, "brace without its partner"},
    {TITLE "Use *force*.\n\n" ASKED, "kettle.md:3: a text message shows plain paragraphs"},
    {TITLE "- a list\n\n" ASKED, "plain paragraphs"},
    {TITLE ANSWER ASKED "## Asked like\n\n- x\n", "Asked like: no such section"},
    {TITLE ANSWER ASKED ASKED, "there twice"},
    {TITLE ANSWER "## Asked as\n\n- same\n- other\n- Same\n", "kettle.md:10: Asked as: \"Same\""},
    {TITLE ANSWER "## Asked as\n\nno list\n", "more than a list"},
    {TITLE ANSWER ASKED "## Only if\n\n- mode fast\n", "\"mode fast\" is no condition"},
    {TITLE ANSWER ASKED "## Approved\n\n- ok\n", "\"ok\" is no approval"},
    {TITLE ANSWER ASKED "## Approved\n\n- N, nurse, 2026-13-01\n", "is no approval"},
    {TITLE ANSWER ASKED "## Handout\n\nfine\n\n{fone}\n", "kettle.md:15: {fone}"},
    {TITLE TITLE ANSWER ASKED, "second title"},
    {TITLE "bad \xff byte\n\n" ASKED, "kettle.md:3: not UTF-8"},
    {TITLE "bell \x07\n\n" ASKED, "kettle.md:3: control character U+0007"},
};

START_TEST(a_faulty_topic_is_refused_with_its_place)
{
    struct topic topic;

    ck_assert_int_eq(read_topic(faulty_topics[_i].text, &topic), -1);
    ck_assert_msg(has_fault(faulty_topics[_i].fault), "wanted \"%s\", got \"%s\"",
                  faulty_topics[_i].fault, faults.count > 0 ? faults.list[0].text : "nothing");
}
END_TEST

START_TEST(all_faults_of_a_file_come_at_once)
{
    struct topic topic;

    ck_assert_int_eq(read_topic(TITLE "Call {fone} and {faxx}.\n\n## Bad\n", &topic), -1);
    ck_assert(has_fault("{fone}"));
    ck_assert(has_fault("{faxx}"));
    ck_assert(has_fault("Bad: no such section"));
    ck_assert(has_fault("Asked as: missing"));
}
END_TEST

START_TEST(windows_line_ends_and_byte_order_mark_change_nothing)
{
    struct topic topic;

    ck_assert_int_eq(read_topic("\xef\xbb\xbf# Kettle\r\n\r\nOne\r\ntwo.\r\n\r\n## Asked as\r\n\r\n"
                                "- a\r\n- b\r\n",
                                &topic),
                     0);
    ck_assert_str_eq(topic.title, "Kettle");
    ck_assert_str_eq(topic.answer, "One two.");
    ck_assert_uint_eq(topic.asked_as_count, 2);
    ck_assert_str_eq(topic.asked_as[0], "a");
}
END_TEST

START_TEST(a_line_without_end_is_refused)
{
    char *text = memory_copy(arena, TITLE);
    struct topic topic;
    int i;

    for (i = 0; i < 3000; i++) {
        memory_append(&text, "x");
    }
    memory_append(&text, "\n\n" ASKED);
    ck_assert_int_eq(read_topic(text, &topic), -1);
    ck_assert(has_fault("kettle.md:3: the line is longer than 2000 bytes"));
}
END_TEST

#define HEAD "# Bad tea\n\nLevel: emergency\nIn brief: bad tea\n\n"
#define REPLY "Call {emergency} now.\n\n"
#define SAID "## Said as\n\n- tea is bad\n\n"

START_TEST(a_sign_is_read_whole)
{
    struct sign_file sign;

    ck_assert_int_eq(
        read_sign("bad-tea", HEAD REPLY SAID "## Not meant by\n\n- not my cup of tea\n", &sign), 0);
    ck_assert_str_eq(sign.sign.id, "bad-tea");
    ck_assert_int_eq(sign.sign.level, SIGN_EMERGENCY);
    ck_assert_str_eq(sign.sign.in_brief, "bad tea");
    ck_assert_str_eq(sign.sign.reply, "Call {emergency} now.");
    ck_assert_int_eq(sign.sign.reply_line, 6);
    ck_assert_uint_eq(sign.sign.said_as_count, 1);
    ck_assert_uint_eq(sign.not_meant_by_count, 1);
    ck_assert_int_eq(sign.said_as_lines[0], 10);
}
END_TEST

static const struct {
    const char *id, *text, *fault;
} faulty_signs[] = {
    {"x", "# T\n\nLevel: loud\nIn brief: t\n\n" REPLY SAID, "no such level: loud"},
    {"x", "# T\n\nIn brief: t\n\n" REPLY SAID, "x.md:3: Level: missing"},
    {"x", "# T\n\nLevel: clinical\n\n" REPLY SAID, "In brief: missing"},
    {"x",
     "# T\n\nLevel: clinical\nIn brief: a far too long line for a text to staff at night\n\n" REPLY
         SAID,
     "In brief: too long"},
    {"x", HEAD SAID, "reply: missing"},
    {"x", HEAD REPLY, "Said as: missing"},
    {"x", HEAD "Dear {name|renter}, call.\n\n" SAID, "{name} may not be used here"},
    {"low-reading", HEAD REPLY SAID, "fires on an oxygen reading"},
};

START_TEST(a_faulty_sign_is_refused_with_its_place)
{
    struct sign_file sign;

    ck_assert_int_eq(read_sign(faulty_signs[_i].id, faulty_signs[_i].text, &sign), -1);
    ck_assert_msg(has_fault(faulty_signs[_i].fault), "wanted \"%s\", got \"%s\"",
                  faulty_signs[_i].fault, faults.count > 0 ? faults.list[0].text : "nothing");
}
END_TEST

START_TEST(a_sign_on_numbers_needs_no_phrases)
{
    struct sign_file sign;

    ck_assert_int_eq(read_sign("reading", HEAD REPLY, &sign), 0);
    ck_assert_uint_eq(sign.sign.said_as_count, 0);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("kb_markdown");
    TCase *tests = tcase_create("kb_markdown");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, begin, end);
    tcase_add_test(tests, a_topic_is_read_whole);
    tcase_add_test(tests, not_yet_and_no_section_are_not_approved);
    tcase_add_loop_test(tests, a_faulty_topic_is_refused_with_its_place, 0,
                        sizeof(faulty_topics) / sizeof(faulty_topics[0]));
    tcase_add_test(tests, all_faults_of_a_file_come_at_once);
    tcase_add_test(tests, windows_line_ends_and_byte_order_mark_change_nothing);
    tcase_add_test(tests, a_line_without_end_is_refused);
    tcase_add_test(tests, a_sign_is_read_whole);
    tcase_add_loop_test(tests, a_faulty_sign_is_refused_with_its_place, 0,
                        sizeof(faulty_signs) / sizeof(faulty_signs[0]));
    tcase_add_test(tests, a_sign_on_numbers_needs_no_phrases);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
