#!/usr/bin/env bash
# practice: the plan in each form, from lesson to lesson, and what is refused.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

easy='1/4 C4:1 E:3 C:1 E:3 |'
scale='1/8 C4:1 D:2 E:3 F:1 G:2 A:3 B:4 C5:5 |'
row='1/4 C4:1 D:2 E:3 F:4 G:5 |'
echo "passage: Lantern Street
tempo: 120
RH: $easy $easy $easy $scale $easy $easy $easy $row $easy $easy $easy $easy $easy $easy" >lantern.passage

# Every form says the same.
for form in text html markdown; do
  run practice --columns 120 --minutes 30 --format "$form" lantern.passage
  status_is 0
  for words in 'Lantern Street: what to practise first' '30 minutes, 2 of them to rest' \
    'elbow is no lower than the keys' 'Bar 4, right hand' 'Bar 8, right hand' 'note by note' \
    'the goal is quarter = 120' 'bars 3 to 5' 'no medical advice'; do has out "$words"; done
done
run practice --columns 120 --detail lantern.passage
has out 'points, '
has out 'fingerturn explain places'
run practice --brief lantern.passage
has out 'No medical advice'

# What is to be played is read again without a word, and analyses.
run practice --format passage --output cells.passage lantern.passage
status_is 0
run annotate --format jsonl cells.passage
status_is 0
is_empty err
holds "cells, rhythms and bars are passages" test "$(wc -l <out)" -gt 20
run practice --format musicxml --output cells.musicxml lantern.passage
status_is 0
run check --format jsonl cells.musicxml
status_is 0
is "$(jq -s 'map(select(.error != null)) | length' out)" 0

# Fewer places, and those of one hand or some bars.
run practice --top 1 --columns 120 lantern.passage
has out '1. Bar 4'
lacks out '2. Bar 8'
has out 'Left for another day: bar 8.'
run practice --bars 6-14 --columns 120 lantern.passage
has out '1. Bar 8'
lacks out 'Bar 4'
run practice --minutes 4 --columns 120 lantern.passage
has out '1. Bar 4, right hand, 4 minutes'
has out 'Left for another day: bar 8.'

# A goal that is slower than full swings needs no smaller ones.
run practice --tempo 40 --columns 120 lantern.passage
has out 'the goal is quarter = 40'
lacks out 'smaller swings'

# Missing fingers are filled in, and said.
sed 's/:[0-9]//g' lantern.passage >bare.passage
run practice --columns 120 bare.passage
status_is 0
has out 'fingers are suggestions, marked with ?'

# From lesson to lesson.
run practice --format json --output week-1.json lantern.passage
status_is 0
is "$(jq -c '[.format, (.places | length), .places[0].done, .places[0].first_bar]' week-1.json)" \
  '["fingerturn-practice",2,false,4]'
run practice --since week-1.json --done 1 --format json lantern.passage
status_is 0
is "$(jq -c '[.places[] | [.progress.is_new, .progress.was_done]], .settled' out | tr -d '\n')" \
  '[[false,true],[false,false]][]'
holds "the first place goes on, the second does not" \
  test "$(jq -s '(.[1].places[0].now.quarters_per_minute > .[0].places[0].now.quarters_per_minute)
    and .[1].places[1].now == .[0].places[1].now' week-1.json out)" = true
cp out week-2.json
jq '.places[0].done = true' week-2.json >edited.json
run practice --since edited.json --columns 120 lantern.passage
status_is 0
has out 'Done last time.'
has out 'Not marked as done last time.'
has out 'Go on at quarter = '
sed 's/F:4 G:5/F:4 G:3/' lantern.passage >other.passage
run practice --since week-1.json --columns 120 other.passage
has out 'Fingers changed since: G4:3 (was 5).'
echo "RH: $easy $easy $scale $easy $easy" >elsewhere.passage
run practice --since week-1.json --columns 120 elsewhere.passage
has out 'New since the last plan.'
has out 'In the last plan and no more among the places: bar 4 and bar 8.'

# What cannot be done.
refused_in() { # STATUS MESSAGE ARGUMENTS: nothing is written, and this is said
  run practice "${@:3}"
  status_is "$1"
  is_empty out
  has err "$2"
}
echo '{"places": [' >broken.json
"$FINGERTURN" annotate --format json lantern.passage >analysis.json
refused_in 3 'broken.json:2:1: expected a plan in JSON' --since broken.json lantern.passage
refused_in 3 'expected a plan, as practice --format json writes it' --since analysis.json lantern.passage
refused_in 3 'missing.json' --since missing.json lantern.passage
refused_in 2 '--done: week-1.json has 2 places, and no place 3' --since week-1.json --done 3 lantern.passage
refused_in 2 '--since is about the plan of one file' --since week-1.json lantern.passage bare.passage
refused_in 2 '--format json holds the plan of one file' --format json lantern.passage bare.passage
refused_in 2 '--done' --done 1 lantern.passage
refused_in 2 '--minutes' --minutes 0 lantern.passage
refused_in 2 '--top' --top 101 lantern.passage
refused_in 3 'bad.passage' bad.passage
# An earlier plan is never written over.
cp week-1.json kept.json
refused_in 2 'week-1.json' --since week-1.json --output week-1.json --format json lantern.passage
same_files week-1.json kept.json

# Nothing stands out: said, and nothing to play.
echo "RH: $easy $easy" >easy.passage
run practice --columns 120 easy.passage
status_is 0
has out 'No bar stands out by what it asks'
run practice --format passage easy.passage
status_is 0
is_empty out
has err 'there is nothing to write'

# Several files in turn; one that cannot be read leaves the others.
run practice --columns 120 lantern.passage missing.passage easy.passage
status_is 3
has out 'Lantern Street: what to practise first'
has out 'easy: what to practise first'

# The JSON fits its schema; spoiled it does not.
schema="$FINGERTURN_SOURCE_DIR/docs/practice.schema.json"
mkdir valid
cp week-1.json week-2.json valid
"$FINGERTURN" practice --format json --minutes 20 "$FINGERTURN_SOURCE_DIR/demo/ferry.passage" >valid/ferry.json
"$FINGERTURN" practice --format json --top 1 "$FINGERTURN_SOURCE_DIR/demo/last-tram.musicxml" >valid/tram.json
"$FINGERTURN" practice --format json easy.passage >valid/easy.json
is "$(not_valid valid/*)" ''
cat >spoilers <<'END'
del(.format)
.version = 2
del(.caution)
.extra = 1
del(.places[0].notes)
.places[0].done = "yes"
.places[0].hands = []
.places[0].now.swing_size = 2
.places[0].steps[0].kind = "something"
.places[0].progress.is_new = 1
.places[0].fingers[0] = "6"
.left_out = [{}]
END
while read -r spoiler; do spoil week-2.json "$spoiler"; done <spoilers
none_spoiled_fits
