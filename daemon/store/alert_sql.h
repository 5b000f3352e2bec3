/* What the rows of alerts share. Private to store/alert*.c. */
#ifndef ALERT_SQL_H
#define ALERT_SQL_H

#include "alert_rows.h"

/* As the column alert_event.event has it. */
const char *alert_event_name(enum alert_event event);

/* Whoever took the alert of alert_due gave no outcome in time, so that others were called again. */
#define IS_LAPSED                                                                                  \
    "EXISTS (SELECT 1 FROM alert_event e WHERE e.alert_number ="                                   \
    " coalesce(alert_due.group_number, alert_due.alert_number)"                                    \
    " AND e.event = 'rechecked' AND e.id > (SELECT max(t.id) FROM alert_event t"                   \
    " WHERE t.alert_number = e.alert_number AND t.event = 'taken'))"

/* The alert that this one is called with: itself, unless it has joined another's mains failure. */
#define HEAD_OF(number)                                                                            \
    "(SELECT coalesce(g.group_number, g.alert_number) FROM alert_due g WHERE g.alert_number "      \
    "= " number ")"

#endif
