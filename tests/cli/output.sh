#!/usr/bin/env bash
# Where results go: whole or not at all, and never over an input.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

echo "$scale" >scale.passage
echo 'C4:9' >bad.passage
"$FINGERTURN" annotate scale.passage >expected

only_these() {
  is "$(find . -mindepth 1 -maxdepth 1 ! -name out ! -name err -printf '%P\n' | sort | tr '\n' ' ')" "$*"
}

for option in -o --output; do
  run annotate scale.passage "$option" report.txt
  status_is 0
  is_empty out
  is_empty err
  same_files report.txt expected
  rm report.txt
done
only_these 'bad.passage expected scale.passage '

# A file that is there is replaced and keeps its permissions; a new one gets the usual ones.
echo old >report.txt
chmod 640 report.txt
run annotate scale.passage -o report.txt
status_is 0
same_files report.txt expected
is "$(stat --format %a report.txt)" 640
rm report.txt
(umask 027 && "$FINGERTURN" annotate scale.passage -o report.txt)
is "$(stat --format %a report.txt)" 640
rm report.txt

# A run that fails leaves what was there, and nothing else.
run annotate bad.passage -o report.txt
status_is 3
only_these 'bad.passage expected scale.passage '
echo old >report.txt
run annotate bad.passage missing.passage -o report.txt
status_is 3
is "$(cat report.txt)" old
run annotate scale.passage --passage 2 -o report.txt
status_is 2
is "$(cat report.txt)" old
only_these 'bad.passage expected report.txt scale.passage '

# What could be read of several files is written.
run annotate bad.passage scale.passage -o report.txt
status_is 3
same_files report.txt expected
rm report.txt

# A run that is ended from outside leaves nothing.
mkfifo pending
"$FINGERTURN" annotate pending -o report.txt 2>err &
program=$!
# The pipe opens once the program reads it.
timeout 20 bash -c "exec 3>pending && kill -TERM $program"
wait "$program" 2>/dev/null
holds "was ended by the signal" test $? -gt 128
rm pending
only_these 'bad.passage expected scale.passage '

# An input is never overwritten, whatever it is called.
cp scale.passage original
ln -s scale.passage linked.passage
ln scale.passage twin.passage
for name in scale.passage ./scale.passage "$PWD/scale.passage" linked.passage twin.passage; do
  run annotate bad.passage scale.passage -o "$name"
  status_is 2
  is "$(cat err)" "fingerturn: $name: this is an input; choose another name for the output"
  same_files scale.passage original
done
rm linked.passage twin.passage original

# Through a link the file it leads to is written, and the link stays.
mkdir folder
ln -s folder/real.txt link.txt
echo old >folder/real.txt
run annotate scale.passage -o link.txt
status_is 0
holds "link.txt is a link still" test -L link.txt
same_files folder/real.txt expected
is "$(ls -A folder)" real.txt
rm -r link.txt folder

# Places that cannot be written.
mkdir folder
for name in folder folder/missing/report.txt scale.passage/report.txt; do
  run annotate scale.passage -o "$name"
  status_is 2
  is_empty out
  has err "cannot write: "
done
is "$(ls -A folder)" ''
rmdir folder
if [[ -w /dev/full ]]; then
  run annotate scale.passage -o /dev/full
  status_is 2
  is "$(cat err)" 'fingerturn: /dev/full: cannot write: No space left on device'
  for command in 'annotate scale.passage' 'annotate scale.passage --format json' explain; do
    # shellcheck disable=SC2086 # a command and its words
    "$FINGERTURN" $command >/dev/full 2>err
    status=$?
    status_is 2
    is "$(cat err)" 'fingerturn: standard output: cannot write: No space left on device'
  done
else
  echo "SKIPPED: there is no /dev/full: full disk"
fi

# A write that fails, also where the system tells it only once all is written, leaves what was there.
echo old >report.txt
(ulimit -f 0 && "$FINGERTURN" annotate scale.passage -o report.txt 2>&1) | cat >err
status=${PIPESTATUS[0]}
status_is 2
is "$(cat err)" 'fingerturn: report.txt: cannot write: File too large'
is "$(cat report.txt)" old
"${PYTHON:-/usr/bin/python3}" "$FINGERTURN_SOURCE_DIR/tests/cli/refusing.py" sync \
  "$FINGERTURN" annotate scale.passage -o report.txt 2>err
status=$?
if [[ $status -eq 77 ]]; then
  echo "SKIPPED: $(cat err)"
else
  status_is 2
  is "$(cat err)" 'fingerturn: report.txt: cannot write: Input/output error'
  is "$(cat report.txt)" old
fi
rm report.txt
only_these 'bad.passage expected scale.passage '

# A folder in which nothing may be made.
mkdir closed
echo old >closed/report.txt
chmod 555 closed
if can_be_nobody; then
  run_as_nobody annotate scale.passage -o closed/report.txt
  status_is 2
  has err 'report.txt: cannot write: Permission denied'
  is "$(cat closed/report.txt)" old
else
  echo "SKIPPED: root may write everywhere, and nobody else can be here: closed folder"
fi
chmod 755 closed && rm -r closed

# Devices are written as they are.
run annotate scale.passage -o /dev/null
status_is 0
"$FINGERTURN" annotate scale.passage -o /dev/stdout | cat >out
same_files out expected
only_these 'bad.passage expected scale.passage '
