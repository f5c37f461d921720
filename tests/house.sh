#!/bin/sh
# What can be said of the sources without compiling them: formatted, no circle between files, pure crates pure, docs/crates.svg and
# THIRD-PARTY.md as their commands would write them. `cargo deny check` is not among it, because it needs a network.
set -eu
cd "$(dirname "$0")/.."
cargo fmt --all --check
python3 docs/architecture.py --check
python3 docs/third-party.py --check
