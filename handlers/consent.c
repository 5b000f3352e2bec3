/*
 * Consent keywords, alone in a text (47 CFR 64.1200(a)(10); CTIA Messaging Principles and Best
 * Practices, May 2023, with the Spanish words in common use). Case, blanks and punctuation do not
 * count. "When does my rental end" is no keyword.
 */
#include <string.h>

#include "memory.h"
#include "say.h"
#include "steps.h"

enum keyword { KEYWORD_NONE, KEYWORD_STOP, KEYWORD_START, KEYWORD_HELP, KEYWORD_INFO };

enum { KEYWORD_WORDS_MAX = 5 };

enum {
    ANSWERS_QUESTION = 1, /* a question of ours that is open comes first */
    SPANISH = 2           /* one word tells the language, whatever the record says */
};

static const struct keyword_row {
    const char *words;
    enum keyword keyword;
    int flags;
} keywords[] = {
    {"stop", KEYWORD_STOP, 0},
    {"stopall", KEYWORD_STOP, 0},
    {"stop all", KEYWORD_STOP, 0},
    {"unsubscribe", KEYWORD_STOP, 0},
    {"cancel", KEYWORD_STOP, ANSWERS_QUESTION},
    {"end", KEYWORD_STOP, ANSWERS_QUESTION},
    {"quit", KEYWORD_STOP, 0},
    {"revoke", KEYWORD_STOP, 0},
    {"opt out", KEYWORD_STOP, 0},
    {"optout", KEYWORD_STOP, 0},
    {"opt - out", KEYWORD_STOP, 0},
    {"remove", KEYWORD_STOP, 0},
    {"parar", KEYWORD_STOP, SPANISH},
    {"alto", KEYWORD_STOP, SPANISH},
    {"cancelar", KEYWORD_STOP, ANSWERS_QUESTION | SPANISH},
    {"baja", KEYWORD_STOP, SPANISH},
    {"no mas", KEYWORD_STOP, SPANISH},
    {"please stop", KEYWORD_STOP, 0},
    {"stopp", KEYWORD_STOP, 0}, /* slips */
    {"sotp", KEYWORD_STOP, 0},
    {"stpo", KEYWORD_STOP, 0},
    {"unsuscribe", KEYWORD_STOP, 0},
    {"unsubcribe", KEYWORD_STOP, 0},
    {"stop please", KEYWORD_STOP, 0},
    {"start", KEYWORD_START, 0},
    {"yes", KEYWORD_START, ANSWERS_QUESTION},
    {"unstop", KEYWORD_START, 0},
    {"empezar", KEYWORD_START, SPANISH},
    {"si", KEYWORD_START, ANSWERS_QUESTION | SPANISH},
    {"help", KEYWORD_HELP, 0},
    {"ayuda", KEYWORD_HELP, SPANISH},
    {"info", KEYWORD_INFO, 0},
};

/* The words of the text, one blank between; NULL if they are too many for a keyword. */
static char *
words_alone(const struct asked *whole)
{
    char *words = memory_copy(whole->arena, "");
    size_t count = 0, i;

    for (i = 0; i < whole->tokens.count; i++) {
        if (whole->tokens.list[i].kind == TOKEN_SIGN) {
            continue;
        }
        if (++count > KEYWORD_WORDS_MAX) {
            return NULL;
        }
        memory_append(&words, "%s%s", count == 1 ? "" : " ", whole->tokens.list[i].text);
    }
    return words;
}

/* NULL if the text is no keyword. */
static const struct keyword_row *
keyword_alone(const struct asked *whole)
{
    bool question_open = asked_open_question(whole) != QUESTION_NONE;
    const char *words = words_alone(whole);
    size_t i;

    for (i = 0; words != NULL && i < sizeof keywords / sizeof keywords[0]; i++) {
        if (strcmp(words, keywords[i].words) == 0) {
            return question_open && (keywords[i].flags & ANSWERS_QUESTION) != 0 ? NULL
                                                                                : &keywords[i];
        }
    }
    return NULL;
}

static char *
say_consent(const struct asked *whole, const struct verdict *verdict, enum phrase phrase)
{
    return say(whole->arena, whole->context->house, verdict->language, phrase, NULL);
}

static struct answer *
add(const struct asked *whole, struct verdict *verdict, enum route route, const char *id,
    enum phrase phrase)
{
    struct answer *answer = verdict_add(verdict, ANSWER_CONSENT, route, id);

