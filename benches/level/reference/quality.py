#!/usr/bin/env python3
"""What Praat says about the quality of recorded vowels, over given stretches. Only values are kept, no sound.

    python3 -m venv venv && venv/bin/pip install praat-parselmouth==0.4.7
    venv/bin/python benches/level/reference/quality.py ../shared/data < windows.tsv > quality.tsv

windows.tsv: file, from_s, to_s. `cargo bench --bench level -- windows` prints those of the steady parts that tidecount finds.

Settings (those of Praat's own dialogues and voice report): pitch by cross-correlation, 75 to 600 Hz, on the whole recording;
pulses "To PointProcess (cc)" from sound and pitch; jitter and shimmer with periods of 0.1 to 20 ms, period factor 1.3,
amplitude factor 1.6; "To Harmonicity (cc)" 0.01, 75, 0.1, 1.0 of the part, mean of the frames that are not silent; CPPS of
the part: "To PowerCepstrogram" 60, 0.002, 5000, 50 and "Get CPPS" no, 0.01, 0.001, 60, 330, 0.05, Parabolic, 0.001, 0,
Straight, Robust.
"""
import sys
from pathlib import Path

import parselmouth
from parselmouth.praat import call

JITTER = ("local", "rap", "ppq5")
SHIMMER = ("local", "local_dB", "apq3", "apq11")


def row(sound, start, end):
    pitch = call(sound, "To Pitch (cc)", 0.0, 75, 15, "no", 0.03, 0.45, 0.01, 0.35, 0.14, 600)
    pulses = call([sound, pitch], "To PointProcess (cc)")
    values = [100 * call(pulses, f"Get jitter ({kind})", start, end, 0.0001, 0.02, 1.3) for kind in JITTER]
    for kind in SHIMMER:
        value = call([sound, pulses], f"Get shimmer ({kind})", start, end, 0.0001, 0.02, 1.3, 1.6)
        values.append(value if kind == "local_dB" else 100 * value)
    part = call(sound, "Extract part", start, end, "rectangular", 1, "no")
    values.append(call(call(part, "To Harmonicity (cc)", 0.01, 75, 0.1, 1.0), "Get mean", 0, 0))
    cepstrogram = call(part, "To PowerCepstrogram", 60, 0.002, 5000, 50)
    values.append(call(cepstrogram, "Get CPPS", "no", 0.01, 0.001, 60, 330, 0.05, "Parabolic", 0.001, 0, "Straight", "Robust"))
    return values


def main():
    data = Path(sys.argv[1])
    print(f"# Praat {parselmouth.PRAAT_VERSION}, parselmouth {parselmouth.__version__}; made by benches/level/reference/quality.py")
    print("file\tfrom_s\tto_s\tjitter_local_pct\tjitter_rap_pct\tjitter_ppq5_pct\tshimmer_local_pct\tshimmer_local_db\tshimmer_apq3_pct\tshimmer_apq11_pct\thnr_db\tcpps_db")
    for line in sys.stdin:
        name, start, end = line.rstrip("\n").split("\t")
        values = row(parselmouth.Sound(str(data / name)), float(start), float(end))
        print("\t".join([name, start, end] + [f"{v:.4f}" for v in values]), flush=True)


if __name__ == "__main__":
    main()
