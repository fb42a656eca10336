#!/usr/bin/env bash
# Many files at once: which are checked, in what order, what is said of them, and the exit status.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

mkdir -p book/later book/.hidden
echo "$scale" >book/b.passage
echo 'C4:1 D E:3' >book/a.passage
echo 'C4:1+E:1 D:2' >book/later/c.passage
echo 'C4:9' >book/later/notes.txt
echo 'C4:9' >book/.hidden/d.passage
echo 'C4:9' >book/.d.passage

checked() { jq -r 'select(.source) | .source' out | tr '\n' ' '; }

# Folders: known files below them, by name; all else is passed over.
run check book --format jsonl
status_is 0
is_empty err
is "$(checked)" 'book/a.passage book/b.passage book/later/c.passage '
is "$(tail -n 1 out | jq -c '[.source, .read, .failed, .events, .fingered, .watch]')" \
  '[null,3,0,13,12,{"info":1,"caution":1,"strain":0}]'

# Paths keep the order in which they were given.
run check book/later book/b.passage book --format jsonl
is "$(checked)" 'book/later/c.passage book/b.passage book/a.passage book/b.passage book/later/c.passage '

# A file that is named is read whatever its ending.
run check book/later/notes.txt --format jsonl
status_is 3
has err 'book/later/notes.txt:1:4: error: '
is "$(head -n 1 out | jq -r .error)" \
  'line 1, column 4: expected a finger from 1 to 5, found "9" [finger-range]'

# The text: a line for each finding, then the counts.
run check book
status_is 0
is "$(sed -n '1,/^3 files/p' out)" \
  'book/a.passage:1:6: bar 1, right hand: info: The finger is missing. [missing-finger]
book/later/c.passage:1:1: bar 1, right hand: caution: One finger, the thumb, stands on two notes struck together, C4 and E4. [one-finger-twice]

book/           events fingers prep single double  ? cross info caution
a.passage            3     67%    1      0      0  2     0    1       0
b.passage            8    100%    1      3      4  0     1    0       0
later/c.passage      2    100%    1      1      0  0     0    0       1
3 files             13     92%    3      4      4  2     1    1       1'
has out 'legend'
has out 'This describes a way of moving at the piano and is no medical advice.'
run check book/b.passage
is "$(head -n 1 out)" 'book/     events fingers prep single double cross'

# MusicXML: findings by bar, hand and beat.
cat >etude.musicxml <<'END'
<?xml version="1.0"?>
<score-partwise><part-list><score-part id="P"><part-name>Piano</part-name></score-part></part-list>
<part id="P"><measure number="12">
<attributes><divisions>2</divisions><time><beats>4</beats><beat-type>4</beat-type></time></attributes>
<note><pitch><step>C</step><octave>5</octave></pitch><duration>3</duration>
<notations><technical><fingering>1</fingering></technical></notations></note>
<note><pitch><step>D</step><octave>5</octave></pitch><duration>5</duration>
<notations><technical><fingering>8</fingering></technical></notations></note>
</measure></part></score-partwise>
END
run check etude.musicxml --fail-on caution
status_is 1
is_empty err
is "$(head -n 2 out)" \
  'etude.musicxml: bar 12, right hand, beat 2.5: info: The finger is missing. [missing-finger]
etude.musicxml: bar 12, right hand, beat 2.5: caution: Expected a finger from 1 to 5, found "8". [finger-range]'
run check etude.musicxml --hand left --format jsonl
is "$(head -n 1 out | jq -c .findings[0].hand)" '"left"'

# One hand alone.
printf 'RH: C5:1 D\nLH: C3:5 D\n' >duet.passage
run check duet.passage --hand left --format jsonl
is "$(head -n 1 out | jq -c '[.events, (.findings | map(.hand))]')" '[2,["left"]]'
run check duet.passage --hand both --format jsonl
is "$(head -n 1 out | jq -c '[.events, (.findings | map(.hand))]')" '[4,["right","left"]]'

# A hand that plays nothing in one file may do so in another; in none it was asked for by mistake.
echo 'RH: C5:1 D:2' >solo.passage
run check solo.passage duet.passage --hand left
status_is 0
is_empty err
run check solo.passage --hand left
status_is 2
is "$(cat err)" 'fingerturn: nothing is played by the left hand in what was checked'

# What the reader warns of goes to standard error.
run check - <<<'C4:1~'
status_is 0
has err 'standard input:1:1: warning: '
lacks out 'tie-to-nothing'

# --fail-on: findings of this level or a graver one.
for level in info caution strain never; do
  for file in a b; do
    run check "book/$file.passage" --fail-on "$level"
    status_is "$([[ $file$level == ainfo ]] && echo 1 || echo 0)"
    holds "the findings are the same" test "$(grep --count 'missing-finger' out)" -eq "$([[ $file == a ]] && echo 1 || echo 0)"
  done
