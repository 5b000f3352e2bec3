/*
 * A hiss. Of a battery, or of something that nobody names, it drives people out of the room
 * (kb/signs, battery-smoking). But a cylinder that was just opened hisses where its tube goes on,
 * and whoever was just sent to it must not leave it: then the thing is named or it is what the talk
 * is about, and nothing tells of fire, of a leak or of another gas.
 */
#include "say.h"
#include "steps.h"

static const char hisses[] = " hiss hisses hissing hissed silba silban silbando silbido chifla "
                             "chiflando sisea siseo siseando ";
static const char cylinders[] =
    " tank tanks bottle bottles cylinder cylinders valve regulator tanque tanques tanquecito "
    "cilindro cilindros botella valvula regulador ";
static const char others[] =
    " battery batteries batt batts pack packs charger brick adapter machine unit concentrator "
    "bateria baterias pila pilas cargador aparato maquina equipo concentrador ";
static const char opened[] =
    "open|opened|opening|opens|turn|turned|turning|knob|wrench|key|switched|hooked|connected|"
    "connect|started|use|using|on it|abro|abri|abrir|abrimos|abrio|abierta|abierto|llave|perilla|"
    "gire|conecte|prendi";
static const char graver[] =
    "smoke|smoking|smokes|smell|smells|fire|flame|flames|burn|burning|burnt|spark|sparks|hot|"
    "melting|popped|popping|exploded|leak|leaks|leaking|leaked|fell|dropped|knocked|tipped|broke|"
    "broken|snapped|loose|wont|cant|closed|propane|stove|grill|burner|heater|furnace|fireplace|"
    "water|scuba|dizzy|jetting|jet|spinning|spins|spun|took off|flew|flying|rolling|candle|"
    "cigarette|oven|woodstove|red|kids|vela|cigarro|horno|rojo|roja|mareado|mareada|odor|stink|"
    "stinks|warm|warmer|swell|swells|swelled|swollen|bulge|bulges|humo|"
    "tibio|tibia|hincha|hinchado|hinchada|huele|olor|fuego|llamas|quema|chispas|caliente|fuga|cayo|"
    "tiro|golpeo|roto|"
    "rota|no cierra|no se cierra|no para|no puedo|propano|estufa|calentador|agua";

enum named { NAMED_NOTHING, NAMED_CYLINDER, NAMED_OTHER };

/* What hisses: the last that is named before the hiss, else the first behind it. */
static enum named
what_hisses(const struct tokens *tokens, size_t hiss)
{
    enum named named = NAMED_NOTHING;
    size_t i;

    for (i = 0; i < tokens->count && (i < hiss || named == NAMED_NOTHING); i++) {
        if (token_among(tokens, i, cylinders)) {
            named = NAMED_CYLINDER;
        } else if (token_among(tokens, i, others)) {
            named = NAMED_OTHER;
        }
    }
    return named;
}

/* A text before that spoke of it, of no battery or unit that may hiss as well, and of no harm. */
static bool
spoke_of_cylinder(const struct asked *whole, const char *text)
{
    struct tokens tokens = tokens_read(whole->arena, text);
    bool names_it = false;
    size_t i;

    for (i = 0; i < tokens.count; i++) {
        names_it = names_it || token_among(&tokens, i, cylinders);
        if (token_among(&tokens, i, others)) {
            return false;
        }
    }
    return names_it && !tokens_have(&tokens, graver);
}

/* The talk is of it: the newest text before this, or what we asked about. */
static bool
is_talk_of_cylinder(const struct asked *whole)
{
    const struct context *context = whole->context;

    if (context->recent_count > 0) {
        return spoke_of_cylinder(whole, context->recent[context->recent_count - 1].text);
    }
    return asked_open_question(whole) != QUESTION_NONE &&
           context->conversation.asked_about != NULL &&
           spoke_of_cylinder(whole, context->conversation.asked_about);
}

bool
hissing_is_of_cylinder(const struct asked *whole, const char *text)
{
    struct tokens tokens = tokens_read(whole->arena, text);
    size_t hiss = 0;

    while (hiss < tokens.count && !token_among(&tokens, hiss, hisses)) {
        hiss++;
    }
    if (hiss == tokens.count || tokens_have(&tokens, graver)) {
        return false;
    }
    switch (what_hisses(&tokens, hiss)) {
    case NAMED_CYLINDER:
        return tokens_have(&tokens, opened) || is_talk_of_cylinder(whole);
    case NAMED_NOTHING:
        return is_talk_of_cylinder(whole);
    case NAMED_OTHER:
        break;
    }
    return false;
}

void
hissing_answer(const struct asked *whole, struct verdict *verdict)
{
    struct answer *answer = verdict_add(verdict, ANSWER_SIGN, ROUTE_EQUIPMENT, "cylinder-hisses");

    answer->text =
        say(whole->arena, whole->context->house, whole->language, SAY_CYLINDER_HISSES, NULL);
    answer->why.score = 1000;
    verdict_alert(verdict, ALERT_URGENT, true, "trouble:cylinder-hisses", "cylinder hisses");
}
