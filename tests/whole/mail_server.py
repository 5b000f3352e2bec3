"""A mail server for tests: Debian's aiosmtpd on loopback, with TLS and a sign-in.

usage: mail_server.py CERTIFICATE KEY     run with the system's Python, which has python3-aiosmtpd

Prints {"tls": PORT, "starttls": PORT, "plain": PORT} and then each e-mail it took, one JSON object a
line. A recipient whose name begins with "full" is refused for now, one with "gone" for good, and an
e-mail to "slow" is answered after SLOW_S seconds. The door "plain" knows no TLS.
"""
import asyncio
import json
import ssl
import sys

from aiosmtpd.controller import UnthreadedController
from aiosmtpd.smtp import AuthResult

SLOW_S = 4
USER, PASSWORD = b"hutbell", b"a password of the valley"


def say(value):
    print(json.dumps(value), flush=True)


class Box:
    def __init__(self, door):
        self.door = door

    async def handle_RCPT(self, server, session, envelope, address, options):
        if address.startswith("full"):
            return "452 4.2.2 the box is full"
        if address.startswith("gone"):
            return "550 5.1.1 nobody of this name"
        envelope.rcpt_tos.append(address)
        return "250 OK"

    async def handle_DATA(self, server, session, envelope):
        if envelope.rcpt_tos[0].startswith("slow"):
            await asyncio.sleep(SLOW_S)
        say({"door": self.door, "from": envelope.mail_from, "to": envelope.rcpt_tos,
             "signed_in": session.authenticated, "content": envelope.content.decode()})
        return "250 OK"


def check(server, session, envelope, mechanism, data):
    return AuthResult(success=data.login == USER and data.password == PASSWORD)


def open_doors(context, loop):
    """TLS from the start, or by STARTTLS, both with a sign-in; or nothing of all this."""
    rules = {"hostname": "127.0.0.1", "port": 0, "loop": loop, "authenticator": check,
             "auth_required": True}
    doors = {"tls": UnthreadedController(Box("tls"), ssl_context=context, auth_require_tls=False,
                                         **rules),
             "starttls": UnthreadedController(Box("starttls"), tls_context=context,
                                              require_starttls=True, **rules),
             "plain": UnthreadedController(Box("plain"), hostname="127.0.0.1", port=0, loop=loop)}
    for door in doors.values():
        door.begin()
    return {name: door.server.sockets[0].getsockname()[1] for name, door in doors.items()}


def main(certificate, key):
    context = ssl.create_default_context(ssl.Purpose.CLIENT_AUTH)
    context.load_cert_chain(certificate, key)
    loop = asyncio.new_event_loop()
    asyncio.set_event_loop(loop)
    say(open_doors(context, loop))
    loop.run_forever()


main(*sys.argv[1:])
