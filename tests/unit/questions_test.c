#include "fixture.h"

#include <string.h>

#include "steps.h"

static struct fixture *stage;

static void
set_up(void)
{
    stage = fixture_new();
}

static void
tear_down(void)
{
    fixture_free(stage);
}

START_TEST(a_topic_is_answered_from_the_record)
{
    fixture_text(stage, "when is it due");
    ck_assert_int_eq(stage->verdict.route, ROUTE_ANSWER);
    fixture_says(stage, "Your rental is due: Saturday, Feb 14, 10 am.");
    ck_assert_str_eq(fixture_answer(stage, "due-date")->topic, "due-date");
    ck_assert_int_gt(fixture_answer(stage, "due-date")->why.score, 0);
    ck_assert_ptr_nonnull(fixture_answer(stage, "due-date")->why.nearest);
    fixture_text(stage, "can i charge it in the car");
    fixture_says(stage, "but not both at once");
}
END_TEST

START_TEST(a_stranger_or_returned_renter_gets_the_general_words)
{
    stage->rentals[0].state = RENTAL_RETURNED;
    fixture_text(stage, "when is it due");
    fixture_says(stage, "the day on your slip");
    fixture_says_not(stage, "Feb 14");
    ck_assert_ptr_null(stage->verdict.rental_id);
    fixture_stranger(stage);
    fixture_text(stage, "when is it due");
    fixture_says_not(stage, "Feb 14");
}
END_TEST

START_TEST(an_overdue_renter_is_served_fully)
{
    stage->rentals[0].state = RENTAL_OVERDUE;
    fixture_text(stage, "when is it due");
    fixture_says(stage, "Feb 14");
}
END_TEST

START_TEST(with_two_rentals_it_asks_which_and_then_answers_the_question)
{
    fixture_second_rental(stage)->battery_count = 2;
    fixture_text(stage, "when is it due");
    fixture_says(stage, "1 Ana (Finch), 2 Tom (Wagtail)");
    fixture_says_not(stage, "Feb");
    ck_assert_ptr_null(stage->verdict.rental_id);
    fixture_text(stage, "2");
    fixture_says(stage, "Wednesday, Feb 11");
    ck_assert_str_eq(stage->verdict.rental_id, "R-2");
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "2 full batteries how long do i have left"); /* still of Tom */
    fixture_says(stage, "Tom: Counted with continuous 1, ordered at rest");
}
END_TEST

START_TEST(two_topics_are_offered_only_in_the_language_of_the_text)
{
    const struct message message = {.sender = "+12085550111", .text = "something in between"};
    struct asked asked = asked_whole(stage->arena, &message, &stage->context);
    struct verdict verdict = {.arena = stage->arena};

    asked.search.sureness = BETWEEN_TWO;
    asked.search.count = 2;
    asked.search.best[0].topic = kb_topic(stage->kb, "due-date", LANGUAGE_EN);
    asked.search.best[1].topic = kb_topic(stage->kb, "extend", LANGUAGE_EN);
    asked.language = LANGUAGE_ES; /* for which the fixture has no topics */
    ck_assert(!topics_decide(&asked, &verdict));
    asked.language = LANGUAGE_EN;
    ck_assert(topics_decide(&asked, &verdict));
    ck_assert_ptr_nonnull(strstr(verdict.answers[0].text, "When the rental is due"));
}
END_TEST

START_TEST(a_new_conversation_forgets_which_rental_the_last_was_about)
{
    fixture_second_rental(stage);
    fixture_text(stage, "when is it due for Tom");
    fixture_says(stage, "Feb 11");
    fixture_wait_minutes(stage, stage->house.conversation_s / 60 + 1);
    fixture_text(stage, "good morning");
    fixture_text(stage, "when is it due");
    fixture_says(stage, "1 Ana (Finch), 2 Tom (Wagtail)");
}
END_TEST

