/* What is told or asked while an emergency is open: of who was called, of the place, of what to do,
 * of a wish to die, and of what is new; with the content as it ships. */
#include "shipped_stage.h"

#include <string.h>

#include "grade.h"
#include "parts.h"
#include "say.h"

/* Five minutes after another, in a conversation of its own. */
static void
said_after(const char *first, const char *text)
{
    shipped_talk_anew();
    fixture_text(stage, first);
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, text);
}

#define EACH_AFTER(first, texts, reason, words)                                                    \
    each_after(first, texts, sizeof(texts) / sizeof((texts)[0]), reason, words)

/* Each calls a person again for that reason, and is told these words. */
static void
each_after(const char *first, const char *const *texts, size_t count, const char *reason,
           const char *words)
{
    size_t i;

    for (i = 0; i < count; i++) {
        said_after(first, texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "\"%s\"", texts[i]);
        ck_assert_msg(strcmp(stage->verdict.alert.reason, reason) == 0, "\"%s\": %s", texts[i],
                      stage->verdict.alert.reason);
        ck_assert_msg(strstr(fixture_replies(stage), words) != NULL, "\"%s\": %s", texts[i],
                      fixture_replies(stage));
    }
}

/* ---- Of who was called ----------------------------------------------------------------------- */

START_TEST(who_does_not_get_through_hears_that_staff_call_and_what_to_try)
{
    static const char *const english[] = {"911 hung up on me",
                                          "the 911 line is busy",
                                          "911 doesn't pick up",
                                          "911 isnt working up here",
                                          "nobody answers at 911",
                                          "cant reach 911",
                                          "we are on hold since forever",
                                          "my cell has no signal"};
    static const char *const spanish[] = {"el 911 me cuelga", "no me contestan en el 911",
                                          "el 911 da ocupado", "no me puedo comunicar al 911",
                                          "me tienen en espera"};

    EACH_AFTER("he has chest pain", english, "help:cannot-call",
               "Staff were asked to call 911 for you.");
    EACH_AFTER("le duele el pecho", spanish, "help:cannot-call",
               "Pedimos al personal que llame al 911 por usted.");
}
END_TEST

START_TEST(who_asks_whether_we_called_hears_that_a_program_cannot)
{
    static const char *const english[] = {"did you guys call 911",   "has anyone called them?",
                                          "are you sending someone", "will somebody phone them",
                                          "u called the ambulance?", "is help coming",
                                          "hello are you there",     "please hurry"};
    static const char *const spanish[] = {"ustedes ya llamaron?", "alguien ya llamo al 911?",
                                          "van a mandar a alguien", "apurense por favor", "vengan"};

    EACH_AFTER("he has chest pain", english, "help:asks-whether", "it can't call 911");
    EACH_AFTER("le duele el pecho", spanish, "help:asks-whether", "no puede llamar al 911");
}
END_TEST

START_TEST(who_is_through_or_may_call_is_not_told_that_staff_call_for_them)
{
    static const char *const texts[] = {"911 is answering now",
                                        "no the reception lady is with us",
                                        "its busy in the hall",
                                        "the desk cant call yet",
                                        "will you call them or should i",
                                        "my phone is dead but i have hers",
                                        "did you call 911"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("he has chest pain", texts[i]);
        ck_assert_msg(strstr(fixture_replies(stage), "Staff were asked") == NULL, "\"%s\": %s",
                      texts[i], fixture_replies(stage));
    }
    shipped_talk_anew();
    fixture_text(stage, "he has chest pain did you call 911?");
    fixture_says(stage, "Don't wait for them.");
    fixture_says(stage, "It can't call 911.");
    shipped_talk_anew();
    fixture_text(stage, "she fainted, is there no service here at the desk");
    fixture_says(stage, "Don't wait for them.");
}
END_TEST

