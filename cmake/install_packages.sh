#!/bin/sh
# install_packages.sh PACKAGE...: installs from Debian's archive those that are missing, and says which. Where it cannot,
# it prints the one command to run and fails. Needs no network when nothing is missing.
set -eu

missing=
for package in "$@"; do
  case "$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null || true)" in
    installed) ;;
    *) missing="$missing $package" ;;
  esac
done
[ -n "$missing" ] || exit 0

as_root=
if [ "$(id -u)" -ne 0 ]; then
  if ! command -v sudo >/dev/null 2>&1; then
    echo "These packages are missing, and neither root nor sudo is at hand. Run this as root, then try again:" >&2
    echo "  apt-get update && apt-get install -y --no-install-recommends$missing" >&2
    exit 1
  fi
  as_root=sudo
fi

echo "Installing from Debian's archive:$missing"
export DEBIAN_FRONTEND=noninteractive
install() {
  # shellcheck disable=SC2086  # a list of words
  $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >/dev/null
}
# The package list may be old or absent: only then is it asked for again.
if ! install 2>/dev/null; then
  if ! { $as_root apt-get update -qq && install; }; then
    echo "They could not be installed. Run this, then try again:" >&2
    echo "  ${as_root:+$as_root }apt-get update && ${as_root:+$as_root }apt-get install -y --no-install-recommends$missing" >&2
    exit 1
  fi
fi
