/* Charging, flights, cylinders and more in words; the Spanish keeps to the letters of GSM (say.c).
 */
#include "say_sums.h"

#define OF(phrase) [(phrase)-SAY_SUMS]

const char *const say_sums[PHRASE_COUNT - SAY_SUMS][LANGUAGE_COUNT] = {
    OF(SAY_FULL_IN) = {"Full in up to {0}, by about {1} if it starts now.",
                       "Llena en hasta {0}, a las {1} si empieza ahora."},
    OF(SAY_PLAN_UNTIL) = {"Plan on {0}, to about {1}.", "Cuente con {0}, hasta las {1}."},
    OF(SAY_BROKEN_PLUG) = {"Staff were alerted and will call you about the plug.",
                           "El personal ya lo sabe y le va a llamar por lo del enchufe."},
    OF(SAY_ALL_FULL_IN) = {"All full in up to {0}, by about {1} if you start now.",
                           "Todas llenas en hasta {0}, a las {1} si empieza ahora."},
    OF(SAY_TO_80_IN) = {"At 80% in up to {0}.", "Al 80% en hasta {0}."},
    OF(SAY_CHANGES_AT) = {"Emptiest first; change at {0}.", "Primero la mas vacia; cambio: {0}."},
    OF(SAY_OFF_IN) = {"With the unit off: up to {0}.", "Con el aparato apagado: hasta {0}."},
    OF(SAY_APART_IN) = {"In the charger: up to {0}.", "En el cargador: hasta {0}."},
    OF(SAY_ALL_APART_IN) = {"With the charger too: up to {0}.",
                            "Con el cargador ademas: hasta {0}."},
    OF(SAY_CHARGED_WALL) = {"Counted from the wall, {0}.", "Contado con la pared, {0}."},
    OF(SAY_CHARGED_CAR) = {"Counted in the car, engine on, fuse of {1} A or more, {0}.",
                           "En auto con motor encendido, fusible de {1} A o mas, {0}."},
    OF(SAY_PLACE_RUNNING) = {"in the unit while it runs", "en el aparato encendido"},
    OF(SAY_PLACE_OFF) = {"in the unit while it is off", "en el aparato apagado"},
    OF(SAY_PLACE_APART) = {"in the charger", "en el cargador"},
    OF(SAY_AND) = {"{0} and {1}", "{0} y {1}"},
    OF(SAY_TIMETABLE) = {"Plan: {0}.", "Plan: {0}."},
    OF(SAY_PUT_NOW) = {"now {0}", "ahora {0}"},
    OF(SAY_PUT_AT) = {"{0} {1}", "{0} {1}"},
    OF(SAY_IN_UNIT) = {"in the unit", "al aparato"},
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
    OF(SAY_CAR_ONLY_OFF) = {"Not while it runs: oxygen goes first.",
                            "Encendido no carga: primero el oxigeno."},
    OF(SAY_WHICH_HALF_OF_DAY) = {"Is that am or pm?", "¿De la mañana o de la tarde?"},
    OF(SAY_BY_WHEN) = {"I read: {0}. By when must they be charged? Text it like \"in 2 hours\" or "
                       "\"7 am\".",
                       "Leo: {0}. ¿Para qué hora las necesita? Escriba por ejemplo \"en 2 horas\" "
                       "o \"7 am\"."},
    OF(SAY_THAT_IS_PAST) = {"{0} is past already. Which day, or what time?",
                            "Las {0} ya pasaron. ¿Qué dia, o a qué hora?"},
    OF(SAY_MORE_THAN_RECORD) = {"I read {0} batteries, but our record has {1}. How full is each?",
                                "Leo {0} baterias, pero nuestro registro tiene {1}. ¿Qué carga "
                                "tiene cada una?"},
    OF(SAY_NO_CHARGE_FIGURE) = {"I have no figure for charging that way, so a person will answer.",
                                "No tengo un dato para cargar asi; una persona le va a "
                                "contestar."},
    OF(SAY_ASK_GATE_TO_GATE) =
        {"Ask the airline for the longest gate-to-gate time it expects, and "
         "text it like \"gate to gate 4 h 30\".",
         "Pida a la aerolinea el tiempo maximo de puerta de salida a puerta de llegada y "
         "escriba por ejemplo \"en total 4 h 30\"."},
    OF(SAY_AIR_IS_LEAST) = {"Time in the air is only the least: batteries are counted from gate to "
                            "gate.",
                            "El tiempo en el aire es solo el minimo."},
    OF(SAY_IS_IT_GATE) =
        {"I read: {0}. Is that the airline's own gate-to-gate time? Text YES, or "
         "the right time, like \"gate to gate 4 h 30\".",
         "Leo: {0}. ¿Es el tiempo de puerta de salida a puerta de llegada que dice la aerolinea? "
         "Conteste SI, o el tiempo correcto, como \"en total 4 h 30\"."},
    OF(SAY_FLIGHT_NEEDS) = {"{0} gate to gate: airlines may want {1} of battery (150%): {2} "
                            "full at {3}, ordered for flying.",
                            "{0} de vuelo en total: la aerolinea puede pedir {1} (150%): {2} "
                            "llenas con {3}, recetado para volar."},
    OF(SAY_FLIGHT_NO_ORDER) = {"{0} gate to gate: airlines may ask for {1} of battery (150%). Our "
                               "record has no order for flying, so I can't count batteries. Staff "
                               "were told and will call you.",
                               "{0} de vuelo en total: la aerolinea puede pedir {1} de bateria "
                               "(150%). Nuestro registro no tiene una orden para volar y no puedo "
                               "contar las baterias. El personal ya lo sabe y le va a llamar."},
    OF(SAY_WITH_GROUND) = {"That has {0} on the ground.", "Incluye {0} en tierra."},
    OF(SAY_GROUND_ON_TOP) = {"Time at airports comes on top.", "Sume el tiempo en tierra."},
    OF(SAY_HAS_ENOUGH) = {"You have {0}.", "Usted tiene {0}."},
    OF(SAY_HAS_TOO_FEW) = {"You have {0}: {1} more needed. The office was told.",
                           "Usted tiene {0}: faltan {1}. La oficina ya lo sabe."},
    OF(SAY_NEEDS_APPROVAL) = {"Over 100 Wh: if the airline approves, 2 spares, {0} in all.",
                              "Pasan de 100 Wh: con permiso, 2 de repuesto, {0} en total."},
    OF(SAY_CANT_BE_DONE) = {"These batteries can't do it; staff will call you.",
                            "Con estas no se puede; el personal le va a llamar."},
    OF(SAY_NOT_ON_PLANE) = {"Batteries over 160 Wh may not go on a passenger plane.",
                            "Baterias de mas de 160 Wh no pueden ir en el avion."},
    OF(SAY_NO_LABEL) = {"Our record shows no aircraft label on this unit. Staff were told and will "
                        "call you.",
                        "Segun nuestro registro este aparato no lleva etiqueta para avion. El "
                        "personal ya lo sabe y le va a llamar."},
    OF(SAY_IN_CABIN) = {"All in the cabin, terminals covered.",
                        "Todas en cabina, con los contactos tapados."},
    OF(SAY_WATT_HOURS) = {"One battery, as printed on it: {0}.",
                          "Cada bateria, como dice en ella: {0}."},
    OF(SAY_WATT_HOURS_FREE) = {"100 Wh or less may fly without the airline's approval, in the "
                               "cabin. Call the airline 48 h ahead all the same.",
                               "Hasta 100 Wh pueden ir en cabina sin permiso. Aun asi llame a la "
                               "aerolinea 48 h antes."},
    OF(SAY_FLIGHT_UNKNOWN) =
        {"If the airline's gate-to-gate time is {0}, it may want {1} of "
         "battery (150%). How many that is hangs on the unit: call {phone}.",
         "Si la aerolinea dice {0} de puerta de salida a puerta de llegada, puede pedir {1} de "
         "bateria (150%). Cuantas son depende del aparato: llame al {phone}."},
    OF(SAY_CALL_AIRLINE) = {"Call the airline 48 h ahead: only it can confirm.",
                            "Llame a la aerolinea 48 h antes: solo ella confirma."},
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
    OF(SAY_CYLINDER_LASTS) = {"Plan on {0} from that cylinder, to about {1} if on now.",
                              "Cuente con {0} de ese tanque, hasta las {1} si lo usa ya."},
    OF(SAY_CYLINDER_EMPTY) = {"Count that cylinder as empty.", "Cuente ese tanque como vacio."},
    OF(SAY_CYLINDER_LOW) = {"Get to a wall plug or another cylinder now. Staff were alerted. Hard "
                            "to breathe? Call {emergency}.",
                            "Vaya ya a un enchufe o a otro tanque. El personal ya lo sabe. ¿Le "
                            "cuesta respirar? Llame al {emergency}."},
    OF(SAY_CYLINDER_OF_RECORD) = {"From our record: {0}.", "Del registro: {0}."},
    OF(SAY_CYLINDER_RESIDUAL) = {"The last 200 psi don't count.",
                                 "Los ultimos 200 psi no cuentan."},
    OF(SAY_CYLINDER_FLOW_DIFFERS) =
        {"Our record says {0} L/min; please don't change it unless your "
         "prescriber says so. Staff will call you.",
         "El registro dice {0} L/min; no lo cambie sin orden de su doctor. El personal le va a "
         "llamar."},
    OF(SAY_CYLINDER_PERSON) = {"I can't work that out for you, so a person will answer. If you are "
                               "on it now, plug the unit in if you can.",
                               "No puedo calcular eso; una persona le va a contestar. Si lo usa "
                               "ahora, enchufe el aparato si puede."},
    OF(SAY_SOURCE_TAKES) =
        {"At {0} the unit takes up to {1} W, charging too: it needs a source of "
         "{2} W or more.",
         "Con {0} el aparato toma hasta {1} W mientras carga: la fuente debe dar "
         "{2} W o mas."},
    OF(SAY_SOURCE_ENOUGH) = {"{0} W covers that.", "{0} W alcanza."},
    OF(SAY_SOURCE_SMALL) = {"{0} W is too little: don't count on it.",
                            "{0} W es muy poco: no cuente con eso."},
    OF(SAY_SOURCE_SINE) = {"Pure sine wave only; at 12 volts with a fuse of {0} A or more.",
                           "Solo de onda pura; a 12 voltios, con fusible de {0} A o mas."},
    OF(SAY_SOURCE_GENERATOR) = {"Outdoors only, far from windows: its exhaust kills. Keep a full "
                                "battery in the unit.",
                                "Solo afuera y lejos de ventanas: su humo mata. Tenga una bateria "
                                "llena en el aparato."},
    OF(SAY_SOURCE_RV) = {"A hookup is like the wall; off batteries only with a pure sine inverter.",
                         "La toma de camping es como la pared; con baterias, solo con inversor de "
                         "onda pura."},
    OF(SAY_SOURCE_SEAT) =
        {"Count seat power as nothing: it may be off or too weak. Bring batteries "
         "for the whole way.",
         "Cuente la toma del asiento como nada: puede no andar o ser poca. Lleve "
         "baterias para todo el viaje."},
    OF(SAY_SOURCE_LASTS) = {"Plan on {0} from its {1} Wh, on top of your batteries.",
                            "Cuente con {0} de sus {1} Wh, ademas de sus baterias."},
    OF(SAY_SOURCE_LASTS_IF) = {"If its outlet gives that, plan on {0} from its {1} Wh, on top of "
                               "your batteries. By USB it can't.",
                               "Si su toma da eso, cuente con {0} de sus {1} Wh, ademas de sus "
                               "baterias. Por USB no se puede."},
    OF(SAY_SOURCE_USB_ONLY) = {"Then it can't feed the unit: don't count on it.",
                               "Entonces no sirve para el aparato: no cuente con eso."},
    OF(SAY_SOURCE_ON_BOARD) = {"On a plane it is a spare: cabin only, over 100 Wh if the airline "
                               "approves.",
                               "En avion cuenta como repuesto: en cabina, y si pasa de 100 Wh con "
                               "permiso."},
    OF(SAY_SOURCE_NOT_ON_BOARD) = {"Over 160 Wh it may not go on a plane.",
                                   "Si pasa de 160 Wh no puede ir en avion."},
    OF(SAY_SOURCE_ASK_WH) = {"By USB it can't. If it has an outlet, text the watts and Wh on its "
                             "label, like \"300 W, 500 Wh\".",
                             "Por USB no se puede. Si tiene toma, escriba los W y los Wh de su "
                             "etiqueta, como \"300 W, 500 Wh\"."},
    OF(SAY_SOURCE_ASK_US) = {"Ask us at {phone} before you use it.",
                             "Pregunte al {phone} antes de usarla."},
    OF(SAY_SOURCE_NO_FIGURE) = {"I have no figure for other power, so a person will answer. Don't "
                                "use it before.",
                                "No tengo un dato para otra corriente; una persona le va a "
                                "contestar. No la use antes."},
    OF(SAY_REQUEST_BATTERIES) = {"Request: batteries more: {0}. By what day? Text that too.",
                                 "Pedido: baterias mas: {0}. ¿Para qué dia? Escriba eso también."},
    OF(SAY_REQUEST_BATTERIES_BY) = {"Request: batteries more: {0}, by {1}.",
                                    "Pedido: baterias mas: {0}, para el {1}."},
    OF(SAY_REQUEST_BY) = {"Request: more batteries by {0}. How many? Text that too.",
                          "Pedido: mas baterias para el {0}. ¿Cuantas? Escriba eso también."},
    OF(SAY_REQUEST_DAYS) = {"Request: days more: {0}, to {1}.",
                            "Pedido: dias mas: {0}, hasta el {1}."},
    OF(SAY_REQUEST_UNTIL) = {"Request: keep it to {0}.", "Pedido: quedarselo hasta el {0}."},
    OF(SAY_OFFICE_HOURS) = {"Office: {hours}.", "Oficina: {hours}."},
    OF(SAY_RAN_OUT_BATTERY) =
        {"Plug the unit into the wall now, or put in a charged battery. {0} "
         "Hard to breathe? Call {emergency}. Staff were alerted and will call "
         "you.",
         "Enchufe ya el aparato o ponga una bateria cargada. {0} ¿Le falta el "
         "aire? Llame al {emergency}. El personal le va a llamar."},
    OF(SAY_KEEP_ON) =
        {"Keep the oxygen on as ordered and do what {emergency} and the medics say. Mode "
         "and setting stand on the unit's display. Leave the unit; we fetch it later.",
         "Deje el oxigeno puesto como fue ordenado y haga lo que digan el {emergency} y "
         "los paramédicos. El modo y el nivel se ven en la pantalla. Luego recogemos "
         "el aparato."},
    OF(SAY_NOBODY_GETS_THROUGH) =
        {"Even so call {emergency} now, or once more, and say that the way is closed. They find "
         "another. Keep the oxygen on, spare the batteries, stay warm.",
         "Aun asi llame ya al {emergency}, u otra vez, y diga que no hay paso: buscan otro modo de "
         "llegar. Siga con el oxigeno, cuide la bateria y abriguense."},
    OF(SAY_HELP_IS_LATE) =
        {"Called {emergency}? If not, call {emergency} now. If you did, call again: nobody is "
         "here. Text us "
         "where you are. Staff were asked to call {emergency} too.",
         "¿Ya llamaron al {emergency}? Si no, llame ya. Si llamaron, llame otra vez: nadie llega. "
         "Escriba en donde se encuentra. Pedimos al personal que llame también."},
    OF(SAY_CRY) = {"Text us what is wrong and where you are, or call {phone}.",
                   "Escriba qué pasa y en donde se encuentra, o llame al {phone}."},
    OF(SAY_HOSPICE) = {"Thank you for telling us. Staff will know. For care call your nurse or "
                       "hospice. For the unit text us or call {phone}.",
                       "Gracias por avisar. El personal lo va a saber. Para el cuidado llame a su "
                       "enfermera. Del aparato escriba aqui o llame al {phone}."},
    OF(SAY_HOSPICE_NOW) =
        {"Thank you for telling us. Staff were alerted. Call the nurse or hospice now. Show "
         "whoever comes the paper that says so. You may call {emergency} at any time.",
         "Gracias por avisar. El personal ya lo sabe. Llame ya a la enfermera o al hospicio. "
         "Enseñe el papel a quien venga. Puede llamar al {emergency} a toda hora."},
    OF(SAY_COURTESY) =
        {"Thank you. Need a person? Call {phone}. In danger? Call {emergency}.",
         "Gracias. ¿Necesita a una persona? Llame al {phone}. ¿En peligro? Llame al {emergency}."},
    OF(SAY_HELP_COMES) =
        {"Stay by the phone and do what {emergency} says. Unlock the door. Keep the oxygen on as "
         "ordered. Worse? Call {emergency} again.",
         "Haga lo que diga el {emergency}. Deje la puerta sin llave. Siga con el "
         "oxigeno. ¿Peor? Llame otra vez al {emergency}."},
    OF(SAY_IF_IT_IS_HELP) =
        {"Is it the medics? Do what they say, and keep the oxygen on. Not the medics? Call "
         "{emergency} now. Staff know you wrote.",
         "¿Son los paramédicos? Haga lo que digan y siga con el oxigeno. ¿No son ellos? Llame ya "
         "al {emergency}. El personal tiene su mensaje."},
    OF(SAY_CALL_ANYWAY) =
        {"Call {emergency} anyway, even if they say no. {emergency} asks what is wrong and where "
         "you are. The medics can talk with them.",
         "Llame al {emergency} aunque le digan que no. Le preguntan qué pasa y en donde se "
         "encuentran. Los paramédicos hablan con la persona."},
    OF(SAY_LET_THEM_COME) =
        {"Let the medics come and look, even if it seems better. Don't call it off. Worse? Call "
         "{emergency} again.",
         "Deje que los paramédicos vengan y vean, aunque parezca mejor. No cancele la ambulancia. "
         "¿Peor? Llame otra vez al {emergency}."},
    OF(SAY_IT_IS_A_PROGRAM) =
        {"This is a program: it can't call {emergency} or see who comes. Not called yet? Call "
         "{emergency} now. Don't wait for staff.",
         "Esto es un programa: no puede llamar al {emergency} ni ver quién viene. ¿No ha llamado? "
         "Llame ya al {emergency}. No espere al personal."},
    OF(SAY_IT_CANNOT_CALL) = {"It can't call {emergency}.", "No puede llamar al {emergency}."},
    OF(SAY_WHERE_UNKNOWN) =
        {"Call {emergency} even so: they can look for you. Say what you see: a sign, a road, a "
         "lift, the name of the lodge.",
         "Llame ya al {emergency} aunque no sepa: pueden buscar en donde se encuentra. Diga qué "
         "ve: un letrero, una calle, el nombre del hotel."},
    OF(SAY_PLACE_TOLD) =
        {"Staff have that place now. Tell {emergency} too. Not called yet? Call {emergency} now.",
         "El personal ya tiene ese dato. Diga eso también al {emergency}. ¿No ha llamado? Llame "
         "ya al {emergency}."},
    OF(SAY_ASK_911) =
        {"Ask {emergency}: they tell you what to do. Put the phone on speaker and stay on the "
         "line. Not called yet? Call {emergency} now.",
         "Pregunte al {emergency}: le dicen qué hacer. Ponga el altavoz y no cuelgue. ¿No ha "
         "llamado? Llame ya al {emergency}."},
    OF(SAY_NOT_BACK_IN) = {"Don't go back in.", "No vuelva a entrar."},
    OF(SAY_TELL_911_THIS) =
        {"Staff were alerted. Tell {emergency} this too, and call again if it gets worse. Not "
         "called yet? Call {emergency} now.",
         "El personal ya lo sabe. Diga eso también al {emergency} y llame otra vez si empeora. "
         "¿No ha llamado? Llame ya al {emergency}."},
    OF(SAY_988_AGAIN) =
        {"Call or text 988, again too: they listen at any time. Hurt, took pills, or in danger "
         "now? Call {emergency}. A person here was told too.",
         "Llame otra vez al 988 y oprima 2, o mande AYUDA al 988, a toda hora. ¿Tomo pastillas o "
         "corre peligro ya? Llame al {emergency}. El personal ya lo sabe."},
    OF(SAY_RAN_OUT_TANK) =
        {"Breathe from the unit now: plug it into the wall or put in a charged "
         "battery. No oxygen from anything, or hard to breathe? Call {emergency} "
         "now. Staff were alerted and will call you.",
         "Use ya el aparato, enchufado a la pared o con una bateria cargada. ¿No "
         "le llega oxigeno o le falta el aire? Llame al {emergency} ya. El "
         "personal le va a llamar."},
    OF(SAY_WHAT_TO_KNOW) = {"Thank you. What would you like to know?",
                            "Gracias. ¿Qué quiere saber?"},
    OF(SAY_IF_A_READING) = {"If {0} is an oxygen reading and no age, call {emergency} now.",
                            "Si {0} es una lectura de oxigeno y no la edad, llame ya al "
                            "{emergency}."},
    OF(SAY_HOUSE_ALARM) =
        {"An alarm of the house is not ours. Carbon monoxide or smoke alarm sounds, "
         "or anyone feels ill? Everyone outside, call {emergency}. One short chirp a "
         "minute may be its own battery: tell your host or desk today. Do not "
         "silence it or leave its battery out.",
         "Una alarma de la casa no es nuestra. ¿Suena la de monoxido o de humo, o "
         "alguien se siente mal? Salgan todos y llame al {emergency}. Un pitido "
         "corto por minuto puede ser su propia pila: avise hoy en su alojamiento. "
         "No la apague ni la deje sin pila."},
};
