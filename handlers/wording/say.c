#include "say.h"

#include <assert.h>
#include <stdarg.h>
#include <string.h>

#include "fill.h"
#include "memory.h"
#include "say_sums.h"

/* The Spanish ones keep to the letters of GSM 03.38 (parts.h), which has ñ é ü but no á í ó ú: with
 * one of those a text costs twice as many parts. So é stands where it belongs, and those lose their
 * mark. */
static const char *const phrases[SAY_SUMS][LANGUAGE_COUNT] = {
    [SAY_AUTOMATIC] = {"Automatic answer from {company}, not a person.",
                       "Le contesta un programa de {company}, no una persona."},
    [SAY_YOU_WROTE_AT] = {"You wrote at {0}:", "Su mensaje de las {0}:"},
    [SAY_CALL_911_IF] = {"Call {emergency} if breathing gets hard, lips turn blue, or you feel "
                         "worse.",
                         "Llame al {emergency} si le cuesta respirar, si los labios se ponen "
                         "azules o si se siente peor."},
    [SAY_BREATHING_911] = {"Trouble breathing? Call {emergency}.",
                           "¿Le cuesta respirar? Llame al {emergency}."},
    [SAY_STAFF_ALERTED] = {"Staff were alerted.", "El personal ya lo sabe."},
    [SAY_EMERGENCY_FIRST] =
        {"Call {emergency} now. Say: on oxygen and unwell. If the unit stopped, "
         "go to your backup oxygen. Sit up. Stay with someone. Do not wait "
         "for a text.",
         "Llame al {emergency} ya. Diga: usa oxigeno y se siente mal. Si el "
         "aparato no funciona, use su tanque de reserva. No espere mensajes."},
    [SAY_BATTERY_AND_SYMPTOM] =
        {"Move away from the battery now, then call {emergency}. Say: battery hot or swollen, on "
         "oxygen and unwell. Use your backup away from it. Do not wait for a text.",
         "Aléjese ya de la bateria y llame al {emergency}. Diga: bateria caliente o hinchada, usa "
         "oxigeno y se siente mal. Use su tanque lejos de ella. No espere mensajes."},
    [SAY_CLINICAL_READING] = {"I can't judge a reading, so staff were alerted and will call you. "
                              "Keep your oxygen on as ordered.",
                              "No podemos decir si ese valor es bueno o malo. El personal ya lo "
                              "sabe y le va a llamar. Siga con su oxigeno como se lo recetaron."},
    [SAY_ADDRESS] = {"Our record has you at {0}: tell {emergency} if you are still there.",
                     "Su domicilio en nuestra lista: {0}. Si sigue en ese lugar, dele ese dato al "
                     "{emergency}."},
    [SAY_TELL_TOO] = {"Tell {emergency} too: {0}.", "Diga también al {emergency}: {0}."},
    [SAY_SIT_UP] = {"Sit up.", "Siéntese."},
    [SAY_PLUG_IN] = {"Plug the unit into the wall.", "Enchufe el aparato a la pared."},
    [SAY_BACKUP] = {"If it stopped, use {0} at the flow on its tag.",
                    "Si el aparato no funciona, use {0} con el flujo que dice su etiqueta."},
    [SAY_BACKUP_IF_ANY] = {"If it stopped, use your backup oxygen if you have one.",
                           "Si el aparato no funciona, use su tanque de reserva si lo tiene."},
    [SAY_DO_NOT_WAIT] = {"Staff were alerted too. Don't wait for them.",
                         "El personal ya lo sabe. No lo espere."},
    [SAY_FLOWING] = {"Is oxygen flowing again? Text YES or NO.",
                     "¿Ya sale oxigeno otra vez? Conteste SI o NO."},
    [SAY_FLOWING_STILL] = {"Is oxygen still flowing? Text YES or NO.",
                           "¿Sigue saliendo oxigeno? Conteste SI o NO."},
    [SAY_FLOWING_YES] = {"Thank you. Staff know and will still call you.",
                         "Gracias. El personal lo sabe y le va a llamar."},
    [SAY_FLOWING_NO] = {"Call {emergency} now if no oxygen reaches you or breathing is hard. Go to "
                        "your backup oxygen if you have it. Sit up. Do not wait for a text.",
                        "Llame al {emergency} ya si no le llega oxigeno o le cuesta respirar. Use "
                        "su tanque de reserva si lo tiene. Siéntese. No espere mensajes."},
    [SAY_CALLED_911] = {"Called {emergency}? If not, call {emergency} now. Staff know you wrote.",
                        "¿Ya llamaron al {emergency}? Si no, llame al {emergency} ya. El personal "
                        "tiene su mensaje."},
    [SAY_CANNOT_CALL] =
        {"{emergency} works with no credit, on any network: dial even with no bars, or "
         "text {emergency}. Or use another person's phone. Text us where you are.",
         "Marque al {emergency} sin saldo y aunque no vea señal, o mande mensaje al "
         "{emergency}. O use el teléfono de otra persona. Escriba en donde se "
         "encuentra."},
    [SAY_STAFF_CALL_FOR_YOU] =
        {"Staff were asked to call {emergency} for you. Don't wait: keep trying.",
         "Pedimos al personal que llame al {emergency} por usted. No "
         "lo espere: siga intentando."},
    [SAY_IN_SPANISH] = {"Yes: call {emergency} now and say \"Spanish\". They put an interpreter on "
                        "the line.",
                        "Si: llame ya al {emergency} y diga \"Español\". Le ponen un intérprete en "
                        "la linea."},
    [SAY_STAFF_HELP] = {"Text MINE 12 to take alert 12, TALK 12 and your words to write to the "
                        "renter, HAND 12 KIM to pass it on, SORTED 12 and what happened to close "
                        "it, OPEN for the list, LINK 12 R-34 once you know whose phone it is, DIED "
                        "R-34 if a renter has died, HERE when your turn begins.",
                        "Text MINE 12 to take alert 12, TALK 12 and your words to write to the "
                        "renter, HAND 12 KIM to pass it on, SORTED 12 and what happened to close "
                        "it, OPEN for the list, LINK 12 R-34 once you know whose phone it is, DIED "
                        "R-34 if a renter has died, HERE when your turn begins."},
    [SAY_STAFF_NONE_OPEN] = {"No alert is open.", "No alert is open."},
    [SAY_STAFF_TAKEN] =
        {"Alert {0} is yours{1}. Text SORTED {0} and what happened when it is done.",
         "Alert {0} is yours{1}. Text SORTED {0} and what happened when it is done."},
    [SAY_STAFF_HAS_IT] = {"Alert {0} is with {1}.", "Alert {0} is with {1}."},
    [SAY_STAFF_CLOSED] = {"Alert {0} is closed{1}.", "Alert {0} is closed{1}."},
    [SAY_STAFF_OUTCOME] = {"What happened? Text SORTED {0} and say it in a few words.",
                           "What happened? Text SORTED {0} and say it in a few words."},
    [SAY_TALK_SENT] =
        {"Sent{1}. What they answer comes to you; SORTED {0} and what happened ends it.",
         "Sent{1}. What they answer comes to you; SORTED {0} and what happened ends it."},
    [SAY_TALK_ASKED] =
        {"{1}hat they text comes to you now. TALK {0} and your words: they get those.",
         "{1}hat they text comes to you now. TALK {0} and your words: they get those."},
    [SAY_TALK_RING] = {"Alert {0}: {1} gets no texts from us. Please ring.",
                       "Alert {0}: {1} gets no texts from us. Please ring."},
    [SAY_TALK_NOBODY] = {"Alert {0} is about hutbell itself: there is nobody to write to.",
                         "Alert {0} is about hutbell itself: there is nobody to write to."},
    [SAY_HAND_WHO] = {"To whom? Text HAND {0} and one of: {1}",
                      "To whom? Text HAND {0} and one of: {1}"},
    [SAY_HAND_ASKED] = {"{1} was asked to take alert {0}{2}. Until then it is yours.",
                        "{1} was asked to take alert {0}{2}. Until then it is yours."},
    [SAY_DIED_WHO] = {"Who? Text DIED and the id of the rental or the number of its alert: DIED "
                      "R-34. ALIVE R-34 takes it back.",
                      "Who? Text DIED and the id of the rental or the number of its alert: DIED "
                      "R-34. ALIVE R-34 takes it back."},
    [SAY_DIED] = {"{0}, {1}: we start nothing more there. Texts from them go to staff. If that is "
                  "wrong: ALIVE {0}.",
                  "{0}, {1}: we start nothing more there. Texts from them go to staff. If that is "
                  "wrong: ALIVE {0}."},
    [SAY_ALIVE] = {"{0}, {1}: texts are answered again as before.",
                   "{0}, {1}: texts are answered again as before."},
    [SAY_TALK_CLOSED] = {"Our staff have finished here. From now on this automatic line answers "
                         "again. Emergency? Call {emergency}.",
                         "El personal ya lo dio por cerrado. Desde ahora contesta otra vez "
                         "este programa, no una persona. ¿Emergencia? Llame al {emergency}."},
    [SAY_TALK_NO_WORD] =
        {"Nobody has answered you yet; staff are being called again. Meanwhile this automatic line "
         "answers: text your question once more. Emergency? Call {emergency}.",
         "Nadie le ha contestado todavia; estamos llamando otra vez al personal. Mientras tanto "
         "contesta este sistema automatico: mande su pregunta otra vez. ¿Emergencia? Llame al "
         "{emergency}."},
    [SAY_NOBODY_YET] =
        {"Nobody of our staff has answered yet; all of them are being called. Don't wait for us: "
         "call "
         "{emergency} if breathing gets hard, lips turn blue, or you feel worse.",
         "Nadie del personal ha contestado todavia; estamos llamando a todos. No nos espere: llame "
         "al {emergency} si le cuesta respirar, se le ponen azules los labios o se siente peor."},
    [SAY_SOMEONE_HAS_IT] = {"{0} of our staff has your message now. Call {emergency} if breathing "
                            "gets hard or you feel worse.",
                            "{0}, de nuestro personal, ya tiene su mensaje. Llame al {emergency} "
                            "si le cuesta respirar o se siente peor."},
    [SAY_TURN_YOURS] = {"Thank you. The turn is yours.", "Thank you. The turn is yours."},
    [SAY_TURN_ANOTHERS] = {"{0} has the turn.", "{0} has the turn."},
    [SAY_TURN_NONE] = {"Nobody waits for you to confirm a turn.",
                       "Nobody waits for you to confirm a turn."},
    [SAY_STAFF_NOBODY] = {"NOT sent to {1}. Text TALK {0} and your words to write to {1}. OPEN "
                          "lists what is open.",
                          "NOT sent to {1}. Text TALK {0} and your words to write to {1}. OPEN "
                          "lists what is open."},
    [SAY_STAFF_TAKE] = {"Text MINE {0} to take it: {1}.", "Text MINE {0} to take it: {1}."},
    [SAY_STAFF_SLIP] = {"{0} {1}? Text YES, or send it again.",
                        "{0} {1}? Text YES, or send it again."},
    [SAY_STAFF_STAYS] = {"Alert {0} stays open, and your text went to nobody.",
                         "Alert {0} stays open, and your text went to nobody."},
    [SAY_STAFF_ABSENT] = {"A colleague is told that you cannot do your turn. If you feel very ill "
                          "call {emergency}.",
                          "A colleague is told that you cannot do your turn. If you feel very ill "
                          "call {emergency}."},
    [SAY_STAFF_RECORD] = {"Address, door, unit, cylinder: not by text. A call tells them after key "
                          "1, the link of an e-mail too.",
                          "Address, door, unit, cylinder: not by text. A call tells them after key "
                          "1, the link of an e-mail too."},
    [SAY_LINK_HELP] = {"Text LINK, the phone with + or the number of its alert, and the id of the "
                       "rental: LINK 12 R-34. First check whose phone it is.",
                       "Text LINK, the phone with + or the number of its alert, and the id of the "
                       "rental: LINK 12 R-34. First check whose phone it is."},
    [SAY_LINK_NO_RENTAL] = {"There is no rental {0}. Nothing was changed.",
                            "There is no rental {0}. Nothing was changed."},
    [SAY_LINK_IN_RECORD] =
        {"{0} stands in the record of {1} itself; only there it can be changed.",
         "{0} stands in the record of {1} itself; only there it can be changed."},
    [SAY_LINK_CLOSED] = {"Rental {0} is closed, so no phone counts for it. Nothing was changed.",
                         "Rental {0} is closed, so no phone counts for it. Nothing was changed."},
    [SAY_LINKED] =
        {"{0} counts as a phone of {1}, {2}, from now on. If that is wrong: UNLINK {0} {1}.",
         "{0} counts as a phone of {1}, {2}, from now on. If that is wrong: UNLINK {0} {1}."},
    [SAY_UNLINKED] = {"{0} no longer counts as a phone of {1}, {2}.",
                      "{0} no longer counts as a phone of {1}, {2}."},
    [SAY_OPTED_OUT] = {"{company}: you will get no more texts from us. Text START to get them "
                       "again. Emergency? Call {emergency}.",
                       "{company}: ya no le mandaremos mensajes. Mande START para recibirlos otra "
                       "vez. ¿Emergencia? Llame al {emergency}."},
    [SAY_HOW_TO_STOP] = {"Want no more texts from us? Text STOP.",
                         "¿Ya no quiere mensajes? Mande STOP."},
    [SAY_OPTED_IN] =
        {"{company}: you get automatic answers to your texts about your rental again. Text HELP "
         "for help, STOP to stop. Message and data rates may apply.",
         "{company}: un programa le contesta otra vez sobre su renta. Mande AYUDA para "
         "ayuda, STOP para no recibir mensajes. Puede haber cargos."},
    [SAY_HELP] =
        {"{company}: automatic answers about your oxygen rental. Call {phone}. Text STOP to stop. "
         "Message and data rates may apply.",
         "{company}: un programa contesta sobre su renta de oxigeno. Llame al {phone}. Mande "
         "STOP para no recibir mensajes. Puede haber cargos."},
    [SAY_IN_DANGER] = {"In danger? Call {emergency}.", "¿En peligro? Llame al {emergency}."},
    [SAY_WHICH_RENTAL] = {"Which rental do you mean: {0}? Text the number.",
                          "¿De qué renta habla: {0}? Conteste con el que va delante, como 1 o 2."},
    [SAY_WHICH_TOPIC] = {"Did you mean 1: {0}, or 2: {1}? Text 1 or 2, or NO for neither.",
                         "¿Quiso decir 1: {0}, o 2: {1}? Conteste 1, 2 o NO."},
    [SAY_WHICH_CHARGE] = {"How full is each battery, the one in the unit too? Text it like \"1 "
                          "full, 1 with 2 lights\".{0}",
                          "¿Qué carga tiene cada bateria y la que va en el aparato? Escriba por "
                          "ejemplo \"1 llena, 1 con 2 luces\".{0}"},
    [SAY_WHICH_PERCENT] = {"Is {0} a battery's charge or an oxygen reading? Text it like \"battery "
                           "60%\" or \"oxygen 90%\".",
                           "¿Es {0} la carga de una bateria o un valor de oxigeno? Escriba por "
                           "ejemplo \"bateria 60%\" u \"oxigeno 90%\"."},
    [SAY_IMPOSSIBLE] = {"I read \"{0}\", which can't be so.", "Leo \"{0}\", y eso no puede ser."},
    [SAY_TELL_AGAIN] = {"Please text it once more.", "Escriba otra vez, por favor."},
    [SAY_READ] = {"I read: {0}.", "Leo: {0}."},
    [SAY_DROPPED] = {"All right.", "De acuerdo."},
    [SAY_DID_SO] = {"Good, thank you. Text us if anything looks or sounds wrong.",
                    "Bien, gracias. Escriba si algo se ve o suena raro."},
    [SAY_OK_IF_SO] = {"It is if it is just as we wrote. If anything looks, sounds or feels "
                      "different, or you are not sure, call {0}.",
                      "Lo esta si es tal como lo escribimos. Si algo se ve, suena o se siente "
                      "distinto, o si no esta seguro, llame al {0}."},
    [SAY_PLAN_ON] = {"Plan on {0}, to about {1}. Be at a plug by {2}.",
                     "Cuente con {0}, hasta las {1}. Esté junto a un enchufe a las {2}."},
    [SAY_PLAN_ON_SHORT] = {"Plan on {0}, to about {1}. Be at a plug now.",
                           "Cuente con {0}, hasta las {1}. Vaya a un enchufe ya."},
    [SAY_PLAN_ON_NOTHING] = {"Don't count on any time from that. Be at a plug now, or go to your "
                             "backup oxygen if you have it.",
                             "No cuente con nada de eso. Vaya a un enchufe ya, o use su tanque de "
                             "reserva si lo tiene."},
    [SAY_UP_TO] = {"It may last up to {0}.", "Puede durar hasta {0}."},
    [SAY_COUNTED_ORDER] = {"Counted with {0}, ordered {1}.", "Contado con {0}, recetado {1}."},
    [SAY_COUNTED_TOLD] = {"Counted with {0}, as you wrote.", "Contado con {0}, como usted dijo."},
    [SAY_SINCE] = {"That is from the charge you told at {0}.",
                   "Eso es con la carga que dijo a las {0}."},
    [SAY_SLEEP_UNIT_ONLY] = {"For sleep only what is in the unit counts; sleep with it plugged in.",
                             "Para dormir solo cuenta la bateria que va en el aparato; duerma con "
                             "el aparato enchufado."},
    [SAY_ONE_BATTERY] = {"Plan on {0} from one full battery.",
                         "Cuente con {0} de una bateria llena."},
    [SAY_THAT_BATTERY] = {"Plan on {0} from that battery.", "Cuente con {0} de esa bateria."},
    [SAY_SO_MANY_BATTERIES] = {"Plan on {1} from {0} batteries.",
                               "Cuente con {1} de {0} baterias."},
    [SAY_RECORD_SAYS] =
        {"Our record says {0} {1}; please don't change it unless your prescriber "
         "says so.",
         "Nuestro registro dice {0} {1}; por favor no lo cambie sin orden de su doctor."},
    [SAY_STAFF_WILL_CALL] = {"Staff were told and will call you.",
                             "El personal ya lo sabe y le va a llamar."},
    [SAY_NO_SLEEP_ORDER] = {"Our record has no order for sleep. Staff were told and will call you "
                            "before bedtime.",
                            "Nuestro registro no tiene una orden para dormir. El personal ya lo "
                            "sabe y le va a llamar antes de la noche."},
    [SAY_NO_FIGURE] = {"I have no figure for that, so a person will answer. If you are on battery "
                       "now, be at a plug.",
                       "No tengo un dato para eso; una persona le va a contestar. Si usa la "
                       "bateria ahora, vaya a un enchufe."},
    [SAY_WALL_ONLY] = {"At {0} the unit runs only from the wall, not from a battery or a car.",
                       "Con {0} el aparato funciona solo con la pared, no con baterias ni en el "
                       "auto."},
    [SAY_WALL_NOW] =
        {"If it is not plugged in now, plug it in, or go to your backup oxygen if you "
         "have it. Staff were told and will call you.",
         "Si ahora no tiene corriente, enchufe el aparato, o use su tanque de reserva si lo "
         "tiene. El personal ya lo sabe y le va a llamar."},
    [SAY_OUT_LASTS] = {"Plan on {0}, to about {1}.", "Cuente con {0}, hasta las {1}."},
    [SAY_OUT_TO_BACKUP] =
        {"Go to your backup now: {0} at the flow on its tag. At {1} no battery runs the unit. A "
         "person was alerted and will call you. Trouble breathing? Call {emergency} now.",
         "Use ya {0} con el flujo que dice su etiqueta. Con {1} ninguna bateria hace "
         "funcionar el aparato. Una persona ya lo sabe y le va a llamar. ¿Le falta el aire? Llame "
         "al {emergency} ya."},
    [SAY_OUT_NO_BACKUP] =
        {"At {0} no battery runs the unit. Go to backup oxygen now if you have any. If you have "
         "no oxygen or trouble breathing, call {emergency} now. A person was alerted and will "
         "call you.",
         "Con {0} ninguna bateria hace funcionar el aparato. Use ya oxigeno de reserva si lo "
         "tiene. Si no tiene oxigeno o le falta el aire, llame al {emergency} ya. Una persona ya "
         "lo sabe y le va a llamar."},
    [SAY_TRIP_LASTS] = {"By the low count the batteries last those {0}, with about {1} left.",
                        "Por lo bajo, las baterias duran esas {0}, y sobran unos {1}."},
    [SAY_TRIP_LASTS_MID] =
        {"By the low count the batteries last those {0}, with about {1} left at the tightest.",
         "Por lo bajo, las baterias duran esas {0}; en lo mas justo sobran unos {1}."},
    [SAY_TRIP_TIGHT] =
        {"Too tight: counted low, the batteries last those {0} with only about {1} left.",
         "Muy justo: por lo bajo, las baterias duran esas {0} y solo sobran unos {1}."},
    [SAY_TRIP_TIGHT_MID] = {"Too tight: counted low, the batteries last those {0}, but at the "
                            "tightest with only about {1} left.",
                            "Muy justo: por lo bajo, las baterias duran esas {0}, pero en lo mas "
                            "justo solo sobran unos {1}."},
    [SAY_TRIP_TIGHT_BARE] = {"Too tight: counted low, the batteries last those {0} and no more.",
                             "Muy justo: por lo bajo, las baterias duran esas {0} y nada mas."},
    [SAY_TRIP_SHORT] = {"That does not last: counted low, empty after {0} ({1}), {2} short.",
                        "No alcanza: por lo bajo, se acaban a las {0} de salir ({1}); faltan "
                        "{2}."},
    [SAY_TRIP_AT] = {"That is about {0}.", "Eso es a las {0}."},
    [SAY_TRIP_KEEP] = {"Delays happen: keep {0} in hand.",
                       "Puede haber demoras: hay que guardar {0}."},
    [SAY_TRIP_LEFT_WITH] = {"What is left is counted with {0}, ordered {1}.",
                            "Lo que sobra, contado con {0}, recetado {1}."},
    [SAY_TRIP_MEND_CAR] = {"The car's outlet while you drive would be enough.",
                           "Alcanza si en el camino usa la toma del auto."},
    [SAY_TRIP_MEND_WALL] = {"A plug wherever you stay would be enough.",
                            "Alcanza si lo enchufa en cada parada."},
    [SAY_TRIP_MEND_ONE] = {"1 more full battery would be enough.",
                           "Alcanza con 1 bateria llena mas."},
    [SAY_TRIP_MEND_TWO] = {"2 more full batteries would be enough.",
                           "Alcanza con 2 baterias llenas mas."},
    [SAY_TRIP_MEND_NONE] = {"2 more full batteries won't do: it takes a plug on the way.",
                            "Con 2 llenas mas tampoco: hace falta un enchufe en el camino."},
    [SAY_TRIP_CALL] = {"Don't set out on that alone; staff will call you.",
                       "No salga solo con eso; el personal le va a llamar."},
    [SAY_TRIP_HEIGHT] = {"That is above the unit's limit of {0} ft.",
                         "Pasa del limite del aparato, {0} pies."},
    [SAY_TRIP_NO_CORD] = {"I counted no power in the car: our record has no car cord for you.",
                          "No cuento la toma del auto: en su registro no hay cable de auto."},
    [SAY_COLD] = {"In that cold they count {0}%.", "Con ese frio cuentan {0}%."},
    [SAY_TRIP_FULL] = {"Counted with {0} full batteries, as in our record.",
                       "Contado con {0} baterias llenas, como en su registro."},
    [SAY_TRIP_ASK_LENGTH] =
        {"How long is each part of the trip, and what does each battery show? "
         "Text it like \"drive 2 h, walk 1 h, drive 2 h, 2 full\".",
         "¿Cuanto dura cada parte del viaje y qué carga tiene cada bateria? Por "
         "ejemplo: \"2 horas en auto, 1 hora a pie, 2 llenas\"."},
    [SAY_REMIND_WATCH] = {"I'll text you at about {0}, when {1} may be left.",
                          "Le escribo a las {0}, cuando tal vez queden {1}."},
    [SAY_REMIND_AT] = {"I'll text you {0}.", "Le escribo el {0}."},
    [SAY_REMIND_TODAY] = {"Meant in a few hours? Text \"remind me today {0}\".",
                          "¿Era dentro de unas horas? Mande \"avisame hoy a las {0}\"."},
    [SAY_NOT_AN_ALARM] = {"Not an alarm: texts can be late. Trust the machine's own alarm.",
                          "No es alarma: puede tardar. Mire la del aparato."},
    [SAY_REMIND_OFFER] = {"Text REMIND 30 if you want a text when 30 min may be left.",
                          "Mande AVISO 30 si quiere un mensaje cuando tal vez queden 30 min."},
    [SAY_REMIND_WATCH_OFF] =
        {"My text for {0} is off, as it went by the older charge. Text REMIND 30 for a new one.",
         "Ya no le escribo a las {0}: eso era con la carga de antes. Mande AVISO 30 para otro "
         "aviso."},
    [SAY_REMIND_ALL_OFF] = {"All right: I'll send no reminder.", "De acuerdo: no le mando avisos."},
    [SAY_REMIND_NONE] = {"No reminder is set.", "No hay avisos pendientes."},
    [SAY_REMIND_WHEN] = {"When shall I text you? Write it like \"remind me at 9 pm\" or \"text me "
                         "when 30 min are left\".",
                         "¿Cuando le escribo? Por ejemplo: \"avisame a las 9 de la noche\" o "
                         "\"avisame cuando falten 30 minutos\"."},
    [SAY_REMIND_PAST] = {"I read {0} today, which is past.", "Leo hoy a las {0}, y ya paso."},
    [SAY_REMIND_MANY] = {"So many reminders are set that I can't add one. Text \"cancel "
                         "reminders\" to end them all.",
                         "Ya hay tantos avisos que no cabe otro. Mande \"cancelar avisos\" para "
                         "quitarlos."},
    [SAY_REMIND_DUE_OUT] = {"Reminder: by the charge you told at {1}, the batteries may be empty "
                            "at about {0}. Be at a plug now.",
                            "Aviso: con la carga que dijo a las {1}, las baterias se pueden acabar "
                            "a las {0}. Vaya a un enchufe ya."},
    [SAY_REMIND_DUE_AT] = {"Reminder, as you asked: \"{0}\"", "Aviso, como pidio: \"{0}\""},
    [SAY_REMIND_DUE_AT_NOW] = {"Reminder: you asked for a text at {0}.",
                               "Aviso: nos pidio un mensaje a las {0}."},
    [SAY_REMIND_LATE] = {"I could not text you at {0} as you asked; it is {1} now.",
                         "No pude escribirle a las {0} como pidio; ahora son las {1}."},
    [SAY_REMIND_LATE_OUT] = {"Look at the batteries' charge now and be at a plug.",
                             "Revise la carga de las baterias y vaya a un enchufe ya."},
    [SAY_REMIND_OFF_CHARGE] =
        {"My text for {0} is off: a newer charge was told. Tell me each battery's charge to set "
         "a new one.",
         "Ya no le escribo a las {0}: hay una carga mas nueva. Diga la carga de cada bateria para "
         "otro aviso."},
    [SAY_REMIND_OFF_RECORD] =
        {"My text for {0} is off: the record of your unit changed. Tell me each battery's charge "
         "to set a new one.",
         "Ya no le escribo a las {0}: su registro tiene un cambio. Diga la carga de cada bateria "
         "para otro aviso."},
    [SAY_PLUG] = {"Is there a plug where you are? Text YES or NO.",
                  "¿Hay un enchufe donde se encuentra? Mande SI o NO."},
    [SAY_IN_CAR] = {"In the car: use its outlet and our cord, engine on, outdoors only. Keep snow "
                    "off the tailpipe and a window open a bit: exhaust kills.",
                    "En el auto: use la toma y nuestro cable, motor prendido, solo al aire libre. "
                    "Quite la nieve del escape y abra un poco la ventana: el humo mata."},
    [SAY_NO_PLUG] = {"Staff were alerted and will call you. Be at a plug before the battery runs "
                     "out.",
                     "El personal ya lo sabe y le va a llamar. Vaya a un enchufe antes de "
                     "que se acabe la bateria."},
    [SAY_NO_RENTAL] = {"I can't find your rental under this number, so I can't work out your time. "
                       "Call {phone}. If you are on battery now, be at a plug.",
                       "No encuentro su renta con este teléfono, y no puedo calcular su tiempo. "
                       "Llame al {phone}. Si usa la bateria ahora, vaya a un enchufe."},
    [SAY_TROUBLE_STOPPED] = {"{0} Then check: plug in the wall, battery pushed in until it clicks, "
                             "tube not bent or loose. Staff were alerted and will call you.",
                             "{0} Luego revise: el enchufe, la bateria bien puesta, la manguera "
                             "sin dobleces. El personal ya lo sabe y le va a llamar."},
    [SAY_TROUBLE_DANGER] =
        {"Turn the unit off, pull the plug and move away from it if it is hot, "
         "smoking, hissing, swollen or wet. Use your backup oxygen if you have "
         "one, away from heat. Fire? Call {emergency}. Staff were alerted.",
         "Apague el aparato, desenchufe y aléjese si quema, echa humo, silba, o si lo ve hinchado "
         "o "
         "mojado. Use su tanque de reserva si lo tiene, lejos del calor. ¿Fuego? Llame al "
         "{emergency}. El personal ya lo sabe."},
    [SAY_TROUBLE_OTHER] = {"A person will answer about the unit. If it stops, use your backup "
                           "oxygen if you have one and call {phone}.",
                           "Una persona le va a contestar sobre el aparato. Si se apaga, use su "
                           "tanque de reserva si lo tiene y llame al {phone}."},
    [SAY_CYLINDER_HISSES] =
        {"A cylinder just opened hisses where the tube goes on: push the tube on, set the flow on "
         "its tag. Hiss at the valve or a joint, or it won't stop? Shut the valve, no flames, call "
         "{phone}. A battery hisses? Get out, call {emergency}. Staff were alerted.",
         "Un tanque recién abierto silba donde va la manguera: métala bien y ponga el flujo de su "
         "etiqueta. ¿Silba en la valvula o no para? Cierre la valvula, nada de fuego, llame al "
         "{phone}. ¿Silba una bateria? Salga y llame al {emergency}. El personal ya lo sabe."},
    [SAY_OUT_RUNS] =
        {"It runs on its battery until that is empty. Text us the lights on each battery and we "
         "work out how long. Be at a plug with power before then, backup oxygen near. A person was "
         "alerted. It stops or breathing is hard? Use the backup, call {emergency}.",
         "Funciona con la bateria hasta que se acabe. Escriba cuantas luces tiene cada bateria y "
         "calculamos cuanto dura. Antes, vaya a un enchufe con luz, con su tanque cerca. El "
         "personal ya lo sabe. ¿Se apaga o le falta el aire? Use el tanque y llame al "
         "{emergency}."},
    [SAY_WEAK_BATTERY] = {"A battery should last longer than that, so don't count on it. Use "
                          "another one or a plug, and keep your backup oxygen near. Staff were "
                          "told and will call you.",
                          "Una bateria debe durar mas; no cuente con esa. Use otra o un enchufe, y "
                          "tenga cerca su tanque de reserva. El personal ya lo sabe y le va a "
                          "llamar."},
    [SAY_DISPLAY] = {"{0}: {1}", "{0}: {1}"},
    [SAY_DISPLAY_URGENT] = {"{0}: {1} Staff were alerted. Hard to breathe? Call {emergency} now.",
                            "{0}: {1} El personal ya lo sabe. ¿Le cuesta respirar? Llame al "
                            "{emergency} ya."},
    [SAY_IN_ENGLISH] = {"{0}", "(en inglés) {0}"},
    [SAY_OFFICE_TOLD] = {"The office was told and a person will answer.",
                         "La oficina ya lo sabe y una persona le va a contestar."},
    [SAY_OFFICE_WAITS] = {"The office is closed now. A person will answer when it is open.",
                          "Ahora la oficina no atiende. Una persona le va a contestar cuando "
                          "abra."},
    [SAY_OFFICE_CALL] = {"Please call {phone} ({hours}); a person can do that.",
                         "Por favor llame al {phone} ({hours}); una persona puede hacerlo."},
    [SAY_EMERGENCY_NUMBER] =
        {"Emergency: call {emergency}. They send help to you and know the "
         "nearest hospital. Not an emergency? Call us: {phone}.",
         "Emergencia: llame al {emergency}. Le mandan ayuda y saben cual es el "
         "hospital mas cercano. ¿No es emergencia? Llame al {phone}."},
    [SAY_IS_OVER] =
        {"Thank you for telling us. Check that oxygen is on and in the nose. If it "
         "starts again, text us. Feel worse, or hard to breathe? Call {emergency}.",
         "Gracias por avisar. Vea que el oxigeno salga y llegue a la nariz. Si vuelve a "
         "pasar, escriba. ¿Se siente peor o le falta el aire? Llame al {emergency}."},
    [SAY_OVER_CALLED] =
        {"Thank you for telling us. Staff know, and a person still wants to reach you. Worse "
         "again, or hard to breathe? Call {emergency}.",
         "Gracias por avisar. El personal ya lo sabe y todavia quiere hablar con usted. ¿Otra vez "
         "peor, o le falta el aire? Llame al {emergency}."},
    [SAY_DANGER_YES] =
        {"If that is a yes to what we asked: call {emergency} now. Staff were alerted "
         "again. Do not wait for a text.",
         "Si eso es un si a lo que le preguntamos: llame al {emergency} ya. El "
         "personal ya lo sabe. No espere mensajes."},
    [SAY_GAP_RENTER] = {"I don't have an answer to that. A person will answer.",
                        "No tengo respuesta a eso. Una persona le va a contestar."},
    [SAY_GAP_WAITS] = {"I don't have an answer to that. A person will answer when the office is "
                       "open.",
                       "No tengo respuesta a eso. Una persona le va a contestar cuando abra la "
                       "oficina."},
    [SAY_REST_TO_PERSON] = {"That was a lot at once: a person will answer the rest.",
                            "Son muchas preguntas a la vez: una persona contesta lo que falta."},
    [SAY_GAP_STRANGER] = {"I don't have an answer to that. Please call {phone} ({hours}).",
                          "No tengo respuesta a eso. Por favor llame al {phone} ({hours})."},
    [SAY_PICTURE] = {"I can't see pictures. Please say it in words, or call {phone}.",
                     "No puedo ver fotos. Por favor escriba en palabras, o llame al {phone}."},
    [SAY_OTHER_LANGUAGE] = {"Emergency? Call {emergency}. ¿Emergencia? Llame al {emergency}. I "
                            "read English and Spanish only: a person was told and will call you. "
                            "Solo leo español e inglés: una persona le va a llamar.",
                            "¿Emergencia? Llame al {emergency}. Emergency? Call {emergency}. Solo "
                            "leo español e inglés: una persona le va a llamar. I read English and "
                            "Spanish only: a person was told and will call you."},
    [SAY_NOTICE] =
        {"{company}, automatic text: {0} Reply OK when you have read it, or call {phone}. "
         "STOP: no more texts.",
         "{company}, mensaje de un programa: {0} Conteste OK cuando lo lea, o llame al "
         "{phone}. STOP: ya no mandamos mensajes."},
    [SAY_TOO_MANY] = {"Very many texts came from this phone, so for now I answer emergencies only. "
                      "Please call {phone}.",
                      "Llegaron demasiados mensajes de este teléfono; por ahora solo contesto "
                      "emergencias. Llame al {phone}, por favor."},
    [SAY_TOO_MANY_ALL] = {"Very many texts reach us, so for now I answer emergencies only. Please "
                          "call {phone}.",
                          "Nos llegan demasiados mensajes; por ahora solo contesto emergencias. "
                          "Llame al {phone}, por favor."},
    [SAY_HELLO] = {"Hello. Text me your question about the oxygen unit, or call {phone}.",
                   "Hola. Escriba su pregunta sobre el aparato de oxigeno, o llame al {phone}."},
};

