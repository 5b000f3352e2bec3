/* Which alert staff mean, how they see the open ones, and what they say of renters. */
#include "stage.h"

/* ---- Which one is meant --------------------------------------------------------------------- */

/* Gwen in Cabin 4 has 12, Tom in Room 2 of the lodge 13: each by themselves. */
static void
two_renters(void)
{
    fixture_alert(stage, 12, "sign:dizzy")->first_name = "Gwen";
    fixture_alert(stage, 13, "gap")->first_name = "Tom";
    stage->alerts[0].place = "Cabin 4";
    stage->alerts[1].place = "Room 2, Fallow Lodge";
    stage->alerts[1].phone = "+12085550113";
}

START_TEST(the_number_may_be_left_out_when_one_is_open)
{
    fixture_alert(stage, 12, "sign:chest-pain");
    stage_changes("mine", ALERT_STEP_TAKE, 12);
    stage_changes("sorted, spoke to her daughter", ALERT_STEP_CLOSE, 12);
    ck_assert_str_eq(stage->verdict.alert_change.note, "spoke to her daughter");
}
END_TEST

START_TEST(with_two_open_and_no_number_they_get_the_list)
{
    fixture_alert(stage, 12, "sign:chest-pain");
    fixture_alert(stage, 13, "gap")->taken_by = "+12085550190";
    stage_changes("mine", ALERT_STEP_NONE, 0);
    fixture_says(stage, "12 URGENT in brief, +12085550101, just now, nobody has it\n"
                        "13 URGENT in brief, +12085550101, just now, with +12085550190");
    stage_changes("SORTED 99 all well", ALERT_STEP_NONE, 0);
    fixture_says(stage, "99 is not open. Which one? Open:\n12 URGENT in brief");
}
END_TEST

START_TEST(a_name_or_a_place_tells_which_alert_is_meant)
{
    two_renters();
    stage_changes("mine gwen", ALERT_STEP_TAKE, 12);
    stage_changes("MINE, the one in Fallow Lodge", ALERT_STEP_TAKE, 13);
    stage_changes("mine please, I go to cabin 4", ALERT_STEP_TAKE, 12);
    stage_changes("sorted tom: plug was loose", ALERT_STEP_CLOSE, 13);
    ck_assert_str_eq(stage->verdict.alert_change.note, "tom: plug was loose");
    fixture_says(stage, "Alert 13 is closed: Tom, Room 2, Fallow Lodge.");
    stage_changes("sorted room 2", ALERT_STEP_NONE, 0);
    fixture_says(stage, "What happened? Text SORTED 13");
    stage_changes("sorted spoke with tom and gwen", ALERT_STEP_NONE, 0);
    fixture_says(stage, "Which one?");
}
END_TEST

START_TEST(a_name_that_two_have_or_that_is_a_word_tells_nobody_apart)
{
    two_renters();
    stage->alerts[0].first_name = "Tom";
    stage_changes("mine tom", ALERT_STEP_NONE, 0);
    fixture_says(stage, "Which one?");
    stage_changes("mine tom in cabin 4", ALERT_STEP_TAKE, 12);
    stage->alerts[0].first_name = "Will";
    stage_changes("talk will you be home", ALERT_STEP_NONE, 0);
    stage_changes("talk to will: are you home", ALERT_STEP_TALK, 12);
    stage_changes("mine will", ALERT_STEP_TAKE, 12);
}
END_TEST

START_TEST(whoever_takes_an_alert_reads_whose_it_is)
{
    two_renters();
    stage_changes("MINE 13", ALERT_STEP_TAKE, 13);
    fixture_says(stage, "Alert 13 is yours: in brief, Tom, Room 2, Fallow Lodge, +12085550113. "
                        "Text SORTED 13");
}
END_TEST

