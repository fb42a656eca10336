#!/usr/bin/env bash
# annotate --format musicxml: the score comes back, one at a time, and nothing else does.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

cp "$FINGERTURN_SOURCE_DIR"/tests/cases/write_back/{one_line,two_staves}.musicxml .
"$FINGERTURN" annotate --format musicxml one_line.musicxml >expected

signs() { grep --only-matching '<text>[^<]*</text></lyric>' "$1" | sed 's/<[^>]*>//g' | tr '\n' '/'; }

run annotate --format musicxml one_line.musicxml
status_is 0
is_empty err
is "$(signs out)" '←|/→/⇒/⇒/'
has out 'no medical advice'

run annotate --format musicxml - <one_line.musicxml
status_is 0
same_files out expected

run annotate --format musicxml one_line.musicxml -o marked.musicxml
status_is 0
is_empty out
same_files marked.musicxml expected

# Once more, and from other marks.
run annotate --format musicxml marked.musicxml
status_is 0
same_files out expected
for option in --words --ascii; do
  run annotate --format musicxml "$option" one_line.musicxml
  status_is 0
  is "$(signs out)" 'prep left/right/double right/double right/'
  lacks out '→'
  cp out words.musicxml
  run annotate --format musicxml words.musicxml
  status_is 0
  same_files out expected
done

# A part of it: the other marks go.
run annotate --format musicxml --hand left two_staves.musicxml
status_is 0
left="$(signs out)"
run annotate --format musicxml --hand right two_staves.musicxml
status_is 0
right="$(signs out)"
run annotate --format musicxml two_staves.musicxml
status_is 0
is "$(signs out | tr / '\n' | sort)" "$(printf %s "$left$right" | tr / '\n' | sort)"
cp out both.musicxml
run annotate --format musicxml --bars 2 both.musicxml
status_is 0
is "$(grep --count 'name="fingerturn"' out)" 4
run annotate --format musicxml --bars 7 both.musicxml
status_is 2
is_empty out
has err 'fingerturn: both.musicxml: nothing is played in bar 7; there are bars'

# Never over the input.
run annotate --format musicxml one_line.musicxml -o one_line.musicxml
status_is 2
has err 'this is an input'

# One at a time.
run annotate --format musicxml one_line.musicxml two_staves.musicxml
status_is 2
is_empty out
is "$(cat err)" 'fingerturn: --format musicxml makes one score at a time'

# What cannot be read is not written.
head --bytes 600 one_line.musicxml >broken.musicxml
run annotate --format musicxml broken.musicxml -o broken.out
status_is 3
holds "nothing was written" test ! -e broken.out

# Latin-1 comes back as UTF-8.
sed 's/UTF-8/ISO-8859-1/' two_staves.musicxml | sed 's/—/-/' >latin.musicxml
sed 's/—/-/' two_staves.musicxml >plain.musicxml
run annotate --format musicxml latin.musicxml
status_is 0
cp out from_latin
run annotate --format musicxml plain.musicxml
same_files from_latin out
