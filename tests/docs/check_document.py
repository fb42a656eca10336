#!/usr/bin/env python3
"""Runs the commands that a document shows and compares what they print with what it says.

    check_document.py --program PROGRAM --root SOURCES [--rewrite] DOCUMENT...
    tests/docs/check_document.py --program build/fingerturn --root . --rewrite README.md

A fenced block marked `console` holds commands and their output:

    ```console
    $ fingerturn annotate demo/warmup.passage
    the exact output, standard output and standard error together
    ...
    ```

- A line that begins with `$ ` is a command for bash. Lines right after it that begin with `> `
  belong to it, so that a command can be long or bring a file along (`<<'END'`).
- An output line of only `...` stands for any number of lines.
- All commands of a document run one after another in one scratch folder, which holds copies of
  demo/ and docs/; `fingerturn` is on the PATH. No block ever touches the sources.
- Blocks marked otherwise are not run.

With --rewrite, the output that a document shows is replaced by what its commands print, except
where it still agrees (so that `...` stays).
"""

import argparse
import difflib
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
from dataclasses import dataclass, field

FENCE = re.compile(r"^(`{3,}|~{3,})\s*(\S*)")
MENTION = re.compile(r"^[\W\d]*(`{3,}|~{3,})\W*console\b")
SECONDS_A_COMMAND = 60
# bash gives 126 and 127 for what could not be run, more for what a signal ended.
FIRST_STATUS_OF_A_CRASH = 126


@dataclass
class Example:
    """A command and the lines that the document shows as its output."""

    line: int  # of the command in the document, from 0
    command: list[str] = field(default_factory=list)
    first_output: int = 0  # the line at which its output begins
    output: list[str] = field(default_factory=list)


class DocumentError(Exception):
    """A document that cannot be checked as it stands."""


def console_blocks(lines):
    """The first and the last line, fences left out, of each block marked `console`."""
    begin, fence, marked = None, "", False
    for number, line in enumerate(lines):
        match = FENCE.match(line)
        if begin is None and match:
            begin, fence, marked = number + 1, match[1], match[2] == "console"
        elif begin is not None and line.rstrip() == fence:
            if marked:
                yield begin, number
            begin = None
    if begin is not None:
        raise DocumentError(f"line {begin}: this block has no end")


def examples_of(lines, begin, end):
    """The commands of one block with their output."""
    examples = []
    for number in range(begin, end):
        line = lines[number]
        if line.startswith("$ "):
            examples.append(Example(number, [line[2:]], number + 1))
        elif not examples:
            raise DocumentError(f"line {number + 1}: expected a command, as in '$ fingerturn'")
        elif line.startswith("> ") and not examples[-1].output:
            examples[-1].command.append(line[2:])
            examples[-1].first_output = number + 1
        else:
            examples[-1].output.append(line)
    if not examples:
        raise DocumentError(f"line {begin}: a console block without a command")
    return examples


def read_examples(lines):
    """All commands of a document; refuses a document in which a block would be passed over."""
    blocks = list(console_blocks(lines))
    mentioned = sum(1 for line in lines if MENTION.match(line))
    if mentioned != len(blocks):
        raise DocumentError(f"{mentioned} blocks are marked console, {len(blocks)} would be run")
    return [example for block in blocks for example in examples_of(lines, *block)]


def agrees(shown, printed):
    """Whether the printed lines are those shown, `...` standing for any number of lines."""
    pattern = "".join(
        r"(?:[^\n]*\n)*?" if line == "..." else re.escape(line + "\n") for line in shown
    )
    return re.fullmatch(pattern, "".join(line + "\n" for line in printed)) is not None


class Scratch:
    """A folder in which the commands of one document run."""

    def __init__(self, program, root):
        self.folder = pathlib.Path(tempfile.mkdtemp(prefix="fingerturn-docs-"))
        self.work = self.folder / "work"
        self.work.mkdir()
        for name in ("demo", "docs"):
            shutil.copytree(root / name, self.work / name)
        bin_folder = self.folder / "bin"
        bin_folder.mkdir()
        (bin_folder / "fingerturn").symlink_to(program.resolve())
        self.environment = {
            "PATH": f"{bin_folder}:/usr/local/bin:/usr/bin:/bin",
            "HOME": str(self.folder),
            "LC_ALL": "C.UTF-8",
            "TERM": "dumb",
        }

    def __enter__(self):
        return self

    def __exit__(self, *_):
        shutil.rmtree(self.folder)

    def run(self, command):
        """The lines a command prints; raises where it could not be run to its end."""
        result = subprocess.run(
            ["bash", "-c", command],
            cwd=self.work,
            env=self.environment,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            timeout=SECONDS_A_COMMAND,
            check=False,
        )
        printed = result.stdout.decode("utf-8", errors="replace").removesuffix("\n").split("\n")
        printed = [] if printed == [""] else printed
        if result.returncode >= FIRST_STATUS_OF_A_CRASH or result.returncode < 0:
            raise DocumentError("\n".join([f"'{command}' gave {result.returncode}:", *printed]))
        return printed


def compare(document, example, printed):
    """Prints the difference, if any, and says whether there was none."""
    if agrees(example.output, printed):
        return True
    print(f"{document}:{example.line + 1}: $ {example.command[0]}")
    for line in difflib.unified_diff(example.output, printed, "shown", "printed", lineterm=""):
        print("  " + line)
    return False


def check(document, program, root, rewrite):
    """Runs one document; gives the number of commands that were run and of those that differ."""
    lines = document.read_text(encoding="utf-8").split("\n")
    examples = read_examples(lines)
    differing = []
    with Scratch(program, root) as scratch:
        for example in examples:
            printed = scratch.run("\n".join(example.command))
            if not compare(document, example, printed):
                differing.append((example, printed))
    if not rewrite:
        return len(examples), len(differing)
    for example, printed in reversed(differing):
        end = example.first_output + len(example.output)
        lines[example.first_output : end] = printed
    document.write_text("\n".join(lines), encoding="utf-8")
    return len(examples), 0


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n", maxsplit=1)[0])
    parser.add_argument("--program", type=pathlib.Path, required=True)
    parser.add_argument("--root", type=pathlib.Path, required=True)
    parser.add_argument("--rewrite", action="store_true", help="put the real output in")
    parser.add_argument("documents", type=pathlib.Path, nargs="+", metavar="DOCUMENT")
    arguments = parser.parse_args()
    failed = False
    for document in arguments.documents:
        try:
            run, differing = check(document, arguments.program, arguments.root, arguments.rewrite)
        except (DocumentError, OSError, subprocess.TimeoutExpired) as error:
            print(f"{document}: {error}")
            failed = True
            continue
        print(f"{document}: {run} commands run, {differing} differ")
        failed = failed or differing > 0
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
