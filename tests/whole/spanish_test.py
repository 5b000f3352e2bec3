"""Texts in Spanish, and in a language that we do not speak, from the webhook to what goes out."""
import daemon
from daemon import ANNA, BERT, FIRST_ON_CALL, WholeTest

ENGLISH = (" the ", " now ", " you ", " your ", " and ", " to ", " will ")


class Spanish(WholeTest):
    def test_an_emergency_is_answered_wholly_in_spanish_and_staff_read_it_in_english(self):
        self.start()
        self.send(ANNA, "mi esposo no puede respirar ayuda")
        self.expect(ANNA, "Llame al 911 ya")
        self.expect(ANNA, "no una persona", "El personal ya lo sabe")
        for text in self.texts_to(ANNA):
            for word in ENGLISH:
                self.assertNotIn(word, text)
        self.expect(FIRST_ON_CALL, "trouble breathing")
        self.assertEqual(self.rows("SELECT route FROM verdict"), [("emergency",)])

    def test_an_ordinary_question_goes_to_a_person_and_says_so_in_spanish(self):
        self.start()
        self.send(BERT, "donde compro boletos para el telesilla?")
        self.expect(BERT, "Una persona le va a contestar", "Le cuesta respirar? Llame al 911")

    def test_a_language_that_we_do_not_speak_gets_the_number_in_both_and_calls_a_person(self):
        self.start()
        self.send(BERT, "Ich bekomme keine Luft")
        self.expect(BERT, "Emergency? Call 911", "Llame al 911")
        self.expect(FIRST_ON_CALL, "language")

    def test_after_a_death_nobody_is_told_to_go_on_with_the_oxygen(self):
        self.start()
        self.send(ANNA, "mi mama ya murio")
        self.expect(ANNA, "Lo sentimos mucho")
        self.send(ANNA, "no necesitamos el aparato")
        self.settled()
        self.assertEqual(len(self.texts_to(ANNA)), 1)
        self.assertEqual(self.rows("SELECT route FROM verdict"), [("staff",), ("staff",)])

    def test_one_word_that_only_spanish_has_is_answered_in_spanish(self):
        self.start()
        self.send(BERT, "convulsiona")
        self.expect(BERT, "Llame al 911 ya")


if __name__ == "__main__":
    daemon.main()
