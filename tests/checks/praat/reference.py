#!/usr/bin/env python3
"""Writes reference.tsv: what Praat says about the voice in the shared recordings.

    python3 -m venv venv && venv/bin/pip install praat-parselmouth==0.4.7
    venv/bin/python tests/checks/praat/reference.py ../shared/data > tests/checks/praat/reference.tsv

Only values are kept, no sound. Method: Praat's raw autocorrelation ("To Pitch (ac)") with step 0.01 s, floor 60 Hz,
ceiling 800 Hz and its own defaults otherwise (silence 0.03, voicing 0.45, octave cost 0.01, octave jump 0.35,
voiced/unvoiced 0.14, 15 candidates).

Columns: file; voiced_s (voiced frames x 0.01 s); longest_onset_s and longest_offset_s of the longest stretch of voicing
(breaks up to 0.25 s bridged); f0_median_hz of the voiced frames in it; f0_grid_hz, the median F0 of each half second
from 0 on, 0 where less than half of it is voiced.
"""
import statistics
import sys
from pathlib import Path

import parselmouth

BRIDGE_S = 0.25


def rows(data: Path):
    files = sorted(data.glob("coswara/vowel-*.flac"))[::4]
    files += sorted(data.glob("an4-test/*.flac"))[::6]
    files += [f for f in sorted(data.glob("known-duration/*.flac")) if f.stem.endswith("_floor")][::3]
    for file in files:
        pitch = parselmouth.Sound(str(file)).to_pitch_ac(time_step=0.01, pitch_floor=60, pitch_ceiling=800)
        frames = list(zip(pitch.xs(), pitch.selected_array["frequency"]))
        voiced = [(t, f) for t, f in frames if f > 0]
        runs = []
        for t, _ in voiced:
            if runs and t - runs[-1][1] <= BRIDGE_S:
                runs[-1][1] = t
            else:
                runs.append([t, t])
        onset, offset = max(runs, key=lambda r: r[1] - r[0], default=(0.0, 0.0))
        inside = [f for t, f in voiced if onset <= t <= offset]
        grid = []
        for cell in range(int(frames[-1][0] / 0.5) + 1 if frames else 0):
            here = [f for t, f in frames if cell * 0.5 <= t < cell * 0.5 + 0.5]
            sounding = [f for f in here if f > 0]
            grid.append(statistics.median(sounding) if len(sounding) * 2 > len(here) else 0.0)
        yield [
            str(file.relative_to(data)),
            f"{len(voiced) * 0.01:.2f}",
            f"{onset:.3f}",
            f"{offset:.3f}",
            f"{statistics.median(inside) if inside else 0:.2f}",
            " ".join(f"{g:.1f}" for g in grid),
        ]


def main():
    print(f"# Praat {parselmouth.PRAAT_VERSION}, parselmouth {parselmouth.__version__}; made by reference.py")
    print("file\tvoiced_s\tlongest_onset_s\tlongest_offset_s\tf0_median_hz\tf0_grid_hz")
    for row in rows(Path(sys.argv[1])):
        print("\t".join(row))


if __name__ == "__main__":
    main()
