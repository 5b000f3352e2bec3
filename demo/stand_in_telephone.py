"""A stand-in for a telephone service: it rings a phone, reads aloud, and reports the key pressed.

The daemon asks for a call over HTTP, signed by Standard Webhooks 1.0.0; the report goes to its
/rings/NAME, signed the same way. Whoever does not answer is voicemail. The field names are this
stand-in's invention; demo/hutbell.json maps them.
"""
import json
import threading
import time
import uuid

from stand_in_gateway import is_signed, request, signed_headers

RING_S = 25  # so long a phone rings before somebody, or voicemail, answers


class Telephone:
    """take() for each request of the daemon; answering says who picks up.

    answering   which key is pressed by whom at their next call: {phone: key}; others do not answer
    happened    called with (phone, what, words): "rings" with what is read aloud, then "pressed"
                or "voicemail" with what hutbell has said to whoever listens
    """

    def __init__(self, gateway, secret, name="bell"):
        self.gateway, self.secret, self.name = gateway, secret, name
        self.answering = {}
        self.happened = lambda phone, what, words: None
        self._calls = {}  # by Idempotency-Key

    def take(self, headers, raw):
        """Returns (status, headers, fields of the answer)."""
        if not is_signed(self.secret, headers, raw):
            return 401, {}, {"why": "signature"}
        wanted, key = json.loads(raw), headers.get("Idempotency-Key", "")
        if key not in self._calls:  # asked once more, it does not ring once more
            self._calls[key] = f"call-{uuid.uuid4()}"
            threading.Thread(target=self._call, daemon=True,
                             args=(self._calls[key], wanted["call"], wanted["say"])).start()
        return 202, {}, {"call_id": self._calls[key]}

    def _call(self, call, phone, words):
        self.happened(phone, "rings", words)
        self.gateway.clock.wait(RING_S)
        key = self.answering.pop(phone, "")
        said = self._report(call, key, "picked up" if key else "voicemail")
        self.happened(phone, "pressed" if key else "voicemail", said)

    def _report(self, call, key, end):
        """What hutbell then says to whoever listens."""
        body = json.dumps({"call_id": call, "key": key, "end": end}).encode()
        for _ in range(50):  # a service tries again, too
            headers = signed_headers(self.secret, f"report-{call}", int(self.gateway.clock.now()),
                                     body)
            try:
                answer = request("127.0.0.1", self.gateway.daemon_port, "POST",
                                 f"/rings/{self.name}", body, headers)
                if answer.status == 200:
                    return answer.json()["say"]
            except OSError:
                pass
            time.sleep(0.1)
        return ""
