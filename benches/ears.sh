#!/bin/sh
# Everything the ears are measured by, beside the references on the same files, as one table: voice ear beside Praat and pYIN,
# levels beside the standard, command ear beside pocketsphinx and Whisper, own voice, enrolment, cost. Hours on two cores.
#
#   benches/ears.sh [--whisper DIR]
#
# Needs ../shared/data for the recordings. The voice ear's files with known truth are made once, in
# ${TIDECOUNT_VOICE_SET:-~/.cache/tidecount/voice-set}; PYTHON chooses the interpreter that has pocketsphinx and faster-whisper,
# --whisper names a folder with a Whisper model for the latter. What is missing is said and left out.
set -eu
cd "$(dirname "$0")/.."
[ $# -eq 0 ] || [ "$1" = --whisper ] || { sed -n '2,10s/^# \{0,1\}//p' "$0" >&2; exit 2; }

: "${TIDECOUNT_VOICE_SET:=$HOME/.cache/tidecount/voice-set}"
export TIDECOUNT_VOICE_SET
if [ -d ../shared/data ] && [ ! -f "$TIDECOUNT_VOICE_SET/f0/praat.tsv" ]; then
    benches/voice/reference/run.sh || echo "the voice ear's files could not all be made; its figures are left out" >&2
fi
EVALUATE="--all --references $*" exec benches/run.sh tests voice level people evaluate own_voice echo enrol measure count_beat
