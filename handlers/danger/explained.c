/*
 * What takes back, or explains, what was told before: "kidding. he parked on the hose", "the noise
 * of the fan i mean", "it goes away in a minute". Of such words nothing is made that they are only
 * like; what a phrase tells stays. And a cry for help, or what told nothing that can be named, was
 * none if they say now which thing they meant. A wish to die is not taken back by it.
 */
#include "found.h"
#include "persons.h"
#include "steps.h"

static const char kidding[] =
    "kidding|just kidding|only kidding|im kidding|i am kidding|was kidding|jk|j k|just joking|"
    "only joking|im joking|joking|es broma|era broma|broma|bromeo|estoy bromeando";
static const char meant[] = "i mean|i meant|meant|meaning|i was talking about|talking about|digo|"
                            "quise decir|quiero decir|me refiero|me referia|hablo de|hablaba de";
/* "It goes away in a minute", of nobody named. */
static const char passes[] =
    "goes away|passes|eases|eases up|eases off|gets better|settles|settles down|clears up|stops|"
    "se me pasa|se le pasa|se pasa|se quita|se me quita|se le quita|mejora";
static const char with_passes[] =
    " it this that always usually then and but soon after in within a an few couple of when i rest "
    "sit stop down though still minute minutes min mins second seconds sec secs moment while bit "
    "quick quickly right pretty fast just yes yeah oh ok okay on its own by itself "
    "un una unos unas minuto minutos ratito rato momento segundos en al a los las cuando me siento "
    "descanso sentarme y ya pronto rapido luego despues si solo sola siempre de ";
static const char things[] =
    " noise noises sound fan beep beeping beeps alarm hum humming machine unit concentrator weight "
    "heavy battery batteries bag cart cord hose tube tubing rental filter snow cold weather wifi "
    "traffic road stairs smell nose piece nosepiece cannula prongs canula puntas ruido ruidos "
    "pitido pita zumbido ventilador alarma maquina aparato "
    "equipo peso pesa pesado bateria bolsa manguera tubo frio nieve clima renta filtro ";
static const char grave[] =
    " pain pains hurt hurts hurting ache life living die dying died dead kill bleeding blood "
    "breathe breathing breath air chest head smoke smoking fire burning hot gas dolor duele vida "
    "vivir morir muero sangre sangra respirar aire pecho cabeza humo fuego quema caliente ";

bool
explained_passes(const struct asked *asked)
{
    struct tokens rest = tokens_without(asked->arena, &asked->tokens, passes);

    return rest.count < asked->tokens.count && !tokens_have(&rest, "?") &&
           tokens_words_among(&rest, with_passes);
}

bool
explained_takes_back(const struct tokens *tokens)
{
    enum { HEAD = 3 };
    size_t i;

    for (i = 0; i < tokens->count; i++) {
        size_t words = tokens_phrase_at(tokens, i, kidding);

        words = words > 0 ? words : tokens_phrase_at(tokens, i, meant);
        if (words > 0 && (i < HEAD || i + words == tokens->count)) {
            return true;
        }
    }
    return false;
}

bool
explained_jests(const struct tokens *tokens)
{
    enum { HEAD = 3 };
    size_t i;

    for (i = 0; i < HEAD; i++) {
        if (tokens_phrase_at(tokens, i, kidding) > 0) {
            return true;
        }
    }
    return false;
}

void
found_leave_out_explained(const struct asked *whole, struct found *found)
{
    bool passes_off = explained_passes(whole);
    size_t i = 0;

    if (!passes_off && !explained_takes_back(&whole->tokens)) {
        return;
    }
    while (i < found->count) {
        const struct sign_match *match = &found->list[i];

        /* what the text is like by itself is no jest */
        if (match->by_likeness && (passes_off || !found_alone(whole, match->sign->id))) {
            found_leave_out(found, match->sign->id);
        } else {
            i++;
        }
    }
}

bool
explained_told(const struct asked *asked)
{
    static const char *const vague[] = {"asks-emergency", "confusion", GRAVELY_ILL, "anxious"};
    static const char *const cry[] = {"asks-emergency"};
    static const char of_help[] = " ambulance ambulancia 911 hospital doctor medics paramedics cpr "
                                  "up wake floor call llamo ";
    const struct tokens *tokens = &asked->tokens;
    bool is_sure = asked->search.count > 0 && asked->search.sureness == SURE;
    bool asks = tokens_have(tokens, "how do i|how do we|how to|how can i|where do|where is|when do|"
                                    "como le|como se|como pongo|donde|cuando");

    if (!explained_takes_back(tokens) || !tokens_have(tokens, meant) ||
        tokens_any_among(tokens, 0, grave)) {
        return false;
    }
    return (found_alerted_only(asked, vague, sizeof vague / sizeof vague[0]) &&
            tokens_any_among(tokens, 0, things) && !tokens_any_among(tokens, 0, person_words)) ||
           (found_alerted_only(asked, cry, 1) && asks &&
            (is_sure || tokens_any_among(tokens, 0, things)) &&
            !tokens_any_among(tokens, 0, of_help));
}