START_TEST(who_waits_long_hears_to_call_again_and_staff_that_they_should)
{
    static const char *const english[] = {
        "911 says theyre an hour away", "they never showed", "its been 25 minutes since we called",
        "they told us a 40 min wait because of ice", "where is everybody"};
    static const char *const spanish[] = {"llame a la ambulancia y no llega",
                                          "ya pasaron 30 minutos", "dicen que tardan una hora",
                                          "nunca llegaron"};

    EACH_AFTER("he has chest pain", english, "help:late", "Staff were asked to call 911 too.");
    EACH_AFTER("le duele el pecho", spanish, "help:late", "Pedimos al personal");
    said_after("he has chest pain", "should i wait 30 min");
    ck_assert_str_ne(stage->verdict.alert.reason, "help:late");
}
END_TEST

START_TEST(only_that_help_comes_or_thanks_goes_without_a_word)
{
    static const char *const silent[] = {"the ambulance is here", "the medics are here thank you",
                                         "yes ambulance is on the way", "ya viene la ambulancia"};
    static const char *const answered[] = {
        "i called my son he is calling 911", "does he really need the ambulance",
        "called them and they put me on hold", "ambulance is coming but he looks gray",
        "ya llame y me dejaron en espera"};
    size_t i;

    for (i = 0; i < sizeof silent / sizeof silent[0]; i++) {
        said_after("he has chest pain", silent[i]);
        ck_assert_msg(stage->verdict.reply_count == 0, "\"%s\": %s", silent[i],
                      fixture_replies(stage));
    }
    for (i = 0; i < sizeof answered / sizeof answered[0]; i++) {
        said_after("he has chest pain", answered[i]);
        ck_assert_msg(stage->verdict.reply_count > 0, "\"%s\"", answered[i]);
    }
}
END_TEST

START_TEST(who_asks_whether_help_is_still_needed_is_told_to_let_it_come)
{
    static const char *const texts[] = {"does he still need the ambulance", "can i cancel 911",
                                        "do we still need them he is up"};

    EACH_AFTER("he has chest pain", texts, "help:still-needed", "Don't call it off.");
}
END_TEST

START_TEST(help_that_is_called_off_is_to_come_even_beside_an_all_clear)
{
    static const char *const english[] = {
        "she woke up, should i cancel the ambulance", "false alarm, how do i call off 911",
        "hes breathing again. call the ambulance off", "shes ok now tell them to turn around",
        "all good now so i cancelled the ambulance"};
    static const char *const spanish[] = {
        "ya esta mejor, puedo cancelar la ambulancia?", "falsa alarma, diganles que se regresen",
        "ya esta bien, les digo que no vengan", "ya desperto asi que cancele la ambulancia"};

    EACH_AFTER("he fainted", english, "help:still-needed", "Don't call it off.");
    EACH_AFTER("mi esposa se desmayo", spanish, "help:still-needed", "No cancele la ambulancia.");
    said_after("he fainted", "she is ok now, false alarm");
    fixture_alerts(stage, ALERT_OFFICE, "is-over");
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, "do i cancel the ambulance");
    fixture_alerts(stage, ALERT_EMERGENCY, "help:still-needed");
}
END_TEST

/* Told at once, after an all-clear, and hours later: each calls a person for that reason. */
static void
calls_whenever(const char *first, const char *all_clear, const char *text, const char *reason)
{
    enum { OLD_MINUTES = 180 };

    said_after(first, text);
    fixture_alerts(stage, ALERT_EMERGENCY, reason);
    said_after(first, all_clear);
    fixture_alerts(stage, ALERT_OFFICE, "is-over");
    fixture_wait_minutes(stage, 5);
    fixture_text(stage, text);
    fixture_alerts(stage, ALERT_EMERGENCY, reason);
    shipped_talk_anew();
    fixture_text(stage, first);
    fixture_wait_minutes(stage, OLD_MINUTES);
    fixture_text(stage, text);
    fixture_alerts(stage, ALERT_EMERGENCY, reason);
    fixture_text(stage, "what now");
    fixture_alerts(stage, ALERT_EMERGENCY, "help:asks-what-to-do"); /* it is open anew */
}

