"""Holds what a shell completes to the program's own help.

    completions_test.py SHELL SCRIPT

SHELL is bash, zsh or fish, SCRIPT what the build has made for it. Where there is no such shell the
status is 77, for skipped; with CI=true it is 1. In the environment: FINGERTURN, the program.
"""

import os
import re
import shutil
import sys
import tempfile

import shells
from program_help import commands, options, skip_without

FILES = ["a.passage", "b.XML", "two words.mxl", "list.txt", "plan.json"]

# What is typed, and all that is offered then.
OFFERED = [
    ("fingerturn sca", {"scale"}),
    ("fingerturn scale --oct", {"--octaves"}),
    ("fingerturn scale --apart ", {"third", "sixth", "tenth"}),
    ("fingerturn scale --hand le", {"left"}),
    ("fingerturn annotate --format=ht", {"--format=html"}),
    ("fingerturn annotate --bars ", set()),
    ("fingerturn annotate --reach ", {"small"}),
    # Rules and messages, several with commas between.
    ("fingerturn explain thumb-u", {"thumb-under"}),
    ("fingerturn explain finger-ra", {"finger-range"}),
    ("fingerturn check --only twist,lea", {"twist,leap"}),
    ("fingerturn check --leave-out=twist,lea", {"--leave-out=twist,leap"}),
    # Names with blanks, in one word or in several.
    ('fingerturn scale "E-flat melo', {"E-flat melodic minor"}),
    ("fingerturn scale 'E-flat m", {"E-flat major", "E-flat major arpeggio", "E-flat melodic minor",
                                    "E-flat minor arpeggio"}),
    ("fingerturn scale E-flat\\ melo", {"E-flat melodic minor"}),
    ("fingerturn scale E-flat melo", {"melodic minor"}),
    ("fingerturn scale --hand left E-flat melodic m", {"minor"}),
    ('fingerturn scale --transpose "to E-', {"to E-flat"}),
    ('fingerturn annotate --transpose "up a major si', {"up a major sixth"}),
    # Files that can be read, and any where one is written or is a list.
    ("fingerturn annotate ", {"a.passage", "b.XML", "two words.mxl", "folder"}),
    ("fingerturn annotate tw", {"two words.mxl"}),
    ('fingerturn annotate "tw', {"two words.mxl"}),
    ("fingerturn annotate fol", {"folder"}),
    ("fingerturn annotate folder/", {"folder/deep.musicxml"}),
    ("fingerturn annotate a.passage --tempo 60 b", {"b.XML"}),
    ("fingerturn check --files-from li", {"list.txt"}),
    ("fingerturn practice -o pl", {"plan.json"}),
    ("fingerturn finger --from pl", set()),
    # A word that is not where the command is.
    ("fingerturn annotate scale E-fl", set()),
]


def cases():
    yield "fingerturn ", set(commands())
    for command in commands():
        yield f"fingerturn {command} --", options(command)
    yield from OFFERED


def without_signs(words):
    """Without a sign that stands ready for what may follow, and short names beside long ones."""
    bare = {word.rstrip("=,/") for word in words}
    return {word for word in bare if not re.fullmatch(r"-[a-z]", word)}


def make_files(folder):
    os.mkdir(os.path.join(folder, "folder"))
    for name in [*FILES, "folder/deep.musicxml"]:
        with open(os.path.join(folder, name), "w", encoding="utf-8"):
            pass


def main():
    shell, script = sys.argv[1:]
    if shutil.which(shell) is None:
        skip_without(shell)
    failures = checks = 0
    with tempfile.TemporaryDirectory() as scratch, tempfile.TemporaryDirectory() as folder:
        make_files(folder)
        asked = shells.open_shell(shell, script, folder, scratch)
        for line, expected in cases():
            found = without_signs(asked.offered(line))
            checks += 1
            if found != expected:
                failures += 1
                print(f"{line!r}: not offered {sorted(expected - found)}, "
                      f"offered as well {sorted(found - expected)}")
        asked.end()
    print(f"{checks} lines, {failures} failed")
    sys.exit(1 if failures or checks < len(OFFERED) else 0)


main()
