"""Staff work from their own phones through the line: a night with two of them on call."""
import re

import daemon
from daemon import (ANNA, BERT, FIRST_ON_CALL, OFFICE, SECOND_ON_CALL, STRANGER, THIRD_ON_CALL,
                    WholeTest, anna, bert)

ROBIN, KIM = FIRST_ON_CALL, SECOND_ON_CALL
SPEED = 60  # a played minute is a second
TWO = {"staff": [{"name": "Robin", "phone": ROBIN}, {"name": "Kim", "phone": KIM}]}


class StaffLine(WholeTest):
    def begin(self, speed=SPEED, changes=None):
        self.clock(speed)
        self.start(daemon.merged(TWO, changes or {}))

    def opened(self, sender, words, brief):
        """A renter texts, Robin is called; returns the number of the alert."""
        self.send(sender, words)
        return re.search(r"MINE (\d+)", self.expect(ROBIN, brief).words).group(1)

    def nobody_s_number(self):
        """No renter was ever sent the number of one of staff."""
        for attempt in self.gateway.delivered:
            if attempt.to in (ANNA, BERT, STRANGER):
                for phone in (ROBIN, KIM, THIRD_ON_CALL):
                    self.assertNotIn(phone[-7:], re.sub(r"\D", "", attempt.words))


class Night(StaffLine):
    def test_a_night_with_two_phones(self):
        self.begin(speed=20)
        number = self.opened(BERT, "the unit stopped, no oxygen coming out", "no oxygen")
        self.expect(BERT, "backup")
        # both take it at once: one has it, the other hears who
        self.send(ROBIN, "mine")
        self.send(KIM, f"MINE {number}")
        self.expect(ROBIN, f"Alert {number} is yours")
        self.expect(KIM, f"Alert {number} is with Robin")
        # Robin writes; Bert sees the line's number and Robin's name
        self.send(ROBIN, "TALK is the plug in the wall?")
        asked = self.expect(BERT, "Robin: is the plug in the wall?")
        self.assertEqual(asked.sender, OFFICE)
        self.expect(ROBIN, "Sent to Bert")
        # what Bert answers goes to Robin, and the program says nothing to it
        before = len(self.texts_to(BERT))
        self.send(BERT, "when do i have to return it by the way")
        self.expect(ROBIN, f"{number} Bert: when do i have to return it by the way")
        self.assertEqual(len(self.texts_to(BERT)), before)
        # but a sign is answered at once, and reaches staff as one
        self.send(BERT, "now i have chest pain")
        self.expect(BERT, "Call 911 now")
        self.expect(ROBIN, f"{number} Bert: now i have chest pain")
        self.expect(ROBIN, "EMERGENCY", "chest pain")
        # Robin passes it on; until Kim takes it, it is Robin's
        self.send(ROBIN, f"HAND {number} KIM")
        self.expect(ROBIN, "Kim was asked to take alert")
        self.expect(KIM, "Robin passes this on to you")
        self.assertEqual(self.rows("SELECT taken_by FROM alert_due"), [(ROBIN,)])
        self.send(KIM, "mine")
        self.expect(KIM, "is yours")
        self.expect(ROBIN, f"Alert {number} is with Kim now")
        # and so is the conversation
        self.send(BERT, "the ambulance is here")
        self.expect(KIM, "Bert: the ambulance is here")
        self.send(KIM, f"SORTED {number} ambulance has him")
        self.expect(KIM, f"Alert {number} is closed")
        self.expect(BERT, "this automatic line answers again")
        self.send(BERT, "when is it due")
        self.expect(BERT, "20")
        self.assertEqual(self.count("SELECT count(*) FROM alert_due"), 0)
        self.assertEqual(self.count("SELECT count(*) FROM talk"), 0)
        self.nobody_s_number()


