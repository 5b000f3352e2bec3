"""kill -9 at random moments: a text that got its 200 is never lost and never answered twice.

At each kill at least 20 requests are in flight (none of them is ever answered) and at least 5 sends
are in the gateway's hands; both numbers are printed. After each restart:

  - every text that got a 200 has exactly one verdict,
  - its replies are sent (the gateway has them, under their own key) or still due,
  - an emergency among them stands in an alert,
  - what got no 200 is sent again by the gateway, under its old id, and then counts once as well.

The harness proves itself on a program that lets its answers out before COMMIT: it must be caught.

HUTBELL is the program, HUTBELL_EARLY the one with the fault, SEED (printed) chooses the moments.
"""
import os
import pathlib
import random
import sys
import threading
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / "whole"))

import daemon  # noqa: E402
import load  # noqa: E402
import stand_in_gateway  # noqa: E402

SEED = int(os.environ.get("SEED", "20260214"))
ROUNDS = int(os.environ.get("ROUNDS", "12"))
IN_FLIGHT, PENDING = 20, 5
CONNECTIONS = 48

WORDS = [
    "how do i charge it in the car",
    "what is pulse",
    "how do I pack it up to send back",
    "when is it due",
    "i have chest pain",
    "2 full batteries how long will they last",
    "who are you",
    "is the laundry open on sunday",
]
EMERGENCY = "i have chest pain"


class SlowGateway:
    """Holds each send for a random while, so that some are always in its hands."""

    def __init__(self, gateway, dice):
        self.gateway, self.dice = gateway, dice
        self.lock = threading.Lock()
        self.held = 0
        gateway.accept = self.hold

    def hold(self, _attempt):
        with self.lock:
            self.held += 1
            pause = self.dice.random() * 0.08
        time.sleep(pause)
        with self.lock:
            self.held -= 1


