#include "sign_slips.h"

#include <string.h>

#include "memory.h"
#include "sign_vocabulary_inside.h"
#include "slip.h"

enum {
    SLIP_LENGTH_MIN = 5,       /* a shorter word has too many neighbours */
    SWAP_LENGTH_MIN = 4,       /* but for two letters swapped */
    SMALL_SWAP_LENGTH_MIN = 3, /* and in a small word, which says little by itself */
    SLIP_FIRST_LETTER_MIN = 7, /* from here on the first letter may be the one that is wrong */
    TWO_SLIPS_LENGTH_MIN = 10,
    HEARD_LENGTH_MIN = 6, /* a shorter word sounds like too many others */
    DRAWN_OUT_MIN = 3,    /* so many of one letter are one drawn out */
    CUT_LENGTH_MIN = 6,
    SLIP_LENGTH_MAX = 40
};

/* ---- Slips of the finger ------------------------------------------------------------------- */

bool
is_one_slip(const char *left, const char *right)
{
    return slip_between(left, right) != SLIP_NONE;
}

/* True if two neighbouring letters changed places: so slips the finger even in a short word. */
static bool
is_swap(const char *left, const char *right)
{
    return slip_between(left, right) == SLIP_SWAP;
}

/* ---- Letters drawn out --------------------------------------------------------------------- */

/* The word with each letter that stands three times or more written `times` times; false if there
 * is none. */
static bool
draw_in(const char *text, size_t times, char drawn_in[SLIP_LENGTH_MAX + 1])
{
    size_t length = strlen(text), used = 0, i = 0;
    bool is_drawn_out = false;

    if (length > SLIP_LENGTH_MAX) {
        return false;
    }
    while (i < length) {
        size_t same = strspn(text + i, (char[]){text[i], '\0'});
        size_t kept = same >= DRAWN_OUT_MIN ? times : same;

        is_drawn_out = is_drawn_out || same >= DRAWN_OUT_MIN;
        memset(drawn_in + used, text[i], kept);
        used += kept;
        i += same;
    }
    drawn_in[used] = '\0';
    return is_drawn_out;
}

/* ---- Sounds -------------------------------------------------------------------------------- */

/* Letters and how they sound; the first that fits counts, so longer ones stand first. A vowel is
 * written 'a' in English, where it tells little; '^' stands for a word's beginning. */
struct sound {
    const char *letters, *sound;
};

/* Common practice, no source. */
static const struct sound english_sounds[] = {
    {"^kn", "n"},    {"^wr", "r"},    {"^ps", "s"},     {"^gn", "n"},     {"^wh", "w"},
    {"tion", "xan"}, {"sion", "xan"}, {"cious", "xas"}, {"tious", "xas"}, {"ough", "af"},
    {"augh", "af"},  {"igh", "a"},    {"tch", "x"},     {"sch", "sk"},    {"ch", "x"},
    {"sh", "x"},     {"ph", "f"},     {"gh", ""},       {"ck", "k"},      {"qu", "kw"},
    {"dg", "j"},     {"mb", "m"},     {"th", "t"},      {"ce", "sa"},     {"ci", "sa"},
    {"cy", "sa"},    {"ge", "ja"},    {"gi", "ja"},     {"c", "k"},       {"q", "k"},
    {"x", "ks"},     {"z", "s"},      {"v", "f"},       {"a", "a"},       {"e", "a"},
    {"i", "a"},      {"o", "a"},      {"u", "a"},       {"y", "a"},
};

/* The sound that fits at `at`, or NULL: the letter sounds as it is written. */
static const struct sound *
sound_at(const char *text, size_t at)
{
    size_t i;

    for (i = 0; i < sizeof(english_sounds) / sizeof(english_sounds[0]); i++) {
        const char *letters = english_sounds[i].letters;
        bool begins = letters[0] == '^';

        letters += begins;
        if ((!begins || at == 0) && strncmp(text + at, letters, strlen(letters)) == 0) {
            return &english_sounds[i];
        }
    }
    return NULL;
}

const char *
slips_sound(void *arena, const char *text, enum language language)
{
    size_t length = strlen(text), used = 0, at = 0;
    char *sound;

    if (language != LANGUAGE_EN) {
        return text; /* heard words are sounds already (sound.h) */
    }
    sound = memory_array(arena, char, 2 * length + 1);
    if (length > 2 && text[length - 1] == 'e') {
        length--; /* silent */
    }
    while (at < length) {
        const struct sound *found = sound_at(text, at);
        const char *c = found != NULL ? found->sound : (char[]){text[at], '\0'};

        for (; *c != '\0'; c++) {
            if (used == 0 || sound[used - 1] != *c) { /* double letters sound once */
                sound[used++] = *c;
            }
        }
        at += found == NULL ? 1 : strlen(found->letters) - (found->letters[0] == '^');
    }
    sound[used] = '\0';
    return sound;
}

/* ---- All together -------------------------------------------------------------------------- */

/* Known words that one misspelling may stand for. */
enum { NEAR_MAX = 12 };

/* True if the word typed may be meant for this one, which slips lie between. Of short stems, not
 * even a swap: "suci(a)" is no slip of "suic(ida)". */
static bool
may_be_meant(const struct heard_word *heard, const char *typed, const char *meant, bool is_small)
{
    bool is_whole = typed == heard->text || typed == heard->spelt;
    size_t length = strlen(meant);
    size_t swap_min = is_small ? SMALL_SWAP_LENGTH_MIN : SWAP_LENGTH_MIN;

    return (length >= SLIP_LENGTH_MIN ||
            (is_whole && length >= swap_min && is_swap(typed, meant))) &&
           (meant[0] == typed[0] || (!is_small && strlen(typed) >= SLIP_FIRST_LETTER_MIN));
}

