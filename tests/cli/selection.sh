#!/usr/bin/env bash
# The part of a score that is shown: --hand, --bars, --passage.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

cat >duet.passage <<'END'
passage: first
meter: 2/4
RH: 1/4 C5:1 D:2 | E:3 F:1 | G:2 A:3 |
LH: 1/4 C3:5 D:4 | E:3 F:2 | G:1 F:2 |
passage: second
RH: 1/4 C5:5 B4:4
END

hands() { jq -c '[.passages[].hands[].hand]' out; }
bars() { jq -c '[.passages[].hands[].events[].bar] | unique' out; }

run annotate duet.passage --format json
is "$(hands)" '["right","left","right"]'
is "$(bars)" '[1,2,3]'
cp out whole
run annotate duet.passage --format json --hand both
same_files out whole
run annotate duet.passage --format json --hand right
is "$(hands)" '["right","right"]'
is "$(jq -c '.passages[0].hands[0]' out)" "$(jq -c '.passages[0].hands[0]' whole)"
run annotate duet.passage --format json --hand left
is "$(hands)" '["left"]'

# Bars: what the bars before prepare stays as it was.
run annotate duet.passage --format json --bars 2-3
is "$(bars)" '[2,3]'
is "$(jq -c '[.passages[].hands[].events[]]' out)" \
  "$(jq -c '[.passages[].hands[].events[] | select(.bar > 1)]' whole)"
is "$(jq -c '.passages[0].hands[0].totals.events' out)" 4
run annotate duet.passage --format json --bars 2
is "$(bars)" '[2]'
cp out bar_two
run annotate duet.passage --format json --bars 2-2
same_files out bar_two
run annotate duet.passage --bars 2
has out 'bar 2'
lacks out 'bar 1'
lacks out 'bar 3'

run annotate duet.passage --format passage --bars 2-3 --passage 1
is "$(cat out)" 'passage: first
bar: 2
meter: 2/4
RH: 1/4 E5:3 F5:1 | G5:2 A5:3 |
LH: 1/4 E3:3 F3:2 | G3:1 F3:2 |'

# Bars that hold nothing, and a hand that plays nothing, cannot be shown; the other inputs are.
run annotate duet.passage --bars 40-50
status_is 2
is_empty out
is "$(cat err)" 'fingerturn: duet.passage: nothing is played in bars 40 to 50; passage 1 has bars 1 to 3; passage 2 has bar 1'
run annotate duet.passage --hand left --passage 2
status_is 2
is_empty out
is "$(cat err)" 'fingerturn: duet.passage: nothing is played by the left hand'
for command in annotate 'annotate --format json' 'annotate --format passage' finger; do
  # shellcheck disable=SC2086 # a command and its words
  run $command --bars 3 - duet.passage <<<'C4:1 | D:2'
  status_is 2
  is "$(cat err)" 'fingerturn: standard input: nothing is played in bar 3; there are bars 1 to 2'
  cp out some
  # shellcheck disable=SC2086 # a command and its words
  run $command --bars 3 duet.passage
  same_files out some
done
run annotate - --bars 3 <<<'C4:1 D:2'
is "$(cat err)" 'fingerturn: standard input: nothing is played in bar 3; there is bar 1'
run annotate - --bars 3 <<<'C4:1 r | r'
is "$(cat err)" 'fingerturn: standard input: nothing is played in bar 3; there are bars 1 to 2'
# A note that is held over from before is something to show; there is no turn of it to compare.
echo 'C4:1~ | C' >held.passage
run annotate held.passage --bars 2
status_is 0
has out 'note      ~'
run compare held.passage held.passage --bars 2
status_is 2
is "$(cat err)" 'fingerturn: held.passage: nothing is played in bar 2; there are bars 1 to 2'

# One passage of several.
for number in 1 2; do
  run annotate duet.passage --format json --passage "$number"
  status_is 0
  is "$(jq -c '.passages' out)" "$(jq -c "[.passages[$number - 1]]" whole)"
done
run annotate duet.passage --passage 3
status_is 2
is_empty out
is "$(cat err)" 'fingerturn: duet.passage: there is no passage 3, the last is 2'
run annotate duet.passage - --passage 2 <<<'C4:1'
status_is 2
has out 'second'
is "$(cat err)" 'fingerturn: standard input: there is no passage 2, the last is 1'
