#!/usr/bin/env bash
# check_structure.sh must be able to fail: takes a small tree without offences, commits one offence
# at a time and expects it to be found.
set -uo pipefail

check="$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)/check_structure.sh"
work="$(mktemp -d)"
trap 'rm -rf "$work"' EXIT
tree="$work/tree"
failures=0

make_tree() {
  rm -rf "$tree"
  mkdir -p "$tree"/{include/fingerturn,src/{text,score,hand,read,rules,scales,fingering,views,write,cli},tests}
  mkdir -p "$tree"/{demo,docs}
  touch "$tree"/{CMakeLists.txt,DEVELOPERS.md,LICENSE,README.md}
  touch "$tree"/include/fingerturn/pitch.hpp
  touch "$tree"/src/{text,score,hand,read,rules,scales,fingering,views,write,cli}/a.cpp
  printf '#include <iostream>\n#include "cli/a.hpp"\n' >"$tree/src/cli/a.cpp"
  printf 'namespace fingerturn {\nenum class Row : int { a };\nstruct Line;' >"$tree/src/write/a.hpp"
  printf 'namespace fingerturn {\nstruct Line {};' >"$tree/src/score/a.hpp"
  printf '#include "score/a.hpp"\n#include "fingerturn/pitch.hpp"\n' >"$tree/src/rules/a.cpp"
}

fail() {
  echo "$1"
  failures=$((failures + 1))
}

# expect_offence FILE TEXT MESSAGE: with the text in the file, the check fails with the message.
expect_offence() {
  make_tree
  mkdir -p "$(dirname "$tree/$1")"
  printf '%b\n' "$2" >>"$tree/$1"
  local output
  if output="$(bash "$check" "$tree")"; then
    fail "not found: $2 in $1"
  elif [[ "$output" != "$1:"*"$3"* || "$output" == *$'\n'* ]]; then
    fail "expected for $1 only \"$3\", found: $output"
  fi
}

make_tree
bash "$check" "$tree" || fail "the tree without offences has some"

expect_offence src/score/a.cpp '#include "read/a.hpp"' 'may include only score|text|fingerturn'
expect_offence src/read/a.cpp '#include "rules/a.hpp"' 'may include only'
expect_offence src/rules/a.cpp '#include "write/a.hpp"' 'may include only'
expect_offence src/rules/a.cpp '#include "a.hpp"' 'may include only'
expect_offence src/fingering/a.cpp '#include "write/a.hpp"' 'may include only'
expect_offence src/rules/a.cpp '#include "fingering/a.hpp"' 'may include only'
expect_offence src/text/a.cpp '#include "score/a.hpp"' 'may include only'
expect_offence src/hand/a.cpp '#include "rules/a.hpp"' 'may include only'
expect_offence src/scales/a.cpp '#include "hand/a.hpp"' 'may include only'
expect_offence src/fingering/a.cpp '#include "rules/a.hpp"' 'may include only'
expect_offence src/views/a.cpp '#include "write/a.hpp"' 'may include only'
expect_offence src/write/a.cpp '# include "read/a.hpp"' 'may include only'
expect_offence src/write/a.cpp '#include "cli/a.hpp"' 'may include only'
expect_offence include/fingerturn/pitch.hpp '#include "score/a.hpp"' 'may include only fingerturn'
expect_offence src/read/a.cpp '#include <rules/a.hpp>' 'in quotes'
expect_offence src/score/a.cpp '#include <iostream>' 'only src/cli touches'
expect_offence src/read/a.cpp '#include <sys/stat.h>' 'only src/cli touches'
expect_offence include/fingerturn/pitch.hpp '#include <filesystem>' 'only src/cli touches'
expect_offence src/write/a.cpp 'std::cout << "x";' 'never prints'
expect_offence src/write/a.cpp 'f("printf(") ; std::printf("x");' 'never prints'
expect_offence src/rules/a.cpp 'std::exit(1);' 'never ends the program'
expect_offence src/text/a.cpp 'bool f(int a) noexcept {\n  std::string b(a, 1);\n}' 'allocates nothing'
expect_offence src/text/a.cpp 'bool f(int a) noexcept {\n  return g(lower_case(a));\n}' 'allocates nothing'
expect_offence src/cli/a.cpp 'void f() noexcept { a_.push_back(1); }' 'allocates nothing'
expect_offence include/fingerturn/pitch.hpp 'std::string f() noexcept;' 'allocates nothing'
expect_offence tests/b.hpp 'namespace fingerturn {\nstruct Row {};' 'another type of the name Row'
expect_offence tests/a.cpp "$(printf 'x\\n%.0s' {1..400})" 'longer than 400 lines'
expect_offence src/score/util.hpp '' 'tells nothing'
expect_offence src/read/common.cpp '' 'tells nothing'
expect_offence notes.txt '' 'does not belong'

make_tree
rm "$tree/README.md" "$tree/src/read/a.cpp"
output="$(bash "$check" "$tree")" && fail "nothing missed"
[[ "$output" == *"src/read:1: no sources"*"README.md:1: missing"* ]] || fail "found: $output"

# What only looks like an offence is none.
make_tree
printf 'f("exit(1), std::cout"); // std::cout, exit(1)\nint exited(int);\n' >>"$tree/src/score/a.cpp"
printf 'std::string g() {\n  std::string a;\n  return a;\n}\n' >>"$tree/src/score/a.cpp"
printf 'const std::string& f(const std::string& a) noexcept {\n  const std::string& b = a;\n' >>"$tree/src/text/a.cpp"
printf '  return b;\n}\nstd::string h() { return std::string(); }\n' >>"$tree/src/text/a.cpp"
mkdir "$tree/build"
touch "$tree/.gitignore"
bash "$check" "$tree" || fail "an offence where there is none"

echo "failures: $failures"
[[ $failures -eq 0 ]]
