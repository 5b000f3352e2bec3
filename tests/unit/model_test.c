/* The model: what it finds, how sure it is, and what must not change that. */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "image.h"
#include "memory.h"
#include "model.h"
#include "vectors.h"

enum { CAR, RETURN, FILTER, LABELS, PER_LABEL = 8, ELSEWHERE = 6 };

static const char *const asked[LABELS][PER_LABEL] = {
    {"can i charge it in the car", "does it plug into the car lighter", "car charger for the unit",
     "will it run off the car outlet", "charging while driving in the car",
     "is there a cord for the car", "does the car socket charge the battery",
     "how do i plug it in in the car"},
    {"where do i return it", "how do i send it back", "return label for the box",
     "when do i have to return the unit", "can you pick it up when we return",
     "shipping it back to you", "where do i drop it off", "i want to send the unit back"},
    {"how do i clean the filter", "the filter is dusty", "wash the foam filter with soap",
     "how often do i clean the filter", "can i rinse the filter", "filter looks dirty",
     "where is the filter to clean", "do i vacuum the foam filter"},
};
static const char *const elsewhere[ELSEWHERE] = {
    "who won the game tonight",  "good pizza near the lodge", "tell me a joke",
    "is the museum open monday", "happy birthday grandpa",    "my phone is slow"};

static void *arena;
static struct workspace *workspace;
static struct model_phrase phrases[LABELS * PER_LABEL + ELSEWHERE];
static struct model_content content;
static struct model *model;

static void
start(void)
{
    size_t count = 0;
    int label, i;

    arena = talloc_new(NULL);
    workspace = workspace_new();
    for (label = 0; label < LABELS; label++) {
        for (i = 0; i < PER_LABEL; i++) {
            phrases[count++] = (struct model_phrase){.text = asked[label][i], .label = label};
        }
    }
    for (i = 0; i < ELSEWHERE; i++) {
        phrases[count++] = (struct model_phrase){.text = elsewhere[i], .label = MODEL_ELSEWHERE};
    }
    content = (struct model_content){
        .language = LANGUAGE_EN, .phrases = phrases, .phrase_count = count, .label_count = LABELS};
    model = model_build(arena, workspace, &content);
}

static void
end(void)
{
    workspace_free(workspace);
    talloc_free(arena);
}

static struct model_result
search(const char *text)
{
    return model_search(model, arena, workspace, text);
}

START_TEST(a_question_finds_its_label_and_the_nearest_phrase)
{
    struct model_result result = search("how can i charge this in our car");

    ck_assert_uint_eq(result.count, 3);
    ck_assert_int_eq(result.best[0].label, CAR);
    ck_assert_int_eq(phrases[result.best[0].phrase].label, CAR);
    ck_assert_str_eq(phrases[search("is the filter dusty").best[0].phrase].text,
                     "the filter is dusty");
}
END_TEST

START_TEST(the_offices_own_lines_are_sure)
{
    size_t i;

    for (i = 0; i < LABELS * PER_LABEL; i++) {
        struct model_result result = search(phrases[i].text);

        ck_assert_int_eq(result.best[0].label, phrases[i].label);
        ck_assert_int_eq(result.sureness, SURE);
        ck_assert_int_gt(result.best[0].score, 900);
    }
}
END_TEST

START_TEST(slips_of_the_finger_are_seen_through)
{
    ck_assert_int_eq(search("how do i claen the fliter").best[0].label, FILTER);
    ck_assert_int_eq(search("wher do i retrun it").best[0].label, RETURN);
}
END_TEST

START_TEST(scores_fall_and_lie_between_0_and_1000)
{
    struct model_result result = search("send the filter back in the car");
    size_t i;

    for (i = 0; i < result.count; i++) {
        ck_assert_int_ge(result.best[i].score, 0);
        ck_assert_int_le(result.best[i].score, 1000);
        ck_assert(i == 0 || result.best[i].score <= result.best[i - 1].score);
    }
}
END_TEST

START_TEST(a_known_way_of_asking_scores_above_a_text_from_elsewhere)
{
    ck_assert_int_gt(search("can i charge it in the car").best[0].score,
                     search("who won the game").best[0].score);
    ck_assert_int_ne(search("tell me a good joke").sureness, SURE);
}
END_TEST

START_TEST(a_text_without_a_known_word_finds_nothing)
{
    ck_assert_uint_eq(search("").count, 0);
    ck_assert_uint_eq(search("???").count, 0);
    ck_assert_int_eq(search("\xe6\xb0\xa7\xe6\xb0\x94").sureness, UNSURE);
}
END_TEST

/* Capitals, doubled blanks, trailing punctuation and dropped accents never change the answer. */
START_TEST(looks_alone_change_nothing)
{
    static const char *const twins[][2] = {
        {"can i charge it in the car", "CAN I CHARGE IT IN THE CAR"},
        {"where do i return it", "where  do  i   return it"},
        {"the filter is dusty", "the filter is dusty!!!..."},
        {"where do i drop it off", "wh\xc3\xa9re d\xc3\xb2 i dr\xc3\xb6p it off"},
    };
    size_t i;

    for (i = 0; i < sizeof(twins) / sizeof(twins[0]); i++) {
        struct model_result one = search(twins[i][0]), other = search(twins[i][1]);

        ck_assert_mem_eq(&one, &other, sizeof(one));
    }
}
END_TEST

START_TEST(a_text_from_elsewhere_sounds_so)
{
    ck_assert(search("who won the museum game").elsewhere);
    ck_assert(!search("can i charge the unit in our car").elsewhere);
    ck_assert(search("???").elsewhere);
}
END_TEST

