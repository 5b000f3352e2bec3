/*
 * The pages that the link in an e-mail to staff leads to. They work without scripts, on the oldest
 * telephone, and fetch nothing. Pure: no I/O.
 */
#ifndef LINK_PAGE_H
#define LINK_PAGE_H

#include "alert_facts.h"

/* The policy that goes with each page (Content-Security-Policy Level 3). */
extern const char link_page_policy[];

/*
 * What it is about, with a button to take it and a form to close it, in `arena`. Nothing happens
 * but by a button: mail scanners open links. For the same reason all else, `facts`, is shown only
 * to whoever pressed one; NULL: there is a button to show them. `words` is what is said on top, or
 * NULL. `token` is where the forms go, relative to the page's folder.
 */
char *link_page_ask(void *arena, const struct alert_row *alert, const struct alert_facts *facts,
                    const char *words, const char *token);

/* Something is told, and there is nothing left to press. */
char *link_page_tell(void *arena, const char *words);

#endif
