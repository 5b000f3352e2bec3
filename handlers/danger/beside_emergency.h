/*
 * What a text tells or asks of the help while an emergency is open, beside signs, and what is said
 * to that. Private to open_emergency.c, signs.c and handlers.c. Pure.
 */
#ifndef BESIDE_EMERGENCY_H
#define BESIDE_EMERGENCY_H

#include "asked.h"
#include "say.h"

/* In the order in which they are looked for: of what several texts may tell the first counts. */
enum beside {
    BESIDE_HOSPICE,     /* a life that ends, or one that is not to be held up; told now or before */
    BESIDE_REFUSES,     /* they will not have it called */
    BESIDE_CANNOT_CALL, /* cannot_call_told() */
    BESIDE_NO_WAY,      /* no ambulance gets to them */
    BESIDE_LATE,        /* who was called does not come, or says it takes long */
    BESIDE_STILL_NEEDED,
    BESIDE_ASKS_WHETHER,  /* whether we called, or know who comes */
    BESIDE_ASKS_WHERE,    /* what their address is */
    BESIDE_PLACE,         /* place_told() */
    BESIDE_SOMEBODY_CAME, /* is_over_may_be_others() */
    BESIDE_OXYGEN,        /* may it stay on, what is the setting, where to with the unit */
    BESIDE_ASKS_WHAT_TO_DO,
    BESIDE_TELLS_MORE, /* of somebody or something, and nothing that is known */
    BESIDE_NOTHING
};

/* Whoever has the alert is called again about it; NULL reason: only hears of it. */
struct beside_words {
    const char *reason, *brief;
    enum phrase phrase, staff; /* what is said, and of staff; PHRASE_COUNT: nothing */
};

enum beside beside_emergency_read(const struct asked *whole);
/* Not for BESIDE_NOTHING. */
const struct beside_words *beside_emergency_words(enum beside beside);

/* Somebody will not have help, or asks whether to send it back. */
bool beside_emergency_calls_off(enum beside beside);

/* It tells or asks of who was called or is to be called, so that "911" in it calls for nobody. */
bool beside_emergency_of_call(enum beside beside);

/* It tells of a person, or asks what to do with one: whatever topic it is like, it is none. */
bool beside_emergency_of_person(const struct asked *whole, enum beside beside);

/* "Can i hit his back", and nothing else: what they may do, and nothing that somebody has. */
bool beside_emergency_only_asks(const struct asked *whole);

/* It names what burns, smokes or leaks: how a battery is changed is no answer to that, though no
 * sign is found in it. */
bool beside_emergency_names_fire(const struct asked *whole);

/* The words of the text without those of first aid, which are no sign: "how do i do". */
const char *first_aid_left_out(const struct asked *whole);

#endif
