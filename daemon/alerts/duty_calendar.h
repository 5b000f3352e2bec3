/* Who is on duty, as the shell shows it. Pure: no I/O, no clock. */
#ifndef DUTY_CALENDAR_H
#define DUTY_CALENDAR_H

#include "duty.h"

enum { DUTY_CALENDAR_COLUMNS = 80 };

/*
 * The line at this moment (`duty`), first to last, when the turn began and when it ends, whether
 * the office is open, and the week around it as a calendar: a column a day, a row for each time of
 * day at which a turn starts in that week. Lines of at most DUTY_CALENDAR_COLUMNS columns, in
 * `arena`.
 */
char *duty_calendar(void *arena, const struct config *config, const struct duty *duty,
                    int64_t at_utc_s);

#endif
