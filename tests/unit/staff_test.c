#include "stage.h"

START_TEST(an_alert_is_taken_by_number_however_it_is_typed)
{
    fixture_alert(stage, 12, "sign:chest-pain");
    fixture_alert(stage, 13, "gap");
    stage_changes("MINE 12", ALERT_STEP_TAKE, 12);
    stage_changes("mine #13.", ALERT_STEP_TAKE, 13);
    stage_changes("mine alert 13", ALERT_STEP_TAKE, 13);
    stage_changes("Mine12", ALERT_STEP_TAKE, 12);
    fixture_says(stage, "Alert 12 is yours");
}
END_TEST

START_TEST(closing_keeps_the_note_as_written)
{
    fixture_alert(stage, 12, "sign:chest-pain");
    fixture_alert(stage, 13, "gap");
    stage_changes("SORTED 12 Ambulance took him, Dr. Q told", ALERT_STEP_CLOSE, 12);
    ck_assert_str_eq(stage->verdict.alert_change.note, "Ambulance took him, Dr. Q told");
}
END_TEST

START_TEST(without_an_outcome_nothing_is_closed)
{
    fixture_alert(stage, 13, "gap");
    stage_changes("sorted 13", ALERT_STEP_NONE, 0);
    fixture_says(stage, "What happened? Text SORTED 13");
}
END_TEST

START_TEST(of_two_who_take_one_hears_who_has_it)
{
    fixture_alert(stage, 12, "sign:chest-pain")->taken_by = "+12085550190";
    stage_changes("mine 12", ALERT_STEP_NONE, 0);
    fixture_says(stage, "Alert 12 is with +12085550190.");
    stage->alerts[0].taken_name = "Perrin";
    stage_changes("mine 12", ALERT_STEP_NONE, 0);
    fixture_says(stage, "Alert 12 is with Perrin.");
    stage->alerts[0].taken_by = "+12085550101"; /* the sender's own */
    stage_changes("mine 12", ALERT_STEP_TAKE, 12);
}
END_TEST

/* The mains failed: 13 is called with 12. */
static void
two_without_power(void)
{
    fixture_alert(stage, 12, "sign:power-out-now");
    fixture_alert(stage, 13, "sign:power-out-now")->head = 12;
    stage->alerts[0].first_name = "Gwen";
    stage->alerts[0].place = "Cabin 4";
    stage->alerts[1].first_name = "Tom";
    stage->alerts[1].place = "Cabin 5";
    stage->alerts[1].phone = "+12085550113";
}

START_TEST(what_is_called_together_needs_no_number_but_to_write_to_one)
{
    two_without_power();
    stage_changes("mine", ALERT_STEP_TAKE, 12);
    stage_changes("sorted power is back", ALERT_STEP_CLOSE, 12);
    fixture_says(stage, "Alert 12 is closed. Closed: 12 Gwen, Cabin 4; 13 Tom, Cabin 5.");
    stage_changes("talk how full are they?", ALERT_STEP_NONE, 0);
    fixture_says(stage, "Which one?");
    stage_changes("talk 13 how full are they?", ALERT_STEP_TALK, 13);
    stage_changes("sorted 13 has a tank", ALERT_STEP_CLOSE, 13);
    fixture_says(stage, "Alert 13 is closed: Tom, Cabin 5.");
}
END_TEST

START_TEST(the_first_of_them_is_closed_alone_by_only)
{
    two_without_power();
    stage_changes("SORTED 12 only brought her a tank", ALERT_STEP_CLOSE, 12);
    ck_assert(stage->verdict.alert_change.only_this);
    ck_assert_str_eq(stage->verdict.alert_change.note, "brought her a tank");
    fixture_says(stage, "Alert 12 is closed: Gwen, Cabin 4.");
    stage_changes("SORTED 12 only", ALERT_STEP_NONE, 0);
    fixture_says(stage, "What happened?");
    stage_changes("SORTED 13 only a fuse", ALERT_STEP_CLOSE, 13);
    ck_assert_str_eq(stage->verdict.alert_change.note, "only a fuse");
}
END_TEST

START_TEST(the_list_shows_together_what_is_called_together)
{
    two_without_power();
    stage_changes("open", ALERT_STEP_NONE, 0);
    fixture_says(stage, "Open:\n12 URGENT in brief, Gwen, Cabin 4, +12085550101, just now, nobody "
                        "has it\n13 URGENT with 12, Tom, Cabin 5, +12085550113, just now");
}
END_TEST

