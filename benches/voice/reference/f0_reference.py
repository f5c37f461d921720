"""Praat's autocorrelation method and librosa's pYIN on the files of f0/truth.tsv, F0 every 10 ms from 0 on.

Writes f0/praat.tsv and f0/pyin.tsv: file, F0 (0 = unvoiced). Praat with its defaults but a floor of 60 Hz and a ceiling
of 500 Hz (800 Hz for the high sets); pYIN over the same range, 64 ms frames as librosa's default is for 16 kHz.
"""
import sys

import librosa
import numpy as np
import parselmouth

from common import OUT, load


def praat(path, ceiling):
    pitch = parselmouth.Sound(str(path)).to_pitch_ac(time_step=0.01, pitch_floor=60, pitch_ceiling=ceiling)
    return pitch.xs(), pitch.selected_array["frequency"]


def pyin(path, ceiling):
    x = load(path)
    f0, _, _ = librosa.pyin(x.astype(np.float32), fmin=60, fmax=ceiling, sr=16_000, frame_length=1024, hop_length=160)
    return np.arange(len(f0)) * 0.01, np.nan_to_num(f0)


def main():
    rows = [line.split("\t") for line in (OUT / "f0" / "truth.tsv").read_text().splitlines()[1:]]
    for name, method in [("praat", praat), ("pyin", pyin)]:
        if name in sys.argv[1:] or len(sys.argv) == 1:
            with open(OUT / "f0" / f"{name}.tsv", "w") as out:
                for file, condition, _, truth in rows:
                    if method is pyin and condition not in ("clean", "noise10"):
                        continue  # an hour's work
                    t, f0 = method(OUT / file, 800 if condition.startswith("high") else 500)
                    grid = np.arange(len(truth.split())) * 0.01
                    # Nearest frame: Praat centres its frames, so they may stand up to 5 ms off the grid.
                    at = np.clip(np.searchsorted(t, grid - 0.005), 0, len(t) - 1)
                    out.write(file + "\t" + " ".join(f"{v:.2f}" for v in f0[at]) + "\n")


if __name__ == "__main__":
    main()
