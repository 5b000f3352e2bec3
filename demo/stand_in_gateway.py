"""A stand-in for a texting carrier: a real HTTP server and client, on loopback only.

It plays both ends of the wire. What a handset sends, it signs by Standard Webhooks 1.0.0 and posts
to the daemon's /messages/NAME; what the daemon sends, it verifies, takes, hands to the handset and
reports on /deliveries/NAME. `demo/gateway` runs it as a program of its own; the tests hold one in
their own process, so that they can make it fail on purpose.

The field names are this stand-in's invention; demo/hutbell.json maps them.
"""
import base64
import datetime
import hashlib
import hmac
import http.client
import http.server
import json
import queue
import socket
import threading
import time
import uuid


def new_secret(seed=b"valley"):
    """A Standard Webhooks secret: "whsec_" and the base64 of 24 to 64 bytes."""
    return "whsec_" + base64.b64encode(hashlib.sha256(seed).digest()).decode()


def signature(secret, message_id, timestamp, body):
    """Standard Webhooks 1.0.0: HMAC-SHA256 over "id.timestamp.body" with the decoded secret."""
    key = base64.b64decode(secret.removeprefix("whsec_"))
    signed = f"{message_id}.{timestamp}.".encode() + body
    return "v1," + base64.b64encode(hmac.digest(key, signed, "sha256")).decode()


def is_signed(secret, headers, raw):
    """Whether a request of the daemon carries the signature of what it says."""
    expected = signature(secret, headers.get("webhook-id", ""),
                         headers.get("webhook-timestamp", ""), raw)
    given = headers.get("webhook-signature", "").split(" ")
    return any(hmac.compare_digest(expected, one) for one in given)


def signed_headers(secret, message_id, timestamp, body):
    return {
        "Content-Type": "application/json",
        "webhook-id": message_id,
        "webhook-timestamp": str(timestamp),
        "webhook-signature": signature(secret, message_id, timestamp, body),
    }


class PlayedClock:
    """The daemon's "played_clock": starts at a moment of choice and runs `speed` times as fast."""

    def __init__(self, start_utc_s=None, speed=1):
        self.start_utc_s = time.time() if start_utc_s is None else start_utc_s
        self.speed = speed
        self.began = time.monotonic()

    def now(self):
        return self.start_utc_s + (time.monotonic() - self.began) * self.speed

    def wait(self, seconds):
        time.sleep(max(0, seconds) / self.speed)


def rfc3339(utc_s):
    moment = datetime.datetime.fromtimestamp(int(utc_s), datetime.timezone.utc)
    return moment.strftime("%Y-%m-%dT%H:%M:%SZ")


class Answer:
    """What the daemon answered to one request."""

    def __init__(self, status, headers, body):
        self.status, self.headers, self.body = status, headers, body

    def json(self):
        return json.loads(self.body)

    def __repr__(self):
        return f"<{self.status} {self.body[:300]!r}>"


def request(url_host, port, method, path, body=b"", headers=None, timeout=30):
    connection = http.client.HTTPConnection(url_host, port, timeout=timeout)
    try:
        connection.request(method, path, body, headers or {})
        answer = connection.getresponse()
        return Answer(answer.status, dict(answer.headers), answer.read())
    finally:
        connection.close()


class Try:
    """One request in which the daemon asked us to carry a text."""

    def __init__(self, headers, fields):
        self.headers = headers
        self.to = fields.get("to")
        self.sender = fields.get("from")
        self.words = fields.get("words")
        self.key = headers.get("Idempotency-Key", "").strip('"')  # a quoted string
        self.at = time.monotonic()
        self.status = None  # what we answered, None while we have not
        self.text_id = None

    def __repr__(self):
        return f"<to {self.to} {self.status}: {self.words!r}>"


