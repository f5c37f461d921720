#!/bin/sh
# Compares a run of benches/run.sh with the figures on record (benches/figures.toml). Says what got worse, what misses its limit, and what
# is missing, and fails if there is any.
#
#   benches/compare.sh [RUN] [--known] [ID…]     RUN: a run's file (target/figures.tsv); --known: limits that were missed before may
#                                                be missed again; ID: only figures whose ids begin so, such as "replay"
set -eu
cd "$(dirname "$0")/.."
run=${TIDECOUNT_FIGURES:-target/figures.tsv}
if [ $# -gt 0 ] && [ -f "$1" ]; then
    run=$1
    shift
fi
[ -f "$run" ] || { echo "there is no run in $run; take one with benches/run.sh" >&2; exit 2; }
exec cargo run --quiet -p figures -- compare "$run" "$@"
