#!/usr/bin/env python3
"""check_write_back.py finds what a writer can do wrong."""

import unittest

import check_write_back
from check_write_back import Fault, check_score

SCORE = b"<score>\n  <note>\n    <pitch/>\n  </note>\n</score>\n"
LEGEND = (b'\n  <credit page="1"><credit-words xml:lang="en-x-forearm" '
          b'font-size="7">This is no medical advice.</credit-words></credit>')
LYRIC = b'\n    <lyric number="1" name="fingerturn" placement="below"><text>x</text></lyric>'
MARKED = (SCORE.replace(b"<score>", b"<score>" + LEGEND)
          .replace(b"<pitch/>", b"<pitch/>" + LYRIC))
ANALYSIS = b'{"passages": [{"hands": [{"events": [{}]}]}]}'


class FixedWriter:
    """Gives back what it was told to."""

    def __init__(self, marked=MARKED, analysis=ANALYSIS, analysis_of_marked=None, again=None):
        self.marked = marked
        self.fixed_analysis = analysis
        self.analysis_of_marked = analysis_of_marked or analysis
        self.again = again or marked

    def mark(self, content, *_options):
        return self.marked if content == SCORE else self.again

    def analysis(self, content):
        return self.fixed_analysis if content == SCORE else self.analysis_of_marked


class Faults(unittest.TestCase):
    def check(self, message, **options):
        with self.assertRaisesRegex(Fault, message):
            check_score(FixedWriter(**options), SCORE)

    def test_right_one(self):
        self.assertEqual(check_score(FixedWriter(), SCORE), (MARKED, MARKED))

    def test_changed_bytes(self):
        self.check("more than the marks", marked=MARKED.replace(b"<pitch/>", b"<pitch />"))
        self.check("more than the marks", marked=MARKED + b"\n")

    def test_missing_sign(self):
        self.check("one sign for each", marked=MARKED.replace(LYRIC, b""))

    def test_missing_legend(self):
        self.check("one legend", marked=MARKED.replace(LEGEND, b""))
        self.check("one legend", marked=MARKED.replace(LEGEND, LEGEND + LEGEND))

    def test_missing_caution(self):
        self.check("no caution", marked=MARKED.replace(b"no medical advice", b""))

    def test_other_analysis(self):
        self.check("another one", analysis_of_marked=ANALYSIS + b"\n")

    def test_stacking(self):
        self.check("marked again", again=MARKED.replace(LYRIC, LYRIC + LYRIC))

    def test_nothing(self):
        self.check("no event", analysis=b'{"passages": []}')


class Forms(unittest.TestCase):
    def test_marks_of_others_stay(self):
        text = b'<lyric number="1" name="verse"><text>fingerturn</text></lyric>'
        self.assertEqual(check_write_back.without_marks(text), text)


if __name__ == "__main__":
    unittest.main()
