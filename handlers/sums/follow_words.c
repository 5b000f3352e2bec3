#include "follow_words.h"

#include "lexicon.h"

enum { LONGEST = 16 };

static const char courtesy[] = " oh ok okay hi hola ah uh um well bueno please por favor ";
static const char take_back[] =
    " mean meant make sorry wait actually rather instead oops correction "
    "perdon perdona disculpe disculpa digo quise mejor corrijo correccion "
    "equivoque ";
static const char beside_take_back[] = " i that it my bad decir me no lo ";
static const char go_on[] = " and but then or if y e o pero si entonces ";
static const char glue[] =
    " i we he she they it its im were shes hes theyre you that this the a an one ones is "
    "are was be on in at with for of to as while when only just about around "
    "if and then what how also gets goes does do have has still out up "
    "el la los las lo un una unos unas es son esta estan era en a al con de "
    "del que y si o ella ellos tal como cuando mientras solo nada mas se me "
    "le tiene tengo tenemos ahora take bring carry use llevo llevamos uso usamos needle dial gauge "
    "aguja manometro indica ";
static const char all_of_them[] =
    " all each every both they theyre them todas todos ambas ambos cada "
    "estan ";
static const char verbs_of_one[] =
    " is has shows says reads of only esta tiene marca trae dice de ";
static const char additions[] = " more extra further additional mas ";
static const char another[] = " another otra otro other ";
static const char persons[] = " he she im hes shes ella yo him her hers mine we i ";

/* Means nothing that could be told anew. */
static bool
is_little(enum item_is is)
{
    return is <= ITEM_WILL_BE || is == ITEM_HEDGE || is == ITEM_HEDGE_AFTER || is == ITEM_CORRECT ||
           is == ITEM_NOW || is == ITEM_NOW_IS || is == ITEM_WAS || is == ITEM_SHOWS ||
           is == ITEM_ALL || is == ITEM_EACH || is == ITEM_BOTH;
}

/* With these a text tells or asks something of its own. */
static bool
is_of_its_own(enum item_is is)
{
    return is == ITEM_UNKNOWN || is == ITEM_REMIND || is == ITEM_PRICE || is == ITEM_NAMED ||
           is == ITEM_EVENT || is == ITEM_CLAIM || is == ITEM_THEN_LEFT || is == ITEM_EARLIER;
}

static bool
is_of_battery(enum item_is is)
{
    return is == ITEM_BATTERY || is == ITEM_FULL || is == ITEM_LIGHT || is == ITEM_HALF;
}

/* A phrase that the lexicon knows; 0 if it does not, or it is of a text of its own. */
static size_t
known_phrase(const struct lexicon *lexicon, enum language language, const struct tokens *tokens,
             size_t at, struct follow_words *words)
{
    struct lexicon_found found = lexicon_at(lexicon, language, tokens, at);
    bool little = false;
    size_t i;

    for (i = 0; i < found.count; i++) {
        if (is_of_its_own(found.meanings[i]->is)) {
            return 0;
        }
        little = little || is_little(found.meanings[i]->is);
        words->corrects = words->corrects || found.meanings[i]->is == ITEM_CORRECT;
        words->of_battery = words->of_battery || is_of_battery(found.meanings[i]->is);
        words->of_one = words->of_one || found.meanings[i]->is == ITEM_ORDINAL ||
                        (found.meanings[i]->is == ITEM_OTHER && found.meanings[i]->value != 2);
        words->is_now = words->is_now || found.meanings[i]->is == ITEM_NOW;
    }
    words->has_thing = words->has_thing || (found.count > 0 && !little);
    return found.tokens;
}

/* Behind "at", "on", "en", over "flow" and the like. */
static bool
stands_at(const struct tokens *tokens, size_t at)
{
    return at > 0 && token_among(tokens, at - 1, " at on to en al a ");
}

/* How many tokens from `at` belong to such a text; 0 if that there does not. */
static size_t
take(const struct lexicon *lexicon, enum language language, const struct tokens *tokens, size_t at,
     struct follow_words *words)
{
    int thousandths;
    size_t taken = tokens_number(tokens, at, false, &thousandths);

