#!/usr/bin/env bash
# Looking for places in many files: what is printed of them, in what order, and the exit status.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

mkdir -p book/later
printf 'meter: 4/4\n1/8 %s | 1/2 C5:5 B4:4 |\n' "$scale" >book/b.passage
printf 'passage: The pier\nLH: 1/4 F3:5 C4:1 A3:3 C:1 | F3:5 C4:1 A3:3 C:1 |\npassage: The quay\nRH: C5:1 D:2\n' >book/a.passage
echo 'C4:1 D:1' >book/later/c.passage
cp "$FINGERTURN_SOURCE_DIR/demo/last-tram.musicxml" book/later/tram.musicxml

# A line for each place, then what it all comes to.
run find 'double x2+' book
status_is 0
is_empty err
is "$(cat out)" \
  'book/b.passage:2:26: bar 1, right hand, beat 3.5: A4:3 double right, B4:4 double right, C5:5 double right, C5:5 double right
book/later/tram.musicxml:39:1: bar 2, right hand, beat 3: D5:3 double right, F5:5 double right

2 places in 2 of 4 files, 6 of 65 events
caution  No medical advice: stop at pain, learn with a teacher, see clinicians.'

# The passage where a file has several; what passes; a place of many events is cut short.
run find 'LH: 5 1' book/a.passage
is "$(head -n 1 out)" \
  'book/a.passage:2:9: passage 1 (The pier), bar 1, left hand: F3:5 preparatory left, C4:1 single right'
run find 'thumb-under' book/b.passage
is "$(head -n 1 out)" 'book/b.passage:2:18: bar 1, right hand, beat 2.5: F4:1 single left (thumb under)'
python3 -c 'print("C4:1 D:2 " * 20)' >long.passage
run find '. x40' long.passage
has out ' and 28 more'
is "$(head -n 1 out | grep -o '[CD]4:' | wc --lines)" 12

# Bars around a place, in the notation; nothing is lost where lines are narrow.
run find 'down-second' book/b.passage --around 1
is "$(sed -n 2,3p out)" '  bar 1: 1/8 C4:1 D4:2 E4:3 F4:1 G4:2 A4:3 B4:4 C5:5 |
  bar 2: 1/2 C5:5 B4:4'
run find 'down-second' book/b.passage --around 0
is "$(sed -n 2p out)" '  bar 2: 1/2 C5:5 B4:4'
run find 'double x2+' book --columns 40
holds "lines are 40 wide" test "$(sed '/^caution/,$d' out | widest /dev/stdin)" -le 40

# Every sign is written there, since no key stands above; bars without end are cut.
printf 'key: D major\n1/4 F4:3 E:2 Fn:3 D:1 |\n' >keyed.passage
run find '3 2' keyed.passage --around 0
is "$(sed -n 2p out)" '  bar 1: 1/4 F#4:3 E4:2 Fn4:3 D4:1'
run find '3 2' keyed.passage --around 0 --columns 80
is "$(sed -n 3p out)" '  bar 1: 1/4 F#4:3 E4:2 Fn4:3 D4:1'
python3 -c 'print("C4:1 " * 3000)' >endless.passage
run find '1 x2' endless.passage --around 0
holds "not all of it again and again" test "$(wc --bytes <out)" -lt 4000000

# How many there are, and where most.
run find '5 1' book --count
is "$(head -n 3 out)" 'places  file
     2  book/a.passage
     2  book/later/tram.musicxml'
run find '5 1' book --rank
is "$(head -n 3 out)" '  share  places  file
 40.0 %       2  book/a.passage
  9.3 %       2  book/later/tram.musicxml'
run find '5' book --rank
is "$(awk '/%/ { print $1 }' out)" "$(awk '/%/ { print $1 }' out | sort --reverse --numeric-sort)"

