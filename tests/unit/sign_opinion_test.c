/*
 * The second opinion, on an invented sign learnt from a few whole texts: what is like them fires,
 * what is like harmless ones does not, and without whole texts there is none.
 */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "image.h"
#include "memory.h"
#include "sign_match.h"

static void *arena;
static struct workspace *workspace;
static struct faults faults;
static struct fault fault;

static const char *const whole_texts[] = {"the kettle tipped over and scalded my hand",
                                          "hot water all over my arm, skin is peeling",
                                          "scalded, skin coming off, what now",
                                          "boiling tea went down his leg and it blisters",
                                          "her wrist is red raw from the hot pot",
                                          "the soup spilled and my foot is scalded badly",
                                          "big blisters on my palm after the kettle",
                                          "skin on his arm is blistered from boiling water",
                                          "poured boiling water on my knee by mistake",
                                          "grandson pulled the teapot, his chest is scalded"};

static const char *const harmless_texts[] = {
    "how do i boil water here",       "the kettle is red, is that the right one",
    "is there tea in the cupboard",   "where does the teapot go",
    "my hand cannot reach the shelf", "what is the soup today",
    "is the hot water on all night",  "the pot is missing its lid",
    "where is the big teapot kept",   "is the water in the kettle hot yet"};

/* From surely scalded to hardly. */
static const char *const unlearnt_texts[] = {"boiling water scalded my hand, skin is peeling",
                                             "the kettle scalded my arm",
                                             "hot tea on my leg",
                                             "spilled soup on my foot and the skin blisters",
                                             "my wrist is red",
                                             "the pot is hot and my palm is red",
                                             "is my hand scalded",
                                             "water over my knee",
                                             "teapot fell on his foot",
                                             "tipped the kettle"};

static void
begin(void)
{
    arena = talloc_new(NULL);
    workspace = workspace_new();
}

static void
end(void)
{
    faults_release(&faults);
    workspace_free(workspace);
    talloc_free(arena);
}

static struct sign_index *
make(bool has_whole_texts)
{
    static const char *const said_as[] = {"third degree"};
    static const int line = 10;
    struct sign_file *file = memory_new(arena, struct sign_file);
    struct sign_index *made = sign_index_new(arena, LANGUAGE_EN, NULL, NULL);
    size_t i;

    file->sign = (struct sign){.id = "scald",
                               .level = SIGN_EMERGENCY,
                               .file = "signs/en/scald.md",
                               .said_as = said_as,
                               .said_as_count = 1};
    file->said_as_lines = file->whole_text_lines = &line;
    if (has_whole_texts) {
        file->whole_texts = whole_texts;
        file->whole_text_count = sizeof(whole_texts) / sizeof(whole_texts[0]);
        file->harmless_texts = harmless_texts;
        file->harmless_text_count = sizeof(harmless_texts) / sizeof(harmless_texts[0]);
    }
    sign_index_add(made, workspace, file, &file->sign, &faults);
    for (i = 0; i < sizeof(harmless_texts) / sizeof(harmless_texts[0]); i++) {
        sign_index_ordinary(made, harmless_texts[i]);
    }
    ck_assert_int_eq(sign_index_close(made, workspace, NULL, &faults), 0);
    return made;
}

/* What fires on a text; NULL if nothing does. */
static const char *
nearest(const struct sign_index *made, const char *text, struct sign_match *match)
{
    return sign_index_find(made, workspace, words_read(arena, NULL, text, LANGUAGE_EN), false,
                           match, 1) == 1
               ? match->phrase
               : NULL;
}

START_TEST(a_text_like_a_whole_one_fires_and_names_it)
{
    const struct sign_index *made = make(true);
    struct sign_match match;
    const char *line = nearest(made, "the boiling kettle scalded his arm, skin blistered", &match);

    ck_assert_ptr_nonnull(line);
    ck_assert_str_eq(match.sign->id, "scald");
    ck_assert_msg(strstr(line, "arm") != NULL || strstr(line, "scalded") != NULL, "%s", line);
}
END_TEST

