/*
 * Links in e-mails to staff: each is good for one answer about one alert by one person, until it
 * expires. The token stands in the e-mail only; here is its hash.
 */
#ifndef LINK_ROWS_H
#define LINK_ROWS_H

#include "store.h"

enum { LINK_TOKEN_SIZE = 44 /* 32 random bytes in base64 for URLs, and the end of the text */ };

/* Makes up a token. No I/O. */
void link_token(char token[LINK_TOKEN_SIZE]);

struct link {
    int64_t alert_number;
    const char *who; /* staff phone */
    int64_t expires_utc_s;
    bool is_used;
};

/* Links that expired long ago are dropped on the way. */
int link_rows_add(struct store *store, const char *token, const struct link *link,
                  int64_t now_utc_s, struct fault *fault);

/* *found is false for a token that is none of ours. */
int link_rows_find(struct store *store, void *arena, const char *token, struct link *link,
                   bool *found, struct fault *fault);

int link_rows_use(struct store *store, const char *token, int64_t now_utc_s, struct fault *fault);

#endif