START_TEST(numbers_alone_ask_nothing)
{
    ck_assert_uint_eq(search("2").count, 0);
    ck_assert_uint_eq(search("85% 3").count, 0);
}
END_TEST

START_TEST(a_text_of_which_the_label_says_no_word_is_never_sure)
{
    ck_assert_int_eq(search("aaaaaaaaaaaa").sureness, UNSURE);
    ck_assert_int_eq(search("xylophones chartreuse").sureness, UNSURE);
}
END_TEST

START_TEST(the_words_that_counted_are_named)
{
    const char *words[2] = {NULL, NULL};
    size_t count =
        model_words(model, arena, workspace, "so where do i clean the filter", FILTER, words, 2);

    ck_assert_uint_eq(count, 2);
    ck_assert(strcmp(words[0], "filter") == 0 || strcmp(words[0], "clean") == 0);
}
END_TEST

START_TEST(every_phrase_was_held_out_once)
{
    size_t count, right = 0, i;
    const struct model_held_out *held = model_held_out(model, &count);

    ck_assert_uint_eq(count, LABELS * PER_LABEL + ELSEWHERE);
    for (i = 0; i < LABELS * PER_LABEL; i++) {
        right += held[i].label == phrases[i].label;
    }
    ck_assert_uint_ge(right, 16); /* of 24; chance would be 8 */
}
END_TEST

/* A model as bytes, in `arena`. */
static char *
keep(struct model *kept, size_t *length)
{
    struct fault fault;
    struct image *image = image_new(arena, &fault);
    const char *bytes;

    model_image(image, &kept, &(struct model_content){.language = LANGUAGE_EN});
    bytes = image_bytes(image, length, &fault);
    return talloc_memdup(arena, bytes, (unsigned)*length);
}

START_TEST(a_kept_model_finds_the_same)
{
    static const char *const texts[] = {"car lighter", "send it bak", "vacuum the foam", "joke"};
    struct fault fault;
    size_t length, i;
    char *bytes = keep(model, &length);
    const struct model *back = image_open(bytes, length, &fault);

    for (i = 0; i < sizeof(texts) / sizeof(texts[0]); i++) {
        struct model_result one = search(texts[i]);
        struct model_result other = model_search(back, arena, workspace, texts[i]);

        ck_assert_mem_eq(&one, &other, sizeof(one));
    }
}
END_TEST

START_TEST(building_twice_gives_the_same_bytes)
{
    struct model *again =
        model_build(arena, workspace,
                    &(struct model_content){.language = LANGUAGE_EN,
                                            .phrases = phrases,
                                            .phrase_count = LABELS * PER_LABEL + ELSEWHERE,
                                            .label_count = LABELS});
    size_t one_length, other_length;
    char *one = keep(model, &one_length);
    char *other = keep(again, &other_length);

    ck_assert_uint_eq(one_length, other_length);
    ck_assert_mem_eq(one, other, one_length);
}
END_TEST

START_TEST(a_model_of_nothing_finds_nothing)
{
    struct model *empty =
        model_build(arena, workspace, &(struct model_content){.language = LANGUAGE_EN});

    ck_assert_uint_eq(model_search(empty, arena, workspace, "anything").count, 0);
}
END_TEST

/* Two words, car and filter, that point in different directions. */
START_TEST(vectors_are_read_and_refused_when_cut)
{
    const char words[] = "car\0filter";
    char bytes[16 + sizeof(words) + 2 * VECTORS_NUMBERS] = "hbwords1";
    float sum[VECTORS_NUMBERS] = {0};
    struct vectors *vectors = NULL;
    struct fault fault;

    bytes[8] = 2;
    bytes[12] = sizeof(words);
    memcpy(bytes + 16, words, sizeof(words));
    bytes[16 + sizeof(words)] = 100;
    bytes[16 + sizeof(words) + VECTORS_NUMBERS + 1] = -100;
    ck_assert_int_eq(vectors_read(arena, bytes, sizeof(bytes), &vectors, &fault), 0);
    vectors_add(vectors, "filter", sum);
    ck_assert_float_eq(sum[0], 0);
    ck_assert_float_lt(sum[1], 0);
    ck_assert_int_eq(vectors_read(arena, bytes, sizeof(bytes) - 1, &vectors, &fault), -1);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("model");
    TCase *tests = tcase_create("model");
    SRunner *runner;
    int failed;

    tcase_add_checked_fixture(tests, start, end);
    tcase_add_test(tests, a_question_finds_its_label_and_the_nearest_phrase);
    tcase_add_test(tests, the_offices_own_lines_are_sure);
    tcase_add_test(tests, slips_of_the_finger_are_seen_through);
    tcase_add_test(tests, scores_fall_and_lie_between_0_and_1000);
    tcase_add_test(tests, a_known_way_of_asking_scores_above_a_text_from_elsewhere);
    tcase_add_test(tests, a_text_without_a_known_word_finds_nothing);
    tcase_add_test(tests, looks_alone_change_nothing);
    tcase_add_test(tests, a_text_from_elsewhere_sounds_so);
    tcase_add_test(tests, numbers_alone_ask_nothing);
    tcase_add_test(tests, a_text_of_which_the_label_says_no_word_is_never_sure);
    tcase_add_test(tests, the_words_that_counted_are_named);
    tcase_add_test(tests, every_phrase_was_held_out_once);
    tcase_add_test(tests, a_kept_model_finds_the_same);
    tcase_add_test(tests, building_twice_gives_the_same_bytes);
    tcase_add_test(tests, a_model_of_nothing_finds_nothing);
    tcase_add_test(tests, vectors_are_read_and_refused_when_cut);
    suite_add_tcase(suite, tests);
    runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
