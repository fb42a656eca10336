#!/usr/bin/env bash
# The program prints the golden reports of the demo passages. After a change that is meant, this
# writes them anew, to be looked at before they are committed:
#
#     FINGERTURN_REWRITE_GOLDEN=1 tests/run -R golden
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

here="$PWD"
cd "$FINGERTURN_SOURCE_DIR" || exit 1
export FINGERTURN

python() { "${PYTHON:-/usr/bin/python3}" -B "$@"; }
rewrite=()
[[ "${FINGERTURN_REWRITE_GOLDEN:-}" != 1 ]] || rewrite=(--rewrite)
holds "the golden reports are not what is printed" \
  python tests/cli/golden.py "${rewrite[@]}" tests/golden
holds "golden.py does not find what is wrong" python tests/cli/golden_test.py

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
"$FINGERTURN" annotate --format svg demo/last-tram.musicxml >"$here/out"
same_files "$here/out" docs/swing-both-hands.svg
