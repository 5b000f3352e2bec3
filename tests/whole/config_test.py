"""The configuration: every fault at once, each with its JSON Pointer (RFC 6901); nothing starts."""
import shutil

import daemon
from daemon import WholeTest
from stand_in_gateway import Gateway


class Config(WholeTest):
    def setUp(self):
        super().setUp()
        self.gateway = Gateway()
        self.gateway.port = 9

    def refused(self, changes, *pieces):
        self.write_config(changes)
        said = self.run_program("serve", "--config", str(self.config_file), status=1)
        for piece in pieces:
            self.assertIn(piece, said)
        self.assertFalse(self.database.exists(), "nothing starts, not even the store")
        return said

    def test_all_faults_are_told_at_once_with_their_pointers(self):
        self.refused({"nonsense": 1, "listen": {"port": 70000}, "database": 5,
                      "zone": "Valley/Nowhere",
                      "house": {"emergency_reading": "low"},
                      "gateways": {"valley": {"send": {"timeout_ms": -1}}}},
                     "/nonsense", "/listen/port", "/database", "/zone",
                     "/house/emergency_reading", "/gateways/valley/send/timeout_ms")

    def test_a_name_with_a_slash_is_written_as_the_standard_says(self):
        self.refused({"house": {"a/b": 1, "m~n": 1}}, "/house/a~1b", "/house/m~0n")

    def test_a_gateway_without_proof_is_refused_unless_it_listens_on_loopback_and_says_so(self):
        none = {"valley": {"authentication": {"kind": "none", "secrets": None}}}
        self.refused({"listen": {"address": "0.0.0.0"}, "gateways": none},
                     "/gateways/valley/authentication")
        no_word_of_it = self.configuration()
        del no_word_of_it["gateways"]["valley"]["authentication"]
        self.refused({"gateways": {"valley": {"authentication": None}}},
                     "/gateways/valley/authentication")

    def test_nobody_on_call_is_refused(self):
        self.refused({"staff": []}, "/staff")

    def test_a_secret_is_never_repeated_in_a_fault(self):
        said = self.refused({"gateways": {"valley": {"authentication": {
            "secrets": ["whsec_c2VjcmV0!!bm90YmFzZTY0"]}}}}, "/gateways/valley/authentication")
        self.assertNotIn("c2VjcmV0", said)

    def test_a_key_given_twice_is_refused(self):
        self.write_config()
        self.config_file.write_text(self.config_file.read_text().replace(
            '"zone":', '"zone": "America/Boise", "zone":', 1))
        self.assertIn("zone", self.run_program("serve", "--config", str(self.config_file),
                                               status=1))

    def test_a_file_that_is_not_there_is_named(self):
        said = self.run_program("serve", "--config", str(self.folder / "none.json"), status=1)
        self.assertIn("none.json", said)

    def test_the_example_configuration_and_the_demo_s_have_no_fault(self):
        # As they lie, with what the unit tests made of the content for a cache.
        (self.folder / "kb").symlink_to(daemon.TOP / "kb")
        for folder, file in (("config", "hutbell.example.json"), ("demo", "hutbell.json")):
            copy = shutil.copytree(daemon.TOP / folder, self.folder / folder,
                                   ignore=shutil.ignore_patterns("cache"))
            shutil.copytree(daemon.SHIPPED_CACHE, copy / "cache")
            self.run_program("check-config", "--config", str(copy / file))


if __name__ == "__main__":
    daemon.main()
