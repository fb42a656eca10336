#!/usr/bin/env bash
# --transpose, --all-keys and --refinger, of the commands that have them.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

echo 'passage: Etude
key: D major
meter: 4/4
1/4 D4:1 E:2 F#:3 G:1 | A:2 B:3 C#5:4 D:5 |' >etude.passage

run annotate etude.passage --transpose 'up a minor third' --columns 200
status_is 0
has out 'Etude, up a minor third'
has out 'the thumb comes to black keys in bar 1: finger --refinger chooses anew'
run annotate etude.passage --transpose 'up a minor third' --format passage
is "$(tail -n 2 out)" 'key: F major
1/4 F4:1 G4:2 A4:3 B4:1 | C5:2 D5:3 E5:4 F5:5 |'
run excerpt etude.passage --bars 2 --transpose 'down 2'
status_is 0
is "$(tail -n 1 out)" '1/4 G4:2 A4:3 B4:4 C5:5 |'
run finger etude.passage --transpose 'to E-flat' --refinger --format passage
status_is 0
has out 'key: Eb major'
lacks out ':1 '
run annotate etude.passage --all-keys --format passage
status_is 0
is "$(grep --count '^passage:' out)" 12
run scale 'C major' --hand right --transpose 'to D'
status_is 2
has err 'no key signature is written'
run scale 'C major' --hand right --transpose 'up a major second'
status_is 0
has out '1/8 D4:1 E4:2 F#4:3 G4:1'

# There and back are the same bytes but for the title.
run annotate etude.passage --transpose 'down a perfect fourth' --format passage
"$FINGERTURN" annotate out --transpose 'up a perfect fourth' --format passage >again
"$FINGERTURN" annotate etude.passage --format passage | grep -v '^passage:' >before
grep -v '^passage:' again >after
same_files before after

# A score becomes a new one.
cp "$FINGERTURN_SOURCE_DIR/demo/last-tram.musicxml" .
run annotate last-tram.musicxml --transpose 'up an octave' --format musicxml
status_is 0
"$FINGERTURN" excerpt last-tram.musicxml --bars 3 --hand right | tail -n 1 >before
"$FINGERTURN" excerpt out --bars 3 --hand right --transpose 'down an octave' | tail -n 1 >after
same_files before after

refused() { # MESSAGE ARGUMENTS
  run annotate "${@:2}"
  status_is 2
  is_empty out
  has err "$1"
}
refused 'expected an interval as in "up a minor third"' etude.passage --transpose 'up a third'
echo 'C8:1' >high.passage
refused 'bar 1, right hand: C8 would become D8, which is not on the piano' high.passage --transpose '+2'
refused '--all-keys' etude.passage --all-keys --transpose '+2'
