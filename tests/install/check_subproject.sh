#!/usr/bin/env bash
# Takes the sources into another project, as an archive and as a shared library, and uses the latter
# installed as well. What was compiled stays in the folder WORK for the next time.
#
#     check_subproject.sh VERSION SOURCES WORK CMAKE COMPILER
set -euo pipefail
# shellcheck source=SCRIPTDIR/consumer.bash
source "$(dirname "${BASH_SOURCE[0]}")/consumer.bash"

version="$1" sources="$2" work="$3" cmake="$4" compiler="$5"
rm -rf "$work/prefix" "$work/installed"

# build ARGUMENT...: makes the consumer with these words for CMake.
build() {
  "$cmake" -S "$consumer" -B "$work/build" -DSOURCES_OF_FINGERTURN="$sources" \
    -DCMAKE_CXX_COMPILER="$compiler" -DFINGERTURN_ROOMS_AS_ONE=ON "$@"
  "$cmake" --build "$work/build" --parallel
  answers "$work/build/consumer"
}

fail() {
  echo "$1" >&2
  exit 1
}

# Position-independent, so that what follows need not compile all anew.
build -DCMAKE_POSITION_INDEPENDENT_CODE=ON -DBUILD_SHARED_LIBS=OFF -DFINGERTURN_INSTALL=OFF
! grep --extended-regexp 'CLI11|Threads' "$work/build/CMakeCache.txt" ||
  fail "the library alone asks for what the program needs"
grep --quiet --line-regexp 'CMAKE_BUILD_TYPE:STRING=' "$work/build/CMakeCache.txt" ||
  fail "a kind of build is imposed"
[[ ! -e "$work/build/fingerturn/fingerturn" ]] || fail "the program was built"
"$cmake" --install "$work/build" --prefix "$work/prefix"
[[ ! -e "$work/prefix" ]] || fail "something is installed that nobody asked for"

build -DBUILD_SHARED_LIBS=ON -DFINGERTURN_INSTALL=ON
"$cmake" --install "$work/build" --prefix "$work/prefix"
readelf --dynamic "$work/prefix/lib/libfingerturn.so.$version" |
  grep --fixed-strings "soname: [libfingerturn.so.${version%.*}]"
use_installed "$work/prefix" "$work/installed" "$cmake" "$compiler"
readelf --dynamic "$work/installed/consumer" | grep --fixed-strings "[libfingerturn.so.${version%.*}]"
