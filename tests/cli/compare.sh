#!/usr/bin/env bash
# Fingerings of the same notes side by side.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

schema="$FINGERTURN_SOURCE_DIR/docs/comparison.schema.json"
mkdir valid
# valid NAME: what was printed last is a document that fits the schema.
valid() { cp out "valid/$1.json"; }

cat >turn.passage <<'END'
passage: as printed
meter: 4/4
1/4 G4:1 A:2 B:3 C5:4 | D:5 C:4 B:3 A:2 |
passage: as brought to the lesson
meter: 4/4
1/4 G4:1 A:2 B:1 C5:2 | D:3 C:2 B:1 A:2 |
END
sed '/^passage/d; 4,6d' turn.passage >printed.passage
sed '/^passage/d; 1,3d' turn.passage >brought.passage

# The passages of one file.
run compare turn.passage
status_is 0
is_empty err
is "$(sed '/^legend/,$d' out)" 'turn.passage
right hand · 4/4

A  as printed
B  as brought to the lesson

right hand         A    B
difficulty       1.8  3.3
preparatory        1    1
single             2    5
double             5    2
swings            14   11
crossings          0    2
full swings to   300  300

agreement  events fingers turns
right hand      8     38%   63%
bar 1           4     50%   50%
bar 2           4     25%   75%

where they differ, right hand
bar  beat  note  A           B
1          2 the same
     3     B4    3 double →  1 single ← under
     4     C5    4 double →  2 single →
2    1     D5    5 double →  3 double →
     2     C5    4 single ←  2 single ←
     3     B4    3 double ←  1 double ←
     4     A4    2 double ←  2 single → over'
has out 'This describes a way of moving'
has out 'under = the thumb passes under'
cp out turn.txt

# As difficult as each is by itself.
run finger turn.passage --format json
cp out each.json
run compare turn.passage --format json
is "$(jq -c '[.passages[0].hands[0].results[].difficulty]' out)" "$(jq -c '[.passages[].hands[0].difficulty]' each.json)"
is "$(jq -c '[.passages[0].hands[0].results[].totals]' out)" "$(jq -c '[.passages[].hands[0].totals]' each.json)"

# Two files: the same, under their names.
run compare printed.passage brought.passage
status_is 0
has out 'A  printed.passage'
has out 'B  brought.passage'
is "$(sed -n '/^right hand  /,/^legend/p' out)" "$(sed -n '/^right hand  /,/^legend/p' turn.txt)"
run compare printed.passage - <brought.passage
has out 'B  standard input'
run compare printed.passage brought.passage printed.passage --format json
is "$(jq -c '[.passages[0].hands[0].differences[].played | [.[0] == .[2], .[0] == .[1]]] | unique' out)" '[[true,false]]'
valid three

# Notes to keep: the same figures and places, and no folder in a title.
mkdir folder
cp printed.passage brought.passage folder
run compare folder/printed.passage folder/brought.passage --format markdown
status_is 0
is_empty err
is "$(sed '/^## Legend/,$d' out)" '# printed

right hand · 4/4

- **A**: printed
- **B**: brought

| right hand | A | B |
|---|--:|--:|
| difficulty | 1.8 | 3.3 |
| preparatory | 1 | 1 |
| single | 2 | 5 |
| double | 5 | 2 |
| swings | 14 | 11 |
| crossings | 0 | 2 |
| full swings to | 300 | 300 |

| agreement | events | fingers | turns |
|---|--:|--:|--:|
| right hand | 8 | 38% | 63% |
| bar 1 | 4 | 50% | 50% |
| bar 2 | 4 | 25% | 75% |

## Where they differ, right hand

- Bar 1: 2 the same
- Bar 1, beat 3, **B4**: A = 3 double →; B = 1 single ← under
- Bar 1, beat 4, **C5**: A = 4 double →; B = 2 single →
- Bar 2, beat 1, **D5**: A = 5 double →; B = 3 double →
- Bar 2, beat 2, **C5**: A = 4 single ←; B = 2 single ←
- Bar 2, beat 3, **B4**: A = 3 double ←; B = 1 double ←
- Bar 2, beat 4, **A4**: A = 2 double ←; B = 2 single → over'
has out 'This describes a way of moving'
has out '- crossing: under = the thumb passes under'
run compare turn.passage --format markdown
has out '- **B**: as brought to the lesson'

