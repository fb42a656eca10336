#!/usr/bin/env bash
# Scores in MusicXML on the command line: as a file, on standard input, packed, in UTF-16; parts
# and hands that are asked for.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

score="$FINGERTURN_SOURCE_DIR/demo/last-tram.musicxml"

# The analysis without the name of the source.
analysis() { jq --compact-output 'del(.source)' out; }

run annotate --format json "$score"
status_is 0
is_empty err
expected="$(analysis)"
is "$(jq -r '.passages[0].title' out)" 'Lantern Street, the last tram'
is "$(jq -c '[.passages[0].hands[].events | length]' out)" '[18,25]'

# The same on standard input, under a name that says nothing, packed and in UTF-16.
run annotate --format json - <"$score"
is "$(analysis)" "$expected"
cp "$score" score.txt
run annotate --format json score.txt
is "$(analysis)" "$expected"
"$PYTHON" - "$score" <<'END'
import sys, zipfile
container = '<container><rootfiles><rootfile full-path="in/score.xml"/></rootfiles></container>'
with zipfile.ZipFile("score.mxl", "w", zipfile.ZIP_DEFLATED) as packed:
    packed.writestr("META-INF/container.xml", container)
    packed.write(sys.argv[1], "in/score.xml")
text = open(sys.argv[1], encoding="utf-8").read().replace('encoding="UTF-8"', 'encoding="UTF-16"')
open("utf16.xml", "wb").write(text.encode("utf-16"))
END
for form in score.mxl utf16.xml; do
  run annotate --format json "$form"
  status_is 0
  is_empty err
  is "$(analysis)" "$expected"
done

# A message about a packed score shows the text that was packed.
sed '18s,<fingering>3</fingering>,<fingering>x</fingering>,' "$score" >wrong.xml
zip_with() { "$PYTHON" -c 'import sys, zipfile
with zipfile.ZipFile(sys.argv[1], "w") as packed:
    for name in sys.argv[2:]: packed.write(name)' "$@"; }
mkdir META-INF
echo '<container><rootfiles><rootfile full-path="wrong.xml"/></rootfiles></container>' \
  >META-INF/container.xml
zip_with wrong.mxl META-INF/container.xml wrong.xml
run annotate wrong.mxl
status_is 0
has err 'wrong.mxl:18:150: warning: expected a finger number, found "x", in bar 1, right hand, beat 1 [fingering]'
has err '<fingering>x</fingering>'

# One hand, a part by its number.
run annotate --hand left "$score"
status_is 0
has out 'left hand'
lacks out 'right     bar'
run annotate --part 1 "$score"
status_is 0
run annotate --part 2 "$score"
status_is 3
has err 'expected the number of a part with music, found none of the number 2 [musicxml-part]'
run annotate --part 0 "$score"
status_is 2

# A part of one staff is the hand that is asked for.
sed 's,<staves>2</staves>,,; s,<staff>[12]</staff>,,' "$score" >one.xml
run annotate --format json one.xml
is "$(jq -c '[.passages[0].hands[].hand]' out)" '["right"]'
run annotate --format json --hand left one.xml
is "$(jq -c '[.passages[0].hands[].hand]' out)" '["left"]'

# A broken score does not stop the others.
printf '<score-partwise>' >cut.musicxml
run annotate --format jsonl cut.musicxml "$score"
status_is 3
has err 'cut.musicxml:1:1'
is "$(wc -l <out)" 1
