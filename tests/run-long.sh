#!/usr/bin/env bash
# Tests of run-all.sh with a larger count, and those of too long a run for it. Prints figures; fails as a test does.
set -euo pipefail
cd "$(dirname "$0")/.."

usage() {
    cat << 'TEXT'
usage: bash tests/run-long.sh SUBJECT [N]

  search [N]     the search against trying everything, on N random catalogs (200000) and on one of some 100,000 sets
                 for each 2000 of them; an hour for all of it
  bands [N]      bands and likelihood against N machines drawn at random in each case (20000; fewer
                 than 2000 say too little, and the tests fail by chance)
  reference [N]  the outside reference on N random sets of each machine (60), and on all sample questions
  mutation [GLOB...]
                 share of the faults put into src/PartPicker.Mechanics, or into the files of it that a glob names
                 ('**/Belts/*.cs'), that its tests notice; an hour for all of it
  all            all of these
TEXT
}

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1

# tests NAME: the tests of that name, and the figures that they leave.
tests() {
    mkdir -p "$work/figures"
    PART_PICKER_FIGURES="$work/figures" dotnet test tests/PartPicker.Tests -c Release --filter "FullyQualifiedName~$1"
    cat "$work/figures"/*.txt
    rm -r "$work/figures"
}

search() {
    local count=${1:-200000}
    PART_PICKER_SEARCH_CATALOGS=$count PART_PICKER_LARGE_CATALOGS=$((2 + count / 2000)) tests SearchAgainstJudgeTests
}

bands() { PART_PICKER_BAND_SAMPLES=${1:-20000} tests UncertaintyTests; }

reference() {
    dotnet build src/PartPicker.Api -c Release
    /usr/bin/python3 -B tests/reference/reference.py --sets "${1:-60}" --ranked 2000
}

# What counts as a fault is said in mutation.json; which may stay unnoticed, and why, in mutation-survivors.md.
mutation() {
    local glob globs=() report="$PWD/TestResults/mutation" status=0
    for glob in "$@"; do globs+=(--mutate "$glob"); done
    dotnet tool restore
    (cd tests/PartPicker.Tests &&
        nice -n 19 dotnet stryker --config-file ../mutation.json --output "$report" "${globs[@]}") | tee "$work/mutation.log" || status=$?
    sed -n 's/.*final mutation score is \([0-9.,]*\) %.*/mutation: \1 %/p' "$work/mutation.log"
    echo "Each fault, and what became of it: $report/reports/mutation-report.html"
    return $status
}

case "${1:-}" in
    search | bands | reference | mutation) "$@" ;;
    all) search; bands; reference; mutation ;;
    *) usage; exit 2 ;;
esac
