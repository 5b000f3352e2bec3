/*
 * What is worked out is said in two parts at most (3GPP TS 23.040: 153 septets each), the first
 * reply of a conversation too, in both languages and with the longest of names.
 */
#include "parts.h"
#include "stage.h"

enum { TEXTS = 24 };

static const char *const texts[LANGUAGE_COUNT][TEXTS] = {
    {"2 full and one at 40%, how long have i got left",
     "im walking, 2 lights and 3 lights, how long have i got left",
     "one full, going to sleep, how long have i got left",
     "one at 30%, how long have i got left",
     "on pulse 3, one full, how long have i got left",
     "on pulse 3, one at 10%, how long have i got left",
     "2 full, how long do i have left. text me when 30 min are left",
     "taxi 30 min, wait 20 min at the clinic, taxi 30 min, no outlets. 2 full. ok?",
     "taxi 1 h 40, 1 hr 15 in the waiting room, taxi 1 h 40, no outlets. one at 55%. ok?",
     "we drive 5 hours leaving at 9 pm, at 11,000 feet, -15 celsius, 2 full. will it last?",
     "how long to charge 2 empty batteries?",
     "1 battery at 20%, when will it be full?",
     "how long to charge 2 empty batteries in the car?",
     "best plan for tonight? one at 35%, one at 20%",
     "can 2 empty batteries be full by 8:30 am tomorrow?",
     "need both charged before we leave. one is at 20% the other empty",
     "flight is 4 h 30 gate to gate, how many batteries?",
     "two flights, 4 h 30 and 3 h 20 gate to gate, 2 hours between, are 2 batteries enough?",
     "E cylinder 2200 psi, flow 2, how long?",
     "tank is at 900 psi, flow 4, how long?",
     "tank is at 400 psi, how long?",
     "will a 110 W inverter run the machine?",
     "how long does a 500 Wh power station with 300 W go",
     "remind me to charge"},
    {"2 llenas y una al 40%, cuanto me queda",
     "voy caminando, una con 2 luces y otra con 3 luces, cuanto me queda",
     "una llena, me voy a dormir, cuanto me queda",
     "una al 30%, cuanto me queda",
     "en pulso 3, una llena, cuanto me queda",
     "en pulso 3, una al 10%, cuanto me queda",
     "2 llenas, cuanto me queda. avisame cuando falten 30 minutos",
     "taxi 30 min, espera 20 min en la clinica, taxi 30 min, sin enchufe. 2 llenas. alcanza?",
     "taxi 1 h 40, 1 h 15 en la sala de espera, taxi 1 h 40, sin enchufe. una al 55%. alcanza?",
     "manejamos 5 horas a 3400 metros, -15 grados, 2 llenas. alcanza?",
     "cuanto tardan en cargar 2 baterias vacias?",
     "1 bateria al 20%, cuando estara llena?",
     "cuanto tardan en cargar 2 baterias vacias en el auto?",
     "plan para esta noche, tengo una al 35% y otra al 20%",
     "2 baterias vacias, estaran llenas para las 8:30 de la mañana?",
     "necesito las dos cargadas antes de salir, una al 20% y la otra vacia",
     "el vuelo es de 4 h 30 de puerta a puerta, cuantas baterias?",
     "dos vuelos, 4 h 30 y 3 h 20 de puerta a puerta, 2 horas entre medio, alcanzan 2 baterias?",
     "tanque E 2200 psi, flujo 2, cuanto dura?",
     "el tanque esta a 900 psi, flujo 4, cuanto dura?",
     "el tanque esta a 400 psi, cuanto dura?",
     "sirve un inversor de 110 W para el equipo?",
     "cuanto dura una estacion portatil de 500 Wh con 300 W?",
     "recuerdame cargar"}};

static void
is_short(const char *text)
{
    size_t i;

    stage->context.conversation = (struct conversation){0}; /* each begins one */
    stage->context.reminder_count = 0;
    fixture_text(stage, text);
    ck_assert_uint_gt(stage->verdict.reply_count, 0);
    for (i = 0; i < stage->verdict.reply_count; i++) {
        const char *reply = stage->verdict.replies[i].text;

        ck_assert_msg(parts_count(reply).gsm7, "not GSM: %s", reply);
        ck_assert_msg(parts_count(reply).parts <= 2, "%zu parts for \"%s\": %s",
                      parts_count(reply).parts, text, reply);
    }
}

static void
is_short_of_both_units(enum language language, const char *text)
{
    stage->rentals[0].language = language;
    stage->house.company = "Larkspur Mountain Air Rentals";
    is_short(text);
    stage->rentals[0].unit = "wagtail";
    stage->rentals[0].orders[ACTIVITY_REST] = (struct order){true, MODE_CONTINUOUS, 10, 0, "Dr. Q"};
    stage->rentals[0].orders[ACTIVITY_WALKING].known = false;
    stage->rentals[0].orders[ACTIVITY_FLIGHT] = (struct order){true, MODE_PULSE, 20, 0, "Dr. Q"};
    stage->rentals[0].battery_count = 3;
    is_short(text);
}

START_TEST(in_english_two_parts_hold_it)
{
    is_short_of_both_units(LANGUAGE_EN, texts[LANGUAGE_EN][_i]);
}
END_TEST

START_TEST(in_spanish_two_parts_hold_it)
{
    is_short_of_both_units(LANGUAGE_ES, texts[LANGUAGE_ES][_i]);
}
END_TEST

START_TEST(what_there_is_room_for_is_said_too)
{
    fixture_text(stage, "hello");
    fixture_text(stage, "one full, how long have i got left");
    fixture_says(stage, "Counted with continuous 2, ordered at rest. It may last up to ");
}
END_TEST

START_TEST(who_says_first_that_all_is_well_is_answered_what_is_asked)
{
    fixture_text(stage,
                 "nobody is hurt or anything here, just wondering can i charge it in the car");
    fixture_says(stage, "but not both at once");
    fixture_text(stage, "we are fine and not in a hurry, only curious when is it due");
    fixture_says(stage, "Feb 14");
    fixture_text(stage, "just wondering, when is it due");
    fixture_says(stage, "Feb 14");
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("short_replies");

    tcase_add_checked_fixture(tests, stage_set_up, stage_tear_down);
    tcase_add_loop_test(tests, in_english_two_parts_hold_it, 0, TEXTS);
    tcase_add_loop_test(tests, in_spanish_two_parts_hold_it, 0, TEXTS);
    tcase_add_test(tests, what_there_is_room_for_is_said_too);
    tcase_add_test(tests, who_says_first_that_all_is_well_is_answered_what_is_asked);
    return fixture_run(tests);
}
