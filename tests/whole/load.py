"""Keeps many requests in flight at once, one on each of many connections, in one thread."""
import selectors
import socket
import time


def http_post(path, headers, body):
    """The bytes of a request."""
    lines = [f"POST {path} HTTP/1.1", "Host: 127.0.0.1", f"Content-Length: {len(body)}"]
    lines += [f"{name}: {value}" for name, value in headers.items()]
    return "\r\n".join(lines).encode() + b"\r\n\r\n" + body


class Load:
    """`next_request()` gives (name, bytes) or None; names of answered requests come from step()."""

    def __init__(self, port, connections, next_request):
        self.next_request = next_request
        self.in_flight = {}  # socket -> [name, answer so far]
        self.idle = []
        self.selector = selectors.DefaultSelector()
        for _ in range(connections):
            connection = socket.create_connection(("127.0.0.1", port))
            connection.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
            self.selector.register(connection, selectors.EVENT_READ)
            self.idle.append(connection)

    def fill(self):
        """Gives each idle connection a request."""
        while self.idle and (request := self.next_request()) is not None:
            connection = self.idle.pop()
            self.in_flight[connection] = [request[0], b""]
            connection.sendall(request[1])

    def step(self, timeout=1):
        """What was answered since: a list of (name, status)."""
        answered = []
        for key, _ in self.selector.select(timeout):
            connection = key.fileobj
            try:
                more = connection.recv(65536)
            except OSError:
                more = b""
            if not more:
                self._drop(connection)
                continue
            entry = self.in_flight[connection]
            entry[1] += more
            if (status := whole_answer(entry[1])) is not None:
                answered.append((entry[0], status))
                del self.in_flight[connection]
                self.idle.append(connection)
        return answered

    def _drop(self, connection):
        """Hung up; a request of it that is not answered stays in in_flight."""
        self.selector.unregister(connection)
        connection.close()
        if connection in self.idle:
            self.idle.remove(connection)

    def drain(self):
        """The other side has ended: what answers are still on their way here?"""
        answered = []
        end = time.monotonic() + 10
        while self.selector.get_map() and time.monotonic() < end:
            answered += self.step(0.2)
        return answered

    def unanswered(self):
        return [name for name, _ in self.in_flight.values()]

    def close(self):
        for key in list(self.selector.get_map().values()):
            key.fileobj.close()
        self.selector.close()


def whole_answer(data):
    """The status, once the answer's head and body are there."""
    head, end, body = data.partition(b"\r\n\r\n")
    if not end:
        return None
    for line in head.split(b"\r\n")[1:]:
        name, _, value = line.partition(b":")
        if name.strip().lower() == b"content-length" and len(body) < int(value):
            return None
    return int(head.split(b" ", 2)[1])
