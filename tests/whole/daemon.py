"""Few words for tests of the whole daemon: start, send, expect, restart, stop.

Each test runs a real `hutbell serve` on a free port of the loopback, with a SQLite file and a
configuration of its own in a folder that goes away afterwards, and a stand-in gateway on the other
side. Tests wait for conditions, never for a time to pass; where the daemon itself waits for
minutes, its played clock runs fast.

The program is named by the environment: HUTBELL=build/daemon/hutbell. Needs Python 3.11 only.
"""
import atexit
import contextlib
import copy
import csv
import fcntl
import io
import json
import os
import pathlib
import shutil
import signal
import sqlite3
import subprocess
import sys
import tempfile
import threading
import time
import unittest

TOP = pathlib.Path(__file__).resolve().parents[2]
sys.path.insert(0, str(TOP / "demo"))

import stand_in_gateway  # noqa: E402

PROGRAM = os.environ.get("HUTBELL", str(TOP / "build" / "daemon" / "hutbell"))
KEEPER = os.environ.get("KEEP_CONTENT")  # tests/keep_content.c of the same build, if there is one
PATIENCE_S = 180  # a machine may be slow; no test needs this long when all is well

# Who is who in the tests. 555-0100 to 555-0199 are nobody's numbers.
OFFICE = "+12085550100"
ANNA = "+12085550111"     # continuous 2 at rest and asleep, unit brook, three batteries
BERT = "+12085550112"     # pulse 3, unit wren
STRANGER = "+12085550150"
FIRST_ON_CALL = "+12085550190"
SECOND_ON_CALL = "+12085550191"
THIRD_ON_CALL = "+12085550192"

# A winter evening, 7 pm in the valley.
EVENING_UTC_S = 1771034400  # 2026-02-14T02:00:00Z


# What the tests ask about, with all signs. All topics would take seconds to read at each start, and
# which others there are should not change what these tests see.
TOPICS = ("battery-life", "charge-car", "contact", "due-date", "hours-left", "return-pack",
          "who-are-you")


# These name topics that are not there; what is learnt of them the unit tests see.
OF_ALL_TOPICS = ("*-request.txt", "*-fault.txt", "*-inquiry.txt")


def some_content():
    """A folder of content with only these topics, for as long as this process lives."""
    folder = pathlib.Path(tempfile.mkdtemp(prefix="hutbell-content-"))
    atexit.register(shutil.rmtree, folder, True)
    for name in ("signs", "equipment", "words"):
        shutil.copytree(TOP / "kb" / name, folder / name,
                        ignore=shutil.ignore_patterns(*OF_ALL_TOPICS))
    (folder / "topics" / "en").mkdir(parents=True)
    for name in TOPICS:
        shutil.copy(TOP / "kb" / "topics" / "en" / f"{name}.md", folder / "topics" / "en")
    return folder


ALL_SIGNS = tuple(file.stem for file in (TOP / "kb" / "signs" / "en").iterdir())
ASKED_ENOUGH = 40  # ways of asking: `check` misses none of a topic that has 25


def thinned(text):
    """A topic or a sign without its whole texts, of which a second opinion on the signs is learnt,
    and with no more ways of asking than suffice."""
    head, *sections = text.split("\n## ")
    kept = [head]
    for section in sections:
        heading, _, lines = section.partition("\n\n")
        if heading == "Asked as":
            lines = "".join(lines.splitlines(keepends=True)[:ASKED_ENOUGH])
        if heading != "Whole texts":
            kept.append(f"{heading}\n\n{lines}")
    return "\n## ".join(kept)


def few_of_the_content(folder, topics, signs):
    """Puts the content there with no more than these, thinned: made ready in no time."""
    left_out = shutil.ignore_patterns("*-elsewhere.txt", "*-harmless.txt", "*-known.txt",
                                      "*-ordinary.txt", *OF_ALL_TOPICS)
    for name in ("equipment", "words"):
        shutil.copytree(TOP / "kb" / name, folder / name, ignore=left_out)
    for name, wanted in (("topics", topics), ("signs", signs)):
        for file in (TOP / "kb" / name).glob("*/*.md"):
            if file.stem in wanted:
                thin = folder / file.relative_to(TOP / "kb")
                thin.parent.mkdir(parents=True, exist_ok=True)
                thin.write_text(thinned(file.read_text()))


