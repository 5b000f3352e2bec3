#include "alert_renters.h"

#include <string.h>

#include <jansson.h>

#include "alert_group_rows.h"
#include "memory.h"
#include "rental.h"
#include "rental_rows.h"
#include "say.h"

struct renters {
    char *names, *places; /* NULL: none yet */
    const char *last_place;
    size_t count;
};

static const char *
text_of(void *arena, const json_t *record, const char *key)
{
    const char *text = json_string_value(json_object_get(record, key));

    return text != NULL ? memory_copy(arena, text) : NULL;
}

static bool
is_active(const json_t *record)
{
    const char *state = json_string_value(json_object_get(record, "state"));
    int named = state != NULL ? rental_state_named(state) : -1;
    struct rental rental = {0};

    if (named < 0) {
        return false;
    }
    rental.state = (enum rental_state)named;
    return rental_is_active(&rental);
}

static void
append(void *arena, char **list, const char *joint, const char *word)
{
    if (*list == NULL) {
        *list = memory_copy(arena, word);
    } else {
        memory_append(list, "%s%s", joint, word);
    }
}

static void
add(void *arena, const json_t *record, struct renters *renters)
{
    const char *name = text_of(arena, record, "first_name");
    const char *place = text_of(arena, record, "place");

    if (name == NULL || !is_active(record)) {
        return;
    }
    renters->count++;
    append(arena, &renters->names, ", ", name);
    if (place != NULL && (renters->last_place == NULL || strcmp(renters->last_place, place) != 0)) {
        append(arena, &renters->places, " or ", place);
        renters->last_place = place;
    }
}

static int
set_group(struct store *store, void *arena, const struct config *config, struct alert_row *alert,
          struct fault *fault)
{
    struct alert_renter *renters;
    size_t count, i;

    if (alert_group_renters(store, arena, alert->number, &renters, &count, fault) != 0) {
        return -1;
    }
    if (count < 2) {
        return 0;
    }
    for (i = 0; i < count; i++) {
        if (renters[i].runs_out_utc_s != 0) {
            renters[i].until = say_clock(arena, &config->zone, renters[i].runs_out_utc_s);
        }
    }
    alert->renters = renters;
    alert->renter_count = count;
    return 0;
}

int
alert_renters(struct store *store, void *arena, const struct config *config,
              struct alert_row *alert, struct fault *fault)
{
    const struct staff *staff = config_staff_by_phone(config, alert->phone);
    struct renters renters = {0};
    struct rental_row *rows;
    size_t count;
    size_t i;

    if (alert->area != NULL && set_group(store, arena, config, alert, fault) != 0) {
        return -1;
    }
    if (alert->rental_id != NULL) {
        return 0;
    }
    if (rental_rows_of_phone(store, arena, alert->phone, &rows, &count, fault) != 0) {
        return -1;
    }
    for (i = 0; i < count; i++) {
        json_t *record = json_loads(rows[i].json, 0, NULL);

        add(arena, record, &renters);
        json_decref(record);
    }
    if (staff != NULL) {
        alert->first_name = memory_format(arena, "%s of our staff", staff->name);
    } else if (renters.count > 1) {
        alert->one_of = renters.names;
    } else {
        alert->first_name = renters.names;
    }
    alert->place = renters.places;
    return 0;
}
