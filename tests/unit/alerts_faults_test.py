#!/usr/bin/env python3
"""The model of alerts notices each fault that was planted (alerts_fault.py), and says what is wrong.

usage: alerts_faults_test.py MODEL…: programs named alerts_model_FAULT
"""
import pathlib
import subprocess
import sys
import unittest

EVENTS = "4000"  # no more than the tests play every time
NOTICED = {
    "no-recheck": "has its next step in",
    "no-patience": "nobody minds that",
    "no-shift": "due at once",
    "no-honest-word": "its renter does not know",
    "no-heir": "is called with one that is",
}
models = {}


class PlantedFaults(unittest.TestCase):
    def test_each_is_noticed_and_named(self):
        for fault, words in NOTICED.items():
            with self.subTest(fault):
                played = subprocess.run([models[fault], EVENTS, "1"], capture_output=True,
                                        text=True, timeout=300)
                self.assertNotEqual(played.returncode, 0)
                self.assertIn(words, played.stderr)


if __name__ == "__main__":
    for model in sys.argv[1:]:
        models[pathlib.Path(model).name.removeprefix("alerts_model_")] = model
    unittest.main(argv=sys.argv[:1])
