/*
 * One question on its way through the handlers: the text or a piece of it, with what each handler
 * would otherwise look up again. Lives in the verdict's arena.
 */
#ifndef ASKED_H
#define ASKED_H

#include "context.h"
#include "emptied.h"
#include "message.h"
#include "tokens.h"

/* What the content said a text is (office_matter()). */
struct heard {
    const char *text; /* which text that was; NULL: none yet */
    enum matter matter;
};

struct asked {
    void *arena;
    const struct message *message;
    const struct context *context;
    enum language language;

    const char *text;                /* the whole text, one question of it, or an earlier one */
    int64_t wrote_utc_s;             /* when the renter wrote that: charges were so then */
    struct tokens tokens;            /* of `text` */
    const struct told *told;         /* what it tells of batteries, times and ways */
    const struct told *message_told; /* the same of the whole text */
    struct tokens mended;            /* of the whole text, with misspelt words mended */
    struct emptied emptied;          /* what `text` tells to be empty; its bytes are of that */
    struct topic_search search;      /* of `text`; count 0 for a whole text */
    struct heard *heard;             /* shared by the pieces of a text, one after the other */

    /* Whose record may be used: NULL for a stranger, for a closed rental, and until one is chosen.
     */
    const struct rental *rental;
    const struct equipment *equipment;     /* of its unit; NULL if the kb has none */
    const struct battery_account *account; /* of `rental`; NULL without one */
    bool sign_left_out; /* of the whole text one was: it was taken for a question (signs.c) */
    bool which_rental;  /* several rentals here, none chosen: ask before using a record */
};

/* The whole text, with the rental that it is about as far as that is clear. */
struct asked asked_whole(void *arena, const struct message *message, const struct context *context);

/* The same for one question, written at `wrote_utc_s`. `text` must stay. */
struct asked asked_question(const struct asked *whole, const char *text, int64_t wrote_utc_s);

/* Reads another text in place of its own: the words and what is empty are that text's then, what is
 * told of batteries and times stays. `text` must stay. */
void asked_set_text(struct asked *asked, const char *text);

/* Takes this rental of the context for what follows. */
void asked_choose_rental(struct asked *asked, const struct rental *rental);

/* After a long silence: what the last conversation settled on no longer holds. */
bool asked_begins_anew(const struct context *context);

/* The question of ours that is open; none once the conversation has fallen silent. */
enum open_question asked_open_question(const struct asked *asked);

/* The question stands in the text that came in now, and was not asked in an earlier one. */
bool asked_in_message(const struct asked *asked);
/* The topics leave no doubt that it is about the one with this id. */
bool asked_is_surely_about(const struct asked *asked, const char *topic);

/* Some rental of this phone is booked, out or overdue. */
bool asked_is_active_renter(const struct asked *asked);

/*
 * The one active rental that the text names where a name stands, by the renter's name or the
 * unit's, or by its number in the order of the context if "Which rental?" is open ("2"); NULL if
 * it names none or several.
 */
const struct rental *asked_named_rental(const struct asked *asked);
/* "Which rental?" is open, and the text has at most a word or number that can answer it. */
bool asked_says_only_which(const struct asked *asked);

#endif
