#!/usr/bin/env bash
# check --join: checks in shards, joined, are byte for byte what one check writes, however they were
# cut.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

mkdir book
cp "$FINGERTURN_SOURCE_DIR"/demo/*.passage "$FINGERTURN_SOURCE_DIR"/demo/*.musicxml book
printf 'meter: 2/4\n1/4 C4:2+A4:4 D4:1 | 1/8t C4:1 E4:2 C4:2+A4:4 1/4 D4:1 |\n' >book/one.passage
printf 'passage: The pier, "east"\nC4:1+D4:1+E4:1\npassage:\nC4:1 D4:1 C5:1\n' >book/two.passage
printf 'C4:1 D4:2 E4:9\n' >book/wrong.passage
: >book/empty.passage
printf 'C4:1 D4:1 C5:1\n' >$'book/a\tname \xc3\xa9 \xff.passage'
find book -name '*.*' | LC_ALL=C sort >list
echo missing.passage >>list

# shards N OPTIONS...: checks the list in shards of N files each, as shards/*.jsonl.
shards() {
  rm -rf shards && mkdir shards
  split --lines="$1" --numeric-suffixes list shards/list.
  local part
  for part in shards/list.*; do
    "$FINGERTURN" check --files-from "$part" --format jsonl "${@:2}" >"shards/${part##*.}.jsonl" 2>>err.shards
  done
}

# as_one OPTIONS...: one check of all, and all shards joined, with these options.
as_one() {
  "$FINGERTURN" check --files-from list "$@" >one 2>/dev/null
  local expected=$?
  run check --join shards/*.jsonl "$@"
  status_is "$expected"
  same_files one out
}

for size in 1 2 5 100; do
  shards "$size"
  as_one
  as_one --columns 50
  as_one --format jsonl
  as_one --format markdown
  as_one --show strain --fail-on strain
done
run check --join shards/*.jsonl --format jsonl
# Joined lines can be joined again, from standard input too, and are a baseline.
cp out joined.jsonl
"$FINGERTURN" check --join - --format jsonl <joined.jsonl >again.jsonl 2>/dev/null
same_files again.jsonl joined.jsonl
run check --join joined.jsonl --baseline joined.jsonl --format jsonl
is "$(jq -s -c 'map(.findings // []) | flatten' out)" '[]'
shards 3 --hand right
as_one --hand right
shards 3 --only twist,stretch
as_one --only twist,stretch
run check --join shards/*.jsonl --only leap
status_is 3
has err 'expected what --hand, --only and --leave-out take, found '

# The statuses.
grep -a -v -e wrong -e missing -e name list >good && mv good list
shards 4
as_one --fail-on info
run check --join shards/*.jsonl --fail-on info
status_is 1

# What is no line is told with its place; the others are taken.
{ cat shards/00.jsonl; echo '{"format":'; echo '[]'; cat shards/01.jsonl; } >broken.jsonl
run check --join broken.jsonl --format jsonl
status_is 3
has err 'broken.jsonl:6: expected a line as check --format jsonl writes it'
has err 'broken.jsonl:7: expected a line as check --format jsonl writes it'
is "$(tail -n 1 out | jq .read)" 8
run check --join nowhere.jsonl
status_is 3
has err 'nowhere.jsonl: No such file or directory'
jq -c 'if .findings then .findings[0].beat = 0.5 else . end' shards/00.jsonl >spoiled.jsonl
run check --join spoiled.jsonl
has err 'found none with the "beat" that it has'

# A part that was cut short is no whole one, even where it was cut between two lines; nor is an empty
# one, or a folder.
head -n 2 shards/00.jsonl >cut.jsonl
: >nothing.jsonl
for part in cut nothing; do
  run check --join "$part.jsonl" shards/01.jsonl
  status_is 3
  has err "$part.jsonl: expected the line for all files at the end; the check was cut short"
done
run check --join shards
status_is 3
sed 's/"version":1/"version":9/' shards/00.jsonl >later.jsonl
run check --join later.jsonl
status_is 3
has err 'later.jsonl:1: expected a line of version 1 of a check'
# What is no such file at all is not told line by line.
run check --join book/ferry.passage
is "$(wc --lines <err)" 3

# After a kill: what is there is kept, the rest is checked, and nothing is checked twice.
cat shards/*.jsonl >whole.jsonl
head -c 700 whole.jsonl >left.jsonl
jq -c . left.jsonl 2>/dev/null >kept.jsonl
jq -r .source kept.jsonl | grep -a -v -x -F -f - list >rest
holds "some are left" test -s rest
"$FINGERTURN" check --files-from rest --format jsonl >>kept.jsonl 2>/dev/null
run check --join kept.jsonl
cp out restarted
run check --files-from list
same_files restarted out

# With GNU parallel, where it is there: as many at a time as there are cores, in the order of the list.
if command -v parallel >/dev/null; then
  parallel --pipe -N 2 --keep-order "$FINGERTURN" check --files-from - --jobs 1 --format jsonl \
    <list 2>/dev/null | "$FINGERTURN" check --join - >out 2>/dev/null
  same_files out restarted
elif [[ "${CI:-}" == true ]]; then
  holds "GNU parallel is there" false
else
  echo "SKIPPED: GNU parallel is not there"
fi
