"""The arithmetic of handlers/power a second time, in exact fractions, from the formulas in its
headers alone: battery_time.h, battery_set.h, charging.h, flight.h, cylinder.h, outlet.h, source.h,
trip.h. The program sums prints 100,000 random cases; each result must come out the same here.

Exact, but for the last fifth of a charge: its share is a logarithm, which the program has in a
table of thousandths, so there a thousandth of the slow minutes is allowed for. A trip is played
minute by minute: it may end a minute early, never late but for LATE.
"""
import itertools
import math
import subprocess
import sys
import unittest
from fractions import Fraction as F

ROUNDS, CASES = 8400, 100_000
LATE = F(1, 50)  # of a minute, by which parts of a percent may add up over a trip


def down(value):
    return math.floor(value)


def up(value):
    return math.ceil(value)


def battery_time(full, health, charge):
    return (down(F(full[0]) * F(health[0], 100) * F(charge[0], 100)),
            up(F(full[1]) * F(health[1], 100) * F(charge[1], 100)))


def case_battery_time(a):
    return battery_time(a[0:2], a[2:4], a[4:6])


def case_minutes_after(a):
    low, high, elapsed, on_battery = a
    return max(0, low - elapsed), max(0, high - elapsed) if on_battery else high


def case_plug_reserve(a):
    """15 min or 20 %, the greater, at most all."""
    return (min(a[0], max(15, up(F(a[0], 5)))),)


def case_battery_set(a):
    retired, full, record, count = a[0], a[1:3], a[3], a[4]
    healths, charges = [], []
    for i in range(record):
        measured, day = a[5 + 2 * i:7 + 2 * i]
        fresh = measured > 0 and 400 - day <= 366
        healths.append(measured if fresh else
                       min(measured, retired) if measured > 0 else retired)
    healths += [retired] * (count - record)
    rest = a[5 + 2 * record:]
    charges = [tuple(rest[2 * i:2 * i + 2]) for i in range(count)]
    if min(healths) == 0:
        return ("none",)
    pairings = [list(zip(some, charges)) for some in itertools.permutations(healths, count)]
    worst = min(pairings, key=lambda p: sum(h * c[0] for h, c in p))
    best = max(pairings, key=lambda p: sum(h * c[1] for h, c in p))
    return (sum(battery_time(full, (h, h), c)[0] for h, c in worst),
            sum(battery_time(full, (h, h), c)[1] for h, c in best))


def share(percent):
    """Of the minutes between 80 % and full."""
    return F(-math.log(1 - 0.9 * (percent - 80) / 20) / math.log(10)) if percent > 80 else F(0)


def from_empty(percent, to_80, to_full):
    return F(to_80) * min(percent, 80) / 80 + (to_full - to_80) * share(percent)


def span(start, end, to_80, to_full):
    return max(F(0), from_empty(end, to_80, to_full) - from_empty(start, to_80, to_full))


def check_charging_time(a, result):
    to_80, to_full, start, end = a[0:2], a[2:4], a[4:6], a[6]
    low = span(start[1], end, to_80[0], to_full[0])
    high = span(start[0], end, to_80[1], to_full[1])
    if end <= 80:
        return result == (down(low), up(high))
    slack = F(to_full[1] - to_80[1], 1000)
    return down(low - slack) <= result[0] <= down(low + slack) and \
        up(high - slack) <= result[1] <= up(high + slack)


def check_charging_level(a, result):
    """The low end is surely reached, and no whole percent more would be; the high end is one that
    it can't have passed."""
    to_80, to_full, start, minutes = a[0:2], a[2:4], a[4:6], a[6]
    low, high = result
    slack = F(to_full[1] - to_80[1], 1000)
    reached = start[0] <= low and span(start[0], low, to_80[1], to_full[1]) <= minutes + slack
    least = low == 100 or span(start[0], low + 1, to_80[1], to_full[1]) > minutes - slack
    slack = F(to_full[0] - to_80[0], 1000)
    most = high == 100 or span(start[1], high, to_80[0], to_full[0]) >= minutes - slack
    return reached and least and most


def case_flight_need(a):
    """Of half a minute the whole: what they need."""
    return (a[0] + sum(up(F(3, 2) * gate) for gate in a[1:]),)


def case_flight_batteries(a):
    need, another, lasts = a[0], a[1], list(a[2:])
    used = 0
    while need > 0:
        need -= lasts.pop(0) if lasts else another
        used += 1
    return (used,)


def case_watt_hours(a):
    wh, held = F(a[0], 10), a[1]
    if wh == 0:
        return 0, 0
    return (1, -1) if wh <= 100 else (2, held + 2) if wh <= 160 else (3, 0)


FACTORS = {"D": F(16, 100), "E": F(28, 100), "M": F(156, 100), "G": F(241, 100),
           "H": F(314, 100), "K": F(314, 100)}


def case_cylinder(a):
    size, psi, tenths = a
    low, high = max(0, psi - 50), min(5000, psi + 50)
    flow = F(tenths, 10)
    return (max(0, down((low - 200) * FACTORS[size] / flow)),
            max(0, up((high - 200) * FACTORS[size] / flow)))


