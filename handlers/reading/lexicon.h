/*
 * The words that the reader of numbers knows, English and Spanish, as data: each phrase with what
 * it is. lexicon_*.c and cues_*.c hold the tables and nothing else; a new way of saying a
 * known thing is one word there and no code. Pure.
 *
 * Phrases are folded as tokens are: lower case, no marks, no apostrophes ("dont"), signs apart
 * ("w / o").
 */
#ifndef LEXICON_H
#define LEXICON_H

#include <stdbool.h>
#include <stddef.h>

#include "kb.h"
#include "tokens.h"
#include "words.h"

/* What a piece of text is. The first ones are made by items.c and amounts.c, not by the tables. */
enum item_is {
    ITEM_WORD,   /* none of ours */
    ITEM_NUMBER, /* value, high in thousandths */
    ITEM_AMOUNT, /* a number with its unit; value, high in thousandths of it, durations in minutes
                  */
    ITEM_CLOCK,  /* a clock time; value in minutes after midnight */
    ITEM_STOP,   /* . ! ? ; */
    ITEM_PAUSE,  /* , : ( ) */
    ITEM_SIGN,   /* another sign */
    /* little words */
    ITEM_ARTICLE, /* a, an */
    ITEM_LINK,    /* carries nothing: is, my, de, lo */
    ITEM_AND,
    ITEM_TO,      /* between the ends of a range: to, or, a, o, - */
    ITEM_BETWEEN, /* between, from, entre, de .. */
    ITEM_OF,
    ITEM_NOT,
    ITEM_AT, /* value: enum at_word */
    ITEM_HAVE,
    ITEM_WILL_BE, /* what follows is wished for: be, get, until its */
    /* parts of one */
    ITEM_HALF,
    ITEM_QUARTER,
    ITEM_FRACTION, /* value in thousandths */
    ITEM_HEDGE,
    ITEM_HEDGE_AFTER, /* ish, or so */
    ITEM_SOMETHING,   /* "sixty something" */
    ITEM_MINUS,
    /* batteries and how full they are */
    ITEM_BATTERY, /* value: 1 one, 2 several */
    ITEM_OTHER,   /* other, otra, spare, this one: one battery */
    ITEM_ORDINAL, /* first, tercera; value: 1, 3, or ORDINAL_LAST */
    ITEM_BOTH,
    ITEM_ALL,
    ITEM_EACH,
    ITEM_SAME,    /* "the other too" */
    ITEM_UNKNOWN, /* havent checked, no se */
    ITEM_FULL,
    ITEM_CHARGE, /* value: low percent x 1000 + high percent */
    ITEM_LIGHT,
    ITEM_DIM,   /* half lit: no light */
    ITEM_SHOWS, /* says, marca, down to: a charge follows */
    ITEM_FROM,  /* from, de: a charge that charging starts at */
    /* mode and setting */
    ITEM_SETTING,
    ITEM_MODE, /* value: enum mode */
    ITEM_USE,
    /* units and what is counted but not read */
    ITEM_UNIT,  /* value: enum unit */
    ITEM_NAMED, /* room, gate, vuelo: its number is a name */
    ITEM_PRICE, /* $, paid: an amount of money follows */
    /* times */
    ITEM_AM,
    ITEM_PM,
    ITEM_DAYPART, /* value: enum daypart */
    ITEM_NOON,    /* value: minutes after midnight */
    ITEM_OCLOCK,
    ITEM_PAST,       /* past, after: "ten past six" */
    ITEM_TO_HOUR,    /* to, til, para las: "ten to six" */
    ITEM_LESS,       /* menos: "las ocho menos cuarto" */
    ITEM_CLOCK_LEAD, /* a las, a la, o: a clock time follows */
    ITEM_DAY,        /* value: enum told_day; tonight also tells the part of the day */
    ITEM_TONIGHT,
    ITEM_AGO,      /* after its length */
    ITEM_AGO_LEAD, /* before its length: hace, for the last */
    ITEM_SINCE,
    ITEM_NOW,
    ITEM_NOW_IS,  /* its, son las: the time of now follows */
    ITEM_EARLIER, /* yesterday, this morning */
    ITEM_WAS,
    ITEM_THEN_LEFT, /* left the plug, unplugged: the time of a charge told follows */
    ITEM_DEPART,
    ITEM_ARRIVE,
    ITEM_BY,
    ITEM_UNTIL,
    ITEM_BEFORE,
    ITEM_EVENT, /* show, appointment: its clock time is no goal, its span is a wait */
    ITEM_REMIND,
    ITEM_LEFT, /* remaining */
    ITEM_LASTS,
    ITEM_CORRECT,
    /* ways and power */
    ITEM_GOING, /* value: enum leg_kind */
    ITEM_EACH_WAY,
    ITEM_SAME_BACK, /* same way back: the ways once more, in reverse */
    ITEM_HOMEWARD,  /* back, home: the way there once more */
    ITEM_POWER,     /* value: enum power_word */
    ITEM_ACTIVITY,  /* value: enum activity; ACTIVITY_COUNT is driving, for which none is ordered */
    /* cylinder and flight */
    ITEM_CYLINDER,
    ITEM_SIZE,
    ITEM_GATE,
    ITEM_AIR,
    ITEM_DOOR,   /* door to door: no flight time */
    ITEM_BEHIND, /* of clocks elsewhere */
    ITEM_AHEAD,
    ITEM_CLAIM, /* what others say: website, friend says */
    ITEM_COUNT
};

