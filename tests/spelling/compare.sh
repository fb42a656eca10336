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

command -v node >/dev/null || lacking "there is no node"
mkdir -p "$folder"
[[ -e "$folder/tonal.min.js" ]] ||
  fetch_files "$package" browser "$here/tonal.sha256" "$folder" ||
  lacking "$package could not be fetched with npm"
exec node "$here/compare.mjs" "$FINGERTURN" "$folder/tonal.min.js"