class Silence(StaffLine):
    def test_without_a_word_from_staff_the_program_answers_again(self):
        self.begin(speed=1)  # five minutes may not pass before YES comes, however slow it is
        number = self.opened(BERT, "the unit stopped, no oxygen coming out", "no oxygen")
        self.send(BERT, "yes it flows again")
        self.send(ROBIN, f"TALK {number} I am looking for a spare one")
        self.expect(BERT, "Robin:")
        self.send(BERT, "when is it due")
        self.expect(ROBIN, "Bert: when is it due")
        self.restart(later_s=400)
        self.expect(BERT, "Nobody has answered you yet")
        called = self.expect(ROBIN, "waits for an answer")
        self.assertNotIn("Taken by", called.words)
        self.send(BERT, "when is it due")
        self.expect(BERT, "due")
        self.assertEqual(self.rows("SELECT taken_by FROM alert_due"), [(None,)])

    def test_an_answer_in_time_keeps_it_and_a_restart_forgets_nothing(self):
        self.begin()
        number = self.opened(BERT, "the unit stopped, no oxygen coming out", "no oxygen")
        self.send(ROBIN, f"TALK {number} is it plugged in?")
        self.expect(BERT, "plugged in")
        self.send(BERT, "which plug do you mean")
        self.expect(ROBIN, "which plug")
        self.restart(later_s=60)
        self.send(ROBIN, "TALK the one behind the bed")
        self.expect(BERT, "behind the bed")
        self.assertEqual(self.rows("SELECT who, due_utc_s FROM talk"), [(ROBIN, 2 ** 63 - 1)])
        self.send(BERT, "found it")
        self.expect(ROBIN, "Bert: found it")
        self.restart(later_s=400)
        self.expect(BERT, "Nobody has answered you yet")

    def test_who_is_passed_an_alert_and_sleeps_leaves_it_where_it_was(self):
        self.begin(speed=1)
        number = self.opened(BERT, "the unit stopped, no oxygen coming out", "no oxygen")
        self.send(BERT, "yes it flows again")
        self.send(ROBIN, f"HAND {number} kim")
        self.expect(KIM, "Robin passes this on to you")
        self.restart(later_s=700)
        self.expect(ROBIN, "Kim has not taken it, so it is still yours")
        self.assertEqual(self.rows("SELECT taken_by, offered_to FROM alert_due"), [(ROBIN, None)])


    def test_who_was_told_that_nobody_has_answered_hears_once_who_has(self):
        self.begin(speed=120)
        self.opened(BERT, "i have chest pain", "chest pain")
        self.expect(BERT, "Nobody of our staff has answered yet")
        self.send(ROBIN, "mine")
        self.expect(BERT, "Robin of our staff has your message now.", "911")
        self.send(ROBIN, "HAND 1 KIM")
        self.expect(KIM, "Robin passes this on to you")
        self.send(KIM, "MINE 1")
        self.expect(ROBIN, "Alert 1 is with Kim now")
        number = self.opened(ANNA, "i feel dizzy", "dizzy")
        self.send(ROBIN, f"MINE {number}")  # nobody told her otherwise
        self.expect(ROBIN, f"Alert {number} is yours")
        self.settled()
        told = [words for words in self.texts_to(BERT) if "has your message" in words]
        self.assertEqual(len(told), 1)
        self.assertNotIn("has your message", " ".join(self.texts_to(ANNA)))


class OtherPhones(StaffLine):
    def begin_with(self, *rentals):
        self.clock(20)
        self.start(TWO, rentals=False)
        self.stop()
        self.import_rentals(list(rentals))
        self.serve()

    def test_the_daughter_s_texts_are_answered_and_shown_to_who_talks_with_bert(self):
        daughter = "+12085550116"
        self.begin_with(anna(), bert(phone_2=daughter, phone_2_whose="daughter"))
        number = self.opened(BERT, "the unit stopped, no oxygen coming out", "no oxygen")
        self.send(BERT, "yes it flows again")
        self.send(daughter, "when is it due")
        self.expect(daughter, "Feb 18")
        self.send(ROBIN, f"TALK {number} is the plug in the wall?")
        self.expect(BERT, "Robin:")
        self.send(daughter, "when is it due back?")
        self.expect(daughter, "Feb 18")
        self.expect(ROBIN, f"{number} Bert, {daughter}: when is it due back?")
        self.assertFalse([words for words in self.texts_to(ROBIN) if "due" in words][1:])

    def test_a_landline_is_rung_and_not_texted(self):
        self.begin_with(anna(), bert(phone_1_reach="landline"))
        number = self.opened(BERT, "i feel dizzy", "landline: ring")
        self.send(ROBIN, f"TALK {number} how are you?")
        self.expect(ROBIN, f"Alert {number}", "gets no texts from us. Please ring")
        self.settled()
        self.assertEqual(self.texts_to(BERT), [])

    def test_a_blind_renter_is_told_in_words(self):
        self.begin_with(anna(in_words="yes"), bert())
        self.send(ANNA, "3 batteries at 100%, how long do i have?")
        told = self.expect(ANNA, "Plan on", "100 percent")
        self.assertRegex(told.words, r"Plan on \d hours?")
        self.assertNotIn("%", told.words)


