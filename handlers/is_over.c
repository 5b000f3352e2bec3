/*
 * What was wrong is over, was none, or help is there: "it stopped beeping", "he is ok again",
 * "false alarm", "ya llego la ambulancia". Nobody's word for it closes an alert, and nothing is
 * called well: staff hear of it, and the renter is told what to look at. It holds only for a text
 * that tells nothing else: "alarm is off and so is the machine" is trouble.
 */
#include "say.h"
#include "steps.h"

static const char unit_again[] =
    "stopped beeping|quit beeping|no longer beeping|not beeping anymore|not beeping any more|"
    "isnt beeping anymore|beeping stopped|beeping has stopped|beeping is gone|stopped alarming|"
    "alarm stopped|alarm has stopped|alarm is off|alarm is gone|alarm cleared|power is back|"
    "power came back|powers back|power back on|power back|power is on|power is back on|"
    "lights are back|lights came back|lights are back on|electricity is back|"
    "electricity came back|oxygen is back|air is back|oxygen is flowing|oxygen is coming|"
    "works again|working again|works now|working now|is working|running again|runs again|"
    "is running|fixed it|it is fixed|its fixed|got it fixed|got it working|got it going|"
    "got it to work|up and running|"
    "ya no pita|ya dejo de pitar|dejo de pitar|dejo de sonar|ya no suena la alarma|volvio la luz|"
    "regreso la luz|llego la luz|ya hay luz|hay luz|volvio la corriente|regreso la corriente|"
    "llego la corriente|volvio la electricidad|ya funciona|funciona otra vez|ya prendio|ya prende|"
    "ya encendio|ya enciende|ya jala|ya sirve|ya arranco|ya trabaja|ya anda|ya quedo bien|"
    "ya quedo listo|ya quedo arreglado|ya esta bien|ya se arreglo|se arreglo|ya lo arregle|"
    "lo arregle|lo arreglamos|ya sale oxigeno|ya sale aire|ya sale el oxigeno";
static const char person_again[] =
    "feel better|feels better|feeling better|is ok|is okay|is fine|is good|is better|is alright|"
    "is all right|is doing better|doing better|doing fine|doing ok|doing okay|ok again|okay again|"
    "fine again|ok now|okay now|fine now|better now|better again|breathing again|breathing fine|"
    "breathing ok|breathing better|breathing normal|breathing normally|breathing easier|"
    "breathing well|breathing easy|is stable|all better|breathes again|breathes fine|can breathe "
    "again|can breathe now|"
    "can breathe fine|can breathe ok|can breathe better|awake now|awake again|is awake|woke up|"
    "came to|came around|up and talking|talking again|is talking|color is back|color came back|"
    "got his color back|got her color back|coughed it up|coughed it out|spit it out|spat it out|"
    "it came out|bleeding stopped|bleeding has stopped|stopped bleeding|pain is gone|"
    "pain went away|pain stopped|it passed|it went away|calmed down|calm now|back to normal|"
    "normal again|"
    "me siento mejor|se siente mejor|me siento bien|se siente bien|se le paso|se me paso|"
    "se le quito|se me quito|esta bien|esta mejor|ya respira|respira bien|respira mejor|"
    "respira normal|respira perfecto|puede respirar|puedo respirar|reacciono|desperto|volvio en "
    "si|ya habla|"
    "habla bien|lo escupio|la escupio|le volvio el color|recupero el color|ya no sangra|"
    "dejo de sangrar|paro de sangrar|ya no le duele|ya no me duele|ya no duele|se calmo|"
    "ya se tranquilizo";
static const char was_none[] =
    "false alarm|no emergency|not an emergency|no longer an emergency|my mistake|by mistake|"
    "by accident|wrong number|ignore that|ignore my text|ignore my last text|disregard|"
    "falsa alarma|me equivoque|fue un error|fue por error|fue sin querer|numero equivocado|"
    "no es emergencia|no era emergencia|ya no es emergencia|no fue nada";
/* These tell it only while an alert is open. */
static const char of_alert[] =
    "never mind|nevermind|all good|all set|all ok|all fine|everything is ok|everything is fine|"
    "everything is good|everythings fine|we are ok|we are good|we are fine|were ok|im ok|im okay|"
    "im fine|i am ok|i am fine|dont need help anymore|dont need help any more|"
    "olvidenlo|olvidelo|olvidalo|todo bien|todo en orden|estamos bien|estoy bien|estoy mejor|"
    "ya paso|ya salio|ya lo saco|ya no hace falta|ya no necesitamos ayuda";
