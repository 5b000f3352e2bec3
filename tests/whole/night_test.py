"""`hutbell report` and `hutbell log`: the night as the office reads it, and that it looked."""
import csv
import io
import json

import daemon
from daemon import ANNA, BERT, FIRST_ON_CALL, WholeTest


class Night(WholeTest):
    def setUp(self):
        super().setUp()
        self.start()
        self.send(ANNA, "can i charge it in the car")
        self.expect(ANNA, "car")
        self.send(BERT, "who won the curling at the rink")
        self.expect(BERT, "person will answer")
        self.send(ANNA, "i have chest pain")
        self.expect(ANNA, "911")
        called = self.expect(FIRST_ON_CALL, "EMERGENCY", "chest pain")
        number = called.words.split(":")[0].split()[1]
        self.send(FIRST_ON_CALL, f"MINE {number}")
        self.expect(FIRST_ON_CALL, "yours")
        self.send(FIRST_ON_CALL, f"SORTED {number} ambulance took her")
        self.expect(FIRST_ON_CALL, "closed")
        self.settled()
        self.wait(lambda: self.count("SELECT count(*) FROM outbox WHERE about = 'reply' AND NOT"
                                     " EXISTS (SELECT 1 FROM outbox_event e WHERE e.outbox_id ="
                                     " outbox.id AND e.event = 'delivered')") == 0, "delivered")

    def look(self, command, *options, status=0):
        return self.run_program(command, "--config", str(self.config_file), *options,
                                status=status)

    def test_the_report_shows_what_was_asked_what_is_missing_and_who_was_called(self):
        report = self.look("report")
        self.assertIn("3 texts of renters, 2 of staff, 2 alerts", report)
        self.assertRegex(report, r"chest-pain +1 #")
        self.assertNotIn("asked or told none of these", report)
        self.assertRegex(report, r"charge-car +1 #")
        self.assertIn("who won the curling at the rink", report)
        self.assertIn("emergency, chest pain. Anna", report)
        self.assertIn("Robin had it after", report)
        self.assertIn("ambulance took her", report)
        self.assertIn("not taken", report)
        self.assertTrue(all(len(line) < 80 for line in report.splitlines()), report)

    def test_the_log_shows_each_conversation_with_its_reasons(self):
        log = self.look("log", "--phone", ANNA)
        self.assertIn("they:  can i charge it in the car", log)
        self.assertIn("(delivered)", log)
        self.assertRegex(log, r"topic charge-car \d+, nearest")
        self.assertIn("alert: emergency sign:chest-pain", log)
        self.assertNotIn("curling", log)
        self.assertIn("2 texts", log)

    def test_the_log_has_what_staff_wrote_in_between_and_who(self):
        self.assertNotIn("staff:", self.look("log", "--phone", ANNA))
        number = self.rows("SELECT alert_number FROM alert_due")[0][0]
        self.send(FIRST_ON_CALL, f"TALK {number} the rink, or on the screen?")
        self.expect(BERT, "on the screen")
        self.send(BERT, "no screen here")
        self.expect(FIRST_ON_CALL, "no screen")
        self.send(FIRST_ON_CALL, f"SORTED {number} told him")
        self.expect(BERT, "have finished")
        log = self.look("log", "--phone", BERT)
        asked = log.index("staff: Robin: the rink, or on the screen?")
        self.assertIn("Robin wrote this", log)
        self.assertLess(log.index("they:  who won the curling"), asked)
        self.assertLess(asked, log.index("they:  no screen here"))
        self.assertLess(asked, log.index("we:    Our staff have finished"))
        self.assertIn("2 texts, and 2 of ours that answer none", log)
        self.assertIn("Robin, staff, " + FIRST_ON_CALL, self.look("log"))
        log = json.loads(self.look("log", "--phone", BERT, "--json"))
        self.assertEqual([(sent["staff"], sent["name"]) for sent in log["sent"]],
                         [("Robin", "Bert"), (None, "Bert")])
        rows = list(csv.DictReader(io.StringIO(self.look("log", "--phone", BERT, "--csv"))))
        self.assertEqual([row["written_by"] for row in rows], [BERT, BERT, "Robin", "hutbell"])

    def test_an_alert_is_shown_with_the_texts_of_its_renter_and_when(self):
        number = self.rows("SELECT alert_number FROM alert_due")[0][0]
        self.send(FIRST_ON_CALL, f"TALK {number} the rink, or on the screen?")
        self.expect(BERT, "on the screen")
        alert = self.look("alerts", str(number))
        self.assertRegex(alert, r"\d pm, said +who won the curling at the rink")
        self.assertRegex(alert, r"\d pm, Robin wrote +Robin: the rink")
        self.assertNotIn("chest pain", alert)

    def test_both_come_as_csv_and_json(self):
        rows = list(csv.reader(io.StringIO(self.look("report", "--csv"))))
        self.assertIn(["topic", "charge-car", "1", "", "", ""], rows)
        rows = list(csv.DictReader(io.StringIO(self.look("log", "--csv"))))
        self.assertEqual(rows[0]["phone"], ANNA)
        self.assertEqual(rows[0]["topics"], "charge-car")
        report = json.loads(self.look("report", "--json"))
        self.assertEqual(report["topics"], {"charge-car": 1})
        self.assertEqual(report["signs"], {"chest-pain": 1})
        self.assertEqual((report["texts"], report["staff_texts"]), (3, 2))
        self.assertEqual([alert["outcome"] for alert in report["alerts"]
                          if alert["level"] == "emergency"], ["ambulance took her"])
        log = json.loads(self.look("log", "--json"))
        self.assertEqual(log["texts"][0]["verdict"]["route"], "answer")
        self.assertEqual(log["texts"][0]["replies"][0]["state"], "delivered")

    def test_a_text_that_looks_like_a_formula_stays_a_text(self):
        self.send(BERT, "=1+1 and when is it due")
        self.expect(BERT, "Feb 18")
        self.assertIn('"\'=1+1 and', self.look("log", "--csv"))

    def test_looking_is_written_to_the_audit_trail(self):
        self.look("report")
        self.look("log", "--phone", ANNA, "--since", "yesterday")
        self.assertEqual(self.rows("SELECT who, what, subject FROM audit WHERE what = 'look'"),
                         [("hutbell report", "look", None), ("hutbell log", "look", ANNA)])

    def test_a_span_has_a_beginning_and_an_end(self):
        self.assertIn("0 texts", self.look("log", "--until", "yesterday"))
        self.assertIn("0 texts", self.look("log", "--since", "2040-01-01"))

    def test_what_is_no_time_or_phone_is_told(self):
        self.assertIn("is no time; give yesterday", self.look("log", "--since", "soon", status=1))
        self.assertIn("--until is before --since",
                      self.look("report", "--since", "today", "--until", "2026-01-01", status=1))
        self.assertIn("is no phone number", self.look("log", "--phone", "anna", status=1))


if __name__ == "__main__":
    daemon.main()
