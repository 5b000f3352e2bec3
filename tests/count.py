#!/usr/bin/env python3
"""Sums the test counts in a Meson test log: Check suites, Python's unittest, TAP.

usage: count.py testlog.txt
Prints two numbers, passed and failed. A program that failed without any count is one failure.
"""
import re
import sys

CHECK = re.compile(r"^\d+%: Checks: (\d+), Failures: (\d+), Errors: (\d+)", re.M)
UNITTEST = re.compile(r"^Ran (\d+) tests? in ", re.M)
UNITTEST_BAD = re.compile(r"^FAILED \((.*)\)", re.M)
TAP = re.compile(r"^(not )?ok \d+", re.M)
PROGRAM = re.compile(r"^=+ \d+/\d+ =+$", re.M)


def counts(output):
    passed = failed = 0
    for ran, failures, errors in CHECK.findall(output):
        bad = int(failures) + int(errors)
        passed, failed = passed + int(ran) - bad, failed + bad
    for ran in UNITTEST.findall(output):
        bad = sum(int(n) for line in UNITTEST_BAD.findall(output)
                  for n in re.findall(r"(?:failures|errors)=(\d+)", line))
        passed, failed = passed + int(ran) - bad, failed + bad
    for bad in TAP.findall(output):
        passed, failed = passed + (not bad), failed + bool(bad)
    return passed, failed


def main(path):
    passed = failed = 0
    for program in PROGRAM.split(open(path, encoding="utf-8", errors="replace").read())[1:]:
        p, f = counts(program)
        result = re.search(r"^result:\s+(.*)$", program, re.M)
        well = result is not None and result.group(1).startswith(("exit status 0", "OK"))
        if p + f == 0:
            p = 1 if well else 0
        if not well and f == 0:
            f = 1
        passed, failed = passed + p, failed + f
    print(passed, failed)


main(sys.argv[1])
