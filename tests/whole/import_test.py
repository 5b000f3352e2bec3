"""`hutbell import rentals`: all or nothing, each fault with its line, column and remedy."""
import contextlib
import os
import pty
import signal
import sqlite3
import subprocess

import daemon
from daemon import ANNA, BERT, PATIENCE_S, PROGRAM, WholeTest, anna, bert, rentals_csv
from stand_in_gateway import Gateway


class Import(WholeTest):
    def setUp(self):
        super().setUp()
        self.gateway = Gateway()
        self.gateway.port = 9
        self.write_config()
        self.file = self.folder / "rentals.csv"

    def load(self, text, status=0):
        self.file.write_bytes(text if isinstance(text, bytes) else text.encode())
        return self.run_program("import", "rentals", str(self.file), "--config",
                                str(self.config_file), status=status)

    def rentals(self):
        if not self.database.exists():
            return 0
        with contextlib.closing(sqlite3.connect(self.database)) as store:
            return store.execute("SELECT count(*) FROM rental_row").fetchone()[0]

    def says(self, phone, words="when is it due"):
        return self.run_program("ask", "--config", str(self.config_file), "--as", phone, words)

    def test_loaded_rentals_answer(self):
        self.load(rentals_csv([anna(), bert()]))
        self.assertIn("Feb 20", self.says(ANNA))
        self.assertIn("Feb 18", self.says(BERT))

    def test_each_fault_is_told_with_line_and_column_and_nothing_is_changed(self):
        said = self.load(rentals_csv([
            anna(), bert(due="some day"), bert(rental_id="R-3", rest_setting="two"),
            bert(rental_id="R-4", state="gone"), bert(rental_id="R-5", phone_1="12"),
            bert(rental_id="R-6", unit="heron"), bert(rental_id="")]), status=1)
        for line, column in ((3, "due"), (4, "rest_setting"), (5, "state"), (6, "phone_1"),
                             (7, "unit"), (8, "rental_id")):
            found = [each for each in said.splitlines() if f":{line}: {column}: " in each]
            self.assertTrue(found, f"line {line}, {column} in:\n{said}")
        self.assertEqual(self.rentals(), 0)

    def test_a_column_that_is_not_known_is_a_fault(self):
        said = self.load(rentals_csv([anna()]).replace("rental_id,state", "rental_id,colour", 1),
                         status=1)
        self.assertIn("colour", said)
        self.assertEqual(self.rentals(), 0)

    def test_the_same_rental_twice_in_a_file_is_a_fault(self):
        said = self.load(rentals_csv([anna(), anna()]), status=1)
        self.assertIn(":3:", said)

    def test_an_unfinished_quote_is_a_fault(self):
        text = rentals_csv([anna(), bert()])
        self.load(text.replace("Bert Alder", '"Bert Alder'), status=1)
        self.assertEqual(self.rentals(), 0)

    def test_a_later_file_changes_a_rental_and_keeps_the_old_row(self):
        self.load(rentals_csv([bert()]))
        self.load(rentals_csv([bert(due="2026-02-19 10:00")]))
        self.assertIn("Feb 19", self.says(BERT))
        self.assertEqual(self.rentals(), 2)

    def test_the_same_file_again_changes_nothing(self):
        self.load(rentals_csv([bert()]))
        self.load(rentals_csv([bert()]))
        self.assertEqual(self.rentals(), 1)

    def test_windows_line_ends_and_a_byte_order_mark_are_fine(self):
        self.load(b"\xef\xbb\xbf" + rentals_csv([bert()]).replace("\n", "\r\n").encode())
        self.assertIn("Feb 18", self.says(BERT))

    def test_what_a_spreadsheet_elsewhere_saves_is_read(self):
        text = rentals_csv([bert(name="José Alder", place="Aspen House")])
        text = text.replace(",", ";").replace("\n", "\r\n")
        done = self.load(text.encode("windows-1252"))
        self.assertIn("1 new", done)
        self.assertIn("Feb 18", self.says(BERT))
        self.export_has("José Alder")

    def export_has(self, words):
        self.assertIn(words, self.run_program("export", "--config", str(self.config_file)))

    def test_a_dry_run_says_what_would_change_and_changes_nothing(self):
        self.file.write_text(rentals_csv([anna(), bert()]))
        arguments = ("import", "rentals", str(self.file), "--config", str(self.config_file),
                     "--dry-run")
        said = self.run_program(*arguments)
        self.assertIn("2 new, 0 changed", said)
        self.assertFalse(self.database.exists())
        self.load(rentals_csv([bert()]))
        self.file.write_text(rentals_csv([anna(), bert(unit="brook", serial="BR-9")]))
        said = self.run_program(*arguments)
        self.assertIn("1 new, 1 changed, 0 as they were", said)
        self.assertIn("1 with another unit", said)
        self.assertIn("staff would be called", said)
        self.assertIn("nothing was changed", said)
        self.assertEqual(self.rentals(), 1)

    def test_a_dry_run_tells_faults_too(self):
        self.file.write_text(rentals_csv([bert(due="soon")]))
        said = self.run_program("import", "rentals", str(self.file), "--dry-run", "--config",
                                str(self.config_file), status=1)
        self.assertIn(":2: due:", said)

    def test_bytes_that_a_terminal_would_obey_are_not_printed(self):
        said = self.load(rentals_csv([anna()]).replace("rental_id,", "rental_id,\x1b[2J,", 1),
                         status=1)
        self.assertNotIn("\x1b", said)

    def test_a_terminal_sees_how_far_it_is(self):
        self.file.write_text(rentals_csv(crowd(300)))
        here, there = pty.openpty()
        with open(here, "rb", closefd=True) as shown:
            done = subprocess.run([PROGRAM, "import", "rentals", str(self.file), "--config",
                                   str(self.config_file)], stdin=subprocess.DEVNULL,
                                  stdout=subprocess.PIPE, stderr=there, timeout=PATIENCE_S)
            os.close(there)
            text = b""
            with contextlib.suppress(OSError):  # how a terminal's end is told
                while more := shown.read1(65536):
                    text += more
        self.assertEqual(done.returncode, 0, text)
        for line in text.decode().replace("\r\n", "\n").replace("\n", "\r").split("\r"):
            self.assertLessEqual(len(line), 79, line)
        self.assertIn("checking", text.decode())
        self.assertRegex(text.decode(), r"writing +\[#+\] 100 %")
        self.assertNotIn(b"[", done.stdout)

    def while_importing(self, count, action):
        """Imports so many rentals and, whenever the store lets another writer in, calls `action`
        with the process and how many rows there are; the import waits meanwhile."""
        self.load(rentals_csv([bert()]))
        self.file.write_text(rentals_csv(crowd(count)))
        with subprocess.Popen([PROGRAM, "import", "rentals", str(self.file), "--config",
                               str(self.config_file)], stdout=subprocess.PIPE,
                              stderr=subprocess.STDOUT) as importing, \
                contextlib.closing(sqlite3.connect(self.database, timeout=0.001,
                                                   isolation_level=None)) as store:
            while importing.poll() is None:
                with contextlib.suppress(sqlite3.OperationalError):  # locked: try again
                    store.execute("BEGIN IMMEDIATE")
                    action(importing,
                           store.execute("SELECT count(*) FROM rental_row").fetchone()[0])
                    store.execute("ROLLBACK")
            return importing.wait(PATIENCE_S)

    def test_others_write_while_it_writes(self):
        # What tests/bench/import_lock measures; here only that they are let in between.
        seen = set()
        self.assertEqual(self.while_importing(3000, lambda importing, rows: seen.add(rows)), 0)
        self.assertGreater(len([rows for rows in seen if 1 < rows < 3001]), 3, seen)

    def test_cut_short_while_writing_the_same_file_finishes_it(self):
        def kill_halfway(importing, rows):
            if rows > 30:
                importing.kill()

        self.assertEqual(self.while_importing(3000, kill_halfway), -signal.SIGKILL)
        written = self.rentals()
        self.assertLess(written, 3001)
        said = self.run_program("import", "rentals", str(self.file), "--config",
                                str(self.config_file))
        self.assertIn(f"3000 rentals: {3001 - written} new, 0 changed, {written - 1} as they were",
                      said)
        self.assertEqual(self.rentals(), 3001)

    def test_a_file_that_is_not_there_is_named(self):
        self.assertIn("nowhere.csv", self.run_program(
            "import", "rentals", str(self.folder / "nowhere.csv"), "--config",
            str(self.config_file), status=1))

    def test_a_fault_in_a_topic_keeps_no_rental_out_and_none_in(self):
        kb = self.folder / "kb"
        daemon.few_of_the_content(kb, ("charge-car",), ("chest-pain",))
        (kb / "topics" / "en" / "charge-car.md").write_text("no topic")
        self.write_config({"kb_folder": "kb"})
        self.assertIn("charge-car", self.run_program("check-config", "--config",
                                                     str(self.config_file), status=1))
        self.load(rentals_csv([anna()]))
        self.assertIn("heron", self.load(rentals_csv([bert(unit="heron")]), status=1))
        self.assertIn("R-1001", self.run_program("export", "--config", str(self.config_file)))

    def test_the_demo_s_rentals_have_no_fault(self):
        self.load((daemon.TOP / "demo" / "rentals.csv").read_bytes())
        self.assertEqual(self.rentals(), 24)


def crowd(count):
    """Many rentals, each of its own."""
    return [bert(rental_id=f"C-{number}", serial=f"WR-{number}", place=f"Room {number}")
            for number in range(count)]


if __name__ == "__main__":
    daemon.main()
