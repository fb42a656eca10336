#!/usr/bin/env bash
# Where the system speaks another language, with a decimal comma, other digits, other letters or
# another encoding, every report is the same, byte for byte.
# shellcheck source=SCRIPTDIR/checks.bash
source "$(dirname "${BASH_SOURCE[0]}")/checks.bash"

cp "$FINGERTURN_SOURCE_DIR"/demo/*.{passage,musicxml} .
printf 'passage: Übung İı\ntempo: 60\nC4 D\n' >title.passage
echo 'C4:9 X:İ' >wrong.passage

# All that the program can print: reports in every form, lists, help and messages.
print_all() {
  local format
  for format in text html svg markdown json jsonl passage; do
    "$FINGERTURN" annotate mixed.passage ferry.passage --detail --suggest --format "$format"
  done
  "$FINGERTURN" annotate last-tram.musicxml --format musicxml
  "$FINGERTURN" finger title.passage --why 2 --alternatives 2
  "$FINGERTURN" finger title.passage --format markdown --alternatives 2
  "$FINGERTURN" practice last-tram.musicxml --minutes 20 --format json
  "$FINGERTURN" practice last-tram.musicxml --minutes 20
  "$FINGERTURN" compare --suggest ferry.passage --format json
  "$FINGERTURN" check .
  "$FINGERTURN" check . --format jsonl --suggest
  "$FINGERTURN" find 'DOUBLE x1.5+' .
  "$FINGERTURN" find 'single in' . --format json
  "$FINGERTURN" scale 'B-FLAT MINOR' --format musicxml
  "$FINGERTURN" explain --messages
  "$FINGERTURN" explain TWIST
  "$FINGERTURN" annotate --help
  "$FINGERTURN" annotate wrong.passage missing.passage --tempo 1,5
}

# make_locale NAME DECIMAL_POINT: one that is made and is not what it should be would prove nothing.
make_locale() {
  localedef --no-archive --inputfile "${1%%.*}" --charmap "${1#*.}" "./locales/$1"
  is "$(LC_ALL="$1" locale charmap decimal_point)" "${1#*.}"$'\n'"$2"
}

# In the C locale, and in two that are not there.
print_all >expected 2>&1
holds "much is printed" test "$(wc --lines <expected)" -gt 1000
for name in C POSIX xx_YY.UTF-8 $'\xff'; do
  # The shell, which speaks it as well, complains of what is not there.
  { LC_ALL="$name" LANG="$name" print_all >out 2>&1; } 2>/dev/null
  same_files out expected
done

if ! command -v localedef >/dev/null || [[ ! -e /usr/share/i18n/locales/de_DE ]]; then
  echo "SKIPPED: the package locales is not there: other languages"
  holds "locales can be made" test "${CI:-}" != true
  exit 0
fi
mkdir locales
export LOCPATH="$PWD/locales"
# The C library keeps what this says.
export ASAN_OPTIONS=detect_leaks=0
while read -r name decimal_point; do
  make_locale "$name" "$decimal_point"
  LC_ALL="$name" LANG="$name" LANGUAGE="${name%%_*}" print_all >out 2>&1
  same_files out expected
done <<'END'
de_DE.UTF-8 ,
tr_TR.UTF-8 ,
ar_EG.UTF-8 .
fa_IR.UTF-8 .
ja_JP.EUC-JP .
END
