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
    " tank tanks bottle bottles cylinder cylinders valve regulator backup spare tanque tanques "
    "tanquecito cilindro cilindros botella valvula regulador reserva respaldo ";
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
    "water|scuba|humo|huele|olor|fuego|llamas|quema|chispas|caliente|fuga|cayo|tiro|golpeo|roto|"
    "rota|no cierra|no se cierra|no para|no puedo|propano|estufa|calentador|agua";

enum named { NAMED_NOTHING, NAMED_CYLINDER, NAMED_OTHER };

static bool
names_cylinder(const struct tokens *tokens)
{
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (token_among(tokens, i, cylinders)) {
            return true;
        }
    }
    return false;
}

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

/* They were just sent to it, or they spoke of it. */
static bool
is_talk_of_cylinder(const struct asked *whole)
{
    const struct context *context = whole->context;
    size_t i;

    if (asked_open_question(whole) == QUESTION_FLOWING) {
        return true;
    }
    if (asked_open_question(whole) != QUESTION_NONE && context->conversation.asked_about != NULL) {
        struct tokens about = tokens_read(whole->arena, context->conversation.asked_about);

        if (names_cylinder(&about)) {
            return true;
        }
    }
    for (i = 0; i < context->recent_count; i++) {
        struct tokens before = tokens_read(whole->arena, context->recent[i].text);

        if (names_cylinder(&before)) {
            return true;
        }
    }
    return false;
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
