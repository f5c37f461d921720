#!/bin/sh
# Tries for long what the tests try shortly, and writes what came of it into docs/reliability.md.
#
#   tests/endurance/run.sh [kills] [N]       N kills (1000): a practice, and one that keeps its sound, at evenly spread entries; a backup, a
#                                            passphrase change, a forgetting, an import into a clinic's database, the taking of a package and
#                                            the change of an older record to today's form at evenly spread moments; then N power cuts over
#                                            what a practice, a backup, a passphrase change and a forgetting write
#   tests/endurance/run.sh devices [N]       N faults (200) of microphone, loudspeaker and sound server: half in a practice, half in `attend`
#   tests/endurance/run.sh soak [HOURS]      a day of `attend` in simulated time, then HOURS (2) by the clock, with faults
#   tests/endurance/run.sh fuzz [MINUTES]    damaged input at every reader, in turn, for so long (60)
#   tests/endurance/run.sh load              five years of practice, 1,000 residents, recordings of 3 h, eight pages: the figures and their limits
#
# TIDECOUNT_SEED (1) chooses the faults; TIDECOUNT_SOAK_HOURS (24) is the simulated day. A run of a tree with changes that are not committed is
# shown and not written down.
set -eu
cd "$(dirname "$0")/../.."
page=docs/reliability.md
seed=${TIDECOUNT_SEED:-1}
export TIDECOUNT_SEED="$seed"
what=${1:-kills}
# A number alone is one of kills.
case $what in *[!0-9]*) [ $# -eq 0 ] || shift ;; *) what=kills ;; esac
commit=$(git rev-parse --short HEAD)
[ -z "$(git status --porcelain)" ] || commit="$commit+"
began=$(date +%s)
log=$(mktemp)
failed=
# What failed can be read in whole.
trap '[ -n "$failed" ] && echo "All of it: $log" || rm -f "$log"' EXIT

# Runs and shows it; what it says of its result is kept.
tried() {
    "$@" 2>&1 | tee -a "$log" | grep -E "kills|power cut|devices, |soak, |fuzz, |skipped|FAILED|panicked|test result" || true
    if grep -qE "FAILED|panicked|error(\[|:)" "$log"; then failed=yes; fi
}

# A row of the table: command, commit, seed, how long, what came of it.
put_down() {
    minutes=$((($(date +%s) - began + 59) / 60))
    row="| $(date -u +%Y-%m-%d) | \`$1\` | $commit | $seed | $minutes min | $2 |"
    echo "$row"
    case $commit in
        *+) echo "Not written down: the tree has changes that are not committed." ;;
        *) sed -i "s#^<!-- rows end -->#$(printf '%s' "$row" | sed 's/[&#\\]/\\&/g')\n&#" "$page" ;;
    esac
}

# What the tests printed of their results, joined.
results() {
    if [ -n "$failed" ]; then
        printf '**failed**: '
        sed -n 's/^test \(.*\) \.\.\. FAILED$/\1/p; s/^thread .* panicked at .*/panicked/p' "$log" | sort -u | tr '\n' ' '
    else
        sed -nE "s/^(test [a-z_:]+ \.\.\. )?($1.*)/\2/p" "$log" | tr '|' '/' | paste -sd ';' | sed 's/;\([^ ]\)/; \1/g'
    fi
}

case $what in
    kills)
        kills=${1:-1000}
        TIDECOUNT_KILLS=$((kills / 8)) tried cargo test --test promises -- --nocapture --test-threads 1 endurance::
        TIDECOUNT_KILLS=$((kills / 4)) tried cargo test --test promises -- --nocapture --test-threads 1 power_cut::
        put_down "tests/endurance/run.sh kills $kills" "$(results '(practice|sound|backup|passphrase|forget|import|package|older form)[^:]*: ([0-9]+ kills|power cut)')"
        ;;
    devices)
        TIDECOUNT_DEVICE_FAULTS="${1:-200}" tried cargo test --test live_devices -- --nocapture --test-threads 1 devices::
        put_down "tests/endurance/run.sh devices ${1:-200}" "$(results 'devices, ')"
        ;;
    soak)
        hours=${1:-2}
        TIDECOUNT_SOAK_CLOCK_MINUTES=$(awk "BEGIN { print int($hours * 60) }")
        export TIDECOUNT_SOAK_CLOCK_MINUTES
        tried cargo test --test live_devices -- --nocapture --ignored --test-threads 1 soak::
        put_down "tests/endurance/run.sh soak $hours" "$(results 'soak, ')"
        ;;
    fuzz)
        minutes=${1:-60}
        rounds=0
        while [ $(($(date +%s) - began)) -lt $((minutes * 60)) ] && [ -z "$failed" ]; do
            # Each round has seeds of its own: proptest draws them anew.
            PROPTEST_CASES=2000 tried cargo test --test promises -- fuzz routine_faults::
            PROPTEST_CASES=2000 tried cargo test -p tidecount -p pages -p handover --lib -- damaged_forms a_changed_byte
            rounds=$((rounds + 1))
        done
        printf 'fuzz, every reader of the table: %s rounds of 2,000 cases each, nothing found\n' "$rounds" >>"$log"
        put_down "tests/endurance/run.sh fuzz $minutes" "$(results 'fuzz, ')"
        ;;
    load)
        exec cargo bench --bench load
        ;;
    *)
        sed -n '2,13s/^# \{0,1\}//p' "$0" >&2
        exit 2
        ;;
esac
[ -z "$failed" ]
