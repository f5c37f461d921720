#!/usr/bin/env bash
# The whole recipe in small, on the CPU: synthetic clips, pack, unpack, spans, a few steps, export, graph, decoding with libvosk.
# It proves that the steps fit together, not that anything is learnt. Needs requirements.txt, espeak-ng, flite, libfst-tools.
# usage: tiny.sh [FOLDER]
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
work=${1:-$(mktemp -d)}
export OMP_NUM_THREADS=1
cd "$here"
mkdir -p "$work"/{sets,none}
printf 'she had your dark suit in greasy wash water all year\nplease stop the clock and go on with the next one\n' > "$work/lines.txt"
python synth_formant.py "$work/formant" 24 "$work/lines.txt"
printf 'file\tset\tspeaker\tduration_s\ttext\n' > "$work/sets/index.tsv"
espeak-ng -w "$work/sets/read.wav" "please stop the clock and go on with the next one"
printf 'read.wav\tlibrispeech_tiny\tsynthetic\t3.0\tplease stop the clock and go on with the next one\n' >> "$work/sets/index.tsv"
python pack.py "$work/sets" - "$work/none" "$work/none" "$work/none" "$work/formant" "$work/none" "$work/pack"
python unpack.py "$work/pack" "$work/data"
python spans.py "$work/data" ../en/am/final.mdl "$work/spans.json"
python train.py --data "$work/data" --out "$work/out" --warm ../en/am/final.mdl --spans "$work/spans.json" \
    --seconds 60 --steps 6 --scale 0.05 --lr 1e-5 --processes 1
python export.py "$work/out/net.pt" "$work/model" 8
printf 'yes\nno\nstop\nready\nagain\n' > "$work/words.txt"
python graph.py "$work/words.txt" "$work/model"
flite -voice slt -t "stop" -o "$work/stop.wav"
python - "$work" <<'PY'
import json, sys
import numpy as np
from vosk import KaldiRecognizer, Model, SetLogLevel
from pack import load
SetLogLevel(-1)
folder = sys.argv[1]
recogniser = KaldiRecognizer(Model(f"{folder}/model"), 16000, '["yes", "no", "stop", "ready", "[unk]"]')
x = np.concatenate([np.zeros(8000), load(f"{folder}/stop.wav") * 32767, np.zeros(16000)]).astype(np.int16)
recogniser.AcceptWaveform(x.tobytes())
text = json.loads(recogniser.FinalResult())["text"]
assert text == "stop", f"heard {text!r} for stop"
print("heard: stop")
PY
echo "all steps passed; files in $work"
