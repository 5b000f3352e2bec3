/*
 * What is told when what was wrong is over: phrases for tokens_have() and tokens_without(). Private
 * to is_over.c, is_over_doubt.c and is_over_value.c, which know when each of them counts.
 */
#ifndef IS_OVER_WORDS_H
#define IS_OVER_WORDS_H

#define UNIT_AGAIN                                                                                 \
    "machine running|machine is running|unit running|unit is running|machine is back on|"          \
    "unit is back on|"                                                                             \
    "stopped beeping|quit beeping|quit alarming|quit chirping|stopped chirping|"                   \
    "no longer beeping|not beeping anymore|not beeping any more|isnt beeping anymore|beeping "     \
    "stopped|beeping has stopped|"                                                                 \
    "beeping is gone|stopped alarming|alarm stopped|alarm has stopped|alarm is off|"               \
    "alarm is gone|alarm cleared|power is back|power came back|powers back|power back on|"         \
    "power back|power is on|power is back on|lights are back|lights came back|"                    \
    "lights are back on|electricity is back|electricity came back|oxygen is back|"                 \
    "air is back|oxygen is flowing|oxygen flowing|oxygen flows|oxygen is on|oxygen is "            \
    "coming|works again|working again|works now|"                                                  \
    "working now|is working|running now|running fine|running again|runs again|is running|fixed "   \
    "it|it is fixed|fixed|"                                                                        \
    "its fixed|got it fixed|got it working|got it going|got it to work|up and running|"            \
    "ya no pita|ya dejo de pitar|dejo de pitar|dejo de sonar|ya no suena la alarma|"               \
    "volvio la luz|regreso la luz|llego la luz|ya hay luz|hay luz|volvio la corriente|"            \
    "regreso la corriente|llego la corriente|volvio la electricidad|ya funciona|"                  \
    "funciona otra vez|ya prendio|ya prende|ya encendio|ya enciende|ya jala|ya sirve|"             \
    "ya arranco|ya trabaja|ya anda|ya quedo|ya quedo bien|ya quedo listo|ya quedo arreglado|"      \
    "ya esta bien|ya se arreglo|se arreglo|ya lo arregle|lo arregle|lo arreglamos|"                \
    "ya sale oxigeno|ya sale aire|ya sale el oxigeno"
#define PERSON_AGAIN                                                                               \
    "feel better|feels better|feeling better|is ok|is okay|is fine|is good|is better|"             \
    "is alright|is all right|is stable|is doing better|doing better|doing fine|doing ok|"          \
    "doing okay|ok again|okay again|fine again|ok now|okay now|fine now|better now|"               \
    "hes ok|hes okay|hes fine|hes good|hes better|hes alright|hes stable|shes ok|shes okay|"       \
    "shes fine|shes good|shes better|shes alright|shes stable|better again|all better|came "       \
    "to|came around|is talking|calmed down|calm now|"                                              \
    "back to normal|normal again|me siento mejor|se siente mejor|me siento bien|"                  \
    "se siente bien|se le paso|se me paso|se le quito|se me quito|esta bien|esta mejor|"           \
    "hes up again|shes up again|is up again|got up again|back on his feet|back on her feet|"       \
    "se levanto|ya esta de pie|reacciono|volvio en si|ya habla|habla bien|se calmo|ya se "         \
    "tranquilizo"
/* What only one who is well again does. */
#define DOES_AGAIN                                                                                 \
    "feel ok|feels ok|feel okay|feel fine|feels fine|feel good|feels good|feel normal|"            \
    "is up|hes up|shes up|im up|he is up|got him up|got her up|got me up|knows his name|"          \
    "knows her name|knows where he is|knows where she is|knows who i am|knows us|recognizes us|"   \
    "is laughing|laughing|laughs|is joking|is smiling|smiling|walking around|is eating|"           \
    "talking fine|talking normal|talking to us|talking to me|hes talking|shes talking|"            \
    "looks better|looks good|looks fine|looks ok|pink again|pink now|pinked up|looks pink|"        \
    "good color|color is good|color is better|lo levantamos|la levantamos|"                        \
    "lo levante|la levante|se rie|riendose|ya camina|sabe su nombre|sabe donde esta|"              \
    "ya nos reconoce|nos reconoce|ya esta hablando|esta rosado|esta rosada|buen color"
/* After somebody was missed. */
#define FOUND_AGAIN                                                                                \
    "found him|found her|found them|we found him|we found her|lo encontre|la encontre|"            \
    "lo encontramos|la encontramos|aparecio"
/* Of what was written in error, and of nobody. */
#define NO_ALARM                                                                                   \
    "false alarm|falsa alarma|no emergency|not an emergency|no era emergencia|no es emergencia|"   \
    "wrong number|numero equivocado|me equivoque de numero"
#define WAS_NONE                                                                                   \
    "no emergency|no longer an emergency|my mistake|by mistake|by accident|wrong number|"          \
    "sat on my phone|sat on the phone|sat on phone|pocket dial|pocket dialed|butt dial|"           \
    "butt dialed|dialed by itself|se marco solo|me sente en el telefono|"                          \
    "ignore that|ignore my text|ignore my last text|disregard|me equivoque|me equivoque de "       \
    "numero|fue un error|"                                                                         \
    "fue por error|fue sin querer|numero equivocado|no es emergencia|ya no es emergencia|"         \
    "no fue nada"
