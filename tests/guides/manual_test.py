"""Reads the manual pages as a reader would: man warns of nothing, they fit a terminal, and have all
that help has.

    manual_test.py FOLDER

Where there is no man the status is 77, for skipped; with CI=true it is 1. In the environment:
FINGERTURN, the program.
"""

import os
import re
import shutil
import subprocess
import sys

from program_help import commands, entries, help_of, skip_without

COLUMNS = 80
SECTIONS = ["NAME", "SYNOPSIS", "DESCRIPTION", "OPTIONS", "EXIT STATUS", "CAUTION", "SEE ALSO"]
NEEDED = {"fingerturn-scale.1": ["ARGUMENTS", "EXAMPLES"], "fingerturn.1": ["COMMANDS"]}


def shown(page):
    """The page at a terminal, and what is warned of."""
    environment = dict(os.environ, LC_ALL="C.UTF-8", MANWIDTH=str(COLUMNS))
    asked = ["man", "--warnings", "-E", "UTF-8", "-P", "cat", "-l", page]
    answer = subprocess.run(asked, capture_output=True, text=True, check=False, env=environment)
    return answer.stdout, answer.stderr


def one_line(text):
    return re.sub(r"\s+", " ", text)


def footer_of(*command):
    """A paragraph under the options, and examples, each a line; the program's own is set otherwise."""
    last = help_of(*command).rstrip("\n").rsplit("\n\n", 1)[1]
    if not command or re.search("^  -", last, re.M):
        return []
    paragraph, *examples = last.split("\n  ")
    return [paragraph, *examples]


def lacking(text, name, command):
    """What help says and the page does not."""
    for section in SECTIONS + NEEDED.get(name, []):
        if f"\n{section}\n" not in text:
            yield f"the section {section}"
    line = one_line(text)
    for entry, said in entries(*command):
        # What help says of conditions in capitals the page says in words.
        names = re.split(r" REQUIRED| Needs:| Excludes:| \.\.\.(?: |$)", entry)[0].replace(",-", ", -")
        if f" {names} {said}" not in line:
            yield f"{names!r} with {said!r}"
    for said in footer_of(*command):
        if one_line(said).strip() not in line:
            yield f"{said!r}"


def problems(folder):
    pages = {"fingerturn.1": [], **{f"fingerturn-{name}.1": [name] for name in commands()}}
    if set(os.listdir(folder)) != set(pages):
        yield f"expected the pages {sorted(pages)}, found {sorted(os.listdir(folder))}"
        return
    for name, command in pages.items():
        text, warnings = shown(os.path.join(folder, name))
        if warnings:
            yield f"{name}: {warnings}"
        if wide := [row for row in text.split("\n") if len(row) > COLUMNS]:
            yield f"{name}: wider than {COLUMNS} columns: {wide}"
        yield from (f"{name} lacks {what}" for what in lacking(text, name, command))
    print(f"{len(pages)} pages")


def main():
    if shutil.which("man") is None:
        skip_without("man")
    found = list(problems(sys.argv[1]))
    print("\n".join(found))
    sys.exit(1 if found else 0)


main()
