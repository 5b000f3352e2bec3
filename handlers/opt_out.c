/*
 * Consent may be withdrawn in any reasonable manner (47 CFR 64.1200(a)(10)), in words of one's own
 * as well (CTIA Messaging Principles and Best Practices, May 2023, 5.1.3). A text counts if it says
 * so and says nothing else; one that may say so among other things is served, and told how.
 */
#include <stddef.h>

#include "steps.h"

enum { WORDS_MAX = 12 };

/* Texts and messages are spoken of: among other words too, this may be about them. */
static const char of_texts[] =
    "stop * text|stop * texts|stop * texting|stop * message|stop * messages|stop * messaging|"
    "stop * msgs|stop * sms|stop contacting|quit texting|quit messaging|no more text|"
    "no more texts|no more texting|no more messages|no more msgs|no more sms|"
    "dont text|dont ever text|do not text|never text|dont message|do not message|dont contact|"
    "do not contact|dont send * text|dont send * texts|dont send * messages|do not send * text|"
    "do not send * texts|do not send * messages|dont want * text|dont want * texts|"
    "dont want * messages|do not want * texts|do not want * messages|unsubscribe|opt out|"
    "opt me out|opt us out|opting out|opt this number out|cancel * texts|cancel * messages|"
    "end * texts|end * messages|remove my number|remove this number|delete my number|"
    "delete this number|off your list|off the list|off this list|from your list|from the list|"
    "revoke * consent|withdraw * consent|"
    "no me * mensajes|no me * mensaje|no me escriba|no me escriban|no me escribas|"
    "deje de escribirme|dejen de escribirme|deja de escribirme|deje * mandar * mensajes|"
    "dejen * mandar * mensajes|dejen * enviar * mensajes|deje de mandarme|dejen de mandarme|"
    "deje de enviarme|dejen de enviarme|no quiero * mensajes|no quiero * textos|no mas mensajes|"
    "no mas textos|cancelar * mensajes|cancele * mensajes|basta de mensajes|"
    "paren * mandar * mensajes|darme de baja|denme de baja|deme de baja|dar de baja|"
    "quiteme de * lista|quitenme de * lista|borre mi numero|borren mi numero|"
    "elimine mi numero|detener * mensajes|detengan * mensajes";

/* The same, but only where nothing else is said. */
static const char of_us[] = "leave me alone|leave us alone|lose my number|lose this number|"
                            "remove me|remove us|take me off|take us off|no me mande|no me manden|"
                            "no me envie|no me envien|dejeme en paz|dejenme en paz|stop sending";

static const char said_with_it[] =
    " please pls plz just now ok okay hi hello thanks thank you u already anymore any more again "
    "ever to me us my our this the number phone from your here also too i we want would like need "
    "list these those all and out of off consent texts text texting message messages messaging "
    "msg msgs sms contacting contact sending send do not dont never no stop quit end cancel opt "
    "opting unsubscribe remove delete take lose leave alone revoke withdraw immediately asap "
    "por favor ya me nos mas mensajes mensaje textos texto manden mande mandes mandar mandarme "
    "envie envien enviar enviarme escriban escriba escribas escribirme escribir deje dejen deja "
    "de quiero recibir quiteme quitenme la su lista borre borren mi numero elimine cancelar "
    "cancele los basta paren dar darme denme deme baja detener detengan dejeme dejenme en paz "
    "gracias a este telefono sus estos ";

/* "Don't stop texting me": both negations together say the opposite. */
static bool
is_turned_round(const struct tokens *tokens)
{
    static const char no[] = " dont not never ", ends[] = " stop quit end unsubscribe opt opting "
                                                          "cancel remove delete revoke withdraw ";
    bool denies = false;
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        if (denies && token_among(tokens, i, ends)) {
            return true;
        }
        denies = denies || token_among(tokens, i, no);
    }
    return false;
}

static bool
says_nothing_else(const struct tokens *tokens)
{
    size_t words = 0, i;

    for (i = 0; i < tokens->count; i++) {
        if (token_is(tokens, i, "?")) {
            return false;
        }
        if (tokens->list[i].kind != TOKEN_SIGN) {
            words++;
            if (!token_among(tokens, i, said_with_it)) {
                return false;
            }
        }
    }
    return words <= WORDS_MAX;
}

bool
opt_out_is_said(const struct tokens *tokens)
{
    return says_nothing_else(tokens) && !is_turned_round(tokens) &&
           (tokens_have(tokens, of_texts) || tokens_have(tokens, of_us));
}

bool
opt_out_may_be_meant(const struct tokens *tokens)
{
    return tokens_have(tokens, of_texts);
}
