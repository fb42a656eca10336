#!/usr/bin/env bash
# How far fingerings agree, of what is fingered in all, and with the fingers that a score offers.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

schema="$FINGERTURN_SOURCE_DIR/docs/comparison.schema.json"
mkdir valid
valid() { cp out "valid/$1.json"; }

# Only what is fingered in both: the others are neither compared nor shown.
printf 'meter: 4/4\n1/4 C4:1 D E:3 F:4 | G A B C5:1\n' >sparse.passage
printf 'meter: 4/4\n1/4 C4:1 D:2 E:2 F | G:1 A B C5:2\n' >student.passage
run compare sparse.passage student.passage --only-both
status_is 0
is "$(sed -n '/^agreement  *events/,/^legend/p' out)" 'agreement  events fingers turns
right hand      3     33%   33%
bar 1           2     50%   50%
bar 2           1      0%    0%

where they differ, right hand
bar  beat  note  A      B
1          1 the same
     3     E4    3 ?    2 double →
2    4     C5    1 ? ←  2 ?

legend'
is "$(tr -s '\n ' ' ' <out | grep -c 'only events that have all their fingers in all are compared')" 1
run compare sparse.passage student.passage --only-both --format json
is "$(jq -c '.passages[0] | [.fingered_only, .hands[0].agreement.events, [.hands[0].agreement.bars[].events]]' out)" \
  '[true,3,[2,1]]'
valid only_both
run compare sparse.passage student.passage --format json
is "$(jq -c '.passages[0] | [.fingered_only, .hands[0].agreement.events]' out)" '[false,8]'
printf 'meter: 4/4\n1/4 C4 D:2 E F | G:1 A B C5\n' >apart.passage
run compare sparse.passage apart.passage --only-both
status_is 2
is "$(cat err)" 'fingerturn: no note has a finger in all that is compared; --only-both leaves out all others'
printf 'meter: 4/4\n1/4 C4:1 D:2 E F | G A B C5:1\n' >same.passage
run compare sparse.passage same.passage --only-both
has out 'A and B are alike: the same fingers wherever all have them.'

# A score that offers other fingers beside its own.
cat >offers.musicxml <<'END'
<?xml version="1.0"?>
<score-partwise><part-list><score-part id="P"><part-name>Piano</part-name></score-part></part-list>
<part id="P"><measure number="1"><attributes><divisions>1</divisions><time><beats>2</beats><beat-type>4</beat-type></time></attributes>
<note><pitch><step>C</step><octave>5</octave></pitch><duration>1</duration>
<notations><technical><fingering>1</fingering></technical></notations></note>
<note><pitch><step>D</step><octave>5</octave></pitch><duration>1</duration>
<notations><technical><fingering>2</fingering><fingering alternate="yes">3</fingering><fingering alternate="yes">4</fingering></technical></notations></note>
</measure></part></score-partwise>
END
run compare offers.musicxml --alternate --format json
status_is 0
is "$(jq -c '.passages[0].fingerings' out)" \
  '["offers.musicxml","offers.musicxml, alternate fingers","offers.musicxml, alternate fingers 2"]'
is "$(jq -c '[.passages[0].hands[0].differences[].played[].notes[0].finger]' out)" '[2,3,4]'
valid alternate
run compare sparse.passage --alternate
status_is 2
is "$(cat err)" 'fingerturn: sparse.passage: no finger is offered beside another in it'

is "$(not_valid valid/*)" ''
