#!/usr/bin/env bash
# Each call of the system that brings an output to its place fails once, the first, the second, ...:
# status 2, the output is named with the reason, what was there stays and nothing is left beside it.
# Debian's strace lets them fail.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

# The sanitizers look for leaks with the same call of the system as strace.
export ASAN_OPTIONS=detect_leaks=0
if ! strace --follow-forks --output /dev/null true 2>/dev/null; then
  echo "SKIPPED: strace is not there, or may not trace: calls that fail"
  holds "calls can be traced" test "${CI:-}" != true
  exit 0
fi

mkdir disk
printf '1/4 C4:1 D:2 E:3 F:1 | G:2 A:3 B:4 C:5\n' >scale.passage
for _ in {1..12}; do cat scale.passage; done >long.passage
cp long.passage untouched
printf 'passage: A\n1/4 C4:1 D:2\n\npassage: B\n1/4 C4:2 D:3\n' >pair.passage
declare -A reasons=([EIO]='Input/output error' [ENOSPC]='No space left on device'
  [EINTR]='Interrupted system call' [EMFILE]='Too many open files' [EPERM]='Operation not permitted')

# refusing CALL ERROR N WORD...: runs the program, for which the Nth call of a kind fails; false where
# there is no Nth.
refusing() {
  strace --follow-forks --seccomp-bpf --output calls --trace="$1" \
    --inject="$1:error=$2:when=$3" "$FINGERTURN" "${@:4}" >out 2>err
  status=$?
  grep --quiet INJECTED calls
}

# How many files are closed where the program is loaded and does nothing with files.
closed_when_loaded() {
  strace --output calls --trace=close "$FINGERTURN" --version >out
  grep --count '^close' calls
}

# each_refused CALL ERROR WORD...: a run that replaces disk/report, once for each such call. Files that
# were read are closed as well; where that fails, nothing is lost.
each_refused() {
  local number=1
  [[ "$1" != close ]] || number=$((1 + $(closed_when_loaded)))
  echo old >disk/report
  while refusing "$1" "$2" "$number" "${@:3}" -o disk/report; do
    number=$((number + 1))
    is "$(find disk -mindepth 1 -printf '%P\n')" report
    if [[ "$1" == close && $status -eq 0 ]]; then
      is_empty err
      same_files disk/report whole
    else
      status_is 2
      is "$(cat err)" "fingerturn: disk/report: cannot write: ${reasons[$2]}"
      is "$(cat disk/report)" old
      refused=$((refused + 1))
    fi
    echo old >disk/report
  done
}

# all_refused WORD...: a run, with every kind of call.
all_refused() {
  "$FINGERTURN" "$@" -o whole
  for fault in 'write ENOSPC' 'write EIO' 'write EINTR' 'fchmod EPERM' 'fsync EIO' \
    'dup EMFILE' 'close EIO' 'linkat EIO' 'rename ENOSPC'; do
    refused=0
    # shellcheck disable=SC2086 # two words
    each_refused $fault "$@"
    holds "a call failed: $fault: $*" test "$refused" -gt 0
  done
}

all_refused annotate long.passage
all_refused finger scale.passage --format musicxml
all_refused check long.passage scale.passage --format jsonl --jobs 1
all_refused compare pair.passage --format html

# On standard output there is nothing to take back.
for words in 'annotate long.passage' 'scale C major' 'explain twist' --help; do
  # shellcheck disable=SC2086 # a command and its words
  holds "standard output is written" refusing write EIO 1 $words
  status_is 2
  is "$(cat err)" 'fingerturn: standard output: cannot write: Input/output error'
done

same_files long.passage untouched