/* Of nobody and nothing else. */
#define SURELY                                                                                     \
    "hes awake|shes awake|im awake|breathing again|breathing fine|breathing ok|breathing "         \
    "better|breathing normal|"                                                                     \
    "breathing normally|breathing easier|breathing easy|breathing well|breathes again|"            \
    "breathes fine|can breathe again|can breathe now|can breathe fine|can breathe ok|"             \
    "can breathe better|awake now|awake again|is awake|woke up|up and talking|"                    \
    "talking again|color is back|color came back|got his color back|got her color back|"           \
    "coughed it up|coughed it out|spit it out|spat it out|bleeding stopped|"                       \
    "bleeding has stopped|stopped bleeding|pain is gone|pain went away|pain stopped|"              \
    "false alarm|not an emergency|ya respira|respira bien|respira mejor|respira normal|"           \
    "respira perfecto|puede respirar|puedo respirar|desperto|lo escupio|la escupio|"               \
    "le volvio el color|recupero el color|ya no sangra|dejo de sangrar|paro de sangrar|"           \
    "ya no le duele|ya no me duele|ya no duele|falsa alarma|no era emergencia"
/* These tell it only while an alert is open. */
#define OF_ALERT                                                                                   \
    "ya le paso|ya se le paso|just kidding|was kidding|im kidding|kidding|jk|j k|just joking|"     \
    "was joking|im joking|just a joke|was a joke|forget it|forget i said|es broma|era broma|"      \
    "una broma|bromeaba|estaba bromeando|estoy bromeando|"                                         \
    "never mind|nevermind|all good|all set|all ok|all fine|everything is ok|"                      \
    "everything is fine|everything is good|everythings fine|it came out|it passed|"                \
    "it went away|we are ok|we are good|we are fine|were ok|im ok|im okay|im fine|"                \
    "im better|i am better|im alright|i am alright|im all right|were fine|were good|"              \
    "i am ok|i am fine|dont need help anymore|dont need help any more|olvidenlo|olvidelo|"         \
    "olvidalo|todo bien|todo en orden|estamos bien|estoy bien|estoy mejor|ya paso|"                \
    "ya salio|ya lo saco|ya no hace falta|ya no necesitamos ayuda"
/* Of these, those that whoever writes says of themselves. */
#define WRITER_WELL                                                                                \
    "im ok|im okay|im fine|im good|im better|im alright|im all right|im stable|im well|i am ok|"   \
    "i am okay|i am fine|i am good|i am better|i am alright|i am all right|i am stable|i am well|" \
    "i feel better|i feel ok|i feel okay|i feel fine|i feel good|i feel normal|im feeling better|" \
    "im doing better|im doing fine|im doing ok|im doing okay|im up|im awake|im calm now|i woke "   \
    "up|i can breathe again|i can breathe now|i can breathe fine|i can breathe ok|i can breathe "  \
    "better|we are ok|we are okay|we are good|we are fine|were ok|were okay|were fine|were good|"  \
    "estoy bien|estoy mejor|estamos bien|ya estoy bien|ya estoy mejor|me siento mejor|"            \
    "me siento bien|se me paso|se me quito|puedo respirar|ya no me duele"
/* These, only while we wait to hear that oxygen flows: what came back may be the alarm as well. */
#define OF_FLOWING                                                                                 \
    "ya regreso|ya volvio|ya llego|is back|its back|came back|back on|its back on|is back on|"     \
    "lights back|light is back|ya volvio la luz|ya regreso la luz|ya llego la luz|ya volvio la "   \
    "corriente|ya regreso la corriente"
/* Where they have them seen to: "took her to er". */
#define TAKEN_TO(place)                                                                            \
    "took him to " place "|took her to " place "|took them to " place "|took me to " place         \
    "|taken to " place "|got him to " place "|got her to " place "|brought him to " place          \
    "|brought her to " place "|he is at " place "|at " place "|in " place
