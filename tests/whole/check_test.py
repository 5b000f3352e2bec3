"""`hutbell check`: each kind of fault is found in a broken folder, with its file and line."""
import json
import re
import shutil
import sqlite3

import daemon
from daemon import WholeTest, anna, bert
from stand_in_gateway import Gateway

CHARGE_CAR = "topics/en/charge-car.md"
WATER = "topics/en/water.md"
CHEST_PAIN = "signs/en/chest-pain.md"
TROUBLE_BREATHING = "signs/en/trouble-breathing.md"
WREN = "equipment/wren.json"
FEW_TOPICS = ("charge-car", "filter-care", "swap-battery", "water")
FEW_SIGNS = ("chest-pain", "low-reading", "reading", "trouble-breathing")


class Check(WholeTest):
    signs = FEW_SIGNS
    cache = "cache"  # which is not there

    def setUp(self):
        super().setUp()
        self.gateway = Gateway()
        self.gateway.port = 9
        self.kb = self.folder / "kb"
        self.lay_content()
        self.write_config({"kb_folder": "kb"})

    def lay_content(self):
        daemon.few_of_the_content(self.kb, FEW_TOPICS, self.signs)

    def configuration(self, changes=None):
        """With a cache of its own: what is made of changed content is nothing to other tests."""
        return super().configuration({"cache_folder": str(self.cache)} | (changes or {}))

    # ---- breaking things

    def change(self, name, old, new):
        file = self.kb / name
        text = file.read_text()
        self.assertIn(old, text)
        file.write_text(text.replace(old, new, 1))

    def line_of(self, name, words):
        """The number of the first line that holds these words."""
        lines = (self.kb / name).read_text().splitlines()
        return next(i for i, line in enumerate(lines, 1) if words in line)

    def answer(self, name, words):
        """Puts other words in the place of a topic's answer or a sign's reply; returns its line."""
        file = self.kb / name
        head, rest = file.read_text().split("\n## ", 1)
        blocks = head.strip().split("\n\n")
        blocks = blocks[:2 if blocks[1].startswith("Level:") else 1] + [words]
        file.write_text("\n\n".join(blocks) + "\n\n## " + rest)
        return self.line_of(name, words.split("\n")[0])

    def unit(self, change):
        file = self.kb / WREN
        unit = json.loads(file.read_text())
        change(unit)
        file.write_text(json.dumps(unit))

    # ---- looking

    def program(self, *arguments, status=0):
        return self.run_program("check", "--config", str(self.config_file), *arguments,
                                status=status)

    def check(self, status=0):
        return json.loads(self.program("--json", status=status))

    def remarks(self, kind, file=None, status=0, of=None):
        """Of what was checked before, or else is now."""
        return [r for r in (of or self.check(status))["remarks"]
                if r["kind"] == kind and file in (None, r["file"])]

    def one(self, kind, file, line, *pieces, status=1, of=None):
        """Exactly one remark of this kind on this file: on this line, with these words."""
        found = self.remarks(kind, file, status, of)
        self.assertEqual(len(found), 1, found)
        self.assertEqual(found[0]["line"], line)
        for piece in pieces:
            self.assertIn(piece, found[0]["what"])
        self.assertTrue(found[0]["remedy"])


class Made(Check):
    """With a learnt opinion on the signs. What is made of this content is kept: it stays so."""
    content, cache = daemon.KB, daemon.CACHE

    def lay_content(self):
        self.kb.symlink_to(self.content)

    def why(self, words):
        return json.loads(self.program("--why", words, "--json"))


class Shipped(Made):
    content, cache = daemon.TOP / "kb", daemon.SHIPPED_CACHE

    def test_our_own_content_has_no_error_and_a_sign_that_takes_a_line_fires_on_it(self):
        checked = self.check()
        self.assertEqual(checked["errors"], 0)
        self.assertEqual([r for r in checked["remarks"] if r["level"] == "error"], [])
        taken = next(r["what"] for r in checked["remarks"] if r["kind"] == "sign-first")
        words, sign = re.match(r'"(.*)" fires (\S+) on ', taken).groups()
        self.assertIn((sign, "fires"), [(s["sign"], s["held"]) for s in self.why(words)["signs"]])


