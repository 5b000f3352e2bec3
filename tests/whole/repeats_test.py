"""What is a repeat: (gateway, id, same content). A repeat gets its 200 and no second answer."""
import json

import daemon
from daemon import BERT, WholeTest


class Repeats(WholeTest):
    def verdicts(self):
        return self.count("SELECT count(*) FROM verdict")

    def send_body(self, **changes):
        """A signed request whose fields may be left out (None)."""
        fields = json.loads(self.gateway.body(BERT, "when is it due", "r-1"))
        fields = {k: v for k, v in (fields | changes).items() if v is not None}
        self.sent = getattr(self, "sent", 0) + 1
        answer = self.gateway.post(json.dumps(fields).encode(), f"w-{self.sent}")
        self.assertEqual(answer.status, 200, answer)

    def test_the_same_id_with_the_same_content_is_a_repeat(self):
        self.start()
        self.send(BERT, "when is it due", "r-1", sent_utc_s=self.gateway.clock.now() - 5)
        at = self.rows("SELECT sent_utc_s FROM text")[0][0]
        self.send(BERT, "when is it due", "r-1", sent_utc_s=at)
        self.settled()
        self.assertEqual(self.verdicts(), 1)
        self.assertEqual(len(self.texts_to(BERT)), 1)

    def test_a_repeat_is_known_after_a_restart(self):
        self.start()
        at = self.gateway.clock.now()
        self.send(BERT, "when is it due", "r-1", sent_utc_s=at)
        self.restart()
        self.send(BERT, "when is it due", "r-1", sent_utc_s=at)
        self.assertEqual(self.verdicts(), 1)

    def test_the_same_id_with_other_content_is_a_new_text(self):
        self.start()
        self.send(BERT, "when is it due", "r-1")
        self.send(BERT, "how do i charge it in the car", "r-1")
        self.assertEqual(self.verdicts(), 2)
        self.expect(BERT, "Feb 18")
        self.expect(BERT, "car")

    def test_another_id_with_the_same_content_is_a_new_text(self):
        self.start()
        self.send(BERT, "when is it due", "r-1")
        self.send(BERT, "when is it due", "r-2")
        self.assertEqual(self.verdicts(), 2)

    def test_without_id_and_time_the_same_text_within_ten_seconds_is_a_repeat(self):
        self.start()
        self.send_body(text_id=None, sent_at=None)
        self.send_body(text_id=None, sent_at=None)
        self.assertEqual(self.verdicts(), 1)

    def test_without_id_and_time_the_same_text_after_ten_seconds_is_new(self):
        self.clock(20)
        self.start()
        self.send_body(text_id=None, sent_at=None)
        began = self.gateway.clock.now()
        self.wait(lambda: self.gateway.clock.now() > began + 12, "12 seconds of the played clock")
        self.send_body(text_id=None, sent_at=None)
        self.assertEqual(self.verdicts(), 2)

    def test_a_sign_without_id_and_time_never_counts_as_a_repeat(self):
        self.start()
        for _ in range(2):
            self.send_body(text_id=None, sent_at=None, words="chest pain, please help")
        self.assertEqual(self.verdicts(), 2)
        self.expect(BERT, "911")
        self.expect(BERT, "911")


if __name__ == "__main__":
    daemon.main()
