/*
 * Asks for the emergency number or a hospital and shows no sign: that is told at once, and no topic
 * does it with the number first. What the text tells of the unit or asks of its batteries beside it
 * is answered too.
 */
#include "say.h"
#include "steps.h"

static const char asks_for_it[] =
    "emergency number|emergency numbers|emergency phone|number * emergency|number * emergencies|"
    "nearest hospital|closest hospital|hospital near|hospital close|hospital around|nearest er|"
    "closest er|emergency room|urgent care|numero de emergencia|numero de emergencias|"
    "numero * emergencia|numero * emergencias|telefono de emergencia|telefono de emergencias|"
    "hospital mas cercano|hospital cercano|hospital cerca|hospital * cerca|sala de emergencias|"
    "clinica mas cercana|clinica cercana|clinica cerca|donde * hospital|donde * clinica";

bool
emergency_number_decide(const struct asked *asked, struct verdict *verdict)
{
    struct answer *answer;

    if (!tokens_have(&asked->tokens, asks_for_it)) {
        return false;
    }
    answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, "emergency-number");
    answer->topic = "contact";
    answer->text =
        say(asked->arena, asked->context->house, asked->language, SAY_EMERGENCY_NUMBER, NULL);
    if (asked_is_active_renter(asked)) {
        verdict_alert(verdict, ALERT_URGENT, false, "asks-hospital", "asks for hospital or 911");
    }
    (void)(display_decide(asked, verdict) ||
           (power_asks_how_long(asked) && power_decide(asked, verdict)) ||
           equipment_trouble_decide(asked, verdict));
    return true;
}
