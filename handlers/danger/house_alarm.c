/*
 * "The CO alarm chirps once a minute", "should i take the battery out of the smoke detector": an
 * alarm of the house, and not of the unit, whose beeps and batteries the topics know. That it
 * sounds for gas or smoke was heard as a sign before this is asked.
 */
#include "say.h"
#include "steps.h"

static const char house_alarms[] =
    "co alarm|co alarms|co detector|co detectors|co monitor|co2 alarm|carbon monoxide alarm|"
    "carbon monoxide detector|carbon monoxide monitor|monoxide alarm|monoxide detector|smoke alarm|"
    "smoke alarms|smoke detector|smoke detectors|fire alarm|fire alarms|gas detector|gas alarm|"
    "propane detector|propane alarm|detector de humo|alarma de humo|detector de monoxido|"
    "alarma de monoxido|detector de gas|alarma de gas|alarma de incendio|detector de incendio|"
    "detector de co|alarma de co";
/* An alarm for gas that sounds in any other way may sound for gas. */
static const char of_gas[] = " co co2 carbon monoxide gas propane monoxido ";
static const char runs_low[] = " chirp chirps chirping chirped battery batteries low pila pilas "
                               "bateria baterias chilla chillando ";
static const char of_its_battery[] =
    " chirp chirps chirping chirped beep beeps beeping beeped battery batteries batt low dead take "
    "remove unplug silence quiet off pita pitando pito chilla chillando suena pila pilas bateria "
    "baterias quito quitar apago apagar saco sacar ";
static const char units[] = "unit|machine|concentrator|oxygen alarm|aparato|maquina|equipo|"
                            "concentrador";

bool
house_alarm_decide(const struct asked *asked, struct verdict *verdict)
{
    const struct tokens *tokens = &asked->tokens;

    if (!tokens_have(tokens, house_alarms) || !tokens_any_among(tokens, 0, of_its_battery) ||
        tokens_have(tokens, units) || told_has_charge(asked->told) ||
        (tokens_any_among(tokens, 0, of_gas) && !tokens_any_among(tokens, 0, runs_low))) {
        return false;
    }
    verdict_add(verdict, ANSWER_OFFICE, ROUTE_ANSWER, "house-alarm")->text =
        say(asked->arena, asked->context->house, asked->language, SAY_HOUSE_ALARM, NULL);
    return true;
}