def shared_cache():
    """Where every test of this build finds what is made of the content: made once, by the first."""
    folder = pathlib.Path(PROGRAM).resolve().parent / "tests-cache"
    if KEEPER is not None:
        with open(f"{folder}.lock", "w") as lock:
            fcntl.flock(lock, fcntl.LOCK_EX)
            subprocess.run([KEEPER, KB, folder], check=True)
    return folder


KB = some_content()
CACHE = shared_cache()
SHIPPED_CACHE = pathlib.Path(PROGRAM).resolve().parents[1] / "tests" / "kb-cache"  # unit/shipped.h
imported = {}  # text of a CSV file -> bytes of a store that holds it


def merged(base, changes):
    """`base` with `changes` laid over it, object by object; None takes a key away."""
    result = copy.deepcopy(base)
    for key, value in changes.items():
        if value is None:
            result.pop(key, None)
        elif isinstance(value, dict) and isinstance(result.get(key), dict):
            result[key] = merged(result[key], value)
        else:
            result[key] = copy.deepcopy(value)
    return result


def free_of_sanitizer_noise(lines):
    return [line for line in lines if line.startswith("{")]


class Daemon:
    """One `hutbell serve`. Its log is read as it is written; .port is told there."""

    def __init__(self, program, config_file, preexec=None):
        self.lines, self.events = [], []
        self.port = None
        self._changed = threading.Condition()
        self.process = subprocess.Popen(
            [program, "serve", "--config", str(config_file)], stdin=subprocess.DEVNULL,
            stderr=subprocess.PIPE, stdout=subprocess.DEVNULL, preexec_fn=preexec)
        self._reader = threading.Thread(target=self._read, daemon=True)
        self._reader.start()

    def _read(self):
        for raw in self.process.stderr:
            line = raw.decode(errors="replace").rstrip("\n")
            with self._changed:
                self.lines.append(line)
                with contextlib.suppress(ValueError):
                    if line.startswith("{"):
                        self.events.append(json.loads(line))
                self._changed.notify_all()
        with self._changed:
            self._changed.notify_all()

    def log_until(self, event, after=0, **pairs):
        """The first line of this event (from the line `after` on) with these pairs; waits."""
        end = time.monotonic() + PATIENCE_S

        def found():
            return next((e for e in self.events[after:] if e.get("event") == event and
                         all(str(e.get(k)) == str(v) for k, v in pairs.items())), None)

        with self._changed:
            while (hit := found()) is None:
                if time.monotonic() > end or (self.process.poll() is not None and
                                              not self._reader.is_alive()):
                    raise AssertionError(f"no event {event} {pairs} in the log:\n" + self.log())
                self._changed.wait(0.05)
        return hit

    def wait_until_ready(self):
        self.port = int(self.log_until("listening")["port"])

    def log(self):
        return "\n".join(self.lines[-30:])

    def ends(self):
        """Waits for its end; returns the exit status."""
        status = self.process.wait(PATIENCE_S)
        self._reader.join(PATIENCE_S)
        self.process.stderr.close()
        return status

    def stop(self):
        if self.process.poll() is None:
            self.process.send_signal(signal.SIGTERM)
        return self.ends()

    def kill(self):
        self.process.kill()
        return self.ends()