# Several passages: passage by passage, or one of them.
cat turn.passage turn.passage | sed 's/^passage.*/passage: twice/' >four.passage
run compare four.passage four.passage --format json
is "$(jq -c '[.passages[] | [.title, .alike, (.fingerings | length)]]' out)" \
  '[["twice",true,2],["twice",true,2],["twice",true,2],["twice",true,2]]'
valid four
run compare four.passage four.passage --passage 2 --format json
is "$(jq -c '.passages | length' out)" 1
run compare four.passage turn.passage
status_is 2
is "$(cat err)" 'fingerturn: four.passage has 4 passages and turn.passage has 2 passages; choose one with --passage'
# One beside several: all of them.
run compare printed.passage turn.passage
status_is 0
is "$(grep '^[A-Z]  ' out)" 'A  printed.passage
B  as printed
C  as brought to the lesson'
run compare four.passage printed.passage --passage 1
status_is 0

# What alternatives there are.
run finger --alternatives 3 --format passage - <<<'C4 D E F G A B C5'
cp out ways.passage
run compare ways.passage --format json
is "$(jq -c '.passages[0].hands[0].results | [length, (map(.difficulty) | . == sort)]' out)" '[3,true]'
valid ways

# With a suggestion: what is given is kept and completed, and beside it what the model finds alone.
printf 'meter: 4/4\n1/8 C4:2 D E F:5 G A B C5' >gaps.passage
run compare gaps.passage --suggest
status_is 0
has out 'A  as given, 2 of 8 fingers; the others suggested (?)'
has out 'B  suggested, no finger given'
run compare gaps.passage --suggest --format json
fingers() { jq -c "[.passages[].hands[].differences[].played[$1].notes[].finger]" out; }
is "$(jq -c '.passages[0].hands[0].differences[0].played | map(.notes[0] | [.finger, .suggested])' out)" \
  '[[2,false],[1,true]]'
is "$(jq -c '[.passages[].hands[].results[].difficulty | type] | unique' out)" '["number"]'
is "$(jq -c '.passages[0].hands[0].results | .[0].difficulty > .[1].difficulty' out)" true
valid gaps
run finger gaps.passage --format passage
cp out full.passage
run finger - --format passage <<<'meter: 4/4
1/8 C4 D E F G A B C5'
cp out free.passage
run compare full.passage free.passage --format json
fingers 0 >both; fingers 1 >>both
run compare gaps.passage --suggest --format json
is "$(fingers 0; fingers 1)" "$(cat both)"
run compare printed.passage brought.passage --suggest --format json
is "$(jq -c '.passages[0].fingerings' out)" '["printed.passage","brought.passage","suggested, no finger given"]'
valid suggested

# Without a suggestion what is missing stays so.
run compare gaps.passage free.passage
has out 'difficulty         -'
is "$(tr -s '\n ' ' ' <out | grep -c -e '- where a finger is missing')" 1
has out '? = missing'
run compare gaps.passage free.passage --format json
is "$(jq -c '[.passages[0].hands[0].results[].difficulty | type]' out)" '["null","number"]'
valid missing

# Both hands, bars, one hand, tempo, reach.
cat >two.passage <<'END'
meter: 2/4
RH: 1/8 C5:1 D:2 E:3 F:1 | G:2 A:3 B:4 C:5 |
LH: 1/8 C3:5 D:4 E:3 F:2 | G:1 A:3 B:2 C:1 |
END
sed 's/F:1 |/F:4 |/; s/A:3 B:2/A:2 B:3/; s/LH: 1\/8 C3:5/LH: 1\/8 C3:4/' two.passage >other.passage
run compare two.passage other.passage
has out 'where they differ, right hand'
has out 'where they differ, left hand'
run compare two.passage other.passage --hand left --bars 2 --format json
is "$(jq -c '[.passages[0].hands[] | .hand, (.differences[] | [.bar, .beat])]' out)" '["left",[2,1.5],[2,2],[2,2.5]]'
is "$(jq -c '.passages[0].hands[0].events' out)" 4
valid bars
run excerpt two.passage --bars 2 --output part.passage
run compare two.passage part.passage --bars 2
status_is 0
run compare two.passage other.passage --tempo 300 --format json
is "$(jq -c '[.passages[0].hands[].results[].watch.info > 0] | any' out)" true
run compare two.passage other.passage --reach 8
has out 'reach 8 semitones'

