#include "fixture.h"

#include <string.h>

#include "oximeter.h"

struct row {
    const char *text;
    int percent; /* 0: none */
};

static void
reads(const struct row *rows, size_t count)
{
    size_t i, start, end;

    for (i = 0; i < count; i++) {
        int percent = 0;
        bool found = oximeter_read(rows[i].text, &percent, &start, &end);

        ck_assert_msg(percent == rows[i].percent && found == (rows[i].percent != 0),
                      "\"%s\" was read as %d, not %d", rows[i].text, percent, rows[i].percent);
    }
}

START_TEST(values_are_read_however_they_are_told)
{
    static const struct row rows[] = {
        {"o2 is 84", 84},
        {"sat 86%", 86},
        {"my reading is eighty five", 85},
        {"SpO2: 79", 79},
        {"oxygen at 88 percent", 88},
        {"her oxygen level dropped to 82", 82},
        {"84 on the oximeter", 84},
        {"the pulse ox says 90", 90},
        {"sats went from 92 to 84", 84},
        {"O2 sat in the low 80s", 80},
        {"mi oxigeno esta en 83", 83},
        {"saturacion 87", 87},
        {"antes saturaba 93, hoy 84", 84},
        {"saturaba 95 y ahora 87", 87},
        {"sat was 95 today 83", 83},
        {"finger clip... o2 =81", 81},
        {"oxygen 86, battery 50%", 86},
        {"o2 84", 84},
        {"O2: eighty-four", 84},
        {"o2 eightyfour", 84},
        {"sats 84/110", 84},
        {"sat 84 hr 110", 84},
        {"spo2 79%", 79},
        {"Sp02=79", 79},
        {"oxygen sat is eight one", 81},
        {"pulse oximeter has her at 83", 83},
        {"finger clip says 78", 78},
        {"the little clip on my finger reads 85", 85},
        {"85 on the finger gadget", 85},
        {"fingertip meter shows 77", 77},
        {"ochenta y dos en el oximetro", 82},
        {"el aparatito del dedo marca 82", 82},
        {"ochentaidos de oxigeno", 82},
        {"oxigenacion en 79", 79},
        {"saturation in the eighties", 80},
        {"his sats are in the 70s", 70},
        {"oximeter 85 battery 40", 85},
        {"her levels are 82", 82},
        {"ox level 81", 81},
        {"blood oxygen 83", 83},
        {"b.o. oxygen reading of 83", 83},
        {"74 percent oxygen", 74},
        {"74% oxygen on her finger", 74},
        {"oxygen eighty percent", 80},
        {"sat en setenta y uno", 71},
        {"satura 71", 71},
        {"satura 90 y tiene 80 años", 90},
        {"puls ox 84", 84},
        {"pulse oxy 84", 84},
        {"oximetre says 84", 84},
        {"sat 99", 99},
        {"o2 100", 100},
        {"finger thing says 97, which way does the battery go in", 97},
        {"trae 86 de oxigeno", 86},
        {"oxygen clip says 95, pulse 72", 95},
        {"o2 95 heart rate 72", 95},
        {"pulse ox 84 pulse 99", 84},
        {"sat 86, he is 82 years old", 86},
        {"ochenta y dos dice la cosita del dedo", 82},
        {"79 en el dedo", 79},
        {"55 dedo", 55},
        {"tiene 68% en el dedo", 68},
        {"setenta y cinco en su dedito", 75},
        {"81 on her finger", 81},
        {"i get eighty three percent on the finger", 83},
    };
    reads(rows, sizeof rows / sizeof rows[0]);
}
END_TEST

