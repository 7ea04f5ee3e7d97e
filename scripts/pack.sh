#!/usr/bin/env bash
# Makes the packages: ToolpathForge.Plugin, ToolpathForge.Core with ToolpathForge.Proof, and the command as a tool (ToolpathForge).
#   bash scripts/pack.sh [folder] [more arguments of dotnet pack]      into artifacts/packages unless told otherwise
set -eu
cd "$(dirname "$0")/.."
folder="${1:-artifacts/packages}"
[ $# -eq 0 ] || shift
for project in Proof Core Plugin Cli; do
    dotnet pack "src/ToolpathForge.$project" -c Release -p:Strict=true -o "$folder" -nologo -v quiet "$@"
done
ls "$folder" | grep '[.]nupkg$'