/* These, only while we wait to hear that oxygen flows: what came back may be the alarm as well. */
static const char of_flowing[] = "ya regreso|ya volvio|ya llego|is back|its back|came back";
static const char help_there[] =
    "paramedics are here|paramedics are with|paramedics got here|emts are here|emts are with|"
    "emts got here|ambulance got here|they took over|in the emergency room|nurse is with|"
    "doctor is with|medics are here|ambulance is here|ambulance came|"
    "ambulance arrived|ambulance has arrived|paramedics came|paramedics arrived|they are here|"
    "theyre here|help is here|fire department is here|firemen are here|doctor is here|"
    "nurse is here|at the hospital|in the hospital|at the er|in the er|at the emergency room|"
    "at urgent care|in the ambulance|took him to the hospital|took her to the hospital|"
    "with the doctor|with the paramedics|"
    "llego la ambulancia|aqui esta la ambulancia|ambulancia esta aqui|ambulancia ya esta aqui|"
    "ya esta aqui la ambulancia|llegaron los paramedicos|llegaron los de la ambulancia|"
    "con la doctora|con el medico|con la enfermera|aqui estan los paramedicos|"
    "paramedicos estan aqui|paramedicos ya estan aqui|ya estan aqui|ya llegaron|en el hospital|"
    "en urgencias|en la clinica|en la ambulancia|se lo llevaron|se la llevaron|"
    "se lo llevo la ambulancia|se la llevo la ambulancia|con el doctor|con los paramedicos|"
    "lo atienden|la atienden|lo estan atendiendo|la estan atendiendo";
/* What may stand beside it without telling anything more. */
static const char around[] =
    " it its the that this now again already ok okay yes yeah yep hi hello oh phew thanks thank "
    "you "
    "so much very good great finally all and he hes she shes they theyre we were im i am are my "
    "our "
    "mom moms mum mother dad dads father husband wife grandma grandpa nana son daughter sister "
    "brother sorry with us him her them by itself machine unit concentrator oxygen everyone "
    "ya el la los las lo le les es esta estan estamos estoy todo muy bien gracias dios a ahora "
    "otra "
    "vez nuevo de mi mama papa esposo esposa senora abuela abuelo abuelita abuelito hijo hija y si "
    "hola perdon disculpe disculpen aparato maquina equipo concentrador oxigeno por fin al con "
    "nos aqui ella ahorita solo sola tranquilos ";

/* And what makes it doubtful in a longer text. */
static const char doubtful[] =
    "no|not|isnt|doesnt|didnt|dont|wont|cant|couldnt|havent|hasnt|nobody|nothing|never|without|"
    "still|barely|hardly|only|almost|but|if|when|until|than|except|though|dead|died|hope|hoping|"
    "think|maybe|off|worse|same|gone|?|ni|sin|nada|nunca|nadie|pero|todavia|aun|casi|apenas|si|"
    "cuando|hasta|aunque|ojala|creo|quizas|igual|peor|sigue|sigo|muerto|murio|apago";

enum over { OVER_NOT, OVER_TOLD, OVER_HELP_THERE };

/* Nothing but fillers stands beside the phrases; or, `loosely`, nothing that makes it doubtful. */
static bool
tells(const struct asked *asked, const char *phrases, bool loosely)
{
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, phrases);
    size_t i;

    for (i = 0; i < rest.count && !loosely; i++) {
        if (rest.list[i].kind == TOKEN_NUMBER || token_is(&rest, i, "?") ||
            (rest.list[i].kind == TOKEN_WORD && !token_among(&rest, i, around))) {
            return false;
        }
    }
    return rest.count < asked->tokens.count && (!loosely || !tokens_have(&rest, doubtful));
}

static enum over
told(const struct asked *asked, bool loosely)
{
    bool is_waiting = asked_open_question(asked) == QUESTION_FLOWING;

    if (tells(asked, help_there, loosely)) {
        return OVER_HELP_THERE;
    }
    if (tells(asked, unit_again, loosely) || tells(asked, person_again, loosely) ||
        tells(asked, was_none, loosely) ||
        (asked->context->alert_count > 0 && tells(asked, of_alert, loosely)) ||
        (is_waiting && tells(asked, of_flowing, false))) {
        return OVER_TOLD;
    }
    return OVER_NOT;
}

bool
is_over_told(const struct asked *asked)
{
    return told(asked, false) != OVER_NOT;
}

/* What is said to it; nothing if others see to them. */
static const char *
words_for(const struct asked *asked, enum over over)
{
    bool is_grave = open_emergency_stands(asked->context);

    if (over == OVER_HELP_THERE && is_grave) {
        return "";
    }
    return say(asked->arena, asked->context->house, asked->language,
               is_grave ? SAY_OVER_CALLED : SAY_IS_OVER, NULL);
}

bool
is_over_decide(const struct asked *asked, struct verdict *verdict)
{
    enum over over = told(asked, open_emergency_stands(asked->context));

    if (over == OVER_NOT) {
        return false;
    }
    verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, "is-over")->text = words_for(asked, over);
    if (asked_is_active_renter(asked) || asked->context->alert_count > 0) {
        verdict_alert(verdict, ALERT_OFFICE, false, IS_OVER_REASON,
                      over == OVER_HELP_THERE ? "says help is there" : "says it is over");
    }
    return true;
}
