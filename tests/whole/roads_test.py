"""Every road to a person: each reaches them alone, the others go when one fails, and what is watched."""
import resource
import signal
import time

import daemon
import stand_ins
from daemon import ANNA, BERT, FIRST_ON_CALL, SECOND_ON_CALL
from roads import HOOK_SECRET, SPEED, Roads
from stand_in_gateway import request, signed_headers


class EachRoad(Roads):
    def test_an_emergency_takes_every_road_at_once(self):
        self.begin()
        self.send(BERT, "i have chest pain")
        self.expect(FIRST_ON_CALL, "EMERGENCY 1: chest pain")
        for seen in (self.ring(), self.mailed(), self.hooked()):
            self.assertIsNotNone(seen)
        created = self.rows("SELECT DISTINCT created_utc_s FROM outbox WHERE about = 'alert'"
                            " AND recipient = ?", FIRST_ON_CALL)
        self.assertEqual(len(created), 1, "all in the same moment")

    def test_an_urgent_alert_texts_and_rings(self):
        self.begin([self.robin(**{"e-mail": {"from": "emergency", "address": "r@valley.example"},
                                  "webhook": {"from": "emergency", "url": self.hook.url,
                                              "secret": HOOK_SECRET}})])
        self.send(ANNA, "my reading is 88")
        self.expect(FIRST_ON_CALL, "URGENT 1")
        self.ring()
        self.settled()
        self.assertEqual(self.rows("SELECT DISTINCT road FROM outbox WHERE about = 'alert'"
                                   " ORDER BY road"), [("ring",), ("text",)])

    def test_an_urgent_alert_that_is_a_text_first_rings_once_nobody_took_it(self):
        self.begin()
        self.send(ANNA, "how long have i got left with one at 20%")
        self.expect(FIRST_ON_CALL, "URGENT 1: under 1 hour left")
        self.settled()
        self.assertEqual(self.telephone.requests, [])
        self.ring_of(FIRST_ON_CALL)
        self.assertGreaterEqual(self.gateway.clock.now(), daemon.EVENING_UTC_S + 600)

    def test_an_office_alert_never_rings(self):
        self.begin()
        self.send(ANNA, "can my grandson borrow the blue trolley from the shed")
        self.expect(FIRST_ON_CALL, "OFFICE 1")
        self.mailed()
        self.settled()
        self.assertEqual(self.telephone.requests, [])

    def test_a_ring_says_it_plainly_and_no_more_than_a_text(self):
        self.begin()
        self.send(BERT, "i have chest pain")
        call = self.ring().json()
        self.assertEqual(call["to"], FIRST_ON_CALL)
        self.assertEqual(call["read_aloud"], "Emergency. Alert 1. chest pain. Bert. Aspen House. "
                         "Telephone 1 2 0 8 5 5 5 0 1 1 2. Press 1 to take it.")

    def test_an_e_mail_holds_the_short_form_and_a_link_and_its_subject_nothing(self):
        self.begin()
        self.send(BERT, "i have chest pain")
        mail = self.mailed()
        self.assertEqual((mail.door, mail.signed_in, mail.to),
                         ("tls", True, ["robin@larkspur.example"]))
        self.assertEqual(mail.message["Subject"], "EMERGENCY 1")
        self.assertEqual(mail.message["From"], "hutbell@larkspur.example")
        self.assertEqual(mail.message["Auto-Submitted"], "auto-generated")
        self.assertIsNotNone(mail.message["Date"].datetime)
        self.assertTrue(mail.words.startswith(
            "EMERGENCY 1: chest pain. Bert, Aspen House, +12085550112."), mail.words)
        self.assertNotIn("Alder", mail.words)
        self.assertIn("https://texts.larkspur.example/links/", mail.words)

    def test_an_e_mail_goes_by_starttls_too(self):
        self.begin(mail={"url": self.mail.url("starttls")})
        self.send(BERT, "i have chest pain")
        self.assertEqual(self.mailed().door, "starttls")

    def test_a_mail_server_that_is_not_the_one_trusted_gets_nothing(self):
        self.begin(mail={"ca_file": None})
        self.send(BERT, "i have chest pain")
        self.daemon.log_until("text-not-sent", road="e-mail")
        self.assertEqual(self.mail.mails, [])

    def test_nothing_goes_to_a_mail_server_without_tls(self):
        self.begin(mail={"url": self.mail.url("plain"), "user": None, "password": None})
        self.send(BERT, "i have chest pain")
        self.daemon.log_until("text-not-sent", road="e-mail")
        self.assertEqual(self.mail.mails, [])

    def robin_at(self, address):
        return self.robin(**{"e-mail": {"from": "office", "address": address}})

    def test_an_e_mail_that_is_refused_for_now_is_tried_again_and_one_for_good_is_not(self):
        kim = daemon.merged(self.robin_at("gone@larkspur.example"),
                            {"name": "Kim", "phone": SECOND_ON_CALL})
        self.begin([self.robin_at("full@larkspur.example"), kim])
        self.send(BERT, "i have chest pain")
        self.daemon.log_until("text-not-sent", road="e-mail", **{"try": 2})
        refused = self.daemon.log_until("text-refused", road="e-mail")
        self.assertIn("SMTP 550", refused["detail"])

    def test_a_mail_server_that_dawdles_holds_up_nothing(self):
        self.begin([self.robin_at("slow@larkspur.example")], speed=1)
        self.send(BERT, "i have chest pain")
        self.ring()
        longest_s = 0
        while not self.mail.mails:
            began = time.monotonic()
            self.assertEqual(request("127.0.0.1", self.daemon.port, "GET", "/health").status, 200)
            longest_s = max(longest_s, time.monotonic() - began)
            time.sleep(0.05)  # connections are capped
        self.assertLess(longest_s, 1, "it waits 4 s with its answer")

    def test_a_webhook_is_signed_and_tells_the_same(self):
        self.begin()
        self.send(BERT, "i have chest pain")
        hooked = self.hooked()
        expected = signed_headers(HOOK_SECRET, hooked.headers["webhook-id"],
                                  hooked.headers["webhook-timestamp"], hooked.body)
        self.assertEqual(hooked.headers["webhook-signature"], expected["webhook-signature"])
        told = hooked.json()
        self.assertEqual(told["type"], "alert.called")
        self.assertEqual(told["data"], {"alert": 1, "level": "emergency", "to": "Robin",
                                        "about": "chest pain", "first_name": "Bert",
                                        "place": "Aspen House", "phone": BERT})

    def test_with_a_store_that_cannot_be_written_every_road_goes_unrecorded(self):
        self.clock(1)
        # A write past the limit sends SIGXFSZ, too; a full disk does not.
        self.start(self.all_roads(), preexec=lambda: signal.signal(signal.SIGXFSZ, signal.SIG_IGN))
        resource.prlimit(self.daemon.process.pid, resource.RLIMIT_FSIZE,
                         (0, resource.RLIM_INFINITY))
        self.send(BERT, "i have chest pain", status=503)
        self.expect(FIRST_ON_CALL, "EMERGENCY: chest pain. +12085550112. Our records are down")
        self.assertIn("Our records are down", self.ring().json()["read_aloud"])
        self.assertEqual(self.hooked().json()["data"]["alert"], 0)
        mail = self.mailed()
        self.assertEqual(mail.message["Subject"], "EMERGENCY")
        self.assertIsNone(mail.token, "a link needs its hash in the store")


