#!/usr/bin/env bash
# Installs a finished build, builds a small project against what was installed, and runs it.
#
#     check_install.sh CMAKE BUILD_DIR COMPILER FLAGS VERSION
set -euo pipefail

cmake="$1" build="$2" compiler="$3" flags="$4" version="$5"
consumer="$(cd "$(dirname "${BASH_SOURCE[0]}")/consumer" && pwd)"
work="$(mktemp -d)"
trap 'rm -rf "$work"' EXIT

"$cmake" --install "$build" --prefix "$work/prefix" >"$work/install.log"
"$cmake" -S "$consumer" -B "$work/build" -DCMAKE_PREFIX_PATH="$work/prefix" \
  -DCMAKE_CXX_COMPILER="$compiler" -DCMAKE_CXX_FLAGS="$flags"
"$cmake" --build "$work/build"

# C, D, E, F with 1, 2, 3, 1 (common practice, no source): the side stays from 2 to 3 only.
diff - <("$work/build/consumer") <<'END'
preparatory
single
double
single
END

# The program runs from where it was installed.
"$work/prefix/bin/fingerturn" --version | grep --fixed-strings --word-regexp "$version"
