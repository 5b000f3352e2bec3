"""What staff are reached by, on loopback: a telephone service, a webhook's receiver, a mail server.

Each can go dark and come back, and keeps what reached it.
"""
import email
import email.policy
import http.server
import json
import pathlib
import re
import subprocess
import threading
import time

SYSTEM_PYTHON = "/usr/bin/python3"  # has Debian's python3-aiosmtpd


class Request:
    def __init__(self, path, headers, body):
        self.path, self.headers, self.body = path, headers, body
        self.at = time.monotonic()

    def json(self):
        return json.loads(self.body)

    def __repr__(self):
        return f"<{self.path} {self.body[:300]!r}>"


class Listener:
    """An HTTP server that keeps each request and answers with `status` and `answer`, without one
    with the request's number as its id."""

    def __init__(self):
        self.requests, self.status, self.answer, self.port = [], 200, None, 0
        self.lock = threading.Lock()
        self._server = None
        self.up()

    def up(self):
        listener = self

        class Handler(http.server.BaseHTTPRequestHandler):
            def do_POST(self):
                body = self.rfile.read(int(self.headers.get("Content-Length", 0)))
                with listener.lock:
                    listener.requests.append(Request(self.path, dict(self.headers), body))
                    number = len(listener.requests)
                answer = listener.answer or {"id": f"call-{number}"}
                text = json.dumps(answer).encode()
                self.send_response(listener.status)
                self.send_header("Content-Length", str(len(text)))
                self.end_headers()
                self.wfile.write(text)

            do_GET = do_PUT = do_POST

            def log_message(self, *unused):
                pass

        self._server = http.server.ThreadingHTTPServer(("127.0.0.1", self.port), Handler)
        self._server.daemon_threads = True
        self.port = self._server.server_address[1]
        threading.Thread(target=self._server.serve_forever, args=(0.02,), daemon=True).start()
        return self

    def down(self):
        if self._server is not None:
            self._server.shutdown()
            self._server.server_close()
            self._server = None

    @property
    def url(self):
        return f"http://127.0.0.1:{self.port}"


class Mail:
    """One e-mail as it was taken; .link is the address in it."""

    def __init__(self, told):
        self.door, self.signed_in, self.to = told["door"], told["signed_in"], told["to"]
        self.message = email.message_from_string(told["content"], policy=email.policy.default)
        self.words = self.message.get_body(("plain",)).get_content()
        found = re.search(r"https?://\S+/links/(\S+)", self.words)
        self.token = found.group(1) if found else None


class MailServer:
    """mail_server.py as a process of its own, with a certificate of its own in `folder`."""

    user, password = "hutbell", "a password of the valley"

    def __init__(self, folder):
        self.certificate = pathlib.Path(folder) / "mail-certificate.pem"
        self._key = pathlib.Path(folder) / "mail-key.pem"
        subprocess.run(
            ["openssl", "req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:P-256",
             "-nodes", "-days", "2", "-keyout", self._key, "-out", self.certificate,
             "-subj", "/CN=127.0.0.1", "-addext", "subjectAltName=IP:127.0.0.1"],
            check=True, capture_output=True)
        self.mails, self.ports = [], None
        self._process = subprocess.Popen(
            [SYSTEM_PYTHON, pathlib.Path(__file__).with_name("mail_server.py"), self.certificate,
             self._key], stdout=subprocess.PIPE, stdin=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL, text=True)  # it warns of TLS that it does not see
        self.ports = json.loads(self._process.stdout.readline())
        self._reader = threading.Thread(target=self._read, daemon=True)
        self._reader.start()

    def _read(self):
        for line in self._process.stdout:
            self.mails.append(Mail(json.loads(line)))

    def url(self, door="tls"):
        return f"{'smtps' if door == 'tls' else 'smtp'}://127.0.0.1:{self.ports[door]}"

    def down(self):
        if self._process.poll() is None:
            self._process.kill()
            self._process.wait()
            self._reader.join()
            self._process.stdout.close()