done
for level in info:1 caution:1 strain:0 never:0; do
  run check book --fail-on "${level%:*}"
  status_is "${level#*:}"
done

# --show: findings of this level and graver ones; counts and status are of all.
run check book
cp out all
run check book --show info
same_files out all
run check book --show caution --fail-on info
status_is 1
is "$(cat out)" "$(grep --invert-match ' info: ' all)"
run check book --show strain --fail-on caution
status_is 1
is "$(cat out)" "$(grep --invert-match --extended-regexp ' (info|caution): ' all | tail -n +2)"
run check book --format jsonl
jq -c 'if .findings then .findings |= map(select(.level != "info")) else . end' out >expected
run check book --format jsonl --show caution
status_is 0
same_files out expected
is "$(tail -n 1 out | jq -c .watch)" '{"info":1,"caution":1,"strain":0}'
run check etude.musicxml --show caution
is "$(head -n 2 out | tail -n +2)" ''
has out '"8". [finger-range]'

# --columns: findings are continued and the counts keep to the width, in a file as well.
for columns in 32 44 60 100; do
  run check book --columns "$columns"
  status_is 0
  holds "keeps to $columns columns" test "$(widest out)" -le "$columns"
  cp out expected
  run check book --columns "$columns" -o report
  same_files report expected
done
run check book --columns 44
is "$(sed -n '1,/^legend/p' out)" \
  'book/a.passage:1:6: bar 1, right hand:
  info: The finger is missing.
  [missing-finger]
book/later/c.passage:1:1: bar 1, right
  hand: caution: One finger, the thumb,
  stands on two notes struck together, C4
  and E4. [one-finger-twice]

book/           events fingers prep single
a.passage            3     67%    1      0
b.passage            8    100%    1      3
later/c.passage      2    100%    1      1
3 files             13     92%    3      4

book/           double  ? cross info caution
a.passage            0  2     0    1       0
b.passage            4  0     1    0       0
later/c.passage      0  0     0    0       1
3 files              4  2     1    1       1

legend'
run check book --columns 44 --format jsonl
cp out expected
run check book --format jsonl
same_files out expected

# A broken file in the middle is passed over, and its status comes before that of findings.
run check book/a.passage book/later/notes.txt missing.passage book/b.passage --fail-on info
status_is 3
has err 'book/later/notes.txt:1:4: error: '
has err 'fingerturn: missing.passage: No such file or directory'
has out 'book/a.passage:1:6: bar 1, right hand: info: '
has out 'book/later/notes.txt could not be read'
has out 'missing.passage      could not be read'
has out '2 files'
run check book/a.passage book/later/notes.txt missing.passage book/b.passage --format jsonl
status_is 3
is "$(checked)" 'book/a.passage book/later/notes.txt missing.passage book/b.passage '
is "$(jq -c '.error // empty' out | tail -n 1)" '"No such file or directory"'
is "$(tail -n 1 out | jq -c '[.read, .failed, .events]')" '[2,2,11]'
run check missing.passage
status_is 3
is_empty out
is "$(cat err)" 'fingerturn: missing.passage: No such file or directory'

# A folder without any known file is told and is no failure.
mkdir -p empty/deeper
touch empty/deeper/readme.txt
run check empty
status_is 0
is_empty out
is "$(cat err)" \
  'fingerturn: empty: there is no file here that ends in .passage, .musicxml, .xml, .mxl'
run check empty --format jsonl
is "$(jq -c '[.source, .read, .failed]' out)" '[null,0,0]'

# Links: to a file it is one of the folder's; a loop of folders is harmless.
mkdir links
ln -s ../links links/loop
ln -s ../book links/book
ln -s ../book/b.passage links/b.passage
ln -s nowhere links/broken.passage
run check links --format jsonl
status_is 0
is "$(checked)" 'links/b.passage '
run check links/book --format jsonl
is "$(checked)" 'links/book/a.passage links/book/b.passage links/book/later/c.passage '

# Endings in capitals, names with blanks and without UTF-8.
mkdir names
cp book/b.passage 'names/Étude No. 1.PASSAGE'
cp book/a.passage $'names/\xFF\x1B.passage'
run check names
status_is 0
has out 'Étude No. 1.PASSAGE'
lacks out $'\x1B'
run check names --format jsonl
is "$(tail -n 1 out | jq .read)" 2

# What may not be read.
mkdir -p closed/folder
echo "$scale" >closed/a.passage
echo "$scale" >closed/secret.passage
chmod 000 closed/folder closed/secret.passage
if can_be_nobody; then
  run_as_nobody check closed --format jsonl
  status_is 3
  has err 'fingerturn: closed/folder: Permission denied'
  has err 'fingerturn: closed/secret.passage: Permission denied'
  is "$(tail -n 1 out | jq -c '[.read, .failed]')" '[1,2]'