    answer->text = say_consent(whole, verdict, phrase);
    return answer;
}

static void
opt_out(const struct asked *whole, struct verdict *verdict)
{
    if (whole->context->conversation.opted_out) {
        /* One confirmation, and nothing after it. */
        verdict_add(verdict, ANSWER_CONSENT, ROUTE_CONSENT, "out");
        return;
    }
    add(whole, verdict, ROUTE_CONSENT, "out", SAY_OPTED_OUT);
    verdict->consent = CONSENT_OUT;
    verdict->conversation.opted_out = true;
    verdict->conversation_changed = true;
    if (asked_is_active_renter(whole)) {
        verdict_alert(verdict, ALERT_OFFICE, false, "consent:out", "wants no texts");
    }
}

static void
opt_in(const struct asked *whole, struct verdict *verdict)
{
    add(whole, verdict, ROUTE_CONSENT, "in", SAY_OPTED_IN);
    verdict->consent = CONSENT_IN;
    verdict->conversation.opted_out = false;
    verdict->conversation_changed = true;
}

/* A carrier's HELP asks who we are; from somebody on oxygen it may be a cry for help as well. */
static void
help(const struct asked *whole, struct verdict *verdict, bool may_be_danger)
{
    struct answer *answer = add(whole, verdict, ROUTE_CONSENT, "help", SAY_HELP);

    if (may_be_danger) {
        answer->text = memory_format(whole->arena, "%s %s",
                                     say_consent(whole, verdict, SAY_STAFF_ALERTED), answer->text);
        verdict_alert(verdict, ALERT_URGENT, true, "help", "texted HELP");
    }
    answer->text = memory_format(whole->arena, "%s %s", say_consent(whole, verdict, SAY_IN_DANGER),
                                 answer->text);
}

/* Said in so many words it counts as the keyword; said among other things the rest is served, and
 * the keyword is told beside it. */
static bool
opt_out_in_own_words(const struct asked *whole, struct verdict *verdict)
{
    if (opt_out_is_said(&whole->tokens)) {
        opt_out(whole, verdict);
        return true;
    }
    if (!whole->context->conversation.opted_out && opt_out_may_be_meant(&whole->tokens)) {
        add(whole, verdict, ROUTE_CONSENT, "out-how", SAY_HOW_TO_STOP);
    }
    return false;
}

/* A cry for help: who we are and how to stop is said only to the keyword, shouted, and nothing if a
 * sign has been answered. */
static bool
cry(const struct asked *whole, bool is_keyword, struct verdict *verdict)
{
    bool is_spanish;
    struct answer *answer;

    if (!cry_told(whole, &is_spanish)) {
        return false;
    }
    verdict->language = is_spanish ? LANGUAGE_ES : LANGUAGE_EN;
    verdict_alert(verdict, open_emergency_is(whole->context) ? ALERT_EMERGENCY : ALERT_URGENT, true,
                  "help", "cries for help");
    if (verdict->answer_count == 0) {
        answer = add(whole, verdict, ROUTE_STAFF, "help", is_keyword ? SAY_HELP : SAY_CRY);
        answer->text =
            memory_format(whole->arena, "%s %s %s", say_consent(whole, verdict, SAY_IN_DANGER),
                          say_consent(whole, verdict, SAY_STAFF_ALERTED), answer->text);
    }
    return true;
}

bool
consent_decide(const struct asked *whole, struct verdict *verdict)
{
    const struct keyword_row *row = keyword_alone(whole);

    if (cry(whole, row != NULL && row->keyword == KEYWORD_HELP, verdict)) {
        return true;
    }
    if (row != NULL && (row->flags & SPANISH) != 0) {
        verdict->language = LANGUAGE_ES;
    }
    switch (row != NULL ? row->keyword : KEYWORD_NONE) {
    case KEYWORD_STOP:
        opt_out(whole, verdict);
        return true;
    case KEYWORD_START:
        if (!whole->context->conversation.opted_out) {
            return false; /* opting in is only possible from opted out */
        }
        opt_in(whole, verdict);
        return true;
    case KEYWORD_HELP:
        help(whole, verdict, asked_is_active_renter(whole) || whole->context->alert_count > 0);
        return true;
    case KEYWORD_INFO:
        help(whole, verdict, false);
        return true;
    case KEYWORD_NONE:
        break;
    }
    return opt_out_in_own_words(whole, verdict);
}
