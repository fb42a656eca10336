"""What the program says of itself, by --help. In the environment: FINGERTURN, the program."""

import os
import re
import subprocess
import sys


def help_of(*words):
    asked = [os.environ["FINGERTURN"], *words, "--help"]
    return subprocess.run(asked, check=True, capture_output=True, text=True).stdout


def commands():
    return re.findall(r"^  ([a-z]\S*)", help_of().split("\nCommands:\n")[1].split("\n\n")[0], re.M)


def entries(*words):
    """What is offered, as in "-o,--output FILE", and what is said of it in one line."""
    found = []
    is_open = False
    for row in help_of(*words).split("\n"):
        if begin := re.match(r"  (-.+?|[A-Z]+)(?:  +(.*))?$", row):
            found.append([begin[1], begin[2] or ""])
            is_open = True
        elif is_open and (more := re.match(r" {24}(\S.*)", row)):
            found[-1][1] += " " + more[1]
        else:
            is_open = False
    return [(name, said.strip()) for name, said in found]


def options(*words):
    return {name for entry, _ in entries(*words) for name in re.split("[ ,]", entry)
            if name.startswith("--")}


def skip_without(program):
    """Says so; with CI=true it must be there."""
    print(f"SKIPPED: there is no {program}")
    sys.exit(1 if os.environ.get("CI") == "true" else 77)
