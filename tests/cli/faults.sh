#!/usr/bin/env bash
# What is promised when something goes wrong around the program; docs/design.md has the table.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

echo "$scale" >scale.passage
"$FINGERTURN" annotate scale.passage >expected
refusing() { "${PYTHON:-/usr/bin/python3}" "$FINGERTURN_SOURCE_DIR/tests/cli/refusing.py" "$@"; }

only_these() {
  is "$(find . -mindepth 1 -maxdepth 1 ! -name out ! -name err -printf '%P\n' | sort | tr '\n' ' ')" "$*"
}

# Streams that are closed: nothing lands in a file that was opened under their numbers.
echo 'C4:9' >bad.passage
"$FINGERTURN" annotate bad.passage scale.passage -o report.txt 2>&-
status=$?
status_is 3
same_files report.txt expected
"$FINGERTURN" annotate scale.passage 2>err >&-
status=$?
status_is 2
is "$(cat err)" 'fingerturn: standard output: cannot write: Bad file descriptor'
"$FINGERTURN" annotate - -o report.txt 2>err <&-
status=$?
status_is 3
is "$(cat err)" 'fingerturn: standard input: Bad file descriptor'
same_files report.txt expected
rm report.txt bad.passage

# A list that cannot be read is no list without names in it: a gate must not stay open.
"$FINGERTURN" check --files-from - --fail-on info >out 2>err <&-
status=$?
status_is 3
is_empty out
is "$(cat err)" 'fingerturn: standard input: Bad file descriptor'

# Standard input may be the file that is to be written.
cp scale.passage same.passage
# shellcheck disable=SC2094 # that is what is tried
"$FINGERTURN" annotate -o same.passage - <same.passage >out 2>err
status=$?
status_is 2
is "$(cat err)" 'fingerturn: same.passage: this is an input; choose another name for the output'
same_files same.passage scale.passage
rm same.passage

# Help that cannot be written is not help.
if [[ -w /dev/full ]]; then
  for words in --help 'annotate --help' --version; do
    # shellcheck disable=SC2086 # a command and its words
    "$FINGERTURN" $words >/dev/full 2>err
    status=$?
    status_is 2
    is "$(cat err)" 'fingerturn: standard output: cannot write: No space left on device'
  done
else
  echo "SKIPPED: there is no /dev/full: help"
fi

# A run that is killed leaves nothing, however much it has written: of two inputs the second waits.
mkdir killed && mkfifo killed/pending
for _ in {1..400}; do echo "$scale"; done >killed/long.passage
(cd killed && exec "$FINGERTURN" annotate long.passage pending -o report.txt) &
program=$!
timeout 20 bash -c "exec 3>killed/pending && kill -KILL $program"
wait "$program" 2>/dev/null
is "$?" 137
is "$(find killed -mindepth 1 -printf '%P\n' | sort | tr '\n' ' ')" 'long.passage pending '

# Where nobody reads on, the run ends by the usual signal.
"$FINGERTURN" annotate killed/long.passage 2>err | head -n 1 >out
is "${PIPESTATUS[0]}" 141
is_empty err

# Where files without names cannot be had, the file has a hidden one, and a signal takes it away.
if refusing nameless "$FINGERTURN" annotate scale.passage -o report.txt 2>err; then
  same_files report.txt expected
  rm report.txt
  (cd killed && refusing nameless "$FINGERTURN" annotate long.passage pending -o report.txt) &
  while ! compgen -G 'killed/.fingerturn-*' >/dev/null; do sleep 0.05; done
  program="$(pgrep --full "annotate long.passage pending" | tail -n 1)"
  kill -TERM "$program"
  wait 2>/dev/null
  is "$(find killed -mindepth 1 -printf '%P\n' | sort | tr '\n' ' ')" 'long.passage pending '
else
  echo "SKIPPED: $(cat err)"
fi
rm -r killed

