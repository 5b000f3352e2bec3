#include "staff_meant.h"

#include <string.h>

#include "memory.h"
#include "steps.h"

/* Past this what was ordered may no longer be so: it is to be texted anew. */
enum { WAITS_S = 15 * 60 };

/* Names that are words as well count where a name stands, or alone: "talk will you be home". */
static const char word_names[] =
    " will may hope grace joy faith art bill mark rose dawn june april "
    "august sue pat rich frank drew chase guy ray can sunny ";
static const char before_a_name[] = " to for with of from mr mrs ms ";
/* What may stand before a name or number, and tells nothing by itself. */
static const char before_name[] =
    " to for with the one ones of in at from about alert number no nr "
    "mr mrs ms : . , - # ";
static const char around_answer[] = " to for with the one ones of in at from about alert number no "
                                    "nr mr mrs ms is it its i mean meant please pls thanks and "
                                    ": . , - # ! ? ";

const struct open_alert *
staff_only_alert(const struct context *context)
{
    const struct open_alert *only = NULL;
    size_t i;

    for (i = 0; i < context->alert_count; i++) {
        if (context->alerts[i].head == context->alerts[i].number) {
            if (only != NULL) {
                return NULL;
            }
            only = &context->alerts[i];
        }
    }
    return only;
}

const struct open_alert *
staff_numbered(const struct context *context, int64_t number)
{
    size_t i;

    for (i = 0; i < context->alert_count; i++) {
        if (context->alerts[i].number == number) {
            return &context->alerts[i];
        }
    }
    return NULL;
}

/* ---- By name or place ----------------------------------------------------------------------- */

/* How many tokens at `at` say what stands in `words` from `from` to the next comma. */
static size_t
says_piece(const struct tokens *tokens, size_t at, const struct tokens *words, size_t from)
{
    size_t i;

    for (i = from; i < words->count && !token_is(words, i, ","); i++) {
        if (!token_is(tokens, at + i - from, words->list[i].text)) {
            return 0;
        }
    }
    return i - from;
}

/* The same of any piece between commas: "Room 212, Fallowgate Lodge" by either. */
static size_t
says(const struct asked *whole, const struct tokens *tokens, size_t at, const char *words)
{
    struct tokens pieces = tokens_read(whole->arena, words != NULL ? words : "");
    size_t from, longest = 0;

    for (from = 0; from < pieces.count; from++) {
        size_t length = from == 0 || token_is(&pieces, from - 1, ",")
                            ? says_piece(tokens, at, &pieces, from)
                            : 0;

        longest = length > longest ? length : longest;
    }
    return longest;
}

/* At the first name of this alert, and it is meant as one. */
static size_t
says_name(const struct asked *whole, const struct tokens *tokens, size_t at,
          const struct open_alert *alert)
{
    size_t length = says(whole, tokens, at, alert->first_name);
    bool is_word = token_among(tokens, at, word_names) && at + length < tokens->count &&
                   (at == 0 || !token_among(tokens, at - 1, before_a_name));

    return is_word ? 0 : length;
}

/* Where what names this alert ends, "Gwen in cabin 4"; `at` if nothing there does. */
static size_t
end_of_name(const struct asked *whole, const struct tokens *tokens, size_t at,
            const struct open_alert *alert)
{
    size_t end = at, next = at;

    while (next < tokens->count) {
        size_t name = says_name(whole, tokens, next, alert);
        size_t place = says(whole, tokens, next, alert->place);
        size_t length = name > place ? name : place;

        if (length > 0) {
            end = next += length;
        } else if (end > at && token_among(tokens, next, " in at from of , ")) {
            next++;
        } else {
            break;
        }
    }
    return end;
}

/* The alert that is named at `at`, the one of which most is told; NULL if there are two such. */
static const struct open_alert *
named_at(const struct asked *whole, const struct tokens *tokens, size_t at, size_t *end)
{
    const struct context *context = whole->context;
    const struct open_alert *found = NULL;
    size_t i, ends;

    *end = at;
    for (i = 0; i < context->alert_count; i++) {
        ends = end_of_name(whole, tokens, at, &context->alerts[i]);
        if (ends > *end) {
            *end = ends;
            found = &context->alerts[i];
        } else if (ends == *end && ends > at) {
            found = NULL;
        }
    }
    return found;
}

/* Behind words that tell nothing; of MINE whatever words those are. */
static const struct open_alert *
named_from(const struct asked *whole, size_t at, bool anywhere, size_t *end)
{
    const struct tokens *tokens = &whole->tokens;
    const struct open_alert *alert = NULL;
    size_t next;

    for (next = at; next < tokens->count && alert == NULL; next++) {
        alert = named_at(whole, tokens, next, end);
        if (*end > next) {
            break;
        }
        if (!anywhere && !token_among(tokens, next, before_name)) {
            break;
        }
    }
    return alert;
}

bool
staff_names_renter(const struct asked *whole, size_t at)
{
    size_t end;

    (void)named_at(whole, &whole->tokens, at, &end);
    return end > at || token_among(&whole->tokens, at,
                                   " renter renters customer guest patient client lady man woman "
                                   "gentleman husband wife he she they ");
}

bool
staff_names_alert(const struct asked *whole, const struct open_alert *alert)
{
    size_t at;

    for (at = 0; at < whole->tokens.count; at++) {
        if (end_of_name(whole, &whole->tokens, at, alert) > at) {
            return true;
        }
    }
    return false;
}

/* ---- The order ------------------------------------------------------------------------------ */

