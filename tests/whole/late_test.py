"""Texts that reach us late: estimates count from the time sent, and the reply says so."""
import daemon
from daemon import ANNA, BERT, FIRST_ON_CALL, WholeTest
from conversation_test import planned


class Late(WholeTest):
    """It is 7 pm in the valley when each begins."""

    def test_over_ten_minutes_late_the_reply_names_the_time_it_was_written(self):
        self.start()
        self.send(BERT, "when is it due", sent_utc_s=self.gateway.clock.now() - 30 * 60)
        self.expect(BERT, "You wrote at 6:30", "Feb 18")

    def test_five_minutes_late_it_is_answered_as_ever(self):
        self.start()
        self.send(BERT, "when is it due", sent_utc_s=self.gateway.clock.now() - 5 * 60)
        self.assertNotIn("You wrote", self.expect(BERT, "Feb 18").words)

    def test_hours_left_count_from_the_time_sent(self):
        self.start()
        self.send(BERT, "i have 2 full batteries, how many hours do i have left")
        now = planned(self.expect(BERT, "plan on").words)
        self.send(ANNA, "hello")  # another renter in between changes nothing
        self.restart()
        self.send(BERT, "i have 2 full batteries, how many hours do i have left",
                  sent_utc_s=self.gateway.clock.now() - 40 * 60)
        late = planned(self.expect(BERT, "You wrote at 6:20", "plan on").words)
        self.assertLessEqual(abs(now - late - 40), 1)

    def test_a_late_emergency_calls_a_person_too(self):
        self.start()
        self.send(BERT, "chest pain", sent_utc_s=self.gateway.clock.now() - 30 * 60)
        self.expect(BERT, "911")
        self.expect(FIRST_ON_CALL, "chest pain")

    def test_a_time_in_the_future_is_not_believed(self):
        self.start()
        self.send(BERT, "when is it due", sent_utc_s=self.gateway.clock.now() + 3600)
        self.expect(BERT, "Feb 18")
        sent, received = self.rows("SELECT sent_utc_s, received_utc_s FROM text")[0]
        self.assertLessEqual(sent, received)


if __name__ == "__main__":
    daemon.main()