START_TEST(what_was_ordered_waits_until_a_number_or_name_tells_for_whom)
{
    two_renters();
    stage_changes("talk is the plug in?", ALERT_STEP_NONE, 0);
    fixture_says(stage, "Which one? Open:\n12 URGENT");
    fixture_says(stage, "Text only its number or name.");
    stage_changes("13", ALERT_STEP_TALK, 13);
    ck_assert_str_eq(stage->verdict.relay.text, "Jo: is the plug in?");
    fixture_says(stage, "Sent to Tom, Room 2, Fallow Lodge.");
    stage_changes("13", ALERT_STEP_NONE, 0); /* once */
    stage_changes("sorted 99 power is back", ALERT_STEP_NONE, 0);
    stage_changes("hm", ALERT_STEP_NONE, 0);
    stage_changes("I meant Gwen", ALERT_STEP_CLOSE, 12);
    ck_assert_str_eq(stage->verdict.alert_change.note, "power is back");
    stage_changes("mine", ALERT_STEP_NONE, 0);
    stage_changes("cabin 4 please", ALERT_STEP_TAKE, 12);
}
END_TEST

START_TEST(what_waits_is_dropped_by_another_order_and_with_time)
{
    two_renters();
    stage_changes("talk hello", ALERT_STEP_NONE, 0);
    stage_changes("OPEN", ALERT_STEP_NONE, 0);
    stage_changes("13", ALERT_STEP_NONE, 0);
    stage_changes("talk hello", ALERT_STEP_NONE, 0);
    fixture_wait_minutes(stage, 16);
    stage_changes("13", ALERT_STEP_NONE, 0);
    fixture_says(stage, "Text MINE 12");
}
END_TEST

START_TEST(one_of_several_without_power_is_closed_alone_by_name_and_all_by_number)
{
    two_renters();
    stage->alerts[0].reason = stage->alerts[0].reasons = "sign:power-out-now";
    stage->alerts[1].head = 12; /* called with Gwen */
    stage_changes("sorted gwen has a tank", ALERT_STEP_CLOSE, 12);
    ck_assert(stage->verdict.alert_change.only_this);
    fixture_alert(stage, 15, "gap");
    stage_changes("sorted power is back", ALERT_STEP_NONE, 0);
    stage_changes("12", ALERT_STEP_CLOSE, 12);
    ck_assert(!stage->verdict.alert_change.only_this);
    fixture_says(stage, "Closed: 12 Gwen, Cabin 4; 13 Tom, Room 2, Fallow Lodge.");
}
END_TEST

START_TEST(the_list_has_the_gravest_first_and_is_never_too_long)
{
    fixture_alert(stage, 12, "gap")->level = ALERT_OFFICE;
    fixture_alert(stage, 13, "gap")->level = ALERT_EMERGENCY;
    stage_changes("OPEN", ALERT_STEP_NONE, 0);
    fixture_says(stage, "Open:\n13 EMERGENCY in brief, +12085550101, just now, nobody has it\n"
                        "12 OFFICE in brief");
    stage_changes("open the door", ALERT_STEP_NONE, 0);
    fixture_says(stage, "NOT sent to any renter. Open:\n13 EMERGENCY");
}
END_TEST

START_TEST(the_list_says_how_old_an_alert_is_and_who_has_it)
{
    two_renters();
    stage->alerts[1].taken_by = "+12085550190";
    stage->alerts[1].taken_name = "Perrin";
    stage->alerts[0].opened_utc_s -= 3 * 3600 + 60;
    stage->alerts[1].opened_utc_s -= 1230;
    stage_changes("open", ALERT_STEP_NONE, 0);
    fixture_says(stage, "12 URGENT in brief, Gwen, Cabin 4, +12085550101, 3 h ago, nobody has it\n"
                        "13 URGENT in brief, Tom, Room 2, Fallow Lodge, +12085550113, 20 min ago, "
                        "with Perrin");
    stage_changes("open 13", ALERT_STEP_NONE, 0);
    fixture_says_not(stage, "Gwen");
    fixture_says(stage,
                 "Address, door, unit, cylinder: not by text. A call tells them after key 1");
    stage->alerts[1].rental_id = NULL; /* a stranger's: there is none */
    stage_changes("open 13", ALERT_STEP_NONE, 0);
    fixture_says_not(stage, "Address");
    stage_changes("open 12", ALERT_STEP_NONE, 0);
    ck_assert_uint_eq(stage->verdict.reply_count, 1);
    stage_changes("mine 12", ALERT_STEP_TAKE, 12);
    fixture_says(stage, "Text SORTED 12 and what happened when it is done. Address, door, unit");
    ck_assert_uint_eq(stage->verdict.reply_count, 1);
    fixture_wait_minutes(stage, 3 * 24 * 60);
    stage_changes("open 12", ALERT_STEP_NONE, 0);
    fixture_says(stage, "3 days ago");
}
END_TEST

