#!/bin/sh
# Makes the sound files with known truth for `cargo bench --bench voice`, outside the repository, and runs Praat and pYIN
# on them. Ten minutes on two cores. Needs Python 3; FluidSynth with a General MIDI sound font for the music.
set -eu
cd "$(dirname "$0")"
: "${TIDECOUNT_VOICE_SET:=$HOME/.cache/tidecount/voice-set}"
export TIDECOUNT_VOICE_SET
mkdir -p "$TIDECOUNT_VOICE_SET"
venv=$TIDECOUNT_VOICE_SET/venv
[ -x "$venv/bin/python" ] || python3 -m venv "$venv"
"$venv/bin/pip" install --quiet --requirement requirements.txt
for script in f0_set scenes negatives trains f0_reference; do
    echo "$script"
    "$venv/bin/python" "$script.py"
done