START_TEST(staff_who_are_said_to_call_are_called_whatever_the_hour)
{
    static const char *const told[][2] = {
        {"my phone has no signal", "help:cannot-call"},
        {"they say the road is closed", "help:no-way"},
        {"they never showed up", "help:late"},
        {"did you guys call them", "help:asks-whether"},
    };
    static const char *const told_in_spanish[][2] = {
        {"no tengo senal", "help:cannot-call"},
        {"dicen que no hay paso", "help:no-way"},
        {"nadie ha venido", "help:late"},
        {"ustedes ya llamaron?", "help:asks-whether"},
    };
    size_t i;

    for (i = 0; i < sizeof told / sizeof told[0]; i++) {
        calls_whenever("he cant breathe", "he is ok now", told[i][0], told[i][1]);
        calls_whenever("no puede respirar", "ya esta bien", told_in_spanish[i][0],
                       told_in_spanish[i][1]);
    }
}
END_TEST

START_TEST(a_symptom_beside_a_refusal_reaches_staff)
{
    static const char *const texts[][3] = {
        {"does he need the ambulance? he is dizzy", "dizzy", "Don't call it off."},
        {"he wont let me call and his ankles are swollen", "swollen", "Call 911 anyway"},
        {"no me deja llamar y tiene los tobillos hinchados", "swollen", "Llame al 911 aunque"},
        {"cancelo la ambulancia? todavia esta mareado", "dizzy", "No cancele la ambulancia."},
    };
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after(i < 2 ? "he cant breathe" : "no puede respirar", texts[i][0]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "\"%s\"", texts[i][0]);
        ck_assert_msg(strstr(stage->verdict.alert.brief, texts[i][1]) != NULL, "\"%s\": %s",
                      texts[i][0], stage->verdict.alert.brief);
        fixture_says(stage, texts[i][2]);
    }
    said_after("he cant breathe", "she refuses and the tank is empty");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:no-oxygen-source");
}
END_TEST

START_TEST(whoever_refuses_911_is_to_be_called_anyway)
{
    static const char *const english[] = {"he refuses to let me call", "she wont let us call",
                                          "he doesnt want an ambulance",
                                          "im scared to call, i have no papers"};
    static const char *const spanish[] = {"no quiere que llame", "mi papa se niega",
                                          "dice que se siente bien que no llame",
                                          "me da miedo llamar, soy indocumentada"};

    EACH_AFTER("he has chest pain", english, "help:refuses", "Call 911 anyway");
    EACH_AFTER("le duele el pecho", spanish, "help:refuses", "Llame al 911 aunque");
}
END_TEST

/* ---- Where they are -------------------------------------------------------------------------- */

START_TEST(a_place_told_reaches_the_alert_and_they_hear_that_it_did)
{
    static const char *const english[] = {
        "cabin 7 past the second gate", "gate code 9021",
        "we are at 318 juniper lane",   "its room 12 at the lodge",
        "hwy 40 mile marker 112",       "im in the parking lot by the lift",
        "39.64031, -106.37420",         "unit b"};
    static const char *const spanish[] = {"cabaña 9",
                                          "estamos en el cuarto 212",
                                          "calle pino numero 45",
                                          "km 12 de la carretera",
                                          "mi direccion es la casa azul junto al lago",
                                          "estoy en el estacionamiento del hotel",
                                          "estamos arriba de la loma pasando el puente"};

    EACH_AFTER("he has chest pain", english, "help:place", "Staff have that place now.");
    EACH_AFTER("le duele el pecho", spanish, "help:place", "El personal ya tiene ese dato.");
}
END_TEST

START_TEST(a_bare_name_of_a_place_is_one_once_it_was_asked_for)
{
    said_after("he has chest pain", "911 hung up");
    fixture_says(stage, "Text us where you are.");
    fixture_text(stage, "pine view lodge");
    fixture_alerts(stage, ALERT_EMERGENCY, "help:place");
}
END_TEST

