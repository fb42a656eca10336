#!/usr/bin/env bash
# The program prints the golden reports of the demo passages (tests/report/golden_test.cpp).
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

golden="$FINGERTURN_SOURCE_DIR/tests/golden"
here="$PWD"
cd "$FINGERTURN_SOURCE_DIR" || exit 1

# prints ENDING OPTION...: what the program prints of each demo passage is golden.
prints() {
  local name
  for passage in demo/*.passage demo/*.musicxml; do
    "$FINGERTURN" annotate "$passage" "${@:2}" >"$here/out" 2>"$here/err"
    name="$(basename "$passage")"
    same_files "$here/out" "$golden/${name%.*}.$1"
    is_empty "$here/err"
  done
}
prints txt
prints narrow.txt --columns 48
prints ascii-detail.txt --ascii --detail
prints json --format json
prints jsonl --format jsonl
prints passage --format passage

# What it writes as a passage is the same music.
for passage in demo/*.passage; do
  for format in json text passage; do
    "$FINGERTURN" annotate --format "$format" - <"$passage" >"$here/out"
    "$FINGERTURN" annotate --format passage "$passage" |
      "$FINGERTURN" annotate --format "$format" - >"$here/again"
    same_files "$here/out" "$here/again"
  done
done