class AllDeadButOne(Roads):
    """The gateway, the telephone, the mail server, the webhook: any three are gone."""

    def emergency(self, *alive):
        self.begin([self.robin()])
        if "telephone" not in alive:
            self.telephone.down()
        if "hook" not in alive:
            self.hook.down()
        if "mail" not in alive:
            self.mail.down()
        if "gateway" not in alive:
            self.gateway.accept = lambda attempt: (503, {})
        self.send(BERT, "i have chest pain")

    def test_the_text_alone(self):
        self.emergency("gateway")
        self.expect(FIRST_ON_CALL, "chest pain")
        self.send(FIRST_ON_CALL, "MINE 1")
        self.is_taken()

    def test_the_ring_alone(self):
        self.emergency("telephone")
        self.assertTrue(self.press(self.ring(), "1")["done"])
        self.is_taken()

    def test_the_e_mail_alone(self):
        self.emergency("mail")
        self.assertEqual(self.push(self.mailed().token, do="take").status, 200)
        self.is_taken()

    def test_the_webhook_alone(self):
        self.emergency("hook")
        number = self.hooked().json()["data"]["alert"]
        self.assertEqual(self.call(alert=number, do="take").status, 200)
        self.is_taken()


class GatewayDown(Roads):
    def late_roads(self):
        """Roads that Robin keeps for emergencies."""
        return self.robin(ring={"from": "emergency"},
                          **{"e-mail": {"from": "emergency", "address": "robin@larkspur.example"},
                             "webhook": {"from": "never", "url": self.hook.url,
                                         "secret": HOOK_SECRET}})

    def test_when_the_text_fails_the_other_roads_go_at_once_whatever_their_level(self):
        self.begin([self.late_roads()], speed=1)
        self.gateway.accept = lambda attempt: (503, {})
        self.send(ANNA, "my reading is 88")
        self.ring()
        self.mailed()
        self.assertEqual(self.hook.requests, [], "a road that is switched off stays so")

    def test_an_office_alert_goes_by_e_mail_then_and_does_not_ring(self):
        self.begin([self.late_roads()], speed=1)
        self.gateway.accept = lambda attempt: (503, {})
        self.send(ANNA, "can my grandson borrow the blue trolley from the shed")
        self.mailed()
        self.assertEqual(self.telephone.requests, [])

    def test_with_no_other_road_to_the_first_the_next_is_called_by_theirs(self):
        kim = daemon.merged(self.robin(), {"name": "Kim", "phone": SECOND_ON_CALL})
        self.begin([{"name": "Robin", "phone": FIRST_ON_CALL,
                     "roads": {"ring": {"from": "never"}}}, kim], speed=1)
        self.gateway.accept = lambda attempt: (503, {})
        self.send(ANNA, "my reading is 88")
        self.assertEqual(self.ring().json()["to"], SECOND_ON_CALL)

    def test_the_road_of_a_text_that_comes_to_nothing_is_not_used_twice(self):
        self.begin([self.robin()], speed=1)
        self.gateway.accept = lambda attempt: (400, {}) if attempt.to == FIRST_ON_CALL else None
        self.send(BERT, "i have chest pain")
        self.ring()
        self.hooked()
        self.mailed()
        self.settled()
        self.assertEqual((len(self.telephone.requests), len(self.hook.requests),
                          len(self.mail.mails)), (1, 1, 1))


