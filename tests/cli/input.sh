#!/usr/bin/env bash
# Where passages come from, and what is said where they cannot be read.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

echo "$scale" >scale.passage
run annotate scale.passage
status_is 0
tail -n +2 out >expected  # all but the name of the source

run annotate - <scale.passage
status_is 0
is "$(head -n 1 out)" 'standard input'
same_files <(tail -n +2 out) expected

# A file that is called - is reached by its path.
cp scale.passage ./-
run annotate ./-
is "$(head -n 1 out)" '-'
same_files <(tail -n +2 out) expected

# Other ways in which the same text is saved.
same_passage() {
  run annotate -
  status_is 0
  is_empty err
  same_files <(tail -n +2 out) expected
}
printf '%s' "$scale" | same_passage
printf '%s\r\n' "$scale" | same_passage
printf '%s\r' "$scale" | same_passage
printf '\xEF\xBB\xBF%s\n' "$scale" | same_passage
printf '\n\n# a comment\n%s\n\n' "$scale" | same_passage

# Not text that can be read.
refused() {
  run annotate "$1"
  status_is 3
  is_empty out
  is "$(head -n 1 err)" "$2"
}
refused missing.passage 'fingerturn: missing.passage: No such file or directory'
mkdir folder
refused folder 'fingerturn: folder: Is a directory; fingerturn check and find go through folders'
refused scale.passage/x 'fingerturn: scale.passage/x: Not a directory'
printf '\xFF\xFEC\x004\x00' >utf16.passage
refused utf16.passage 'utf16.passage:1:1: error: expected UTF-8, found UTF-16 [not-utf8]'
printf '<?xml version="1.0"?>\n<score/>\n' >score.xml
refused score.xml 'score.xml:2:1: error: expected a MusicXML score, score-partwise or score-timewise, found "score" [musicxml]'
printf 'C4:1 <D:2' >score.passage
refused score.passage 'score.passage:1:6: error: expected a note from A to G, found "<D:2" [note]'
head -c 17000000 /dev/zero | tr '\0' '|' >large.passage
run annotate large.passage
status_is 3
has err '[too-large]'

# Of input without end no more is read than shows that it is too large.
timeout 60 "$FINGERTURN" annotate - < <(yes '|') >out 2>err
status=$?
status_is 3
has err '[too-large]'

# A file that may not be read.
echo "$scale" >secret.passage
chmod 000 secret.passage
if can_be_nobody; then
  run_as_nobody annotate secret.passage
  status_is 3
  is_empty out
  is "$(cat err)" 'fingerturn: secret.passage: Permission denied'
else
  echo "SKIPPED: root may read every file, and nobody else can be here: unreadable file"
fi

# An empty file is read, and says that there is nothing in it.
: >empty.passage
run annotate empty.passage
status_is 0
is "$(head -n 1 err)" \
  'empty.passage:1:1: warning: expected a passage, found none in this file [no-notes]'
run annotate --format json empty.passage
is "$(jq -c .passages out)" '[]'
warning='empty.passage:1:1: warning: expected a passage, found none in this file [no-notes]'
for words in 'annotate' 'finger' 'check' 'annotate --format passage' 'annotate --format markdown' \
  'finger --alternatives 3'; do
  # shellcheck disable=SC2086 # a command and options
  run $words empty.passage
  status_is 0
  is "$(cat err)" "$warning"
done
for words in 'annotate --passage 1' 'finger --passage 1' 'excerpt --bars 1' \
  'excerpt --bars 1 --hand left' 'annotate --bars 1' 'annotate --hand left' 'finger --bars 1'; do
  # shellcheck disable=SC2086 # a command and options
  run $words empty.passage
  status_is 2
  is_empty out
  is "$(cat err)" "$warning
fingerturn: empty.passage: there is no passage in it"
done
for words in 'compare' 'compare --suggest' 'compare one.passage'; do
  echo "$scale" >one.passage
  # shellcheck disable=SC2086 # a command and options
  run $words empty.passage
  status_is 2
  is_empty out
  is "$(cat err)" "$warning
fingerturn: empty.passage: there is no passage in it to compare"
done

# Many files: in the order in which they were given, a bad one does not stop the others.
for name in one two three; do printf 'passage: %s\n%s\n' "$name" "$scale" >"$name.passage"; done
echo 'C4:9' >bad.passage
run annotate two.passage bad.passage missing.passage one.passage three.passage
status_is 3
is "$(grep --line-regexp --extended-regexp 'one|two|three' out | tr '\n' ' ')" 'two one three '
has err 'bad.passage:1:4: error: '
has err 'fingerturn: missing.passage: No such file or directory'
run annotate --format jsonl two.passage bad.passage one.passage
status_is 3
is "$(jq -r '.passages[].title' out | tr '\n' ' ')" 'two one '
is "$(jq -r '.source' out | tr '\n' ' ')" 'two.passage one.passage '

# Between the texts of two files stands one empty line.
run annotate --format passage one.passage two.passage
is "$(cat out)" "$("$FINGERTURN" annotate --format passage one.passage)

$("$FINGERTURN" annotate --format passage two.passage)"

# A reader that goes away early gets no complaints.
yes "$scale |" | head -n 20000 >long.passage
"$FINGERTURN" annotate long.passage 2>err | head -n 1 >out
is "$(cat out)" 'long'
is_empty err
