/*
 * What must hold of the shipped signs whatever stands around them: a sign in its own sentence fires
 * with any ordinary text before or after it, in capitals, without punctuation or accents; and
 * joining texts never removes a sign.
 */
#include <check.h>
#include <ctype.h>
#include <stdlib.h>
#include <string.h>

#include "kb.h"
#include "memory.h"
#include "shipped.h"

enum { ROOM = 40 };

static void *arena;
static struct workspace *workspace;

/* Of each test alone. */
static void
begin_one(void)
{
    arena = talloc_new(NULL);
    workspace = workspace_new();
}

static void
end_one(void)
{
    workspace_free(workspace);
    talloc_free(arena);
}

/* Grave sentences, as people might text them, and ordinary texts; common practice, no source. */
static const char *const grave[] = {"my husband cant breathe",
                                    "she has chest pain",
                                    "he wont wake up",
                                    "his lips are blue",
                                    "shes coughing up blood",
                                    "my dad had a seizure just now",
                                    "her face is drooping",
                                    "i want to die",
                                    "the cannula caught fire",
                                    "we are out of oxygen",
                                    "he hit his head hard",
                                    "she is not making sense",
                                    "no chest pain but he passed out"};

static const char *const ordinary[] = {
    "Thanks for the quick help with the charger",
    "is the rental due friday or can we keep it a day longer",
    "Where do I find the car cord",
    "The view from the lodge is lovely and the grandchildren adore the snow",
    "how do i clean the filter",
    "We are in the red cabin by the lake"};

/* The same in Spanish, with and without accents. */
static const char *const grave_in_spanish[] = {"mi esposo no puede respirar",
                                               "le duele mucho el pecho",
                                               "mi mamá no despierta",
                                               "tiene los labios morados",
                                               "está tosiendo sangre",
                                               "mi papa esta convulsionando",
                                               "se le cayo la mitad de la cara",
                                               "ya no quiero vivir",
                                               "se incendió la cánula",
                                               "nos quedamos sin oxígeno",
                                               "se pego muy fuerte en la cabeza",
                                               "mi abuela no me reconoce",
                                               "no le duele el pecho pero se desmayó"};

static const char *const ordinary_in_spanish[] = {
    "Gracias por la ayuda con el cargador",
    "la renta se vence el viernes o podemos quedarnos un dia mas",
    "¿Dónde encuentro el cable del carro?",
    "La vista desde el hotel es preciosa y los nietos adoran la nieve",
    "como limpio el filtro",
    "Estamos en la cabaña roja junto al lago"};

static bool
is_emergency(const char *text)
{
    struct sign_match matches[ROOM];

    return kb_find_signs(shipped_kb(), workspace, text, matches, ROOM) > 0 &&
           matches[0].sign->level == SIGN_EMERGENCY;
}

static const char *
in_capitals(const char *text)
{
    char *copy = memory_copy(arena, text), *c;

    for (c = copy; *c != '\0'; c++) {
        *c = (char)toupper((unsigned char)*c);
    }
    return copy;
}

/* Ways in which a grave sentence may stand beside an ordinary text. Run on into it without any mark
 * or line between it may be taken for a part of it (sign_match.h). */
static void
check_beside(const char *sentence, const char *text)
{
    static const char *const between[] = {". ", "! ", "\n", ", "};
    size_t i;

    for (i = 0; i < sizeof(between) / sizeof(between[0]); i++) {
        const char *after = memory_format(arena, "%s%s%s", text, between[i], sentence);
        const char *before = memory_format(arena, "%s%s%s", sentence, between[i], text);

        ck_assert_msg(is_emergency(after), "\"%s\"", after);
        ck_assert_msg(is_emergency(before), "\"%s\"", before);
        ck_assert_msg(is_emergency(in_capitals(after)), "\"%s\" in capitals", after);
    }
}

enum { ORDINARY = sizeof(ordinary) / sizeof(ordinary[0]) };
_Static_assert(ORDINARY == sizeof(ordinary_in_spanish) / sizeof(ordinary_in_spanish[0]),
               "as many in each language");

