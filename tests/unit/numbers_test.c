/* What is read beside charges and settings: times, legs, flights, cylinders, and what is asked. */
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
    return told_words_of_times(arena, &told);
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

START_TEST(lengths_are_read_however_they_are_written)
{
    static const struct row rows[] = {
        {"2h30 drive, 1 full, enough?", "trip drive150"},
        {"a drive of 1 hr 5, 1 full, enough?", "trip drive65"},
        {"an hour and a half drive, 1 full, enough?", "trip drive90"},
        {"half an hour walk, 1 full, enough?", "trip hike30"},
        {"2 1/2 hours drive, 1 full, enough?", "trip drive150"},
        {"a 2-3 hour drive, 1 full, enough?", "trip drive180"},
        {"an hour and three quarters drive, 1 full", "trip drive105"},
        {"5 horas y cuarto en carro, una llena", "trip drive315"},
        {"hora y media a pie, una llena", "trip hike90"},
        {"camino de 2 horas y 20 minutos, una llena", "trip hike140"},
    };
    READS(rows);
}
END_TEST

START_TEST(clock_times_take_half_of_day_and_day_from_the_words_around_them)
{
    static const struct row rows[] = {
        {"both empty, charged by 6ish tonight?", "charging by18:00 today"},
        {"both empty, we leave at 6 tomorrow morning, will they charge?",
         "charging by06:00 tomorrow"},
        {"both empty, all charged by 0630?", "charging by06:30"},
        {"both empty, charged by quarter to 8 pm?", "charging by19:45"},
        {"both empty, charged by noon?", "charging by12:00"},
        {"both empty, charged by 9?", "charging ?am-pm"},
        {"las dos en cero, llenas para las 7 y media de la noche?", "charging by19:30"},
        {"we leave at 7 tomorrow, one at 25, charged by then?", "charging tomorrow ?am-pm"},
        {"recuerdame hoy a las 9 de la noche, no a las 8 como puse antes, de cargar",
         "watch at21:00 today"},
        {"necesito las dos cargadas a las 27 horas, estan vacias", "charging impossible ?ready_by"},
        {"una al 50, alcanza hasta las 8 menos cuarto de la noche?", "hours-left by19:45"},
        {"one full, will it last until 11:30 pm?", "hours-left by23:30"},
    };
    READS(rows);
}
END_TEST

START_TEST(a_time_of_something_else_is_no_goal)
{
    static const struct row rows[] = {
        {"need it to last 5 hours, show starts at 7. 2 full", "hours-left wait300"},
        {"plugged in at 9 pm, both empty, done by 6 am?", "charging by06:00"},
        {"appointment is at 2, remind me at 3:30 pm", "watch at15:30"},
    };
    READS(rows);
}
END_TEST

START_TEST(legs_come_in_order_with_their_power)
{
    static const struct row rows[] = {
        {"bus 45 min, walk 2 hours, bus 45 min back. 1 battery 90%",
         "trip drive45 hike120 drive45"},
        {"bus 45 min, walk 15, ferry 20. 1 full", "trip drive45 hike15 other20"},
        {"40 min drive plugged in the car, 2 hours at the clinic with a wall plug. 1 full",
         "trip drive40-car wait120-wall"},
        {"drive 50 min, no car power, wait 2 hrs, no outlets. 1 full", "trip drive50 wait120"},
        {"hour drive with nothing in the car to plug into, 1 full", "trip drive60"},
        {"train 2 h with an outlet at the seat, 1 full", "trip drive120"},
        {"an hour each way by car, 2 hours at the museum, 1 full", "trip drive60 wait120 drive60"},
        {"20 min bus, 10 min walk, same way back. 1 full", "trip drive20 hike10 hike10 drive20"},
        {"hike is 5 miles at 2 mph, 1 full", "trip hike150"},
        {"200 km a 80 km por hora, una llena, llego?", "trip drive150"},
        {"leaving at 9 am, back by 1:15 pm, 2 full, ok?", "trip by09:00 other255"},
        {"150 minutes on the coach, 30 min wait, drive 150 more. 2 full, ok?",
         "trip drive150 wait30 drive150"},
        {"4 horas en carro, 1 hora de espera, y otras 3 en carro. una llena, alcanza?",
         "trip drive240 wait60 drive180"},
    };
    READS(rows);
}
END_TEST

