#!/bin/sh
# Sets up what is missing, builds, and shows a whole practice with a simulated client. Works from any folder and leaves
# its recording and journal in tidecount-demo there. Arguments are passed on, such as --aloud.
#
# It builds without PDF and PostgreSQL, which the demo does not use and which take half of the time; `cargo build --release` has them.
set -eu
root=$(cd "$(dirname "$0")/.." && pwd)
"$root/setup.sh"
exec cargo run --release --locked --quiet --no-default-features --manifest-path "$root/Cargo.toml" --bin tidecount -- demo "$@"
