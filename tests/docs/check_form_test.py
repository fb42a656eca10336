#!/usr/bin/env python3
"""check_form.py must be able to fail: small documents with what it has to find."""

import pathlib
import subprocess
import sys
import tempfile
import unittest

CHECK = pathlib.Path(__file__).with_name("check_form.py")
WIDE = "x" * 101


class CheckForm(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.root = pathlib.Path(folder.name)
        (self.root / "docs").mkdir()

    def check(self, text, name="README.md"):
        """Status and output of the check of documents of which one has this text."""
        (self.root / "docs" / "more.md").write_text("# More, and `all`\n", encoding="utf-8")
        (self.root / name).write_text(text, encoding="utf-8")
        result = subprocess.run(
            [sys.executable, CHECK, self.root], capture_output=True, text=True, check=False
        )
        return result.returncode, result.stdout

    def expect_good(self, text, name="README.md"):
        status, output = self.check(text, name)
        self.assertEqual(status, 0, output)

    def expect_offence(self, text, message, name="README.md"):
        status, output = self.check(text, name)
        self.assertEqual(status, 1, output)
        self.assertIn(message, output)
        self.assertIn(" 1 offences", output)

    def test_readme_stays_short_and_others_may_be_long(self):
        self.expect_good("line\n" * 219)
        self.expect_offence("line\n" * 220, "README.md:220: README.md has 220 lines")
        self.expect_good("line\n" * 219)
        self.expect_good("line\n" * 500, "docs/long.md")

    def test_lines_stay_within_the_columns(self):
        self.expect_good("→" * 100 + "\n")
        self.expect_offence(f"one\n{WIDE}\n", "README.md:2: 101 columns, more than 100")
        self.expect_good("")
        self.expect_offence(WIDE, "docs/wide.md:1: 101 columns", "docs/wide.md")

    def test_only_what_is_printed_may_be_wide(self):
        self.expect_good(f"```console\n$ true\n{WIDE}\n```\n")
        self.expect_offence(f"```console\n$ {WIDE}\n```\n", "README.md:2: 103 columns")
        self.expect_offence(f"```console\n$ true\n> {WIDE}\nx\n```\n", "README.md:3: 103 columns")
        self.expect_offence(f"```console\n$ true\n```\n{WIDE}\n", "README.md:4: 101 columns")
        self.expect_offence(f"```sh\n{WIDE}\n```\n", "README.md:2: 101 columns")

    def test_links_lead_somewhere(self):
        self.expect_good("[a](docs/more.md) [b](docs/more.md#more-and-all) [c](#d-e)\n# D: e\n")
        self.expect_good("[a](https://example.org/x) `[b](nowhere.md)`\n```sh\n[c](no.md)\n```\n")
        self.expect_offence("\n[a\nb](docs/no.md)\n", "README.md:3: docs/no.md leads nowhere")
        self.expect_offence("[a](docs/more.md#all)\n", "README.md:1: docs/more.md#all leads nowhere")
        self.expect_offence("```sh\n# D\n```\n[a](#d)\n", "README.md:4: #d leads nowhere")
        self.expect_offence("`a\nb` [c](d.md)\n", "README.md:2: d.md leads nowhere")

    def test_no_documents_are_no_success(self):
        result = subprocess.run([sys.executable, CHECK, self.root], check=False)
        self.assertEqual(result.returncode, 1)


if __name__ == "__main__":
    unittest.main()
