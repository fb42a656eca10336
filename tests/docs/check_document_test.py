#!/usr/bin/env python3
"""check_document.py must be able to fail: small documents with what it has to find."""

import pathlib
import subprocess
import sys
import tempfile
import unittest

CHECK = pathlib.Path(__file__).with_name("check_document.py")


class CheckDocument(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.root = pathlib.Path(folder.name)
        (self.root / "demo").mkdir()
        (self.root / "demo" / "a.txt").write_text("one\ntwo\nthree\n", encoding="utf-8")
        (self.root / "docs").mkdir()
        self.document = self.root / "README.md"

    def check(self, text, *options):
        """Status and output of the check of a document with this text."""
        self.document.write_text(text, encoding="utf-8")
        command = [sys.executable, CHECK, "--program", "/bin/echo", "--root", self.root]
        result = subprocess.run(
            [*command, *options, self.document], capture_output=True, text=True, check=False
        )
        return result.returncode, result.stdout

    def expect_refusal(self, text, message):
        status, output = self.check(text)
        self.assertEqual(status, 1, output)
        self.assertIn(message, output)

    def test_right_output_passes(self):
        text = "```console\n$ cat demo/a.txt\none\ntwo\nthree\n$ fingerturn x\nx\n```\n"
        status, output = self.check(text)
        self.assertEqual(status, 0, output)
        self.assertIn("2 commands run, 0 differ", output)

    def test_wrong_output_is_shown_as_a_difference(self):
        self.expect_refusal(
            "```console\n$ cat demo/a.txt\none\nthree\n```\n", "README.md:2: $ cat demo/a.txt"
        )
        self.expect_refusal("```console\n$ cat demo/a.txt\none\nthree\n```\n", "+two")
        self.expect_refusal("```console\n$ cat demo/a.txt\n```\n", "+one")
        self.expect_refusal("```console\n$ true\nmore\n```\n", "-more")

    def test_dots_stand_for_any_number_of_lines(self):
        for shown in ("...", "one\n...", "...\nthree", "one\n...\nthree", "one\n...\ntwo\nthree"):
            status, output = self.check(f"```console\n$ cat demo/a.txt\n{shown}\n```\n")
            self.assertEqual(status, 0, output)
        self.expect_refusal("```console\n$ cat demo/a.txt\n...\nfour\n```\n", "-four")
        self.expect_refusal("```console\n$ cat demo/a.txt\n...\nree\n```\n", "-ree")

    def test_a_command_can_have_more_lines(self):
        text = "```console\n$ cat > b.txt <<'END'\n> $ four\n> END\n$ cat b.txt demo/a.txt\n"
        status, output = self.check(text + "$ four\n...\n```\n")
        self.assertEqual(status, 1, "a line of output that begins with $ is read as a command")
        status, output = self.check(text.replace("$ four", "four") + "four\n...\n```\n")
        self.assertEqual(status, 0, output)

    def test_a_block_that_would_be_passed_over_is_refused(self):
        self.expect_refusal("```console\n```\n", "without a command")
        self.expect_refusal("```console\noutput alone\n```\n", "expected a command")
        self.expect_refusal("- item\n\n  ```console\n  $ true\n  ```\n", "0 would be run")
        self.expect_refusal("``` {.console}\n$ true\n```\n", "0 would be run")
        self.expect_refusal("```console\n$ true\n", "has no end")

    def test_a_crash_is_refused_whatever_is_shown(self):
        self.expect_refusal("```console\n$ kill -SEGV $$\n...\n```\n", "gave -11")
        self.expect_refusal("```console\n$ no-such-command\n...\n```\n", "gave 127")

    def test_other_blocks_are_not_run(self):
        status, output = self.check("```sh\n$ exit 1\n```\n")
        self.assertEqual(status, 0, output)
        self.assertIn("0 commands run", output)

    def test_the_sources_are_not_touched(self):
        status, output = self.check("```console\n$ rm -r demo docs\n$ ls\n```\n")
        self.assertEqual(status, 0, output)
        self.assertTrue((self.root / "demo" / "a.txt").exists())

    def test_rewrite_puts_the_real_output_in_and_keeps_dots(self):
        status, output = self.check(
            "Text\n```console\n$ cat demo/a.txt\none\n...\n$ echo a; echo b\nx\n```\nEnd\n", "--rewrite"
        )
        self.assertEqual(status, 0, output)
        self.assertEqual(
            self.document.read_text(encoding="utf-8"),
            "Text\n```console\n$ cat demo/a.txt\none\n...\n$ echo a; echo b\na\nb\n```\nEnd\n",
        )


if __name__ == "__main__":
    unittest.main()
