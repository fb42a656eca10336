#!/usr/bin/env bash
# Help and version.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

for words in --help -h 'annotate --help' 'annotate -h' 'finger --help' 'scale --help' 'check --help' \
  'explain --help' 'practice --help' 'excerpt --help' 'compare --help'; do
  # shellcheck disable=SC2086 # a command and an option
  run $words
  status_is 0
  is_empty err
  has out 'Usage: fingerturn'
  holds "$words keeps to 80 columns" test "$(widest out)" -le 80
  is "$(grep --count ' $' out)" 0
done

run --help
for word in annotate practice excerpt compare finger scale check explain --version 'Exit status: 0 done; 1 ' Caution; do has out "$word"; done
run annotate --help
for option in --format --output --hand --bars --passage --detail --cues --tempo --reach --ascii --columns --color; do
  has out "$option"
done
for word in json jsonl passage text left right both always never; do has out "$word"; done

# The example in the help works.
example="$(sed -n "s/^  \(echo .*fingerturn annotate -\)$/\1/p" out)"
holds "help shows an example" test -n "$example"
PATH="$(dirname "$FINGERTURN"):$PATH" bash -c "$example" >report
has report 'under'

run scale --help
for word in NAME --list --hand --octaves --from --down --both --output; do has out "$word"; done
example="$(sed -n "s/^  \(fingerturn scale .*fingerturn annotate -\)$/\1/p" out)"
holds "help of scale shows an example" test -n "$example"
PATH="$(dirname "$FINGERTURN"):$PATH" bash -c "$example" >report
has report 'B-flat major scale, left hand'

run check --help
for word in PATH --files-from --format --output --hand --show --fail-on --columns --jobs info caution strain never; do
  has out "$word"
done

run --version
status_is 0
version="$(sed -n 's/^project(fingerturn VERSION \([0-9.]*\).*/\1/p' "$FINGERTURN_SOURCE_DIR/CMakeLists.txt")"
is "$(head -n 1 out)" "fingerturn $version"
holds "--version keeps to 80 columns" test "$(widest out)" -le 80
tr --squeeze-repeats ' \n' ' ' <out >in_a_line
holds "--version names the compiler" grep --quiet --extended-regexp ' built with [A-Za-z]+ [0-9.]+, ' in_a_line
linked="$(sed -n 's/^set(FINGERTURN_LINKED_MODULES \(.*\))/\1/p' "$FINGERTURN_SOURCE_DIR/CMakeLists.txt")"
holds "the library is linked with something" test -n "$linked"
for module in $linked nlohmann_json CLI11; do
  # Debian's re2 does not tell its own.
  told=" $(pkg-config --modversion "$module")"
  has in_a_line ", $module${told/# 0.0.0/}"
done
