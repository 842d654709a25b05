#!/usr/bin/env bash
# Time of a whole run, process start to exit, beside the smallest .NET program on the same machine in the same run.
# Usage: process-time.sh [RUNS]      Goal: ratio of the medians at most 4.
set -euo pipefail
runs=${1:-25}
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
root=$(cd "$here/../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

dotnet publish "$root/src/SurfaceUnroll.Cli" -c Release -r linux-x64 -o "$work/published" -v quiet
mkdir "$work/hello"
cat > "$work/hello/hello.csproj" <<'PROJECT'
<Project Sdk="Microsoft.NET.Sdk">
  <PropertyGroup><OutputType>Exe</OutputType><TargetFramework>net10.0</TargetFramework></PropertyGroup>
</Project>
PROJECT
echo 'System.Console.WriteLine("Hello");' > "$work/hello/Program.cs"
dotnet build "$work/hello" -c Release -o "$work/hello/out" -v quiet

job=$root/fixtures/jobs/trike-tail-cover.json
hello() { dotnet "$work/hello/out/hello.dll" > /dev/null; }
develop() { "$work/published/surfaceunroll" develop "$job" --out "$work/pattern" > /dev/null; }
milliseconds() {
  local start=$EPOCHREALTIME
  "$1"
  local end=$EPOCHREALTIME
  echo $(( (${end/./} - ${start/./}) / 1000 )).$(( (${end/./} - ${start/./}) % 1000 / 100 ))
}

# One of each before counting, so that the files are in memory; then turn by turn, so that a busy moment meets both.
hello; develop
for ((i = 0; i < runs; i++)); do
  milliseconds hello >> "$work/hello.txt"
  milliseconds develop >> "$work/develop.txt"
done
median() { sort -n "$1" | sed -n "$(( (runs + 1) / 2 ))p"; }
a=$(median "$work/hello.txt")
b=$(median "$work/develop.txt")
echo "hello world, dotnet hello.dll:   median $a ms of $runs"
echo "surfaceunroll develop, published: median $b ms of $runs"
echo "ratio $(awk "BEGIN { printf \"%.2f\", $b / $a }")"
