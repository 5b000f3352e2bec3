#include "this_moment.h"

enum { REACH = 6 };

/* "it was 90 percent now it is twenty to six" */
static bool
leads_to_clock(const struct items *items, size_t at)
{
    while (item_is(items, at, ITEM_NOW) || item_is(items, at, ITEM_NOW_IS) ||
           item_is(items, at, ITEM_LINK)) {
        at++;
    }
    return at < items->count && items->list[at].is == ITEM_CLOCK;
}

/* "I just looked and its two", "acabo de ver y marca 45" */
static bool
is_just_seen(const struct items *items, size_t charge)
{
    static const char looks[] = " looked checked peeked mire revise cheque ver fije vi ";
    size_t from = clause_start(items, charge);

    return (item_is(items, charge - 1, ITEM_NOW_IS) || item_is(items, charge - 1, ITEM_SHOWS)) &&
           items_have_word(items, from, charge, looks) &&
           items_have_word(items, from, charge, " just myself acabo acabamos ya ") &&
           items_find(items, from, charge, ITEM_CLOCK) == charge &&
           items_find(items, from, charge, ITEM_AGO) == charge;
}

/* "the power went at 2, its 2:40. The machine is at 51": told in a sentence of its own, of now */
static bool
is_where_it_stands(const struct items *items, size_t charge)
{
    static const char is[] = "machine is at|unit is at|battery is at|concentrator is at|"
                             "maquina esta en|maquina esta al|bateria esta en|bateria esta al|"
                             "pila esta en|pila esta al|aparato esta en|aparato esta al";
    size_t from = sentence_start(items, charge), to = sentence_end(items, charge), i;

    for (i = items->list[from].from; i < items->list[charge].from; i++) {
        if (i + tokens_phrase_at(items->tokens, i, is) == items->list[charge].from) {
            return items_find(items, from, to, ITEM_WAS) == to &&
                   items_find(items, from, to, ITEM_CLOCK) == to &&
                   items_find(items, from, to, ITEM_AGO) == to;
        }
    }
    return false;
}

/* "unplugged 2 hours ago, its at 40 now", "ahora marca 45": however long it has run */
bool
is_of_this_moment(const struct items *items, size_t charge)
{
    static const char now[] = " now ahora ahorita orita ";
    static const char between[] = " it its is at says say shows show reads marca dice va esta anda "
                                  "en al a the battery la lo pila bateria me on de como about only "
                                  "like just still solo nomas ya he she we i im are down to por ";
    size_t i = items->list[charge].from;

    if (is_just_seen(items, charge) || is_where_it_stands(items, charge)) {
        return true;
    }
    if ((token_among(items->tokens, items->list[charge].to, now) &&
         !leads_to_clock(items, charge + 1)) ||
        tokens_phrase_at(items->tokens, items->list[charge].to, "right now") > 0) {
        return true;
    }
    while (i > 0 && items->list[charge].from - i < REACH &&
           token_among(items->tokens, i - 1, between)) {
        i--;
    }
    return i > 0 && token_among(items->tokens, i - 1, now);
}
