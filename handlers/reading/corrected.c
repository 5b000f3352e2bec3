/* What a correction is of: see corrected.h. */
#include "corrected.h"

/* "6 with the dinner", "6 con la cena": what a length grows by; "6 with 2 full" is none of it. */
bool
corrected_with_something(const struct items *items, size_t at)
{
    return token_among(items->tokens, items->list[at].to, " with con ") &&
           token_among(items->tokens, items->list[at].to + 1, " the a all my our la el los las ") &&
           !item_is(items, at + 3, ITEM_BATTERY) && !item_is(items, at + 3, ITEM_FULL) &&
           !item_is(items, at + 2, ITEM_BATTERY) && !item_is(items, at + 3, ITEM_POWER) &&
           !item_is(items, at + 2, ITEM_POWER);
}

/* Carries nothing between a correction and what is told now. */
static bool
is_light(const struct items *items, size_t at)
{
    return item_is(items, at, ITEM_LINK) || item_is(items, at, ITEM_CORRECT) ||
           item_is(items, at, ITEM_NOW_IS) || item_is(items, at, ITEM_HEDGE) ||
           item_is(items, at, ITEM_NOT) || item_is(items, at, ITEM_AT) ||
           item_is(items, at, ITEM_ARTICLE) || items->list[at].is == ITEM_STOP ||
           items->list[at].is == ITEM_PAUSE;
}

/* "3 hrs actually flying. I got a half one": the number is of what is told next. */
bool
corrected_is_next_sentence(const struct items *items, size_t correction, size_t number)
{
    size_t to = sentence_end(items, correction), i;

    if (items->list[number].one &&
        (item_is(items, number - 1, ITEM_HALF) || item_is(items, number - 1, ITEM_FULL) ||
         item_is(items, number - 1, ITEM_OTHER))) {
        return true;
    }
    for (i = correction; i < number && is_light(items, i); i++) {
    }
    return to < number && i < number;
}

/* "40 min there and 40 back, no, an hour back": the way back alone, told as a bare number. */
bool
corrected_way_back(struct items *items, size_t correction, size_t number)
{
    size_t back, i;

    for (i = correction; i > 0 && is_light(items, i - 1); i--) {
    }
    for (back = i; back > 0 && item_is(items, back - 1, ITEM_HOMEWARD); back--) {
    }
    if (back == i || back == 0 || items->list[back - 1].is != ITEM_NUMBER ||
        !(item_in(items, number, UNIT_MINUTE) || item_is(items, number + 1, ITEM_HOMEWARD))) {
        return false;
    }
    items->list[back - 1].spent = true;
    return true;
}

/* "unplugged 20 min ago at 100, no, 92": a charge, which stands nearer than the length. */
bool
corrected_is_charge(const struct items *items, size_t old, size_t correction)
{
    size_t i;

    for (i = old + 1; i < correction && item_in(items, old, UNIT_MINUTE); i++) {
        if (item_is(items, i, ITEM_FULL) ||
            (item_free_number(items, i) && items->list[i].value > 12 * 1000 &&
             items->list[i].value <= 100 * 1000 && !item_is(items, i + 1, ITEM_UNIT) &&
             !item_is(items, i + 1, ITEM_HOMEWARD))) {
            return true;
        }
    }
    return false;
}

/* "60 % on 2, sorry, 3": the setting, which stands nearer than the charge */
bool
corrected_is_setting(const struct items *items, size_t old, size_t correction, size_t number)
{
    size_t i;

    for (i = old + 1; i < correction && items->list[i].is != ITEM_NUMBER; i++) {
    }
    return i < correction && items->list[old].unit == UNIT_PERCENT &&
           items->list[number].value < 10 * 1000 && items->list[i].value < 10 * 1000;
}
