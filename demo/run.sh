#!/bin/sh
# Sets up what is missing, builds, and shows a whole practice with a simulated client. Works from any folder and leaves
# its recording and journal in tidecount-demo there. Arguments are passed on, such as --aloud.
#
# It builds what the demo needs in the profile of the tests, which is there sooner: no PDF, no PostgreSQL, little optimised.
# `cargo build --release` builds the whole program.
set -eu
root=$(cd "$(dirname "$0")/.." && pwd)
"$root/setup.sh"
exec cargo run --locked --quiet --no-default-features --manifest-path "$root/Cargo.toml" --bin tidecount -- demo "$@"
