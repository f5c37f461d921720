#!/bin/sh
# Everything the ears are measured by, as one table with its 95 % intervals, and how it compares with the figures on record: command ear in
# every condition, over and beside our own voice, with an enrolled voice; voice ear; levels. Meant for an hour on two cores (it tells
# how long it took), for two parts run side by side: nothing here is by the clock.
#
#   benches/ears.sh [--references [--whisper DIR]]
#
# --references also runs pocketsphinx on the same files, and a Whisper model where --whisper names its folder: hours. Needs ../shared/data
# for the recordings. The voice ear's files with known truth are made once, which takes an hour more, in
# ${TIDECOUNT_VOICE_SET:-~/.cache/tidecount/voice-set}; PYTHON chooses the interpreter. What is missing is said and left out.
set -eu
cd "$(dirname "$0")/.."
case "${1:-}" in "" | --references) ;; *) sed -n '2,11s/^# \{0,1\}//p' "$0" >&2; exit 2 ;; esac

: "${TIDECOUNT_VOICE_SET:=$HOME/.cache/tidecount/voice-set}"
export TIDECOUNT_VOICE_SET
if [ -d ../shared/data ] && [ ! -f "$TIDECOUNT_VOICE_SET/f0/praat.tsv" ]; then
    benches/voice/reference/run.sh || echo "the voice ear's files could not all be made; its figures are left out" >&2
fi
# Nothing here is a processor time, so the test build will do; it is built before two runs want to.
export BENCH_PROFILE=dev
cargo build --quiet
for bench in command_ear count_beat own_voice voice level echo enrol; do
    cargo bench --quiet --profile dev --bench "$bench" --no-run
done

run=${TIDECOUNT_FIGURES:-$PWD/target/figures.tsv}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
begun=$(date +%s)
failed=
TIDECOUNT_FIGURES=$work/one EVALUATE="--all $*" benches/run.sh evaluate people count_beat >"$work/one.log" 2>&1 &
one=$!
TIDECOUNT_FIGURES=$work/two benches/run.sh own_voice tests voice level echo enrol >"$work/two.log" 2>&1 || failed=1
wait "$one" || failed=1
cat "$work/one.log" "$work/two.log"
mkdir -p "$(dirname "$run")"
cat "$work/one" >"$run"
grep -v '^#' "$work/two" >>"$run" || true
printf '\n# all of it, in %s minutes\n' "$((($(date +%s) - begun) / 60))"
cargo run --quiet -p figures -- show "$run"
printf '\n# compared with the figures on record\n'
TIDECOUNT_FIGURES=$run benches/compare.sh command people own enrol beat f0 scenes negatives syllables known praat honest level quality echo || failed=1
[ -z "$failed" ]
