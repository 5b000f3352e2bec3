"""HTTP refusals, byte by byte: what may be read in two ways is refused, as a problem (RFC 9457)."""
import json
import socket

import daemon
from daemon import WholeTest
from stand_in_gateway import request


class Http(WholeTest):
    def exchange(self, data):
        """Sends bytes, returns (status, headers in lower case, body) of what comes back."""
        with socket.create_connection(("127.0.0.1", self.daemon.port), 30) as connection:
            connection.sendall(data)
            answer = b""
            while more := connection.recv(65536):
                answer += more
                head, end, body = answer.partition(b"\r\n\r\n")
                if end:
                    headers = {}
                    for line in head.split(b"\r\n")[1:]:
                        name, _, value = line.partition(b":")
                        headers[name.decode().lower()] = value.strip().decode()
                    if len(body) >= int(headers.get("content-length", 0)):
                        return int(head.split()[1]), headers, body
        self.fail(f"no whole answer: {answer!r}")

    def refused(self, status, data):
        found, headers, body = self.exchange(data)
        self.assertEqual(found, status, body)
        self.assertEqual(headers["content-type"], "application/problem+json")
        self.assertEqual(json.loads(body)["status"], status)
        self.assertNotIn(b"<html", body.lower())
        return headers

    def setUp(self):
        super().setUp()
        self.start({"limits": {"request_s": 2, "body_bytes": 4096, "header_bytes": 8192}},
                   rentals=False)

    POST = b"POST /messages/valley HTTP/1.1\r\nHost: x\r\n"

    def test_two_lengths(self):  # RFC 9112, 6.3 item 5
        self.refused(400, self.POST + b"Content-Length: 2\r\nContent-Length: 3\r\n\r\n{}x")

    def test_a_length_and_chunks(self):  # RFC 9112, 6.1
        self.refused(400, self.POST + b"Content-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n"
                     b"0\r\n\r\n")

    def test_a_space_before_the_colon(self):  # RFC 9112, 5.1
        self.refused(400, self.POST + b"Content-Length : 2\r\n\r\n{}")

    def test_no_host(self):  # RFC 9112, 3.2
        self.refused(400, b"GET /health HTTP/1.1\r\n\r\n")

    def test_two_hosts(self):  # RFC 9112, 3.2
        self.refused(400, b"GET /health HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n")

    def test_a_folded_line(self):  # RFC 9112, 5.2
        self.refused(400, b"GET /health HTTP/1.1\r\nHost: a\r\nX: 1\r\n 2\r\n\r\n")

    def test_too_many_header_bytes(self):  # RFC 6585, 5
        lines = b"".join(b"X-%d: %s\r\n" % (n, b"y" * 80) for n in range(200))
        self.refused(431, b"GET /health HTTP/1.1\r\nHost: a\r\n" + lines + b"\r\n")

    def test_too_large_a_body(self):  # RFC 9110, 15.5.14
        self.refused(413, self.POST + b"Content-Length: 5000\r\n\r\n" + b" " * 5000)

    def test_a_request_that_does_not_end(self):  # RFC 9110, 15.5.9
        self.refused(408, self.POST + b"Content-Length: 10\r\n\r\n{")

    def test_an_unknown_path(self):
        self.refused(404, b"GET /elsewhere HTTP/1.1\r\nHost: a\r\n\r\n")

    def test_a_method_that_the_path_does_not_take_is_told_which_it_does(self):  # RFC 9110, 15.5.6
        headers = self.refused(405, b"GET /messages/valley HTTP/1.1\r\nHost: a\r\n\r\n")
        self.assertIn("POST", headers["allow"])

    def test_health(self):
        answer = request("127.0.0.1", self.daemon.port, "GET", "/health")
        self.assertEqual(answer.status, 200)
        self.assertTrue(answer.headers["Content-Type"].startswith("application/json"))
        self.assertIsInstance(answer.json(), dict)

    def test_after_all_that_it_still_serves(self):
        for data in (b"\0\1\2\r\n\r\n", b"GET\r\n\r\n", b"GET / HTTP/9.9\r\nHost: a\r\n\r\n"):
            status, _, _ = self.exchange(data)
            self.assertGreaterEqual(status, 400)
        self.assertEqual(request("127.0.0.1", self.daemon.port, "GET", "/health").status, 200)


if __name__ == "__main__":
    daemon.main()