START_TEST(values_are_told_by_their_company)
{
    static const struct row rows[] = {
        {"shes at 84 and wont go up", 84},
        {"Dad is 83 percent", 83},
        {"el dedo dice 68", 68},
        {"ayuda 79", 79},
        {"mi papa esta en 79 y usa oxigeno", 79},
        {"mi esposa anda en 82 y no baja", 82},
        {"81 help!!", 81},
        {"help! mom 77", 77},
        {"my wife is only 82%", 82},
        {"esta en 81 mi mama", 81},
        {"the batteries are fine but she is at 84, 85", 84},
        {"mom is at 83 but the battery is at 75", 83},
        {"he is at 91, 89 and 86", 86},
        {"he's down to 86", 86},
        {"dropped to 88 while he slept", 88},
        {"it says 91 when I rest", 91},
        {"le marca 87 dormida", 87},
        {"marca 87 y despierto 92", 87},
        {"is 90 ok", 90},
        {"is a 93 alright up here", 93},
        {"is 92 normal for my age", 92},
        {"89, is that bad", 89},
        {"esta bien 90", 90},
        {"88 esta bien?", 88},
        {"88 then 82 now 76", 76},
        {"number keeps falling, 84 now 78", 78},
        {"94 asleep, 97 awake", 94},
        {"95 dormida y 97 caminando", 95},
        {"88 sitting still", 88},
        {"86 at rest", 86},
        {"anda en 86", 86},
        {"bajo a 86", 86},
        {"95 and pulse is 66, awake", 95},
        {"85 and wheezing", 85},
        {"86 this evening after supper", 86},
        {"82 marca el cacharro", 82},
        {"is 89 all right at night", 89},
        {"86! do i go up", 86},
        {"the kids are asleep. theyre at 88", 88},
        {"Dad is 83 percent", 83},
        {"el dedo dice 68", 68},
        {"dad is 83%", 83},
        {"wife 82%", 82},
        {"my wife has 84", 84},
        {"mi mama tiene 83%", 83},
        {"My mother, 82, on setting 3, shows 81 on the clip", 81},
        {"Dad is 79, on setting 2, reads 84 at rest", 84},
        {"oxy 78", 78},
        {"87, the rest of the day 90", 87},
        {"finger at 61", 61},
        {"finger 66", 66},
        {"dedo 63", 63},
        {"el del dedo me marca 91", 91},
        {"hers is 83", 83},
        {"mom 82", 82},
        {"the cord is too short, she reads 77", 77},
        {"no outlet here, dad dropped to 78", 78},
        {"Grandpa is 81 on setting 2 and the thing reads 86, do I turn it up", 86},
    };
    reads(rows, sizeof rows / sizeof rows[0]);
}
END_TEST

START_TEST(a_value_is_read_beside_its_pulse_however_low)
{
    static const struct row rows[] = {
        {"dad reads 66 pulse 95", 66},
        {"he is at 84 pulse 90", 84},
        {"84, pulse 110", 84},
        {"grandpa 72 pulse 110", 72},
        {"96% pulse 70", 96},
        {"mama 82 pulso 100", 82},
        {"he reads 95 pulse 66", 95},
        {"she is 91 pulse 100", 91},
        {"se le subio la presion a 230", 0}, /* one number, the last */
        {"bp 230", 0},
        {"bp 210 over 120", 0},
        {"battery 80 pulse 95", 0},
        {"battery is at 80 pulse 2", 0},
        {"he is 72, pulse 80", 0},
        {"room 84 pulse 2", 0},
    };

    reads(rows, sizeof rows / sizeof rows[0]);
}
END_TEST

