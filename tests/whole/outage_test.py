"""The mains fail in the village: one alert to staff, each renter with an answer of their own."""
import daemon
from daemon import ANNA, BERT, FIRST_ON_CALL, SECOND_ON_CALL, WholeTest, anna, bert

ROBIN, KIM = FIRST_ON_CALL, SECOND_ON_CALL
CORA, DORA = "+12085550113", "+12085550114"
VILLAGE = {"emergency_address": "4 Upper Lodge Road, Larkspur"}


class Outage(WholeTest):
    def begin(self):
        self.clock(20)
        self.start(rentals=False)
        self.daemon.stop()
        self.import_rentals([
            anna(**VILLAGE), bert(**VILLAGE),
            bert(rental_id="R-1003", name="Cora Elm", phone_1=CORA, serial="WR-0034",
                 **VILLAGE),
            bert(rental_id="R-1004", name="Dora Fir", phone_1=DORA, serial="WR-0035",
                 emergency_address="1 Mill Lane, Hessick", place="Room 2, Mill Inn")])
        self.serve()

    def test_the_village_is_one_alert_and_another_village_its_own(self):
        self.begin()
        self.send(ANNA, "2 full batteries, how long do i have?")
        self.expect(ANNA, "Plan on")
        self.send(ANNA, "the power is out")
        self.expect(ROBIN, "URGENT 1", "power is out")
        self.send(BERT, "our power went out")
        self.send(CORA, "no electricity here in the cabin")
        self.send(DORA, "the power is out")
        for renter in (ANNA, BERT, CORA, DORA):
            self.expect(renter, "Is oxygen flowing")
        self.expect(ROBIN, "URGENT 4", "Dora")
        grown = self.expect(ROBIN, "URGENT 1", "3 renters, first to run out first: 2 Bert",
                            "3 Cora", "charge not told; 1 Anna", "until")
        self.assertIn("MINE 1 to take all", grown.words)
        for renter in (ANNA, BERT, CORA, DORA):
            self.send(renter, "yes it flows again")
        # one taking for all, by the number of any of them
        self.send(ROBIN, "MINE 2")
        self.expect(ROBIN, "Alert 1 is yours", "first:\n2 Bert", "3 Cora", "\n1 Anna", "until")
        self.send(KIM, "MINE 3")
        self.expect(KIM, "Alert 3 is with Robin")
        self.assertEqual(self.rows("SELECT taken_by FROM alert_due ORDER BY alert_number"),
                         [(ROBIN,), (ROBIN,), (ROBIN,), (None,)])
        # a text of each reaches the alert of each
        self.send(ROBIN, "TALK 3 how full are your batteries?")
        self.expect(CORA, "Robin: how full")
        self.send(CORA, "one has all lights")
        self.expect(ROBIN, "3 Cora: one has all lights")
        # an emergency is called by itself
        self.send(BERT, "i have chest pain now")
        self.expect(ROBIN, "EMERGENCY 2", "chest pain")
        self.assertEqual(self.rows("SELECT alert_number, group_number FROM alert_due"
                                   " ORDER BY alert_number"),
                         [(1, None), (2, None), (3, 1), (4, None)])
        self.restart()
        # one renter is sorted, then all that are left
        self.send(ROBIN, "SORTED 3 brought her a tank")
        self.expect(ROBIN, "Alert 3 is closed")
        self.send(ROBIN, "SORTED 1 power is back")
        self.expect(ROBIN, "Alert 1 is closed")
        self.assertEqual(self.rows("SELECT alert_number FROM alert_due ORDER BY alert_number"),
                         [(2,), (4,)])


if __name__ == "__main__":
    daemon.main()
