/*
 * Something is wrong with the unit and no sign caught it. Three kinds: dangerous by itself (hot,
 * hissing, swollen, wet), no oxygen or no power (someone rings), and everything else (the office):
 * by the words below, or by what the content has learnt of faults.
 * "What if the power goes out" asks for a plan and is left to the topics.
 */
#include "memory.h"
#include "say.h"
#include "steps.h"

static const char supposed[] = "what if|in case|what happens|que pasa si|what do i do if|"
                               "what should i do if|what do we do if|how do i shut|how to shut|"
                               "how do you shut|do i shut|should i shut";

/* What may happen to the unit: then the backup is the plan. */
static const char may_stop[] =
    "it stops|it stopped|it quits|it quit|it dies|it shuts off|it shuts down|it fails|it breaks|"
    "machine stops|machine stopped|machine quits|machine dies|machine fails|machine breaks|"
    "unit stops|unit stopped|unit quits|unit dies|unit fails|unit breaks|concentrator stops|"
    "concentrator fails|oxygen stops|se apaga|se para|deja de funcionar|se descompone";
static const char its_sound[] = "beeping|beep|beeps|charging|pitar|pita";

static const char dangerous[] =
    "battery * hot|battery * hissing|battery * swollen|battery * swelling|battery * bulging|"
    "battery * smoking|battery * smoke|battery * wet|swollen battery|hissing|burning smell|"
    "burnt smell|burned smell|scorched smell|smell of burning|smells burnt|smells burned|"
    "smells scorched|plug * smoking|smoking at the plug|smoke from the plug|plug * hot|"
    "smoking battery|smoking pack|burning battery|outlet * hot|plug * melted|plug is brown|outlet "
    "is brown|box * smoking|"
    "smells * burning|smells like burning|sparks|sparking|machine * smoking|unit * smoking|"
    "unit * wet|machine * wet|it got wet|bateria * caliente|bateria * hinchada|huele a quemado|"
    "echa humo|saca humo|sale humo|olor a quemado|olor quemado|enchufe * caliente|"
    "enchufe * derretido|enchufe * quemado|chispas";

static const char stopped[] =
    "wont turn on|wont start|wont power on|wont come on|doesnt turn on|does not turn on|"
    "not turning on|stopped working|quit working|machine * stopped|unit * stopped|"
    "concentrator * stopped|it stopped|it quit|machine quit|unit quit|machine died|unit died|"
    "machine * dead|unit * dead|concentrator * dead|shut off|shut down|turned itself off|"
    "keeps shutting off|keeps turning off|keeps cutting out|no oxygen|no air|"
    "cant feel * air|cant feel * flow|cant feel * puff|cant feel * puffs|cant feel * oxygen|"
    "dont feel * air|dont feel * flow|dont feel * puff|dont feel * puffs|dont feel * oxygen|"
    "no siento aire|no siento el aire|no siento que sale|no siento que salga|"
    "nothing * coming out|not getting oxygen|not getting any oxygen|isnt giving oxygen|no flow|"
    "power is out|power out|powers out|lost power|power went out|power just went|"
    "electricity is out|electricity went|alarm wont stop|wont stop beeping|wont stop alarming|"
    "keeps beeping|keeps alarming|makes no sound|makes no noise|went silent|"
    "ya no hace ruido|out of batteries|all batteries * dead|se apago|no prende|"
    "no enciende|ni prende|ni enciende|dejo de funcionar|no sale oxigeno|no sale aire|se fue la "
    "luz|sin luz|"
    "no deja de pitar";

static const char alarm_ended[] =
    "it stopped beeping|it quit beeping|it stopped alarming|it stopped chirping|it stopped "
    "blinking|it stopped flashing|machine stopped beeping|unit stopped beeping";

static const char other[] =
    "broken|broke|cracked|not working|isnt working|doesnt work|does not work|wont charge|"
    "not charging|isnt charging|doesnt charge|wont hold|frayed|rattling|rattles|fault|error|"
    "defective|malfunction|malfunctioning|acting up|kaput|no funciona|no carga|rota|roto|falla";

/*
 * The unit by whatever name, and then that it is gone: "the darn thing just died". A name that is a
 * part of a longer one ("the charger thing") or of a place or time is another thing.
 */
static const char any_names[] =
    " thing thingy gadget gizmo contraption device apparatus breather box doohickey rig machine "
    "unit concentrator poc aparato aparatito maquina maquinita equipo concentrador cosa cacharro "
    "chunche chisme trasto ";
static const char is_gone[] =
    "quit|quits|died|dies|dead|stopped|kaput|conked|kicked the bucket|bit the dust|gave out|"
    "gave up|packed it in|pooped out|crapped out|froze|fried|toast|aint working|aint running|"
    "aint going|aint doing anything|not running|isnt running|wont run|wont go|doing nothing|"
    "murio|trono|se paro|descompuso|muerto|muerta|ya no jala|no jala|ya no sirve|no sirve|"
    "no trabaja|ya no anda|no arranca|se frego|fallecio|fundio";
