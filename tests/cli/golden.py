#!/usr/bin/env python3
"""Whether the program, which FINGERTURN names, prints the golden reports of the demo passages.

    golden.py [--rewrite] tests/golden

They are compared byte for byte. With --rewrite they are written anew first, and so are the words
that they share (golden_words.py).
"""

import argparse
import difflib
import itertools
import os
import pathlib
import re
import subprocess
import sys

from golden_words import (
    NAME, Markdown, Markup, Picture, Plain, Score, Text, with_names, with_words, words_in)

ROOT = pathlib.Path(__file__).resolve().parents[2]
SHARED = ("caution.txt", "legend.txt")

# What is printed of each passage: how its golden report ends, the command, the form. Those that
# break no lines are first: in them it is certain where changed words end.
OF_PASSAGES = (
    ("json", "annotate --format json", Plain()),
    ("jsonl", "annotate --format jsonl", Plain()),
    ("passage", "annotate --format passage", Plain()),
    ("bar-2.passage", "excerpt --bars 2", Plain()),
    ("compared.json", "compare --suggest --format json", Plain()),
    ("musicxml", "annotate --format musicxml", Score()),
    ("md", "annotate --format markdown", Markdown()),
    ("html", "annotate --format html", Markup()),
    ("svg", "annotate --format svg", Picture()),
    ("txt", "annotate", Text(80)),
    ("narrow.txt", "annotate --columns 48", Text(48)),
    ("ascii-detail.txt", "annotate --ascii --detail", Text(80)),
    ("trace.txt", "annotate --trace", Text(80)),
    ("compared.md", "compare --suggest --format markdown", Markdown()),
    ("compared.txt", "compare --suggest", Text(80)),
    ("compared.narrow.txt", "compare --suggest --columns 40", Text(40)),
)
OF_SCORES = (
    ("plan.txt", "practice --minutes 30", Text(80)),
    ("words.musicxml", "annotate --format musicxml --words", Score()),
    ("compared.html", "compare --suggest --format html", Markup()),
)
# Of the piece that is there to be practised.
OF_THE_FERRY = (
    ("plan.txt", "practice --minutes 30", Text(80)),
    ("plan.narrow.txt", "practice --columns 40 --detail", Text(40)),
    ("plan.md", "practice --minutes 30 --format markdown", Markdown()),
    ("plan.html", "practice --minutes 30 --format html", Markup()),
    ("plan.json", "practice --minutes 30 --format json", Plain()),
    ("plan.passage", "practice --format passage", Plain()),
    ("plan.musicxml", "practice --format musicxml", Score()),
)
OF_ALL_TOGETHER = (
    ("txt", "check", Text(80)),
    ("jsonl", "check --format jsonl", Plain()),
)


def printed(command, source):
    done = subprocess.run([os.environ["FINGERTURN"], *command.split(), source], cwd=ROOT,
                          capture_output=True, check=False)
    if done.returncode != 0 or done.stderr:
        sys.exit(f"{command} {source}: status {done.returncode}: {done.stderr.decode()}")
    return done.stdout.decode()


def printed_reports():
    """Each golden report's name, its form, and what the program prints."""
    passages = sorted(ROOT.glob("demo/*.passage"))
    scores = sorted(ROOT.glob("demo/*.musicxml"))
    assert passages and scores
    kinds = [*itertools.product(OF_PASSAGES, passages + scores),
             *itertools.product(OF_SCORES, scores),
             *((kind, ROOT / "demo/ferry.passage") for kind in OF_THE_FERRY)]
    for (ending, command, form), passage in kinds:
        yield f"{passage.stem}.{ending}", form, printed(command, f"demo/{passage.name}")
    for ending, command, form in OF_ALL_TOGETHER:
        yield f"check.{ending}", form, printed(command, "demo")


class Folder:
    """The golden reports, each as it stands in its file, and the words that they share."""

    def __init__(self, path):
        self.path = path

    def read(self, name):
        path = self.path / name
        return path.read_bytes().decode() if path.exists() else ""

    def write(self, name, text):
        (self.path / name).write_bytes(text.encode())

    def shared(self, name):
        return dict(line.split(": ", 1) for line in self.read(name).splitlines())

    def words(self):
        return {name: text for file in SHARED for name, text in self.shared(file).items()}

    def said_now(self, reports):
        """The shared words, or what a report says in their place where nothing else has changed."""
        words = self.words()
        for name, form, text in reports:
            golden = self.read(name)
            if with_words(golden, form, words) != text:
                words |= words_in(text, golden, form, words)
        return words

    def rewrite(self, reports):
        words = self.said_now(reports)
        for file in SHARED:
            self.write(file, "".join(f"{name}: {words[name]}\n" for name in self.shared(file)))
        for name, form, text in reports:
            self.write(name, with_names(text, form, words))

    def faults(self, reports):
        words = self.words()
        used = set()
        for name, form, text in reports:
            golden = self.read(name)
            used.update(NAME.findall(golden))
            yield from faults_of(name, golden, form, text, words)
        known = {*SHARED, *(name for name, _, _ in reports)}
        for name in sorted({path.name for path in self.path.iterdir()} - known):
            yield f"{name} is of no demo passage"
        for name in sorted(words.keys() - used):
            yield f"no report says what is called \"{name}\": {words[name]}"


def faults_of(name, golden, form, text, words):
    """What is wrong with a golden report where this text is printed."""
    expected = with_words(golden, form, words)
    if text != expected:
        lines = difflib.unified_diff(
            expected.splitlines(), text.splitlines(), "golden", "printed", lineterm="", n=0)
        yield "\n".join([f"{name} is not what is printed", *itertools.islice(lines, 10)])
    elif golden != with_names(text, form, words):
        yield f"{name} is not as it is written anew"
    if name.endswith(".md"):
        for row in re.findall("^- .*", golden.partition("## Legend")[2], re.MULTILINE):
            if not re.fullmatch("- [^:⟦]+: ⟦[^⟧]*⟧(; ⟦[^⟧]*⟧)*", row):
                yield f"{name} has words in its legend that need a name in legend.txt: {row}"


def main():
    arguments = argparse.ArgumentParser(description=__doc__)
    arguments.add_argument("--rewrite", action="store_true")
    arguments.add_argument("folder", type=pathlib.Path)
    given = arguments.parse_args()
    folder = Folder(given.folder)
    reports = list(printed_reports())
    if given.rewrite:
        folder.rewrite(reports)
    faults = list(folder.faults(reports))
    print("\n".join([*faults, f"{len(reports)} golden reports, {len(faults)} faults"]))
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
