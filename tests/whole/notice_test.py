"""One text to many: looked at first, sent within quiet hours and consent, answers tracked, whom a
text does not reach is listed with the number to ring."""
import daemon
from daemon import ANNA, BERT, FIRST_ON_CALL, STRANGER, WholeTest, anna, bert

WORDS = "Battery B-2 may stop. We bring you another today."
DORA, EMIL, FAYE = "+12085550113", "+12085550114", "+12085550115"
DAY_UTC_S = daemon.EVENING_UTC_S - 9 * 3600  # 10 am in the valley


class Notice(WholeTest):
    rentals = [
        anna(), bert(),
        bert(rental_id="R-1003", name="Dora Elm", phone_1=DORA, phone_1_reach="landline",
             desk_phone="+12085550160"),
        bert(rental_id="R-1004", name="Emil Reed", phone_1=EMIL, phone_1_reach="never-ring",
             place="Upper Lodge, Room 2"),
        bert(rental_id="R-1005", name="Faye Ash", phone_1=FAYE, state="closed")]

    def import_rentals(self, rows=None):
        super().import_rentals(rows or self.rentals)

    def notice(self, *arguments, status=0):
        return self.run_program("notice", *arguments, "--config", str(self.config_file),
                                status=status)

    def send_notice(self, *arguments, status=0):
        return self.notice(*arguments, "--send", "--by", "Robin", status=status)

    def by_day(self, changes=None, speed=1):
        self.clock(speed, DAY_UTC_S)
        self.start(changes)

    def test_a_look_changes_nothing_and_shows_text_phones_and_whom_to_ring(self):
        self.by_day()
        said = self.notice(WORDS, "--everyone")
        for piece in (WORDS, "English, 2 parts, to 3 phones", ANNA, BERT, EMIL, "landline",
                      "+12085550160", "Nothing was sent"):
            self.assertIn(piece, said)
        self.assertIn("Road closed. Reply OK", self.notice("Road closed", "--everyone"))
        self.assertNotIn(FAYE, said, "a closed rental's number is somebody else's by now")
        self.assertEqual(self.count("SELECT count(*) FROM outbox"), 0)
        self.assertEqual(self.count("SELECT count(*) FROM audit WHERE what = 'send-notice'"), 0)

    def test_it_is_sent_by_serial_and_answers_are_tracked(self):
        self.by_day()
        said = self.send_notice(WORDS, "--serial", "b-2")
        self.assertIn("notice 1: 1 text", said)
        text = self.expect(ANNA, "Larkspur Air Rentals, automatic text", WORDS, "208-555-0100",
                           "STOP")
        self.assertEqual(self.texts_to(BERT), [])
        self.settled()
        self.assertIn("0 of 1 answered", self.notice("1"))
        self.send(ANNA, "Automatic reply: I am away")
        self.assertIn("0 of 1 answered", self.notice("1"), text)
        self.send(ANNA, "ok")
        self.assertIn("1 of 1 answered", self.notice("1"))
        self.assertIn(WORDS, self.notice())
        self.assertEqual(
            self.rows("SELECT who, subject FROM audit WHERE what = 'send-notice'"),
            [(FIRST_ON_CALL, "1")])

    def test_rentals_are_picked_by_unit_place_and_state(self):
        self.by_day()
        self.assertIn("to 1 phone:", self.notice(WORDS, "--unit", "brook"))
        self.assertIn("to 2 phones:", self.notice(WORDS, "--place", "upper lodge"))
        self.assertIn("to 1 phone:", self.notice(WORDS, "--place", "upper lodge", "--unit", "wren"))
        self.assertIn("no rental fits", self.notice(WORDS, "--state", "booked", status=1))
        self.assertIn("expected booked", self.notice(WORDS, "--state", "closed", status=2))
        self.assertIn("say which rentals", self.notice(WORDS, status=2))
        self.assertIn("go together", self.notice(WORDS, "--everyone", "--send", status=2))
        self.assertIn("is nobody of /staff", self.notice(WORDS, "--everyone", "--send", "--by",
                                                         "Nobody", status=1))

    def test_phones_that_staff_linked_get_it_and_whose_renter_has_died_do_not(self):
        self.by_day()
        self.send(STRANGER, "i feel dizzy")
        self.expect(FIRST_ON_CALL, STRANGER)
        self.send(FIRST_ON_CALL, f"LINK {STRANGER} R-1001")
        self.expect(FIRST_ON_CALL, "R-1001")
        self.send(FIRST_ON_CALL, "DIED R-1002")
        self.expect(FIRST_ON_CALL, "R-1002")
        said = self.send_notice("The mains are off until 6 am.", "--everyone", "--urgent")
        self.assertIn("the renter has died", said)
        self.expect(STRANGER, "The mains are off")
        self.expect(ANNA, "The mains are off")
        self.settled()
        self.assertFalse([words for words in self.texts_to(BERT) if "mains" in words])

    def test_a_phone_that_somebody_else_may_read_gets_none(self):
        self.by_day()
        self.send(BERT, "my son hits me and he reads my phone, do not reply")
        self.expect(FIRST_ON_CALL, "asked not to be texted")
        said = self.send_notice("The mains are off until 6 am.", "--everyone", "--urgent")
        self.assertIn("somebody else may read the phone", said)
        self.expect(ANNA, "The mains are off")
        self.settled()
        self.assertFalse(self.texts_to(BERT))

    def test_a_blind_renter_gets_it_in_words(self):
        self.rentals = [anna(in_words="yes"), bert(in_words="no")]
        self.by_day()
        self.send_notice("Charge to 80% by 6 am -> mains off", "--everyone", "--urgent")
        self.expect(ANNA, "Charge to 80 percent by 6 am to mains off")
        self.expect(BERT, "Charge to 80% by 6 am")

    def test_who_wants_no_texts_is_not_texted_but_listed(self):
        self.by_day()
        self.send(BERT, "STOP")
        self.expect(BERT, "no more texts")
        said = self.send_notice(WORDS, "--everyone", "--urgent")
        self.assertIn("wants no texts", said)
        self.expect(ANNA, WORDS)
        self.settled()
        self.assertEqual(len(self.texts_to(BERT)), 1)
        shown = self.notice("1")
        self.assertIn("Not reached by text; ring them", shown)
        self.assertIn(f"ring {BERT}", shown)
        self.assertIn(f"never ring {EMIL}", shown)

    def test_in_quiet_hours_it_waits_for_the_morning(self):
        self.clock(1, daemon.EVENING_UTC_S + 3 * 3600)  # 10 pm
        self.start()
        self.assertIn("8 am", self.send_notice(WORDS, "--everyone"))
        self.send(BERT, "when is it due")
        self.expect(BERT, "Feb 18")
        self.assertEqual(self.texts_to(ANNA), [])
        self.restart(later_s=10 * 3600 + 60)
        self.expect(ANNA, WORDS)

    def test_an_urgent_one_waits_for_nothing(self):
        self.clock(1, daemon.EVENING_UTC_S + 3 * 3600)
        self.start()
        self.send_notice("The mains are off until 6 am.", "--everyone", "--urgent")
        self.expect(ANNA, "The mains are off")
        self.expect(BERT, "The mains are off")

    def test_stop_before_it_is_sent_takes_it_away(self):
        self.clock(1, daemon.EVENING_UTC_S + 3 * 3600)
        self.start()
        self.send_notice(WORDS, "--everyone")
        self.send(ANNA, "STOP")
        self.expect(ANNA, "no more texts")
        self.restart(later_s=10 * 3600 + 60)
        self.expect(BERT, WORDS)
        self.settled()
        self.assertEqual(len(self.texts_to(ANNA)), 1)
        self.assertIn("wants no texts since", self.notice("1"))

    def test_so_many_go_out_in_a_minute(self):
        self.by_day({"notices": {"per_minute": 1}}, speed=20)
        self.send_notice(WORDS, "--everyone")
        self.expect(ANNA, WORDS)
        self.expect(BERT, WORDS)
        self.expect(EMIL, WORDS)
        self.settled()
        times = [at for (at,) in self.rows(
            "SELECT at_utc_s FROM outbox_event WHERE event = 'accepted' ORDER BY id")]
        self.assertGreaterEqual(times[1] - times[0], 30)
        self.assertGreaterEqual(times[2] - times[0], 90)

    def test_past_the_share_of_a_day_only_an_urgent_one_is_sent(self):
        self.by_day({"notices": {"per_day": 1}})
        self.send_notice(WORDS, "--unit", "brook")
        self.assertIn("had enough notices today", self.send_notice(WORDS, "--unit", "brook"))
        self.assertIn("to 1 phone:", self.send_notice(WORDS, "--unit", "brook", "--urgent"))

    def test_who_reads_spanish_gets_it_in_spanish_or_nothing_is_sent(self):
        self.clock(1, DAY_UTC_S)
        self.rentals = [anna(language="es"), bert()]
        self.start()
        self.assertIn("--es", self.send_notice(WORDS, "--everyone", status=1))
        self.assertEqual(self.count("SELECT count(*) FROM notice"), 0)
        self.send_notice(WORDS, "--everyone", "--es", "La bateria B-2 puede fallar.")
        self.expect(ANNA, "La bateria B-2 puede fallar.", "mensaje de un programa")
        self.expect(BERT, WORDS)

    def test_texts_that_do_not_arrive_are_one_alert_for_the_office(self):
        self.by_day()
        self.gateway.accept = lambda attempt: (400, {}) if attempt.to in (ANNA, BERT) else None
        self.send_notice(WORDS, "--everyone")
        self.expect(EMIL, WORDS)
        self.expect(FIRST_ON_CALL, "notice 1 not delivered")
        self.settled()
        self.assertEqual(self.count("SELECT count(*) FROM alert"), 1)
        self.assertIn("refused", self.notice("1"))


if __name__ == "__main__":
    daemon.main()
