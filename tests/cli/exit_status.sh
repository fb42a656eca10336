#!/usr/bin/env bash
# What the program tells the shell: 0 done, 2 wrong usage, 3 some input could not be read; 1, which
# only check gives, is tested with it.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

echo "$scale" >good.passage
echo 'C4:1 D:9' >bad.passage

run annotate good.passage
status_is 0
is_empty err

run annotate bad.passage
status_is 3
is_empty out
is "$(cat err)" 'bad.passage:1:8: error: expected a finger from 1 to 5, found "9" [finger-range]
  C4:1 D:9
         ^
  hint: write one digit after the colon, as in F:4, or :? where it is not known'

# A warning alone is no failure.
run annotate - <<<'C4:1~'
status_is 0
has err 'warning: '
has out 'bar 1'

wrong_usage() {
  run "$@"
  status_is 2
  is_empty out
  holds "says what is wrong: $*" test -s err
}

wrong_usage
wrong_usage nonsense
wrong_usage --nonsense
wrong_usage annotate
wrong_usage annotate --nonsense good.passage
wrong_usage annotate good.passage --hand
wrong_usage annotate good.passage --hand middle
wrong_usage annotate good.passage --format pdf
wrong_usage annotate good.passage --color sometimes
for bars in x 0x1 8-5 -1 1-2-3 5- 1.5 '' 99999999999999999999; do
  wrong_usage annotate good.passage --bars "$bars"
done
for number in 0 -1 x 1.5 ''; do wrong_usage annotate good.passage --passage "$number"; done
for columns in 0 31 1001 x ''; do wrong_usage annotate good.passage --columns "$columns"; done
wrong_usage explain nonsense
wrong_usage explain side level

# Wrong usage is found before anything is read.
wrong_usage annotate missing.passage --bars x
lacks err 'No such file'

# What is wrong, in the words of the other messages, and the help of the command that was named.
refused() {
  run "${@:3}"
  status_is 2
  is_empty out
  is "$(cat err)" "fingerturn: $1
fingerturn $2 says more"
}
commands='annotate, finger, scale, practice, excerpt, compare, check, find or explain'
refused "name a command, $commands" --help
refused 'there is no command "anotate"; did you mean "annotate"?' --help anotate good.passage
refused "there is no command \"good.passage\"; name $commands" --help good.passage
refused $'there is no command "a\uFFFD[31m"; name '"$commands" --help $'a\x1B[31m'
refused 'there is no option --versoin; did you mean --version?' --help --versoin
refused 'there is no option --nonsense' --help --nonsense=1
refused '--format stands after the command' 'annotate --help' --format json annotate good.passage
refused 'FILE is required' 'annotate --help' annotate
refused 'there is no option --bar; did you mean --bars?' 'annotate --help' annotate good.passage --bar 1
refused 'there is no option --bar; did you mean --bars?' 'excerpt --help' excerpt good.passage --bar=1
refused 'there is no option --up' 'scale --help' scale --up C major
refused 'there is no option -q' 'check --help' check -q
refused $'there is no option --a\uFFFD[31m' 'finger --help' finger good.passage $'--a\x1B[31m'
refused 'excerpt takes one file, 2 were given' 'excerpt --help' excerpt good.passage bad.passage
refused 'explain takes one name, 3 were given' 'explain --help' explain side level arc
refused '--hand needs a value, both|left|right' 'compare --help' compare good.passage --hand
refused '--bars is to be given once only' 'finger --help' finger good.passage --bars 1 --bars 2
refused '--bars: expected the first bar before the last, as in 1-2, found "2-1"' 'annotate --help' \
  annotate good.passage --bars 2-1
refused '--bars: expected bars as in 5-8 or 5, found "1..2"' 'annotate --help' \
  annotate good.passage --bars 1..2
