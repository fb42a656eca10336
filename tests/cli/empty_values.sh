#!/usr/bin/env bash
# No option takes an empty value, and none takes the next word instead: every option of every command
# that help names is given one.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

mkdir inputs && cd inputs || exit 1
echo "$scale" >a.passage
echo "${scale//:?/}" >b.passage
cp a.passage b.passage ..

# Runs a command and holds that it is wrong usage and that no file is written or made.
refused() {
  "$FINGERTURN" "${@:2}" >../out 2>../err </dev/null
  status=$?
  status_is 2
  is_empty ../out
  is "$(cat ../err)" "fingerturn: $1
fingerturn $2 --help says more"
  is "$(echo *)" 'a.passage b.passage'
  same_files a.passage ../a.passage
  same_files b.passage ../b.passage
}

# Lines such as "  -o,--output FILE" of a help; after a flag come two blanks, or "Excludes:".
options_of() { "$FINGERTURN" "$1" --help | sed --quiet --regexp-extended 's/^  (-.,)?(--[a-z-]+) ([^ :]+)( .*)?$/\2 \3/p'; }
commands() { "$FINGERTURN" --help | sed '1,/^Commands:/d; s/^  \([a-z]\+\) .*/\1/; t; d'; }

for command in $(commands); do
  while read -r option value <&3; do
    echo "$command $option" >>../walked
    refused "$option needs a value, $value" "$command" "$option=" a.passage b.passage
    refused "$option needs a value, $value" "$command" a.passage b.passage "$option="
    refused "$option needs a value, $value" "$command" "$option" '' a.passage b.passage
    refused "$option needs a value, $value" "$command" a.passage "$option" ''
  done 3< <(options_of "$command")
done
for option in 'annotate --output' 'annotate --format' 'finger --alternatives' 'scale --from' 'excerpt --bars' \
  'compare --color' 'check --files-from' 'check --fail-on' 'find --like'; do
  has ../walked "$option"
done
is "$(cut --delimiter=' ' --fields=1 ../walked | uniq | tr '\n' ' ')" 'annotate finger scale practice excerpt compare check find '

refused '--output needs a value, FILE|DIR/' annotate -o '' a.passage b.passage
refused '--output needs a value, FILE|DIR/' annotate -o= a.passage b.passage
refused '--output needs a value, FILE' check --format text --output= a.passage b.passage
refused '--bars needs a value, FIRST-LAST' excerpt a.passage --output --bars= --bars=

# A value may look like an option, and after -- so may a file.
run annotate a.passage --output --output=
status_is 0
has ./--output= 'bar 1'
rm -- --output=
run annotate -- --output=
status_is 3
has err '--output=: No such file'
