#include "lexicon.h"
#include "fixture.h"

#include <string.h>

#include "memory.h"
#include "told_words.h"

static char *
read_as_words(void *arena, const char *text)
{
    struct told told;

    told_read(arena, lexicon_new(arena, NULL), text, &told);
    return told_words_of_charges(arena, &told);
}

struct row {
    const char *text, *read;
};

static void
reads(const struct row *rows, size_t count)
{
    void *arena = talloc_new(NULL);
    size_t i;

    for (i = 0; i < count; i++) {
        const char *read = read_as_words(arena, rows[i].text);

        ck_assert_msg(strcmp(read, rows[i].read) == 0, "\"%s\" was read as \"%s\", not \"%s\"",
                      rows[i].text, read, rows[i].read);
    }
    talloc_free(arena);
}

#define READS(rows) reads(rows, sizeof(rows) / sizeof((rows)[0]))

START_TEST(a_charge_to_be_told_of_later_is_none_that_somebody_has)
{
    static const struct row rows[] = {
        {"2 full, let me know when nearly empty", "100 100"},
        {"2 full batteries. let me know when they are nearly empty", "100 100"},
        {"two full, text me when its almost empty", "100 100"},
        {"2 full ones, tell me if one goes empty", "100 100"},
        {"2 full, text me if it drops to 20 percent", "100 100"},
        {"one is at 80, let me know when it hits 20", "80"},
        {"2 llenas, avisame cuando esten casi vacias", "100 100"},
        /* but these are had */
        {"2 full and 1 nearly empty, let me know", "100 100 0-10"},
        {"tell me when 2 full ones run out", "100 100"},
        {"let me know if 2 full will do", "100 100"},
        {"let me know when 2 full and 1 half will be gone", "100 100 50"},
        {"mine is nearly empty, text me when you are here", "0-10"},
        {"text me when you can its nearly empty", "0-10"},
    };

    READS(rows);
}
END_TEST

START_TEST(degrees_are_no_charge_and_none_that_cannot_be)
{
    static const struct row rows[] = {
        {"temperature fell to minus 5", ""},
        {"la temperatura bajo a menos 5", ""},
        {"temp went down to 20", ""},
        {"temp 20F 2 full 1 half", "100 100 50"},
        {"temperature dropped and the battery is at 30", "30"},
        {"temperature dropped, now at 30 percent", "30"},
        {"the battery fell to minus 5", "+1 impossible"},
    };

    READS(rows);
}
END_TEST

/* Words to percent: common practice, no source. */
START_TEST(charges_in_words)
{
    static const struct row rows[] = {
        {"2 full and one half", "100 100 50"},
        {"I have two full ones", "100 100"},
        {"both full", "100 100"},
        {"all 3 are dead", "0 0 0"},
        {"3 batteries: full, half, dead", "100 50 0"},
        {"one is full and the other one is almost dead", "100 0-10"},
        {"almost full", "85-99"},
        {"about half", "45-55"},
        {"a bit over half", "50-65"},
        {"three quarters", "75"},
        {"3/4", "75"},
        {"a third left", "33-34"},
        {"tengo 2 llenas y una a la mitad", "100 100 50"},
        {"las 3 estan a la mitad", "50 50 50"},
        {"las 2 estan al 40", "40 40"},
        {"cuarto lleno de gente y la bateria a tres cuartos", "75"},
        {"fully charged", "100"},
        {"2½", ""},
    };
    READS(rows);
}
END_TEST

START_TEST(charges_in_percent)
{
    static const struct row rows[] = {
        {"80%", "80"},
        {"battery at 80 percent", "80"},
        {"2 batteries at 80%", "80 80"},
        {"both at 50%", "50 50"},
        {"one at 70% the other at 40%", "70 40"},
        {"about 60%", "55-65"},
        {"70-80%", "70-80"},
        {"sixty something percent", "60-69"},
        {"battery 1 is at 80%, battery 2 50%", "80 50"},
        {"1 battery at 66", "66"},
        {"ochenta y cinco por ciento", "85"},
        {"battery at 130%", "+1 impossible"},
        {"130%", "impossible"},
    };
    READS(rows);
}
END_TEST