START_TEST(a_rental_may_be_chosen_by_name)
{
    fixture_second_rental(stage);
    fixture_text(stage, "when is it due");
    fixture_text(stage, "toms");
    fixture_says(stage, "Feb 11");
    fixture_text(stage, "when is it due for Ana");
    fixture_says(stage, "Feb 14");
}
END_TEST

START_TEST(what_needs_no_record_is_answered_without_asking_which)
{
    fixture_second_rental(stage);
    fixture_text(stage, "what are your office hours");
    fixture_says(stage, "Open 8 am to 6 pm.");
    fixture_says_not(stage, "Which rental");
}
END_TEST

START_TEST(two_questions_in_one_text_are_both_answered)
{
    fixture_text(stage, "when is it due? and can i charge it in the car?");
    ck_assert_ptr_nonnull(fixture_answer(stage, "due-date"));
    ck_assert_ptr_nonnull(fixture_answer(stage, "charge-car"));
    fixture_says(stage, "Feb 14");
    fixture_says(stage, "not both at once");
}
END_TEST

START_TEST(a_choice_between_two_topics_answers_the_question_that_was_asked)
{
    struct conversation *conversation = &stage->context.conversation;

    *conversation = (struct conversation){.question = QUESTION_WHICH_TOPIC,
                                          .asked_about = "2 full, the hours",
                                          .asked_utc_s = fixture_start_utc_s,
                                          .last_utc_s = fixture_start_utc_s,
                                          .choices = {"contact", "hours-left"},
                                          .choice_count = 2};
    fixture_text(stage, "the second one");
    ck_assert_ptr_nonnull(fixture_answer(stage, "hours-left"));
    fixture_says(stage, "Plan on 1 h 54 min");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_NONE);
}
END_TEST

START_TEST(neither_of_two_topics_goes_to_a_person)
{
    stage->context.conversation = (struct conversation){.question = QUESTION_WHICH_TOPIC,
                                                        .asked_about = "the thing with the hours",
                                                        .asked_utc_s = fixture_start_utc_s,
                                                        .choices = {"contact", "hours-left"},
                                                        .choice_count = 2};
    fixture_text(stage, "no");
    ck_assert_ptr_nonnull(fixture_answer(stage, "gap"));
    fixture_alerts(stage, ALERT_OFFICE, "gap");
}
END_TEST

START_TEST(a_name_that_is_an_ordinary_word_picks_nobody)
{
    fixture_second_rental(stage);
    stage->rentals[0].first_name = "Will";
    fixture_text(stage, "how long will 2 full batteries last");
    fixture_says(stage, "Which rental");
    fixture_free(stage);
    stage = fixture_new();
    fixture_second_rental(stage);
    stage->rentals[0].first_name = "Will";
    fixture_text(stage, "how long do 2 full batteries last for will");
    fixture_says_not(stage, "Which rental");
}
END_TEST

START_TEST(more_questions_than_replies_go_to_a_person_and_911_is_still_named)
{
    fixture_text(stage, "I feel dizzy. when is it due? how do i pack it? can i charge in the car? "
                        "what is pulse? where are you? how do i pack it up? when is it due back? "
                        "what are your office hours? when are you open? "
                        "when is it due? when is it due back? can i charge in the car?");
    ck_assert(verdict_overflowed(&stage->verdict));
    fixture_alerts(stage, ALERT_URGENT, "sign:dizzy");
    fixture_says(stage, "a person will answer the rest");
    fixture_says(stage, "Call 911 if");
}
END_TEST

START_TEST(only_the_office_can_extend)
{
    fixture_text(stage, "can we keep it longer");
    ck_assert_int_eq(stage->verdict.route, ROUTE_STAFF);
    fixture_alerts(stage, ALERT_OFFICE, "office:extend");
    fixture_says(stage, "a person will answer");
}
END_TEST

