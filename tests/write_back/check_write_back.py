#!/usr/bin/env python3
"""Writes the analysis into scores and looks at what came out, apart from the program's own eyes.

    check_write_back.py --program build/fingerturn [--schema musicxml.xsd] SCORE...
    check_write_back.py --program build/fingerturn [--schema musicxml.xsd] --corpus

With a schema a SCORE may be a typed passage: what is made of it must fit.

--corpus takes all *.musicxml of the folder that FINGERTURN_CORPUS names, else of ../shared/corpus
beside the checkout; where there is none the status is 77, for skipped. With --schema it is only
looked whether the scores, which must fit the schema, fit it still.
"""

import argparse
import io
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import zipfile

SKIPPED = 77

# What the program adds: a mark with the blanks before it.
SIGN = re.compile(rb'<text>(.*)</text>')
LYRIC = re.compile(rb'\s*<lyric [^>]*name="fingerturn"[^>]*>.*?</lyric>', re.DOTALL)
LEGEND = re.compile(
    rb'\s*<credit page="1"><credit-words xml:lang="en-x-forearm".*?</credit>',
    re.DOTALL)
SUGGESTION = re.compile(
    rb"\s*<notations><level>suggested by fingerturn[^<]*</level>.*?</notations>", re.DOTALL)
CAUTION = b"no medical advice"


class Fault(Exception):
    """What is wrong with a score that was written back."""


def expect(holds, what):
    if not holds:
        raise Fault(what)


def without_marks(musicxml):
    return LEGEND.sub(b"", LYRIC.sub(b"", musicxml))


class Writer:
    """Runs the program on a score in a folder of its own, always under the same name."""

    def __init__(self, program, folder):
        self.program = os.path.abspath(program)
        self.folder = folder

    def run(self, content, *options, name="score.musicxml"):
        path = os.path.join(self.folder, name)
        pathlib.Path(path).write_bytes(content)
        done = subprocess.run([self.program, "annotate", *options, name], cwd=self.folder,
                              capture_output=True, check=False)
        expect(done.returncode == 0, f"status {done.returncode}: {done.stderr.decode()}")
        return done.stdout

    def mark(self, content, *options, **names):
        return self.run(content, "--format", "musicxml", *options, **names)

    def analysis(self, content):
        return self.run(content, "--format", "json")


def count_events(analysis):
    return sum(len(hand["events"]) for passage in json.loads(analysis)["passages"]
               for hand in passage["hands"])


def count_signs(text):
    """Those of a rolled chord are one lyric, with strokes between them."""
    return sum(SIGN.search(lyric).group(1).count(b"/") + 1 for lyric in LYRIC.findall(text))


def check_score(writer, original):
    """All that holds of a marked score; gives the score back, marked in arrows and in words."""
    marked = writer.mark(original)
    words = writer.mark(original, "--words")
    analysis = writer.analysis(original)
    events = count_events(analysis)
    expect(events > 0, "no event was found")
    for what, text in (("arrows", marked), ("words", words)):
        expect(without_marks(text) == original, f"{what}: more than the marks was changed")
        expect(count_signs(text) == events, f"{what}: not one sign for each event")
        expect(len(LEGEND.findall(text)) == 1, f"{what}: not one legend")
        expect(text.count(CAUTION) == 1, f"{what}: no caution")
        expect(writer.analysis(text) == analysis, f"{what}: the analysis is another one")
        expect(writer.mark(text) == marked, f"{what}: marked again, it is not the same")
    return marked, words


def count_suggested(analysis):
    return sum(note["suggested"] for passage in json.loads(analysis)["passages"]
               for hand in passage["hands"] for event in hand["events"] for note in event["notes"])