# The owner, the group and the permissions of a file stay when it is replaced; what lets others act
# as its owner does not.
if [[ $EUID -eq 0 ]]; then
  echo old >report.txt
  chown 65534:65534 report.txt
  chmod 6640 report.txt
  run annotate scale.passage -o report.txt
  status_is 0
  is_empty err
  same_files report.txt expected
  is "$(stat --format '%u %g %a' report.txt)" '65534 65534 640'
  rm report.txt
  if can_be_nobody; then
    mkdir open && chmod 777 open
    echo old >open/report.txt
    chmod 666 open/report.txt
    run_as_nobody annotate scale.passage -o open/report.txt
    status_is 0
    has err 'open/report.txt: written, but its owner could not be kept: Operation not permitted'
    same_files open/report.txt expected
    is "$(stat --format '%u %a' open/report.txt)" '65534 666'
    rm -r open
  fi
else
  echo "SKIPPED: only root can give files away: owners"
fi

# A file that may not be written is not replaced either.
if can_be_nobody; then
  mkdir open && chmod 777 open
  echo old >open/report.txt
  chmod 444 open/report.txt
  run_as_nobody annotate scale.passage -o open/report.txt
  status_is 2
  has err 'open/report.txt: cannot write: Permission denied'
  is "$(cat open/report.txt)" old
  rm -r open
else
  echo "SKIPPED: root may write everything, and nobody else can be here: files that may not be written"
fi

# A link that leads to nothing yet: what it leads to is made, and the link stays.
mkdir folder
ln -s folder/new.txt link.txt
run annotate scale.passage -o link.txt
status_is 0
holds "link.txt is a link still" test -L link.txt
same_files folder/new.txt expected
rm -r folder link.txt

# A name as long as names can be.
long="$(printf 'n%.0s' {1..255})"
for _ in made replaced; do
  run annotate scale.passage -o "$long"
  status_is 0
  same_files "$long" expected
done
rm "$long"

# Nothing is kept in the folder for temporary files.
TMPDIR=/nowhere "$FINGERTURN" annotate scale.passage -o report.txt 2>err
status=$?
status_is 0
same_files report.txt expected
rm report.txt

# Many pages are open one at a time.
for i in {1..300}; do printf 'passage: Page %d\nC4:1 D:2\n' "$i"; done >many.passage
(ulimit -n 24 && "$FINGERTURN" annotate many.passage --format markdown -o pages/ 2>err)
status=$?
status_is 0
is "$(find pages -type f | wc --lines)" 301
rm -r pages many.passage

# Memory that one input cannot have is that input's error; the others are done.
limit_memory() { ulimit -v 300000; }
if (limit_memory && "$FINGERTURN" --version >out 2>&1); then
  mkdir inputs
  cp scale.passage inputs/b.passage
  (printf 'C4:1 '; for _ in {1..17}; do printf 'D4:2 E4:3 '; done; echo) >bar
  for _ in {1..16}; do cat bar; done >bars
  for _ in {1..1800}; do cat bars; done >inputs/a.passage
  (limit_memory && "$FINGERTURN" check -o report.txt inputs --jobs 1 >out 2>err)
  status=$?
  status_is 3
  is "$(cat err)" 'fingerturn: inputs/a.passage: there is not enough memory for this'
  has report.txt '1 file'
  (limit_memory && "$FINGERTURN" annotate inputs/a.passage inputs/b.passage -o report.txt 2>err)
  status=$?
  status_is 3
  is "$(cat err)" 'fingerturn: inputs/a.passage: there is not enough memory for this'
  "$FINGERTURN" annotate inputs/b.passage | cmp - report.txt
  is "${PIPESTATUS[*]}" '0 0'
  rm -r inputs bar bars report.txt
else
  echo "SKIPPED: this build wants more memory than a limit can leave it: memory"
fi

# Names in a list may have line ends in them where NULs stand between them.
mkdir inputs
cp scale.passage $'inputs/two\nlines.passage'
cp scale.passage inputs/plain.passage
find inputs -name '*.passage' -print0 | sort --zero-terminated >list
run check --files-from list --format jsonl
status_is 0
is_empty err
is "$(jq --raw-output 'select(.source).source' out)" $'inputs/plain.passage\ninputs/two\nlines.passage'
rm -r inputs list

# Folders nested deeper than calls of functions can be.
mkdir nested
deep="$(printf 'n/%.0s' {1..1500})"
(cd nested && mkdir --parents "$deep" && cp ../scale.passage "$deep")
(ulimit -s 256 && "$FINGERTURN" check nested --format jsonl >out 2>err)
status=$?
status_is 0
is "$(jq --slurp '.[1].read' out)" 1
rm -r nested

only_these 'expected scale.passage '
