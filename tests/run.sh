#!/bin/sh
# Sets up what is missing and runs all tests.
set -eu
cd "$(dirname "$0")/.."
./setup.sh --tests
exec cargo test --locked "$@"
