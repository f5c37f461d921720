#!/bin/sh
# Tests that go on record as figures: 1 where they pass, 0 where they do not. A name that finds no test counts as not passed.
#
#   benches/promises.sh [no_memory|laws|record|type]…     all when none is named
set -u
cd "$(dirname "$0")/.." || exit 2

# passes ID N COMMAND…: at least N tests ran, and all passed.
passes() {
    id=$1 least=$2
    shift 2
    log=$(mktemp)
    kept=0
    if "$@" >"$log" 2>&1; then
        passed=$(sed -n 's/^test result: ok\. \([0-9]*\) passed.*/\1/p' "$log" | awk '{ sum += $1 } END { print sum + 0 }')
        [ "$passed" -lt "$least" ] || kept=1
        # A test that could not run has shown nothing.
        ! grep -q 'skipped: ' "$log" || kept=0
    fi
    [ $kept = 1 ] || cat "$log"
    rm -f "$log"
    printf '= promise.%s | %s\n' "$id" "$kept"
    [ -z "${TIDECOUNT_FIGURES:-}" ] || printf 'promise.%s\t%s\n' "$id" "$kept" >>"$TIDECOUNT_FIGURES"
    failed=$((failed + 1 - kept))
}

failed=0
for name in ${*:-no_memory laws record type}; do
    case $name in
        no_memory) passes no_memory 5 cargo test -p hear -p speak -p audio --lib -- allocat --nocapture ;;
        laws) passes laws 1 env PROPTEST_CASES=20000 cargo test --test promises engine_laws -- --include-ignored --nocapture ;;
        record) passes record 1 cargo test --test promises an_encryption_that_is_killed -- --include-ignored --nocapture ;;
        type) passes type 1 cargo test --test live_page type_is_large_enough -- --nocapture ;;
        *) sed -n '2,5s/^# \{0,1\}//p' "$0" >&2; exit 2 ;;
    esac
done
exit $((failed > 0))
