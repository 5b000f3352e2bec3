/*
 * A person hurts or threatens another, in words that the signs take for those of an injury or of a
 * wish to die: "he's going to hurt me". Looked at only beside an emergency, which it then is in
 * other words: nothing calls for help because of it that would not without. And who is threatened
 * and asks not to be answered, for the phone may be seen, gets no text until staff close the alert.
 */
#include <string.h>

#include "found.h"
#include "memory.h"
#include "persons.h"
#include "steps.h"

static const char in_danger[] = "in-danger";

static const char others[] =
    " he hes hell she shes shell they theyre theyll someone somebody man guy husband hubby wife "
    "son daughter nephew niece grandson granddaughter uncle aunt cousin brother sister boyfriend "
    "girlfriend partner ex carer caregiver caretaker nurse aide helper neighbor neighbour stepson "
    "stepdad roommate landlord dad father mother mom ";
static const char harms[] =
    " hurt hurts hurting kill kills killing shoot shoots shooting shot stab stabs stabbed beat "
    "beats beating hit hits hitting slap slaps slapped slapping punch punches punched punching "
    "choke chokes choked choking strangle strangles strangled strangling smother smothers "
    "smothered smothering attack attacks attacked attacking kick kicks kicked kicking grab grabs "
    "grabbed shove shoves shoved rape raped harm touching threw pinned ";
static const char whom[] = " me us her him them mom mum mama dad grandma grandpa nana gran kids "
                           "wife husband baby my our ";
static const char is_game[] = "beat me at|beats me at|beat us at|beat him at|beat her at|hit me up|"
                              "shoot me a|shoot us a|cards|chess|checkers|by accident|on accident|"
                              "hit her head|hit him in the head with a ball|beat her record";
static const char in_other_words[] =
    "his hands around her|his hands round her|his hands around my|his hands round my|"
    "his hands around mom|his hands around moms|his hands round moms|her hands around his|"
    "hands around my neck|hands round my neck|hands on my throat|hands around my throat|"
    "grabbed my throat|grabbed her throat|by the throat|pillow on * face|pillow over * face|"
    "tank over my head|bottle over my head|"
    "keeps touching|touches me|under the bed|hiding from him|hiding from her|im hiding|i am hiding|"
    "locked myself in|or no oxygen|or no air|"
    "me va a matar|nos va a matar|la va a matar|lo va a matar|me quiere matar|nos quiere matar|"
    "va a pegar|va a golpear|va a lastimar|va a hacer dano|me quiere pegar|me amenaza|nos amenaza|"
    "me esta pegando|le esta pegando|me esta golpeando|la golpeo|lo golpeo|le pega a|"
    "me esta ahorcando|la esta ahorcando|me agarro del cuello|me agarra del cuello|"
    "me tiene del cuello|la tiene del cuello|una almohada en la cara|me escondo de|"
    "escondida de|escondido de|abajo de la cama|debajo de la cama|me toca cuando|"
    "o me quita el oxigeno|o sin oxigeno";
/* Something is in the throat, whoever holds it. */
static const char of_food[] =
    " eating ate eat food chicken bone steak meat candy pill cough coughing "
    "comiendo comio comida carne hueso pollo pan tos tose toser ";
static const char of_himself[] = " himself herself myself themselves suicide suicidal suicidio "
                                 "matarse suicidarse matarme ";
/* Of these his hands, not the body, are told. */
static const char *const of_body[] = {
    "head-injury",  "self-harm",      "severe-pain", "confusion",    "chest-pain",       "poison",
    "stroke-signs", "sudden-illness", "choking",     "unresponsive", "trouble-breathing"};

static bool
tells_harm(const struct tokens *tokens)
{
    enum { NEAR = 6, BEHIND = 3 };
    size_t i, at;

    for (i = 0; i < tokens->count; i++) {
        if (!token_among(tokens, i, others)) {
            continue;
        }
        for (at = i + 1; at < i + NEAR && at < tokens->count; at++) {
            if (token_among(tokens, at, harms) &&
                tokens_between_among(tokens, at + 1, at + BEHIND, whom)) {
                return true;
            }
        }
    }
    return false;
}

