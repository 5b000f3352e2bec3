/* What staff text half asleep: no word of ours, half of one, or the outcome alone. */
#include "stage.h"

#include <string.h>

/* Each by itself leaves what is open as it is, and is answered so. */
static void
each_says(const char *const *texts, size_t count, const char *words)
{
    size_t i;

    for (i = 0; i < count; i++) {
        stage_changes(texts[i], ALERT_STEP_NONE, 0);
        fixture_says(stage, words);
        ck_assert_uint_eq(stage->verdict.reply_count, 1);
    }
}

#define EACH_SAYS(texts, words) each_says(texts, sizeof(texts) / sizeof((texts)[0]), words)

/* Gwen in Cabin 4 is dizzy, 12; Tom's 13 is for the office. */
static void
two_renters(void)
{
    fixture_alert(stage, 12, "sign:dizzy")->first_name = "Gwen";
    stage->alerts[0].place = "Cabin 4";
    stage->alerts[0].brief = "dizzy";
    fixture_alert(stage, 13, "gap")->first_name = "Tom";
    stage->alerts[1].phone = "+12085550113";
    stage->alerts[1].brief = "wants an answer";
    stage->alerts[1].level = ALERT_OFFICE;
}

/* ---- What happened? ------------------------------------------------------------------------- */

START_TEST(what_they_text_next_is_the_outcome_that_was_asked_for)
{
    static const char *const outcomes[] = {
        "was plugged into dead outlet",
        "false alarm",
        "Fixed.",
        "her daughter is with her",
        "ambulance took her",
        "she is fine, thank you",
        "swapped the unit",
    };
    size_t i;

    for (i = 0; i < sizeof outcomes / sizeof outcomes[0]; i++) {
        fixture_free(stage);
        stage_staff_set_up();
        two_renters();
        stage_changes("SORTED 12", ALERT_STEP_NONE, 0);
        fixture_says(stage, "What happened? Text SORTED 12");
        stage_changes(outcomes[i], ALERT_STEP_CLOSE, 12);
        ck_assert_str_eq(stage->verdict.alert_change.note, outcomes[i]);
        fixture_says(stage, "Alert 12 is closed: Gwen, Cabin 4. Your text is its note.");
        stage_changes(outcomes[i], ALERT_STEP_NONE, 0); /* once */
    }
}
END_TEST

START_TEST(what_is_no_outcome_closes_nothing_and_says_so)
{
    static const char *const texts[] = {
        "ok",
        "what?",
        "hm",
        "yes",
        "not yet",
        "never mind",
        "still dizzy",
        "on my way",
        "how is she?",
        "are you ok now",
        "good, go to the lobby now",
        "tell her to sit down",
        "i will call her back",
        "waiting for the ambulance",
        "who",
        "ok thanks",
    };

    two_renters();
    stage_changes("SORTED 12", ALERT_STEP_NONE, 0);
    EACH_SAYS(texts, "Alert 12 stays open, and your text went to nobody. What happened?");
    stage_changes("outlet was dead", ALERT_STEP_CLOSE, 12);
}
END_TEST

START_TEST(an_outcome_that_is_not_given_soon_or_after_another_order_closes_nothing)
{
    two_renters();
    stage_changes("SORTED 12", ALERT_STEP_NONE, 0);
    fixture_wait_minutes(stage, 16);
    stage_changes("was plugged into dead outlet", ALERT_STEP_NONE, 0);
    stage_changes("SORTED 12", ALERT_STEP_NONE, 0);
    stage_changes("MINE 13", ALERT_STEP_TAKE, 13);
    stage_changes("was plugged into dead outlet", ALERT_STEP_NONE, 0);
    fixture_says(stage, "NOT sent");
}
END_TEST

START_TEST(the_outcome_may_follow_when_a_name_told_which_one)
{
    two_renters();
    stage_changes("sorted", ALERT_STEP_NONE, 0);
    stage_changes("gwen", ALERT_STEP_NONE, 0);
    fixture_says(stage, "What happened? Text SORTED 12");
    stage_changes("outlet was dead", ALERT_STEP_CLOSE, 12);
    stage->alerts[1].head = 12;
    stage_changes("sorted 12 only", ALERT_STEP_NONE, 0);
    stage_changes("brought her a tank", ALERT_STEP_CLOSE, 12);
    ck_assert(stage->verdict.alert_change.only_this);
}
END_TEST

