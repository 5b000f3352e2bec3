/*
 * One of staff cannot do their own turn: that is no patient's text, but a colleague must know in
 * time. What endangers them counts as it does for anybody.
 */
#include "staff_meant.h"
#include "staff_say.h"

#include "memory.h"
#include "steps.h"

static const char cannot[] =
    "cant do|cannot do|cant come|cannot come|cant make|cannot make|cant work|cannot work|cant "
    "cover|"
    "cannot cover|cant take|cannot take|cant be there|cannot be there|cant get in|wont be in|"
    "wont be there|wont make|wont come|not coming|not able to|not going to make|im out|i am out|"
    "im sick|i am sick|sick today|sick tonight|home sick|out sick|off sick|im ill|have to skip|"
    "have the flu|have a fever|running a fever|not well|unwell|throwing up";
static const char of_a_turn[] =
    "today|tonight|tomorrow|turn|turns|shift|shifts|duty|on call|this morning|this afternoon|"
    "this evening|this weekend|weekend|my night|work|come in|monday|tuesday|wednesday|thursday|"
    "friday|saturday|sunday";
static const char by_itself[] =
    "call in sick|calling in sick|calling out sick|calling off|swap my|swap turns|swap shifts|"
    "swap with me|switch shifts|trade shifts|take my turn|take my shift|take over my|do my turn|"
    "do my shift|cover for me|cover me|cover my turn|cover my shift|cover my night";
/* Of somebody else, or asked. */
static const char of_another[] = " he she they him her his them renter renters guest customer "
                                 "patient lady man woman ";

/* Words before it that tell of nobody else: "the ambulance cant come tonight" is no absence. */
static const char before_own[] =
    " i im am we and but so sorry here really just probably guys hi hello "
    "hey today tonight tomorrow sick ill unfortunately afraid that , . "
    ": - ! ";

static bool
says_cannot(const struct tokens *tokens)
{
    size_t at;

    for (at = 0; at < tokens->count; at++) {
        if (tokens_phrase_at(tokens, at, cannot) > 0 &&
            (at == 0 || token_among(tokens, at - 1, before_own))) {
            return true;
        }
    }
    return false;
}

bool
staff_absent_told(const struct asked *whole)
{
    const struct tokens *tokens = &whole->tokens;
    struct staff_order order;
    size_t i;

    if (whole->context->role != SENDER_STAFF || staff_order_read(whole, 0, &order)) {
        return false;
    }
    for (i = 0; i < tokens->count; i++) {
        if (token_among(tokens, i, of_another) || staff_names_renter(whole, i)) {
            return false;
        }
    }
    return tokens_have(tokens, by_itself) ||
           (says_cannot(tokens) && tokens_have(tokens, of_a_turn));
}

bool
staff_absent_decide(const struct asked *whole, struct verdict *verdict)
{
    if (!staff_absent_told(whole)) {
        return false;
    }
    staff_say(whole, verdict, SAY_STAFF_ABSENT, NULL, NULL);
    verdict_alert(verdict, ALERT_OFFICE, false, "duty:absent", "cannot do their turn");
    return true;
}
