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
