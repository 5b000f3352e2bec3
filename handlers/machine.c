/*
 * Another machine writes: an automatic answer of the renter's phone, or a relay that gives our own
 * text back. Answering it would begin a loop. A sign in it was heard before this is asked.
 */
#include <string.h>

#include "steps.h"

enum { BEGINNING = 5 }; /* words among which a machine says that it is one */

/* Words of a question about machines, or of a complaint about ours. */
static const char of_people[] =
    " is are was were do does did can could why who what how i im you your they got get stop es "
    "eres son por que quien ";

/* "Automatic reply: ...", "This is an automated message", "Respuesta automática". */
static const char names_itself[] =
    "automatic reply|automatic response|automatic message|automatic answer|auto reply|auto - "
    "reply|autoreply|"
    "auto response|auto - response|automated reply|automated response|automated message|out of "
    "office|"
    "respuesta automatica|mensaje automatico|contestador automatico|fuera de la oficina";

/* Nobody reads there. */
static const char unread[] =
    "number is not monitored|inbox is not monitored|number is unmonitored|do not reply to this|"
    "dont reply to this|please do not reply|cannot receive replies|can not receive replies|"
    "no responda a este|no conteste a este|este numero no recibe";

/* Somebody's phone answers for them: they are busy, and will answer later. */
static const char busy[] = "driving|in a meeting|at the movies|away from my phone|manejando|"
                           "conduciendo|en una reunion";
static const char later[] =
    "reply later|reply when|reply as soon|respond later|respond when|answer later|answer when|"
    "get back to you|see your message|see your text|read your message|read your text|"
    "call you later|call you back|text you later|text you back|contestare|respondere|"
    "le contesto * tarde|te contesto * tarde|le llamo * tarde|te llamo * tarde|vere * mensaje";

/* The text's first words, where a machine says what it is. */
static bool
begins_as_machine(const struct tokens *tokens)
{
    struct tokens first = *tokens;

    if (token_among(tokens, 0, of_people)) {
        return false;
    }
    first.count = first.count > BEGINNING ? BEGINNING : first.count;
    return tokens_have(&first, names_itself);
}

static bool
asks(const struct asked *whole)
{
    return strchr(whole->text, '?') != NULL || equipment_trouble_told(whole) != TROUBLE_NONE;
}

static bool
is_automatic(const struct asked *whole)
{
    const struct tokens *tokens = &whole->tokens;

    return !asks(whole) && (begins_as_machine(tokens) || tokens_have(tokens, unread) ||
                            (tokens_have(tokens, busy) && tokens_have(tokens, later)));
}

bool
machine_decide(const struct asked *whole, struct verdict *verdict)
{
    bool is_echo = whole->context->is_echo;

    if (verdict->answer_count > 0 || (!is_echo && !is_automatic(whole))) {
        return false;
    }
    verdict_add(verdict, ANSWER_COURTESY, ROUTE_SMALLTALK, is_echo ? "echo" : "automatic-reply");
    return true;
}