START_TEST(closing_for_several_says_who_is_closed_and_who_stays_open)
{
    two_without_power();
    fixture_alert(stage, 14, "sign:power-out-now")->head = 12;
    stage->alerts[2].first_name = "Ana";
    stage->alerts[2].is_new = true;
    fixture_alert(stage, 15, "flowing:no")->level = ALERT_EMERGENCY;
    stage->alerts[3].first_name = "Bo";
    stage->alerts[3].reasons = "sign:power-out-now,flowing:no";
    stage_changes("sorted 12 power is back", ALERT_STEP_CLOSE, 12);
    fixture_says(stage, "Closed: 12 Gwen, Cabin 4; 13 Tom, Cabin 5. 14 Ana stays open: nobody was "
                        "called about it yet. 15 Bo stays open: emergency.");
    stage_changes("sorted 13 has a tank", ALERT_STEP_CLOSE, 13);
    fixture_says_not(stage, "stays open");
}
END_TEST

START_TEST(who_takes_what_several_told_reads_who_runs_out_first)
{
    two_without_power();
    stage->alerts[0].runs_out_utc_s = fixture_start_utc_s + 3600;
    stage_changes("mine 13", ALERT_STEP_TAKE, 13);
    ck_assert(stage->verdict.alert_change.names_all);
    fixture_says(stage, "Alert 12 is yours.");
    fixture_says(stage, "First to run out first:\n13 Tom, Cabin 5, charge not told\n12 Gwen, "
                        "Cabin 4, until ");
    stage->alerts[1].runs_out_utc_s = fixture_start_utc_s + 7200;
    stage_changes("mine 12", ALERT_STEP_TAKE, 12);
    fixture_says(stage, "first:\n12 Gwen");
}
END_TEST

START_TEST(of_many_who_are_taken_two_parts_say_as_many_as_they_hold)
{
    two_without_power();
    fixture_alert(stage, 14, "sign:power-out-now")->head = 12;
    stage->alerts[1].place = "The cabin by the river that is last on the road, behind the two "
                             "gates and over the long bridge, which is the green one of the three";
    stage->alerts[2].place = stage->alerts[1].place;
    stage_changes("mine 12", ALERT_STEP_TAKE, 12);
    fixture_says(stage, "12 Gwen");
    fixture_says(stage, "\nand 1 more");
    ck_assert(!stage->verdict.alert_change.names_all);
    ck_assert_uint_eq(stage->verdict.reply_count, 1);
}
END_TEST

START_TEST(nothing_open_is_said)
{
    stage_changes("mine", ALERT_STEP_NONE, 0);
    fixture_says(stage, "No alert is open.");
}
END_TEST

START_TEST(anything_else_gets_one_line_of_help_and_ok_closes_nothing)
{
    fixture_alert(stage, 12, "sign:chest-pain");
    stage_changes("ok thanks", ALERT_STEP_NONE, 0);
    fixture_says(stage, "Text MINE 12");
    ck_assert_uint_eq(stage->verdict.reply_count, 1);
    fixture_says_not(stage, "automatic");
}
END_TEST

