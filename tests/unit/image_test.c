/* What is kept as it lies in memory: that it comes back whole, and that nothing else does. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "content.h"
#include "kb.h"
#include "kb_image.h"
#include "memory.h"

static void *arena;
static struct fault fault;

static void
begin(void)
{
    arena = talloc_new(NULL);
}

static void
end(void)
{
    talloc_free(arena);
}

/* ---- Any structs ---------------------------------------------------------------------------- */

struct leaf {
    const char *name;
    int number;
};

struct tree {
    struct leaf *leaves;
    size_t count;
    const struct leaf *best; /* one of them */
    const char *none;
};

/* A tree as bytes that may be changed, in memory that ends where they end. */
static char *
keep_tree(size_t *length)
{
    struct leaf leaves[] = {{"oak", 1}, {"beech", 2}, {"elm", 3}};
    struct tree tree = {leaves, 3, &leaves[1], NULL}, *copy = &tree;
    struct image *image = image_new(arena, &fault);
    const char *bytes;
    char *kept;
    size_t i;

    image_array(image, &copy, 1);
    image_array(image, &copy->leaves, copy->count);
    for (i = 0; i < copy->count; i++) {
        image_text(image, &copy->leaves[i].name);
    }
    image_same(image, &copy->best, copy->leaves + (copy->best - leaves));
    image_text(image, &copy->none);
    bytes = image_bytes(image, length, &fault);
    ck_assert_ptr_nonnull(bytes);
    kept = talloc_memdup(arena, bytes, (unsigned)*length);
    talloc_free(image);
    return kept;
}

START_TEST(pointers_come_back_to_what_they_pointed_at)
{
    size_t length;
    char *bytes = keep_tree(&length);
    const struct tree *tree = image_open(bytes, length, &fault);

    ck_assert_ptr_nonnull(tree);
    ck_assert_uint_eq(tree->count, 3);
    ck_assert_str_eq(tree->leaves[2].name, "elm");
    ck_assert_ptr_eq(tree->best, &tree->leaves[1]);
    ck_assert_str_eq(tree->best->name, "beech");
    ck_assert_ptr_null(tree->none);
}
END_TEST

START_TEST(damaged_bytes_are_refused)
{
    size_t length, i;
    char *bytes = keep_tree(&length);

    for (i = 0; i < length; i++) {
        char *damaged = talloc_memdup(arena, bytes, (unsigned)length);

        damaged[i] = (char)(damaged[i] ^ 0x10);
        ck_assert_ptr_null(image_open(damaged, length, &fault));
        ck_assert_str_ne(fault.text, "");
        talloc_free(damaged);
    }
}
END_TEST

START_TEST(bytes_that_are_cut_are_refused)
{
    size_t length, i;
    char *bytes = keep_tree(&length);

    for (i = 0; i < length; i++) {
        char *cut = talloc_memdup(arena, bytes, (unsigned)i + (i == 0));

        ck_assert_ptr_null(image_open(cut, i, &fault));
        talloc_free(cut);
    }
}
END_TEST

START_TEST(what_is_too_large_is_not_kept)
{
    enum { LARGE = 100 * 1024 * 1024 };
    struct image *image = image_new(arena, &fault);
    char *large = calloc(LARGE, 1), *one = large, *two = large, *three = large;
    size_t length;

    image_block(image, (void **)&one, LARGE);
    image_block(image, (void **)&two, LARGE);
    image_block(image, (void **)&three, LARGE);
    ck_assert_ptr_null(image_bytes(image, &length, &fault));
    ck_assert_ptr_nonnull(strstr(fault.text, "more than"));
    free(large);
}
END_TEST

/* ---- A knowledge base ------------------------------------------------------------------------ */

#define SIGN(title, level, brief) "# " title "\n\nLevel: " level "\nIn brief: " brief "\n\n"

/* Something of everything, in name order. */
static const struct {
    const char *name, *text;
} sound[] = {
    {"equipment/wren.json", "{\"name\":\"Wren\",\"battery\":{\"retirement_health\":80},"
                            "\"alarms\":[{\"shows\":\"E2\",\"meaning\":\"Filter "
                            "full.\",\"meaning_es\":\"Filtro lleno.\",\"oxygen_stops\":false}]}"},
    {"signs/en/bad-tea.md", SIGN("Bad tea", "emergency", "bad tea") //
     "Call {emergency} now.\n\n## Said as\n\n- [people] poisoned\n- taste / smell + almonds\n\n"
     "## Not meant by\n\n- [laughs] ...\n- poisoned & joke\n\n"
     "## Whole texts\n\n- my aunt drank the tea and now she shakes all over\n"
     "- the tea smelled of almonds and he fell down\n- dad shakes after his tea\n"
     "- she drank it and cannot stand\n- he fell over after the cup of tea\n\n"
     "## Harmless texts\n\n- the tea is nice\n- may I have more tea\n- my cup is empty\n"},
    {"signs/en/low-reading.md", SIGN("Low", "emergency", "low") "Call {emergency} now.\n"},
    {"signs/en/reading.md", SIGN("Reading", "clinical", "reading") "We will call.\n"},
    {"signs/es/bad-tea.md", SIGN("Malo", "emergency", "te malo") //
     "Llame al {emergency}.\n\n## Said as\n\n- te envenenado\n"},
    {"topics/en/kettle.md", "# Kettle\n\nFill it.\n\n## Asked as\n\n- how do i boil water\n"
                            "- is there a kettle\n\n## Only if\n\n- unit wren\n\n## Handout\n\n"
                            "Fill the kettle to the mark.\n"},
    {"topics/en/milk.md", "# Milk\n\nIn the fridge.\n\n## Asked as\n\n- where is the milk\n"
                          "- got milk\n"},
    {"words/en-classes.txt", "people = aunt, dad, mother in law\nlaughs = haha, lol\n"},
    {"words/en-elsewhere.txt", "who won the game\n"},
    {"words/en-harmless.txt", "good night to you all\n"},
    {"words/en-known.txt", "# right as spelt\nteal\n"},
    {"words/en-ordinary.txt", "teal\nthe\n"},
    {"words/en.txt", "u = you\nasap = as soon as possible\n"},
};
enum { SOUND_COUNT = sizeof(sound) / sizeof(sound[0]) };