START_TEST(a_list_too_long_for_two_parts_loses_place_and_phone_first)
{
    static const char long_place[] = "The green cabin behind the two gates by the long bridge";
    size_t i;

    for (i = 0; i < 4; i++) {
        fixture_alert(stage, 12 + (int64_t)i, "gap")->first_name = "Gwen";
        stage->alerts[i].place = long_place;
    }
    stage_changes("open", ALERT_STEP_NONE, 0);
    fixture_says(stage, "12 URGENT in brief, Gwen, just now, nobody has it");
    fixture_says(stage, "15 URGENT");
    fixture_says(stage, "OPEN and its number: place and phone.");
    for (i = 0; i < 4; i++) {
        stage->alerts[i].brief = long_place;
    }
    stage_changes("mine", ALERT_STEP_NONE, 0);
    fixture_says(stage, "\nand 2 more\n");
    ck_assert_uint_eq(stage->verdict.reply_count, 1);
}
END_TEST

/* ---- What they say of a renter -------------------------------------------------------------- */

static void
is_no_sign_of_theirs(const char *text)
{
    stage_changes(text, ALERT_STEP_NONE, 0); /* and calls nobody */
    fixture_says(stage, "NOT sent to ");
}

START_TEST(a_question_about_a_renter_is_no_sign_of_staff)
{
    fixture_alert(stage, 12, "sign:chest-pain")->first_name = "Gwen";
    is_no_sign_of_theirs("is the renter on backup");
    is_no_sign_of_theirs("is she dizzy?");
    is_no_sign_of_theirs("does Gwen feel sick");
    is_no_sign_of_theirs("tell her to sit down");
    is_no_sign_of_theirs("is the chest pain gone");
    is_no_sign_of_theirs("the renter says her chest pain is gone"); /* 12 tells it already */
    fixture_says(stage, "NOT sent to Gwen. Text TALK 12 and your words to write to Gwen.");
}
END_TEST

START_TEST(somebody_else_with_the_same_is_a_new_emergency)
{
    static const char *const texts[] = {"customer just walked in with chest pain send somebody",
                                        "another guest with chest pain at the front desk",
                                        "a man here has chest pain"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_free(stage);
        stage_staff_set_up();
        fixture_alert(stage, 12, "sign:chest-pain")->first_name = "Gwen";
        fixture_text(stage, texts[i]);
        fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    }
}
END_TEST

START_TEST(orders_that_are_none_swallow_no_emergency)
{
    static const char *const texts[] = {"talk they say he has chest pain in the hall",
                                        "hand of Gwen is numb and she has chest pain"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_free(stage);
        stage_staff_set_up();
        fixture_alert(stage, 12, "gap")->first_name = "Gwen";
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "%s", texts[i]);
    }
}
END_TEST

START_TEST(an_emergency_that_no_alert_tells_counts_whoever_tells_it)
{
    two_renters();
    fixture_text(stage, "the renter has chest pain");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    stage->context.recent_count = 0;
    fixture_text(stage, "is she ok she has chest pain");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    stage->context.recent_count = 0;
    fixture_text(stage, "talk to me i have chest pain");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
}
END_TEST