START_TEST(asking_for_a_person_gets_one_but_asking_for_hours_gets_hours)
{
    fixture_text(stage, "i want to talk to a person");
    ck_assert_int_eq(stage->verdict.route, ROUTE_STAFF);
    fixture_alerts(stage, ALERT_OFFICE, "office:contact");
    fixture_text(stage, "what are your office hours");
    ck_assert_int_eq(stage->verdict.route, ROUTE_ANSWER);
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

START_TEST(what_nothing_answers_goes_to_a_person_and_ends_with_911)
{
    fixture_text(stage, "do penguins enjoy jazz");
    ck_assert_int_eq(stage->verdict.route, ROUTE_UNANSWERED);
    fixture_alerts(stage, ALERT_OFFICE, "gap");
    fixture_says(stage, "A person will answer.");
    ck_assert_ptr_nonnull(strstr(stage->verdict.replies[0].text, "Trouble breathing? Call 911."));
    fixture_stranger(stage);
    fixture_text(stage, "do penguins enjoy jazz");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
    fixture_says(stage, "208-555-0100");
}
END_TEST

START_TEST(a_unit_that_does_not_start_calls_someone_at_once)
{
    fixture_text(stage, "it wont turn on");
    ck_assert_int_eq(stage->verdict.route, ROUTE_EQUIPMENT);
    fixture_alerts(stage, ALERT_URGENT, "trouble:stopped");
    ck_assert(stage->verdict.alert.ring);
    fixture_says(stage, "your E cylinder at the flow on its tag");
    fixture_says(stage, "Is oxygen flowing again?");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
}
END_TEST

START_TEST(a_hot_battery_is_left_alone_and_someone_called)
{
    fixture_text(stage, "there is a burning smell");
    fixture_alerts(stage, ALERT_URGENT, "trouble:danger");
    fixture_says_not(stage, "flowing");
}
END_TEST

START_TEST(a_cracked_case_waits_for_the_office)
{
    fixture_text(stage, "the handle is cracked");
    ck_assert_int_eq(stage->verdict.route, ROUTE_EQUIPMENT);
    fixture_alerts(stage, ALERT_OFFICE, "trouble:other");
}
END_TEST

START_TEST(a_torn_hose_waits_for_the_office_and_a_torn_jacket_does_not)
{
    static const char *const ours[] = {"the puppy chewed the hose", "our charger lid got smashed",
                                       "se rajo la tapa de la pila"};
    size_t i;

    for (i = 0; i < sizeof ours / sizeof ours[0]; i++) {
        fixture_text(stage, ours[i]);
        ck_assert_int_eq(stage->verdict.route, ROUTE_EQUIPMENT);
        fixture_alerts(stage, ALERT_OFFICE, "trouble:other");
    }
    fixture_text(stage, "where do they mend a torn jacket");
    ck_assert_int_ne(stage->verdict.route, ROUTE_EQUIPMENT);
    fixture_text(stage, "what do we do if the hose gets torn");
    ck_assert_int_ne(stage->verdict.route, ROUTE_EQUIPMENT);
}
END_TEST

START_TEST(thanks_and_emoji_get_no_answer_and_hello_a_short_one)
{
    static const char *const quiet[] = {
        "thanks", "ok thank you so much!!", "👍", "gracias", "muchas gracias por todo, muy amable",
        "."};
    size_t i;

    for (i = 0; i < sizeof quiet / sizeof quiet[0]; i++) {
        fixture_text(stage, quiet[i]);
        ck_assert_int_eq(stage->verdict.route, ROUTE_SMALLTALK);
        ck_assert_uint_eq(stage->verdict.reply_count, 0);
        ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
    }
    fixture_text(stage, "hello there");
    ck_assert_uint_eq(stage->verdict.reply_count, 1);
}
END_TEST

START_TEST(a_picture_without_words_goes_to_the_office)
{
    stage->message = (struct message){
        .text = "", .sender = "+12085550101", .sent_utc_s = fixture_start_utc_s, .attachments = 1};
    handlers_decide(stage->arena, &stage->message, &stage->context, &stage->verdict);
    fixture_says(stage, "can't see pictures");
    fixture_alerts(stage, ALERT_OFFICE, "picture");
}
END_TEST

START_TEST(while_a_person_leads_the_program_is_silent_except_for_signs)
{
    stage->context.conversation.in_charge = "+12085550190";
    fixture_text(stage, "when is it due");
    ck_assert_uint_eq(stage->verdict.reply_count, 0);
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
    fixture_text(stage, "chest pain");
    ck_assert_uint_eq(stage->verdict.reply_count, 2);
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
}
END_TEST

START_TEST(the_first_reply_of_a_conversation_says_that_it_is_automatic)
{
    static const char automatic[] = "Automatic answer from Larkspur Air Rentals, not a person.";

    fixture_text(stage, "when is it due");
    ck_assert_int_eq(strncmp(stage->verdict.replies[0].text, automatic, strlen(automatic)), 0);
    fixture_wait_minutes(stage, 10);
    fixture_text(stage, "when is it due");
    fixture_says_not(stage, "automatic");
    fixture_wait_minutes(stage, 7 * 60);
    fixture_text(stage, "when is it due");
    fixture_says(stage, automatic);
}
END_TEST

START_TEST(any_bytes_lead_to_a_verdict)
{
    static char long_text[20000];
    static const char *const texts[] = {"",     " ", "\xff\xff", "{due}",
                                        "????", "1", "%s%n",     "{{{|}}}"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_text(stage, texts[i]);
    }
    memset(long_text, 'a', sizeof long_text - 1);
    fixture_text(stage, long_text);
    ck_assert_int_eq(stage->verdict.route, ROUTE_UNANSWERED);
}
END_TEST

START_TEST(the_same_input_gives_the_same_verdict)
{
    const char *first, *second;

    fixture_text(stage, "2 full and one half, how long have i got left");
    first = fixture_replies(stage);
    stage->context.conversation = (struct conversation){0};
    stage->accounts[0] = (struct battery_account){0};
    stage->context.reminder_count = 0;
    stage->context.recent_count = 0;
    fixture_text(stage, "2 full and one half, how long have i got left");
    second = fixture_replies(stage);
    ck_assert_str_eq(first, second);
}
END_TEST

START_TEST(which_rental_is_answered_by_number_or_name_in_usual_forms)
{
    static const char *const texts[] = {"2",
                                        "2.",
                                        "number 2 please",
                                        "Tom",
                                        "its tom",
                                        "the second one",
                                        "Tom's",
                                        "toms please",
                                        "two",
                                        "the wagtail",
                                        "for my husband tom"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_second_rental(stage);
        fixture_text(stage, "when is it due");
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.rental_id != NULL &&
                          strcmp(stage->verdict.rental_id, "R-2") == 0,
                      "%s", texts[i]);
        fixture_says(stage, "Feb 11");
    }
}
END_TEST

