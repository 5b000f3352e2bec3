"""Whose turn it is, and what waits until the office is open."""
import daemon
from daemon import ANNA, BERT, FIRST_ON_CALL, SECOND_ON_CALL, THIRD_ON_CALL, WholeTest

# It is Friday, 13 February 2026, 7 pm in the valley.
ROTA = {"weeks": 1, "turns": [{"day": "monday", "at": "09:00", "line": ["Robin", "Kim"]},
                              {"day": "friday", "at": "18:00", "line": ["Kim"]}],
        "swaps": [{"from": "2026-02-14 20:00", "until": "2026-02-15 08:00", "line": ["Sam"]}]}
EVERY_DAY = {day: "08:00-18:00" for day in ("sunday", "monday", "tuesday", "wednesday", "thursday",
                                            "friday", "saturday")}
OPENING_UTC_S = 1771081200  # Saturday, 14 February, 8 am


class Duty(WholeTest):
    def test_whoever_has_the_turn_is_called_first(self):
        self.start({"rota": ROTA})
        self.send(BERT, "i have chest pain")
        self.expect(SECOND_ON_CALL, "chest pain")
        self.settled()
        self.assertEqual(self.texts_to(FIRST_ON_CALL) + self.texts_to(THIRD_ON_CALL), [])

    def test_who_is_not_on_the_turn_is_called_when_nobody_of_it_answers(self):
        self.clock(60)
        self.start({"rota": ROTA})
        self.send(BERT, "i have chest pain")
        self.expect(FIRST_ON_CALL, "chest pain")
        self.expect(THIRD_ON_CALL, "chest pain")

    def test_the_shell_shows_it(self):
        self.start({"rota": ROTA, "office_hours": EVERY_DAY})
        config = ["--config", str(self.config_file)]
        now = self.run_program("duty", *config)
        self.assertIn("Fri 13 Feb 19:00, America/Denver", now)
        self.assertIn("from Fri 13 Feb 18:00 until Sat 14 Feb 20:00", now)
        self.assertIn(f"1  {SECOND_ON_CALL}   Kim", now)
        self.assertIn("The office is closed until Sat 14 Feb 08:00.", now)
        self.assertIn(f"1  {THIRD_ON_CALL}   Sam",
                      self.run_program("duty", "--at", "2026-02-14 21:00", *config))
        self.assertIn("is no time", self.run_program("duty", "--at", "soon", *config, status=2))
        for line in now.splitlines():
            self.assertLessEqual(len(line), 80)


class Confirming(WholeTest):
    def begin(self, speed=60, minutes=0):
        """So long after Kim's turn began, at 6 pm."""
        self.clock(speed, daemon.EVENING_UTC_S - 3600 + minutes * 60)
        self.start({"rota": ROTA})

    def events(self):
        return self.rows("SELECT event, who FROM turn_event ORDER BY id")

    def test_whose_turn_begins_is_asked_when_it_does(self):
        self.begin(speed=60, minutes=-1)
        asked = self.expect(SECOND_ON_CALL, "You are on call until Saturday, Feb 14, 8 pm",
                            "Text HERE within 10 min")
        self.assertNotIn("did not confirm", asked.words)

    def test_confirmed_nobody_else_is_asked_and_a_restart_asks_no_more(self):
        self.begin(speed=1)
        self.expect(SECOND_ON_CALL, "Text HERE")
        self.send(SECOND_ON_CALL, "Here.")
        self.expect(SECOND_ON_CALL, "The turn is yours.")
        self.restart(later_s=1200)
        self.send(SECOND_ON_CALL, "here")
        self.expect(SECOND_ON_CALL, "The turn is yours.")
        self.settled()
        self.assertEqual(self.events(), [("asked", SECOND_ON_CALL), ("confirmed", SECOND_ON_CALL)])
        self.assertIn("Kim has confirmed it.", self.run_program(
            "duty", "--config", str(self.config_file)))
        self.send(FIRST_ON_CALL, "here")
        self.expect(FIRST_ON_CALL, "Kim has the turn.")

    def test_no_answer_even_over_a_restart_and_the_next_takes_it_and_the_office_hears(self):
        self.begin(speed=1)
        self.expect(SECOND_ON_CALL, "Text HERE")
        self.restart(later_s=605)
        self.expect(FIRST_ON_CALL, "Kim did not confirm the turn. You are on call")
        self.expect(FIRST_ON_CALL, "OFFICE", "Kim did not confirm the turn, now Robin")
        self.send(FIRST_ON_CALL, "HERE")
        self.expect(FIRST_ON_CALL, "The turn is yours.")
        self.send(BERT, "i have chest pain")
        self.expect(FIRST_ON_CALL, "chest pain", "Bert")
        self.assertIn("Robin has confirmed it.", self.run_program(
            "duty", "--config", str(self.config_file)))

    def test_if_nobody_confirms_everyone_is_called(self):
        self.begin(speed=240)
        for phone in (SECOND_ON_CALL, FIRST_ON_CALL, THIRD_ON_CALL):
            self.expect(phone, "Text HERE")
        for phone in (SECOND_ON_CALL, FIRST_ON_CALL, THIRD_ON_CALL):
            self.expect(phone, "URGENT", "nobody has confirmed the turn on call")

    def test_without_a_time_to_confirm_nobody_is_asked(self):
        self.clock(1, daemon.EVENING_UTC_S - 3600)
        self.start({"rota": {**ROTA, "confirm_s": 0}})
        self.send(SECOND_ON_CALL, "here")
        self.expect(SECOND_ON_CALL, "Nobody waits for you")
        self.assertEqual(self.events(), [])


class OfficeHours(WholeTest):
    def test_the_office_is_called_when_it_opens_even_after_a_restart(self):
        self.start({"office_hours": EVERY_DAY})
        self.send(ANNA, "i want to talk to a person")
        self.expect(ANNA, "The office is closed now. A person will answer when it is open.")
        self.settled()
        self.assertEqual(self.texts_to(FIRST_ON_CALL), [])
        self.assertEqual(self.rows("SELECT next_utc_s FROM alert_due"), [(OPENING_UTC_S,)])
        self.restart(later_s=OPENING_UTC_S - daemon.EVENING_UTC_S - 600)
        self.settled()
        self.assertEqual(self.texts_to(FIRST_ON_CALL), [])
        self.restart(later_s=600)
        self.expect(FIRST_ON_CALL, "wants a person", "Anna")

    def test_who_needs_it_before_is_not_kept_waiting(self):
        self.start({"office_hours": EVERY_DAY})
        self.send(ANNA, "i want to talk to a person, our flight is tomorrow")
        self.expect(FIRST_ON_CALL, "wants a person")

    def test_something_graver_calls_at_once_and_takes_what_waits_along(self):
        self.start({"office_hours": EVERY_DAY})
        self.send(ANNA, "i want to talk to a person")
        self.expect(ANNA, "when it is open")
        self.send(ANNA, "i have chest pain")
        self.expect(FIRST_ON_CALL, "chest pain", "wants a person")

    def test_without_office_hours_nothing_waits(self):
        self.start()
        self.send(ANNA, "i want to talk to a person")
        self.expect(FIRST_ON_CALL, "wants a person")


if __name__ == "__main__":
    daemon.main()
