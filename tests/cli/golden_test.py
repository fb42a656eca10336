#!/usr/bin/env python3
"""golden.py must be able to fail: golden reports with a byte that is another, and shared words."""

import pathlib
import shutil
import tempfile
import unittest

import golden

GOLDEN = golden.ROOT / "tests" / "golden"


class GoldenReports(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.reports = list(golden.printed_reports())

    def setUp(self):
        temporary = tempfile.TemporaryDirectory()
        self.addCleanup(temporary.cleanup)
        self.folder = golden.Folder(pathlib.Path(temporary.name))
        shutil.copytree(GOLDEN, self.folder.path, dirs_exist_ok=True)

    def change(self, name, old, new):
        text = self.folder.read(name)
        self.assertIn(old, text)
        self.folder.write(name, text.replace(old, new, 1))

    def expect_fault(self, words):
        self.assertIn(words, "\n".join(self.folder.faults(self.reports)))

    def expect_rewritten(self):
        """Written anew, every file is as it stands in tests/golden."""
        self.folder.rewrite(self.reports)
        for path in GOLDEN.iterdir():
            self.assertEqual(self.folder.read(path.name), path.read_bytes().decode(), path.name)

    def test_no_byte_of_a_report_can_be_another(self):
        for name, old, new in (
                ("scale.json", "60.0", "60.5"), ("check.txt", "266", "149"),
                ("scale.svg", "⟦caution⟧", ""), ("scale.md", "; ⟦single⟧", ";  ⟦single⟧"),
                ("scale.txt", "⟦prep⟧; ⟦single⟧", "⟦single⟧; ⟦prep⟧")):
            self.change(name, old, new)
            self.expect_fault(f"{name} is not what is printed")

    def test_no_byte_of_shared_words_can_be_another(self):
        self.change("caution.txt", ": ", ": x")
        self.expect_fault("scale.narrow.txt is not what is printed")
        self.expect_fault("scale.jsonl is not what is printed")
        self.change("legend.txt", "swing: ", "swing: x")
        self.expect_fault("scale.trace.txt is not what is printed")
        self.expect_rewritten()

    def test_each_report_has_its_file_and_each_file_its_report(self):
        (self.folder.path / "check.txt").unlink()
        self.expect_fault("check.txt is not what is printed")
        self.folder.write("more.txt", "")
        self.expect_fault("more.txt is of no demo passage")

    def test_words_stand_once_and_are_used(self):
        self.change("last-tram.musicxml", "&#10;", " ")
        self.expect_fault("last-tram.musicxml is not as it is written anew")
        self.change("scale.md", "⟦rest⟧", self.folder.words()["rest"])
        self.expect_fault("scale.md is not as it is written anew")
        self.folder.write("caution.txt", self.folder.read("caution.txt") + "gone: nobody says it\n")
        self.expect_fault('no report says what is called "gone": nobody says it')

    def test_a_row_of_a_legend_needs_a_name(self):
        self.change("legend.txt", "carry: ", "elsewhere: x")
        self.folder.rewrite(self.reports)
        self.expect_fault("scale.md has words in its legend that need a name in legend.txt: - carry: ")

    def test_changed_words_are_found_in_the_reports(self):
        for file in golden.SHARED:
            names = self.folder.shared(file)
            self.folder.write(file, "".join(f"{name}: other words\n" for name in names))
        self.expect_rewritten()

    def test_changed_words_are_not_guessed_where_more_has_changed(self):
        words = self.folder.words()
        changed = [(name, form, text.replace(words["caution"], "other words"))
                   for name, form, text in self.reports if name == "scale.md"]
        self.assertEqual(self.folder.said_now(changed), {**words, "caution": "other words"})
        changed = [(name, form, "more\n" + text) for name, form, text in changed]
        self.assertEqual(self.folder.said_now(changed), words)


if __name__ == "__main__":
    unittest.main()
