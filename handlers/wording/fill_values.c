#include "fill_values.h"

#include "battery_set.h"
#include "fill_unit.h"
#include "memory.h"
#include "say.h"

typedef const char *value_of(void *arena, const struct filling *with);

#define HOUSE_VALUE(field)                                                                         \
    static const char *value_##field(void *arena, const struct filling *with)                      \
    {                                                                                              \
        (void)arena;                                                                               \
        return with->house->field;                                                                 \
    }
HOUSE_VALUE(company)
HOUSE_VALUE(phone)
HOUSE_VALUE(address)
HOUSE_VALUE(emergency_number)
#undef HOUSE_VALUE

static const char *
in_their_language(const char *const written[LANGUAGE_COUNT], enum language language)
{
    return written[language] != NULL ? written[language] : written[LANGUAGE_EN];
}

static const char *
value_hours(void *arena, const struct filling *with)
{
    (void)arena;
    return in_their_language(with->house->hours, with->language);
}

static const char *
value_return_how(void *arena, const struct filling *with)
{
    (void)arena;
    return in_their_language(with->house->return_how, with->language);
}

static const char *
name(void *arena, const struct filling *with)
{
    (void)arena;
    return with->rental->first_name;
}

static const char *
place(void *arena, const struct filling *with)
{
    (void)arena;
    return with->rental->place;
}

static const char *
due(void *arena, const struct filling *with)
{
    if (with->rental->due_utc_s == 0 || with->zone == NULL) {
        return NULL;
    }
    return say_day(arena, with->zone, with->language, with->rental->due_utc_s);
}

static const char *
counted(void *arena, const struct filling *with, int count, const char *const one[],
        const char *const many[])
{
    if (count <= 0) {
        return NULL;
    }
    return memory_format(arena, "%d %s", count,
                         count == 1 ? one[with->language] : many[with->language]);
}

static const char *
batteries(void *arena, const struct filling *with)
{
    static const char *const one[] = {"battery", "bateria"};
    static const char *const many[] = {"batteries", "baterias"};

    return counted(arena, with, (int)with->rental->battery_count, one, many);
}

static const char *
chargers(void *arena, const struct filling *with)
{
    static const char *const one[] = {"charger", "cargador"};
    static const char *const many[] = {"chargers", "cargadores"};

    return counted(arena, with, with->rental->chargers, one, many);
}

static const char *
orders(void *arena, const struct filling *with)
{
    char *text = NULL;
    int i;

    for (i = 0; i < ACTIVITY_COUNT; i++) {
        const struct order *order = &with->rental->orders[i];

        if (!order->known) {
            continue;
        }
        if (text == NULL) {
            text = memory_copy(arena, "");
        } else {
            memory_append(&text, ", ");
        }
        memory_append(&text, "%s %s",
                      say_mode(arena, with->language, order->mode, order->setting_tenths),
                      say_for(with->language, (enum activity)i));
    }
    return text;
}

static const char *
night(void *arena, const struct filling *with)
{
    static const char *const ordered[LANGUAGE_COUNT] = {"Your order for sleep is",
                                                        "Para dormir tiene ordenado"};
    const struct order *order = &with->rental->orders[ACTIVITY_SLEEP];

    if (!order->known) {
        return NULL;
    }
    return memory_format(arena, "%s %s.", ordered[with->language],
                         say_mode(arena, with->language, order->mode, order->setting_tenths));
}

static const char *
backup(void *arena, const struct filling *with)
{
    return say_backup(arena, with->language, with->rental);
}