class Gateway:
    """Start it, tell it where the daemon listens, then text() as anyone and look at what arrived.

    tries      every request of the daemon, in order, also those that we refused
    delivered  the texts that reached a handset: one for each Idempotency-Key
    accept     called with each Try before it is taken; returns None to take it, or (status,
               headers) to refuse it. It may block, to be slow.
    arrived    called with each Try that reaches a handset
    report     the word with which delivered texts are reported, None for silence
    """

    def __init__(self, name="valley", number="+12085550100", secret=None, clock=None, port=0,
                 handler=None):
        self.name, self.number = name, number
        self.handler = handler or Handler
        self.secret = secret or new_secret()
        self.clock = clock or PlayedClock()
        self.port = port
        self.daemon_port = None
        self.accept = lambda attempt: None
        self.arrived = lambda attempt: None
        self.report = "arrived"
        self.tries, self.delivered = [], []
        self.refused_signatures = 0
        self.changed = threading.Condition()
        self._by_key = {}
        self._connections = set()
        self._server = None
        self._reports = queue.Queue()
        threading.Thread(target=self._send_reports, daemon=True).start()

    # ---- being up and down

    def up(self):
        self._server = _Server(("127.0.0.1", self.port), self.handler)
        self._server.gateway = self
        self.port = self._server.server_address[1]
        threading.Thread(target=self._server.serve_forever, args=(0.02,), daemon=True).start()
        return self

    def down(self):
        """From now on connecting is refused, as if the carrier had gone dark."""
        if self._server is None:
            return
        self._server.shutdown()
        self._server.server_close()
        self._server = None
        for connection in list(self._connections):
            try:
                connection.shutdown(socket.SHUT_RDWR)
            except OSError:
                pass

    # ---- from a handset to the daemon

    def body(self, sender, words, text_id=None, sent_utc_s=None, to=None, pictures=0):
        fields = {"from": sender, "to": to or self.number, "words": words, "pictures": pictures,
                  "sent_at": rfc3339(self.clock.now() if sent_utc_s is None else sent_utc_s)}
        if text_id:
            fields["text_id"] = text_id
        return json.dumps(fields).encode()

    def text(self, sender, words, text_id=None, **more):
        """Sends one text as a phone; returns the daemon's Answer."""
        text_id = text_id or f"in-{uuid.uuid4()}"
        return self.post(self.body(sender, words, text_id, **more), text_id)

    def post(self, body, webhook_id, path=None):
        headers = signed_headers(self.secret, webhook_id, int(self.clock.now()), body)
        return request("127.0.0.1", self.daemon_port, "POST", path or f"/messages/{self.name}",
                       body, headers)

    # ---- from the daemon to a handset

    def take(self, headers, raw):
        """Called for each request of the daemon; returns (status, headers, fields of the answer)."""
        if not is_signed(self.secret, headers, raw):
            self.refused_signatures += 1
            return 401, {}, {"why": "signature"}
        attempt = Try(headers, json.loads(raw))
        with self.changed:
            self.tries.append(attempt)
            self.changed.notify_all()
        refusal = self.accept(attempt)
        with self.changed:
            if refusal is not None:
                attempt.status = refusal[0]
            else:
                attempt.status = 202
                self._deliver(attempt)
            self.changed.notify_all()
        if refusal is not None:
            return refusal[0], refusal[1], {"why": "not now"}
        return 202, {}, {"text_id": attempt.text_id}

    def _deliver(self, attempt):
        first = self._by_key.get(attempt.key) if attempt.key else None
        if first is not None:  # the same text once more: same answer, no second delivery
            attempt.text_id = first.text_id
            return
        attempt.text_id = f"out-{uuid.uuid4()}"
        if attempt.key:
            self._by_key[attempt.key] = attempt
        self.delivered.append(attempt)
        self.arrived(attempt)
        if self.report is not None:
            self._reports.put((attempt.text_id, self.report))

    def _send_reports(self):
        while True:
            text_id, word = self._reports.get()
            for _ in range(50):  # a carrier tries again, too
                try:
                    if self.report_delivery(text_id, word).status < 300:
                        break
                except OSError:
                    pass
                time.sleep(0.1)

    def report_delivery(self, text_id, word):
        body = json.dumps({"text_id": text_id, "state": word}).encode()
        return self.post(body, f"report-{uuid.uuid4()}", f"/deliveries/{self.name}")

    # ---- waiting

    def wait(self, condition, seconds=30):
        """Waits until condition() is true; False if it never was in that time."""
        end = time.monotonic() + seconds
        with self.changed:
            while not condition():
                if time.monotonic() >= end:
                    return False
                self.changed.wait(0.05)
            return True


class _Server(http.server.ThreadingHTTPServer):
    daemon_threads = True
    allow_reuse_address = True
    request_queue_size = 128


class Handler(http.server.BaseHTTPRequestHandler):
    """What the daemon reaches; demo/gateway adds what the demo reaches."""

    protocol_version = "HTTP/1.1"
    disable_nagle_algorithm = True

    def setup(self):
        super().setup()
        self.gateway = self.server.gateway
        self.gateway._connections.add(self.connection)

    def finish(self):
        self.gateway._connections.discard(self.connection)
        super().finish()

    def raw_body(self):
        return self.rfile.read(int(self.headers.get("Content-Length", 0)))

    def do_POST(self):
        self.answer(*self.gateway.take(self.headers, self.raw_body()))

    def answer(self, status, headers, fields):
        body = json.dumps(fields).encode()
        self.send_response(status)
        for name, value in headers.items():
            self.send_header(name, value)
        self.send_header("Content-Type", "application/json")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)

    def handle_one_request(self):
        try:
            super().handle_one_request()
        except OSError:  # the other side, or down(), hung up
            self.close_connection = True

    def log_message(self, *unused):
        pass