START_TEST(a_sign_in_the_outcome_is_new_unless_the_alert_tells_it)
{
    fixture_alert(stage, 12, "sign:chest-pain");
    fixture_alert(stage, 13, "gap");
    stage_changes("SORTED 12", ALERT_STEP_NONE, 0);
    stage_changes("chest pain is gone", ALERT_STEP_CLOSE, 12);
    stage_changes("SORTED 13", ALERT_STEP_NONE, 0);
    fixture_text(stage, "she has chest pain now");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    ck_assert_int_eq(stage->verdict.alert_change.step, ALERT_STEP_NONE);
    stage_changes("SORTED 12", ALERT_STEP_NONE, 0);
    fixture_text(stage, "now i have chest pain");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    ck_assert_int_eq(stage->verdict.alert_change.step, ALERT_STEP_NONE);
}
END_TEST

START_TEST(how_an_emergency_ended_closes_it_and_is_none_of_theirs)
{
    static const char *const outcomes[] = {
        "chest pain, the ambulance took her",
        "i called 911, medics are there",
        "she had chest pain but is fine now",
        "chest pain all day, ems brought her to the hospital",
        "she fell with chest pain, paramedics have her",
        "she is at the hospital, it was chest pain",
    };
    static const char *const theirs[] = {"i have chest pain",
                                         "called 911, i have chest pain",
                                         "my own chest pain is back",
                                         "she is ok but now i have chest pain",
                                         "another one has chest pain in the lobby",
                                         "a guest has chest pain",
                                         "911 at room 12 she stopped breathing, chest pain",
                                         "called 911 no answer, chest pain is bad",
                                         "doctor has to see him, chest pain",
                                         "had chest pain on the stairs"};
    size_t i;

    for (i = 0; i < sizeof outcomes / sizeof outcomes[0]; i++) {
        fixture_free(stage);
        stage_staff_set_up();
        two_renters();
        stage_changes("SORTED 12", ALERT_STEP_NONE, 0);
        stage_changes(outcomes[i], ALERT_STEP_CLOSE, 12);
        ck_assert_str_eq(stage->verdict.alert_change.note, outcomes[i]);
    }
    for (i = 0; i < sizeof theirs / sizeof theirs[0]; i++) {
        fixture_free(stage);
        stage_staff_set_up();
        two_renters();
        stage_changes("SORTED 12", ALERT_STEP_NONE, 0);
        fixture_text(stage, theirs[i]);
        fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
        ck_assert_int_eq(stage->verdict.alert_change.step, ALERT_STEP_NONE);
    }
}
END_TEST

/* ---- Words for a renter that reach nobody --------------------------------------------------- */

START_TEST(words_without_talk_are_said_first_not_to_be_sent)
{
    static const char *const texts[] = {"good, go to the lobby now", "is it plugged in", "sit down",
                                        "ok"};

    two_renters();
    stage->alerts[0].taken_by = "+12085550101";
    stage->alerts[0].has_talk = true;
    EACH_SAYS(texts, "NOT sent to Gwen. Text TALK 12 and your words to write to Gwen.");
    ck_assert(stage->verdict.relay.to == NULL);
    stage->alerts[0].no_texts = true;
    stage_changes("go to the lobby now", ALERT_STEP_NONE, 0);
    fixture_says(stage, "NOT sent to any renter. Open:\n12 URGENT dizzy");
}
END_TEST

START_TEST(signs_in_words_for_a_renter_without_talk_are_not_theirs)
{
    static const char *const numbered[] = {"12 stay calm, call 911 if you have chest pain",
                                           "#12: sit down, chest pain needs rest",
                                           "12 is the chest pain gone?"};
    static const char *const in_hand[] = {"do you still have chest pain?",
                                          "sit down if the chest pain comes back"};
    size_t i;

    two_renters();
    EACH_SAYS(numbered, "NOT sent to Gwen. Text TALK 12 and your words");
    for (i = 0; i < sizeof in_hand / sizeof in_hand[0]; i++) {
        fixture_text(stage, in_hand[i]); /* nobody is known to be written to */
        fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
        stage->context.recent_count = 0;
    }
    stage->alerts[0].taken_by = "+12085550101";
    EACH_SAYS(in_hand, "NOT sent to Gwen.");
    fixture_text(stage, "12 i have chest pain");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    fixture_text(stage, "sit with me, i have chest pain");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
}
END_TEST

