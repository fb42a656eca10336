#!/usr/bin/env bash
# A typed passage, a scale or an excerpt as a new MusicXML score.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

demo="$FINGERTURN_SOURCE_DIR/demo"
analysis() { jq --compact-output '[.passages[].hands[] | {hand, events}]' "$1"; }

# What is read back from the score is what was typed: the same events and what was found in them.
for passage in "$demo"/*.passage; do
  run annotate --format musicxml "$passage" -o score.musicxml
  status_is 0
  is_empty out
  is_empty err
  run annotate --format json score.musicxml
  is_empty err
  mv out read_back
  run annotate --format json "$passage"
  is "$(analysis read_back)" "$(analysis out)"
  # The marks are those of any score: put in again they are the same.
  run annotate --format musicxml score.musicxml
  same_files out score.musicxml
done

# Suggested fingers are marks, given ones are not.
echo '1/4 C4:1 D E' | "$FINGERTURN" finger - --format musicxml >fingered
is "$(grep --count 'suggested by fingerturn' fingered)" 2
is "$(grep --count --fixed-strings '<technical><fingering>1</fingering></technical>' fingered)" 1

# Words in the place of arrows; a hand and some bars alone.
run annotate --format musicxml --words "$demo/scale.passage"
has out '<text>prep left</text>'
cat >duet.passage <<'END'
meter: 2/4
RH: 1/4 C5:1 D:2 | E:3 F:1 |
LH: 1/4 C3:5 D:4 | r E:2 |
END
run annotate --format musicxml --hand left duet.passage
lacks out '<staves>'
has out '<sign>F</sign>'
lacks out '<sign>G</sign>'
run annotate --format musicxml --bars 2 duet.passage
is "$(grep --only-matching 'measure number="[0-9]*"' out)" 'measure number="2"'

# Scales and excerpts are the music alone, with its fingers.
run scale Bb major --format musicxml -o scale.musicxml
status_is 0
run annotate --format passage scale.musicxml
is "$(tail -n 2 out)" 'RH: 1/8 B3:4 C4:1 D4:2 E4:3 F4:1 G4:2 A4:3 B4:4 ||
LH: 1/8 B2:3 C3:2 D3:1 E3:4 F3:3 G3:2 A3:1 B3:3 ||'
lacks scale.musicxml 'lyric'
lacks scale.musicxml 'credit'
run excerpt duet.passage --bars 2 --format musicxml
status_is 0
has out 'measure number="2"'
lacks out 'lyric'
run excerpt "$demo/last-tram.musicxml" --bars 3-4 --format musicxml
status_is 0
has out '<movement-title>Lantern Street, the last tram, bars 3 to 4</movement-title>'

# What cannot be a score, with what to do.
printf '1/4 C4:1\npassage: second\n1/4 D4:1\n' >two.passage
for command in 'annotate two.passage' 'excerpt --bars 1 two.passage'; do
  # shellcheck disable=SC2086 # several words
  run $command --format musicxml
  status_is 2
  is_empty out
  is "$(cat err)" 'fingerturn: two.passage: a MusicXML score holds one passage, and here are 2; --passage takes one'
done
run annotate two.passage --passage 2 --format musicxml
status_is 0
has out '<movement-title>second</movement-title>'
printf 'RH: 1/4 C4:1 D:2 |\nLH: C3:5 D:4 |\n' >no_values.passage
run annotate no_values.passage --format musicxml -o none.musicxml
status_is 2
is "$(cat err)" 'fingerturn: no_values.passage: how long the notes of the left hand are is not known in bar 1; write a note value before them, as in 1/4 C3:5'
holds "nothing was written" test ! -e none.musicxml
run annotate --format musicxml - <<<''
status_is 2
has err 'standard input: a MusicXML score needs notes, and there are none'
run finger --alternatives 2 --format musicxml - <<<'1/4 C4 D'
status_is 2
is "$(cat err)" 'fingerturn: --format musicxml makes a score, which has room for one fingering'
