"""Few words for tests of the roads to staff: what reached them, and how they answer."""
import json
import urllib.parse

import daemon
import stand_ins
from daemon import FIRST_ON_CALL, SECOND_ON_CALL, WholeTest
from stand_in_gateway import new_secret, request, signed_headers

SPEED = 60  # a played minute is a second
HOOK_SECRET = new_secret(b"robin's own system")


class Roads(WholeTest):
    """Robin is reached by every road, Kim by text alone; a played minute is a second."""

    def setUp(self):
        super().setUp()
        self.telephone = stand_ins.Listener()
        self.addCleanup(self.telephone.down)
        self.hook = stand_ins.Listener()
        self.addCleanup(self.hook.down)
        self.mail = stand_ins.MailServer(self.folder)
        self.addCleanup(self.mail.down)
        self.calls = 0

    def robin(self, **roads):
        return {"name": "Robin", "phone": FIRST_ON_CALL, "roads": {
            "text": {"from": "office"}, "ring": {"from": "urgent"},
            "e-mail": {"from": "office", "address": "robin@larkspur.example"},
            "webhook": {"from": "office", "url": self.hook.url + "/alerts",
                        "secret": HOOK_SECRET}, **roads}}

    def all_roads(self, staff=None, **more):
        return daemon.merged({
            "listen": {"public_url": "https://texts.larkspur.example"},
            "rings": {"bell": {
                "authentication": {"kind": "bearer", "secrets": ["a-token-of-the-bell"]},
                "send": {"url": self.telephone.url + "/call", "from": daemon.OFFICE,
                         "json": {"to": "{to}", "read_aloud": "{text}", "reference": "{key}"},
                         "message_id": "/id"},
                "report": {"ring": "/call", "pressed": "/key", "result": "/end",
                           "words": {"picked up": "answered", "machine": "voicemail",
                                     "rang out": "unanswered", "ringing": "unknown"}}}},
            "mail": {"url": self.mail.url(), "user": self.mail.user,
                     "password": self.mail.password, "from": "hutbell@larkspur.example",
                     "ca_file": str(self.mail.certificate)},
            "staff": staff or [self.robin(), {"name": "Kim", "phone": SECOND_ON_CALL}]}, more)

    def begin(self, staff=None, speed=SPEED, **more):
        self.clock(speed)
        self.start(self.all_roads(staff, **more))

    # ---- what reached staff by each road

    def ring(self, number=1):
        """The so many-th call of the telephone service."""
        self.wait(lambda: len(self.telephone.requests) >= number, f"ring {number}")
        return self.telephone.requests[number - 1]

    def rings_of(self, phone):
        return [ring for ring in self.telephone.requests if ring.json()["to"] == phone]

    def ring_of(self, phone):
        """The first call to this phone; those to others of the same moment may come before it."""
        self.wait(lambda: self.rings_of(phone), f"a ring of {phone}")
        return self.rings_of(phone)[0]

    def hooked(self, number=1):
        self.wait(lambda: len(self.hook.requests) >= number, f"webhook {number}")
        return self.hook.requests[number - 1]

    def mailed(self, number=1):
        self.wait(lambda: len(self.mail.mails) >= number, f"e-mail {number}")
        return self.mail.mails[number - 1]

    # ---- what staff answer

    def report(self, call, key="", end="picked up", token="a-token-of-the-bell"):
        body = json.dumps({"call": call, "key": key, "end": end}).encode()
        return request("127.0.0.1", self.daemon.port, "POST", "/rings/bell", body,
                       {"Content-Type": "application/json", "Authorization": f"Bearer {token}"})

    def press(self, ring, key, end="picked up"):
        answer = self.report(ring.json()["reference"], key, end)
        self.assertEqual(answer.status, 200, answer)
        return answer.json()

    def open(self, token, method="GET"):
        return request("127.0.0.1", self.daemon.port, method, f"/links/{token}")

    def push(self, token, **fields):
        return request("127.0.0.1", self.daemon.port, "POST", f"/links/{token}",
                       urllib.parse.urlencode(fields).encode(),
                       {"Content-Type": "application/x-www-form-urlencoded"})

    def call(self, secret=HOOK_SECRET, at=None, **fields):
        body = json.dumps({"by": "Robin", **fields}).encode()
        self.calls += 1
        headers = signed_headers(secret, f"call-{self.calls}",
                                 int(self.gateway.clock.now() if at is None else at), body)
        return request("127.0.0.1", self.daemon.port, "POST", "/alerts", body, headers)

    # ---- what became of it

    def events(self, event):
        return self.rows("SELECT who, road, note FROM alert_event WHERE event = ? ORDER BY id",
                         event)

    def is_taken(self, by=FIRST_ON_CALL):
        self.wait(lambda: self.rows("SELECT taken_by FROM alert_due") == [(by,)], f"{by} has it")

    def is_closed(self):
        self.wait(lambda: self.count("SELECT count(*) FROM alert_due") == 0, "closed")

    def let_pass(self, seconds):
        end = self.gateway.clock.now() + seconds
        self.wait(lambda: self.gateway.clock.now() >= end, "time to pass")