START_TEST(gauge_lights_are_kept_as_lights)
{
    static const struct row rows[] = {
        {"3 of 4 lights", "l3"},
        {"two bars", "l2"},
        {"one light on the battery", "l1"},
        {"1 full, 1 with 2 lights", "100 l2"},
        {"3 out of 4", "l3"},
        {"2 batteries with 3 lights each", "l3 l3"},
        {"no lights", "l0"},
        {"2 luces", "l2"},
        {"5 of 4 lights on the battery", "+1 impossible"},
    };
    READS(rows);
}
END_TEST

START_TEST(batteries_without_charge_are_counted)
{
    static const struct row rows[] = {
        {"3 batteries", "+3"},       {"how long does a battery last", "+1"},
        {"one battery left", "+1"},  {"I have 3 batteries, 2 full", "100 100 +1"},
        {"2 extra batteries", "+2"}, {"tres baterias", "+3"},
    };
    READS(rows);
}
END_TEST

START_TEST(mode_setting_and_activity_are_what_holds_now)
{
    static const struct row rows[] = {
        {"on pulse 3", "pulse s30"},
        {"continuous 2", "continuous s20"},
        {"setting 2.5", "s25"},
        {"it was on 3 but now its on 2", "s20"},
        {"2 liters", "s20"},
        {"my tank is at 2 liters", ""},
        {"night mode 2", "night s20"},
        {"going to sleep", "sleep"},
        {"back from the hike, now sitting down", "rest"},
        {"the rest of the batteries", ""},
        {"pulse or continuous", ""},
        {"on 2 full batteries", "100 100"},
        {"1 full battery on setting 2", "100 s20"},
        {"2 batteries on continuous 2", "+2 continuous s20"},
        {"my pulse ox", ""},
        {"pulso 3 caminando", "pulse s30 walking"},
    };
    READS(rows);
}
END_TEST

START_TEST(what_looks_like_a_charge_but_is_none_is_not_read)
{
    static const struct row rows[] = {
        {"half an hour", ""},
        {"an hour and a half", ""},
        {"2 and a half hours", ""},
        {"it is not full", ""},
        {"when will it be full", ""},
        {"until full", ""},
        {"the tank is half full", ""},
        {"my oxygen is 88%", ""},
        {"sat is 91% and battery 40%", "40"},
        {"room 80", ""},
        {"at 2:30 pm", ""},
        {"back at 11", ""},
        {"", ""},
    };
    READS(rows);
}
END_TEST

START_TEST(what_is_taken_back_or_past_or_wished_for_does_not_count)
{
    static const struct row rows[] = {
        {"2 full, sorry, 1 full and one at 40%", "100 40"},
        {"perdon dije 2 llenas pero es 1 llena y 1 al 60", "100 60"},
        {"sorry to bother you, 2 full", "100 100"},
        {"thanks, 2 full, actually thanks again", "100 100"},
        {"the spare was at 100% yesterday", ""},
        {"will they be all full by 7", ""},
        {"2 full 45 min ago", "100 100 since45"},
        {"it was full an hour and a half ago", "100 since90"},
        {"hace 2 horas tenia 1 llena", "100 since120"},
        {"left the plug at 9:15 with 1 full", "100 earlier"},
        {"1 full when we left", "100 earlier"},
        {"a 2:45 flight with one battery at 80", "80"},
        {"de un cuarto a llena", "25"},
        {"almost full on one", "85-99"},
        {"two more that are full", "100 100"},
    };
    READS(rows);
}
END_TEST

