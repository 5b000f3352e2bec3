#include "staff_loose.h"

#include <string.h>

#include "memory.h"
#include "staff_list.h"
#include "staff_outcome.h"
#include "staff_own.h"
#include "staff_say.h"
#include "steps.h"

/* Who texts one of these wants to take an alert, or goes already. */
static const char takes[] = " mine take taking took got have going go omw way driving coming ";
static const char around_taking[] =
    " i im ill ive will am me it this that one the on my to there over now right ok okay yes yeah "
    "yep k sure please pls thanks thank you alert number no nr and of for at in is can got hi . , "
    "! : # - mine take taking took got have going go omw way driving coming ";
static const char agrees[] = " ok okay k kk yes yeah yep yup y sure roger copy will do thanks "
                             "thank you thx ty got it seen . , ! ";
static const char asks_for_words[] = " help words commands list menu info ? ! ";

enum { WORDS_TO_SOMEBODY = 3 };

/* So words begin that are said to somebody, and to the ill alone. */
static const char bids[] =
    " stay sit lie lay breathe hold keep rest relax calm lean unlock open go "
    "come get put turn plug take use leave dont do try wait stand move drink ";
static const char bids_the_ill[] =
    " stay sit lie lay breathe hold keep rest relax calm lean unlock ";
static const char drives_off[] = " away back out off clear inside outside ";
static const char asks_them[] = " are do did can could is have has does ";
static const char asks_how[] = " how where what which ";
static const char whom[] = " you your u ur he she they it his her the everybody anybody anyone ";
static const char before_bidding[] =
    " ok okay yes good please pls and hi hello just now so , . : - ! ";

/* Whoever reads it is spoken to. */
static const char speaks_to[] = " you your youre youve u ur yourself if when until unless ? ";

static bool
is_all_of(const struct tokens *tokens, const char *words)
{
    size_t i;

    for (i = 0; i < tokens->count && token_among(tokens, i, words); i++) {
    }
    return i == tokens->count;
}

static bool
says_take(const struct tokens *tokens)
{
    size_t i;

    for (i = 0; i < tokens->count && !token_among(tokens, i, takes); i++) {
    }
    return i < tokens->count;
}

const struct open_alert *
staff_loose_taken(const struct asked *whole)
{
    bool by_name;

    return says_take(&whole->tokens) ? staff_only_named(whole, around_taking, &by_name) : NULL;
}

/* ---- Whom they may mean --------------------------------------------------------------------- */

static bool
is_mine(const struct asked *whole, const struct open_alert *alert)
{
    return alert->taken_by != NULL && strcmp(alert->taken_by, whole->message->sender) == 0;
}

/* The only one that nobody has taken. What waits for the office is not what rang at night. */
static const struct open_alert *
only_untaken(const struct asked *whole)
{
    const struct context *context = whole->context;
    const struct open_alert *only = NULL;
    enum alert_level level;
    size_t i, count = 0;

    for (level = ALERT_URGENT; count == 0 && level >= ALERT_OFFICE; level--) {
        for (i = 0; i < context->alert_count; i++) {
            const struct open_alert *alert = &context->alerts[i];

            if (alert->head == alert->number && alert->taken_by == NULL && alert->level >= level) {
                only = alert;
                count++;
            }
        }
    }
    return count == 1 ? only : NULL;
}

/* The only one of those that they have in hand, of all or of those that they write to. */
static const struct open_alert *
only_mine(const struct asked *whole, bool with_talk)
{
    const struct context *context = whole->context;
    const struct open_alert *only = NULL;
    size_t i;

    for (i = 0; i < context->alert_count; i++) {
        if (is_mine(whole, &context->alerts[i]) && (!with_talk || context->alerts[i].has_talk)) {
            if (only != NULL) {
                return NULL;
            }
            only = &context->alerts[i];
        }
    }
    return only;
}

/* "1 ...", "#1: ...", "alert 1 ..."; *next is what stands behind it. */
static const struct open_alert *
led_by_number(const struct asked *whole, size_t *next)
{
    const struct tokens *tokens = &whole->tokens;
    size_t at = 0;

    while (token_among(tokens, at, " alert no nr # ")) {
        at++;
    }
    if (at >= tokens->count || tokens->list[at].kind != TOKEN_NUMBER ||
        tokens->list[at].thousandths % 1000 != 0) {
        return NULL;
    }
    *next = at + 1;
    return staff_numbered(whole->context, tokens->list[at].thousandths / 1000);
}

static bool
has_one_in_hand(const struct asked *whole)
{
    size_t i;

    for (i = 0; i < whole->context->alert_count; i++) {
        if (is_mine(whole, &whole->context->alerts[i])) {
            return true;
        }
    }
    return false;
}

/* Behind "ok", "please" and the like from `at` on. */
static size_t
behind_lead(const struct tokens *tokens, size_t at)
{
    while (token_among(tokens, at, before_bidding)) {
        at++;
    }
    return at;
}

/* "..., sit down": bidden at the start of what is said, or of a part of it. */
static bool
is_bidden(const struct tokens *tokens, size_t at, size_t i)
{
    return token_among(tokens, i, bids) &&
           (i == at || tokens->list[i - 1].kind == TOKEN_SIGN ||
            token_among(tokens, i - 1, " and then means please pls just "));
}

