#!/usr/bin/env bash
# Terminals that are none, or of a size that none has, and streams that take nothing.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

cp "$FINGERTURN_SOURCE_DIR"/demo/{mixed,scale}.passage .
echo 'C4:9' >wrong.passage
commands=('annotate mixed.passage' 'finger mixed.passage' 'compare --suggest mixed.passage'
  'practice mixed.passage' 'check mixed.passage' 'find note mixed.passage' 'scale C major'
  'excerpt mixed.passage --bars 1-2' 'explain twist' 'annotate --help')

# What the environment says of a terminal changes nothing beside one.
run annotate mixed.passage
status_is 0
cp out expected
for columns in '' 0 -1 7 99999999 99999999999999999999 eighty; do
  for terminal in '' dumb nonsense $'\xff' "$(printf 'x%.0s' {1..5000})"; do
    TERM="$terminal" COLUMNS="$columns" LINES="$columns" run annotate mixed.passage
    status_is 0
    is_empty err
    same_files out expected
  done
done
(unset TERM && "$FINGERTURN" annotate mixed.passage) | cmp - expected
is "${PIPESTATUS[*]}" '0 0'

# Each at a terminal that does not know its size: 80 columns. One that is too narrow for anything is
# written as if it had 32, one that is wide has no lines that are wider.
"$FINGERTURN" annotate mixed.passage --columns 32 >narrow
if has_terminals; then
  for size in 'cols 0 rows 0' 'cols 1 rows 1' 'cols 31' 'cols 65535'; do
    for command in "${commands[@]}"; do
      on_terminal 80 "stty $size; NO_COLOR=1 fingerturn $command 2>err"
      status_is 0
      is_empty err
      lacks out $'\x1b'
      holds "$command says something" test -s out
    done
  done
  on_terminal 80 'stty cols 0; NO_COLOR=1 fingerturn annotate mixed.passage'
  same_files out expected
  on_terminal 80 'stty cols 1; NO_COLOR=1 fingerturn annotate mixed.passage'
  same_files out narrow

  # Colour is for terminals that are named and not dumb.
  on_terminal 80 'fingerturn annotate mixed.passage'
  has out $'\x1b['
  on_terminal 80 'TERM=dumb fingerturn annotate mixed.passage'
  same_files out expected
fi

# Where results find no place, each command says so.
if [[ -w /dev/full ]]; then
  for command in "${commands[@]}"; do
    # shellcheck disable=SC2086 # a command and its words
    "$FINGERTURN" $command >/dev/full 2>err
    status=$?
    status_is 2
    is "$(cat err)" 'fingerturn: standard output: cannot write: No space left on device'
  done
  # Messages that find none are lost; all else is as ever.
  "$FINGERTURN" annotate wrong.passage mixed.passage >out 2>/dev/full
  status=$?
  status_is 3
  same_files out expected
  "$FINGERTURN" annotate mixed.passage >/dev/full 2>/dev/full
  status=$?
  status_is 2
  "$FINGERTURN" annotate mixed.passage --nonsense >out 2>/dev/full
  status=$?
  status_is 2
  is_empty out
else
  echo "SKIPPED: there is no /dev/full: streams that take nothing"
fi

# None of the three streams: nothing is read or written under their numbers.
mkdir folder
"$FINGERTURN" annotate mixed.passage -o folder/report <&- >&- 2>&-
status=$?
status_is 0
same_files folder/report expected
"$FINGERTURN" annotate wrong.passage -o folder/other <&- >&- 2>&-
status=$?
status_is 3
is "$(ls folder)" report
same_files mixed.passage "$FINGERTURN_SOURCE_DIR/demo/mixed.passage"
