#include "fixture.h"

#include <string.h>

#include "fill.h"
#include "memory.h"
#include "placeholders.h"

static struct fixture *stage;
static struct filling with;

static void
set_up(void)
{
    stage = fixture_new();
    with = (struct filling){.house = &stage->house,
                            .zone = &stage->zone,
                            .rental = &stage->rentals[0],
                            .equipment = kb_equipment(stage->kb, "finch"),
                            .language = LANGUAGE_EN,
                            .now_utc_s = fixture_start_utc_s};
}

static void
tear_down(void)
{
    fixture_free(stage);
}

static void
fills(const char *text, const char *filled)
{
    ck_assert_str_eq(fill(stage->arena, text, &with, NULL), filled);
}

START_TEST(record_and_unit_are_said_in_words)
{
    fills("Hi {name|there}: {batteries|x}, {chargers|x}, {place|x}.",
          "Hi Ana: 2 batteries, 1 charger, Cabin 4.");
    fills("{due|x}", "Saturday, Feb 14, 10 am");
    fills("{orders|x}", "continuous 2 at rest, pulse 3 for walking, pulse 2 for sleep");
    fills("{night|x}", "Your order for sleep is pulse 2.");
    fills("{backup|x}", "your E cylinder");
    fills("{packing|x}", "the unit, 2 batteries, 1 charger, the car cord and the bag");
    fills("{battery-life|x}", "Plan on 54 min at rest (continuous 2), 2 h 15 min for walking "
                              "(pulse 3) from one full battery.");
    fills("{unit|x}", "Finch");
    fills("{modes|x}", "continuous flow and pulse");
    fills("{gauge-bands|x}", "0 lights are 0 to 10%, 1 light is 10 to 25%, 2 lights are 25 to 50%, "
                             "3 lights are 50 to 75%, 4 lights are 75 to 100%");
    fills("{charge-time|x}", "One empty battery takes up to 3 h 25 min to full with the unit off.");
    fills("{needs-wall|x}", "Continuous 3 runs from the wall only.");
    fills("{altitude-limit|x}", "10,000 feet");
    fills("{run-temperatures|x}", "41 to 104 F"); /* 5 and 40 C */
    fills("{weight|x}", "10.1 pounds");           /* 4600 g */
    fills("{tube|x}", "50 feet in continuous flow, 7 feet in pulse");
}
END_TEST

START_TEST(a_unit_is_told_in_spanish_but_for_sentences_that_the_office_wrote_in_english)
{
    with.language = LANGUAGE_ES;
    fills("{modes|x}", "flujo continuo y pulso");
    fills("{gauge-bands|x}",
          "0 luces son de 0 a 10%, 1 luz es de 10 a 25%, 2 luces son de 25 a 50%, 3 luces son de "
          "50 a 75%, 4 luces son de 75 a 100%");
    fills("{charge-time|x}",
          "Una bateria vacia tarda hasta 3 h 25 min en llenarse con el aparato apagado.");
    fills("{altitude-limit|x}", "10,000 pies");
    fills("{run-temperatures|x}", "41 a 104 F");
    fills("{weight|x}", "10.1 libras");
    fills("{tube|x}", "50 pies en flujo continuo, 7 pies en pulso");
    fills("{needs-wall|x}", "x");
    fills("{gauge-how|x}", "x");
    fills("{hours|x}", "8 am a 6 pm");
    fills("{return-how|x}", "Bring it to the office."); /* the office wrote no other */
}
END_TEST

START_TEST(what_is_not_known_takes_the_words_after_the_bar)
{
    fills("{sound|ask {phone}}", "ask 208-555-0100");
    stage->rentals[0].place = NULL;
    fills("{place|call {phone}}", "call 208-555-0100");
    with.rental = NULL;
    with.equipment = NULL;
    fills("{due|the day on your slip} {company}", "the day on your slip Larkspur Air Rentals");
}
END_TEST

START_TEST(every_placeholder_has_a_value_for_a_full_record)
{
    static const char *const absent[] = {"sound", "no-breath", "supply"}; /* not in this file */
    size_t i;
    int placeholder;

    for (placeholder = 0; placeholder < PLACEHOLDER_COUNT; placeholder++) {
        const char *name = placeholder_entry((enum placeholder)placeholder)->name;
        const char *filled =
            fill(stage->arena, memory_format(stage->arena, "{%s|none}", name), &with, NULL);
        bool expected = true;

        for (i = 0; i < sizeof absent / sizeof absent[0]; i++) {
            expected = expected && strcmp(name, absent[i]) != 0;
        }
        ck_assert_msg((strcmp(filled, "none") != 0) == expected, "{%s}: \"%s\"", name, filled);
        ck_assert_str_ne(filled, "");
    }
}
END_TEST

START_TEST(braces_that_are_no_placeholder_stay)
{
    fills("a { b } {nobody} {due", "a { b } {nobody} {due");
}
END_TEST

START_TEST(it_tells_whether_a_record_was_used)
{
    bool used = true;

    fill(stage->arena, "{company}", &with, &used);
    ck_assert(!used);
    fill(stage->arena, "{due|x}", &with, &used);
    ck_assert(used);
    ck_assert(fill_wants_record("call {phone} on {due|x}"));
    ck_assert(!fill_wants_record("call {phone}"));
}
END_TEST

START_TEST(conditions_are_of_the_unit_and_the_rental)
{
    static const char *const pulse[] = {"mode pulse", "backup"};
    static const char *const night[] = {"mode night"};
    static const char *const finch[] = {"unit finch"};

    ck_assert(fill_only_if_holds(pulse, 2, &with));
    ck_assert(!fill_only_if_holds(night, 1, &with));
    ck_assert(fill_only_if_holds(finch, 1, &with));
    stage->rentals[0].backup.known = false;
    ck_assert(!fill_only_if_holds(pulse, 2, &with));
    with.rental = NULL;
    ck_assert(fill_only_if_holds(night, 1, &with));
    ck_assert(!fill_only_if_holds(finch, 1, &with));
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("fill");

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, record_and_unit_are_said_in_words);
    tcase_add_test(tests,
                   a_unit_is_told_in_spanish_but_for_sentences_that_the_office_wrote_in_english);
    tcase_add_test(tests, what_is_not_known_takes_the_words_after_the_bar);
    tcase_add_test(tests, every_placeholder_has_a_value_for_a_full_record);
    tcase_add_test(tests, braces_that_are_no_placeholder_stay);
    tcase_add_test(tests, it_tells_whether_a_record_was_used);
    tcase_add_test(tests, conditions_are_of_the_unit_and_the_rental);
    return fixture_run(tests);
}
