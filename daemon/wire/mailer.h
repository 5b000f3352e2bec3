/*
 * E-mail by SMTP over TLS, with libcurl.
 *
 * It runs in a thread of its own, one e-mail after the other: libcurl (7.88.1, lib/smtp.c) waits
 * inside its calls for the server's answer to the message and to QUIT, which would hold the loop.
 * transfers_prepare() is called before.
 */
#ifndef MAILER_H
#define MAILER_H

#include <stddef.h>

struct event_base;
struct mailer;

/* What is to be sent; all of it is copied. No text but `text` may hold a line break. */
struct mail_message {
    const char *url;             /* smtps:// for TLS from the start, smtp:// for STARTTLS */
    const char *user, *password; /* or both NULL */
    const char *ca_file;         /* or NULL for the system's certificates */
    const char *from, *to;       /* addresses */
    const char *subject;         /* ASCII */
    const char *id;              /* of the message, the part before the @ */
    const char *date;            /* RFC 5322 */
    const char *text;            /* UTF-8 */
    long timeout_ms;
};

/*
 * What came of it, valid until the callback returns. status is the server's last answer (RFC 5321,
 * 4.2), 250 for a message it took; 0 if there was none, and then error says why.
 */
struct mail_result {
    int status;
    const char *error; /* "" if it was taken */
};

typedef void mail_done(const struct mail_result *result, void *cookie);

struct mailer *mailer_new(struct event_base *base);
/* Gives up what waits or runs, without callbacks; may wait a second for the thread. NULL is fine.
 */
void mailer_free(struct mailer *mailer);

/* `done` is called once, from the loop, never from inside this call. */
void mailer_send(struct mailer *mailer, const struct mail_message *message, mail_done *done,
                 void *cookie);

/* "Sat, 14 Feb 2026 02:00:00 +0000", RFC 5322, 3.3, in `arena`. */
char *mail_date(void *arena, long long utc_s);

#endif
