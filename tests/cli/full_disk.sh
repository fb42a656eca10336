#!/usr/bin/env bash
# A disk that is full, at once or after some of the output: status 2, the output is named, what was
# there stays and nothing is left beside it. In a mount namespace of its own.
if [[ "${MOUNTS:-}" != own ]]; then
  # In a changed root the first is not allowed; its mounts are its own already.
  for propagation in private unchanged; do
    apart=(unshare --mount --propagation "$propagation")
    if [[ $EUID -eq 0 ]] && "${apart[@]}" true 2>/dev/null; then
      MOUNTS=own exec "${apart[@]}" "$BASH" "${BASH_SOURCE[0]}"
    fi
  done
  echo "SKIPPED: nothing can be mounted here: full disk"
  [[ "${CI:-}" != true || $EUID -ne 0 ]]
  exit
fi
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

page=4096
mkdir disk inputs
for i in {1..12}; do
  printf 'passage: Page %d\n1/4 %s | %s\n\n' "$i" "$scale" "$scale"
done >inputs/many.passage
printf '1/4 C4:1 D:2 E:3 F:1 | G:2 A:3 B:4 C:5\n' >inputs/scale.passage
cp "$FINGERTURN_SOURCE_DIR/demo/last-tram.musicxml" inputs/score.musicxml
cp -r inputs untouched

# disk_of PAGES [INODES]: an empty disk that holds so much.
disk_of() {
  if mountpoint --quiet disk; then umount disk; fi
  mount -t tmpfs -o "size=$(($1 * page)),nr_inodes=${2:-100}" fingerturn disk
}

# is_full WORDS: the run that has just ended found the disk full, and left it as it was.
is_full() {
  status_is 2
  is_empty out
  is "$(cat err)" "fingerturn: $1: No space left on device"
  is "$(cat disk/report)" old
  is "$(find disk -mindepth 1 -printf '%P\n')" report
}

# cannot_fit WORD...: a run that writes disk/report, with no room, ever more, all but the last page,
# and enough.
cannot_fit() {
  local whole room
  "$FINGERTURN" "$@" -o whole 2>err
  status=$?
  status_is 0
  whole=$((($(stat --format %s whole) + page - 1) / page))
  for room in 0 $((whole / 3)) $((whole - 1)); do
    disk_of $((1 + room)) && echo old >disk/report
    run "$@" -o disk/report
    is_full 'disk/report: cannot write'
  done
  disk_of $((1 + whole)) && echo old >disk/report
  run "$@" -o disk/report
  status_is 0
  is_empty err
  same_files disk/report whole
}

for format in text html svg markdown json jsonl passage; do
  cannot_fit annotate inputs/many.passage --format "$format"
done
cannot_fit annotate inputs/score.musicxml --format musicxml
cannot_fit finger inputs/scale.passage --format musicxml
cannot_fit excerpt inputs/score.musicxml --bars 2-4
cannot_fit compare inputs/many.passage --format html
cannot_fit check inputs
cannot_fit check inputs --format jsonl
cannot_fit find note inputs
cannot_fit practice inputs/many.passage
cannot_fit scale C major --format musicxml

# No room for one more file, with or without a name.
disk_of 100 2 && echo old >disk/report
run annotate inputs/scale.passage -o disk/report
is_full 'disk/report: cannot write'
run annotate inputs/scale.passage --format html -o disk/pages
is_full 'disk/pages: cannot write'
run annotate inputs/scale.passage --format html -o disk/pages/
is_full 'disk/pages/: cannot make this folder'

# Of a folder of pages those are there, whole, that had room.
run annotate inputs/many.passage --format html -o whole_pages/
status_is 0
one=$((($(stat --format %s whole_pages/01-page-1.html) + page - 1) / page))
for room in 0 $((one - 1)) "$one" $((5 * one + 1)) $((12 * one)); do
  disk_of "$((room == 0 ? 1 : room))"
  [[ $room -ne 0 ]] || head -c "$page" /dev/zero >disk/filler
  run annotate inputs/many.passage --format html -o disk/pages/
  status_is 2
  is_empty out
  name="$(find whole_pages -type f -printf '%P\n' | sort | sed --quiet "$((room / one + 1))p")"
  is "$(cat err)" "fingerturn: disk/pages/$name: cannot write: No space left on device"
  is "$(find disk/pages -type f | wc --lines)" $((room / one))
  for written in disk/pages/*.html; do
    [[ ! -e "$written" ]] || same_files "$written" "whole_pages/${written##*/}"
  done
done

umount disk
is "$(diff --recursive inputs untouched)" ''
