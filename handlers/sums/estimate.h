/* Battery times as answers: what is told, the record and the unit put together and said. */
#ifndef ESTIMATE_H
#define ESTIMATE_H

#include "asked.h"
#include "verdict.h"

/*
 * Hours left from now: an estimate, or a question back (which rental, which charge), or a call to
 * staff for what record and unit do not give. `told` is what the renter says, asked->text included.
 * Always settles.
 */
void estimate_hours_left(const struct asked *asked, struct verdict *verdict,
                         const struct told *told);

/*
 * How long batteries last in general. False, verdict untouched, if record and unit give no number:
 * the topic's text answers then.
 */
bool estimate_battery_life(const struct asked *asked, struct verdict *verdict,
                           const struct told *told);

/*
 * Whether the batteries last a trip of the legs that are told. False, verdict untouched, if no trip
 * with a length or a charge is told, or it is nobody's of whom we have a record: the topic's text
 * answers then.
 */
bool estimate_trip(const struct asked *asked, struct verdict *verdict, const struct told *told);

/*
 * When batteries are full, what they have at a time, and who puts them on when. False, verdict
 * untouched, without a rental whose unit is known.
 */
bool estimate_charging(const struct asked *asked, struct verdict *verdict, const struct told *told);

/* How many batteries a flight takes. False without a rental whose unit is known. */
bool estimate_flight(const struct asked *asked, struct verdict *verdict, const struct told *told);

/* How long a cylinder lasts, for a stranger too. Always settles. */
void estimate_cylinder(const struct asked *asked, struct verdict *verdict, const struct told *told);

/* What is told cannot be so ("130 %", "by 26:00"): asks back in a friendly way. */
void estimate_impossible(const struct asked *asked, struct verdict *verdict,
                         const struct told *told);

/*
 * When the batteries end by the low end, as this account tells of them; 0 if it, the record or the
 * unit tells too little, what is ordered needs the wall, or that time is over already.
 */
int64_t estimate_runs_out(const struct asked *asked, const struct battery_account *account);
/* The same as a number of this answer, said where there is room for it; nothing if what runs is not
 * what is ordered. */
void estimate_mention_left(const struct asked *asked, const struct battery_account *account,
                           struct answer *answer);

/* A remembered charge is asked anew after this long. */
enum { ACCOUNT_OLD_S = 12 * 3600, SHORT_MINUTES = 60 };

#endif
