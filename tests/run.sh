#!/usr/bin/env bash
# Builds everything and runs every test. Ends with one line: N passed, N failed[, N skipped].
set -u
cd "$(dirname "$0")/.."

# Outside references the tests measure against. Installed where we may (Debian, root); named otherwise.
packages="python3-ezdxf python3-shapely python3-pyclipper poppler-utils librsvg2-bin mono-devel"
missing=""
for package in $packages; do
    dpkg -s "$package" >/dev/null 2>&1 || missing="$missing $package"
done
if [ -n "$missing" ]; then
    if [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null 2>&1; then
        echo "Installing outside references:$missing"
        { apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing; } >/dev/null 2>&1 \
            || echo "Could not install:$missing"
    else
        echo "Outside references missing; the tests that need them are skipped. Install:$missing"
    fi
fi

# Strict: analyzers and documentation files, which a plain build does without.
dotnet build -c Release -warnaserror -p:Strict=true -nologo -v quiet || { echo "0 passed, 1 failed"; exit 1; }

results=$(mktemp -d)
native=""
# A build that is still at work is ended with us; its own processes with it.
trap 'if [ -n "$native" ]; then kill -- -"$native" 2>/dev/null; fi; rm -rf "$results"' EXIT

# Packages and the native executable are made beside the tests, and tried when both are done. Without a linker the tests that need it say so.
set -m
{ bash scripts/pack.sh "$results/packages" --no-build && bash scripts/native.sh; } > "$results/native-path" 2> "$results/native-log" &
native=$!
set +m

run() { # NAME FILTER
    dotnet test tests/ToolpathForge.Tests -c Release --no-build -nologo --filter "$2" --logger "trx;LogFileName=$1.trx" --results-directory "$results"
}
run managed "Published!=yes"
status=$?
wait "$native"
if [ $? -ne 0 ]; then cat "$results/native-log"; fi
native=""
TOOLPATHFORGE_NATIVE=$(tail -n 1 "$results/native-path")
export TOOLPATHFORGE_NATIVE TOOLPATHFORGE_PACKAGES="$results/packages"
run published "Published=yes" || status=1

counters=$(cat "$results"/*.trx 2>/dev/null | grep -o '<Counters [^>]*' || true)
count() { echo "$counters" | grep -o "\b$1=\"[0-9]*\"" | grep -o '[0-9]*' | awk '{ n += $1 } END { if (NR == 2) print n }'; }
passed=$(count passed); failed=$(count failed); total=$(count total)
if [ -z "${passed:-}" ]; then
    echo "0 passed, 1 failed"
    exit 1
fi
skipped=$((total - passed - failed))
if [ "${CI:-}" = true ] && [ "$skipped" -gt 0 ]; then
    echo "In CI a skipped test counts as failed."
    failed=$((failed + skipped)); skipped=0; status=1
fi
if [ "$skipped" -gt 0 ]; then
    echo "$passed passed, $failed failed, $skipped skipped"
else
    echo "$passed passed, $failed failed"
fi
[ "$status" -eq 0 ] && [ "$failed" -eq 0 ]
