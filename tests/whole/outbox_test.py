"""Sending: nothing lost, nothing twice, nothing stale, and a person when it cannot be done."""
import threading
import time

import daemon
from conversation_test import planned
from daemon import ANNA, BERT, FIRST_ON_CALL, STRANGER, WholeTest


class Outbox(WholeTest):
    def tries_to(self, to):
        return [attempt for attempt in self.gateway.tries if attempt.to == to]

    def refuse(self, to, status, headers=None, times=10**6):
        """The next `times` sends to this phone are refused."""
        left = [times]

        def accept(attempt):
            if attempt.to == to and left[0] > 0:
                left[0] -= 1
                return status, headers or {}
            return None

        self.gateway.accept = accept

    def events(self, event):
        return self.count("SELECT count(*) FROM outbox_event WHERE event = ?", event)


class Retrying(Outbox):
    def test_while_the_gateway_is_down_the_reply_waits_and_is_then_delivered_once(self):
        self.clock(30)
        self.start()
        self.gateway.down()
        self.send(BERT, "when is it due")
        self.wait(lambda: self.events("tried") >= 2, "two tries in vain")
        self.gateway.up()
        self.expect(BERT, "Feb 18")
        self.settled()
        self.assertEqual(len(self.texts_to(BERT)), 1)

    def test_each_try_bears_the_same_idempotency_key(self):
        self.clock(30)
        self.start()
        self.refuse(BERT, 503, times=3)
        self.send(BERT, "when is it due")
        self.expect(BERT, "Feb 18")
        tries = self.tries_to(BERT)
        self.assertEqual([attempt.status for attempt in tries], [503, 503, 503, 202])
        self.assertEqual(len({attempt.key for attempt in tries}), 1)
        self.assertTrue(tries[0].key)

    def test_two_replies_bear_different_keys(self):
        self.start()
        self.send(BERT, "when is it due")
        self.send(ANNA, "when is it due")
        keys = {self.expect(BERT).key, self.expect(ANNA).key}
        self.assertEqual(len(keys), 2)

    def test_an_answer_that_got_lost_on_the_way_is_no_second_text(self):
        """The gateway took it, but the connection broke before it could say so."""
        self.clock(30)
        self.start()
        lost = []

        def accept(attempt):
            if attempt.to == BERT and not lost:
                lost.append(attempt)
                self.gateway._deliver(attempt)
                raise OSError("the line broke")
            return None

        self.gateway.accept = accept
        self.send(BERT, "when is it due")
        self.settled()
        self.assertGreaterEqual(len(self.tries_to(BERT)), 2)
        self.assertEqual(len(self.texts_to(BERT)), 1)

    def test_retry_after_is_honoured(self):
        # RFC 9110, 10.2.3: seconds.
        self.clock(20)
        self.start()
        self.refuse(BERT, 429, {"Retry-After": "90"}, times=1)
        self.send(BERT, "when is it due")
        self.expect(BERT, "Feb 18")
        first, second = self.tries_to(BERT)
        self.assertGreaterEqual((second.at - first.at) * 20, 88)

    def test_what_was_unsent_at_a_restart_is_sent_after_it(self):
        self.start()
        self.gateway.down()
        self.send(BERT, "when is it due")
        self.wait(lambda: self.events("tried") >= 1, "a try in vain")
        self.stop()
        self.gateway.up()
        self.serve_again(later_s=60)
        self.expect(BERT, "Feb 18")


class GivingUp(Outbox):
    def test_a_reply_that_cannot_be_sent_in_time_goes_to_a_person(self):
        self.clock(60)
        self.start({"limits": {"give_up_s": 120}})
        self.refuse(BERT, 503)
        self.send(BERT, "when is it due")
        self.expect(FIRST_ON_CALL, "not reached")
        self.assertEqual(self.events("given-up"), 1)

    def test_a_reply_that_the_gateway_will_never_take_goes_to_a_person(self):
        self.start()
        self.refuse(BERT, 400)
        self.send(BERT, "when is it due")
        self.expect(FIRST_ON_CALL, "not reached")
        self.assertEqual(len(self.tries_to(BERT)), 1)

    def test_a_reply_reported_as_lost_goes_to_a_person(self):
        self.start()
        self.gateway.report = None
        self.send(BERT, "when is it due")
        sent = self.expect(BERT)
        self.gateway.report_delivery(sent.text_id, "lost")
        self.expect(FIRST_ON_CALL, "not reached")


