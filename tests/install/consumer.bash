# shellcheck shell=bash
# The small project that uses the library, whichever way it comes by it.
consumer="$(cd "$(dirname "${BASH_SOURCE[0]}")/consumer" && pwd)"

# C, D, E, F with 1, 2, 3, 1 (common practice, no source): the side stays from 2 to 3 only.
answers() { diff <(printf '%s\n' preparatory single double single) <("$1"); }

# use_installed PREFIX BUILD CMAKE COMPILER [FLAG]...: builds the consumer with what is installed
# there, as CMake finds it and as pkg-config does, and runs it.
use_installed() {
  local prefix="$1" build="$2" cmake="$3" compiler="$4" flags=("${@:5}") words
  "$cmake" -S "$consumer" -B "$build" -DCMAKE_PREFIX_PATH="$prefix" \
    -DCMAKE_CXX_COMPILER="$compiler" -DCMAKE_CXX_FLAGS="${flags[*]}"
  "$cmake" --build "$build"
  answers "$build/consumer"

  export PKG_CONFIG_PATH="$prefix/lib/pkgconfig"
  read -r -a words <<<"$(pkg-config --cflags --libs fingerturn)"
  "$compiler" -std=c++20 "${flags[@]}" "$consumer/main.cpp" "${words[@]}" \
    "-Wl,-rpath,$(pkg-config --variable=libdir fingerturn)" -o "$build/by_pkg_config"
  answers "$build/by_pkg_config"
}
