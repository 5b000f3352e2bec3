#include "consent.h"

#include "conversation_rows.h"
#include "outbox_rows.h"

int
consent_write(struct store *store, const struct verdict *verdict, const char *phone,
              int64_t text_id, int64_t now_utc_s, struct fault *fault)
{
    if (verdict->consent == CONSENT_KEEP) {
        return 0;
    }
    if (verdict->consent == CONSENT_OUT &&
        outbox_rows_drop_to(store, phone, URGENCY_URGENT, now_utc_s, fault) != 0) {
        return -1;
    }
    return consent_rows_add(store, phone, verdict->consent == CONSENT_IN, text_id, now_utc_s,
                            fault);
}