class Content(Check):
    def test_every_fault_of_loading_is_told_at_once(self):
        self.change(CHARGE_CAR, "{phone}", "{fone}")
        self.change(CHEST_PAIN, "Level: emergency", "Level: bad")
        self.change(WREN, '"name": "Wren"', '"name": 5')
        found = self.remarks("fault", status=1)
        where = [(r["file"], r["line"]) for r in found]
        self.assertIn((CHARGE_CAR, self.line_of(CHARGE_CAR, "{fone}")), where)
        self.assertIn((CHEST_PAIN, self.line_of(CHEST_PAIN, "Level:")), where)
        self.assertIn(WREN, [file for file, _ in where])

    def test_a_fault_of_the_configuration_is_told_with_its_pointer(self):
        self.write_config({"kb_folder": "kb", "zone": "Valley/Nowhere"})
        found = self.remarks("fault", status=1)
        self.assertEqual(len(found), 1)
        self.assertIn("/zone", found[0]["what"])
        self.assertTrue(found[0]["file"].endswith("hutbell.json"))

    def test_an_answer_of_three_parts(self):
        # 3GPP TS 23.040: two joined parts hold 2 x 153 characters; 307 take a third.
        self.answer(WATER, "a" * 306)
        line = self.answer(CHARGE_CAR, "a" * 307)
        checked = self.check(status=1)
        self.one("too-long", CHARGE_CAR, line, "307", "3 parts", of=checked)
        self.assertEqual(len(self.remarks("too-long", of=checked)), 1)

    def test_an_answer_that_is_too_long_only_when_it_is_filled_in_for_one_unit(self):
        line = self.answer(CHARGE_CAR, "{no-breath|no}" + "a" * 200)
        self.one("too-long", CHARGE_CAR, line, "Brook")

    def test_a_character_that_costs_double(self):
        # 3GPP TS 23.038 has no acute i in its default alphabet.
        line = self.answer(CHARGE_CAR, "Use the cord, as\u00ed.")
        self.one("double-cost", CHARGE_CAR, line, "\u00ed", status=0)

    def test_an_answer_that_is_hard_to_read(self):
        line = self.answer(CHARGE_CAR, "Automotive electrical installations occasionally "
                                       "necessitate professional investigation.")
        self.one("grade", CHARGE_CAR, line, "grade", "wanted 6", status=0)

    def test_an_emergency_has_to_be_easier_than_an_answer(self):
        words = "Call {emergency}. A person on oxygen who has pain in the chest is in danger of " \
                "dying."
        self.answer(CHARGE_CAR, words)
        line = self.answer(CHEST_PAIN, words)
        checked = self.check()
        self.one("grade", CHEST_PAIN, line, "wanted 4", of=checked)
        self.assertEqual(self.remarks("grade", CHARGE_CAR, of=checked), [])

    def test_an_emergency_first_part_stands_alone_in_160_characters(self):
        self.answer(TROUBLE_BREATHING, "Call {emergency} now. " + "a" * 146)  # 911: 160
        line = self.answer(CHEST_PAIN, "Call {emergency} now. " + "a" * 147)
        checked = self.check(status=1)
        self.one("emergency-text", CHEST_PAIN, line, "161", of=checked)
        self.assertEqual(len(self.remarks("emergency-text", of=checked)), 1)

    def test_an_emergency_outside_the_plain_alphabet(self):
        line = self.answer(CHEST_PAIN, "Llame al {emergency} ah\u00ed.")
        self.one("emergency-text", CHEST_PAIN, line, "\u00ed")

    def test_what_nobody_approved(self):
        self.change(CHARGE_CAR, "- not yet", "- Ida Rowan, clinician, 2026-11-30")
        files = [r["file"] for r in self.remarks("unapproved")]
        self.assertNotIn(CHARGE_CAR, files)
        self.assertIn(CHEST_PAIN, files)