START_TEST(a_sign_inside_a_relay_raises_no_new_alert)
{
    fixture_alert(stage, 12, "sign:chest-pain");
    stage_changes("SORTED 12 she had chest pain, ambulance came", ALERT_STEP_CLOSE, 12);
    fixture_text(stage, "Alert 12 Ana: chest pain. Text MINE 12 to take it.");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

START_TEST(a_sign_of_their_own_alerts_a_colleague)
{
    fixture_alert(stage, 12, "gap");
    fixture_text(stage, "i have chest pain");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    fixture_says(stage, "Call 911 now");
}
END_TEST

START_TEST(consent_words_do_not_opt_staff_out)
{
    fixture_text(stage, "STOP");
    ck_assert_int_eq(stage->verdict.consent, CONSENT_KEEP);
}
END_TEST

/* ---- Writing to the renter, passing on, the list --------------------------------------------- */

static void
relays(const char *text, const char *to, const char *words)
{
    const struct relay *relay = &stage->verdict.relay;

    fixture_text(stage, text);
    if (words == NULL) {
        ck_assert_msg(relay->text == NULL, "\"%s\" wrote \"%s\"", text, relay->text);
        return;
    }
    ck_assert_msg(relay->text != NULL, "\"%s\" wrote nothing: %s", text, fixture_replies(stage));
    ck_assert_str_eq(relay->to, to);
    ck_assert_str_eq(relay->text, words);
}

START_TEST(words_for_the_renter_go_out_under_the_writer_s_name)
{
    fixture_alert(stage, 12, "gap")->phone = "+12085550123";
    relays("TALK 12 I am on my way, 10 min.", "+12085550123", "Jo: I am on my way, 10 min.");
    ck_assert_int_eq(stage->verdict.alert_change.step, ALERT_STEP_TALK);
    fixture_says(stage, "Sent.");
    ck_assert_str_eq(stage->verdict.rental_id, "R-1");
    relays("talk: which cabin?", "+12085550123", "Jo: which cabin?"); /* only one is open */
    fixture_alert(stage, 13, "gap");
    relays("talk which cabin?", NULL, NULL); /* never when two are */
    fixture_says(stage, "Which one?");
}
END_TEST

START_TEST(without_words_they_ask_for_what_the_renter_texts)
{
    fixture_alert(stage, 12, "gap");
    relays("TALK 12", NULL, NULL);
    ck_assert_int_eq(stage->verdict.alert_change.step, ALERT_STEP_TALK);
    fixture_says(stage, "What they text comes to you now");
}
END_TEST

START_TEST(nobody_writes_to_another_s_renter_or_to_whom_texts_may_not_go)
{
    struct open_alert *alert = fixture_alert(stage, 12, "gap");

    alert->taken_by = "+12085550190";
    alert->taken_name = "Perrin";
    relays("TALK 12 hello", NULL, NULL);
    ck_assert_int_eq(stage->verdict.alert_change.step, ALERT_STEP_NONE);
    fixture_says(stage, "Alert 12 is with Perrin.");
    alert->offered_to = "+12085550101"; /* the sender */
    relays("TALK 12 hello", "+12085550101", "Jo: hello");
    alert->no_texts = true;
    relays("TALK 12 hello", NULL, NULL);
    fixture_says(stage, "Please ring.");
    alert->phone = "hutbell";
    relays("TALK 12 hello", NULL, NULL);
    fixture_says(stage, "nobody to write to");
}
END_TEST

START_TEST(a_sign_in_words_for_the_renter_is_no_new_one_but_their_own_is)
{
    struct open_alert *alert = fixture_alert(stage, 12, "gap");

    relays("TALK 12 if you have chest pain call 911", "+12085550101",
           "Jo: if you have chest pain call 911");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
    fixture_text(stage, "talk to me i have chest pain"); /* no alert in hand, no number */
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    alert->taken_by = "+12085550101";
    relays("talk has the chest pain gone?", "+12085550101", "Jo: has the chest pain gone?");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

static void
staff_are_three(void)
{
    static const struct colleague staff[] = {
        {"Jo", "+12085550101"}, {"Perrin", "+12085550190"}, {"Ysolde Marsh", "+12085550191"}};

    stage->context.colleagues = staff;
    stage->context.colleague_count = sizeof staff / sizeof staff[0];
}

static void
hands(const char *text, const char *to)
{
    fixture_text(stage, text);
    if (to == NULL) {
        ck_assert_int_eq(stage->verdict.alert_change.step, ALERT_STEP_NONE);
        return;
    }
    ck_assert_msg(stage->verdict.alert_change.step == ALERT_STEP_HAND, "\"%s\": %s", text,
                  fixture_replies(stage));
    ck_assert_str_eq(stage->verdict.alert_change.to, to);
}

START_TEST(an_alert_is_passed_on_by_name_however_it_is_typed)
{
    staff_are_three();
    fixture_alert(stage, 12, "gap");
    hands("HAND 12 PERRIN", "+12085550190");
    fixture_says(stage, "Perrin was asked to take alert 12. Until then it is yours.");
    hands("hand 12 to perrin.", "+12085550190");
    hands("Hand ysolde", "+12085550191");
    hands("hand12 Ysolde Marsh", "+12085550191");
}
END_TEST

START_TEST(who_is_nobody_or_oneself_gets_no_alert)
{
    staff_are_three();
    fixture_alert(stage, 12, "gap");
    hands("HAND 12", NULL);
    fixture_says(stage, "HAND 12 and one of: Perrin, Ysolde Marsh");
    hands("HAND 12 Per", NULL);
    hands("HAND 12 Mallory", NULL);
    hands("HAND 12 Jo", NULL);
    fixture_alert(stage, 13, "gap");
    hands("HAND Perrin", NULL);
    fixture_says(stage, "Which one?");
}
END_TEST

/* ---- A death -------------------------------------------------------------------------------- */

static void
rests(const char *text, enum rest_step step, const char *rental_id)
{
    fixture_text(stage, text);
    ck_assert_msg(stage->verdict.rest_change.step == step, "\"%s\": %s", text,
                  fixture_replies(stage));
    if (rental_id != NULL) {
        ck_assert_str_eq(stage->verdict.rest_change.rental_id, rental_id);
    }
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}

START_TEST(a_death_is_told_by_rental_or_by_its_alert_and_taken_back)
{
    fixture_alert(stage, 12, "gap");
    rests("DIED 12", REST_STEP_BEGIN, "R-1");
    rests("died #12", REST_STEP_BEGIN, "R-1");
    rests("DIED", REST_STEP_NONE, NULL); /* who must be named, even if one is open */
    rests("DIED 13", REST_STEP_NONE, NULL);
    rests("died this morning, 12", REST_STEP_NONE, NULL);
    stage->context.named_rental = &stage->rentals[0];
    rests("DIED R-1", REST_STEP_BEGIN, "R-1");
    fixture_says(stage, "If that is wrong: ALIVE R-1");
    rests("ALIVE R-1", REST_STEP_END, "R-1");
}
END_TEST

/* ---- Whose phone it is ---------------------------------------------------------------------- */

static void
links(const char *text, enum phone_link_step step, const char *phone)
{
    fixture_text(stage, text);
    ck_assert_msg(stage->verdict.phone_link.step == step, "\"%s\" led to step %d: %s", text,
                  (int)stage->verdict.phone_link.step, fixture_replies(stage));
    if (step != PHONE_LINK_NONE) {
        ck_assert_str_eq(stage->verdict.phone_link.phone, phone);
        ck_assert_str_eq(stage->verdict.phone_link.rental_id, stage->rentals[0].rental_id);
    }
    ck_assert_int_eq(stage->verdict.alert_change.step, ALERT_STEP_NONE);
}

START_TEST(a_phone_is_linked_however_it_is_typed)
{
    stage->context.named_rental = &stage->rentals[0];
    links("LINK +12085550150 R-34", PHONE_LINK_ADD, "+12085550150");
    fixture_says(stage, "+12085550150 counts as a phone of");
    links("  link +1 (208) 555-0150  r-34. ", PHONE_LINK_ADD, "+12085550150");
    links("Unlink +1.208.555.0150 R-34", PHONE_LINK_END, "+12085550150");
    fixture_says(stage, "no longer counts");
}
END_TEST

START_TEST(an_alert_s_number_stands_for_its_phone)
{
    stage->context.named_rental = &stage->rentals[0];
    fixture_alert(stage, 12, "sign:chest-pain")->phone = "+12085550150";
    links("link R-34", PHONE_LINK_ADD, "+12085550150"); /* the only one that is open */
    fixture_alert(stage, 13, "gap")->phone = "+12085550151";
    links("link 13 R-34", PHONE_LINK_ADD, "+12085550151");
    links("link #12 R-34", PHONE_LINK_ADD, "+12085550150");
    links("link R-34", PHONE_LINK_NONE, NULL);
    links("link 14 R-34", PHONE_LINK_NONE, NULL);
    fixture_says(stage, "Text LINK, the phone with + or the number of its alert");
}
END_TEST

START_TEST(what_is_no_phone_and_no_alert_links_nothing)
{
    static const char *const texts[] = {"LINK",
                                        "LINK R-34",
                                        "LINK 2085550150 R-34",
                                        "LINK +1208x550150 R-34",
                                        "LINK +123 R-34",
                                        "LINK +1234567890123456 R-34",
                                        "LINK 99999999999999999999 R-34",
                                        "LINK +12085550150",
                                        "LINKED +12085550150 R-34",
                                        "LINK 12 13 R-34"};
    size_t i;

    stage->context.named_rental = &stage->rentals[0];
    for (i = 0; i < sizeof(texts) / sizeof(texts[0]); i++) {
        links(texts[i], PHONE_LINK_NONE, NULL);
    }
}
END_TEST

START_TEST(no_phone_is_linked_to_a_rental_that_is_closed_or_not_there_or_names_it_itself)
{
    links("LINK +12085550150 R-35", PHONE_LINK_NONE, NULL);
    fixture_says(stage, "There is no rental R-35");
    stage->context.named_rental = &stage->rentals[0];
    stage->rentals[0].phones[0].number = "+12085550150";
    stage->rentals[0].phone_count = 1;
    links("LINK +12085550150 R-34", PHONE_LINK_NONE, NULL);
    fixture_says(stage, "stands in the record");
    links("UNLINK +12085550150 R-34", PHONE_LINK_NONE, NULL);
    stage->rentals[0].state = RENTAL_CLOSED;
    links("LINK +12085550151 R-34", PHONE_LINK_NONE, NULL);
    fixture_says(stage, "is closed");
    links("UNLINK +12085550151 R-34", PHONE_LINK_END, "+12085550151");
}
END_TEST

static void
confirms(const char *text, bool does)
{
    fixture_text(stage, text);
    ck_assert_msg(stage->verdict.confirms_turn == does, "\"%s\" %s", text,
                  does ? "confirms no turn" : "confirms a turn");
}

START_TEST(here_alone_confirms_the_turn_they_were_asked_about)
{
    stage->context.turn = TURN_ASKED_THEM;
    confirms("HERE", true);
    fixture_says(stage, "The turn is yours.");
    confirms(" here! ", true);
    confirms("here we go again", false);
    confirms("is kim here", false);
    confirms("yes", false);
}
END_TEST

START_TEST(of_a_turn_that_is_not_theirs_to_confirm_they_hear_whose_it_is)
{
    confirms("here", false);
    fixture_says(stage, "Nobody waits for you");
    stage->context.turn = TURN_ANOTHERS;
    stage->context.turn_name = "Kim";
    confirms("here", false);
    fixture_says(stage, "Kim has the turn.");
    stage->context.turn = TURN_THEIRS;
    confirms("here", false); /* once is enough */
    fixture_says(stage, "The turn is yours.");
}
END_TEST

START_TEST(here_of_a_renter_is_no_such_word)
{
    stage->context.role = SENDER_RENTER;
    stage->context.turn = TURN_ASKED_THEM;
    confirms("here", false);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("staff");

    tcase_add_checked_fixture(tests, stage_staff_set_up, stage_tear_down);
    tcase_add_test(tests, an_alert_is_taken_by_number_however_it_is_typed);
    tcase_add_test(tests, closing_keeps_the_note_as_written);
    tcase_add_test(tests, without_an_outcome_nothing_is_closed);
    tcase_add_test(tests, of_two_who_take_one_hears_who_has_it);
    tcase_add_test(tests, what_is_called_together_needs_no_number_but_to_write_to_one);
    tcase_add_test(tests, the_first_of_them_is_closed_alone_by_only);
    tcase_add_test(tests, the_list_shows_together_what_is_called_together);
    tcase_add_test(tests, closing_for_several_says_who_is_closed_and_who_stays_open);
    tcase_add_test(tests, who_takes_what_several_told_reads_who_runs_out_first);
    tcase_add_test(tests, of_many_who_are_taken_two_parts_say_as_many_as_they_hold);
    tcase_add_test(tests, nothing_open_is_said);
    tcase_add_test(tests, anything_else_gets_one_line_of_help_and_ok_closes_nothing);
    tcase_add_test(tests, a_sign_inside_a_relay_raises_no_new_alert);
    tcase_add_test(tests, a_sign_of_their_own_alerts_a_colleague);
    tcase_add_test(tests, consent_words_do_not_opt_staff_out);
    tcase_add_test(tests, words_for_the_renter_go_out_under_the_writer_s_name);
    tcase_add_test(tests, without_words_they_ask_for_what_the_renter_texts);
    tcase_add_test(tests, nobody_writes_to_another_s_renter_or_to_whom_texts_may_not_go);
    tcase_add_test(tests, a_sign_in_words_for_the_renter_is_no_new_one_but_their_own_is);
    tcase_add_test(tests, an_alert_is_passed_on_by_name_however_it_is_typed);
    tcase_add_test(tests, who_is_nobody_or_oneself_gets_no_alert);
    tcase_add_test(tests, a_death_is_told_by_rental_or_by_its_alert_and_taken_back);
    tcase_add_test(tests, a_phone_is_linked_however_it_is_typed);
    tcase_add_test(tests, an_alert_s_number_stands_for_its_phone);
    tcase_add_test(tests, what_is_no_phone_and_no_alert_links_nothing);
    tcase_add_test(tests,
                   no_phone_is_linked_to_a_rental_that_is_closed_or_not_there_or_names_it_itself);
    tcase_add_test(tests, here_alone_confirms_the_turn_they_were_asked_about);
    tcase_add_test(tests, of_a_turn_that_is_not_theirs_to_confirm_they_hear_whose_it_is);
    tcase_add_test(tests, here_of_a_renter_is_no_such_word);
    return fixture_run(tests);
}