# Nothing found, and files that cannot be read.
run find '5 1 5 1 5' book/b.passage
status_is 1
is_empty out
is "$(cat err)" 'fingerturn: found nowhere in 1 file'
echo 'C4:9' >book/bad.passage
run find 'double x3+' book/bad.passage missing.passage book/b.passage
status_is 3
has err 'book/bad.passage:1:4: error: '
has err 'fingerturn: missing.passage: No such file or directory'
has out 'book/b.passage:2:26'
run find 'double x3+' book/bad.passage book/b.passage --format jsonl
status_is 3
is "$(jq -c '[.source, .error, .bar, .read]' out)" \
  '["book/bad.passage","line 1, column 4: expected a finger from 1 to 5, found \"9\" [finger-range]",null,null]
["book/b.passage",null,1,null]
[null,null,null,1]'

# Where no file could be read, what was there stays.
echo old >report
run find 'double x3+' book/bad.passage missing.passage -o report
status_is 3
is "$(cat report)" old
rm report
rm book/bad.passage

# An editor that opens a place stands at the note.
run find . book "$FINGERTURN_SOURCE_DIR/demo" --format jsonl
status_is 0
jq --raw-output 'select(.line) | "\(.source)\t\(.line)\t\(.column)\t\(.events[0].notes[0].pitch)"' out >places
holds "there are places" test "$(wc --lines <places)" -gt 100
while IFS=$'\t' read -r file line column pitch; do
  at="$(sed -n "${line}p" "$file" | cut -c"$column"-)"
  [[ "$at" == "<note"* || "$at" == "${pitch:0:1}"* || "$at" == "^${pitch:0:1}"* ]] || echo "$file:$line:$column: $at"
done <places >elsewhere
is_empty elsewhere

# A figure: this bar in the whole library, from another run too.
printf 'LH: 1/8 D3:5 A3:1 F:3 A3:1\n' >figure.passage
run find --like figure.passage book
is "$(grep -c '^book/a.passage:2:' out)" 2
run find --like figure.passage --same-keys book
status_is 1
printf 'LH: 1/8 D3:5 A3:1 F:2 A3:1\n' >figure.passage
run find --like figure.passage book/a.passage
status_is 1
run find book --like figure.passage --any-fingers
is "$(grep -c '^book/a.passage:2:' out)" 2
"$FINGERTURN" excerpt book/b.passage --bars 1 2>/dev/null | "$FINGERTURN" find --like - book >out
is "$(grep -c '^book/b.passage:2:5: ' out)" 1

# Missing fingers filled in first.
echo '1/8 C4 D E F G A B C5' >bare.passage
run find 'thumb-under' bare.passage
status_is 1
run find 'thumb-under' bare.passage --suggest
status_is 0
has out 'F4:1?'

# However many work at it, the result is the same; a hand; a list; a file.
"$FINGERTURN" find . book "$FINGERTURN_SOURCE_DIR/demo" --jobs 1 >one
"$FINGERTURN" find . book "$FINGERTURN_SOURCE_DIR/demo" --jobs 7 >seven
same_files one seven
run find . book/later/tram.musicxml --hand left
lacks out 'right hand'
printf 'book/b.passage\n' | "$FINGERTURN" find 'thumb-under' --files-from - -o found.txt
has found.txt 'book/b.passage:2:18'

# What cannot be looked for.
refused() { # WORDS... MESSAGE
  run find "${@:1:$#-1}"
  status_is 2
  is_empty out
  has err "${*: -1}"
}
refused 'say what to look for'
refused double 'name files or folders'
refused 'dubble' book 'fingerturn: pattern: column 1: expected a word of the reports, fingers, an interval or a rule, found "dubble"; did you mean "double"?'
refused 'LH: 5' book --hand right 'fingerturn: pattern: the pattern is of one hand, and --hand of the other'
refused double book --count --format jsonl '--count and --rank are for reading'
refused double book --same-keys '--any-fingers and --same-keys are for --like'
refused --like book/a.passage book 'fingerturn: book/a.passage: a figure is of one hand in one passage; choose a hand with --hand'
refused double book -o book/b.passage 'book/b.passage'
run find --like missing.passage book
status_is 3