class Kept(Check):
    def setUp(self):
        super().setUp()
        self.kept = self.folder / "cache" / "kb-checked"

    def kept_as(self):
        return self.kept.stat().st_ino

    def test_what_was_made_of_changed_content_is_kept_for_the_next_check(self):
        self.kept.parent.mkdir()
        checked, first = self.check(), self.kept_as()
        self.assertEqual((self.check(), self.kept_as()), (checked, first))
        self.change(CHARGE_CAR, "- not yet", "- Ida Rowan, clinician, 2026-11-30")
        self.program("--why", "my chest hurts")
        self.assertNotEqual(self.kept_as(), first)
        self.assertNotIn(CHARGE_CAR, [r["file"] for r in self.remarks("unapproved")])

    def test_what_the_daemon_keeps_stays_as_it_is(self):
        self.kept.parent.mkdir()
        live = self.kept.parent / "kb"
        live.write_text("what renters are answered from")
        self.check()
        self.assertEqual(live.read_text(), "what renters are answered from")
        self.assertEqual(sorted(file.name for file in self.kept.parent.iterdir()),
                         ["kb", "kb-checked"])

    def test_in_a_folder_that_others_may_write_nothing_is_kept(self):
        self.kept.parent.mkdir()
        self.kept.parent.chmod(0o777)
        self.check()
        self.assertFalse(self.kept.exists())

    def test_no_folder_is_made_to_keep_it_in(self):
        self.check()
        self.assertFalse(self.kept.parent.exists())

    def test_content_with_a_fault_is_not_kept(self):
        self.kept.parent.mkdir()
        self.change(CHARGE_CAR, "{phone}", "{fone}")
        self.check(status=1)
        self.assertFalse(self.kept.exists())


class House(Check):
    spanish = {"hours_es": "8 am a 6 pm, todos los dias",
               "return_how_es": "Llevelo al mostrador."}

    def house(self, changes):
        self.write_config({"kb_folder": "kb", "house": changes})
        return self.remarks("untranslated")

    def test_what_spanish_replies_would_say_in_english_is_a_warning(self):
        found = self.house({})
        self.assertEqual([r["file"] for r in found], [str(self.config_file)] * 2)
        self.assertIn("/house/hours_es", found[0]["what"])
        self.assertIn("/house/return_how_es", found[1]["what"])
        found = self.house({"hours_es": self.spanish["hours_es"]})
        self.assertEqual(len(found), 1)
        self.assertIn("/house/return_how_es", found[0]["what"])

    def test_an_office_with_both_in_spanish_gets_no_warning(self):
        self.assertEqual(self.house(self.spanish), [])

    def test_an_office_without_spanish_content_gets_no_warning(self):
        for kind in ("topics", "signs"):
            shutil.rmtree(self.kb / kind / "es")
        self.assertEqual(self.house({}), [])


class Asked(Check):
    def add_line(self, words, name=CHARGE_CAR):
        self.change(name, "## Asked as\n\n", f"## Asked as\n\n- {words}\n")
        return self.line_of(name, words)


