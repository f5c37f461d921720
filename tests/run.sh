#!/bin/sh
# Sets up what is missing and runs all tests.
set -eu
cd "$(dirname "$0")/.."
./setup.sh
exec cargo test --locked "$@"
