"""A store that cannot be written: texts are still read for signs, and nothing is claimed stored.

The store is broken in two ways: another program holds its lock, and every write of the daemon
fails (a file size limit of 0, which is what a full disk looks like to a program).
"""
import contextlib
import resource
import signal
import sqlite3

import daemon
from daemon import ANNA, BERT, FIRST_ON_CALL, WholeTest


class BrokenStore(WholeTest):
    @contextlib.contextmanager
    def locked(self):
        other = sqlite3.connect(self.database, isolation_level=None)
        other.execute("BEGIN IMMEDIATE")
        try:
            yield
        finally:
            other.execute("ROLLBACK")
            other.close()

    @contextlib.contextmanager
    def full(self):
        pid = self.daemon.process.pid
        before = resource.prlimit(pid, resource.RLIMIT_FSIZE)
        resource.prlimit(pid, resource.RLIMIT_FSIZE, (0, before[1]))
        try:
            yield
        finally:
            resource.prlimit(pid, resource.RLIMIT_FSIZE, before)

    def start_breakable(self):
        # A write past the limit sends SIGXFSZ, too; a full disk does not.
        self.start(preexec=lambda: signal.signal(signal.SIGXFSZ, signal.SIG_IGN))

    def check(self, broken):
        self.start_breakable()
        with broken():
            answer = self.send(BERT, "i have chest pain", "b-1", status=503)
            self.assertEqual(answer.headers["Content-Type"], "application/problem+json")
            self.assertIn("Retry-After", answer.headers)
            self.expect(BERT, "911")
            self.expect(FIRST_ON_CALL, "chest pain")
            # Once a sender in 5 minutes; an ordinary text is not answered at all.
            self.send(BERT, "i have chest pain", "b-1", status=503)
            self.send(ANNA, "when is it due", "b-2", status=503)
            # Both have been through the loop, and what they might send would be there by now.
            self.send(ANNA, "i have chest pain", "b-3", status=503)
            self.expect(ANNA, "911")
        self.assertEqual(len(self.texts_to(BERT)), 1)
        self.assertEqual(len(self.texts_to(ANNA)), 1)
        self.assertEqual(self.count("SELECT count(*) FROM text"), 0)

    def check_repaired(self):
        """The gateway tries again, as a 503 asks it to: now it is stored and answered."""
        self.send(BERT, "i have chest pain", "b-1")
        self.expect(BERT, "911")
        self.send(ANNA, "when is it due", "b-2")
        self.expect(ANNA, "Feb 20")
        self.assertEqual(self.count("SELECT count(*) FROM verdict"), 2)

    def test_a_locked_store_loses_no_emergency(self):
        self.check(self.locked)
        self.check_repaired()

    def test_a_full_disk_loses_no_emergency(self):
        self.check(self.full)
        self.check_repaired()

    def test_health_says_that_the_store_is_broken_and_that_it_is_well_again(self):
        from stand_in_gateway import request
        self.start_breakable()
        with self.full():
            self.send(ANNA, "when is it due", "b-2", status=503)
            self.assertEqual(request("127.0.0.1", self.daemon.port, "GET", "/health").status, 503)
        self.send(ANNA, "when is it due", "b-2")
        self.assertEqual(request("127.0.0.1", self.daemon.port, "GET", "/health").status, 200)


if __name__ == "__main__":
    daemon.main()
