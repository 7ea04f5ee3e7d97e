#!/usr/bin/env bash
# Makes artifacts/toolpathforge-<version>-<system>.(tar.gz|zip) and artifacts/SHA256SUMS from this checkout.
# For this system a native executable; for the others, which cannot be compiled natively from here, one self-contained file compiled ahead.
#   bash scripts/publish.sh [system ...]      without a system: this one, win-x64, osx-arm64
set -u
cd "$(dirname "$0")/.."
export DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1 LC_ALL=C TZ=UTC
version=$(dotnet msbuild src/ToolpathForge.Cli -getProperty:Version) || exit 1
# One time for every file: that of the commit, so that the same commit gives the same bytes.
epoch=$(git log -1 --format=%ct 2>/dev/null || echo 315532800)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
made=""

# What goes with the executable: the job to try it on, the dialects to copy from, the licence. Catalogues and dialects are within it.
with_files() {
    cp LICENSE README.md "$1/"
    mkdir -p "$1/postprocessors" "$1/samples/boathouse"
    cp postprocessors/README.md postprocessors/*.toml "$1/postprocessors/"
    cp samples/README.md "$1/samples/"
    cp samples/boathouse/* "$1/samples/boathouse/"
}

pack() { # NAME, whose folder lies in $work
    find "$work/$1" -exec touch -h -d "@$epoch" {} +
    case "$1" in
        *-win-*)
            command -v zip >/dev/null 2>&1 || { echo "The archive for Windows needs zip: install it." >&2; return 1; }
            archive="artifacts/$1.zip"
            rm -f "$archive"
            (cd "$work" && find "$1" -type f | sort | zip -X -q -@ "$OLDPWD/$archive") || return 1 ;;
        *)
            archive="artifacts/$1.tar.gz"
            tar --sort=name --owner=0 --group=0 --numeric-owner --mtime="@$epoch" --mode=go-w -C "$work" -cf - "$1" | gzip -9n > "$archive" || return 1 ;;
    esac
    made="$made $(basename "$archive")"
}

case "$(uname -s)-$(uname -m)" in
    Linux-x86_64) here=linux-x64 ;;
    Linux-aarch64) here=linux-arm64 ;;
    Darwin-arm64) here=osx-arm64 ;;
    Darwin-x86_64) here=osx-x64 ;;
    *) echo "There is no native compiler for $(uname -s) on $(uname -m) that this script knows." >&2; exit 2 ;;
esac
[ $# -gt 0 ] || set -- "$here" win-x64 osx-arm64
mkdir -p artifacts
failed=0
for system in "$@"; do
    name="toolpathforge-$version-$system"
    folder="$work/$name"
    mkdir -p "$folder"
    if [ "$system" = "$here" ]; then
        executable=$(bash scripts/native.sh release) || { failed=1; continue; }
        cp "$executable" "$folder/"
        kind="native"
    else
        dotnet publish src/ToolpathForge.Cli -c Release -r "$system" --self-contained true -p:Ahead=true -p:PublishSingleFile=true -p:EnableCompressionInSingleFile=false -p:DebugType=none \
            --artifacts-path "$PWD/artifacts/ahead" -o "$work/out-$system" -nologo -v quiet \
            || { echo "$system could not be made; the lines above say why." >&2; failed=1; continue; }
        cp "$work/out-$system"/toolpathforge* "$folder/"
        rm -f "$folder"/*.pdb
        kind="compiled ahead, with its runtime"
    fi
    with_files "$folder"
    pack "$name" || { failed=1; continue; }
    size() { echo "$(($(wc -c < "$1") * 10 / 1048576))" | sed 's/\(.\)$/.\1/; s/^\./0./'; }
    echo "$archive: $(size "$archive") MB, executable $(size "$(ls "$folder"/toolpathforge*)") MB, $kind"
done
[ -n "$made" ] && (cd artifacts && sha256sum $made > SHA256SUMS 2>/dev/null || shasum -a 256 $made > SHA256SUMS)
exit $failed
