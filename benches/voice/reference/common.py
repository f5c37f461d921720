"""Paths, sound files and mixing for the scripts beside this one."""
import os
import tarfile
from pathlib import Path

import numpy as np
import soundfile

RATE = 16_000
DATA = Path(os.environ.get("TIDECOUNT_DATA", Path(__file__).resolve().parents[4] / "shared" / "data"))
OUT = Path(os.environ.get("TIDECOUNT_VOICE_SET", Path.home() / ".cache" / "tidecount" / "voice-set"))


def load(path):
    """Mono samples at 16 kHz; everything in the data is that already."""
    x, rate = soundfile.read(path, dtype="float64", always_2d=True)
    if rate != RATE:
        raise SystemExit(f"{path}: {rate} Hz, expected {RATE}")
    return x.mean(axis=1)


def save(name, x):
    path = OUT / name
    path.parent.mkdir(parents=True, exist_ok=True)
    soundfile.write(path, np.clip(x, -1.0, 1.0), RATE, subtype="PCM_16")


def rms(x):
    return float(np.sqrt(np.mean(np.square(x))) + 1e-12)


def db(gain_db):
    return 10.0 ** (gain_db / 20.0)


def stretch(noise, length, rng):
    """A stretch of `noise` from a random place, repeated if too short."""
    if len(noise) < length:
        noise = np.tile(noise, length // len(noise) + 1)
    at = rng.integers(0, len(noise) - length + 1)
    return noise[at : at + length]


def add_noise(x, noise, snr_db, rng, over=None):
    """`x` with noise at `snr_db` under the level of `x` (of its part `over`)."""
    n = stretch(noise, len(x), rng)
    level = rms(x if over is None else x[over])
    return x + n * (level * db(-snr_db) / rms(n))


def noises():
    """Noises of a home: kitchen and people talking. The television is one talker."""
    n = {
        "dishes": "long/wav16k_doing_the_dishes.flac",
        "tap": "long/wav16k_running_tap.flac",
        "television": "babble/babble_1talker_tv_like.flac",
        "babble4": "babble/babble_4talkers.flac",
        "babble8": "babble/babble_8talkers.flac",
    }
    return {k: load(DATA / "noise" / v) for k, v in n.items()}


def librispeech(first, step):
    """Sentences of the training part: (speaker, samples)."""
    folder = OUT / "librispeech"
    if not folder.exists():
        with tarfile.open(DATA / "training" / "librispeech-train-clean-5.tar") as tar:
            tar.extractall(folder, filter="data")
    by_speaker = {}
    for line in (DATA / "training" / "index.tsv").read_text().splitlines()[1:]:
        file, group, speaker, *_ = line.split("\t")
        if group == "librispeech_train_clean_5":
            by_speaker.setdefault(speaker, []).append(file)
    for speaker, files in sorted(by_speaker.items())[first::step]:
        yield speaker, [folder / f for f in files]


def load_any(path):
    """As `load`, for Opus at 48 kHz as well."""
    import librosa

    x, rate = soundfile.read(path, dtype="float64", always_2d=True)
    x = x.mean(axis=1)
    return x if rate == RATE else librosa.resample(x, orig_sr=rate, target_sr=RATE)


def coswara():
    """Rows of the held vowels: (file, speaker, age, sex, quality)."""
    for line in (DATA / "index.tsv").read_text().splitlines()[1:]:
        file, group, _, speaker, _, notes, *_ = line.split("\t")
        if group == "coswara_subset" and "/vowel-" in file:
            note = dict(p.split("=") for p in notes.split(";"))
            yield file, speaker, int(note.get("age", 0) or 0), note.get("sex", ""), note.get("quality", "")
