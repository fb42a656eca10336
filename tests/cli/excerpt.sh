#!/usr/bin/env bash
# Some bars out of a score, as a passage.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

cat >duet.passage <<'END'
passage: first
composer: nobody
meter: 2/4
tempo: 60
RH: 1/4 C5:1 D:2 | E:3 F:1~ | F A:3 |
LH: 1/4 C3:5 D:4 | r E:2 | G:1 F:2 |
passage: second
RH: 1/4 C5:5 B4:4
END

run excerpt duet.passage --bars 2
status_is 0
is_empty err
is "$(cat out)" 'passage: first, bar 2
composer: nobody
# In the score E5:3 at the beginning of bar 2, right hand, is double, swinging
# left and turning right, after D5:2 in bar 1. Here it is preparatory,
# swinging left and turning right.
# In the score E3:2 on beat 2 of bar 2, left hand, is preparatory, swinging
# right and turning left, for what follows there. Here it is preparatory.
bar: 2
meter: 2/4
tempo: 60
RH: 1/4 E5:3 F5:1 |
LH: 1/4 r E3:2 |'

# It is a passage like any other: nothing is warned of, and it can be worked on.
cp out two.passage
run annotate two.passage --format json
status_is 0
is_empty err
is "$(jq -c '[.passages[].hands[].events[].bar] | unique' out)" '[2]'
run excerpt two.passage --bars 2
has out 'passage: first, bar 2, bar 2'

# A tie that is cut: the note is struck, with the finger that was on the key.
run excerpt duet.passage --bars 3 --hand right
status_is 0
is "$(tail -n 4 out)" 'bar: 3
meter: 2/4
tempo: 60
1/4 F5:1 A5:3 |'
has out '# In the score F5:1 at the beginning of bar 3 is held over from before. Here'
has out '# F5:1 is struck: preparatory, swinging right and turning left.'
run excerpt duet.passage --bars 2-3 --hand left
is "$(tail -n 1 out)" '1/4 r E3:2 | G3:1 F3:2 |'
lacks out '# '

# One passage of several; a file; standard input.
run excerpt duet.passage --bars 1 --passage 2
is "$(head -n 1 out)" 'passage: second, bar 1'
run excerpt duet.passage --bars 1 --output part.passage
status_is 0
is_empty out
is "$(grep -c '^passage:' part.passage)" 2
run excerpt - --bars 1 <duet.passage
same_files out part.passage
run excerpt duet.passage --bars 1 --output duet.passage
status_is 2
has err 'this is an input'

# A score, as text and packed.
cp "$FINGERTURN_SOURCE_DIR/demo/last-tram.musicxml" tram.musicxml
run excerpt tram.musicxml --bars 2-3
status_is 0
is_empty err
has out 'passage: Lantern Street, the last tram, bars 2 to 3'
cp out tram.passage
"${PYTHON:-/usr/bin/python3}" -c 'import sys, zipfile
with zipfile.ZipFile("tram.mxl", "w") as packed:
    packed.writestr("META-INF/container.xml", sys.argv[1])
    packed.write("tram.musicxml")' \
  '<container><rootfiles><rootfile full-path="tram.musicxml"/></rootfiles></container>'
run excerpt tram.mxl --bars 2-3
status_is 0
same_files out tram.passage
run annotate tram.passage --format json
is_empty err
cp out part.json
run annotate tram.musicxml --bars 2-3 --format json
turns='[.passages[].hands[].events[] | select(.bar == 3) | [.rotation, .play, .prepare, .crossing]]'
is "$(jq -c "$turns" part.json)" "$(jq -c "$turns" out)"

# Nothing there: which bars there are.
run excerpt duet.passage --bars 40-50
status_is 2
is_empty out
is "$(cat err)" 'fingerturn: duet.passage: nothing is played in bars 40 to 50; passage 1 has bars 1 to 3; passage 2 has bar 1'
run excerpt duet.passage --bars 9 --hand left --passage 1
status_is 2
is "$(cat err)" 'fingerturn: duet.passage: nothing is played by the left hand in bar 9; there are bars 1 to 3'
run excerpt - --bars 2 <<<'C4:1 | r | D:2'
status_is 2
is "$(cat err)" 'fingerturn: standard input: nothing is played in bar 2; there are bars 1 to 3'
printf 'C4:1 | D:2 |\nbar: 9\nC:1' >gap.passage
run excerpt gap.passage --bars 5
has err 'there are bars 1 to 2, bar 9'
run excerpt duet.passage --bars 1 --hand left --passage 2
status_is 2
has err 'nothing is played by the left hand in bar 1; there are no bars'
run excerpt duet.passage --bars 1 --passage 3
status_is 2
has err 'there is no passage 3, the last is 2'
holds 'no half file is left' test "$(find . -name '*.passage.*' | wc -l)" -eq 0

# What cannot be read, and wrong usage.
run excerpt - --bars 1 <<<'C4:9'
status_is 3
is_empty out
has err 'expected a finger from 1 to 5'
run excerpt missing.passage --bars 1
status_is 3
has err 'No such file'
printf '<score-partwise><part' | run excerpt - --bars 1
status_is 3
for words in 'duet.passage' 'duet.passage --bars x' 'duet.passage two.passage --bars 1' '--bars 1' \
  'duet.passage --bars 1 --format json'; do
  # shellcheck disable=SC2086 # several words
  run excerpt $words
  status_is 2
  is_empty out
  holds "says what is wrong: $words" test -s err
done