static const char *
packing(void *arena, const struct filling *with)
{
    static const char *const unit[LANGUAGE_COUNT] = {"the unit", "el aparato"};
    static const char *const car_cord[LANGUAGE_COUNT] = {", the car cord", ", el cable del carro"};
    static const char *const bag[LANGUAGE_COUNT] = {" and the bag", " y la bolsa"};
    const char *batteries_text = batteries(arena, with);
    const char *chargers_text = chargers(arena, with);
    char *list;

    if (batteries_text == NULL) {
        return NULL;
    }
    list = memory_format(arena, "%s, %s", unit[with->language], batteries_text);
    if (chargers_text != NULL) {
        memory_append(&list, ", %s", chargers_text);
    }
    if (with->rental->car_charger) {
        memory_append(&list, "%s", car_cord[with->language]);
    }
    memory_append(&list, "%s", bag[with->language]);
    return list;
}

/* What one full battery lasts at each awake order, low ends: plan with these. */
static const char *
battery_life(void *arena, const struct filling *with)
{
    static const char *const plan_on[LANGUAGE_COUNT] = {"Plan on", "Cuente con"};
    static const char *const from_one[LANGUAGE_COUNT] = {" from one full battery.",
                                                         " con una bateria llena."};
    const struct percent full = {100, 100};
    char *text = NULL;
    int i;

    if (with->equipment == NULL) {
        return NULL;
    }
    for (i = ACTIVITY_REST; i <= ACTIVITY_WALKING; i++) {
        const struct order *order = &with->rental->orders[i];
        const struct run_time *figure =
            order->known ? equipment_run_time(with->equipment, order->mode, order->setting_tenths)
                         : NULL;
        struct minutes time;

        if (figure == NULL || !battery_set_time(with->rental, with->equipment, figure->lasts, &full,
                                                1, 0, with->now_utc_s, &time)) {
            continue;
        }
        if (text == NULL) {
            text = memory_format(arena, "%s ", plan_on[with->language]);
        } else {
            memory_append(&text, ", ");
        }
        memory_append(&text, "%s %s (%s)", say_minutes(arena, time.low),
                      say_for(with->language, (enum activity)i),
                      say_mode(arena, with->language, order->mode, order->setting_tenths));
    }
    if (text != NULL) {
        memory_append(&text, "%s", from_one[with->language]);
    }
    return text;
}

static const char *
car_charger(void *arena, const struct filling *with)
{
    static const char *const came[LANGUAGE_COUNT] = {"A car cord came with your unit.",
                                                     "Su aparato trae cable para el carro."};
    static const char *const none[LANGUAGE_COUNT] = {"No car cord came with your unit.",
                                                     "Su aparato no trae cable para el carro."};

    (void)arena;
    return with->rental->car_charger ? came[with->language] : none[with->language];
}

static value_of *const values[PLACEHOLDER_COUNT] = {
    [PLACEHOLDER_COMPANY] = value_company,
    [PLACEHOLDER_PHONE] = value_phone,
    [PLACEHOLDER_ADDRESS] = value_address,
    [PLACEHOLDER_HOURS] = value_hours,
    [PLACEHOLDER_RETURN_HOW] = value_return_how,
    [PLACEHOLDER_EMERGENCY] = value_emergency_number,
    [PLACEHOLDER_NAME] = name,
    [PLACEHOLDER_PLACE] = place,
    [PLACEHOLDER_DUE] = due,
    [PLACEHOLDER_BATTERIES] = batteries,
    [PLACEHOLDER_CHARGERS] = chargers,
    [PLACEHOLDER_ORDERS] = orders,
    [PLACEHOLDER_NIGHT] = night,
    [PLACEHOLDER_BACKUP] = backup,
    [PLACEHOLDER_PACKING] = packing,
    [PLACEHOLDER_BATTERY_LIFE] = battery_life,
    [PLACEHOLDER_CAR_CHARGER] = car_charger,
};

const char *
fill_value(void *arena, enum placeholder placeholder, const struct filling *with)
{
    if (values[placeholder] != NULL) {
        return values[placeholder](arena, with);
    }
    return with->equipment == NULL
               ? NULL
               : fill_unit_value(arena, placeholder, with->equipment, with->language);
}
