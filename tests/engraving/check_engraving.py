#!/usr/bin/env python3
"""Engraves scores that the program writes, and looks at what came out.

    check_engraving.py --program build/fingerturn MUSIC...

Each passage or MusicXML score is annotated as MusicXML, read by musicxml2ly and engraved by LilyPond,
which must find no fault in it; every finger and sign is then there, and nothing is wider than the
paper. Without LilyPond the status is 77, for skipped.
"""

import argparse
import collections
import html
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

SKIPPED = 77

FINGERING = re.compile(r"<fingering[^>]*>([1-5])</fingering>")
SIGN = re.compile(r'name="fingerturn".*?<text>(.*?)</text>')
# In what musicxml2ly makes of it.
LYRICS = re.compile(r"\\lyricmode \{(.*?)\n    \}", re.DOTALL)
ENGRAVED_FINGER = re.compile(r"(?<=[\s\]>])-([1-5])\b")
# In the picture.
PLACE = re.compile(r'translate\((-?[\d.]+), (-?[\d.]+)\)')
SIZE = re.compile(r'viewBox="0.0000 -0.0000 ([\d.]+) ([\d.]+)"')
TEXT = re.compile(r"<tspan>\s*(.*?)\s*</tspan>", re.DOTALL)


class Fault(Exception):
    """What is wrong with a score that was engraved."""


def expect(holds, what):
    if not holds:
        raise Fault(what)


def done(*command, folder):
    run = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)
    said = run.stdout + run.stderr
    expect(run.returncode == 0 and "error" not in said.lower(), f"{command[0]}: {said}")
    return said


def all_there(what, wanted, found, but=0):
    missing = collections.Counter(wanted) - collections.Counter(found)
    expect(sum(missing.values()) <= but, f"{what} are missing: {dict(missing)}")


def check_read(musicxml, engraving):
    """Every finger and every sign has been taken over."""
    expect(FINGERING.search(musicxml), "the score has no fingers")
    music = LYRICS.sub("", engraving)
    all_there("fingers", FINGERING.findall(musicxml), ENGRAVED_FINGER.findall(music))
    lyrics = re.findall(r'"(.*?)"', " ".join(LYRICS.findall(engraving)))
    all_there("signs", map(html.unescape, SIGN.findall(musicxml)), lyrics)


def check_picture(musicxml, picture):
    width, height = map(float, SIZE.search(picture).groups())
    for x, y in PLACE.findall(picture):
        expect(0 <= float(x) <= width and 0 <= float(y) <= height,
               f"something stands at {x}, {y}, beside the paper of {width} by {height}")
    texts = [html.unescape(text) for text in TEXT.findall(picture)]
    # LilyPond gives grace notes no syllable of a song.
    graces = len(re.findall("<grace", musicxml))
    all_there("engraved signs", map(html.unescape, SIGN.findall(musicxml)), texts, graces)
    expect(any("no medical advice" in text for text in texts), "the caution is not there")


def engrave(program, music, folder):
    name = pathlib.Path(music).stem
    score = folder / f"{name}.musicxml"
    done(program, "annotate", "--format", "musicxml", music, "-o", score, folder=folder)
    done("musicxml2ly", "-o", f"{name}.ly", score, folder=folder)
    check_read(score.read_text(), (folder / f"{name}.ly").read_text())
    done("lilypond", "--svg", f"{name}.ly", folder=folder)
    pictures = sorted(folder.glob(f"{name}*.svg"))
    expect(pictures, "nothing was engraved")
    check_picture(score.read_text(), "".join(picture.read_text() for picture in pictures))


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--program", required=True, type=pathlib.Path)
    parser.add_argument("music", nargs="+", type=pathlib.Path)
    arguments = parser.parse_args()
    if not (shutil.which("musicxml2ly") and shutil.which("lilypond")):
        print("SKIPPED: there is no LilyPond")
        return SKIPPED
    faults = 0
    for music in arguments.music:
        with tempfile.TemporaryDirectory() as folder:
            try:
                engrave(arguments.program.resolve(), music.resolve(), pathlib.Path(folder))
            except Fault as fault:
                faults += 1
                print(f"{music}: {fault}")
    print(f"{len(arguments.music)} scores, {faults} with faults")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