START_TEST(more_is_asked_where_a_topic_is_surely_asked_for)
{
    const struct sign_index *made = make(true);
    int plain = 0, asked = 0;
    struct sign_match match;
    size_t i;

    for (i = 0; i < sizeof(unlearnt_texts) / sizeof(unlearnt_texts[0]); i++) {
        const struct words words = words_read(arena, NULL, unlearnt_texts[i], LANGUAGE_EN);
        const bool fires = sign_index_find(made, workspace, words, false, &match, 1) > 0;
        const bool fires_asked = sign_index_find(made, workspace, words, true, &match, 1) > 0;

        ck_assert_msg(fires || !fires_asked, "%s", unlearnt_texts[i]);
        plain += fires;
        asked += fires_asked;
    }
    ck_assert_int_gt(plain, asked);
    ck_assert_int_gt(asked, 0);
}
END_TEST

START_TEST(what_was_learnt_is_kept)
{
    static const char text[] = "the boiling kettle scalded his arm, skin blistered";
    struct sign_index *made = make(true), *copy = made;
    struct image *image = image_new(arena, &fault);
    struct sign_match first, second;
    const char *line = nearest(made, text, &first);

    sign_index_image(image, &copy, &(struct sign_image){.signs = first.sign, .copies = first.sign});
    ck_assert_ptr_nonnull(line);
    ck_assert_str_eq(nearest(copy, text, &second), line);
    ck_assert_uint_eq(first.start, second.start);
    ck_assert_uint_eq(first.end, second.end);
}
END_TEST

START_TEST(a_text_like_a_harmless_one_does_not)
{
    const struct sign_index *made = make(true);
    struct sign_match match;
    size_t i;

    for (i = 0; i < sizeof(harmless_texts) / sizeof(harmless_texts[0]); i++) {
        ck_assert_msg(nearest(made, harmless_texts[i], &match) == NULL, "%s", harmless_texts[i]);
    }
    ck_assert_ptr_null(nearest(made, "where is the teapot and is the water hot", &match));
    ck_assert_ptr_null(nearest(made, "zyx wvu tsr", &match));
    ck_assert_ptr_null(nearest(made, "", &match));
}
END_TEST

START_TEST(a_grave_sentence_is_found_in_a_friendly_page_and_its_bytes_are_told)
{
    static const char text[] =
        "Good evening and thanks for the tea. Is there soup today? The lid of the pot is missing. "
        "Boiling water scalded my hand, skin is peeling. Where does the teapot go? See you soon.";
    const struct sign_index *made = make(true);
    struct sign_match match;

    ck_assert_ptr_nonnull(nearest(made, text, &match));
    ck_assert_ptr_nonnull(strstr(text + match.start, "scalded"));
    ck_assert_uint_le(match.start, (size_t)(strstr(text, "scalded") - text));
    ck_assert_uint_ge(match.end, (size_t)(strstr(text, "scalded") - text));
}
END_TEST

START_TEST(joining_texts_takes_nothing_away)
{
    static const char *const others[] = {"how do i boil water here", "is there tea", "thanks"};
    const struct sign_index *made = make(true);
    struct sign_match match;
    size_t i, k;

    for (i = 0; i < sizeof(whole_texts) / sizeof(whole_texts[0]); i++) {
        for (k = 0; k < 3 && nearest(made, whole_texts[i], &match) != NULL; k++) {
            ck_assert_ptr_nonnull(
                nearest(made, memory_format(arena, "%s\n%s", others[k], whole_texts[i]), &match));
            ck_assert_ptr_nonnull(
                nearest(made, memory_format(arena, "%s\n%s", whole_texts[i], others[k]), &match));
        }
    }
}
END_TEST

START_TEST(without_whole_texts_only_the_phrases_fire)
{
    const struct sign_index *made = make(false);
    struct sign_match match;

    ck_assert_ptr_null(nearest(made, whole_texts[0], &match));
    ck_assert_ptr_nonnull(nearest(made, "third degree", &match));
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("sign_opinion");
    TCase *tests = tcase_create("sign_opinion");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, begin, end);
    tcase_add_test(tests, a_text_like_a_whole_one_fires_and_names_it);
    tcase_add_test(tests, more_is_asked_where_a_topic_is_surely_asked_for);
    tcase_add_test(tests, what_was_learnt_is_kept);
    tcase_add_test(tests, a_text_like_a_harmless_one_does_not);
    tcase_add_test(tests, a_grave_sentence_is_found_in_a_friendly_page_and_its_bytes_are_told);
    tcase_add_test(tests, joining_texts_takes_nothing_away);
    tcase_add_test(tests, without_whole_texts_only_the_phrases_fire);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
