#!/usr/bin/env bash
# Builds everything, runs every test and check, and ends with one line: "N passed, N failed".
# Needs the .NET SDK of global.json. Node.js, npm, curl, Chromium and SciPy are installed when they are missing and this is root.
# Keeps going after a failing suite, so that one run shows every failure.
set -euo pipefail
cd "$(dirname "$0")/.."
exec < /dev/null # Nothing here may wait for an answer.

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export HOME="${HOME:-$work}"
export DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_GENERATE_ASPNET_CERTIFICATE=false
# Build servers that outlive this script would keep a container, or whoever waits for its output, waiting.
export MSBUILDDISABLENODEREUSE=1 UseSharedCompilation=false
export REDOCLY_TELEMETRY=off REDOCLY_SUPPRESS_UPDATE_NOTICE=true npm_config_update_notifier=false

# Tests leave figures worth reading here, one file a subject.
export PART_PICKER_FIGURES="$work/figures"
mkdir "$PART_PICKER_FIGURES"

readonly log_lines_max=200
readonly python=/usr/bin/python3 # The one that Debian's SciPy belongs to.
passed_all=0
failed_all=0
build_failed=0

# report SUITE PASSED FAILED SECONDS [NOTE]
report() {
    printf '%-28s %5d passed  %3d failed  %4d s%s\n' "$1" "$2" "$3" "$4" "${5:+  ($5)}"
    passed_all=$((passed_all + $2))
    failed_all=$((failed_all + $3))
}

# The end of a log says what went wrong; all of it would bury the other suites.
show_log() {
    printf -- '--- %s, last %d lines at most ---\n' "$1" "$log_lines_max"
    tail -n "$log_lines_max" "$2"
    printf -- '--- end of %s ---\n' "$1"
}

# check NAME COMMAND...: a command that passes or fails as a whole.
check() {
    local name=$1 log="$work/check.log" start=$SECONDS
    shift
    if "$@" > "$log" 2>&1; then
        report "$name" 1 0 $((SECONDS - start))
    else
        show_log "$name" "$log"
        report "$name" 0 1 $((SECONDS - start))
        return 1
    fi
}

# counter TRX NAME: one attribute of the result file's <Counters> element; 0 without a result file.
counter() {
    local value
    value=$(sed -n "s/.*<Counters[^>]* $2=\"\([0-9]*\)\".*/\1/p" "$1" 2> /dev/null) || true
    echo "${value:-0}"
}

# xunit PROJECT_FOLDER: one test project, counted by its result file.
xunit() {
    local name log="$work/xunit.log" start=$SECONDS status=0
    name=$(basename "$1")
    local trx="$work/$name.trx"
    dotnet test "$1/$name.csproj" -c Release --no-build \
        --results-directory "$work" --logger "trx;LogFileName=$name.trx" > "$log" 2>&1 || status=$?

    local total passed failed skipped
    total=$(counter "$trx" total)
    passed=$(counter "$trx" passed)
    failed=$(counter "$trx" failed)
    skipped=$((total - passed - failed))
    # A crash, or a project that finds no tests, must not look like success.
    if ((failed == 0 && (status != 0 || passed == 0))); then failed=1; fi
    if ((failed > 0)); then show_log "$name" "$log"; fi
    local note=""
    if ((skipped > 0)); then note="$skipped skipped"; fi
    report "$name" "$passed" "$failed" $((SECONDS - start)) "$note"
}

# The predictions of the sample catalog, computed again by other means: one test for each answer compared.
reference() {
    local log="$work/reference.log" start=$SECONDS status=0 passed failed
    "$python" -B tests/reference/reference.py > "$log" 2>&1 || status=$?
    passed=$(sed -n 's/^\([0-9]*\) passed, .*/\1/p' "$log")
    failed=$(sed -n 's/.* passed, \([0-9]*\) failed$/\1/p' "$log")
    # A crash prints no counts, and must not look like success.
    if ((status != 0 && ${failed:-0} == 0)); then failed=1; fi
    if ((${failed:-0} > 0)); then show_log "reference" "$log"; fi
    report "reference" "${passed:-0}" "${failed:-0}" $((SECONDS - start)) "$(sed -n 's/^reference: //p' "$log")"
}

install_tools() {
    local missing=()
    command -v node > /dev/null || missing+=(nodejs)
    command -v npm > /dev/null || missing+=(npm)
    command -v curl > /dev/null || missing+=(curl)
    command -v chromium > /dev/null || missing+=(chromium)
    "$python" -c 'import scipy' 2> /dev/null || missing+=(python3-scipy)
    if ((${#missing[@]} > 0)); then
        if [[ $(id -u) -ne 0 ]] || ! command -v apt-get > /dev/null; then
            echo "Missing: ${missing[*]}. Install these packages, or run this as root where apt-get exists." >&2
            exit 1
        fi
        export DEBIAN_FRONTEND=noninteractive
        { apt-get update && apt-get install -y --no-install-recommends "${missing[@]}"; } > "$work/apt.log" 2>&1 || {
            show_log "apt-get" "$work/apt.log"
            exit 1
        }
    fi
    if ! command -v dotnet > /dev/null; then
        echo "Missing: the .NET SDK, version $(sed -n 's/.*"version": "\(.*\)".*/\1/p' global.json) or a later one of that line." >&2
        exit 1
    fi
}

build() {
    dotnet restore PartPicker.sln --locked-mode && dotnet build PartPicker.sln -c Release --no-restore
}

lint_openapi() {
    npm ci --prefix tests/tools --ignore-scripts --no-audit --no-fund && npm run --prefix tests/tools lint
}

# The run command of the README, stopped after its first answer, on a data folder of its own.
run_command() {
    local out="$work/run.out"
    dotnet run --project src/PartPicker.Api -c Release --no-build -- --once --port 0 --data "$work/data" > "$out" 2>&1 || {
        cat "$out"
        echo "The run command ended with an error."
        return 1
    }
    cat "$out"
    grep -Eq '^ *1 +[0-9.]+ rpm' "$out" || { echo "No ranked line was printed."; return 1; }
    grep -Eq '^searched [1-9][0-9]* combinations' "$out" || { echo "No line says what was searched."; return 1; }
}

# The tests that were run hold as many published rows: each carries its id in a trait. None is skipped, so the ids
# in the sources are those of the run.
outside_rows() {
    printf 'outside rows: %d\n' "$(grep -rhoE 'Trait\("Outside", "[^"]+"' tests --include='*.cs' | sort -u | wc -l)"
}

install_tools
check "build" build || build_failed=1
check "format" dotnet format PartPicker.sln --verify-no-changes --no-restore || true
if ((build_failed)); then
    echo "The tests and the run command need the build, which failed: not run."
else
    for project in tests/*.Tests; do xunit "$project"; done
    reference
    check "run command" run_command || true
    outside_rows
fi
check "openapi lint" lint_openapi || true
if ((!build_failed)); then
    # Its last line says which clients held their conversation.
    check "generated clients" bash tests/tools/clients/check.sh && tail -n 1 "$work/check.log" || true
fi
find "$PART_PICKER_FIGURES" -name '*.txt' | sort | while read -r figures; do cat "$figures"; done

printf '%d passed, %d failed\n' "$passed_all" "$failed_all"
((failed_all == 0))
