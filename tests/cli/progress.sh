#!/usr/bin/env bash
# The line of progress: on a terminal only, after half a second only, and never in what is written.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

screen() { "${PYTHON:-python3}" "$FINGERTURN_SOURCE_DIR/tests/cli/screen.py" <bytes.raw; }

# A passage without fingers that takes a second to finger here.
awk 'BEGIN {
  for (bar = 0; bar < 4000; bar++) {
    for (note = 0; note < 8; note++) printf "%c4 ", 65 + (bar * bar + 3 * note + bar * note) % 7
    print "|"
  }
}' >long.passage
takes_a_second() {
  local begin=$EPOCHREALTIME
  run finger long.passage --format passage
  [[ $((${EPOCHREALTIME/./} - ${begin/./})) -ge 1000000 ]]
}
while ! takes_a_second; do
  cat long.passage long.passage >longer && mv longer long.passage
done
status_is 0
is_empty err
has_terminals || exit 0
cp out expected

# In a file: the line is shown, and nothing is left of it.
on_terminal 60 'fingerturn finger long.passage --format passage >report'
has out 'long.passage'
is "$(screen)" ''
same_files report expected

# On the terminal: what is written stands there whole.
on_terminal 60 'fingerturn finger long.passage --format passage'
has out $'\x1b[K'
screen >seen
same_files seen expected

# Several files, a message between them.
echo "$scale" >short.passage
echo 'C4:9' >wrong.passage
run annotate --suggest --format passage long.passage wrong.passage short.passage
status_is 3
cp out expected
on_terminal 60 'fingerturn annotate --suggest --format passage long.passage wrong.passage short.passage >report'
same_files report expected
has out '1 of 3 files: long.passage'
has out '3 of 3 files: short.passage'
is "$(screen)" "$(cat err)"

# Each command that can take so long.
for command in practice 'compare --suggest' 'check --suggest'; do
  on_terminal 60 "fingerturn $command long.passage >report"
  holds "$command shows progress" grep --quiet 'long\.passage' out
  is "$(screen)" ''
done

# In a folder, page by page.
on_terminal 60 'fingerturn annotate --suggest --format html long.passage short.passage -o pages/'
has out '1 of 2 files: long.passage'
has out '2 of 2 files: pages/02-short.html'
is "$(screen)" ''

# No wider than the terminal, and with the time.
cp long.passage a_name_that_is_longer_than_the_line.passage
on_terminal 32 'fingerturn compare --suggest a_name_that_is_longer_than_the_line.passage >report'
has out $'\x1b[K'
is "$(screen)" ''
holds "says how long it has taken" grep --quiet 'a_name_that_is_long.*, [1-9][0-9]* s' out
is "$(sed 's/\x1b\[K/\n/g' out | awk 'length($0) > 31' | head -c 200)" ''

# None of what is done soon, and none where it would disturb: no terminal, a dumb one, a program
# behind a pipe that may write to it, lines for programs.
on_terminal 60 'fingerturn finger short.passage >report'
is "$(cat bytes.raw)" ''
TERM=dumb on_terminal 60 'fingerturn finger long.passage >report'
is "$(cat bytes.raw)" ''
on_terminal 60 'fingerturn finger long.passage | cat >report'
is "$(cat bytes.raw)" ''
on_terminal 60 'fingerturn check --suggest long.passage --format jsonl'
lacks out $'\x1b'
on_terminal 60 'fingerturn check --suggest long.passage --format jsonl -o report'
has out 'long.passage'

# check says how many are done; a file may take its time.
mkfifo slow.passage
{ sleep 1; echo "$scale"; } >slow.passage &
on_terminal 60 'fingerturn check short.passage slow.passage >report'
wait
has out '1 of 2 files: short.passage'
is "$(screen)" ''
has report '2 files'