START_TEST(figures_of_other_things_are_no_place)
{
    static const char *const texts[] = {"the room is 70 degrees", "30 min drive to town",
                                        "unit 2 is off", "the desk is closed"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("he has chest pain", texts[i]);
        ck_assert_msg(strcmp(stage->verdict.alert.reason, "help:place") != 0, "\"%s\"", texts[i]);
    }
    shipped_talk_anew();
    fixture_text(stage, "we are at 318 juniper lane");
    ck_assert_int_lt(stage->verdict.alert.level, ALERT_URGENT);
}
END_TEST

START_TEST(who_does_not_know_the_address_is_told_that_of_the_record)
{
    said_after("he has chest pain", "the operator wants the address");
    fixture_says(stage, "14 Tarn Road, Cabin 4");
    said_after("he has chest pain", "whats the address here");
    fixture_says(stage, "Say what you see");
    fixture_says(stage, "14 Tarn Road, Cabin 4");
    fixture_alerts(stage, ALERT_EMERGENCY, "help:where");
}
END_TEST

/* ---- What to do ------------------------------------------------------------------------------ */

START_TEST(who_asks_what_to_do_is_sent_to_911_and_no_first_aid_is_told)
{
    static const char *const english[] = {
        "what now",           "should i roll her on her side", "how do i do chest compressions",
        "do i tilt his head", "can i give him water",          "how many pushes on his chest",
        "can i hit his back", "can i drive her there myself"};
    static const char *const spanish[] = {"y ahora que hago",  "que hago mientras",
                                          "no se hacer rcp",   "le puedo dar agua",
                                          "la volteo de lado", "lo llevo yo en el carro?"};

    EACH_AFTER("he fainted", english, "help:asks-what-to-do", "Ask 911");
    fixture_says_not(stage, "chest pain");
    EACH_AFTER("mi esposa se desmayo", spanish, "help:asks-what-to-do", "Pregunte al 911");
}
END_TEST

START_TEST(a_sign_beside_such_a_question_is_heard)
{
    said_after("he fainted", "how do i do cpr he has chest pain");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:chest-pain");
    said_after("he fainted", "should i worry he is blue");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:blue-lips");
}
END_TEST

START_TEST(a_question_takes_no_fire_gas_or_bleeding_away)
{
    static const char *const texts[][2] = {
        {"can i take out the battery on fire", "sign:battery-smoking"},
        {"should we carry the burning battery out", "sign:battery-smoking"},
        {"can we stay with the carbon monoxide alarm", "sign:bad-gas"},
        {"how do i stop the heavy bleeding", "sign:bleeding"},
        {"can i pat the choking kid", "sign:choking"},
        {"puedo sacar la bateria que echa humo", "sign:battery-smoking"},
        {"como apago la bateria que se esta quemando", "sign:face-burn-fire"},
        {"como le paro el sangrado", "sign:bleeding"},
    };
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after(i < 5 ? "he cant breathe" : "no puede respirar", texts[i][0]);
        ck_assert_msg(strcmp(stage->verdict.alert.reason, texts[i][1]) == 0, "\"%s\": %s",
                      texts[i][0], stage->verdict.alert.reason);
        fixture_says_not(stage, "latch");
        fixture_says_not(stage, "seguro");
    }
}
END_TEST

START_TEST(no_steps_are_told_for_what_burns_though_no_sign_is_found)
{
    static const char *const texts[] = {"how do i swap a smoking battery",
                                        "how do i change the battery thats burning",
                                        "como cambio la bateria, sale humo"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("he cant breathe", texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "\"%s\": %s", texts[i],
                      stage->verdict.alert.reason);
        ck_assert_ptr_null(fixture_answer(stage, "swap-battery"));
    }
    said_after("he cant breathe", "how do i swap the battery");
    ck_assert_ptr_nonnull(fixture_answer(stage, "swap-battery"));
}
END_TEST

START_TEST(after_a_fire_nobody_is_let_back_in)
{
    said_after("the battery is smoking", "can i go back in to get the unit");
    fixture_says(stage, "Don't go back in.");
    fixture_text(stage, "do i put water on it");
    fixture_says(stage, "Ask 911");
}
END_TEST

