#include "beside_part.h"

bool
is_slight(const struct items *items, size_t token)
{
    return token > 0 && token_among(items->tokens, token - 1,
                                    " hair smidge smidgen tad bit little touch shade whisker "
                                    "slightly just barely tick poco poquito pelo pelito tantito "
                                    "apenas algo ");
}

/* Words before a part: +1 above it, -1 below it, 0 neither; *first: their first token. */
static int
side_of_part(const struct items *items, size_t at, size_t *first)
{
    const struct tokens *tokens = items->tokens;
    size_t token = items->list[at].from;

    if (token > 0 && token_among(tokens, token - 1, " a the la un una ")) {
        token--; /* "over a third", "mas de la mitad" */
    }
    if (token > 1 && (token_among(tokens, token - 1, " than of de ") ||
                      token_among(tokens, token - 1, " to "))) {
        *first = token - 2;
        return token_among(tokens, token - 2, " more better north arriba mas encima ") ? 1
               : token_among(tokens, token - 2, " less south shy menos debajo abajo ") ? -1
                                                                                       : 0;
    }
    if (token > 0) {
        *first = token - 1;
        return token_among(tokens, token - 1, " over above past ") ? 1
               : token_among(tokens, token - 1, " under below ")   ? -1
                                                                   : 0;
    }
    return 0;
}

/* "a smidge over three quarters" is at least that, "less than a third" anything below. */
struct percent
beside_part(const struct items *items, size_t at, struct percent charge)
{
    size_t first = 0;
    int side = side_of_part(items, at, &first);

    if (side > 0) {
        charge.high = charge.high + BESIDE < 100 ? charge.high + BESIDE : 99;
    } else if (side < 0) {
        charge.low = is_slight(items, first) && charge.low > BESIDE ? charge.low - BESIDE : 0;
    }
    return charge;
}