/* A battery, a unit or a flow in the same breath takes its own number only. */
START_TEST(things_beside_somebody_do_not_take_their_value)
{
    static const struct row rows[] = {
        {"pack is dead he is at 78", 78},
        {"both packs dead mom at 79", 79},
        {"mom at 79 both packs dead", 79},
        {"he is at 78 battery dead", 78},
        {"the pack is fine im at 79", 79},
        {"the unit is off and mom reads 78", 78},
        {"phone dying he is at 78", 78},
        {"battery says 90 he reads 78", 78},
        {"my pack reads 90 but i read 78", 78},
        {"battery 40 percent and dad dropped to 77", 77},
        {"battery reading 50 my reading 79", 79},
        {"we have 2 batteries, my reading 78", 78},
        {"2 full packs here, her reading is 79", 79},
        {"on 3 liters 77", 77},
        {"77 on 3 liters", 77},
        {"im on 4 lpm and at 76", 76},
        {"la pila se murio y mi papa esta en 78", 78},
        {"la bateria esta bien pero ella anda en 77", 77},
        {"las pilas estan llenas, estoy en 79", 79},
        {"la pila marca 90 y a mi esposo le marca 78", 78},
    };
    static const struct row things[] = {
        {"the pack says 90, on setting 1", 0},
        {"my battery was full and im at 79 now", 0},
        {"battery read 90 then says 84", 0},
        {"battery at 90, my other one says 84", 0},
        {"the battery for mom is at 80", 0},
        {"dads battery is at 75", 0},
        {"my battery reading is 78", 0},
        {"i read 78 on the battery", 0},
        {"im at 78 percent battery", 0},
        {"he is at 78 battery left", 0},
        {"on 3 liters 77 percent battery", 0},
        {"on 2 liters with 80 left", 0},
        {"battery is fine, im at 79 pine street", 0},
        {"la pila de mi papa esta en 80", 0},
        {"la pila le marca 78", 0},
        {"mi esposa esta en 80 por ciento de bateria", 0},
    };
    reads(rows, sizeof rows / sizeof rows[0]);
    reads(things, sizeof things / sizeof things[0]);
}
END_TEST

/* Somebody behind "with", "for" or "of" owns their value, and a battery that is named owns its own.
 */
START_TEST(whoever_stands_behind_a_preposition_has_the_value_unless_a_thing_is_theirs)
{
    static const struct row rows[] = {
        {"with my husband at 78", 78},
        {"sitting here with grandma at 75", 75},
        {"what should i do with my brother at 77", 77},
        {"im alone with her at 79", 79},
        {"help with my aunt at 76", 76},
        {"what do i do for my mother at 78", 78},
        {"numbers of my dad at 79", 79},
        {"estoy con mi abuelita en 78", 78},
        {"lectura de mi suegro en 74", 74},
        {"es malo para mi tia en 78", 78},
    };
    static const struct row things[] = {
        {"the battery for my brother is at 80", 0},
        {"spare of my aunt is at 75", 0},
        {"the tank for my wife is at 70", 0},
        {"plug her in at 80", 0},
        {"las pilas son 80", 0},
    };
    reads(rows, sizeof rows / sizeof rows[0]);
    reads(things, sizeof things / sizeof things[0]);
}
END_TEST

START_TEST(a_flow_or_a_room_takes_no_value_from_who_names_the_instrument)
{
    static const struct row rows[] = {
        {"3 liters at 66 sats", 66},       {"at 4 lpm is 60 spo2", 60},
        {"5 lpm at 59 oxygen", 59},        {"she is on 3 liters reads 64 sat", 64},
        {"setting is at 3 is 67 sat", 67}, {"on 3 lpm says 62 sats", 62},
        {"cabin reads 64 sats", 64},       {"battery says 64 sats", 64},
        {"room at 68 saturation", 68},
    };
    static const struct row things[] = {
        {"battery 84, o2 on", 0},
        {"the pack is at 64 o2 is on", 0},
        {"battery reads 64 percent", 0},
    };
    reads(rows, sizeof rows / sizeof rows[0]);
    reads(things, sizeof things / sizeof things[0]);
}
END_TEST

START_TEST(who_asks_how_long_beside_a_value_that_is_somebodys_still_tells_it)
{
    static const struct row rows[] = {
        {"mi tia esta en 78 cuanto le queda", 78},
        {"mom is at 79 how long will the tank last", 79},
        {"she was at 76 when the lights went out how long do we have", 76},
        {"dad anda en 77 cuanto dura el cilindro", 77},
    };
    static const struct row things[] = {
        {"she was at 90 when the lights quit, how long do we have", 0},
        {"mom is at 79 how long will her battery last", 0},
        {"the pack for dad is at 79 how long will it last", 0},
    };
    reads(rows, sizeof rows / sizeof rows[0]);
    reads(things, sizeof things / sizeof things[0]);
}
END_TEST

