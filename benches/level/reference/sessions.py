#!/usr/bin/env python3
"""Makes sessions with and without a simulated automatic gain, for `cargo bench --bench level -- auto-gain FOLDER`.

    python3 -m venv venv && venv/bin/pip install numpy scipy soundfile
    venv/bin/python benches/level/reference/sessions.py ../shared/data FOLDER

A session is one speaker: sentences (AN4) or held vowels (Coswara), 1.5 to 4 s apart, in noise 20 to 40 dB under the voice:
white, pink, or recorded (the noise folder, steady kinds); a third of them in a simulated room. Gains, own models:
"exp-T": gain follows target less level, attack 10 ms, release with time constant T s, at most 25 dB;
"rate-R": attack 10 ms, comes back by R dB a second, at most 20 dB;
"speech-R": changes only while the level is over -45 dB, by at most R dB a second up and down (as telephony gains do).
"none": the microphone leaves the volume alone. FOLDER/list.tsv: file, gain, session number.
"""
import random
import sys
from pathlib import Path

import numpy as np
import soundfile as sf
from scipy.signal import fftconvolve, lfilter

RATE = 16000


def pink(n, rng):
    # Kellet's filter, from memory.
    b = [0.049922035, -0.095993537, 0.050612699, -0.004408786]
    a = [1, -2.494956002, 2.017265875, -0.522189400]
    return lfilter(b, a, rng.standard_normal(n))


def envelope_db(x, ms=10):
    share = 1 - np.exp(-1 / (RATE * ms / 1000))
    return 10 * np.log10(lfilter([share], [1, share - 1], x * x) + 1e-12)


def gained(x, kind):
    if kind == "none":
        return x
    name, value = kind.split("-")
    value = float(value)
    level = envelope_db(x)[::16].tolist()
    gain, out = 10.0, np.empty(len(level))
    for k, db in enumerate(level):
        wanted = min(max(-20 - db, 0.0), 25 if name == "exp" else 20)
        if name == "speech":
            if db > -45:
                gain += min(max(wanted - gain, -value / 1000), value / 1000)
        elif wanted < gain:
            gain += 0.095 * (wanted - gain)
        elif name == "exp":
            gain += 1 / (1000 * value) * (wanted - gain)
        else:
            gain += min(wanted - gain, value / 1000)
        out[k] = gain
    gains = np.interp(np.arange(len(x)), np.arange(len(level)) * 16, out)
    return x * 10 ** (gains / 20)


def main():
    data, folder = Path(sys.argv[1]), Path(sys.argv[2])
    folder.mkdir(parents=True, exist_ok=True)
    voices = {}
    for file in sorted(data.glob("an4-test/*.flac")):
        voices.setdefault("an4 " + file.stem.split("-")[1], []).append(file)
    for file in sorted(data.glob("coswara/vowel-*.flac")):
        voices.setdefault("vowels " + file.stem.split("_")[1], []).append(file)
    rooms = sorted(data.glob("rooms/*.flac")) + sorted(data.glob("rooms/*.wav"))
    noises = [f for f in sorted(data.glob("noise/*.flac")) if any(k in f.stem for k in ("rain", "sea", "babble_8", "babble8", "helicopter"))]
    names = [n for n in voices if n.startswith("an4")] + [n for n in voices if n.startswith("vowels")][:30]
    with open(folder / "list.tsv", "w") as table:
        for number, name in enumerate(names):
            rng, pick = np.random.default_rng(number), random.Random(number)
            parts = [np.zeros(RATE)]
            files = voices[name][:]
            while len(files) < 7:
                files += voices[name]
            for file in files[:9]:
                x = sf.read(file)[0]
                loud = np.flatnonzero(envelope_db(x) > envelope_db(x).max() - 20)
                x = x[loud[0]:loud[-1]][: 5 * RATE]
                x = x / max(np.sqrt(np.mean(x * x)), 1e-6) * 10 ** ((-28 + pick.uniform(-4, 4)) / 20)
                parts += [x, np.zeros(int(pick.uniform(1.5, 4) * RATE))]
            voice = np.concatenate(parts)
            if rooms and number % 3 == 0:
                h = sf.read(pick.choice(rooms))[0]
                h = h if h.ndim == 1 else h[:, 0]
                voice = fftconvolve(voice, h / np.sqrt(np.sum(h * h)))[: len(voice)]
            kind = number % 4
            if kind == 3 and noises:
                n = sf.read(pick.choice(noises))[0]
                n = np.tile(n, len(voice) // len(n) + 1)[: len(voice)]
            else:
                n = pink(len(voice), rng) if kind == 1 else rng.standard_normal(len(voice))
            n = n / np.sqrt(np.mean(n * n)) * 10 ** ((-28 - pick.uniform(20, 40)) / 20)
            for gain in ("none", "exp-0.5", "exp-1", "exp-2", "exp-4", "rate-5", "rate-10", "rate-20", "speech-6"):
                y = np.clip(gained(voice + n, gain), -0.99, 0.99)
                file = folder / f"{number}-{gain}.flac"
                sf.write(file, y, RATE)
                table.write(f"{file.name}\t{gain}\t{number}\n")
            table.flush()


if __name__ == "__main__":
    main()
