"""Rentals in and out of a running daemon: a booking system's calls, swaps, links, states, export."""
import contextlib
import json
import sqlite3
import stat

import daemon
from daemon import (ANNA, BERT, FIRST_ON_CALL, SECOND_ON_CALL, STRANGER, WholeTest, anna, bert,
                    rentals_csv)
from stand_in_gateway import new_secret, request, signed_headers

BOOKING_SECRET = new_secret(b"booking")
BOOKING = {"booking": {"authentication": {"kind": "standard-webhooks",
                                          "secrets": [BOOKING_SECRET]}}}


def record(**changes):
    """Bert as a booking system sends him."""
    pulse = {"mode": "pulse", "setting": 3, "dated": "2026-01-28",
             "confirmed_by": "Dr. Tansy's office"}
    return {"rental_id": "R-1002", "state": "out", "name": "Bert Alder", "language": "en",
            "phones": [{"number": BERT, "whose": "renter", "reach": "any"}], "unit": "wren",
            "serial": "WR-0033", "orders": {"rest": pulse, "walking": pulse, "sleep": pulse},
            "batteries": [{"serial": "W-1", "health_percent": 95, "measured": "2026-02-06"},
                          {"serial": "W-2", "health_percent": 95, "measured": "2026-02-06"}],
            "chargers": 1, "start": "2026-02-11 15:00", "due": "2026-02-18T10:00:00-07:00",
            "place": "Aspen House", **changes}


class Rentals(WholeTest):
    def setUp(self):
        super().setUp()
        self.sent = 0

    def put(self, body, path=None, secret=BOOKING_SECRET, message_id=None, headers=None):
        self.sent += 1
        rental_id = body.get("rental_id", "") if isinstance(body, dict) else ""
        data = body if isinstance(body, bytes) else json.dumps(body).encode()
        signed = signed_headers(secret, message_id or f"b-{self.sent}",
                                int(self.gateway.clock.now()), data)
        return request("127.0.0.1", self.daemon.port, "PUT", path or f"/rentals/{rental_id}", data,
                       {**signed, **(headers or {})})

    def taken(self, status, body, **more):
        answer = self.put(body, **more)
        self.assertEqual(answer.status, status, answer)
        return answer.json()

    def refused(self, status, body, **more):
        before = self.count("SELECT count(*) FROM rental_row")
        answer = self.put(body, **more)
        self.assertEqual(answer.status, status, answer)
        self.assertEqual(answer.headers["Content-Type"], "application/problem+json")
        self.assertEqual(self.count("SELECT count(*) FROM rental_row"), before)
        return answer.json()

    def load(self, *rows):
        """The office imports a file beside the running daemon."""
        file = self.folder / "later.csv"
        file.write_text(rentals_csv(rows))
        return self.run_program("import", "rentals", str(file), "--config", str(self.config_file))


