"""Measures the generated vowels with Praat and stores the values in vowels.json beside this file.

Needs PyPI praat-parselmouth (made with 0.4.7, Praat 6.1.38). Run from the repository root:
    python3 tests/checks/praat/vowels.py
Settings are those of Praat's own voice report: cross-correlation pitch, floor 75 Hz, ceiling 600 Hz, period factor 1.3,
amplitude factor 1.6, periods 0.1 to 20 ms. Formants: Burg, 5 below 5000 Hz, 25 ms, pre-emphasis from 50 Hz.
"""
import json
import os
import pathlib
import statistics
import subprocess
import tempfile

import parselmouth
from parselmouth.praat import call

HERE = pathlib.Path(__file__).parent
ORDER = ["a-120", "i-220", "u-95", "a-300", "a-jitter-0.5", "a-jitter-1.5", "a-shimmer-4", "a-shimmer-10", "a-hnr-20", "i-hnr-12"]


def measure(path):
    sound = parselmouth.Sound(str(path))
    start, end = 0.5, 3.5
    pitch = call(sound, "To Pitch (cc)", 0.0, 75, 15, "no", 0.03, 0.45, 0.01, 0.35, 0.14, 600)
    points = call([sound, pitch], "To PointProcess (cc)")
    harmonicity = call(sound, "To Harmonicity (cc)", 0.01, 75, 0.1, 4.5)
    formants = call(sound, "To Formant (burg)", 0.0, 5, 5000, 0.025, 50)
    formant = lambda n: statistics.median(
        call(formants, "Get value at time", n, 0.5 + 0.05 * k, "Hertz", "Linear") for k in range(60))
    return {
        "name": path.stem,
        "f0_median_hz": call(pitch, "Get quantile", start, end, 0.5, "Hertz"),
        "jitter_local_pct": 100 * call(points, "Get jitter (local)", start, end, 0.0001, 0.02, 1.3),
        "shimmer_local_pct": 100 * call([sound, points], "Get shimmer (local)", start, end, 0.0001, 0.02, 1.3, 1.6),
        "hnr_db": call(harmonicity, "Get mean", start, end),
        "f1_hz": formant(1),
        "f2_hz": formant(2),
        "levels_db": json.loads(path.with_suffix(".json").read_text()),
    }


with tempfile.TemporaryDirectory() as folder:
    subprocess.run(["cargo", "test", "--lib", "write_vowels", "--", "--ignored"], check=True,
                   env=os.environ | {"VOWELS_FOLDER": folder})
    rows = [measure(pathlib.Path(folder) / f"{name}.wav") for name in ORDER]
HERE.joinpath("vowels.json").write_text("[\n" + ",\n".join(json.dumps(r) for r in rows) + "\n]\n")
for row in rows:
    print({k: (round(v, 3) if isinstance(v, float) else v) for k, v in row.items() if k != "levels_db"})
