#!/usr/bin/env python3
"""Runs a program for which the system refuses one thing.

    refusing.py sync PROGRAM WORD...       bringing a file to the disk: EIO
    refusing.py nameless PROGRAM WORD...   making a file without a name: EOPNOTSUPP

Ends with status 77, and a message, where the system has no such filter of calls.
"""

import ctypes
import errno
import os
import platform
import struct
import sys

# The numbers of fsync and openat.
CALLS = {"x86_64": (74, 257), "aarch64": (82, 56)}
# <linux/prctl.h> and <linux/seccomp.h>
NO_NEW_PRIVILEGES, SET_FILTER, BY_FILTER = 38, 22, 2
ALLOW, FAIL = 0x7FFF0000, 0x00050000
# <linux/bpf_common.h>: load a word, jump where equal, jump where a bit is set, return.
LOAD, IF_EQUAL, IF_SET, RETURN = 0x20, 0x15, 0x45, 0x06
# Where <linux/seccomp.h> has the number of the call and the low half of its third argument.
NUMBER, THIRD = 0, 32
# <asm-generic/fcntl.h>: what O_TMPFILE has and no other flag.
NAMELESS = 0o20000000


class Program(ctypes.Structure):
    _fields_ = [("length", ctypes.c_ushort), ("steps", ctypes.c_char_p)]


def step(code, on_true, on_false, value):
    return struct.pack("HBBI", code, on_true, on_false, value)


def filter_for(what, sync, open_at):
    if what == "sync":
        return (
            step(LOAD, 0, 0, NUMBER)
            + step(IF_EQUAL, 0, 1, sync)
            + step(RETURN, 0, 0, FAIL | errno.EIO)
            + step(RETURN, 0, 0, ALLOW)
        )
    return (
        step(LOAD, 0, 0, NUMBER)
        + step(IF_EQUAL, 0, 3, open_at)
        + step(LOAD, 0, 0, THIRD)
        + step(IF_SET, 0, 1, NAMELESS)
        + step(RETURN, 0, 0, FAIL | errno.EOPNOTSUPP)
        + step(RETURN, 0, 0, ALLOW)
    )


def refuse(steps):
    """Sets the filter for this process and the program that it becomes."""
    prctl = ctypes.CDLL(None).prctl
    program = Program(len(steps) // 8, steps)
    return (
        prctl(NO_NEW_PRIVILEGES, 1, 0, 0, 0) == 0
        and prctl(SET_FILTER, BY_FILTER, ctypes.byref(program), 0, 0) == 0
    )


def main():
    what = sys.argv[1]
    calls = CALLS.get(platform.machine())
    if calls is None or not refuse(filter_for(what, *calls)):
        print(f"no call can be made to fail here: {what}", file=sys.stderr)
        return 77
    os.execv(sys.argv[2], sys.argv[2:])


if __name__ == "__main__":
    sys.exit(main())