static bool
is_threatened(const struct context *context)
{
    static const char *const ids[] = {in_danger};

    return found_alerted_of(context, ids, 1);
}

static bool
tells_threat(const struct asked *whole)
{
    static const char third[] = " he hes hell she shes they theyre him el ella ellos ";
    const struct tokens *tokens = &whole->tokens;

    if (tokens_have(tokens, is_game) || tokens_any_among(tokens, 0, of_food)) {
        return false;
    }
    return tells_harm(tokens) || tokens_have(tokens, in_other_words) ||
           (is_threatened(whole->context) && tokens_any_among(tokens, 0, third));
}

static bool
tells_plainly(const struct asked *whole)
{
    return tokens_have(&whole->tokens, in_other_words);
}

static bool
is_its_words(const struct asked *whole, const struct sign_match *match)
{
    bool is_of_body = false;
    size_t i;

    for (i = 0; i < sizeof of_body / sizeof of_body[0]; i++) {
        is_of_body = is_of_body || strcmp(match->sign->id, of_body[i]) == 0;
    }
    if (!is_of_body || tokens_any_among(&whole->tokens, 0, of_himself)) {
        return false;
    }
    return match->by_likeness || strcmp(match->sign->id, "self-harm") == 0 ||
           strcmp(match->sign->id, "choking") == 0 ||
           (strcmp(match->sign->id, "head-injury") == 0 &&
            tokens_have(&whole->tokens, "going to|gonna|will|wants to|hell|shell|theyll"));
}

void
threat_find(const struct asked *whole, struct found *found)
{
    const struct sign *danger = kb_sign(whole->context->kb, in_danger, whole->language);
    size_t i = 0;

    if (danger == NULL || !found_has_level(found, SIGN_EMERGENCY) || !tells_threat(whole)) {
        return;
    }
    while (i < found->count) {
        if (is_its_words(whole, &found->list[i])) {
            found_leave_out(found, found->list[i].sign->id);
        } else {
            i++;
        }
    }
    if (tells_plainly(whole) || !found_has_level(found, SIGN_EMERGENCY)) {
        found_add(found, danger);
    }
}

/* They ask for no answer. */
static const char not_to_answer[] =
    "dont reply|do not reply|dont respond|do not respond|dont text back|dont text me|dont text us|"
    "do not text|text nothing|nothing back|dont answer|do not answer|dont write back|"
    "dont send anything|dont message|no replies|stop texting|no texts back|"
    "no me contesten|no me conteste|no me contestes|no contesten|no conteste|no respondan|"
    "no responda|no me respondan|no me escriban|no me escriba|no escriban|no me manden|"
    "no manden mensajes";
/* Or to be silent about it: of who is threatened. */
static const char to_be_silent[] =
    "dont tell|do not tell|no le digan|no digan nada|no le diga|que oye|que me oye|nos oye|me esta "
    "oyendo";
/* For no call: a bell is heard by whoever is beside them, a text may be read by them alone. */
static const char not_to_ring[] =
    "dont ring|do not ring|dont call|do not call|dont phone|do not phone|dont call back|no "
    "calls|no phone calls|"
    "stop calling|no llamen|no llame|no me llamen|no me llame|no me llames|no marquen|no me "
    "marquen|"
    "no me marque|sin llamadas";
/* Who asks for that and has them beside is shown no text either. */
static const char beside[] = " here beside next near watching looking sitting aqui lado junto ";
static const char nor_text[] =
    "or text|or texts|nor text|ni escriban|ni escriba|ni mensajes|ni manden";