class BookingSystem(Rentals):
    def test_a_new_rental_is_created_and_its_phone_answered(self):
        self.start(BOOKING, rentals=False)
        self.assertEqual(self.taken(201, record()), {"changed": True})
        self.send(BERT, "when is it due back?")
        self.expect(BERT, "Feb 18")
        self.assertEqual(self.rows("SELECT who, what, subject FROM audit"),
                         [("booking system", "new-rental", "R-1002")])

    def test_the_same_record_by_call_and_by_file_is_the_same(self):
        self.start(BOOKING)
        self.assertEqual(self.taken(200, record(car_charger=False)), {"changed": False})
        self.assertEqual(self.count("SELECT count(*) FROM rental_row"), 2)

    def test_a_change_is_a_new_dated_row_and_the_old_one_stays(self):
        self.start(BOOKING)
        self.assertEqual(self.taken(200, record(due="2026-02-19 10:00")), {"changed": True})
        self.send(BERT, "when is it due back?")
        self.expect(BERT, "Feb 19")
        rows = self.rows("SELECT source FROM rental_row WHERE rental_id = 'R-1002' ORDER BY id")
        self.assertEqual(rows, [("import",), ("booking b-1",)])

    def test_a_request_that_comes_again_does_not_undo_a_newer_one(self):
        self.start(BOOKING)
        self.taken(200, record(due="2026-02-19 10:00"), message_id="first")
        self.taken(200, record(due="2026-02-20 10:00"), message_id="second")
        again = self.taken(200, record(due="2026-02-19 10:00"), message_id="first")
        self.assertEqual(again, {"changed": False})
        self.send(BERT, "when is it due back?")
        self.expect(BERT, "Feb 20")

    def test_who_does_not_sign_may_not_put(self):
        self.start(BOOKING)
        self.refused(401, record(due="2026-02-19 10:00"), secret=self.gateway.secret)
        self.refused(401, record(), headers={"webhook-signature": "v1,AAAA"})

    def test_without_a_booking_system_in_the_configuration_nobody_may_put(self):
        self.start()
        self.refused(404, record())

    def test_a_signed_body_counts_for_its_own_rental_only(self):
        self.start(BOOKING)
        problem = self.refused(422, record(), path="/rentals/R-1001")
        self.assertEqual(problem["errors"][0]["pointer"], "#/rental_id")
        self.refused(422, record(), path="/rentals/%00")
        self.refused(422, record(), path="/rentals/R-1002%")
        self.assertEqual(self.taken(200, record(), path="/rentals/R%2D1002"), {"changed": False})

    def test_it_may_be_put_only(self):
        self.start(BOOKING)
        answer = request("127.0.0.1", self.daemon.port, "GET", "/rentals/R-1002")
        self.assertEqual((answer.status, answer.headers["Allow"]), (405, "PUT"))

    def test_each_fault_is_told_with_its_pointer_and_nothing_is_changed(self):
        self.start(BOOKING)
        problem = self.refused(422, record(
            state="gone", unit="heron", due="2026-02-30 10:00", colour="blue",
            phones=[{"number": "12", "ring": True}], batteries={"serial": "W-1"}, name=None,
            orders={"rest": {"mode": "pulse", "setting": 2.55}, "dancing": {"mode": "pulse"}}))
        pointers = {error["pointer"] for error in problem["errors"]}
        self.assertEqual(pointers, {
            "#/state", "#/unit", "#/due", "#/colour", "#/phones/0/number", "#/phones/0/ring",
            "#/batteries", "#/name", "#/orders/rest/setting", "#/orders/dancing"})
        for error in problem["errors"]:
            self.assertIn("; ", error["detail"], "what was found, and the remedy")

    def test_bodies_of_every_kind_of_badness(self):
        self.start(BOOKING)
        good = json.dumps(record())
        for body in (b"", b"{", b"[]", b"null", b'"x"', b"\xff\xfe{}", good.encode()[:-1],
                     good.replace("Bert", "B\\u0000rt").encode(),
                     good.replace("Bert", "B\xe9rt").encode("latin-1"),
                     good.replace('"state"', '"name": "x", "state"').encode(),
                     b'{"orders": ' + b"[" * 5000 + b"]" * 5000 + b"}",
                     json.dumps(record(name="x" * 201)).encode(),
                     json.dumps(record(name="a\nb")).encode(),
                     json.dumps(record(phones=[{"number": BERT}] * 5)).encode(),
                     json.dumps(record(chargers=1e300)).encode(),
                     json.dumps(record(chargers=10 ** 30)).encode(),
                     json.dumps(record(tube_feet="1e999")).encode(),
                     json.dumps(record(rental_id="R 1002")).encode()):
            answer = self.put(body, path="/rentals/R-1002")
            self.assertIn(answer.status, (400, 422), (body[:80], answer))
            self.assertEqual(answer.headers["Content-Type"], "application/problem+json")
            json.loads(answer.body)
        self.assertEqual(self.put(json.dumps(record()).encode(), path="/rentals/R-1002",
                                  headers={"Content-Type": "text/plain"}).status, 415)
        self.assertEqual(self.put(b" " * 70000, path="/rentals/R-1002").status, 413)
        self.assertEqual(self.count("SELECT count(*) FROM rental_row"), 2)


class Swaps(Rentals):
    def setUp(self):
        super().setUp()
        self.start(BOOKING)
        self.send(BERT, "i have 2 full batteries, how many hours do i have left")
        self.expect(BERT, "plan on")

    def asks_anew(self):
        self.send(BERT, "how long now?")
        self.expect(BERT, "on each battery you have")

    def test_what_was_told_of_batteries_counts_on_if_only_the_day_of_return_changes(self):
        self.load(bert(due="2026-02-19 10:00"))
        self.send(BERT, "how long now?")
        self.expect(BERT, "plan on")

    def test_after_a_swap_it_asks_anew(self):
        said = self.load(bert(serial="WR-0099"))
        self.assertIn("1 with another unit", said)
        self.asks_anew()
        self.assertEqual(self.count("SELECT count(*) FROM alert"), 0)

    def test_after_a_new_order_it_asks_anew(self):
        orders = record()["orders"]
        orders["rest"] = {**orders["rest"], "setting": 2}
        self.taken(200, record(orders=orders))
        self.asks_anew()

    def test_what_is_told_after_the_swap_counts(self):
        self.load(bert(serial="WR-0099"))
        self.send(BERT, "i have 1 full battery, how many hours do i have left")
        self.expect(BERT, "plan on")
        self.send(BERT, "how long now?")
        self.expect(BERT, "plan on")

    def test_another_model_has_staff_confirm_the_pulse_setting(self):
        self.taken(200, record(unit="brook", serial="BR-0300"))
        self.expect(FIRST_ON_CALL, "URGENT", "confirm pulse setting", "Bert", BERT)
        self.asks_anew()

    def test_an_import_beside_the_daemon_has_it_called_too(self):
        said = self.load(bert(unit="brook", serial="BR-0300"))
        self.assertIn("1 with a pulse setting on another model", said)
        self.assertEqual(self.count("SELECT count(*) FROM alert_due WHERE level = 'urgent'"), 1)
        self.send(BERT, "thank you")  # a turn, or a minute later by itself
        self.expect(FIRST_ON_CALL, "confirm pulse setting")

    def test_an_order_confirmed_anew_for_the_other_model_calls_nobody(self):
        self.load(bert(unit="brook", serial="BR-0300", orders_dated="2026-02-13"))
        self.assertEqual(self.count("SELECT count(*) FROM alert"), 0)


