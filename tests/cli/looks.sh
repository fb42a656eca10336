#!/usr/bin/env bash
# How the text looks: width, ASCII, details, colour, and what a terminal makes of it.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

{ echo "passage: Lantern Street"; for _ in 1 2 3 4; do echo "1/8 $scale |"; done; } >long.passage
escape=$'\x1B'

for columns in 32 40 60 80 120; do
  for looks in '' --ascii --detail; do
    # shellcheck disable=SC2086 # an option or none
    run annotate long.passage --columns "$columns" $looks
    status_is 0
    holds "$looks keeps to $columns columns" test "$(widest out)" -le "$columns"
    holds "$looks uses $columns columns" test "$(widest out)" -gt "$((columns * 3 / 4))"
  done
done

# Wide letters count twice, in whichever locale the program runs.
printf 'passage: %s\n1/4 C4:1\n' "$(printf '月光%.0s' {1..30})" >moonlight.passage
run annotate moonlight.passage
is "$(head -n 1 out)" "$(printf '月光%.0s' {1..20})"
cp out wide
for locale in C POSIX C.UTF-8 nonsense; do
  LC_ALL="$locale" run annotate moonlight.passage
  same_files out wide
done

# Where the text goes to no terminal it is 80 columns wide.
run annotate long.passage
cp out plain
run annotate long.passage --columns 80
same_files out plain

run annotate long.passage --ascii
LC_ALL=C check "ASCII only" test -z "$(LC_ALL=C grep --only-matching '[^ -~]' out)"
has out ' < '

run annotate long.passage --detail
has out 'thumb passing under'
lacks plain 'thumb passing under'

# Colour: never but on a terminal, or where it is asked for.
colourless() { lacks out "$escape"; }
coloured() { has out "${escape}["; }
run annotate long.passage
colourless
run annotate long.passage --color never
colourless
run annotate long.passage --color auto
colourless
run annotate long.passage --color always
coloured
same_files <(sed "s/$escape\[[0-9;]*m//g" out) plain
NO_COLOR=1 run annotate long.passage --color always
coloured
for format in json jsonl passage; do
  run annotate long.passage --color always --format "$format"
  colourless
done
run annotate long.passage -o report.txt
lacks report.txt "$escape"
run annotate long.passage -o report.txt --color always
has report.txt "${escape}["

if has_terminals; then
  on_terminal 50 'fingerturn annotate long.passage'
  status_is 0
  coloured
  sed "s/$escape\[[0-9;]*m//g" out >seen
  "$FINGERTURN" annotate long.passage --columns 50 >expected
  same_files seen expected
  on_terminal 100 'fingerturn annotate long.passage --color never'
  "$FINGERTURN" annotate long.passage --columns 100 >expected
  same_files out expected
  on_terminal 100 'fingerturn annotate long.passage --columns 60 --color never'
  holds "--columns comes before the terminal" test "$(widest out)" -le 60
  on_terminal 10 'fingerturn annotate long.passage --color never'
  "$FINGERTURN" annotate long.passage --columns 32 >expected
  same_files out expected
  NO_COLOR=1 on_terminal 80 'fingerturn annotate long.passage'
  colourless
  NO_COLOR='' on_terminal 80 'fingerturn annotate long.passage'
  coloured
  TERM=dumb on_terminal 80 'fingerturn annotate long.passage'
  colourless
  on_terminal 40 'fingerturn explain side'
  holds "explain keeps to the terminal" test "$(widest out)" -le 40
fi
