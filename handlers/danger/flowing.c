/*
 * "Is oxygen flowing again?", asked after a unit stopped or the power went. It is the one question
 * of ours that a life may hang on, so no other question takes its place while it is open, a text
 * that may mean NO counts as NO, and one that says neither is answered and asked again.
 *
 * While a person leads the conversation the question rests, for NO may answer something else that
 * they asked: then only a text that speaks of the oxygen answers it. And when the power went but
 * the unit runs on its battery, "Is oxygen still flowing?" is asked, and silence is less grave.
 */
#include <string.h>

#include "clause.h"
#include "found.h"
#include "half_flow.h"
#include "memory.h"
#include "say.h"
#include "steps.h"
#include "yes_no.h"

static const struct yes_no_about oxygen_flows = {
    .things = " oxygen o2 air flow flowing coming working work works power electricity light unit "
              "machine concentrator running back oxigeno aire sale luz corriente funciona prende "
              "maquina equipo ",
    .well =
        "flowing|it flows|is working|its working|working now|working again|works now|works again|"
        "it works|running again|running now|its running|back on|came back|is back|its back|"
        "on again|coming out|coming again|getting oxygen|getting air|ok now|okay now|"
        "fine now|good now|all good|all set|is fixed|got it fixed|got it working|"
        "sigue saliendo|still coming|still running|still works|still working|still runs|"
        "sigue funcionando|sigue andando|"
        "ya jala|ya jalo|ya anda|ya trabaja|ya sirve|ya arranco|"
        "ya funciona|ya sale|ya volvio|volvio la luz|ya hay|ya prendio|ya esta|ya quedo|"
        "sale oxigeno|esta saliendo",
    .ill = " still yet same sigue igual stopped quit died dead off out worse muerto apagado "
           "apagada parado peor quiet silent silence callado callada silencio ",
};

/* Of the oxygen and nothing else that a person may have asked about. */
static const char oxygen[] = " oxygen o2 air flow flows flowing oxigeno aire sale ";
static const char none_comes[] = "nothing coming|nothing is coming|nothing comes|nothing out|"
                                 "nada sale|nada de aire|nada de oxigeno";
static const char flows_in_words[] =
    "flowing|flows|coming out|coming again|getting oxygen|"
    "getting air|sale oxigeno|esta saliendo|ya sale|sigue saliendo";

static const char runs_on_battery[] =
    "on battery|on batteries|on the battery|on its battery|on his battery|on her battery|"
    "on my battery|on battery power|to battery|to the battery|still running|still runs|still works|"
    "still working|is running|keeps running|kept running|battery kicked in|battery took over|"
    "con bateria|con la bateria|con pila|a bateria|sigue funcionando|sigue andando|sigue prendido|"
    "sigue prendida|sigue trabajando|esta funcionando|funciona con|trabaja con|anda con";
static const char no_power[] = "no power|no electricity|no current|no lights|without power|"
                               "no hay luz|no hay corriente|no hay electricidad|sin luz|"
                               "sin corriente|sin electricidad";
/* The unit may run no longer, or not for long, or they only ask. */
static const char may_not_run[] =
    " stop stopped stops stopping quit quits died dies dead dying off empty low weak almost nearly "
    "silent quiet black dark phone cell cellphone laptop radio callado callada telefono celular "
    "last if will would can could should how try trying tried murio apagado apagada apago apaga "
    "paro parado parada vacia vacio baja bajo ultima ultimo casi si puede como poca poco queda ? ";
static const char runs[] = "runs";

/* What a YES may come with and still be one; of what they did or have it says nothing yet. */
static const char with_yes[] =
    " yes yeah yep yup yea yess yesss yas sip si simon aja ya y affirmative correct ok okay oh um "
    "well hi hello hey sorry thank thanks thx you god please no problem worries it is its does now "
    "again all good so much very finally i think hola bueno gracias perdon pues claro muchas todo "
    "bien ahora aqui por favor sigue lo esta igual maam sir dios a ";
static const char did[] = "tried|did|done|checked|pushed|pressed|reset|restarted|probe|hice|revise|"
                          "intente|intentamos|hicimos|aprete";

/* Each may be of a person as well, or half said: "mi papa ya anda en las ultimas", "ya jala poco".
 * It is YES with nothing beside it but these. */
static const char half_said[] =
    "ya jala|ya jalo|ya anda|ya trabaja|ya sirve|ya arranco|ya funciona|"
    "ya sale|ya volvio|ya hay|ya prendio|ya esta|ya quedo";