START_TEST(what_is_told_to_fall_to_little_is_a_battery_unless_it_is_somebodys)
{
    static const struct row rows[] = {
        {"text me back, it says 84", 84},
        {"text me when you get this, it says 84 now", 84},
        {"text me when it gets to 30, she is at 84", 84},
        {"call me when it drops to 20, dad's finger says 82", 82},
        {"the oximeter says 82, text me when it gets to 45", 82},
        {"my oxygen says 82, tell me when it drops to 40", 82},
        {"my reading is 83, text me when it gets to 40", 83},
        {"avisame cuando baje a 20, mi mama esta en 85", 85},
        {"tell me when it gets to 88, it says 84 now", 84},
    };
    static const struct row things[] = {
        {"text me when it gets to 30, it says 84 now", 0},
        {"tell me when it drops to 20, its reading 76", 0},
        {"avisame cuando llegue a 30, dice 78", 0},
        {"it said eighty at 2:15 its now 3:40 and we havent plugged in how much longer", 0},
        {"it showed 77 at noon and its 1:20 now. whats left in it", 0},
    };
    reads(rows, sizeof rows / sizeof rows[0]);
    reads(things, sizeof things / sizeof things[0]);
}
END_TEST

START_TEST(a_slip_in_its_name_or_a_letter_for_the_nought_is_read)
{
    static const struct row rows[] = {
        {"satuation 83", 83},      {"saturaton 84", 84},           {"la satuacion en 82", 82},
        {"oximter says 77", 77},   {"my oxigen is 81", 81},        {"oxgen 79", 79},
        {"sat is 8o", 80},         {"her o2 is 7o% now", 70},      {"spo2 9O", 90},
        {"saturday 83 people", 0}, {"o2 delivery at 8o clock", 0},
    };

    reads(rows, sizeof rows / sizeof rows[0]);
}
END_TEST

/* It may be what a battery has; but who waits for help asks "how long" as well. */
START_TEST(a_reading_of_whatever_it_is_is_one_of_oxygen_also_where_hours_are_asked)
{
    static const struct row rows[] = {
        {"the readout is 48, how long", 48},
        {"level is 78 how long", 78},
        {"reading 72, how long until someone comes", 72},
        {"how much longer, my numbers are 74", 74},
        {"stats 68 how much time have i got", 68},
        {"level went to 70 how long before i call", 70},
        {"how long is it ok, readings around 75", 75},
        {"her reading is 78 how long till help", 78},
        {"oxygen level is 78, how long", 78},
        {"o2 readout 79 how long do i wait", 79},
        {"la lectura marca 48, cuanto dura", 48},
        {"la lectura es 78, cuanto tiempo", 78},
        {"nivel 66 cuanto tiempo puedo aguantar", 66},
        {"cuanto falta para que lleguen, la lectura en 70", 70},
        {"battery level 48 how long", 0},
        {"battery reading 70, how long on 2", 0},
        {"la bateria marca 48, cuanto dura", 0},
    };

    reads(rows, sizeof rows / sizeof rows[0]);
}
END_TEST

START_TEST(sat_behind_an_hour_is_a_day_only_if_batteries_follow)
{
    static const struct row rows[] = {
        {"8 am sat 84", 84}, {"at 5 am sat was 83", 83},         {"7 pm sat, 81 now", 81},
        {"sat 82", 82},      {"5am sat. hers is at 84 sat", 84},
    };
    static const struct row things[] = {
        {"we go at 5am sat. ones at 80 and the other two are at 10", 0},
        {"leaving 7 am sat, both at 75, will they be full", 0},
    };
    reads(rows, sizeof rows / sizeof rows[0]);
    reads(things, sizeof things / sizeof things[0]);
}
END_TEST

