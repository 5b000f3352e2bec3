/*
 * The mains failed, which renters of a village tell one after the other: staff get one alert, with
 * who runs out first in front. What is an emergency, or about anything else besides, stays apart.
 */
#include <string.h>

#include "estimate_parts.h"
#include "memory.h"
#include "steps.h"

/* What may stand beside it and still be the same matter. */
static const char power_out[] = "power-out-now";
static const char last_battery[] = "last-battery";

/* What runs, or is ordered, that no battery can; NULL if one can or that is not known. */
static char *
wall_only_mode(const struct asked *whole)
{
    const struct told nothing = {0};
    const struct told *const views[] = {whole->told, &nothing};
    char *mode = NULL;
    size_t i;

    for (i = 0; whole->rental != NULL && mode == NULL && i < 2; i++) {
        const struct running running = running_now(whole->rental, whole->equipment, views[i]);

        mode = estimate_wall_only_mode(whole, &running, views[i]);
    }
    return mode;
}

char *
outage_words(const struct asked *whole, const struct sign *sign)
{
    char *mode = strcmp(sign->id, power_out) == 0 ? wall_only_mode(whole) : NULL;
    char *backup;

    if (strcmp(sign->id, power_out) == 0 && mode == NULL && flowing_tells_it_runs(whole)) {
        return say(whole->arena, whole->context->house, whole->language, SAY_OUT_RUNS, NULL);
    }
    if (mode == NULL) {
        return NULL;
    }
    backup = say_backup(whole->arena, whole->language, whole->rental);
    return say(whole->arena, whole->context->house, whole->language,
               backup != NULL ? SAY_OUT_TO_BACKUP : SAY_OUT_NO_BACKUP,
               backup != NULL ? backup : mode, mode, NULL);
}

static bool
is_all(const struct verdict *verdict)
{
    bool is_out = false;
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        const struct answer *answer = &verdict->answers[i];

        if (answer->kind == ANSWER_SIGN && strcmp(answer->id, last_battery) != 0 &&
            strcmp(answer->id, power_out) != 0) {
            return false;
        }
        is_out = is_out || strcmp(answer->id, power_out) == 0;
    }
    return is_out && verdict->alert.level == ALERT_URGENT;
}

/* The part of "14 Weir Street, Hessick, Room 7" that names no house or room: "Hessick". NULL if
 * none is without a number: there is a room 7 in other houses too. */
static const char *
unnumbered(void *arena, const char *address)
{
    static const char digits[] = "0123456789";

    while (address != NULL && *address != '\0') {
        size_t length = strcspn(address, ",");

        if (strcspn(address, digits) >= length && length > 0) {
            return memory_copy_n(arena, address, length);
        }
        address += length;
        address += strspn(address, ", ");
    }
    return NULL;
}

/* One supply of power, as far as the record tells: the village of the address, else the house of
 * the place ("Cabin 4, Upper Lodge"). */
static const char *
area_of(void *arena, const struct rental *rental)
{
    const char *village = unnumbered(arena, rental->emergency_address);

    return village != NULL ? village : unnumbered(arena, rental->place);
}

static struct answer *
answer_of(struct verdict *verdict, const char *id)
{
    size_t i = 0;

    while (i < verdict->answer_count && strcmp(verdict->answers[i].id, id) != 0) {
        i++;
    }
    return i < verdict->answer_count ? &verdict->answers[i] : NULL;
}

void
outage_say_hours(const struct asked *whole, struct verdict *verdict)
{
    if (whole->rental == NULL || whole->context->role == SENDER_STAFF || !is_all(verdict)) {
        return;
    }
    /* Nobody asked for hours, but what they do now and who runs out first hang on it. */
    if (!verdict->account_changed) {
        estimate_remember(whole, verdict, whole->told);
    }
    if (verdict->account_changed && answer_of(verdict, "hours-left") == NULL &&
        wall_only_mode(whole) == NULL) {
        estimate_mention_left(whole, &verdict->account, answer_of(verdict, power_out));
    }
}

void
outage_mark(const struct asked *whole, struct verdict *verdict)
{
    if (whole->rental == NULL || whole->context->role == SENDER_STAFF) {
        return;
    }
    if (is_all(verdict)) {
        verdict->alert.area = area_of(whole->arena, whole->rental);
    }
    if (verdict->alert.area != NULL || verdict->account_changed) {
        verdict->runs_out_utc_s =
            estimate_runs_out(whole, verdict->account_changed ? &verdict->account : whole->account);
    }
}
