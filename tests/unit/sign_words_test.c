/*
 * How words of a text are taken for words of the signs: classes, misspellings, blanks, forms; and
 * what holds a sign back. On invented signs, so that the rules are seen and not today's content.
 */
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "memory.h"
#include "sign_classes.h"
#include "sign_match.h"

static void *arena;
static struct workspace *workspace;
static struct faults faults;

static const char classes_text[] = "people = he, she, my, dad, [children], mother in law\n"
                                   "children = son, daughter # more later\n"
                                   "devices = machine, phone, battery, vents\n"
                                   "pain = pain, hurts\n"
                                   "pain = ache, killing me\n";

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

/* The index of one sign with these lines, one a line of the text. */
static struct sign_index *
index_of(const char *said_as, const char *not_meant_by, const char *foreign)
{
    struct sign_file *file = memory_new(arena, struct sign_file);
    const char **lists[2] = {NULL, NULL};
    size_t counts[2] = {0, 0};
    int *numbers = memory_array(arena, int, 40), k;
    struct sign_classes *classes;
    struct sign_index *made;

    for (k = 0; k < 2; k++) {
        char *rest = memory_copy(arena, k == 0 ? said_as : not_meant_by), *line;

        while ((line = strtok_r(rest, "\n", &rest)) != NULL) {
            lists[k] = memory_grow(arena, const char *, lists[k], counts[k]);
            lists[k][counts[k]++] = line;
        }
    }
    ck_assert_int_eq(
        sign_classes_read(arena, "classes", classes_text, strlen(classes_text), &classes, &faults),
        0);
    file->sign = (struct sign){.id = "x",
                               .level = SIGN_EMERGENCY,
                               .file = "signs/en/x.md",
                               .said_as = lists[0],
                               .said_as_count = counts[0]};
    file->not_meant_by = lists[1];
    file->not_meant_by_count = counts[1];
    file->said_as_lines = file->not_meant_by_lines = numbers;
    made = sign_index_new(arena, LANGUAGE_EN, NULL, classes);
    sign_index_add(made, workspace, file, &file->sign, &faults);
    if (foreign != NULL) {
        sign_index_know_foreign(made, foreign);
    }
    sign_index_know(made, "several universities is the a and was in good old times");
    sign_index_close(made, workspace, NULL, &faults);
    ck_assert_msg(faults.count == 0, "%s", faults.count == 0 ? "" : faults.list[0].text);
    return made;
}

static bool
fires(const struct sign_index *made, const char *text)
{
    struct sign_match match;

    return sign_index_find(made, workspace, words_read(arena, NULL, text, LANGUAGE_EN), false,
                           &match, 1) == 1;
}

