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

/* "unplugged 2 hours ago, its at 40 now", "ahora marca 45": however long it has run */
bool
is_of_this_moment(const struct items *items, size_t charge)
{
    static const char now[] = " now ahora ahorita orita ";
    static const char between[] = " it its is at says say shows show reads marca dice va esta anda "
                                  "en al a the battery la lo pila bateria me on de como about only "
                                  "like just still solo nomas ya he she we i im are down to por ";
    size_t i = items->list[charge].from;

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
