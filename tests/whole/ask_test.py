"""`hutbell ask`: what would it say? Needs no daemon and changes nothing on disk."""
import hashlib
import json
import os
import pwd
import shutil
import subprocess

import daemon
from daemon import ANNA, BERT, STRANGER, WholeTest
from stand_in_gateway import Gateway

AT = "2026-02-13T19:00:00-07:00"
ROUTES = {"emergency", "clinical", "equipment", "answer", "staff", "unanswered", "consent",
          "smalltalk"}


class Ask(WholeTest):
    def setUp(self):
        super().setUp()
        self.gateway = Gateway()
        self.gateway.port = 9
        self.write_config()
        self.import_rentals()

    def ask(self, *arguments, **more):
        return self.run_program("ask", "--config", str(self.config_file), *arguments, **more)

    def one(self, sender, words, *more):
        line = self.ask("--json", "--as", sender, "--at", AT, *more, words)
        return json.loads(line)

    def batch(self, lines, *more):
        out = self.ask("--batch", *more, input="".join(json.dumps(x) + "\n" for x in lines))
        return [json.loads(line) for line in out.splitlines()]

    def disk(self):
        return {file.name: (hashlib.sha256(file.read_bytes()).hexdigest(),
                            file.stat().st_mtime_ns) for file in self.folder.iterdir()}

    def test_plain_it_prints_the_reply_as_a_person_reads_it(self):
        said = self.ask("--as", BERT, "--at", AT, "when is it due")
        self.assertIn("Feb 18", said)
        self.assertNotIn("{", said)

    def test_json_has_the_agreed_keys(self):
        said = self.one(BERT, "can i charge it in the car")
        self.assertLessEqual({"id", "route", "topics", "language", "answers", "replies", "parts",
                              "alert"}, set(said))
        self.assertEqual(said["route"], "answer")
        self.assertEqual(said["topics"], ["charge-car"])
        self.assertEqual(said["language"], "en")
        self.assertIsNone(said["alert"])
        self.assertGreaterEqual(said["parts"], 1)

    def test_an_emergency_stands_first_in_one_part_with_its_alert(self):
        said = self.one(BERT, "i have chest pain, and when is it due?")
        self.assertEqual(said["route"], "emergency")
        self.assertEqual(said["alert"], {"level": "emergency", "reason": "sign:chest-pain"})
        self.assertIn("911", said["replies"][0])
        self.assertLessEqual(len(said["replies"][0]), 160)

    def test_batch_answers_a_line_each_in_order_and_one_phone_is_one_conversation(self):
        lines = [
            {"id": "1", "from": BERT, "text": "i have 2 full batteries, how many hours do i have left", "at": AT},
            {"id": "2", "from": ANNA, "text": "when is it due", "at": AT},
            {"id": "3", "from": BERT, "text": "how long now?", "at": "2026-02-13T20:00:00-07:00"},
        ]
        said = self.batch(lines)
        self.assertEqual([line["id"] for line in said], ["1", "2", "3"])

        def low(line):
            return next(a["estimate"]["low_minutes"] for a in line["answers"] if a["estimate"])

        self.assertEqual(low(said[0]) - low(said[2]), 60)

    def test_charging_flights_and_cylinders_are_worked_out_and_asked_back(self):
        def line(n, words, at="2026-02-13T19:00:00-07:00", sender=ANNA):
            return {"id": str(n), "from": sender, "text": words, "at": at}

        said = self.batch([
            line(1, "best plan for tonight, 1 full 2 empty"),
            line(2, "when will all 3 be full"),
            line(3, "2 full, 1 at half"),
            line(4, "how many batteries for a flight of 4 h 30 gate to gate"),
            line(5, "how long does an E tank at 2200 psi last at 2 liters a minute"),
            line(6, "cuando van a estar llenas las 2 si estan al 10 y 20", sender=BERT)])
        kinds = [[a["estimate"] and a["estimate"]["kind"] for a in one["answers"]] for one in said]
        self.assertEqual([one["topics"] for one in said],
                         [["charge-time"]] * 3 + [["fly"], ["cylinder-left"], ["charge-time"]])
        self.assertEqual(kinds, [["charging"], [None], ["charging"], [None], ["cylinder"],
                                 ["charging"]])
        # Brook (kb/equipment/brook.json): 390 minutes to full while it runs, 215 in the charger.
        self.assertIn("Plan: now 0% in the unit, 0% in the charger. All full at 6:00 am. Nobody "
                      "has to get up.", said[0]["replies"][0])
        self.assertIn("How full is each battery", said[1]["replies"][0])
        self.assertEqual(said[2]["answers"][0]["estimate"]["high_minutes"], 240)
        self.assertNotIn("mode", said[2]["answers"][0]["estimate"])
        # Nothing is ordered for flying: no number, and staff hear of it.
        self.assertEqual(said[3]["alert"], {"level": "office", "reason": "power:no-flight-order"})
        # (2200 - 50 - 200) x 0.28 / 2: AAOS emergency-care textbook, with our gauge.
        self.assertEqual(said[4]["answers"][0]["estimate"]["low_minutes"], 273)
        self.assertIn("Leo: 10%, 20%.", said[5]["replies"][0])
        for one in said:
            self.assertLessEqual(one["parts"], 2)

    def test_a_bare_time_answers_what_was_asked_back(self):
        said = self.batch([
            {"id": "1", "from": ANNA, "at": AT,
             "text": "need all 3 charged before we leave. one is at 20%, the others empty"},
            {"id": "2", "from": ANNA, "at": AT, "text": "in 2 hours"},
            {"id": "3", "from": BERT, "at": AT, "text": "remind me to charge"},
            {"id": "4", "from": BERT, "at": AT, "text": "at 9"}])
        self.assertIn("By when must they be charged?", said[0]["replies"][0])
        self.assertIn("At 9:00 pm plan on at least", said[1]["replies"][0])
        self.assertIn("I'll text you Friday, Feb 13, 9 pm.", said[3]["replies"][0])

    def test_other_power_is_held_against_what_the_unit_takes(self):
        said = self.batch([
            {"id": "1", "from": ANNA, "at": AT, "text": "will a 150 W inverter run the machine?"},
            {"id": "2", "from": ANNA, "at": AT, "text": "puedo usar una estacion portatil?"},
            {"id": "3", "from": ANNA, "at": AT, "text": "300 W y 500 Wh"}])
        # Brook (kb/equipment/brook.json): 100 W at continuous 2, 26 W to charge, x 1.25 (facts A5)
        self.assertIn("takes up to 126 W", said[0]["replies"][0])
        self.assertIn("158 W or more. 150 W is too little", said[0]["replies"][0])
        self.assertEqual([one["topics"] for one in said], [["power-source"]] * 3)
        self.assertIn("Cuente con 3 h 2 min de sus 500 Wh", said[2]["replies"][0])

    def test_without_a_record_everyone_is_a_stranger(self):
        said = self.one(BERT, "when is it due", "--no-record")
        self.assertNotIn("Feb 18", " ".join(said["replies"]))
        self.database.unlink()
        self.assertEqual(self.one(BERT, "can i charge it in the car", "--no-record")["topics"],
                         ["charge-car"])

    def test_without_record_and_configuration_an_invented_office_answers(self):
        thin = self.folder / "thin"
        daemon.few_of_the_content(thin, ["charge-car", "billing"], ["reading", "low-reading"])
        done = subprocess.run([daemon.PROGRAM, "ask", "--batch", "--no-record", "--kb", thin],
                              input=json.dumps({"id": "1", "from": BERT, "at": AT,
                                                "text": "can i charge it in the car"}),
                              capture_output=True, text=True)
        self.assertEqual((done.returncode, done.stderr), (0, ""))
        self.assertEqual(json.loads(done.stdout)["topics"], ["charge-car"])

    def test_it_changes_nothing_on_disk(self):
        before = self.disk()
        self.one(ANNA, "i have 2 full batteries, how many hours do i have left")
        self.batch([{"id": "1", "from": BERT, "text": "STOP", "at": AT}])
        self.assertEqual(self.disk(), before)

    def test_read_access_is_enough(self):
        """As a user that may only read, in a folder where nothing can be made."""
        # Permissions do not bind root: then another user asks, with copies within its reach.
        user = pwd.getpwnam("nobody").pw_uid if os.geteuid() == 0 else None
        program = shutil.copy(daemon.PROGRAM, self.folder / "hutbell")
        shutil.copytree(daemon.KB, self.folder / "kb")
        if daemon.CACHE.exists():
            shutil.copytree(daemon.CACHE, self.folder / "cache")
        self.write_config({"kb_folder": "kb", "cache_folder": "cache"})
        for file in self.folder.rglob("*"):
            os.chmod(file, 0o555)
        os.chmod(self.folder, 0o555)
        self.addCleanup(os.chmod, self.folder, 0o755)
        done = subprocess.run(
            [program, "ask", "--config", str(self.config_file), "--as", BERT, "--at", AT,
             "when is it due"], capture_output=True, text=True, user=user,
            env={**os.environ, "ASAN_OPTIONS": "detect_leaks=0"}, timeout=daemon.PATIENCE_S)
        self.assertEqual(done.returncode, 0, done.stderr)
        self.assertIn("Feb 18", done.stdout)

    def test_an_unknown_number_gets_general_answers(self):
        said = self.one(STRANGER, "can i charge it in the car")
        self.assertEqual(said["topics"], ["charge-car"])

    def test_any_text_is_answered_with_a_known_route(self):
        odd = ["", " ", "?", "\u00e9" * 500, "\U0001f62e\u200d\U0001f4a8", "a" * 5000, "{due}",
               "%s%n", "\u202eSTOP"]
        for line in self.batch([{"id": str(n), "from": BERT, "text": text, "at": AT}
                                for n, text in enumerate(odd)]):
            self.assertIn(line["route"], ROUTES)


if __name__ == "__main__":
    daemon.main()
