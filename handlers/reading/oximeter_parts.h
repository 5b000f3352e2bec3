/*
 * Between oximeter.c, which reads values that a cue leads to ("o2 is 84"), oximeter_bare.c, for
 * those that only their company tells ("she's at 84 and panting"), and oximeter_owner.c, which
 * tells these from the numbers of things. Private to the three.
 */
#ifndef OXIMETER_PARTS_H
#define OXIMETER_PARTS_H

#include "tokens.h"

/* Words for what else has a number; with a blank before and after each, as token_among() wants. */
extern const char oximeter_other_things[];
/* Of these the batteries, the only things that a percentage is told of. */
extern const char oximeter_batteries[];
/* So begins a question for what is left: "how long will the tank last". */
extern const char oximeter_asks_how[];
/* What may stand between what leads to a value and the value. */
extern const char oximeter_between[];

/* Phrases: a text that asks for hours speaks of batteries, unless the value is a person's. */
extern const char oximeter_hours_asked[];

/* The lowest value that only its company tells. */
enum { OXIMETER_LOWEST_BARE = 70 };

/* The lowest value so far; value 0: none. */
struct lowest {
    int value;
    size_t start, end;
    bool sure; /* oxygen is named, or whose value it is */
};

void oximeter_keep(const struct tokens *tokens, size_t at, size_t taken, int value, bool sure,
                   struct lowest *lowest);

/* The value of the number at `at`, which takes *taken tokens, or 0 if it can be none. */
int oximeter_value(const struct tokens *tokens, size_t at, size_t *taken);

/* One person besides the one who writes; an age follows them too, but no percentage. */
bool oximeter_is_someone(const struct tokens *tokens, size_t at);

bool oximeter_ends_sentence(const struct tokens *tokens, size_t at);

/* Tokens `at` and behind tell a flow: "3 liters". */
bool oximeter_is_flow(const struct tokens *tokens, size_t at);
/* Who leads straight to the number, the writer too: "im at 79"; `at` if nobody does. */
size_t oximeter_who_leads(const struct tokens *tokens, size_t at);
/* Somebody else than the writer leads straight to the number: "she is at 84", "dad reads 90". */
bool oximeter_is_of_someone(const struct tokens *tokens, size_t at);
/* The number at `at` belongs to a battery, a room or another thing that the sentence speaks of. */
bool oximeter_is_of_thing(const struct tokens *tokens, size_t at);

/* "text me when it gets to 30, it says 84": of a battery, and nobody is spoken of. */
bool oximeter_is_watched_battery(const struct tokens *tokens, size_t at);

/* It is told to be empty: no number before it is its charge. */
bool oximeter_is_spent(const struct tokens *tokens, size_t thing);
/* Of a thing that begins at `thing` it is told before `end` how it is, or its own number: "both
 * packs dead", "battery reading 50". */
bool oximeter_tells_of_thing(const struct tokens *tokens, size_t thing, size_t end);

/* Every value that no cue leads to. */
void oximeter_read_bare(const struct tokens *tokens, struct lowest *lowest);

#endif
