#include "send_outcome.h"

#include "memory.h"

struct transfer *
send_shaped(struct transfers *transfers, const struct shaped_request *shaped, int timeout_ms,
            transfer_done *done, void *cookie)
{
    const struct transfer_request request = {.method = shaped->method,
                                             .url = shaped->url,
                                             .headers = shaped->headers,
                                             .body = shaped->body,
                                             .body_size = shaped->body_length,
                                             .timeout_ms = timeout_ms};

    return transfer_start(transfers, &request, done, cookie);
}

enum outbox_event
send_outcome_of(int status)
{
    if (status >= 200 && status <= 299) {
        return OUTBOX_ACCEPTED;
    }
    if (status >= 400 && status <= 499 && status != 408 && status != 425 && status != 429) {
        return OUTBOX_REFUSED;
    }
    return OUTBOX_TRIED_AGAIN_LATER;
}

enum outbox_event
send_outcome_of_mail(int status)
{
    if (status >= 200 && status <= 299) {
        return OUTBOX_ACCEPTED;
    }
    return status >= 500 ? OUTBOX_REFUSED : OUTBOX_TRIED_AGAIN_LATER;
}

char *
send_outcome_detail(void *arena, int status, const char *error)
{
    return status != 0 ? memory_format(arena, "HTTP %d", status) : memory_copy(arena, error);
}

const char *
send_outcome_event(enum outbox_event event)
{
    static const char *const names[] = {
        [OUTBOX_TRIED_AGAIN_LATER] = "text-not-sent",
        [OUTBOX_ACCEPTED] = "text-accepted",
        [OUTBOX_DELIVERED] = "text-delivered",
        [OUTBOX_UNDELIVERED] = "text-undelivered",
        [OUTBOX_REFUSED] = "text-refused",
        [OUTBOX_GIVEN_UP] = "text-given-up",
        [OUTBOX_REPLACED] = "text-replaced",
        [OUTBOX_NOT_CONFIRMED] = "text-not-confirmed",
    };

    return names[event];
}

bool
send_outcome_is_not_reached(const struct outbox_row *row, enum outbox_event event)
{
    if (row->body[0] == '\0') {
        return false; /* erased: there is nothing to reach anyone with */
    }
    switch (event) {
    case OUTBOX_REFUSED:
    case OUTBOX_UNDELIVERED:
    case OUTBOX_NOT_CONFIRMED:
    case OUTBOX_GIVEN_UP:
        return true;
    case OUTBOX_TRIED_AGAIN_LATER:
        return row->about == OUTBOX_ALERT; /* there may be another road at once */
    default:
        return false;
    }
}