static void
check_beside_all(const char *sentence, const char *const texts[ORDINARY])
{
    size_t i;

    ck_assert_msg(is_emergency(sentence), "\"%s\"", sentence);
    for (i = 0; i < ORDINARY; i++) {
        ck_assert_msg(!is_emergency(texts[i]), "\"%s\"", texts[i]);
        check_beside(sentence, texts[i]);
        check_beside(memory_format(arena, "%s\n%s", sentence, texts[i]), texts[(i + 1) % ORDINARY]);
    }
}

START_TEST(a_sign_fires_whatever_ordinary_text_stands_before_or_after_it)
{
    check_beside_all(grave[_i], ordinary);
}
END_TEST

START_TEST(so_does_a_spanish_one)
{
    check_beside_all(grave_in_spanish[_i], ordinary_in_spanish);
}
END_TEST

/* The signs of one text. */
struct shown {
    const char *text;
    struct sign_match matches[ROOM];
    size_t count;
};

static struct shown
look(const char *text)
{
    struct shown shown = {.text = text};

    shown.count = kb_find_signs(shipped_kb(), workspace, text, shown.matches, ROOM);
    return shown;
}

/* True if every sign of the text is among those of the joined text. */
static bool
is_kept(const struct shown *alone, const struct shown *joined)
{
    size_t i, k;

    for (i = 0; i < alone->count; i++) {
        const struct sign *sign = alone->matches[i].sign;

        for (k = 0; k < joined->count && strcmp(sign->id, joined->matches[k].sign->id) != 0; k++) {
        }
        /* what the second opinion adds to a clinical text, an emergency beside it makes needless */
        if (k == joined->count && (k == 0 || joined->matches[0].sign->level <= sign->level)) {
            return false;
        }
    }
    return true;
}

static void
check_joined(const struct shown *first, const struct shown *second)
{
    const struct shown joined = look(memory_format(arena, "%s\n%s", first->text, second->text));

    ck_assert_msg(is_kept(first, &joined), "\"%s\"", joined.text);
    ck_assert_msg(is_kept(second, &joined), "\"%s\"", joined.text);
}

static void
check_joined_with_topics(const char *sentence)
{
    const struct shown grave_one = look(sentence);
    size_t topics, i;
    const struct topic *topic = kb_topics(shipped_kb(), &topics);

    for (i = 0; i < topics; i++) {
        const struct shown asked =
            look(topic[i].asked_as_count > 0 ? topic[i].asked_as[0] : "hello");

        check_joined(&grave_one, &asked);
        check_joined(&asked, &grave_one);
    }
}

START_TEST(joining_texts_never_removes_a_sign)
{
    check_joined_with_topics(grave[_i]);
}
END_TEST

START_TEST(joining_never_removes_a_spanish_one)
{
    check_joined_with_topics(grave_in_spanish[_i]);
}
END_TEST

int
main(void)
{
    Suite *suite = suite_create("sign_properties");
    TCase *tests = tcase_create("sign_properties");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_unchecked_fixture(tests, shipped_begin,
                                shipped_end); /* a kb takes a while to build */
    tcase_add_checked_fixture(tests, begin_one, end_one);
    tcase_set_timeout(tests, 120);
    tcase_add_loop_test(tests, a_sign_fires_whatever_ordinary_text_stands_before_or_after_it, 0,
                        sizeof(grave) / sizeof(grave[0]));
    tcase_add_loop_test(tests, so_does_a_spanish_one, 0,
                        sizeof(grave_in_spanish) / sizeof(grave_in_spanish[0]));
    tcase_add_loop_test(tests, joining_texts_never_removes_a_sign, 0,
                        sizeof(grave) / sizeof(grave[0]));
    tcase_add_loop_test(tests, joining_never_removes_a_spanish_one, 0,
                        sizeof(grave_in_spanish) / sizeof(grave_in_spanish[0]));
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_ENV);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
