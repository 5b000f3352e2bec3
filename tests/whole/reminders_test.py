"""Texts that renters ask for: sent in time, through a restart, and never once they are off."""
import daemon
from daemon import ANNA, BERT, EVENING_UTC_S, WholeTest

SPEED = 120  # a played minute is half a second


class Reminders(WholeTest):
    def begin(self):
        self.clock(SPEED)
        self.start()

    def states(self):
        return self.rows("SELECT kind, state, reason FROM reminder WHERE kind <> 'offered'"
                         " ORDER BY id")

    def set_watch(self, sender=BERT):
        """Sets a running-out watch; returns when it is due."""
        self.begin()
        self.send(sender, "text me when 30 min are left. 2 full batteries")
        self.expect(sender, "I'll text you at about", "Not an alarm")
        return self.count("SELECT due_utc_s FROM reminder WHERE state = 'waits'")

    def restart_at(self, utc_s):
        self.restart(later_s=utc_s - self.gateway.clock.now())

    def wait_until_told(self, *state):
        self.wait(lambda: self.states() == [state], f"the reminder is {state}")


class InTime(Reminders):
    def test_a_chosen_time_is_kept_and_the_renters_words_are_said_back(self):
        self.begin()
        self.send(BERT, "remind me to charge at 7:10 pm")
        self.expect(BERT, "I'll text you Friday, Feb 13, 7:10 pm", "Not an alarm")
        self.expect(BERT, 'Reminder, as you asked: "remind me to charge at 7:10 pm"')
        self.assertEqual(self.states(), [("at", "sent", None)])
        self.assertGreaterEqual(
            self.count("SELECT max(created_utc_s) FROM outbox"), EVENING_UTC_S + 10 * 60)

    def test_a_watch_outlives_a_restart(self):
        due = self.set_watch()
        self.restart_at(due - 60)
        self.assertEqual(self.states(), [("running-out", "waits", None)])
        self.expect(BERT, "the batteries may be empty at about", "Be at a plug now",
                    "Not an alarm")
        self.assertEqual(self.states(), [("running-out", "sent", None)])
        self.assertGreaterEqual(self.count("SELECT max(created_utc_s) FROM outbox"), due)

    def test_it_is_sent_once_whatever_happens(self):
        due = self.set_watch()
        self.restart_at(due)
        self.expect(BERT, "may be empty")
        self.settled()
        self.restart()
        self.send(ANNA, "what is your address")
        self.expect(ANNA, "Mill Road")
        self.assertEqual(sum("may be empty" in words for words in self.texts_to(BERT)), 1)

    def test_late_it_is_told_honestly_that_it_was_missed(self):
        due = self.set_watch()
        self.restart_at(due + 20 * 60)
        self.expect(BERT, "I could not text you at", "be at a plug")
        self.assertEqual(self.states(), [("running-out", "late", None)])

    def test_after_half_a_day_nobody_is_bothered(self):
        due = self.set_watch()
        self.restart_at(due + 13 * 3600)
        self.wait_until_told("running-out", "late", None)
        self.settled()
        self.assertFalse(any("could not text" in words for words in self.texts_to(BERT)))


class Off(Reminders):
    def test_stop_ends_it(self):
        due = self.set_watch()
        self.send(BERT, "STOP")
        self.expect(BERT, "no more texts")
        self.assertEqual(self.states(), [("running-out", "cancelled", "stop")])
        self.restart_at(due)
        self.settled()
        self.assertFalse(any("may be empty" in words for words in self.texts_to(BERT)))

    def test_a_newer_charge_ends_it_and_the_reply_says_so(self):
        self.set_watch()
        self.send(BERT, "how long have i got left, 1 full battery and one at 50%")
        self.expect(BERT, "is off, as it went by the older charge")
        self.assertEqual(self.states(), [("running-out", "cancelled", "charge")])

    def test_the_other_phone_of_the_rental_hears_that_its_watch_is_off(self):
        self.clock(SPEED)
        self.start(rentals=False)
        self.import_rentals([daemon.bert(phone_2=ANNA, phone_2_whose="daughter",
                                         phone_2_reach="any")])
        self.send(BERT, "text me when 30 min are left. 2 full batteries")
        self.expect(BERT, "I'll text you at about")
        self.send(ANNA, "how long have we got left, 1 full battery and one at 50%")
        self.expect(BERT, "is off: a newer charge was told")
        self.wait_until_told("running-out", "cancelled", "charge")

    def test_other_batteries_end_it_and_the_renter_is_told(self):
        self.set_watch()
        self.import_rentals([daemon.anna(), daemon.bert(battery_1="W-9")])
        self.expect(BERT, "is off: the record of your unit changed")
        self.wait_until_told("running-out", "cancelled", "record")

    def test_of_a_rental_that_is_over_nothing_is_sent(self):
        due = self.set_watch()
        self.import_rentals([daemon.anna(), daemon.bert(state="returned")])
        self.assertEqual(self.states(), [("running-out", "cancelled", "ended")])
        self.restart_at(due)
        self.settled()
        self.assertFalse(any("may be empty" in words for words in self.texts_to(BERT)))

    def test_a_death_ends_it(self):
        self.set_watch()
        self.send(BERT, "my husband passed away last night")
        self.wait_until_told("running-out", "cancelled", "death")


if __name__ == "__main__":
    daemon.main()
