/*
 * Watt-hours of the batteries, which airlines ask for: as printed, from the unit's file; of every
 * unit of the house if it is not known which one they have.
 */
#include "flight.h"
#include "memory.h"
#include "say.h"
#include "steps.h"

static const char fly[] = "fly";
static const char watt_hours[] =
    "watt hour|watt hours|watthour|watthours|wh|whs|wathours|wat hours|"
    "vatio hora|vatios hora|watts hora|watt hora|vatios por hora";
/* Of these it is not our battery that is asked about. */
static const char others[] = "power bank|powerbank|power station|generator|inverter|solar|laptop|"
                             "phone|banco de energia|generador|inversor";

/* "95 Wh", "46.8 Wh"; "" if the file does not tell. */
static char *
rated(void *arena, const struct equipment *unit)
{
    return unit->rated_wh > 0 ? memory_format(arena, "%s %g Wh", unit->name, unit->rated_wh)
                              : memory_copy(arena, "");
}

/* All of them, with commas; *free if none needs the airline's approval. */
static char *
rated_of_all(const struct asked *asked, bool *free)
{
    const struct equipment *const *all;
    char *list = memory_copy(asked->arena, "");
    size_t count, i;

    all = kb_equipment_all(asked->context->kb, &count);
    *free = true;
    for (i = 0; i < count; i++) {
        char *one = rated(asked->arena, all[i]);

        if (one[0] == '\0' || (asked->equipment != NULL && asked->equipment != all[i])) {
            continue;
        }
        memory_append(&list, "%s%s", list[0] == '\0' ? "" : ", ", one);
        *free = *free && flight_watt_hours(all[i]->rated_wh, all[i]->volts, all[i]->amp_hours) ==
                             WATT_HOURS_FREE;
    }
    return list;
}

/* Anywhere in the text: "power bank is 100 wh, can i take it" is cut in two. */
static bool
speaks_of_others(const struct asked *asked)
{
    const struct tokens all = tokens_read(asked->arena, asked->message->text);

    return tokens_have(&asked->tokens, others) || tokens_have(&all, others);
}

bool
watt_hours_decide(const struct asked *asked, struct verdict *verdict)
{
    const struct house *house = asked->context->house;
    struct answer *answer;
    char *list, *text;
    bool free;

    if (!tokens_have(&asked->tokens, watt_hours) || speaks_of_others(asked)) {
        return false;
    }
    list = rated_of_all(asked, &free);
    if (list[0] == '\0') {
        return false;
    }
    text = say(asked->arena, house, asked->language, SAY_WATT_HOURS, list, NULL);
    memory_append(&text, " %s",
                  say(asked->arena, house, asked->language,
                      free ? SAY_WATT_HOURS_FREE : SAY_CALL_AIRLINE, NULL));
    answer = verdict_add(verdict, ANSWER_TOPIC, ROUTE_ANSWER, fly);
    answer->topic = fly;
    answer->text = text;
    return true;
}
