/* Consent that a text withdraws or gives, as its verdict says, in the transaction that is open. */
#ifndef CONSENT_H
#define CONSENT_H

#include "store.h"
#include "verdict.h"

/* Within five minutes a confirmation is presumed fine, later it needs a reason: 47 CFR
 * 64.1200(a)(12). */
enum { OPT_OUT_CONFIRMED_S = 300 };

/* Of who wants no more texts also what waits to be sent is dropped, unless it is urgent. */
int consent_write(struct store *store, const struct verdict *verdict, const char *phone,
                  int64_t text_id, int64_t now_utc_s, struct fault *fault);

#endif
