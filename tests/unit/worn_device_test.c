/* Low oxygen on what somebody wears is theirs; on the unit's display it is the unit's. */
#include "stage.h"

#include "memory.h"
#include "worn_device.h"

static bool
tells_low(const char *text)
{
    void *arena = talloc_new(NULL);
    struct tokens tokens = tokens_read(arena, text);
    bool tells = worn_device_tells_low(&tokens);

    talloc_free(arena);
    return tells;
}

START_TEST(a_watch_or_a_clip_tells_low_oxygen)
{
    static const char *const texts[] = {"his watch says low oxygen",
                                        "it says low o2 on my watch",
                                        "the clip on his finger says oxygen low",
                                        "smart ring shows low blood oxygen",
                                        "my watch says low oxygen and the unit is fine",
                                        "el reloj dice oxigeno bajo",
                                        "la pulsera avisa oxigeno bajo",
                                        "el aparatito del dedo marca oxigeno bajo"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        ck_assert_msg(tells_low(texts[i]), "%s", texts[i]);
    }
}
END_TEST

START_TEST(the_units_display_and_other_news_of_a_watch_are_none)
{
    static const char *const texts[] = {"the machine says low oxygen",
                                        "screen says low oxygen",
                                        "my watch says low battery, the screen says low oxygen",
                                        "watch out it says low oxygen",
                                        "does my watch say low oxygen often",
                                        "la pantalla dice oxigeno bajo",
                                        "my watch broke and the display says low oxygen"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        ck_assert_msg(!tells_low(texts[i]), "%s", texts[i]);
    }
}
END_TEST

START_TEST(what_a_watch_shows_is_not_looked_up_in_the_units_table)
{
    fixture_text(stage, "the screen says pump low");
    ck_assert_ptr_nonnull(fixture_answer(stage, "display"));
    fixture_text(stage, "his watch says pump low");
    ck_assert_ptr_null(fixture_answer(stage, "display"));
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("worn device");

    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_add_test(tests, a_watch_or_a_clip_tells_low_oxygen);
    tcase_add_test(tests, the_units_display_and_other_news_of_a_watch_are_none);
    tcase_add_test(tests, what_a_watch_shows_is_not_looked_up_in_the_units_table);
    return fixture_run(tests);
}
