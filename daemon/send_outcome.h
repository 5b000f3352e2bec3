/*
 * One send: starting it, and what its answer means. Shared by what is recorded (outbox.c) and what
 * cannot be (unrecorded.c).
 */
#ifndef SEND_OUTCOME_H
#define SEND_OUTCOME_H

#include "gateway.h"
#include "outbox_rows.h"
#include "transfer.h"

/* Starts the transfer of a request as gateway_shape() made it; as transfer_start(). */
struct transfer *send_shaped(struct transfers *transfers, const struct shaped_request *shaped,
                             int timeout_ms, transfer_done *done, void *cookie);

/*
 * What an HTTP status means (0: no answer). 2xx is accepted. 4xx will not change by trying again
 * (RFC 9110, 15.5), but for 408 (took too long), 425 (RFC 8470) and 429 (RFC 6585). All else,
 * redirects among it, is tried again until the text is too old.
 */
enum outbox_event send_outcome_of(int status);

/* The same of an e-mail: 4yz may change by trying again, 5yz will not (RFC 5321, 4.2.1). */
enum outbox_event send_outcome_of_mail(int status);

/* "HTTP 503" or the error, in `arena`; for the log and the row. */
char *send_outcome_detail(void *arena, int status, const char *error);

/* Name of the log's event: "text-accepted". */
const char *send_outcome_event(enum outbox_event event);

/* Whether something is to be done about it at once, see not_reached(). Nothing about what was
 * erased: there is nothing to reach anyone with. */
bool send_outcome_is_not_reached(const struct outbox_row *row, enum outbox_event event);

#endif
