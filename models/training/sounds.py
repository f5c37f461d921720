"""Test sounds made worse: noise at a chosen SNR, rooms, soft and slow speech. Seeded by the clip's number, so that two models get the same."""
import numpy as np

RATE_HZ = 16000


def rms(x):
    return float(np.sqrt(np.mean(np.square(x)) + 1e-9))


def active(x):
    """RMS of the samples within 26 dB of the peak."""
    return rms(x[np.abs(x) > .05 * np.abs(x).max()]) if np.abs(x).max() > 0 else 1.0


def slower(x, ratio=.75):
    """Overlap-add with similarity search: `ratio` of the speed, same pitch."""
    half, search = 240, 160
    window = np.hanning(2 * half)
    steps = int(len(x) / ratio) // half + 1
    out = np.zeros((steps + 3) * half)
    x, last = np.concatenate([np.zeros(search), x, np.zeros(4 * half + 2 * search)]), None
    for k in range(steps):
        p = search + int(k * half * ratio)
        if last is not None:
            want, best = x[last + half:last + 2 * half], (-1e18, 0)
            for s in range(-search, search, 8):
                if p + s + half <= len(x):
                    best = max(best, (float(want @ x[p + s:p + s + half]), s))
            p += best[1]
        if p + 2 * half > len(x):
            break
        out[k * half:k * half + 2 * half] += window * x[p:p + 2 * half]
        last = p
    return out


def between_pauses(x, rng, lead_s=.5, tail_s=1.0):
    """The clip with noise as loud as its quietest tenth before and after."""
    power = np.convolve(np.square(x), np.ones(320) / 320, "same") if len(x) > 640 else np.square(x)
    quiet = max(np.sqrt(np.quantile(power, .1)), 2.0)
    return np.concatenate([rng.standard_normal(int(lead_s * RATE_HZ)) * quiet, x, rng.standard_normal(int(tail_s * RATE_HZ)) * quiet])


def babble(voices, samples, rng, talkers=6):
    """So many of the voices (a list of arrays) at once, RMS 1."""
    out = np.zeros(samples)
    for _ in range(talkers):
        v = voices[rng.integers(len(voices))]
        v = np.tile(v / rms(v), samples // len(v) + 2)
        at = rng.integers(len(v) - samples)
        out += v[at:at + samples]
    return out / rms(out)


def worse(x, condition, rng, voices, rooms):
    """x (int16 scale) under a condition: quiet, snr20/10/5 (babble), pink20/10/5, room, soft (-40 dBFS), slow (x 0.75)."""
    x = x.astype(np.float64)
    if condition == "slow":
        x = slower(x)
    x = between_pauses(x, rng)
    if condition == "room":
        level, h = rms(x), rooms[rng.integers(len(rooms))]
        size = len(x) + len(h)
        x = np.fft.irfft(np.fft.rfft(x, size) * np.fft.rfft(h, size), size)[:len(x)]
        x *= level / rms(x)
    elif condition == "soft":
        x *= 327.68 / active(x)
    elif condition.startswith("snr"):
        x += babble(voices, len(x), rng) * active(x) * 10 ** (-float(condition[3:]) / 20)
    elif condition.startswith("pink"):
        z = np.fft.rfft(rng.standard_normal(len(x)))
        z /= np.sqrt(np.maximum(np.arange(len(z)), 20 * len(x) / RATE_HZ))
        z = np.fft.irfft(z, len(x))
        x += z / rms(z) * active(x) * 10 ** (-float(condition[4:]) / 20)
    return np.clip(np.rint(x + rng.standard_normal(len(x)) * 1.5), -32768, 32767).astype(np.int16)