/* Somebody reads or hears what comes: that is to ask for none. */
static const char is_watched[] =
    "reads my text|reads my texts|reads my phone|reads this phone|reads my messages|"
    "reads the texts|checks my phone|checks my texts|goes through my phone|sees my phone|"
    "sees my texts|can see my phone|see my phone|see my texts|read my phone|read my texts|read it|"
    "reads it|read them|reads them|looks at my phone|looking at my phone|has my phone|watches my "
    "phone|reads everything|lee mis mensajes|"
    "lee los mensajes|lee mi telefono|lee mi celular|lee el celular|lee el telefono|"
    "revisa mi telefono|revisa mi celular|revisa el celular|revisa el telefono|ve mis mensajes";
static const char by_whom[] =
    " he hes she shes they husband wife boyfriend girlfriend son daughter "
    "partner ex him her el ella marido esposo esposa hijo hija novio "
    "novia yerno sobrino ";

/* Before, or by this text. */
static bool
is_of_threatened(const struct asked *whole, const struct verdict *verdict)
{
    bool is_threat = is_threatened(whole->context);
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        is_threat = is_threat || strcmp(verdict->answers[i].id, in_danger) == 0;
    }
    return is_threat;
}

/* That nobody is to ring them; not that nobody is to be called to them. */
static bool
asks_no_bell(const struct tokens *tokens)
{
    static const char helpers[] = "call 911|call the cops|call cops|call the police|call police|"
                                  "call an ambulance|call anyone|llamen al 911|llame al 911|"
                                  "llamen a la policia|llame a la policia";

    return tokens_have(tokens, not_to_ring) && !tokens_have(tokens, helpers);
}

/* Neither a bell nor a text is to be noticed: "dont call, he is right here". */
static bool
would_be_noticed(const struct tokens *tokens)
{
    return asks_no_bell(tokens) &&
           (tokens_have(tokens, nor_text) || tokens_any_among(tokens, 0, beside));
}

/* Who is in no danger and wants no answer ("no need to reply") is another thing. */
static bool
no_reply_told(const struct asked *whole, const struct verdict *verdict)
{
    const struct tokens *tokens = &whole->tokens;
    bool asks = tokens_have(tokens, not_to_answer), watched = tokens_have(tokens, is_watched);
    bool of_somebody = tokens_any_among(tokens, 0, by_whom);

    if (is_of_threatened(whole, verdict)) {
        return asks || watched || would_be_noticed(tokens) || tokens_have(tokens, to_be_silent);
    }
    return (watched && (asks || of_somebody)) ||
           (asks && of_somebody && open_emergency_stands(whole->context));
}

bool
no_reply_decide(const struct asked *whole, struct verdict *verdict)
{
    if (verdict->answer_count > 0 || !no_reply_told(whole, verdict)) {
        return false;
    }
    verdict_add(verdict, ANSWER_OFFICE, ROUTE_STAFF, NO_REPLY_REASON);
    return true;
}

/* Staff are called with this in front of what else is told. */
static void
tell_wish(const struct asked *whole, struct verdict *verdict, const char *reason, const char *wish)
{
    const char *before = verdict->alert.level == ALERT_EMERGENCY ? verdict->alert.brief : NULL;

    verdict->alert.level = ALERT_EMERGENCY;
    verdict->alert.ring = true;
    verdict->alert.reason = reason;
    verdict->alert.brief =
        before == NULL ? wish : memory_format(whole->arena, "%s + %s", wish, before);
}

void
no_reply_hold(const struct asked *whole, struct verdict *verdict)
{
    bool is_told = no_reply_told(whole, verdict);

    if (whole->context->role == SENDER_STAFF) {
        return;
    }
    if (!is_told && is_of_threatened(whole, verdict) && asks_no_bell(&whole->tokens)) {
        tell_wish(whole, verdict, verdict->alert.reason != NULL ? verdict->alert.reason : "no-call",
                  "asked not to be called");
    }
    if (!is_told && !found_alerted_because(whole->context, NO_REPLY_REASON)) {
        return;
    }
    if (is_told) {
        tell_wish(whole, verdict, NO_REPLY_REASON, "asked not to be texted");
    }
    verdict->reply_count = 0;
    if (verdict->conversation.question != whole->context->conversation.question) {
        verdict->conversation.question = QUESTION_NONE;
    }
}
