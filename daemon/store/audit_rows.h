/* The audit trail: who of the office did what, and from where. Append-only. */
#ifndef AUDIT_ROWS_H
#define AUDIT_ROWS_H

#include "store.h"

struct audit_row {
    const char *who;     /* the command or the staff phone */
    const char *what;    /* "import-rentals" */
    const char *subject; /* what it was done to, or NULL */
    const char *detail;  /* or NULL */
};

int audit_rows_add(struct store *store, const struct audit_row *row, int64_t now_utc_s,
                   struct fault *fault);

#endif