START_TEST(lists_share_out_the_number_that_leads_them)
{
    static const struct row rows[] = {
        {"3 batteries at 20, 40 and 60", "20 40 60"},
        {"three batteries: 1/2, 3/4 and full", "50 75 100"},
        {"they are at 20, 20 and half", "20 20 50"},
        {"2 of my 3 batteries are full", "100 100 +1"},
        {"80 and 65, on 2", "80 65 s20"},
        {"batteries 1 and 2 full, 3 is half", "100 100 50"},
        {"one battery at 50% and the other too", "50 50"},
        {"3 lights on one and 4 on the other", "l3 l4"},
        {"1st at 100, 2nd at 60", "100 60"},
    };
    READS(rows);
}
END_TEST

START_TEST(a_correction_replaces_what_it_is_of)
{
    static const struct row rows[] = {
        {"the spare is at 80, actually 60. main is full", "60 100"},
        {"one at 90, one at 75 and one at 40. no the last one is 45 sorry", "90 75 45"},
        {"how long do 3 batteries last at 2. sorry 2 batteries not 3", "+2 s20"},
        {"its on 3, no wait 2", "s20"},
        {"went from 100 to 60 since noon", "60 earlier"},
        {"was 80 at 1 pm now its 62", "62"},
    };
    READS(rows);
}
END_TEST

START_TEST(numbers_of_other_things_are_put_aside)
{
    static const struct row rows[] = {
        {"im 81 and my sats are 92%, battery says 67", "67"},
        {"room 214, phone 555-0142, battery at 64", "64"},
        {"paid $40 for the spare, its at 30 percent", "30"},
        {"he takes 40 mg at 8, battery at 51", "51"},
        {"my neighbor says 3 hours. battery at 80", "80"},
        {"my phone is at 30% and the battery is at 55", "55"},
        {"a 12-cell battery on setting 4, how long does it last", "+1 s40"},
        {"party of 6, says 55, its on 4", "55 s40"},
        {"39 a day, the 2 batteries on pulse 2", "+2 pulse s20"},
        {"full moon, one battery at 40", "40"},
    };
    READS(rows);
}
END_TEST

START_TEST(of_settings_told_by_activity_the_one_asked_about_holds)
{
    static const struct row rows[] = {
        {"he takes 4 when he walks and 2 when he sits, half a battery, how long when he sits",
         "50 s20 rest"},
        {"2 asleep, 3 walking around. full battery, how long while walking", "100 s30 walking"},
        {"sitting 1, walking 3. one battery at 70, time left?", "70 s30"},
        {"duermo en 2 y camino en 3, una llena, cuanto para dormir", "100 s20 sleep"},
        {"2 batteries walking on 3, both full", "100 100 s30 walking"},
    };
    READS(rows);
}
END_TEST

START_TEST(a_number_that_is_all_a_clause_says_is_the_setting)
{
    static const struct row rows[] = {
        {"battery at 70, number 3, how long", "70 s30"},
        {"me queda la mitad, numero 2", "50 s20"},
        {"room number 3, battery at 70", "70"},
        {"number 2 is dead, number 1 is full", "0 100"},
    };
    READS(rows);
}
END_TEST

START_TEST(a_correction_needs_no_noun)
{
    static const struct row rows[] = {
        {"it was going to be 40 percent, I mean 45, on 2", "45 s20"},
        {"dije 30 pero son 50, nivel 2, cuanto queda", "50 s20"},
        {"I said setting 4 but its 3. battery full", "100 s30"},
        {"2 full, no wait, 3. on pulse 2", "100 100 100 pulse s20"},
        {"4 lights, sorry, 3. on pulse 2", "l3 pulse s20"},
        {"we have 2 batteries, no wait, 3, all full", "100 100 100"},
    };
    READS(rows);
}
END_TEST

