#!/bin/sh
# Takes the figures of docs/performance.md again and shows them as a table beside their limits. The figures go into a file
# (TIDECOUNT_FIGURES, or target/figures.tsv) that benches/compare.sh compares with those on record.
#
#   benches/run.sh [NAME…]     names, each a part of the figures: see benches/README.md; all but build and build_ci when none is named
#
# Other work on the machine makes figures by the clock worse, the others hardly. A part that fails is named at the end; the rest goes on.
set -u
# Absolute, because tests and benches run in folders of their own.
case ${TIDECOUNT_FIGURES:-} in "" | /*) ;; *) TIDECOUNT_FIGURES=$PWD/$TIDECOUNT_FIGURES ;; esac
cd "$(dirname "$0")/.." || exit 2
all="promises tests count_beat echo level measure people evaluate own_voice enrol voice attend start page report progress exports load clinic clinic_postgres week"
run=${TIDECOUNT_FIGURES:-$PWD/target/figures.tsv}
mkdir -p "$(dirname "$run")"
changed=$([ -z "$(git status --porcelain 2>/dev/null)" ] || echo +)
printf '# commit\t%s%s\n# cores\t%s\n' "$(git rev-parse --short=7 HEAD)" "$changed" "$(nproc)" >"$run"
export TIDECOUNT_FIGURES="$run"

# With BENCH_PROFILE=dev the release build is spared; processor times are not those of a release then.
bench() {
    cargo bench --quiet ${BENCH_PROFILE:+--profile "$BENCH_PROFILE"} --bench "$@"
}

part() {
    case $1 in
        promises) benches/promises.sh ;;
        # Tests that put down figures beside what they promise.
        tests) cargo test --quiet -p hear praat -- --nocapture && cargo test --quiet -p progress honest -- --nocapture ;;
        people) bench command_ear -- people even ;;
        # shellcheck disable=SC2086 # options, parted by spaces
        evaluate) cargo build --quiet && benches/command_ear/evaluate.sh ${EVALUATE:---all} ;;
        # The recogniser is the greater part, and the test build has it optimised.
        own_voice) cargo bench --quiet --profile dev --bench own_voice ;;
        clinic_postgres) cargo bench --quiet --bench clinic -- at=postgres ;;
        build) benches/build.sh ;;
        build_ci) benches/build.sh ci ;;
        *) bench "$1" ;;
    esac
}

failed=
for name in ${*:-$all}; do
    printf '\n# %s\n' "$name"
    part "$name" || failed="$failed $name"
done

printf '\n'
cargo run --quiet -p figures -- show "$run" || failed="$failed table"
printf '\nThe figures are in %s; compare them with those on record: benches/compare.sh\n' "$run"
if [ -n "$failed" ]; then
    printf 'These could not be taken:%s\n' "$failed" >&2
    exit 1
fi