/* What they have in hand takes nothing from what befalls somebody else beside them. */
START_TEST(what_befalls_somebody_new_is_heard)
{
    static const char *const texts[] = {
        "hold on a guest has chest pain",
        "can you send an ambulance to the office, someone here has chest pain",
        "talk to my wife, she has chest pain",
        "sit tight, my colleague has chest pain",
        "12 has chest pain",
        "12 is in chest pain",
        "hold on, a man in the shop has chest pain",
        "keep having chest pain myself",
        "rest does nothing for it, chest pain",
        "talk to dad, hes got chest pain",
        "talk is hard and chest pain since noon",
    };
    size_t i;

    two_renters();
    stage->alerts[0].taken_by = "+12085550101";
    stage->alerts[0].has_talk = true;
    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_text(stage, texts[i]);
        fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
        ck_assert(stage->verdict.relay.to == NULL);
        stage->context.recent_count = 0;
    }
}
END_TEST

START_TEST(who_asks_for_the_words_gets_them)
{
    static const char *const texts[] = {"help", "HELP?", "commands"};

    two_renters();
    EACH_SAYS(texts, "Text MINE 12 to take alert 12, TALK 12");
    stage->context.alert_count = 0;
    stage_changes("good, go to the lobby now", ALERT_STEP_NONE, 0);
    fixture_says(stage, "Text MINE 12 to take alert 12");
}
END_TEST

/* ---- Nearly an order ------------------------------------------------------------------------ */

START_TEST(who_agrees_reads_what_takes_the_one_that_waits)
{
    static const char *const texts[] = {"I take it", "on my way", "ok",
                                        "Yes!",      "got it",    "ok i am going now"};

    two_renters();
    EACH_SAYS(texts, "Text MINE 12 to take it: dizzy, Gwen, Cabin 4");
    stage->alerts[0].taken_by = "+12085550190";
    EACH_SAYS(texts, "Text MINE 13 to take it: wants an answer, Tom");
    stage->alerts[0].taken_by = NULL;
    stage->alerts[1].level = ALERT_URGENT;
    stage_changes("i take it", ALERT_STEP_NONE, 0);
    fixture_says(stage, "Which one? Open:\n12 URGENT dizzy");
    fixture_says(stage, "Text MINE and its number to take one.");
}
END_TEST

START_TEST(who_agrees_to_what_another_has_reads_who)
{
    fixture_alert(stage, 12, "gap")->taken_by = "+12085550190";
    stage->alerts[0].taken_name = "Perrin";
    stage_changes("on my way", ALERT_STEP_NONE, 0);
    fixture_says(stage, "Alert 12 is with Perrin.");
}
END_TEST

START_TEST(taking_is_understood_in_other_words_and_with_a_slip)
{
    static const char *const texts[] = {"Mien 12", "i take 12",           "I'll take gwen",
                                        "mnie 12", "ok going to cabin 4", "12 is mine",
                                        "got 12"};
    size_t i;

    two_renters();
    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        stage_changes(texts[i], ALERT_STEP_TAKE, 12);
    }
    stage_changes("Mien 99", ALERT_STEP_NONE, 0);
    stage_changes("i did not take 12", ALERT_STEP_NONE, 0);
    stage_changes("kim has 12", ALERT_STEP_NONE, 0);
    stage_changes("nobody going to gwen", ALERT_STEP_NONE, 0);
}
END_TEST

START_TEST(a_slip_of_another_word_is_asked_back_and_done_on_yes)
{
    two_renters();
    stage_changes("sortd 12 plug was loose", ALERT_STEP_NONE, 0);
    fixture_says(stage, "SORTED 12? Text YES");
    stage_changes("yes", ALERT_STEP_CLOSE, 12);
    ck_assert_str_eq(stage->verdict.alert_change.note, "plug was loose");
    stage_changes("yes", ALERT_STEP_NONE, 0); /* once */
    stage_changes("tlak 13 we open at 8", ALERT_STEP_NONE, 0);
    fixture_says(stage, "TALK 13? Text YES");
    stage_changes("no", ALERT_STEP_NONE, 0);
    stage_changes("tlak 13 we open at 8", ALERT_STEP_NONE, 0);
    stage_changes("YES!", ALERT_STEP_TALK, 13);
    ck_assert_str_eq(stage->verdict.relay.text, "Jo: we open at 8");
    stage_changes("sortd 12", ALERT_STEP_NONE, 0);
    stage_changes("yes", ALERT_STEP_NONE, 0);
    fixture_says(stage, "What happened?");
}
END_TEST

START_TEST(a_slip_of_open_lists_and_takes_nothing)
{
    two_renters();
    stage_changes("oepn", ALERT_STEP_NONE, 0);
    fixture_says(stage, "Open:\n12 URGENT dizzy");
    stage_changes("opne 13", ALERT_STEP_NONE, 0);
    fixture_says(stage, "13 OFFICE");
    stage_changes("yes", ALERT_STEP_NONE, 0);
}
END_TEST

