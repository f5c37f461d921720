#!/bin/bash
# What it costs to build: from a clean clone to the demo's last line, the tests after an edit, and the size of the program.
#
#   benches/build.sh [demo|timings|pure|tests|sizes|ci]…     all but ci when none is named
#
# Everything happens in a clone of the last commit, in a temporary folder with its own target, without incremental leftovers from elsewhere.
# Packages must be installed, crates fetched, and lib/libvosk.so or VOSK_LIB_DIR there (./setup.sh --tests); so the network is no part of
# it. Half an hour to an hour on two cores; let nothing else run. KEEP_TIMINGS=FILE keeps the page of `cargo build --timings`.
set -euo pipefail
root=$(cd "$(dirname "$0")/.." && pwd)
parts=${*:-demo timings pure tests sizes}
for part in $parts; do
    case $part in demo | timings | pure | tests | sizes | ci) ;; *) sed -n '2,9s/^# \{0,1\}//p' "$0" >&2; exit 2 ;; esac
done

# Absolute, because the work is done in another folder.
case ${TIDECOUNT_FIGURES:-} in "" | /*) ;; *) TIDECOUNT_FIGURES=$PWD/$TIDECOUNT_FIGURES ;; esac
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
clone=$work/tidecount
[ -z "$(git -C "$root" status --porcelain)" ] || echo "Changes that are not committed are not in these figures." >&2
git clone --quiet "$root" "$clone"
if [ -z "${VOSK_LIB_DIR:-}" ] && [ -f "$root/lib/libvosk.so" ]; then
    mkdir "$clone/lib"
    cp -L "$root/lib/libvosk.so" "$clone/lib/"
fi
cd "$clone"
unset CARGO_TARGET_DIR CARGO_INCREMENTAL CARGO_PROFILE_DEV_DEBUG
export CARGO_TARGET_DIR=$work/target
cargo fetch --quiet --locked

figure() {
    printf '= %s | %s\n' "$1" "$2"
    [ -z "${TIDECOUNT_FIGURES:-}" ] || printf '%s\t%s\n' "$1" "$2" >>"$TIDECOUNT_FIGURES"
}

# Runs a command and leaves in $took how long it took by the clock, s. What it says is shown only where it fails.
timed() {
    local began ended
    began=$(date +%s.%N)
    "$@" >"$work/log" 2>&1 || { tail -n 50 "$work/log" >&2; echo "failed: $*" >&2; exit 1; }
    ended=$(date +%s.%N)
    took=$(awk -v a="$began" -v b="$ended" 'BEGIN { printf "%.1f", b - a }')
}

# An edit that changes what is compiled: a new public function at the end of a crate.
edit() {
    printf '\n/// Nothing but an edit.\npub fn edited_by_the_bench_%s() {}\n' "$2" >>"src/$1/lib.rs"
}

megabytes_stripped() {
    strip -o "$work/stripped" "$CARGO_TARGET_DIR/dist/tidecount"
    awk -v bytes="$(stat -c %s "$work/stripped")" 'BEGIN { printf "%.1f", bytes / 1e6 }'
}

demo() {
    mkdir "$work/demo"
    timed sh -c "cd '$work/demo' && '$clone/demo/run.sh'"
    figure build.to_demo "$took"
    tail -n 1 "$work/log"
}

# The same build, once more from nothing, for what each crate costs.
timings() {
    rm -rf "$CARGO_TARGET_DIR"
    timed cargo build --release --locked --timings --bin tidecount
    local page=$CARGO_TARGET_DIR/cargo-timings/cargo-timing.html
    figure build.compile "$(python3 "$root/benches/timings.py" "$page" --sum)"
    python3 "$root/benches/timings.py" "$page"
    [ -z "${KEEP_TIMINGS:-}" ] || cp "$page" "$KEEP_TIMINGS"
}

pure() {
    timed cargo test --locked -p session
    edit session one
    timed cargo test --locked -p session
    figure build.test_pure "$took"
    git checkout --quiet src
}

tests() {
    timed ./tests/run.sh --quick
    edit hear two
    timed ./tests/run.sh --quick
    figure build.test_all "$took"
    git checkout --quiet src
}

# The size of what is handed out: the profile of packages, not the one that is quick to build.
sizes() {
    timed cargo build --profile dist --locked --bin tidecount
    figure build.size "$(megabytes_stripped)"
    timed cargo build --profile dist --locked --bin tidecount --no-default-features
    figure build.size_plain "$(megabytes_stripped)"
}

ci() {
    rm -rf "$CARGO_TARGET_DIR"
    timed ./.ci/run
    figure build.ci "$took"
}

for part in $parts; do
    printf '\n## %s\n' "$part"
    "$part"
done
