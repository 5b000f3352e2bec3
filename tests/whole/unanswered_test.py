"""Questions that must be answered: who leaves one unanswered is called about, in time."""
import daemon
from daemon import ANNA, BERT, FIRST_ON_CALL, WholeTest

SPEED = 120  # a played minute is half a second


class Unanswered(WholeTest):
    def begin(self, changes=None):
        self.clock(SPEED)
        self.start(changes)

    def let_pass(self, seconds):
        """Waits until the played clock has moved on."""
        end = self.gateway.clock.now() + seconds
        self.wait(lambda: self.gateway.clock.now() >= end, "time to pass")

    def waiting(self):
        return self.rows("SELECT phone, question FROM answer_due ORDER BY phone")

    def waited(self):
        """Seconds from the first text to the last step of its alert, by the daemon's own clock."""
        return self.count("SELECT (SELECT max(at_utc_s) FROM alert_event WHERE event IN ('opened',"
                          " 'raised')) - min(received_utc_s) FROM text")

    def levels(self):
        return self.rows("SELECT level, reason FROM alert_due")

    def ask_whether_it_flows(self):
        self.begin()
        self.send(BERT, "the machine stopped and no oxygen is coming out")
        self.expect(BERT, "flowing again?")
        self.expect(FIRST_ON_CALL, "URGENT 1")
        self.assertEqual(self.waiting(), [(BERT, "flowing")])


class Flowing(Unanswered):
    def test_no_answer_in_five_minutes_is_an_emergency(self):
        self.ask_whether_it_flows()
        self.expect(FIRST_ON_CALL, "EMERGENCY 1", "no answer")
        self.assertGreaterEqual(self.waited(), 5 * 60)
        self.assertEqual(self.waiting(), [])
        self.assertEqual(self.levels(), [("emergency", "flowing:no-answer")])

    def test_yes_ends_the_wait(self):
        self.ask_whether_it_flows()
        self.send(BERT, "yes thanks")
        self.expect(BERT, "Staff know")
        self.assertEqual(self.waiting(), [])
        self.let_pass(6 * 60)
        self.assertEqual([level for level, _ in self.levels()], ["urgent"])

    def test_another_text_does_not_put_it_off(self):
        self.ask_whether_it_flows()
        first = self.rows("SELECT due_utc_s FROM answer_due")
        self.let_pass(60)
        self.send(BERT, "ok")
        self.expect(BERT, "flowing again?")
        self.assertEqual(self.rows("SELECT due_utc_s FROM answer_due"), first)

    def test_the_wait_outlives_a_restart(self):
        self.ask_whether_it_flows()
        self.restart(later_s=10 * 60)
        self.expect(FIRST_ON_CALL, "EMERGENCY 1", "no answer")

    def test_who_has_dealt_with_it_ends_the_wait(self):
        self.ask_whether_it_flows()
        self.send(FIRST_ON_CALL, "SORTED 1 swapped the unit, all well")
        self.wait(lambda: self.levels() == [], "closed")
        self.assertEqual(self.waiting(), [])
        self.let_pass(6 * 60)
        self.assertEqual(self.levels(), [])


    def test_who_answers_a_person_is_not_silent(self):
        self.ask_whether_it_flows()
        self.send(FIRST_ON_CALL, "TALK 1 is there a plug?")
        self.expect(BERT, "is there a plug?")
        self.send(BERT, "no. the inn keeper may have one")
        self.expect(FIRST_ON_CALL, "1 Bert: no.")
        self.assertEqual(self.waiting(), [])
        self.send(FIRST_ON_CALL, "TALK ask them for it")
        self.let_pass(6 * 60)
        self.assertEqual([level for level, _ in self.levels()], ["urgent"])

    def test_of_a_unit_on_its_battery_no_answer_is_urgent_at_most(self):
        self.begin()
        self.send(BERT, "the power is out, the unit is running on battery")
        self.expect(BERT, "still flowing?")
        self.wait(lambda: self.waiting() == [], "the question to lapse")
        self.assertEqual(self.levels(), [("urgent", "sign:power-out-now")])


class Plug(Unanswered):
    def ask_for_a_plug(self):
        self.begin()
        self.send(ANNA, "i have one battery at 60%, how many hours do i have left")
        self.expect(ANNA, "Is there a plug where you are?")
        self.assertEqual(self.waiting(), [(ANNA, "plug")])
        self.assertEqual(self.levels(), [])

    def test_no_answer_in_ten_minutes_calls_someone(self):
        self.ask_for_a_plug()
        called = self.expect(FIRST_ON_CALL, "URGENT 1", "plug?")
        self.assertGreaterEqual(self.waited(), 10 * 60)
        self.assertIn("Anna", called.words)

    def test_no_calls_someone_at_once(self):
        self.ask_for_a_plug()
        self.send(ANNA, "NO")
        self.expect(FIRST_ON_CALL, "URGENT 1", "no plug")
        self.assertLess(self.waited(), 10 * 60)

    def test_yes_calls_nobody(self):
        self.ask_for_a_plug()
        self.send(ANNA, "yes")
        self.expect(ANNA, "Plug the unit")
        self.let_pass(11 * 60)
        self.assertEqual(self.levels(), [])


if __name__ == "__main__":
    daemon.main()
