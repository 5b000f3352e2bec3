#include "fixture.h"

#include "memory.h"
#include "parts.h"

/* `times` copies of a text in a row. */
static char *
repeated(void *arena, const char *text, int times)
{
    char *all = memory_copy(arena, "");

    while (times-- > 0) {
        memory_append(&all, "%s", text);
    }
    return all;
}

static void
counts(const char *text, bool gsm7, size_t units, size_t parts)
{
    struct parts counted = parts_count(text);

    ck_assert_msg(counted.gsm7 == gsm7 && counted.units == units && counted.parts == parts,
                  "\"%.40s\": %d %zu %zu", text, counted.gsm7, counted.units, counted.parts);
}

/* Segment check values: fact sheet F1, computed from 3GPP TS 23.038 (alphabet) and TS 23.040. */
START_TEST(parts_are_those_of_the_standard)
{
    void *arena = talloc_new(NULL);

    counts("", true, 0, 0);
    counts(repeated(arena, "a", 160), true, 160, 1);
    counts(repeated(arena, "a", 161), true, 161, 2);
    counts(repeated(arena, "a", 306), true, 306, 2);
    counts(repeated(arena, "a", 307), true, 307, 3);
    counts(repeated(arena, "€", 80), true, 160, 1);
    counts(repeated(arena, "€", 81), true, 162, 2);
    counts(memory_format(arena, "%s€", repeated(arena, "a", 159)), true, 161, 2);
    counts(repeated(arena, "á", 70), false, 70, 1);
    counts(repeated(arena, "á", 71), false, 71, 2);
    counts(repeated(arena, "á", 134), false, 134, 2);
    counts(repeated(arena, "á", 135), false, 135, 3);
    counts(repeated(arena, "😀", 35), false, 70, 1);
    counts(repeated(arena, "😀", 36), false, 72, 2);
    counts("Don't smoke near oxygen.", true, 24, 1);
    counts("Don’t smoke near oxygen.", false, 24, 1);
    counts("Use between 5°C and 40°C", false, 24, 1);
    counts("¿Su niño está bien?", false, 19, 1);
    counts("¿El señor respira bien?", true, 23, 1);
    counts("[ok]", true, 6, 1);
    talloc_free(arena);
}
END_TEST

START_TEST(an_escape_or_surrogate_pair_is_never_split)
{
    void *arena = talloc_new(NULL);

    counts(memory_format(arena, "%s€%s", repeated(arena, "a", 152), repeated(arena, "a", 153)),
           true, 307, 3);
    counts(memory_format(arena, "%s😀%s", repeated(arena, "a", 66), repeated(arena, "a", 66)), false,
           134, 3);
    talloc_free(arena);
}
END_TEST

/* Table traps of fact sheet F1: capital C with cedilla is in, the small one, back quote and tab
 * are not; u with grave is in, with acute not. */
START_TEST(the_alphabet_is_that_of_the_standard)
{
    static const char in[] = "@£$¥èéùìòÇ\nØø\rÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ !\"#¤%&'()*+,-./0123456789:;<=>?"
                             "¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§¿abcdefghijklmnopqrstuvwxyzäöñüà";

    counts(in, true, 127, 1);
    counts("^{}\\[~]|€\f", true, 20, 1);
    counts("ç", false, 1, 1);
    counts("ú", false, 1, 1);
    counts("`", false, 1, 1);
    counts("\t", false, 1, 1);
}
END_TEST

START_TEST(bytes_that_are_no_text_count_one_unit_each)
{
    counts("a\xff\xc3", false, 3, 1);
}
END_TEST

START_TEST(what_needlessly_forces_ucs2_is_said_in_gsm7)
{
    void *arena = talloc_new(NULL);

    ck_assert_str_eq(parts_plain(arena, "Don’t – “really” … • 5°C, 40 °F, 30° now"),
                     "Don't - \"really\" ... - 5 C, 40 F, 30 degrees now");
    ck_assert_str_eq(parts_plain(arena, "2½ O₂ at\u00a0noon"), "2 1/2 O2 at noon");
    ck_assert_str_eq(parts_plain(arena, "está niño"), "está niño");
    talloc_free(arena);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("parts");

    tcase_add_test(tests, parts_are_those_of_the_standard);
    tcase_add_test(tests, an_escape_or_surrogate_pair_is_never_split);
    tcase_add_test(tests, the_alphabet_is_that_of_the_standard);
    tcase_add_test(tests, bytes_that_are_no_text_count_one_unit_each);
    tcase_add_test(tests, what_needlessly_forces_ucs2_is_said_in_gsm7);
    return fixture_run(tests);
}
