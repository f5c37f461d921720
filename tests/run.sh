#!/bin/sh
# Sets up what is missing and runs the tests. With --quick, for the minutes between two edits, no whole practices, browser or live devices.
# With --all also what takes minutes each: practices over live devices by the clock, a simulated week, all numbers in three voices. With
# other arguments, what `cargo test` makes of them.
#
# The closing line counts a test that could not run as skipped. With CI set, nothing may be skipped that ./setup.sh --tests installs.
set -eu
cd "$(dirname "$0")/.."
./setup.sh --tests
live="hear_live live_devices"
by_the_clock="live_practice live_page_practice"
all=
quick=
case ${1:-} in
    --all) all=yes; shift ;;
    --quick) quick=yes; shift ;;
esac
[ $# -eq 0 ] || exec cargo test --locked "$@"

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export TIDECOUNT_SKIPS="$work/skips"
: >"$work/skips"
: >"$work/log"
failed=0
# What a run prints is shown as it comes and kept to be counted.
counted() {
    { "$@" 2>&1 || echo "$*" >>"$work/failed"; } | tee -a "$work/log"
}

counted ./tests/house.sh
[ -n "$quick" ] || cargo test --locked --workspace --no-run
# Asked for by name, even a library without tests would be linked.
counted cargo test --locked --workspace --exclude recogniser --no-fail-fast --lib --bins
# A week of simulated practice, every number in three voices, a replay by the clock, the second language's demo, and ladders on sound (the
# engine's own tests have them without) take minutes.
long=
[ -n "$all" ] || long="--skip demo_weeks:: --skip no_number_ends_the_questions --skip in_real_time_it_is --skip led_to_its_end_in_spanish --skip each_step_is_measured"
if [ -n "$quick" ]; then
    counted cargo test --locked --no-fail-fast --test promises
else
    # shellcheck disable=SC2086 # options
    counted cargo test --locked --no-fail-fast --test promises -- --include-ignored --skip child_ $long
    # A browser waits for much: its tests run side by side, and what each says is shown in one piece.
    for file in tests/*.rs; do
        name=$(basename "$file" .rs)
        case " $live $by_the_clock " in *" $name "*) continue ;; esac
        { cargo test --locked --no-fail-fast --test "$name" >"$work/$name.out" 2>&1 || echo "$name" >>"$work/failed"; } &
    done
    wait
    counted cat "$work"/*.out
    # By the clock or not, their client must answer what is said today.
    [ -n "$all" ] || counted cargo test --locked --no-fail-fast --test live_practice every_prompt
    # These need the machine to themselves: their devices run by the clock.
    for name in $live ${all:+$by_the_clock}; do
        counted cargo test --locked --no-fail-fast --test "$name"
    done
fi

sum() { sed -n "s/^test result: .* \([0-9][0-9]*\) $1.*/\1/p" "$work/log" | awk '{ n += $1 } END { print n + 0 }'; }
skipped=$(cut -f 2 "$work/skips" | sort -u | grep -c . || true)
passed=$(($(sum passed) - skipped))
failures=$(sum failed)
if [ "$skipped" -gt 0 ]; then
    echo
    echo "These could not run, in whole or in part:"
    sort -u "$work/skips" | awk -F '\t' '{ printf "  %s: %s\n", $2, $3 }'
fi
if [ -n "${CI:-}" ] && grep -q "^installed	" "$work/skips"; then
    echo "Some of them lacked what ./setup.sh --tests installs."
    failed=1
fi
if [ -e "$work/failed" ]; then
    failed=1
    # A run that broke off before its tests has no line of results.
    [ "$failures" -gt 0 ] || failures=1
fi
echo
echo "$passed passed, $failures failed, $skipped skipped"
exit $failed
