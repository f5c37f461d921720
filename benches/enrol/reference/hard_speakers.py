"""Simulated hard speakers for `cargo bench --bench enrol -- world DIR`: synthetic voices' words, resynthesised by WORLD
(Morise, Yokomori, Ozawa, IEICE Trans. 2016) as soft and breathy, monotone, slow and slurred speech. Nobody ill was recorded.

pip install pyworld soundfile numpy; needs flite and espeak-ng.
python hard_speakers.py OUT    (OUT is made)

Each speaker is one manner with its own strength; each take differs in pitch, rate, loudness and noise.
"""
import re
import subprocess
import sys
import tempfile
from pathlib import Path

import numpy as np
import pyworld
import soundfile

OUT = Path(sys.argv[1])
RATE = 16000
WORDS = Path(__file__).resolve().parents[3] / "src/speak/words/en/commands.ftl"
OTHER = ["hello", "good morning", "thank you", "the kettle", "come in", "water", "yesterday", "nobody", "step", "shop", "drop it",
         "yet", "guess", "known", "heavy", "gone", "window", "garden", "it is raining again", "where are my glasses", "rusty", "paws"]
# breath: aperiodicity added, 0 to 1; flat: share of the pitch movement taken out; rate: times slower; blur: bands of the
# spectrum smeared together, Hz; tilt: dB per octave over 1 kHz
MANNERS = {
    "soft-breathy": dict(breath=0.8, flat=0.5, rate=1.1, blur=0, tilt=-4),
    "monotone-quick": dict(breath=0.2, flat=0.95, rate=0.72, blur=150, tilt=-2),
    "slow-slurred": dict(breath=0.3, flat=0.7, rate=1.55, blur=450, tilt=-3),
    "whispering": dict(breath=1.0, flat=0.0, rate=1.2, blur=100, tilt=0),
}
VOICES = [("flite", "slt"), ("espeak-ng", "en-us+m3"), ("flite", "awb"), ("espeak-ng", "en-gb+f3"), ("flite", "kal"), ("espeak-ng", "en-gb-scotland")]
rng = np.random.default_rng(5)


def speak(program, voice, text):
    with tempfile.NamedTemporaryFile(suffix=".wav") as f:
        command = [program, "-voice", voice, "-t", text, "-o", f.name] if program == "flite" else [program, "-v", voice, "-s", "150", "-w", f.name, text]
        subprocess.run(command, check=True, capture_output=True)
        sound, rate = soundfile.read(f.name)
    return np.interp(np.arange(0, len(sound), rate / RATE), np.arange(len(sound)), sound)


def analyse(sound):
    sound = np.ascontiguousarray(sound, dtype=np.float64)
    rough, times = pyworld.dio(sound, RATE)
    f0 = pyworld.stonemask(sound, rough, times, RATE)
    return f0, pyworld.cheaptrick(sound, f0, times, RATE), pyworld.d4c(sound, f0, times, RATE)


def resay(analysed, manner):
    f0, envelope, breath = (part.copy() for part in analysed)
    voiced = f0 > 0
    if voiced.any():
        middle = np.median(f0[voiced])
        f0[voiced] = middle * (f0[voiced] / middle) ** (1 - manner["flat"]) * 2 ** rng.normal(0, 0.08)
    if manner["breath"] >= 1:
        f0[:] = 0
    breath = breath + (1 - breath) * manner["breath"] * np.linspace(0.4, 1, breath.shape[1])
    hz = np.linspace(0, RATE / 2, envelope.shape[1])
    octaves = np.log2(np.maximum(hz, 1000) / 1000)
    log = np.log(envelope) + octaves * (manner["tilt"] + rng.normal(0, 0.7)) * np.log(10) / 10
    if manner["blur"]:
        width = max(3, int(manner["blur"] / hz[1]) | 1)
        kernel = np.hanning(width + 2)[1:-1]
        log = np.apply_along_axis(lambda row: np.convolve(np.pad(row, width // 2, mode="edge"), kernel / kernel.sum(), "valid"), 1, log)
    # Slower or faster, unevenly: time is bent within the word as well.
    rate = manner["rate"] * rng.uniform(0.88, 1.14)
    n = max(2, int(len(f0) * rate))
    at = np.linspace(0, 1, n)
    at = np.clip(at + rng.uniform(-0.06, 0.06) * np.sin(2 * np.pi * at), 0, 1) * (len(f0) - 1)
    nearest = np.round(at).astype(int)
    new = pyworld.synthesize(np.ascontiguousarray(f0[nearest]), np.ascontiguousarray(np.exp(log[nearest])), np.ascontiguousarray(np.clip(breath[nearest], 0, 1)), RATE)
    level = 10 ** (rng.uniform(-36, -26) / 20)
    new = new / max(1e-9, np.sqrt(np.mean(new ** 2))) * level
    new = np.pad(new, (800, 800))
    return np.clip(new + rng.normal(0, 10 ** (rng.uniform(-64, -54) / 20), len(new)), -1, 1)


def write(folder, number, sound):
    folder.mkdir(parents=True, exist_ok=True)
    soundfile.write(folder / f"{number}.wav", sound, RATE, subtype="PCM_16")


commands = {m[1]: m[2].strip() for m in re.finditer(r"^cmd-([a-z-]+) = ([^|\n]+)", WORDS.read_text(), re.M)}
# Synthetic speakers say every command five times: three to enrol, two to test.
for i, (program, voice) in enumerate(VOICES):
    for name in list(MANNERS)[i % 2::2]:
        to = OUT / f"{voice.replace('+', '-')}-{name}"
        for command, wording in commands.items():
            said = analyse(speak(program, voice, wording))
            for n in range(5):
                write(to / command, n, resay(said, MANNERS[name]))
        for n, text in enumerate(OTHER):
            write(to / "other", n, resay(analyse(speak(program, voice, text)), MANNERS[name]))
            guest, manner = VOICES[(i + 1) % len(VOICES)], list(MANNERS.values())[i % 4]
            if n % 2 == 0:
                write(to / "stranger", n, resay(analyse(speak(*guest, text)), manner))
