#!/usr/bin/env bash
# What is said of the player and the tempo: --tempo, --reach, --cues.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

printf 'tempo: 60\nreach: 12\n1/16 G4:5 F:4 E:3 D:2 r C4:1+C#5:5\n' >fast.passage

run annotate fast.passage
status_is 0
has out 'quarter = 60'
has out 'reach 12 semitones'
has out 'full swings up to quarter = 75'
has out '1-5 over 13 semitones (C4 and C#5 together), comfortable'
has out 'with a reach of 12. [stretch]'
lacks out '[swing-rate]'

run annotate fast.passage --tempo 96
status_is 0
has out 'quarter = 96, as asked for'
has out 'At quarter = 96 bar 1 asks for 12.8 swings a second'
has out '75. [swing-rate]'
run annotate fast.passage --tempo 72.5 --format json
is "$(jq -c '[.passages[0].tempo, .passages[0].hands[0].events[1].swing_rate]' out)" '[72.5,4.83]'

run annotate fast.passage --reach 14
status_is 0
has out 'reach 14 semitones'
lacks out '[stretch]'

for wrong in '--tempo 0' '--tempo fast' '--tempo 2001' '--tempo 1e999' '--tempo nan' '--reach 6' \
  '--reach 25' '--reach 13.5'; do
  # shellcheck disable=SC2086 # an option and its value
  run annotate fast.passage $wrong
  status_is 2
  is_empty out
  has err 'expected'
done

run annotate fast.passage --cues
status_is 0
has out 'swing left, play right'
run annotate fast.passage
lacks out 'swing left, play right'

# The same for many files.
run check fast.passage
lacks out '[swing-rate]'
run check fast.passage --tempo 96 --reach 14
has out 'info: At quarter = 96 bar 1 asks for 12.8 swings a second'
lacks out '[stretch]'
run check fast.passage --reach 40
status_is 2
