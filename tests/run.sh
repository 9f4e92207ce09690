#!/usr/bin/env bash
# Runs every test, in the browser too. Installs what the tests need where it is missing, builds, checks the formatting,
# and closes with one line: N passed, N failed.
set -uo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

fail() { printf '%s\n' "$1" >&2; printf '0 passed, 1 failed\n'; exit 1; }

command -v dotnet >/dev/null || fail "The .NET SDK named in global.json is missing."

missing=()
command -v chromium >/dev/null || command -v chromium-browser >/dev/null || command -v google-chrome >/dev/null || missing+=(chromium)
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

results=$(mktemp -d)
trap 'rm -rf "$results"' EXIT
dotnet test Training.sln --no-build --results-directory "$results" --report-xunit-trx --max-parallel-test-modules 2
code=$?

read -r executed passed skipped <<<"$(cat "$results"/*.trx 2>/dev/null | grep -o '<Counters [^>]*' | awk '
  { for (i = 2; i <= NF; i++) { split($i, pair, "="); gsub(/[^0-9]/, "", pair[2]); sum[pair[1]] += pair[2] } }
  END { print sum["executed"] + 0, sum["passed"] + 0, sum["total"] - sum["executed"] }')"
failed=$((executed - passed))
# A test host that crashes writes no result: trust its exit code.
if [ "$code" -ne 0 ] && [ "$failed" -eq 0 ]; then failed=1; fi
if [ "$executed" -eq 0 ]; then failed=1; fi
if [ "${skipped:-0}" -gt 0 ]; then
  printf '%s passed, %s failed, %s skipped\n' "$passed" "$failed" "$skipped"
else
  printf '%s passed, %s failed\n' "$passed" "$failed"
fi
[ "$failed" -eq 0 ]