else
  echo "SKIPPED: root may read everything, and nobody else can be here: unreadable folder"
fi
chmod 755 closed/folder closed/secret.passage

# Lists of files, also from standard input, with empty lines and the line ends of Windows.
printf 'book/b.passage\r\n\nbook/later\nbook/a.passage' >list
run check --files-from list --format jsonl
status_is 0
is "$(checked)" 'book/b.passage book/later/c.passage book/a.passage '
cp out expected
run check --files-from - --format jsonl <list
same_files out expected
run check book/a.passage --files-from list --format jsonl
is "$(checked)" 'book/a.passage book/b.passage book/later/c.passage book/a.passage '
run check --files-from missing
status_is 3
is_empty out
is "$(cat err)" 'fingerturn: missing: No such file or directory'
run check --files-from book
status_is 3
is "$(cat err)" 'fingerturn: book: Is a directory'
run check --files-from - </dev/null
status_is 0
is_empty out

# The same bytes whatever the number of jobs, broken files and all.
mkdir many
for number in $(seq -w 1 60); do
  case $((10#$number % 4)) in
    0) for _ in $(seq "$((10#$number * 20))"); do echo "$scale | C4 D+E:2 F:1~"; done ;;
    1) echo "$scale" ;;
    2) echo 'C4:7' ;;
    3) echo 'C4:1+E:1 G' ;;
  esac >"many/$number.passage"
done
for format in text jsonl; do
  run check many --jobs 1 --format "$format" --fail-on info
  status_is 3
  cp out expected
  cp err expected_err
  for jobs in 2 4 7 1000; do
    run check many --jobs "$jobs" --format "$format" --fail-on info
    status_is 3
    same_files out expected
    same_files err expected_err
  done
  run check many --format "$format"
  same_files out expected
done
is "$(jq -r 'select(.source) | .source' expected | sort | cmp - <(printf '%s\n' many/*) && wc -l <expected)" 61

# Into a file: whole, and never over an input.
for format in text jsonl; do
  run check many book --format "$format"
  cp out expected
  run check many book --format "$format" -o report
  status_is 3
  is_empty out
  same_files report expected
done
run check book -o book/b.passage
status_is 2
is "$(cat err)" 'fingerturn: book/b.passage: this is an input; choose another name for the output'
is "$(cat book/b.passage)" "$scale"
echo old >report
run check book/later/notes.txt -o report
status_is 3
is "$(cat report)" old

# A report that is longer than what is kept in memory.
for _ in $(seq 10000); do echo book/a.passage; done >list
run check --files-from list --format jsonl -o report
status_is 0
holds "the report is long" test "$(stat --format %s report)" -gt 3000000
run check --files-from list --format jsonl
same_files out report
is "$(find . -maxdepth 1 -name 'report.*')" ''

# Wrong usage.
wrong_usage() {
  run "$@"
  status_is 2
  is_empty out
  holds "says what is wrong: $*" test -s err
}
wrong_usage check
# Only some rules, or all but some; what is not looked for is not counted either.
run check book --only missing-finger,twist --format jsonl
is "$(jq -c '.findings // empty | .[].code' out)" '"missing-finger"'
run check book --leave-out missing-finger --leave-out one-finger-twice --fail-on info
status_is 0
lacks out '[missing-finger]'
run check --only missing-finger,twist book --format jsonl
is "$(jq -c '.findings // empty | .[].code' out)" '"missing-finger"'
wrong_usage check book --only twits
has err '--only: expected a rule, found "twits"'

wrong_usage check --nonsense book
wrong_usage check book --format json
wrong_usage check book --fail-on danger
wrong_usage check book --hand middle
wrong_usage check book --show never
for columns in 31 1001 x; do wrong_usage check book --columns "$columns"; done
for jobs in 0 -1 x 1.5 1001 ''; do wrong_usage check book --jobs "$jobs"; done
wrong_usage check - - <<<'C4:1'
wrong_usage check - --files-from - <<<'C4:1'
is "$(cat err)" 'fingerturn: standard input can be read once only'

# Long lines are continued on a terminal.
if has_terminals; then
  mkdir good
  cp book/*.passage book/later/c.passage good
  on_terminal 60 'fingerturn check good'
  is "$(sed -n 3,5p out)" \
    'good/c.passage:1:1: bar 1, right hand: caution: One
  finger, the thumb, stands on two notes struck together, C4
  and E4. [one-finger-twice]'
  on_terminal 60 'fingerturn check good --columns 200'
  has out 'stands on two notes struck together, C4 and E4. [one-finger-twice]'
  on_terminal 60 'fingerturn check good --format jsonl'
  "$FINGERTURN" check good --format jsonl | same_files - out
fi
