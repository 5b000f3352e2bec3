/*
 * The pure core: (message, context) -> verdict. No I/O, no clock, no zone files, no global state;
 * the same input gives the same verdict, byte for byte.
 *
 * Order (handlers.c holds it and nothing else): signs, in the whole text and in the sender's texts
 * of the last 3 minutes joined; YES or NO to whether oxygen flows again; staff's own texts; consent
 * keywords alone; a person in charge of the conversation; a death that was told; an emergency that
 * is open. Then each question of the text goes down: open question, no plug near, a reminder, what
 * is worked out (charging, a flight, a cylinder, battery time, a trip), equipment trouble, topics,
 * what only the office can do, gap. Beside an emergency nothing is answered but power and backup.
 */
#ifndef HANDLERS_H
#define HANDLERS_H

#include "verdict.h"

/* Fills *verdict; everything in it lives in `arena`. Any text may come in. Cannot fail. */
void handlers_decide(void *arena, const struct message *message, const struct context *context,
                     struct verdict *verdict);

/*
 * For a broken store: reads the text for signs without any record. True if an emergency or
 * clinical sign fired; *verdict then holds its first line and the alert, and nothing else.
 */
bool handlers_decide_unrecorded(void *arena, const struct message *message,
                                const struct context *context, struct verdict *verdict);

/* Whom to call if the renter does not answer its question in time; ALERT_NONE for most. */
struct alert_call handlers_unanswered(const struct conversation *conversation);

/* A person no longer has the conversation. */
enum talk_end {
    TALK_CLOSED, /* they have closed the alert */
    TALK_NO_WORD /* the renter waited in vain for their answer */
};

/* What the renter is told then: the program answers again. In `arena`. */
char *handlers_talk_ends(void *arena, const struct house *house, enum language language,
                         enum talk_end end);

/* What a renter is told once everyone was called and nobody has taken their alert. In `arena`. */
char *handlers_nobody_yet(void *arena, const struct house *house, enum language language);
/* And after that, once somebody of this name has. In `arena`. */
char *handlers_someone_has_it(void *arena, const struct house *house, enum language language,
                              const char *holder);

#endif
