#!/usr/bin/env bash
# Runs every test. Installs Chromium and Node.js from Debian's packages when they are missing (needs root for that),
# builds, checks the formatting, runs all test projects, and ends with "N passed, N failed, N skipped".
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

install_from_debian() {
  local missing=()
  command -v chromium >/dev/null 2>&1 || missing+=(chromium)
  [ -e /usr/share/fonts/truetype/dejavu ] || missing+=(fonts-dejavu-core)
  command -v npm >/dev/null 2>&1 || missing+=(nodejs npm)
  [ ${#missing[@]} -eq 0 ] && return 0
  echo "Installing ${missing[*]} from Debian's packages"
  local as_root=""
  [ "$(id -u)" -eq 0 ] || as_root="sudo"
  $as_root apt-get update -qq && DEBIAN_FRONTEND=noninteractive $as_root apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
}

install_from_debian || { echo "0 passed, 1 failed, 0 skipped"; exit 1; }

dotnet restore EstateWater.sln -v quiet || { echo "0 passed, 1 failed, 0 skipped"; exit 1; }
dotnet format EstateWater.sln --no-restore --verify-no-changes --exclude src/EstateWater.Data/Migrations \
  || { echo "dotnet format would change the files above"; echo "0 passed, 1 failed, 0 skipped"; exit 1; }
dotnet build EstateWater.sln --no-restore -v quiet || { echo "0 passed, 1 failed, 0 skipped"; exit 1; }

log=$(mktemp)
trap 'rm -f "$log"' EXIT
# One project after the other: browsers and component tests starve each other on two cores.
dotnet test --solution EstateWater.sln --no-build --no-restore --max-parallel-test-modules 1 2>&1 | tee "$log"
status=${PIPESTATUS[0]}

count() { sed -n "s/^ *$1: *\([0-9][0-9]*\).*$/\1/p" "$log" | tail -n 1; }
passed=$(count succeeded) failed=$(count failed) skipped=$(count skipped)
if [ -z "$passed" ] || [ "$passed" -eq 0 ]; then
  echo "no test ran"
  echo "0 passed, 1 failed, 0 skipped"
  exit 1
fi
[ "$status" -eq 0 ] || [ "${failed:-0}" -gt 0 ] || failed=1
echo "$passed passed, ${failed:-0} failed, ${skipped:-0} skipped"
exit "$status"