static struct kb *
read_kb(void)
{
    struct content_file files[SOUND_COUNT];
    struct content content = {.files = files, .count = SOUND_COUNT};
    struct faults faults = {0};
    struct kb *kb = NULL;
    size_t i;

    for (i = 0; i < SOUND_COUNT; i++) {
        files[i] = (struct content_file){sound[i].name, sound[i].text, strlen(sound[i].text)};
    }
    ck_assert_msg(kb_read(&content, &kb, &faults) == 0, "%s",
                  faults.count == 0 ? "" : faults.list[0].text);
    return kb;
}

/* The kb as bytes; it is freed. */
static struct content_kept
keep_kb(struct kb *kb)
{
    struct image *image = image_new(arena, &fault);
    size_t length;
    const char *bytes = kb_image(kb, image, &length, &fault);
    struct content_kept kept = {.bytes = talloc_memdup(arena, bytes, (unsigned)length),
                                .length = length};

    talloc_free(image);
    kb_free(kb);
    return kept;
}

/* A pointer that a copy was left with would differ, for both are in memory at once. */
START_TEST(two_that_were_built_alike_give_the_same_bytes)
{
    struct kb *one = read_kb(), *other = read_kb();
    struct content_kept first = keep_kb(one), second = keep_kb(other);

    ck_assert_uint_eq(first.length, second.length);
    ck_assert_mem_eq(first.bytes, second.bytes, first.length);
}
END_TEST

START_TEST(what_comes_back_answers_as_what_was_built)
{
    static const char *const texts[] = {"where is the milk",        "hwo do i boil watr",
                                        "dad is poisoned",          "mother in law poisoned",
                                        "poisoned lol what a joke", "te envenenado",
                                        "smells of almonds",        "aunt shakes after the tea",
                                        "who won the game",         "u got milk asap plz kthx"};
    struct workspace *workspace = workspace_new();
    struct kb *built = read_kb(), *back = NULL;
    struct content_kept kept = keep_kb(read_kb());
    size_t i, k, count;

    ck_assert_int_eq(kb_of_image(&kept, &back, &fault), 0);
    ck_assert_str_eq(kb_digest(back), kb_digest(built));
    ck_assert_str_eq(kb_equipment(back, "wren")->alarms[0].meaning, "Filter full.");
    ck_assert_str_eq(kb_topic(back, "kettle", LANGUAGE_ES)->only_if[0], "unit wren");
    ck_assert_str_eq(kb_topic(back, "kettle", LANGUAGE_EN)->handout,
                     kb_topic(built, "kettle", LANGUAGE_EN)->handout);
    ck_assert_str_eq(kb_sign(back, "reading", LANGUAGE_ES)->reply, "We will call.");
    ck_assert(kb_is_ordinary(back, "teal", LANGUAGE_EN));
    for (i = 0; i < sizeof(texts) / sizeof(texts[0]); i++) {
        struct topic_search one = kb_search_topics(built, workspace, texts[i], LANGUAGE_EN);
        struct topic_search other = kb_search_topics(back, workspace, texts[i], LANGUAGE_EN);
        struct sign_match signs[8], same[8];

        ck_assert_int_eq(one.sureness, other.sureness);
        ck_assert_uint_eq(one.count, other.count);
        for (k = 0; k < one.count; k++) {
            ck_assert_str_eq(one.best[k].topic->id, other.best[k].topic->id);
            ck_assert_int_eq(one.best[k].score, other.best[k].score);
            ck_assert_str_eq(one.best[k].nearest, other.best[k].nearest);
        }
        count = kb_find_signs(built, workspace, texts[i], signs, 8);
        ck_assert_uint_eq(kb_find_signs(back, workspace, texts[i], same, 8), count);
        for (k = 0; k < count; k++) {
            ck_assert_str_eq(signs[k].sign->title, same[k].sign->title);
            ck_assert_str_eq(signs[k].phrase, same[k].phrase);
            ck_assert_uint_eq(signs[k].end, same[k].end);
        }
    }
    workspace_free(workspace);
    kb_free(built);
    kb_free(back);
}
END_TEST

START_TEST(a_kb_of_damaged_bytes_is_none)
{
    struct content_kept kept = keep_kb(read_kb());
    struct kb *back = NULL;

    kept.bytes[kept.length / 2] = (char)(kept.bytes[kept.length / 2] ^ 1);
    ck_assert_int_eq(kb_of_image(&kept, &back, &fault), -1);
    ck_assert_ptr_null(back);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("image");
    TCase *tests = tcase_create("image");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, begin, end);
    tcase_set_timeout(tests, 60);
    tcase_add_test(tests, pointers_come_back_to_what_they_pointed_at);
    tcase_add_test(tests, damaged_bytes_are_refused);
    tcase_add_test(tests, bytes_that_are_cut_are_refused);
    tcase_add_test(tests, what_is_too_large_is_not_kept);
    tcase_add_test(tests, two_that_were_built_alike_give_the_same_bytes);
    tcase_add_test(tests, what_comes_back_answers_as_what_was_built);
    tcase_add_test(tests, a_kb_of_damaged_bytes_is_none);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