enum { ARGUMENTS_MAX = 4 };

char *
say(void *arena, const struct house *house, enum language language, enum phrase phrase, ...)
{
    const char *arguments[ARGUMENTS_MAX] = {NULL};
    struct filling house_only = {.house = house, .language = language};
    char *text = memory_copy(arena, "");
    const char *from =
        phrase < SAY_SUMS ? phrases[phrase][language] : say_sums[phrase - SAY_SUMS][language];
    const char *brace;
    size_t count = 0;
    va_list list;

    va_start(list, phrase);
    while (count < ARGUMENTS_MAX && (arguments[count] = va_arg(list, const char *)) != NULL) {
        count++;
    }
    va_end(list);
    while ((brace = strchr(from, '{')) != NULL) {
        const char *end = strchr(brace, '}');

        assert(end != NULL);
        memory_append(&text, "%.*s", (int)(brace - from), from);
        if (end == brace + 2 && brace[1] >= '0' && brace[1] < '0' + ARGUMENTS_MAX) {
            size_t which = (size_t)(brace[1] - '0');

            assert(which < count);
            memory_append(&text, "%s", arguments[which]);
        } else {
            memory_append(&text, "%s",
                          fill(arena, memory_copy_n(arena, brace, (size_t)(end - brace) + 1),
                               &house_only, NULL));
        }
        from = end + 1;
    }
    memory_append(&text, "%s", from);
    return text;
}
