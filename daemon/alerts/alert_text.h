/*
 * What staff are told about an alert, by each road. Texts and e-mails travel where others can read
 * them: first name, place, phone, the sign in two words, and how to take and to close it; no more.
 * Pure: no I/O, no clock.
 */
#ifndef ALERT_TEXT_H
#define ALERT_TEXT_H

#include <stdbool.h>

#include "alert_rows.h"

/*
 * A call about an alert, in `arena`: "EMERGENCY 12: chest pain. Gwen, Cabin 4, +1…. Text MINE 12 to
 * take it, SORTED 12 and what happened to close it."; for a phone with several rentals "one of
 * Anna, Bert; Cabin 4, +1…"; for a mains failure that several told, each renter with the time that
 * their batteries last. `taken_name` is who took it and has not closed it, or NULL. Number 0
 * is an alert that could not be stored.
 */
char *alert_text(void *arena, const struct alert_row *alert, const char *taken_name);

/*
 * The same to be read aloud on the telephone, digits one by one: "Emergency. Alert 12. Chest pain.
 * Gwen, Cabin 4. Telephone 1 2 0 8…. Press 1 to take it." To whoever has it already
 * (`is_holder`) it says that 5 closes it.
 */
char *alert_spoken(void *arena, const struct alert_row *alert, const char *taken_name,
                   bool is_holder);

/* The text of an e-mail, without the link that is added when it is sent, and its subject, which
 * tells nothing of the renter. */
char *alert_mail(void *arena, const struct alert_row *alert, const char *taken_name);
char *alert_mail_subject(void *arena, enum alert_level level, int64_t number);

/* The body of a webhook, JSON: type "alert.called", timestamp, data. `to_name` is whom we call. */
char *alert_json(void *arena, const struct alert_row *alert, const char *taken_name,
                 const char *to_name, int64_t now_utc_s);

/* One line of a list, for the shell: "12 EMERGENCY chest pain. Gwen, Cabin 4, +1…". */
char *alert_line(void *arena, const struct alert_row *alert);

/* To whoever has a mains failure: those who joined it since the last call; NULL if nobody did. */
const char *alert_text_joined(void *arena, const struct alert_row *alert);

/* To the colleague whom an alert is passed on to, and to whoever passed it on if they do not take
 * it in time; `text` is alert_text(). */
char *alert_text_passed_on(void *arena, const char *from_name, const char *text);
char *alert_text_not_passed_on(void *arena, const char *to_name, const char *text);
/* To whoever had it: someone else has it now. */
char *alert_text_gone(void *arena, int64_t number, const char *to_name);

/* No word that our text to `phone` got through; `number` is the alert that is open about it. */
char *alert_text_not_reached(void *arena, enum alert_level level, int64_t number,
                             const char *phone);

#endif
