#!/bin/sh
# How well a second ear alone hears the commands of a language without a recognition model, by synthetic voices that it was not trained on
# (HELD_OUT of models/training/synth_formant.py): a state of ten commands and what a person in trouble says, in all their wordings. What is
# nobody's command, by the same voices: everyday words, and what the program says itself. Talk of people, in English: spelling and counting.
# No person has said these commands to it.
#
#   benches/command_ear/other_language.sh de|es [TIDECOUNT [OPTIONS OF `tidecount hear`…]]
set -eu
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
language=$1 program=${2:-${CARGO_TARGET_DIR:-$root/target}/debug/tidecount}
[ $# -lt 2 ] || shift
shift
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
python3 "$root/models/training/synth_formant.py" "$work/said" 1900 "language=$language" held-out
python3 "$here/other_language.py" "$language" "$work/said" "$root/../shared/data" "$work"
"$program" --language "$language" hear --commands "$(cat "$work/phrases")" --labels "$work/list.tsv" --json --details "$@" > "$work/rows" || [ -s "$work/rows" ]
python3 "$here/other_language.py" tell < "$work/rows"