START_TEST(one_flight_is_a_length_and_several_are_legs)
{
    static const struct row rows[] = {
        {"flight is 3h40 in the air, how many batteries", "flight flight220 air"},
        {"how many batteries for 4h20 gate to gate", "flight flight260 gate"},
        {"vuelo de 3 horas de puerta a puerta, cuantas baterias", "flight flight180 gate"},
        {"boarding pass says dep 1:15 pm arr 4:45 pm, what do i need on 2",
         "flight flight210 gate"},
        {"my flight is from 1:15 pm to 4:45 pm, what do i need on 2",
         "flight flight210 ?flight_is"},
        {"the airline told me 4 batteries for a flight of 3 hours, is that so?",
         "flight flight180 ?flight_is"},
        {"a 2:45 flight, 2 full", "flight flight165 ?flight_is"},
        {"my flight is 5 hrs, the airline says bring 150%", "flight flight300 ?flight_is"},
        {"two flights, 2 h and 3 h, layover 90 min at a wall outlet",
         "flight flight120 wait90-wall flight180 ?flight_is"},
        {"departs 1:30pm arrives 3:15pm, clocks there are 2 hours behind ours, gate to gate flight",
         "flight flight225 gate"},
        {"how many batteries do i need to fly", "flight ?flight_minutes"},
        {"5 hrs door to door, flight 2h10 in the air", "flight flight130 air"},
    };
    READS(rows);
}
END_TEST

START_TEST(of_a_cylinder_the_newest_reading_counts)
{
    static const struct row rows[] = {
        {"E tank 1,200 psi on 2 liters, how long", "cylinder 1200psi E flow20"},
        {"100 bar, size E, 1.5 L a minute", "cylinder 100bar E flow15"},
        {"tanque D con 800 libras a litro y medio", "cylinder 800psi D flow15"},
        {"E tank had 2000 psi at 9, down to 1450 psi, 2 lpm", "cylinder 1450psi E flow20"},
        {"how long will my E tank last at 2 liters", "cylinder E flow20 ?pressure"},
        {"tank at 900 psi how long", "cylinder 900psi ?size ?flow"},
    };
    READS(rows);
}
END_TEST

START_TEST(reminders_are_told_by_time_or_by_what_is_left)
{
    static const struct row rows[] = {
        {"text me when 30 min are left, 1 full", "watch before30"},
        {"remind me quarter past 7 tomorrow morning", "watch at07:15 tomorrow"},
        {"avisame media hora antes de que se acabe, una llena", "watch before30"},
        {"send me an alert a quarter of an hour before its gone", "watch before15"},
    };
    READS(rows);
}
END_TEST

START_TEST(power_is_told_only_where_it_runs_or_charges)
{
    static const struct row rows[] = {
        {"power went out, 2 full", "hours-left on-battery"},
        {"unplugged 20 min ago, 2 full", "hours-left on-battery"},
        {"how long to charge an empty one on the wall", "charging on-wall"},
        {"se carga en el carro? una al 20", "charging on-car"},
        {"60 on battery B, 40 on battery A", "hours-left"},
    };
    READS(rows);
}
END_TEST

START_TEST(temperature_and_height_are_of_the_place)
{
    static const struct row rows[] = {
        {"1 full, its 20 F out, how long", "hours-left 20F"},
        {"una llena, 5 grados bajo cero centigrados, cuanto queda", "hours-left -5C"},
        {"1 full, we are at 9,400 ft, how long", "hours-left 9400ft"},
        {"1 full, 50 ft of hose, how long", "hours-left"},
        {"1 full, seat 14C, how long", "hours-left"},
    };
    READS(rows);
}
END_TEST

START_TEST(what_is_taken_back_does_not_count)
{
    static const struct row rows[] = {
        {"the drive is 3 hours, sorry, 4 hours, 1 full", "trip drive240"},
        {"el vuelo no es de 6 horas, es de 7", "flight flight420 ?flight_is"},
        {"both empty, charged by 8 am, no, by 7 am?", "charging by07:00"},
        {"flight is 90 minutes, sorry, 190 minutes", "flight flight190 ?flight_is"},
    };
    READS(rows);
}
END_TEST

START_TEST(what_cannot_be_is_said_and_stands_nowhere)
{
    static const struct row rows[] = {
        {"both empty, charged by 26:00?", "charging impossible ?ready_by"},
        {"my flight is -40 min, 2 full", "flight impossible ?flight_minutes"},
        {"the drive takes minus 2 hours, 2 full, do I make it", "trip impossible ?minutes"},
        {"battery at 140%, how long", "hours-left impossible ?charge"},
        {"2 full on setting minus 2, how long", "hours-left impossible ?setting"},
    };
    READS(rows);
}
END_TEST

