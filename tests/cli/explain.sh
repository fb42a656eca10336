#!/usr/bin/env bash
# Rules and messages in words.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

run explain
status_is 0
is_empty err
holds "the list keeps to 80 columns" test "$(widest out)" -le 80
mapfile -t ids < <(sed '/^$/,$d' out | awk '{ print $2 }')
holds "there are rules" test "${#ids[@]}" -gt 10
mapfile -t messages < <(sed '1,/^messages$/d' out | awk '{ print $1 }')
holds "there are messages" test "${#messages[@]}" -gt 10
run explain --messages
status_is 0
is "$(awk '{ print $1 }' out)" "$(printf '%s\n' "${messages[@]}")"

for id in "${ids[@]}"; do
  run explain "$id"
  status_is 0
  is_empty err
  has out "($id)"
  has out '  Source: '
  holds "$id keeps to 80 columns" test "$(widest out)" -le 80
done

for id in "${messages[@]}"; do
  run explain "$id"
  status_is 0
  is_empty err
  has out "($id)"
  has out '  What to do: '
  holds "$id keeps to 80 columns" test "$(widest out)" -le 80
done

# A rule and a message of one name.
run explain same-finger
has out '2.6 Same finger again (same-finger)'
has out 'A silent change to the same finger (same-finger)'
run explain --messages same-finger
is "$(head -n 1 out)" 'A silent change to the same finger (same-finger)'
lacks out 'Source:'

run explain --messages --markdown
status_is 0
cp out page
is "$(head -n 1 page)" '# The messages'
for id in "${messages[@]}"; do has page "## \`$id\`: "; done
is "$(grep --count '^## ' page)" "${#messages[@]}"
is "$(grep --count '^\*What to do:\*' page)" "${#messages[@]}"
same_files "$FINGERTURN_SOURCE_DIR/docs/messages.md" page

# What is said of a file can be explained.
printf 'C4:1 D:6 H:2\n' >wrong.passage
run annotate wrong.passage
for id in finger-range note; do
  has err "[$id]"
  holds "explain knows $id" grep --quiet --line-regexp -e "$id" <(printf '%s\n' "${messages[@]}")
done

run explain --markdown
status_is 0
cp out page
is "$(head -n 1 page)" '# The rules'
for id in "${ids[@]}"; do has page "(\`$id\`)"; done
is "$(grep --count '^### ' page)" "${#ids[@]}"
is "$(grep --count '^\*Source:\*' page)" "${#ids[@]}"
has page '## Caution'
same_files "$FINGERTURN_SOURCE_DIR/docs/rules.md" page

# Every rule that a report names can be explained.
printf 'C4:1 D:2 E:3 F:1 E:3 , A4 G:1 A:2 A:2 C4:1+E:3+G:5 C4:1+E:3 D:4>1 F:2' >rules.passage
run annotate rules.passage --format json
for id in $(jq -r '.passages[].hands[].events[].rule' out | sort --unique); do
  holds "explain knows $id" grep --quiet --line-regexp -e "$id" <(printf '%s\n' "${ids[@]}")
done

mistyped() {
  run explain "$1"
  status_is 2
  is_empty out
  is "$(cat err)" "$2"
}
mistyped thumb-undr 'fingerturn: there is no rule or message "thumb-undr"; did you mean "thumb-under"?'
mistyped levle 'fingerturn: there is no rule or message "levle"; did you mean "level"?'
mistyped double 'fingerturn: there is no rule or message "double"; see side-stays (Double rotation), double-note (Double notes)'
mistyped SINGLE 'fingerturn: there is no rule or message "SINGLE"; see side-changes (Single rotation)'
mistyped crossing 'fingerturn: there is no rule or message "crossing"; see finger-crossing (Finger crossing)'
mistyped finger 'fingerturn: there is no rule or message "finger"; see same-finger (Same finger again), silent-change (Silent change of finger), missing-finger (Missing fingers), after-missing (After a missing finger), finger-over-thumb (Finger over the thumb) and others'
mistyped octaves 'fingerturn: there is no rule or message "octaves"; see digits (Fingers where octaves stand)'
mistyped finger-rang 'fingerturn: there is no rule or message "finger-rang"; see finger-range (A finger that is none)'
for word in prep difficulty e; do
  mistyped "$word" "fingerturn: there is no rule or message \"$word\"; \"fingerturn explain\" lists them"
done
mistyped elbow 'fingerturn: there is no rule or message "elbow"; "fingerturn explain" lists them'
mistyped $'a\x1B[31m' $'fingerturn: there is no rule or message "a\uFFFD[31m"; "fingerturn explain" lists them'

# The names stand where the help says: in watch lists, in what check finds, for every note in JSON.
echo 'C4:1 D:2 G5:3' >leap.passage
run annotate leap.passage
has out '[leap]'
run check leap.passage
has out '[leap]'
run annotate leap.passage --format json
is "$(jq -c '[.passages[].hands[] | (.events[].rule), (.watch[].code)]' out)" '["first-note","side-changes","side-stays","leap"]'