START_TEST(words_for_a_renter_not_named_yet_are_no_sign_of_staff)
{
    two_renters();
    stage_changes("talk do you have chest pain?", ALERT_STEP_NONE, 0);
    fixture_says(stage, "Which one?");
    stage_changes("talk gwen if i am late and you have chest pain call 911", ALERT_STEP_TALK, 12);
}
END_TEST

START_TEST(what_was_ordered_is_not_read_together_with_what_comes_next)
{
    fixture_alert(stage, 12, "gap");
    stage_changes("SORTED 12 she has chest", ALERT_STEP_CLOSE, 12);
    stage->context.alert_count = 0;
    stage_changes("pain", ALERT_STEP_NONE, 0);
    fixture_text(stage, "i have chest");
    fixture_text(stage, "pain"); /* but their own words are */
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
}
END_TEST

START_TEST(a_hand_that_is_passed_to_nobody_may_be_their_own)
{
    fixture_alert(stage, 12, "gap")->taken_by = "+12085550101";
    fixture_text(stage, "hand on my chest pain");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
}
END_TEST

START_TEST(words_behind_talk_are_no_sign_of_staff_though_they_speak_of_themselves_too)
{
    static const char *const for_a_renter[] = {
        "TALK sit up, i am coming, if the chest pain gets worse call 911",
        "TALK is the chest pain gone?",
        "TALK we are nearly there. chest pain means sit down",
        "talk open the door for them, i called 911",
    };
    static const char *const theirs[] = {"talk to me i have chest pain",
                                         "talk to someone please, chest pain",
                                         "talk i have chest pain, my chest hurts"};
    size_t i;

    two_renters();
    for (i = 0; i < 2 * (sizeof for_a_renter / sizeof for_a_renter[0]); i++) {
        stage_changes(for_a_renter[i / 2], ALERT_STEP_NONE, 0);
        fixture_says(stage, "Which one?");
        stage->alerts[0].taken_by = i % 2 == 0 ? "+12085550101" : NULL; /* or not in hand */
    }
    for (i = 0; i < sizeof theirs / sizeof theirs[0]; i++) {
        fixture_text(stage, theirs[i]);
        fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    }
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("staff meant");

    tcase_add_checked_fixture(tests, stage_staff_set_up, stage_tear_down);
    tcase_add_test(tests, the_number_may_be_left_out_when_one_is_open);
    tcase_add_test(tests, with_two_open_and_no_number_they_get_the_list);
    tcase_add_test(tests, a_name_or_a_place_tells_which_alert_is_meant);
    tcase_add_test(tests, a_name_that_two_have_or_that_is_a_word_tells_nobody_apart);
    tcase_add_test(tests, whoever_takes_an_alert_reads_whose_it_is);
    tcase_add_test(tests, what_was_ordered_waits_until_a_number_or_name_tells_for_whom);
    tcase_add_test(tests, what_waits_is_dropped_by_another_order_and_with_time);
    tcase_add_test(tests, one_of_several_without_power_is_closed_alone_by_name_and_all_by_number);
    tcase_add_test(tests, the_list_has_the_gravest_first_and_is_never_too_long);
    tcase_add_test(tests, the_list_says_how_old_an_alert_is_and_who_has_it);
    tcase_add_test(tests, a_list_too_long_for_two_parts_loses_place_and_phone_first);
    tcase_add_test(tests, a_question_about_a_renter_is_no_sign_of_staff);
    tcase_add_test(tests, somebody_else_with_the_same_is_a_new_emergency);
    tcase_add_test(tests, orders_that_are_none_swallow_no_emergency);
    tcase_add_test(tests, an_emergency_that_no_alert_tells_counts_whoever_tells_it);
    tcase_add_test(tests, words_for_a_renter_not_named_yet_are_no_sign_of_staff);
    tcase_add_test(tests, what_was_ordered_is_not_read_together_with_what_comes_next);
    tcase_add_test(tests, a_hand_that_is_passed_to_nobody_may_be_their_own);
    tcase_add_test(tests,
                   words_behind_talk_are_no_sign_of_staff_though_they_speak_of_themselves_too);
    return fixture_run(tests);
}
