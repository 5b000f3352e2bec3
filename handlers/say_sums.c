/* Charging, flights, cylinders in words; the Spanish keeps to the letters of GSM (say.c). */
#include "say_sums.h"

#define OF(phrase) [(phrase)-SAY_SUMS]

const char *const say_sums[PHRASE_COUNT - SAY_SUMS][LANGUAGE_COUNT] = {
    OF(SAY_FULL_IN) = {"Full in up to {0}, by about {1} if it starts now; 80% in up to {2}.",
                       "Llena en hasta {0}, a las {1} si empieza ahora; 80% en hasta {2}."},
    OF(SAY_ALL_FULL_IN) = {"All full in up to {0}, by about {1} if you start now; all at 80% in up "
                           "to {2}.",
                           "Todas llenas en hasta {0}, a las {1} si empieza ahora; al 80% en hasta "
                           "{2}."},
    OF(SAY_CHANGES_AT) = {"Emptiest first; change batteries at {0}.",
                          "Primero la mas vacia; cambie de bateria a las {0}."},
    OF(SAY_OFF_IN) = {"With the unit off: up to {0}.", "Con el equipo apagado: hasta {0}."},
    OF(SAY_APART_IN) = {"In the charger: up to {0}.", "En el cargador: hasta {0}."},
    OF(SAY_ALL_APART_IN) = {"With the charger too: up to {0}.",
                            "Con el cargador ademas: hasta {0}."},
    OF(SAY_CHARGED_WALL) = {"Counted from the wall, {0}.", "Contado con la pared, {0}."},
    OF(SAY_CHARGED_CAR) = {"Counted from the car, engine on, fuse of {1} A or more, {0}.",
                           "Contado en el auto con motor encendido y fusible de {1} A o mas, {0}."},
    OF(SAY_PLACE_RUNNING) = {"in the unit while it runs", "en el equipo encendido"},
    OF(SAY_PLACE_OFF) = {"in the unit while it is off", "en el equipo apagado"},
    OF(SAY_PLACE_APART) = {"in the charger", "en el cargador"},
    OF(SAY_AND) = {"{0} and {1}", "{0} y {1}"},
    OF(SAY_TIMETABLE) = {"Plan: {0}.", "Plan: {0}."},
    OF(SAY_PUT_NOW) = {"now {0}", "ahora {0}"},
    OF(SAY_PUT_AT) = {"{0} {1}", "{0} {1}"},
    OF(SAY_IN_UNIT) = {"in the unit", "al equipo"},
    OF(SAY_IN_CHARGER) = {"in the charger", "al cargador"},
    OF(SAY_LEVELS_AT) = {"At {0} plan on at least {1}.", "A las {0} cuente con al menos {1}."},
    OF(SAY_LEVELS_AFTER) = {"After {0} plan on at least {1}.",
                            "Después de {0} cuente con al menos {1}."},
    OF(SAY_ALL_FULL_AT) = {"All full at {0}.", "Todas llenas a las {0}."},
    OF(SAY_NOBODY_GETS_UP) = {"Nobody has to get up.", "Nadie tiene que levantarse."},
    OF(SAY_SOMEBODY_GETS_UP) = {"All full by then works only if somebody gets up to change at "
                                "{0}.",
                                "Todas llenas solo si alguien se levanta a cambiar a las {0}."},
    OF(SAY_NOT_ALL_BY_THEN) = {"They can't all be full by then.",
                               "No pueden estar todas llenas a esa hora."},
    OF(SAY_ALL_ARE_FULL) = {"Then there is nothing to charge.", "Entonces no falta cargar nada."},
    OF(SAY_ASK_TONIGHT) = {"To sleep through, text \"best plan for tonight\" with the charges.",
                           "Para no levantarse, escriba \"plan para esta noche\" con las cargas."},
    OF(SAY_TOO_COLD) = {"Don't charge a battery below {0} C ({1} F): that harms it. Bring it "
                        "indoors and let it get warm first, then text again.",
                        "No cargue una bateria a menos de {0} C ({1} F): se daña. Llévela "
                        "adentro, deje que se entibie y escriba otra vez."},
    OF(SAY_TOO_HOT) = {"Don't charge a battery above {0} C ({1} F). Let it cool down first, then "
                       "text again.",
                       "No cargue una bateria a mas de {0} C ({1} F). Deje que se enfrie y escriba "
                       "otra vez."},
    OF(SAY_CAR_ONLY_OFF) = {"It can't run and charge there at once: oxygen goes first.",
                            "Ahi no puede funcionar y cargar a la vez: primero el oxigeno."},
    OF(SAY_WHICH_HALF_OF_DAY) = {"Is that am or pm? Please text it all again with am or pm.",
                                 "¿De la mañana o de la tarde? Escriba todo otra vez con am o "
                                 "pm."},
    OF(SAY_THAT_IS_PAST) = {"{0} is past already. Please text it again with the day.",
                            "Las {0} ya pasaron. Escriba otra vez con el dia."},
    OF(SAY_MORE_THAN_RECORD) = {"I read {0} batteries, but our record has {1}. How full is each?",
                                "Leo {0} baterias, pero nuestro registro tiene {1}. ¿Qué carga "
                                "tiene cada una?"},
    OF(SAY_NO_CHARGE_FIGURE) = {"I have no figure for charging that way, so a person will answer.",
                                "No tengo un dato para cargar asi; una persona le va a "
                                "contestar."},
    OF(SAY_ASK_GATE_TO_GATE) = {"Ask the airline for the longest gate-to-gate time it expects, and "
                                "text it like \"gate to gate 4 h 30\".",
                                "Pida a la aerolinea el tiempo maximo de puerta a puerta y "
                                "escriba por ejemplo \"de puerta a puerta 4 h 30\"."},
    OF(SAY_AIR_IS_LEAST) = {"Time in the air is only the least: batteries are counted from gate to "
                            "gate.",
                            "El tiempo en el aire es solo el minimo: las baterias se cuentan de "
                            "puerta a puerta."},
    OF(SAY_IS_IT_GATE) = {"I read: {0}. Is that the airline's own gate-to-gate time? Text YES, or "
                          "the right time, like \"gate to gate 4 h 30\".",
                          "Leo: {0}. ¿Es el tiempo de puerta a puerta que dice la aerolinea? "
                          "Conteste SI, o el tiempo correcto, como \"de puerta a puerta 4 h 30\"."},
    OF(SAY_FLIGHT_NEEDS) = {"{0} gate to gate: airlines may ask for {1} of battery (150%), so {2} "
                            "full batteries at {3}, ordered for flying.",
                            "{0} de puerta a puerta: la aerolinea puede pedir {1} de bateria "
                            "(150%), o sea {2} baterias llenas con {3}, recetado para volar."},
    OF(SAY_FLIGHT_NO_ORDER) = {"{0} gate to gate: airlines may ask for {1} of battery (150%). Our "
                               "record has no order for flying, so I can't count batteries. Staff "
                               "were told and will call you.",
                               "{0} de puerta a puerta: la aerolinea puede pedir {1} de bateria "
                               "(150%). Nuestro registro no tiene una orden para volar y no puedo "
                               "contar las baterias. El personal ya lo sabe y le va a llamar."},
    OF(SAY_WITH_GROUND) = {"Time on the ground is in it: {0}.", "Incluye {0} en tierra."},
    OF(SAY_GROUND_ON_TOP) = {"Time at airports comes on top.", "Sume el tiempo en tierra."},
    OF(SAY_HAS_ENOUGH) = {"You have {0}.", "Usted tiene {0}."},
    OF(SAY_HAS_TOO_FEW) = {"You have {0}: {1} more needed. The office was told.",
                           "Usted tiene {0}: faltan {1}. La oficina ya lo sabe."},
    OF(SAY_NEEDS_APPROVAL) = {"Each is over 100 Wh: the airline must approve them, and 2 spares "
                              "are the most, {0} in all.",
                              "Cada una pasa de 100 Wh: la aerolinea debe aprobarlas y solo van 2 "
                              "de repuesto, {0} en total."},
    OF(SAY_CANT_BE_DONE) = {"This flight can't be done on these batteries. Staff were told and "
                            "will call you.",
                            "Con estas baterias no se puede hacer este vuelo. El personal ya lo "
                            "sabe y le va a llamar."},
    OF(SAY_NOT_ON_PLANE) = {"Batteries over 160 Wh may not go on a passenger plane.",
                            "Baterias de mas de 160 Wh no pueden ir en el avion."},
    OF(SAY_NO_LABEL) = {"Our record shows no aircraft label on this unit. Staff were told and will "
                        "call you.",
                        "Segun nuestro registro este equipo no lleva etiqueta para avion. El "
                        "personal ya lo sabe y le va a llamar."},
    OF(SAY_IN_CABIN) = {"All go in the cabin, terminals covered. Call the airline 48 h ahead: only "
                        "it can confirm this.",
                        "Todas en cabina, con los contactos tapados. Llame a la aerolinea 48 h "
                        "antes: solo ella lo confirma."},
    OF(SAY_FLIGHT_NO_FIGURE) = {"I have no figure for that on a plane, so a person will answer.",
                                "No tengo un dato para eso en avion; una persona le va a "
                                "contestar."},
    OF(SAY_ASK_CYLINDER) = {"To work it out I also need {0}. Text it all, like \"E, 1500 psi, flow "
                            "2\".",
                            "Para calcularlo falta {0}. Escriba todo, como \"E, 1500 psi, 2 "
                            "litros\"."},
    OF(SAY_CYLINDER_SIZE) = {"the size letter", "la letra del tamaño"},
    OF(SAY_CYLINDER_GAUGE) = {"what the gauge shows", "lo que marca el manometro"},
    OF(SAY_CYLINDER_FLOW) = {"the flow on its tag", "el flujo de su etiqueta"},
    OF(SAY_CYLINDER_LASTS) = {"Plan on {0} from that cylinder, to about {1} if it runs from now.",
                              "Cuente con {0} de ese tanque, hasta las {1} si lo usa desde ahora."},
    OF(SAY_CYLINDER_EMPTY) = {"Count that cylinder as empty.", "Cuente ese tanque como vacio."},
    OF(SAY_CYLINDER_OF_RECORD) = {"From our record: {0}.", "De nuestro registro: {0}."},
    OF(SAY_CYLINDER_RESIDUAL) = {"The last 200 psi don't count.",
                                 "Los ultimos 200 psi no cuentan."},
    OF(SAY_CYLINDER_FLOW_DIFFERS) =
        {"Our record says {0} L/min; please don't change it unless your "
         "prescriber says so. Staff were told and will call you.",
         "Nuestro registro dice {0} L/min; por favor no lo cambie sin "
         "orden de su doctor. El personal ya lo sabe y le va a llamar."},
    OF(SAY_CYLINDER_PERSON) = {"I can't work that out for you, so a person will answer. If you are "
                               "on it now, plug the unit in if you can.",
                               "No puedo calcular eso; una persona le va a contestar. Si lo usa "
                               "ahora, enchufe el equipo si puede."},
    OF(SAY_REQUEST_BATTERIES) = {"Request: batteries more: {0}. By what day? Text that too.",
                                 "Pedido: baterias mas: {0}. ¿Para qué dia? Escriba eso tambien."},
    OF(SAY_REQUEST_BATTERIES_BY) = {"Request: batteries more: {0}, by {1}.",
                                    "Pedido: baterias mas: {0}, para el {1}."},
    OF(SAY_REQUEST_BY) = {"Request: more batteries by {0}. How many? Text that too.",
                          "Pedido: mas baterias para el {0}. ¿Cuantas? Escriba eso tambien."},
    OF(SAY_REQUEST_DAYS) = {"Request: days more: {0}, to {1}.",
                            "Pedido: dias mas: {0}, hasta el {1}."},
    OF(SAY_REQUEST_UNTIL) = {"Request: keep it to {0}.", "Pedido: quedarselo hasta el {0}."},
    OF(SAY_OFFICE_HOURS) = {"Office: {hours}.", "Oficina: {hours}."},
};
