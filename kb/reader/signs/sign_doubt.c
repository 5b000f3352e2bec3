#include "sign_doubt.h"

#include <string.h>

enum {
    NEGATION_REACH = 5,
    LIST_REACH = 4,
    PAST_REACH = 4,     /* words between the complaint and its time */
    PAST_WEIGHTY = 2,   /* of these, those that carry a meaning of their own: "here two" */
    PAST_UNIT_REACH = 3 /* between "last" or "ago" and the stretch of time */
};

/* True if "or" stands between the negation and a little after the complaint: one list of things
 * that are not there. */
static bool
is_in_list(const struct heard *heard, int negation, int last)
{
    int sentence = heard->list[last].sentence, i;

    for (i = negation + 1; i <= last + LIST_REACH && i < (int)heard->count; i++) {
        if (heard->list[i].sentence == sentence && (heard->list[i].roles & ROLE_OR) != 0) {
            return true;
        }
    }
    return false;
}

/* "no" can also be an answer: "no my chest hurts", "no cant breathe". */
static bool
is_answer(const struct heard *heard, int negation)
{
    const struct heard_word *word = &heard->list[negation];
    const struct heard_word *next = word + 1; /* what is taken back comes after it */

    return word->text[0] == 'n' && word->text[1] == 'o' && word->text[2] == '\0' &&
           (next->roles & (ROLE_PERSON | ROLE_UNABLE)) != 0;
}

/* True if a negation before the word at `index` takes it back; does not look before `from`. */
static bool
is_negated(const struct heard *heard, int index, int from, int last)
{
    int i;

    for (i = index - 1; i >= from && i >= index - NEGATION_REACH; i--) {
        const struct heard_word *word = &heard->list[i];

        if (word->sentence != heard->list[index].sentence || (word->roles & ROLE_BUT) != 0) {
            return false;
        }
        if (heard->list[i + 1].comma_before && !is_in_list(heard, i, last)) {
            return false;
        }
        if ((word->roles & ROLE_NEGATION) != 0) {
            return !is_answer(heard, i);
        }
        if ((word->roles & (ROLE_THROUGH | ROLE_OR)) == 0 &&
            !(word->meaning_count > 0 && is_in_list(heard, i, last))) {
            return false;
        }
    }
    return false;
}

bool
is_taken_back(const struct heard *heard, const int *indexes, int count)
{
    int last = indexes[count - 1], k;
    bool has_own = false;

    for (k = 0; k < count; k++) {
        int from = k == 0 ? 0 : indexes[k - 1] + 1;

        has_own |= (heard->list[indexes[k]].roles & (ROLE_NEGATION | ROLE_UNABLE)) != 0;
        /* "no sabe ni que dia es", "hardly get no air": a second no only strengthens the first */
        if (!has_own && is_negated(heard, indexes[k], from, last)) {
            return true;
        }
    }
    return false;
}

/* ---- Times long past ----------------------------------------------------------------------- */

/* "2015", "05", with "in" before it; "guest in 12" is in a room. */
static bool
is_year(const struct heard *heard, int index)
{
    const char *text = heard->list[index].text;
    size_t length = strlen(text);
    bool is_century = length == 4 && (strncmp(text, "19", 2) == 0 || strncmp(text, "20", 2) == 0);

    return index > 0 && (heard->list[index - 1].roles & ROLE_YEAR_AFTER) != 0 &&
           heard->list[index - 1].sentence == heard->list[index].sentence &&
           (is_century || (length == 2 && text[0] == '0')) && strspn(text, "0123456789") == length;
}

/* A stretch of words that tells a time long past. */
struct past {
    int first, last;
};

/* True unless the time may be how long it has lasted: "me duele hace dos meses" is not over, "le
 * dio hace dos meses" is. */
static bool
has_happened(const struct heard *heard, const struct past *past)
{
    int sentence = heard->list[past->first].sentence, i;
    bool may_last = false, has_happened = false;

    for (i = 0; i < (int)heard->count; i++) {
        if (heard->list[i].sentence == sentence) {
            may_last |=
                i >= past->first && i <= past->last && (heard->list[i].roles & ROLE_LASTS) != 0;
            has_happened |= (heard->list[i].roles & ROLE_HAPPENED) != 0;
        }
    }
    return !may_last || has_happened;
}

/* True if the word at `index` is the heart of such a time. */
static bool
find_past(const struct heard *heard, int index, struct past *past)
{
    int i;

    if (is_year(heard, index)) {
        *past = (struct past){index - 1, index};
        return true;
    }
    if ((heard->list[index].roles & ROLE_PAST_UNIT) == 0) {
        return false;
    }
    if (index > 0 && (heard->list[index - 1].roles & ROLE_PAST_NEXT) != 0) {
        *past = (struct past){index - 1, index};
        return true;
    }
    for (i = index - PAST_UNIT_REACH; i <= index + PAST_UNIT_REACH; i++) {
        if (i >= 0 && i < (int)heard->count &&
            heard->list[i].sentence == heard->list[index].sentence &&
            (heard->list[i].roles & ROLE_PAST_MARK) != 0) {
            *past = i < index ? (struct past){i, index} : (struct past){index, i};
            return true;
        }
    }
    return false;
}

/* True if only a little stands between two words. */
static bool
is_near(const struct heard *heard, int left, int right)
{
    int weighty = 0, i;

    if (right - left - 1 > PAST_REACH) {
        return false;
    }
    for (i = left + 1; i < right; i++) {
        if ((heard->list[i].roles & (ROLE_BUT | ROLE_STATEMENT)) != 0 ||
            (i > left + 1 && heard->list[i].comma_before)) {
            return false;
        }
        weighty += (heard->list[i].roles & ROLE_WEIGHTLESS) == 0;
    }
    return weighty <= PAST_WEIGHTY;
}

/* True if the time is the one of the words: it follows them, or begins the sentence before them. */
static bool
is_time_of(const struct heard *heard, const struct past *past, int first, int last)
{
    int start = past->first;

    while (start > 0 && heard->list[start - 1].sentence == heard->list[start].sentence) {
        start--;
    }
    if (past->first > last) {
        return !heard->list[past->first].comma_before && is_near(heard, last, past->first);
    }
    return past->last < first && past->first - start <= 1 && is_near(heard, past->last, first);
}

static bool
is_over(const struct heard *heard, const int *indexes, int count)
{
    int sentence = heard->list[indexes[0]].sentence, i;

    for (i = 0; i < count; i++) {
        if ((heard->list[indexes[i]].roles & ROLE_UNABLE) != 0) {
            return false;
        }
    }
    for (i = 0; i < (int)heard->count; i++) {
        if (heard->list[i].sentence == sentence && (heard->list[i].roles & ROLE_NOW) != 0) {
            return false;
        }
    }
    return true;
}

bool
is_long_past(const struct heard *heard, const int *indexes, int count)
{
    int sentence = heard->list[indexes[0]].sentence, i;
    struct past past;

    for (i = 0; i < (int)heard->count; i++) {
        if (heard->list[i].sentence == sentence && find_past(heard, i, &past) &&
            is_time_of(heard, &past, indexes[0], indexes[count - 1]) &&
            has_happened(heard, &past)) {
            return is_over(heard, indexes, count);
        }
    }
    return false;
}
