/*
 * The night book: what happened in a stretch of time, as the office reads it. Gathered here from
 * the store and summed up; printed by night_print.c (terminal) and night_data.c (CSV, JSON).
 */
#ifndef NIGHT_H
#define NIGHT_H

#include <stdio.h>

#include <jansson.h>

#include "config.h"
#include "night_rows.h"
#include "zone.h"

/* One text with the parts of its verdict that people read. */
struct night_entry {
    const struct night_text *text;
    const char *topics;  /* "charge-car, due-date"; "" if none */
    const char *reasons; /* "topic charge-car 912, nearest "…"; sign chest-pain …" */
    const char *alert;   /* "urgent sign:dizzy-headache", or NULL */
    const char *staff;   /* who of staff sent it; NULL: a renter, or nobody we know */
    const struct night_reply *replies;
    size_t reply_count;
};

struct night_count {
    const char *what;
    size_t count;
};

struct night {
    struct night_span span;
    int64_t end_utc_s; /* of what is told: the span's, or the newest thing in it */
    const struct zone *zone;
    const struct config *config; /* names of staff */
    struct night_entry *entries;
    size_t entry_count;
    const struct night_reply *sent; /* what answers no text, in order of time */
    size_t sent_count;
    struct night_alert *alerts;
    size_t alert_count;
    size_t renter_texts, staff_texts; /* by whom the entries are; all below is of renters */
    size_t by_hour[24];               /* of the wall clock */
    struct night_count *topics;       /* most asked first */
    size_t topic_count;
    struct night_count *signs; /* told most first */
    size_t sign_count;
    size_t no_matter;           /* texts with neither, nor a gap: "yes", "thanks", words to staff */
    struct night_count *routes; /* the same */
    size_t route_count;
    size_t erased; /* texts whose words are no longer kept */
};

/* Fills a night of which span, zone, config and the time now (end_utc_s) are set. Everything lives
 * in `arena`. Returns 0, or -1 with a fault. */
int night_gather(struct store *store, void *arena, struct night *night, struct fault *fault);

/*
 * A moment as people name it: "yesterday" or "today" (since midnight), "2026-02-13", or RFC 3339.
 * Returns 0, or -1 with a fault that says so.
 */
int night_when(const char *text, const struct zone *zone, int64_t now_utc_s, int64_t *utc_s,
               struct fault *fault);

/* Who of staff this phone is, or the phone. */
const char *night_staff(const struct night *night, const char *phone);

/* "Robin wrote this": why something was sent that answers no text. */
char *night_why_sent(void *arena, const struct night *night, const struct night_reply *sent);

/* "Thessa, Cabin 4, +1…" as far as it is known. */
char *night_who(void *arena, const char *first_name, const char *place, const char *phone);

/* "Fri 13 Feb 21:04" */
char *night_time(void *arena, const struct night *night, int64_t utc_s);

/* For a terminal of 80 columns, readable in black and white. */
void night_print_report(FILE *out, const struct night *night);
void night_print_log(FILE *out, const struct night *night);

/* CSV (RFC 4180) and JSON with the same content. */
void night_csv_report(FILE *out, const struct night *night);
void night_csv_log(FILE *out, const struct night *night);
json_t *night_json_report(const struct night *night);
json_t *night_json_log(const struct night *night);

#endif
