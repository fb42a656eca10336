"""What shells complete: a line is typed, with the key that completes, and looked at.

A shell that reads lines is given a terminal of its own; fish tells by a command what it would offer.
"""

import os
import pty
import re
import select
import shlex
import signal
import subprocess
import sys
import time

PATIENCE_SECONDS = 60
SEE = "\x02"  # the key that completes the line and shows it
CONTROL = re.compile(r"\x1b\[[0-9;?]*[A-Za-z]|\r|\x07")

BEGINNINGS = {
    "bash": """
PS1=; bind 'set show-all-if-ambiguous on'; bind 'set page-completions off'
bind 'set completion-query-items 0'; bind 'set enable-bracketed-paste off'
bind 'set completion-display-width 0'
source {script}
bind -x '"\\C-o": see'; bind '"\\C-b": "\\t\\C-o"'
see() {{ printf '\\n<line>%s</line>\\n' "$READLINE_LINE"; READLINE_LINE=; }}
""",
    # What is added is noted as well, since zsh lists it only after the line has been seen.
    "zsh": """
PS1=; PROMPT_EOL_MARK=; unsetopt zle_bracketed_paste
autoload -Uz compinit; compinit -u -d {scratch}/dump
source {script}
compadd() {{
  local -a added
  [[ " $* " == *' -'[OAD]' '* ]] || {{ builtin compadd -O added "$@"; offered+=($added) }}
  builtin compadd "$@"
}}
see() {{
  typeset -ga offered=()
  zle complete-word
  zle -I
  printf '<offered>\\n%s\\n' "${{(F)offered}}"
  printf '\\n<line>%s</line>\\n' "$BUFFER"
  BUFFER=
}}
zle -N see; bindkey '^B' see
""",
}
COMMANDS = {"bash": ["bash", "--noprofile", "--norc", "-i"], "zsh": ["zsh", "-f", "-i"]}


def last_word(line):
    """As the program would get it; a quote may still be open."""
    for end in ("", '"', "'"):
        try:
            return shlex.split(line + end)[-1]
        except ValueError:
            continue
    return line


class Terminal:
    """A shell that reads lines, and the terminal that it does so at."""

    def __init__(self, shell, script, folder, scratch):
        beginning = os.path.join(scratch, "beginning")
        with open(beginning, "w", encoding="utf-8") as file:
            file.write(BEGINNINGS[shell].format(script=shlex.quote(script), scratch=scratch))
        self.process, self.terminal = pty.fork()
        if self.process == 0:
            os.chdir(folder)
            environment = dict(os.environ, TERM="xterm", LC_ALL="C.UTF-8", HOME=scratch)
            os.execvpe(COMMANDS[shell][0], COMMANDS[shell], environment)
        # So large that no list is asked about first, or is cut.
        subprocess.run(["stty", "rows", "1000", "cols", "300"], check=True, stdin=self.terminal)
        self.type(f"source {beginning}; echo re''ady\n")
        self.read_until("ready")

    def type(self, text):
        os.write(self.terminal, text.encode())

    def read_until(self, end):
        text = ""
        until = time.monotonic() + PATIENCE_SECONDS
        while end not in text:
            waits = max(until - time.monotonic(), 0)
            if not select.select([self.terminal], [], [], waits)[0]:
                sys.exit(f"no {end!r} after {PATIENCE_SECONDS} s, but {text!r}")
            text += os.read(self.terminal, 65536).decode(errors="replace")
        return text

    def offered(self, line):
        """The words that could stand at the end of the line, in any order."""
        self.type(line + SEE)
        shown, became = CONTROL.sub("", self.read_until("</line>")).split("<line>")
        became = became.split("</line>")[0]
        if became != line and became.endswith((" ", "=", "/", ",")):
            return {last_word(became)}
        rows = shown.split("<offered>")[-1].split("\n")
        return {row.replace("\\", "") for row in rows if row and "fingerturn " not in row}

    def end(self):
        os.kill(self.process, signal.SIGKILL)
        os.waitpid(self.process, 0)


class Fish:
    """Fish, which is asked line by line."""

    def __init__(self, script, folder, scratch):
        self.script = script
        self.folder = folder
        self.environment = dict(os.environ, LC_ALL="C.UTF-8", HOME=scratch)

    def offered(self, line):
        asked = f"source {shlex.quote(self.script)}; complete --do-complete {shlex.quote(line)}"
        answer = subprocess.run(["fish", "--no-config", "--command", asked], check=True, text=True,
                                capture_output=True, cwd=self.folder, env=self.environment)
        if answer.stderr:
            sys.exit(f"fish says of {line!r}: {answer.stderr}")
        return {row.split("\t")[0] for row in answer.stdout.splitlines()}

    def end(self):
        pass


def open_shell(shell, script, folder, scratch):
    return (Fish(script, folder, scratch) if shell == "fish"
            else Terminal(shell, script, folder, scratch))
