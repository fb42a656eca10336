#!/usr/bin/env bash
# Compares the notes of all scales and arpeggios with those of the npm package tonal, which is kept
# in a folder:
#
#     compare.sh FOLDER
#
# Where the package, or node, cannot be had the status is 77, for skipped; with CI=true it is 1.
# In the environment: FINGERTURN, the program.
set -euo pipefail

package=tonal@6.5.1
here="$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)"
folder="$1"
# shellcheck source=SCRIPTDIR/../npm/package.bash
source "$here/../npm/package.bash"

fetch() {
  local work
  work="$(mktemp -d "$folder/fetching.XXXXXX")"
  if ! { unpack_package "$package" "$work" && (cd "$work/package/browser" &&
    sha256sum --check --strict --quiet "$here/tonal.sha256"); }; then
    rm -r "$work"
    return 1
  fi
  mv "$work/package/browser/tonal.min.js" "$folder"
  rm -r "$work"
}

command -v node >/dev/null || lacking "there is no node"
mkdir -p "$folder"
[[ -e "$folder/tonal.min.js" ]] || fetch || lacking "$package could not be fetched with npm"
exec node "$here/compare.mjs" "$FINGERTURN" "$folder/tonal.min.js"
