#!/bin/sh
# Kills: a practice at evenly spread entries; a backup, a passphrase change and a forgetting at evenly spread moments. A thousand in all, or as
# many as the first argument says. Then as many power cuts, evenly spread over what these four write. What it prints is the table of
# docs/reliability.md, where it was run for that.
set -eu
cd "$(dirname "$0")/../.."
kills=$((${1:-1000} / 4))
echo "commit $(git rev-parse --short HEAD), $(date -u +%Y-%m-%d), $kills kills and $kills power cuts of each kind"
TIDECOUNT_KILLS="$kills" cargo test --test promises -- --nocapture --test-threads 1 endurance:: power_cut:: |
    grep -E "kills|power cut|skipped|FAILED|panicked|test result"
