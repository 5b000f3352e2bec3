/*
 * A cry for help: a word for it, stretched, shouted or misspelt, with nothing beside it but to whom
 * and how soon: "HELP!!!!", "hep me", "can someone help". The carrier's keyword (consent.c) is the
 * one word and no more. Who cries may be in danger: in doubt it is a cry. The misspellings are
 * common practice, no source.
 */
#include <string.h>

#include "memory.h"
#include "steps.h"

/* As they are when each letter that stands several times in a row stands once. */
static const char english[] = " help hlp hep hepl hlep halp elp hekp helpme hrlp hwlp gelp jelp "
                              "helpmee h3lp hellp mayday ";
static const char spanish[] = " ayuda ayda ayuad aiuda aluda ayudame ayudeme ayudenme ayudenos "
                              "ayudanos aydenme aydame aydeme socoro auxilio ausilio ausxilio ";
/* The same asked of somebody: "alguien que me ayude". */
static const char asks_spanish[] = " ayude ayuden ayudar ";
static const char who[] = " someone somebody anyone anybody alguien ";

static const char beside[] =
    " please pls plz plez plees pleas god oh omg hey hi helo hola now right quick quickly fast "
    "hury asap can could wil need ned some sum someone somebody anyone anybody me us we i my mom "
    "mum mama dad papa por favor porfa porfavor ya ahora rapido pronto urgente dios necesito "
    "necesitamos alguien que no se y nos pueden puede podria podrian quien ";
/* And that without a word for help. */
static const char *const fears[] = {"im scared", "i am scared", "tengo miedo"};

/* Each letter once where it stands several times in a row: "heeelpp" is "help". */
static char *
unstretched(void *arena, const char *word)
{
    char *once = memory_copy(arena, word);
    size_t i, kept = 0;

    for (i = 0; word[i] != '\0'; i++) {
        if (kept == 0 || once[kept - 1] != word[i]) {
            once[kept++] = word[i];
        }
    }
    once[kept] = '\0';
    return once;
}

/* The text's words unstretched, its signs as they are. */
static struct tokens
read_unstretched(const struct asked *whole)
{
    char *text = memory_copy(whole->arena, "");
    size_t i;

    for (i = 0; i < whole->tokens.count; i++) {
        memory_append(&text, "%s%s", i > 0 ? " " : "",
                      unstretched(whole->arena, whole->tokens.list[i].text));
    }
    return tokens_read(whole->arena, text);
}

/* "HELP!", "help...", "help" with a picture; but not "help.", nor the word in quotes. */
static bool
is_marked(const struct tokens *tokens)
{
    static const char plain[] = " . ? , \" ' ";
    size_t i, signs = 0;

    for (i = 0; i < tokens->count; i++) {
        if (tokens->list[i].kind == TOKEN_SIGN) {
            if (!token_among(tokens, i, plain)) {
                return true;
            }
            signs += token_among(tokens, i, " . ? ");
        }
    }
    return signs > 1;
}

/* The carrier's word as it is written, with no mark: that is what it asks for. */
static bool
is_bare_keyword(const struct tokens *tokens)
{
    size_t i, words = 0;

    for (i = 0; i < tokens->count; i++) {
        words += tokens->list[i].kind != TOKEN_SIGN;
    }
    return words == 1 && tokens_words_among(tokens, " help ayuda ") && !is_marked(tokens);
}

static bool
tells_fear(const struct asked *whole)
{
    size_t i;

    for (i = 0; i < sizeof fears / sizeof fears[0]; i++) {
        struct tokens rest = tokens_without(whole->arena, &whole->tokens, fears[i]);

        if (rest.count < whole->tokens.count && tokens_words_among(&rest, " ")) {
            return true;
        }
    }
    return false;
}

bool
cry_told(const struct asked *whole, bool *is_spanish)
{
    enum { WORDS_MAX = 9 };
    struct tokens tokens = read_unstretched(whole);
    bool in_spanish = tokens_any_among(&tokens, 0, spanish);
    bool of_somebody =
        tokens_any_among(&tokens, 0, asks_spanish) && tokens_any_among(&tokens, 0, who);
    size_t i, words = 0;

    *is_spanish = in_spanish || of_somebody || token_is(&whole->tokens, 0, "tengo");
    if (tells_fear(whole)) {
        return true;
    }
    if (is_bare_keyword(&whole->tokens) ||
        !(in_spanish || of_somebody || tokens_any_among(&tokens, 0, english))) {
        return false;
    }
    for (i = 0; i < tokens.count; i++) {
        bool is_cry = token_among(&tokens, i, english) || token_among(&tokens, i, spanish) ||
                      (of_somebody && token_among(&tokens, i, asks_spanish));

        words += tokens.list[i].kind == TOKEN_WORD;
        if (tokens.list[i].kind == TOKEN_NUMBER ||
            (tokens.list[i].kind == TOKEN_WORD && !is_cry && !token_among(&tokens, i, beside))) {
            return false;
        }
    }
    return words <= WORDS_MAX;
}
