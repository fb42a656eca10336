"""What stands on a terminal after some bytes: screen.py < BYTES.

Knows the beginning of a line, the next one and "erase to the end of the line"; any other that steers
a terminal is an error.
"""

import re
import sys


def screen(text):
    rows = [""]
    column = 0
    for sign in re.findall(r"\x1b\[K|.", text, re.DOTALL):
        if sign == "\r":
            column = 0
        elif sign == "\n":
            rows.append("")
        elif sign == "\x1b[K":
            rows[-1] = rows[-1][:column]
        elif sign < " ":
            sys.exit(f"unknown to this screen: {sign!r}")
        else:
            rows[-1] = rows[-1][:column].ljust(column) + sign + rows[-1][column + 1:]
            column += 1
    return "\n".join(rows)


print(screen(sys.stdin.read()), end="")
