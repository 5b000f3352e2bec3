/*
 * A mains failure that several renters of one area tell is one alert to staff. Each renter's stays
 * an alert of its own, with its number, its texts and its end; but the later ones have joined the
 * first, their head: that one is called, taken and passed on for all of them.
 *
 * Only what is urgent is joined. What becomes an emergency, or is about anything else besides, goes
 * out of the group and is called by itself; if that is the head, the next of them takes its place.
 * For store/alert*.c and who tells staff of an alert.
 */
#ifndef ALERT_GROUP_ROWS_H
#define ALERT_GROUP_ROWS_H

#include "alert_rows.h"

/* However many tell it, staff are called about their mains failure once in so many seconds. */
enum { ALERT_GROUP_PAUSE_S = 120 };

/*
 * This open alert is about a mains failure in alert->area. It joins one that was told there at
 * alert->joins_since_utc_s or later, unless it is graver, with others already, or somebody has it.
 */
int alert_group_join(struct store *store, int64_t number, const struct alert_row *alert,
                     int64_t now_utc_s, struct fault *fault);
/* Of whom staff have not been told yet they are told soon, at the pause above. */
int alert_group_call_new(struct store *store, int64_t head, int64_t now_utc_s, struct fault *fault);
/* Staff were told, otherwise than by a call, of all that are called with this one. */
int alert_group_named(struct store *store, int64_t number, struct fault *fault);
/* It is called by itself from now on, and what it told is no mains failure alone. */
int alert_group_leave(struct store *store, int64_t number, struct fault *fault);

/* The number that this alert is called by; its own if it is closed. */
int alert_group_head(struct store *store, int64_t number, int64_t *head, struct fault *fault);
/* All that are called by this number, itself included, who runs out first in front: first those
 * who told no charge. In `arena`. */
int alert_group_renters(struct store *store, void *arena, int64_t head,
                        struct alert_renter **renters, size_t *count, struct fault *fault);

/* What is known now of the batteries of this rental; 0: nothing. */
int alert_group_runs_out(struct store *store, const char *rental_id, int64_t runs_out_utc_s,
                         struct fault *fault);

#endif