START_TEST(a_word_that_is_also_a_name_does_not_answer_which_rental)
{
    static const char *const texts[] = {"will it last", "may i swap it", "and may i charge it",
                                        "2 full ones"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        fixture_free(stage);
        stage = fixture_new();
        fixture_second_rental(stage);
        stage->rentals[0].first_name = "Will";
        stage->rentals[1].first_name = "May";
        fixture_text(stage, "when is it due");
        fixture_text(stage, texts[i]);
        ck_assert_msg(stage->verdict.rental_id == NULL, "%s", texts[i]);
    }
}
END_TEST

START_TEST(while_we_ask_which_rental_a_question_that_names_one_is_answered_for_it)
{
    fixture_second_rental(stage);
    fixture_text(stage, "when is it due");
    fixture_text(stage, "how long do 2 full batteries last for tom");
    ck_assert_str_eq(stage->verdict.rental_id, "R-2");
    fixture_says(stage, "continuous 1, ordered at rest");
}
END_TEST

START_TEST(a_name_before_all_else_chooses_the_rental)
{
    fixture_second_rental(stage);
    fixture_text(stage, "tom, 2 full. how long");
    ck_assert_str_eq(stage->verdict.rental_id, "R-2");
    fixture_text(stage, "Ana. i have 2 full, how long");
    ck_assert_str_eq(stage->verdict.rental_id, "R-1");
}
END_TEST

