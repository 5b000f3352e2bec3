#include "rental_fields.h"

#include <string.h>

#include "rental_record.h"

#define AT(type, member) offsetof(struct type, member)

static const struct field of_rental[] = {
    {"rental_id", FIELD_ID, AT(rental, rental_id), 1, 64, true, "give the rental's own number"},
    {"state", FIELD_STATE, AT(rental, state), 0, 0, true,
     "give one of booked, out, overdue, returned, closed"},
    {"name", FIELD_TEXT, AT(rental, name), 1, 200, true, "give the renter's full name"},
    {"first_name", FIELD_TEXT, AT(rental, first_name), 1, 100, false,
     "give the name that texts by phone may use, or leave it out for the first word of the name"},
    {"language", FIELD_LANGUAGE, AT(rental, language), 0, 0, false, "give en or es"},
    {"in_words", FIELD_YES_NO, AT(rental, in_words), 0, 0, false, "give yes or no"},
    {"unit", FIELD_ID, AT(rental, unit), 1, 64, true, "give the id of a file of kb/equipment"},
    {"serial", FIELD_TEXT, AT(rental, serial), 1, 100, false, "give the unit's serial number"},
    {"chargers", FIELD_NUMBER, AT(rental, chargers), 0, 20, false, "give how many chargers"},
    {"car_charger", FIELD_YES_NO, AT(rental, car_charger), 0, 0, false, "give yes or no"},
    {"tube_feet", FIELD_FEET, AT(rental, tube_feet), 0, 200, false, "give the tube's feet"},
    {"start_utc_s", FIELD_MOMENT, AT(rental, start_utc_s), 0, 0, true,
     "give day and time, as 2026-02-14 10:00"},
    {"due_utc_s", FIELD_MOMENT, AT(rental, due_utc_s), 0, 0, true,
     "give day and time, as 2026-02-14 10:00"},
    {"emergency_address", FIELD_TEXT, AT(rental, emergency_address), 1, 300, false,
     "give the address that an ambulance needs"},
    {"access", FIELD_TEXT, AT(rental, access), 1, 300, false, "say how one gets in"},
    {"place", FIELD_TEXT, AT(rental, place), 1, 200, false, "give the place in a few words"},
    {"altitude_ft", FIELD_NUMBER, AT(rental, altitude_ft), -1400, 30000, false,
     "give the feet above sea"},
    {"desk_phone", FIELD_PHONE, AT(rental, desk_phone), 0, 0, false, "give it as +12085550123"},
    {"emergency_contact", FIELD_PHONE, AT(rental, emergency_contact), 0, 0, false,
     "give it as +12085550123"},
    {"prescriber_phone", FIELD_PHONE, AT(rental, prescriber_phone), 0, 0, false,
     "give it as +12085550123"},
    {"dispatch_number", FIELD_PHONE, AT(rental, dispatch_number), 0, 0, false,
     "give it as +12085550123"},
    {"call_below_reading", FIELD_NUMBER, AT(rental, call_below_reading), 50, 100, false,
     "give the percent that the prescriber wrote, or leave it out"},
};

static const struct field of_phone[] = {
    {"number", FIELD_PHONE, AT(phone, number), 0, 0, true, "give it as +12085550123"},
    {"whose", FIELD_TEXT, AT(phone, whose), 1, 100, false, "say whose it is, as renter"},
    {"reach", FIELD_REACH, AT(phone, reach), 0, 0, false,
     "give one of any, texts only, never ring, landline"},
};

static const struct field of_order[] = {
    {"mode", FIELD_MODE, AT(order, mode), 0, 0, true, "give one of continuous, pulse, night"},
    {"setting_tenths", FIELD_NUMBER, AT(order, setting_tenths), 1, 150, true,
     "give the number that is ordered, as 2 or 2.5"},
    {"dated_utc_s", FIELD_MOMENT, AT(order, dated_utc_s), 0, 0, false,
     "give the day, as 2026-02-14"},
    {"confirmed_by", FIELD_TEXT, AT(order, confirmed_by), 1, 200, false, "say who confirmed it"},
};

static const struct field of_battery[] = {
    {"serial", FIELD_TEXT, AT(battery, serial), 1, 100, true, "give the battery's serial number"},
    {"health_percent", FIELD_NUMBER, AT(battery, health_percent), 1, 100, false,
     "give the measured percent of a new battery, or leave it out"},
    {"measured_utc_s", FIELD_MOMENT, AT(battery, measured_utc_s), 0, 0, false,
     "give the day, as 2026-02-14"},
};

static const struct field of_backup[] = {
    {"kind", FIELD_TEXT, AT(backup, kind), 1, 60, true, "say what it is, as cylinder"},
    {"size", FIELD_TEXT, AT(backup, size), 1, 30, false, "give its size, as E"},
    {"psi", FIELD_NUMBER, AT(backup, psi), 1, 10000, false, "give the pressure that was read"},
    {"checked_utc_s", FIELD_MOMENT, AT(backup, checked_utc_s), 0, 0, false,
     "give the day, as 2026-02-14"},
    {"flow_tenths", FIELD_NUMBER, AT(backup, flow_tenths), 1, 150, false,
     "give the ordered liters a minute, as 2"},
};

#define COUNT(list) (sizeof(list) / sizeof((list)[0]))

const struct field_list rental_fields = {of_rental, COUNT(of_rental)};
const struct field_list phone_fields = {of_phone, COUNT(of_phone)};
const struct field_list order_fields = {of_order, COUNT(of_order)};
const struct field_list battery_fields = {of_battery, COUNT(of_battery)};
const struct field_list backup_fields = {of_backup, COUNT(of_backup)};

static const char *const reach_names[] = {[REACH_ANY] = "any",
                                          [REACH_TEXTS_ONLY] = "texts-only",
                                          [REACH_NEVER_RING] = "never-ring",
                                          [REACH_LANDLINE] = "landline"};

const char *
reach_name(enum reach reach)
{
    return reach_names[reach];
}

bool
reach_named(const char *name, enum reach *reach)
{
    size_t i;

    for (i = 0; i < COUNT(reach_names); i++) {
        if (strcmp(reach_names[i], name) == 0) {
            *reach = (enum reach)i;
            return true;
        }
    }
    return false;
}