class Watching(Roads):
    def test_the_test_text_goes_out_at_its_hour_and_its_return_is_nobody_s_question(self):
        self.clock(SPEED * 4)
        self.start(self.all_roads(line_test={"at": "19:30", "within_s": 600}))  # 7 pm now
        sent = self.expect(daemon.OFFICE, "Line test")
        self.assertGreaterEqual(self.gateway.clock.now(), daemon.EVENING_UTC_S + 1800)
        self.send(daemon.OFFICE, sent.words)
        self.daemon.log_until("line-test-came")
        self.let_pass(900)
        self.assertEqual(self.count("SELECT count(*) FROM alert"), 0)
        self.assertEqual(self.count("SELECT count(*) FROM text"), 0)

    def test_a_test_text_that_does_not_come_back_calls_staff_on_the_other_roads(self):
        self.clock(SPEED * 4)
        self.start(self.all_roads(line_test={"at": "19:10", "within_s": 300}))
        self.gateway.accept = lambda attempt: (503, {})
        told = self.ring().json()["read_aloud"]
        self.assertIn("Urgent. Alert 1. test text did not come back. This is about the text line",
                      told)
        self.mailed()

    def test_a_disk_with_little_room_is_told_to_the_office_once(self):
        self.begin(disk={"least_mb": 1000000}, speed=SPEED)
        self.expect(FIRST_ON_CALL, "OFFICE 1: disk nearly full. This is about hutbell itself")
        self.let_pass(1800)
        self.assertEqual(self.count("SELECT count(*) FROM alert_event WHERE event IN"
                                    " ('opened', 'added')"), 1)

    def test_a_sign_of_life_is_given_at_its_interval(self):
        life = stand_ins.Listener()
        self.addCleanup(life.down)
        self.begin(ping={"url": life.url + "/alive", "every_s": 60})
        self.wait(lambda: len(life.requests) >= 3, "three signs of life")
        self.assertEqual(life.requests[0].path, "/alive")
        self.assertGreaterEqual((life.requests[2].at - life.requests[0].at) * SPEED, 100)
        self.stop()
        count = len(life.requests)
        self.assertFalse(self.gateway.wait(lambda: len(life.requests) > count, 2.5),
                         "none after the end")


if __name__ == "__main__":
    daemon.main()