static const char around_gone[] =
    " just has have is its it all now completely totally went up and suddenly simply so gone "
    "on me us again se me nos le ya esta quedo de repente del todo ";

/* Harm that is trouble when one of our things has come to it: a jacket tears too. */
static const char part[] =
    "unit|machine|concentrator|battery|batteries|charger|cord|cable|plug|hose|hoses|tube|tubing|"
    "cannula|canula|prong|prongs|connector|nub|nozzle|fitting|clip|latch|lid|cart|screen|display|"
    "button|buttons|wheel|wheels|filter|tank|cylinder|gauge|regulator|valve|aparato|maquina|equipo|"
    "concentrador|bateria|baterias|pila|pilas|cargador|"
    "enchufe|manguera|tubo|tubito|canula|puntas|conector|pestana|tapa|correa|rueda|ruedas|"
    "pantalla|boton|botones|filtro|tanque|manometro|regulador|valvula";
static const char harm[] =
    "snapped|busted|bust|chewed|bitten|bit through|torn|tore|ripped|split|bent|crushed|smashed|"
    "shattered|melted|scorched|punctured|leaking|leaks|soaked|drenched|waterlogged|"
    "wont click|wont latch|wont lock|wont go in|wont close|wont stay in|came apart|fell apart|"
    "water inside|water behind|water * inside|water * behind|quebro|quebrada|quebrado|partio|"
    "partida|partido|rompio|rajo|rajada|rajado|mordio|mordida|doblo|doblada|doblado|aplasto|"
    "aplastada|derritio|derretida|derretido|gotea|empapado|empapada|empapo|no encaja|no agarra|"
    "no cierra|no entra";

/*
 * Things of a house that stop as ours do: "the heating wont turn on" tells of no unit. But what
 * names ours, oxygen or power too, has a second clause ("it shut off when the heater came on"), or
 * tells of a thing only where the unit is ("shut off on the lift"), may; and two things that stop
 * at once, or all of them, tell that the power is out.
 */
static const char household[] =
    "heating|heater|furnace|boiler|thermostat|radiator|lamp|light bulb|tv|television|microwave|"
    "oven|stove|fridge|dishwasher|washer|dryer|kettle|toaster|coffee maker|shower|toilet|faucet|"
    "sink|hot tub|jacuzzi|wifi|internet|elevator|lift|gondola|door|lock|key card|fireplace|"
    "calefaccion|calefactor|calentador|caldera|termostato|radiador|lampara|foco|bombilla|tele|"
    "television|microondas|horno|estufa|refri|refrigerador|nevera|lavadora|secadora|cafetera|"
    "tetera|tostadora|ducha|regadera|excusado|inodoro|lavabo|grifo|elevador|ascensor|telesilla|"
    "puerta|cerradura|chimenea";
static const char may_be_ours[] =
    "it|this|thing|mine|oxygen|o2|air|power|electricity|portable|poc|oxygenator|breather|"
    "compressor|everything|all|whole|oxigeno|luz|corriente|electricidad|portatil|oxigenador|"
    "respirador|compresor|todo|toda|todos|nada|when|because|after|since|while|and|but|cuando|"
    "porque|despues|desde|mientras|y|pero";
static const char of_place[] =
    " on in by at to near with behind under inside off from en de junto a al del con cerca tras ";
static const char articles[] =
    " the a an our my your this that hot coffee light key el la los las un "
    "una mi nuestra nuestro su ";

/* "in the shower", "next to the tv" */
static bool
is_place(const struct tokens *tokens, size_t at)
{
    while (at > 0 && token_among(tokens, at - 1, articles)) {
        at--;
    }
    return at > 0 && token_among(tokens, at - 1, of_place);
}

static bool
is_of_household(const struct tokens *tokens)
{
    size_t things = 0, i;

    for (i = 0; i < tokens->count; i++) {
        if (tokens_phrase_at(tokens, i, household) > 0) {
            if (is_place(tokens, i)) {
                return false;
            }
            things++;
        }
    }
    return things == 1 && !tokens_have(tokens, part) && !tokens_have(tokens, may_be_ours);
}

/* The name stands by itself: not "charger thing", "the thing on the wall", "if the machine". */
static bool
is_unit_name(const struct tokens *tokens, size_t at)
{
    size_t first = at;

    while (first > 0 && token_among(tokens, first - 1, articles)) {
        first--;
    }
    return token_among(tokens, at, any_names) &&
           !(first > 0 &&
             token_among(tokens, first - 1, " if when until before once si cuando ")) &&
           !(at > 0 && (tokens_phrase_at(tokens, at - 1, part) > 0 ||
                        tokens_phrase_at(tokens, at - 1, household) > 0)) &&
           !token_among(tokens, at + 1, " on in for at of that which en de para que ");
}

