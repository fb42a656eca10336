#!/usr/bin/env python3
"""Runs a program in which nothing can be brought to the disk: fsync fails with EIO.

    without_sync.py PROGRAM WORD...

Ends with status 77, and a message, where the system has no such filter of calls.
"""

import ctypes
import errno
import os
import platform
import struct
import sys

FSYNC = {"x86_64": 74, "aarch64": 82}
# <linux/prctl.h> and <linux/seccomp.h>
NO_NEW_PRIVILEGES, SET_FILTER, BY_FILTER = 38, 22, 2
ALLOW, FAIL = 0x7FFF0000, 0x00050000
# <linux/bpf_common.h>: load a word, jump where equal, return.
LOAD, IF_EQUAL, RETURN = 0x20, 0x15, 0x06


class Program(ctypes.Structure):
    _fields_ = [("length", ctypes.c_ushort), ("steps", ctypes.c_char_p)]


def step(code, on_true, on_false, value):
    return struct.pack("HBBI", code, on_true, on_false, value)


def refuse(call):
    """Lets a system call fail, in this process and in the program that it becomes."""
    steps = (
        step(LOAD, 0, 0, 0)  # the number of the call
        + step(IF_EQUAL, 0, 1, call)
        + step(RETURN, 0, 0, FAIL | errno.EIO)
        + step(RETURN, 0, 0, ALLOW)
    )
    prctl = ctypes.CDLL(None).prctl
    program = Program(len(steps) // 8, steps)
    return (
        prctl(NO_NEW_PRIVILEGES, 1, 0, 0, 0) == 0
        and prctl(SET_FILTER, BY_FILTER, ctypes.byref(program), 0, 0) == 0
    )


def main():
    call = FSYNC.get(platform.machine())
    if call is None or not refuse(call):
        print("no call can be made to fail here: fsync", file=sys.stderr)
        return 77
    os.execv(sys.argv[1], sys.argv[1:])


if __name__ == "__main__":
    sys.exit(main())
