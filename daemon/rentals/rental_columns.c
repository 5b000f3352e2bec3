#include "rental_columns.h"

#include <string.h>

#include "memory.h"
#include "rental.h"

/* In a name # stands for 1, 2, 3 … (in its pointer for 0, 1, 2 …), @ for each activity. */
struct pattern {
    struct rental_column column;
    size_t many; /* how many # there are; 0: none */
};

static const struct pattern patterns[] = {
    {{"rental_id", "/rental_id", CELL_TEXT, true, false}, 0},
    {{"state", "/state", CELL_NAME, true, false}, 0},
    {{"name", "/name", CELL_TEXT, true, false}, 0},
    {{"first_name", "/first_name", CELL_TEXT, false, false}, 0},
    {{"language", "/language", CELL_NAME, false, false}, 0},
    {{"in_words", "/in_words", CELL_YES_NO, false, false}, 0},
    {{"phone_#", "/phones/#/number", CELL_PHONE, false, false}, RENTAL_PHONES_MAX},
    {{"phone_#_whose", "/phones/#/whose", CELL_TEXT, false, false}, RENTAL_PHONES_MAX},
    {{"phone_#_reach", "/phones/#/reach", CELL_NAME, false, false}, RENTAL_PHONES_MAX},
    {{"unit", "/unit", CELL_TEXT, true, false}, 0},
    {{"serial", "/serial", CELL_TEXT, false, false}, 0},
    {{"@_mode", "/orders/@/mode", CELL_NAME, false, false}, 0},
    {{"@_setting", "/orders/@/setting_tenths", CELL_TENTHS, false, false}, 0},
    {{"orders_dated", "/orders/@/dated_utc_s", CELL_DAY, false, true}, 0},
    {{"orders_confirmed_by", "/orders/@/confirmed_by", CELL_TEXT, false, true}, 0},
    {{"@_dated", "/orders/@/dated_utc_s", CELL_DAY, false, false}, 0},
    {{"@_confirmed_by", "/orders/@/confirmed_by", CELL_TEXT, false, false}, 0},
    {{"battery_#", "/batteries/#/serial", CELL_TEXT, false, false}, RENTAL_BATTERIES_MAX},
    {{"battery_#_health", "/batteries/#/health_percent", CELL_NUMBER, false, false},
     RENTAL_BATTERIES_MAX},
    {{"battery_#_measured", "/batteries/#/measured_utc_s", CELL_DAY, false, false},
     RENTAL_BATTERIES_MAX},
    {{"chargers", "/chargers", CELL_NUMBER, false, false}, 0},
    {{"car_charger", "/car_charger", CELL_YES_NO, false, false}, 0},
    {{"backup_kind", "/backup/kind", CELL_TEXT, false, false}, 0},
    {{"backup_size", "/backup/size", CELL_TEXT, false, false}, 0},
    {{"backup_psi", "/backup/psi", CELL_NUMBER, false, false}, 0},
    {{"backup_checked", "/backup/checked_utc_s", CELL_DAY, false, false}, 0},
    {{"backup_flow", "/backup/flow_tenths", CELL_TENTHS, false, false}, 0},
    {{"tube_feet", "/tube_feet", CELL_FEET, false, false}, 0},
    {{"start", "/start_utc_s", CELL_MOMENT, true, false}, 0},
    {{"due", "/due_utc_s", CELL_MOMENT, true, false}, 0},
    {{"emergency_address", "/emergency_address", CELL_TEXT, false, false}, 0},
    {{"access", "/access", CELL_TEXT, false, false}, 0},
    {{"place", "/place", CELL_TEXT, false, false}, 0},
    {{"altitude_ft", "/altitude_ft", CELL_NUMBER, false, false}, 0},
    {{"desk_phone", "/desk_phone", CELL_PHONE, false, false}, 0},
    {{"emergency_contact", "/emergency_contact", CELL_PHONE, false, false}, 0},
    {{"prescriber_phone", "/prescriber_phone", CELL_PHONE, false, false}, 0},
    {{"dispatch_number", "/dispatch_number", CELL_PHONE, false, false}, 0},
    {{"call_below_reading", "/call_below_reading", CELL_NUMBER, false, false}, 0},
};

/* A copy of `text` with `mark` replaced, if it stands there. */
static const char *
filled(void *arena, const char *text, char mark, const char *with)
{
    const char *place = strchr(text, mark);

    if (place == NULL) {
        return text;
    }
    return memory_format(arena, "%.*s%s%s", (int)(place - text), text, with, place + 1);
}

static void
add(void *arena, struct rental_column **list, size_t *count, const struct rental_column *column,
    char mark, const char *in_name, const char *in_pointer)
{
    struct rental_column *added;

    *list = memory_grow(arena, struct rental_column, *list, *count);
    added = &(*list)[(*count)++];
    *added = *column;
    added->name = filled(arena, column->name, mark, in_name);
    added->pointer = filled(arena, column->pointer, mark, in_pointer);
}

struct rental_column *
rental_columns(void *arena, size_t *count)
{
    struct rental_column *list = NULL;
    size_t i, n;

    *count = 0;
    for (i = 0; i < sizeof(patterns) / sizeof(patterns[0]); i++) {
        const struct pattern *pattern = &patterns[i];

        for (n = 0; n < pattern->many; n++) {
            add(arena, &list, count, &pattern->column, '#', memory_format(arena, "%zu", n + 1),
                memory_format(arena, "%zu", n));
        }
        for (n = 0; n < ACTIVITY_COUNT && strchr(pattern->column.pointer, '@') != NULL; n++) {
            const char *name = activity_name((enum activity)n);

            add(arena, &list, count, &pattern->column, '@', name, name);
        }
        if (strpbrk(pattern->column.pointer, "#@") == NULL) {
            add(arena, &list, count, &pattern->column, '#', "", "");
        }
    }
    return list;
}