class Asking(Asked):
    def test_a_line_in_the_wrong_topic(self):
        words = "how do i clean the air filter and how often does it need cleaning"
        line = self.add_line(words)
        lost = [r for r in self.remarks("lost-line", CHARGE_CAR) if words in r["what"]]
        self.assertEqual([r["line"] for r in lost], [line])
        self.assertIn("filter-care", lost[0]["what"])

    def test_a_line_that_no_other_is_like(self):
        line = self.add_line("marmalade zeppelins")
        lonely = self.remarks("lonely-lines", CHARGE_CAR)
        self.assertEqual(len(lonely), 1)
        self.assertRegex(lonely[0]["what"], rf"^\d+ of \d+; .*lines (.*, )?{line}\b")

    def test_two_topics_that_are_taken_for_each_other(self):
        for name in (CHARGE_CAR, WATER):  # each has lines of the other's kind
            head, rest = (self.kb / name).read_text().split("## Asked as", 1)
            _, tail = rest.split("\n## ", 1)
            lines = [f"- tell me about the {x} {y} please" for x in ("blue", "grey", "green")
                     for y in ("door", "roof", "wall", "floor", "stair", "bench", "lamp", "desk",
                               "shelf")]
            mine = lines[0::2] if name == CHARGE_CAR else lines[1::2]
            (self.kb / name).write_text(head + "## Asked as\n\n" + "\n".join(mine) + "\n\n## " +
                                        tail)
        pairs = [r for r in self.remarks("confused")
                 if "charge-car and water" in r["what"] and r["file"].startswith("topics/en")]
        self.assertEqual(len(pairs), 1)
        self.assertRegex(pairs[0]["what"], r'\d+ lines \(\d+ and \d+\), such as "tell me about')
        self.assertIn(pairs[0]["file"], (CHARGE_CAR, WATER))

    def test_a_topic_with_too_few_ways_of_asking(self):
        file = self.kb / CHARGE_CAR
        head, rest = file.read_text().split("## Asked as", 1)
        asked, tail = rest.split("\n## ", 1)
        lines = asked.strip().splitlines()[:25]
        file.write_text(head + "## Asked as\n\n" + "\n".join(lines) + "\n\n## " + tail)
        self.assertEqual(self.remarks("few-lines"), [])
        file.write_text(head + "## Asked as\n\n" + "\n".join(lines[:24]) + "\n\n## " + tail)
        self.one("few-lines", CHARGE_CAR, self.line_of(CHARGE_CAR, lines[0]), "24", status=0)


class Taken(Asked):
    signs = daemon.ALL_SIGNS

    def test_a_line_that_a_sign_takes(self):
        line = self.add_line("i have chest pain")
        found = [r for r in self.remarks("sign-first", CHARGE_CAR) if r["line"] == line]
        self.assertEqual(len(found), 1)
        self.assertIn("chest-pain", found[0]["what"])


class Equipment(Check):
    def test_tables_with_holes_and_contradictions(self):
        def change(unit):
            unit["run_times"] = [row for row in unit["run_times"] if row["setting"] != 3]
            unit["gauge"]["steps"][2]["percent"] = [25, 40]
            del unit["charging"]
            unit["cold"] = [{"celsius": 20, "percent": 100}]

        self.unit(change)
        checked = self.check(status=1)
        holes = " ".join(r["what"] for r in self.remarks("equipment-hole", WREN, of=checked))
        for place in ("/run_times: pulse has 2 and 4 but not 3", "/charging", "/cold"):
            self.assertIn(place, holes)
        wrong = self.remarks("equipment", WREN, of=checked)
        self.assertEqual(len(wrong), 1)
        self.assertIn("/gauge/steps/2", wrong[0]["what"])


