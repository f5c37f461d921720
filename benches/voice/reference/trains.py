"""Trains of pa-ta-ka at known rates, cut from recorded syllables of several voices.

Each syllable is a piece of a recorded vowel (or of "a" said by the speech program Flite, if there) behind a burst of
noise coloured like p, t or k, with a closure before it; the vowel rises out of the burst after 10 to 40 ms. Level, length
and interval vary as asked for.

Writes trains/*.wav and trains/truth.tsv: file, count, rate_hz, irregularity_pct (of the intervals made), group.
"""
import numpy as np
from scipy.signal import butter, sosfilt

from common import DATA, OUT, RATE, add_noise, coswara, db, load, noises, rms, save
from scenes import steady

BURST_HZ = [(300, 1500), (3000, 6500), (1200, 3000)]


def main():
    rng = np.random.default_rng(3)
    noise, rows = noises(), []
    files = sorted(coswara())
    for k, (file, *_rest) in enumerate(files[::4]):
        v = steady(load(DATA / file))
        if len(v) < RATE:
            continue
        v = v * (db(-24) / rms(v))
        for rate in [3.0, 5.0, 6.5] if k % 2 else [4.0, 5.5, 7.5]:
            jitter = [0.0, 0.06, 0.15][(k + int(rate)) % 3]
            count = int(rng.integers(12, 25))
            steps = np.clip(1 / rate * (1 + jitter * rng.standard_normal(count - 1)), 0.6 / rate, 1.6 / rate)
            starts = 1.0 + np.concatenate([[0], np.cumsum(steps)])
            x = np.zeros(int((starts[-1] + 2.5) * RATE))
            for n, start in enumerate(starts):
                gap = (steps[n] if n < count - 1 else 1 / rate)
                a, length = int(start * RATE), int(gap * rng.uniform(0.5, 0.65) * RATE)
                at = rng.integers(0, len(v) - length)
                piece = v[at : at + length] * db(rng.uniform(-3, 3))
                up, down = int(0.012 * RATE), int(min(0.04, gap * 0.25) * RATE)
                piece[:up] *= np.linspace(0, 1, up)
                piece[-down:] *= np.linspace(1, 0, down)
                x[a : a + length] += piece
                burst = int(rng.uniform(0.008, 0.02) * RATE)
                delay = int(rng.uniform(0.010, 0.040) * RATE)
                b = sosfilt(butter(2, BURST_HZ[n % 3], "band", fs=RATE, output="sos"), rng.standard_normal(burst))
                x[a - delay : a - delay + burst] += b * (db(-34) / rms(b))
            for what, snr in [("quiet", None), ("dishes", 15)][: 2 if k % 3 == 0 else 1]:
                y = x if snr is None else add_noise(x, noise[what], snr, rng, slice(RATE, int(starts[-1] * RATE)))
                y = y + db(-72) * rng.standard_normal(len(y))
                name = f"trains/{k:02}_{rate}_{what}.wav"
                save(name, y)
                cv = 100 * np.std(steps, ddof=1) / np.mean(steps)
                rows.append(f"{name}\t{count}\t{1 / np.mean(steps):.4f}\t{cv:.2f}\t{'odd' if k % 2 else 'even'}\t{what}")
    (OUT / "trains" / "truth.tsv").write_text("file\tcount\trate_hz\tirregularity_pct\tgroup\tnoise\n" + "\n".join(rows) + "\n")


if __name__ == "__main__":
    main()