START_TEST(a_charge_of_each_is_of_as_many_as_are_told)
{
    static const struct row rows[] = {
        {"about 60 on each of the three, pulse 2", "55-65 55-65 55-65 pulse s20"},
        {"two thirds on each of my 2", "66-67 66-67"},
        {"una a 75% y otra a 20%", "75 20"},
    };
    READS(rows);
}
END_TEST

START_TEST(a_full_that_is_asked_or_unclear_is_no_charge)
{
    static const struct row rows[] = {
        {"the battery is hlaaf full, on 2", "s20"},
        {"on the wall since 3 with 40 percent, how full is it", "40 earlier"},
        {"I need 90 percent by 4 pm, it shows 30", "30"},
        {"need at least 70 percent by noon, it is at 25", "25"},
    };
    READS(rows);
}
END_TEST

START_TEST(any_bytes_may_come_in)
{
    static const char *const texts[] = {
        "\xff\xfe\x80", "%%%%",       "999999999999999999999999999999 batteries",
        "0/0 lights",   "1,000,000%", "½¼¾",
        "-5%",          "1.2.3.4.5",
    };
    void *arena = talloc_new(NULL);
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        struct told told;

        told_read(arena, lexicon_new(arena, NULL), texts[i], &told);
        ck_assert_int_le(told_batteries(&told), TOLD_BATTERIES_MAX);
    }
    talloc_free(arena);
}
END_TEST

/* A piece of a text ends where a question was cut from it: nothing may be sought behind its end. */
START_TEST(a_text_may_end_behind_any_word)
{
    static const char *const texts[] = {
        "his alarm clock has one and a half batteries",
        "2 and three quarters of an hour at 2 to 3 liters per minute by 6:30 tomorrow",
        "one at half and the other one at a quarter, minus 5 degrees, 30 miles an hour for 3 h 20",
        "una y media llena y la otra a tres cuartos, dos horas y cuarto hasta las 6",
    };
    void *arena = talloc_new(NULL);
    const struct lexicon *lexicon = lexicon_new(arena, NULL);
    size_t i, end;

    for (i = 0; i < sizeof(texts) / sizeof(texts[0]); i++) {
        for (end = 0; end <= strlen(texts[i]); end++) {
            struct told told;

            told_read(arena, lexicon, memory_copy_n(arena, texts[i], end), &told);
            ck_assert_int_le(told_batteries(&told), TOLD_BATTERIES_MAX);
        }
    }
    talloc_free(arena);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("told");

    tcase_add_test(tests, a_charge_to_be_told_of_later_is_none_that_somebody_has);
    tcase_add_test(tests, degrees_are_no_charge_and_none_that_cannot_be);
    tcase_add_test(tests, charges_in_words);
    tcase_add_test(tests, charges_in_percent);
    tcase_add_test(tests, gauge_lights_are_kept_as_lights);
    tcase_add_test(tests, batteries_without_charge_are_counted);
    tcase_add_test(tests, mode_setting_and_activity_are_what_holds_now);
    tcase_add_test(tests, what_looks_like_a_charge_but_is_none_is_not_read);
    tcase_add_test(tests, what_is_taken_back_or_past_or_wished_for_does_not_count);
    tcase_add_test(tests, lists_share_out_the_number_that_leads_them);
    tcase_add_test(tests, a_correction_replaces_what_it_is_of);
    tcase_add_test(tests, numbers_of_other_things_are_put_aside);
    tcase_add_test(tests, of_settings_told_by_activity_the_one_asked_about_holds);
    tcase_add_test(tests, a_number_that_is_all_a_clause_says_is_the_setting);
    tcase_add_test(tests, a_correction_needs_no_noun);
    tcase_add_test(tests, a_charge_of_each_is_of_as_many_as_are_told);
    tcase_add_test(tests, a_full_that_is_asked_or_unclear_is_no_charge);
    tcase_add_test(tests, any_bytes_may_come_in);
    tcase_add_test(tests, a_text_may_end_behind_any_word);
    return fixture_run(tests);
}