START_TEST(power_and_topics_are_answered_as_before)
{
    said_after("he has chest pain", "how do i open the backup");
    fixture_says(stage, "Called 911?");
    fixture_alerts(stage, ALERT_OFFICE, "wrote-again");
    said_after("he has chest pain", "who do i talk to about a refund");
    fixture_says(stage, "Called 911?");
    fixture_alerts(stage, ALERT_OFFICE, "wrote-again");
}
END_TEST

/* ---- What is new ----------------------------------------------------------------------------- */

START_TEST(a_lesser_sign_or_what_no_list_knows_is_part_of_the_emergency)
{
    static const char *const texts[] = {
        "she is cold", "it got really quiet", "hes acting goofy", "y empece a ver doble",
        "its dead",    "im getting dizzy",    "he just threw up", "se hizo encima"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("he has chest pain", texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "\"%s\": %s", texts[i],
                      stage->verdict.alert.reason);
        ck_assert_msg(strstr(fixture_replies(stage), "911") != NULL, "\"%s\"", texts[i]);
    }
}
END_TEST

START_TEST(calm_words_call_nobody_again)
{
    static const char *const texts[] = {"my son is here with me", "we are waiting outside",
                                        "the door is unlocked", "gracias"};
    size_t i;

    for (i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        said_after("he has chest pain", texts[i]);
        ck_assert_msg(stage->verdict.alert.level == ALERT_OFFICE, "\"%s\": %s", texts[i],
                      stage->verdict.alert.reason);
    }
}
END_TEST

/* ---- A wish to die --------------------------------------------------------------------------- */

START_TEST(after_a_wish_to_die_each_text_gets_the_line_that_listens)
{
    static const char *const english[] = {"no one cares", "bye", "988 didnt pick up",
                                          "the 988 line is busy", "dont call me"};
    static const char *const spanish[] = {"adios", "no quiero hablar con nadie",
                                          "el 988 no contesta", "ya es tarde"};
    static const char *const calm[] = {"thank you they helped", "im calling 988", "thanks"};
    size_t i;

    for (i = 0; i < sizeof english / sizeof english[0]; i++) {
        said_after("i want to kill myself", english[i]);
        fixture_says(stage, "988");
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "\"%s\"", english[i]);
        fixture_says_not(stage, "Called 911?");
    }
    for (i = 0; i < sizeof spanish / sizeof spanish[0]; i++) {
        said_after("me quiero matar", spanish[i]);
        fixture_says(stage, "988");
        ck_assert_msg(stage->verdict.alert.level == ALERT_EMERGENCY, "\"%s\"", spanish[i]);
    }
    for (i = 0; i < sizeof calm / sizeof calm[0]; i++) {
        said_after("i want to kill myself", calm[i]);
        fixture_says(stage, "988");
        ck_assert_msg(stage->verdict.alert.level == ALERT_OFFICE, "\"%s\"", calm[i]);
    }
    said_after("i want to kill myself", "im ok now"); /* it takes nothing back */
    fixture_says(stage, "988");
    ck_assert_int_eq(stage->verdict.alert.level, ALERT_EMERGENCY);
}
END_TEST

START_TEST(what_it_may_be_done_with_is_told_as_the_sign)
{
    static const char *const english[] = {"im holding the pills", "i got the rope",
                                          "the bottle is open"};
    static const char *const spanish[] = {"tengo las pastillas en la mano", "ya saque la navaja"};

    EACH_AFTER("i want to kill myself", english, "sign:self-harm", "988");
    EACH_AFTER("me quiero matar", spanish, "sign:self-harm", "988");
    shipped_talk_anew();
    fixture_text(stage, "the pills are in the bag");
    ck_assert_int_lt(stage->verdict.alert.level, ALERT_EMERGENCY);
}
END_TEST

START_TEST(ones_own_wish_is_no_threat_of_anothers)
{
    fixture_text(stage, "me quiero matar");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:self-harm");
    fixture_says(stage, "988");
    ck_assert_ptr_null(fixture_answer(stage, "in-danger"));
    said_after("hola", "mi esposo me quiere matar");
    fixture_alerts(stage, ALERT_EMERGENCY, "sign:in-danger");
}
END_TEST

