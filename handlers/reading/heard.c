#include "heard.h"

#include <string.h>

/* Nothing of the sentence part follows. */
static bool
ends_part(const struct tokens *tokens, size_t at)
{
    return at >= tokens->count || token_among(tokens, at, " . , ; ! ? and but how ");
}

/* "set on too", ". on to", "im on too": where one stands, and no "the other is on too". */
static bool
is_on(const struct tokens *tokens, size_t at)
{
    return token_is(tokens, at, "on") &&
           (at == 0 || token_among(tokens, at - 1, " . , ; ! ? im hes shes set got its and "));
}

/* The number that a word sounds like; 0 for none. */
static int
sounds_like(const struct tokens *tokens, size_t at)
{
    return token_among(tokens, at, " to too ")      ? 2
           : token_is(tokens, at, "for")            ? 4
           : token_among(tokens, at, " tree free ") ? 3
           : token_is(tokens, at, "won")            ? 1
                                                    : 0;
}

/* "pulse to.", "setting for, how long", "on too". */
static void
number_by_sound(struct tokens *tokens, size_t at)
{
    int number = sounds_like(tokens, at);
    struct token *token = &tokens->list[at];
    bool led = at > 0 && token_among(tokens, at - 1, " pulse setting continuous liter level ");

    if (number == 0 || !ends_part(tokens, at + 1) ||
        !(led || (at > 0 && number == 2 && is_on(tokens, at - 1))) ||
        (at > 1 && token_among(tokens, at - 2, " what which "))) {
        return;
    }
    token->kind = TOKEN_NUMBER;
    token->thousandths = number * 1000;
    token->text = number == 1 ? "1" : number == 2 ? "2" : number == 3 ? "3" : "4";
}

/* "eighty too percent", "fifty for and one full": units behind tens */
static bool
is_behind_tens(const struct tokens *tokens, size_t at)
{
    return at > 0 &&
           token_among(tokens, at - 1, " twenty thirty forty fifty sixty seventy eighty ninety ") &&
           (at + 1 >= tokens->count || token_among(tokens, at + 1, " percent % and . , "));
}

/* "I have won battery", "and to more": a number of batteries */
static bool
counts_batteries(const struct tokens *tokens, size_t at)
{
    static const char leads[] = " have has got with and plus the only just , ";

    if (at == 0 || !token_among(tokens, at - 1, leads)) {
        return false;
    }
    return token_is(tokens, at, "won")
               ? token_among(tokens, at + 1, " battery batt pack light bar full ")
               : token_among(tokens, at + 1, " more batteries batts packs spares ");
}

/* The numbers of a voice that was written down, where they are part of a greater one or count. */
static void
number_of_voice(struct tokens *tokens, size_t at)
{
    static const char *const words[] = {NULL, "one", "two", "three", "four"};
    int number = sounds_like(tokens, at);

    if (token_is(tokens, at, "ate") && token_among(tokens, at + 1, " percent % ")) {
        tokens->list[at].text = "eight";
        return;
    }
    if (number > 0 && (is_behind_tens(tokens, at) || counts_batteries(tokens, at))) {
        tokens->list[at].text = words[number];
    }
}

static void
short_form(enum language language, struct token *token)
{
    static const struct {
        enum language of;
        const char *typed, *meant;
    } forms[] = {
        {LANGUAGE_ES, "q", "que"},       {LANGUAGE_ES, "k", "que"},
        {LANGUAGE_ES, "ke", "que"},      {LANGUAGE_ES, "pa", "para"},
        {LANGUAGE_ES, "tmb", "tambien"}, {LANGUAGE_ES, "xq", "porque"},
        {LANGUAGE_ES, "pq", "porque"},   {LANGUAGE_ES, "toy", "estoy"},
        {LANGUAGE_ES, "ta", "esta"},     {LANGUAGE_ES, "tan", "estan"},
        {LANGUAGE_EN, "u", "you"},       {LANGUAGE_EN, "ur", "your"},
        {LANGUAGE_EN, "abt", "about"},   {LANGUAGE_EN, "bfore", "before"},
        {LANGUAGE_EN, "b4", "before"},   {LANGUAGE_EN, "frm", "from"},
    };
    size_t i;

    for (i = 0; i < sizeof forms / sizeof forms[0]; i++) {
        struct tokens one = {.list = token, .count = 1};

        if (forms[i].of == language && token->kind == TOKEN_WORD &&
            token_is(&one, 0, forms[i].typed)) {
            token->text = forms[i].meant;
            return;
        }
    }
}

/* "a pulse of 2": no heart beats so slow, so that it is a setting. */
static void
pulse_of_setting(struct tokens *tokens, size_t at)
{
    if (at > 1 && tokens->list[at].kind == TOKEN_NUMBER && tokens->list[at].thousandths <= 6000 &&
        token_among(tokens, at - 1, " of is at ") && token_is(tokens, at - 2, "pulse") &&
        !token_among(tokens, at + 1, " : % percent liters ")) {
        tokens->list[at - 1].text = "setting";
    }
}

/* "how long dos a full one last": no Spanish two; but "dos a la mitad" in a text that is taken for
 * English is, and "dos full" may be. */
static void
short_does(struct tokens *tokens, size_t at)
{
    bool leads =
        token_among(tokens, at + 1, " an the it this that my each one they these her his your ") ||
        (token_is(tokens, at + 1, "a") &&
         !token_among(tokens, at + 2, " la las el los lo media mitad tope un una "));

    if (token_is(tokens, at, "dos") &&
        (leads || token_among(tokens, tokens_back(at, 1),
                              " how hw long lng hours hrs hour time much when wen what wat "))) {
        tokens->list[at].text = "does";
    }
}

/* "we'll be there 3 hours": no "well, 3 hours"; "we'd be gone": no Wednesday */
static void
short_will(struct token *token)
{
    if (token->kind == TOKEN_WORD &&
        (strcmp(token->text, "well") == 0 || strcmp(token->text, "wed") == 0) &&
        token->end - token->start > strlen(token->text)) {
        token->text = "we";
    }
}

void
heard_put_right(enum language language, struct tokens *tokens)
{
    size_t at;

    for (at = 0; at < tokens->count; at++) {
        short_form(language, &tokens->list[at]);
        if (language == LANGUAGE_EN) {
            number_of_voice(tokens, at);
            pulse_of_setting(tokens, at);
            number_by_sound(tokens, at);
            short_does(tokens, at);
            short_will(&tokens->list[at]);
        }
    }
}