static const char with_half_said[] =
    " si sip simon aja claro pues yes yep ok okay thanks gracias muchas mil todo bien muy perfecto "
    "excelente listo lista la lo maquina "
    "aparato equipo concentrador oxigeno aire luz corriente electricidad otra vez de nuevo "
    "nuevamente ya ahora ahorita normal en orden a dios bendito hola disculpe perdon saliendo "
    "funcionando "
    "trabajando jalando prendida prendido encendida encendido por fin arreglado arreglada y ";
static const char denied_reason[] = "flowing:no";

static bool
is_open(const struct asked *whole)
{
    return asked_open_question(whole) == QUESTION_FLOWING;
}

/* The open question is of a unit that was told to run on its battery. */
static bool
was_told_to_run(const struct conversation *conversation)
{
    return conversation->choice_count > 0 && strcmp(conversation->choices[0], runs) == 0;
}

bool
flowing_tells_it_runs(const struct asked *asked)
{
    struct tokens tokens = tokens_without(asked->arena, &asked->tokens, no_power);
    size_t i;

    for (i = 0; i < tokens.count; i++) {
        if (yes_no_denies_at(&tokens, i) || token_among(&tokens, i, may_not_run)) {
            return false;
        }
    }
    return tokens_have(&tokens, runs_on_battery);
}

/* The mains failed, and no sign tells anything else. */
static bool
is_outage_alone(const struct verdict *verdict)
{
    bool is_out = false;
    size_t i;

    for (i = 0; i < verdict->answer_count; i++) {
        bool tells = strcmp(verdict->answers[i].id, "power-out-now") == 0;

        if (verdict->answers[i].kind == ANSWER_SIGN && !tells) {
            return false;
        }
        is_out = is_out || tells;
    }
    return is_out;
}

/* What they say of the oxygen in a text to a person. */
static enum yes_no
told_beside_talk(const struct asked *asked)
{
    if (yes_no_denies_one_of(&asked->tokens, oxygen) || tokens_have(&asked->tokens, none_comes) ||
        (tokens_any_among(&asked->tokens, 0, oxygen) &&
         half_flow_told(&asked->tokens) == SAID_NO)) {
        return SAID_NO;
    }
    return yes_no_read(&asked->tokens, &oxygen_flows) == SAID_YES &&
                   tokens_have(&asked->tokens, flows_in_words)
               ? SAID_YES
               : SAID_NEITHER;
}

/* A power cut that goes on says nothing of a unit that was told to run on its battery. */
static struct tokens
tokens_of_unit(const struct asked *asked)
{
    static const char power_is_out[] =
        "power is out|power is still out|power is out still|power still out|power out|"
        "still no power|no power yet|no power still|no power|still no electricity|no electricity|"
        "electricity is out|electricity is still out|lights are out|lights are still out|"
        "todavia no hay luz|aun no hay luz|no hay luz todavia|no hay luz|sigue sin luz|"
        "seguimos sin luz|sin luz|todavia no vuelve la luz|no ha vuelto la luz|no vuelve la luz";

    /* "no lights on the unit" is of the unit */
    return tokens_have(&asked->tokens,
                       "unit|machine|concentrator|maquina|aparato|equipo|concentrador")
               ? asked->tokens
               : tokens_without(asked->arena, &asked->tokens, power_is_out);
}

/* "Yes it's plugged in", "yes we have a tank", "tried that": nothing of whether oxygen flows. */
static bool
tells_something_else(const struct tokens *tokens)
{
    if (tokens_have(tokens, oxygen_flows.well) || yes_no_goes_on(tokens)) {
        return false;
    }
    if (!yes_no_begins_with_yes(tokens)) {
        return tokens_have(tokens, did);
    }
    return !tokens_words_among(tokens, with_yes);
}

static bool
is_half_said(void *arena, const struct tokens *tokens)
{
    struct tokens rest = tokens_without(arena, tokens, half_said);
    size_t i;

    for (i = 0; rest.count < tokens->count && i < rest.count; i++) {
        bool is_article = token_is(&rest, i, "el") && token_among(&rest, i + 1, with_half_said);

        if (rest.list[i].kind == TOKEN_WORD && !is_article &&
            !token_among(&rest, i, with_half_said)) {
            return true;
        }
    }
    return half_flow_told(tokens) == SAID_NEITHER;
}

