#!/usr/bin/env bash
# Builds the native executable for this system into artifacts/native/out and prints its path. What has not changed since is not built again.
#   bash scripts/native.sh [release]      "release" tells the commit in --version; the tests do without, so that a commit alone builds nothing anew
set -u
cd "$(dirname "$0")/.."
kind="${1:-test}"

case "$(uname -s)" in
    Linux) system=linux ;;
    Darwin) system=osx ;;
    *) echo "scripts/native.sh builds on Linux and macOS; on $(uname -s) run: dotnet publish src/ToolpathForge.Cli -c Release -r win-x64 -p:Native=true" >&2; exit 2 ;;
esac
case "$(uname -m)" in
    x86_64 | amd64) machine=x64 ;;
    aarch64 | arm64) machine=arm64 ;;
    *) echo "There is no native compiler of .NET for $(uname -m); run from source instead." >&2; exit 2 ;;
esac

# A linker, and on Linux the headers of zlib. Installed where we may (Debian, root); named otherwise.
linker() { command -v clang >/dev/null 2>&1 || command -v gcc >/dev/null 2>&1; }
zlib() { [ "$system" = osx ] || echo '#include <zlib.h>' | cc -E - >/dev/null 2>&1 || [ -e /usr/include/zlib.h ]; }
if ! linker || ! zlib; then
    if [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null 2>&1; then
        { apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends clang zlib1g-dev; } >/dev/null 2>&1
    fi
    if ! linker || ! zlib; then
        echo "The native executable needs a linker and zlib: install clang and zlib1g-dev (Debian), or Xcode's command line tools (macOS)." >&2
        exit 2
    fi
fi

# Whatever the executable is made of: sources, catalogues, settings, and the SDK.
made_of=$({
    echo "$kind $system-$machine $(dotnet --version)"
    if [ "$kind" = release ]; then git rev-parse HEAD 2>/dev/null; fi
    find src shared postprocessors Directory.Build.props Directory.Packages.props scripts/native.sh -type f \
        -not -path '*/bin/*' -not -path '*/obj/*' -not -name '*.md' | LC_ALL=C sort | tr '\n' '\0' | xargs -0 cksum
} | cksum)
out=artifacts/native/out
if [ "$(cat artifacts/native/made-of 2>/dev/null)" != "$made_of" ] || [ ! -x "$out/toolpathforge" ]; then
    rm -rf "$out" artifacts/native/made-of
    commit=true
    [ "$kind" = release ] && commit=false
    # One node at a time, and no server that goes on afterwards: the tests run beside this.
    nice -n 5 dotnet publish src/ToolpathForge.Cli -c Release -r "$system-$machine" -p:Native=true -p:NoCommit=$commit \
        --artifacts-path "$PWD/artifacts/native" -o "$out" -nologo -v quiet -nodeReuse:false >&2 || { echo "The native executable could not be built." >&2; exit 1; }
    rm -f "$out"/*.pdb "$out"/*.dbg "$out"/*.xml
    rm -rf "$out"/*.dSYM
    echo "$made_of" > artifacts/native/made-of
fi
echo "$PWD/$out/toolpathforge"
