#!/usr/bin/env bash
# Pages: several inputs on one, or each passage on its own in a folder with an index.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

printf 'passage: The first, & <b>last</b>\n%s\n' "$scale" >one.passage
printf 'passage: zweitens: \xc3\xbcber\n%s\npassage: ../..//etc\n%s\n' "$scale" "$scale" >two.passage
echo "$scale" >untitled.passage
echo 'C4:9' >bad.passage

# One page of all inputs, with its contents.
run annotate --format html one.passage two.passage untitled.passage
status_is 0
is_empty err
is "$(grep --count '<!DOCTYPE html>' out)" 1
is "$(grep --count '<h2 id="passage-' out)" 4
has out '<h1><bdi>4 passages</bdi></h1>'
has out '<a href="#passage-1"><bdi>The first, &amp; &lt;b&gt;last&lt;/b&gt;</bdi></a>'
has out '<h2 id="passage-4"><bdi>untitled</bdi></h2>'
run annotate --format svg one.passage two.passage
is "$(grep --count '<svg xmlns' out)" 1
run annotate --format html untitled.passage
has out '<title>untitled</title>'

# A folder: a page for each passage and an index, names made of numbers and titles.
names='01-the-first-b-last-b 02-zweitens-ber 03-etc 04-untitled'
for format in html svg markdown; do
  ending="${format/markdown/md}"
  index="index.${ending/svg/html}"
  run annotate --format "$format" -o "$format/" one.passage two.passage untitled.passage
  status_is 0
  is_empty out
  is_empty err
  expected="$(for name in $names; do echo "$name.$ending"; done && echo "$index")"
  is "$(ls -A "$format")" "$expected"
  for name in $names; do has "$format/$index" "$name.$ending"; done
done
# A page of a folder is the same as by itself, but for the way back.
without_way_back() { sed 's|<p class="way"><a href="index.html">Contents</a></p>||' "$1"; }
has html/01-the-first-b-last-b.html '<a href="index.html">Contents</a>'
run annotate --format html one.passage
lacks out '<a href="index.html">'
same_files <(without_way_back html/01-the-first-b-last-b.html) out
has html/index.html ', 1 bar</bdi>'
has html/index.html '>The first, &amp; &lt;b&gt;last&lt;/b&gt;</bdi></a>'
has svg/index.html '<img src="01-the-first-b-last-b.svg" alt="Picture of the swings: The first,'
has markdown/index.md '1. [The first, \& \<b\>last\</b\>](01-the-first-b-last-b.md)'

# A folder that is there needs no slash, and what is in it already stays or is replaced.
echo kept >html/kept.txt
echo old >html/01-the-first-b-last-b.html
run annotate --format html -o html one.passage
status_is 0
is "$(cat html/kept.txt)" kept
same_files <(without_way_back html/01-the-first-b-last-b.html) \
  <("$FINGERTURN" annotate --format html one.passage)
is "$(find html -name '*.??????' ! -name '*.html' ! -name kept.txt)" ''

# What could be read is written; where nothing could, no folder is made.
run annotate --format html -o partly/ bad.passage one.passage
status_is 3
is "$(ls partly)" $'01-the-first-b-last-b.html\nindex.html'
run annotate --format html -o nothing/ bad.passage
status_is 3
holds "no folder is made for nothing" test ! -e nothing

# No input is overwritten, and then nothing else is written either.
mkdir folder
cp one.passage folder/02-zweitens-ber.md
cp one.passage original
run annotate --format markdown -o folder/ one.passage two.passage folder/02-zweitens-ber.md
status_is 2
has err 'folder/02-zweitens-ber.md: this is an input; choose another name for the output'
same_files folder/02-zweitens-ber.md original
is "$(ls folder)" 02-zweitens-ber.md

# Places where no folder can be.
run annotate --format html -o missing/deeper/ one.passage
status_is 2
has err 'missing/deeper/: cannot make this folder: '
run annotate --format html -o one.passage/ one.passage
status_is 2
has err 'one.passage/: cannot make this folder: '
same_files one.passage original
run annotate -o folder one.passage
status_is 2
has err 'folder: cannot write: Is a directory'

# The drawing of the swing.
run annotate --trace --ascii one.passage
status_is 0
has out 'to right   o        2      3'
holds "no row says what the drawing shows" bash -c '! grep --quiet "^prepare" out'
holds "the drawing is ASCII" bash -c '! LC_ALL=C grep --quiet "[^ -~]" out'
run annotate --trace --ascii --columns 40 one.passage
holds "the drawing keeps to 40 columns" test "$(widest out)" -le 40

# Bars, hands and tempo hold for pages as well.
run annotate --format html --bars 1 --tempo 300 one.passage
status_is 0
has out 'quarter = 300, as asked for'
run annotate --format html --hand left one.passage
status_is 2
is_empty out
has err 'nothing is played by the left hand'

# The folds are open where cues or reasons are asked for, and so are printed.
run annotate --format html one.passage
lacks out '<details open'
for words in --cues --detail; do
  run annotate --format html "$words" one.passage
  has out '<details open=""><summary>'
done