class Order(Outbox):
    def test_an_emergency_overtakes_what_waits(self):
        self.start({"limits": {"outbox_running": 1}})
        gate = threading.Event()
        self.addCleanup(gate.set)
        self.gateway.accept = lambda attempt: gate.wait(daemon.PATIENCE_S) and None
        self.send(STRANGER, "how do i charge it in the car")
        self.wait(lambda: len(self.gateway.tries) == 1, "the first send is in hand")
        for _ in range(3):
            self.send(ANNA, "how do i charge it in the car")
        self.send(BERT, "chest pain")
        gate.set()
        self.settled()
        order = [attempt.to for attempt in self.gateway.tries[1:]]
        self.assertEqual(set(order[:3]), {BERT, FIRST_ON_CALL}, order)

    def test_a_reply_with_minutes_gone_stale_is_worked_out_anew(self):
        self.clock(60)
        self.start({"limits": {"stale_s": 120}})
        down = []

        def accept(attempt):
            if attempt.to == ANNA and self.gateway.clock.now() < down[0]:
                return 503, {}
            return None

        down.append(self.gateway.clock.now() + 300)
        self.gateway.accept = accept
        self.send(ANNA, "i have 2 full batteries, how many hours do i have left")
        fresh = planned(self.expect(ANNA, "plan on").words)
        self.settled()
        first = planned(self.tries_to(ANNA)[0].words)
        self.assertLessEqual(fresh, first - 2)  # it may be two minutes old, no more
        self.assertGreaterEqual(self.events("replaced"), 1)
        self.assertEqual(len(self.texts_to(ANNA)), 1)


class Delivery(Outbox):
    def test_a_report_is_kept(self):
        self.start()
        self.send(BERT, "when is it due")
        self.expect(BERT)
        self.wait(lambda: self.events("delivered") == 1, "the report is stored")

    def test_a_report_with_a_false_signature_is_refused(self):
        self.start()
        self.gateway.report = None
        self.send(BERT, "when is it due")
        sent = self.expect(BERT)
        good, self.gateway.secret = self.gateway.secret, "whsec_" + "A" * 32
        self.assertEqual(self.gateway.report_delivery(sent.text_id, "arrived").status, 401)
        self.gateway.secret = good
        self.assertEqual(self.gateway.report_delivery(sent.text_id, "arrived").status, 200)

    def test_a_report_about_a_text_that_is_not_ours_changes_nothing(self):
        self.start()
        self.assertEqual(self.gateway.report_delivery("out-unknown", "arrived").status, 200)
        self.assertEqual(self.count("SELECT count(*) FROM outbox_event"), 0)

    def test_an_emergency_that_nobody_confirms_is_told_to_staff(self):
        self.clock(60)
        self.start()
        self.gateway.report = None
        began = time.monotonic()
        self.send(BERT, "chest pain")
        self.expect(BERT, "911")
        told = self.expect(FIRST_ON_CALL, "not reached")
        self.assertGreaterEqual((told.at - began) * 60, 115)
        self.assertGreaterEqual(self.events("not-confirmed"), 1)

    def test_an_emergency_that_is_confirmed_is_not(self):
        self.clock(60)
        self.start()
        self.send(BERT, "chest pain")
        self.expect(BERT, "911")
        self.wait(lambda: self.events("delivered") >= 2, "reports are stored")
        began = self.gateway.clock.now()
        self.wait(lambda: self.gateway.clock.now() > began + 240, "4 played minutes")
        self.assertFalse([t for t in self.texts_to(FIRST_ON_CALL) if "not reached" in t.lower()])


if __name__ == "__main__":
    daemon.main()
