"""Makes sentences and vowels whose F0 is known at every instant, from recorded ones.

Each recording is taken apart by WORLD (M. Morise et al., IEICE Trans. E99-D (2016) 1877-1884) and put together again
with a contour that we know: the recorded one with the small irregularity of real periods, or moved down or up. The sound
has a real spectrum, real breath and real transitions; its F0 and the instants at which voicing begins and ends are exact.

Voicing is taken from Harvest where the recording also has low-frequency energy: like a laryngograph, this keeps the weak
voiced ends and the voice bars of stops.

Writes f0/*.wav and f0/truth.tsv: file, condition, group, F0 every 10 ms from 0 on (0 = unvoiced).
"""
import os
import sys

import numpy as np
import pyworld
from scipy.signal import butter, sosfiltfilt

from common import DATA, OUT, RATE, add_noise, coswara, db, librispeech, load, load_any, noises, rms, save

STEP_MS = 2.0


def analyse(x):
    f0, t = pyworld.harvest(x, RATE, f0_floor=60.0, f0_ceil=600.0, frame_period=STEP_MS)
    f0 = pyworld.stonemask(x, f0, t, RATE)
    # Harvest goes on into pauses; a voice has energy under 1 kHz.
    low = sosfiltfilt(butter(4, [60, 1000], "band", fs=RATE, output="sos"), x)
    power = np.convolve(low**2, np.hanning(321) / np.hanning(321).sum(), "same")
    level = 10 * np.log10(power[np.minimum((t * RATE).astype(int), len(x) - 1)] + 1e-12)
    quiet = level < np.percentile(level, 97) - 38
    f0[quiet] = 0.0
    # Runs of under 20 ms are slips.
    edges = np.flatnonzero(np.diff(np.concatenate([[0], (f0 > 0).astype(int), [0]])))
    for a, b in zip(edges[::2], edges[1::2]):
        if (b - a) * STEP_MS < 20:
            f0[a:b] = 0.0
    sp = pyworld.cheaptrick(x, f0, t, RATE, f0_floor=60.0)
    ap = pyworld.d4c(x, f0, t, RATE, threshold=0.0)
    # Where next to nothing is periodic below 1 kHz, Harvest went on into breath; elsewhere the sound is made periodic
    # enough that the contour is in it.
    low = slice(0, int(1000 / (RATE / 2) * (sp.shape[1] - 1)))
    share = (sp[:, low] * (1 - ap[:, low] ** 2)).sum(axis=1) / sp[:, low].sum(axis=1)
    f0[share < 0.2] = 0.0
    ap[f0 <= 0] = 1.0
    voiced = f0 > 0
    ap[voiced, low] = np.minimum(ap[voiced, low], 0.7)
    return f0, sp, ap


def irregular(f0, share, rng):
    """Each period changed by `share` (standard deviation): jitter. Adult voices have 0.3 to 1 % (from memory)."""
    out, k = f0.copy(), 0
    while k < len(f0):
        if f0[k] <= 0:
            k += 1
            continue
        length = max(1, round(1000.0 / STEP_MS / f0[k]))
        out[k : k + length] = np.where(f0[k : k + length] > 0, f0[k : k + length] * (1 + share * rng.standard_normal()), 0)
        k += length
    return out


def synthesise(f0, sp, ap):
    return pyworld.synthesize(f0.copy(), sp, ap, RATE, STEP_MS)


def subharmonic(x, f0, depth):
    """Every second period weaker, as in a rough voice."""
    phase = np.interp(np.arange(len(x)) / RATE, np.arange(len(f0)) * STEP_MS / 1000, np.cumsum(f0) * STEP_MS / 1000)
    return x * (1 + depth * np.cos(np.pi * phase))


def main():
    rng = np.random.default_rng(1)
    (OUT / "f0").mkdir(parents=True, exist_ok=True)
    rows, noise = [], noises()

    def keep(name, condition, group, x, f0):
        x = x * (0.1 / max(rms(x), 1e-6))
        x = x / max(1.0, np.abs(x).max() / 0.9)
        x = x + 10 ** (-70 / 20) * rng.standard_normal(len(x)) * 0.3
        save(f"f0/{name}.wav", x)
        grid = f0[:: round(10 / STEP_MS)]
        rows.append(f"f0/{name}.wav\t{condition}\t{group}\t" + " ".join(f"{v:.2f}" for v in grid))
        return x

    sentences = [(f.stem, load(f)) for f in sorted((DATA / "an4-test").glob("*.flac"))[::5]]
    for speaker, files in librispeech(0, 2):
        sentences.append((f"libri-{speaker}", load_any(files[len(files) // 2])[: 5 * RATE]))
    # A sample, where the whole takes too long: every nth sentence and vowel.
    part = int(os.environ.get("TIDECOUNT_VOICE_PART", "1"))
    for k, (stem, x) in enumerate(sentences[::part]):
        group = "odd" if k % 2 else "even"
        f0, sp, ap = analyse(x)
        if (f0 > 0).sum() * STEP_MS < 300:
            continue
        natural = irregular(f0, 0.005, rng)
        clean = keep(f"{stem}_clean", "clean", group, synthesise(natural, sp, ap), natural)
        if k % 4 < 2:
            median = np.median(f0[f0 > 0])
            low = irregular(np.where(f0 > 0, np.clip(f0 * 75 / median, 60, 300), 0), 0.01, rng)
            keep(f"{stem}_low", "low", group, synthesise(low, sp, ap), low)
            high = np.where(f0 > 0, np.clip(f0 * 400 / median, 150, 790), 0)
            keep(f"{stem}_high", "high", group, synthesise(high, sp, ap), high)
        else:
            for kind in [["dishes", "television"], ["tap", "babble4"]][k % 2]:
                save(f"f0/{stem}_{kind}10.wav", add_noise(clean, noise[kind], 10, rng))
                rows.append(rows[[r.startswith(f"f0/{stem}_clean.wav") for r in rows].index(True)].replace(
                    f"f0/{stem}_clean.wav\tclean", f"f0/{stem}_{kind}10.wav\tnoise10", 1))
    for k, (file, speaker, age, sex, _) in enumerate(sorted(coswara())[::part]):
        group = "odd" if sorted({s for _, s, *_ in coswara()}).index(speaker) % 2 else "even"
        if k % 8 != 0 and (age < 50 or k % 2):
            continue
        f0, sp, ap = analyse(load(DATA / file)[: 5 * RATE])
        if (f0 > 0).sum() * STEP_MS < 800:
            continue
        stem = file.split("/")[1].removesuffix(".flac")
        hoarse = irregular(f0, 0.02, rng)
        rough_ap = np.clip(ap**0.7, 0, 1)
        x = subharmonic(synthesise(hoarse, sp, rough_ap), hoarse, 0.1)
        keep(f"{stem}_hoarse", "hoarse", group, x, hoarse)
        high = np.where(f0 > 0, np.clip(f0 * 640 / np.median(f0[f0 > 0]), 300, 790), 0)
        keep(f"{stem}_high", "highvowel", group, synthesise(high, sp, ap), high)
        low = irregular(np.where(f0 > 0, np.clip(f0 * 66 / np.median(f0[f0 > 0]), 60.5, 120), 0), 0.015, rng)
        keep(f"{stem}_low", "lowvowel", group, synthesise(low, sp, ap), low)
    (OUT / "f0" / "truth.tsv").write_text("file\tcondition\tgroup\tf0_hz\n" + "\n".join(rows) + "\n")
    print(f"{len(rows)} files", file=sys.stderr)


if __name__ == "__main__":
    main()
