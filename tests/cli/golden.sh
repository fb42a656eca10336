#!/usr/bin/env bash
# The program prints the golden reports of the demo passages (tests/write/golden_test.cpp).
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

golden="$FINGERTURN_SOURCE_DIR/tests/golden"
here="$PWD"
cd "$FINGERTURN_SOURCE_DIR" || exit 1

# prints_of PATTERN ENDING OPTION...: what the program prints of each of these is golden.
prints_of() {
  local name pattern="$1"
  shift
  for passage in $pattern; do
    "$FINGERTURN" annotate "$passage" "${@:2}" >"$here/out" 2>"$here/err"
    name="$(basename "$passage")"
    same_files "$here/out" "$golden/${name%.*}.$1"
    is_empty "$here/err"
  done
}
# prints ENDING OPTION...: the same of every demo passage.
prints() { prints_of 'demo/*.passage demo/*.musicxml' "$@"; }

prints txt
prints narrow.txt --columns 48
prints ascii-detail.txt --ascii --detail
prints trace.txt --trace
prints html --format html
prints svg --format svg
prints md --format markdown
prints json --format json
prints jsonl --format jsonl
prints passage --format passage
for passage in demo/*.passage demo/*.musicxml; do
  "$FINGERTURN" excerpt "$passage" --bars 2 >"$here/out" 2>"$here/err"
  name="$(basename "$passage")"
  same_files "$here/out" "$golden/${name%.*}.bar-2.passage"
  is_empty "$here/err"
done
prints_of 'demo/*.musicxml' musicxml --format musicxml
prints_of 'demo/*.musicxml' words.musicxml --format musicxml --words

# What it says of all of them together.
for format in text jsonl; do
  "$FINGERTURN" check demo --format "$format" >"$here/out" 2>"$here/err"
  same_files "$here/out" "$golden/check.${format/text/txt}"
  is_empty "$here/err"
done

# What it writes as a passage is the same music.
for passage in demo/*.passage; do
  for format in json text passage; do
    "$FINGERTURN" annotate --format "$format" - <"$passage" >"$here/out"
    "$FINGERTURN" annotate --format passage "$passage" |
      "$FINGERTURN" annotate --format "$format" - >"$here/again"
    same_files "$here/out" "$here/again"
  done
done

# The pictures of README.md are drawn by the program.
"$FINGERTURN" annotate --format svg demo/scale.passage >"$here/out"
same_files "$here/out" docs/swing-scale.svg
"$FINGERTURN" annotate --format svg --bars 1-2 demo/last-tram.musicxml >"$here/out"
same_files "$here/out" docs/swing-both-hands.svg