/* ---- Words ----------------------------------------------------------------------------------- */

START_TEST(what_is_said_is_one_plain_part_that_is_easy_to_read)
{
    static const enum phrase phrases[] = {SAY_CALL_ANYWAY,   SAY_LET_THEM_COME, SAY_IT_IS_A_PROGRAM,
                                          SAY_WHERE_UNKNOWN, SAY_PLACE_TOLD,    SAY_ASK_911,
                                          SAY_TELL_911_THIS, SAY_988_AGAIN,     SAY_HELP_IS_LATE,
                                          SAY_IF_IT_IS_HELP, SAY_HELP_COMES};
    const double hardest = 4;
    struct reading_count count;
    double grade = 0;
    size_t i;
    int language;

    for (i = 0; i < sizeof phrases / sizeof phrases[0]; i++) {
        for (language = 0; language < LANGUAGE_COUNT; language++) {
            const char *text =
                say(stage->arena, &stage->house, (enum language)language, phrases[i], NULL);

            ck_assert_msg(parts_count(text).gsm7 && parts_count(text).parts == 1, "%s", text);
            count = reading_count(text);
            ck_assert_msg(language != LANGUAGE_EN ||
                              (reading_grade(&count, &grade) && grade <= hardest),
                          "%s: %f", text, grade);
        }
    }
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("open emergency");

    tcase_add_unchecked_fixture(tests, shipped_begin, shipped_end);
    tcase_add_checked_fixture(tests, shipped_talk_set_up, stage_tear_down);
    tcase_add_test(tests, who_does_not_get_through_hears_that_staff_call_and_what_to_try);
    tcase_add_test(tests, who_asks_whether_we_called_hears_that_a_program_cannot);
    tcase_add_test(tests, who_is_through_or_may_call_is_not_told_that_staff_call_for_them);
    tcase_add_test(tests, who_waits_long_hears_to_call_again_and_staff_that_they_should);
    tcase_add_test(tests, only_that_help_comes_or_thanks_goes_without_a_word);
    tcase_add_test(tests, who_asks_whether_help_is_still_needed_is_told_to_let_it_come);
    tcase_add_test(tests, help_that_is_called_off_is_to_come_even_beside_an_all_clear);
    tcase_add_test(tests, staff_who_are_said_to_call_are_called_whatever_the_hour);
    tcase_add_test(tests, a_symptom_beside_a_refusal_reaches_staff);
    tcase_add_test(tests, whoever_refuses_911_is_to_be_called_anyway);
    tcase_add_test(tests, a_place_told_reaches_the_alert_and_they_hear_that_it_did);
    tcase_add_test(tests, a_bare_name_of_a_place_is_one_once_it_was_asked_for);
    tcase_add_test(tests, figures_of_other_things_are_no_place);
    tcase_add_test(tests, who_does_not_know_the_address_is_told_that_of_the_record);
    tcase_add_test(tests, who_asks_what_to_do_is_sent_to_911_and_no_first_aid_is_told);
    tcase_add_test(tests, a_sign_beside_such_a_question_is_heard);
    tcase_add_test(tests, a_question_takes_no_fire_gas_or_bleeding_away);
    tcase_add_test(tests, no_steps_are_told_for_what_burns_though_no_sign_is_found);
    tcase_add_test(tests, after_a_fire_nobody_is_let_back_in);
    tcase_add_test(tests, power_and_topics_are_answered_as_before);
    tcase_add_test(tests, a_lesser_sign_or_what_no_list_knows_is_part_of_the_emergency);
    tcase_add_test(tests, calm_words_call_nobody_again);
    tcase_add_test(tests, after_a_wish_to_die_each_text_gets_the_line_that_listens);
    tcase_add_test(tests, what_it_may_be_done_with_is_told_as_the_sign);
    tcase_add_test(tests, ones_own_wish_is_no_threat_of_anothers);
    tcase_add_test(tests, what_is_said_is_one_plain_part_that_is_easy_to_read);
    tcase_set_timeout(tests, 120);
    return fixture_run(tests);
}
