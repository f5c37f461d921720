#!/bin/sh
# Measures every figure of docs/performance.md again and prints them in one table. Takes some minutes; other work on the
# machine makes the figures by the clock worse, not the others. Arguments choose: count_beat measure level echo own_voice
# command_ear enrol voice start progress report page clinic, and evaluate for command_ear/evaluate.sh (its options: the variable EVALUATE). benches/ears.sh
# adds what the references make of the same files.
set -eu
cd "$(dirname "$0")/.."

benches=${*:-count_beat measure level echo own_voice command_ear enrol voice start progress report page clinic}
log=$(mktemp)
trap 'rm -f "$log"' EXIT
for bench in $benches; do
    if [ "$bench" = evaluate ]; then
        printf '\n# benches/command_ear/evaluate.sh %s\n' "${EVALUATE:-}"
        # shellcheck disable=SC2086 # options, parted by spaces
        benches/command_ear/evaluate.sh ${EVALUATE:-} | tee -a "$log"
        continue
    fi
    printf '\n# cargo bench --bench %s\n' "$bench"
    cargo bench --quiet --bench "$bench" | tee -a "$log"
done

printf '\n'
# Lines that begin with "= " are figures: what, value, aim, whether it was met.
sed -n 's/^= //p' "$log" | awk -F ' [|] ' '
    BEGIN { printf "%-68s  %-62s  %-16s %s\n", "figure", "value", "aim", "" }
    { printf "%-68s  %-62s  %-16s %s\n", $1, $2, $3, $4 }'