/* Half a flow is NO; a longer YES must name that it flows, or ask something else beside it. */
static enum yes_no
sure_of(void *arena, enum yes_no said, const struct tokens *tokens)
{
    enum { LONG_TEXT = 8 };
    bool is_long = tokens->count > LONG_TEXT && !tokens_have(tokens, oxygen_flows.well) &&
                   !tokens_have(tokens, "?|how|what|when|where|which|who|why|como|cuando|donde");

    if (half_flow_told(tokens) == SAID_NO) {
        return SAID_NO;
    }
    return said == SAID_YES &&
                   (is_long || tells_something_else(tokens) || is_half_said(arena, tokens))
               ? SAID_NEITHER
               : said;
}

/* "My phone died again", "no my cell is off": what is said of a phone is nothing of the oxygen. */
static struct tokens
without_phone(void *arena, const struct tokens *tokens)
{
    static const char phones[] = " phone phones cell cellphone mobile telefono celular cel movil ";
    static const char of_it[] = " oxygen o2 air flow flowing unit machine concentrator nothing "
                                "oxigeno aire sale nada maquina aparato equipo concentrador ";
    struct tokens rest = {.list = memory_array(arena, struct token, tokens->count + 1)};
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        struct clause clause = clause_around(tokens, i);

        if ((i == 0 && yes_no_denies_at(tokens, i)) || !clause_has(tokens, clause, phones) ||
            clause_has(tokens, clause, of_it)) {
            rest.list[rest.count++] = tokens->list[i];
        }
    }
    return rest;
}

/* "Back again lol", "gone again": of the power or of the oxygen, and nothing else is told. */
static bool
is_alone(const struct tokens *tokens, const char *word)
{
    static const char around[] =
        " it its the is are power lights light electricity oxygen now again just already "
        "finally lol haha phew ok okay yay ";
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (tokens->list[i].kind != TOKEN_SIGN && !token_is(tokens, i, word) &&
            !token_among(tokens, i, around)) {
            return false;
        }
    }
    return tokens_have(tokens, word) && !tokens_have(tokens, "?");
}

/* "Lights back", or "its back" after a power cut: a unit that stopped runs no more for that, and is
 * to be switched on. */
static bool
tells_only_of_power(const struct asked *asked)
{
    static const char power[] = "power|powers|light|lights|electricity|electric|mains|luz|luces|"
                                "corriente|electricidad";
    static const char power_cut[] = "outage|blackout|apagon|corte";
    static const char of_unit[] =
        " yes yeah yep yup si sip simon oxygen o2 air flow flows flowing unit machine concentrator "
        "running runs works working coming getting breathing oxigeno aire sale saliendo maquina "
        "aparato equipo concentrador funciona funcionando prende prendio jala anda trabaja arranco "
        "sirve ";
    const char *before = asked->context->conversation.asked_about;
    struct tokens asked_about = tokens_read(asked->arena, before == NULL ? "" : before);

    return !tokens_any_among(&asked->tokens, 0, of_unit) &&
           (tokens_have(&asked->tokens, power) || tokens_have(&asked_about, power) ||
            tokens_have(&asked_about, power_cut));
}

/* That it is back, of the oxygen or of the power. */
static enum yes_no
said_in_words(const struct asked *asked, const struct tokens *tokens)
{
    if (is_alone(tokens, "gone")) {
        return SAID_NO;
    }
    return is_alone(tokens, "back")
               ? SAID_YES
               : sure_of(asked->arena, yes_no_read(tokens, &oxygen_flows), tokens);
}

static bool
tells_power_is_back(const struct asked *asked)
{
    return tells_only_of_power(asked) && said_in_words(asked, &asked->tokens) == SAID_YES;
}

static enum yes_no
told(const struct asked *asked)
{
    bool runs_on = was_told_to_run(&asked->context->conversation);
    struct tokens of_unit = runs_on ? tokens_of_unit(asked) : asked->tokens;
    struct tokens tokens = without_phone(asked->arena, &of_unit);

    if (in_charge_leads(asked)) {
        return told_beside_talk(asked);
    }
    return !runs_on && tells_power_is_back(asked) ? SAID_NEITHER : said_in_words(asked, &tokens);
}

bool
flowing_is_denied(const struct asked *whole)
{
    return whole->context->role != SENDER_STAFF && is_open(whole) && told(whole) == SAID_NO;
}

void
flowing_ask(const struct asked *asked, struct verdict *verdict)
{
    struct answer *answer = verdict_add(verdict, ANSWER_ASK, ROUTE_EQUIPMENT, "flowing");
    bool ran = is_open(asked) && was_told_to_run(&asked->context->conversation);
    bool told_now = (is_open(asked) || is_outage_alone(verdict)) && flowing_tells_it_runs(asked);

    answer->text = say(asked->arena, asked->context->house, asked->language,
                       ran || told_now ? SAY_FLOWING_STILL : SAY_FLOWING, NULL);
    if (open_question_ask(asked, verdict, QUESTION_FLOWING) && (ran || told_now)) {
        verdict->conversation.choices[verdict->conversation.choice_count++] = runs;
    }
}

