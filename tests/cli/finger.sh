#!/usr/bin/env bash
# Missing fingers: finger, annotate --suggest, check --suggest.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

cat >gaps.passage <<'END'
passage: gaps
1/8 C4 D E:3 F G A B C5 |
END

run finger gaps.passage --format passage
status_is 0
is "$(cat err)" ''
is "$(tail -n 1 out)" '1/8 C4:1? D4:2? E4:3 F4:1? G4:2? A4:3? B4:4? C5:5? |'

# What was filled in once is kept: nothing more is missing.
cp out complete.passage
run finger complete.passage --format passage
same_files out complete.passage

# The report: fingers marked, how difficult, turns.
run finger gaps.passage
has out 'Difficulty'
has out '7 fingers are suggested'
has out '2? = suggested'
has out 'single'
run finger gaps.passage --format json
is "$(jq -c '[.passages[].hands[].events[].notes[].finger]' out)" '[1,2,3,1,2,3,4,5]'
is "$(jq -c '[.passages[].hands[].events[].notes[].suggested]' out)" \
  '[true,true,false,true,true,true,true,true]'
is "$(jq -c '[.passages[].hands[].difficulty | type]' out)" '["number"]'
cp out finger.json
run annotate --suggest gaps.passage --format json
same_files out finger.json
run annotate gaps.passage --format json
is "$(jq -c '[.passages[].hands[].difficulty]' out)" '[null]'
is "$(jq -c '[.passages[].hands[].events[].notes[].finger]' out)" \
  '[null,null,3,null,null,null,null,null]'

# How difficult it is, also of a passage without gaps, of some bars by themselves, and in JSONL.
is "$(jq -r '.passages[0].hands[0].difficulty * 10 | round / 10' finger.json)" \
  "$(jq -r '.passages[0].remarks[0] | capture("Difficulty (?<d>[0-9.]+)").d' finger.json)"
run finger complete.passage --format jsonl
is "$(jq '.passages[0].hands[0].difficulty' out)" "$(jq '.passages[0].hands[0].difficulty' finger.json)"
run finger - --bars 2 --format json <<<'C4:1 D:2 | G:1 F:5 | E:4 F:5'
run_difficulty="$(jq '.passages[0].hands[0].difficulty' out)"
run finger - --format json <<<'G4:1 F:5'
is "$run_difficulty" "$(jq '.passages[0].hands[0].difficulty' out)"

# Alternatives: in order, each different, each with its turns.
run finger gaps.passage --alternatives 3 --format json
is "$(jq -c '.passages | length' out)" 3
is "$(jq -c '[.passages[] | [.hands[].events[].notes[].finger]] | unique | length' out)" 3
is "$(jq -c '[.passages[].hands[].events[2].notes[0].finger] | unique' out)" '[3]'
is "$(jq -r '[.passages[].title | capture("difficulty (?<d>[0-9.]+)").d | tonumber] | . == sort' out)" true
is "$(jq -c '.passages[0].hands[0].events' out)" "$(jq -c '.passages[0].hands[0].events' finger.json)"
has out 'gaps, fingering 2 of 3, difficulty'
run finger gaps.passage --alternatives 3 --format html
is "$(grep -c '<title>gaps</title>' out)" 1
is "$(grep -c 'fingering [123] of 3' out)" 3
has out '<th scope="col">C</th>'
run finger gaps.passage --alternatives 3 --format markdown
has out '**C**: fingering 3 of 3'
run finger complete.passage --alternatives 5 --format html
has out 'a cue for every note'
run finger complete.passage --alternatives 5 --format passage
is "$(grep -c '^passage:' out)" 1
run finger gaps.passage --alternatives 21
status_is 2
has err 'expected a number from 1 to 20'

# Of some bars the alternatives are of these, and so is what is said of them.
printf 'meter: 4/4\n1/4 C4 D E F | G A B C5 | D C B A' >bars.passage
run finger bars.passage --bars 2 --alternatives 3 --format json
is "$(jq -c '[.passages[].hands[0].events | map(.notes[0].finger)] | unique | length' out)" 3
is "$(jq -c '[.passages[] | (.title | capture("difficulty (?<d>[0-9.]+)").d | tonumber) - .hands[0].difficulty | fabs < 0.06] | unique' out)" '[true]'
run finger bars.passage --bars 2
has out 'Difficulty of bar 2: '
has out '4 fingers are suggested'

# Bars are cut after the fingers are found, hands before.
run finger gaps.passage --format passage --hand left
is "$(grep -c '?' out)" 0

