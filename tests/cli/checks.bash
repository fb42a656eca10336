# shellcheck shell=bash
# What the tests of the command line share; each begins with `source` of this file. A test runs in a
# scratch folder of its own, goes on after a check that fails, and ends with status 1 if any did.
#
#     run annotate - <<<'C4:1 D:2'     runs the program; leaves $status and the files out and err
#     status_is 0
#     is "$(cat err)" ''               two texts are equal
#     has out 'bar 1'                  a file holds a text
#     lacks out 'bar 2'                a file does not
#     holds "what is true" test -e x   a command succeeds
#
# $scale is an octave of C major. In the environment: FINGERTURN, the program; FINGERTURN_SOURCE_DIR, the sources.
set -uo pipefail
: "${FINGERTURN:?is not set}" "${FINGERTURN_SOURCE_DIR:?is not set}"
export LC_ALL=C.UTF-8 TERM=xterm
unset NO_COLOR COLUMNS

FINGERTURN="$(realpath "$FINGERTURN")"
FINGERTURN_SOURCE_DIR="$(realpath "$FINGERTURN_SOURCE_DIR")"
scratch="$(mktemp -d)"
cd "$scratch" || exit 1
checks=0
failures=0

finish() {
  local ended=$?
  cd / && chmod -R u+rwX "$scratch" && rm -rf "$scratch"
  echo "$checks checks, $failures failed"
  [[ $ended -eq 0 && $checks -gt 0 && $failures -eq 0 ]] || exit 1
}
trap finish EXIT

run() {
  "$FINGERTURN" "$@" >out 2>err
  status=$?
}

# check NAME COMMAND...: the command succeeds.
check() {
  checks=$((checks + 1))
  "${@:2}" && return
  failures=$((failures + 1))
  echo "line ${BASH_LINENO[-2]}: $1"
}

same_text() {
  [[ "$1" == "$2" ]] || {
    diff <(printf '%s\n' "$2") <(printf '%s\n' "$1") | sed 's/^</  expected:/; s/^>/  found:   /'
    return 1
  }
}

holds_text() { grep --quiet --fixed-strings -e "$2" "$1" || { sed 's/^/  | /' "$1"; return 1; }; }
lacks_text() { ! grep --fixed-strings -e "$2" "$1"; }

status_is() { check "expected status $1, found $status" test "$status" -eq "$1"; }
is() { check "two texts differ" same_text "$1" "$2"; }
has() { check "expected \"$2\" in $1" holds_text "$1" "$2"; }
lacks() { check "expected no \"$2\" in $1" lacks_text "$1" "$2"; }
holds() { check "$@"; }
is_empty() { check "expected $1 to be empty" test ! -s "$1"; }
same_files() { check "expected $1 and $2 to be the same" cmp "$1" "$2"; }

# not_valid FILE...: the names of the files that do not fit the JSON schema $schema.
not_valid() {
  local instances=()
  for file in "$@"; do instances+=(--instance "$file"); done
  "${PYTHON:-/usr/bin/python3}" -W ignore -m jsonschema --error-format $'{file_name}\n' \
    "${instances[@]}" "${schema:?}" 2>&1 | sort --unique
}

# spoil FILE PROGRAM: puts what a jq program makes of a document into the folder spoiled.
spoil() {
  local name
  mkdir -p spoiled
  name="spoiled/$((1001 + $(find spoiled -type f | wc --lines))).json"
  jq "$2" "$1" >"$name" || holds "jq takes $2" false
}

# None of the documents in the folder spoiled fits $schema.
none_spoiled_fits() { is "$(not_valid spoiled/*)" "$(printf '%s\n' spoiled/*)"; }

# Whether a program can be run as somebody who is not root and may not do everything.
can_be_nobody() {
  [[ $EUID -ne 0 ]] && return
  chmod 755 . && setpriv --reuid=65534 --regid=65534 --clear-groups test -r . 2>/dev/null
}

# Runs the program like `run`, but never as root.
run_as_nobody() {
  local nobody=()
  [[ $EUID -ne 0 ]] || nobody=(setpriv --reuid=65534 --regid=65534 --clear-groups)
  cp "$FINGERTURN" program && chmod 755 program
  "${nobody[@]}" ./program "$@" >out 2>err
  status=$?
  rm program
}

# Whether a program can be run at a terminal here; says so where not.
has_terminals() {
  script --quiet --return --command true /dev/null </dev/null >/dev/null 2>&1 && return
  echo "SKIPPED: script of bsdutils, or a place for terminals, is not there"
  [[ "${CI:-}" != true ]] || holds "there is a place for terminals" false
  return 1
}

# on_terminal COLUMNS COMMAND: runs a line of the shell, which finds the program as fingerturn, at a
# terminal that is so wide. Leaves $status, the file bytes.raw with all that was written there, and
# out, which lacks the signs for the beginning of a line.
on_terminal() {
  PATH="$(dirname "$FINGERTURN"):$PATH" script --quiet --return --command "stty cols $1; $2" \
    /dev/null </dev/null >bytes.raw
  status=$?
  tr --delete '\r' <bytes.raw >out
}

# The widest line of a file, in characters.
widest() { awk '{ if (length($0) > most) most = length($0) } END { print most + 0 }' "$1"; }

# shellcheck disable=SC2034 # the tests use it
scale='C4:1 D:2 E:3 F:1 G:2 A:3 B:4 C:5'