START_TEST(what_it_is_about_tells_which_one_is_taken_but_closes_none)
{
    two_renters();
    stage->alerts[1].level = ALERT_URGENT;
    stage_changes("MINE dizzy", ALERT_STEP_TAKE, 12);
    stage_changes("mine, the answer one", ALERT_STEP_TAKE, 13);
    stage_changes("sorted dizzy no more", ALERT_STEP_NONE, 0);
    fixture_says(stage, "Which one?");
    stage->alerts[1].brief = "dizzy";
    stage_changes("MINE dizzy", ALERT_STEP_NONE, 0);
    fixture_says(stage, "Which one?");
}
END_TEST

/* ---- Their own turn ------------------------------------------------------------------------- */

START_TEST(who_cannot_do_their_turn_is_no_patient_and_a_colleague_is_told)
{
    static const char *const texts[] = {
        "Perrin here, cant do tonight, sick",
        "sick today cant come",
        "can someone swap my turn",
        "i have a fever and wont be in tomorrow",
        "calling in sick",
        "please cover for me tonight",
        "cant make my shift, dizzy since noon",
    };
    size_t i;

    two_renters();
    stage->context.office_opens_utc_s = fixture_start_utc_s + 3600;
    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        stage->context.recent_count = 0;
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_OFFICE, "%s", texts[i]);
        fixture_alerts(stage, ALERT_OFFICE, "duty:absent");
        ck_assert_int_eq(stage->verdict.alert.call_utc_s, stage->context.now_utc_s);
        fixture_says(stage, "A colleague is told that you cannot do your turn.");
    }
}
END_TEST

START_TEST(what_endangers_who_cannot_do_their_turn_counts)
{
    fixture_text(stage, "cant do tonight, i have chest pain");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    fixture_says(stage, "Call 911 now");
}
END_TEST

START_TEST(what_is_of_a_renter_or_an_order_is_no_absence)
{
    static const char *const texts[] = {
        "gwen cant come to the office today", "tell her i cant make it tonight",
        "she is not well today", "the ambulance cant come tonight", "pickup not coming today"};
    size_t i;

    two_renters();
    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.alert.reason == NULL ||
                          strcmp(stage->verdict.alert.reason, "duty:absent") != 0,
                      "%s", texts[i]);
    }
    stage_changes("TALK 12 i cant come tonight", ALERT_STEP_TALK, 12);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("staff loose");

    tcase_add_checked_fixture(tests, stage_staff_set_up, stage_tear_down);
    tcase_add_test(tests, what_they_text_next_is_the_outcome_that_was_asked_for);
    tcase_add_test(tests, what_is_no_outcome_closes_nothing_and_says_so);
    tcase_add_test(tests, an_outcome_that_is_not_given_soon_or_after_another_order_closes_nothing);
    tcase_add_test(tests, the_outcome_may_follow_when_a_name_told_which_one);
    tcase_add_test(tests, a_sign_in_the_outcome_is_new_unless_the_alert_tells_it);
    tcase_add_test(tests, how_an_emergency_ended_closes_it_and_is_none_of_theirs);
    tcase_add_test(tests, signs_in_words_for_a_renter_without_talk_are_not_theirs);
    tcase_add_test(tests, what_befalls_somebody_new_is_heard);
    tcase_add_test(tests, words_without_talk_are_said_first_not_to_be_sent);
    tcase_add_test(tests, who_asks_for_the_words_gets_them);
    tcase_add_test(tests, who_agrees_reads_what_takes_the_one_that_waits);
    tcase_add_test(tests, who_agrees_to_what_another_has_reads_who);
    tcase_add_test(tests, taking_is_understood_in_other_words_and_with_a_slip);
    tcase_add_test(tests, a_slip_of_another_word_is_asked_back_and_done_on_yes);
    tcase_add_test(tests, a_slip_of_open_lists_and_takes_nothing);
    tcase_add_test(tests, what_it_is_about_tells_which_one_is_taken_but_closes_none);
    tcase_add_test(tests, who_cannot_do_their_turn_is_no_patient_and_a_colleague_is_told);
    tcase_add_test(tests, what_endangers_who_cannot_do_their_turn_counts);
    tcase_add_test(tests, what_is_of_a_renter_or_an_order_is_no_absence);
    return fixture_run(tests);
}