class WholeTest(unittest.TestCase):
    """Base of all whole-daemon tests. setUp() prepares, start() starts."""

    maxDiff = None
    program = PROGRAM

    def setUp(self):
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="hutbell-test-"))
        self.addCleanup(shutil.rmtree, self.folder, True)
        self.database = self.folder / "hutbell.db"
        self.config_file = self.folder / "hutbell.json"
        self.gateway = None
        self.daemon = None
        self.used = set()  # places in gateway.delivered that expect() has matched
        self.clock(speed=1)

    # ---- set-up

    def clock(self, speed, start_utc_s=EVENING_UTC_S):
        """The daemon's clock starts at this moment and runs `speed` times as fast."""
        self.played_start = start_utc_s
        self.played_speed = speed

    def move_clock(self, seconds):
        """At the next start it is so much later than it is now."""
        self.played_start = int(self.gateway.clock.now() + seconds)

    def configuration(self, changes=None):
        gateway = {
            "authentication": {"kind": "standard-webhooks", "secrets": [self.gateway.secret]},
            "message": {"format": "json", "sender": "/from", "text": "/words", "id": "/text_id",
                        "sent": "/sent_at", "recipient": "/to", "attachments": "/pictures"},
            "delivery": {"format": "json", "message_id": "/text_id", "status": "/state",
                         "words": {"arrived": "delivered", "on its way": "sent",
                                   "lost": "failed"}},
            "send": {"method": "POST", "url": f"http://127.0.0.1:{self.gateway.port}/outgoing",
                     "json": {"to": "{to}", "from": "{from}", "words": "{text}"},
                     "message_id": "/text_id", "from": OFFICE, "timeout_ms": 5000,
                     "secret": self.gateway.secret},
        }
        base = {
            "listen": {"address": "127.0.0.1", "port": 0},
            "database": "hutbell.db",
            "kb_folder": str(KB),
            "cache_folder": str(CACHE),
            "zone": "America/Denver",
            "country": {"code": "1", "national_prefix": "1", "national_digits": 10},
            "house": {
                "company": "Larkspur Air Rentals", "phone": "208-555-0100",
                "address": "12 Mill Road, Larkspur", "hours": "8 am to 6 pm, every day",
                "return_how": "Bring it to the counter, or leave it with your lodge's desk.",
                "emergency_number": "911", "emergency_reading": 85},
            "gateways": {"valley": gateway},
            "reply_gateway": "valley",
            "staff": [{"name": "Robin", "phone": FIRST_ON_CALL},
                      {"name": "Kim", "phone": SECOND_ON_CALL},
                      {"name": "Sam", "phone": THIRD_ON_CALL}],
            "log": {"level": "info", "format": "json"},
            "played_clock": {"start": stand_in_gateway.rfc3339(self.played_start),
                             "speed": self.played_speed},
        }
        return merged(base, changes or {})

    def write_config(self, changes=None):
        self.config_file.write_text(json.dumps(self.configuration(changes), indent=1))

    def import_rentals(self, rows=None):
        """Loads Anna and Bert (or these rows) as the office does. Into a new store the same rows
        are imported once; after that it is copied, which is quicker."""
        text = rentals_csv(rows or [anna(), bert()])
        is_new = not self.database.exists()
        if is_new and text in imported:
            self.database.write_bytes(imported[text])
            return
        file = self.folder / "rentals.csv"
        file.write_text(text)
        self.run_program("import", "rentals", str(file), "--config", str(self.config_file))
        if is_new:
            self.assertEqual(list(self.folder.glob("*-wal")), [], "its store is closed")
            imported[text] = self.database.read_bytes()

    def run_program(self, *arguments, status=0, input=None):
        """Runs a sub-command to its end; returns what it printed."""
        done = subprocess.run([PROGRAM, *arguments], input=input, capture_output=True, text=True,
                              timeout=PATIENCE_S)
        self.assertEqual(done.returncode, status, f"{arguments}:\n{done.stdout}{done.stderr}")
        return done.stdout if status == 0 else done.stdout + done.stderr

    # ---- the words

    def start(self, changes=None, rentals=True, preexec=None):
        """A gateway, a configuration with these changes, Anna's and Bert's rentals, the daemon."""
        if self.gateway is None:
            self.gateway = stand_in_gateway.Gateway().up()
            self.addCleanup(self.gateway.down)
        self.changes = changes
        self.write_config(changes)
        if rentals:
            self.import_rentals()
        self.serve(preexec)

    def serve(self, preexec=None):
        self.daemon = Daemon(self.program, self.config_file, preexec)
        self.addCleanup(self._end, self.daemon)
        self.daemon.wait_until_ready()
        self.gateway.daemon_port = self.daemon.port
        self.gateway.clock = stand_in_gateway.PlayedClock(self.played_start, self.played_speed)

    def _end(self, daemon):
        """At the end of each test, also of one that failed: it must stop cleanly."""
        if daemon.process.poll() is None:
            self.assertEqual(daemon.stop(), 0, daemon.log())
        for line in daemon.lines:
            self.assertNotIn("runtime error:", line, daemon.log())
            self.assertNotIn("ERROR: AddressSanitizer", line, daemon.log())

    def stop(self):
        self.assertEqual(self.daemon.stop(), 0, self.daemon.log())

    def restart(self, later_s=0):
        """Stops and starts again, `later_s` seconds later by the played clock."""
        self.stop()
        self.serve_again(later_s)

    def serve_again(self, later_s=0):
        """Starts again after a stop or a kill; the played clock goes on."""
        self.move_clock(later_s)
        self.write_config(self.changes)
        self.serve()

    def send(self, sender, words, text_id=None, status=200, **more):
        """Texts as `sender`; the daemon must answer with `status`. Returns the Answer."""
        answer = self.gateway.text(sender, words, text_id, **more)
        self.assertEqual(answer.status, status, f"{answer}\n{self.daemon.log()}")
        return answer

    def expect(self, to, *pieces):
        """Waits for a text to `to` that holds all these pieces, each text counted once."""
        def find():
            for place, attempt in enumerate(self.gateway.delivered):
                if place not in self.used and attempt.to == to and \
                        all(piece.lower() in attempt.words.lower() for piece in pieces):
                    return place
            return None

        if not self.gateway.wait(lambda: find() is not None, PATIENCE_S):
            self.fail(f"no text to {to} with {pieces}; delivered were:\n" +
                      "\n".join(map(repr, self.gateway.delivered[-20:])) + "\nlog:\n" +
                      self.daemon.log())
        place = find()
        self.used.add(place)
        return self.gateway.delivered[place]

    def texts_to(self, to):
        return [attempt.words for attempt in self.gateway.delivered if attempt.to == to]

    def wait(self, condition, what):
        if not self.gateway.wait(condition, PATIENCE_S):
            self.fail(f"never: {what}\n{self.daemon.log()}")

    def settled(self):
        """Waits until nothing is due to be sent."""
        self.wait(lambda: self.count("SELECT count(*) FROM outbox_due") == 0, "outbox empty")

    # ---- looking into the store

    def rows(self, sql, *values):
        with contextlib.closing(sqlite3.connect(f"file:{self.database}?mode=ro", uri=True,
                                                timeout=10)) as store:
            return store.execute(sql, values).fetchall()

    def count(self, sql, *values):
        return self.rows(sql, *values)[0][0]