START_TEST(a_copy_of_our_own_words_tells_none)
{
    static const struct row rows[] = {
        {"Liked \"Reading of 85? Call 911\"", 0},
        {"Le gust\xc3\xb3 \xe2\x80\x9c"
         "ox\xc3\xadgeno 85\xe2\x80\x9d",
         0},
        {"Liked \"Reading of 85? Call 911\" now it is o2 82", 82},
        {"The doctor said \"o2 of 84\"", 84},
    };
    reads(rows, sizeof rows / sizeof rows[0]);
}
END_TEST

START_TEST(other_numbers_are_no_values)
{
    static const struct row rows[] = {
        {"we have 3 batteries. theyre at 90, 75 and half", 0},
        {"got 4 batts theyre at 80, 80, 75 and full", 0},
        {"one at 40, another at 75, the rest dead", 0},
        {"battery at 84%", 0},
        {"dad is 84 years old", 0},
        {"my wife, 84, wants the small one", 0},
        {"esta en 81 mi bateria", 0},
        {"battery level 84", 0},
        {"oxygen battery 84%", 0},
        {"o2 on setting 2", 0},
        {"oxygen for 45 minutes", 0},
        {"room 84", 0},
        {"it is 84 F here", 0},
        {"we are at 8400 ft with the oxygen", 0},
        {"I need oxygen at 8:45", 0},
        {"we sat down at 40 Mill Road", 0},
        {"oxygen hose 50 feet", 0},
        {"can i use oxygen in the car", 0},
        {"2 full and one half", 0},
        {"the battery says 84", 0},
        {"it says 84 on the battery", 0},
        {"84% battery left", 0},
        {"phone at 84%", 0},
        {"my phone is at 61 percent", 0},
        {"pila al 84", 0},
        {"tengo 84 de pila", 0},
        {"we are in 84, top floor", 0},
        {"cabin 92 is ours", 0},
        {"she is 84 years old", 0},
        {"2 batteries, they are at 84 and 80", 0},
        {"the battery was full but is at 84", 0},
        {"she's 84 and uses oxygen", 0},
        {"mi mama tiene 84", 0},
        {"she turned 84 today", 0},
        {"flight 83 on tuesday", 0},
        {"gate 84", 0},
        {"it is 84 outside", 0},
        {"its 84 degrees", 0},
        {"arrives at 8:45", 0},
        {"10:30 to 10:85", 0},
        {"see you at 4:50", 0},
        {"bus 92 leaves", 0},
        {"highway 95", 0},
        {"route 66 is closed", 0},
        {"we drive 85 miles", 0},
        {"is 90 minutes ok", 0},
        {"90 min left", 0},
        {"takes 75 minutes", 0},
        {"85 bar on the gauge", 0},
        {"the dial reads 85 bar", 0},
        {"tank gauge at 80", 0},
        {"el tanque marca 80", 0},
        {"the bottle gauge says 90", 0},
        {"elevation 85 hundred", 0},
        {"8500 ft", 0},
        {"we're at 92 hundred feet", 0},
        {"setting 2 for 90 feet", 0},
        {"it costs 85 dollars", 0},
        {"$85 deposit", 0},
        {"is 85 dollars ok", 0},
        {"is 75 right for the deposit", 0},
        {"does it weigh 80 lb", 0},
        {"80 watts", 0},
        {"la temperatura esta en 80", 0},
        {"habitacion 78", 0},
        {"vivo en el 84", 0},
        {"son 85 pesos", 0},
        {"thermostat says 68", 0},
        {"the clock says 45", 0},
        {"speed limit 75", 0},
        {"charged to 85", 0},
        {"charger says 90", 0},
        {"it stopped at 90% charging", 0},
        {"at 80% it goes slow", 0},
        {"cargada al 90", 0},
        {"how long at 85 percent", 0},
        {"83 left on setting 2", 0},
        {"order 84", 0},
        {"born in 52", 0},
        {"dad is 88, can he use pulse", 0},
        {"he is 91 yrs", 0},
        {"my 85 year old mother", 0},
        {"call me at 555-0188", 0},
        {"unit 84 lost the charger", 0},
        {"size 84", 0},
        {"I weigh 84", 0},
        {"95 or so on the way there", 0},
        {"what is the 82 next to the battery", 0},
        {"two lights and 80", 0},
        {"85%", 0},
        {"oxygen 45 minutes", 0},
        {"oxygen for 90 minutes", 0},
        {"o2 hose 50 ft", 0},
        {"i have 2 liters at 80 percent charge", 0},
        {"can i use oxygen at 90 miles from here", 0},
        {"60 here now", 0},
        {"I am at 84 Mill Road", 0},
        {"we're at 84 Mill Road", 0},
        {"shes at 84 Pine st cabin", 0},
        {"it says 100 on the screen", 0},
        {"screen says 83", 0},
        {"my pulse is 84", 0},
        {"heart rate 92", 0},
        {"should i go up to 3 in cabin 84", 0},
        {"90 and 60", 0},
        {"85 and 85, how long", 0},
        {"90 and rising temperatures outside", 0},
        {"my wife 79, setting 2", 0},
        {"mom is 84 years old", 0},
        {"dad, 82, wants to fly", 0},
        {"mi mama tiene 84", 0},
        {"dad has 84 percent battery", 0},
        {"his battery is at 83%", 0},
        {"he is 90% sure", 0},
        {"I cut my finger 50 minutes ago", 0},
        {"finger 3 times", 0},
        {"she has 40 stitches on her finger", 0},
        {"i cut 50 finger sandwiches", 0},
        {"help with room 79", 0},
        {"can you help, cabin 81", 0},
        {"battery 84 and a cut on my finger", 0},
        {"le dieron 60 puntadas en el dedo", 0},
        {"we unplugged at 1:20, it said 91 then", 0},
        {"it was full but it says 72 now", 0},
        {"the pack says 90, on setting 1", 0},
        {"blood pressure 130/80 ok?", 0},
        {"his box reads 81 and a second one is at 26", 0},
        {"my mother, 82, is on setting 3", 0},
    };
    reads(rows, sizeof rows / sizeof rows[0]);
}
END_TEST

