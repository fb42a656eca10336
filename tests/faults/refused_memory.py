#!/usr/bin/env python3
"""Runs the program again and again, each time without one piece of memory that it asks for, or
without that and all after it: it ends by itself, with status 2 or 3 and one line, and writes nothing
or all.

    refused_memory.py LIBRARY SOURCES

LIBRARY is refusing_memory.cpp made, and SOURCES the project's folder; FINGERTURN names the program.
"""

import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import zipfile

PASSAGE = "passage: A\n1/4 C4:1 D:2 E:3 F:1 G:2 A:3 B:4 C:5\n"
OTHER = "passage: B\n1/4 C4:1 D:3 E F G:1 A:2 B:3 C:4\n"
OLD = b"what was there\n"
COMMANDS = [
    "annotate a.passage -o report",
    "annotate a.passage b.passage --format json -o report",
    "annotate score.mxl --format musicxml -o report",
    "annotate both.passage --format markdown -o pages/",
    "finger b.passage --format musicxml -o report",
    "scale C major -o report",
    "practice a.passage -o report",
    "excerpt score.musicxml --bars 2-3 -o report",
    "compare both.passage --format html -o report",
    "check many --jobs 2 -o report",
    "check --join lines.jsonl -o report",
    "find note many -o report",
    "explain twist",
    "annotate --help",
]
FAULT = re.compile(
    r"fingerturn: (\S+: )?(cannot write: |cannot make this folder: )?"
    r"(there is not enough memory for this|Cannot allocate memory)\n"
)
# RE2 tells of its own what it has no memory for, as far as it comes.
OF_RE2 = re.compile(r"\S*?re2/[^\n]*?(?=fingerturn: |\n|\Z)\n?")
EVER_AFTER = 10**9


def run(words, library, refused=(0, 0)):
    """The status, what was written, and the messages."""
    shutil.rmtree("pages", ignore_errors=True)
    pathlib.Path("report").write_bytes(OLD)
    environment = dict(
        os.environ,
        LD_PRELOAD=library,
        REFUSED_FROM=str(refused[0]),
        REFUSED_TO=str(refused[1]),
        REFUSED_COUNT="count",
    )
    done = subprocess.run(
        [os.environ["FINGERTURN"], *words], env=environment, capture_output=True, timeout=60
    )
    written = {"": done.stdout}
    for path in [pathlib.Path("report"), *pathlib.Path().glob("pages/*")]:
        written[str(path)] = path.read_bytes()
    return done.returncode, written, done.stderr.decode()


def is_whole(path, text, expected):
    """Where one of many files fails, the table of all others is written: it has the last line."""
    if path == "report":
        return text == OLD or text.splitlines()[-1:] == expected[path].splitlines()[-1:]
    return not text or text == expected[path]


def problem(found, expected):
    status, written, messages = found
    if found == expected:
        return ""
    if status not in (2, 3):
        return f"ended with {status}: {messages}"
    if not FAULT.fullmatch(OF_RE2.sub("", messages)):
        return f"says {messages!r}"
    halves = [path for path, text in written.items() if not is_whole(path, text, expected[1])]
    return f"wrote {halves} in part: {messages}" if halves else ""


def places(count):
    """From the last piece to the first, ever further apart: the first thousands are all of the
    words of the options."""
    before = 0
    while before < count:
        yield count - before
        before += 1 + before // 2


def problems_of(command, library):
    words = command.split()
    expected = run(words, library)
    if expected[0] != 0 or expected[2]:
        return [f"{command}: cannot be tried: {expected[2]}"]
    count = int(pathlib.Path("count").read_text())
    found = []
    tried = 0
    for place in places(count):
        for last in (place, EVER_AFTER):
            tried += 1
            words_of = problem(run(words, library, (place, last)), expected)
            if words_of:
                found.append(f"{command}: without piece {place} to {last}: {words_of}")
    print(f"{command}: {tried} runs, {count} pieces of memory")
    return found


def make_inputs(sources):
    inputs = {"a.passage": PASSAGE, "b.passage": OTHER, "both.passage": PASSAGE + "\n" + OTHER}
    inputs |= {"many/a.passage": PASSAGE, "many/b.passage": OTHER}
    os.mkdir("many")
    for name, text in inputs.items():
        pathlib.Path(name).write_text(text)
    shutil.copy(f"{sources}/demo/last-tram.musicxml", "score.musicxml")
    container = '<container><rootfiles><rootfile full-path="score"/></rootfiles></container>'
    with zipfile.ZipFile("score.mxl", "w", zipfile.ZIP_DEFLATED) as packed:
        packed.writestr("META-INF/container.xml", container)
        packed.write("score.musicxml", "score")
    check = [os.environ["FINGERTURN"], "check", "many", "--format", "jsonl", "-o", "lines.jsonl"]
    subprocess.run(check, check=True)


def main():
    library, sources = (os.path.realpath(path) for path in sys.argv[1:])
    os.environ["FINGERTURN"] = os.path.realpath(os.environ["FINGERTURN"])
    with tempfile.TemporaryDirectory() as folder:
        os.chdir(folder)
        make_inputs(sources)
        found = [each for command in COMMANDS for each in problems_of(command, library)]
    print("\n".join(found))
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
