#!/usr/bin/env bash
# The JSON of the program fits docs/analysis.schema.json, as the general validator jsonschema
# (Debian's python3-jsonschema) sees it, and spoiled documents do not.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

schema="$FINGERTURN_SOURCE_DIR/docs/analysis.schema.json"

# Every report of the demo passages, whole and line by line.
mkdir valid
for passage in "$FINGERTURN_SOURCE_DIR"/demo/*.passage "$FINGERTURN_SOURCE_DIR"/demo/*.musicxml; do
  name="$(basename "$passage")"
  name="${name%.*}"
  "$FINGERTURN" annotate --format json "$passage" >"valid/$name.json"
  "$FINGERTURN" annotate --format jsonl "$passage" | split --lines=1 - "valid/$name.line."
done
# One that has everything.
cat >all.passage <<'END'
meter: 6/8
tempo: 72
key: G major
note: keep the wrist loose
RH: 1/8 C5:1 D:2~ D:3 ^E:4>1 F:2? G | r C5:1+E:3+G:5 C5:1+E:3 B4:4 , A#4:3 G:1 |
LH: 1/4. C3:5 D:5 | E:1 F:1 |
passage: without values, beginning with a finger missing
C4 D:1 E F:5 F:5 F:5
passage: without notes
END
"$FINGERTURN" annotate --format json all.passage >valid/all.json 2>err
: >empty.passage
"$FINGERTURN" annotate --format json empty.passage >valid/empty.json 2>err
# One in which kinds differ and something is watched, to be spoiled below.
cat >rich.passage <<'END'
meter: 4/4
tempo: 200
reach: 15
RH: 1/16 C5:1 D:2 E:3 F:1 C:1 C6:2
LH: 1/16 C3:5 G:1 C:5 G:1 C:5 C:5
END
"$FINGERTURN" finger --format json rich.passage >valid/rich.json 2>err
"$FINGERTURN" annotate --format json --places rich.passage >valid/places.json 2>err
is "$(jq -c '.passages[0].places[].asking[] | [.bar, .leaps > 0]' valid/places.json)" '[1,true]'
is "$(jq -c '.passages[0] | [(.together.kinds_differ | length > 0), (.hands[0].watch | length > 0),
  .reach, (.full_swing_tempo | floor), .hands[0].events[1].swing_rate]' valid/rich.json)" \
  '[true,true,15,75,13.33]'

is "$(not_valid valid/*)" ''

# Each line spoils the document; none of the results may fit.
cat >spoilers <<'END'
del(.format)
del(.version)
del(.source)
del(.caution)
del(.passages)
.format = "something else"
.version = 2
.version = "1"
.source = null
.caution = ""
.passages = null
.extra = 1
del(.passages[0].title)
del(.passages[0].reach)
.passages[0].reach = 3
.passages[0].full_swing_tempo = 0
del(.passages[0].together)
.passages[0].title = ""
.passages[0].title = 5
.passages[0].extra = null
.passages[0].meter = "4"
.passages[0].meter = "4/5"
.passages[0].meter = "0/4"
.passages[0].tempo = 0
.passages[0].tempo = "72"
.passages[0].hands += .passages[0].hands
.passages[0].hands[0].hand = "both"
del(.passages[0].hands[0].watch)
del(.passages[0].hands[0].totals)
del(.passages[0].hands[0].difficulty)
.passages[0].hands[0].difficulty = -1
.passages[0].hands[0].difficulty = "easy"
.passages[0].hands[0].extra = []
.passages[0].hands[0].totals.events = -1
.passages[0].hands[0].totals.swings = 1.5
.passages[0].hands[0].totals.crossings = null
.passages[0].hands[0].totals.full_swing_tempo = 0
del(.passages[0].hands[0].totals.longest_double_run)
.passages[0].hands[0].totals.extra = 0
del(.passages[0].hands[0].totals.carried)
.passages[0].hands[0].totals.carried = -1
.passages[0].hands[0].totals.arcs = 0.5
.passages[0].hands[0].events[0].index = -1
.passages[0].hands[0].events[0].bar = null
.passages[0].hands[0].events[0].onset = 0
.passages[0].hands[0].events[0].onset = "1/0"
.passages[0].hands[0].events[0].onset = "-1/8"
.passages[0].hands[0].events[0].onset = "0.5"
.passages[0].hands[0].events[0].duration = ""
.passages[0].hands[0].events[0].grace = null
.passages[0].hands[0].events[0].notes = []
.passages[0].hands[0].events[0].rotation = "triple"
.passages[0].hands[0].events[0].rotation = null
.passages[0].hands[0].events[0].rotation = "level"
.passages[0].hands[0].events[0].rotation = "single"
.passages[0].hands[0].events[0].rotation = "undetermined"
.passages[0].hands[0].events[0].side = "left"
.passages[0].hands[0].events[0].side = "toward fifth"
.passages[0].hands[0].events[0].side = null
.passages[0].hands[0].events[0].play = "up"
.passages[0].hands[0].events[0].play = null
.passages[0].hands[0].events[0].prepare = "left"
.passages[0].hands[0].events[1].prepare = "left"
.passages[0].hands[0].events[0].forearm = "rotation"
.passages[0].hands[0].events[0].forearm = "supination"
.passages[0].hands[0].events[0].swings = 3
.passages[0].hands[0].events[0].swings = 1
.passages[0].hands[0].events[0].swing_rate = -1
.passages[0].hands[0].events[0].crossing = "none"
.passages[0].hands[0].events[0].carry = "1"
.passages[0].hands[0].events[0].depth = 3
.passages[0].hands[0].events[0].arc = null
.passages[0].hands[0].events[0].arc = 0.5
.passages[0].hands[0].events[0].rule = "First Note"
.passages[0].hands[0].events[0].basis = "guess"
.passages[0].hands[0].events[0].basis = "none"
.passages[0].hands[0].events[0].reason = ""
.passages[0].hands[0].events[0].extra = 1
del(.passages[0].hands[0].events[0].arc)
del(.passages[0].hands[0].events[0].reason)
.passages[0].hands[0].events[0].notes[0].pitch = "H4"
.passages[0].hands[0].events[0].notes[0].pitch = "C9"
.passages[0].hands[0].events[0].notes[0].pitch = "C###4"
.passages[0].hands[0].events[0].notes[0].pitch = "c4"
.passages[0].hands[0].events[0].notes[0].midi = 20
.passages[0].hands[0].events[0].notes[0].midi = 109
.passages[0].hands[0].events[0].notes[0].midi = 60.5
.passages[0].hands[0].events[0].notes[0].key = "grey"
.passages[0].hands[0].events[0].notes[0].finger = 0
.passages[0].hands[0].events[0].notes[0].finger = 6
.passages[0].hands[0].events[0].notes[0].finger = "1"
.passages[0].hands[0].events[0].notes[0].changes_to = [6]
.passages[0].hands[0].events[0].notes[0].changes_to = null
.passages[0].hands[0].events[0].notes[0].suggested = "no"
.passages[0].hands[0].events[0].notes[0] += {finger: null, changes_to: [1]}
.passages[0].hands[0].events[0].notes[0].extra = 1
del(.passages[0].hands[0].events[0].notes[0].suggested)
.passages[0].hands[0].watch[0].level = "danger"
.passages[0].hands[0].watch[0].message = ""
.passages[0].hands[0].watch[0].extra = 1
del(.passages[0].hands[0].watch[0].source)
.passages[0].together.onsets = -1
.passages[0].together.extra = 1
del(.passages[0].together.parallel)
.passages[0].together.kinds_differ[0].onset = null
.passages[0].together.kinds_differ[0].right = "both"
del(.passages[0].together.kinds_differ[0].bar)
END
while read -r program; do spoil valid/rich.json "$program"; done <spoilers
none_spoiled_fits