class States(Rentals):
    def begin(self, *rows):
        self.start(rentals=False)
        self.import_rentals(rows)

    def test_overdue_is_still_on_oxygen_and_is_served_fully(self):
        self.begin(bert(state="overdue", due="2026-02-13 10:00"))
        self.send(BERT, "i have 2 full batteries, how many hours do i have left")
        self.expect(BERT, "plan on")
        self.send(BERT, "my chest hurts")
        self.expect(BERT, "911")
        self.expect(FIRST_ON_CALL, "Bert", "Aspen House")

    def test_closed_gets_general_answers_and_no_data(self):
        self.begin(bert(state="closed"))
        for words in ("when is my rental due back?", "how do i charge it in the car",
                      "i have 2 full batteries, how many hours do i have left", "is this bert?"):
            self.send(BERT, words)
        self.settled()
        replies = " ".join(self.texts_to(BERT))
        self.assertIn("car", replies)
        for secret in ("Bert", "Alder", "Aspen", "Feb", "WR-0033", "Plan on"):
            self.assertNotIn(secret, replies)

    def test_a_sign_from_a_closed_rental_s_phone_is_heard_all_the_same_without_data(self):
        self.begin(bert(state="closed", emergency_address="9 Aspen Road"))
        self.send(BERT, "he has bad chest pain")
        self.expect(BERT, "911")
        call = self.expect(FIRST_ON_CALL, "chest pain", BERT).words
        self.assertIn("no rental on record", call)
        self.settled()
        for words in self.texts_to(BERT) + self.texts_to(FIRST_ON_CALL):
            self.assertNotIn("Aspen", words)
            self.assertNotIn("Alder", words)

    def test_when_a_rental_closes_the_next_text_gets_no_data(self):
        self.begin(bert())
        self.send(BERT, "when is it due back?")
        self.expect(BERT, "Feb 18")
        self.load(bert(state="closed"))
        self.send(BERT, "and when is it due back again?")
        self.settled()
        self.assertNotIn("Feb", self.texts_to(BERT)[-1])

    def test_two_phones_of_one_rental_make_one_alert(self):
        self.begin(bert(phone_2=STRANGER, phone_2_whose="daughter"))
        self.send(BERT, "i have bad chest pain")
        self.send(STRANGER, "my father has bad chest pain, Bert")
        self.expect(BERT, "911")
        self.expect(STRANGER, "911")
        self.settled()
        self.assertEqual(self.rows("SELECT rental_id FROM alert"), [("R-1002",)])

    def test_two_renters_on_a_phone_each_have_their_own_alert_and_answer(self):
        self.begin(anna(), bert(phone_1=ANNA))
        self.send(ANNA, "when is Bert's due back")
        self.expect(ANNA, "Feb 18")
        self.send(ANNA, "and when is Anna's due back")
        self.expect(ANNA, "Feb 20")