void
flowing_still_none(const struct asked *whole, struct verdict *verdict)
{
    struct answer *answer = verdict_add(verdict, ANSWER_SIGN, ROUTE_EMERGENCY, "no-oxygen-still");

    answer->text = say(whole->arena, whole->context->house, whole->language, SAY_FLOWING_NO, NULL);
    verdict_alert(verdict, ALERT_EMERGENCY, true, denied_reason, "still no oxygen");
    open_question_close(verdict);
}

/* It flows: closes the question. Staff still come back to them. */
static void
flowing_again(const struct asked *whole, struct verdict *verdict)
{
    struct answer *answer = verdict_add(verdict, ANSWER_OFFICE, ROUTE_EQUIPMENT, "flowing-again");

    answer->text = say(whole->arena, whole->context->house, whole->language, SAY_FLOWING_YES, NULL);
    open_question_close(verdict);
}

/* "Its back", after NO: the power or the unit, unless something was told of somebody. The emergency
 * stays open, but what counts now is the same question. */
static bool
came_back(const struct asked *whole, struct verdict *verdict)
{
    static const char *const of_supply[] = {"power-out-now", "unit-stopped", "no-oxygen-source",
                                            "last-battery", "unit-message"};

    if (verdict->answer_count > 0 || !found_alerted_because(whole->context, denied_reason) ||
        !found_alerted_only(whole, of_supply, sizeof of_supply / sizeof of_supply[0]) ||
        !is_over_of_supply(whole)) {
        return false;
    }
    verdict_alert(verdict, ALERT_OFFICE, false, "wrote-again", "says it is back");
    flowing_ask(whole, verdict);
    return true;
}

bool
flowing_decide(const struct asked *whole, struct verdict *verdict)
{
    if (whole->context->role == SENDER_STAFF) {
        return false;
    }
    if (!is_open(whole)) {
        return came_back(whole, verdict);
    }
    switch (told(whole)) {
    case SAID_NO:
        flowing_still_none(whole, verdict);
        return true;
    case SAID_YES:
        if (verdict->answer_count > 0) {
            return false; /* a sign came with it, so it stays open */
        }
        flowing_again(whole, verdict);
        return !yes_no_goes_on(&whole->tokens); /* "yes when is it due": that is answered too */
    case SAID_NEITHER:
        if (verdict->answer_count == 0 && !in_charge_leads(whole) &&
            (tells_something_else(&whole->tokens) || tells_power_is_back(whole) ||
             (!yes_no_goes_on(&whole->tokens) && tokens_have(&whole->tokens, oxygen_flows.well) &&
              is_half_said(whole->arena, &whole->tokens)))) {
            flowing_ask_again(whole, verdict);
            return true;
        }
        break;
    }
    return false;
}

bool
flowing_is_told_again(const struct asked *whole, const struct verdict *verdict)
{
    bool rests = in_charge_leads(whole) || was_told_to_run(&whole->context->conversation);

    return flowing_may_be_none(whole) && !(rests && is_outage_alone(verdict));
}

enum alert_level
flowing_unanswered_level(const struct conversation *conversation)
{
    return was_told_to_run(conversation) ? ALERT_URGENT : ALERT_EMERGENCY;
}

bool
flowing_may_be_none(const struct asked *whole)
{
    /* "yes but he is dizzy": it flows, and that is another matter */
    return is_open(whole) && !yes_no_begins_with_yes(&whole->tokens);
}

void
flowing_ask_again(const struct asked *whole, struct verdict *verdict)
{
    bool on_backup = false;
    struct answer *answer;
    size_t i;

    if (!is_open(whole) || verdict->conversation.question != QUESTION_FLOWING) {
        return;
    }
    for (i = 0; i < verdict->answer_count; i++) {
        if (strcmp(verdict->answers[i].id, "flowing") == 0) {
            return;
        }
        on_backup = on_backup || strcmp(verdict->answers[i].id, "cylinder-hisses") == 0;
    }
    flowing_ask(whole, verdict);
    if (on_backup || ran_out_of_backup(whole)) {
        return;
    }
    answer = &verdict->answers[verdict->answer_count - 1];
    answer->text = memory_format(
        whole->arena, "%s %s",
        say_use_backup(whole->arena, whole->context->house, whole->language, whole->rental),
        answer->text); /* until it flows, that comes first */
}
