"""A person, always: alerts are called again until someone takes them, and closed by a person."""
import re
import time

import daemon
from daemon import (ANNA, BERT, FIRST_ON_CALL, SECOND_ON_CALL, STRANGER, THIRD_ON_CALL, WholeTest)

SPEED = 60  # a played minute is a second


class Alerts(WholeTest):
    def emergency(self, sender=BERT):
        """Starts, raises an emergency, returns the number that staff call it."""
        self.clock(SPEED)
        self.start()
        self.began = time.monotonic()
        self.send(sender, "i have chest pain")
        self.expect(sender, "911")
        called = self.expect(FIRST_ON_CALL, "chest pain")
        return re.search(r"MINE (\d+)", called.words).group(1)

    def played_since(self, attempt):
        return (attempt.at - self.began) * SPEED

    def let_pass(self, seconds):
        """Waits until the played clock has moved on."""
        end = self.gateway.clock.now() + seconds
        self.wait(lambda: self.gateway.clock.now() >= end, "time to pass")

    def calls(self):
        return sum(len(self.texts_to(p)) for p in (FIRST_ON_CALL, SECOND_ON_CALL, THIRD_ON_CALL))


class Line(Alerts):
    def test_the_first_is_called_at_once_then_the_second_then_everyone(self):
        self.emergency()
        second = self.expect(SECOND_ON_CALL, "chest pain")
        third = self.expect(THIRD_ON_CALL, "chest pain")
        self.assertGreaterEqual(self.played_since(second), 2 * 60 - 5)
        self.assertLess(self.played_since(second), 5 * 60 - 5)
        self.assertGreaterEqual(self.played_since(third), 2 * 60 + 60)
        self.assertLessEqual(self.played_since(third), 5 * 60 + 60)

    def test_it_is_repeated_until_someone_takes_it(self):
        number = self.emergency()
        for _ in range(3):
            self.expect(FIRST_ON_CALL, "chest pain")
        self.send(SECOND_ON_CALL, f"MINE {number}")
        self.expect(SECOND_ON_CALL, number)
        self.assertEqual(self.rows("SELECT taken_by FROM alert_due"), [(SECOND_ON_CALL,)])

    def test_an_alert_by_text_names_first_name_place_and_phone_but_no_more(self):
        self.emergency()
        words = self.texts_to(FIRST_ON_CALL)[0]
        self.assertIn("Bert", words)
        self.assertIn("Aspen House", words)
        self.assertIn("0112", re.sub(r"\D", "", words))
        self.assertNotIn("Alder", words)
        self.assertNotIn("pulse", words.lower())

    def test_a_phone_with_two_rentals_is_called_by_both_first_names(self):
        self.clock(SPEED)
        self.start(rentals=False)
        self.import_rentals([daemon.anna(), daemon.bert(phone_1=ANNA)])
        self.send(ANNA, "i have chest pain")
        called = self.expect(FIRST_ON_CALL, "chest pain")
        self.assertIn("one of Anna, Bert; Cabin 4, Upper Lodge or Aspen House", called.words)

    def test_calls_go_on_after_a_restart(self):
        self.emergency()
        self.restart()
        self.expect(SECOND_ON_CALL, "chest pain")

    def test_a_text_more_of_the_same_rental_is_the_same_alert(self):
        self.emergency()
        self.send(BERT, "and trouble breathing")
        self.settled()
        self.assertEqual(self.count("SELECT count(*) FROM alert"), 1)

    def test_two_renters_are_two_alerts(self):
        self.emergency()
        self.send(ANNA, "chest pain")
        self.expect(FIRST_ON_CALL, "Anna")
        self.assertEqual(self.count("SELECT count(*) FROM alert"), 2)


class Taking(Alerts):
    def test_taken_it_is_quiet_until_the_recheck_then_the_next_is_called_too(self):
        number = self.emergency()
        self.send(FIRST_ON_CALL, f"mine {number}")
        self.expect(FIRST_ON_CALL, number)
        taken = time.monotonic()
        called = self.expect(SECOND_ON_CALL, "chest pain")
        self.assertGreaterEqual((called.at - taken) * SPEED, 5 * 60 - 10)  # emergency: 5 min

    def test_after_the_recheck_the_next_in_line_can_take_it_over(self):
        number = self.emergency()
        self.send(FIRST_ON_CALL, f"MINE {number}")
        self.expect(FIRST_ON_CALL, number)
        self.expect(SECOND_ON_CALL, "Taken by Robin")
        self.send(SECOND_ON_CALL, f"MINE {number}")
        self.wait(lambda: self.rows("SELECT taken_by FROM alert_due") == [(SECOND_ON_CALL,)],
                  "Kim has it")

    def test_sorted_closes_it_and_nobody_is_called_any_more(self):
        number = self.emergency()
        self.send(FIRST_ON_CALL, f"MINE {number}")
        self.send(FIRST_ON_CALL, f"SORTED {number} daughter drove her to the clinic")
        self.wait(lambda: self.count("SELECT count(*) FROM alert_due") == 0, "closed")
        self.settled()
        calls = self.calls()
        self.let_pass(12 * 60)
        self.assertEqual(self.calls(), calls)
        self.assertEqual(
            self.rows("SELECT who, note FROM alert_event WHERE event = 'closed'"),
            [(FIRST_ON_CALL, "daughter drove her to the clinic")])

    def test_thanks_of_the_renter_closes_nothing(self):
        self.emergency()
        self.send(BERT, "ok thanks")
        self.assertEqual(self.count("SELECT count(*) FROM alert_due"), 1)

    def test_a_stranger_cannot_take_an_alert(self):
        number = self.emergency()
        self.send(STRANGER, f"MINE {number}")
        self.send(STRANGER, f"SORTED {number} all good")
        self.assertEqual(self.rows("SELECT taken_by FROM alert_due"), [(None,)])

    def test_a_number_that_is_not_open_is_answered_with_those_that_are(self):
        self.emergency()
        self.send(FIRST_ON_CALL, "MINE 77")
        self.expect(FIRST_ON_CALL, "Which one? Open:\n1")
        self.assertEqual(self.rows("SELECT taken_by FROM alert_due"), [(None,)])

    def test_what_another_has_taken_is_said_so(self):
        number = self.emergency()
        self.send(FIRST_ON_CALL, f"MINE {number}")
        self.send(SECOND_ON_CALL, f"MINE {number}")
        self.expect(SECOND_ON_CALL, "is with Robin")
        self.assertEqual(self.rows("SELECT taken_by FROM alert_due"), [(FIRST_ON_CALL,)])


class Office(Alerts):
    def test_each_later_question_for_a_person_reaches_one(self):
        self.clock(SPEED * 4)
        self.start()
        self.send(ANNA, "can my grandson borrow the blue trolley from the shed")
        self.expect(FIRST_ON_CALL, "OFFICE 1")
        self.send(ANNA, "can you order flowers for my wife, she turns 80 tomorrow")
        self.expect(FIRST_ON_CALL, "OFFICE 1")
        self.assertEqual(self.count("SELECT count(*) FROM alert"), 1)


class Urgent(Alerts):
    def test_an_urgent_one_goes_to_the_next_in_line_after_ten_minutes(self):
        self.clock(SPEED * 4)
        self.start()
        began = time.monotonic()
        self.send(ANNA, "my reading is 88")
        self.expect(ANNA, "911")
        self.expect(FIRST_ON_CALL, "Anna")
        second = self.expect(SECOND_ON_CALL, "Anna")
        self.assertGreaterEqual((second.at - began) * SPEED * 4, 10 * 60 - 10)


if __name__ == "__main__":
    daemon.main()
