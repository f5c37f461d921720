"""Held vowels that begin and end at known instants, in quiet, in kitchen noise, beside a television and in rooms.

The vowels are steady stretches of recorded ones (one of a, e, o from each speaker); what is put on them is made here:

- plain: begins and ends within 10 ms
- soft: swells and dies away over 150 ms (raised cosine)
- breathy: 0.4 s of breath through the same mouth, then the voice comes within 80 ms
- tremor: level by +-3 dB and F0 by +-3 % at 4 to 7 Hz
- fade: in the middle the voice sinks by 18 dB within 0.5 s and returns

Onset and offset are the instants at which the voice's own envelope passes a tenth (-20 dB) of its full height.

Writes scenes/*.wav and scenes/truth.tsv: file, shape, noise, snr_db, group, onset_s, offset_s.
"""
import numpy as np
import parselmouth
from scipy.signal import fftconvolve, lfilter

from common import DATA, OUT, RATE, add_noise, coswara, db, load, noises, rms, save

LEAD_S, TAIL_S = 1.6, 2.0


def steady(x):
    """The longest stretch that is voiced throughout and keeps within 8 dB."""
    pitch = parselmouth.Sound(x, RATE).to_pitch_ac(time_step=0.01, pitch_floor=60, pitch_ceiling=800)
    times, f0 = pitch.xs(), pitch.selected_array["frequency"]
    half = RATE // 50
    level = np.array([20 * np.log10(rms(x[max(0, int(t * RATE) - half) : int(t * RATE) + half])) for t in times])
    good = f0 > 0
    if good.any():
        good &= level > np.median(level[good]) - 8
    edges = np.flatnonzero(np.diff(np.concatenate([[0], good.astype(int), [0]])))
    if len(edges) == 0:
        return x[:0]
    best = max(zip(edges[::2], edges[1::2]), key=lambda e: e[1] - e[0])
    a, b = (int(times[i] * RATE) for i in (best[0], best[1] - 1))
    return x[a : min(b, a + 3 * RATE)]


def ramp(length_s):
    n = int(length_s * RATE)
    return 0.5 - 0.5 * np.cos(np.pi * (np.arange(n) + 0.5) / n)


def tenth(length_s):
    """Time at which a raised cosine of that length passes a tenth."""
    return length_s * np.arccos(1 - 0.2) / np.pi


def lpc(x, order=18):
    r = np.correlate(x, x, "full")[len(x) - 1 : len(x) + order]
    a, e = np.array([1.0]), r[0] * 1.0001
    for k in range(1, order + 1):
        acc = r[k] + a[1:] @ r[k - 1 : 0 : -1] if k > 1 else r[1]
        a = np.concatenate([a, [0.0]])
        a = a + (-acc / e) * a[::-1]
        e *= 1 - (acc / e) ** 2
    return a


def shape(v, kind, rng):
    """The vowel with its beginning and end, and where they lie in it."""
    edge = 0.15 if kind == "soft" else 0.08 if kind == "breathy" else 0.01
    if kind == "tremor":
        rate = rng.uniform(4, 7)
        t = np.arange(len(v)) / RATE
        warped = t + 0.03 * (1 - np.cos(2 * np.pi * rate * t)) / (2 * np.pi * rate)
        v = np.interp(np.clip(warped, 0, t[-1]), t, v) * 10 ** (0.15 * np.sin(2 * np.pi * rate * t + 1.0))
    if kind == "fade":
        t = np.arange(len(v)) / len(v)
        v = v * 10 ** (-18 / 20 * np.exp(-(((t - 0.5) * len(v) / RATE / 0.35) ** 2)))
    v = v.copy()
    up = ramp(edge)
    v[: len(up)] *= up
    v[-len(up) :] *= up[::-1]
    before = 0.0
    if kind == "breathy":
        a = lpc(v[len(v) // 2 : len(v) // 2 + 4000] * np.hanning(4000))
        breath = lfilter([1.0], a, rng.standard_normal(int(0.48 * RATE)))
        breath *= rms(v) * db(-18) / rms(breath)
        breath[: len(up)] *= up
        breath[-int(0.1 * RATE) :] *= ramp(0.1)[::-1]
        before = 0.4
        v = np.concatenate([np.zeros(int(before * RATE)), v])
        v[: len(breath)] += breath
    return v, before + tenth(edge), len(v) / RATE - tenth(edge)


def main():
    rng = np.random.default_rng(2)
    noise, rows = noises(), []
    files = sorted(coswara())
    speakers = sorted({s for _, s, *_ in files})
    plan = [
        ("plain", "quiet", 0), ("soft", "quiet", 0), ("breathy", "quiet", 0), ("tremor", "quiet", 0), ("fade", "quiet", 0),
        ("plain", "tap", 20), ("soft", "dishes", 20), ("plain", "television", 20),
        ("plain", "dishes", 10), ("tremor", "dishes", 10), ("plain", "tap", 10), ("soft", "tap", 10),
        ("plain", "television", 10), ("soft", "television", 10), ("plain", "babble4", 10),
        ("plain", "room", 0),
    ]
    rooms = ["bedroom_1m_0", "livingroom_1m_0", "kitchen_1m_0", "clinic_room_1m_0"]
    for k, speaker in enumerate(speakers):
        own = [f for f, s, *_ in files if s == speaker]
        v = None
        for file in own[k % len(own) :] + own[: k % len(own)]:
            v = steady(load(DATA / file))
            if len(v) >= 1.3 * RATE:
                break
        if v is None or len(v) < 1.3 * RATE:
            continue
        for n, (kind, what, snr) in enumerate(plan):
            if what != "quiet" and (n + k // 2) % 2:
                continue
            shaped, on, off = shape(v * (db(-26) / rms(v)), kind, rng)
            lead = LEAD_S + rng.uniform(0, 0.3)
            x = np.concatenate([np.zeros(int(lead * RATE)), shaped, np.zeros(int(TAIL_S * RATE))])
            at = slice(int((lead + on) * RATE), int((lead + off) * RATE))
            if what == "room":
                h = load(DATA / "rooms" / f"{rooms[k % 4]}.wav")
                direct = int(np.argmax(np.abs(h)))
                wet = fftconvolve(x, h / np.abs(h).max())[direct : direct + len(x)]
                x = wet * (db(-26) / rms(wet[at]))
            elif what != "quiet":
                x = add_noise(x, noise[what], snr, rng, at)
            x = x + db(-75) * rng.standard_normal(len(x))
            name = f"scenes/{k:02}_{kind}_{what}{snr or ''}.wav"
            save(name, x)
            on, off = int(lead * RATE) / RATE + on, int(lead * RATE) / RATE + off
            rows.append(f"{name}\t{kind}\t{what}\t{snr}\t{'odd' if k % 2 else 'even'}\t{on:.4f}\t{off:.4f}")
    (OUT / "scenes" / "truth.tsv").write_text("file\tshape\tnoise\tsnr_db\tgroup\tonset_s\toffset_s\n" + "\n".join(rows) + "\n")


if __name__ == "__main__":
    main()
