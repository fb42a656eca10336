#!/usr/bin/env bash
# check --baseline: only what is new since an earlier check; and the summary in Markdown.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

mkdir book
# A caution (2-4 over a sixth), and a triplet's beat.
printf 'meter: 2/4\n1/4 C4:2+A4:4 D4:1 | 1/8t C4:1 E4:2 C4:2+A4:4 1/4 D4:1 |\n' >book/one.passage
printf 'C4:1 D4:2 E4:3\n' >book/two.passage
run check --format jsonl book
status_is 0
cp out before.jsonl
is "$(jq -s 'map(.findings // []) | flatten | length' before.jsonl)" 3

# Nothing is new: nothing is listed, counted or failed on.
run check --baseline before.jsonl --fail-on info book
status_is 0
lacks out '[stretch]'
run check --baseline before.jsonl --format jsonl book
is "$(jq -s -c 'map(.findings // []) | flatten' out)" '[]'
is "$(jq -s -c '.[-1].watch' out)" '{"info":0,"caution":0,"strain":0}'
run check --fail-on caution book
status_is 1

# Lines that move change nothing; a finding that is new is told, one that comes twice once more.
sed -i '1i # A comment.' book/one.passage
run check --baseline before.jsonl --fail-on info book
status_is 0
printf 'meter: 2/4\n1/4 C4:2+A4:4 D4:1 | 1/4 E4:2+C5:4 D4:1 |\n' >book/two.passage
run check --baseline before.jsonl --fail-on caution book
status_is 1
is "$(grep --count '\[stretch\]' out)" 2
lacks out 'one.passage:'

# The summary beside a change.
run check --baseline before.jsonl --format markdown book
status_is 0
is "$(head -n 3 out)" "### book/two.passage

- **caution**, bar 1, right hand, beat 1: 2-4 over 9 semitones (C4 and A4 together), practical up to 7. (\`stretch\`)"
has out '| 2 files | 10 | 0 | 2 | 0 |'
lacks out 'book/one.passage'
has out 'no medical advice'

# What cannot be read.
refused() { # STATUS MESSAGE FILE
  run check --baseline "$3" book
  status_is "$1"
  is_empty out
  has err "$2"
}
echo '{"format":"fingerturn-analysis"}' >other.jsonl
refused 3 'other.jsonl:1: expected a line as check --format jsonl writes it' other.jsonl
{
  cat before.jsonl
  echo '{"format":'
} >broken.jsonl
refused 3 'broken.jsonl:4: expected a line as check --format jsonl writes it' broken.jsonl
refused 3 'missing.jsonl' missing.jsonl
cp before.jsonl kept.jsonl
run check --baseline before.jsonl --format jsonl -o before.jsonl book
status_is 2
same_files before.jsonl kept.jsonl