class Rentals(Check):
    def test_without_a_database_it_says_so_and_makes_none(self):
        checked = self.check()
        self.assertIn("no database", " ".join(checked["notes"]))
        self.assertFalse(self.database.exists())

    def test_rentals_in_order_have_no_remark(self):
        self.import_rentals()
        checked = self.check()
        self.assertEqual(checked["notes"], [])
        for kind in ("order", "unit-unknown", "record"):
            self.assertEqual(self.remarks(kind, of=checked), [])

    def test_an_order_that_the_unit_cannot_do(self):
        self.import_rentals([anna(rest_setting="5"), bert(walking_mode="continuous",
                                                          walking_setting="2")])
        found = [r["what"] for r in self.remarks("order", str(self.database), status=1)]
        self.assertEqual(len(found), 2)
        self.assertIn("R-1001: continuous 5 is ordered for rest, but Brook has continuous 0.5 to 2",
                      found[0])
        self.assertIn("R-1002: continuous 2 is ordered for walking, but Wren has no continuous",
                      found[1])

    def test_what_only_the_wall_feeds_may_be_ordered_for_rest_but_not_for_walking(self):
        self.import_rentals([anna(rest_setting="3", walking_mode="continuous",
                                  walking_setting="3")])
        found = self.remarks("order", status=1)
        self.assertEqual(len(found), 1)
        self.assertIn("walking", found[0]["what"])
        self.assertIn("wall", found[0]["what"])

    def test_a_rental_whose_unit_is_gone(self):
        self.import_rentals()
        (self.kb / WREN).unlink()
        found = self.remarks("unit-unknown", status=1)
        self.assertEqual(len(found), 1)
        self.assertIn("R-1002", found[0]["what"])
        self.assertIn("wren", found[0]["what"])

    def test_batteries_that_were_never_measured_or_long_ago(self):
        self.import_rentals([anna(battery_2_health="", battery_2_measured="",
                                  battery_3_measured="2024-01-10")])
        found = [r["what"] for r in self.remarks("record")]
        self.assertEqual(len(found), 2)
        self.assertIn("never measured (B-2)", found[0])
        self.assertIn("last year (B-3)", found[1])

    def test_a_returned_rental_is_passed_over(self):
        self.import_rentals([anna(state="returned", rest_setting="5")])
        self.assertEqual(self.remarks("order"), [])

    def test_a_database_that_is_none_is_an_error(self):
        self.database.write_text("not a database, only words " * 200)
        found = self.remarks("fault", str(self.database), status=1)
        self.assertEqual(len(found), 1)

    def test_it_changes_nothing_in_the_database(self):
        self.import_rentals()
        with sqlite3.connect(self.database) as store:
            before = list(store.iterdump())
        self.check()
        with sqlite3.connect(self.database) as store:
            self.assertEqual(list(store.iterdump()), before)


class Printed(Check):
    def test_it_is_grouped_with_counts_and_fits_80_columns(self):
        self.answer(CHARGE_CAR, "a " * 200)
        self.import_rentals([anna(rest_setting="5")])
        said = self.program("--all", status=1)
        said = said[:said.rindex("the content") + 11]
        self.assertLess(said.index("Orders that the unit cannot do (1 error)"),
                        said.index("Texts of more than 2 parts (1 error)"))
        self.assertRegex(said, r"\n2 errors, \d+ warnings for the office, \d+ for the content$")
        self.assertIn(f"{CHARGE_CAR}:3: ", said)
        for line in said.splitlines():
            self.assertTrue(len(line) <= 80 or " " not in line.strip(), line)


class Worst(Check):
    signs = daemon.ALL_SIGNS

    def test_of_errors_in_the_content_the_worst_are_shown(self):
        for file in (self.kb / "signs" / "en").iterdir():
            self.answer(f"signs/en/{file.name}", "a " * 200)
        short, whole = self.program(status=1), self.program("--all", status=1)
        self.assertRegex(short, r"and \d+ more; --all shows them")
        self.assertNotIn("--all shows them", whole)