START_TEST(a_charge_in_another_question_does_not_answer_ours)
{
    fixture_text(stage, "how long have i got left");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_WHICH_CHARGE);
    fixture_text(stage, "can i charge a half full one in the car?");
    ck_assert_ptr_nonnull(fixture_answer(stage, "charge-car"));
    fixture_says_not(stage, "Plan on");
    fixture_text(stage, "2 full");
    fixture_says(stage, "Plan on 1 h 54 min");
}
END_TEST

START_TEST(a_stranger_with_a_broken_unit_is_told_whom_to_call)
{
    fixture_stranger(stage);
    fixture_text(stage, "the handle is cracked");
    fixture_says(stage, "Please call 208-555-0100");
    fixture_says_not(stage, "A person will answer");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_NONE);
}
END_TEST

START_TEST(what_we_ask_back_ends_with_911_for_a_renter)
{
    const char *text;

    fixture_text(stage, "how long have i got left");
    text = stage->verdict.replies[0].text;
    ck_assert_str_eq(text + strlen(text) - 28, "Trouble breathing? Call 911.");
    fixture_second_rental(stage);
    fixture_text(stage, "when is it due");
    text = stage->verdict.replies[0].text;
    ck_assert_str_eq(text + strlen(text) - 28, "Trouble breathing? Call 911.");
    fixture_stranger(stage);
    fixture_text(stage, "do penguins enjoy jazz");
    fixture_says_not(stage, "911");
}
END_TEST

START_TEST(no_two_questions_of_ours_are_open_at_once_and_a_person_answers_the_other)
{
    fixture_second_rental(stage);
    fixture_text(stage, "machine stopped");
    fixture_text(stage, "when is it due");
    fixture_says_not(stage, "Which rental");
    fixture_alerts(stage, ALERT_OFFICE, "gap");
    ck_assert_int_eq(stage->context.conversation.question, QUESTION_FLOWING);
}
END_TEST

static void
offer_two_topics(void)
{
    fixture_free(stage);
    stage = fixture_new();
    stage->context.conversation = (struct conversation){.question = QUESTION_WHICH_TOPIC,
                                                        .asked_about = "the thing with the hours",
                                                        .asked_utc_s = fixture_start_utc_s,
                                                        .last_utc_s = fixture_start_utc_s,
                                                        .choices = {"contact", "due-date"},
                                                        .choice_count = 2};
}

START_TEST(a_number_that_counts_something_else_chooses_no_topic)
{
    offer_two_topics();
    fixture_text(stage, "2 full");
    ck_assert_ptr_null(fixture_answer(stage, "due-date"));
    fixture_says(stage, "Plan on 1 h 54 min");
    offer_two_topics();
    fixture_text(stage, "number 2 please");
    ck_assert_ptr_nonnull(fixture_answer(stage, "due-date"));
    offer_two_topics();
    fixture_text(stage, "no plug here");
    fixture_alerts(stage, ALERT_URGENT, "power:no-plug");
    offer_two_topics();
    fixture_text(stage, "no, neither of those thanks");
    fixture_alerts(stage, ALERT_OFFICE, "gap");
}
END_TEST

