#!/usr/bin/env bash
# annotate --set: what other fingers change, and the music with them.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

cp "$FINGERTURN_SOURCE_DIR/demo/scale.passage" "$FINGERTURN_SOURCE_DIR/demo/last-tram.musicxml" .

# Old and new side by side, up to where they meet again.
run annotate scale.passage --set '1:2.5=4' --set '1:3=1' --columns 80
status_is 0
is "$(grep -A 5 '^bar  beat' out)" "bar  beat  note  A                 B
1          3 the same
     2.5   G4    1 single ← under  4 double →
     3     A4    2 single →        1 single ← under
     3.5   B4    3 double →        3 single →
           2 the same"
has out 'as it is tried'
has out 'difficulty'
for form in html markdown json; do
  run annotate scale.passage --set '1:2.5=4' --format "$form"
  status_is 0
  has out 'as it is tried'
done

# The music with them; of a score every other byte stays.
run annotate scale.passage --set '1:2.5=4' --set '1:3=2>1' --set '1:4=?' --format passage
status_is 0
has out 'G4:4 A4:2>1'
has out 'C#5 D5:5'
run annotate last-tram.musicxml --set 'RH 3:1=2' --format musicxml
status_is 0
is "$(diff last-tram.musicxml out | grep --count '^>')" 1
run annotate scale.passage --set '1:1=2' --format musicxml
status_is 0
has out '<fingering>2</fingering>'

# What cannot be done.
refused() { # MESSAGE ARGUMENTS
  run annotate "${@:2}"
  status_is 2
  is_empty out
  has err "$1"
}
refused 'both hands strike something there; begin with RH or LH' last-tram.musicxml --set '3:1=2'
refused 'nothing is struck there' scale.passage --set '9:1=2'
refused '--set: expected a hand where it is needed' scale.passage --set '9=2'
refused '--set tries fingers in one file' scale.passage last-tram.musicxml --set '1:1=2'
refused 'not as svg' scale.passage --set '1:1=2' --format svg
refused 'not as jsonl' scale.passage --set '1:1=2' --format jsonl