# A score.
cp "$FINGERTURN_SOURCE_DIR/demo/last-tram.musicxml" tram.musicxml
run compare tram.musicxml --suggest --format json
status_is 0
is "$(jq -c '[.passages[].hands[].hand]' out)" '["right","left"]'
valid score
run compare tram.musicxml tram.musicxml
has out 'A and B are alike: the same fingers, and the same ones missing.'
run compare printed.passage printed.passage
has out 'A and B are alike: the same fingers throughout.'
lacks out 'where they differ'
lacks out 'turns to play'
run compare tram.musicxml tram.musicxml tram.musicxml --format json
is "$(jq -c '[.passages[0].alike, (.passages[0].hands[].differences | length)]' out)" '[true,0,0]'
valid alike

# What is repeated from bar to bar is said once.
line='G4:1 A:2 B:3 A:2 |'
{ echo 'meter: 4/4'; echo "1/4 $line $line G:1 A:2 B:3 C:5 | $line $line"; } >ostinato.passage
sed 's/B:3/B:4/g' ostinato.passage >second.passage
run compare ostinato.passage second.passage
is "$(sed -n '/^bar  beat/,/^$/p' out)" 'bar  beat  note  A           B
1          2 the same
     3     B4    3 double →  4 double →
           1 the same
2-5        as in bar 1'

# Not the same notes: the first difference.
differ() {
  echo "$1" >one.passage
  echo "$2" >other.passage
  run compare one.passage other.passage
  status_is 2
  is_empty out
  is "$(cat err)" "fingerturn: not the same notes: $3"
}
differ 'C4:1 D:2 | E:3' 'C4:1 D:2 | F:3' 'bar 2, right hand: E4 in one.passage, F4 in other.passage'
differ 'C4:1 D:2' 'C4:1 D:2 E:3' 'bar 1, right hand: nothing more in one.passage, E4 in other.passage'
differ 'C4:1' 'LH: C4:1' 'bar 1, right hand: C4 in one.passage, nothing in other.passage'
differ '1/4 C4:1 D:2' '1/8 C4:1 D:2' 'bar 1, right hand: D4 on beat 2 in one.passage, D4 on beat 1.5 in other.passage'
differ 'C4:1+E:3' 'C4:1+F:4' 'bar 1, right hand: C4+E4 in one.passage, C4+F4 in other.passage'
differ 'C4:1~ C D:2' 'C4:1 C D:2' 'bar 1, right hand: D4 in one.passage, C4 in other.passage'
differ $'meter: 2/4\nRH: 1/4 C5:1 D:2\nLH: 1/4 C3:1 D:2' $'meter: 2/4\nRH: 1/4 C5:1 D:2\nLH: 1/4 C3:1 E:2' \
  'bar 1, left hand: D3 on beat 2 in one.passage, E3 on beat 2 in other.passage'
# The same key under another name is the same note, and so it is where only one has note values.
run compare - second.passage <<<'C4:1'
status_is 2
echo '1/4 C#4:1 D:2' >one.passage
run compare one.passage - <<<'Db4:2 D:3'
status_is 0