START_TEST(whatever_question_is_open_any_text_leads_to_a_verdict)
{
    static const char *const texts[] = {"",
                                        "?",
                                        "no",
                                        "yes",
                                        "si",
                                        "ya no",
                                        "2",
                                        "first",
                                        "tom",
                                        "NO NO NO",
                                        "yes but no",
                                        "\xff",
                                        "no plug here",
                                        "2 full",
                                        "130%",
                                        "dead",
                                        "machine stopped",
                                        "chest pain",
                                        "STOP",
                                        "AYUDA",
                                        "passed away",
                                        "# 9",
                                        "neither",
                                        "cancel",
                                        "...",
                                        "y",
                                        "n"};
    size_t i;
    int question;

    stage->keeps_alerts = true;
    fixture_second_rental(stage);
    for (question = QUESTION_NONE; question <= QUESTION_READING_OR_AGE; question++) {
        for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
            stage->context.conversation = (struct conversation){
                .question = (enum open_question)question, .asked_utc_s = fixture_start_utc_s};
            stage->context.alert_count = 0;
            stage->context.recent_count = 0;
            fixture_text(stage, texts[i]);
            ck_assert_msg(stage->verdict.answer_count > 0, "%d: %s", question, texts[i]);
            fixture_text(stage, texts[i]); /* and once more, in what that led to */
            ck_assert_msg(stage->verdict.answer_count > 0, "%d: %s", question, texts[i]);
        }
    }
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("questions");

    tcase_add_checked_fixture(tests, set_up, tear_down);
    tcase_add_test(tests, a_topic_is_answered_from_the_record);
    tcase_add_test(tests, a_stranger_or_returned_renter_gets_the_general_words);
    tcase_add_test(tests, an_overdue_renter_is_served_fully);
    tcase_add_test(tests, with_two_rentals_it_asks_which_and_then_answers_the_question);
    tcase_add_test(tests, two_topics_are_offered_only_in_the_language_of_the_text);
    tcase_add_test(tests, a_new_conversation_forgets_which_rental_the_last_was_about);
    tcase_add_test(tests, a_rental_may_be_chosen_by_name);
    tcase_add_test(tests, what_needs_no_record_is_answered_without_asking_which);
    tcase_add_test(tests, two_questions_in_one_text_are_both_answered);
    tcase_add_test(tests, a_choice_between_two_topics_answers_the_question_that_was_asked);
    tcase_add_test(tests, neither_of_two_topics_goes_to_a_person);
    tcase_add_test(tests, a_name_that_is_an_ordinary_word_picks_nobody);
    tcase_add_test(tests, more_questions_than_replies_go_to_a_person_and_911_is_still_named);
    tcase_add_test(tests, only_the_office_can_extend);
    tcase_add_test(tests, asking_for_a_person_gets_one_but_asking_for_hours_gets_hours);
    tcase_add_test(tests, what_nothing_answers_goes_to_a_person_and_ends_with_911);
    tcase_add_test(tests, a_unit_that_does_not_start_calls_someone_at_once);
    tcase_add_test(tests, a_hot_battery_is_left_alone_and_someone_called);
    tcase_add_test(tests, a_cracked_case_waits_for_the_office);
    tcase_add_test(tests, thanks_and_emoji_get_no_answer_and_hello_a_short_one);
    tcase_add_test(tests, a_picture_without_words_goes_to_the_office);
    tcase_add_test(tests, while_a_person_leads_the_program_is_silent_except_for_signs);
    tcase_add_test(tests, the_first_reply_of_a_conversation_says_that_it_is_automatic);
    tcase_add_test(tests, any_bytes_lead_to_a_verdict);
    tcase_add_test(tests, the_same_input_gives_the_same_verdict);
    tcase_add_test(tests, which_rental_is_answered_by_number_or_name_in_usual_forms);
    tcase_add_test(tests, a_word_that_is_also_a_name_does_not_answer_which_rental);
    tcase_add_test(tests, while_we_ask_which_rental_a_question_that_names_one_is_answered_for_it);
    tcase_add_test(tests, a_name_before_all_else_chooses_the_rental);
    tcase_add_test(tests, a_charge_in_another_question_does_not_answer_ours);
    tcase_add_test(tests, a_stranger_with_a_broken_unit_is_told_whom_to_call);
    tcase_add_test(tests, a_torn_hose_waits_for_the_office_and_a_torn_jacket_does_not);
    tcase_add_test(tests, what_we_ask_back_ends_with_911_for_a_renter);
    tcase_add_test(tests, no_two_questions_of_ours_are_open_at_once_and_a_person_answers_the_other);
    tcase_add_test(tests, a_number_that_counts_something_else_chooses_no_topic);
    tcase_add_test(tests, whatever_question_is_open_any_text_leads_to_a_verdict);
    return fixture_run(tests);
}
