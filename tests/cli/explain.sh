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
for word in difficulty e 9.9 2. .; do
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

# The first lines of the rules and messages that are told in full.
told() { grep --extended-regexp '^[^ ].* \([a-z-]+\)$' out | grep --invert-match '^See also'; }
answers() {
  run explain "$1"
  status_is 0
  is_empty err
  is "$(told)" "$2"
  holds "$1 keeps to 80 columns" test "$(widest out)" -le 80
}
# A section, a chapter, and words from titles in any letters.
answers 2.2 '2.2 Single rotation (side-changes)
2.2 Double rotation (side-stays)'
run explain 3
is "$(told | cut --delimiter=' ' --fields=1 | sort --unique | paste --serial)" \
  "$(awk '$1 ~ /^3[.]/ { print $1 }' <("$FINGERTURN" explain) | sort --unique | paste --serial)"
answers 'double rotation' '2.2 Double rotation (side-stays)'
answers SINGLE '2.2 Single rotation (side-changes)'
answers crossing '3.3 Finger crossing (finger-crossing)'
answers finger-rang 'A finger that is none (finger-range)'
has_also() { has out "See also "; tr '\n' ' ' <out | grep --quiet --fixed-strings "$1"; }
run explain double
holds 'the rules of that title come first' test "$(head -n 1 out)" = '2.2 Double rotation (side-stays)'
holds 'others are named' has_also 'event (Event)'
# Words that no title has: the rules that speak of them.
run explain hold
is "$(told)" '2.9 Held keys (held-key)'
# A message, and the rules that speak of the same thing.
run explain octave
status_is 0
has out 'A first note without its octave (octave)'
has out '2.4 Level events (level)'
run explain --messages octave
is "$(told)" 'A first note without its octave (octave)'
run explain note
is "$(told)" 'A note that is none (note)'