bool
staff_loose_speaks_to_somebody(const struct tokens *tokens, size_t at)
{
    size_t i;

    at = behind_lead(tokens, at);
    for (i = at; i < tokens->count && !is_bidden(tokens, at, i); i++) {
    }
    return i < tokens->count || tokens_any_among(tokens, at, speaks_to) ||
           token_among(tokens, at, asks_how) ||
           (token_among(tokens, at, asks_them) && token_among(tokens, at + 1, whom));
}

bool
staff_loose_to_renter(const struct asked *whole, const struct open_alert **to)
{
    const struct tokens *tokens = &whole->tokens;
    bool is_said;
    size_t at = 0;

    *to = led_by_number(whole, &at);
    if (*to == NULL && !has_one_in_hand(whole)) {
        return false;
    }
    at = *to == NULL ? 0 : at;
    if (*to != NULL) {
        return staff_loose_speaks_to_somebody(tokens, at) && !staff_tells_own(whole, 0);
    }
    at = behind_lead(tokens, at);
    is_said = (token_among(tokens, at, bids_the_ill) && !token_among(tokens, at + 1, drives_off)) ||
              ((token_among(tokens, at, asks_them) || token_among(tokens, at, asks_how)) &&
               token_among(tokens, at + 1, " you your u ur "));
    /* "Breathe hard all night, chest tight" may be of whoever writes */
    return is_said && (tokens_any_among(tokens, at, speaks_to) || !staff_shows_sign(whole, at)) &&
           !staff_tells_own(whole, 0);
}

/* ---- What is said --------------------------------------------------------------------------- */

static void
say_not_sent(const struct asked *whole, struct verdict *verdict, const struct open_alert *to)
{
    if (to != NULL && !to->no_texts) {
        staff_say(whole, verdict, SAY_STAFF_NOBODY, staff_say_number(whole, to->number),
                  to->first_name != NULL ? to->first_name : "the renter");
    } else {
        staff_say_words(verdict,
                        staff_list_open(whole, "NOT sent to any renter. Open:\n",
                                        "\nTALK, its number and your words writes to one."));
    }
}

/* "ok", "I take it": no order, but what they want is plain if one waits for somebody. */
static bool
agrees_decide(const struct asked *whole, struct verdict *verdict)
{
    const struct open_alert *only = staff_only_alert(whole->context);
    const struct open_alert *untaken = only_untaken(whole);
    bool wants_one = says_take(&whole->tokens) && is_all_of(&whole->tokens, around_taking);

    if (!wants_one && !is_all_of(&whole->tokens, agrees)) {
        return false;
    }
    if (untaken != NULL) {
        staff_say(whole, verdict, SAY_STAFF_TAKE, staff_say_number(whole, untaken->number),
                  staff_list_whose(whole, untaken));
    } else if (wants_one && only != NULL && !is_mine(whole, only)) {
        staff_say(whole, verdict, SAY_STAFF_HAS_IT, staff_say_number(whole, only->number),
                  staff_list_holder(only));
    } else if (wants_one && only == NULL) {
        staff_say_words(verdict, staff_list_open(whole, "Which one? Open:\n",
                                                 "\nText MINE and its number to take one."));
    } else {
        return false;
    }
    return true;
}

/* Words that were for a renter reached nobody, and they must know that. */
static bool
not_sent_decide(const struct asked *whole, struct verdict *verdict)
{
    const struct open_alert *only = staff_only_alert(whole->context);
    const struct open_alert *talks = only_mine(whole, true);
    const struct open_alert *to;

    if (!staff_loose_to_renter(whole, &to) || to == NULL) {
        to = talks != NULL ? talks : only_mine(whole, false);
    }
    if (to == NULL && whole->tokens.count < WORDS_TO_SOMEBODY && !staff_speaks_of_renter(whole)) {
        return false;
    }
    if (to == NULL && only != NULL && staff_list_count(whole->context, only->head) == 1) {
        to = only;
    }
    say_not_sent(whole, verdict, to);
    return true;
}

/* What was asked about how it ended is asked once more. */
static bool
still_open_decide(const struct asked *whole, struct verdict *verdict)
{
    bool only_this;
    const struct open_alert *ending = staff_outcome_awaited(whole, &only_this);

    if (ending == NULL) {
        return false;
    }
    staff_say(whole, verdict, SAY_STAFF_STAYS, staff_say_number(whole, ending->number), NULL);
    staff_outcome_ask(whole, verdict, ending, only_this);
    return true;
}

void
staff_loose_decide(const struct asked *whole, struct verdict *verdict)
{
    bool writes = only_mine(whole, true) != NULL; /* then "ok" is for the renter */

    if (whole->context->alert_count > 0 && !is_all_of(&whole->tokens, asks_for_words) &&
        (still_open_decide(whole, verdict) || (!writes && agrees_decide(whole, verdict)) ||
         not_sent_decide(whole, verdict))) {
        return;
    }
    staff_say(whole, verdict, SAY_STAFF_HELP, NULL, NULL);
}
