#!/usr/bin/env bash
# Runs every test, in the browser too. Installs what the tests need where it is missing, builds, checks the formatting,
# and closes with one line: N passed, N failed.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

fail() { printf '%s\n' "$1" >&2; printf '0 passed, 1 failed\n'; exit 1; }

command -v dotnet >/dev/null || fail "The .NET SDK named in global.json is missing."

missing=()
# The browser without windows does the same for half the work; where the system has no such package, the whole one does.
command -v chromium-headless-shell >/dev/null || command -v chromium >/dev/null || command -v chromium-browser >/dev/null \
  || command -v google-chrome >/dev/null || missing+=(chromium)
# The letters of printed sheets, and what turns such a sheet into a picture so that its square code can be read back.
[ -e /usr/share/fonts/truetype/dejavu/DejaVuSans.ttf ] || missing+=(fonts-dejavu-core)
command -v pdftoppm >/dev/null || missing+=(poppler-utils)
if [ "${#missing[@]}" -gt 0 ]; then
  command -v apt-get >/dev/null || fail "Missing: ${missing[*]}, and there is no apt-get to install them with."
  as_root=(); [ "$(id -u)" = 0 ] || as_root=(sudo)
  { "${as_root[@]}" apt-get update -qq && DEBIAN_FRONTEND=noninteractive "${as_root[@]}" apt-get install -y -qq --no-install-recommends \
      "${missing[@]}"; } >/dev/null || fail "Could not be installed: ${missing[*]}."
fi

# Hindi without letters for it is a page of boxes, whose widths say nothing.
if command -v apt-get >/dev/null && command -v fc-list >/dev/null && [ -z "$(fc-list :lang=hi)" ]; then
  as_root=(); [ "$(id -u)" = 0 ] || as_root=(sudo)
  DEBIAN_FRONTEND=noninteractive "${as_root[@]}" apt-get install -y -qq --no-install-recommends fonts-noto-core >/dev/null \
    || echo "No letters for Hindi could be installed; its pages are tested with what there is." >&2
fi

dotnet tool restore >/dev/null || fail "The tools of .config/dotnet-tools.json could not be restored."
dotnet restore Training.sln -v quiet || fail "The packages could not be restored."
dotnet build Training.sln --no-restore -v quiet -clp:NoSummary || fail "The build failed."
dotnet format Training.sln --no-restore --verify-no-changes || fail "The formatting differs from .editorconfig: run dotnet format."

said=$(mktemp)
trap 'rm -f "$said"' EXIT
dotnet test Training.sln --no-build --no-ansi --no-progress --max-parallel-test-modules 2 | tee "$said"
code=${PIPESTATUS[0]}

# The runner's own sum of all projects, which it prints last; result files of projects that begin at once can share a name.
sum_of() { awk -v name="$1:" '/^Test run summary/ { seen = 1 } seen && $1 == name { value = $2 } END { print value + 0 }' "$said"; }
passed=$(sum_of succeeded) failed=$(sum_of failed) skipped=$(sum_of skipped)
# A test host that crashes writes no result: trust its exit code.
if [ "$code" -ne 0 ] && [ "$failed" -eq 0 ]; then failed=1; fi
if [ "$passed" -eq 0 ] && [ "$failed" -eq 0 ]; then failed=1; fi
if [ "${skipped:-0}" -gt 0 ]; then
  printf '%s passed, %s failed, %s skipped\n' "$passed" "$failed" "$skipped"
else
  printf '%s passed, %s failed\n' "$passed" "$failed"
fi
[ "$failed" -eq 0 ]