START_TEST(the_bytes_that_tell_it_are_given)
{
    static const char text[] = "hi, her o2 is 84% now";
    size_t start, end;
    int percent;

    ck_assert(oximeter_read(text, &percent, &start, &end));
    ck_assert_uint_eq(start, 14);
    ck_assert_int_eq(strncmp(text + start, "84", end - start), 0);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("oximeter");

    tcase_add_test(tests, values_are_read_however_they_are_told);
    tcase_add_test(tests, values_are_told_by_their_company);
    tcase_add_test(tests, a_value_is_read_beside_its_pulse_however_low);
    tcase_add_test(tests, things_beside_somebody_do_not_take_their_value);
    tcase_add_test(tests,
                   whoever_stands_behind_a_preposition_has_the_value_unless_a_thing_is_theirs);
    tcase_add_test(tests, a_flow_or_a_room_takes_no_value_from_who_names_the_instrument);
    tcase_add_test(tests, who_asks_how_long_beside_a_value_that_is_somebodys_still_tells_it);
    tcase_add_test(tests, what_is_told_to_fall_to_little_is_a_battery_unless_it_is_somebodys);
    tcase_add_test(tests, a_slip_in_its_name_or_a_letter_for_the_nought_is_read);
    tcase_add_test(tests, a_reading_of_whatever_it_is_is_one_of_oxygen_also_where_hours_are_asked);
    tcase_add_test(tests, sat_behind_an_hour_is_a_day_only_if_batteries_follow);
    tcase_add_test(tests, a_copy_of_our_own_words_tells_none);
    tcase_add_test(tests, other_numbers_are_no_values);
    tcase_add_test(tests, the_bytes_that_tell_it_are_given);
    return fixture_run(tests);
}