enum { ORDINAL_LAST = 99 };

enum at_word { AT_ON, AT_AT, AT_IN };

enum unit {
    UNIT_PERCENT,
    UNIT_MINUTE,
    UNIT_HOUR,
    UNIT_DAY,
    UNIT_PSI,
    UNIT_BAR,
    UNIT_FLOW,
    UNIT_FEET,
    UNIT_METER,
    UNIT_MILE,
    UNIT_KM,
    UNIT_MPH,
    UNIT_KMH,
    UNIT_PER_HOUR, /* of the distance told before */
    UNIT_FAHRENHEIT,
    UNIT_CELSIUS,
    UNIT_DEGREE,
    UNIT_BELOW_ZERO,
    UNIT_POUND, /* psi of a cylinder, else a weight */
    UNIT_OTHER  /* counted, and nothing of ours: mg, years, dollars, cells */
};

enum daypart { DAYPART_MORNING, DAYPART_AFTERNOON, DAYPART_EVENING, DAYPART_NIGHT };

enum power_word {
    POWER_WORD_BATTERY,
    POWER_WORD_WALL,
    POWER_WORD_CAR,
    POWER_WORD_PLUG, /* plugged in, an outlet: of what, the place tells */
    POWER_WORD_NONE, /* no outlet */
    POWER_WORD_OUT,  /* the mains failed: on battery */
    POWER_WORD_BACK  /* it is back: on the wall */
};

struct lexicon_entry {
    enum item_is is;
    int value;
    bool own; /* only in a text of this language: the other one has the word for another thing */
    const char *phrases; /* parted by "|" */
};

/* Two tables for each language: things, and times with ways and power. */
extern const struct lexicon_entry lexicon_en[], lexicon_en_ways[], lexicon_es[], lexicon_es_ways[];
extern const size_t lexicon_en_count, lexicon_en_ways_count, lexicon_es_count,
    lexicon_es_ways_count;

/* What a text asks, by phrases that may lie anywhere in it; "*" stands for up to two words. */
enum cue {
    CUE_WATCH,
    CUE_CYLINDER,
    CUE_CHARGING,
    CUE_FLIGHT,
    CUE_ON_PLANE,
    CUE_TRIP,
    CUE_GENERAL,
    CUE_LIFE,
    CUE_LEFT,
    CUE_HOW_LONG,
    CUE_HOW_MANY,
    CUE_ENOUGH,
    CUE_BATTERY_ASKED,
    CUE_READY_UNTIMED, /* before we leave: a goal without its time */
    CUE_CONSERVER,
    CUE_COUNT
};

extern const char *const cues_en[CUE_COUNT], *const cues_es[CUE_COUNT];

/*
 * The tables of both languages, ready for looking up; lives in `arena` and never changes, so it is
 * made once, beside the kb, which tells the words that are right as they are spelt and must outlive
 * it. Without one (NULL) no word is mended (mending.h).
 */
struct lexicon;
const struct lexicon *lexicon_new(void *arena, const struct kb *kb);
const struct kb *lexicon_kb(const struct lexicon *lexicon);

/* The longest phrase at a place: its tokens, 0 if there is none, and its first meanings, for a
 * phrase may stand in several rows. */
enum { LEXICON_MEANINGS = 5 };
struct lexicon_found {
    const struct lexicon_entry *meanings[LEXICON_MEANINGS];
    size_t count, tokens;
};

/* In a text of this language; its own meanings come first. */
struct lexicon_found lexicon_at(const struct lexicon *lexicon, enum language language,
                                const struct tokens *tokens, size_t at);

/* A word of the tables, of the cues or for numbers. */
struct lexicon_word {
    const char *text;
    const char *sound;       /* as Spanish hears it (sound.h); NULL unless it is a Spanish one */
    bool of[LANGUAGE_COUNT]; /* whose word it is; a number word is everybody's */
    bool is_number;
    bool is_right; /* as it is spelt, in English: the tables have misspellings too */
};

/* All of this length, each once; none of more than LEXICON_WORD_MAX. */
enum { LEXICON_WORD_MAX = 24 };
const struct lexicon_word *lexicon_words(const struct lexicon *lexicon, size_t length,
                                         size_t *count);

/* The language of which more words are known, if words_language() does not tell Spanish. */
enum language lexicon_language(const struct lexicon *lexicon, void *arena, const char *text,
                               const struct tokens *tokens);

/* True if the text has the cue, in either language. */
bool lexicon_cue(const struct tokens *tokens, enum cue cue);

#endif
