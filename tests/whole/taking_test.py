"""Staff take and close an alert by whatever road, and one taking quiets all roads."""
import json
import re

import daemon
from daemon import BERT, FIRST_ON_CALL, SECOND_ON_CALL
from roads import Roads
from stand_in_gateway import new_secret, request


class ByRing(Roads):
    def rung(self, **more):
        self.begin(**more)
        self.send(BERT, "i have chest pain")
        return self.ring()

    def test_key_1_takes_it_and_the_voice_says_so(self):
        answer = self.press(self.rung(), "1")
        self.assertTrue(answer["done"])
        self.assertTrue(answer["say"].startswith("Alert 1 is yours."), answer)
        self.assertEqual(self.events("taken"), [(FIRST_ON_CALL, "ring", None)])

    def test_all_about_it_is_read_once_a_key_has_taken_it_and_not_before(self):
        ring = self.rung()
        self.assertNotIn("serial", ring.json()["read_aloud"])
        self.assertIn("unit: wren, serial WR-0033. ordered: at rest pulse 3",
                      self.press(ring, "1")["say"])
        self.assertNotIn("serial", self.press(ring, "5")["say"])

    def test_the_service_may_name_the_call_by_its_own_id(self):
        self.rung()
        self.daemon.log_until("text-accepted", road="ring")
        self.assertEqual(self.report("call-1", "1").json()["done"], True)
        self.is_taken()

    def test_voicemail_and_silence_never_count(self):
        ring = self.rung()
        self.assertFalse(self.press(ring, "1", "machine")["done"])
        self.assertFalse(self.press(ring, "", "rang out")["done"])
        self.assertFalse(self.press(ring, "", "picked up")["done"])
        self.assertFalse(self.press(ring, "7", "picked up")["done"])
        self.assertFalse(self.press(ring, "1", "ringing")["done"])
        self.assertEqual(self.rows("SELECT taken_by FROM alert_due"), [(None,)])

    def test_key_5_closes_it_with_an_outcome(self):
        ring = self.rung()
        self.press(ring, "1")
        self.press(ring, "5")
        self.is_closed()
        self.assertEqual(self.events("closed"),
                         [(FIRST_ON_CALL, "ring", "settled, by a key on the telephone")])

    def test_who_has_taken_it_is_asked_at_the_recheck_whether_it_is_settled(self):
        self.press(self.rung(), "1")
        # the next in line is rung in the same moment
        self.wait(lambda: len(self.rings_of(FIRST_ON_CALL)) > 1, "Robin is rung again")
        self.assertIn("You have it. Press 1 if you still see to it, 5 if it is settled.",
                      self.rings_of(FIRST_ON_CALL)[1].json()["read_aloud"])

    def test_the_second_hears_that_the_first_has_it(self):
        kim = daemon.merged(self.robin(), {"name": "Kim", "phone": SECOND_ON_CALL})
        first = self.rung(staff=[self.robin(), kim])
        self.wait(lambda: self.rings_of(SECOND_ON_CALL), "Kim is rung")
        self.press(self.rings_of(SECOND_ON_CALL)[0], "1")
        self.assertEqual(self.press(first, "1"), {"done": False, "say": "Alert 1 is with Kim."})

    def test_a_report_without_proof_or_of_an_unknown_service_is_refused(self):
        ring = self.rung()
        self.assertEqual(self.report(ring.json()["reference"], "1", token="a-token-of-none").status,
                         401)
        self.assertEqual(request("127.0.0.1", self.daemon.port, "POST", "/rings/other", b"{}",
                                 {"Content-Type": "application/json"}).status, 404)
        unknown = self.report("call-99", "1").json()
        self.assertEqual(unknown["done"], False)
        self.assertIn("not in our records", unknown["say"])
        self.assertEqual(self.rows("SELECT taken_by FROM alert_due"), [(None,)])


