"""Two machines that text each other, one sender who floods, a gateway that repeats itself, and a
flood from everywhere: none of them runs on, none holds back a sign or its alert."""
import daemon
from daemon import ANNA, BERT, FIRST_ON_CALL, STRANGER, WholeTest

LIMITS = {"floods": {"window_s": 600, "sender_texts": 8, "same_texts": 4, "day_texts": 40,
                     "replies": 30}}


class Floods(WholeTest):
    def start(self, changes=None, **more):
        super().start(daemon.merged(LIMITS, changes or {}), **more)

    def ping_pong(self, phone, answer, rounds):
        """A machine on `phone` answers each text that we send it; how often it did."""
        self.send(phone, answer(None))
        for done in range(1, rounds):
            self.settled()
            texts = self.texts_to(phone)
            if len(texts) < done:
                return done
            self.send(phone, answer(texts[-1]))
        return rounds

    def open_alerts(self, level):
        return self.count("SELECT count(*) FROM alert_due WHERE level = ?", level)

    def test_an_automatic_answer_of_a_phone_is_the_end_of_it(self):
        self.start()
        self.send(BERT, "when is it due")
        self.expect(BERT, "Feb 18")
        self.send(BERT, "Automatic reply: I am away until Monday.")
        self.settled()
        self.assertEqual(len(self.texts_to(BERT)), 1, self.texts_to(BERT))
        self.assertEqual(self.open_alerts("office"), 0)

    def test_a_machine_that_gives_our_text_back_hears_no_more(self):
        self.start()
        rounds = self.ping_pong(BERT, lambda ours: ours or "when is it due", 10)
        self.assertEqual(rounds, 2)
        self.assertEqual(len(self.texts_to(BERT)), 1)

    def test_a_machine_that_says_the_same_each_time_is_told_once(self):
        self.start()
        rounds = self.ping_pong(BERT, lambda ours: "when is it due", 15)
        self.assertLess(rounds, 15)
        texts = self.texts_to(BERT)
        self.assertEqual(len(texts), 5, "four answers and what it is told")
        self.assertIn("emergencies only", texts[-1])
        self.assertEqual(self.rows("SELECT reason, level FROM alert_due"),
                         [("too-many-texts", "office")])

    def test_a_machine_that_says_something_else_each_time_is_told_once(self):
        self.start()
        number = iter(range(100))
        rounds = self.ping_pong(BERT, lambda ours: f"when is it due {next(number)}", 20)
        self.assertLess(rounds, 20)
        self.assertEqual(sum("emergencies only" in text for text in self.texts_to(BERT)), 1)
        self.assertLessEqual(len(self.texts_to(BERT)), 9)

    def test_a_sign_in_the_middle_of_a_flood_is_answered_and_called(self):
        self.start()
        for number in range(20):
            self.send(BERT, f"when is it due {number}")
        self.settled()
        before = len(self.texts_to(BERT))
        self.assertLessEqual(before, 9)
        self.send(BERT, "i have chest pain")
        self.expect(BERT, "Call 911 now")
        self.expect(FIRST_ON_CALL, "chest pain")
        self.assertEqual(self.open_alerts("emergency"), 1)
        for number in range(5):
            self.send(BERT, f"when is it due again {number}")
        self.settled()
        self.assertEqual(self.count("SELECT count(*) FROM text"), 26, "each text is kept")
        self.assertEqual(sum("emergencies only" in text for text in self.texts_to(BERT)), 1)

    def test_one_who_floods_keeps_nobody_else_from_an_answer(self):
        self.start()
        for number in range(20):
            self.send(STRANGER, f"hello {number} what is the price of this")
        self.send(ANNA, "when is it due")
        self.expect(ANNA, "Feb 20")

    def test_a_gateway_that_repeats_itself_under_new_ids_is_answered_a_few_times(self):
        self.start()
        for number in range(30):
            self.send(BERT, "does it charge in the car", f"again-{number}")
        self.settled()
        self.assertEqual(len(self.texts_to(BERT)), 5)

    def test_a_flood_from_everywhere_calls_staff_once_and_signs_still_get_through(self):
        self.start()
        for number in range(40):
            self.send(f"+1208555{130 + number % 20:04d}", f"what is the price {number}")
        self.settled()
        self.send(ANNA, "when is it due")
        self.expect(ANNA, "Very many texts reach us")
        self.send(ANNA, "when is it due please")
        self.send(BERT, "he stopped breathing")
        self.expect(BERT, "911")
        self.expect(FIRST_ON_CALL, "flood of texts")
        self.settled()
        self.assertEqual(len(self.texts_to(ANNA)), 1)
        self.assertEqual(self.rows("SELECT count(*) FROM alert_due WHERE reason = 'us:flood'"),
                         [(1,)])

    def test_once_the_flood_is_over_all_is_answered_again(self):
        self.start()
        for number in range(12):
            self.send(BERT, f"when is it due {number}")
        self.settled()
        before = len(self.texts_to(BERT))
        self.restart(later_s=700)
        self.send(BERT, "when is it due")
        self.wait(lambda: len(self.texts_to(BERT)) > before, "an answer")
        self.assertIn("Feb 18", self.texts_to(BERT)[-1])


if __name__ == "__main__":
    daemon.main()
