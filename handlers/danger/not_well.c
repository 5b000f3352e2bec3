#include "not_well.h"

static const char persons[] =
    " i im he hes she shes they theyre we were me mom mum mother dad father papa mama grandma "
    "grandpa nana husband wife son daughter he's she's my myself estoy estamos ando andamos sigo "
    "yo el ella mi mami papi abuela abuelo esposo esposa marido mujer hijo hija suegra suegro ";
static const char denies[] = " not no isnt aint arent dont doesnt nada never ";
static const char between[] =
    " am is are be been do doing feel feeling feels felt really so very too "
    "all that at quite exactly esta estoy estan ando anda andamos "
    "estamos me se siente siento sentimos nos muy tan del todo ";
/* Of a person alone, and of whatever is spoken of. */
static const char well[] = " ok okay k fine alright allright well bien ";
static const char good_or_right[] = " good great right ";
static const char may_follow[] =
    " . , ! ; right now today anymore tonight please help and but i he she "
    "nada hoy ya ahora ahorita y pero por ayuda ayudeme ayudenme send "
    "since desde again ";
/* All that may stand beside it where nobody is named. */
static const char around[] =
    " not no ok okay fine alright well bien am is at all really so very too doing feeling do feel "
    "now today anymore please help me muy nada hoy ya ahora ahorita del todo esta ayuda ayudeme "
    "ayudenme por favor nope oh hi hello hey sorry lo siento actually pues ";

/* Behind the denial at `at` and what may stand between; 0 if no such word is there. */
static size_t
behind_well(const struct tokens *tokens, size_t at, const char *words)
{
    size_t next = at + 1;

    while (token_among(tokens, next, between)) {
        next++;
    }
    return token_among(tokens, next, words) ? next + 1 : 0;
}

/* "Mom is not ok": whoever it is stands right before the denial. */
static bool
is_of_person(const struct tokens *tokens, size_t at, size_t behind)
{
    static const char links[] = " am is are was do does really just still so ya ";
    static const char by_verb[] = " estoy estamos ando andamos siento sentimos sigo ";

    if (tokens_between_among(tokens, at, behind, by_verb)) {
        return true;
    }
    while (at > 0 && token_among(tokens, at - 1, links)) {
        at--;
    }
    return at > 0 && token_among(tokens, at - 1, persons);
}

bool
not_well_told(const struct tokens *tokens)
{
    static const char ill[] = "estoy mal|estoy muy mal|estamos mal|ando mal|ando muy mal|sigo mal";
    size_t i, behind;

    for (i = 0; i < tokens->count; i++) {
        behind = i + tokens_phrase_at(tokens, i, ill);
        if (behind > i && (i == 0 || !token_among(tokens, i - 1, denies)) &&
            (behind >= tokens->count || token_among(tokens, behind, may_follow))) {
            return true;
        }
        if (!token_among(tokens, i, denies)) {
            continue;
        }
        behind = behind_well(tokens, i, well);
        if (behind > 0 && tokens_words_among(tokens, around) && !tokens_have(tokens, "?")) {
            return true;
        }
        behind = behind > 0 ? behind : behind_well(tokens, i, good_or_right);
        if (behind > 0 && is_of_person(tokens, i, behind) &&
            (behind >= tokens->count || token_among(tokens, behind, may_follow))) {
            return true;
        }
    }
    return false;
}