class ByLink(Roads):
    def linked(self, **more):
        self.begin(**more)
        self.send(BERT, "i have chest pain")
        return self.mailed().token

    def test_opening_the_link_as_a_scanner_does_changes_nothing(self):
        token = self.linked()
        for _ in range(3):
            page = self.open(token)
            self.assertEqual(page.status, 200)
            self.assertIn(b"chest pain", page.body)
            self.assertIn(b"<form method=\"post\"", page.body)
            self.assertEqual(page.headers["Cache-Control"], "no-store")
            self.assertIn("default-src 'none'", page.headers["Content-Security-Policy"])
        self.assertEqual(self.open(token, "HEAD").status, 200)
        self.assertEqual(self.rows("SELECT taken_by FROM alert_due"), [(None,)])

    def test_all_about_it_is_shown_by_a_button_for_scanners_open_links(self):
        token = self.linked()
        self.assertNotIn(b"WR-0033", self.open(token).body)
        for body in (self.push(token, do="show").body, self.push(token, do="take").body):
            page = body.decode()
            self.assertIn("<dt>unit</dt><dd>wren, serial WR-0033</dd>", page)
            self.assertIn(f'<a href="tel:{BERT}">', page)
            self.assertRegex(page, r"said</dt><dd>i have chest pain</dd>")
            self.assertRegex(page, r"told</dt><dd>Call 911 now")
        self.assertEqual(self.events("taken"), [(FIRST_ON_CALL, "e-mail", None)])
        self.assertEqual(self.push(token, do="show").status, 410)

    def test_its_button_takes_it_once(self):
        token = self.linked()
        page = self.push(token, do="take")
        self.assertEqual(page.status, 200)
        self.assertIn(b"Alert 1 is yours.", page.body)
        self.assertEqual(self.events("taken"), [(FIRST_ON_CALL, "e-mail", None)])
        self.assertEqual(self.push(token, do="take").status, 410)
        self.assertEqual(self.open(token).status, 410)

    def test_the_page_after_taking_closes_it_and_wants_to_know_what_happened(self):
        page = self.push(self.linked(), do="take")
        token = re.search(r'action="([^"]+)"', page.body.decode()).group(1)
        self.assertEqual(self.push(token, do="close", outcome="  ").status, 400)
        self.assertEqual(self.push(token, do="close", outcome="drove her <home>").status, 200)
        self.is_closed()
        self.assertEqual(self.events("closed"), [(FIRST_ON_CALL, "e-mail", "drove her <home>")])
        self.assertEqual(self.push(token, do="close", outcome="again").status, 410)

    def test_a_link_that_is_not_ours_or_too_old_does_nothing(self):
        token = self.linked(mail={"link_s": 300})
        other = token[:-1] + ("A" if token[-1] != "A" else "E")
        self.assertEqual(self.push(other, do="take").status, 410)
        self.assertEqual(self.open(other).status, 404)
        self.assertEqual(self.push(token, **{"do": "dance"}).status, 400)
        self.let_pass(310)
        self.assertEqual(self.push(token, do="take").status, 410)
        self.assertEqual(self.rows("SELECT taken_by FROM alert_due"), [(None,)])

    def test_only_the_hash_of_the_token_is_stored(self):
        token = self.linked()
        self.stop()
        for file in self.folder.glob("hutbell.db*"):
            self.assertNotIn(token.encode(), file.read_bytes(), file)
        self.assertGreater(self.count("SELECT count(*) FROM link"), 0)

    def test_a_link_of_a_closed_alert_says_so(self):
        token = self.linked()
        self.send(FIRST_ON_CALL, "SORTED 1 rang him")
        self.is_closed()
        page = self.open(token)
        self.assertEqual((page.status, b"This alert is closed." in page.body), (410, True))


class BySignedCall(Roads):
    def hooked_number(self):
        self.begin()
        self.send(BERT, "i have chest pain")
        return self.hooked().json()["data"]["alert"]

    def test_it_takes_and_closes(self):
        number = self.hooked_number()
        self.assertEqual(self.call(alert=number, do="take").json(),
                         {"alert": number, "state": "taken"})
        self.assertEqual(self.call(alert=number, do="close").status, 400)
        self.assertEqual(self.call(alert=number, do="close", outcome="rang him").json(),
                         {"alert": number, "state": "closed"})
        self.assertEqual(self.events("closed"), [(FIRST_ON_CALL, "webhook", "rang him")])
        self.assertEqual(self.call(alert=number, do="take").status, 409)

    def test_another_secret_an_old_request_or_another_s_name_is_refused(self):
        number = self.hooked_number()
        for answer in (self.call(new_secret(b"other"), alert=number, do="take"),
                       self.call(at=self.gateway.clock.now() - 3600, alert=number, do="take"),
                       self.call(alert=number, do="take", by="Kim"),
                       self.call(alert=number, do="take", by="Nobody")):
            self.assertEqual(answer.status, 401, answer)
        self.assertEqual(self.rows("SELECT taken_by FROM alert_due"), [(None,)])