def check_suggestions(writer, original):
    """Suggested fingers are in the score, are read as such, and are gone with the other marks."""
    marked = writer.mark(original, "--suggest")
    suggested = count_suggested(writer.run(original, "--format", "json", "--suggest"))
    expect(len(SUGGESTION.findall(marked)) == suggested, "suggestions: not one for each finger")
    expect(SUGGESTION.sub(b"", without_marks(marked)) == original,
           "suggestions: more than the marks was changed")
    expect(count_suggested(writer.analysis(marked)) == suggested,
           "suggestions: not all are read as such")
    expect(writer.mark(marked, "--suggest") == marked,
           "suggestions: marked again, it is not the same")


def packed(musicxml):
    container = (b'<?xml version="1.0"?><container><rootfiles><rootfile full-path="a.xml"/>'
                 b"</rootfiles></container>")
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("META-INF/container.xml", container)
        archive.writestr("a.xml", musicxml)
    return stream.getvalue()


def check_forms(writer, original, marked):
    """The same score packed, and in other encodings and line endings."""
    expect(writer.mark(packed(original), name="score.mxl") == marked, "packed: not the same")
    wide = original.replace(b'"UTF-8"', b'"UTF-16"', 1).decode("utf-8-sig").encode("utf-16")
    from_wide = writer.mark(wide).decode("utf-8-sig")
    expect(from_wide == marked.decode("utf-8-sig"), "UTF-16: not the same")
    check_score(writer, original.replace(b"\n", b"\r\n"))
    check_score(writer, re.sub(rb"\n\s*", b"", original))


def fits(schema, texts, folder):
    """Which of the texts fit the schema."""
    paths = []
    for number, text in enumerate(texts):
        paths.append(os.path.join(folder, f"fits-{number}.musicxml"))
        pathlib.Path(paths[-1]).write_bytes(text)
    done = subprocess.run(["xmllint", "--nonet", "--noout", "--schema", schema, *paths],
                          capture_output=True, text=True, check=False)
    valid = [f"{path} validates" in done.stderr for path in paths]
    return valid, done.stderr


def check_new_schema(schema, written, folder):
    fit, message = fits(schema, written, folder)
    expect(all(fit), f"the new score does not fit the schema: {message}")


def check_schema(schema, original, marked, folder):
    (fit_before, *fit_after), message = fits(schema, [original, *marked], folder)
    expect(fit_before, f"the score itself does not fit the schema: {message}")
    expect(all(fit_after), f"the marked score does not fit the schema: {message}")


def check_file(path, arguments):
    original = path.read_bytes()
    with tempfile.TemporaryDirectory() as folder:
        writer = Writer(arguments.program, folder)
        if arguments.schema:
            marked = [writer.mark(original, *options, name=f"score{path.suffix}")
                      for options in ((), ("--words",), ("--suggest",))]
            if path.suffix == ".passage":
                check_new_schema(arguments.schema, marked, folder)
            else:
                check_schema(arguments.schema, original, marked, folder)
            return
        arrows, _ = check_score(writer, original)
        check_suggestions(writer, original)
        if not arguments.corpus:
            check_forms(writer, original, arrows)


def corpus_files():
    beside = pathlib.Path(__file__).resolve().parents[3] / "shared" / "corpus"
    folder = pathlib.Path(os.environ.get("FINGERTURN_CORPUS") or beside)
    return sorted(folder.glob("*.musicxml"))


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--program", required=True)
    parser.add_argument("--schema")
    parser.add_argument("--corpus", action="store_true")
    parser.add_argument("scores", nargs="*")
    arguments = parser.parse_args()
    scores = corpus_files() if arguments.corpus else arguments.scores
    if arguments.corpus and not scores:
        print("SKIPPED: there are no real scores; FINGERTURN_CORPUS names their folder")
        return SKIPPED
    faults = 0
    for score in map(pathlib.Path, scores):
        try:
            check_file(score, arguments)
        except Fault as fault:
            faults += 1
            print(f"{score}: {fault}")
    print(f"{len(scores)} scores, {faults} with faults")
    return 0 if scores and not faults else 1


if __name__ == "__main__":
    sys.exit(main())