    words->adds = words->adds || token_among(tokens, at, additions);
    words->another = words->another || token_among(tokens, at, another);
    words->person = words->person || (token_among(tokens, at, persons) &&
                                      !token_among(tokens, at + 1, " mean meant "));
    words->of_all =
        words->of_all || (token_among(tokens, at, all_of_them) &&
                          !(token_among(tokens, at, " them ") &&
                            token_among(tokens, tokens_back(at, 1), " of "))); /* "one of them" */
    words->of_one = words->of_one || (token_among(tokens, at, " one una ") &&
                                      token_among(tokens, at + 1, verbs_of_one));
    if (taken > 0) {
        words->numbers++;
        words->thousandths = thousandths;
        words->is_at = stands_at(tokens, at);
        return taken;
    }
    if (token_among(tokens, at, take_back)) {
        words->corrects = true;
        return 1;
    }
    if (tokens->list[at].kind == TOKEN_SIGN) {
        words->has_thing = words->has_thing || token_is(tokens, at, "%");
        return token_among(tokens, at, " , . ! ? % : - / ") ? 1 : 0;
    }
    taken = known_phrase(lexicon, language, tokens, at, words);
    if (taken > 0) {
        return taken;
    }
    return token_among(tokens, at, glue) || token_among(tokens, at, all_of_them) ||
                   token_among(tokens, at, additions) || token_among(tokens, at, another) ||
                   token_among(tokens, at, beside_take_back)
               ? 1
               : 0;
}

/* Where it begins, once greetings are over. */
static size_t
first_word(const struct tokens *tokens)
{
    size_t at = 0;

    while (at < tokens->count &&
           (token_among(tokens, at, courtesy) || tokens->list[at].kind == TOKEN_SIGN)) {
        at++;
    }
    return at;
}

static bool
begins_going_on(const struct tokens *tokens, size_t at)
{
    return token_among(tokens, at, go_on) ||
           (token_is(tokens, at, "what") && token_among(tokens, at + 1, " if about ")) ||
           (token_is(tokens, at, "how") && token_is(tokens, at + 1, "about")) ||
           (token_is(tokens, at, "que") && token_among(tokens, at + 1, " tal pasa "));
}

bool
follow_words_read(const struct lexicon *lexicon, enum language language,
                  const struct tokens *tokens, size_t but_at, struct follow_words *words)
{
    size_t at = first_word(tokens), taken;

    *words = (struct follow_words){.goes_on = begins_going_on(tokens, at),
                                   .denies = token_among(tokens, at, " no nope ")};
    if (tokens->count > LONGEST || at >= tokens->count) {
        return false;
    }
    for (at += words->denies ? 1 : 0; at < tokens->count; at += taken) {
        taken = at == but_at ? 1 : take(lexicon, language, tokens, at, words);
        if (taken == 0) {
            return false;
        }
    }
    return true;
}

/* The charge was told in percent and not in words. */
static bool
tells_percent(const struct tokens *tokens, const struct told *told)
{
    size_t i, c;
    int thousandths;

    for (i = 0; i < tokens->count; i++) {
        for (c = 0; c < told->charge_count; c++) {
            if (told->charges[c].low >= 5 && tokens_number(tokens, i, false, &thousandths) > 0 &&
                thousandths == told->charges[c].low * 1000) {
                return true;
            }
        }
    }
    return false;
}

static bool
all_are_alike(const struct told *told)
{
    size_t i;

    for (i = 1; i < told->charge_count; i++) {
        if (told->charges[i].low != told->charges[0].low ||
            told->charges[i].high != told->charges[0].high) {
            return false;
        }
    }
    return told->light_count == 0 && (told->charge_count == 0 || told->count == 0);
}

enum told_thing
follow_words_newest(const struct tokens *tokens, const struct told *told)
{
    enum told_thing newest = THING_NONE;
    int things = 0;

    if (told_batteries(told) > 0) {
        newest = !all_are_alike(told)          ? THING_SEVERAL
                 : tells_percent(tokens, told) ? THING_CHARGE
                                               : THING_COUNT;
        things++;
    }
    if (told->has_setting) {
        newest = THING_SETTING;
        things++;
    }
    if (told->leg_count > 0 || told->flight_minutes > 0) {
        newest = told->leg_count > 1 ? THING_SEVERAL : THING_LENGTH;
        things++;
    }
    if (told->has_ready_by) {
        newest = THING_TIME;
        things++;
    }
    if (told->psi > 0 || told->bar > 0 || told->flow_tenths > 0) {
        newest = THING_CYLINDER;
        things = 1;
    }
    return things > 1 ? THING_SEVERAL : newest;
}