class Many(Made):
    def test_what_the_office_can_act_on_is_whole_and_the_content_s_warnings_are_counted(self):
        self.import_rentals([anna(battery_1_health="")])
        short, whole = self.program(), self.program("--all")
        record = short.index("Records that lack what an answer needs (1 warning)")
        approvals = short.index("Not approved yet")
        self.assertLess(record, approvals)
        self.assertIn("was never measured", " ".join(short[record:approvals].split()))
        self.assertLess(approvals, short.index("For who writes the content (--all lists them)"))
        self.assertRegex(short, r"\n +\d+  lost-line: Lines that would go to another topic")
        self.assertNotIn("would be answered with", short)
        for sign in (self.kb / "signs" / "en").iterdir():
            self.assertIn(sign.stem, short[approvals:])
        self.assertIn("would be answered with", " ".join(whole.split()))
        self.assertNotIn("--all", whole)
        self.assertGreater(len(whole), len(short))
        self.assertLess(len(short.splitlines()), 60)
        for line in short.splitlines():
            self.assertLessEqual(len(line), 80)

    def test_the_content_s_warnings_are_counted_by_topic_the_most_first(self):
        said = self.program()
        topics = said[said.index("By topic, the most first"):].split("\n\n")[0].splitlines()[1:]
        lines = [re.fullmatch(r"  ([a-z-]+) (\d+): (.*)", line) for line in topics]
        counts = {line[1]: (int(line[2]), line[3]) for line in lines if line}
        sums = [number for number, _ in counts.values()]
        self.assertEqual(sums, sorted(sums, reverse=True))
        for number, kinds in counts.values():
            self.assertEqual(number, sum(int(n) for n in re.findall(r"\d+", kinds)))
        remarks = [r for r in self.check()["remarks"] if r["for"] == "content"]
        for topic, (number, _) in counts.items():
            self.assertEqual(number, len([r for r in remarks if r["topic"] == topic]))

    def test_of_one_topic_all_is_shown_and_nothing_else(self):
        whole = self.check()["remarks"]
        of_one = json.loads(self.program("--topic", "charge-car", "--json"))["remarks"]
        own = [r for r in whole if r["topic"] == "charge-car"]
        self.assertTrue(own)
        self.assertEqual([r for r in of_one if r["topic"] == "charge-car"], own)
        for taken in (r for r in of_one if r["topic"] != "charge-car"):
            self.assertEqual(taken["kind"], "confused")
            self.assertIn("charge-car", taken["what"])
        said = self.program("--topic", "charge-car")
        self.assertIn("topics/en/charge-car.md:", said)
        self.assertNotIn("--all", said)

    def test_a_topic_that_is_not_there_is_named(self):
        self.assertIn('there is no topic or sign "charge-cat"',
                      self.program("--topic", "charge-cat", status=1))
        self.program("--topic", "charge-car", "--why", "hello", status=2)

    def test_warnings_alone_are_no_failure_and_a_wrong_option_is_usage(self):
        self.program(status=0)
        self.program("--nonsense", status=2)


class Why(Made):
    def test_which_sign_fires_on_which_words_by_which_line(self):
        sign = self.why("well hello, my chest hurts today")["signs"]
        self.assertEqual([s["sign"] for s in sign], ["chest-pain"])
        self.assertEqual(sign[0]["held"], "fires")
        self.assertEqual(sign[0]["words"], "chest hurts")
        self.assertEqual(sign[0]["file"], CHEST_PAIN)
        self.assertEqual(sign[0]["line"], self.line_of(CHEST_PAIN, sign[0]["phrase"]))

    def test_a_negation_that_holds_a_sign_back(self):
        sign = self.why("i have no chest pain")["signs"]
        self.assertEqual([(s["sign"], s["held"]) for s in sign], [("chest-pain", "taken back")])

    def test_a_figure_of_speech_that_holds_a_sign_back(self):
        sign = self.why("that bill gave me a heart attack")["signs"]
        self.assertEqual([(s["sign"], s["held"]) for s in sign], [("chest-pain", "explained")])
        self.assertEqual(sign[0]["explained_by_line"],
                         self.line_of(CHEST_PAIN, sign[0]["explained_by"]))

    def test_which_topics_come_first_by_which_line(self):
        asked = self.why("can i charge it in the car?")["questions"]
        self.assertEqual(len(asked), 1)
        self.assertEqual(asked[0]["band"], "sure")
        first = asked[0]["topics"][0]
        self.assertEqual((first["topic"], first["file"]), ("charge-car", CHARGE_CAR))
        self.assertEqual(first["line"], self.line_of(CHARGE_CAR, first["nearest"]))
        self.assertIn("car", first["words"])
        scores = [t["score"] for t in asked[0]["topics"]]
        self.assertEqual(scores, sorted(scores, reverse=True))

    def test_for_people_it_names_file_and_line_too(self):
        said = self.program("--why", "my chest hurts. can i charge it in the car?")
        self.assertIn(f"{CHEST_PAIN}:{self.line_of(CHEST_PAIN, 'chest / ')}: Said as", said)
        self.assertIn("charge-car, score", said)


if __name__ == "__main__":
    daemon.main()
