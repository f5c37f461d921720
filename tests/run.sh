#!/bin/sh
# Sets up what is missing and runs the tests; with --all also the whole practice over live devices, which takes minutes by the
# clock; with other arguments, what `cargo test` makes of them.
set -eu
cd "$(dirname "$0")/.."
./setup.sh --tests
all=
if [ "${1:-}" = --all ]; then
    all=" live_practice"
    shift
fi
[ $# -eq 0 ] || exec cargo test --locked "$@"

cargo test --locked --no-run
# These lead a practice by the clock and wait for most of it: in a browser, beside the others; on live devices, alone at the end.
beside=live_page_practice
alone="hear_live live_devices$all"
log=$(mktemp)
trap 'rm -f "$log"' EXIT
failed=0
cargo test --locked --test "$beside" >"$log" 2>&1 &
waits=$!
rest=
for file in tests/*.rs tests/*/main.rs; do
    name=${file#tests/}
    name=${name%/main.rs}
    name=${name%.rs}
    case " $beside $alone live_practice " in *" $name "*) ;; *) rest="$rest --test $name" ;; esac
done
# shellcheck disable=SC2086 # a list of options
cargo test --locked --no-fail-fast --lib --bins $rest || failed=1
wait "$waits" || failed=1
cat "$log"
# shellcheck disable=SC2086,SC2046 # a list of options
cargo test --locked --no-fail-fast $(printf ' --test %s' $alone) || failed=1
exit $failed
