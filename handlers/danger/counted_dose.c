/*
 * "I took 10", "se tomo seis", "actually it was the whole bottle" not long after a question about a
 * medicine: what was taken is not named again, and so many of anything are too many. One or two may
 * be what is prescribed, so that they are answered like the question, unless they were a mistake.
 * Who asks for poison control has somebody who swallowed something, whatever was spoken of before.
 */
#include "lately.h"
#include "steps.h"

enum { SHORT_TEXT = 14, REACH = 4, TOO_MANY = 3, THOUSAND = 1000 };

static const char takes[] = " take took taken takes taking swallowed gave given gives had has ate "
                            "popped drank tome tomo tomado tomaron tomamos trago trague tragado "
                            "dio di dieron dado comio ";
/* What may stand between that and the number. */
static const char between[] = " like about around maybe him her them it already just at least "
                              "almost over another all of the como unas unos ya casi mas de por lo "
                              "menos otras otros le , ";
/* A number before one of these counts no pills. */
static const char other_units[] =
    " min mins minute minutes minutos hour hours hr hrs hora horas h am pm day days dia dias week "
    "weeks semanas month months meses year years anos times veces mg mcg ml milligrams miligramos "
    "g liters liter litros lpm percent % steps pasos pounds lbs miles feet batteries battery packs "
    "baterias pilas tanks tanques photos pictures : / ";
static const char all_of_it[] =
    "whole bottle|whole box|whole pack of|whole thing|entire bottle|whole week|all of them|"
    "all of it|all the pills|rest of them|a handful|a bunch|a whole lot|way too many|too many|"
    "way too much|too much|double the|twice the|frasco entero|todo el frasco|toda la caja|"
    "todo el bote|todas las pastillas|todas juntas|se las tomo todas|me las tome todas|un monton|"
    "un puno|demasiadas|de mas|el doble|half the bottle|half a bottle|half of them|half the box|"
    "bottle is empty|empty bottle|bottle is gone|a dozen|them all|are missing|pills missing|"
    "medio frasco|media caja|frasco vacio|frasco esta vacio|acabo el frasco|una docena|faltan";
static const char by_mistake[] = "mistake|accident|accidentally|error|extra|twice|again|forgot|"
                                 "equivoco|equivoque|accidente|sin querer|dos veces";
static const char poison_control[] =
    "poison control|poison center|poison centre|poison line|poison hotline|poison number|"
    "control de envenenamiento|centro de envenenamiento|centro de toxicologia|toxicologia|"
    "linea de envenenamiento";

/* So many were taken: 0 if no number is told of it. */
static int
count_taken(const struct tokens *tokens)
{
    size_t at, i, taken;
    int most = 0, thousandths;

    for (at = 0; at < tokens->count; at++) {
        if (!token_among(tokens, at, takes) ||
            (at > 0 && token_among(tokens, at - 1, " it that which this "))) {
            continue; /* "it took 5 calls" */
        }
        for (i = at + 1; i <= at + REACH && i < tokens->count; i++) {
            taken = tokens_number(tokens, i, false, &thousandths);
            if (taken > 0) {
                most = !token_among(tokens, i + taken, other_units) && thousandths / THOUSAND > most
                           ? thousandths / THOUSAND
                           : most;
                break;
            }
            if (!token_among(tokens, i, between)) {
                break;
            }
        }
    }
    return most;
}

enum dose
counted_dose_told(const struct asked *whole)
{
    static const char *const ids[] = {"medicines", "poison"};
    const struct tokens *tokens = &whole->tokens;
    int count = count_taken(tokens);

    if (tokens->count > SHORT_TEXT || whole->context->role == SENDER_STAFF) {
        return DOSE_NONE;
    }
    if (tokens_have(tokens, poison_control) &&
        !tokens_have(tokens, "i was a|used to|plants|dog|cat")) {
        return DOSE_TOO_MUCH;
    }
    if (lately_alerted_utc_s(whole->context, ids, sizeof ids / sizeof ids[0]) == 0) {
        return DOSE_NONE;
    }
    if (count >= TOO_MANY || (count == TOO_MANY - 1 && tokens_have(tokens, by_mistake)) ||
        tokens_have(tokens, all_of_it)) {
        return DOSE_TOO_MUCH;
    }
    return count > 0 ? DOSE_USUAL : DOSE_NONE;
}