class Killed(daemon.WholeTest):
    def setUp(self):
        super().setUp()
        self.dice = random.Random(SEED)
        self.sent = {}       # id -> words, all that were ever sent
        self.answered = set()
        self.unanswered = []

    def begin(self, program):
        self.program = program
        self.gateway = stand_in_gateway.Gateway().up()
        self.addCleanup(self.gateway.down)
        self.slow = SlowGateway(self.gateway, random.Random(SEED + 1))
        self.start({"limits": {"connections": 200, "outbox_running": 16},
                    "floods": {"sender_texts": 0, "same_texts": 0, "day_texts": 0, "replies": 0}})

    # ---- requests

    def request(self, text_id):
        """The gateway's request for this text: same id and body at each try, a fresh signature."""
        number = int(text_id.split("-")[1])
        sender = f"+1208555{100 + 20 + number % 30:04d}"
        body = self.gateway.body(sender, self.sent[text_id], text_id)
        headers = stand_in_gateway.signed_headers(self.gateway.secret, text_id,
                                                  int(self.gateway.clock.now()), body)
        return text_id, load.http_post("/messages/valley", headers, body)

    def next_new(self):
        text_id = f"t-{len(self.sent)}"
        self.sent[text_id] = self.dice.choice(WORDS)
        return self.request(text_id)

    # ---- one round

    def kill_at_a_random_moment(self):
        """Returns (requests in flight, sends pending) at the kill."""
        requests = load.Load(self.daemon.port, CONNECTIONS, self.next_new)
        wanted = self.dice.randrange(CONNECTIONS, 400)
        pause = self.dice.random() * 0.004
        answers = 0
        end = time.monotonic() + daemon.PATIENCE_S
        requests.fill()
        while answers < wanted or self.slow.held < PENDING:
            self.assertLess(time.monotonic(), end, f"stuck: {answers} answers, "
                            f"{self.slow.held} pending\n{self.daemon.log()}")
            for text_id, status in requests.step():
                self.assertEqual(status, 200, self.daemon.log())
                self.answered.add(text_id)
                answers += 1
            requests.fill()
        time.sleep(pause)  # the random moment itself, not a wait for anything
        pending = self.slow.held
        self.daemon.kill()
        for text_id, status in requests.drain():
            self.assertEqual(status, 200)
            self.answered.add(text_id)
        self.unanswered = requests.unanswered()
        requests.close()
        return len(self.unanswered), pending

    def send_the_unanswered_again(self):
        names = iter(self.unanswered)

        def next_old():
            text_id = next(names, None)
            return None if text_id is None else self.request(text_id)

        requests = load.Load(self.daemon.port, CONNECTIONS, next_old)
        requests.fill()
        while requests.in_flight:
            for text_id, status in requests.step():
                self.assertEqual(status, 200, self.daemon.log())
                self.answered.add(text_id)
            requests.fill()
        requests.close()
        self.unanswered = []

    # ---- the count

    def losses(self):
        """What is wrong with the texts that got their 200; an empty list if nothing is."""
        verdicts = dict(self.rows(
            "SELECT text.gateway_id, count(verdict.id) FROM text LEFT JOIN verdict "
            "ON verdict.text_id = text.id AND verdict.supersedes IS NULL GROUP BY 1"))
        texts = dict(self.rows("SELECT gateway_id, count(*) FROM text GROUP BY 1"))
        # Who texts the same emergency again and again gets no further copy within a minute.
        silent = {t for (t,) in self.rows(
            "SELECT gateway_id FROM text JOIN verdict ON verdict.text_id = text.id"
            " WHERE body = ? AND json_array_length(verdict.json, '$.replies') = 0", EMERGENCY)}
        replied = {row[0] for row in self.rows(
            "SELECT DISTINCT gateway_id FROM text JOIN outbox ON text_id = text.id "
            "WHERE about = 'reply'")}
        called = {row[0] for row in self.rows(
            "SELECT DISTINCT gateway_id FROM text JOIN alert_event ON text_id = text.id")}
        wrong = [f"{t}: {texts.get(t, 0)} rows" for t in self.answered if texts.get(t) != 1]
        wrong += [f"{t}: {verdicts.get(t, 0)} verdicts"
                  for t in self.answered if verdicts.get(t) != 1]
        wrong += [f"{t}: no reply to {self.sent[t]}"
                  for t in self.answered if t not in replied and t not in silent]
        wrong += [f"{t}: an emergency without alert" for t in self.answered
                  if self.sent[t] == EMERGENCY and t not in called]
        return wrong + self.unsent()

    def unsent(self):
        """Texts of ours that are neither due nor in the gateway's hands."""
        no_longer_due = self.rows(
            "SELECT id, key, (SELECT group_concat(event) FROM outbox_event "
            "WHERE outbox_id = outbox.id) FROM outbox "
            "WHERE id NOT IN (SELECT outbox_id FROM outbox_due)")
        # Read last: the daemon goes on sending, and what it stored as sent was tried before.
        keys = {attempt.key for attempt in list(self.gateway.tries)}
        return [f"text {number} of ours, {events}: neither sent nor due"
                for number, key, events in no_longer_due
                if key not in keys and events != "replaced"]

    def rounds(self, count):
        """Yields what is wrong after each kill and restart."""
        killed = 0
        while killed < count:
            in_flight, pending = self.kill_at_a_random_moment()
            counts = in_flight >= IN_FLIGHT
            print(f"  kill {killed + 1}: {in_flight} requests in flight, {pending} sends pending, "
                  f"{len(self.answered)} texts answered so far"
                  f"{'' if counts else ' (too few in flight, once more)'}", flush=True)
            self.serve_again()
            wrong = self.losses()
            self.send_the_unanswered_again()
            killed += counts
            yield wrong + self.losses()

    # ---- the tests

    def test_nothing_is_lost_and_nothing_is_doubled_by_kill_nine(self):
        print(f"\n  seed {SEED}", flush=True)
        self.begin(daemon.PROGRAM)
        for wrong in self.rounds(ROUNDS):
            self.assertEqual(wrong[:10], [])
        self.gateway.accept = lambda attempt: None
        self.settled()
        keys = [attempt.key for attempt in self.gateway.delivered]
        self.assertEqual(len(keys), len(set(keys)))
        stored = {row[0] for row in self.rows(
            "SELECT key FROM outbox WHERE id NOT IN "
            "(SELECT outbox_id FROM outbox_event WHERE event = 'replaced')")}
        self.assertEqual(stored - set(keys), set(), "every reply reached its phone in the end")
        self.assertEqual(self.daemon.stop(), 0)

    def test_a_program_that_answers_before_commit_is_caught(self):
        print(f"\n  seed {SEED}", flush=True)
        self.begin(os.environ["HUTBELL_EARLY"])
        for wrong in self.rounds(40):
            if wrong:
                print(f"  caught: {wrong[0]} (and {len(wrong) - 1} more)", flush=True)
                self.daemon.kill()
                return
        self.fail("a program that answers before COMMIT went through unnoticed")


if __name__ == "__main__":
    daemon.main()
