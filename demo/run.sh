#!/bin/sh
# Sets up what is missing, builds, and shows a whole practice with a simulated client. Works from any folder and leaves
# its recording and journal in tidecount-demo there. Arguments are passed on, such as --aloud.
set -eu
root=$(cd "$(dirname "$0")/.." && pwd)
"$root/setup.sh"
exec cargo run --release --locked --quiet --manifest-path "$root/Cargo.toml" --bin tidecount -- demo "$@"