START_TEST(what_must_be_asked_back_hangs_on_what_is_asked)
{
    static const struct row rows[] = {
        {"the batteries are full, how long do I have", "hours-left ?how-many"},
        {"two batteries, one at 40, how long have I got", "hours-left ?charge"},
        {"how long do 2 batteries last on pulse 2", "battery-life"},
        {"tengo 2 llenas para el viaje, me alcanzan?", "trip ?minutes"},
        {"will 3 batteries be done charging before we leave", "charging ?charge ?ready_by"},
        {"how do I clean the filter", "nothing"},
    };
    READS(rows);
}
END_TEST

START_TEST(a_leg_may_be_told_in_several_sentences)
{
    static const struct row rows[] = {
        {"Will 2 full batteries get me through a concert. Three hours.", "hours-left wait180"},
        {"we drive 80 minutes. the van has a plug. 1 full battery", "trip drive80-car"},
        {"we drive 80 minutes. there is an outlet at the hotel. 1 full", "trip drive80"},
        {"drive 50 min, dinner is 2 hours, same drive home. 1 full",
         "trip drive50 wait120 drive50"},
        {"40 min in the car, 1 hour there, then reverse. 1 full", "trip drive40 wait60 drive40"},
        {"30 min to the clinic, 1 hour waiting, 30 back. 1 full", "trip other30 wait60 other30"},
        {"drive 3 hours, lunch for 30 min, drive 2 more. 1 full", "trip drive180 wait30 drive120"},
        {"caminamos una hora, espera de 20 minutos, caminamos otra hora. una llena",
         "trip hike60 wait20 hike60"},
        {"salimos a las 8 am, 3 horas manejando, llegamos a las 11. una llena",
         "trip by08:00 drive180"},
    };
    READS(rows);
}
END_TEST

START_TEST(flights_are_told_in_many_ways)
{
    static const struct row rows[] = {
        {"two flights, 2:10 and 1:40 gate to gate, layover of 1 hour",
         "flight flight130 wait60 flight100 gate"},
        {"3 flights, 2 hours each, 50 min layovers",
         "flight flight120 wait50 flight120 wait50 flight120 ?flight_is"},
        {"our block time is 2:50", "flight flight170 gate"},
        {"the flite is 2 hours, no layover", "flight flight120 ?flight_is"},
        {"vuelo sale 9 am y llega 11 am, alla es una hora mas temprano",
         "flight flight180 ?flight_is"},
    };
    READS(rows);
}
END_TEST

START_TEST(where_a_battery_charges_and_by_when)
{
    static const struct row rows[] = {
        {"how long to charge from 30 percent on the wall", "charging on-wall"},
        {"how long to charge a dead one off the wall", "charging on-wall"},
        {"remind me this evening at 7 to charge", "watch at19:00 today"},
        {"remind me to plug in at 10 pm", "watch at22:00"},
        {"can it get to 2 pm with 48% on pulse 3", "hours-left by14:00"},
    };
    READS(rows);
}
END_TEST

START_TEST(continuous_flow_of_a_cylinder_is_its_flow)
{
    static const struct row rows[] = {
        {"D tank at 900 psi, 3 lpm continuous", "cylinder 900psi D flow30"},
        {"E tank at 900 psi, continuous", "cylinder 900psi E ?flow"},
        {"tank at 1700, size E, 2 liters", "cylinder 1700psi E flow20"},
        {"1700 pounds in my E, flow 2", "cylinder 1700psi E flow20"},
    };
    READS(rows);
}
END_TEST

int
main(void)
{
    TCase *tests = tcase_create("numbers");

    tcase_add_test(tests, lengths_are_read_however_they_are_written);
    tcase_add_test(tests, clock_times_take_half_of_day_and_day_from_the_words_around_them);
    tcase_add_test(tests, a_time_of_something_else_is_no_goal);
    tcase_add_test(tests, legs_come_in_order_with_their_power);
    tcase_add_test(tests, one_flight_is_a_length_and_several_are_legs);
    tcase_add_test(tests, of_a_cylinder_the_newest_reading_counts);
    tcase_add_test(tests, reminders_are_told_by_time_or_by_what_is_left);
    tcase_add_test(tests, power_is_told_only_where_it_runs_or_charges);
    tcase_add_test(tests, temperature_and_height_are_of_the_place);
    tcase_add_test(tests, what_is_taken_back_does_not_count);
    tcase_add_test(tests, what_cannot_be_is_said_and_stands_nowhere);
    tcase_add_test(tests, what_must_be_asked_back_hangs_on_what_is_asked);
    tcase_add_test(tests, a_leg_may_be_told_in_several_sentences);
    tcase_add_test(tests, flights_are_told_in_many_ways);
    tcase_add_test(tests, where_a_battery_charges_and_by_when);
    tcase_add_test(tests, continuous_flow_of_a_cylinder_is_its_flow);
    return fixture_run(tests);
}
