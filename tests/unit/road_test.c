/* Which roads to one of staff are used when. Plain arithmetic on the configuration. */
#include <check.h>
#include <stdlib.h>

#include "config.h"
#include "road.h"

enum {
    TEXT = 1 << ROAD_TEXT,
    RING = 1 << ROAD_RING,
    MAIL = 1 << ROAD_MAIL,
    HOOK = 1 << ROAD_WEBHOOK
};

static struct config config;
static struct staff robin;

static void
set_up(void)
{
    config = (struct config){.ring_service = "bell", .mail = {.url = "smtps://mail.example"}};
    robin = (struct staff){.name = "Robin",
                           .phone = "+12085550190",
                           .address = "robin@larkspur.example",
                           .webhook_url = "https://robin.example",
                           .road_from = {[ROAD_TEXT] = ALERT_OFFICE,
                                         [ROAD_RING] = ALERT_URGENT,
                                         [ROAD_MAIL] = ALERT_OFFICE,
                                         [ROAD_WEBHOOK] = ALERT_EMERGENCY}};
}

START_TEST(each_road_is_used_from_its_level_on)
{
    ck_assert_uint_eq(roads_for(&config, &robin, ALERT_OFFICE, true), TEXT | MAIL);
    ck_assert_uint_eq(roads_for(&config, &robin, ALERT_URGENT, true), TEXT | RING | MAIL);
    ck_assert_uint_eq(roads_for(&config, &robin, ALERT_EMERGENCY, true), TEXT | RING | MAIL | HOOK);
}
END_TEST

START_TEST(what_is_not_to_ring_yet_does_not_but_an_emergency_always_does)
{
    ck_assert_uint_eq(roads_for(&config, &robin, ALERT_URGENT, false), TEXT | MAIL);
    ck_assert_uint_eq(roads_for(&config, &robin, ALERT_EMERGENCY, false) & RING, RING);
}
END_TEST

START_TEST(a_road_that_nothing_leads_to_is_none)
{
    config.ring_service = NULL;
    robin.address = NULL;
    ck_assert_uint_eq(roads_of(&config, &robin), TEXT | HOOK);
    robin.webhook_url = NULL;
    ck_assert_uint_eq(roads_for(&config, &robin, ALERT_EMERGENCY, true), TEXT);
}
END_TEST

START_TEST(an_alert_below_every_level_goes_by_all_roads_but_the_ring)
{
    robin.road_from[ROAD_TEXT] = ALERT_URGENT;
    robin.road_from[ROAD_MAIL] = ALERT_URGENT;
    ck_assert_uint_eq(roads_for(&config, &robin, ALERT_OFFICE, false), TEXT | MAIL | HOOK);
}
END_TEST

START_TEST(who_can_only_be_rung_is_rung)
{
    robin.road_from[ROAD_TEXT] = ALERT_NONE;
    robin.road_from[ROAD_MAIL] = ALERT_NONE;
    robin.road_from[ROAD_WEBHOOK] = ALERT_NONE;
    ck_assert_uint_eq(roads_for(&config, &robin, ALERT_OFFICE, false), RING);
    ck_assert_uint_eq(roads_of(&config, &robin), RING);
}
END_TEST

START_TEST(with_everything_switched_off_there_is_still_the_text)
{
    robin = (struct staff){.name = "Robin", .phone = "+12085550190"};
    ck_assert_uint_eq(roads_for(&config, &robin, ALERT_OFFICE, false), TEXT);
}
END_TEST

START_TEST(when_a_road_fails_all_that_are_left_go_whatever_their_level)
{
    ck_assert_uint_eq(roads_instead(&config, &robin, ALERT_URGENT, TEXT | MAIL, false),
                      RING | HOOK);
    ck_assert_uint_eq(roads_instead(&config, &robin, ALERT_URGENT, TEXT | RING | MAIL | HOOK, true),
                      0);
    robin.road_from[ROAD_RING] = ALERT_NONE;
    ck_assert_uint_eq(roads_instead(&config, &robin, ALERT_URGENT, TEXT, false), MAIL | HOOK);
}
END_TEST

START_TEST(an_office_alert_rings_only_when_a_road_has_failed_for_good)
{
    ck_assert_uint_eq(roads_instead(&config, &robin, ALERT_OFFICE, TEXT, false), MAIL | HOOK);
    ck_assert_uint_eq(roads_instead(&config, &robin, ALERT_OFFICE, TEXT, true), RING | MAIL | HOOK);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("road");
    Suite *suite = suite_create("road");
    SRunner *runner = srunner_create(suite);
    int failed;

    tcase_add_checked_fixture(tests, set_up, NULL);
    tcase_add_test(tests, each_road_is_used_from_its_level_on);
    tcase_add_test(tests, what_is_not_to_ring_yet_does_not_but_an_emergency_always_does);
    tcase_add_test(tests, a_road_that_nothing_leads_to_is_none);
    tcase_add_test(tests, an_alert_below_every_level_goes_by_all_roads_but_the_ring);
    tcase_add_test(tests, who_can_only_be_rung_is_rung);
    tcase_add_test(tests, with_everything_switched_off_there_is_still_the_text);
    tcase_add_test(tests, when_a_road_fails_all_that_are_left_go_whatever_their_level);
    tcase_add_test(tests, an_office_alert_rings_only_when_a_road_has_failed_for_good);
    suite_add_tcase(suite, tests);
    srunner_run_all(runner, CK_NORMAL);
    failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