# check: nothing is missing any more.
run check gaps.passage
has out 'missing-finger'
run check --suggest gaps.passage
status_is 0
lacks out 'missing-finger'

# A score comes back with its fingers, and they can be read again as suggestions.
cp "$FINGERTURN_SOURCE_DIR/demo/last-tram.musicxml" score.musicxml
run finger score.musicxml --format musicxml --output marked.musicxml
status_is 0
has marked.musicxml '<level>suggested by fingerturn</level>'
run finger marked.musicxml --format musicxml
same_files out marked.musicxml
run annotate marked.musicxml --format json
is "$(jq -c '[.passages[].hands[].events[].notes[] | select(.suggested)] | length' out)" \
  "$(grep -c '<level>suggested by fingerturn</level>' marked.musicxml)"
run finger score.musicxml --format musicxml --alternatives 2
status_is 2
has err 'room for one fingering'

# What sets an alternative apart from the first is in its title and in JSON.
run finger bars.passage --alternatives 4 --format json
is "$(jq -c '[.passages[] | has("apart")]' out)" '[false,true,true,true]'
is "$(jq -r '[.passages[1:][] | .title | contains(": ")] | all' out)" true
cp out apart.json
schema="$FINGERTURN_SOURCE_DIR/docs/analysis.schema.json"
is "$(not_valid apart.json)" ''

# Alternatives side by side show bars that come again as well.
printf '1/8 C4 E G E | C4 E G E | C4 E G E | C4 E G E |\n' >again.passage
run finger again.passage --alternatives 3 --format html
cp out once.html
run finger again.passage --alternatives 3 --once --format html
same_files out once.html

# Why a finger is taken.
printf 'meter: 4/4\nRH: 1/8 C4 D E F G A B C5 |\nLH: 1/1 C3:5 |\n' >why.passage
run finger why.passage --why 1:2.5
status_is 0
is "$(head -n 1 out)" 'bar 1, beat 2.5, right hand: 1 on F4'
has out 'harder by'
has out 'off-handbook: another finger'
has out 'no medical advice'
run finger why.passage --why 1:1 --format json
is "$(jq -c '[.why[] | [.hand, .fingers, .given]]' out)" '[["right",[1],false],["left",[5],true]]'
is "$(jq '[.why[].others[] | ([.terms[].harder] | add) - .harder | fabs < 1e-6] | all' out)" true
is "$(jq -r '.caution | length > 100' out)" true
cp out why.json
# shellcheck disable=SC2034 # not_valid takes it
schema="$FINGERTURN_SOURCE_DIR/docs/why.schema.json"
is "$(not_valid why.json)" ''
mkdir spoiled
jq '.why[0].hand = "third"' why.json >spoiled/hand.json
jq '.why[0].others[0].terms[0].harder = "much"' why.json >spoiled/harder.json
jq 'del(.caution)' why.json >spoiled/caution.json
none_spoiled_fits
run finger why.passage --why 1:1 --hand left --format json
is "$(jq '.why | length' out)" 1
run finger why.passage --why 1
is "$(head -n 1 out)" 'bar 1, beat 1, right hand: 1 on C4'
run finger why.passage --why 1:1.25
status_is 2
has err 'nothing is struck in bar 1 on beat 1.25'
run finger why.passage --why 3:
status_is 2
has err 'expected a bar and a beat as in 3:2.5'
run finger why.passage --why 1:1 --format svg
status_is 2
has err 'told as text or json'

# Wishes.
run finger why.passage --hand right --bars 1 --avoid 4-5 --format passage
status_is 0
run finger why.passage --avoid 4-6
status_is 2
has err 'expected two fingers as in 4-5, found "4-6"'
echo '1/8 F#4 G# A# C#5 D# F# G# A#' >black.passage
run finger black.passage --format passage
has out 'F#4:1?'
run finger black.passage --prefer-thumb-on-white --format passage
is "$(grep -c ':1' out)" 0
echo '1/8 C4:4? D:5? E | G:5? A:1? B' >kept.passage
run finger kept.passage --keep 1 --format passage
has out 'C4:4? D4:5?'
is "$(grep -c 'A4:1?' out)" 0
run finger kept.passage --keep 2-1
status_is 2
has err '--keep'
echo '1/4 C4+C5' >octave.passage
run finger octave.passage --reach small --format json
is "$(jq '.passages[0].reach' out)" 10
run finger octave.passage --reach 6
status_is 2
has err 'or small, found "6"'