#define HELP_HERE                                                                                  \
    "paramedics are here|paramedics are with|paramedics got here|emts are here|emts are with|"     \
    "emts got here|ambulance got here|they took over|nurse is with|doctor is with|"                \
    "medics are here|ambulance is here|ambulance came|ambulance arrived|ambulance has arrived|"    \
    "paramedics left|paramedics just left|paramedics have left|medics left|medics just left|"      \
    "medics have left|emts left|emts just left|ambulance left with him|ambulance left with her|"   \
    "ambulance took him|ambulance took her|firemen came|firemen left|firefighters came|"           \
    "firefighters left|emts came|medics came|ya se fueron los paramedicos|"                        \
    "se fueron los paramedicos|vinieron los paramedicos|vinieron los bomberos|"                    \
    "vino la ambulancia|"                                                                          \
    "paramedics came|paramedics arrived|they are here|theyre here|help is here|"                   \
    "fire department is here|firemen are here|doctor is here|nurse is here|in the ambulance|"      \
    "with the doctor|with the paramedics|llego la ambulancia|aqui esta la ambulancia|"             \
    "ambulancia esta aqui|ambulancia ya esta aqui|ya esta aqui la ambulancia|"                     \
    "llegaron los paramedicos|llegaron los de la ambulancia|con la doctora|con el medico|"         \
    "con la enfermera|aqui estan los paramedicos|paramedicos estan aqui|"                          \
    "paramedicos ya estan aqui|ya estan aqui|ya llegaron|en el hospital|en urgencias|"             \
    "en la clinica|en la ambulancia|se lo llevaron|se la llevaron|se lo llevo la ambulancia|"      \
    "se la llevo la ambulancia|con el doctor|con los paramedicos|lo atienden|la atienden|"         \
    "lo estan atendiendo|la estan atendiendo|se lo llevaron al hospital|"                          \
    "se la llevaron al hospital|lo llevaron al hospital|la llevaron al hospital|"                  \
    "me llevaron al hospital|se lo llevaron a urgencias|se la llevaron a urgencias|"               \
    "se lo llevaron en la ambulancia|se la llevaron en la ambulancia|"                             \
    "se lo llevaron en ambulancia|se la llevaron en ambulancia|en ambulancia|lo internaron|"       \
    "la internaron|esta internado|esta internada|lo estan revisando|la estan revisando|"           \
    "lo revisaron|la revisaron|lo estan viendo|la estan viendo|al hospital en ambulancia"
/* Each in a line of its own, so that no formatter cuts a place in two. */
#define TAKEN_TO_ER TAKEN_TO("er") "|" TAKEN_TO("the er") "|" TAKEN_TO("the emergency room")
#define TAKEN_TO_HOSPITAL TAKEN_TO("hospital") "|" TAKEN_TO("the hospital")
#define TAKEN_TO_CARE TAKEN_TO("urgent care") "|" TAKEN_TO("the clinic") "|" TAKEN_TO("the doctor")
static const char help_there[] = HELP_HERE "|" TAKEN_TO_ER "|" TAKEN_TO_HOSPITAL "|" TAKEN_TO_CARE;
/* Who says so. */
static const char reported[] =
    "neighbor is a nurse|he says|she says|he said|she said|mom says|dad says|says|neighbor says|"
    "ella dice|el dice|dice|dijo|paramedics say|paramedics said|medics say|medics said|doctor "
    "says|doctor said|nurse says|"
    "nurse said|they say|they said|they checked|checked him|checked her|"
    "paramedicos dicen|paramedicos dijeron|dicen los paramedicos|dijeron los paramedicos|"
    "doctor dice|doctor dijo|doctora dice|doctora dijo|enfermera dice|enfermera dijo|"
    "paramedics|medics|paramedicos|dice el doctor|dijo el doctor|dice la doctora|dijo la "
    "doctora|dicen|dijeron|que";

/* What may stand beside it without telling anything more; of things too. */
static const char around[] =
    " it its the that this now again already ok okay yes yeah yep hi hello oh phew thanks thank "
    "you so much very good great finally all and thing darn damn silly just he hes she shes they "
    "theyre we were im i am are "
    "my our mom moms mum mother dad dads father husband wife grandma grandpa nana son daughter "
    "sister brother sorry with us him her them by itself everyone lol haha hahaha hehe jaja jajaja "
    "oops whoops ups whew uf god "
    "ya el la los las lo le les es esta estan estamos estoy todo muy bien gracias dios a ahora "
    "otra vez nuevo de mi mama papa esposo esposa senora abuela abuelo abuelita abuelito hijo hija "
    "y si hola perdon disculpe disculpen por fin al con nos aqui ella ahorita solo sola "
    "tranquilos ";
/* What it came from, and harms nobody: "just stood up too fast"; told beside that it is over. */
static const char harmless[] =
    "put her back in bed|put him back in bed|put me back in bed|put her back|put him back|put me "
    "back|back in her chair|back in his chair|helped her up|helped him up|helped me up|"
    "picked him up|picked her up|lo levantaron|la levantaron|me levantaron|de vuelta en la cama|"
    "just stood up too fast|stood up too fast|got up too fast|stood up too quick|got up too quick|"
    "was just stairs|just the stairs|just stairs|it was the stairs|was just the hill|"
    "was just asleep|was asleep|fell asleep|was sleeping|was just sleeping|was napping|"
    "was dreaming|from how i laid on it|how i laid on it|laid on it|slept on it|how i slept|"
    "hadnt eaten|had not eaten|didnt eat|forgot to eat|on wrong finger|wrong finger|"
    "on the wrong finger|cold finger|cold fingers|fingers were cold|finger was cold|nail polish|"
    "went down wrong|swallowed wrong|me pare muy rapido|se paro muy rapido|se levanto muy rapido|"
    "no habia comido|no comio|no ha comido|no he comido|no habia desayunado|que no habia comido|"
    "estaba dormido|estaba dormida|se quedo dormido|se quedo dormida|en el dedo equivocado|"
    "dedo equivocado|dedo frio|dedos frios|fueron las escaleras|por las escaleras|"
    "eran las escaleras";

#endif
