/*
 * "84", "its 83", "ya va en 82" not long after an oximeter's value: they have measured again, for
 * nothing else was spoken of. What is said of a battery stays so, and so does what answers a
 * question of ours about one, or comes right after a charge that was told since.
 */
#include "bare_charge.h"
#include "lately.h"
#include "oximeter.h"
#include "persons.h"
#include "steps.h"

enum { CHARGE_GOES_ON_S = 600 };

/* We asked for a charge since then, and not what a number is that was told without a word. */
static bool
is_charge_asked_since(const struct asked *whole, int64_t told_utc_s)
{
    const struct conversation *conversation = &whole->context->conversation;
    struct asked about;

    if (asked_open_question(whole) != QUESTION_WHICH_CHARGE ||
        conversation->asked_utc_s <= told_utc_s) {
        return false;
    }
    if (conversation->asked_about == NULL) {
        return true;
    }
    about = asked_question(whole, conversation->asked_about, conversation->asked_utc_s);
    return !bare_percent_is_told(&about);
}

/* Since the value was told a battery was spoken of: the number is its charge. */
static bool
is_of_battery_since(const struct asked *whole, int64_t told_utc_s)
{
    const struct battery_account *account = whole->account;

    return is_charge_asked_since(whole, told_utc_s) ||
           (account != NULL && account->known && account->as_of_utc_s > told_utc_s &&
            whole->context->now_utc_s - account->as_of_utc_s <= CHARGE_GOES_ON_S);
}

int
measured_again(const struct asked *whole)
{
    int64_t told_utc_s = lately_reading_utc_s(whole->context);
    int percent;

    return told_utc_s > 0 && !is_of_battery_since(whole, told_utc_s) && !is_over_told(whole) &&
                   oximeter_read_again(whole->text, &percent)
               ? percent
               : 0;
}

/* "Sigue bajando", "still dropping", "its even lower now", and nothing else. */
static bool
tells_only_fall(const struct tokens *tokens)
{
    static const char falls[] = " dropping dropped drops falling falls fell down lower low sinking "
                                "bajando bajandole bajo baja bajan bajaron cayendo cae ";
    static const char around[] =
        " it its is the that number numbers reading readings level levels oxygen o2 sat sats keeps "
        "keep kept still going goes went gone go getting gets got even more much and now again oh "
        "my too very so really fast quickly slowly a lot bit little every each time minute help "
        "please pls hey hello going yes sigue siguen sigo esta le se me va van anda cada vez mas "
        "muy otra de nuevo ya ahora ahorita el la los lo numero numeros nivel lectura oxigeno "
        "saturacion y un poco poquito mucho aun todavia mi su rapido ayuda por favor oiga si esto ";
    size_t i =
        token_is(tokens, 0, "no") && token_among(tokens, 1, " sigue it its still keeps keep ! . , ")
            ? 1
            : 0;
    bool is_told = false;

    for (; i < tokens->count; i++) {
        bool is_fall = token_among(tokens, i, falls);

        if (tokens->list[i].kind != TOKEN_SIGN && !is_fall && !token_among(tokens, i, around) &&
            !token_among(tokens, i, person_words)) {
            return false;
        }
        is_told = is_told || is_fall;
    }
    return is_told;
}

/* "No le sube", "it wont come up". */
static bool
tells_no_rise(const struct tokens *tokens)
{
    enum { SHORT_TEXT = 10 };

    return tokens->count <= SHORT_TEXT &&
           tokens_have(tokens, "wont come up|wont go up|wont come back up|not coming up|"
                               "not going up|not coming back up|isnt coming up|isnt going up|"
                               "doesnt come up|doesnt go up|didnt come up|didnt go up|no sube|"
                               "no le sube|no me sube|no se le sube|no quiere subir|"
                               "no ha subido|no le ha subido");
}

bool
value_falls_told(const struct asked *whole)
{
    int64_t told_utc_s = lately_reading_utc_s(whole->context);

    return told_utc_s > 0 && !is_of_battery_since(whole, told_utc_s) &&
           (tells_only_fall(&whole->tokens) || tells_no_rise(&whole->tokens));
}
