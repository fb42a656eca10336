#!/usr/bin/env python3
"""Makes outlines.hpp and outlines.cpp: the outlines of musical signs, taken from an open font in the standard layout
for music fonts (SMuFL).

usage: make_outlines.py FONT.otf METADATA.json TARGET      writes TARGET.hpp and TARGET.cpp

The table that stands here was made of version 1.0.2 of the npm package @vexflow-fonts/bravura, by
Python with fontTools (in Debian: python3-fonttools). Its licence is in LICENSE-of-outlines.txt.
"""
import json
import sys

from fontTools.misc.transform import Transform
from fontTools.pens.basePen import BasePen
from fontTools.pens.transformPen import TransformPen
from fontTools.ttLib import TTFont

UNITS_IN_SPACE = 250

# Our name, the standard's name, the standard's code.
SIGNS = [
    ("g_clef", "gClef", 0xE050),
    ("f_clef", "fClef", 0xE062),
    ("brace", "brace", 0xE000),
    *[(f"meter_{n}", f"timeSig{n}", 0xE080 + n) for n in range(10)],
    *[(f"tuplet_{n}", f"tuplet{n}", 0xE880 + n) for n in range(10)],
    ("head_double_whole", "noteheadDoubleWhole", 0xE0A0),
    ("head_whole", "noteheadWhole", 0xE0A2),
    ("head_half", "noteheadHalf", 0xE0A3),
    ("head_black", "noteheadBlack", 0xE0A4),
    ("dot", "augmentationDot", 0xE1E7),
    *[(f"flag_{n}_{way}", f"flag{n}{'nd' if n == 32 else 'th'}{way.capitalize()}",
       0xE240 + 2 * place + (way == "down"))
      for place, n in enumerate([8, 16, 32, 64, 128]) for way in ("up", "down")],
    ("flat", "accidentalFlat", 0xE260),
    ("natural", "accidentalNatural", 0xE261),
    ("sharp", "accidentalSharp", 0xE262),
    ("double_sharp", "accidentalDoubleSharp", 0xE263),
    ("double_flat", "accidentalDoubleFlat", 0xE264),
    ("rest_double_whole", "restDoubleWhole", 0xE4E2),
    ("rest_whole", "restWhole", 0xE4E3),
    ("rest_half", "restHalf", 0xE4E4),
    ("rest_quarter", "restQuarter", 0xE4E5),
    *[(f"rest_{n}", f"rest{n}{'nd' if n == 32 else 'th'}", 0xE4E6 + place)
      for place, n in enumerate([8, 16, 32, 64, 128])],
    ("fermata", "fermataAbove", 0xE4C0),
    ("breath", "breathMarkComma", 0xE4CE),
    ("trill", "ornamentTrill", 0xE566),
    ("tremolo", "tremolo3", 0xE222),
    ("arpeggio", "wiggleArpeggiatoUp", 0xEAA9),
    ("dynamic_p", "dynamicPiano", 0xE520),
    ("dynamic_m", "dynamicMezzo", 0xE521),
    ("dynamic_f", "dynamicForte", 0xE522),
    ("dynamic_r", "dynamicRinforzando", 0xE523),
    ("dynamic_s", "dynamicSforzando", 0xE524),
    ("dynamic_z", "dynamicZ", 0xE525),
]

# What stands for nearly every note has a short name in pages.
SHORT = {"head_black": "h", "sharp": "s", "flat": "f", "natural": "q"}


class PathPen(BasePen):
    """Writes a path in whole units, each place counted from the last, y downwards."""

    def __init__(self, glyphs):
        super().__init__(glyphs)
        self.words = []
        self.last = (0, 0)

    def command(self, letter, *points):
        numbers = []
        for x, y in points:
            numbers += [round(x) - self.last[0], round(y) - self.last[1]]
        self.last = (round(points[-1][0]), round(points[-1][1]))
        text = letter
        for number in numbers:
            text += str(number) if text == letter or number < 0 else " " + str(number)
        self.words.append(text)

    def _moveTo(self, point):
        self.begin = (round(point[0]), round(point[1]))
        self.command("m", point)

    def _lineTo(self, point):
        self.command("l", point)

    def _curveToOne(self, one, two, point):
        self.command("c", one, two, point)

    def _closePath(self):
        self.words.append("z")
        self.last = self.begin


def outline_of(font, code):
    glyphs = font.getGlyphSet()
    name = font.getBestCmap()[code]
    pen = PathPen(glyphs)
    scale = 1000 / font["head"].unitsPerEm
    glyphs[name].draw(TransformPen(pen, Transform(scale, 0, 0, -scale, 0, 0)))
    return "".join(pen.words)


def number(value):
    return f"{value:.3f}".rstrip("0").rstrip(".")


def row(font, metadata, sign):
    ours, standard, code = sign
    box = metadata["glyphBBoxes"][standard]
    right, top = box["bBoxNE"]
    left, bottom = box["bBoxSW"]
    path = outline_of(font, code)
    lines = [path[i:i + 85] for i in range(0, len(path), 85)]
    text = "\n     ".join(f'"{line}"' for line in lines)
    edges = ", ".join(number(edge) for edge in (left, -top, right, -bottom))
    return f'    {{"{SHORT.get(ours, ours.replace("_", "-"))}",\n     {{{edges}}},\n     {text}}},\n'


def main():
    font_file, metadata_file, target = sys.argv[1:]
    font = TTFont(font_file)
    with open(metadata_file, encoding="utf-8") as file:
        metadata = json.load(file)
    rows = "".join(row(font, metadata, sign) for sign in SIGNS)
    names = ",\n  ".join(sign[0] for sign in SIGNS)
    with open(target + ".cpp", "w", encoding="utf-8") as file:
        file.write(
            "// Made by make_outlines.py. The outlines are under the SIL Open Font License, see\n"
            "// LICENSE-of-outlines.txt; the table is no font and bears no font's name.\n"
            '#include "write/page/glyphs/outlines.hpp"\n\n#include <array>\n\n'
            "namespace fingerturn {\nnamespace {\n\n// clang-format off\n"
            f"constexpr std::array<Outline, {len(SIGNS)}> kOutlines{{{{\n{rows}}}}};\n"
            "// clang-format on\n\n}  // namespace\n\n"
            "const Outline& outline_of(Glyph glyph) noexcept {\n"
            "  return kOutlines[static_cast<std::size_t>(glyph)];\n}\n\n}  // namespace fingerturn\n")
    with open(target + ".hpp", "w", encoding="utf-8") as file:
        file.write(
            "// Made by make_outlines.py.\n#pragma once\n\n"
            '#include "write/page/ink/outline.hpp"\n\n#include <cstdint>\n\n'
            "namespace fingerturn {\n\n/// The musical signs of which there is an outline.\n"
            f"enum class Glyph : std::uint8_t {{\n  {names}\n}};\n\n"
            f"inline constexpr std::size_t kGlyphs = {len(SIGNS)};\n\n"
            "const Outline& outline_of(Glyph glyph) noexcept;\n\n}  // namespace fingerturn\n")


if __name__ == "__main__":
    main()
