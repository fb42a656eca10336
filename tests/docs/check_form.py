#!/usr/bin/env python3
"""Holds the documents to a form that reads well, as text and as a page.

    check_form.py ROOT

- README.md is shorter than 220 lines, so that it is read to its end; what needs more room has its
  place in docs/.
- No line is longer than 100 columns. What the commands of a `console` block print is left out: how
  wide that is, the program decides.
- A link to another document, or to a heading, leads to one that is there.

Prints each offence as file:line: what is wrong; exit status 1 where there is any.
"""

import pathlib
import re
import sys

from check_document import console_blocks, examples_of

README_LINES = 220
COLUMNS = 100
BLOCK = re.compile(r"^(`{3,}).*?^\1$", re.MULTILINE | re.DOTALL)
CODE = re.compile(r"`[^`]*`")
LINK = re.compile(r"\]\(([^)\s]+)\)")
HEADING = re.compile(r"^#+ (.*)$", re.MULTILINE)
ELSEWHERE = re.compile(r"[a-z]+:")


def blank(match):
    """The line ends of what is passed over, so that those that follow keep their numbers."""
    return "\n" * match[0].count("\n")


def printed_lines(lines):
    """The numbers, from 0, of the lines that show what a command prints."""
    examples = [one for block in console_blocks(lines) for one in examples_of(lines, *block)]
    return {one.first_output + number for one in examples for number in range(len(one.output))}


def wide_lines(lines):
    printed = printed_lines(lines)
    for number, line in enumerate(lines):
        if len(line) > COLUMNS and number not in printed:
            yield number + 1, f"{len(line)} columns, more than {COLUMNS}"


def anchors_of(document):
    """The names by which the headings of a document are linked to."""
    text = BLOCK.sub(blank, document.read_text(encoding="utf-8"))
    kept = (re.sub(r"[^\w\- ]", "", heading.lower()) for heading in HEADING.findall(text))
    return {heading.replace(" ", "-") for heading in kept}


def leads_somewhere(document, target):
    path, _, anchor = target.partition("#")
    goal = document.parent / path if path else document
    return goal.exists() and (not anchor or anchor in anchors_of(goal))


def dead_links(document, text):
    prose = CODE.sub(blank, BLOCK.sub(blank, text))
    for link in LINK.finditer(prose):
        if not ELSEWHERE.match(link[1]) and not leads_somewhere(document, link[1]):
            yield prose.count("\n", 0, link.start()) + 1, f"{link[1]} leads nowhere"


def offences(document):
    text = document.read_text(encoding="utf-8")
    lines = text.splitlines()
    if document.name == "README.md" and len(lines) >= README_LINES:
        yield len(lines), f"README.md has {len(lines)} lines; it stays under {README_LINES}"
    yield from wide_lines(lines)
    yield from dead_links(document, text)


def main():
    root = pathlib.Path(sys.argv[1])
    documents = sorted([*root.glob("*.md"), *root.glob("docs/*.md")])
    found = [(document, *offence) for document in documents for offence in offences(document)]
    for document, line, message in found:
        print(f"{document.relative_to(root)}:{line}: {message}")
    print(f"{len(documents)} documents, {len(found)} offences")
    return 1 if found or not documents else 0


if __name__ == "__main__":
    sys.exit(main())