def case_gauge_bar(a):
    """1 psi is 6.894757 kPa (NIST SP 811), given to four places of a psi in the header."""
    psi = a[0] * F("14.5038")
    return max(0, down(psi) - 50), min(5000, down(psi) + 1 + 50)


def case_charge_watts(a):
    return (up(F(a[0]) * 4 / 5 / F(a[1], 60)),)


def case_outlet(a):
    watts, amps = a
    drawn = F(watts) / F(85, 100) / 12
    return up(drawn / F(4, 5)), int(drawn <= amps), up(F(5, 4) * watts)


def case_source(a):
    unit, charge, watts = a
    return unit, unit + charge, int(watts >= up(F(5, 4) * (unit + charge)))


def case_source_lasts(a):
    unit, charge, wh = a[0], a[1], F(a[2], 10)
    return (min(6000, down(wh * F(9, 10) * F(85, 100) / (unit + charge) * 60)),
            min(6000, up(wh / unit * 60)))


def case_sleep(a):
    """Only so many as are in the unit: the emptiest low, the fullest high, in the worst and the
    best pairing with the healths."""
    held, full, rest = a[0], a[1:3], [a[3 + 3 * i:6 + 3 * i] for i in range(3)]
    healths = [health for health, _, _ in rest]
    lows = sorted(low for _, low, _ in rest)[:held]
    highs = sorted((high for _, _, high in rest), reverse=True)[:held]
    worst = min(itertools.permutations(healths, held),
                key=lambda some: sum(h * c for h, c in zip(some, lows)))
    best = max(itertools.permutations(healths, held),
               key=lambda some: sum(h * c for h, c in zip(some, highs)))
    return (sum(down(F(full[0] * h * c, 10000)) for h, c in zip(worst, lows)),
            sum(up(F(full[1] * h * c, 10000)) for h, c in zip(best, highs)))


def case_charging_plan(a):
    """The emptiest first, each where it is done soonest."""
    to, count, rest = a[0], a[1], a[2:]
    places = [rest[2 * i:2 * i + 2] for i in range(count)]
    rest = rest[2 * count:]
    charges = sorted((rest[i:i + 2] for i in range(0, len(rest), 2)), key=lambda c: c[0])
    busy = [(0, 0)] * count
    for low, high in charges:
        if low >= to:
            continue
        ends = [(b[0] + down(F(max(0, to - high) * p[0], 80)), b[1] + up(F((to - low) * p[1], 80)))
                for b, p in zip(busy, places)]
        best = min(range(count), key=lambda i: ends[i][1])
        busy[best] = ends[best]
    return max(b[0] for b in busy), max(b[1] for b in busy)


def check_trip(a, result):
    count, rest = a[0], a[1:]
    legs = [rest[2 * i:2 * i + 2] for i in range(count)]
    rest = rest[2 * count:]
    held = [F(rest[i] * rest[i + 1], 10000) for i in range(0, len(rest), 2)]
    total, lasts, runs_out_at, margin = result
    left, at, short = sum(held), F(0), False
    for minutes, full in legs:
        taken = min(F(minutes), left * full)
        left -= taken / full
        at += taken
        if taken < minutes:
            short = True
            break
    exact_total = sum(minutes for minutes, _ in legs)
    exact_margin = F(0) if short else left * legs[-1][1]
    if total != exact_total:
        return False
    if bool(lasts) == short:  # it ends with the batteries, to a part of a minute
        return exact_total - at < LATE if lasts else runs_out_at >= total - 1 and exact_margin < 1
    return runs_out_at <= at + LATE and at < runs_out_at + 2 and \
        (short or margin <= exact_margin + LATE < margin + 1 + len(held) + LATE)


CHECKS = {"charging_time": check_charging_time, "charging_level": check_charging_level,
          "trip": check_trip}


def value(word):
    return int(word) if word.lstrip("-").isdigit() else word


class Sums(unittest.TestCase):
    def test_every_result_comes_out_the_same_in_fractions(self):
        out = subprocess.run([SUMS, str(ROUNDS), "20261126"], capture_output=True, text=True,
                             check=True, timeout=120).stdout
        lines = out.splitlines()
        self.assertGreaterEqual(len(lines), CASES)
        for line in lines:
            given, result = line.split(" = ")
            name, *words = given.split()
            a = [value(word) for word in words]
            result = tuple(value(word) for word in result.split())
            if name in CHECKS:
                self.assertTrue(CHECKS[name](a, result), line)
            else:
                self.assertEqual(globals()["case_" + name](a), result, line)

    def test_what_is_wrong_is_noticed(self):
        self.assertFalse(check_charging_time([96, 96, 157, 157, 0, 0, 80], (95, 96)))
        self.assertFalse(check_charging_level([96, 96, 157, 157, 0, 0, 48], (41, 41)))
        self.assertFalse(check_trip([1, 60, 60, 100, 100], (60, 1, 60, 1)))
        self.assertFalse(check_trip([1, 90, 60, 100, 100], (90, 0, 62, 0)))
        self.assertNotEqual(case_source_lasts([35, 0, 950]), (162, 163))
        self.assertNotEqual(case_cylinder(["E", 2200, 20]), (280, 280))


if __name__ == "__main__":
    SUMS = sys.argv.pop(1)
    unittest.main()