class ByShell(Roads):
    def hutbell(self, *arguments, status=0):
        return self.run_program(*arguments, "--config", str(self.config_file), status=status)

    def test_alerts_are_listed_taken_and_closed(self):
        self.begin(speed=1)
        self.assertIn("no alert is open", self.hutbell("alerts"))
        self.send(BERT, "i have chest pain")
        listed = self.hutbell("alerts")
        self.assertIn("1 EMERGENCY chest pain. Bert, Aspen House, " + BERT, listed)
        self.assertIn("nobody has it", listed)
        self.assertEqual(self.hutbell("take", "1", "--by", "robin"), "Alert 1 is yours.\n")
        self.assertIn("with Robin", self.hutbell("alerts"))
        self.assertEqual(json.loads(self.hutbell("alerts", "--json"))["taken_by"], "Robin")
        self.assertIn("is with Robin", self.hutbell("take", "1", "--by", "Kim", status=1))
        self.assertEqual(self.hutbell("close", "1", "--by", "Kim", "rang him"),
                         "Alert 1 is closed.\n")
        self.assertIn("no alert of this number", self.hutbell("take", "1", "--by", "Kim", status=1))
        self.assertEqual(self.events("taken") + self.events("closed"),
                         [(FIRST_ON_CALL, "shell", None), (SECOND_ON_CALL, "shell", "rang him")])
        self.assertEqual(self.rows("SELECT what, subject, detail FROM audit ORDER BY id DESC"
                                   " LIMIT 2"),
                         [("close-alert", "1", "Kim"), ("take-alert", "1", "robin")])

    def test_one_alert_is_shown_with_all_about_it_and_that_is_written_down(self):
        self.begin(speed=1)
        self.send(BERT, "i have chest pain")
        shown = self.hutbell("alerts", "1")
        self.assertIn("1 EMERGENCY chest pain.", shown)
        self.assertRegex(shown, r"unit +wren, serial WR-0033\n")
        self.assertRegex(shown, r"backup +none on record\n")
        self.assertRegex(shown, r"7:\d\d pm, said +i have chest pain\n")
        self.assertRegex(shown, r"7:\d\d pm, told +Call 911 now")
        facts = json.loads(self.hutbell("alerts", "1", "--json"))["facts"]
        self.assertIn({"what": "phone, renter", "value": BERT}, facts)
        self.assertIn("no alert of this number", self.hutbell("alerts", "2", status=1))
        self.assertEqual(self.rows("SELECT who, what, subject FROM audit ORDER BY id DESC LIMIT 1"),
                         [("hutbell alerts", "look-at-alert", "1")])

    def test_who_is_not_of_staff_or_says_nothing_is_refused(self):
        self.begin(speed=1)
        self.send(BERT, "i have chest pain")
        self.assertIn("nobody of /staff", self.hutbell("take", "1", "--by", "Mallory", status=1))
        self.hutbell("close", "1", "--by", "Kim", " ", status=2)
        self.hutbell("close", "1", "--by", "Kim", status=2)
        self.hutbell("take", "one", "--by", "Kim", status=2)
        self.assertEqual(self.rows("SELECT taken_by FROM alert_due"), [(None,)])

    def test_a_failed_backup_is_told_to_the_office(self):
        self.begin()
        self.hutbell("tell-office", "the backup failed")
        self.expect(FIRST_ON_CALL, "OFFICE 1: the backup failed. This is about hutbell itself")


class Quiet(Roads):
    def test_one_taking_quiets_all_roads(self):
        self.begin()
        self.mail.down()
        self.hook.status = 503
        self.send(BERT, "i have chest pain")
        self.press(self.ring(), "1")
        self.is_taken()
        self.wait(lambda: self.count("SELECT count(*) FROM outbox_due d JOIN outbox o ON"
                                     " o.id = d.outbox_id WHERE o.about = 'alert'") == 0, "quiet")
        texts, hooks = len(self.texts_to(FIRST_ON_CALL)), len(self.hook.requests)
        self.let_pass(240)  # the re-check comes after 300
        self.assertEqual(len(self.telephone.requests), 1)
        self.assertEqual(self.texts_to(SECOND_ON_CALL), [])
        self.assertEqual(len(self.texts_to(FIRST_ON_CALL)), texts)
        self.assertLessEqual(len(self.hook.requests), hooks + 1)  # one may have been under way

    def test_what_rings_again_after_the_recheck_is_quiet_again_when_closed(self):
        self.begin()
        self.send(BERT, "i have chest pain")
        self.press(self.ring(), "1")
        self.press(self.ring(2), "5")
        self.is_closed()
        rings = len(self.telephone.requests)
        self.let_pass(600)
        self.assertEqual(len(self.telephone.requests), rings)


if __name__ == "__main__":
    daemon.main()