/* "The thing just died", "se me murio el aparato" */
static bool
is_unit_gone(const struct tokens *tokens)
{
    size_t i, j;

    for (i = 0; i < tokens->count; i++) {
        size_t words = tokens_phrase_at(tokens, i, is_gone);

        if (words == 0) {
            continue;
        }
        for (j = i; j > 0 && token_among(tokens, j - 1, around_gone);) {
            j--;
        }
        if (j > 0 && is_unit_name(tokens, j - 1)) {
            return true;
        }
        j = i + words;
        while (token_among(tokens, j, articles)) {
            j++;
        }
        if (j > i + words && is_unit_name(tokens, j)) {
            return true;
        }
    }
    return false;
}

/* "It stopped beeping" tells of the alarm. */
static bool
tells_stopped(const struct asked *asked)
{
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, alarm_ended);

    return tokens_have(&rest, stopped) || is_unit_gone(&rest);
}

static struct answer *
add(struct verdict *verdict, const char *id)
{
    return verdict_add(verdict, ANSWER_OFFICE, ROUTE_EQUIPMENT, id);
}

static void
no_oxygen(const struct asked *asked, struct verdict *verdict)
{
    const struct house *house = asked->context->house;
    struct answer *answer = add(verdict, "trouble-stopped");

    answer->text = say(asked->arena, house, asked->language, SAY_TROUBLE_STOPPED,
                       say_use_backup(asked->arena, house, asked->language, asked->rental), NULL);
    verdict_alert(verdict, ALERT_URGENT, true, "trouble:stopped", "unit stopped");
    flowing_ask(asked, verdict);
}

/* What the handout says of it may be all that is needed; a person hears of it all the same. */
static void
lesser_trouble(const struct asked *asked, struct verdict *verdict)
{
    bool active = asked_is_active_renter(asked);

    if (asked->search.sureness == SURE) {
        (void)topics_decide(asked, verdict);
    }
    add(verdict, "trouble-other")->text = say(asked->arena, asked->context->house, asked->language,
                                              active ? SAY_TROUBLE_OTHER : SAY_OFFICE_CALL, NULL);
    if (active) {
        verdict_alert(verdict, ALERT_OFFICE, false, office_reason_anew(asked, "trouble:other"),
                      "unit trouble");
    }
}

/* "What happens if it stops at night" */
static bool
tell_backup(const struct asked *asked, struct verdict *verdict)
{
    const struct topic *backup = kb_topic(asked->context->kb, "backup", asked->language);

    if (backup == NULL || !tokens_have(&asked->tokens, supposed) ||
        !tokens_have(&asked->tokens, may_stop) || tokens_have(&asked->tokens, its_sound)) {
        return false;
    }
    topics_answer(asked, verdict, backup);
    return true;
}

enum trouble
equipment_trouble_told(const struct asked *asked)
{
    if (tokens_have(&asked->tokens, supposed)) {
        return TROUBLE_NONE;
    }
    if (tokens_have(&asked->tokens, dangerous)) {
        return TROUBLE_DANGER;
    }
    if (is_of_household(&asked->tokens)) {
        return TROUBLE_NONE;
    }
    if (tells_stopped(asked)) {
        return TROUBLE_STOPPED;
    }
    if (tokens_have(&asked->tokens, other) ||
        (tokens_have(&asked->tokens, part) && tokens_have(&asked->tokens, harm))) {
        return TROUBLE_OTHER;
    }
    return TROUBLE_NONE;
}

/* Something is surely wrong with what they rent, in words that no list has. */
static bool
is_fault(const struct asked *asked)
{
    return !tokens_have(&asked->tokens, supposed) && !is_of_household(&asked->tokens) &&
           office_matter(asked) == MATTER_FAULT;
}

bool
equipment_trouble_decide(const struct asked *asked, struct verdict *verdict)
{
    switch (equipment_trouble_told(asked)) {
    case TROUBLE_NONE:
        if (tell_backup(asked, verdict)) {
            return true;
        }
        if (!is_fault(asked)) {
            return false;
        }
        lesser_trouble(asked, verdict);
        break;
    case TROUBLE_DANGER:
        add(verdict, "trouble-danger")->text =
            say(asked->arena, asked->context->house, asked->language, SAY_TROUBLE_DANGER, NULL);
        verdict_alert(verdict, ALERT_URGENT, true, "trouble:danger", "unit hot or wet");
        break;
    case TROUBLE_STOPPED:
        no_oxygen(asked, verdict);
        break;
    case TROUBLE_OTHER:
        lesser_trouble(asked, verdict);
        break;
    }
    return true;
}
