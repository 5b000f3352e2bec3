#!/usr/bin/env python3
"""Makes the faults that the model of alerts must catch.

usage: alerts_fault.py FAULT SOURCE.c OUTPUT.c

Fails if the source no longer has the place that the fault changes.
"""
import sys

FAULTS = {
    # Once somebody has taken an alert, nobody asks for the outcome.
    "no-recheck": ("""    step.next_utc_s = now_utc_s - age + (passed + 1) * policy->recheck_s;
""", """    step.next_utc_s = INT64_MAX;
"""),
    # A renter texts the person who has the conversation, and nobody minds how long they wait.
    "no-patience": ("""    return talk_rows_wait(caller->store, phone,
                          caller->now_utc_s + patience_s(caller->config, alert.level), fault);
""", """    return 0;
"""),
    # A step of the clock leaves the alerts' times where they were.
    "no-shift": ("""        if (store_do(store, shifts[i], VALUES(number(step_s)), fault) != 0) {
""", """        if (i > 0 && store_do(store, shifts[i], VALUES(number(step_s)), fault) != 0) {
"""),
    # Everyone was called in vain, and the renter does not hear of it.
    "no-honest-word": ("""    if (!is_due(caller, alert)) {
""", """    if (!is_due(caller, alert) || alert->level == ALERT_URGENT) {
"""),
    # The alert that others are called with goes, and nobody calls about them any more.
    "no-heir": ("""        (next != 0 && promote(store, alert_number, next, fault) != 0)) {
""", """        (next < 0 && promote(store, alert_number, next, fault) != 0)) {
"""),
}


def main(fault, source, output):
    text = open(source, encoding="utf-8").read()
    old, new = FAULTS[fault]
    if text.count(old) != 1:
        sys.exit(f"{source} has changed; not found once:\n{old}")
    open(output, "w", encoding="utf-8").write(text.replace(old, new))


main(*sys.argv[1:])