/* Takes a word for those that the slips lie between, by letters that are its spelling's, its
 * sound's or its stem's. */
static int
add_near(const struct vocabulary *vocabulary, struct heard_word *heard, const char *typed,
         int slips)
{
    uint32_t numbers[NEAR_MAX];
    size_t count = spelling_near(&vocabulary->slips, typed, slips, numbers, NEAR_MAX), i;
    int added = 0;

    for (i = 0; i < count; i++) {
        const char *meant = vocabulary->slips.text + vocabulary->slips.words[numbers[i]].text;
        unsigned roles = roles_of(vocabulary->roles, meant);
        int id = vocabulary->slip_ids[numbers[i]];

        if (may_be_meant(heard, typed, meant, roles != 0)) {
            heard->roles |= roles;
            if (id >= 0) {
                vocabulary_mean(vocabulary, heard, id);
            }
            added++;
        }
    }
    return added;
}

void
slips_add_to_listed(const struct vocabulary *vocabulary, struct heard_word *heard)
{
    uint32_t numbers[NEAR_MAX];
    size_t count = spelling_near(&vocabulary->slips, heard->text, 1, numbers, NEAR_MAX), i;

    for (i = 0; i < count; i++) {
        const char *meant = vocabulary->slips.text + vocabulary->slips.words[numbers[i]].text;
        const struct sign_form *form = vocabulary_form(vocabulary, meant, strlen(meant));
        int id = vocabulary->slip_ids[numbers[i]];

        if (id >= 0 && form != NULL && form->is_spelt_right && form->roles == 0 &&
            meant[0] == heard->text[0] && may_be_meant(heard, heard->text, meant, false)) {
            vocabulary_mean(vocabulary, heard, id);
        }
    }
}

/* Takes a word for those that sound like it. */
static void
add_sounding(const struct vocabulary *vocabulary, void *arena, struct heard_word *heard)
{
    const char *sound = slips_sound(arena, heard->text, vocabulary->language);
    size_t low = 0, high = vocabulary->sound_count;

    while (low < high) {
        size_t middle = low + (high - low) / 2;

        if (strcmp(vocabulary->sounds[middle].sound, sound) < 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    for (; low < vocabulary->sound_count && strcmp(vocabulary->sounds[low].sound, sound) == 0;
         low++) {
        vocabulary_mean(vocabulary, heard, vocabulary->sounds[low].id);
    }
}

/* Takes a word whose letters are drawn out for the one that is meant. */
static void
add_drawn_in(const struct vocabulary *vocabulary, struct heard_word *heard)
{
    char drawn_in[SLIP_LENGTH_MAX + 1];
    size_t times;

    for (times = 1; times <= 2; times++) {
        if (draw_in(heard->text, times, drawn_in)) {
            const struct sign_spelling *spelling =
                vocabulary_spelling(vocabulary, drawn_in, strlen(drawn_in));

            if (spelling != NULL) {
                vocabulary_mean(vocabulary, heard, spelling->id);
            }
        }
    }
}

void
slips_add(const struct vocabulary *vocabulary, void *arena, struct heard_word *heard)
{
    size_t length = strlen(heard->text);
    int added;

    add_drawn_in(vocabulary, heard);
    if (length < SMALL_SWAP_LENGTH_MIN || length > SLIP_LENGTH_MAX) {
        return;
    }
    added =
        add_near(vocabulary, heard, heard->text, 1) + add_near(vocabulary, heard, heard->stem, 1);
    if (strcmp(heard->spelt, heard->text) != 0) {
        added += add_near(vocabulary, heard, heard->spelt, 1);
    }
    if (added == 0 && length >= TWO_SLIPS_LENGTH_MIN) {
        add_near(vocabulary, heard, heard->text, 2);
    }
    if (length >= HEARD_LENGTH_MIN) {
        add_sounding(vocabulary, arena, heard);
    }
}

/* ---- Lost blanks --------------------------------------------------------------------------- */

/* True for a word that may stand in a cut; *has_weight if it is a sign's word of some length. */
static bool
is_piece(const struct vocabulary *vocabulary, const char *text, size_t length, bool *has_weight)
{
    const struct sign_form *form = vocabulary_form(vocabulary, text, length);

    *has_weight =
        form != NULL && form->roles == 0 && form->id >= 0 && length >= SLIP_LENGTH_MIN - 1;
    return *has_weight || (form != NULL && form->roles != 0 && (length > 1 || text[0] == 'i'));
}

int
slips_cut(const struct vocabulary *vocabulary, const char *text, size_t ends[SLIPS_PIECES_MAX])
{
    size_t length = strlen(text), one, other;
    bool weighs[SLIPS_PIECES_MAX];

    if (length < CUT_LENGTH_MIN || length > SLIP_LENGTH_MAX) {
        return 0;
    }
    for (one = 1; one < length; one++) {
        if (!is_piece(vocabulary, text, one, &weighs[0])) {
            continue;
        }
        ends[0] = one;
        ends[1] = length;
        if (is_piece(vocabulary, text + one, length - one, &weighs[1]) &&
            (weighs[0] || weighs[1])) {
            return 2;
        }
        ends[2] = length;
        for (other = one + 1; other < length; other++) {
            ends[1] = other;
            if (is_piece(vocabulary, text + one, other - one, &weighs[1]) &&
                is_piece(vocabulary, text + other, length - other, &weighs[2]) &&
                (weighs[0] || weighs[1] || weighs[2])) {
                return 3;
            }
        }
    }
    return 0;
}
