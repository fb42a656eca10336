#!/usr/bin/env bash
# Holds the sources to the layers and habits that DEVELOPERS.md describes. Prints each offence as
# file:line: what is wrong; exit status 1 where there is any.
#
#     check_structure.sh ROOT
set -uo pipefail
cd "$1" || exit 2

most_lines=400
floors="text score hand read rules scales fingering views write"
library="src/${floors// / src/}"
top_level="CMakeLists.txt DEVELOPERS.md LICENSE README.md demo docs include src tests"
# Headers with which a program reaches files, the terminal or the system.
outside='(iostream|istream|ostream|fstream|syncstream|iomanip|filesystem|cstdio|stdio\.h|csignal|signal\.h|unistd\.h|fcntl\.h|termios\.h|sys/.*|fmt/(os|ostream|color)\.h)'
# Calls that print or end the program.
printing='\b(cout|cerr|clog|stdout|stderr)\b|\b(printf|fprintf|puts|fputs|putchar|fmt::print)\s*\('
ending='\b(exit|_Exit|_exit|quick_exit|abort|terminate)\s*\('

work="$(mktemp -d)"
trap 'rm -rf "$work"' EXIT
offences="$work/offences"
code="$work/code" # the sources without comments and strings

# Each line that comes in is an offence against this rule.
against() { awk -v rule="$1" '{ print $0 " - " rule }'; }

sources_in() { find "$@" \( -name '*.cpp' -o -name '*.hpp' -o -name '*.in' \) 2>/dev/null | sort; }

strip_sources() {
  mkdir "$code"
  sources_in include src | xargs cp --parents --target-directory="$code"
  sources_in "$code" | xargs sed --in-place --regexp-extended \
    '/^[[:space:]]*#[[:space:]]*include/!s/"([^"\\]|\\.)*"/""/g; s,//.*,,'
}

# lines_of FOLDER PATTERN: file:line:text of the code that matches.
lines_of() { (cd "$code" && grep -s --recursive --line-number --extended-regexp -- "$2" "$1" | sort); }

# only_ours FOLDER PREFIXES: quoted includes begin with one of the prefixes.
only_ours() {
  lines_of "$1" '#\s*include\s*"' | grep --invert-match --extended-regexp "include\s*\"($2)/" |
    against "$1 may include only $2"
}

layers() {
  only_ours include 'fingerturn'
  # From the ground up; read, rules and scales stand side by side.
  only_ours src/text 'text|fingerturn'
  only_ours src/score 'score|text|fingerturn'
  only_ours src/hand 'hand|score|text|fingerturn'
  only_ours src/read 'read|hand|score|text|fingerturn'
  only_ours src/rules 'rules|hand|score|text|fingerturn'
  only_ours src/scales 'scales|score|text|fingerturn'
  only_ours src/fingering 'fingering|scales|hand|score|text|fingerturn'
  only_ours src/views 'views|hand|score|text|fingerturn'
  only_ours src/write 'write|views|hand|score|text|fingerturn'
  # In angle brackets a header of ours would slip past the checks above.
  for folder in include src; do
    lines_of "$folder" '#\s*include\s*<(fingerturn|'"${floors// /|}"'|cli)/' |
      against "our headers are included in quotes"
  done
}

library_keeps_to_itself() {
  for folder in include $library; do
    lines_of "$folder" "#\s*include\s*<$outside>" | against "only src/cli touches files and streams"
    lines_of "$folder" "$printing" | against "the library never prints"
    lines_of "$folder" "$ending" | against "the library never ends the program"
  done
}

# A function that says noexcept ends the program where memory runs out in it. What can be seen
# without compiling: a text, a list or a map that it makes, lengthens or gives back.
noexcept_allocates_nothing() {
  local files
  mapfile -t files < <(cd "$code" && grep --recursive --files-with-matches 'noexcept' include src)
  (cd "$code" && awk '
    BEGIN {
      owner = "std::(string|vector|deque|list|map|set|unordered_[a-z]+)(<.*>)?"
      making = owner " [a-z_]+ *[;({=]|" owner "[({]|fmt::format|make_(unique|shared)|[^a-z_]new [A-Za-z]|" \
        "(^|[^a-z_])(lower_case|to_string|printable|padded|wrapped|quoted)\\(|" \
        "\\.(push_back|emplace_back|emplace|append|insert|reserve|resize|assign)\\("
    }
    FNR == 1 { depth = 0 }
    { line = $0 }
    depth == 0 && line ~ "^ *(\\[\\[nodiscard\\]\\] )?" owner " [A-Za-z_:]+\\(.*noexcept" {
      print FILENAME ":" FNR ":" $0
    }
    depth == 0 && line ~ /noexcept( override)? *[{]/ { sub(/.*noexcept/, "", line); inside = 1 }
    inside {
      if (line ~ making) print FILENAME ":" FNR ":" $0
      depth += gsub(/[{]/, "", line) - gsub(/[}]/, "", line)
      inside = depth > 0
    }' "${files[@]}" /dev/null) | sort | against "what is noexcept allocates nothing"
}

# Two types of one name are one to the linker, which then may take the functions of either.
names_of_their_own() {
  grep --recursive --files-with-matches --include='*.hpp' '^namespace fingerturn {' include src tests |
    sort | xargs --no-run-if-empty grep --line-number --extended-regexp '^(struct|(enum )?class) \w+.*\{' /dev/null |
    awk -F '[: ]+' '{
      name = $3 == "enum" ? $5 : $4
      if (seen[name]++) print $1 ":" $2 ": another type of the name " name
    }'
}

short_files() {
  find src include tests -type f ! -path src/write/page/glyphs/outlines.cpp \( -name '*.?pp' -o -name '*.in' -o -name '*.sh' -o -name '*.py' \
    -o -name CMakeLists.txt -o -name run \) -exec wc -l {} + 2>/dev/null |
    awk -v most="$most_lines" '$1 > most && $2 != "total" { print $2 ":" $1 ": longer than " most " lines" }'
}

telling_names() {
  find src include tests demo docs 2>/dev/null |
    grep --extended-regexp '(^|/)(util|utils|utilities|misc|common|helpers?)(\.[^/]*)?$' |
    sed 's/$/:1: a name that tells nothing/'
}

# What git knows and does not ignore; where this is no checkout of its own, what is there.
top_level_entries() {
  if [[ "$(git rev-parse --show-toplevel 2>/dev/null)" == "$(pwd -P)" ]]; then
    git ls-files --cached --others --exclude-standard
  else
    find . -mindepth 1 -maxdepth 1 -not -name 'build*' -printf '%P\n'
  fi | cut --delimiter=/ --fields=1 | grep --invert-match '^\.' | sort --unique
}

tidy_top_level() {
  local entry
  comm -3 <(tr ' ' '\n' <<<"$top_level" | sort) <(top_level_entries) | while read -r entry; do
    if [[ " $top_level " == *" $entry "* ]]; then
      echo "$entry:1: missing at the top level"
    else
      echo "$entry:1: does not belong at the top level"
    fi
  done
}

strip_sources
for folder in include $library src/cli; do
  [[ -n "$(sources_in "$folder")" ]] || echo "$folder:1: no sources here"
done >>"$offences"
{ layers; library_keeps_to_itself; noexcept_allocates_nothing; names_of_their_own; short_files; telling_names; tidy_top_level; } >>"$offences"
if [[ -s "$offences" ]]; then
  cat "$offences"
  exit 1
fi
echo "$(sources_in include src | wc -l) sources keep to the structure"
