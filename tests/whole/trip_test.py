"""hutbell trip: a trip drawn from a rental or from options, in characters and as SVG."""
import shutil
import xml.etree.ElementTree

import daemon
from daemon import KB, WholeTest


class Trip(WholeTest):
    def trip(self, *arguments, status=0):
        return self.run_program("trip", *arguments, status=status)

    def by_unit(self, *arguments, status=0):
        return self.trip("--kb", str(KB), "--unit", "wren", "--order", "pulse 2", *arguments,
                         status=status)

    def test_the_strip_fits_a_terminal_and_tells_where_it_ends(self):
        drawn = self.by_unit("--charge", "100", "--leg", "drive 1:00", "--leg", "walk 600")
        self.assertLessEqual(max(map(len, drawn.splitlines())), 80)
        self.assertTrue(drawn.isascii())
        self.assertIn("(walk)", drawn)
        self.assertIn("would mend it:", drawn)

    def test_a_text_is_read_as_a_renters(self):
        drawn = self.by_unit("bus 30 min, walk 20 min, bus 30 min, no outlets. 2 full")
        self.assertIn("read: 100%, 100%, drive 30 min, walk 20 min, drive 30 min", drawn)
        self.assertIn("lasts 1 h 20 min", drawn)

    def test_one_flight_alone_is_a_trip(self):
        drawn = self.by_unit("flight 2 h 15, 3 full")
        self.assertIn("read: 100%, 100%, 100%, flight 2 h 15 min\n", drawn)

    def test_a_rental_brings_unit_orders_and_batteries(self):
        self.gateway = daemon.stand_in_gateway.Gateway().up()
        self.addCleanup(self.gateway.down)
        self.write_config()
        self.import_rentals()
        drawn = self.trip("--config", str(self.config_file), "--rental", "R-1002",
                          "--leg", "drive 60")
        self.assertTrue(drawn.startswith("Wren, read: drive 1 h\n"), drawn)
        self.assertIn("lasts 1 h", drawn)
        told = self.trip("--config", str(self.config_file), "--rental", "R-9", "--leg", "drive 60",
                         status=1)
        self.assertIn("there is no rental R-9", told)

    def test_the_picture_is_an_svg_document(self):
        file = self.folder / "trip.svg"
        self.by_unit("--charge", "60", "--leg", "drive 60", "--leg", "stay 60 wall",
                     "--svg", str(file))
        root = xml.etree.ElementTree.parse(file).getroot()
        self.assertEqual(root.tag, "{http://www.w3.org/2000/svg}svg")
        self.assertIn("stay, wall", "".join(root.itertext()))
        told = self.by_unit("--charge", "60", "--leg", "drive 60",
                            "--svg", str(self.folder / "no" / "x.svg"), status=1)
        self.assertIn("cannot be written", told)

    def test_nothing_is_read_but_equipment_so_a_broken_topic_is_no_hindrance(self):
        content = self.folder / "content"
        shutil.copytree(KB / "equipment", content / "equipment")
        (content / "topics" / "en").mkdir(parents=True)
        (content / "topics" / "en" / "broken.md").write_text("no title")
        drawn = self.trip("--kb", str(content), "--unit", "wren", "--order", "pulse 2",
                          "--charge", "100", "--leg", "drive 30")
        self.assertIn("Wren, read: 100%, drive 30 min", drawn)

    def test_what_is_missing_is_told_with_a_remedy(self):
        self.assertIn("--leg", self.by_unit("--charge", "50", status=1))
        self.assertIn("--charge", self.by_unit("--leg", "drive 60", status=1))
        self.assertIn("is no leg", self.by_unit("--leg", "drive far", status=2))
        self.assertIn("usage: hutbell trip", self.trip(status=2))
        self.assertIn("Example:", self.trip("--help"))


if __name__ == "__main__":
    daemon.main()
