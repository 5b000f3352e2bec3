"""SIGHUP reads configuration and content anew, or keeps the old; SIGTERM finishes what is in hand."""
import json
import signal
import socket
import threading

import daemon
import load
from daemon import BERT, WholeTest
from stand_in_gateway import signed_headers

FEW_SIGNS = ("chest-pain", "low-reading", "reading", "trouble-breathing")


class Reload(WholeTest):
    def own_content(self):
        kb = self.folder / "kb"
        if not kb.exists():
            daemon.few_of_the_content(kb, ("charge-car",), FEW_SIGNS)
        return kb

    def start_with_own_content(self):
        self.start({"kb_folder": str(self.own_content()), "cache_folder": "cache"})

    def change_answer(self, words):
        file = self.own_content() / "topics" / "en" / "charge-car.md"
        title, _, rest = file.read_text().partition("\n\n")
        answer, _, rest = rest.partition("\n\n")
        file.write_text(f"{title}\n\n{words}\n\n{rest}")

    def hang_up(self, event):
        """SIGHUP, then the log says what came of it."""
        already = len(self.daemon.events)
        self.daemon.process.send_signal(signal.SIGHUP)
        return self.daemon.log_until(event, after=already)

    def test_new_content_answers_from_then_on(self):
        self.start_with_own_content()
        self.change_answer("Ask at the counter for the blue cord.")
        self.hang_up("reloaded")
        self.send(BERT, "can i charge it in the car")
        self.expect(BERT, "blue cord")

    def test_bad_content_is_refused_with_file_and_line_and_the_old_stays(self):
        self.start_with_own_content()
        self.change_answer("Ask at the {counter} for the cord.")
        self.hang_up("reload-refused")
        self.assertIn("charge-car.md:3", self.daemon.log())
        self.send(BERT, "can i charge it in the car")
        self.assertNotIn("{", self.expect(BERT, "car").words)

    def test_a_new_configuration_holds_from_then_on(self):
        self.start()
        self.write_config({"house": {"phone": "208-555-0177"}})
        self.hang_up("reloaded")
        self.send(BERT, "what is the office phone number")
        self.expect(BERT, "208-555-0177")

    def test_a_bad_configuration_is_refused_and_the_old_stays(self):
        self.start()
        self.write_config({"house": {"phone": 5550177}, "nonsense": 1})
        self.hang_up("reload-refused")
        self.assertIn("/house/phone", self.daemon.log())
        self.assertIn("/nonsense", self.daemon.log())
        self.send(BERT, "what is the office phone number")
        self.expect(BERT, "208-555-0100")

    def test_a_configuration_that_is_no_json_is_refused(self):
        self.start()
        self.config_file.write_text("{")
        self.hang_up("reload-refused")
        self.send(BERT, "when is it due")
        self.expect(BERT, "Feb 18")


class Terminate(WholeTest):
    def test_idle_it_ends_with_zero(self):
        self.start()
        self.assertEqual(self.daemon.stop(), 0)

    def test_a_request_that_is_half_read_is_still_answered(self):
        self.start()
        body = self.gateway.body(BERT, "when is it due", "half-1")
        data = load.http_post("/messages/valley", signed_headers(
            self.gateway.secret, "half-1", int(self.gateway.clock.now()), body), body)
        with socket.create_connection(("127.0.0.1", self.daemon.port)) as connection:
            connection.sendall(data[:-20])
            self.daemon_has_read(connection)
            self.daemon.process.send_signal(signal.SIGTERM)
            self.daemon.log_until("stopping")
            connection.sendall(data[-20:])
            answer = b""
            while load.whole_answer(answer) is None:
                more = connection.recv(4096)
                self.assertTrue(more, answer)
                answer += more
        self.assertEqual(load.whole_answer(answer), 200)
        self.assertEqual(self.daemon.ends(), 0)
        self.assertEqual(self.count("SELECT count(*) FROM verdict"), 1)

    def daemon_has_read(self, connection):
        """Another request on another connection is answered: the loop has gone round since."""
        self.assertEqual(self.health().status, 200)

    def health(self):
        from stand_in_gateway import request
        return request("127.0.0.1", self.daemon.port, "GET", "/health")

    def test_a_send_in_hand_is_waited_for_and_its_outcome_kept(self):
        self.start()
        gate = threading.Event()
        self.addCleanup(gate.set)
        self.gateway.accept = lambda attempt: gate.wait(daemon.PATIENCE_S) and None
        self.send(BERT, "when is it due")
        self.wait(lambda: self.gateway.tries, "a send in hand")
        self.daemon.process.send_signal(signal.SIGTERM)
        self.daemon.log_until("stopping")
        gate.set()
        self.assertEqual(self.daemon.ends(), 0)
        self.assertEqual(self.rows("SELECT event FROM outbox_event"), [("accepted",)])
        self.assertEqual(self.count("SELECT count(*) FROM outbox_due"), 0)

    def test_the_log_holds_no_words_of_a_renter_and_no_whole_number(self):
        self.start()
        self.send(BERT, "when is my rental due, umbrella")
        self.expect(BERT, "Feb 18")
        self.stop()
        log = "\n".join(self.daemon.lines)
        self.assertNotIn("umbrella", log)
        self.assertNotIn(BERT.lstrip("+"), log)
        for line in daemon.free_of_sanitizer_noise(self.daemon.lines):
            json.loads(line)


if __name__ == "__main__":
    daemon.main()
