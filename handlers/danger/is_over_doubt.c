/*
 * What sounds as if it were over, and may tell the contrary: that it happened once more, when it
 * began ("just woke up with it"), or that somebody came of whom nobody knows who ("they're here",
 * after no word of an ambulance), or that whoever writes is well, where it was told of another.
 * Then the emergency stays open, and is spoken to.
 */
#include "found.h"
#include "is_over_words.h"
#include "steps.h"

static const char woke[] = "woke up|woke|desperto|desperte";
static const char who_woke[] = " i he she it we just only now this morning ya se me el ella apenas "
                               "recien mom dad mi papa mama ";
/* What somebody wakes up with is not over. */
static const char with_it[] = "with it|with this|with that|with the same|with these|like it|"
                              "like this|like that|this way|that way|feeling|to it|to this|con eso|"
                              "con esto|con lo mismo|con el|con la|con los|asi|igual|sintiendo|"
                              "sintiendome|sintiendose";
/* To wake up is good news of these. */
static const char *const of_not_waking[] = {"unresponsive", "confusion", "seizure", "alcohol",
                                            "poison",       "self-harm", "choking", "head-injury",
                                            "low-reading",  "bad-gas"};

static bool
tells_when_it_began(const struct asked *asked)
{
    enum { NEAR = 3 };
    const struct tokens *tokens = &asked->tokens;
    struct tokens rest;
    size_t i, at, words;

    for (i = 0; i < tokens->count; i++) {
        words = tokens_phrase_at(tokens, i, woke);
        for (at = i + words; words > 0 && at < i + words + NEAR; at++) {
            if (tokens_phrase_at(tokens, at, with_it) > 0) {
                return true;
            }
        }
    }
    rest = tokens_without(asked->arena, tokens, woke);
    return rest.count < tokens->count && tokens_words_among(&rest, who_woke) &&
           !found_alerted_of(asked->context, of_not_waking,
                             sizeof of_not_waking / sizeof of_not_waking[0]);
}

bool
is_over_may_be_others(const struct asked *asked)
{
    static const char they_came[] = "they are here|theyre here|they r here|they came|they arrived|"
                                    "they got here|they are here now|ya llegaron|ya estan aqui|"
                                    "llegaron|estan aqui|aqui estan";
    static const char beside[] = " yes yep ok okay and now already finally just here oh phew they "
                                 "thank thanks you so much god si ya aqui gracias a dios por fin ";
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, they_came);

    return open_emergency_stands(asked->context) && rest.count < asked->tokens.count &&
           tokens_words_among(&rest, beside) &&
           !found_alerted_because(asked->context, CALLED_REASON);
}

/* "Ya le paso otra vez": it happened once more. */
static bool
is_told_once_more(const struct tokens *tokens)
{
    return tokens_have(tokens, "ya le paso|ya me paso|le paso") &&
           tokens_have(tokens, "otra vez|de nuevo|nuevamente|again");
}

/* "Im alright", of an emergency that was told of somebody else. */
static bool
is_only_writer_well(const struct asked *asked)
{
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, WRITER_WELL);

    return rest.count < asked->tokens.count && is_over_was_of_another(asked) &&
           !tokens_have(&rest, PERSON_AGAIN "|" DOES_AGAIN "|" WAS_NONE "|" SURELY "|" OF_ALERT
                                            "|" FOUND_AGAIN) &&
           !tokens_have(&rest, help_there);
}

bool
is_over_in_doubt(const struct asked *asked)
{
    return is_told_once_more(&asked->tokens) || is_over_may_be_others(asked) ||
           (open_emergency_stands(asked->context) &&
            (tells_when_it_began(asked) || is_only_writer_well(asked)));
}