class Words(StaffLine):
    def test_a_wrong_word_gets_the_words_and_with_two_open_none_goes_without_a_number(self):
        self.begin(speed=1)
        first = self.opened(BERT, "i have chest pain", "chest pain")
        second = self.opened(ANNA, "i feel dizzy", "dizzy")
        self.send(ROBIN, "ok thanks")
        self.expect(ROBIN, "MINE 12", "TALK 12", "HAND 12 KIM", "SORTED 12", "OPEN")
        self.send(ROBIN, "TALK hello")
        self.expect(ROBIN, "Which one?", first, second)
        self.send(ROBIN, "OPEN")
        self.expect(ROBIN, f"Open:\n{first} EMERGENCY", second)
        self.assertNotIn("hello", " ".join(self.texts_to(BERT) + self.texts_to(ANNA)))

    def test_what_was_ordered_waits_through_a_restart_for_whom_it_is_meant(self):
        self.begin(speed=1)
        first = self.opened(BERT, "i feel dizzy", "dizzy")
        second = self.opened(ANNA, "i feel dizzy", "dizzy")
        self.send(ROBIN, "TALK are you lying down?")
        self.expect(ROBIN, "Which one?", "Bert", "Anna", "Text only its number or name.")
        self.restart()
        self.send(ROBIN, "bert")
        self.expect(BERT, "Robin: are you lying down?")
        self.expect(ROBIN, "Sent to Bert")
        self.send(ROBIN, "mine anna")
        self.expect(ROBIN, f"Alert {second} is yours: dizzy, Anna")
        self.send(KIM, "is the renter on backup")
        self.expect(KIM, "NOT sent to any renter.", f"\n{first} URGENT", ", with Robin")
        self.assertEqual(self.count("SELECT count(*) FROM alert_due"), 2)
        self.assertNotIn("lying", " ".join(self.texts_to(ANNA)))

    def test_a_sign_in_staff_s_own_text_alerts_a_colleague(self):
        self.begin(speed=1)
        self.send(ROBIN, "i have chest pain")
        self.expect(ROBIN, "Call 911 now")
        self.expect(KIM, "EMERGENCY", "chest pain", ROBIN)
        self.settled()
        self.assertFalse([words for words in self.texts_to(ROBIN) if "MINE" in words])
        self.send(KIM, "TALK are you ok?")
        self.expect(KIM, "Please ring")

    def test_who_cannot_do_their_turn_is_told_to_a_colleague_by_name(self):
        self.begin(speed=1)
        self.send(ROBIN, "Robin here, cant do tonight, sick")
        self.expect(ROBIN, "A colleague is told")
        self.expect(KIM, "OFFICE 1: cannot do their turn. Robin of our staff, " + ROBIN)

    def test_a_renter_who_stopped_texts_is_rung_not_written_to(self):
        self.begin(speed=1)
        self.send(BERT, "STOP")
        number = self.opened(BERT, "i have chest pain", "chest pain")
        self.send(ROBIN, f"TALK {number} are you there?")
        self.expect(ROBIN, BERT, "Please ring")
        self.settled()
        self.assertNotIn("are you there", " ".join(self.texts_to(BERT)))


class Death(StaffLine):
    def test_after_a_death_nothing_is_started_and_a_person_hears_what_is_texted(self):
        self.begin(speed=1)
        self.send(BERT, "the unit stopped, no oxygen coming out")
        self.expect(BERT, "flowing")
        self.send(ROBIN, "DIED r-1002")
        self.expect(ROBIN, "R-1002, Bert", "ALIVE R-1002")
        self.assertEqual(self.count("SELECT count(*) FROM answer_due"), 0)
        self.send(ROBIN, "SORTED 1 with the family")
        self.settled()
        before = len(self.texts_to(BERT))
        self.send(BERT, "when is it due")
        self.expect(ROBIN, "wrote again")
        self.settled()
        self.assertEqual(len(self.texts_to(BERT)), before)
        self.send(BERT, "i have chest pain")
        self.expect(BERT, "Call 911 now")
        self.send(ROBIN, "ALIVE R-1002")
        self.expect(ROBIN, "answered again as before")
        self.send(BERT, "is it due soon? when is it due")
        self.settled()
        self.assertGreater(len(self.texts_to(BERT)), before)


if __name__ == "__main__":
    daemon.main()