# ---- rentals

def anna(**changes):
    """Continuous flow on the large unit, in a cabin; batteries with measured health."""
    return {"rental_id": "R-1001", "state": "out", "name": "Anna Fieldmouse", "language": "en",
            "phone_1": ANNA, "phone_1_whose": "renter", "phone_1_reach": "any", "unit": "brook",
            "serial": "BR-0204", "rest_mode": "continuous", "rest_setting": "2",
            "sleep_mode": "continuous", "sleep_setting": "2", "orders_dated": "2026-01-28",
            "orders_confirmed_by": "Dr. Tansy's office",
            "battery_1": "B-1", "battery_1_health": "96", "battery_1_measured": "2026-02-06",
            "battery_2": "B-2", "battery_2_health": "90", "battery_2_measured": "2026-02-06",
            "battery_3": "B-3", "battery_3_health": "88", "battery_3_measured": "2026-02-06",
            "chargers": "1", "car_charger": "yes", "start": "2026-02-10 15:00",
            "due": "2026-02-20 10:00", "emergency_address": "4 Upper Lodge Road, Larkspur",
            "place": "Cabin 4, Upper Lodge", **changes}


def bert(**changes):
    """Pulse on the small unit; the same for every activity."""
    return {"rental_id": "R-1002", "state": "out", "name": "Bert Alder", "language": "en",
            "phone_1": BERT, "phone_1_whose": "renter", "phone_1_reach": "any", "unit": "wren",
            "serial": "WR-0033", "rest_mode": "pulse", "rest_setting": "3",
            "walking_mode": "pulse", "walking_setting": "3", "sleep_mode": "pulse",
            "sleep_setting": "3", "orders_dated": "2026-01-28",
            "orders_confirmed_by": "Dr. Tansy's office",
            "battery_1": "W-1", "battery_1_health": "95", "battery_1_measured": "2026-02-06",
            "battery_2": "W-2", "battery_2_health": "95", "battery_2_measured": "2026-02-06",
            "chargers": "1", "car_charger": "no", "start": "2026-02-11 15:00",
            "due": "2026-02-18 10:00", "place": "Aspen House", **changes}


def rentals_csv(rows):
    """The office's file, with the columns of the demo's."""
    columns = (TOP / "demo" / "rentals.csv").read_text().split("\n", 1)[0].split(",")
    out = io.StringIO()
    writer = csv.DictWriter(out, columns, restval="", lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows)
    return out.getvalue()


def main():
    unittest.main(verbosity=2)