/* Lines of a sign ("" for no figure), one text, and whether it fires. */
static const struct {
    const char *said_as, *not_meant_by, *text;
    bool fires;
} tried[] = {
    /* classes: an entry, one of a class within, several words, a second line of the name */
    {"[people] collapsed", "", "dad collapsed", true},
    {"[people] collapsed", "", "my mother in law just collapsed", true},
    {"[people] collapsed", "", "our daughter collapsed", true},
    {"[people] collapsed", "", "the tent collapsed", false},
    {"knee + [pain]", "", "the knee is killing me", true},
    {"[people] / patient shivers", "", "the patient shivers", true},
    {"mother tired\n[people] coughs", "", "my mother in law is so tired",
     true}, /* within the entry */
    /* a person and what is said of them stand close together */
    {"[people] blue", "", "he was all blue", true},
    {"[people] blue", "", "she found a blue one", false},
    /* three groups in any order */
    {"chest + pain + arm", "", "pain from the arm to the chest", true},
    {"chest + pain + arm", "", "arm and chest pain", true},
    {"chest + pain + arm", "", "arm pain", false},
    /* the little word before a number counts */
    {"can go to 3", "", "can i go to 3", true},
    {"can go to 3", "", "can we go on 3", false},
    /* where the sentence ends or begins */
    {"help me .", "", "Please help me! It is urgent", true},
    {"help me .", "", "help me move the sofa", false},
    {". fainted", "", "Fainted. Twice", true},
    {". fainted", "", "the lady fainted", false},
    /* misspellings */
    {"unconscious", "", "unconsious", true},
    {"unconscious", "", "unkonsious", true}, /* two slips in a long word */
    {"seizure", "", "seezure", true},        /* as it sounds */
    {"cant lift", "", "cant lfit", true},    /* two swapped, in a short word */
    {"please help", "", "pleeease hellllp", true},
    {"cant breathe", "", "cantbreathe", true},
    {"cant breathe", "", "icantbreathe", true},
    {"breathing trouble", "", "brea thing trouble", true},
    /* two words of one stem are two, forms of one word are one */
    {"severed", "", "several", false},
    {"severed", "", "it severs", true},
    {"stop pumping", "", "it stopped and pumps", true},
    /* a thing that something is said of */
    {"choking", "[devices] ...", "the machine is choking", false},
    {"choking", "[devices] ...", "the machine is on and he is choking", true},
    {"choking", "[devices] ...", "machine, choking", true},
    {"choking", "... [devices]", "choking are the vents", false},
    {"choking", "... [devices]", "choking. The machine runs", true},
    /* company */
    {"heart attack", "heart attack & bill", "had a heart attack when the bill came", false},
    {"heart attack", "heart attack & bill", "had a heart attack", true},
    {"cant breathe", "... & joke", "What a joke. I cant breathe", false},
    {"cant breathe", "... & joke", "What a joke. See you. I cant breathe", true},
    /* times long past */
    {"stroke", "", "had a stroke in 2015", false},
    {"stroke", "", "In 2015, he had a stroke", false},
    {"collapsed", "", "she collapsed here two winters ago, so we rent", false},
    {"collapsed", "", "she collapsed last year", false},
    {"collapsed", "", "she collapsed two hours ago", true},
    {"collapsed", "", "she collapsed again like last year", true},
    {"chest hurts", "", "had surgery 2 years ago, chest hurts", true},
    {"cant breathe", "", "in 2015 cant breathe", true},
    {"headaches", "", "headaches the last two months", true},
};

START_TEST(words_are_taken_for_what_is_meant)
{
    const struct sign_index *made = index_of(tried[_i].said_as, tried[_i].not_meant_by, NULL);

    ck_assert_msg(fires(made, tried[_i].text) == tried[_i].fires, "\"%s\" but \"%s\" on \"%s\"",
                  tried[_i].said_as, tried[_i].not_meant_by, tried[_i].text);
}
END_TEST

START_TEST(a_word_of_another_language_is_no_slip_and_none_of_its_texts_has_any)
{
    const struct sign_index *made =
        index_of("panting\nwheezing", "", "pantin la luz pantalla esta");

    ck_assert(!fires(made, "pantin"));
    ck_assert(!fires(made, "la pantalla esta wheezin luz"));
    ck_assert(fires(made, "is the wheezin good"));
}
END_TEST

/* Lines of classes that cannot be read. */
static const struct {
    const char *text, *fault;
} unreadable[] = {
    {"people he, she\n", "f:1: write: name = word"},
    {"\n People = he\n", "f:2: write: name = word"},
    {"a = he, [b]\n", "f:1: there is no class [b]"},
    {"a = [b]\nb = [a]\n", "takes in itself"},
};

START_TEST(a_class_that_cannot_be_read_is_a_fault_with_its_place)
{
    struct sign_classes *classes = NULL;

    ck_assert_int_eq(sign_classes_read(arena, "f", unreadable[_i].text, strlen(unreadable[_i].text),
                                       &classes, &faults),
                     -1);
    ck_assert_ptr_null(classes);
    ck_assert_msg(strstr(faults.list[0].text, unreadable[_i].fault) != NULL, "%s",
                  faults.list[0].text);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("sign_words");
    TCase *tests = tcase_create("sign_words");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, begin, end);
    tcase_add_loop_test(tests, words_are_taken_for_what_is_meant, 0,
                        sizeof(tried) / sizeof(tried[0]));
    tcase_add_test(tests, a_word_of_another_language_is_no_slip_and_none_of_its_texts_has_any);
    tcase_add_loop_test(tests, a_class_that_cannot_be_read_is_a_fault_with_its_place, 0,
                        sizeof(unreadable) / sizeof(unreadable[0]));
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