static const char *
text_from(const struct asked *whole, size_t at)
{
    const struct tokens *tokens = &whole->tokens;

    while (token_among(tokens, at, " : . , - ")) {
        at++;
    }
    return memory_copy(whole->arena,
                       at < tokens->count ? whole->text + tokens->list[at].start : "");
}

static struct staff_meant
meant_by_name(const struct asked *whole, const struct staff_order *order)
{
    struct staff_meant meant = {.rest = order->rest};
    const char *without;
    size_t end = order->next;

    meant.alert = named_from(whole, order->next, order->word == STAFF_MINE, &end);
    if (meant.alert == NULL) {
        return meant;
    }
    without = text_from(whole, end);
    if (order->word == STAFF_HAND && without[0] == '\0') {
        meant.alert = NULL; /* that is a colleague, to be asked of which alert */
        return meant;
    }
    meant.by_name = true;
    if (order->word == STAFF_HAND || without[0] == '\0' ||
        (order->word == STAFF_TALK && token_is(&whole->tokens, order->next, "to"))) {
        meant.rest = without;
    }
    return meant;
}

/* A word of the order, from token `at` on, stands in what staff are told of this alert. */
static bool
says_brief(const struct asked *whole, size_t at, const struct open_alert *alert)
{
    static const char tells_nothing[] = " no not with and or of the a in on under over for about "
                                        "still asked alert one i it is an if to my this "
                                        "that now please ";
    const struct tokens *tokens = &whole->tokens;
    struct tokens brief = tokens_read(whole->arena, alert->brief);
    size_t i;

    for (; at < tokens->count; at++) {
        for (i = 0; i < brief.count; i++) {
            if (brief.list[i].kind == TOKEN_WORD && token_is(tokens, at, brief.list[i].text) &&
                !token_among(tokens, at, tells_nothing)) {
                return true;
            }
        }
    }
    return false;
}

/* "MINE chest": the only one of which staff are told that. */
static const struct open_alert *
meant_by_brief(const struct asked *whole, size_t at)
{
    const struct context *context = whole->context;
    const struct open_alert *found = NULL;
    size_t i;

    for (i = 0; i < context->alert_count; i++) {
        if (says_brief(whole, at, &context->alerts[i])) {
            if (found != NULL) {
                return NULL;
            }
            found = &context->alerts[i];
        }
    }
    return found;
}

struct staff_meant
staff_meant(const struct asked *whole, const struct staff_order *order)
{
    const struct context *context = whole->context;
    struct staff_meant meant = {.rest = order->rest};

    if (order->has_number) {
        meant.alert = staff_numbered(context, order->number);
        return meant;
    }
    meant = meant_by_name(whole, order);
    if (meant.alert == NULL && order->word == STAFF_MINE) {
        meant.alert = meant_by_brief(whole, order->next);
    }
    if (meant.alert == NULL && (order->word != STAFF_TALK || context->alert_count == 1)) {
        meant.alert = staff_only_alert(context); /* words for a renter need to know for whom */
    }
    return meant;
}

/* ---- What waits for an answer --------------------------------------------------------------- */

bool
staff_meant_waits(const struct context *context)
{
    return context->role == SENDER_STAFF &&
           context->conversation.question == QUESTION_WHICH_RENTAL &&
           context->now_utc_s - context->conversation.asked_utc_s <= WAITS_S;
}

void
staff_meant_ask(const struct asked *whole, struct verdict *verdict)
{
    (void)open_question_ask(whole, verdict, QUESTION_WHICH_RENTAL);
}

void
staff_meant_close(struct verdict *verdict)
{
    if (verdict->conversation.question == QUESTION_WHICH_RENTAL) {
        open_question_close(verdict);
    }
}

const struct open_alert *
staff_only_named(const struct asked *whole, const char *around, bool *by_name)
{
    const struct tokens *tokens = &whole->tokens;
    const struct open_alert *alert = NULL;
    size_t at = 0, end;

    *by_name = true;
    while (at < tokens->count) {
        const struct token *token = &tokens->list[at];
        const struct open_alert *named = named_at(whole, tokens, at, &end);

        if (end == at && token->kind == TOKEN_NUMBER && token->thousandths % 1000 == 0) {
            named = staff_numbered(whole->context, token->thousandths / 1000);
            end = at + 1;
            *by_name = false;
        }
        if (end == at && token_among(tokens, at, around)) {
            at++;
        } else if (named == NULL || (alert != NULL && named != alert)) {
            return NULL;
        } else {
            alert = named;
            at = end;
        }
    }
    return alert;
}

/* "YES" to what may have been a slip. */
static bool
is_yes(const struct tokens *tokens)
{
    size_t at = 1;

    while (token_among(tokens, at, " . , ! please pls thanks ")) {
        at++;
    }
    return token_among(tokens, 0, " yes yep yeah y yess si ") && at >= tokens->count;
}

bool
staff_meant_answered(const struct asked *whole, struct asked *earlier, struct staff_order *order,
                     struct staff_meant *meant)
{
    const struct conversation *conversation = &whole->context->conversation;

    *meant = (struct staff_meant){.rest = ""};
    *order = (struct staff_order){.rest = ""};
    if (!staff_meant_waits(whole->context) || conversation->asked_about == NULL) {
        return false;
    }
    *earlier = *whole;
    earlier->text = conversation->asked_about;
    earlier->tokens = tokens_read(whole->arena, earlier->text);
    if (staff_order_read(earlier, 0, order)) {
        meant->alert = staff_only_named(whole, around_answer, &meant->by_name);
    } else if (is_yes(&whole->tokens) && staff_order_slipped(earlier, order)) {
        *meant = staff_meant(earlier, order);
    }
    meant->rest = order->rest;
    return meant->alert != NULL;
}