# Nothing to compare with, nothing that can be read, wrong usage.
run compare printed.passage
status_is 2
is_empty out
is "$(cat err)" 'fingerturn: printed.passage: there is one passage in it; name another file to compare it with, or compare it with a suggestion by --suggest'
run compare printed.passage missing.passage
status_is 3
is_empty out
has err 'No such file'
run compare printed.passage - <<<'C4:9'
status_is 3
is_empty out
has err 'expected a finger from 1 to 5'
run compare printed.passage brought.passage --bars 40
status_is 2
is_empty out
is "$(cat err)" 'fingerturn: printed.passage: nothing is played in bar 40; there are bars 1 to 2
fingerturn: brought.passage: nothing is played in bar 40; there are bars 1 to 2'
run compare printed.passage --suggest --bars 40
status_is 2
is "$(cat err)" 'fingerturn: printed.passage: nothing is played in bar 40; there are bars 1 to 2'
: >empty.passage
run compare printed.passage empty.passage
status_is 2
has err 'empty.passage: there is no passage in it to compare'
run compare printed.passage brought.passage --bars 2 --format json
is "$(jq -c '.passages[0].bars' out)" '[2,2]'
valid bars
sed 's/:[1-5]//g' printed.passage >bare.passage
run compare bare.passage bare.passage
has out 'A and B are alike: the same fingers, and the same ones missing.'
run compare - - <<<'C4:1'
status_is 2
has err 'standard input can be read once only'
run compare printed.passage brought.passage --output printed.passage
status_is 2
has err 'this is an input'
for words in '' 'turn.passage --format svg' 'turn.passage --alternatives 3' 'turn.passage --passage 9'; do
  # shellcheck disable=SC2086 # several words
  run compare $words
  status_is 2
  is_empty out
  holds "says what is wrong: $words" test -s err
done

# Looks: ASCII, colour, width, a file.
run compare turn.passage --ascii
holds 'only ASCII' test -z "$(LC_ALL=C grep '[^ -~]' out)"
run compare turn.passage --color always
has out $'\e['
sed 's/\x1b\[[0-9;]*m//g' out >plain
same_files plain turn.txt
run compare turn.passage --output kept.txt
is_empty out
same_files kept.txt turn.txt
for columns in 32 40 64 80; do
  for file in turn.passage ways.passage; do
    run compare "$file" --ascii --columns "$columns"
    status_is 0
    holds "$file keeps to $columns columns" test "$(widest out)" -le "$columns"
  done
  run compare tram.musicxml --suggest --ascii --columns "$columns"
  holds "a score keeps to $columns columns" test "$(widest out)" -le "$columns"
done
sed 's/:[1-5]?*//g' free.passage >bare.passage
run finger bare.passage --alternatives 20 --format passage
cp out many.passage
holds 'there are many' test "$(grep -c '^passage' out)" -gt 5
run compare many.passage --ascii --columns 40
holds 'many fingerings keep to 40 columns' test "$(widest out)" -le 40
run compare many.passage --format json
valid many

# All of it fits the schema; spoiled it does not.
is "$(not_valid valid/*)" ''
is "$(jq '."$defs".totals' "$schema")" "$(jq '."$defs".totals' "$FINGERTURN_SOURCE_DIR/docs/analysis.schema.json")"
cat >spoilers <<'END'
del(.format)
del(.caution)
.format = "fingerturn-analysis"
.version = 2
.caution = ""
.source = "x"
.passages = {}
del(.passages[0].title)
.passages[0].title = ""
.passages[0].meter = "4"
.passages[0].fingerings = ["one"]
.passages[0].alike = null
.passages[0].extra = 1
.passages[0].hands[0].hand = "both"
.passages[0].hands[0].events = -1
del(.passages[0].hands[0].results)
.passages[0].hands[0].results = []
.passages[0].hands[0].results[0].difficulty = -1
.passages[0].hands[0].results[0].totals.swings = null
del(.passages[0].hands[0].results[0].totals.carried)
.passages[0].hands[0].results[0].watch.info = 0.5
del(.passages[0].hands[0].results[0].watch.strain)
del(.passages[0].hands[0].differences)
.passages[0].hands[0].differences[0].beat = 0.5
.passages[0].hands[0].differences[0].beat = "2"
.passages[0].hands[0].differences[0].bar = null
.passages[0].hands[0].differences[0].played = []
.passages[0].hands[0].differences[0].played[0].notes = []
.passages[0].hands[0].differences[0].played[0].notes[0].finger = 6
.passages[0].hands[0].differences[0].played[0].notes[0].pitch = "H4"
.passages[0].hands[0].differences[0].played[0].notes[0].suggested = null
.passages[0].hands[0].differences[0].played[0].rotation = "triple"
.passages[0].hands[0].differences[0].played[0].side = "left"
.passages[0].hands[0].differences[0].played[0].play = "up"
.passages[0].hands[0].differences[0].played[0].crossing = "none"
del(.passages[0].hands[0].differences[0].played[0].prepare)
END
while read -r program; do spoil valid/gaps.json "$program"; done <spoilers
none_spoiled_fits
