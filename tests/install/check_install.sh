#!/usr/bin/env bash
# Installs a finished build and uses what was installed.
#
#     check_install.sh VERSION BUILD_DIR CMAKE COMPILER [FLAG]...
set -euo pipefail
# shellcheck source=SCRIPTDIR/consumer.bash
source "$(dirname "${BASH_SOURCE[0]}")/consumer.bash"

version="$1" build="$2"
shift 2
work="$(mktemp -d)"
trap 'rm -rf "$work"' EXIT

"$1" --install "$build" --prefix "$work/prefix" >"$work/install.log"
# From another place than it was installed to.
mv "$work/prefix" "$work/moved"
use_installed "$work/moved" "$work/build" "$@"

# So does the program.
"$work/moved/bin/fingerturn" --version | grep --fixed-strings --line-regexp "fingerturn $version"

# The guides are where man and the shells look for them.
for guide in man/man1/fingerturn.1 man/man1/fingerturn-scale.1 bash-completion/completions/fingerturn \
  zsh/site-functions/_fingerturn fish/vendor_completions.d/fingerturn.fish; do
  test -s "$work/moved/share/$guide"
done