class Links(Rentals):
    def test_an_unknown_number_is_linked_with_one_word_and_answered_from_the_record(self):
        self.start()
        self.send(STRANGER, "when is my rental due back?")
        self.assertNotIn("Feb", self.expect(STRANGER).words)
        self.send(FIRST_ON_CALL, f"LINK {STRANGER} R-1002")
        self.expect(FIRST_ON_CALL, STRANGER, "R-1002", "Bert")
        self.send(STRANGER, "when is my rental due back?")
        self.expect(STRANGER, "Feb 18")
        self.assertIn((FIRST_ON_CALL, "link-phone", "R-1002", STRANGER),
                      self.rows("SELECT who, what, subject, detail FROM audit"))

    def test_an_alert_s_number_names_the_phone_and_the_alert_becomes_the_rental_s(self):
        self.start()
        self.send(STRANGER, "i have bad chest pain")
        self.expect(FIRST_ON_CALL, "no rental on record")
        self.send(FIRST_ON_CALL, "link 1 r-1002")
        self.expect(FIRST_ON_CALL, STRANGER, "R-1002")
        self.send(BERT, "i have bad chest pain")
        self.expect(BERT, "911")
        self.settled()
        self.assertEqual(self.rows("SELECT alert_number, rental_id FROM alert_due"),
                         [(1, "R-1002")])

    def test_a_link_outlives_the_next_import_and_is_dated(self):
        self.start()
        self.send(FIRST_ON_CALL, f"LINK {STRANGER} R-1002")
        self.expect(FIRST_ON_CALL, "R-1002")
        self.load(bert(due="2026-02-19 10:00"))
        self.send(STRANGER, "when is my rental due back?")
        self.expect(STRANGER, "Feb 19")

    def test_unlink_ends_it(self):
        self.start()
        self.send(FIRST_ON_CALL, f"LINK {STRANGER} R-1002")
        self.expect(FIRST_ON_CALL, "R-1002")
        self.send(SECOND_ON_CALL, f"unlink {STRANGER} R-1002")
        self.expect(SECOND_ON_CALL, "R-1002")
        self.send(STRANGER, "when is my rental due back?")
        self.settled()
        self.assertNotIn("Feb", self.texts_to(STRANGER)[-1])
        self.assertEqual(self.rows("SELECT linked, who FROM phone_link ORDER BY id"),
                         [(1, FIRST_ON_CALL), (0, SECOND_ON_CALL)])

    def test_nobody_but_staff_links(self):
        self.start()
        self.send(STRANGER, f"LINK {STRANGER} R-1002")
        self.send(BERT, f"LINK {STRANGER} R-1001")
        self.settled()
        self.assertEqual(self.count("SELECT count(*) FROM phone_link"), 0)

    def test_a_rental_that_is_not_there_or_closed_is_not_linked(self):
        self.start(rentals=False)
        self.import_rentals([anna(), bert(state="closed")])
        for words, answer in ((f"LINK {STRANGER} R-9", "R-9"), (f"LINK {STRANGER} R-1002", "closed"),
                              ("LINK 7 R-1001", "LINK, the phone"), ("LINK R-1001", "LINK, the phone"),
                              ("LINK", "LINK, the phone"), ("LINK 2085550150 R-1001", "with +")):
            self.send(FIRST_ON_CALL, words)
            self.expect(FIRST_ON_CALL, answer)
        self.assertEqual(self.count("SELECT count(*) FROM phone_link"), 0)


class Export(Rentals):
    def setUp(self):
        super().setUp()
        self.gateway = daemon.stand_in_gateway.Gateway()
        self.gateway.port = 9
        self.write_config()
        self.out = self.folder / "out.csv"

    def export(self, *arguments, status=0):
        return self.run_program("export", *arguments, "--config", str(self.config_file),
                                status=status)

    def test_what_goes_out_comes_in_again_and_changes_nothing(self):
        self.import_rentals([anna(name="Ána, the \"mouse\""), bert(name="=1+1")])
        self.assertIn("2 rentals", self.export("rentals", str(self.out)))
        said = self.run_program("import", "rentals", str(self.out), "--config",
                                str(self.config_file))
        self.assertIn("0 new, 0 changed, 2 as they were", said)
        self.assertEqual(stat.S_IMODE(self.out.stat().st_mode), 0o600, "for its owner only")
        self.assertEqual(self.out.read_bytes()[:3], b"\xef\xbb\xbf")
        self.assertEqual(list(self.folder.glob("*.part")), [])

    def test_standard_output_holds_the_same(self):
        self.import_rentals()
        self.export("rentals", str(self.out))
        file = self.out.read_text("utf-8-sig").replace("\r\n", "\n")
        self.assertEqual(self.export().replace("\r\n", "\n"), file)

    def test_that_it_was_done_is_in_the_audit_trail(self):
        self.import_rentals()
        self.export("rentals", str(self.out))
        with contextlib.closing(sqlite3.connect(self.database)) as store:
            self.assertIn(("hutbell export", "export-rentals", "2 rows"), store.execute(
                "SELECT who, what, detail FROM audit").fetchall())

    def test_what_cannot_be_written_is_told_and_the_older_file_stays(self):
        self.assertIn("no database", self.export("rentals", str(self.out), status=1))
        self.import_rentals()
        self.assertIn("cannot be written",
                      self.export("rentals", str(self.folder / "nowhere" / "x.csv"), status=1))
        self.export("bookings", status=2)


if __name__ == "__main__":
    daemon.main()
